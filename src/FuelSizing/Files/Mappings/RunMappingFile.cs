using System.Diagnostics.CodeAnalysis;
using System.Text;
using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Mappings of recorded runs, as they are kept in files.</summary>
/// <remarks>
/// The form is JSON; <c>docs/recorded-run.md</c> describes it, with an example and a schema. A file is read whole or not at all:
/// where anything is wrong, a <see cref="RunMappingException"/> names each problem by file, line and field.
/// </remarks>
public static class RunMappingFile
{
    private const int MaximumMegabytes = 1;
    private static readonly Statement TooLarge = Statement.Of("file.not-a-mapping", $"A mapping has a few hundred bytes. Is it the run itself?");

    /// <summary>Reads a file.</summary>
    /// <param name="file">JSON in UTF-8, at most 1 MB.</param>
    /// <returns>The mapping.</returns>
    /// <exception cref="RunMappingException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be opened.</exception>
    public static RunMapping Read(string file)
    {
        ArgumentException.ThrowIfNullOrEmpty(file);
        ProblemList problems = new();
        return FileText.Of(file, problems, MaximumMegabytes, TooLarge) is { } text
            ? Of(text, problems)
            : throw new RunMappingException(problems.Found);
    }

    /// <summary>Reads a file's text.</summary>
    /// <param name="name">By which problems call it.</param>
    /// <param name="text">Everything in it, at most 1,048,576 characters.</param>
    /// <returns>The mapping.</returns>
    /// <exception cref="RunMappingException">Anything in it is wrong.</exception>
    public static RunMapping Parse(string name, string text)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        ProblemList problems = new();
        if (text.Length > MaximumMegabytes << 20)
        {
            problems.Add(name, 1, "file", FileText.TooLarge(MaximumMegabytes, TooLarge));
            throw new RunMappingException(problems.Found);
        }

        return Of(new(name, text), problems);
    }

    /// <summary>Reads a file's text if nothing in it is wrong.</summary>
    /// <param name="name">By which problems call it.</param>
    /// <param name="text">Everything in it.</param>
    /// <param name="mapping">What was read; none where something is wrong.</param>
    /// <param name="problems">Each problem by file, line and field; empty where it was read.</param>
    /// <returns>True if it was read.</returns>
    public static bool TryParse(string name, string text, [NotNullWhen(true)] out RunMapping? mapping, out IReadOnlyList<FileProblem> problems) =>
        TriedFile.Read(() => Parse(name, text), out mapping, out problems);

    /// <summary>Reads a stream to its end, and leaves it open.</summary>
    /// <param name="stream">UTF-8, up to 1 MB.</param>
    /// <param name="name">By which problems call it.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="RunMappingException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static RunMapping Read(Stream stream, string name) =>
        StreamedFile.Read(stream, name, (text, problems) => Of(text, problems), problems => new RunMappingException(problems.Found), MaximumMegabytes, TooLarge);

    /// <summary>The same without waiting for the stream.</summary>
    /// <param name="stream">UTF-8, up to 1 MB.</param>
    /// <param name="name">By which problems call it.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>What was read.</returns>
    /// <exception cref="RunMappingException">Anything in it is wrong.</exception>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<RunMapping> ReadAsync(Stream stream, string name, CancellationToken cancellation = default) =>
        StreamedFile.ReadAsync(stream, name, (text, problems) => Of(text, problems), problems => new RunMappingException(problems.Found), cancellation, MaximumMegabytes, TooLarge);

    /// <summary>A mapping as text, as a file holds it.</summary>
    /// <param name="mapping">The mapping.</param>
    /// <returns>JSON.</returns>
    /// <exception cref="ArgumentException">A column is in a unit that mapping files have no text for.</exception>
    public static string ToJson(RunMapping mapping)
    {
        ArgumentNullException.ThrowIfNull(mapping);
        foreach (RunColumn column in mapping.Columns)
        {
            if (column.Unit is { Stoichiometric: null } unit && ChannelUnits.TextOf(column.Channel, unit) is null)
            {
                throw new ArgumentException(
                    $"mapping has {column} in {unit.Text}, which a file cannot say. Use one of {string.Join(", ", ChannelUnits.Texts(column.Channel))}.",
                    nameof(mapping));
            }
        }

        return MappingForm.File.Text(mapping);
    }

    /// <summary>Writes a mapping to a file, in place of what was there.</summary>
    /// <param name="mapping">The mapping.</param>
    /// <param name="file">The file.</param>
    /// <exception cref="ArgumentException">A column is in a unit that mapping files have no text for.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    public static void Write(RunMapping mapping, string file)
    {
        ArgumentNullException.ThrowIfNull(file);
        File.WriteAllText(file, ToJson(mapping), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
    }

    /// <summary>Writes a mapping to a stream, which is left open.</summary>
    /// <param name="mapping">The mapping.</param>
    /// <param name="stream">The stream.</param>
    /// <exception cref="ArgumentException">A column is in a unit that mapping files have no text for.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    public static void Write(RunMapping mapping, Stream stream) => StreamedFile.Write(stream, ToJson(mapping));

    /// <summary>The same without waiting for the stream.</summary>
    /// <param name="mapping">The mapping.</param>
    /// <param name="stream">The stream.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <returns>The work.</returns>
    /// <exception cref="ArgumentException">A column is in a unit that mapping files have no text for.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The writing was stopped.</exception>
    public static Task WriteAsync(RunMapping mapping, Stream stream, CancellationToken cancellation = default) =>
        StreamedFile.WriteAsync(stream, ToJson(mapping), cancellation);

    private static RunMapping Of(in FileText text, ProblemList problems)
    {
        RunMapping? read = MappingForm.File.Read(text, problems);
        return problems.Any || read is null ? throw new RunMappingException(problems.Found) : read;
    }
}

/// <summary>A mapping of a recorded run could not be read.</summary>
public sealed class RunMappingException : FileException
{
    internal RunMappingException(IReadOnlyList<FileProblem> problems)
        : base(problems)
    {
    }
}
