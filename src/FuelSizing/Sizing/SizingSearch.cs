using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Sizing;

/// <summary>Searches one figure of a system for the values at which everything holds.</summary>
/// <remarks>
/// What is left is the tightest margin of all checks at all points; a part that the data does not cover counts as failing.
/// It may rise and fall again (more gain helps the injectors until the pump runs out), so the range is scanned first and
/// the edge of the part that holds is then found by root finding.
/// </remarks>
internal sealed class SizingSearch
{
    private const int Steps = 96;
    private const double InsideStep = 1e-9;

    private readonly Func<double, IReadOnlyList<OperatingResult>> _solve;
    private readonly double _minimum;
    private readonly double _maximum;

    /// <summary>Takes the range and how to solve at a figure.</summary>
    /// <param name="minimum">Start of the range, SI.</param>
    /// <param name="maximum">End of the range, SI.</param>
    /// <param name="solve">The results at every point, with the figure in place.</param>
    public SizingSearch(double minimum, double maximum, Func<double, IReadOnlyList<OperatingResult>> solve) =>
        (_minimum, _maximum, _solve) = (minimum, maximum, solve);

    /// <summary>The least figure at which everything holds.</summary>
    /// <param name="text">The figure in words.</param>
    /// <param name="typed">The figure with its unit.</param>
    public SizingAnswer<T> Minimum<T>(Func<double, T> typed, Func<T, Statement> text)
        where T : struct
    {
        double? failing = null;
        double bestShare = 0;
        double best = double.NegativeInfinity;
        for (int step = 0; step <= Steps; step++)
        {
            double share = (double)step / Steps;
            double reserve = ReserveOf(share);
            if (reserve >= 0)
            {
                return Answer(Edge(failing ?? share, share), typed, text, atLeast: true);
            }

            (bestShare, best) = reserve > best ? (share, reserve) : (bestShare, best);
            failing = share;
        }

        // A narrow range that holds may lie between two steps of the scan, beside the best of them.
        (double peak, double top) = Peak(bestShare);
        return top >= 0
            ? Answer(Edge(Math.Max(0, bestShare - 1.0 / Steps), peak), typed, text, atLeast: true)
            : Nothing(peak, typed, text);
    }

    /// <summary>The most, counted up from the start of the range, at which everything holds.</summary>
    /// <param name="typed">The figure with its unit.</param>
    /// <param name="text">The figure in words.</param>
    public SizingAnswer<T> Maximum<T>(Func<double, T> typed, Func<T, Statement> text)
        where T : struct
    {
        double holding = 0;
        for (int step = 0; step <= Steps; step++)
        {
            double share = (double)step / Steps;
            if (ReserveOf(share) < 0)
            {
                return step == 0
                    ? Nothing(0, typed, text)
                    : Answer(Edge(share, holding), typed, text, atLeast: false);
            }

            holding = share;
        }

        return Answer(1, typed, text, atLeast: false);
    }

    private static double ReserveOf(OperatingResult result) =>
        result.Margins.Min(margin => margin.Outcome switch
        {
            Outcome.CannotSay => -1,
            Outcome.Fails => Math.Min(margin.Share!.Value, -double.Epsilon),
            _ => margin.Share ?? double.PositiveInfinity,
        });

    private double At(double share) => StraightLine.Through<Real>(0, _minimum, 1, _maximum, share);

    private double ReserveOf(double share) => _solve(At(share)).Min(ReserveOf);

    /// <summary>The edge between a share that fails and one that holds, on the side that holds.</summary>
    private double Edge(double failing, double holding)
    {
        // −1 where it fails to +1 where it holds, so that the search falls whichever way the edge lies.
        double edge = StraightLine.Through<Real>(
            0, failing, 1, holding, Bracket.Of(along => -Bounded(StraightLine.Through<Real>(0, failing, 1, holding, along)), 0, 1));

        // A hair inside, so that the figure still holds after a round trip through other units; more where rounding eats the hair.
        for (double step = InsideStep; step < 1; step *= 4)
        {
            double inside = StraightLine.Through<Real>(0, edge, 1, holding, step);
            if (ReserveOf(inside) >= 0)
            {
                return inside;
            }
        }

        // A jump just beside the share that holds leaves nothing between.
        return holding;
    }

    private double Bounded(double share) => Math.Clamp(ReserveOf(share), -1, 1);

    /// <summary>The best share near one, by dividing in the golden ratio.</summary>
    private (double Share, double ReserveOf) Peak(double near)
    {
        double golden = (Math.Sqrt(5) - 1) / 2;
        double step = 1.0 / Steps;
        (double low, double high) = (Math.Max(0, near - step), Math.Min(1, near + step));
        for (int i = 0; i < 60; i++)
        {
            double left = high - (golden * (high - low));
            double right = low + (golden * (high - low));
            (low, high) = ReserveOf(left) >= ReserveOf(right) ? (low, right) : (left, high);
        }

        return new[] { low, high, near }.Select(share => (share, ReserveOf(share))).MaxBy(pair => pair.Item2);
    }

    private SizingAnswer<T> Answer<T>(double share, Func<double, T> typed, Func<T, Statement> text, bool atLeast)
        where T : struct
    {
        T value = typed(At(share));
        (Limit binding, Limit? next) = Tightest(share);
        bool atLimit = binding.Margin.Reserve is { DecimalFractions: < 1e-6 };
        Statement why = atLimit
            ? Statement.Of(
                "sizing.at-limit", $"{binding.Part.Name} is then at its limit ({binding.Margin.Finding} at {binding.Point})")
            : Statement.Of(
                "sizing.tightest-margin",
                $"{binding.Part.Name} has the tightest margin ({binding.Margin.Finding} at {binding.Point})");
        Statement? then = next is null ? null : Statement.Of("sizing.next", $"; next, {next}");
        return new(
            value,
            binding,
            next,
            atLeast
                ? Statement.Of("sizing.at-least", $"At least {text(value)}: {why}{then}.")
                : Statement.Of("sizing.at-most", $"At most {text(value)}: {why}{then}."));
    }

    private SizingAnswer<T> Nothing<T>(double share, Func<double, T> typed, Func<T, Statement> text)
        where T : struct
    {
        (Limit binding, Limit? next) = Tightest(share);
        return new(
            null,
            binding,
            next,
            Statement.Of(
                "sizing.none-adequate",
                $"Nothing from {text(typed(_minimum))} to {text(typed(_maximum))} is adequate: at {text(typed(At(share)))}, where it comes nearest, {binding}."));
    }

    private (Limit Binding, Limit? Next) Tightest(double share)
    {
        Limit[] limits =
        [
            .. _solve(At(share))
                .SelectMany(result => result.Margins)
                .OrderBy(margin => margin, Urgency.Order)
                .Select(margin => new Limit(margin)),
        ];
        return (limits[0], limits.FirstOrDefault(limit => limit.Part != limits[0].Part));
    }
}
