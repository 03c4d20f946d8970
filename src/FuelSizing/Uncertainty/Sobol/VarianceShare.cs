namespace FuelSizing.Uncertainty;

/// <summary>
/// The terms whose means give variance-based (Sobol) indices. A and B are two independent samples of all inputs, AB_i is A
/// with input i taken from B; y is the output.
/// </summary>
/// <remarks>
/// Saltelli, Annoni, Azzini, Campolongo, Ratto and Tarantola, Variance based sensitivity analysis of model output, Computer
/// Physics Communications 181 (2010) 259–270, table 2, (b) and (f); the latter by Jansen, Analysis of variance designs for
/// model output, Computer Physics Communications 117 (1999) 35–43.
/// </remarks>
internal static class VarianceShare
{
    /// <summary>
    /// Term of the first-order index, S_i = mean/V: y_B (y_ABi − y_A). The output's mean is taken off y_B first, which
    /// leaves the expected value as it is and makes the scatter smaller.
    /// </summary>
    /// <param name="b">y_B.</param>
    /// <param name="a">y_A.</param>
    /// <param name="mixed">y_ABi.</param>
    /// <param name="mean">Of the output.</param>
    public static double FirstOrderTerm(double b, double a, double mixed, double mean) => (b - mean) * (mixed - a);

    /// <summary>Term of the total index, S_Ti = mean/V: (y_A − y_ABi)²/2.</summary>
    /// <param name="a">y_A.</param>
    /// <param name="mixed">y_ABi.</param>
    public static double TotalTerm(double a, double mixed) => (a - mixed) * (a - mixed) / 2.0;

    /// <summary>Term of the output's variance V from both samples: ((y_A − m)² + (y_B − m)²)/2.</summary>
    /// <param name="a">y_A.</param>
    /// <param name="b">y_B.</param>
    /// <param name="mean">m.</param>
    public static double VarianceTerm(double a, double b, double mean) => (((a - mean) * (a - mean)) + ((b - mean) * (b - mean))) / 2.0;

    /// <summary>
    /// What one sample moves a ratio of means by, to first order: (u − R v)/V for R = mean(u)/mean(v), V = mean(v). The
    /// scatter of it over √n is the ratio's standard error (the delta method).
    /// </summary>
    /// <param name="term">u.</param>
    /// <param name="ratio">R.</param>
    /// <param name="varianceTerm">v.</param>
    /// <param name="variance">V.</param>
    public static double Influence(double term, double ratio, double varianceTerm, double variance) => (term - (ratio * varianceTerm)) / variance;
}
