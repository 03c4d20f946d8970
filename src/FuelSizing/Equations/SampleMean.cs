using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The mean of independent samples.</summary>
internal static class SampleMean
{
    /// <summary>Its standard error: s/√n.</summary>
    /// <param name="standardDeviation">s, of one sample.</param>
    /// <param name="samples">n.</param>
    public static T StandardError<T>(T standardDeviation, T samples)
        where T : struct, IReal<T> => standardDeviation / T.Sqrt(samples);

    /// <summary>Half the width of the interval around an estimate with a normal error: z · standard error.</summary>
    /// <param name="standardError">Of the estimate.</param>
    /// <param name="deviations">z, standard deviations of a normal on either side.</param>
    public static T HalfWidth<T>(T standardError, T deviations)
        where T : struct, IReal<T> => deviations * standardError;
}
