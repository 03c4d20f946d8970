using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

/// <summary>
/// No exercise was found that is printed the way round in which the library asks: displacement and drive ratio given, boost
/// wanted. Two books give the boost and want the air; their air is put back here, and their boost must come out.
/// </summary>
public class DisplacementBoostTests
{
    private static readonly Gen<Atmosphere> Air = Gen.Select(Gen.Double[70, 105], Gen.Double[-10, 45]).Select(
        (kilopascals, celsius) => Atmosphere.Of(Wren.Kpa(kilopascals), Temperature.FromDegreesCelsius(celsius)));

    /// <summary>
    /// Gupta: 2.8 L at 3,000 rev/min, 1.013 bar, 288 K, filled whole at 1.6 times that pressure, compressor of 74 %: 343.93 K behind it, so the blower
    /// takes in 4.2 m³/min × 1.6 × 288/343.93 = 5.627 m³/min of free air. Eastop and McConkey: 3 L at 3,500 rev/min, ratio 1.7, 75 %:
    /// 7.326 m³/min. A compressor of that displacement must give their ratio.
    /// </summary>
    [Theory(DisplayName = "Balance of a displacement compressor and its engine; Gupta, Eastop and McConkey")]
    [InlineData("Gupta", 2.8, 3000, 0.74, 5.627, 1.6)]
    [InlineData("Eastop", 3.0, 3500, 0.75, 7.326, 1.7)]
    public void Boost_OfACompressorThatTakesInTheBooksAir_IsTheBooks(
        string author, double litres, double rpm, double efficiency, double cubicMetresPerMinute, double ratio)
    {
        FuelDemandModel demand = FuelDemandModel.Of(
            Engine.Of("engine", Volume.FromLiters(litres), 4, EngineCycle.FourStroke, Wren.Rpm(6650)),
            Induction.BeltDriven(Ratio.FromDecimalFractions(efficiency), Ratio.Zero, Pressure.Zero, Wren.Percent(100)),
            VolumetricEfficiency.Of((Wren.Rpm(1000), Wren.Percent(100)), (Wren.Rpm(6650), Wren.Percent(100))),
            Dunnock.Power,
            Wren.Percent(83),
            Dunnock.Petrol);

        // At 1.25 times the crank's speed and 80 % of its displacement, which the books do not say and which cancel.
        DisplacementBoost line = DisplacementBoost.Of(1.25, Volume.FromCubicMeters(cubicMetresPerMinute / rpm), Wren.Percent(80));
        Pressure boost = line.At(Wren.Rpm(rpm), demand, Atmosphere.Of(Wren.Kpa(101.3), Temperature.FromKelvins(288)));

        // Air to four figures; pressure answers it with a slope of about 1.2.
        Published.Value(
            (author == "Gupta" ? Works.GuptaRoots : Works.EastopCharged).At("pressure ratio, from the free air"),
            ratio,
            1 + (boost.Kilopascals / 101.3),
            1e-3);
    }

    /// <summary>
    /// Four drive ratios of one Roots compressor on one aircraft engine, flown: sea-level pressure was held up to these altitudes (the abstract was read;
    /// the report's tables were not). The compressor's volumetric efficiency is fitted at the lowest. A constant one is then an upper bound at the
    /// higher pressure ratios, as the documentation says: it would hold more than sea-level pressure there, and the more the higher the ratio. How much more is
    /// no check of the library: what leaked, and the engine's speed and breathing at each altitude, are in the tables that were not read.
    /// </summary>
    [Theory(DisplayName = "Roots compressor at four drive ratios in flight: a constant volumetric efficiency bounds boost from above; Schey and Gove, NACA")]
    [InlineData(0.55)]
    [InlineData(0.65)]
    [InlineData(0.75)]
    public void Boost_AtHigherRatiosThanWhereItsEfficiencyIsKnown_IsAnUpperBound(double isentropic)
    {
        Assert.Equal(Obtained.Read, Works.ScheyGove.Obtained);
        (double Ratio, double Feet)[] flown = [(1.615, 7000), (1.957, 11_500), (2.4, 17_000), (3, 22_000)];
        double SeaLevelOver(double ratio, double feet, double scale)
        {
            double kelvins = StandardAir.Temperature<Real>(0.3048 * feet);
            double pascals = StandardAir.Pressure<Real>(0.3048 * feet);
            FuelDemandModel demand = Dunnock.Demand(
                VolumetricEfficiency.Of((Wren.Rpm(1000), Wren.Percent(80)), (Wren.Rpm(6650), Wren.Percent(80))),
                Induction.BeltDriven(Ratio.FromDecimalFractions(isentropic), Ratio.Zero, Pressure.Zero, Wren.Percent(100)));
            DisplacementBoost line = DisplacementBoost.Of(ratio, Volume.FromLiters(scale), Wren.Percent(100));
            return (pascals + line.At(Wren.Rpm(2000), demand, Atmosphere.Of(Pressure.FromPascals(pascals), Temperature.FromKelvins(kelvins))).Pascals) / 101_325;
        }

        double fitted = Bracket.Of(scale => 1 - SeaLevelOver(flown[0].Ratio, flown[0].Feet, scale), 0.6, 1.5);
        Assert.Equal(1, SeaLevelOver(flown[0].Ratio, flown[0].Feet, fitted), 1e-9);
        double[] over = [.. flown.Select(point => SeaLevelOver(point.Ratio, point.Feet, fitted))];
        Assert.All(over[1..], one => Assert.True(one > 1));
        Assert.Equal(over.Order(), over);
    }

    /// <summary>What the compressor passes in a second is what the engine's own chain says that it draws there.</summary>
    [Fact]
    public void Air_AtTheBoostOfTheLine_IsWhatTheCompressorPasses() =>
        Gen.Select(
                Gen.Select(Gen.Double[1.2, 2.6], Gen.Double[0.9, 1.5], Gen.Double[60, 98]),
                Gen.Select(Gen.Double[30, 90], Gen.Double[0, 90], Gen.Double[0, 20]),
                Gen.Double[850, 6650],
                Air)
            .Sample((fitted, induction, rpm, air) =>
            {
                (double ratio, double litres, double compressor) = fitted;
                (double isentropic, double cooler, double loss) = induction;
                FuelDemandModel demand = Dunnock.Demand(
                    induction: Induction.BeltDriven(Wren.Percent(isentropic), Wren.Percent(cooler), Wren.Kpa(loss), Wren.Percent(94)));
                DisplacementBoost line = DisplacementBoost.Of(ratio, Volume.FromLiters(litres), Wren.Percent(compressor));
                double pascals = line.PascalsAt(rpm / 60, demand, air);
                double passed = compressor / 100 * litres / 1000 * ratio * rpm / 60 * air.Density.KilogramsPerCubicMeter;
                if (double.IsPositiveInfinity(pascals))
                {
                    return demand.At(Wren.Rpm(rpm), Wren.Kpa(400), air).AirMassFlow.KilogramsPerSecond <= passed;
                }

                double drawn = demand.At(Wren.Rpm(rpm), Pressure.FromPascals(pascals), air).AirMassFlow.KilogramsPerSecond;
                return pascals == 0 ? drawn >= passed : Math.Abs(drawn - passed) < 1e-10 * passed;
            });

    /// <summary>An engine that fills the same at all speeds: engine speed cancels. Where it fills less, boost is higher.</summary>
    [Fact]
    public void Boost_WithAFlatVolumetricEfficiency_IsFlat_AndFollowsItsReciprocal()
    {
        FuelDemandModel Flat(double percent) =>
            Dunnock.Demand(VolumetricEfficiency.Of((Wren.Rpm(850), Wren.Percent(percent)), (Wren.Rpm(6650), Wren.Percent(percent))));
        double[] boosts = [.. Enumerable.Range(9, 57).Select(hundred => Dunnock.Displacement.PascalsAt(hundred * 100 / 60.0, Flat(88), Atmosphere.Standard))];
        Assert.All(boosts, boost => Assert.Equal(boosts[0], boost, 1e-9 * boosts[0]));
        Assert.InRange(boosts[0], 20e3, 120e3);
        Assert.True(Dunnock.Displacement.PascalsAt(60, Flat(84), Atmosphere.Standard) > boosts[0]);
    }

    [Fact]
    public void Boost_WithASmallerPulley_OrADenserInlet_IsHigher() =>
        Gen.Select(Gen.Double[900, 6600], Gen.Double[1, 15], Air).Sample((rpm, change, air) =>
        {
            double At(BoostLine line, Atmosphere inlet) => line.At(Wren.Rpm(rpm), Dunnock.Demand(), inlet).Kilopascals;
            return At(Dunnock.Displacement.WithCompressorPulley(Wren.Percent(-change)), air) > At(Dunnock.Displacement, air)
                && At(Dunnock.Displacement.WithCrankPulley(Wren.Percent(-change)), air) < At(Dunnock.Displacement, air)
                && At(Dunnock.Displacement, Atmosphere.Of(air.Pressure - Wren.Kpa(change), air.Temperature)) < At(Dunnock.Displacement, air);
        });

    /// <summary>A compressor too small for the engine makes no vacuum: its bypass valve opens.</summary>
    [Fact]
    public void Boost_OfACompressorThatPassesTooLittle_IsZero() =>
        Assert.Equal(Pressure.Zero, DisplacementBoost.Of(0.9, Volume.FromLiters(1.16), Wren.Percent(87)).At(Wren.Rpm(4000), Dunnock.Demand(), Atmosphere.Standard));

    [Fact]
    public void Knots_WhereTheBypassValveOpens_AreFound()
    {
        FuelDemandModel demand = Dunnock.Demand(BoostLineTests.Opening);
        double[] opens = [.. Dunnock.Displacement.KnotsFor(demand, Atmosphere.Standard).Where(knot => !BoostLineTests.Opening.Points.Any(point => Math.Abs(point.Speed.RevolutionsPerSecond - knot) < 1e-6))];
        Assert.Equal(2, opens.Length);
        Assert.All(opens, knot => Assert.True(
            (Dunnock.Displacement.PascalsAt(knot * 0.9999, demand, Atmosphere.Standard) > 0) != (Dunnock.Displacement.PascalsAt(knot * 1.0001, demand, Atmosphere.Standard) > 0)));
    }

    [Theory]
    [InlineData(849, "Check displacement, drive ratio and the engine's volumetric efficiency.")]
    [InlineData(6651, "between 850 rev/min and 6,650 rev/min")]
    public void Boost_BeyondTheTableOfVolumetricEfficiency_IsRefused(double rpm, string says) =>
        Assert.Contains(
            says,
            Assert.Throws<ArgumentOutOfRangeException>("speed", () => Dunnock.Displacement.At(Wren.Rpm(rpm), Dunnock.Demand(), Atmosphere.Standard)).Message,
            StringComparison.Ordinal);

    /// <summary>A displacement of the crank's two turns given for one of the compressor's, for instance.</summary>
    [Fact]
    public void Boost_OfACompressorFarTooLarge_IsRefusedWithTheCure()
    {
        DisplacementBoost large = DisplacementBoost.Of(5, Volume.FromLiters(6), Wren.Percent(87));
        Assert.Equal(double.PositiveInfinity, large.PascalsAt(60, Dunnock.Demand(), Atmosphere.Standard));
        Assert.Contains(
            "Check displacement, drive ratio",
            Assert.Throws<ArgumentOutOfRangeException>("speed", () => large.At(Wren.Rpm(3600), Dunnock.Demand(), Atmosphere.Standard)).Message,
            StringComparison.Ordinal);
    }
}
