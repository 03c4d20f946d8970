namespace FuelSizing.Systems;

/// <summary>Orders checks by urgency: failing, then unknown, then by the least reserve.</summary>
internal sealed class TightestFirst : IComparer<Check>
{
    private TightestFirst()
    {
    }

    /// <summary>The one order.</summary>
    public static TightestFirst Order { get; } = new();

    /// <inheritdoc/>
    public int Compare(Check x, Check y)
    {
        int byOutcome = y.Outcome.CompareTo(x.Outcome);
        return byOutcome != 0 ? byOutcome : Share(x).CompareTo(Share(y));
    }

    private static double Share(Check check) => check.Reserve ?? double.PositiveInfinity;
}
