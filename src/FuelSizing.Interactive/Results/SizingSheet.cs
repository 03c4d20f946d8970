using System.Globalization;
using System.Xml.Linq;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>One printable page that says what was sized: verdict, inputs, margins, changes, cautions, version.</summary>
/// <remarks>
/// It fits one page of A4 or US Letter: print it from a browser, to paper or to a PDF file. Long lists are cut, and the sheet
/// says by how much. It is a record of a calculation, not an approval of a car.
/// </remarks>
/// <example>
/// <code>
/// SweepResult sweep = system.Sweep([Rpm(3000), Rpm(6800)], [Pressure.Zero, Pressure.FromBars(0.6)]);
/// string page = new SizingSheet(sweep, "Hill-climb car, 0.6 bar on petrol").ToDocument();
/// Console.WriteLine(page.Length);
/// </code>
/// </example>
public sealed class SizingSheet : IDisplayBlock
{
    // What fits one page with the longest texts that the library writes.
    private const int MaximumRemedies = 8;
    private const int MaximumNotes = 4;

    private readonly SweepResult _sweep;
    private readonly TextStyle _style;

    /// <summary>Makes a sheet.</summary>
    /// <param name="sweep">The sweep that it records.</param>
    /// <param name="title">What was sized; 1 to 160 characters.</param>
    /// <param name="date">The day it is dated; undated if not given.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <exception cref="ArgumentException">The title is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentNullException">There is no sweep.</exception>
    public SizingSheet(SweepResult sweep, string title, DateOnly? date = null, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        (_sweep, _style) = (sweep, style ?? Units.Current);
        (Title, Date) = (SheetPage.TitleOf(title), date);
    }

    /// <summary>What was sized.</summary>
    public string Title { get; }

    /// <summary>The day it is dated; none if undated.</summary>
    public DateOnly? Date { get; }

    /// <summary>The library's version, which the sheet names.</summary>
    public static string Version => SheetPage.Version;

    /// <summary>The whole page, for a browser.</summary>
    /// <returns>A self-contained HTML document that runs no script and loads nothing.</returns>
    public string ToDocument() => SheetPage.Document(Title, Body());

    /// <inheritdoc/>
    public string ToHtml() => SheetPage.Block(Body());

    /// <inheritdoc/>
    public string ToPlainText() => string.Join('\n', [Head(), .. Sections().SelectMany(Text)]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private static IEnumerable<string> Text((string Title, IReadOnlyList<IReadOnlyList<string>> Rows) section) =>
        [string.Empty, section.Title, .. section.Rows.Select(row => $"  {string.Join(" | ", row.Where(cell => cell.Length > 0))}")];

    private static IReadOnlyList<string>[] Cut(IEnumerable<IReadOnlyList<string>> rows, int maximum, string rest)
    {
        IReadOnlyList<string>[] all = [.. rows];
        return all.Length <= maximum
            ? all
            : [.. all.Take(maximum), ["", string.Create(CultureInfo.InvariantCulture, $"and {all.Length - maximum} more {rest}")]];
    }

    private XElement[] Body() =>
        [.. SheetPage.Head(Title, Head(), _sweep.Verdict, _style), .. Sections().Skip(1).Select(section => SheetPage.Section(section.Title, section.Rows))];

    private string Head() =>
        $"{SheetPage.Origin(Date)}; {_style.Boost(_sweep.Boosts[0])} to {_style.Boost(_sweep.Boosts[^1])}, {_style.Of(_sweep.Speeds[0])} to {_style.Of(_sweep.Speeds[^1])}";

    private IEnumerable<(string Title, IReadOnlyList<IReadOnlyList<string>> Rows)> Sections()
    {
        yield return ("Verdict", [[$"{BlockStyle.For(SizingCallouts.Verdict(_sweep.Verdict, _style).Kind).Word}: {PartText.Say(_sweep.Verdict.Headline, _style)}"]]);
        yield return ("Inputs", SheetInputs.Of(_sweep, _style));
        yield return ("At peak fuel demand", SheetInputs.Busiest(_sweep, _style));
        yield return ("Margins, and where they are tightest", [.. _sweep.Standings.Select(standing => (IReadOnlyList<string>)
        [
            standing.Part.Name,
            $"{SizingTables.Word(standing.Outcome)}{(standing.Tightest.Margin.Reserve is { } reserve ? $" {_style.Change(reserve)}" : string.Empty)}",
            SizingTables.Explanation(standing.Tightest.Margin, _style),
            PartText.Say(standing.Tightest.Point, _style),
        ])]);
        if (_sweep.System.NotJudged.Count > 0)
        {
            yield return ("Not judged", [.. _sweep.System.NotJudged.Select(open => (IReadOnlyList<string>)
            [
                open.Part.Name,
                open.Waiver is { } waiver ? $"waived: {VisibleText.Of(waiver)}" : open.Reason.In(_style),
            ])]);
        }

        if (_sweep.Remedies.Count > 0)
        {
            yield return ("Required changes", Cut(
                _sweep.Remedies.Select(remedy => (IReadOnlyList<string>)[remedy.Part.Name, PartText.Say(remedy.Text, _style)]), MaximumRemedies, "changes"));
        }

        if (_sweep.Notes.Count > 0)
        {
            yield return ("Notes", Cut(_sweep.Notes.Select(note => (IReadOnlyList<string>)["note", PartText.Say(note, _style)]), MaximumNotes, "notes"));
        }

        yield return ("Before you trust these numbers with an engine", [.. Cautions.Lines.Select(line => (IReadOnlyList<string>)["!", line])]);
    }
}
