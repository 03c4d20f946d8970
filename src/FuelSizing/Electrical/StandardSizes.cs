namespace FuelSizing.Electrical;

/// <summary>The copper conductors that a choice is made from, each list from thin to thick.</summary>
internal static class StandardSizes
{
    /// <summary>American wire gauge, the numbers in common sale: 24 to 4/0.</summary>
    public static IReadOnlyList<Conductor> Awg { get; } =
    [
        .. new[] { 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3 }.Select(
            gauge => Conductor.OfGauge(gauge, ConductorMaterial.Copper)),
    ];

    /// <summary>Nominal areas of flexible conductors: 0.5 to 95 mm².</summary>
    public static IReadOnlyList<Conductor> Metric { get; } =
        [.. MetricSizes.All.Select(size => Conductor.OfMetric(size.SquareMillimetres, size.OhmsPerKilometre))];
}
