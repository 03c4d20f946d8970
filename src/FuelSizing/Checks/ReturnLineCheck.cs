using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The return line: the pressure at which it passes the surplus against the one that the regulator sets.</summary>
internal sealed class ReturnLineCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.ReturnLine;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Return line pressure", LimitDirection.AtMost, si => Pressure.FromPascals(si), units => units.Pressure);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) =>
        parts.Plumbing.ReturnLine.Count > 0 ? Applicability.Judged
        : parts.Layout == LineLayout.Return ? Applicability.NotJudged(Statement.Of("return-line.none-given", $"none given"))
        : Applicability.NotApplicable;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => CheckReading.AtMost<T>(at.ReturnGauge, at.RailSet);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (!point.SolvedCircuit.IsCovered)
        {
            return CircuitFinding.PumpNotCovered;
        }

        Pressure set = Pressure.FromPascals(point.SolvedCircuit.RailSet);
        Pressure needed = Pressure.FromPascals(point.SolvedCircuit.State.ReturnGauge);
        VolumeFlow returned = VolumeFlow.FromCubicMetersPerSecond(point.SolvedCircuit.State.Returned ?? 0);
        return CheckReading.OutcomeOf(reading) == Outcome.Holds
            ? Statement.Of("return-line.within", $"passes {returned:pump-flow} at {needed}, below the {set} set")
            : Statement.Of("return-line.too-narrow", $"passes {returned:pump-flow} only at {needed}: the rail cannot fall to the {set} set");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        SolvedPoint worst = task.Failing.MaxBy(point => point.SolvedCircuit.State.MaximumAtSet)!;
        VolumeFlow surplus = VolumeFlow.FromCubicMetersPerSecond(
            PumpDuty.Returned<Real>(worst.SolvedCircuit.State.MaximumAtSet, worst.SolvedDemand.Injected).Value);
        return Remedy.Of(
            Part,
            surplus,
            Statement.Of(
                "return-line.wider",
                $"A return line that passes {surplus:pump-flow} at {worst.RailSetGauge} or less (wider, shorter, fewer fittings), or a pump that delivers less."));
    }
}
