using FuelSizing.Fuzz.Mutating;
using FuelSizing.Notebooks;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace FuelSizing.Fuzz.Readers;

/// <summary>
/// Settings of the command line (<c>--set name=value</c>) for a notebook's inputs cell. An input holds the settings, each
/// closed by a record separator (U+001E), and the cell behind a group separator (U+001D), or else a cell of every form of
/// input. Whatever the settings say, the cell's code stays as it was but for literals and names.
/// </summary>
internal sealed class ParameterReader : FuzzedReader
{
    private const char AfterSetting = '\u001E';
    private const char BeforeCell = '\u001D';

    private const string Inputs = """
        using FuelSizing.Engines;
        using FuelSizing.Fuels;
        using UnitsNet;
        var boost = Pressure.FromBars(0.6);      // gauge
        var cylinders = 4;
        double lambda = 1;
        var idle = -0.5;
        var fuel = Fuel.Petrol;
        var cycle = EngineCycle.FourStroke;
        var log = "wren.csv";
        var boosted = true;
        double[] table = [1, 2];
        (double Kilopascals, double LitresPerHour)[] pumpCurve = [(0, 215), (300, 165)];
        var staticFlow = VolumeFlow.FromMillilitersPerMinute(360);
        var wire = Conductor.Awg(12);
        var regulator = ManifoldReferenced.From(Pressure.FromKilopascals(300), minimumReturnFlow: VolumeFlow.FromLitersPerHour(15));
        var sum = 1 + 2;
        """;

    private static readonly CSharpParseOptions Script = new(kind: SourceCodeKind.Script);

    /// <summary>What refusals say beside the names and values of the input.</summary>
    private static readonly string[] Refusals =
    [
        "is given twice", "has no such input", "expected name=value", "cannot be set from the command line", "brackets within one another", "too many to look for inputs in",
        "expected a whole number", "is a unit of", "is no unit of", "says gauge or absolute", "a gallon is", "is a mass flow", "expected a table",
        "as a whole", "expected an AWG size", "another setting changes", "with a setup file", "expected a number with a decimal point",
        "expected one of true, false", "expected one of",
    ];

    private static readonly string[] Texts =
    [
        "boost=", "cylinders=", "lambda=", "idle=", "fuel=", "cycle=", "log=", "boosted=", "table=", "sum=", "pumpCurve=", "pumpCurve[1].LitresPerHour=",
        "staticFlow=", "wire=", "regulator.basePressure=", "8psi", "24 lb/h", "5/16in", "12AWG", "[(0, 215)]", "[1, 2, 3]", "psia", "gal/h", "0.9", "E85", "TwoStroke", "Petrol", "true",
        "my.csv", "\"; Exit(); \"", "1); Exit(); (", "\"\"\"", "$\"{", "}\"", "@\"", "'", "\\\"", "//", "/*", "*/", "#if X", "#endif", "#r \"x\"", "#!pwsh",
        "var ", "double ", "string s = \"a\";", "int n = 3;", "Fuel.E10", "Length.FromMeters(2)", "(1, 2)", "new()", "=>", "null", "default", "\u001E", "\u001D",
    ];

    public override string Name => "parameters";

    public override string Ending => ".txt";

    public override string[] Words => Texts;

    public override Func<string, int, int, string>[] Edits =>
    [
        (text, at, figure) => text[..at] + Texts[(at + figure) % Texts.Length] + text[at..],
        (text, at, figure) => Value(text, at, Scraps.Numbers[(at + figure) % Scraps.Numbers.Length]),
        (text, at, figure) => Value(text, at, Scraps.Marks[(at + figure) % Scraps.Marks.Length]),
        (text, at, figure) => Value(text, at, Texts[(at + figure) % Texts.Length]),
        (text, at, figure) => text.Insert(at, $"{AfterSetting}{Texts[figure % 10]}{Scraps.Numbers[(at + figure) % Scraps.Numbers.Length]}{AfterSetting}"),
        (text, at, _) => text.Insert(at, text[..at]),
    ];

    public override Reading Read(byte[] input)
    {
        string text = Characters(input) ?? MutatedInput.Text(input);
        int at = text.IndexOf(BeforeCell);
        string code = at < 0 ? Inputs : text[(at + 1)..];
        string[] settings = (at < 0 ? text : text[..at]).Split(AfterSetting, StringSplitOptions.RemoveEmptyEntries);
        NotebookCell cell = new(1, true, code, true);
        try
        {
            (IReadOnlyList<NotebookCell> cells, IReadOnlyList<ChangedInput> changed, _) = InputsCell.Apply([cell], InputSetting.Parse(settings));
            BrokenPromiseException.Unless(changed.Count == settings.Length, "Each setting changes one input.");
            if (changed.Count > 0)
            {
                SameForm(code, cells[0].Text);
            }

            return new(true, [$"read: {Math.Min(changed.Count, 3)}"]);
        }
        catch (NotebookException refused)
        {
            BrokenPromiseException.Unless(refused.Message.Length > 0, "A refusal has words.");
            return new(false, [Refusals.FirstOrDefault(words => refused.Message.Contains(words, StringComparison.Ordinal), refused.Message)]);
        }
    }

    /// <summary>Token by token the same code, but for what literals say, their sign, and names.</summary>
    private static void SameForm(string before, string after)
    {
        SyntaxNode was = CSharpSyntaxTree.ParseText(before, Script).GetRoot();
        if (was.ContainsDiagnostics)
        {
            return;
        }

        SyntaxNode now = CSharpSyntaxTree.ParseText(after, Script).GetRoot();
        BrokenPromiseException.Unless(!now.ContainsDiagnostics, "Code that could be read still can.");
        BrokenPromiseException.Unless(Form(was).SequenceEqual(Form(now)), "A value is never read as code.");
    }

    // A table as a whole may have other rows: of it only numbers, brackets and commas count, which any code in it would break.
    private static IEnumerable<SyntaxKind> Form(SyntaxNode code) =>
        code.DescendantTokens().Where(token => !IsOfTable(token)).Select(token => token.Kind()).Where(kind => kind != SyntaxKind.MinusToken).Select(kind => kind switch
        {
            SyntaxKind.TrueKeyword => SyntaxKind.FalseKeyword,
            SyntaxKind.SingleLineRawStringLiteralToken or SyntaxKind.MultiLineRawStringLiteralToken => SyntaxKind.StringLiteralToken,
            _ => kind,
        });

    private static bool IsOfTable(SyntaxToken token) =>
        token.Parent!.AncestorsAndSelf().Any(node => node is CollectionExpressionSyntax)
        && (SyntaxKind)token.RawKind is SyntaxKind.NumericLiteralToken or SyntaxKind.CommaToken or SyntaxKind.OpenParenToken or SyntaxKind.CloseParenToken
            or SyntaxKind.OpenBracketToken or SyntaxKind.CloseBracketToken;

    private static string Value(string text, int at, string value) =>
        text.IndexOf('=', at) is >= 0 and var sign
            ? text[..(sign + 1)] + value + (text.IndexOf(AfterSetting, sign) is >= 0 and var end ? text[end..] : string.Empty)
            : text + value;
}
