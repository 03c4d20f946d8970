namespace FuelSizing.Files;

/// <summary>What a list holds, and the names of its table, if its parts have one.</summary>
/// <param name="Name">As in a file.</param>
/// <param name="Table">The name of the table that a part has; none if it has none.</param>
internal sealed record EntryKind(string Name, string? Table)
{
    /// <summary>The name that a part goes by.</summary>
    public const string NameField = "name";

    /// <summary>Every kind.</summary>
    public static IReadOnlyList<EntryKind> All { get; } =
        [new("injectors", "dead_times"), new("pumps", "curve"), new("regulators", null)];

    /// <summary>Their names, for a message.</summary>
    public static string Names { get; } = string.Join(", ", All.Select(kind => kind.Name));

    /// <summary>The kind of a name; none if there is no such.</summary>
    public static EntryKind? Of(string name) => All.FirstOrDefault(kind => kind.Name == name);
}
