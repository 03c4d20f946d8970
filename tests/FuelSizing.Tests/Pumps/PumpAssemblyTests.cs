using CsCheck;
using FuelSizing.Electrical;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

using Pressure = UnitsNet.Pressure;

public class PumpAssemblyTests
{
    private const double Supply = 13.5;

    private static readonly Gen<double> Flow = Gen.Double[1e-6, 5e-5];

    // A head curve 365 − 20 Q² ft (Q in ft³/s) against a system of 290 + 26.351 Q² ft. The curve goes in as a table of 41
    // points in place of ft and ft³/s: the units cancel, so 1 ft stands for 1 kPa and 1 ft³/s for 100 L/h.
    [Theory]
    [InlineData("one", 1.2720, 332.64)]
    [InlineData("series", 2.5752, 464.74)]
    [InlineData("parallel", 1.5467, 353.04)]
    public void TextbookPumps_AgainstATextbookSystem_MeetWhereTheBookSays(string arrangement, double flow, double head)
    {
        const string source = "Fluid mechanics exercise, pumps 365 − 20 Q² ft in series and parallel on 290 + 26.351 Q² ft (closed form)";
        double last = Math.Sqrt(365.0 / 20);
        PumpCurve curve = PumpCurve.At(
            "book",
            Wren.Volt(Supply),
            [.. Enumerable.Range(0, 41).Select(i => last * (40 - i) / 40).Select(
                q => (Pressure.FromKilopascals(365 - (20 * q * q)), VolumeFlow.FromLitersPerHour(100 * q)))]);
        PumpAssembly pump = arrangement switch
        {
            "one" => Pump.By(curve),
            "series" => PumpSeries.Of(SeriesBypass.None, Pump.By(curve), Pump.By(curve)),
            _ => PumpParallel.Of(Pump.By(curve), Pump.By(curve)),
        };

        double crossing = MathNet.Numerics.RootFinding.Brent.FindRoot(
            q => (pump.Running(Supply).RiseAt(q * 100 / 3.6e6) / 1000) - 290 - (26.351 * q * q), 0.1, 4.2, 1e-12, 200);

        // The table's cubic leaves 0.1 %.
        Published.Value(source, flow, crossing, 1e-3);
        Published.Value(source, head, 290 + (26.351 * crossing * crossing), 1e-3);
    }

    // H = 7.46 − 0.0453 Q² m against 3.52 + 0.0261 Q² m, Q in L/min.
    /// <summary>Pumps in series find their flow by iteration, which near the free flow may be off by a rounding.</summary>
    [Fact]
    public void Describe_OfSeriesBesideAPump_SharesTheFlowOutUpToTheFreeFlow()
    {
        static VolumeFlow Litres(double flow) => VolumeFlow.FromLitersPerHour(flow);
        Pump large = Pump.By(PumpCurve.At("p", Wren.Volt(13.5), (Wren.Kpa(0), Litres(200)), (Wren.Kpa(300), Litres(150)), (Wren.Kpa(600), Litres(0))));
        Pump small = Pump.By(PumpCurve.At("s", Wren.Volt(13.5), (Wren.Kpa(0), Litres(150)), (Wren.Kpa(200), Litres(100)), (Wren.Kpa(400), Litres(0))));
        RunningPumps both = PumpParallel.Of(PumpSeries.Of(SeriesBypass.CheckValve, large, small), small).Running(13.2);
        for (int step = 0; step <= 2000; step++)
        {
            double flow = both.FreeFlow * (1 - Math.Pow(10, -9.0 * step / 2000));
            List<PumpPoint> points = [];
            both.Describe(flow, points);

            // The first two carry the same fuel, one behind the other.
            Assert.Equal(flow, points[0].Flow + points[2].Flow, 1e-9 * both.FreeFlow);
        }
    }

    [Fact]
    public void Curves_WithCurrentAtOneVoltageOnly_AreRefused() =>
        Assert.Contains(
            "for every curve, or for none",
            Assert.Throws<ArgumentException>(() => Pump.Of([Wren.WiredCurve(12, 0.85), Wren.Pump])).Message,
            StringComparison.Ordinal);

    [Fact]
    public void CengelsPump_OnHisSystem_DeliversWhatHeSays()
    {
        double last = Math.Sqrt(7.46 / 0.0453);
        Pump pump = Pump.By(PumpCurve.At(
            "book",
            Wren.Volt(Supply),
            [.. Enumerable.Range(0, 41).Select(i => last * (40 - i) / 40).Select(
                q => (Pressure.FromKilopascals(7.46 - (0.0453 * q * q)), VolumeFlow.FromLitersPerMinute(q)))]));
        double crossing = MathNet.Numerics.RootFinding.Brent.FindRoot(
            q => (pump.Running(Supply).RiseAt(q / 6e4) / 1000) - 3.52 - (0.0261 * q * q), 0.1, 12, 1e-12, 200);
        Published.Value(
            "Çengel and Cimbala, Fluid Mechanics, pump and system curve problem (closed form 7.428 L/min)", 7.428, crossing, 1e-3);
    }

    // Pump points in gal/min and ft; system 10 ft + 200 ft of 6 in pipe, f 0.02, K 3: 10 + 2.20e-5 Q² ft.
    [Fact]
    public void MunsonsPump_OnHisSystem_DeliversWhatHeSays()
    {
        (double Gallons, double Feet)[] points =
            [(2300, 40), (2200, 46), (1800, 60), (1400, 70), (800, 81), (400, 86), (0, 88)];
        Pump pump = Pump.By(PumpCurve.At(
            "book",
            Wren.Volt(Supply),
            [
                .. points.Select(
                    point => (Pressure.FromKilopascals(point.Feet), VolumeFlow.FromLitersPerHour(point.Gallons))),
            ]));
        double crossing = MathNet.Numerics.RootFinding.Brent.FindRoot(
            q => (pump.Running(Supply).RiseAt(q / 3.6e6) / 1000) - 10 - (2.20e-5 * q * q), 100, 2290, 1e-9, 200);

        // The book reads its answers off a plot; halfway between its points at 1,400 and 1,800 gal/min lie 65 ft.
        const string source = "Munson, Young and Okiishi, Fundamentals of Fluid Mechanics, example 12.4 (answers 1,600 gal/min, 66.5 ft, from memory)";
        Published.Value(source, 1600, crossing, 0.01);
        Published.Value(source, 66.5, 10 + (2.20e-5 * crossing * crossing), 0.015);
    }

    [Fact]
    public void Series_AtAFlow_AddsRises() =>
        Flow.Sample(flow =>
        {
            PumpAssembly pair = PumpSeries.Of(SeriesBypass.CheckValve, Pump.By(Wren.Pump), Pump.By(Wren.PumpOf(0.8)));
            double sum = Rise(Pump.By(Wren.Pump), flow) + Rise(Pump.By(Wren.PumpOf(0.8)), flow);
            return Math.Abs(Rise(pair, flow) - sum) <= 1e-9 * sum;
        });

    [Fact]
    public void Parallel_AtARise_AddsFlows() =>
        Gen.Double[0, 9e5].Sample(rise =>
        {
            PumpAssembly pair = PumpParallel.Of(Pump.By(Wren.Pump), Pump.By(Wren.PumpOf(0.8)));
            double sum = FlowAt(Pump.By(Wren.Pump), rise) + FlowAt(Pump.By(Wren.PumpOf(0.8)), rise);
            return FlowAt(pair, rise) == sum && sum >= 0;
        });

    [Fact]
    public void Rise_OfAnyNesting_IsUndoneByFlow() =>
        Gen.Select(Assemblies(3), Gen.Double[0.01, 0.99]).Sample((pump, share) =>
        {
            double flow = share * pump.Running(Supply).FreeFlow;
            double rise = Rise(pump, flow);

            // Where a relief valve opens the curve is upright, and the flow lies between its two ends.
            return rise <= 0
                || (FlowAt(pump, rise * (1 - 1e-12)) >= flow * (1 - 1e-8) && FlowAt(pump, rise * (1 + 1e-12)) <= flow * (1 + 1e-8));
        });

    [Fact]
    public void Describe_OfAParallelPair_SharesTheFlowOut() =>
        Gen.Select(Assemblies(1), Assemblies(1), Gen.Double[0.01, 0.99]).Sample((first, second, share) =>
        {
            PumpAssembly pair = PumpParallel.Of(first, second);
            double flow = share * pair.Running(Supply).FreeFlow;
            List<PumpPoint> all = [];
            pair.Running(Supply).Describe(flow, all);
            return Math.Abs(all.Sum(point => point.Flow) - flow) <= 1e-8 * flow;
        });

    [Fact]
    public void Flow_WithMoreRiseOrLessVoltage_NeverGrows() =>
        Gen.Select(Assemblies(2), Gen.Double[0, 8e5], Gen.Double[0, 1e5], Gen.Double[10, 14], Gen.Double[0, 1]).Sample(
            (pump, rise, more, supply, less) =>
            {
                double flow = pump.Running(supply).FlowAt(rise);
                return pump.Running(supply).FlowAt(rise + more) <= flow * (1 + 1e-9)
                    && pump.Running(supply - less).FlowAt(rise) <= (flow * (1 + 1e-9)) + 1e-15;
            });

    [Fact]
    public void SeriesStage_WithACheckValve_NeverLowersTheRise() =>
        Gen.Select(Assemblies(2), Assemblies(2), Gen.Double[0, 1]).Sample((first, second, share) =>
        {
            double flow = share * first.Running(Supply).FreeFlow;
            return Rise(PumpSeries.Of(SeriesBypass.CheckValve, first, second), flow) >= Rise(first, flow) * (1 - 1e-9);
        });

    [Fact]
    public void Series_WithoutBypass_PassesNoMoreThanItsWeakestStage() =>
        Assert.Equal(
            Pump.By(Wren.PumpOf(0.5)).Running(Supply).FreeFlow,
            PumpSeries.Of(SeriesBypass.None, Pump.By(Wren.Pump), Pump.By(Wren.PumpOf(0.5))).Running(Supply).FreeFlow);

    [Fact]
    public void Pump_BetweenTwoVoltages_LiesBetweenTheirCurves() =>
        Gen.Select(Gen.Double[12, 13.5], Gen.Double[0, 7e5]).Sample((volts, rise) =>
        {
            Pump pump = Pump.Of([Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1)]);
            double flow = pump.Running(volts).FlowAt(rise);
            return flow >= pump.Running(12).FlowAt(rise) && flow <= pump.Running(13.5).FlowAt(rise);
        });

    /// <summary>A hundredth of a volt moves the deadhead by what the affinity laws allow, also across a measured voltage.</summary>
    [Fact]
    public void Deadhead_AcrossVoltages_HasNoJump() =>
        Gen.Double[11, 13.4].Sample(volts =>
        {
            Pump pump = Pump.Of([Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1)]);
            double before = pump.Running(volts).Deadhead;
            double after = pump.Running(volts + 0.01).Deadhead;
            return after >= before && after <= before * (volts + 0.01) / volts * (volts + 0.01) / volts * (1 + 1e-9);
        });

    [Fact]
    public void Pump_ByTheAffinityLaws_ScalesItsMeasuredCurve() =>
        Gen.Select(Gen.Double[9.6, 13.4], Gen.Double[0, 3e5]).Sample((volts, rise) =>
        {
            double s = volts / 13.5;
            double expected = Wren.Pump.FlowAt(Pressure.FromPascals(rise / s / s)).CubicMetersPerSecond * s;
            return Math.Abs(Pump.By(Wren.Pump).Running(volts).FlowAt(rise) - expected) <= 1e-12 * expected;
        });

    [Fact]
    public void Relief_InThePump_EndsItsCurve()
    {
        Pump pump = Pump.Of([Wren.Pump], relief: Wren.Kpa(500));
        Assert.Equal(0, pump.Running(Supply).FlowAt(500_001));
        Assert.Equal(500_000, pump.Running(Supply).RiseAt(0), 3);
        Assert.Equal(Pump.By(Wren.Pump).Running(Supply).FlowAt(499_999), pump.Running(Supply).FlowAt(499_999));
    }

    [Fact]
    public void Condition_OfAWornPump_TakesOffItsShare() =>
        Gen.Select(Gen.Double[0, 7e5], Gen.Double[30, 100]).Sample((rise, left) =>
        {
            double worn = Pump.Of([Wren.Pump], condition: Ratio.FromPercent(left)).Running(Supply).FlowAt(rise);
            double whole = Pump.By(Wren.Pump).Running(Supply).FlowAt(rise);
            return Math.Abs(worn - (whole * left / 100)) <= 1e-12 * whole;
        });

    /// <summary>Ohm's law round the loop: the supply is the motor's voltage and the drop, at the current of the solved point.</summary>
    [Fact]
    public void Feed_OfAPump_ClosesItsVoltageLoop() =>
        Gen.Select(Gen.Double[1e-6, 4e-5], Gen.Double[0, 12]).Sample((flow, metres) =>
        {
            Feed feed = FeedOf(metres);
            List<PumpPoint> points = [];
            Pump pump = Pump.Of([Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1)], feed: feed);
            pump.Running(Supply).Describe(flow, points);
            PumpPoint point = points.Single();
            return Math.Abs(point.Voltage + (point.Current!.Value * feed.LoopOhms) - Supply) < 1e-9 * Supply;
        });

    [Fact]
    public void Feed_LongerOrThinner_NeverRaisesTheMotorsVoltageOrFlow() =>
        Gen.Select(Gen.Double[0, 6e5], Gen.Double[0, 10], Gen.Double[0, 5], Gen.Int[8, 18]).Sample((rise, metres, more, gauge) =>
        {
            double With(double length, int awg) => Pump.Of([Wren.WiredCurve(13.5, 1)], feed: FeedOf(length, awg)).Running(Supply).FlowAt(rise);
            double flow = With(metres, gauge);
            return With(metres + more, gauge) <= flow * (1 + 1e-9) && With(metres, gauge + 2) <= flow * (1 + 1e-9);
        });

    [Fact]
    public void Feed_WithoutACurrent_IsRefused() =>
        Assert.Contains(
            "PumpCurve.WithCurrent",
            Assert.Throws<ArgumentException>(() => Pump.By(Wren.Pump).FedThrough(FeedOf(3))).Message,
            StringComparison.Ordinal);

    [Fact]
    public void Curves_OutOfOrder_AreRefused()
    {
        Assert.Contains(
            "Sort the curves",
            Assert.Throws<ArgumentOutOfRangeException>(
                () => Pump.Of([Wren.WiredCurve(13.5, 1), Wren.WiredCurve(12, 0.8)])).Message,
            StringComparison.Ordinal);
        Assert.Contains(
            "no less at a higher voltage",
            Assert.Throws<ArgumentOutOfRangeException>(
                () => Pump.Of([Wren.WiredCurve(12, 1), Wren.WiredCurve(13.5, 0.8)])).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void CurveAt_OfAnAssembly_RunsFromFreeFlowToDeadhead()
    {
        IReadOnlyList<(Pressure PressureRise, VolumeFlow Flow)> curve =
            PumpParallel.Of(Pump.By(Wren.Pump), Pump.By(Wren.Pump)).CurveAt(Wren.Volt(Supply));
        Assert.Equal(430, curve[0].Flow.LitersPerHour, 6);
        Assert.Equal(750, curve[^1].PressureRise.Kilopascals, 3);
        Assert.InRange(curve[^1].Flow.LitersPerHour, 0, 1e-5);
    }

    /// <summary>Any nesting of single pumps, series and parallel, some wired, some worn, some with a relief valve.</summary>
    internal static Gen<PumpAssembly> Assemblies(int depth)
    {
        Gen<PumpAssembly> single = Gen.Select(
            Gen.Double[0.3, 2], Gen.Double[0, 8], Gen.Double[60, 100], Gen.Double[300, 1500], Gen.Int[0, 3]).Select(
            (scale, metres, condition, relief, kind) => (PumpAssembly)(kind switch
            {
                0 => Pump.By(Wren.PumpOf(scale)),
                1 => Pump.Of([Wren.WiredCurve(13.5, scale)], feed: FeedOf(metres)),
                2 => Pump.Of(
                    [Wren.WiredCurve(12, 0.85 * scale), Wren.WiredCurve(13.5, scale)],
                    Pressure.FromKilopascals(relief),
                    Ratio.FromPercent(condition),
                    FeedOf(metres)),
                _ => Pump.Of([Wren.PumpOf(scale)], Pressure.FromKilopascals(relief), Ratio.FromPercent(condition)),
            }));
        if (depth <= 1)
        {
            return single;
        }

        Gen<PumpAssembly> inner = Assemblies(depth - 1);
        return Gen.OneOf(
            single,
            Gen.Select(inner, inner).Select((a, b) => (PumpAssembly)PumpSeries.Of(SeriesBypass.CheckValve, a, b)),
            Gen.Select(inner, inner).Select((a, b) => (PumpAssembly)PumpParallel.Of(a, b)));
    }

    internal static Feed FeedOf(double metres, int gauge = 12) => Feed.Of(
        "pump feed",
        Conductor.Awg(gauge),
        Length.FromMeters(metres),
        Length.FromMeters(metres),
        Temperature.FromDegreesCelsius(40),
        Contact.UsualFuse,
        Contact.UsualRelay);

    private static double Rise(PumpAssembly pump, double flow) => pump.Running(Supply).RiseAt(flow);

    private static double FlowAt(PumpAssembly pump, double rise) => pump.Running(Supply).FlowAt(rise);
}
