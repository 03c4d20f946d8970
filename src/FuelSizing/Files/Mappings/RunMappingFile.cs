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
