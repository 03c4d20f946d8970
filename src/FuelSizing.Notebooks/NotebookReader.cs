using System.Text.Json;
using Microsoft.DotNet.Interactive.Documents;
using Microsoft.DotNet.Interactive.Documents.Jupyter;

namespace FuelSizing.Notebooks;

/// <summary>Reads a notebook and refuses what this program would not run, before anything runs.</summary>
internal static class NotebookReader
{
    private const string CSharp = "csharp";
    private const string Markdown = "markdown";

    public static IReadOnlyList<NotebookCell> Read(FileInfo file)
    {
        string json = ReadText(file);
        InteractiveDocument document;
        bool[] inputs, setups;
        try
        {
            // The document parser takes any JSON object for an empty notebook.
            using var root = JsonDocument.Parse(json, new JsonDocumentOptions { AllowDuplicateProperties = false });
            if (root.RootElement.ValueKind != JsonValueKind.Object || !root.RootElement.TryGetProperty("cells", out var listed) || listed.ValueKind != JsonValueKind.Array)
            {
                throw new NotebookException($"{file.Name} is not a notebook: it has no list of cells. Give a file saved as .ipynb.");
            }

            RefuseRawCells(file.Name, listed);
            inputs = [.. listed.EnumerateArray().Select(cell => HasMark(cell, InputsCell.Mark))];
            setups = [.. listed.EnumerateArray().Select(cell => HasMark(cell, InputsCell.SetupMark))];
            document = Notebook.Parse(json, Kernels());
        }
        catch (Exception failure) when (failure is JsonException or FormatException or InvalidOperationException or KeyNotFoundException)
        {
            throw new NotebookException($"{file.Name} is not a notebook ({failure.Message.TrimEnd('.')}). Give a file saved as .ipynb.", failure);
        }
        catch (Exception failure) when (failure is NullReferenceException or ArgumentException or InvalidCastException)
        {
            // The document parser takes for granted that a notebook's parts are what they should be.
            throw new NotebookException($"{file.Name} is not a notebook: some part of it is missing, null or of another kind. Give a file saved as .ipynb.", failure);
        }

        var cells = new List<NotebookCell>();
        foreach (var element in document.Elements)
        {
            int number = cells.Count + 1;
            string kernel = element.KernelName ?? CSharp;
            if (kernel is not (CSharp or Markdown))
            {
                throw new NotebookException($"{file.Name}, cell {number}: written in '{kernel}', but only C# runs here. Rewrite the cell in C#, or run the notebook in Jupyter.");
            }

            var cell = new NotebookCell(number, kernel == CSharp, element.Contents.ReplaceLineEndings("\n"), number <= inputs.Length && inputs[number - 1], number <= setups.Length && setups[number - 1]);
            if (cell.IsCode)
            {
                CodeNesting.Check(cell);
            }

            cells.Add(cell);
        }

        if (!cells.Exists(cell => cell.IsCode && !string.IsNullOrWhiteSpace(cell.Text)))
        {
            throw new NotebookException($"{file.Name} has no C# cell to run.");
        }

        return cells;
    }

    /// <summary>The document parser would hand a raw cell to the default kernel; Jupyter never runs one.</summary>
    private static void RefuseRawCells(string name, JsonElement cells)
    {
        int number = 0;
        foreach (var cell in cells.EnumerateArray())
        {
            number++;
            if (cell.ValueKind == JsonValueKind.Object && cell.TryGetProperty("cell_type", out var type) && type.ValueEquals("raw"))
            {
                throw new NotebookException($"{name}, cell {number}: a raw cell, which has no place in a report. Make it Markdown or remove it.");
            }
        }
    }

    /// <summary>Whether a cell is marked by its id, or by a tag in its metadata.</summary>
    private static bool HasMark(JsonElement cell, string mark) =>
        cell.ValueKind == JsonValueKind.Object
        && ((cell.TryGetProperty("id", out var id) && IsMark(id, mark))
            || (cell.TryGetProperty("metadata", out var metadata)
                && metadata.ValueKind == JsonValueKind.Object
                && metadata.TryGetProperty("tags", out var tags)
                && tags.ValueKind == JsonValueKind.Array
                && tags.EnumerateArray().Any(tag => IsMark(tag, mark))));

    private static bool IsMark(JsonElement text, string mark) => text.ValueKind == JsonValueKind.String && text.ValueEquals(mark);

    private static string ReadText(FileInfo file)
    {
        try
        {
            return File.ReadAllText(file.FullName);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new NotebookException($"Cannot read {file.FullName}: {failure.Message}", failure);
        }
    }

    /// <summary>The kernels a notebook may name; naming the others lets the message say which one a cell asked for.</summary>
    private static KernelInfoCollection Kernels()
    {
        var kernels = new KernelInfoCollection
        {
            new(CSharp, "C#", ["c#", "cs", "C#"]),
            new(Markdown, "Markdown", ["md"]),
            new("fsharp", "F#", ["f#", "fs", "F#"]),
            new("pwsh", "PowerShell", ["powershell"]),
            new("javascript", "JavaScript", ["js"]),
            new("html", "HTML", []),
            new("sql", "SQL", []),
            new("python", "Python", ["python3"]),
        };
        kernels.DefaultKernelName = CSharp;
        return kernels;
    }
}
