using FuelSizing.Files;
using FuelSizing.Quantities;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace FuelSizing.Notebooks;

/// <summary>
/// Puts values of the command line in place of values in a notebook's inputs cell. A value replaces one literal by another of
/// its kind, perhaps with the unit that the call names, or one name by another member of the same type; it is never read as code.
/// </summary>
internal static class InputsCell
{
    /// <summary>The id or the tag that marks the cell.</summary>
    public const string Mark = "inputs";

    /// <summary>The input that names a setup file; the inputs declared after it come from that file where it is given.</summary>
    public const string SetupFile = "setupFile";

    /// <summary>Characters of a cell that is looked through for inputs; of some texts the parser's time grows with the square of their length.</summary>
    private const int Longest = 20_000;

    /// <summary>The setup file that the run reads: of the settings, or else of the cell itself; blank where there is none.</summary>
    public static string SetupOf(IReadOnlyList<NotebookCell> cells, IReadOnlyList<InputSetting> settings) =>
        settings.FirstOrDefault(setting => setting.Name == SetupFile)?.Value
        ?? (Marked(cells) is { } inputs && IsReadable(inputs)
            && Declared(inputs.Text).FirstOrDefault(variable => variable.Name == SetupFile)?.Value is LiteralExpressionSyntax { Token.Value: string file }
            ? file
            : string.Empty);

    /// <summary>The same cells, the inputs cell changed, and the questions that its values raise.</summary>
    public static (IReadOnlyList<NotebookCell> Cells, IReadOnlyList<ChangedInput> Changed, IReadOnlyList<InputQuestion> Questions) Apply(
        IReadOnlyList<NotebookCell> cells, IReadOnlyList<InputSetting> settings)
    {
        if (settings.Count == 0 && !(Marked(cells) is { } only && IsReadable(only)))
        {
            return (cells, [], []);
        }

        NotebookCell inputs = Marked(cells) ?? throw new NotebookException(
            $"--set needs one code cell with the id or the tag \"{Mark}\"; this notebook has {(cells.Any(cell => cell is { IsInputs: true, IsCode: true }) ? $"{cells.Count(cell => cell is { IsInputs: true, IsCode: true })}" : "none")}. Edit the notebook's values instead.");
        if (inputs.Text.Length > Longest)
        {
            throw new NotebookException(
                $"--set: cell {inputs.Number} has more than {Longest} characters, too many to look for inputs in. Give the inputs a cell of their own.");
        }

        CodeNesting.Check(inputs);
        Variable[] variables = Declared(inputs.Text);
        bool hasSetup = SetupOf(cells, settings).Length > 0;
        int covered = hasSetup ? Array.FindIndex(variables, variable => variable.Name == SetupFile) + 1 : variables.Length;
        Dictionary<string, InputLeaf> leaves = [];
        foreach (InputLeaf leaf in variables.SelectMany(variable => InputTable.Leaves(variable.Name, variable.Name, variable.Type, variable.Value)))
        {
            leaves.TryAdd(leaf.Path, leaf);
        }

        var changes = new List<TextChange>();
        var changed = new List<ChangedInput>();
        var entries = new Dictionary<string, InputEntry>();
        foreach (InputSetting setting in settings)
        {
            string first = setting.Name.Split('.', '[')[0];
            if (hasSetup && Array.FindIndex(variables, variable => variable.Name == first) >= covered)
            {
                throw new NotebookException(
                    $"--set {setting.Name}: with a setup file this input comes from the file. Set the file's own field, such as --set setup.injectors.injector.static_flow={setting.Value}.");
            }

            (SyntaxNode whole, InputEntry entry) = Enter(setting, inputs, variables, leaves);
            if (entry.Changes.Any(change => changes.Exists(other => other.Span.OverlapsWith(change.Span))))
            {
                throw new NotebookException($"--set {setting.Name}: another setting changes the same value. Keep one.");
            }

            entries[setting.Name] = entry;
            changes.AddRange(entry.Changes);
            changed.Add(new ChangedInput(setting.Name, whole.ToString(), Changed(whole, entry.Changes), entry.Assumed));
        }

        string source = SourceText.From(inputs.Text).WithChanges(changes.OrderBy(change => change.Span.Start)).ToString();
        return (
            [.. cells.Select(cell => cell == inputs ? cell with { Text = source } : cell)],
            changed,
            Questions([.. Declared(source).Take(covered)]));
    }

    private static (SyntaxNode Whole, InputEntry Entry) Enter(
        InputSetting setting, NotebookCell inputs, Variable[] variables, Dictionary<string, InputLeaf> leaves)
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
                $"--set {setting.Name}: a table or a calculation cannot be set from the command line. {(parts.Length > 0 ? $"Set a part of it: {string.Join(", ", parts)}." : $"Edit cell {inputs.Number}.")}");
        }

        string[] nearest = [.. NearestNames.Of(setting.Name, leaves.Keys.Concat(variables.Select(known => known.Name)))];
        string meant = nearest.Length > 0 ? $" Did you mean {string.Join(" or ", nearest)}?" : string.Empty;
        throw new NotebookException(
            $"--set {setting.Name}: cell {inputs.Number} has no such input. It has {string.Join(", ", variables.Where(known => leaves.ContainsKey(known.Name) || known.Value is CollectionExpressionSyntax).Select(known => known.Name))}.{RowsOf(setting.Name, leaves)}{meant}");
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

    private static NotebookCell? Marked(IReadOnlyList<NotebookCell> cells)
    {
        NotebookCell[] marked = [.. cells.Where(cell => cell is { IsInputs: true, IsCode: true })];
        return marked.Length == 1 ? marked[0] : null;
    }

    private static bool IsReadable(NotebookCell inputs)
    {
        if (inputs.Text.Length > Longest)
        {
            return false;
        }

        CodeNesting.Check(inputs);
        return true;
    }

    /// <summary>The variables declared at the top of the cell, and the value of each.</summary>
    private static Variable[] Declared(string code) =>
    [
        .. CSharpSyntaxTree.ParseText(code, new CSharpParseOptions(kind: SourceCodeKind.Script)).GetRoot()
            .ChildNodes()
            .OfType<FieldDeclarationSyntax>()
            .SelectMany(field => field.Declaration.Variables, (field, variable) => (field.Declaration.Type, variable.Identifier.ValueText, variable.Initializer?.Value))
            .Where(declared => declared.Value is not null)
            .Select(declared => new Variable(declared.ValueText, declared.Type, declared.Value!))
            .DistinctBy(variable => variable.Name),
    ];

    private sealed record Variable(string Name, TypeSyntax Type, ExpressionSyntax Value);
}
