using CsCheck;
using FuelSizing.Electrical;
using FuelSizing.Pumps;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

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
    public void PumpsOfAParabola_OnASystemOfOne_MeetAtTheClosedForm(string arrangement, double flow, double head)
    {
        double last = Math.Sqrt(365.0 / 20);
        PumpCurve curve = PumpCurve.At(
            "book",
            Wren.Volt(Supply),
            [.. Enumerable.Range(0, 41).Select(i => last * (40 - i) / 40).Select(
                q => (Pressure.FromKilopascals(365 - (20 * q * q)), VolumeFlow.FromLitersPerHour(100 * q)))]);
        PumpAssembly pump = arrangement switch
        {
            "one" => Pump.From(curve),
            "series" => PumpSeries.Of(SeriesBypass.None, Pump.From(curve), Pump.From(curve)),
            _ => PumpParallel.Of(Pump.From(curve), Pump.From(curve)),
        };

        double crossing = MathNet.Numerics.RootFinding.Brent.FindRoot(
            q => (pump.Running(Supply).RiseAt(q * 100 / 3.6e6) / 1000) - 290 - (26.351 * q * q), 0.1, 4.2, 1e-12, 200);

        // The table's cubic leaves 0.1 %.
        Assert.InRange(crossing, flow * (1 - 1e-3), flow * (1 + 1e-3));
        Assert.InRange(290 + (26.351 * crossing * crossing), head * (1 - 1e-3), head * (1 + 1e-3));
    }

    // H = 7.46 − 0.0453 Q² m against 3.52 + 0.0261 Q² m, Q in L/min.
    /// <summary>Pumps in series find their flow by iteration, which near the free flow may be off by a rounding.</summary>
    [Fact]
    public void Describe_OfSeriesInParallelWithAPump_SharesTheFlowOutUpToTheFreeFlow()
    {
        static VolumeFlow Litres(double flow) => VolumeFlow.FromLitersPerHour(flow);
        Pump large = Pump.From(PumpCurve.At("p", Wren.Volt(13.5), (Wren.Kpa(0), Litres(200)), (Wren.Kpa(300), Litres(150)), (Wren.Kpa(600), Litres(0))));
        Pump small = Pump.From(PumpCurve.At("s", Wren.Volt(13.5), (Wren.Kpa(0), Litres(150)), (Wren.Kpa(200), Litres(100)), (Wren.Kpa(400), Litres(0))));
        RunningPumps both = PumpParallel.Of(PumpSeries.Of(SeriesBypass.CheckValve, large, small), small).Running(13.2);
        for (int step = 0; step <= 2000; step++)
        {
            double flow = both.FreeFlow * (1 - Math.Pow(10, -9.0 * step / 2000));
            List<PumpPoint> points = [];
            both.Describe(flow, points);

            // The first two are in series.
            Assert.Equal(flow, points[0].Flow + points[2].Flow, 1e-9 * both.FreeFlow);
        }
    }

    [Fact]
    public void Curves_WithCurrentAtOneVoltageOnly_AreRefused() =>
        Assert.Contains(
            "for every curve, or for none",
            Assert.Throws<ArgumentException>(() => Pump.Of([Wren.WiredCurve(12, 0.85), Wren.Pump])).Message,
            StringComparison.Ordinal);

    [Fact(DisplayName = "Pump operating point; Çengel and Cimbala, system-curve problem")]
    public void CengelsPump_OnHisSystem_DeliversWhatHeSays()
    {
        double last = Math.Sqrt(7.46 / 0.0453);
        Pump pump = Pump.From(PumpCurve.At(
            "book",
            Wren.Volt(Supply),
            [.. Enumerable.Range(0, 41).Select(i => last * (40 - i) / 40).Select(
                q => (Pressure.FromKilopascals(7.46 - (0.0453 * q * q)), VolumeFlow.FromLitersPerMinute(q)))]));
        double crossing = MathNet.Numerics.RootFinding.Brent.FindRoot(
            q => (pump.Running(Supply).RiseAt(q / 6e4) / 1000) - 3.52 - (0.0261 * q * q), 0.1, 12, 1e-12, 200);
        Published.Value(
            Works.CengelPump, 7.428, crossing, 1e-3);
    }

    // Pump points in gal/min and ft; system 10 ft + 200 ft of 6 in pipe, f 0.02, K 3: 10 + 2.20e-5 Q² ft.
    [Fact(DisplayName = "Pump operating point; Munson, system-curve example")]
    public void MunsonsPump_OnHisSystem_DeliversWhatHeSays()
    {
        (double Gallons, double Feet)[] points =
            [(2300, 40), (2200, 46), (1800, 60), (1400, 70), (800, 81), (400, 86), (0, 88)];
        Pump pump = Pump.From(PumpCurve.At(
            "book",
            Wren.Volt(Supply),
            [
                .. points.Select(
                    point => (Pressure.FromKilopascals(point.Feet), VolumeFlow.FromLitersPerHour(point.Gallons))),
            ]));
        double crossing = MathNet.Numerics.RootFinding.Brent.FindRoot(
            q => (pump.Running(Supply).RiseAt(q / 3.6e6) / 1000) - 10 - (2.20e-5 * q * q), 100, 2290, 1e-9, 200);

        // The book reads its answers off a plot; halfway between its points at 1,400 and 1,800 gal/min lie 65 ft.
        Source source = Works.Munson;
        Published.Value(source, 1600, crossing, 0.01);
        Published.Value(source, 66.5, 10 + (2.20e-5 * crossing * crossing), 0.015);
    }

    [Fact]
    public void Series_AtAFlow_AddsRises() =>
        Flow.Sample(flow =>
        {
            PumpAssembly pair = PumpSeries.Of(SeriesBypass.CheckValve, Pump.From(Wren.Pump), Pump.From(Wren.PumpOf(0.8)));
            double sum = Rise(Pump.From(Wren.Pump), flow) + Rise(Pump.From(Wren.PumpOf(0.8)), flow);
            return Math.Abs(Rise(pair, flow) - sum) <= 1e-9 * sum;
        });

    [Fact]
    public void Parallel_AtARise_AddsFlows() =>
        Gen.Double[0, 9e5].Sample(rise =>
        {
            PumpAssembly pair = PumpParallel.Of(Pump.From(Wren.Pump), Pump.From(Wren.PumpOf(0.8)));
            double sum = FlowAt(Pump.From(Wren.Pump), rise) + FlowAt(Pump.From(Wren.PumpOf(0.8)), rise);
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
            Pump.From(Wren.PumpOf(0.5)).Running(Supply).FreeFlow,
            PumpSeries.Of(SeriesBypass.None, Pump.From(Wren.Pump), Pump.From(Wren.PumpOf(0.5))).Running(Supply).FreeFlow);

    [Fact]
    public void Pump_BetweenTwoVoltages_LiesBetweenTheirCurves() =>
        Gen.Select(Gen.Double[12, 13.5], Gen.Double[0, 7e5]).Sample((volts, rise) =>
        {
            Pump pump = Wren.WiredPump;
            double flow = pump.Running(volts).FlowAt(rise);
            return flow >= pump.Running(12).FlowAt(rise) && flow <= pump.Running(13.5).FlowAt(rise);
        });

    /// <summary>A hundredth of a volt moves the deadhead by what the affinity laws allow, also across a measured voltage.</summary>
    [Fact]
    public void Deadhead_AcrossVoltages_HasNoJump() =>
        Gen.Double[11, 13.4].Sample(volts =>
        {
            Pump pump = Wren.WiredPump;
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
            return Math.Abs(Pump.From(Wren.Pump).Running(volts).FlowAt(rise) - expected) <= 1e-12 * expected;
        });

    [Fact]
    public void Relief_InThePump_EndsItsCurve()
    {
        Pump pump = Pump.Of([Wren.Pump], relief: Wren.Kpa(500));
        Assert.Equal(0, pump.Running(Supply).FlowAt(500_001));
        Assert.Equal(500_000, pump.Running(Supply).RiseAt(0), 3);
        Assert.Equal(Pump.From(Wren.Pump).Running(Supply).FlowAt(499_999), pump.Running(Supply).FlowAt(499_999));
    }

    [Fact]
    public void Condition_OfAWornPump_TakesOffItsShare() =>
        Gen.Select(Gen.Double[0, 7e5], Gen.Double[30, 100]).Sample((rise, left) =>
        {
            double worn = Pump.Of([Wren.Pump], condition: Ratio.FromPercent(left)).Running(Supply).FlowAt(rise);
            double whole = Pump.From(Wren.Pump).Running(Supply).FlowAt(rise);
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
            Assert.Throws<ArgumentException>(() => Pump.From(Wren.Pump).WithFeed(FeedOf(3))).Message,
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
            PumpParallel.Of(Pump.From(Wren.Pump), Pump.From(Wren.Pump)).CurveAt(Wren.Volt(Supply));
        Assert.Equal(430, curve[0].Flow.LitersPerHour, 6);
        Assert.Equal(750, curve[^1].PressureRise.Kilopascals, 3);
        Assert.InRange(curve[^1].Flow.LitersPerHour, 0, 1e-5);
    }

    [Fact]
    public void Pump_OfNonsense_IsRefusedByName()
    {
        Refused.Missing("curves", () => Pump.Of(null!));
        Refused.Missing("curves", () => Pump.Of([null!]));
        Refused.Missing("curves", () => Pump.Of([Wren.Pump, null!]));
        Refused.Missing("curves", () => Pump.Of([null!, Wren.Pump]));
        Refused.OutOfRange("curves", () => Pump.Of([]));
        Refused.OutOfRange("relief", () => Pump.Of([Wren.Pump], Wren.Kpa(49)));
        Refused.OutOfRange("condition", () => Pump.Of([Wren.Pump], condition: Ratio.FromPercent(29)));
        Refused.Missing("curve", () => Pump.From(null!));
        Refused.Missing("feed", () => Pump.From(Wren.WiredCurve(13.5, 1)).WithFeed(null!));
        Refused.Missing("branches", () => PumpParallel.Of(null!));
        Refused.Missing("branches", () => PumpParallel.Of(Pump.From(Wren.Pump), null!));
        Refused.OutOfRange("branches", () => PumpParallel.Of(Pump.From(Wren.Pump)));
        Refused.Missing("stages", () => PumpSeries.Of(SeriesBypass.None, null!));
        Refused.OutOfRange("points", () => Pump.From(Wren.Pump).CurveAt(Wren.Volt(13), 1));
        Refused.OutOfRange("supply", () => Pump.From(Wren.Pump).CurveAt(Wren.Volt(1)));
    }

    /// <summary>A pump with a curve at each of two voltages that touch in a point is taken; equal voltages are not.</summary>
    [Fact]
    public void Curves_AtTheSameVoltage_AreRefused()
    {
        Assert.Equal(2, Pump.Of([Wren.WiredCurve(12, 1), Wren.WiredCurve(13.5, 1)]).Curves.Count);
        Refused.OutOfRange("curves", () => Pump.Of([Wren.WiredCurve(12, 1), Wren.WiredCurve(12, 1)]));
    }

    [Fact]
    public void Name_OfAnAssembly_TellsHowItIsBuilt()
    {
        PumpAssembly pair = PumpSeries.Of(
            SeriesBypass.CheckValve, Pump.From(Wren.Pump), PumpParallel.Of(Pump.From(Wren.Pump), Pump.From(Wren.WiredCurve(13.5, 1))));
        Assert.Equal("(pump P in series with (pump P in parallel with pump W))", pair.Name);
        Assert.Equal(["pump P", "pump P", "pump W"], pair.Pumps.Select(pump => pump.Name));
    }

    /// <summary>Measured to 300 kPa only, a pump's curve has an open end, unless its own relief valve opens before.</summary>
    [Fact]
    public void OpenEnd_OfAnAssembly_IsThatOfAnyMember()
    {
        PumpCurve shortCurve = PumpCurve.At(
            "short",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200)),
            (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(150)));
        Pump open = Pump.From(shortCurve);
        Pump whole = Pump.From(Wren.Pump);
        Assert.True(open.HasOpenEnd);
        Assert.False(whole.HasOpenEnd);
        Assert.True(Pump.Of([shortCurve], Wren.Kpa(301)).HasOpenEnd);
        Assert.False(Pump.Of([shortCurve], Wren.Kpa(300)).HasOpenEnd);
        Assert.False(Pump.Of([shortCurve], Wren.Kpa(250)).HasOpenEnd);
        Assert.True(PumpSeries.Of(SeriesBypass.None, whole, open).HasOpenEnd);
        Assert.True(PumpParallel.Of(open, whole).HasOpenEnd);
        Assert.False(PumpSeries.Of(SeriesBypass.None, whole, whole).HasOpenEnd);
        Assert.False(PumpParallel.Of(whole, whole).HasOpenEnd);
    }

    /// <summary>Past an open end nothing is known: the sure answer is no flow, the generous one the last point's.</summary>
    [Fact]
    public void Flow_PastAnOpenEnd_IsNoneOrGenerouslyTheLastPoints()
    {
        Pump open = Pump.From(PumpCurve.At(
            "short",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200)),
            (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(150))));
        Assert.Equal(0, open.Running(Supply).FlowAt(301e3));
        Assert.Equal(150 / 3.6e6, open.Running(Supply, PumpReading.EstimateBeyondEnd).FlowAt(301e3), 1e-15);
        Assert.Equal(300e3, open.Running(Supply).Deadhead, 1e-3);
        Assert.Equal(0, Pump.From(Wren.Pump).Running(Supply, PumpReading.EstimateBeyondEnd).FlowAt(751e3));

        RunningPumps lower = open.Bounds(Supply).Lower;
        RunningPumps upper = open.Bounds(Supply).Upper;
        Assert.Equal(0, lower.FlowAt(301e3));
        Assert.Equal(150 / 3.6e6, upper.FlowAt(301e3), 1e-15);
        Assert.Same(lower, open.Bounds(Supply).Lower);
        Assert.NotSame(lower, open.Bounds(12).Lower);
        PumpBounds whole = Pump.From(Wren.Pump).Bounds(Supply);
        Assert.Same(whole.Lower, whole.Upper);
    }

    /// <summary>From 12 V down a curve is scaled, under 70 % of 12 V not at all; over 13.5 V it is used unchanged.</summary>
    [Theory]
    [InlineData(8.39, PumpCoverage.VoltageBelow)]
    [InlineData(8.41, PumpCoverage.Scaled)]
    [InlineData(11.94, PumpCoverage.Scaled)]
    [InlineData(11.96, PumpCoverage.Measured)]
    [InlineData(12.7, PumpCoverage.Measured)]
    [InlineData(13.54, PumpCoverage.Measured)]
    [InlineData(13.56, PumpCoverage.VoltageAbove)]
    public void Coverage_OfAVoltage_IsAsWritten(double volts, object coverage) =>
        Assert.Equal(
            (PumpCoverage)coverage, Wren.WiredPump.CoverageAt(100e3, volts));

    /// <summary>A curve from 200 kPa gives no data below; scaled to 6/7 of its voltage it begins at (6/7)² of that.</summary>
    [Fact]
    public void Coverage_BelowTheFirstPoint_IsNone()
    {
        Pump pump = Pump.From(PumpCurve.At(
            "late",
            Wren.Volt(14),
            (Wren.Kpa(200), VolumeFlow.FromLitersPerHour(180)),
            (Wren.Kpa(400), VolumeFlow.FromLitersPerHour(100)),
            (Wren.Kpa(600), VolumeFlow.Zero)));
        Assert.Equal(PumpCoverage.PressureBelow, pump.CoverageAt(199e3, 14));
        Assert.Equal(PumpCoverage.Measured, pump.CoverageAt(200e3, 14));
        double first = 200e3 * 36 / 49;
        Assert.Equal(PumpCoverage.Scaled | PumpCoverage.PressureBelow, pump.CoverageAt(first - 1, 12));
        Assert.Equal(PumpCoverage.Scaled, pump.CoverageAt(first, 12));
        Assert.Equal(first - 0.5, pump.BeginsAt(12), 1e-6);
        Assert.Equal(0, Pump.From(Wren.Pump).BeginsAt(13.5));
        Assert.Equal(180, pump.Running(14).FreeFlow * 3.6e6, 1e-9);

        List<PumpPoint> points = [];
        pump.Running(14).Describe(pump.Running(14).FreeFlow, points);
        pump.Running(14).Describe(100 / 3.6e6, points);
        Assert.Equal([PumpCoverage.PressureBelow, PumpCoverage.Measured], points.Select(point => point.Coverage));
    }

    /// <summary>With an open end the pump might do more than its curve says, and the point tells so.</summary>
    [Fact]
    public void Describe_AtAnOpenEnd_SaysThatThePumpMightDoMore()
    {
        PumpCurve curve = PumpCurve.At(
            "short",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200)),
            (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(150)));
        List<PumpPoint> points = [];
        Pump.From(curve).Running(Supply).Describe(140 / 3.6e6, points);
        Pump.From(curve).Running(Supply).Describe(160 / 3.6e6, points);
        Pump.From(Wren.Pump).Running(Supply).Describe(10 / 3.6e6, points);
        Assert.Equal(
            [PumpCoverage.PressureAbove, PumpCoverage.Measured, PumpCoverage.Measured], points.Select(point => point.Coverage));
        Assert.Equal(300e3, points[0].Rise, 1);
        Assert.Null(points[0].Current);
    }

    /// <summary>Ohm's law by hand: a pump that draws 8 A at 400 kPa through 50 mΩ runs on 13.5 V − 0.4 V, if its curve is held there.</summary>
    [Fact]
    public void Motor_WithAFeed_HasTheSupplyLessItsDrop()
    {
        Feed feed = Feed.Of(
            "f",
            Conductor.Awg(10),
            Length.Zero,
            Length.Zero,
            Temperature.FromDegreesCelsius(20),
            Contact.Of("c", ElectricResistance.FromMilliohms(50)));
        Pump pump = Pump.Of(
            [
                PumpCurve.WithCurrent(
                    "flat",
                    Wren.Volt(13.1),
                    (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200), ElectricCurrent.FromAmperes(8)),
                    (Wren.Kpa(800), VolumeFlow.Zero, ElectricCurrent.FromAmperes(8))),
            ],
            feed: feed);
        Assert.Equal(13.1, pump.MotorVoltage(400e3, 13.5), 1e-9);
        Assert.Equal(8, pump.CurrentAtMotor(400e3, 13.1)!.Value, 1e-9);
        Assert.False(pump.IsFedWithoutLoss);
        Assert.True(Pump.From(Wren.Pump).IsFedWithoutLoss);
        Assert.Equal(12.3, Pump.From(Wren.Pump).MotorVoltage(400e3, 12.3));
        Assert.Null(Pump.From(Wren.Pump).CurrentAtMotor(400e3, 12.3));
    }

    [Fact]
    public void Rewired_Assembly_HasEachFeedExchanged()
    {
        PumpAssembly pair = PumpParallel.Of(
            Pump.From(Wren.Pump),
            PumpSeries.Of(
                SeriesBypass.None, Pump.From(Wren.WiredCurve(13.5, 1)).WithFeed(FeedOf(3)), Pump.From(Wren.Pump)));
        PumpAssembly rewired = pair.Rewired(_ => FeedOf(1));
        Assert.Equal(pair.Name, rewired.Name);
        Assert.Equal([null, 1.0, null], rewired.Pumps.Select(pump => pump.Feed?.OutwardLength.Meters));
        PumpSeries series = Assert.IsType<PumpSeries>(Assert.IsType<PumpParallel>(rewired).Branches[1]);
        Assert.Equal(SeriesBypass.None, series.Bypass);
        Assert.Equal(2, series.Stages.Count);
    }

    [Fact]
    public void CurveAt_OfAPump_HasAsManyPointsAsWanted()
    {
        IReadOnlyList<(Pressure PressureRise, VolumeFlow Flow)> curve = Pump.From(Wren.Pump).CurveAt(Wren.Volt(Supply), 4);
        Assert.Equal([0, 250, 500, 750], curve.Select(point => Math.Round(point.PressureRise.Kilopascals, 6)));
        Assert.Equal(61, Pump.From(Wren.Pump).CurveAt(Wren.Volt(Supply)).Count);
        Assert.Equal(110, curve[2].Flow.LitersPerHour, 6);
    }


    /// <summary>Any nesting of single pumps, series and parallel, some wired, some worn, some with a relief valve.</summary>
    internal static Gen<PumpAssembly> Assemblies(int depth)
    {
        Gen<PumpAssembly> single = Gen.Select(
            Gen.Double[0.3, 2], Gen.Double[0, 8], Gen.Double[60, 100], Gen.Double[300, 1500], Gen.Int[0, 3]).Select(
            (scale, metres, condition, relief, kind) => (PumpAssembly)(kind switch
            {
                0 => Pump.From(Wren.PumpOf(scale)),
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
        Contact.DefaultFuse,
        Contact.DefaultRelay);

    private static double Rise(PumpAssembly pump, double flow) => pump.Running(Supply).RiseAt(flow);

    private static double FlowAt(PumpAssembly pump, double rise) => pump.Running(Supply).FlowAt(rise);
}
