using FuelSizing.Files;

namespace FuelSizing.Notebooks;

/// <summary>The setup file of a run: read before anything runs, with the values that the command line changes.</summary>
/// <param name="File">The file that the notebook reads.</param>
/// <param name="Text">Its text, where values were changed and it is still to be written; none where the file is read as it is.</param>
/// <param name="Changed">What was changed.</param>
/// <param name="Questions">What its values raise.</param>
internal sealed record SetupInput(string File, string? Text, IReadOnlyList<ChangedInput> Changed, IReadOnlyList<InputQuestion> Questions)
{
    /// <summary>What begins the name of a setting that is a field of the setup file.</summary>
    public const string Prefix = "setup.";

    private const int Longest = 64 << 20;

    /// <summary>Reads the file, and changes values in it.</summary>
    /// <param name="file">The setup file.</param>
    /// <param name="settings">Fields of it, each name beginning with <see cref="Prefix"/>.</param>
    /// <param name="report">Beside which a changed file goes.</param>
    public static SetupInput Read(string file, IReadOnlyList<InputSetting> settings, FileInfo report)
    {
        string text = TextOf(file);
        var changed = new List<ChangedInput>();
        try
        {
            foreach (InputSetting setting in settings)
            {
                SetupChanged change = SetupChange.Of(file, text, setting.Name[Prefix.Length..], setting.Value);
                text = change.Text ?? throw InputLeaf.Refused(setting.Name, setting.Value, change.Refused!.TrimEnd('.'));
                changed.Add(new(setting.Name, change.Was, change.Is, change.Assumed, "setup file"));
            }

            Setup read = Setup.Parse(changed.Count == 0 ? file : $"{file} with --set", text);
            return new(
                changed.Count == 0 ? Path.GetFullPath(file) : Path.ChangeExtension(report.FullName, ".setup.json"),
                changed.Count == 0 ? null : text,
                changed,
                read.Questions);
        }
        catch (SetupException refused)
        {
            throw new NotebookException($"--setup {file}: {refused.Message}", refused);
        }
    }

    private static string TextOf(string file)
    {
        try
        {
            return new FileInfo(file) is { Exists: true, Length: <= Longest }
                ? System.IO.File.ReadAllText(file)
                : throw new NotebookException($"--setup {file}: there is no such file of at most 64 MB. Give a setup file (docs/setups.md).");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new NotebookException($"--setup {file}: cannot be read: {failure.Message}", failure);
        }
    }
}
