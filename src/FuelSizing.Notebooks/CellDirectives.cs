using System.Text.RegularExpressions;

namespace FuelSizing.Notebooks;

/// <summary>Lines by which a cell would leave C# and what this program carries: another kernel, a package, an assembly, a file.</summary>
/// <remarks>
/// Looked for line by line, as the kernel does: it takes such a line for a command even inside a comment or a text. Each is refused
/// before any cell runs, so that the program itself never asks a feed, starts a process or reads code from elsewhere.
/// </remarks>
internal static partial class CellDirectives
{
    /// <summary>The same code, the lines blanked that only say what is so anyway: that it is C#.</summary>
    /// <exception cref="NotebookException">A line reaches outside; the message names its cell and place.</exception>
    public static string Satisfy(int cell, string code) => Directive().Replace(code, match =>
        SaysCSharp().IsMatch(match.Value)
            ? ""
            : throw new NotebookException($"cell {cell}, line {Line(code, match.Index)}: {Reason(match)}"));

    /// <summary>Counted as an editor counts, from 1.</summary>
    public static int Line(string code, int index) => code.AsSpan(0, index).Count('\n') + 1;

    private static string Reason(Match directive)
    {
        string text = directive.Value.Trim();
        string shown = text.Length > 80 ? $"{text[..80]}\u2026" : text;
        return directive.Groups["word"].Value switch
        {
            "!" => $"'{shown}' is for another kernel, and only C# and Markdown run here. Rewrite the cell in C#, or run the notebook in Jupyter.",
            "r" => $"'{shown}' loads what this program does not carry: only FuelSizing and FuelSizing.Interactive {BundledPackages.Version} (with UnitsNet and MathNet.Numerics). Remove the line, or run the notebook in Jupyter.",
            "load" => $"'{shown}' reads code from another file, and only the notebook's own cells run here. Copy that code into a cell.",
            _ => $"'{shown}' asks for packages from elsewhere, and this program restores none. Remove the line, or run the notebook in Jupyter.",
        };
    }

    // What may stand before the sign is what the compiler takes for a space.
    [GeneratedRegex("""^[\s\uFEFF\u001A-[\n]]*\#[\s\uFEFF\u001A-[\n]]*(?<word>!|:|r\b|i\b|load\b)[^\n]*""", RegexOptions.Multiline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Directive();

    [GeneratedRegex("""^\s*#!(csharp|c\#|cs|C\#)\s*$""", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex SaysCSharp();
}
