namespace FuelSizing.Interactive;

/// <summary>Results side by side, each with the name of its column or mark.</summary>
internal static class Named
{
    /// <summary>Columns beside the one that names the figures: more would not fit a page.</summary>
    public const int MaximumColumns = 6;

    /// <summary>Refuses missing, unnamed and too many cases.</summary>
    public static void Check<T>(IReadOnlyList<(string Name, T Result)> cases, int atMost, string argument)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(cases, argument);
        Require.Some([.. cases.Select(one => one.Result ?? throw new ArgumentNullException(argument))], atMost, argument);
        foreach ((string name, _) in cases)
        {
            Require.Text(name, argument);
        }
    }
}
