using System.Globalization;
using System.Reflection;
using FuelSizing.Systems;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace FuelSizing.Notebooks;

/// <summary>
/// Puts values of the command line in place of values in a notebook's inputs cell. A value replaces one literal by another of
/// its kind, or one name by another member of the same type; it is never read as code.
/// </summary>
internal static class InputsCell
{
    /// <summary>The id or the tag that marks the cell.</summary>
    public const string Mark = "inputs";

    /// <summary>Characters of a cell that is looked through for inputs; of some texts the parser's time grows with the square of their length.</summary>
    private const int Longest = 20_000;

    /// <summary>The same cells, the inputs cell changed.</summary>
    public static (IReadOnlyList<NotebookCell> Cells, IReadOnlyList<ChangedInput> Changed) Apply(
        IReadOnlyList<NotebookCell> cells, IReadOnlyList<InputSetting> settings)
    {
        if (settings.Count == 0)
        {
            return (cells, []);
        }

        NotebookCell[] marked = [.. cells.Where(cell => cell is { IsInputs: true, IsCode: true })];
        if (marked.Length != 1)
        {
            throw new NotebookException(
                $"--set needs one code cell with the id or the tag \"{Mark}\"; this notebook has {(marked.Length == 0 ? "none" : $"{marked.Length}")}. Edit the notebook's values instead.");
        }

        NotebookCell inputs = marked[0];
        if (inputs.Text.Length > Longest)
        {
            throw new NotebookException(
                $"--set: cell {inputs.Number} has more than {Longest} characters, too many to look for inputs in. Give the inputs a cell of their own.");
        }

        CodeNesting.Check(inputs);
        Dictionary<string, Place> places = Places(inputs.Text);
        var changes = new List<TextChange>();
        var changed = new List<ChangedInput>();
        foreach (InputSetting setting in settings)
        {
            if (!places.TryGetValue(setting.Name, out Place? place))
            {
                throw new NotebookException(
                    $"--set {setting.Name}: cell {inputs.Number} has no such input. It has {string.Join(", ", places.Where(known => known.Value.Write is not null).Select(known => known.Key))}.");
            }

            string text = (place.Write ?? throw new NotebookException(
                $"--set {setting.Name}: a table or a calculation cannot be set from the command line. Edit cell {inputs.Number}."))(setting.Value);
            string whole = place.Whole.ToString();
            changes.Add(new TextChange(place.Part.Span, text));
            changed.Add(new ChangedInput(
                setting.Name,
                whole,
                whole[..(place.Part.SpanStart - place.Whole.SpanStart)] + text + whole[(place.Part.Span.End - place.Whole.SpanStart)..]));
        }

        string source = SourceText.From(inputs.Text).WithChanges(changes.OrderBy(change => change.Span.Start)).ToString();
        return ([.. cells.Select(cell => cell == inputs ? cell with { Text = source } : cell)], changed);
    }

    /// <summary>The variables declared at the top of the cell, and where the value of each stands.</summary>
    private static Dictionary<string, Place> Places(string code)
    {
        var places = new Dictionary<string, Place>();
        SyntaxNode root = CSharpSyntaxTree.ParseText(code, new CSharpParseOptions(kind: SourceCodeKind.Script)).GetRoot();
        foreach (VariableDeclarationSyntax declaration in root.ChildNodes().OfType<FieldDeclarationSyntax>().Select(field => field.Declaration))
        {
            bool real = declaration.Type.ToString() is "double";
            foreach (VariableDeclaratorSyntax variable in declaration.Variables)
            {
                if (variable.Initializer?.Value is { } value)
                {
                    string name = variable.Identifier.ValueText;
                    (SyntaxNode part, Func<string, string>? write) = Settable(name, value, real);
                    places.TryAdd(name, new(value, part, write));
                }
            }
        }

        return places;
    }

    /// <summary>What of a value may be replaced, and by what; nothing where the form is not one of those that docs/notebooks.md lists.</summary>
    private static (SyntaxNode Part, Func<string, string>? Write) Settable(string name, ExpressionSyntax value, bool real) => value switch
    {
        InvocationExpressionSyntax { ArgumentList.Arguments: [{ NameColon: null, RefKindKeyword.RawKind: 0 } only] } call =>
            (only.Expression, Literal(name, only.Expression, call.Expression is MemberAccessExpressionSyntax { Name.Identifier.ValueText: var method } && method.StartsWith("From", StringComparison.Ordinal))),
        MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax type, Name: IdentifierNameSyntax member } when Members(type.Identifier.ValueText) is { Length: > 0 } members =>
            (member, text => OneOf(name, text, members)),
        _ => (value, Literal(name, value, real)),
    };

    /// <summary>How a literal is written anew; null where the expression is no literal.</summary>
    private static Func<string, string>? Literal(string name, ExpressionSyntax expression, bool real)
    {
        SyntaxToken? token = expression switch
        {
            LiteralExpressionSyntax literal => literal.Token,
            PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression, Operand: LiteralExpressionSyntax { RawKind: (int)SyntaxKind.NumericLiteralExpression } literal } => literal.Token,
            _ => null,
        };
        return token?.Value switch
        {
            string => text => SymbolDisplay.FormatLiteral(text, quote: true),
            bool => text => OneOf(name, text, ["true", "false"]),
            int when !real => text => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number)
                ? number.ToString(CultureInfo.InvariantCulture)
                : throw Refused(name, text, "a whole number"),
            int or double => text => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
                ? Real(number)
                : throw Refused(name, text, "a number with a decimal point"),
            _ => null,
        };
    }

    /// <summary>A number that the compiler takes for a real one.</summary>
    private static string Real(double number)
    {
        string text = number.ToString("R", CultureInfo.InvariantCulture);
        return text.AsSpan().ContainsAny('.', 'E') ? text : $"{text}.0";
    }

    private static string OneOf(string name, string text, string[] choices) =>
        choices.Contains(text) ? text : throw Refused(name, text, $"one of {string.Join(", ", choices)}");

    private static NotebookException Refused(string name, string text, string wanted) =>
        new($"--set {name}={text}: expected {wanted}.");

    /// <summary>The members of a type of the library that are themselves of that type: <c>Fuel.E85</c>, <c>EngineCycle.TwoStroke</c>.</summary>
    private static string[] Members(string typeName) =>
        typeof(FuelSystem).Assembly.GetExportedTypes().SingleOrDefault(type => type.Name == typeName && !type.IsNested) is { } type
            ? [.. type.GetMembers(BindingFlags.Public | BindingFlags.Static)
                .Where(member => (member as PropertyInfo)?.PropertyType == type || (member as FieldInfo)?.FieldType == type)
                .Select(member => member.Name)]
            : [];

    /// <summary>A variable's value, the part of it that may be replaced, and how; no way to write it where it may not.</summary>
    private sealed record Place(SyntaxNode Whole, SyntaxNode Part, Func<string, string>? Write);
}
