using FuelSizing.Bench;
using FuelSizing.Injectors;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// The static flow of an injector held open. Student's t and the line are worked by hand; that intervals hold the truth is checked against benches that an independent program makes
/// (<c>tests/peer/bench.py</c>). No published readings of an injector held open were found.
/// </summary>
public class StaticFlowTests
{
    private const double Density = 683.8;

    /// <summary>Exact readings in which the hand on the valve adds 0.4 s to each collecting: flow and addition are found to the last digits.</summary>
    [Fact]
    public void Flow_OverTwoTimes_DropsWhatTheHandAdds()
    {
        StaticFlow flow = StaticFlow.Of(Test([20, 20, 60, 60], [20.4, 20.4, 60.4, 60.4]));
        Assert.Equal(460, flow.Flow.MillilitersPerMinute, 9);
        Assert.True(flow.IsStartAndStopFound);
        Assert.Equal(0.4, flow.StartAndStop!.Value.Seconds, 9);
        Assert.Equal("bench.static-flow", flow.Text.Code);
    }

    /// <summary>At one time alone the same addition goes into the flow, 2 % of it, and the words say so.</summary>
    [Fact]
    public void Flow_OverOneTime_SaysThatTheHandIsNotKnown()
    {
        StaticFlow flow = StaticFlow.Of(Test([20, 20, 20], [20.4, 20.4, 20.4]));
        Assert.Equal(460 * 1.02, flow.Flow.MillilitersPerMinute, 9);
        Assert.False(flow.IsStartAndStopFound);
        Assert.Null(flow.StartAndStop);
        Assert.Equal("bench.static-flow-one-time", flow.Text.Code);
        Assert.Contains("collect for one time twice as long as another to see", flow.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Three readings of one time by volume: the mean, and t of 95 % with two to spare, 4.3027 (NIST/SEMATECH e-Handbook, table of Student's t: 4.303), of its deviation.</summary>
    [Fact]
    public void Interval_OfThreeReadings_IsStudents()
    {
        double[] millilitres = [229, 230, 231];
        StaticFlow flow = StaticFlow.Of(StaticTest.ByVolume(
            "injector",
            TestFluid.Heptane,
            Wren.Kpa(300),
            Volume.FromMilliliters(1),
            Duration.Zero,
            Wren.Percent(0.5),
            [.. millilitres.Select(filled => StaticReading.ByVolume(Duration.FromSeconds(30), Volume.FromMilliliters(filled)))]));
        Assert.Equal(460, flow.Flow.MillilitersPerMinute, 9);
        double own = 4.3026527297 * 1 / Math.Sqrt(3) / 230;
        double shared = 1.959963985 * 0.005;
        double half = Math.Sqrt((own * own) + (shared * shared));
        Assert.Equal(460 * (1 - half), flow.Minimum.MillilitersPerMinute, 460e-8);
        Assert.Equal(460 * (1 + half), flow.Maximum.MillilitersPerMinute, 460e-8);
        Assert.Equal(half / 1.959963985, flow.Deviation.DecimalFractions, 1e-9);
    }

    /// <summary>
    /// The orifice equation by hand: from 300 kPa on n-heptane to 400 kPa on petrol of 740 kg/m³ the flow grows by √(4/3 · 683.8/740) = 1.10998, a figure that stands in the remarks of the law; the interval grows alike.
    /// </summary>
    [Fact]
    public void Flow_OnAnotherLiquidAndPressure_FollowsTheOrificeEquation()
    {
        StaticFlow flow = StaticFlow.Of(Test([20, 20, 60, 60], [20.1, 20, 60.3, 60]));
        (VolumeFlow least, VolumeFlow at, VolumeFlow most) = flow.At(Wren.Kpa(400), UnitsNet.Density.FromKilogramsPerCubicMeter(740));
        double factor = Math.Sqrt(4.0 / 3 * 683.8 / 740);
        Assert.Equal(flow.Flow.MillilitersPerMinute * factor, at.MillilitersPerMinute, 1e-9);
        Assert.Equal(flow.Minimum.MillilitersPerMinute * factor, least.MillilitersPerMinute, 1e-9);
        Assert.Equal(flow.Maximum.MillilitersPerMinute * factor, most.MillilitersPerMinute, 1e-9);
    }

    /// <summary>A blunder of 10 % among repeats is named by its place.</summary>
    [Fact]
    public void Blunder_IsNamed()
    {
        StaticFlow flow = StaticFlow.Of(Test([20, 20, 20, 20, 60, 60, 60, 60], [20.01, 20, 19.99, 22, 60.01, 60, 59.99, 60]));
        Assert.Equal([3], flow.Outliers);
    }

    /// <summary>As an input of an uncertain system: normal about what was measured over what is described.</summary>
    [Fact]
    public void Input_IsNormalAboutWhatWasMeasured()
    {
        StaticFlow flow = StaticFlow.Of(Test([20, 20, 60, 60], [20.1, 20, 60.3, 60]));
        Injector described = InjectorOf(500);
        UncertainInput input = flow.FactorOn(described);
        Assert.Equal("injector flow", input.Name);
        double mean = flow.Flow.MillilitersPerMinute / 500;
        Assert.Equal(mean, ((Ratio)input.ValueAt(Wren.Percent(50))).DecimalFractions, 9);

        // 97.5 % of a normal lie under 1.96 deviations, cut off at four of them hardly less: the end of the interval.
        Assert.Equal(flow.Maximum.MillilitersPerMinute / 500, ((Ratio)input.ValueAt(Wren.Percent(97.5))).DecimalFractions, 5e-5 * mean);
        Assert.Throws<ArgumentOutOfRangeException>(() => flow.FactorOn(InjectorOf(1200)));
    }

    /// <summary>What cannot show a flow is refused with what is missing.</summary>
    [Fact]
    public void Tests_ThatShowNothing_AreRefused()
    {
        Assert.Contains("Collect three times or more", Assert.Throws<ArgumentOutOfRangeException>(() => Test([20, 60], [20, 60])).Message, StringComparison.Ordinal);
        Assert.Contains("longer times do not collect more", Assert.Throws<ArgumentException>(() => StaticFlow.Of(Test([20, 20, 60], [60, 60, 20]))).Message, StringComparison.Ordinal);
        Assert.Contains(
            "Give all by mass or all by volume",
            Assert.Throws<ArgumentException>(() => StaticTest.ByMass(
                "injector", TestFluid.Heptane, Wren.Kpa(300), Mass.FromGrams(0.1), Duration.Zero, Ratio.Zero,
                [.. Enumerable.Repeat(StaticReading.ByVolume(Duration.FromSeconds(30), Volume.FromMilliliters(230)), 3)])).Message,
            StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => StaticReading.ByMass(Duration.FromSeconds(0.1), Mass.FromGrams(10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => StaticReading.ByMass(Duration.FromSeconds(30), Mass.Zero));
    }

    private static Injector InjectorOf(double millilitres) => Injector.Of(
        "injector",
        VolumeFlow.FromMillilitersPerMinute(millilitres),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(0.8))),
        Wren.Ms(1.6),
        Wren.Kpa(600));

    /// <summary>Of 460 mL/min: times by the clock, and how long it flowed.</summary>
    private static StaticTest Test(double[] clock, double[] flowed) => StaticTest.ByMass(
        "injector",
        TestFluid.Heptane,
        Wren.Kpa(300),
        Mass.FromGrams(0.1),
        Duration.FromSeconds(0.1),
        Ratio.Zero,
        [.. clock.Zip(flowed, (time, open) => StaticReading.ByMass(Duration.FromSeconds(time), Mass.FromKilograms(460e-6 / 60 * Density * open)))]);
}
