namespace FuelSizing.Numerics;

/// <summary>The secant solver: where a falling function passes through zero, from a guess near that place.</summary>
/// <remarks>Our own, since MathNet.Numerics has secants only over a delegate, within a range and with an exception or a flag after all steps.</remarks>
internal static class Secant
{
    // A secant's error after a step is of the order of the product of the last two steps, on a smooth function.
    private const double SmallStep = 1e-8;
    private const double SmallProduct = 1e-14;

    // From a guess near the place five or six do; more would cost as much as the bracketed solver.
    private const int MaximumSteps = 12;

    /// <summary>
    /// The place, not under zero, at which a falling function reaches zero. False where the secants do not settle in a few steps,
    /// as on a jump; then ask <see cref="Bracket.Of{T}"/>.
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
