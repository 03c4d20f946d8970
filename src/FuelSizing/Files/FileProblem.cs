using System.Globalization;

namespace FuelSizing.Files;

/// <summary>One thing wrong in a file, and where.</summary>
public sealed record FileProblem
{
    internal FileProblem(string file, int line, string field, string message) =>
        (File, Line, Field, Message) = (file, line, field, message);

    /// <summary>The file, as it was named to the reader.</summary>
    public string File { get; }

    /// <summary>Line in the file, from 1.</summary>
    public int Line { get; }

    /// <summary>The field, for instance <c>injectors.static_flow</c>; the column's number where it has no name.</summary>
    public string Field { get; }

    /// <summary>What is wrong and what to do.</summary>
    public string Message { get; }

    /// <summary>File, line, field and message.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{File}, line {Line}, {Field}: {Message}");
}
