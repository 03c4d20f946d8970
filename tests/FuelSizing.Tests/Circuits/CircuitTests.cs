using CsCheck;
using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Tests.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>Any physical circuit is solved, and what comes out obeys the laws.</summary>
public class CircuitTests
{
    private const int Circuits = 3_000;
    private const double Tolerance = 1e-8;

    private static readonly double Density = Fuel.Petrol.DensityAtKelvins(300);
    private static readonly double Viscosity = Fuel.Petrol.KinematicViscosityAtKelvins(300);

    [Fact]
    public void Solve_OfAnyCircuit_BalancesMassAtEachNode() =>
        Any.Sample(
            task =>
            {
                CircuitState state = CircuitSolver.Solve(task);
                if (state is not { PumpFlow: { } pump, Returned: { } returned })
                {
                    return state.State is RailState.NotCovered;
                }

                // A starved rail gets less than the engine asks for, and what it gets is what the supply line passes to no pressure.
                CircuitResult result = new(task, state, []);
                double delivered = result.DeliveredFlow!.Value.CubicMetersPerSecond;
                double supplied = task.Layout == LineLayout.Return ? pump : delivered;
                bool isStarved = state.State == RailState.Starved;

                // At the end of the pumps' data, or where the lines climb higher than the pumps lift, pressure may be left on either side.
                double left = state.OutletGauge - Loss(task.Plumbing.Supply, supplied);
                bool balances = pump >= state.Running.FreeFlow * (1 - Tolerance) ? left >= -1e-6 * task.Set
                    : delivered > 0 ? Math.Abs(left) <= 1e-6 * task.Set
                    : left <= 1e-6 * task.Set;
                return Math.Abs(pump - delivered - returned) <= Tolerance * pump
                    && returned >= 0
                    && (isStarved
                        ? delivered <= task.Injected * (1 + Tolerance) && balances
                        : Math.Abs(delivered - task.Injected) <= Tolerance * pump);
            },
            iter: Circuits);

    [Fact]
    public void Solve_OfAnyCircuit_SumsPressuresRoundEachLoop() =>
        Any.Sample(
            task =>
            {
                CircuitState state = CircuitSolver.Solve(task);
                if (state is not { PumpFlow: { } flow, Returned: { } returned } || state.State == RailState.Starved)
                {
                    return;
                }

                // Tank → pump → rail: each loss worked out again from the parts, part by part.
                bool atRail = task.Layout == LineLayout.Return;
                double forward = atRail ? flow : task.Injected;
                double rail = state.PumpRise - Loss(task.Plumbing.Suction, flow) - Loss(task.Plumbing.Supply, forward);
                Close(state.RailGauge, rail, state.PumpRise);

                // Rail → regulator → tank: the regulator takes what the return line leaves, never less than zero.
                double regulator = atRail ? state.RailGauge : state.RailGauge + Loss(task.Plumbing.Supply, task.Injected);
                double back = Loss(task.Plumbing.ReturnLine, returned);
                Assert.True(state.State == RailState.Sagging || regulator >= back - (Tolerance * task.Set));
                Close(
                    state.State switch
                    {
                        RailState.Regulated or RailState.AtRegulatorLimit => task.Set,
                        RailState.ReturnFloor => back,
                        _ => regulator,
                    },
                    regulator,
                    task.Set);

                // The pumps: what the curve gives at this rise is what flows (or lies on an upright part of the curve).
                double rise = state.PumpRise;
                Assert.True(task.Pump.Running(task.Supply, PumpReading.EstimateBeyondEnd).FlowAt(rise * (1 - 1e-10)) >= flow * (1 - Tolerance));
                Assert.True(task.Pump.Running(task.Supply).FlowAt(rise * (1 + 1e-10)) <= flow * (1 + Tolerance));
            },
            iter: Circuits);

    [Fact]
    public void Solve_OfAnyCircuit_SagsOnlyWhereThePumpLacksCapacity() =>
        Any.Sample(
            task =>
            {
                CircuitBounds bounds = CircuitSolver.SolveBounds(task);
                Assert.Equal((bounds.Lower.MinimumAtSet, bounds.Upper.MaximumAtSet), (bounds.Estimate.MinimumAtSet, bounds.Estimate.MaximumAtSet));
                return Sags(task, bounds.Lower) && Sags(task, bounds.Upper);
            },
            iter: Circuits);

    private static bool Sags(in CircuitTask task, in CircuitState state)
    {
        double regulator = task.Layout == LineLayout.Return
            ? state.RailGauge
            : state.RailGauge + Loss(task.Plumbing.Supply, task.Injected);
        return state.State switch
        {
            RailState.Sagging => regulator < task.Set && state.MaximumAtSet <= task.Injected * (1 + Tolerance),
            RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor =>
                state.MinimumAtSet >= task.Injected * (1 - Tolerance) && regulator >= task.Set * (1 - Tolerance),
            _ => true,
        };
    }

    [Fact]
    public void Solve_OfAnyCircuit_ReportsASmallResidual() =>
        Any.Sample(task => CircuitSolver.Solve(task).Residual <= Tolerance, iter: Circuits);

    [Fact]
    public void Solve_OfCircuits_MeetsEveryState()
    {
        HashSet<RailState> met = [];
        Any.Sample(
            task =>
            {
                lock (met)
                {
                    met.Add(CircuitSolver.Solve(task).State);
                }
            },
            iter: Circuits);
        Assert.Superset(
            new HashSet<RailState> { RailState.Regulated, RailState.AtRegulatorLimit, RailState.ReturnFloor, RailState.Sagging, RailState.Starved },
            met);
    }

    [Fact]
    public void SeriesPump_Added_NeverLowersTheRail() =>
        Gen.Select(Any, PumpAssemblyTests.Assemblies(1)).Sample(
            (task, added) =>
            {
                CircuitState before = CircuitSolver.Solve(task);
                CircuitState after = CircuitSolver.Solve(
                    task with { Pump = PumpSeries.Of(SeriesBypass.CheckValve, task.Pump, added) });
                return after.RailGauge >= before.RailGauge - (Tolerance * task.Set);
            },
            iter: 1_000);

    [Fact]
    public void Bore_Widened_NeverLowersTheRailBelowItsSetPressure() =>
        Gen.Select(Any, Gen.Double[1, 1.5]).Sample(
            (task, wider) =>
            {
                CircuitState before = CircuitSolver.Solve(task);
                CircuitState after = CircuitSolver.Solve(task with
                {
                    Plumbing = Plumbing.Of(
                        [.. task.Plumbing.Suction.Select(line => Widened(line, wider))],
                        [.. task.Plumbing.Supply.Select(line => Widened(line, wider))],
                        task.Plumbing.ReturnLine),
                });

                // In a returnless system wider supply raises the rail; in a return system the regulator holds it. Only a
                // return line that is too narrow lets more flow raise it, which is no gain.
                return after.RailGauge >= before.RailGauge - (Tolerance * task.Set);
            },
            iter: 1_000);

    [Fact]
    public void Returnless_WithoutLineLoss_IsTheReturnSystem() =>
        Any.Sample(
            task =>
            {
                CircuitTask bare = task with { Plumbing = Plumbing.None };
                return CircuitSolver.Solve(bare with { Layout = LineLayout.Return }).RailGauge
                    == CircuitSolver.Solve(bare with { Layout = LineLayout.Returnless }).RailGauge;
            },
            iter: 1_000);

    [Fact]
    public void SpeedControl_WithinItsReach_HoldsItsTargetWithoutReturning() =>
        Gen.Select(Gen.Double[0.5, 2], Gen.Double[5e-6, 3e-5], Gen.Double[2e5, 5e5]).Sample(
            (scale, injected, set) =>
            {
                Pump pump = Pump.Of(
                    [Wren.WiredCurve(6, 0.35 * scale), Wren.WiredCurve(9, 0.6 * scale), Wren.WiredCurve(13.5, scale)]);
                CircuitState state = CircuitSolver.Solve(new(
                    LineLayout.Returnless, pump, Plumbing.None, 13.5, 6, set, 0, injected, Density, Viscosity));
                double full = pump.Running(13.5).FlowAt(set);
                double slow = pump.Running(6).FlowAt(set);
                return state.State switch
                {
                    RailState.Regulated => state.RailGauge == set
                        && Math.Abs(pump.Running(state.FedVoltage).FlowAt(set) - injected) <= Tolerance * injected,
                    RailState.Sagging or RailState.Starved => full <= injected * (1 + Tolerance),
                    RailState.PumpFloor => slow >= injected * (1 - Tolerance) && state.RailGauge >= set,
                    _ => false,
                };
            },
            iter: 2_000);

    /// <summary>Circuits with every kind of part; pressures, flows and bores of a vehicle.</summary>
    internal static Gen<CircuitTask> Any =>
        Gen.Select(
            PumpAssemblyTests.Assemblies(2),
            Gen.Select(Paths(0, 1, 8), Paths(0, 5, 6), Paths(0, 5, 3.5)).Select(
                (suction, supply, back) => Plumbing.Of(suction, supply, back)),
            Gen.Bool,
            Gen.Double[1e5, 8e5],
            Gen.Double[0, 5e-6],
            Gen.Double[1e-7, 6e-5],
            Gen.Double[11, 14.5]).Select((pump, plumbing, returns, set, minimum, injected, supply) => new CircuitTask(
                returns ? LineLayout.Return : LineLayout.Returnless,
                pump,
                plumbing,
                supply,
                null,
                set,
                minimum,
                injected,
                Density,
                Viscosity));

    private static Gen<IFlowLoss[]> Paths(double shortest, double longest, double bore) =>
        Gen.OneOf(
            Gen.Select(Gen.Double[shortest, longest], Gen.Double[0.6, 2], Gen.Double[-1, 1]).Select((length, width, rise) => (IFlowLoss)Line.Of(
                "line",
                Length.FromMillimeters(bore * width),
                Length.FromMeters(length),
                Roughness.RubberHose,
                [Fitting.Entrance, Fitting.Elbow90.Times(3), Fitting.Exit],
                Length.FromMeters(rise))),
            Gen.Double[1, 5].Select(clogging => (IFlowLoss)Filter.Of(
                "filter", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(10), clogging))).Array[0, 3];

    private static IFlowLoss Widened(IFlowLoss part, double wider) => part is Line line
        ? Line.Of(line.Name, line.Bore * wider, line.Length, line.Roughness, line.Fittings, line.Rise)
        : part;

    private static double Loss(IReadOnlyList<IFlowLoss> way, double flow) =>
        way.Sum(part => part.LossPascals(flow, Density, Viscosity) + part.ElevationPascals(Density));

    private static void Close(double expected, double actual, double scale) =>
        Assert.InRange(actual - expected, -Tolerance * Math.Abs(scale), Tolerance * Math.Abs(scale));
}
