namespace FuelSizing.Equations;

/// <summary>The mean of independent samples.</summary>
internal static class SampleMean
{
    /// <summary>Its standard error: s/√n.</summary>
    /// <param name="standardDeviation">s, of one sample.</param>
    /// <param name="samples">n.</param>
    public static T StandardError<T>(T standardDeviation, T samples)
        where T : struct, IReal<T> => standardDeviation / T.Sqrt(samples);
}
