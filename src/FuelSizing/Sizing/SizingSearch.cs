using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Sizing;

/// <summary>Searches one figure of a system for the values at which everything holds.</summary>
/// <remarks>
/// What counts is the conservative margin of each check at each point; a part that the data does not cover counts as failing.
/// A margin may rise and fall again (more gain helps the injectors until the pump runs out), so that several ranges may hold:
/// <see cref="HoldingRanges"/> finds them, and the ends of each are then found by root finding. Figures are judged in numbers; what binds
/// at the answer is read from results there.
/// </remarks>
internal sealed class SizingSearch
{
    private const double InsideStep = 1e-9;

    // Of a step, to which the best figure beside one is found.
    private const double NearestAccuracy = 1e-12;

    // A figure of few digits this near to an end, as a share of the range searched, is what was meant: a few times what InsideStep can add.
    private const double TidyShare = 1e-10;

    // In place of an infinite margin, for differences of margins are taken.
    private const double MaximumMargin = 1e6;

    private readonly Func<double, SizedSystem> _systemAt;
    private readonly int _points;
    private readonly double _minimum;
    private readonly double _maximum;
    private readonly IEnumerable<double> _knots;

    /// <summary>Takes the range and the system by the figure.</summary>
    /// <param name="minimum">Start of the range, SI.</param>
    /// <param name="maximum">End of the range, SI.</param>
    /// <param name="points">At how many operating points a figure is judged, at least one.</param>
    /// <param name="systemAt">The system with the figure in place, and its points: with the same checks at every figure.</param>
    /// <param name="knots">Where a margin may have a kink, SI; those outside the range do not matter.</param>
    /// <param name="cancellation">Stops the search before the next figure.</param>
    public SizingSearch(
        double minimum, double maximum, int points, Func<double, SizedSystem> systemAt, IEnumerable<double>? knots = null, CancellationToken cancellation = default)
    {
        (_minimum, _maximum, _points, _knots) = (minimum, maximum, points, knots ?? []);
        _systemAt = figure =>
        {
            cancellation.ThrowIfCancellationRequested();
            return systemAt(figure);
        };
    }

    /// <summary>The minimum at which everything holds, and every range over which it does.</summary>
    /// <param name="figure">How the figure is given and written.</param>
    public SizingAnswer<T> Minimum<T>(SizedFigure<T> figure)
        where T : struct
    {
        HeldRange[] ranges = Ranges(figure, out double nearest);
        if (ranges.Length == 0)
        {
            return Nothing(nearest, figure);
        }

        (double from, double to) = ranges[0];
        (Limit binding, Limit? next) = Tightest(from);
        Statement why = Why(binding, next);
        return new(
            figure.Typed(from),
            figure.End(from, to),
            Typed(ranges, figure),
            binding,
            next,
            to == _maximum
                ? Statement.Of("sizing.at-least", $"At least {figure.End(from, to)}: {why}.")
                : Statement.Of("sizing.within", $"Holds {InWords(ranges, figure)}: {why}."));
    }

    /// <summary>The maximum, counted up from the start of the range, up to which everything holds, and every range over which it does.</summary>
    /// <param name="figure">How the figure is given and written.</param>
    public SizingAnswer<T> Maximum<T>(SizedFigure<T> figure)
        where T : struct
    {
        HeldRange[] ranges = Ranges(figure, out double nearest);
        return ranges.Length == 0 ? Nothing(nearest, figure)
            : ranges[0].From > _minimum ? NotFromStart(ranges, figure)
            : UpTo(ranges, ranges[0].To, figure, figure.End(ranges[0].To, ranges[0].From), null);
    }

    /// <summary>The highest of what follows from the figure, over the range from its start up to which everything holds.</summary>
    /// <param name="output">How what follows is given and written: <see cref="SizedFigure{T}.Typed"/> takes the figure, not the output.</param>
    /// <param name="figure">How the figure is given and written.</param>
    /// <param name="amount">The output in SI, by the figure.</param>
    public SizingAnswer<T> MaximumOf<T, TFigure>(SizedFigure<T> output, SizedFigure<TFigure> figure, Func<double, double> amount)
        where T : struct
        where TFigure : struct
    {
        HeldRange[] ranges = Ranges(figure, out double nearest);
        (double Lowest, double Highest)[] ends = Array.ConvertAll(ranges, range => Extremes(amount, range));
        SizingRange<T>[] outputs = Array.ConvertAll(ends, at => Typed(new HeldRange(at.Lowest, at.Highest), output));
        if (ranges.Length == 0 || ranges[0].From > _minimum)
        {
            SizingAnswer<TFigure> none = ranges.Length == 0 ? Nothing(nearest, figure) : NotFromStart(ranges, figure);
            return new(null, null, outputs, none.Binding, none.Next, none.Text);
        }

        (double lowest, double highest) = ends[0];
        SizingAnswer<TFigure> answer = UpTo(
            ranges,
            highest,
            figure,
            output.End(highest, lowest),
            Statement.Of("sizing.reached-at", $", reached at {figure.End(highest, highest == ranges[0].To ? ranges[0].From : ranges[0].To)}"));
        return new(output.Typed(highest), output.End(highest, lowest), outputs, answer.Binding, answer.Next, answer.Text);
    }

    private static double MarginOf(in CheckReading<Real> reading)
    {
        double share = reading.Margin;

        // Not a number where it cannot be said, which does not hold.
        return double.IsNaN(share) ? -1 : Math.Clamp(share, -MaximumMargin, MaximumMargin);
    }

    private static double[] MarginsAt(in SizedSystem sized, int point) =>
        Array.ConvertAll(sized.Read(point), reading => MarginOf(reading));

    /// <summary>The least margin at a figure, or one that is no more than what is enough to know.</summary>
    private double Least(double figure, double enough = double.NegativeInfinity)
    {
        SizedSystem sized = _systemAt(figure);
        double least = double.PositiveInfinity;
        for (int point = 0; point < _points && least > enough; point++)
        {
            least = Math.Min(least, MarginsAt(sized, point).Min());
        }

        return least;
    }

    private static Statement Why(Limit binding, Limit? next)
    {
        bool atLimit = binding.Margin.Reserve is { DecimalFractions: < 1e-6 };
        Statement? then = next is null ? null : Statement.Of("sizing.next", $"; next, {next}");
        return atLimit
            ? Statement.Of(
                "sizing.at-limit", $"limited by {binding.Part.Name} ({binding.Margin.Finding} at {binding.Point}){then}")
            : Statement.Of(
                "sizing.tightest-margin",
                $"the tightest margin is that of {binding.Part.Name} ({binding.Margin.Finding} at {binding.Point}){then}");
    }

    private static SizingRange<T>[] Typed<T>(HeldRange[] ranges, SizedFigure<T> figure)
        where T : struct =>
        Array.ConvertAll(ranges, range => Typed(range, figure));

    private static SizingRange<T> Typed<T>(HeldRange range, SizedFigure<T> figure)
        where T : struct => new(figure.Typed(range.From), figure.Typed(range.To), InWords(range, figure));

    private static Statement InWords<T>(HeldRange range, SizedFigure<T> figure)
        where T : struct => Statement.Of("sizing.range", $"from {figure.End(range.From, range.To)} to {figure.End(range.To, range.From)}");

    private static Statement InWords<T>(IReadOnlyList<HeldRange> ranges, SizedFigure<T> figure)
        where T : struct
    {
        Statement[] words = [.. ranges.Select(range => InWords(range, figure))];
        return words.Length == 1 ? words[0] : Statement.Of("sizing.ranges", $"{words:, and}");
    }

    private SizingAnswer<T> UpTo<T>(HeldRange[] ranges, double at, SizedFigure<T> figure, Statement most, Statement? where)
        where T : struct
    {
        (Limit binding, Limit? next) = Tightest(at);
        Statement? again = ranges.Length == 1
            ? null
            : Statement.Of(
                "sizing.holds-again",
                $"; over {figure.End(ranges[0].To, ranges[0].From)} not everything holds, and again it does {InWords(ranges[1..], figure)}");
        return new(
            figure.Typed(at),
            most,
            Typed(ranges, figure),
            binding,
            next,
            Statement.Of("sizing.at-most", $"At most {most}{where}: {Why(binding, next)}{again}."));
    }

    private SizingAnswer<T> NotFromStart<T>(HeldRange[] ranges, SizedFigure<T> figure)
        where T : struct
    {
        (Limit binding, Limit? next) = Tightest(_minimum);
        return new(
            null,
            null,
            Typed(ranges, figure),
            binding,
            next,
            Statement.Of(
                "sizing.not-from-start",
                $"No maximum counted up from {figure.Plain(_minimum)}, where {binding}; everything holds {InWords(ranges, figure)}."));
    }

    private SizingAnswer<T> Nothing<T>(double nearest, SizedFigure<T> figure)
        where T : struct
    {
        (Limit binding, Limit? next) = Tightest(nearest);
        return new(
            null,
            null,
            [],
            binding,
            next,
            Statement.Of(
                "sizing.none-adequate",
                $"Nothing from {figure.Plain(_minimum)} to {figure.Plain(_maximum)} is adequate: at {figure.Plain(nearest)}, where it comes nearest, {binding}."));
    }

    /// <summary>Every range over which all holds, rising; where there is none, the figure that comes nearest.</summary>
    private HeldRange[] Ranges<T>(SizedFigure<T> figure, out double nearest)
        where T : struct
    {
        IReadOnlyList<HoldingRanges.Place> places = new HoldingRanges(_minimum, _maximum, _knots, _points, figure => MarginsAt(_systemAt(figure))).Places;
        List<HeldRange> ranges = [];
        double? from = null;
        for (int i = 0; i < places.Count; i++)
        {
            if (places[i].Holds && from is null)
            {
                from = i == 0 ? _minimum : Tidied(Edge(places[i - 1].Figure, places[i].Figure), places[i].Figure, figure);
            }
            else if (!places[i].Holds && from is { } start)
            {
                ranges.Add(new(start, Tidied(Edge(places[i].Figure, places[i - 1].Figure), places[i - 1].Figure, figure)));
                from = null;
            }
        }

        if (from is { } last)
        {
            ranges.Add(new(last, _maximum));
        }

        nearest = ranges.Count > 0 ? _minimum : Nearest(Best(places));
        return [.. ranges];
    }

    private static Func<int, double[]> MarginsAt(SizedSystem sized) => point => MarginsAt(sized, point);

    /// <summary>The lowest figure of those at which the least margin is greatest.</summary>
    private double Best(IReadOnlyList<HoldingRanges.Place> places)
    {
        (double best, double most) = (double.NaN, double.NegativeInfinity);
        foreach (HoldingRanges.Place place in places.OrderByDescending(place => place.AtMost).TakeWhile(place => place.AtMost >= most))
        {
            double least = place.IsWhole ? place.AtMost : Least(place.Figure, most);
            (best, most) = least > most || (least == most && place.Figure < best) ? (place.Figure, least) : (best, most);
        }

        return best;
    }

    /// <summary>The edge between a figure that fails and one that holds, on the side that holds.</summary>
    private double Edge(double failing, double holding)
    {
        double At(double along) => StraightLine.Through<Real>(0, failing, 1, holding, along);

        // −1 where it fails to +1 where it holds, so that the search falls whichever way the edge lies.
        double Left(double along, double atLeast) =>
            Least(At(along)) is var least && least < 0 ? Math.Max(least, -1) : Math.Clamp(least, atLeast, 1);
        double root = Bracket.Of(along => -Left(along, 0), 0, 1);

        // Where another part holds with nothing to spare, a zero is not yet the edge: then wherever it holds counts as over zero.
        if (root > InsideStep && Left(root - InsideStep, 0) >= 0)
        {
            root = Bracket.Of(along => -Left(along, double.Epsilon), 0, root);
        }

        double edge = At(root);

        // A hair inside, so that the figure still holds after a round trip through other units; more where rounding eats the hair.
        for (double step = InsideStep; step < 1; step *= 4)
        {
            double inside = StraightLine.Through<Real>(0, edge, 1, holding, step);
            if (Least(inside) >= 0)
            {
                return inside;
            }
        }

        // A jump just beside the figure that holds leaves nothing between.
        return holding;
    }

    /// <summary>An edge, or a figure of few digits right beside it that holds as well: 421 and not 421.00000002.</summary>
    private double Tidied<T>(double edge, double holding, SizedFigure<T> figure)
        where T : struct
    {
        double tidy = figure.Tidy(edge);
        return Math.Abs(tidy - edge) <= TidyShare * (_maximum - _minimum)
            && (tidy - holding) * (edge - holding) >= 0
            && tidy >= _minimum
            && tidy <= _maximum
            && Least(tidy) >= 0
                ? tidy
                : edge;
    }

    /// <summary>The best figure near one, by dividing in the golden ratio.</summary>
    private double Nearest(double near)
    {
        double step = (_maximum - _minimum) / HoldingRanges.Steps;
        return LowestPlace.Of(
            figure => -Least(figure), Math.Max(_minimum, near - step), Math.Min(_maximum, near + step), 2, NearestAccuracy * step).At;
    }

    /// <summary>Where over a range an amount is lowest and highest.</summary>
    private static (double Lowest, double Highest) Extremes(Func<double, double> amount, HeldRange range)
    {
        const int Places = 512;
        double Best(int sign) => LowestPlace.Of(place => -sign * amount(place), range.From, range.To, Places, NearestAccuracy * (range.To - range.From)).At;
        return (Best(-1), Best(1));
    }

    private (Limit Binding, Limit? Next) Tightest(double figure)
    {
        SizedSystem sized = _systemAt(figure);
        Limit[] limits =
        [
            .. Enumerable.Range(0, _points)
                .SelectMany(point => sized.Solve(point).Margins)
                .OrderBy(margin => margin, Urgency.Order)
                .Select(margin => new Limit(margin)),
        ];
        return (limits[0], limits.FirstOrDefault(limit => limit.Part != limits[0].Part));
    }
}

/// <summary>A system with a figure in place, at the operating points that it is judged at.</summary>
/// <param name="Read">How each check comes out at a point, by its place, in numbers.</param>
/// <param name="Solve">The result there, which comes out the same.</param>
internal readonly record struct SizedSystem(Func<int, CheckReading<Real>[]> Read, Func<int, OperatingResult> Solve)
{
    /// <summary>A system at points that change with the figure.</summary>
    public static SizedSystem Of(FuelSystem system, Func<int, OperatingPoint> pointAt) =>
        new(point => PointJudge.At(system.Applicable, system.Parts, pointAt(point)), point => system.Solve(pointAt(point)));

    /// <summary>A system with other parts, which are known to fit, at points that are the same at every figure.</summary>
    /// <param name="judged">The system whose checks apply, whatever the figure.</param>
    /// <param name="parts">With the figure in place.</param>
    /// <param name="points">The points.</param>
    public static SizedSystem Of(FuelSystem judged, SystemParts parts, IReadOnlyList<OperatingPoint> points) =>
        new(point => PointJudge.At(judged.Applicable, parts, points[point]), point => judged.With(parts).Solve(points[point]));
}

/// <summary>A range of a figure over which everything holds, SI.</summary>
internal readonly record struct HeldRange(double From, double To);
