using FuelSizing.Files;
using FuelSizing.Fuzz.Mutating;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Files that hold lists, from JSON or comma-separated values.</summary>
/// <param name="kind">What they list.</param>
/// <param name="ending">How they end: json or csv.</param>
/// <param name="words">Of the form.</param>
internal abstract class ListReader<T, TRefused>(string kind, string ending, string[] words) : FuzzedReader
    where TRefused : FileException
{
    private readonly bool _json = ending == "json";

    public override string Name { get; } = $"{kind}-{ending}";

    public override string Ending { get; } = $".{ending}";

    public override string[] Words => words;

    public override Func<string, int, int, string>[] Edits => _json ? new JsonEdits(words).All : new TableEdits(words).All;

    public override string? Without(string text, int piece) => _json ? JsonEdits.Without(text, piece) : base.Without(text, piece);

    public override Reading Read(byte[] input)
    {
        string name = Characters(input) is null ? Holding(input) : $"characters{Ending}";
        try
        {
            return new(true, [$"read: {Counts(Characters(input) is { } text ? Parsed(name, text) : Opened(name))}"]);
        }
        catch (TRefused refused)
        {
            return FileAnswers.Refused(refused, name, input);
        }
    }

    /// <summary>Reads a text.</summary>
    protected abstract T Parsed(string name, string text);

    /// <summary>Reads a file.</summary>
    protected abstract T Opened(string file);

    /// <summary>How much was read, by which answers are told apart.</summary>
    protected abstract string Counts(T read);
}
