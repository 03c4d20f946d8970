namespace FuelSizing.Uncertainty;

/// <summary>A share of a population, estimated from independent samples of it.</summary>
internal static class Proportion
{
    /// <summary>Standard error of a share p found in n samples: √(p (1 − p)/n).</summary>
    /// <param name="share">p.</param>
    /// <param name="samples">n.</param>
    public static double StandardError(double share, double samples) => Math.Sqrt(share * (1.0 - share) / samples);

    /// <summary>
    /// Middle of the score interval: (p + z²/(2n))/(1 + z²/n). Wilson, Probable inference, the law of succession, and
    /// statistical inference, Journal of the American Statistical Association 22 (1927) 209–212.
    /// </summary>
    /// <param name="share">p.</param>
    /// <param name="samples">n.</param>
    /// <param name="deviations">z, standard deviations of a normal on either side.</param>
    public static double ScoreMiddle(double share, double samples, double deviations) =>
        (share + (deviations * deviations / (2.0 * samples))) / (1.0 + (deviations * deviations / samples));

    /// <summary>Half the width of the score interval: z √(p (1 − p)/n + z²/(4n²))/(1 + z²/n) (Wilson, as above).</summary>
    /// <param name="share">p.</param>
    /// <param name="samples">n.</param>
    /// <param name="deviations">z.</param>
    public static double ScoreHalfWidth(double share, double samples, double deviations)
    {
        double square = deviations * deviations;
        double inside = (share * (1.0 - share) / samples) + (square / (4.0 * samples * samples));
        return deviations * Math.Sqrt(inside) / (1.0 + (square / samples));
    }
}
