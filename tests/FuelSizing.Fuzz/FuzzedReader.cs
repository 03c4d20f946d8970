using System.Runtime.InteropServices;
using CsCheck;
using FuelSizing.Fuzz.Mutating;

namespace FuelSizing.Fuzz;

/// <summary>A reader under test: how its inputs are mutated, and what it may answer.</summary>
internal abstract class FuzzedReader : IDisposable
{
    private ScratchFile? _scratch;

    /// <summary>Its name on the command line, and that of its folder of the corpus.</summary>
    public abstract string Name { get; }

    /// <summary>How its files end.</summary>
    public abstract string Ending { get; }

    /// <summary>Words that mean something to it.</summary>
    public abstract string[] Words { get; }

    /// <summary>The edits that know the form of its inputs, each given a text, a place in it and a figure from 0 to 60.</summary>
    public abstract Func<string, int, int, string>[] Edits { get; }

    /// <summary>A text without one of its pieces, outer and early pieces first; none past the last piece.</summary>
    public virtual string? Without(string text, int piece)
    {
        string[] lines = text.Split('\n');
        return piece < lines.Length ? string.Join('\n', lines.Where((_, place) => place != piece)) : null;
    }

    /// <summary>Has it read an input; anything thrown is a fault of the reader.</summary>
    public abstract Reading Read(byte[] input);

    /// <inheritdoc/>
    public void Dispose() => _scratch?.Dispose();

    /// <summary>All of them.</summary>
    public static FuzzedReader[] All() =>
    [
        new Readers.BenchReader("json"),
        new Readers.BenchReader("csv"),
        new Readers.CatalogueReader("json"),
        new Readers.CatalogueReader("csv"),
        new Readers.SetupReader(),
        new Readers.MappingReader(),
        new Readers.RecordedRunReader(),
        new Readers.NotebookFileReader(),
        new Readers.ParameterReader(),
    ];

    /// <summary>Mutated copies of inputs.</summary>
    /// <param name="good">Inputs to begin with, most of the time.</param>
    /// <param name="pool">Other inputs to begin with, good or bad.</param>
    public Gen<byte[]> Mutated(IReadOnlyList<byte[]> good, IReadOnlyList<byte[]> pool) => MutatedInput.Of(good, pool, Words, Edits);

    /// <summary>The path of a file that holds an input.</summary>
    protected string Holding(byte[] input) => (_scratch ??= new(Ending)).Holding(input);

    /// <summary>
    /// The characters of an input in UTF-16 with a byte order mark, which may hold what no other encoding can: half of a
    /// surrogate pair. None of any other input.
    /// </summary>
    protected static string? Characters(byte[] input) =>
        input is [0xFF, 0xFE, ..] ? new string(MemoryMarshal.Cast<byte, char>(input.AsSpan(2))) : null;
}
