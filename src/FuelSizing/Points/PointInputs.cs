namespace FuelSizing.Points;

/// <summary>Operating points for <see cref="PointBatch"/>, a column for each input, in SI numbers.</summary>
/// <remarks>All columns that are given are of one length. An array can be given for a span.</remarks>
public readonly ref struct PointInputs
{
    /// <summary>Of the crank, rev/s (rev/min ÷ 60): within the engine's tables and up to its limit.</summary>
    public required ReadOnlySpan<double> Speed { get; init; }

    /// <summary>
    /// Manifold gauge pressure, Pa: −95 to 400 kPa, leaving 10 kPa absolute; at most zero without a compressor. A column with no number of
    /// 1,000 Pa or more that is not all zero is refused, for it is most often in bar or kPa.
    /// </summary>
    public required ReadOnlySpan<double> Boost { get; init; }

    /// <summary>Air–fuel ratio ÷ stoichiometric ratio, 0.6 to 1.2; the system's own where the column is empty.</summary>
    public ReadOnlySpan<double> Lambda { get; init; }

    /// <summary>At the injectors, V, 6 to 20; that of the batch's conditions where the column is empty.</summary>
    public ReadOnlySpan<double> SupplyVoltage { get; init; }
}
