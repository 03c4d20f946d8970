using FuelSizing.Files;
using FuelSizing.Quantities;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace FuelSizing.Notebooks;

/// <summary>
/// Puts values of the command line in place of values in a notebook's cells of inputs. A value replaces one literal by another of
/// its kind, perhaps with the unit that the call names, or one name by another member of the same type; it is never read as code.
/// </summary>
internal static class InputsCell
{
    /// <summary>The id or the tag that marks a cell of inputs.</summary>
    public const string Mark = "inputs";

    /// <summary>The id or the tag that marks, beside that, inputs that a setup file takes the place of.</summary>
    public const string SetupMark = "setup";

    /// <summary>The input that names a setup file; where it is given, the inputs declared after it in its cell, and those of cells so marked, come from that file.</summary>
    public const string SetupFile = "setupFile";

    /// <summary>Characters of a cell that is looked through for inputs; of some texts the parser's time grows with the square of their length.</summary>
    private const int Longest = 20_000;

    /// <summary>The setup file that the run reads: of the settings, or else of the cells themselves; blank where there is none.</summary>
    public static string SetupOf(IReadOnlyList<NotebookCell> cells, IReadOnlyList<InputSetting> settings) =>
        settings.FirstOrDefault(setting => setting.Name == SetupFile)?.Value
        ?? (Marked(cells) is { Length: > 0 } marked && IsReadable(marked)
            && Declared(marked).FirstOrDefault(variable => variable.Name == SetupFile)?.Value is LiteralExpressionSyntax { Token.Value: string file }
            ? file
            : string.Empty);

    /// <summary>The inputs that a notebook's reader meets first: those of the first cell of inputs, by name.</summary>
    public static IReadOnlyList<string> First(IReadOnlyList<NotebookCell> cells) => [.. Declared([.. Marked(cells).Take(1)]).Select(variable => variable.Name)];

    /// <summary>The same cells, those of inputs changed, and the questions that their values raise.</summary>
    public static (IReadOnlyList<NotebookCell> Cells, IReadOnlyList<ChangedInput> Changed, IReadOnlyList<InputQuestion> Questions) Apply(
        IReadOnlyList<NotebookCell> cells, IReadOnlyList<InputSetting> settings)
    {
        NotebookCell[] marked = Marked(cells);
        if (settings.Count == 0 && !(marked.Length > 0 && IsReadable(marked)))
        {
            return (cells, [], []);
        }

        if (marked.Length == 0)
        {
            throw new NotebookException($"--set needs a code cell with the id or the tag \"{Mark}\"; this notebook has none. Edit the notebook's values instead.");
        }

        foreach (NotebookCell inputs in marked)
        {
            if (inputs.Text.Length > Longest)
            {
                throw new NotebookException(
                    $"--set: cell {inputs.Number} has more than {Longest} characters, too many to look for inputs in. Give the inputs a cell of their own.");
            }

            CodeNesting.Check(inputs);
        }

        Variable[] variables = Declared(marked);
        bool hasSetup = SetupOf(cells, settings).Length > 0;
        Dictionary<string, InputLeaf> leaves = [];
        foreach (InputLeaf leaf in variables.SelectMany(variable => InputTable.Leaves(variable.Name, variable.Name, variable.Type, variable.Value)))
        {
            leaves.TryAdd(leaf.Path, leaf);
        }

        var changes = marked.ToDictionary(inputs => inputs, _ => new List<TextChange>());
        var changed = new List<ChangedInput>();
        var entries = new Dictionary<string, InputEntry>();
        foreach (InputSetting setting in settings)
        {
            string first = setting.Name.Split('.', '[')[0];
            if (hasSetup && Array.Find(variables, variable => variable.Name == first) is { IsOfSetup: true })
            {
                throw new NotebookException(
                    $"--set {setting.Name}: with a setup file this input comes from the file. Set the file's own field, such as --set setup.injectors.injector.static_flow={setting.Value}.");
            }

            (SyntaxNode whole, InputEntry entry) = Enter(setting, variables, leaves);
            List<TextChange> ofCell = changes[variables.First(variable => variable.Value.SyntaxTree == whole.SyntaxTree).Cell];
            if (entry.Changes.Any(change => ofCell.Exists(other => other.Span.OverlapsWith(change.Span))))
            {
                throw new NotebookException($"--set {setting.Name}: another setting changes the same value. Keep one.");
            }

            entries[setting.Name] = entry;
            ofCell.AddRange(entry.Changes);
            changed.Add(new ChangedInput(setting.Name, whole.ToString(), Changed(whole, entry.Changes), entry.Assumed));
        }

        NotebookCell[] written = [.. cells.Select(cell => changes.TryGetValue(cell, out List<TextChange>? made)
            ? cell with { Text = SourceText.From(cell.Text).WithChanges(made.OrderBy(change => change.Span.Start)).ToString() }
            : cell)];
        return (written, changed, Questions([.. Declared(Marked(written)).Where(variable => !(hasSetup && variable.IsOfSetup))]));
    }

    private static (SyntaxNode Whole, InputEntry Entry) Enter(
        InputSetting setting, Variable[] variables, Dictionary<string, InputLeaf> leaves)
    {
        if (leaves.TryGetValue(setting.Name, out InputLeaf? leaf))
        {
            return (leaf.Whole, leaf.Enter(setting.Value));
        }

        Variable? variable = variables.FirstOrDefault(known => known.Name == setting.Name);
        if (variable is { Type: ArrayTypeSyntax type, Value: CollectionExpressionSyntax list } && list.Elements.All(element => element is ExpressionElementSyntax))
        {
            return (list, InputTable.Enter(setting.Name, type, list, setting.Value));
        }

        if (variable is not null)
        {
            string[] parts = [.. leaves.Keys.Where(path => path.StartsWith($"{setting.Name}.", StringComparison.Ordinal)).Take(4)];
            throw new NotebookException(
                $"--set {setting.Name}: a table or a calculation cannot be set from the command line. {(parts.Length > 0 ? $"Set a part of it: {string.Join(", ", parts)}." : $"Edit cell {variable.Cell.Number}.")}");
        }

        string[] nearest = [.. NearestNames.Of(setting.Name, leaves.Keys.Concat(variables.Select(known => known.Name)))];
        string meant = nearest.Length > 0 ? $" Did you mean {string.Join(" or ", nearest)}?" : string.Empty;
        throw new NotebookException(
            $"--set {setting.Name}: {CellsOf(variables)} no such input. {(variables.Select(known => known.Cell.Number).Distinct().Count() > 1 ? "They have" : "It has")} {string.Join(", ", variables.Where(known => leaves.ContainsKey(known.Name) || known.Value is CollectionExpressionSyntax).Select(known => known.Name))}.{RowsOf(setting.Name, leaves)}{meant}");
    }

    // A row that the table does not have, or an element that its rows do not have, is the likeliest mistake of a path.
    private static string RowsOf(string name, Dictionary<string, InputLeaf> leaves)
    {
        string row = name[..(name.LastIndexOf(']') + 1)];
        string[] elements = row.Length == 0 ? [] : [.. leaves.Keys.Where(path => path.StartsWith($"{row}.", StringComparison.Ordinal))];
        if (elements.Length > 0)
        {
            return $" {row} has {string.Join(", ", elements.Take(8))}.";
        }

        int at = name.IndexOf('[', StringComparison.Ordinal);
        string[] rows = at < 1 ? [] : [.. leaves.Keys.Where(path => path.StartsWith(name[..(at + 1)], StringComparison.Ordinal))];
        return rows.Length > 0 ? $" Rows are counted from [0]: {rows[0]} to {rows[^1]}." : string.Empty;
    }

    private static List<InputQuestion> Questions(Variable[] variables)
    {
        var questions = new List<InputQuestion>();
        HashSet<string> asked = [];
        foreach (InputLeaf leaf in variables.SelectMany(variable => InputTable.Leaves(variable.Name, variable.Name, variable.Type, variable.Value)))
        {
            InputQuestion? question = PlausibleRange.For(leaf.Path) is not { } range ? null
                : leaf.Quantity is { } quantity ? range.Question(leaf.Path, quantity)
                : leaf.Number is { } number ? range.Question(leaf.Path, number)
                : null;
            if (question is not null && asked.Add(InputSetting.WithoutRows(leaf.Path)))
            {
                questions.Add(question);
            }
        }

        return questions;
    }

    private static string Changed(SyntaxNode whole, IReadOnlyList<TextChange> changes)
    {
        string text = whole.ToString();
        foreach (TextChange change in changes.OrderByDescending(change => change.Span.Start))
        {
            text = text[..(change.Span.Start - whole.SpanStart)] + change.NewText + text[(change.Span.End - whole.SpanStart)..];
        }

        return text;
    }

    private static string CellsOf(Variable[] variables)
    {
        int[] numbers = [.. variables.Select(known => known.Cell.Number).Distinct()];
        return numbers.Length > 1 ? $"cells {string.Join(", ", numbers[..^1])} and {numbers[^1]} have" : $"cell {string.Join(string.Empty, numbers)} has";
    }

    private static NotebookCell[] Marked(IReadOnlyList<NotebookCell> cells) => [.. cells.Where(cell => cell is { IsInputs: true, IsCode: true })];

    private static bool IsReadable(NotebookCell[] marked)
    {
        if (marked.Any(inputs => inputs.Text.Length > Longest))
        {
            return false;
        }

        foreach (NotebookCell inputs in marked)
        {
            CodeNesting.Check(inputs);
        }

        return true;
    }

    /// <summary>The variables declared at the top of the cells, and the value of each.</summary>
    private static Variable[] Declared(NotebookCell[] marked) => [.. marked.SelectMany(Declared).DistinctBy(variable => variable.Name)];

    private static IEnumerable<Variable> Declared(NotebookCell cell)
    {
        bool isOfSetup = cell.IsSetup;
        foreach ((TypeSyntax type, VariableDeclaratorSyntax declared) in CSharpSyntaxTree.ParseText(cell.Text, new CSharpParseOptions(kind: SourceCodeKind.Script)).GetRoot()
            .ChildNodes()
            .OfType<FieldDeclarationSyntax>()
            .SelectMany(field => field.Declaration.Variables, (field, variable) => (field.Declaration.Type, variable)))
        {
            if (declared.Initializer is { Value: { } value })
            {
                yield return new Variable(declared.Identifier.ValueText, type, value, cell, isOfSetup);
                isOfSetup |= declared.Identifier.ValueText == SetupFile;
            }
        }
    }

    /// <param name="Name">Of the variable.</param>
    /// <param name="Type">As it is written.</param>
    /// <param name="Value">What it is given.</param>
    /// <param name="Cell">In which it is declared.</param>
    /// <param name="IsOfSetup">Whether it comes from the setup file where one is given.</param>
    private sealed record Variable(string Name, TypeSyntax Type, ExpressionSyntax Value, NotebookCell Cell, bool IsOfSetup);
}
