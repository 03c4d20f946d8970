using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

public class CentrifugalBoostTests
{
    private static readonly Gen<Atmosphere> Air = Gen.Select(Gen.Double[70, 105], Gen.Double[-10, 45]).Select(
        (kilopascals, celsius) => Atmosphere.Of(Wren.Kpa(kilopascals), Temperature.FromDegreesCelsius(celsius)));

    /// <summary>Impeller of 1 m at 5,945 rev/min, slip factor 0.90, no power input factor: 311.3 m/s, 87.2 kJ/kg.</summary>
    [Fact(DisplayName = "Euler work of an impeller, and its pressure ratio; Gorla and Khan, example 4.4")]
    public void EulerWork_OfGorlaAndKhansImpeller_IsWorkedApart()
    {
        Source source = Works.GorlaKhan44;
        Real work = CentrifugalCompressor.EulerWork<Real>(1, 0.90, Math.PI * 5945 / 60);
        Published.Value(source.At("work, J/kg"), 87.2e3, work, 0.05 / 87.2);

        // The efficiency to three figures; the exponent 0.286 there and 2/7 here.
        Published.Value(source.At("pressure ratio at 86.9 %"), 2.2, CentrifugalCompressor.PressureRatio<Real>(work, 0.869, 298), 2e-3);
    }

    /// <summary>17 blades: slip factor 1 − 0.63 π/17; 475 m/s, power input factor 1.04, 84 %, 288 K, specific heat 1,005.</summary>
    [Fact(DisplayName = "Pressure ratio by slip factor and power input factor; Gorla and Khan, example 4.17")]
    public void PressureRatio_OfGorlaAndKhansVanedImpeller_IsWorkedApart()
    {
        double slip = 1 - (0.63 * Math.PI / 17);
        Published.Value(
            Works.GorlaKhan417.At("pressure ratio"),
            Math.Pow(1 + (0.84 * 1.04 * slip * 475 * 475 / (1005 * 288)), 3.5),
            CentrifugalCompressor.PressureRatio<Real>(CentrifugalCompressor.EulerWork<Real>(1.04, slip, 475), 0.84, 288),
            1e-3);
    }

    /// <summary>Impeller of 0.75 m at 11,500 rev/min, slip factor 0.92, ratio 4, 294 K: 451.6 m/s, efficiency 76.5 %.</summary>
    [Fact(DisplayName = "Pressure ratio of an impeller; Ganesan, example 8.1")]
    public void PressureRatio_OfGanesansImpeller_IsWorkedApart() =>
        Published.Value(
            Works.GanesanImpeller.At("pressure ratio at 76.5 %"),
            4,
            CentrifugalCompressor.PressureRatio<Real>(CentrifugalCompressor.EulerWork<Real>(1, 0.92, Math.PI * 0.75 * 11_500 / 60), 0.765, 294),
            3e-3);

    /// <summary>
    /// The books' machines at speeds and inlet temperatures of our own: by Euler's work (slip factor, tip speed, specific heat 1,005) at the efficiency that
    /// the book's point implies, with the books' exponent of 0.286, against the boost line from the book's point alone, which knows neither diameter
    /// nor slip nor efficiency.
    /// </summary>
    [Theory(DisplayName = "Square law of a centrifugal compressor at other speeds, against Euler's work; Gorla and Khan, Ganesan")]
    [InlineData("Gorla", 1.00, 5945, 0.90, 2.2, 298, 4500, 298)]
    [InlineData("Gorla", 1.00, 5945, 0.90, 2.2, 298, 5400, 313)]
    [InlineData("Gorla", 1.00, 5945, 0.90, 2.2, 298, 6300, 283)]
    [InlineData("Ganesan", 0.75, 11_500, 0.92, 4, 294, 7000, 294)]
    [InlineData("Ganesan", 0.75, 11_500, 0.92, 4, 294, 9500, 309)]
    public void Boost_AtOtherSpeeds_IsThatOfEulersWork(
        string author, double diameter, double knownRpm, double slip, double knownRatio, double knownKelvins, double rpm, double kelvins)
    {
        const double heat = 1005;
        double Work(double speed) => slip * Math.Pow(Math.PI * diameter * speed / 60, 2);
        double efficiency = heat * knownKelvins * (Math.Pow(knownRatio, 0.286) - 1) / Work(knownRpm);
        double ratio = Math.Pow(1 + (efficiency * Work(rpm) / (heat * kelvins)), 1 / 0.286);

        // The impeller on the crank itself at half its speed, so that the engine stays below 25,000 rev/min and the drive ratio counts.
        FuelDemandModel demand = Dunnock.Demand(induction: Induction.BeltDriven(Wren.Percent(70), Ratio.Zero, Pressure.Zero, Wren.Percent(100)));
        CentrifugalBoost line = CentrifugalBoost.From(
            2, Wren.Rpm(knownRpm / 2), Wren.Kpa(100 * (knownRatio - 1)), Atmosphere.Of(Wren.Kpa(100), Temperature.FromKelvins(knownKelvins)));
        Pressure boost = line.At(Wren.Rpm(rpm / 2), demand, Atmosphere.Of(Wren.Kpa(100), Temperature.FromKelvins(kelvins)));
        Published.Value(
            (author == "Gorla" ? Works.GorlaKhan44 : Works.GanesanImpeller).At("pressure ratio by Euler's work at another speed"),
            ratio,
            1 + (boost.Kilopascals / 100),
            1e-3);
    }

    /// <summary>Whatever the drop of the charge cooler and the drive ratio, the known point is on its own line.</summary>
    [Fact]
    public void Line_AtItsKnownPoint_HasTheKnownBoost() =>
        Gen.Select(Gen.Double[2, 12], Gen.Double[2000, 6600], Gen.Double[1, 150], Gen.Double[0, 20], Air).Sample((ratio, rpm, boost, loss, air) =>
        {
            FuelDemandModel demand = Dunnock.Demand(
                induction: Induction.BeltDriven(Wren.Percent(63), Wren.Percent(55), Wren.Kpa(loss), Wren.Percent(94)));
            CentrifugalBoost line = CentrifugalBoost.From(ratio, Wren.Rpm(rpm), Wren.Kpa(boost), air);
            return Math.Abs(line.At(Wren.Rpm(rpm), demand, air).Kilopascals - boost) < 1e-9 * (100 + boost);
        });

    [Fact]
    public void Boost_WithASmallerCompressorPulleyOrALargerCrankPulley_IsHigher() =>
        Gen.Select(Gen.Double[3000, 6650], Gen.Double[1, 20], Air).Sample((rpm, change, air) =>
        {
            double now = Kilopascals(Dunnock.Centrifugal, rpm, air);
            return Kilopascals(Dunnock.Centrifugal.WithCompressorPulley(Wren.Percent(-change)), rpm, air) > now
                && Kilopascals(Dunnock.Centrifugal.WithCrankPulley(Wren.Percent(change)), rpm, air) > now
                && Kilopascals(Dunnock.Centrifugal.WithCompressorPulley(Wren.Percent(change)), rpm, air) < now;
        });

    [Fact]
    public void Boost_InThinnerOrHotterAir_IsLower() =>
        Gen.Select(Gen.Double[3000, 6650], Gen.Double[1, 15], Air).Sample((rpm, change, air) =>
        {
            double now = Kilopascals(Dunnock.Centrifugal, rpm, air);
            Atmosphere thin = Atmosphere.Of(air.Pressure - Wren.Kpa(change), air.Temperature);
            Atmosphere hot = Atmosphere.Of(air.Pressure, Temperature.FromKelvins(air.Temperature.Kelvins + change));
            return Kilopascals(Dunnock.Centrifugal, rpm, thin) < now && Kilopascals(Dunnock.Centrifugal, rpm, hot) < now;
        });

    [Fact]
    public void Boost_WithSpeed_NeverFalls_AndIsNoVacuum() =>
        Gen.Select(Gen.Double[200, 6650], Gen.Double[1, 500], Air).Sample((rpm, faster, air) =>
            Kilopascals(Dunnock.Centrifugal, rpm, air) >= 0
            && Kilopascals(Dunnock.Centrifugal, rpm + faster, air) >= Kilopascals(Dunnock.Centrifugal, rpm, air));

    /// <summary>Twice the known speed at a known ratio of 3: some 900 kPa, which no engine of these has.</summary>
    [Fact]
    public void Boost_PastWhatTheLibraryCalculatesWith_IsRefusedWithTheCure()
    {
        CentrifugalBoost line = CentrifugalBoost.From(8.37, Wren.Rpm(3000), Wren.Kpa(200), Atmosphere.Standard);
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => line.At(Wren.Rpm(6000), Dunnock.Demand(), Atmosphere.Standard));
        Assert.Equal("speed", refused.ParamName);
        Assert.Contains("4.00 bar", refused.Message, StringComparison.Ordinal);
        Assert.Contains("Check known point, drive ratio and pulley.", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>12 % off the compressor pulley: 8.37/0.88; back again by 1/0.88 − 1 on it.</summary>
    [Fact]
    public void Pulley_Changed_ChangesTheDriveRatio_AndNotTheKnownPoint()
    {
        BeltDrivenBoost smaller = Dunnock.Centrifugal.WithCompressorPulley(Wren.Percent(-12));
        Assert.Equal(8.37 / 0.88, smaller.DriveRatio, 1e-12);
        Assert.Equal(8.37, ((CentrifugalBoost)smaller).KnownDriveRatio);
        Assert.Equal<BeltDrivenBoost>(Dunnock.Centrifugal, smaller.WithCompressorPulley(Ratio.FromDecimalFractions((1 / 0.88) - 1)));
        Assert.Equal(8.37 * 1.12, Dunnock.Centrifugal.WithCrankPulley(Wren.Percent(12)).DriveRatio, 1e-12);
        Assert.Equal(smaller, Dunnock.Centrifugal.WithDriveRatio(8.37 / 0.88));
    }

    [Fact]
    public void Pulley_ThatWouldTurnTheCompressorPastReason_IsRefusedByName()
    {
        BeltDrivenBoost fast = Dunnock.Centrifugal.WithDriveRatio(15);
        ArgumentOutOfRangeException refused = Assert.Throws<ArgumentOutOfRangeException>(() => fast.WithCompressorPulley(Wren.Percent(-40)));
        Assert.Equal("change", refused.ParamName);
        Assert.Contains("It would be 25.", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>52,000 rev/min at 8.37 times the crank's speed are 6,212.7 rev/min of the crank; with the smaller pulley 5,467.1.</summary>
    [Fact]
    public void MaximumCompressorSpeed_IsReachedEarlierWithASmallerPulley()
    {
        Assert.Null(Dunnock.Centrifugal.SpeedAtMaximum);
        BeltDrivenBoost limited = Dunnock.Centrifugal.WithMaximumCompressorSpeed(Wren.Rpm(52_000));
        Assert.Equal(6212.664, limited.SpeedAtMaximum!.Value.RevolutionsPerMinute, 1e-3);
        Assert.Equal(52_000, limited.CompressorSpeedAt(limited.SpeedAtMaximum!.Value).RevolutionsPerMinute, 1e-6);
        Assert.Equal(5467.145, limited.WithCompressorPulley(Wren.Percent(-12)).SpeedAtMaximum!.Value.RevolutionsPerMinute, 1e-3);
        Assert.NotEqual(Dunnock.Centrifugal, limited);
    }

    /// <summary>Where the compressor just makes up for the cooler's drop: none below, some above.</summary>
    [Fact]
    public void Knot_WithACoolersDrop_IsWhereBoostBegins()
    {
        double begins = Assert.Single(Dunnock.Centrifugal.KnotsFor(Dunnock.Demand(), Atmosphere.Standard));
        Assert.InRange(begins * 60, 1000, 4000);
        Assert.Equal(0, Dunnock.Centrifugal.PascalsAt(begins * 0.999999, Dunnock.Demand(), Atmosphere.Standard));
        Assert.InRange(Dunnock.Centrifugal.PascalsAt(begins * 1.000001, Dunnock.Demand(), Atmosphere.Standard), 1e-6, 1);
        Assert.Empty(Dunnock.Centrifugal.KnotsFor(
            Dunnock.Demand(induction: Induction.BeltDriven(Wren.Percent(63), Ratio.Zero, Pressure.Zero, Wren.Percent(94))), Atmosphere.Standard));
    }

    private static double Kilopascals(BoostLine line, double rpm, Atmosphere air) => line.At(Wren.Rpm(rpm), Dunnock.Demand(), air).Kilopascals;
}
