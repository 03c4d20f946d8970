namespace FuelSizing.Systems;

/// <summary>Orders margins by urgency: failing, then unknown, then by the least reserve.</summary>
internal sealed class TightestFirst : IComparer<Margin>
{
    private TightestFirst()
    {
    }

    /// <summary>The one order.</summary>
    public static TightestFirst Order { get; } = new();

    /// <inheritdoc/>
    public int Compare(Margin? x, Margin? y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        int byOutcome = y.Outcome.CompareTo(x.Outcome);
        return byOutcome != 0 ? byOutcome : Share(x).CompareTo(Share(y));
    }

    private static double Share(Margin margin) => margin.Reserve?.DecimalFractions ?? double.PositiveInfinity;
}
