namespace FuelSizing.Numerics;

/// <summary>The bracketed solver: where a falling function passes through zero within a range.</summary>
/// <remarks>
/// Inverse quadratic interpolation, or halving where that would be no better (T. R. Chandrupatla, Advances in Engineering
/// Software 28 (1997) 145). MathNet.Numerics' Brent is not used for two reasons: it takes a delegate, which would be allocated at
/// each of the thousands of calls of a sweep, and it gives up where a function jumps, as a limit that ceases to be judged does;
/// this one ends at the jump.
/// </remarks>
internal static class Bracket
{
    // A range of the order of one is narrowed to the last few bits.
    private const double Accuracy = 1e-14;

    // Halving alone takes 47 steps; the rest is for the steps that halving has to make good.
    private const int MaximumIterations = 200;

    /// <summary>
    /// The place in a range at which a falling function reaches zero: the range's start where it has done so already, its
    /// end where it never does.
    /// </summary>
    /// <param name="falling">The function, with values of the order of one; it may jump.</param>
    /// <param name="from">Start of the range, of the order of one.</param>
    /// <param name="to">End of the range.</param>
    public static double Of(Func<double, double> falling, double from, double to) => Of(new Called(falling), from, to);

    /// <summary>As <see cref="Of(Func{double, double}, double, double)"/>, for a function that is called so often that it must not allocate.</summary>
    /// <param name="falling">The function, with values of the order of one; it may jump.</param>
    /// <param name="from">Start of the range, of the order of one.</param>
    /// <param name="to">End of the range.</param>
    public static double Of<T>(in T falling, double from, double to)
        where T : struct, IFalling
    {
        double a = to;
        double b = from;
        double valueB = falling.At(b);
        if (valueB <= 0)
        {
            return from;
        }

        double valueA = falling.At(a);
        if (valueA >= 0)
        {
            return to;
        }

        double share = 0.5;
        for (int step = 0; step < MaximumIterations; step++)
        {
            double x = a + (share * (b - a));
            double value = falling.At(x);
            double c;
            double valueC;
            if ((value > 0) == (valueA > 0))
            {
                (c, valueC) = (a, valueA);
            }
            else
            {
                (c, valueC, b, valueB) = (b, valueB, a, valueA);
            }

            (a, valueA) = (x, value);
            double nearest = Math.Abs(valueA) < Math.Abs(valueB) ? a : b;
            double minimum = Accuracy / 20 / Math.Abs(b - a);
            if (valueA == 0 || valueB == 0 || minimum > 0.5)
            {
                return nearest;
            }

            double xi = (a - b) / (c - b);
            double phi = (valueA - valueB) / (valueC - valueB);
            share = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
                ? (valueA / (valueB - valueA) * valueC / (valueB - valueC))
                    + ((c - a) / (b - a) * valueA / (valueC - valueA) * valueB / (valueC - valueB))
                : 0.5;
            share = Math.Clamp(share, minimum, 1 - minimum);
        }

        return Math.Abs(valueA) < Math.Abs(valueB) ? a : b;
    }

    private readonly struct Called(Func<double, double> falling) : IFalling
    {
        public double At(double x) => falling(x);
    }
}

/// <summary>A function that nowhere rises: a value type, so that a solver calls it without allocating.</summary>
internal interface IFalling
{
    /// <summary>Its value.</summary>
    double At(double x);
}
