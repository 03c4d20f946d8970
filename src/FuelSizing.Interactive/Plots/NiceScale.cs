namespace FuelSizing.Interactive;

/// <summary>Round contour levels over a range of values.</summary>
internal static class NiceScale
{
    /// <summary>Levels at a step of 1, 2, 2.5 or 5 times a power of ten that enclose the range.</summary>
    /// <param name="low">Least value.</param>
    /// <param name="high">Greatest value, not below <paramref name="low"/>.</param>
    /// <param name="bands">Number of bands aimed for.</param>
    public static double[] Levels(double low, double high, int bands)
    {
        double span = high - low;
        // A flat map still needs one band to paint.
        if (span <= 1e-9 * Math.Max(Math.Abs(low), Math.Abs(high)) || span == 0)
        {
            double pad = Math.Max(Math.Abs(low) * 0.1, 1e-6);
            return [low - pad, low + pad];
        }

        double step = Step(span, bands);
        double first = Math.Floor((low / step) + 1e-9);
        double last = Math.Max(Math.Ceiling((high / step) - 1e-9), first + 1);
        return [.. Enumerable.Range(0, (int)Math.Round(last - first) + 1).Select(i => (first + i) * step)];
    }

    /// <summary>The smallest step of 1, 2, 2.5 or 5 times a power of ten that takes no more than so many bands over a span.</summary>
    /// <param name="span">Over 0.</param>
    /// <param name="bands">One or more.</param>
    public static double Step(double span, int bands)
    {
        double raw = span / bands;
        double power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        return new[] { 1, 2, 2.5, 5, 10 }.First(factor => factor * power >= raw * (1 - 1e-9)) * power;
    }
}
