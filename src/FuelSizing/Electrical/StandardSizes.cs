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

/// <summary>
/// Standard nominal areas of flexible copper conductors and the highest resistance that each may have at 20 °C
/// (IEC 60228, class 5, plain copper).
/// </summary>
/// <remarks>
/// The nominal area is a name: a conductor is accepted by its resistance, up to 16 % over what the nominal area of copper
/// would have, so the library counts with the highest.
/// </remarks>
internal static class MetricSizes
{
    public static IReadOnlyList<(double SquareMillimetres, double OhmsPerKilometre)> All { get; } =
    [
        (0.5, 39.0),
        (0.75, 26.0),
        (1, 19.5),
        (1.5, 13.3),
        (2.5, 7.98),
        (4, 4.95),
        (6, 3.30),
        (10, 1.91),
        (16, 1.21),
        (25, 0.780),
        (35, 0.554),
        (50, 0.386),
        (70, 0.272),
        (95, 0.206),
    ];

    /// <summary>The highest resistance of a metre times the nominal area, of any size, Ω·m.</summary>
    public static double MaximumOhmSquareMetresPerMetre { get; } =
        All.Max(size => size.OhmsPerKilometre / 1000 * size.SquareMillimetres / 1e6);
}
