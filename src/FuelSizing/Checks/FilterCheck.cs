using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A filter: the flow through it against the maximum at which its pressure loss is known.</summary>
internal sealed class FilterCheck(Part part, JudgedCircuit judged) : ICheck
{
    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Flow through the filter", LimitDirection.AtMost, si => VolumeFlow.FromCubicMetersPerSecond(si), units => units.PumpFlow);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) =>
        judged.LinesOf(parts) is null ? Applicability.NotApplicable
        : judged.IsFiltered(parts) ? Applicability.Judged
        : judged.HasFilter(parts) ? Applicability.JudgedInPart(NoneGiven)
        : Applicability.NotJudged(NoneGiven);

    // Past its data the loss is not known, which is not to say that the filter fails.
    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        CircuitFigures<T> figures = judged.Read(at);
        T flow = figures.Maximum.FilterFlow;
        return new(flow, figures.FilterMaximum, CheckReading.MarginOf<T>(figures.FilterMaximum, flow), double.PositiveInfinity);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (!double.IsFinite(reading.Used.Value))
        {
            return CircuitFinding.PumpNotCovered;
        }

        ILimitedLoss filter = judged.FilterOf(point.SolvedCircuit);
        VolumeFlow flow = VolumeFlow.FromCubicMetersPerSecond(reading.Used.Value);
        return CheckReading.OutcomeOf(reading) == Outcome.Holds
            ? Statement.Of("filter.within", $"{filter.Name} passes {flow:pump-flow}, its loss is known up to {filter.MaximumFlow:pump-flow}")
            : Statement.Of("filter.beyond-data", $"{filter.Name} would pass {flow.ApartFrom(filter.MaximumFlow):pump-flow}, its loss is known only up to {filter.MaximumFlow.ApartFrom(flow):pump-flow}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task) => null;

    private static Statement NoneGiven => Statement.Of("filter.none-given", $"none given");
}
