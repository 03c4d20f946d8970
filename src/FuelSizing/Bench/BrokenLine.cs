using FuelSizing.Numerics;
using MathNet.Numerics.Distributions;

namespace FuelSizing.Bench;

/// <summary>A line whose slope is known up to a kink at an unknown place and unknown from there on: y = a + g₀ min(x, o) + g max(0, x − o) + m q.</summary>
/// <remarks>
/// With the kink held at a place the rest is a linear fit; its sum of squares over the places of the kink is the profile. A place, an intercept, a slope or an effect of q is within its interval if some fit
/// that has it is no worse than the best by Fisher's F of one unknown (D. M. Bates and D. G. Watts, Nonlinear Regression Analysis and Its Applications, on profiles; recalled). The profile has
/// corners where the kink passes a reading and may have several hollows, so it is searched over a grid, and an interval spans all places that pass.
/// </remarks>
internal sealed class BrokenLine
{
    private const double Confidence = 0.95;
    private const double KinkConfidence = 0.99;
    private const int Divisions = 120;
    private const int Inside = 40;

    private BrokenLine(double kink, Held held, double bound, bool isKinked)
    {
        (Kink, IsKinked, Bound) = (kink, isKinked, bound);
        Best = held;
    }

    /// <summary>Place of the kink that fits best.</summary>
    public double Kink { get; }

    /// <summary>The fit with the kink held there.</summary>
    public Held Best { get; }

    /// <summary>True if the readings are further from a line without a kink than chance brings them once in a hundred tests.</summary>
    public bool IsKinked { get; }

    /// <summary>Interval of the kink: the lower end none where even the lowest place passes that was tried and no reading lies below it.</summary>
    public (double? Minimum, double? Maximum) KinkInterval { get; private set; }

    /// <summary>Interval of the intercept; none to either side where readings do not bound it.</summary>
    public (double? Minimum, double? Maximum) Intercept { get; private set; }

    /// <summary>Interval of the slope over the kink; no upper end where the kink may lie past the last reading but one.</summary>
    public (double? Minimum, double? Maximum) Slope { get; private set; }

    /// <summary>Interval of the effect of q, where there is one.</summary>
    public (double? Minimum, double? Maximum) Effect { get; private set; }

    private double Bound { get; }

    /// <summary>Fits.</summary>
    /// <param name="x">Of each reading; two or more different ones over 0.</param>
    /// <param name="y">What was read.</param>
    /// <param name="effect">q of each reading, about its mean; none where it has no effect that readings show.</param>
    /// <param name="slopeBelow">g₀.</param>
    /// <param name="deviationOfX">Standard deviation of x, which counts by the slope there.</param>
    /// <param name="deviationOfY">Standard deviation of y.</param>
    public static BrokenLine Of(double[] x, double[] y, double[]? effect, double slopeBelow, double deviationOfX, double deviationOfY)
    {
        double[] places = [.. x.Distinct().Order()];

        // Past the last place but one a single place decides the slope, however steep.
        double last = places[^2];
        bool isSeenFromBelow = places[0] <= 0;
        double first = isSeenFromBelow ? 0 : places[0];
        double[] grid = [.. Enumerable.Range(0, Divisions + 1).Select(step => first + ((last - first) * step / Divisions)).Concat(places.Where(place => place > first && place < last)).Distinct().Order()];

        double[] deviations = [.. x.Select(_ => Effective(slopeBelow, deviationOfX, deviationOfY))];
        Profile profile = new(x, y, effect, slopeBelow, deviations);
        double kink = profile.Lowest(grid);
        for (int round = 0; round < 2; round++)
        {
            double slope = slopeBelow + profile.At(kink).Rise;
            deviations = [.. x.Select(place => Effective(place > kink ? slope : slopeBelow, deviationOfX, deviationOfY))];
            profile = new(x, y, effect, slopeBelow, deviations);
            kink = profile.Lowest(grid);
        }

        Held best = profile.At(kink);
        int spare = x.Length - (effect is null ? 3 : 4);
        double square = best.Squares / spare;
        double normal = PooledMeans.StatedReach * PooledMeans.StatedReach;
        double bound = best.Squares + Math.Max(FisherSnedecor.InvCDF(1, spare, Confidence) * square, normal);
        double straight = profile.WithoutKink();
        bool isKinked = straight > best.Squares + Math.Max(2 * FisherSnedecor.InvCDF(2, spare, KinkConfidence) * square, ChiSquared.InvCDF(2, KinkConfidence));
        BrokenLine line = new(kink, best, bound, isKinked);
        line.Spread(profile, [.. grid.Append(kink).Distinct().Order()], places, isSeenFromBelow);
        return line;
    }

    private static double Effective(double slope, double deviationOfX, double deviationOfY) => Math.Sqrt((deviationOfY * deviationOfY) + Math.Pow(slope * deviationOfX, 2));

    private void Spread(Profile profile, double[] grid, double[] places, bool isSeenFromBelow)
    {
        // Of the order of one for the bracket.
        double Over(double place) => (profile.At(place).Squares / Bound) - 1;
        int from = Array.FindIndex(grid, place => Over(place) <= 0);
        int to = Array.FindLastIndex(grid, place => Over(place) <= 0);
        double low = from == 0 ? grid[0] : grid[from - 1] + ((grid[from] - grid[from - 1]) * Bracket.Of(share => Over(grid[from - 1] + ((grid[from] - grid[from - 1]) * share)), 0, 1));
        double high = to == grid.Length - 1 ? grid[^1] : grid[to] + ((grid[to + 1] - grid[to]) * Bracket.Of(share => -Over(grid[to] + ((grid[to + 1] - grid[to]) * share)), 0, 1));

        // At a kink under every reading all of them lie on one line, whose intercept goes with the kink.
        bool isOpenBelow = from == 0 && !isSeenFromBelow;
        bool isOpenAbove = to == grid.Length - 1;
        KinkInterval = (isOpenBelow ? null : low, isOpenAbove ? places[^1] : high);
        Held[] within =
        [
            .. grid[from..(to + 1)].Concat(Enumerable.Range(0, Inside + 1).Select(step => low + ((high - low) * step / Inside))).Select(profile.At).Where(held => held.Squares <= Bound * (1 + 1e-9)),
        ];
        (double? Minimum, double? Maximum) Hull(Func<Held, (double Value, double Deviation)> figure)
        {
            (double Value, double Reach)[] ends = [.. within.Select(held => (figure(held).Value, figure(held).Deviation * Math.Sqrt(Math.Max(0, Bound - held.Squares))))];
            return (ends.Min(end => end.Value - end.Reach), ends.Max(end => end.Value + end.Reach));
        }

        Intercept = isOpenBelow ? (null, null) : Hull(held => (held.Intercept, held.InterceptDeviation));
        (double? least, double? most) = Hull(held => (held.Rise + profile.SlopeBelow, held.RiseDeviation));
        Slope = (least, isOpenAbove ? null : most);
        Effect = profile.HasEffect ? Hull(held => (held.Effect, held.EffectDeviation)) : (null, null);
    }

    /// <summary>The fit with the kink held at a place; deviations are those that the stated ones give.</summary>
    internal readonly record struct Held(LinearFit Fit, double Squares)
    {
        public double Intercept => Fit.Factors[0];

        public double InterceptDeviation => Fit.StatedDeviation(0);

        public double Rise => Fit.Factors[1];

        public double RiseDeviation => Fit.StatedDeviation(1);

        public double Effect => Fit.Factors.Count > 2 ? Fit.Factors[2] : 0;

        public double EffectDeviation => Fit.Factors.Count > 2 ? Fit.StatedDeviation(2) : 0;
    }

    private sealed class Profile(double[] x, double[] y, double[]? effect, double slopeBelow, double[] deviations)
    {
        private readonly double[] _rest = [.. y.Select((value, reading) => value - (slopeBelow * x[reading]))];

        public double SlopeBelow => slopeBelow;

        public bool HasEffect => effect is not null;

        public Held At(double kink)
        {
            LinearFit fit = LinearFit.Of(
                [.. x.Select((place, reading) => effect is null ? (double[])[1, Math.Max(0, place - kink)] : [1, Math.Max(0, place - kink), effect[reading]])], _rest, deviations);
            return new(fit, Squares(fit));
        }

        public double WithoutKink() => Squares(LinearFit.Of([.. x.Select((_, reading) => effect is null ? (double[])[1] : [1, effect[reading]])], _rest, deviations));

        /// <summary>The place with the least sum of squares: the best of a grid, then between its neighbours.</summary>
        public double Lowest(double[] grid)
        {
            int best = Enumerable.Range(0, grid.Length).MinBy(place => At(grid[place]).Squares);
            (double from, double to) = (grid[Math.Max(0, best - 1)], grid[Math.Min(grid.Length - 1, best + 1)]);
            return LowestPlace.Of(place => At(place).Squares, from, to, 8, 1e-7 * Math.Max(Math.Abs(to), 1)).At;
        }

        private static double Squares(LinearFit fit) => fit.Residuals.Sum(residual => residual * residual);
    }
}
