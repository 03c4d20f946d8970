namespace FuelSizing.Findings;

/// <summary>What all points of a fit share and their scatter does not show.</summary>
/// <param name="Moved">The points once more, each time with one such error at its standard deviation.</param>
/// <param name="Rail">Standard deviation of the whole channel of rail pressure, Pa.</param>
/// <param name="Manifold">Standard deviation of the whole channel of manifold pressure, Pa.</param>
internal sealed record SharedError(IReadOnlyList<(double[] Boost, double[] Rail)> Moved, double Rail, double Manifold);
