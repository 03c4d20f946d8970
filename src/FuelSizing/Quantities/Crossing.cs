using MathNet.Numerics.RootFinding;

namespace FuelSizing.Quantities;

/// <summary>Where a falling function passes through zero.</summary>
internal static class Crossing
{
    private const double Accuracy = 1e-14;
    private const int MostIterations = 200;

    /// <summary>
    /// The place in a range at which a falling function reaches zero: the range's start where it has done so already, its
    /// end where it never does. Brent's method; halving where that does not settle, as it may not on a jump.
    /// </summary>
    /// <param name="falling">The function, with values of the order of one; it may jump.</param>
    /// <param name="from">Start of the range, of the order of one.</param>
    /// <param name="to">End of the range.</param>
    public static double Of(Func<double, double> falling, double from, double to)
    {
        if (falling(from) <= 0)
        {
            return from;
        }

        if (falling(to) >= 0)
        {
            return to;
        }

        return Brent.TryFindRoot(falling, from, to, Accuracy, MostIterations, out double root)
            ? root
            : Halved(falling, from, to);
    }

    private static double Halved(Func<double, double> falling, double from, double to)
    {
        for (int step = 0; step < MostIterations; step++)
        {
            double middle = from + ((to - from) / 2);
            (from, to) = falling(middle) > 0 ? (middle, to) : (from, middle);
        }

        return from;
    }
}
