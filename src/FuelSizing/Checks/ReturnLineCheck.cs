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
        where T : struct, IReal<T> => CheckReading.AtMost<T>(
            at.Minimum.ReturnGauge,
            at.Maximum.ReturnGauge,

            // Where little returns a regulator holds less than its setting.
            T.IfLess(at.Minimum.Regulated, at.RailSet, at.Minimum.Regulated, at.RailSet));

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        PointValues<Real> at = PointReading.Of(point);
        Pressure set = Pressure.FromPascals(reading.Allowed.Value);
        if (CheckReading.OutcomeOf(reading) == Outcome.CannotSay)
        {
            return CircuitFinding.PressureNotDecided((at.Minimum.ReturnGauge, at.Maximum.ReturnGauge), reading.Allowed.Value, point.Parts.Regulator.HasBand);
        }

        Pressure needed = Pressure.FromPascals(reading.Used.Value);
        return CheckReading.OutcomeOf(reading) == Outcome.Holds
            ? Statement.Of("return-line.within", $"passes {Flow(at.Maximum.Returned):pump-flow} at {needed}, below the {set} set")
            : Statement.Of("return-line.too-narrow", $"passes {Flow(at.Minimum.Returned):pump-flow} only at {needed.ApartFrom(set):pressure}: the rail cannot fall to the {set.ApartFrom(needed):pressure} set");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        // A line loses no more at a smaller flow: the largest surplus at the lowest set pressure serves every point.
        VolumeFlow surplus = VolumeFlow.FromCubicMetersPerSecond(
            task.Failing.Max(point => PumpDuty.Returned<Real>(point.SolvedCircuit.State.MaximumAtSet, point.SolvedDemand.Injected).Value)
            * (1 + Remedy.Hair));
        Pressure set = Pressure.FromPascals(task.Failing.Min(point => point.SolvedCircuit.RailSet));
        return Remedy.Of(
            Part,
            surplus,
            Statement.Of(
                "return-line.wider",
                $"A return line that passes {surplus:pump-flow:up} at {set:pressure:down} or less (wider, shorter, fewer fittings), or a pump that delivers less."));
    }

    private static VolumeFlow Flow(Real flow) => VolumeFlow.FromCubicMetersPerSecond(flow.Value);
}
