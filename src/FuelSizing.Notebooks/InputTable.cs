using System.Globalization;
using System.Text;
using FuelSizing.Files;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace FuelSizing.Notebooks;

/// <summary>A table of the inputs cell: its values one by one, and the whole of it, if all its elements are numbers.</summary>
internal static class InputTable
{
    private const int Deepest = 8;

    /// <summary>Every value of an expression that may be set, with its path; tables and calls are gone into.</summary>
    /// <param name="path">Of the expression.</param>
    /// <param name="name">The last name in it, which may say a unit.</param>
    /// <param name="type">As declared; none where it is not said.</param>
    /// <param name="value">The expression.</param>
    public static IEnumerable<InputLeaf> Leaves(string path, string name, TypeSyntax? type, ExpressionSyntax value)
    {
        bool isReal = type?.ToString() is "double";
        if (InputLeaf.Of(path, name, value, isReal) is { } leaf)
        {
            return [leaf];
        }

        return value switch
        {
            CollectionExpressionSyntax list when type is ArrayTypeSyntax array && list.Elements.All(element => element is ExpressionElementSyntax) =>
                list.Elements.Cast<ExpressionElementSyntax>().SelectMany(
                    (element, at) => Leaves($"{path}[{at}]", name, ElementOf(array), element.Expression)),
            TupleExpressionSyntax tuple when type is TupleTypeSyntax named && named.Elements.Count == tuple.Arguments.Count =>
                tuple.Arguments.Zip(named.Elements).SelectMany(pair => Leaves(
                    $"{path}.{pair.Second.Identifier.ValueText}", pair.Second.Identifier.ValueText, pair.Second.Type, pair.First.Expression)),
            InvocationExpressionSyntax call when Parameters(call) is { } names =>
                call.ArgumentList.Arguments.SelectMany((argument, at) => Leaves(
                    $"{path}.{argument.NameColon?.Name.Identifier.ValueText ?? names[at]}",
                    argument.NameColon?.Name.Identifier.ValueText ?? names[at],
                    null,
                    argument.Expression)),
            _ => [],
        };
    }

    /// <summary>The whole table in place of what was there: lists in [ ], rows in ( ), numbers with or without units.</summary>
    public static InputEntry Enter(string name, TypeSyntax type, SyntaxNode whole, string text)
    {
        int at = 0;
        List<string> assumed = [];
        StringBuilder code = new();
        Read(name, name, type, text, ref at, code, assumed, 0);
        Blank(text, ref at);
        return at == text.Length
            ? new([new(whole.Span, code.ToString())], assumed.Count == 0 ? null : string.Join("; ", assumed.Distinct()))
            : throw Wrong(name, text, "something stands after it");
    }

    private static void Read(string name, string element, TypeSyntax type, string text, ref int at, StringBuilder code, List<string> assumed, int depth)
    {
        if (depth > Deepest)
        {
            throw Wrong(name, text, "it is nested too deep");
        }

        switch (type)
        {
            case ArrayTypeSyntax array:
                TypeSyntax inner = ElementOf(array);
                Take(name, text, ref at, '[', code);
                for (int count = 0; !Next(text, ref at, ']'); count++)
                {
                    if (count > 0)
                    {
                        Take(name, text, ref at, ',', code).Append(' ');
                    }

                    Read(name, element, inner, text, ref at, code, assumed, depth + 1);
                }

                Take(name, text, ref at, ']', code);
                break;
            case TupleTypeSyntax tuple:
                Take(name, text, ref at, '(', code);
                for (int field = 0; field < tuple.Elements.Count; field++)
                {
                    if (field > 0)
                    {
                        Take(name, text, ref at, ',', code).Append(' ');
                    }

                    Read(name, tuple.Elements[field].Identifier.ValueText, tuple.Elements[field].Type, text, ref at, code, assumed, depth + 1);
                }

                Take(name, text, ref at, ')', code);
                break;
            case PredefinedTypeSyntax { Keyword.RawKind: (int)SyntaxKind.DoubleKeyword }:
                code.Append(Number(name, element, text, ref at, assumed));
                break;
            default:
                throw new NotebookException($"--set {name}: a table of {type} cannot be set from the command line as a whole. Set its values one by one, such as {name}[0].");
        }
    }

    private static string Number(string name, string element, string text, ref int at, List<string> assumed)
    {
        Blank(text, ref at);
        int start = at;
        while (at < text.Length && text[at] is not (',' or ')' or ']' or '(' or '['))
        {
            at++;
        }

        string word = text[start..at].Trim();
        if (InputUnits.Of(element) is { } unit)
        {
            TypedQuantity typed = TypedQuantity.Read(word, unit);
            if (typed.Assumed is { } taken)
            {
                assumed.Add($"{element}: {taken}");
            }

            return typed.Value is { } value ? InputLeaf.Real(value.As(unit)) : throw InputLeaf.Refused(name, text, $"{element} {word}: {typed.Refusal}");
        }

        return double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
            ? InputLeaf.Real(number)
            : throw Wrong(name, text, $"\"{word}\" is no number");
    }

    private static StringBuilder Take(string name, string text, ref int at, char mark, StringBuilder code)
    {
        Blank(text, ref at);
        if (at >= text.Length || text[at] != mark)
        {
            throw Wrong(name, text, $"{mark} is missing at character {at + 1}");
        }

        at++;
        return code.Append(mark);
    }

    private static bool Next(string text, ref int at, char mark)
    {
        Blank(text, ref at);
        return at < text.Length && text[at] == mark;
    }

    private static void Blank(string text, ref int at)
    {
        while (at < text.Length && text[at] == ' ')
        {
            at++;
        }
    }

    private static NotebookException Wrong(string name, string text, string why) => InputLeaf.Refused(
        name, text, $"expected a table as the cell has it, lists in [ ] and rows in ( ), or one value of it, such as {name}[0]: {why}");

    // double[][] is an array of double[]: Roslyn keeps the ranks together.
    private static TypeSyntax ElementOf(ArrayTypeSyntax array) =>
        array.RankSpecifiers.Count > 1 ? array.WithRankSpecifiers(array.RankSpecifiers.RemoveAt(0)) : array.ElementType;

    /// <summary>The names of a factory's parameters, where the library has the factory.</summary>
    private static string[]? Parameters(InvocationExpressionSyntax call) =>
        call.Expression is MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax type, Name: IdentifierNameSyntax method }
        && typeof(Setup).Assembly.GetExportedTypes().FirstOrDefault(known => known.Name == type.Identifier.ValueText && !known.IsNested) is { } known
            ? known.GetMethods(System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.Static)
                .Where(one => one.Name == method.Identifier.ValueText && one.GetParameters().Length >= call.ArgumentList.Arguments.Count)
                .Select(one => one.GetParameters().Select(parameter => parameter.Name!).ToArray())
                .FirstOrDefault()
            : null;
}
