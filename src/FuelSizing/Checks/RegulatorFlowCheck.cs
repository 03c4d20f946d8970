using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The regulator: the flow that returns through it against the least at which it governs, where its change with flow is described.</summary>
internal sealed class RegulatorFlowCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.Regulator;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Flow through the regulator", LimitDirection.AtLeast, si => VolumeFlow.FromCubicMetersPerSecond(si), units => units.PumpFlow);

    // A minimum without such a description is part of what the pump has to deliver, and no more.
    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) =>
        parts.Regulator.IsFlowStated && parts.Regulator.MinimumReturnFlow > VolumeFlow.Zero ? Applicability.Judged : Applicability.NotApplicable;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => CheckReading.AtLeast<T>(
            at.Minimum.ThroughRegulator, at.Maximum.ThroughRegulator, parts.Regulator.MinimumReturnFlow.CubicMetersPerSecond);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        VolumeFlow minimum = point.Parts.Regulator.MinimumReturnFlow;
        if (CheckReading.OutcomeOf(reading) == Outcome.CannotSay)
        {
            CircuitValues<Real> least = PointReading.Of(point).Minimum;
            CircuitValues<Real> most = PointReading.Of(point).Maximum;
            return double.IsFinite(least.ThroughRegulator.Value) && double.IsFinite(most.ThroughRegulator.Value)
                ? Statement.Of(
                    "regulator-flow.bounds",
                    $"between {Flow(least.ThroughRegulator):pump-flow} and {Flow(most.ThroughRegulator):pump-flow} return through it, by what pumps and regulator leave open; it governs from {minimum:pump-flow}")
                : CircuitFinding.PumpNotCovered;
        }

        VolumeFlow returned = Flow(reading.Used);
        return CheckReading.OutcomeOf(reading) == Outcome.Holds
            ? Statement.Of("regulator-flow.within", $"{returned:pump-flow} return through it, {returned - minimum:pump-flow} more than the {minimum:pump-flow} from which it governs")
            : Statement.Of(
                "regulator-flow.under",
                $"{returned.ApartFrom(minimum):pump-flow} return through it, {minimum - returned:pump-flow} less than the {minimum.ApartFrom(returned):pump-flow} from which it governs: the rail is not held there");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        VolumeFlow flow = Flow(task.Points.Max(point => PumpDuty.Required<Real>(point.SolvedDemand.Injected, 0, point.SolvedCircuit.Task.MinimumReturn).Value) * (1 + Remedy.Hair));
        return Remedy.Of(
            Part,
            flow,
            Statement.Of(
                "regulator-flow.more",
                $"A regulator that governs from less flow, or pumps that deliver at least {flow:pump-flow:up} at the pressure that it holds, so that enough returns."));
    }

    private static VolumeFlow Flow(Real flow) => VolumeFlow.FromCubicMetersPerSecond(flow.Value);
}
