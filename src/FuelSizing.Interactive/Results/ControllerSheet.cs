using System.Xml.Linq;
using FuelSizing.Bench;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>
/// One printable page of what is typed into an engine's controller: flow, dead times, minimum pulse, corrections of short pulses, what is wrong at other pressures, a scaling, and blanks for what stood
/// there before.
/// </summary>
/// <remarks>It fits one page of A4 or US Letter. Long lists are cut, and the sheet says by how much: <see cref="ControllerFigures.ToCsv"/> holds all.</remarks>
/// <example>
/// <code>
/// ControllerFigures figures = ControllerFigures.Of(injector, Fuel.E10, Temperature.FromDegreesCelsius(30), [Pressure.FromKilopascals(300), Pressure.FromKilopascals(360)]);
/// string page = new ControllerSheet(figures, "Hill-climb car, injectors changed", figures.ScaledTo(VolumeFlow.FromMillilitersPerMinute(300))).ToDocument();
/// Console.WriteLine(page.Length);
/// </code>
/// </example>
public sealed class ControllerSheet : IDisplayBlock
{
    // What fits one page with the longest texts that the library writes.
    private const int MaximumPressures = 4;
    private const int MaximumVoltages = 6;
    private const int MaximumCorrections = 5;
    private const int MaximumPulses = 3;
    private const int MaximumLoads = 4;
    private const string Nothing = "–";

    private readonly ControllerFigures _figures;
    private readonly FlowScaling? _scaling;
    private readonly TextStyle _style;

    /// <summary>Makes a sheet.</summary>
    /// <param name="figures">The figures.</param>
    /// <param name="title">Car and controller; 1 to 160 characters.</param>
    /// <param name="scaling">What the figures are scaled to; none if not given.</param>
    /// <param name="date">The day it is dated; undated if not given.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <exception cref="ArgumentException">The title is empty, too long, or cannot be written as XML, or the scaling is of other figures.</exception>
    /// <exception cref="ArgumentNullException">There are no figures.</exception>
    public ControllerSheet(ControllerFigures figures, string title, FlowScaling? scaling = null, DateOnly? date = null, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(figures);
        if (scaling is not null && !ReferenceEquals(scaling.Figures, figures))
        {
            throw new ArgumentException($"{nameof(scaling)} is of other figures. Give one that these were scaled to.", nameof(scaling));
        }

        (_figures, _scaling, _style) = (figures, scaling, style ?? Units.Current);
        (Title, Date) = (SheetPage.TitleOf(title), date);
    }

    /// <summary>Car and controller.</summary>
    public string Title { get; }

    /// <summary>The day it is dated; none if undated.</summary>
    public DateOnly? Date { get; }

    /// <summary>The whole page, for a browser.</summary>
    /// <returns>A self-contained HTML document that runs no script and loads nothing.</returns>
    public string ToDocument() => SheetPage.Document(Title, Body());

    /// <inheritdoc/>
    public string ToHtml() => SheetPage.Block(Body());

    /// <inheritdoc/>
    public string ToPlainText() => string.Join(
        '\n',
        [
            Title,
            SheetPage.Origin(Date),
            $"{BlockStyle.For(CalloutKind.Caution).Word}: {First}",
            .. Parts().SelectMany(part => (string[])
            [
                string.Empty,
                part.Title,
                .. part.Columns is null ? [] : (string[])[string.Join(" | ", part.Columns)],
                .. part.Rows.Select(row => $"  {string.Join(" | ", row.Select(cell => cell.Length == 0 ? "____" : cell))}"),
            ]),
        ]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    // The last of the notes is the caution.
    private string First => VisibleText.Of(PartText.Say(_figures.Notes[^1], _style));

    private XElement[] Body()
    {
        var (word, sign, edge, ground) = BlockStyle.For(CalloutKind.Caution);
        return
        [
            new XElement("header", new XElement("h1", Title), new XElement("p", SheetPage.Origin(Date))),
            new XElement(
                "p",
                new XAttribute("class", "verdict"),
                new XAttribute("style", $"border-color:{edge};background:{ground}"),
                new XElement("strong", new XAttribute("style", $"color:{edge}"), $"{sign} {word}"),
                $" {First}"),

            .. Laid([.. Parts()]),
        ];
    }

    // The two narrow tables share the width of a page; on a phone one stands below the other.
    private static IEnumerable<XElement> Laid(Part[] parts)
    {
        XElement[] narrow = [.. parts.Where(part => part.IsNarrow).Select(Of)];
        foreach (Part part in parts)
        {
            if (!part.IsNarrow)
            {
                yield return Of(part);
            }
            else if (narrow.Length > 0)
            {
                yield return new("div", new XAttribute("style", "display:flex;flex-wrap:wrap;column-gap:24px"), narrow.Select(table =>
                {
                    table.SetAttributeValue("style", "overflow-x:auto;flex:1 1 300px;min-width:0");
                    return table;
                }));
                narrow = [];
            }
        }
    }

    private static XElement Of(Part part) => part.Columns is null ? SheetPage.Section(part.Title, part.Rows) : Scrolled(part.Title, part.Columns, part.Rows);

    // On a phone a wide table scrolls in its own box. Cells to read lie closer than those to write in.
    private static XElement Scrolled(string title, IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        XElement form = SheetPage.Form(title, columns, rows);
        if (!rows.Any(row => row.Contains(string.Empty)))
        {
            foreach (XElement cell in form.Descendants("td"))
            {
                cell.SetAttributeValue("style", "padding:1px 6px 1px 0");
            }
        }

        return new("div", new XAttribute("style", "overflow-x:auto"), form);
    }

    private IEnumerable<Part> Parts()
    {
        yield return new("What the figures are for", null, For());
        yield return new("Flow to type", ["Differential", "mL/min", "95 %", "g/s", "lb/h", "Old figure", "Typed"], Flows());
        yield return new("Dead time and minimum pulse to type, ms, with the interval of 95 %", TimeColumns(), Times());
        if (Weighed() is [{ } at, ..])
        {
            yield return new(
                $"Short pulses, ms, at {_style.Of(at.Voltage)} and {_style.Of(at.Differential)}",
                ["Calculated", "of it open", "Command", "Add", "95 %", "or factor of open"],
                Corrections(),
                IsNarrow: true);
        }

        yield return new($"Fuel delivered over fuel wanted at {_style.Of(_figures.Voltage)}, no pressure correction", ErrorColumns(), Errors(), IsNarrow: true);
        if (_scaling is not null)
        {
            yield return new("For a controller that takes no flow as large", null, Scaled(_scaling));
        }

        yield return new("What they rest on", null, Bases());
        yield return new(
            "Before you trust these numbers with an engine",
            null,
            [
                ["!", string.Join(" ", _figures.Notes.SkipLast(1).Select(note => VisibleText.Of(PartText.Say(note, _style))))],
                .. Cautions.Lines.Select(line => (IReadOnlyList<string>)["!", line]),
            ]);
    }

    private IReadOnlyList<IReadOnlyList<string>> For() =>
    [
        ["Injector", $"{VisibleText.Of(_figures.Injector.Name)}, on {VisibleText.Of(_figures.Fuel.Name)} at {_style.Of(_figures.FuelTemperature)}, {_style.Of(_figures.FuelDensity)}"],
        ["Reference", $"{_style.Of(_figures.Reference)} across the injector: {PartText.Say(_figures.ReferenceReason, _style)}"],
    ];

    private bool IsReference(Pressure differential) => differential.Equals(_figures.Reference, Pressure.FromPascals(1));

    private IReadOnlyList<IReadOnlyList<string>> Flows() => Cut(
        _figures.Flows.OrderByDescending(flow => IsReference(flow.Differential)),
        MaximumPressures,
        flow => (IReadOnlyList<string>)
        [
            $"{_style.Of(flow.Differential)}{(IsReference(flow.Differential) ? ", reference" : string.Empty)}",
            Number(flow.Flow?.MillilitersPerMinute, "N1"),
            Span(flow.MinimumFlow?.MillilitersPerMinute, flow.MaximumFlow?.MillilitersPerMinute, "N1"),
            Number(flow.MassFlow?.GramsPerSecond, "N3"),
            Number(flow.MassFlow?.PoundsPerHour, "N2"),
            string.Empty,
            string.Empty,
        ]);

    // Of those where some dead time is known; the reference in any case.
    private Pressure[] Pressures() =>
    [
        .. _figures.DeadTimes.GroupBy(time => time.Differential.Pascals)
            .Where(row => row.Any(time => time.Time is not null) || IsReference(row.First().Differential))
            .OrderByDescending(row => IsReference(row.First().Differential))
            .ThenByDescending(row => row.Any(time => time.Minimum is not null))
            .Take(MaximumPressures)
            .OrderBy(row => row.Key)
            .Select(row => row.First().Differential),
    ];

    private string[] TimeColumns() => ["Voltage", .. Pressures().Select(_style.Of), $"Minimum pulse at {_style.Of(_figures.Reference)}"];

    private IReadOnlyList<IReadOnlyList<string>> Times()
    {
        Pressure[] pressures = Pressures();
        IGrouping<double, TimeFigure>[] rows =
        [
            .. _figures.DeadTimes.GroupBy(time => time.Voltage.Volts)
                .OrderByDescending(row => row.Any(time => time.Minimum is not null))
                .ThenByDescending(row => row.Any(time => time.Time is not null)),
        ];
        return Cut(
            [.. rows.Take(MaximumVoltages).OrderBy(row => row.Key), .. rows.Skip(MaximumVoltages)],
            MaximumVoltages,
            row => (IReadOnlyList<string>)
            [
                _style.Of(row.First().Voltage),
                .. pressures.Select(pressure => Time(row.Single(time => time.Differential.Pascals.Equals(pressure.Pascals)))),
                Number(
                    _figures.MinimumPulses.First(time => time.Voltage.Volts.Equals(row.Key) && IsReference(time.Differential)).Time?.Milliseconds,
                    "0.000"),
            ]);
    }

    private string Time(TimeFigure time) => time is { Minimum: { } low, Maximum: { } high }
        ? $"{Number(time.Time?.Milliseconds, "0.000")} ({Span(low.Milliseconds, high.Milliseconds, "0.000")})"
        : Number(time.Time?.Milliseconds, "0.000");

    // Those with the engine running, at the reference if that was weighed.
    private ShortPulseFigure[] Weighed()
    {
        ShortPulseFigure[] running = [.. _figures.ShortPulses.Where(figure => figure.Voltage.Volts.Equals(_figures.Voltage.Volts))];
        return running.Length == 0
            ? running
            : [.. running.GroupBy(figure => figure.Differential.Pascals).MinBy(group => Math.Abs(group.Key - _figures.Reference.Pascals))!];
    }

    private IReadOnlyList<IReadOnlyList<string>> Corrections() => Cut(
        Weighed(),
        MaximumCorrections,
        figure => (IReadOnlyList<string>)
        [
            Number(figure.Calculated.Milliseconds, "0.000"),
            Number(figure.OpenTime.Milliseconds, "0.000"),
            Number(figure.Commanded.Milliseconds, "0.000"),
            Number(figure.Added?.Milliseconds, "+0.000;−0.000;0.000"),
            Span(figure.Minimum?.Milliseconds, figure.Maximum?.Milliseconds, "+0.000;−0.000;0.000"),
            Number(figure.Factor?.DecimalFractions, "0.000"),
        ]);

    private Duration[] Pulses() => [.. _figures.FuelErrors.Select(error => error.Pulse).DistinctBy(pulse => pulse.Seconds).Take(MaximumPulses)];

    private string[] ErrorColumns() => ["Differential", .. Pulses().Select(pulse => _style.Of(pulse)), "Corrected"];

    private IReadOnlyList<IReadOnlyList<string>> Errors() => Cut(
        _figures.FuelErrors.GroupBy(error => error.Differential.Pascals),
        MaximumPressures,
        row => (IReadOnlyList<string>)
        [
            _style.Of(row.First().Differential),
            .. Pulses().Select(pulse => row.Single(error => error.Pulse.Seconds.Equals(pulse.Seconds))).Select(error => error is { Minimum: { } low, Maximum: { } high }
                ? $"{Percent(low)} to {Percent(high)}"
                : Percent(error.Error)),
            Percent(row.Last().CorrectedError),
        ]);

    private IReadOnlyList<IReadOnlyList<string>> Scaled(FlowScaling scaling) =>
    [
        [
            "Factor",
            $"{PartText.Say(scaling, _style)}{(scaling.MassFlow is { } mass && scaling.IsNeeded ? $"; by mass {_style.Number(mass.GramsPerSecond, "N3")} g/s, {_style.Number(mass.PoundsPerHour, "N2")} lb/h" : string.Empty)}",
        ],
        .. scaling.Caution is { } caution ? (IReadOnlyList<string>[])[["!", PartText.Say(caution, _style)]] : [],
        .. scaling.ReferenceInstead is { } instead
            ? (IReadOnlyList<string>[])
            [[
                "Instead",
                $"a controller that corrects for rail pressure and takes the pressure of its flow: type {_style.Number(scaling.Flow!.Value.MillilitersPerMinute, "N1")} mL/min at {_style.Number(_style.Units.Pressure.ValueOf(instead), "N1")} {_style.Units.Pressure.Unit} and scale nothing: no figure is false then.",
            ]]
            : [],
        .. scaling.Lookups.Count > 0
            ? (IReadOnlyList<string>[])
            [[
                "Loads",
                $"{string.Join("; ", scaling.Lookups.TakeLast(MaximumLoads).Select(lookup => PartText.Say(lookup, _style)))}{(scaling.Target is null ? string.Empty : ", unless the load axis of the target is scaled too")}.",
            ]]
            : [],
    ];

    // Every reason once, with what it belongs to.
    private IReadOnlyList<IReadOnlyList<string>> Bases() =>
    [
        ["Flow", string.Join("; ", _figures.Flows.GroupBy(flow => PartText.Say(flow.Basis, _style)).Select(group => $"at {string.Join(", ", group.Select(flow => _style.Of(flow.Differential)))}, {group.Key}"))],
        ["Dead time", Bases(_figures.DeadTimes)],
        ["Minimum pulse", Bases(_figures.MinimumPulses.Where(time => IsReference(time.Differential)))],
        .. _figures.FuelErrors.Where(error => error.Error is null && !Said(error.Basis)).GroupBy(error => PartText.Say(error.Basis, _style)).Select(group => (IReadOnlyList<string>)
            ["Fuel", $"cannot be said at {string.Join(", ", group.Select(error => _style.Of(error.Differential)).Distinct())}: {group.Key}"]).Take(2),
    ];

    private bool Said(Statement basis) => _figures.Flows.Any(flow => flow.Basis.Equals(basis)) || _figures.DeadTimes.Any(time => time.Basis.Equals(basis));

    private string Bases(IEnumerable<TimeFigure> times) =>
        string.Join("; ", times.GroupBy(time => PartText.Say(time.Basis, _style)).Select(group => $"{Places(group)}, {group.Key}"));

    private string Places(IEnumerable<TimeFigure> times)
    {
        TimeFigure[] all = [.. times];
        (string from, string to) = (_style.Of(all.MinBy(time => time.Voltage.Volts)!.Voltage), _style.Of(all.MaxBy(time => time.Voltage.Volts)!.Voltage));
        (string low, string high) = (_style.Of(all.MinBy(time => time.Differential.Pascals)!.Differential), _style.Of(all.MaxBy(time => time.Differential.Pascals)!.Differential));
        return $"{_style.Count(all.Length)} of them, {Between(from, to)}, {Between(low, high)}";
    }

    private static string Between(string low, string high) => low == high ? low : $"{low} to {high}";

    private string Number(double? number, string format) => number is { } known ? _style.Number(known, format) : Nothing;

    private string Span(double? low, double? high, string format) =>
        (low, high) is ({ } from, { } to) ? $"{_style.Number(from, format)} to {_style.Number(to, format)}" : Nothing;

    private string Percent(Ratio? share) => share is { } known ? $"{_style.Number(known.Percent, "+0.0;−0.0;0.0")} %" : Nothing;

    private static IReadOnlyList<IReadOnlyList<string>> Cut<T>(IEnumerable<T> given, int maximum, Func<T, IReadOnlyList<string>> row)
    {
        T[] all = [.. given];
        if (all.Length <= maximum)
        {
            return [.. all.Select(row)];
        }

        IReadOnlyList<string>[] rows = [.. all.Take(maximum).Select(row)];
        return [.. rows, [$"and {all.Length - maximum} more", .. Enumerable.Repeat(Nothing, rows[0].Count - 1)]];
    }

    private sealed record Part(string Title, IReadOnlyList<string>? Columns, IReadOnlyList<IReadOnlyList<string>> Rows, bool IsNarrow = false);
}
