using FuelSizing.Fuzz.Mutating;
using FuelSizing.Notebooks;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Notebook files, as the console program reads them; nothing of them is run.</summary>
internal sealed class NotebookFileReader : FuzzedReader
{
    private static readonly string[] Fields =
    [
        "cells", "cell_type", "code", "markdown", "raw", "source", "metadata", "outputs", "execution_count", "id", "inputs", "tags", "nbformat",
        "nbformat_minor", "kernelspec", "name", "display_name", "language", "language_info", "C#", "csharp", ".net-csharp", "python3", "F#", "pwsh",
        "polyglot_notebook", "dotnet_interactive", "kernelName", "kernelInfo", "defaultKernelName", "items", "aliases", "languageName",
        "output_type", "stream", "stdout", "text", "display_data", "execute_result", "data", "text/html", "text/plain", "error", "ename", "evalue",
        "traceback", "attachments", "#!pwsh", "#!csharp", "#!share", "var x = 1;", "\\n",
    ];

    public override string Name => "notebook";

    public override string Ending => ".ipynb";

    public override string[] Words => Fields;

    public override Func<string, int, int, string>[] Edits => new JsonEdits(Fields).All;

    public override string? Without(string text, int piece) => JsonEdits.Without(text, piece);

    public override Reading Read(byte[] input)
    {
        FileInfo file = new(Holding(input));
        try
        {
            IReadOnlyList<NotebookCell> cells = NotebookReader.Read(file);
            BrokenPromiseException.Unless(cells.Any(cell => cell.IsCode), "A notebook that is read has a cell to run.");
            BrokenPromiseException.Unless(cells.Select((cell, place) => cell.Number == place + 1).All(right => right), "Cells are numbered from 1.");
            BrokenPromiseException.Unless(cells.All(cell => cell.Text is not null), "A cell has a text.");
            return new(true, [$"read: code {Math.Min(cells.Count(cell => cell.IsCode), 2)}, prose {Math.Min(cells.Count(cell => !cell.IsCode), 2)}, inputs {Math.Min(cells.Count(cell => cell.IsInputs), 2)}"]);
        }
        catch (NotebookException refused)
        {
            BrokenPromiseException.Unless(refused.Message.Length > 0, "A refusal has words.");
            return new(false, [AnswerKind.Of(refused.Message.Replace(file.Name, "#", StringComparison.Ordinal))]);
        }
    }
}
