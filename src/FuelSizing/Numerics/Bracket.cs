using MathNet.Numerics.RootFinding;

namespace FuelSizing.Numerics;

/// <summary>Where a falling function passes through zero.</summary>
internal static class Bracket
{
    private const double Accuracy = 1e-14;
    private const int MaximumIterations = 200;

    // A secant's error after a step is of the order of the product of the last two steps, on a smooth function.
    private const double SmallStep = 1e-8;
    private const double SmallProduct = 1e-14;
    private const int MaximumSteps = 12;

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

        return Brent.TryFindRoot(falling, from, to, Accuracy, MaximumIterations, out double root)
            ? root
            : Halved(falling, from, to);
    }

    private static double Halved(Func<double, double> falling, double from, double to)
    {
        for (int step = 0; step < MaximumIterations; step++)
        {
            double middle = from + ((to - from) / 2);
            (from, to) = falling(middle) > 0 ? (middle, to) : (from, middle);
        }

        return from;
    }

    /// <summary>
    /// As <see cref="Of(Func{double, double}, double, double)"/>, for a function that is called so often that it must not
    /// allocate: inverse quadratic interpolation, or halving where that would be no better (Chandrupatla, Advances in
    /// Engineering Software 28 (1997) 145). On a jump it ends there.
    /// </summary>
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

    /// <summary>
    /// The place, not under zero, at which a falling function reaches zero, from a guess near it: secants. False where they
    /// do not settle in a few steps, as on a jump; then ask <see cref="Of{T}"/>.
    /// </summary>
    /// <param name="falling">The function, whose slope is of the order of −1.</param>
    /// <param name="guess">Near the place.</param>
    /// <param name="root">The place.</param>
    public static bool TryNear<T>(in T falling, double guess, out double root)
        where T : struct, IFalling
    {
        double before = guess;
        double valueBefore = falling.At(before);
        root = before;
        if (valueBefore == 0)
        {
            return true;
        }

        root = before + valueBefore;
        for (int step = 0; step < MaximumSteps && root >= 0; step++)
        {
            double value = falling.At(root);
            if (value == 0)
            {
                return true;
            }

            double slope = (value - valueBefore) / (root - before);
            if (!(slope < 0))
            {
                return false;
            }

            double move = value / slope;
            bool settled = Math.Abs(move) <= SmallStep && Math.Abs(move * (root - before)) <= SmallProduct;
            (before, valueBefore, root) = (root, value, root - move);
            if (settled)
            {
                return root >= 0;
            }
        }

        return false;
    }
}
