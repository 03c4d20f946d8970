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
        where T : struct, IReal<T> => CheckReading.AtMost<T>(at.Minimum.ReturnGauge, at.Maximum.ReturnGauge, at.RailSet);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        PointValues<Real> at = PointReading.Of(point);
        Pressure set = Pressure.FromPascals(point.SolvedCircuit.RailSet);
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of("return-line.within", $"passes {Flow(at.Maximum.Returned):pump-flow} at {Pressure.FromPascals(reading.Used.Value)}, below the {set} set"),
            Outcome.Fails => Statement.Of(
                "return-line.too-narrow", $"passes {Flow(at.Minimum.Returned):pump-flow} only at {Pressure.FromPascals(reading.Used.Value)}: the rail cannot fall to the {set} set"),
            _ => CircuitFinding.PressureNotDecided(at.Minimum.ReturnGauge, at.Maximum.ReturnGauge, at.RailSet),
        };
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

    private static VolumeFlow Flow(Real flow) => VolumeFlow.FromCubicMetersPerSecond(flow.Value);
}
