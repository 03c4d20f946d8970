using CsCheck;
using FuelSizing.Bench;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// What a pump fills a vessel with. Intervals are checked against benches that an independent program makes (<c>tests/peer/bench_parts.py</c>); here figures worked by hand, and what must be refused or named.
/// </summary>
public class PumpFlowFitTests
{
    private static readonly GaugeAccuracy Exact = GaugeAccuracy.Of(Pressure.FromPascals(1), Pressure.Zero, Ratio.Zero);

    /// <summary>
    /// Two readings each at 0, 200 and 400 kPa. Their relative half-differences are far over what a scale of 1 mg explains, so the scatter is theirs: with three to spare the relative standard deviation is
    /// √(Σ d²/2 / 3), d the relative differences, and the interval t(3) = 3.1824 (NIST/SEMATECH e-Handbook, table of Student's t: 3.182) of it over √2.
    /// </summary>
    [Fact]
    public void Intervals_OfRepeats_AreStudents()
    {
        PumpFlowFit fit = PumpFlowFit.Of(Test([(0, 1010), (0, 990), (200, 808), (200, 800), (400, 597), (400, 603)]));
        double[] means = [1000, 804, 600];
        double[] apart = [20.0 / 1000, 8.0 / 804, 6.0 / 600];
        double scatter = Math.Sqrt(apart.Sum(one => one * one / 2) / 3);
        Assert.Equal(scatter, fit.Scatter.DecimalFractions, 1e-6);
        for (int point = 0; point < 3; point++)
        {
            double flow = means[point] / 1000 / 683.8 / 30;
            Assert.Equal(flow, fit.Points[point].Flow.CubicMetersPerSecond, 1e-12 * flow);
            double half = 3.18244630528 * scatter / Math.Sqrt(2) * flow;
            Assert.Equal(flow - half, fit.Points[point].MinimumFlow.CubicMetersPerSecond, 1e-6 * flow);
            Assert.Equal(flow + half, fit.Points[point].MaximumFlow.CubicMetersPerSecond, 1e-6 * flow);
            Assert.Equal(2, fit.Points[point].Readings);
        }

        Assert.Empty(fit.Outliers);
        Assert.Empty(fit.Rising);
    }

    /// <summary>Repeats that all agree are no more certain than scale and clock: 1.96 of (2 g of 1 kg, 0.1 s of 30 s) over √2, and nothing is an outlier.</summary>
    [Fact]
    public void Repeats_ThatAllAgree_AreAsSureAsTheInstruments()
    {
        PumpFlowFit fit = PumpFlowFit.Of(Test([(0, 1000), (0, 1000), (200, 800), (200, 800), (400, 600), (400, 600)], scale: 2, clock: 0.1));
        PumpFlowPoint free = fit.Points[0];
        double half = 1.959963984540054 * Math.Sqrt(Math.Pow(2.0 / 1000, 2) + Math.Pow(0.1 / 30, 2)) / Math.Sqrt(2);
        Assert.Equal(half, (free.MaximumFlow - free.Flow) / free.Flow, 1e-5);
        Assert.Equal(0, fit.Scatter.DecimalFractions, 1e-9);
        Assert.Empty(fit.Outliers);
    }

    /// <summary>What all readings share does not average out: density, calibration, and the gauge's zero by the slope of the curve.</summary>
    [Fact]
    public void SharedErrors_WidenEveryPoint()
    {
        (double, double)[] readings = [(0, 1000), (0, 1000), (200, 800), (200, 800), (400, 600), (400, 600)];
        PumpFlowFit plain = PumpFlowFit.Of(Test(readings, scale: 2));
        PumpFlowFit shared = PumpFlowFit.Of(Test(readings, scale: 2, density: 0.3, calibration: 0.4, gauge: GaugeAccuracy.Of(Pressure.FromPascals(1), Wren.Kpa(3), Ratio.Zero)));
        for (int point = 0; point < 3; point++)
        {
            double flow = plain.Points[point].Flow.CubicMetersPerSecond;
            double Half(PumpFlowFit fit) => (fit.Points[point].MaximumFlow.CubicMetersPerSecond - flow) / flow;
            double slope = 1.0 / 1000 * 1000 / (1000 - (200 * point));
            Assert.Equal(Math.Sqrt(Math.Pow(Half(plain) / 1.959963984540054, 2) + (0.003 * 0.003) + (0.004 * 0.004) + Math.Pow(3 * slope, 2)) * 1.959963984540054, Half(shared), 1e-5);
        }
    }

    /// <summary>One blunder of 6 % among four repeats is named, in whichever order readings stand; without it the curve is as before.</summary>
    [Fact]
    public void Blunder_AmongRepeats_IsNamed()
    {
        (double, double)[] readings = [.. new[] { 0.0, 200, 400, 600 }.SelectMany(rise => new[] { 1.2, -0.8, 0.5, -0.9 }.Select(off => (rise, 1000 - (0.8 * rise) + off)))];
        readings[6] = (200, 790);
        Assert.Equal([6], PumpFlowFit.Of(Test(readings)).Outliers);
        Assert.Equal([readings.Length - 7], PumpFlowFit.Of(Test([.. Enumerable.Reverse(readings)])).Outliers);
        Assert.Empty(PumpFlowFit.Of(Test(readings).Without(6)).Outliers);
    }

    /// <summary>Flow that rises with pressure by more than readings scatter is named and makes no curve; by less it is pooled.</summary>
    [Fact]
    public void Flow_ThatRisesWithPressure_IsNamed()
    {
        PumpFlowFit rising = PumpFlowFit.Of(Test([(0, 1000), (0, 1001), (200, 800), (200, 801), (400, 850), (400, 851)]));
        Assert.Equal(400, Assert.Single(rising.Rising).PressureRise.Kilopascals, 9);
        Assert.Equal("bench.pump-flow-rising", rising.Text.Code);
        Assert.Contains("air that was drawn", Assert.Throws<InvalidOperationException>(rising.Curves).Message, StringComparison.Ordinal);

        PumpFlowFit within = PumpFlowFit.Of(Test([(0, 1000), (0, 1010), (200, 900), (200, 910), (400, 901), (400, 911)]));
        Assert.Empty(within.Rising);
        PumpCurve curve = Assert.Single(within.Curves());
        Assert.Equal(905.5 / 1000 / 683.8 / 30, curve.FlowAt(Wren.Kpa(200)).CubicMetersPerSecond, 1e-8);
        Assert.Equal(curve.FlowAt(Wren.Kpa(200)).CubicMetersPerSecond, curve.FlowAt(Wren.Kpa(400)).CubicMetersPerSecond, 1e-12);
    }

    /// <summary>Two voltages with current make a pump that a fuel system takes; the lower curves deliver no more, the upper ones no less.</summary>
    [Fact]
    public void Curves_OfTwoVoltages_MakeAPump()
    {
        PumpFlowReading[] readings =
        [
            .. from volts in new[] { 13.5, 12.0 }
               from kilopascals in new[] { 600.0, 0, 300 }
               from off in new[] { -1.0, 1 }
               select PumpFlowReading.OfMass(
                   Wren.Kpa(kilopascals),
                   Wren.Volt(volts),
                   Mass.FromGrams((volts * 100) - (0.8 * kilopascals) + off),
                   Duration.FromSeconds(30),
                   ElectricCurrent.FromAmperes(4 + (kilopascals / 100) + (0.01 * off))),
        ];
        PumpFlowFit fit = PumpFlowFit.Of(PumpFlowTest.Weighed(
            "pump S", TestFluid.Heptane, Mass.FromGrams(1), Duration.FromSeconds(0.1), Exact, Wren.Percent(0.1), Wren.Percent(0.1), readings, ElectricCurrent.FromAmperes(0.05)));
        Assert.Equal([12.0, 12, 12, 13.5, 13.5, 13.5], fit.Points.Select(point => Math.Round(point.Voltage.Volts, 9)));
        Pump pump = Pump.Of(fit.Curves());
        Assert.True(pump.Curves.All(curve => curve.HasCurrent));
        Assert.Equal(7, fit.Curves()[1].CurrentAt(Wren.Kpa(300)).Amperes, 1e-9);
        foreach ((PumpCurve low, PumpCurve middle, PumpCurve high) in fit.MinimumCurves().Zip(fit.Curves(), fit.MaximumCurves()))
        {
            foreach (double kilopascals in new[] { 0.0, 140, 300, 520, 600 })
            {
                Assert.True(low.FlowAt(Wren.Kpa(kilopascals)) < middle.FlowAt(Wren.Kpa(kilopascals)));
                Assert.True(high.FlowAt(Wren.Kpa(kilopascals)) > middle.FlowAt(Wren.Kpa(kilopascals)));
                Assert.True(low.CurrentAt(Wren.Kpa(kilopascals)) > high.CurrentAt(Wren.Kpa(kilopascals)));
            }
        }

        // The ammeter's own 0.05 A does not average out.
        Assert.InRange(fit.Points[0].MaximumCurrent!.Value.Amperes - fit.Points[0].Current!.Value.Amperes, 1.95 * 0.05, 0.15);
        FuelSystem system = FuelSystem.Return(Wren.Demand(), FuelSizing.Injectors.InjectorSet.Of(Wren.InjectorOf(360), 4), FuelSizing.Regulators.Fixed.At(Wren.Kpa(300)), pump, null, null);
        Assert.NotNull(system.Solve(Wren.At(5000, 0)));
    }

    /// <summary>Volumes and the masses that they weigh make the same flows.</summary>
    [Fact]
    public void Volumes_MakeTheSameFlowsAsMasses()
    {
        (double, double)[] readings = [(0, 1000), (0, 1004), (200, 800), (200, 803), (400, 600), (400, 601)];
        PumpFlowFit weighed = PumpFlowFit.Of(Test(readings, scale: 2));
        PumpFlowFit measured = PumpFlowFit.Of(PumpFlowTest.Measured(
            "pump S",
            Volume.FromCubicMeters(2e-3 / 683.8),
            Duration.FromMilliseconds(1),
            Exact,
            Ratio.Zero,
            [.. readings.Select(point => PumpFlowReading.OfVolume(Wren.Kpa(point.Item1), Wren.Volt(13.5), Volume.FromCubicMeters(point.Item2 / 1000 / 683.8), Duration.FromSeconds(30)))]));
        foreach ((PumpFlowPoint one, PumpFlowPoint other) in weighed.Points.Zip(measured.Points))
        {
            Assert.Equal(one.Flow.CubicMetersPerSecond, other.Flow.CubicMetersPerSecond, 1e-16);
            Assert.Equal(one.MinimumFlow.CubicMetersPerSecond, other.MinimumFlow.CubicMetersPerSecond, 1e-14);
        }
    }

    /// <summary>The order of readings, and a unit of mass for all, change nothing but the scale of flow.</summary>
    [Fact]
    public void Fit_HasNoOrder_AndScalesWithWhatIsCollected() =>
        Gen.Select(Gen.Double[-4, 4].Array[12], Gen.Double[0.3, 3], Gen.Int[0, 11]).Sample((offs, factor, turn) =>
        {
            (double, double)[] readings = [.. offs.Select((off, at) => (200.0 * (at / 3), 1000 - (150 * (at / 3)) + off))];
            PumpFlowFit fit = PumpFlowFit.Of(Test(readings, scale: 1));
            PumpFlowFit turned = PumpFlowFit.Of(Test([.. readings[turn..], .. readings[..turn]], scale: 1));
            PumpFlowFit scaled = PumpFlowFit.Of(Test([.. readings.Select(point => (point.Item1, point.Item2 * factor))], scale: factor));
            for (int point = 0; point < 4; point++)
            {
                Assert.Equal(fit.Points[point].Flow.CubicMetersPerSecond, turned.Points[point].Flow.CubicMetersPerSecond, 1e-9 * fit.Points[point].Flow.CubicMetersPerSecond);
                Assert.Equal(fit.Points[point].MinimumFlow.CubicMetersPerSecond, turned.Points[point].MinimumFlow.CubicMetersPerSecond, 1e-7 * fit.Points[point].Flow.CubicMetersPerSecond);
                Assert.Equal(factor * fit.Points[point].MaximumFlow.CubicMetersPerSecond, scaled.Points[point].MaximumFlow.CubicMetersPerSecond, 1e-6 * fit.Points[point].Flow.CubicMetersPerSecond * factor);
            }
        });

    /// <summary>What cannot show a curve, or how sure it is, is refused with what is missing.</summary>
    [Fact]
    public void Tests_ThatShowNoCurve_AreRefused()
    {
        void Missing(string words, Func<object> make) => Assert.Contains(words, Assert.Throws<ArgumentException>(make).Message, StringComparison.Ordinal);
        Missing("of 1 pressure, which cannot show a curve", () => Test([(300, 900), (300, 901), (300, 902), (300, 903), (300, 900), (300, 905)]));
        Missing("of 2 pressures", () => Test([(0, 900), (0, 901), (0, 902), (300, 803), (300, 800), (300, 805)]));
        Missing("has 2 repeats", () => Test([(0, 900), (0, 901), (200, 802), (200, 803), (400, 700), (600, 605)]));
        Missing("Give all by mass or all by volume", () => Test([(0, 900), (0, 901), (200, 802), (200, 803), (400, 700), (400, 700)], also: PumpFlowReading.OfVolume(Wren.Kpa(0), Wren.Volt(13.5), Volume.FromLiters(1), Duration.FromSeconds(30))));
        Missing("has the current of 1 readings of 7", () => Test([(0, 900), (0, 901), (200, 802), (200, 803), (400, 700), (400, 700)], also: PumpFlowReading.OfMass(Wren.Kpa(0), Wren.Volt(13.5), Mass.FromKilograms(0.9), Duration.FromSeconds(30), ElectricCurrent.FromAmperes(5))));
        Refused.OutOfRange("readings", () => Test([(0, 900), (0, 901), (200, 802), (200, 803), (400, 700)]));
        Refused.OutOfRange("places", () => Test([(0, 900), (0, 901), (200, 802), (200, 803), (400, 700), (400, 700)]).Without(6));
    }

    private static PumpFlowTest Test(
        (double Kilopascals, double Grams)[] readings, double scale = 0.001, double clock = 0.001, double density = 0, double calibration = 0, GaugeAccuracy? gauge = null, PumpFlowReading? also = null) =>
        PumpFlowTest.Weighed(
            "pump S",
            TestFluid.Heptane,
            Mass.FromGrams(scale),
            Duration.FromSeconds(clock),
            gauge ?? Exact,
            Wren.Percent(density),
            Wren.Percent(calibration),
            [
                .. readings.Select(point => PumpFlowReading.OfMass(Wren.Kpa(point.Kilopascals), Wren.Volt(13.5), Mass.FromGrams(point.Grams), Duration.FromSeconds(30))),
                .. also is null ? (PumpFlowReading[])[] : [also],
            ]);
}
