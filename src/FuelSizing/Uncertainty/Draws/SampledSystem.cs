namespace FuelSizing.Uncertainty;

/// <summary>One drawn system, solved wherever it is judged: at one point, or at each speed of a boost line.</summary>
internal readonly struct SampledSystem(SampledPoint[] points)
{
    /// <summary>Speeds rising.</summary>
    public ReadOnlySpan<SampledPoint> Points => points;

    /// <summary>The greatest of a figure over the points; not a number where one point has none.</summary>
    public double Maximum(Func<SampledPoint, double> figure)
    {
        double greatest = double.NegativeInfinity;
        foreach (ref readonly SampledPoint point in Points)
        {
            greatest = Math.Max(greatest, figure(point));
        }

        return greatest;
    }

    /// <summary>The smallest of a figure over the points; not a number where one point has none.</summary>
    public double Minimum(Func<SampledPoint, double> figure)
    {
        double smallest = double.PositiveInfinity;
        foreach (ref readonly SampledPoint point in Points)
        {
            smallest = Math.Min(smallest, figure(point));
        }

        return smallest;
    }
}
