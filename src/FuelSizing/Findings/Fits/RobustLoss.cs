namespace FuelSizing.Findings;

/// <summary>Losses and scale of robust regression, on residuals in units of their scale.</summary>
/// <remarks>
/// Huber and Ronchetti, Robust Statistics, 2nd ed., 2009, chapters 4 and 7. The tuning constants give 95 % efficiency on normal
/// noise: (E ψ')²/E ψ², which a test works out.
/// </remarks>
internal static class RobustLoss
{
    /// <summary>Huber's constant for 95 % efficiency.</summary>
    public const double Huber = 1.345;

    /// <summary>Tukey's bisquare constant for 95 % efficiency.</summary>
    public const double Bisquare = 4.685;

    /// <summary>Median absolute deviation of normal noise is its standard deviation divided by this, 1/Φ⁻¹(3/4).</summary>
    public const double NormalConsistency = 1.482602218505602;

    /// <summary>Huber's loss.</summary>
    public static double HuberLoss(double residual)
    {
        double size = Math.Abs(residual);
        return size <= Huber ? 0.5 * size * size : Huber * (size - (0.5 * Huber));
    }

    /// <summary>Huber's weight, ψ(u)/u.</summary>
    public static double HuberWeight(double residual)
    {
        double size = Math.Abs(residual);
        return size <= Huber ? 1 : Huber / size;
    }

    /// <summary>The bisquare's loss.</summary>
    public static double BisquareLoss(double residual)
    {
        double share = residual / Bisquare;
        double left = Math.Max(0, 1 - (share * share));
        return Bisquare * Bisquare / 6 * (1 - (left * left * left));
    }

    /// <summary>The bisquare's weight, ψ(u)/u: zero for an outlier.</summary>
    public static double BisquareWeight(double residual)
    {
        double share = residual / Bisquare;
        double left = Math.Max(0, 1 - (share * share));
        return left * left;
    }

    /// <summary>Slope of the bisquare's influence, ψ'(u).</summary>
    public static double BisquareSlope(double residual)
    {
        double share = residual / Bisquare * (residual / Bisquare);
        return share >= 1 ? 0 : (1 - share) * (1 - (5 * share));
    }
}
