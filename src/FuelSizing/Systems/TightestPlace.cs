using FuelSizing.Checks;

namespace FuelSizing.Systems;

/// <summary>Finds where in a range a check's margin is tightest.</summary>
internal static class TightestPlace
{
    // A margin with so much left is shown as it is at the points that were solved.
    private const double WorthFinding = 0.1;

    private const int Halvings = 14;

    /// <summary>The tightest margin of a check: of the places looked at, and from the tightest of them downhill.</summary>
    /// <param name="check">By its place.</param>
    /// <param name="search">What was looked at.</param>
    public static Margin Of(int check, RangeSearch search)
    {
        int best = search.Tightest(check);

        // Where there is no share there is nothing to go down.
        double left = search.Figure(check, best);
        bool isShown = !double.IsFinite(left) || left > WorthFinding;
        return search.ResultAt(isShown
            ? best
            : Downhill.From(best, search.StepsAround(best), Halvings, search.WhereIs, search.Within, (one, other) => search.Compare(check, one, other))).Margins[check];
    }
}
