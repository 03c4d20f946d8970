namespace FuelSizing.Selection;

/// <summary>Combinations that no other beats in everything: cost, turndown at idle, reserve.</summary>
internal static class ParetoSet
{
    /// <summary>
    /// Those of a list that no other is at least as good as in every respect and better than in one. Cost counts where all
    /// have one.
    /// </summary>
    public static IReadOnlyList<Combination> Of(IReadOnlyList<Combination> combinations)
    {
        bool priced = combinations.All(combination => combination.Cost is not null);
        List<Combination> best = [];

        // After sorting nothing is dominated by what comes later, so each need be compared only with the best before it.
        foreach (Combination combination in combinations
            .OrderBy(combination => priced ? combination.Cost : 0)
            .ThenByDescending(combination => combination.TurndownShare)
            .ThenByDescending(combination => combination.ReserveShare))
        {
            if (!best.Exists(other => Beats(other, combination, priced)))
            {
                best.Add(combination);
            }
        }

        return best.AsReadOnly();
    }

    private static bool Beats(Combination other, Combination one, bool priced)
    {
        bool noWorse = (!priced || other.Cost <= one.Cost)
            && other.TurndownShare >= one.TurndownShare
            && other.ReserveShare >= one.ReserveShare;
        return noWorse
            && ((priced && other.Cost < one.Cost)
                || other.TurndownShare > one.TurndownShare
                || other.ReserveShare > one.ReserveShare);
    }
}
