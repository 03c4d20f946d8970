namespace FuelSizing.Numerics;

/// <summary>Where a function of one number is least: the best of evenly spaced places, then the golden section beside it.</summary>
/// <remarks>
/// MathNet.Numerics' golden section gives up where the least value lies at an end of the range, and where the function jumps; a limit
/// on what a part bears does both.
/// </remarks>
internal static class LowestPlace
{
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    /// <summary>The place, and the value there.</summary>
    /// <param name="of">The function; between neighbours of the grid it falls, then rises.</param>
    /// <param name="from">Start of the range.</param>
    /// <param name="to">End of the range; the start where there is nothing to choose.</param>
    /// <param name="divisions">Into how many pieces the range is cut to begin with.</param>
    /// <param name="accuracy">To which the place is found.</param>
    public static (double At, double Value) Of(Func<double, double> of, double from, double to, int divisions, double accuracy)
    {
        (double At, double Value) best = (from, of(from));

        // Also where both are infinite, as a ceiling is that there is not.
        if (!(to > from))
        {
            return best;
        }

        for (int place = 1; place <= divisions; place++)
        {
            best = Better(best, place == divisions ? to : from + ((to - from) * place / divisions), of);
        }

        double step = (to - from) / divisions;
        (double low, double high) = (Math.Max(from, best.At - step), Math.Min(to, best.At + step));
        if (high - low <= accuracy)
        {
            return best;
        }

        (double left, double right) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
        (double ofLeft, double ofRight) = (of(left), of(right));
        while (high - low > accuracy && left < right)
        {
            if (ofLeft <= ofRight)
            {
                (high, right, ofRight) = (right, left, ofLeft);
                left = high - (Golden * (high - low));
                ofLeft = of(left);
            }
            else
            {
                (low, left, ofLeft) = (left, right, ofRight);
                right = low + (Golden * (high - low));
                ofRight = of(right);
            }
        }

        best = ofLeft < best.Value ? (left, ofLeft) : best;
        return ofRight < best.Value ? (right, ofRight) : best;
    }

    private static (double At, double Value) Better((double At, double Value) best, double place, Func<double, double> of) =>
        of(place) is var value && value < best.Value ? (place, value) : best;
}
