using System.Diagnostics.CodeAnalysis;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Selection;

namespace FuelSizing.Files;

/// <summary>Lists of parts to choose from: the reader's own injectors, pumps and regulators.</summary>
/// <remarks>
/// <para>Read from comma-separated values (one file for each list) or JSON (any lists in one file); both are described, with
/// an example and a schema, in <c>docs/catalogues.md</c>. Every value carries its unit.</para>
/// <para>All files are read or none: where anything is wrong, a <see cref="CatalogueException"/> names each problem by file,
/// line and field.</para>
/// </remarks>
public sealed record Catalogue
{
    private static readonly Identity<Catalogue> _identity = new Identity<Catalogue>()
        .List(catalogue => catalogue.Injectors)
        .List(catalogue => catalogue.Pumps)
        .List(catalogue => catalogue.Regulators);

    private static readonly ListFiles<ListedParts> Files = new("a catalogue's file", CatalogueForm.File, isNamedOnce: true);

    private Catalogue(
        IReadOnlyList<Candidate<Injector>> injectors,
        IReadOnlyList<Candidate<Pump>> pumps,
        IReadOnlyList<Candidate<PressureRegulator>> regulators) =>
        (Injectors, Pumps, Regulators) = ([.. injectors], [.. pumps], [.. regulators]);

    /// <summary>Injectors, in the order of the files.</summary>
    public IReadOnlyList<Candidate<Injector>> Injectors { get; }

    /// <summary>Pumps, in the order of the files.</summary>
    public IReadOnlyList<Candidate<Pump>> Pumps { get; }

    /// <summary>Regulators, in the order of the files.</summary>
    public IReadOnlyList<Candidate<PressureRegulator>> Regulators { get; }

    /// <summary>Reads files.</summary>
    /// <param name="files">One or more, each ending in <c>.csv</c> or <c>.json</c>; UTF-8, up to 64 MB each.</param>
    /// <returns>The parts of all files together.</returns>
    /// <exception cref="ArgumentException">No file is named, or one ends otherwise.</exception>
    /// <exception cref="CatalogueException">Anything in them is wrong.</exception>
    /// <exception cref="IOException">A file cannot be opened.</exception>
    public static Catalogue Read(params string[] files)
    {
        ProblemList problems = new();
        return Of(Files.Read(files, problems, nameof(files)), problems);
    }

    /// <summary>Reads one file's text.</summary>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <param name="text">Everything in it.</param>
    /// <returns>The parts.</returns>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    /// <exception cref="CatalogueException">Anything in it is wrong.</exception>
    public static Catalogue Parse(string name, string text)
    {
        ProblemList problems = new();
        return Of(Files.Parse(name, text, problems), problems);
    }

    /// <summary>Reads a file's text if nothing in it is wrong.</summary>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <param name="text">Everything in it.</param>
    /// <param name="catalogue">What was read; none where something is wrong.</param>
    /// <param name="problems">Each problem by file, line and field; empty where it was read.</param>
    /// <returns>True if it was read.</returns>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    public static bool TryParse(string name, string text, [NotNullWhen(true)] out Catalogue? catalogue, out IReadOnlyList<FileProblem> problems) =>
        TriedFile.Read(() => Parse(name, text), out catalogue, out problems);

    /// <summary>Reads a stream to its end, and leaves it open.</summary>
    /// <param name="stream">UTF-8, up to 64 MB.</param>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    /// <exception cref="CatalogueException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static Catalogue Read(Stream stream, string name) =>
        StreamedFile.Read(stream, name, (text, _) => Parse(text.Name, text.Text), problems => new CatalogueException(problems.Found));

    /// <summary>The same without waiting for the stream.</summary>
    /// <param name="stream">UTF-8, up to 64 MB.</param>
    /// <param name="name">By which problems call it, ending in <c>.csv</c> or <c>.json</c>.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="ArgumentException">The name ends otherwise.</exception>
    /// <exception cref="CatalogueException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<Catalogue> ReadAsync(Stream stream, string name, CancellationToken cancellation = default) =>
        StreamedFile.ReadAsync(stream, name, (text, _) => Parse(text.Name, text.Text), problems => new CatalogueException(problems.Found), cancellation);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Catalogue? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>How many parts of each kind.</summary>
    /// <returns>For instance <c>injectors: 3, pumps: 2, regulators: 1</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"injectors: {Injectors.Count}, pumps: {Pumps.Count}, regulators: {Regulators.Count}");

    private static Catalogue Of(Entry[] entries, ProblemList problems)
    {
        NamedOnce(entries, problems);
        Candidate<Injector>[] injectors = ListFiles<ListedParts>.Parts(entries, "injectors", CatalogueForm.Injector, problems);
        Candidate<Pump>[] pumps = ListFiles<ListedParts>.Parts(entries, "pumps", CatalogueForm.Pump, problems);
        ListedRegulator[] alone = ListFiles<ListedParts>.Parts(entries, "regulators", CatalogueForm.Regulator, problems);
        HashSet<string> names =
            [.. entries.Where(entry => entry.Kind.Name == "regulators").Select(entry => entry.Fields[EntryKind.NameField]?.Text).OfType<string>()];
        Candidate<PressureRegulator>[] regulators =
            [.. alone.Select(regulator => regulator.Among(alone, names)).OfType<Candidate<PressureRegulator>>()];
        return problems.Any
            ? throw new CatalogueException(problems.Found)
            : new(injectors, pumps, regulators);
    }

    private static void NamedOnce(Entry[] entries, ProblemList problems)
    {
        Dictionary<(string Kind, string Name), Entry> seen = [];
        foreach (Entry entry in entries)
        {
            if (entry.Fields[EntryKind.NameField] is { } name
                && !seen.TryAdd((entry.Kind.Name, name.Text), entry)
                && seen[(entry.Kind.Name, name.Text)] is { } first)
            {
                problems.Add(
                    entry.File,
                    name.Line,
                    $"{entry.Kind.Name}.{EntryKind.NameField}",
                    Statement.Of(
                        "file.part-named-twice",
                        $"\"{ProblemList.Shown(name.Text)}\" is in {ProblemList.OneLine(first.File)}, line {first.Line:ordinal}, already. Keep the lines of a part together, and give each part its own name."));
            }
        }
    }
}

/// <summary>A catalogue could not be read; nothing of it was kept.</summary>
public sealed class CatalogueException : FileException
{
    internal CatalogueException(IReadOnlyList<FileProblem> problems)
        : base(problems)
    {
    }
}
