using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>Hoses, fittings and filter: the highest pressure, set or reached in the rail or at the pump outlet, against their rating.</summary>
internal sealed class PressureRatingCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.PressureRating;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Maximum fuel pressure", LimitDirection.AtMost, si => Pressure.FromPascals(si), units => units.Pressure);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts.Limits.RailCeiling is not null
        ? Applicability.Judged
        : Applicability.NotJudged(Statement.Of("pressure-rating.none-given", $"no rating given"));

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        T rating = parts.Limits.RailCeiling is { } ceiling ? ceiling.Pascals : double.NaN;

        // The line's first hose bears what the line loses besides; where that is not known, it is at least the rail's.
        T known = T.Max(at.RailSet, parts.Regulator.HasBand ? T.IfLess(at.Minimum.Rail, at.Rail, at.Minimum.Rail, at.Rail) : at.Rail);
        T least = Higher(known, at.Minimum);
        T most = Higher(T.Max(known, at.Maximum.Rail), at.Maximum);
        T best = CheckReading.MarginOf<T>(rating, T.IfLess(least, double.PositiveInfinity, least, known));
        return new(T.IfLess(best, 0, least, most), rating, CheckReading.MarginOf<T>(rating, most), best);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        Pressure rating = Pressure.FromPascals(reading.Allowed.Value);
        Pressure rail = Pressure.FromPascals(Math.Max(point.SolvedCircuit.RailSet, point.SolvedCircuit.Rail));
        bool isKnown = double.IsFinite(reading.Used.Value);
        Pressure outlet = isKnown ? Pressure.FromPascals(reading.Used.Value) : rail;
        return (CheckReading.OutcomeOf(reading), isKnown) switch
        {
            (Outcome.Holds, _) => Statement.Of("pressure-rating.within", $"{outlet} at the pump outlet, {rail} in the rail, rated for {rating}"),
            (Outcome.CannotSay, true) => CircuitFinding.PressureNotDecided((rail.Pascals, outlet.Pascals), rating.Pascals, point.Parts.Regulator.HasBand),
            (Outcome.CannotSay, _) => Statement.Of("pressure-rating.outlet-not-known", $"{rail} in the rail, rated for {rating}; the pressure at the pump outlet is not known"),
            (_, true) => Statement.Of("pressure-rating.over", $"{outlet.ApartFrom(rating):pressure} at the pump outlet, {rail} in the rail, rated for only {rating.ApartFrom(outlet):pressure}"),
            _ => Statement.Of("pressure-rating.over-in-rail", $"{rail.ApartFrom(rating):pressure} in the rail, rated for only {rating.ApartFrom(rail):pressure}"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        Pressure highest = Pressure.FromPascals(task.Points.Max(Highest));
        return Remedy.Of(
            Part,
            highest,
            Statement.Of(
                "pressure-rating.higher",
                $"Hoses, fittings and filter rated for at least {highest:pressure:up}, or less rail pressure."));
    }

    private static double Highest(SolvedPoint point)
    {
        PointValues<Real> at = PointReading.Of(point);
        double rail = Math.Max(point.SolvedCircuit.RailSet, point.SolvedCircuit.Rail);
        return double.IsFinite(at.Maximum.OutletGauge) ? Math.Max(rail, at.Maximum.OutletGauge) : rail;
    }

    private static T Higher<T>(T rail, in CircuitValues<T> bound)
        where T : struct, IReal<T> => T.IfLess(bound.OutletGauge, rail, rail, bound.OutletGauge);
}
