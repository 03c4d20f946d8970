using System.Text.RegularExpressions;

namespace FuelSizing.Tests.Equations;

/// <summary>The one list of symbols, as docs/symbols.md shows it, and how symbols of it are found in workings.</summary>
internal static partial class SymbolList
{
    /// <summary>Those of the equations and the further ones.</summary>
    public static readonly IReadOnlySet<string> Names =
        EquationPages.Used().Select(use => use.Symbol.Name).Concat(FurtherSymbols.All.Select(symbol => symbol.Name)).ToHashSet();

    /// <summary>True if the list has the symbol, or has it of one of several parts, counted from 1: <c>d_2</c>, <c>Δp_f,2</c>.</summary>
    public static bool Has(string symbol) => Names.Contains(symbol) || (Marked().Match(symbol) is { Success: true } mark && Names.Contains(mark.Groups["own"].Value));

    /// <summary>The list's own symbols that a part's number behind a symbol would make of it: <c>T_1</c> of <c>T</c>.</summary>
    public static IEnumerable<string> MistakenFor(string symbol) =>
        Names.Where(name => Marked().Match(name) is { Success: true } mark && mark.Groups["own"].Value == symbol);

    /// <summary>The symbols in a formula as a working writes it.</summary>
    public static IEnumerable<string> In(string formula) => Symbols().Matches(formula).Select(match => match.Value).Except(["min", "max", "exp", "ln"]);

    [GeneratedRegex(@"^(?<own>[^_,\s]+(?=_[1-9]\d*$)|[^,\s]+_[^,\s]+(?=,[1-9]\d*$))[_,]\d+$", RegexOptions.ExplicitCapture)]
    private static partial Regex Marked();

    [GeneratedRegex(@"[\p{L}][\p{L}\p{M}′]*(_[\p{L}\d]+)?(,\d+)?")]
    private static partial Regex Symbols();
}
