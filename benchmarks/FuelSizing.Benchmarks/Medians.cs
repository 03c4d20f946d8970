using MathNet.Numerics.Statistics;

namespace FuelSizing.Benchmarks;

/// <summary>The middle of some times.</summary>
internal static class Medians
{
    public static double Of(double[] values) => ArrayStatistics.MedianInplace([.. values]);
}
