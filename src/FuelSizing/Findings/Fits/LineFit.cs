namespace FuelSizing.Findings;

/// <summary>A straight line, y = a + s x, as fitted.</summary>
/// <param name="Intercept">a.</param>
/// <param name="Slope">s.</param>
/// <param name="InterceptError">Standard error of a.</param>
/// <param name="SlopeError">Standard error of s.</param>
/// <param name="Scale">Standard deviation of the noise, outliers apart.</param>
/// <param name="Freedom">Degrees of freedom.</param>
/// <param name="Outliers">Points that carry no weight.</param>
internal sealed record LineFit(
    double Intercept, double Slope, double InterceptError, double SlopeError, double Scale, int Freedom, int Outliers);
