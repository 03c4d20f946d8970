using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>The planned pumps as tabulated, and where a fit of their faults begins.</summary>
public class PumpSurfaceTests
{
    /// <summary>
    /// The pumps themselves at the table's nodes, 0.1 V apart from 6 to 20 V and an eightieth of their most flow apart; halfway between two
    /// the mean of both.
    /// </summary>
    [Fact]
    public void Rise_IsThatOfThePumps()
    {
        Pump pump = (Pump)PulledWren.Plan.Pump;
        PumpSurface surface = new(pump);
        double most = pump.Running(20).FreeFlow;
        Assert.Equal(most, surface.MaximumFlow, 12);
        Assert.True(surface.HasCurrent);
        double At(int node, double volts) => pump.Running(volts).RiseAt(node * most / 80);
        foreach (double volts in new[] { 6, 9.2, 12.3, 13.5, 19.9 })
        {
            Assert.Equal(At(12, volts), surface.Rise(12 * most / 80, volts, 0), 1.0);
            Assert.Equal(0.5 * (At(30, volts) + At(31, volts)), surface.Rise(30.5 * most / 80, volts, 0), 1.0);
            Assert.Equal(0.25 * At(30, volts) + 0.75 * At(31, volts), surface.Rise(30.75 * most / 80, volts, 0), 1.0);
        }

        Assert.Equal((0.3 * At(20, 12.4)) + (0.7 * At(20, 12.3)), surface.Rise(20 * most / 80, 12.33, 0), 1.0);
        Assert.Equal(At(20, 20), surface.Rise(20 * most / 80, 20, 0), 1.0);
    }

    /// <summary>Past the table's ends the value is that of its end.</summary>
    [Fact]
    public void Rise_PastTheTablesEnds_IsThatOfTheEnd()
    {
        Pump pump = (Pump)PulledWren.Plan.Pump;
        PumpSurface surface = new(pump);
        double flow = surface.MaximumFlow / 8;
        Assert.Equal(pump.Running(6).RiseAt(flow), surface.Rise(flow, 3, 0), 1.0);
        Assert.Equal(pump.Running(20).RiseAt(flow), surface.Rise(flow, 24, 0), 1.0);
        Assert.Equal(pump.Running(13).RiseAt(0), surface.Rise(-1e-6, 13, 0), 1.0);
        Assert.Equal(0, surface.Rise(2 * surface.MaximumFlow, 13, 0), 1.0);
        Assert.Equal(0, surface.Rise(2 * surface.MaximumFlow, 20, 0), 1.0);

        // Of a pump that was measured up to 20 V, so that its curve rises to the table's end.
        Pump high = Pump.Of([Wren.WiredCurve(9, 0.62), Wren.WiredCurve(20, 1.3)]);
        double node = 12 * high.Running(20).FreeFlow / 80;
        Assert.Equal(high.Running(20).RiseAt(node), new PumpSurface(high).Rise(node, 24, 0), 1.0);
    }

    /// <summary>Two pumps in parallel each take half of the flow and their own current.</summary>
    [Fact]
    public void Current_IsThatOfAllPumpsTogether()
    {
        Pump pump = Pump.Of([Wren.WiredCurve(9, 0.62), Wren.WiredCurve(13.5, 1)]);
        PumpSurface surface = new(PumpParallel.Of(pump, pump));

        // At 13.5 V and 140 L/h each, 400 kPa: 8 A by the curve as measured.
        Assert.Equal(16, surface.Current(280 / 3.6e6, 13.5), 0.1);
        Assert.Equal(400e3, surface.Rise(280 / 3.6e6, 13.5, 0), 3e3);

        // At no pressure 4.5 A each, though no more flow is to be had.
        Assert.Equal(9, surface.Current(surface.MaximumFlow, 13.5), 0.1);
    }

    /// <summary>Behind a resistance the voltage is that which solves V' + R I(V') = V, to a few millivolts.</summary>
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.1)]
    [InlineData(0.15)]
    [InlineData(-0.05)]
    public void Voltage_BehindAResistance_IsWhatItsOwnCurrentLeaves(double ohms)
    {
        PumpSurface surface = new(PulledWren.Plan.Pump);
        double flow = 90 / 3.6e6;
        double left = surface.Reaching(flow, 13, ohms);
        Assert.Equal(13 - (ohms * surface.Current(flow, left)), left, 0.004);
        Assert.Equal(surface.Rise(flow, left, 0), surface.Rise(flow, 13, ohms), 1e-6);
        Assert.Equal(13, surface.Reaching(flow, 13, 0));
    }

    /// <summary>A pump whose current was not measured is taken to draw 8 A: at 0.1 Ω it is left 12.2 of 13 V.</summary>
    [Fact]
    public void Current_ThatWasNotMeasured_IsEightAmperes()
    {
        Pump bare = Pump.From(Wren.Pump);
        PumpSurface surface = new(bare);
        Assert.False(surface.HasCurrent);
        Assert.Equal(8, surface.Current(20e-6, 13));
        Assert.Equal(12.2, surface.Reaching(20e-6, 13, 0.1), 9);
        Assert.False(new PumpSurface(PumpParallel.Of(bare, Wren.WiredPump)).HasCurrent);
        Assert.False(new PumpSurface(PumpParallel.Of(Wren.WiredPump, bare)).HasCurrent);
    }

    /// <summary>A pump of 34 %, wiring of 0.4 Ω more, a filter with 95 new ones' loss more: each start is the size of its own fault.</summary>
    [Theory]
    [InlineData(RunFault.WeakPump)]
    [InlineData(RunFault.VoltageDrop)]
    [InlineData(RunFault.CloggedFilter)]
    public void Start_OfAFault_IsItsSize(RunFault fault)
    {
        RunModel model = Ample.Model(ExactRun.Of(Off(fault)));
        RunFit sound = RunFit.From(model, new double[RunModel.Quantities]);
        Dictionary<RunQuantity, double> starts = PumpStarts.Of(Ample, model, sound);
        Assert.Equal(3, starts.Count);
        double Size(RunQuantity quantity) => starts[quantity] * model.Tolerance[(int)quantity];
        switch (fault)
        {
            case RunFault.WeakPump:
                Assert.Equal(Math.Log(0.34), Size(RunQuantity.PumpFlow), 0.01);
                break;
            case RunFault.VoltageDrop:
                Assert.Equal(0.4, Size(RunQuantity.FeedResistance), 0.01);
                break;
            default:
                Assert.Equal(95, Size(RunQuantity.FilterLoss), 0.3);
                break;
        }
    }

    [Fact]
    public void Start_OfASoundCar_IsNone()
    {
        RunModel model = Ample.Model(ExactRun.Of(Ample.Plan));
        Assert.Empty(PumpStarts.Of(Ample, model, RunFit.From(model, new double[RunModel.Quantities])));
    }

    /// <summary>One low point is a glitch; two are not.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 3)]
    public void Start_NeedsTwoLowPoints(int low, int starts)
    {
        RecordedRun run = ExactRun.Changed(
            ExactRun.Of(Ample.Plan), (cells, i) => i >= 20 && i < 20 + low ? cells with { Rail = cells.Rail - Wren.Kpa(60) } : cells);
        RunModel model = Ample.Model(run);
        Assert.Equal(starts, PumpStarts.Of(Ample, model, RunFit.From(model, new double[RunModel.Quantities])).Count);
    }

    /// <summary>
    /// Fuel of 12 L/h with the rail at 1 kPa: the pump would have to be a twentieth of the planned one. A start is bounded to 30 %, and to
    /// 0.6 Ω.
    /// </summary>
    [Fact]
    public void Start_IsBounded()
    {
        RecordedRun run = ExactRun.Changed(
            ExactRun.Of(Ample.Plan), (cells, i) => i is >= 20 and < 24 ? cells with { Rail = Wren.Kpa(1), Flow = VolumeFlow.FromLitersPerHour(12) } : cells);
        RunModel model = Ample.Model(run);
        Dictionary<RunQuantity, double> starts = PumpStarts.Of(Ample, model, RunFit.From(model, new double[RunModel.Quantities]));
        Assert.Equal(-1.2, starts[RunQuantity.PumpFlow] * model.Tolerance[(int)RunQuantity.PumpFlow], 6);
        Assert.Equal(0.6, starts[RunQuantity.FeedResistance] * model.Tolerance[(int)RunQuantity.FeedResistance], 3);
    }

    /// <summary>A plan whose pump always has capacity, so that a fit has no slope to follow where a weak one falls short.</summary>
    internal static RunCheck Ample { get; } = RunCheck.Of(
        PulledWren.Plan.With(Pump.Of(
            [Wren.WiredCurve(9, 1.2), Wren.WiredCurve(13.5, 1.9)], condition: Ratio.FromPercent(90), feed: ((Pump)PulledWren.Plan.Pump).Feed)),
        Wren.Hill);

    /// <summary>That plan's car with a fault of its supply.</summary>
    internal static FuelSystem Off(RunFault fault)
    {
        FuelSystem plan = Ample.Plan;
        Pump pump = (Pump)plan.Pump;
        return fault switch
        {
            RunFault.WeakPump => plan.With(pump.WithCondition(Ratio.FromPercent(0.34 * 90))),
            RunFault.VoltageDrop => plan.With(pump.WithFeed(pump.Feed!.Plus(0.4))),
            _ => MeasuredCar.Filtering(plan, 95),
        };
    }
}
