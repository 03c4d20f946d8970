namespace FuelSizing.Findings;

/// <summary>Where the search for a kink stands.</summary>
/// <param name="Intercept">a.</param>
/// <param name="Step">h, slope over the kink less slope under it.</param>
/// <param name="Onset">o.</param>
/// <param name="Scale">Standard deviation of y's noise.</param>
internal readonly record struct Kinked(double Intercept, double Step, double Onset, double Scale);
