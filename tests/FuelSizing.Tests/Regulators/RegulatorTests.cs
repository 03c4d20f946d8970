using CsCheck;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Regulators;

public class RegulatorTests
{
    private static readonly Gen<double> Boost = Gen.Double[-0.9, 3];

    /// <summary>Common practice, no source: a unit of gain 6 raises the rail by 6 for each 1 of boost.</summary>
    [Fact]
    public void RisingRate_OfGainSix_RaisesTheRailBySixForEachOne()
    {
        RisingRate unit = RisingRate.From(Pressure.FromPoundsForcePerSquareInch(43.5), 6, Pressure.Zero);
        for (int boost = 0; boost <= 8; boost++)
        {
            Assert.Equal(
                43.5 + (6 * boost),
                unit.RailGauge(Pressure.FromPoundsForcePerSquareInch(boost)).PoundsForcePerSquareInch,
                9);
        }
    }

    [Fact]
    public void RisingRate_AboveItsOnset_RaisesTheDifferentialByGainLessOne() =>
        Gen.Select(Gen.Double[1, 12], Gen.Double[0.1, 1], Gen.Double[0.01, 1]).Sample((gain, onset, more) =>
        {
            RisingRate unit = RisingRate.From(Pressure.FromBars(3), gain, Pressure.FromBars(onset));
            double Differential(double boost) => unit.RailGauge(Pressure.FromBars(boost)).Bars - boost;
            return Math.Abs(Differential(onset + more) - Differential(onset) - ((gain - 1) * more)) < 1e-9;
        });

    [Fact]
    public void RisingRate_OfGainOneAndOnsetZero_IsManifoldReferenced() =>
        Boost.Sample(boost =>
            RisingRate.From(Pressure.FromBars(3), 1, Pressure.Zero).RailGauge(Pressure.FromBars(boost)).Pascals
                == ManifoldReferenced.From(Pressure.FromBars(3)).RailGauge(Pressure.FromBars(boost)).Pascals);

    [Fact]
    public void ManifoldReferenced_AtAnyBoost_KeepsTheDifferential() =>
        Boost.Sample(boost =>
            Math.Abs(ManifoldReferenced.From(Pressure.FromBars(3)).RailGauge(Pressure.FromBars(boost)).Bars - boost - 3) < 1e-9);

    [Fact]
    public void Fixed_AtAnyBoost_KeepsTheRail() =>
        Boost.Sample(boost => Fixed.At(Pressure.FromBars(4)).RailGauge(Pressure.FromBars(boost)).Bars == 4);

    [Fact]
    public void RisingRate_AboveItsCeiling_StaysThere() =>
        Boost.Sample(boost =>
            RisingRate.From(Pressure.FromBars(3), 8, Pressure.Zero, ceiling: Pressure.FromBars(6))
                .RailGauge(Pressure.FromBars(boost)) <= Pressure.FromBars(6));

    [Fact]
    public void Series_AtAnyBoost_FollowsTheHigher() =>
        Gen.Select(Boost, Gen.Double[1, 12], Gen.Double[0, 3]).Sample((boost, gain, start) =>
        {
            ManifoldReferenced first = ManifoldReferenced.From(Pressure.FromBars(3));
            RisingRate unit = RisingRate.From(Pressure.FromBars(start), gain, Pressure.Zero);
            Pressure at = Pressure.FromBars(boost);
            return RegulatorSeries.Of(first, unit).RailGauge(at).Pascals
                == Math.Max(first.RailGauge(at).Pascals, unit.RailGauge(at).Pascals);
        });

    [Fact]
    public void RailGauge_WithMoreBoost_NeverFalls() =>
        Gen.Select(Boost, Gen.Double[0, 1], Gen.Double[1, 12]).Sample((boost, more, gain) =>
        {
            RisingRate unit = RisingRate.From(Pressure.FromBars(3), gain, Pressure.FromBars(0.2));
            return unit.RailGauge(Pressure.FromBars(boost + more)) >= unit.RailGauge(Pressure.FromBars(boost));
        });

    /// <summary>Base 300 kPa, gain 5 from 50 kPa of boost, ceiling 600 kPa, by hand at a handful of boosts.</summary>
    [Theory]
    [InlineData(-60, 240)]
    [InlineData(0, 300)]
    [InlineData(50, 350)]
    [InlineData(80, 500)]
    [InlineData(100, 600)]
    [InlineData(150, 600)]
    public void RisingRate_BelowAndAboveItsOnset_IsTheWrittenFormula(double boost, double rail) =>
        Assert.Equal(
            rail,
            RisingRate.From(Wren.Kpa(300), 5, Wren.Kpa(50), Wren.Kpa(600)).RailGauge(Wren.Kpa(boost)).Kilopascals,
            9);

    [Theory]
    [InlineData(true, 460)]
    [InlineData(false, 300)]
    public void ElectronicReturnless_FollowsTheManifoldOnlyIfItSaysSo(bool follows, double rail)
    {
        ElectronicReturnless control = ElectronicReturnless.Holding(Wren.Kpa(300), follows, Wren.Volt(6));
        Assert.Equal(rail, control.RailGauge(Wren.Kpa(160)).Kilopascals, 9);
        Assert.Equal(follows ? 240 : 300, control.RailGauge(Wren.Kpa(-60)).Kilopascals, 9);
        Assert.Equal(VolumeFlow.Zero, control.MinimumReturnFlow);
    }

    [Fact]
    public void MinimumReturnFlow_IsWhatWasGivenOrZero()
    {
        VolumeFlow minimum = VolumeFlow.FromLitersPerHour(20);
        Assert.Equal(minimum, Fixed.At(Wren.Kpa(300), minimum).MinimumReturnFlow);
        Assert.Equal(minimum, ManifoldReferenced.From(Wren.Kpa(300), minimum).MinimumReturnFlow);
        Assert.Equal(minimum, RisingRate.From(Wren.Kpa(300), 4, Pressure.Zero, null, minimum).MinimumReturnFlow);
        Assert.Equal(VolumeFlow.Zero, Fixed.At(Wren.Kpa(300)).MinimumReturnFlow);
        Assert.Equal(VolumeFlow.Zero, ManifoldReferenced.From(Wren.Kpa(300)).MinimumReturnFlow);
        Assert.Equal(VolumeFlow.Zero, RisingRate.From(Wren.Kpa(300), 4, Pressure.Zero).MinimumReturnFlow);
    }

    /// <summary>Both units pass the same returned flow, so the pair governs from the larger of their least flows.</summary>
    [Theory]
    [InlineData(10, 25)]
    [InlineData(25, 10)]
    public void Series_GovernsFromTheLargerReturnFlow(double atTheRail, double inSeries) =>
        Assert.Equal(
            25,
            RegulatorSeries.Of(
                ManifoldReferenced.From(Wren.Kpa(300), VolumeFlow.FromLitersPerHour(atTheRail)),
                RisingRate.From(Pressure.Zero, 6, Pressure.Zero, null, VolumeFlow.FromLitersPerHour(inSeries)))
                .MinimumReturnFlow.LitersPerHour,
            9);

    [Fact]
    public void Series_WithoutOneOfTheTwo_IsRefusedByName()
    {
        ManifoldReferenced first = ManifoldReferenced.From(Wren.Kpa(300));
        RisingRate unit = RisingRate.From(Pressure.Zero, 6, Pressure.Zero);
        Assert.Equal("baseRegulator", Assert.Throws<ArgumentNullException>(() => RegulatorSeries.Of(null!, unit)).ParamName);
        Assert.Equal("unit", Assert.Throws<ArgumentNullException>(() => RegulatorSeries.Of(first, null!)).ParamName);
    }

    [Fact]
    public void Description_OfEachKind_SaysWhatItDoes()
    {
        Assert.Equal("fixed at 400 kPa", Fixed.At(Wren.Kpa(400)).Description);
        ManifoldReferenced first = ManifoldReferenced.From(Wren.Kpa(300));
        Assert.Equal("manifold-referenced, base 300 kPa", first.Description);
        RisingRate open = RisingRate.From(Pressure.Zero, 6.5, Wren.Kpa(30));
        Assert.Equal("rising-rate, base 0 kPa, gain 6.5 from 0.30 bar", open.Description);
        Assert.Equal(
            "rising-rate, base 250 kPa, gain 4 from 0.00 bar, ceiling 700 kPa",
            RisingRate.From(Wren.Kpa(250), 4, Pressure.Zero, Wren.Kpa(700)).Description);
        Assert.Equal(
            "manifold-referenced, base 300 kPa; in series with it rising-rate, base 0 kPa, gain 6.5 from 0.30 bar",
            RegulatorSeries.Of(first, open).Description);
        Assert.Equal(
            "pump speed held for 300 kPa, following the manifold, down to 6.0 V",
            ElectronicReturnless.Holding(Wren.Kpa(300), true, Wren.Volt(6)).Description);
        Assert.Equal(
            "pump speed held for 300 kPa, down to 6.0 V",
            ElectronicReturnless.Holding(Wren.Kpa(300), false, Wren.Volt(6)).Description);
    }

    /// <summary>Another base moves the rail by the same amount at any boost, and changes nothing else.</summary>
    [Fact]
    public void WithBase_OfEachKind_MovesTheBaseAlone()
    {
        VolumeFlow minimum = VolumeFlow.FromLitersPerHour(20);
        foreach (PressureRegulator regulator in new PressureRegulator[]
        {
            Fixed.At(Wren.Kpa(300), minimum),
            ManifoldReferenced.From(Wren.Kpa(300), minimum),
            RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(20), Wren.Kpa(2000), minimum),
            ElectronicReturnless.Holding(Wren.Kpa(300), true, Wren.Volt(6)),
        })
        {
            PressureRegulator raised = regulator.WithBase(Wren.Kpa(350));
            Assert.Equal(regulator.GetType(), raised.GetType());
            Assert.Equal(regulator.MinimumReturnFlow, raised.MinimumReturnFlow);
            foreach (double boost in new[] { -60.0, 0, 120 })
            {
                Assert.Equal(
                    regulator.RailGauge(Wren.Kpa(boost)).Kilopascals + 50,
                    raised.RailGauge(Wren.Kpa(boost)).Kilopascals,
                    9);
            }
        }

        Assert.Equal(
            "basePressure",
            Assert.Throws<ArgumentException>(() => RegulatorSeries.Of(
                ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 6, Pressure.Zero))
                .WithBase(Wren.Kpa(350))).ParamName);
    }

    [Fact]
    public void Off_BySoMuch_MovesTheRailBySoMuch()
    {
        RegulatorSeries pair = RegulatorSeries.Of(
            ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 6, Pressure.Zero));
        Assert.Equal(480 + 12, pair.Off(12e3).RailGauge(Wren.Kpa(80)).Kilopascals, 9);
        Assert.Equal(300 - 7, Fixed.At(Wren.Kpa(300)).Off(-7e3).RailGauge(Wren.Kpa(80)).Kilopascals, 9);
    }
}
