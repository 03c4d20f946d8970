using FuelSizing.Checks;

namespace FuelSizing.Systems;

/// <summary>Finds where in a range a check's margin is tightest.</summary>
internal static class TightestPlace
{
    // A margin with so much left is shown as it is at the points that were solved.
    private const double WorthFinding = 0.1;

    private const int Halvings = 14;

    /// <summary>The tightest margin of a check: of the points solved, and from the tightest of them downhill.</summary>
    /// <param name="check">By its place.</param>
    /// <param name="search">What was solved.</param>
    public static Margin Of(int check, RangeSearch search)
    {
        Comparer<OperatingResult> order = Comparer<OperatingResult>.Create(
            (one, other) => Urgency.Order.Compare(one.Margins[check], other.Margins[check]));
        OperatingResult best = search.Points.Min(order)!;
        return (best.Margins[check] is { Outcome: Outcome.CannotSay } or { Share: null or > WorthFinding }
            ? best
            : Downhill.From(best, search.StepsAround(best.Point), Halvings, search.Within, order)).Margins[check];
    }
}
