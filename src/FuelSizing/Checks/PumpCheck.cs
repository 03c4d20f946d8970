using FuelSizing.Circuits;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The pump: what it delivers at the set rail pressure against injected flow, reserve and minimum return.</summary>
internal sealed class PumpCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.Pump;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Injected flow", LimitDirection.AtMost, si => VolumeFlow.FromCubicMetersPerSecond(si), units => units.PumpFlow);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => Applicability.Judged;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        T lower = CheckReading.MarginOf<T>(at.MinimumInjectable, at.Injected);
        T upper = CheckReading.MarginOf<T>(at.MaximumInjectable, at.Injected);

        // The bound that goes with the outcome: the lower where it holds, the upper where it fails.
        return new(at.Injected, T.IfLess(lower, 0, at.MaximumInjectable, at.MinimumInjectable), lower, upper);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        ref readonly SolvedCircuit circuit = ref point.SolvedCircuit;
        if (circuit.Uncovered is { } uncovered)
        {
            return NotCovered(uncovered);
        }

        Pressure set = Pressure.FromPascals(circuit.DeliveredAgainst);
        VolumeFlow required = Flow(circuit.Required);
        Statement? rule = point.Parts.Limits.MarkOf(RuleOfThumb.PumpReserve) is { } mark
            ? Statement.Of("pump.reserve", $", with {point.Parts.Limits.PumpReserve} in reserve{mark}")
            : null;
        bool exact = circuit.MaximumInjectable <= circuit.MinimumInjectable * (1 + 1e-9);
        VolumeFlow lower = Flow(circuit.State.MinimumAtSet);
        VolumeFlow upper = Flow(circuit.State.MaximumAtSet);
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.CannotSay => CurveEnds(circuit, set),
            Outcome.Holds => exact
                ? Statement.Of("pump.adequate", $"delivers {lower:pump-flow} at {set} in the rail, {required:pump-flow} required{rule}")
                : Statement.Of("pump.adequate-at-least", $"delivers at least {lower:pump-flow} at {set} in the rail, {required:pump-flow} required{rule}"),
            _ => exact
                ? Statement.Of("pump.too-small", $"delivers {upper.ApartFrom(required):pump-flow} at {set} in the rail, {required.ApartFrom(upper):pump-flow} required{rule}{Consequence(point)}")
                : Statement.Of("pump.too-small-at-most", $"delivers at most {upper.ApartFrom(required):pump-flow} at {set} in the rail, {required.ApartFrom(upper):pump-flow} required{rule}{Consequence(point)}"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // A pump delivers no less at a lower pressure: the largest flow at the highest pressure serves every point, also those at which this
        // pump does not fail and another, with a steeper curve, might.
        VolumeFlow flow = Flow(task.Points.Max(point => point.SolvedCircuit.Required));
        Pressure rise = Pressure.FromPascals(task.Points.Max(point => point.SolvedCircuit.Task.RiseToDeliver(point.SolvedCircuit.Required)));
        ElectricPotential voltage = ElectricPotential.FromVolts(
            task.Points.Min(point => point.SolvedCircuit.LowerPumps.Min(
                pump => pump.IsStopped ? point.Point.Conditions.SupplyVolts : pump.Voltage)));
        return Remedy.Of(
            Part,
            flow,
            task.Points[0].Parts.Pump.HasOwnLines
                ? Statement.Of(
                    "pump.larger-at-joint",
                    $"Pumps that together deliver at least {flow:pump-flow:up} against {rise:pressure:up} at the joint, so much more at each pump as its own lines lose, with {voltage:voltage:down} at the motor; or branches that lose less.")
                : Statement.Of(
                "pump.larger",
                $"A pump, or pumps together, that deliver at least {flow:pump-flow:up} against {rise:pressure:up} with {voltage:voltage:down} at the motor."));
    }

    private static Statement NotCovered(PumpPoint point) =>
        point.Coverage.HasFlag(PumpCoverage.VoltageBelow)
            ? Statement.Of(
                "pump.voltage-below-data",
                $"the lowest curve of {point.Pump.Name} was measured at {point.Pump.Curves[0].Voltage} and gives no data for {ElectricPotential.FromVolts(point.Voltage)}")
            : Statement.Of(
                "pump.pressure-below-data",
                $"the curve of {point.Pump.Name} begins at {point.Pump.Curves[0].MinimumPressure} and gives no data below it");

    private static Statement CurveEnds(in SolvedCircuit circuit, Pressure set)
    {
        if (Array.Find(circuit.LowerPumps, IsBelowItsCurves) is { Pump: not null } slow
            && !Array.Exists(circuit.Pumps, point => point.Coverage.HasFlag(PumpCoverage.PressureAbove)))
        {
            return Statement.Of(
                "pump.voltage-below-data-bounds",
                $"the lowest curve of {slow.Pump.Name} was measured at {slow.Pump.Curves[0].Voltage}: with {ElectricPotential.FromVolts(slow.Voltage)} at its motor it is known only that {Flow(circuit.State.MinimumAtSet):pump-flow} to {Flow(circuit.State.MaximumAtSet):pump-flow} are delivered at {set} in the rail, {Flow(circuit.Required):pump-flow} required");
        }

        PumpPoint limiting = circuit.Pumps.FirstOrDefault(point => point.Coverage.HasFlag(PumpCoverage.PressureAbove));
        Pump pump = (limiting.Pump ?? circuit.Pumps[0].Pump)!;
        return Statement.Of(
            "pump.curve-ends",
            $"the curve of {pump.Name} covers {pump.Curves[0].MinimumPressure} to {pump.Curves[0].MaximumPressure}, too little for {set} in the rail");
    }

    private static bool IsBelowItsCurves(PumpPoint point) => !point.IsStopped && point.Voltage < point.Pump.Curves[0].Volts;

    private static Statement? Consequence(SolvedPoint point)
    {
        ref readonly SolvedCircuit circuit = ref point.SolvedCircuit;
        Pressure rail = Pressure.FromPascals(circuit.Rail);
        return (circuit.State.State, circuit.State.MaximumAtSet <= 0) switch
        {
            (RailState.Sagging, true) => Statement.Of(
                "pump.deadheads-and-rail-sags",
                $": {point.Parts.Pump.Name} deadheads below the pressure set: the regulator shuts and the rail sags to {rail}"),
            (RailState.Sagging, false) => Statement.Of("pump.rail-sags", $": the regulator shuts and the rail sags to {rail}"),
            (RailState.Starved, _) => Statement.Of(
                "pump.rail-starved", $": it cannot deliver the demand to the rail even against no pressure"),
            (_, true) => Statement.Of("pump.deadheads", $": {point.Parts.Pump.Name} deadheads below the pressure set"),
            _ => null,
        };
    }

    private static VolumeFlow Flow(double flow) => VolumeFlow.FromCubicMetersPerSecond(flow);
}
