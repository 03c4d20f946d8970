namespace FuelSizing.Files;

/// <summary>One part as it stands in a file, whatever its format.</summary>
/// <param name="File">The file.</param>
/// <param name="Kind">What is listed: injectors, pumps, regulators.</param>
/// <param name="Fields">The part's fields.</param>
internal sealed record Entry(string File, EntryKind Kind, EntryFields Fields)
{
    /// <summary>Where the part begins, from 1.</summary>
    public int Line => Fields.Line;

    /// <summary>Reads its fields.</summary>
    public EntryReader Reader(ProblemList problems) => new(File, Kind.Name, Fields, problems);
}
