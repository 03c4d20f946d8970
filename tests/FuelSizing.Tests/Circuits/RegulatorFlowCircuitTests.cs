using CsCheck;
using FuelSizing.Circuits;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>Random circuits whose regulator holds a pressure that changes with what returns through it.</summary>
public class RegulatorFlowCircuitTests
{
    private const int Circuits = 600;

    private static readonly Gen<RegulatorFlow> Flows = Gen.Select(Gen.Double[0, 60], Gen.Double[0, 150], Gen.Double[-0.1, 1], Gen.Bool).Select(
        (rise, stated, share, measured) => (measured
            ? RegulatorFlow.Measured(Litres(Math.Min(stated, 100)), Points(rise, 0, 60, 130, 1000))
            : RegulatorFlow.Rising(Wren.Kpa(rise), Litres(100), Litres(stated))).WithOutletShare(share));

    /// <summary>The general solver, told of no slope, no band and no share, against the one for a regulator that holds its setting.</summary>
    [Fact]
    public void Solve_WithoutSlopeBandOrShare_IsTheConstantRegulator() => CircuitTests.Any.Sample(
        task =>
        {
            CircuitState plain = CircuitSolver.Solve(task);
            CircuitState general = CircuitSolver.Solve(Held(task, RegulatorFlow.Constant));
            Assert.Equal(plain.State, general.State);
            Close(plain.RailGauge, general.RailGauge, task.Set);
            Close(plain.OutletGauge, general.OutletGauge, task.Set);
            Close(plain.Flow, general.Flow, plain.Running.FreeFlow);
            Close(plain.ReturnFlow, general.ReturnFlow, plain.Running.FreeFlow);
            Close(plain.MinimumAtSet, general.MinimumAtSet, plain.Running.FreeFlow);
        },
        iter: Circuits);

    [Fact]
    public void HeldAt_OfAFlowThatChangesNothing_IsNone()
    {
        RegulatorFlow[] nothing =
        [
            RegulatorFlow.Constant, RegulatorFlow.Rising(Pressure.Zero, Litres(100), Litres(40)).WithHysteresis(Pressure.Zero).WithOutletShare(0),
        ];
        Assert.All(nothing, flow =>
        {
            Assert.Null(Fixed.At(Wren.Kpa(300)).WithFlow(flow).HeldAt(0));
            Assert.Null(ManifoldReferenced.From(Wren.Kpa(300)).WithFlow(flow).HeldAt(1e4));
            Assert.Null(RegulatorSeries.Of(Fixed.At(Wren.Kpa(300)).WithFlow(flow), RisingRate.From(Pressure.Zero, 4, Pressure.Zero).WithFlow(flow)).HeldAt(5e4));
        });
        Assert.NotNull(Fixed.At(Wren.Kpa(300)).WithFlow(RegulatorFlow.Constant.WithOutletShare(-0.05)).HeldAt(0));
    }

    [Fact]
    public void Solve_ConservesMassAndHoldsWhatTheRegulatorDoes() => Gen.Select(CircuitTests.Any, Flows).Sample(
        (task, flow) =>
        {
            CircuitTask with = Held(task, flow);
            CircuitState state = CircuitSolver.Solve(with);
            if (state.State is RailState.NotCovered or RailState.Starved)
            {
                return;
            }

            Assert.Equal(task.Injected, state.Flow - state.ReturnFlow, 1e-9 * state.Running.FreeFlow);
            if (state.State is RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor)
            {
                double held = with.Held!.At(state.ReturnFlow, state.ReturnGauge, RegulatorReading.Estimate);
                Assert.Equal(with.RailAt(Math.Max(held, state.ReturnGauge)), state.RailGauge, 1e-9 * state.OutletGauge);
                Assert.Equal(state.State == RailState.ReturnFloor, state.ReturnGauge > held);
            }
        },
        iter: Circuits);

    /// <summary>The more is injected the less returns, and the lower is what the regulator holds.</summary>
    [Fact]
    public void MoreInjected_NeverRaisesWhatIsHeld() => Gen.Select(CircuitTests.Any, Gen.Double[1, 60], Gen.Double[1, 1.5]).Sample(
        (task, rise, more) =>
        {
            CircuitTask with = Held(task with { Plumbing = Plumbing.None }, RegulatorFlow.Rising(Wren.Kpa(rise), Litres(100), Litres(50)));
            CircuitState less = CircuitSolver.Solve(with);
            CircuitState greater = CircuitSolver.Solve(with with { Injected = task.Injected * more });
            return less.State == RailState.NotCovered || greater.State == RailState.NotCovered
                || greater.RailGauge <= less.RailGauge + (1e-9 * task.Set);
        },
        iter: Circuits);

    /// <summary>Each bound is that of the same regulator set higher or lower by the hysteresis.</summary>
    [Fact]
    public void Hysteresis_BoundsAreThoseOfTheSettingMovedByIt() => Gen.Select(CircuitTests.Any, Flows, Gen.Double[0.1, 30]).Sample(
        (task, flow, band) =>
        {
            RegulatorFlow without = flow.Points.Count > 0 ? RegulatorFlow.Rising(Wren.Kpa(10), Litres(100), Litres(20)) : flow;
            Fixed regulator = Fixed.At(Pressure.FromPascals(task.Set));
            CircuitTask Off(double pascals) => task with { Held = new(regulator.WithFlow(without).Off(pascals), 0) };
            double pascals = Wren.Kpa(band).Pascals;
            CircuitBounds bounds = CircuitSolver.SolveBounds(task with { Held = new(regulator.WithFlow(without.WithHysteresis(Wren.Kpa(band))), 0) });
            CircuitBounds low = CircuitSolver.SolveBounds(Off(-pascals));
            CircuitBounds high = CircuitSolver.SolveBounds(Off(pascals));
            Close(low.Lower.RailGauge, bounds.Lower.RailGauge, task.Set);
            Close(high.Upper.RailGauge, bounds.Upper.RailGauge, task.Set);
            Close(high.Lower.Flow, bounds.FlowsLess.Flow, bounds.Lower.Running.FreeFlow);
            Close(low.Upper.Flow, bounds.FlowsMore.Flow, bounds.Lower.Running.FreeFlow);
            Close(high.Estimate.MinimumAtSet, bounds.Estimate.MinimumAtSet, bounds.Lower.Running.FreeFlow);
            Close(low.Estimate.MaximumAtSet, bounds.Estimate.MaximumAtSet, bounds.Lower.Running.FreeFlow);
        },
        iter: Circuits);

    /// <summary>However a measured curve goes on past its ends without falling, the rail lies between the bounds.</summary>
    [Fact]
    public void MeasuredCurve_PastItsEnds_BoundsWhatEverRisingCurveWouldHold()
    {
        (int below, int beyond) = (0, 0);
        Gen.Select(CircuitTests.Any, Gen.Double[1, 40], Gen.Double[10, 60], Gen.Double[70, 150], Gen.Double[0, 80]).Sample(
            (task, rise, first, last, past) =>
            {
                CircuitTask bare = task with { Pump = Pump.From(Wren.PumpOf(1.2)), Supply = 13.5 };

                // Where both curves have the same point, for they count by differences from there.
                VolumeFlow stated = Litres(first);
                RegulatorFlow inside = RegulatorFlow.Measured(stated, Points(rise, first, last));
                (VolumeFlow Returned, Pressure Gauge)[] two = Points(rise, first, last);
                RegulatorFlow whole = RegulatorFlow.Measured(
                    stated, (Litres(0), two[0].Gauge - Wren.Kpa(past)), two[0], two[1], (Litres(1000), two[1].Gauge + Wren.Kpa(past * 6)));
                CircuitState state = CircuitSolver.Solve(Held(bare, whole));
                double returned = VolumeFlow.FromCubicMetersPerSecond(state.ReturnFlow).LitersPerHour;
                if (state.State is RailState.NotCovered or RailState.Starved || (returned > first && returned < last))
                {
                    return;
                }

                Interlocked.Increment(ref returned > first ? ref beyond : ref below);
                CircuitBounds bounds = CircuitSolver.SolveBounds(Held(bare, inside));
                Assert.InRange(state.RailGauge, bounds.Lower.RailGauge - (1e-9 * task.Set), bounds.Upper.RailGauge + (1e-9 * task.Set));
                Assert.InRange(
                    state.Flow, bounds.FlowsLess.Flow - (1e-9 * state.Running.FreeFlow), bounds.FlowsMore.Flow + (1e-9 * state.Running.FreeFlow));
            },
            iter: Circuits);
        Assert.True(below > 20 && beyond > 20, $"{below} below, {beyond} beyond");
    }

    /// <summary>Derived from the balance of forces: all of the unit's pressure acts on the base regulator's seat, or none.</summary>
    [Theory]
    [InlineData(0, 330)]
    [InlineData(0.1, 333)]
    [InlineData(1, 630)]
    public void Series_AddsTheShareOfWhatTheUnitHolds(double share, double kilopascals)
    {
        RegulatorSeries pair = RegulatorSeries.Of(
            Fixed.At(Wren.Kpa(300)).WithFlow(RegulatorFlow.Constant.WithOutletShare(share)), RisingRate.From(Pressure.Zero, 6, Pressure.Zero));
        CircuitTask task = Bare(pair, 55e3);
        Assert.Equal(kilopascals * 1e3, CircuitSolver.Solve(task).RailGauge, 1e-3);
    }

    /// <summary>By common practice, no source: base 300 kPa, gain 6, boost 55 kPa may mean 630 kPa, or the higher of base regulator and gain × boost.</summary>
    [Fact]
    public void QuotedGain_IsBoundedByBothReadings()
    {
        RegulatorSeries pair = RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 6, Pressure.Zero)).WithQuotedGain();
        CircuitBounds bounds = CircuitSolver.SolveBounds(Bare(pair, 55e3));
        Assert.Equal(355e3, bounds.Lower.RailGauge, 1e-3);
        Assert.Equal(630e3, bounds.Upper.RailGauge, 1e-3);
        Assert.Equal(355e3, bounds.Estimate.RailGauge, 1e-3);
    }

    private static CircuitTask Bare(PressureRegulator regulator, double boost) =>
        new(LineLayout.Return, Pump.From(Wren.PumpOf(1)), Plumbing.None, 13.5, null, regulator.SetPascals(boost), 0, 1e-6, 740, 5e-7) { Held = regulator.HeldAt(boost) };

    private static CircuitTask Held(in CircuitTask task, RegulatorFlow flow) =>
        task with { Held = new(Fixed.At(Pressure.FromPascals(task.Set)).WithFlow(flow), 0) };

    private static (VolumeFlow Returned, Pressure Gauge)[] Points(double rise, params double[] flows) =>
        [.. flows.Select((flow, at) => (Litres(flow), Wren.Kpa(290 + (rise * at))))];

    private static VolumeFlow Litres(double flow) => VolumeFlow.FromLitersPerHour(flow);

    private static void Close(double expected, double actual, double scale) => Assert.Equal(expected, actual, 1e-9 * scale);
}
