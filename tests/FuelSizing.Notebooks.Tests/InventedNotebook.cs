using System.Text.Json;

namespace FuelSizing.Notebooks.Tests;

/// <summary>A notebook file made for one test, with its report beside it, deleted afterwards.</summary>
internal sealed class InventedNotebook : IDisposable
{
    public static readonly string Load = $"""
        #r "nuget:FuelSizing.Interactive,{BundledPackages.Version}"
        using FuelSizing.Interactive;
        """;

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-notebook-");
    private readonly string _name;

    private InventedNotebook(string json, string name = "invented.ipynb")
    {
        _name = name;
        File.WriteAllText(NotebookPath, json);
    }

    public string NotebookPath => Path.Combine(_folder.FullName, _name);

    public string ReportPath => Path.Combine(_folder.FullName, "report", Path.ChangeExtension(_name, ".html"));

    public static InventedNotebook OfCells(params (string Type, string Source)[] cells) => OfLanguage("C#", cells);

    public static InventedNotebook OfLanguage(string language, params (string Type, string Source)[] cells) => new(JsonSerializer.Serialize(new
    {
        cells = cells.Select((cell, i) => cell.Type == "code"
            ? (object)new { cell_type = cell.Type, id = $"c{i}", execution_count = (int?)null, metadata = new { }, outputs = Array.Empty<object>(), source = cell.Source }
            : new { cell_type = cell.Type, id = $"c{i}", metadata = new { }, source = cell.Source }),
        metadata = new { kernelspec = new { display_name = language, language, name = language }, language_info = new { name = language } },
        nbformat = 4,
        nbformat_minor = 5,
    }));

    public static InventedNotebook OfText(string text) => new(text);

    /// <summary>A copy of a notebook of the repository, under its own name.</summary>
    public static InventedNotebook CopyOf(string name) => new(File.ReadAllText(Repository.PathOf("notebooks", name)), name);

    public async Task<ProgramRun> RunAsync(params string[] more)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = await NotebookProgram.RunAsync([NotebookPath, "--output", ReportPath, .. more], output, error);
        return new ProgramRun(code, output.ToString(), error.ToString(), File.Exists(ReportPath) ? await File.ReadAllTextAsync(ReportPath) : null);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
