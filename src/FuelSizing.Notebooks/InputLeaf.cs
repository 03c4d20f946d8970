using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using FuelSizing.Electrical;
using FuelSizing.Files;
using FuelSizing.Injectors;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;
using UnitsNet;

namespace FuelSizing.Notebooks;

/// <summary>What an entry on the command line does to the code of the inputs cell.</summary>
/// <param name="Changes">Literals and names, each in place of another; never code.</param>
/// <param name="Assumed">What was taken for granted; none where nothing was.</param>
/// <param name="Quantity">The value, where it is a quantity.</param>
/// <param name="Number">The value, where it is a plain number.</param>
internal sealed record InputEntry(IReadOnlyList<TextChange> Changes, string? Assumed, IQuantity? Quantity = null, double? Number = null);

/// <summary>One value of the inputs cell that may be set, by its path.</summary>
/// <param name="Path">The variable, perhaps with a row and an element: <c>pumpCurve[2].LitresPerHour</c>.</param>
/// <param name="Whole">The expression that is shown as what was there.</param>
/// <param name="Enter">Takes what was typed.</param>
/// <param name="Quantity">What the notebook says, where it is a quantity.</param>
/// <param name="Number">What the notebook says, where it is a plain number.</param>
internal sealed partial record InputLeaf(string Path, SyntaxNode Whole, Func<string, InputEntry> Enter, IQuantity? Quantity = null, double? Number = null)
{
    /// <summary>A value by its form; none where the form is not one of those that docs/notebooks.md lists.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="name">The last name in it, which may say a unit.</param>
    /// <param name="value">The expression.</param>
    /// <param name="isReal">Whether a whole number stands for a real one.</param>
    public static InputLeaf? Of(string path, string name, ExpressionSyntax value, bool isReal) => value switch
    {
        InvocationExpressionSyntax
        {
            Expression: MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax type, Name: IdentifierNameSyntax method },
            ArgumentList.Arguments: [{ NameColon: null, RefKindKeyword.RawKind: 0, Expression: var only }],
        } => OfCall(path, value, type.Identifier.ValueText, method, only),
        InvocationExpressionSyntax { ArgumentList.Arguments: [{ NameColon: null, RefKindKeyword.RawKind: 0, Expression: var only }] } => OfLiteral(path, value, only, null, isReal: false),
        MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax type, Name: IdentifierNameSyntax member } when Members(type.Identifier.ValueText) is { Length: > 0 } members =>
            new(path, value, text => new([new(member.Span, OneOf(path, text, members))], null)),
        _ => OfLiteral(path, value, value, InputUnits.Of(name), isReal),
    };

    /// <summary>The refusal of a value.</summary>
    public static NotebookException Refused(string name, string text, string wanted) => new($"--set {name}={text}: {wanted}.");

    /// <summary>A number that the compiler takes for a real one.</summary>
    public static string Real(double number)
    {
        string text = number.ToString("R", CultureInfo.InvariantCulture);
        return text.AsSpan().ContainsAny('.', 'E') ? text : $"{text}.0";
    }

    private static InputLeaf? OfCall(string path, ExpressionSyntax value, string type, IdentifierNameSyntax method, ExpressionSyntax only)
    {
        if (LiteralOf(only) is not { Value: int or double } literal)
        {
            return OfLiteral(path, value, only, null, isReal: false);
        }

        double number = Convert.ToDouble(literal.Value, CultureInfo.InvariantCulture) * (only is PrefixUnaryExpressionSyntax ? -1 : 1);
        if (type == nameof(Conductor) && method.Identifier.ValueText == nameof(Conductor.Awg))
        {
            return new(path, value, text => Wire(path, text, only), number is >= 0 and <= 24 ? AreaOf((int)number) : null);
        }

        return UnitOf(type, method.Identifier.ValueText) is { } unit
            ? new(path, value, text => OfQuantity(path, text, unit, method, only), UnitsNet.Quantity.From(number, unit))
            : OfLiteral(path, value, only, null, method.Identifier.ValueText.StartsWith("From", StringComparison.Ordinal));
    }

    private static InputEntry OfQuantity(string path, string text, Enum unit, IdentifierNameSyntax method, ExpressionSyntax only)
    {
        TypedQuantity typed = Typed(path, text, unit);
        IQuantity value = typed.Value!;
        List<TextChange> changes = [new(only.Span, Real((double)value.Value))];
        if (!value.Unit.Equals(unit))
        {
            changes.Insert(0, new(method.Span, $"From{value.QuantityInfo.UnitInfos.Single(info => info.Value.Equals(value.Unit)).PluralName}"));
        }

        return new(changes, typed.Assumed, value);
    }

    private static TypedQuantity Typed(string path, string text, Enum unit)
    {
        TestFluid? quotedOn = PlausibleRange.For(path) is { } range && range == PlausibleRange.For("static_flow") ? TestFluid.Heptane : null;
        TypedQuantity typed = TypedQuantity.Read(text, unit, quotedOn);
        return typed.Refusal is { } why ? throw Refused(path, text, why) : typed;
    }

    private static Area AreaOf(int gauge) => Conductor.Awg(gauge).Area.ToUnit(UnitsNet.Units.AreaUnit.SquareMillimeter);

    private static InputEntry Wire(string path, string text, ExpressionSyntax only)
    {
        if (Gauge().Match(text.Trim()) is { Success: true } match
            && int.Parse(match.Groups["size"].Value, CultureInfo.InvariantCulture) is var size and <= 24)
        {
            string? assumed = match.Groups["awg"].Success ? null : "no unit given, taken as AWG";
            return new([new(only.Span, size.ToString(CultureInfo.InvariantCulture))], assumed, AreaOf(size));
        }

        string sizes = string.Empty;
        if (TypedQuantity.Read(text, UnitsNet.Units.AreaUnit.SquareMillimeter) is { Value: Area area, Assumed: null } && area > Area.Zero)
        {
            int nearest = Enumerable.Range(0, 25).MinBy(gauge => Math.Abs(Math.Log(Conductor.Awg(gauge).Area / area)));
            sizes = $"; the nearest to {Readable.Of(area)} is {nearest}AWG, {Readable.Of(Conductor.Awg(nearest).Area)}, and for a metric wire edit the cell: Conductor.Metric";
        }

        throw Refused(path, text, $"expected an AWG size from 24 to 0, such as 12 or 12AWG{sizes}");
    }

    /// <summary>How a literal is written anew; none where the expression is no literal.</summary>
    private static InputLeaf? OfLiteral(string path, SyntaxNode whole, ExpressionSyntax expression, Enum? unit, bool isReal)
    {
        if (LiteralOf(expression) is not { } token)
        {
            return null;
        }

        double sign = expression is PrefixUnaryExpressionSyntax ? -1 : 1;
        switch (token.Value)
        {
            case string:
                return new(path, whole, text => new([new(expression.Span, SymbolDisplay.FormatLiteral(text, quote: true))], null));
            case bool:
                return new(path, whole, text => new([new(expression.Span, OneOf(path, text, ["true", "false"]))], null));
            case int or double when unit is not null:
                return new(
                    path,
                    whole,
                    text =>
                    {
                        TypedQuantity typed = Typed(path, text, unit);
                        double converted = typed.Value!.As(unit);
                        string? assumed = typed.Value.Unit.Equals(unit) || typed.Assumed is not null ? typed.Assumed : $"{text.Trim()} is {Real(converted)} in the unit of the notebook";
                        return new([new(expression.Span, Real(converted))], assumed, typed.Value);
                    },
                    UnitsNet.Quantity.From(sign * Convert.ToDouble(token.Value, CultureInfo.InvariantCulture), unit));
            case int whole32 when !isReal:
                return new(
                    path,
                    whole,
                    text => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number)
                        ? new([new(expression.Span, number.ToString(CultureInfo.InvariantCulture))], null, null, number)
                        : throw Refused(path, text, "expected a whole number, without a unit"),
                    Number: sign * whole32);
            case int or double:
                return new(
                    path,
                    whole,
                    text => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
                        ? new([new(expression.Span, Real(number))], null, null, number)
                        : throw Refused(path, text, "expected a number with a decimal point, without a unit"),
                    Number: sign * Convert.ToDouble(token.Value, CultureInfo.InvariantCulture));
            default:
                return null;
        }
    }

    private static SyntaxToken? LiteralOf(ExpressionSyntax expression) => expression switch
    {
        LiteralExpressionSyntax literal => literal.Token,
        PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression, Operand: LiteralExpressionSyntax { RawKind: (int)SyntaxKind.NumericLiteralExpression } literal } => literal.Token,
        _ => null,
    };

    /// <summary>The unit of <c>Pressure.FromBars</c>; none where it is no such call.</summary>
    private static Enum? UnitOf(string type, string method) =>
        method.StartsWith("From", StringComparison.Ordinal) && UnitsNet.Quantity.Infos.FirstOrDefault(info => info.Name == type) is { } quantity
            ? quantity.UnitInfos.FirstOrDefault(unit => method == $"From{unit.PluralName}") is { } found && InputKind.Of(found.Value) is not null ? found.Value : null
            : null;

    private static string OneOf(string name, string text, string[] choices)
    {
        if (choices.Contains(text))
        {
            return text;
        }

        string meant = string.Join(" or ", NearestNames.Of(text, choices));
        throw Refused(name, text, $"expected one of {string.Join(", ", choices)}{(meant.Length > 0 ? $". Did you mean {meant}?" : string.Empty)}");
    }

    /// <summary>The members of a type of the library that are themselves of that type: <c>Fuel.E85</c>, <c>EngineCycle.TwoStroke</c>.</summary>
    private static string[] Members(string typeName) =>
        typeof(FuelSystem).Assembly.GetExportedTypes().SingleOrDefault(type => type.Name == typeName && !type.IsNested) is { } type
            ? [.. type.GetMembers(BindingFlags.Public | BindingFlags.Static)
                .Where(member => (member as PropertyInfo)?.PropertyType == type || (member as FieldInfo)?.FieldType == type)
                .Select(member => member.Name)]
            : [];

    [GeneratedRegex(@"^(?<awg>AWG\s*)?(?<size>[0-9]{1,2})\s*(?<awg>AWG)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase)]
    private static partial Regex Gauge();
}
