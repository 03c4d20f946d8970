using System.Diagnostics;

namespace FuelSizing.Notebooks.Tests;

/// <summary>Files that are not what they should be, and a report that would take a notebook's place.</summary>
public class FilePlaceTests
{
    [Fact]
    public async Task Output_ThatIsTheNotebook_IsRefusedAndLeavesIt()
    {
        using var notebook = InventedNotebook.OfCells(("code", "1 + 1"));
        string before = await File.ReadAllTextAsync(notebook.NotebookPath);
        string folder = Path.GetDirectoryName(notebook.NotebookPath)!;
        string symbolic = Path.Combine(folder, "link.html");
        string linked = Path.Combine(folder, "folder");
        File.CreateSymbolicLink(symbolic, notebook.NotebookPath);
        Directory.CreateSymbolicLink(linked, folder);
        string hard = Path.Combine(folder, "hard.html");
        await Process.Start("ln", [notebook.NotebookPath, hard])!.WaitForExitAsync();

        foreach (string place in new[]
        {
            notebook.NotebookPath, symbolic, hard, Path.Combine(linked, "link.html"), Path.Combine(folder, "report", "..", "invented.ipynb"), Path.Combine(folder, "new.IPYNB"),
        })
        {
            using var output = new StringWriter();
            using var error = new StringWriter();

            Assert.Equal(2, await NotebookProgram.RunAsync([notebook.NotebookPath, "--output", place], output, error));
            Assert.Contains("--output", error.ToString(), StringComparison.Ordinal);
            Assert.Equal(before, await File.ReadAllTextAsync(notebook.NotebookPath));
        }
    }

    [Fact]
    public async Task Notebook_ThatIsAFolder_IsBadInput()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();

        Assert.Equal(2, await NotebookProgram.RunAsync([Path.GetTempPath()], output, error));
        Assert.Contains("Cannot read", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Output_ThatIsAFolder_IsBadInput()
    {
        using var notebook = InventedNotebook.OfCells(("code", "1 + 1"));
        using var output = new StringWriter();
        using var error = new StringWriter();

        Assert.Equal(2, await NotebookProgram.RunAsync([notebook.NotebookPath, "--output", Path.GetDirectoryName(notebook.NotebookPath)!], output, error));
        Assert.Contains("Cannot write the report", error.ToString(), StringComparison.Ordinal);
    }
}
