using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>Hoses, fittings and filter: rail pressure, set or reached, against their rating.</summary>
internal sealed class PressureRatingCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.PressureRating;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Rail pressure", LimitDirection.AtMost, si => Pressure.FromPascals(si), units => units.Pressure);

    /// <inheritdoc/>
    public bool AppliesTo(SystemParts parts) => parts.Limits.RailCeiling is not null;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => CheckReading.AtMost<T>(
            T.Max(at.RailSet, at.Rail), parts.Limits.RailCeiling is { } ceiling ? ceiling.Pascals : double.NaN);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        Pressure used = Pressure.FromPascals(reading.Used.Value);
        Pressure rating = Pressure.FromPascals(reading.Allowed.Value);
        return CheckReading.OutcomeOf(reading) == Outcome.Holds
            ? Statement.Of("pressure-rating.within", $"rail pressure {used}, rated for {rating}")
            : Statement.Of("pressure-rating.over", $"rail pressure {used}, rated for only {rating}");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        Pressure highest = Pressure.FromPascals(task.Points.Max(point => point.SolvedCircuit.RailSet));
        return Remedy.Of(
            Part,
            highest,
            Statement.Of(
                "pressure-rating.higher",
                $"Hoses, fittings and filter rated for at least {highest} at the rail, or less rail pressure."));
    }
}
