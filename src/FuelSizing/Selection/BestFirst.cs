using FuelSizing.Checks;

namespace FuelSizing.Selection;

/// <summary>
/// Orders combinations: those that serve first, the cheapest of them first (unknown costs last), then by reserve; those that
/// do not serve by how little they miss.
/// </summary>
internal sealed class BestFirst : IComparer<Combination>
{
    private BestFirst()
    {
    }

    /// <summary>The one order.</summary>
    public static BestFirst Order { get; } = new();

    /// <inheritdoc/>
    public int Compare(Combination? x, Combination? y)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        int byOutcome = Urgency.Rank(x.Outcome).CompareTo(Urgency.Rank(y.Outcome));
        if (byOutcome != 0)
        {
            return byOutcome;
        }

        if (!Urgency.IsHolding(x.Outcome))
        {
            return Urgency.Compare(y.WeakestCheck.Outcome, y.WeakestCheck.Share, x.WeakestCheck.Outcome, x.WeakestCheck.Share);
        }

        int byCost = (x.Cost ?? decimal.MaxValue).CompareTo(y.Cost ?? decimal.MaxValue);
        return byCost != 0 ? byCost : y.ReserveShare.CompareTo(x.ReserveShare);
    }
}
