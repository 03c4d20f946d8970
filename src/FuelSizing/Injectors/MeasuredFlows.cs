using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>Static flow of an injector measured at several pressures, the square-root law between them.</summary>
/// <remarks>
/// Each point is kept as a rating: the flow that the law, carried through the point, gives at the rated pressure. An orifice that kept
/// the law would have one rating everywhere. Between two points the rating runs straight over pressure, past the ends it stays that of the end.
/// </remarks>
internal sealed class MeasuredFlows : IEquatable<MeasuredFlows>
{
    // A point this far off the law is rather another unit, or another injector.
    private const double MinimumShare = 0.6;
    private const double MaximumShare = 1.6;

    private readonly double[] _pascals;
    private readonly double[] _ratings;

    private MeasuredFlows(double[] pascals, double[] ratings, (Pressure Differential, VolumeFlow Flow)[] points) => (_pascals, _ratings, Points) = (pascals, ratings, points);

    /// <summary>Pressures rising, the rated point among them.</summary>
    public IReadOnlyList<(Pressure Differential, VolumeFlow Flow)> Points { get; }

    /// <summary>The lowest pressure at which the flow was measured.</summary>
    public Pressure Lowest => Points[0].Differential;

    /// <summary>Joins measured points with the rated one.</summary>
    /// <param name="rated">The rated point.</param>
    /// <param name="points">The others, pressures rising.</param>
    /// <param name="maximum">Against which the injector opens.</param>
    /// <param name="name">Of the argument.</param>
    public static MeasuredFlows Of((Pressure Differential, VolumeFlow Flow) rated, IReadOnlyList<(Pressure Differential, VolumeFlow Flow)> points, Pressure maximum, string name)
    {
        Guard.Count(points.Count, 1, 100, "Give the points that were measured beside the rated one.", name);
        for (int point = 0; point < points.Count; point++)
        {
            Guard.Between(points[point].Differential, Pressure.FromKilopascals(10), maximum, "Give the pressure across the injector, no higher than that at which it opens.", name);
            if (point > 0 && points[point].Differential <= points[point - 1].Differential)
            {
                throw Guard.OutOfRange(
                    name, Readable.Of(points[point].Differential), $"over the {Readable.Of(points[point - 1].Differential)} before it", "Sort the points by pressure.");
            }
        }

        List<(Pressure Differential, VolumeFlow Flow)> all = [.. points];
        int at = all.FindIndex(point => Significant.Same(point.Differential.Pascals, rated.Differential.Pascals));
        if (at < 0)
        {
            at = all.FindIndex(point => point.Differential > rated.Differential);
            all.Insert(at < 0 ? all.Count : at, rated);
        }
        else if (!Significant.Same(all[at].Flow.CubicMetersPerSecond, rated.Flow.CubicMetersPerSecond))
        {
            throw Guard.OutOfRange(
                name, Readable.InjectorFlow(all[at].Flow), $"{Readable.InjectorFlow(rated.Flow)} at {Readable.Of(rated.Differential)}, the injector's rating", "Leave the rated point out, or rate the injector by this one.");
        }
        else
        {
            all[at] = rated;
        }

        (Pressure Differential, VolumeFlow Flow)[] ordered = [.. all];
        return new MeasuredFlows(
            Array.ConvertAll(ordered, point => point.Differential.Pascals),
            Array.ConvertAll(ordered, point => Rating(point, rated, name)),
            ordered).Rising(name);
    }

    /// <summary>The rating that an injector has at a pressure across it, m³/s.</summary>
    /// <param name="differential">Pa.</param>
    public T At<T>(T differential)
        where T : struct, IReal<T>
    {
        T inside = T.Max(_pascals[0], T.Min(differential, _pascals[^1]));
        T rating = Piece(1, inside);
        for (int point = 2; point < _pascals.Length; point++)
        {
            rating = T.IfLess(inside, _pascals[point - 1], rating, Piece(point, inside));
        }

        return rating;
    }

    /// <summary>Rise of the rating with pressure just above a pressure, (m³/s)/Pa.</summary>
    public double SlopeAbove(double differential)
    {
        int point = 1;
        while (point < _pascals.Length && _pascals[point] <= differential)
        {
            point++;
        }

        return point == _pascals.Length || differential < _pascals[0]
            ? 0
            : StraightLine.Slope<Real>(_pascals[point - 1], _ratings[point - 1], _pascals[point], _ratings[point]);
    }

    /// <summary>The points between which a pressure lies; the same one twice past an end.</summary>
    public ((Pressure Differential, VolumeFlow Flow) Under, (Pressure Differential, VolumeFlow Flow) Over) Around(double differential)
    {
        int point = 1;
        while (point < _pascals.Length - 1 && _pascals[point] <= differential)
        {
            point++;
        }

        return differential <= _pascals[0] ? (Points[0], Points[0])
            : differential >= _pascals[^1] ? (Points[^1], Points[^1])
            : (Points[point - 1], Points[point]);
    }

    /// <summary>The same points, each passing a multiple of its flow.</summary>
    public MeasuredFlows Scaled(double factor) => new(
        _pascals,
        Array.ConvertAll(_ratings, rating => rating * factor),
        [.. Points.Select(point => (point.Differential, point.Flow * factor))]);

    /// <inheritdoc/>
    public bool Equals(MeasuredFlows? other) =>
        other is not null && Significant.Same(_pascals, other._pascals) && Significant.Same(_ratings, other._ratings);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as MeasuredFlows);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Significant.Hash(_pascals), Significant.Hash(_ratings));

    private static double Rating(in (Pressure Differential, VolumeFlow Flow) point, in (Pressure Differential, VolumeFlow Flow) rated, string name)
    {
        double rating = InjectorFlow.Rated<Real>(
            point.Flow.CubicMetersPerSecond, rated.Differential.Pascals, 1, point.Differential.Pascals, 1);
        double share = rating / rated.Flow.CubicMetersPerSecond;
        return share is >= MinimumShare and <= MaximumShare
            ? rating
            : throw Guard.OutOfRange(
                name,
                Readable.InjectorFlow(point.Flow) + " at " + Readable.Of(point.Differential),
                FormattableString.Invariant($"within {MinimumShare} to {MaximumShare} of what the square-root law gives there from the rated point"),
                "Check the units, and that every point was measured on one injector with the test liquid.");
    }

    private T Piece<T>(int point, T differential)
        where T : struct, IReal<T> => StraightLine.Through(
            (T)_pascals[point - 1], (T)_ratings[point - 1], (T)_pascals[point], (T)_ratings[point], differential);

    // Rating times the root of pressure has one maximum on a falling piece; it must not lie before the piece ends.
    private MeasuredFlows Rising(string name)
    {
        for (int point = 1; point < _pascals.Length; point++)
        {
            double fall = _ratings[point - 1] - _ratings[point];
            if (_ratings[point] * (_pascals[point] - _pascals[point - 1]) <= 2 * _pascals[point] * fall)
            {
                throw Guard.OutOfRange(
                    name,
                    Readable.InjectorFlow(Points[point].Flow) + " at " + Readable.Of(Points[point].Differential),
                    $"a flow that rises all the way from {Readable.InjectorFlow(Points[point - 1].Flow)} at {Readable.Of(Points[point - 1].Differential)}",
                    "An injector held open passes more at a higher pressure; measure the points again.");
            }
        }

        return this;
    }
}
