using System.Xml.Linq;
using FuelSizing.Files;

namespace FuelSizing.Interactive;

/// <summary>
/// One printable page for a test at the bench: what to set up and how accurate it is, a blank for each reading, and the cautions. Its columns are those of the file that <see cref="BenchTests"/> reads, in
/// the same order, to be typed in from the page.
/// </summary>
/// <remarks>It fits one page of A4 or US Letter. Print it from a browser.</remarks>
/// <example>
/// <code>
/// string page = new BenchSheet(BenchTestKind.StaticTest, "Injector C, held open").ToDocument();
/// Console.WriteLine(page.Length);
/// </code>
/// </example>
public sealed class BenchSheet : IDisplayBlock
{
    // What fits one page beside the rest.
    private const int Rows = 24;

    private readonly IReadOnlyList<BenchColumn> _columns;

    /// <summary>Makes a sheet.</summary>
    /// <param name="kind">The kind of test.</param>
    /// <param name="title">What is tested; 1 to 160 characters.</param>
    /// <exception cref="ArgumentException">The title is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public BenchSheet(BenchTestKind kind, string title)
    {
        _columns = BenchColumn.Of(kind);
        (Kind, Title) = (kind, SheetPage.TitleOf(title));
    }

    /// <summary>The kind of test.</summary>
    public BenchTestKind Kind { get; }

    /// <summary>What is tested.</summary>
    public string Title { get; }

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
            Head,
            .. Sections().SelectMany(section => (string[])[string.Empty, section.Title, .. section.Lines.Select(row => $"  {string.Join(" | ", row)}")]),
            string.Empty,
            string.Join(" | ", Readings()),
            .. Enumerable.Repeat(string.Join(" | ", Readings().Select(_ => "____")), Rows),
        ]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private const string Blank = "________________";
    private const string Head = "Blank for a test at the bench, FuelSizing. Date: ________ By: ________________";

    private XElement[] Body() =>
    [
        new XElement("header", new XElement("h1", Title), new XElement("p", Head)),
        .. Sections().Select(section => SheetPage.Section(section.Title, section.Lines)),
        SheetPage.Form("Readings", Readings(), [.. Enumerable.Range(0, Rows).Select(_ => (IReadOnlyList<string>)[.. Readings().Select(_ => string.Empty)])]),
    ];

    private (string Title, IReadOnlyList<IReadOnlyList<string>> Lines)[] Sections() =>
    [
        ("Before you begin", [.. Dangers().Select(line => (IReadOnlyList<string>)["!", line])]),
        ("How", [.. Steps().Select((step, place) => (IReadOnlyList<string>)[$"{place + 1}", step])]),
        ("Set up", [.. _columns.Where(column => !column.IsReading).Select(column => (IReadOnlyList<string>)[Heading(column), Blank, column.Meaning.Replace('_', ' ')])]),
    ];

    private string[] Readings() => [.. _columns.Where(column => column.IsReading).Select(Heading)];

    private static string Heading(BenchColumn column) =>
        $"{column.Name.Replace('_', ' ')}{(column.Unit is { } unit ? $" [{unit}]" : string.Empty)}{(column.IsOptional ? ", if it applies" : string.Empty)}";

    private string[] Dangers() => Kind switch
    {
        BenchTestKind.PulseTest => [BenchShown.Caution],
        BenchTestKind.StaticTest => [BenchShown.Caution, "A coil held open grows hot: a few tens of seconds, then let it cool."],
        BenchTestKind.DeadheadTest =>
        [
            BenchShown.ShutCaution,
            "Two or three seconds a reading; let the pump cool before the next. Hose, clamps and gauge rated for twice the pressure expected (common practice, no source).",
            "A pump that displaces may have no pressure at which it stops: open the valve at what the hose is rated for, and note that the gauge ended there.",
        ],
        BenchTestKind.VoltageDropTest => [BenchShown.WiringCaution],
        BenchTestKind.RegulatorTest =>
        [
            BenchShown.PumpCaution,
            "A rising-rate unit multiplies: a gain of 6 adds 600 kPa for each bar. Raise in steps, with everything rated for the highest pressure that the unit may set, and stand aside.",
        ],
        BenchTestKind.ConsumptionTest => [BenchShown.EngineCaution],
        _ => [BenchShown.PumpCaution],
    };

    private string[] Steps() => Kind switch
    {
        BenchTestKind.StaticTest =>
        [
            "Hold the differential pressure; note it with the injector open. Note the liquid's temperature, and take its density at that temperature.",
            "Collect for two times, one at least twice as long as the other, each twice or more.",
            "Weigh the vessel empty and full on the same scale, or read the measuring cylinder at eye level.",
        ],
        BenchTestKind.PumpTest =>
        [
            "Set the pressure with a valve in the return, the voltage at the pump's terminals. Three pressures or more at each voltage, from none to over the highest that the rail needs.",
            "Each set point twice or more, each time set anew, from above and from below. Note what was set, not what the gauge wavers about.",
            "Current with all readings or with none: without it the pump's wiring cannot be calculated.",
        ],
        BenchTestKind.DeadheadTest =>
        [
            "Shut the outlet, read the gauge, open the outlet.",
            "Three readings or more at each voltage; two voltages show whether a relief valve sets the pressure.",
        ],
        BenchTestKind.VoltageDropTest =>
        [
            "A fuse in each test lead, near the supply. Measure across one part at a time: feed wire, ground return, relay, joint.",
            "Six readings or more at three currents, the highest at least twice the lowest, and one at no current, which shows the meter's offset.",
        ],
        BenchTestKind.RegulatorTest =>
        [
            "Apply pressure to the reference with a hand pump, engine off, fuel pump running. Let the pump deliver more than flows out: a regulator that is shut shows the pump.",
            "From none upwards and down again, four applied pressures or more, three of them over 0; some of them below the boost at which the gain sets in.",
            "The returned flow with all readings or with none.",
        ],
        BenchTestKind.ConsumptionTest =>
        [
            "Weigh tank and fuel, run at one speed and power, weigh again: three runs or more, all within 10 % of one power (common practice, no source).",
            "Power is that at the crank. Watch lambda and exhaust temperature; stop at the first knock.",
        ],
        _ =>
        [
            "Hold the differential pressure, and the voltage at the injector's driver while it pulses. Note the liquid's temperature, and take its density at that temperature.",
            "Weigh at eight pulse widths or more, half of them long (3 to 10 ms), the rest from where the engine idles downwards; each twice or more.",
            "As many pulses a weighing that the scale's error is about a thousandth of what is collected. One sheet for each voltage and pressure.",
        ],
    };
}
