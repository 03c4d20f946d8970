namespace FuelSizing.Quantities;

/// <summary>Names that a mistyped one may have meant.</summary>
internal static class NearestNames
{
    private const int Longest = 80;
    private const int Shown = 3;

    /// <summary>The known names nearest to one that is not known, nearest first; none where nothing is near.</summary>
    /// <param name="name">As it was typed.</param>
    /// <param name="known">Those that there are.</param>
    public static IReadOnlyList<string> Of(string name, IEnumerable<string> known)
    {
        string typed = Plain(name);
        return
        [
            .. known
                .Distinct()
                .Select(one => (Name: one, Distance: Distance(typed, Plain(one))))
                .Where(one => one.Distance <= Math.Max(1, Math.Max(typed.Length, one.Name.Length) / 3) || Holds(typed, Plain(one.Name)))
                .OrderBy(one => one.Distance)
                .ThenBy(one => one.Name, StringComparer.Ordinal)
                .Take(Shown)
                .Select(one => one.Name),
        ];
    }

    // Case, blanks and underscores are what people get wrong first.
    private static string Plain(string name) =>
        string.Concat((name.Length > Longest ? name[..Longest] : name).Where(char.IsLetterOrDigit)).ToUpperInvariant();

    private static bool Holds(string typed, string known) =>
        typed.Length >= 3 && known.Length >= 3
        && (known.Contains(typed, StringComparison.Ordinal) || typed.Contains(known, StringComparison.Ordinal));

    // Letters put in, left out, changed or swapped with the next (optimal string alignment).
    private static int Distance(string one, string other)
    {
        int[,] cost = new int[one.Length + 1, other.Length + 1];
        for (int i = 0; i <= one.Length; i++)
        {
            for (int j = 0; j <= other.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    cost[i, j] = i + j;
                    continue;
                }

                int same = one[i - 1] == other[j - 1] ? 0 : 1;
                cost[i, j] = Math.Min(Math.Min(cost[i - 1, j] + 1, cost[i, j - 1] + 1), cost[i - 1, j - 1] + same);
                if (i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1])
                {
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
                }
            }
        }

        return cost[one.Length, other.Length];
    }
}
