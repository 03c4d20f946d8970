using FuelSizing.Equations;
using UnitsNet;

namespace FuelSizing.Logs;

/// <summary>How far the reading of a run is.</summary>
public readonly record struct RunProgress
{
    internal RunProgress(long rows, Ratio? share) => (Rows, Share) = (rows, share);

    /// <summary>Rows read so far.</summary>
    public long Rows { get; }

    /// <summary>How much of the file is read; null where its length is not known.</summary>
    public Ratio? Share { get; }

    /// <summary>Rows read so far and their share of the file.</summary>
    /// <returns>For instance <c>65,536 rows, 40 %</c>.</returns>
    public override string ToString() =>
        Share is { } share ? FormattableString.Invariant($"{Rows:N0} rows, {share.Percent:N0} %") : FormattableString.Invariant($"{Rows:N0} rows");
}
