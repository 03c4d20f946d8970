using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>A share of a population, estimated from independent samples of it.</summary>
internal static class Proportion
{
    /// <summary>Standard error of a share p found in n samples: √(p (1 − p)/n).</summary>
    /// <param name="share">p.</param>
    /// <param name="samples">n.</param>
    public static T StandardError<T>(T share, T samples)
        where T : struct, IReal<T> => T.Sqrt(share * (1.0 - share) / samples);

    /// <summary>
    /// Middle of the score interval: (p + z²/(2n))/(1 + z²/n). Wilson, Probable inference, the law of succession, and
    /// statistical inference, Journal of the American Statistical Association 22 (1927) 209–212.
    /// </summary>
    /// <param name="share">p.</param>
    /// <param name="samples">n.</param>
    /// <param name="deviations">z, standard deviations of a normal on either side.</param>
    public static T ScoreMiddle<T>(T share, T samples, T deviations)
        where T : struct, IReal<T> =>
        (share + (deviations * deviations / (2.0 * samples))) / (1.0 + (deviations * deviations / samples));

    /// <summary>Half the width of the score interval: z √(p (1 − p)/n + z²/(4n²))/(1 + z²/n) (Wilson, as above).</summary>
    /// <param name="share">p.</param>
    /// <param name="samples">n.</param>
    /// <param name="deviations">z.</param>
    public static T ScoreHalfWidth<T>(T share, T samples, T deviations)
        where T : struct, IReal<T>
    {
        T square = deviations * deviations;
        T inside = (share * (1.0 - share) / samples) + (square / (4.0 * samples * samples));
        return deviations * T.Sqrt(inside) / (1.0 + (square / samples));
    }
}
