using CsCheck;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

/// <summary>
/// Pumps in parallel and in series, by hand: a large pump, 200 (1 − p/800 kPa) L/h, and a small one,
/// 100 (1 − p/400 kPa) L/h.
/// </summary>
public class RunningAssemblyTests
{
    private const double Supply = 12;

    private static readonly Pump Large = Line("large", null, (0, 200), (800, 0));

    private static readonly Pump Small = Line("small", null, (0, 100), (400, 0));

    // 180 L/h and no less up to 200 kPa, as far as is known.
    private static readonly Pump Late = Line("late", null, (200, 180), (600, 0));

    // The large pump measured to 300 kPa and 125 L/h only.
    private static readonly Pump Open = Line("open", null, (0, 200), (300, 125));

    private static readonly Pump Stuck = Line("stuck", null, (0, 0), (100, 0));

    /// <summary>Together 300 − p/2: 150 L/h at 300 kPa, of which the large pump gives 125 and the small one 25.</summary>
    [Fact]
    public void Parallel_OfTwoPumps_SharesByTheirCurves()
    {
        RunningPumps both = PumpParallel.Of(Large, Small).Running(Supply);
        Assert.Equal(300, Litres(both.FreeFlow), 1e-9);
        Assert.Equal(800e3, both.Deadhead);
        Assert.Equal(300e3, both.RiseAt(150 / 3.6e6), 1e-3);
        Assert.Equal(0, both.RiseAt(300 / 3.6e6), 1e-6);
        Assert.Equal(0, both.RiseAt(301 / 3.6e6));
        Assert.Equal([(125, 300), (25, 300)], Told(both, 150, 300));
        Assert.Equal([(200, 0), (100, 0)], Told(both, 300, 0));
    }

    /// <summary>At 600 kPa the large pump gives its 50 L/h alone; the small one is at its deadhead pressure, its check valve closed.</summary>
    [Fact]
    public void Parallel_AboveTheSmallPumpsDeadhead_LeavesItBehindItsCheckValve()
    {
        RunningPumps both = PumpParallel.Of(Small, Large).Running(Supply);
        Assert.Equal(600e3, both.RiseAt(50 / 3.6e6), 1e-3);
        Assert.Equal([(0, 400), (50, 600)], Told(both, 50, 600));

        // With nothing taken each stands at its own deadhead.
        Assert.Equal([(0, 400), (0, 800)], Told(both, 0, 800));
    }

    /// <summary>At 100 kPa the late pump gives its first point's 180 L/h, which nothing is known to hold back, the small one 75.</summary>
    [Fact]
    public void Parallel_WithAPumpBelowItsFirstPoint_SaysSoOfThatPumpOnly()
    {
        RunningPumps both = PumpParallel.Of(Late, Small).Running(Supply);
        Assert.Equal(100e3, both.RiseAt(255 / 3.6e6), 1e-3);
        Assert.Equal([(180, 0), (75, 100)], Told(both, 255, 100));
        Assert.Equal([PumpCoverage.PressureBelow, PumpCoverage.Measured], Coverage(both, 255, 100));
        Assert.Equal(PumpCoverage.PressureBelow, both.UncoveredAt(255 / 3.6e6, 100e3, ends: false));

        // At 300 kPa, 135 and 25 L/h, both are known.
        Assert.Equal(PumpCoverage.Measured, both.UncoveredAt(160 / 3.6e6, 300e3, ends: true));
    }

    /// <summary>
    /// Relief valves of both pumps open at 300 kPa, where they give 125 and 25 L/h: of half of that each gives its half. With a
    /// valve at the large one only, it gives what the small one, still at 25, leaves of 100: 75 L/h.
    /// </summary>
    [Fact]
    public void Parallel_AtReliefValves_SharesTheRestBetweenThem()
    {
        Pump large = Line("large", 300, (0, 200), (800, 0));
        Pump small = Line("small", 300, (0, 100), (400, 0));
        Assert.Equal([(62.5, 300), (12.5, 300)], Told(PumpParallel.Of(large, small).Running(Supply), 75, 300));
        Assert.Equal([(75, 300), (25, 300)], Told(PumpParallel.Of(large, Small).Running(Supply), 100, 300));
        Assert.Equal(300e3, PumpParallel.Of(large, Small).Running(Supply).RiseAt(100 / 3.6e6), 1e-2);
    }

    /// <summary>
    /// Past the open curve's end, 125 L/h at 300 kPa, only the small pump surely gives anything: 12.5 L/h at 350 kPa. Perhaps the
    /// open one goes on with its 125 L/h.
    /// </summary>
    [Fact]
    public void Parallel_WithAPumpPastItsCurve_SaysThatItMightDoMore()
    {
        PumpAssembly both = PumpParallel.Of(Open, Small);
        RunningPumps lower = both.Bounds(Supply).Lower;
        Assert.Equal(12.5, Litres(lower.FlowAt(350e3)), 1e-9);
        Assert.Equal(137.5, Litres(both.Bounds(Supply).Upper.FlowAt(350e3)), 1e-9);
        Assert.Equal([PumpCoverage.PressureAbove, PumpCoverage.Measured], Coverage(lower, 12.5, 350));
        Assert.Equal(PumpCoverage.PressureAbove, lower.UncoveredAt(12.5 / 3.6e6, 350e3, ends: true));
        Assert.Equal(PumpCoverage.Measured, lower.UncoveredAt(12.5 / 3.6e6, 350e3, ends: false));
        Assert.Equal(PumpCoverage.Measured, lower.UncoveredAt((150 + 50) / 3.6e6, 200e3, ends: true));
    }

    /// <summary>
    /// 50 L/h: 600 kPa of the large, 200 kPa of the small pump. 150 L/h: 200 kPa of the large one; past the small one, which
    /// passes its 100 L/h against nothing, the rest goes by its check valve.
    /// </summary>
    [Fact]
    public void Series_WithCheckValves_AddsRisesAndPassesAStageBy()
    {
        RunningPumps both = PumpSeries.Of(SeriesBypass.CheckValve, Small, Large).Running(Supply);
        Assert.Equal(200, Litres(both.FreeFlow), 1e-9);
        Assert.Equal(1200e3, both.Deadhead, 1e-6);
        Assert.Equal(800e3, both.RiseAt(50 / 3.6e6), 1e-3);
        Assert.Equal(50, Litres(both.FlowAt(800e3)), 1e-9);
        Assert.Equal([(50, 200), (50, 600)], Told(both, 50, 800));
        Assert.Equal([(100, 0), (150, 200)], Told(both, 150, 200));
        Assert.Equal(150, Litres(both.FlowAt(200e3)), 1e-9);
        Assert.Equal(0, both.FlowAt(1200e3));
        Assert.Equal(0, both.FlowAt(1300e3));
    }

    /// <summary>Without a by-pass no more than the small pump's 100 L/h passes, against the large one's 400 kPa there.</summary>
    [Fact]
    public void Series_WithoutBypass_EndsAtTheWeakestStagesFlow()
    {
        RunningPumps both = PumpSeries.Of(SeriesBypass.None, Large, Small).Running(Supply);
        Assert.Equal(100, Litres(both.FreeFlow), 1e-9);
        Assert.Equal(1200e3, both.Deadhead, 1e-6);
        Assert.Equal(100, Litres(both.FlowAt(300e3)), 1e-9);
        Assert.Equal([(100, 400), (100, 0)], Told(both, 100, 400));
    }

    /// <summary>Downstream of a stuck pump without a bypass nothing flows, at zero pressure rise; with one the large pump is alone.</summary>
    [Fact]
    public void Series_WithAStuckStage_PassesNothingUnlessBypassed()
    {
        RunningPumps shut = PumpSeries.Of(SeriesBypass.None, Large, Stuck).Running(Supply);
        Assert.Equal((0, 0), (shut.FreeFlow, shut.Deadhead));
        Assert.Equal(0, shut.FlowAt(0));
        Assert.Equal(0, shut.FlowNear(0, 1e-5));
        RunningPumps past = PumpSeries.Of(SeriesBypass.CheckValve, Large, Stuck).Running(Supply);
        Assert.Equal(100, Litres(past.FlowAt(400e3)), 1e-9);
        Assert.Equal(800e3, past.Deadhead, 1e-6);
    }

    /// <summary>A stage past its open end, or under its first point, lacks in the whole; the other is known.</summary>
    [Fact]
    public void Series_WithAStageThatIsNotCovered_LacksWhatTheStageLacks()
    {
        RunningPumps open = PumpSeries.Of(SeriesBypass.CheckValve, Large, Open).Running(Supply);
        double rise = open.RiseAt(50 / 3.6e6);
        Assert.Equal(600e3 + 300e3, rise, 1);
        Assert.Equal([PumpCoverage.Measured, PumpCoverage.PressureAbove], Coverage(open, 50, rise / 1000));
        Assert.Equal(PumpCoverage.PressureAbove, open.UncoveredAt(50 / 3.6e6, rise, ends: true));
        Assert.Equal(PumpCoverage.Measured, open.UncoveredAt(50 / 3.6e6, rise, ends: false));
        Assert.Equal(PumpCoverage.Measured, open.UncoveredAt(150 / 3.6e6, 400e3, ends: true));

        // 190 L/h go by the late pump, of which 180 are its own; at 100 L/h it is known.
        RunningPumps late = PumpSeries.Of(SeriesBypass.CheckValve, Large, Late).Running(Supply);
        Assert.Equal(PumpCoverage.PressureBelow, late.UncoveredAt(190 / 3.6e6, 40e3, ends: false));
        Assert.Equal(PumpCoverage.Measured, late.UncoveredAt(100 / 3.6e6, late.RiseAt(100 / 3.6e6), ends: false));
    }

    /// <summary>An assembly is surely covered if every member is: one open or late pump, first or last, undoes it.</summary>
    [Fact]
    public void IsSurelyCovered_OfAnAssembly_IsThatOfEveryMember()
    {
        static void Is(bool begins, bool covered, Pump first, Pump last)
        {
            foreach (PumpAssembly pair in (PumpAssembly[])[
                PumpParallel.Of(first, last), PumpParallel.Of(last, first), PumpSeries.Of(SeriesBypass.None, first, last)])
            {
                RunningPumps running = pair.Running(Supply);
                Assert.Equal((begins, covered), (running.IsFullyCovered(ends: false), running.IsFullyCovered(ends: true)));
            }
        }

        Is(begins: true, covered: true, Large, Small);
        Is(begins: true, covered: false, Large, Open);
        Is(begins: false, covered: false, Late, Large);
    }

    /// <summary>Flow follows from rise at once for pumps in parallel, and by a search where any are in series.</summary>
    [Fact]
    public void GivesFlow_IsUndoneByAnySeries()
    {
        PumpSeries series = PumpSeries.Of(SeriesBypass.None, Large, Small);
        Assert.True(Large.Running(Supply).GivesFlow);
        Assert.True(PumpParallel.Of(Large, Small).Running(Supply).GivesFlow);
        Assert.False(series.Running(Supply).GivesFlow);
        Assert.False(PumpParallel.Of(Large, series).Running(Supply).GivesFlow);
    }

    /// <summary>Two large pumps in series halve the rise: 800 kPa pass 100 L/h, from whatever guess one starts.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(99)]
    [InlineData(100)]
    [InlineData(200)]
    [InlineData(500)]
    public void FlowNear_FromAnyGuess_IsTheFlow(double guess)
    {
        RunningPumps pair = PumpSeries.Of(SeriesBypass.CheckValve, Large, Large).Running(Supply);
        Assert.Equal(100, Litres(pair.FlowNear(800e3, guess / 3.6e6)), 1e-6);
        Assert.Equal(100, Litres(Large.Running(Supply).FlowNear(400e3, guess / 3.6e6)), 1e-9);

        // Against nothing it is the free flow and no more, though nothing holds more flow back either.
        Assert.Equal(200, Litres(pair.FlowNear(0, guess / 3.6e6)), 1e-6);
    }

    /// <summary>The law, for any pumps: near is the same as far.</summary>
    [Fact]
    public void FlowNear_OfAnyPumps_IsFlowAt() =>
        Gen.Select(PumpAssemblyTests.Assemblies(2), Gen.Double[0, 9e5], Gen.Double[0, 1e-4]).Sample(
            (pump, rise, guess) =>
            {
                RunningPumps running = pump.Running(13.5);
                double flow = running.FlowAt(rise);
                double near = running.FlowNear(rise, guess);

                // Upright at a relief valve, any of its flows has the rise: then the rise itself must be the same.
                return Math.Abs(near - flow) <= 1e-9 * running.FreeFlow
                    || Math.Abs(running.RiseAt(near) - rise) <= 1e-9 * running.Deadhead;
            });

    private static double Litres(double flow) => flow * 3.6e6;

    // Flow and rise of each pump, L/h and kPa.
    private static IEnumerable<(double Flow, double Rise)> Told(RunningPumps pumps, double litres, double kilopascals) =>
        Points(pumps, litres, kilopascals).Select(point => (Math.Round(Litres(point.Flow), 4), Math.Round(point.Rise / 1000, 4)));

    private static IEnumerable<PumpCoverage> Coverage(RunningPumps pumps, double litres, double kilopascals) =>
        Points(pumps, litres, kilopascals).Select(point => point.Coverage);

    private static List<PumpPoint> Points(RunningPumps pumps, double litres, double kilopascals)
    {
        List<PumpPoint> points = [];
        pumps.Describe(litres / 3.6e6, kilopascals * 1000, points);
        return points;
    }

    private static Pump Line(string name, double? relief, params (double Kilopascals, double Litres)[] points) => Pump.Of(
        [
            PumpCurve.At(
                name,
                Wren.Volt(Supply),
                Array.ConvertAll(
                    points, point => (Wren.Kpa(point.Kilopascals), VolumeFlow.FromLitersPerHour(point.Litres)))),
        ],
        relief is { } opens ? Pressure.FromKilopascals(opens) : null);
}
