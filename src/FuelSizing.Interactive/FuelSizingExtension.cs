using FuelSizing.Findings;
using FuelSizing.Selection;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using Microsoft.DotNet.Interactive.Formatting;

namespace FuelSizing.Interactive;

/// <summary>Teaches a C# notebook kernel to show this library's values.</summary>
/// <remarks>
/// A notebook that loads the package with <c>#r "nuget:FuelSizing.Interactive,…"</c> runs this by itself:
/// the package carries <c>interactive-extensions/dotnet/extension.dib</c>, which the kernel executes after restoring it.
/// A program that hosts a kernel calls <see cref="Register"/>.
/// </remarks>
public static class FuelSizingExtension
{
    /// <summary>Registers the formatters. Registering again changes nothing.</summary>
    public static void Register()
    {
        // A later registration for the same type and mime type replaces the earlier one.
        Formatter.Register<IDisplayBlock>((block, writer) => writer.Write(block.ToHtml()), HtmlFormatter.MimeType);
        Formatter.Register<IDisplayBlock>((block, writer) => writer.Write(block.ToPlainText()), PlainTextFormatter.MimeType);
        Formatter.SetPreferredMimeTypesFor(typeof(IDisplayBlock), HtmlFormatter.MimeType, PlainTextFormatter.MimeType);
        Show<OperatingResult>(SizingTables.Steps);
        Show<SweepResult>(SizingTables.Standings);
        Show<Verdict>(SizingCallouts.Verdict);
        Show<Ranking>(ranking => SelectionTables.Best(ranking));
        Show<Combination>(SelectionTables.Margins);
        Show<RunFindings>(FindingTables.Findings);
        Show<Calibration>(FindingTables.Calibrated);
        Show<MonteCarloResult>(UncertaintyTables.Chances);
        Show<TornadoResult>(UncertaintyTables.Tornado);
        Show<SobolResult>(UncertaintyTables.Sobol);
    }

    private static void Show<T>(Func<T, IDisplayBlock> block)
    {
        Formatter.Register<T>((value, writer) => writer.Write(block(value).ToHtml()), HtmlFormatter.MimeType);
        Formatter.Register<T>((value, writer) => writer.Write(block(value).ToPlainText()), PlainTextFormatter.MimeType);
        Formatter.SetPreferredMimeTypesFor(typeof(T), HtmlFormatter.MimeType, PlainTextFormatter.MimeType);
    }
}
