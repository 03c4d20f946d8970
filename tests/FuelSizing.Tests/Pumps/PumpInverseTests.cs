using CsCheck;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Pumps;

/// <summary>Rise by flow undoes flow by rise, and what is known without looking is what looking finds.</summary>
public class PumpInverseTests
{
    /// <summary>Curves of five points, steep and flat in any order, late or not, open or not.</summary>
    [Fact]
    public void RiseAt_OfAnyCurve_UndoesFlowAt() =>
        Gen.Select(
            Gen.Double[0, 200],
            Gen.Double[0, 50],
            Gen.Select(Gen.Double[1, 300], Gen.Double[0.1, 200]).Array[4],
            Gen.Double[0.001, 0.999]).Sample((first, last, steps, share) =>
            {
                (Pressure Rise, VolumeFlow Flow)[] points = new (Pressure, VolumeFlow)[5];
                for (int i = 0; i <= 4; i++)
                {
                    points[i] = (
                        Pressure.FromKilopascals(first + steps.Take(i).Sum(step => step.Item1)),
                        VolumeFlow.FromLitersPerHour(last + steps.Skip(i).Sum(step => step.Item2)));
                }

                PumpCurve curve = PumpCurve.At("any", Wren.Volt(12), points);
                VolumeFlow flow = points[4].Flow + (share * (points[0].Flow - points[4].Flow));
                Pressure rise = Pressure.FromPascals(curve.RiseAt(flow.CubicMetersPerSecond));
                return Math.Abs((curve.FlowAt(rise) - flow).LitersPerHour) <= 1e-11 * points[0].Flow.LitersPerHour;
            });

    [Fact]
    public void RiseAt_OfAnyPump_UndoesFlowAt() =>
        Gen.Select(PumpAssemblyTests.Assemblies(1), Gen.Double[8, 15], Gen.Double[1e-6, 0.999]).Sample((pump, supply, share) =>
        {
            RunningPumps running = pump.Running(supply);
            double flow = share * running.FreeFlow;
            double rise = running.RiseAt(flow);

            // Upright at a relief valve: what is asked for lies between the flows to either side.
            return running.FlowAt(rise * (1 + 1e-12)) <= flow * (1 + 1e-11)
                && running.FlowAt(rise * (1 - 1e-12)) >= flow * (1 - 1e-11);
        });

    [Fact]
    public void LackingAt_OfAnyPumps_IsWhatTheirDescriptionsSay() =>
        Gen.Select(PumpAssemblyTests.Assemblies(3), Gen.Double[6, 16], Gen.Double[0, 1]).Sample((pump, supply, share) =>
        {
            RunningPumps running = pump.Running(supply);
            double flow = share * running.FreeFlow;
            double rise = running.RiseAt(flow);
            List<PumpPoint> points = [];
            running.Describe(flow, rise, points);
            PumpCoverage said = points.Aggregate(PumpCoverage.Measured, (all, point) => all | point.Coverage) & PumpCoverage.NotCovered;
            Assert.Equal(said, running.UncoveredAt(flow, rise, ends: true));
            Assert.Equal(said & ~PumpCoverage.PressureAbove, running.UncoveredAt(flow, rise, ends: false));
            return !(running.IsFullyCovered(ends: true) && said != 0);
        });

    [Fact]
    public void IsSurelyCovered_OfDefaultPumps_SparesTheLook()
    {
        Assert.True(Pump.From(Wren.Pump).Running(13.5).IsFullyCovered(ends: true));
        Assert.False(Pump.From(Wren.Pump).Running(9).IsFullyCovered(ends: false));
        Assert.True(Pump.Of([Wren.WiredCurve(13.5, 1)], feed: PumpAssemblyTests.FeedOf(3)).Running(13.5).IsFullyCovered(ends: true));
        Assert.False(Pump.Of([Wren.WiredCurve(13.5, 1)], feed: PumpAssemblyTests.FeedOf(60)).Running(13.5).IsFullyCovered(ends: true));
    }
}
