using System.Xml.Linq;
using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>
/// One printable page for the dynamometer: rail pressure, pulse and lambda to expect at each speed of a pull, the limits at which to stop, and
/// blanks for what was read.
/// </summary>
/// <remarks>It fits one page of A4 or US Letter. Print it from a browser, and take it to the car: the figures hold for the air that it names.</remarks>
/// <example>
/// <code>
/// LineSweepResult pull = system.Pull(HeldBoost.Of(Pressure.FromBars(0.6), Rpm(3000), Rpm(6800)), Rpm(3000), Rpm(6800));
/// string page = new PullSheet(pull, "Hill-climb car, first pull").ToDocument();
/// Console.WriteLine(page.Length);
/// </code>
/// </example>
public sealed class PullSheet : IDisplayBlock
{
    // What fits one page beside the rest.
    private const int MaximumRows = 16;

    private readonly LineSweepResult _pull;
    private readonly TextStyle _style;

    /// <summary>Makes a sheet.</summary>
    /// <param name="pull">The pull that is to be driven; of more than 16 speeds 16 are shown.</param>
    /// <param name="title">Car and pull; 1 to 160 characters.</param>
    /// <param name="date">The day it is dated; undated if not given.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <exception cref="ArgumentException">The title is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentNullException">There is no pull.</exception>
    public PullSheet(LineSweepResult pull, string title, DateOnly? date = null, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(pull);
        (_pull, _style) = (pull, style ?? Units.Current);
        (Title, Date) = (SheetPage.TitleOf(title), date);
    }

    /// <summary>Car and pull.</summary>
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
            Head(),
            PartText.Say(_pull.Verdict, _style),
            string.Empty,
            string.Join(" | ", Columns),
            .. Rows().Select(row => string.Join(" | ", row.Select(cell => cell.Length == 0 ? "____" : cell))),
            .. new[] { (Before, BeforePull()), (Stop, StopWhere()), (Cautioned, Warnings()) }.SelectMany(section =>
                (string[])[string.Empty, section.Item1, .. section.Item2.Select(row => $"  {string.Join(" | ", row)}")]),
        ]);

    /// <inheritdoc/>
    public override string ToString() => ToPlainText();

    private const string Before = "Before the pull";
    private const string Stop = "Stop the pull at once";
    private const string Cautioned = "Before you trust these numbers with an engine";

    private XElement[] Body() =>
    [
        .. SheetPage.Head(Title, Head(), _pull.Verdict, _style),
        SheetPage.Section("What is driven", Driven()),
        SheetPage.Section(Before, BeforePull()),
        SheetPage.Form("The pull: expected, and read", Columns, Rows()),
        SheetPage.Section(Stop, StopWhere()),
        SheetPage.Section(Cautioned, Warnings()),
    ];

    private string Head()
    {
        Conditions conditions = _pull.Results[0].Point.Conditions;
        return $"{SheetPage.Origin(Date)}; for {_style.Of(conditions.Atmosphere.Pressure)}, {_style.Of(conditions.Atmosphere.Temperature)}, supply {_style.Of(conditions.SupplyVoltage)}, fuel {_style.Of(conditions.FuelTemperature)}";
    }

    private IReadOnlyList<IReadOnlyList<string>> Driven() =>
    [
        .. SheetInputs.Of(_pull.System, _style).Where(line => line.Name is not ("Lines" or "Limits")).Select(line => (IReadOnlyList<string>)[line.Name, line.Text]),
        ["Boost", PartText.Say(_pull.Line, _style)],
        ["Controller", PartText.Say(_pull.System.Controller, _style)],
    ];

    // At rest the manifold is at ambient pressure, and any regulator sets its base; what the gauge reads then is the first thing to compare.
    private IReadOnlyList<IReadOnlyList<string>> BeforePull() =>
    [
        .. Urgent() is { } urgent ? (IReadOnlyList<string>[])[["Do not run it", urgent]] : [],
        ["Rail, gauge", $"pumps running, engine at rest: {_style.Of(_pull.System.Regulator.RailGauge(UnitsNet.Pressure.Zero))}, if the pumps hold it. Read: ________"],
        ["Air of the day", "ambient pressure: ________ temperature: ________ Colder or denser air needs more fuel: calculate again for it."],
        ["Leaks, hoses", "none seen with the rail at pressure; reference hose secured at both ends; every pump heard, its relay and fuse checked."],
        ["First", "a pull at low boost, with somebody who watches lambda and rail pressure and nothing else."],
    ];

    private static readonly string[] Columns =
    [
        "Engine speed", "Boost", "Rail, gauge", "Pulse", "Duty cycle", "Lambda", "Leanest allowed", "Boost read", "Rail read", "Pulse read", "Lambda read",
    ];

    private IReadOnlyList<IReadOnlyList<string>> Rows()
    {
        int count = Math.Min(MaximumRows, _pull.Results.Count);
        return
        [
            .. Enumerable.Range(0, count)
                .Select(row => _pull.Results[(int)Math.Round((double)row * (_pull.Results.Count - 1) / (count - 1))])
                .Select(result => (IReadOnlyList<string>)
                [
                    _style.Of(result.Point.Speed),
                    _style.Boost(result.Point.Boost),
                    _style.Of(result.Mixture.RailGauge),
                    SecondaryText.Both(result, CircuitText.Known(result.Mixture.CommandedPulse, _style.Of), one => SecondaryText.Pulse(one, _style)),
                    SecondaryText.Both(result, CircuitText.Known(result.Mixture.CommandedDutyCycle, _style.DutyCycle), one => SecondaryText.Duty(one, _style)),
                    MixtureText.Lambda(result.Mixture.MaximumLambda, _style),
                    result.System.Limits.Mixture?.LeanestAllowed(result.Point.Boost) is { } allowed ? MixtureText.Lambda(allowed, _style) : "–",
                    string.Empty,
                    string.Empty,
                    string.Empty,
                    string.Empty,
                ]),
        ];
    }

    private IReadOnlyList<IReadOnlyList<string>> StopWhere()
    {
        FuelSystem system = _pull.System;
        return
        [
            [
                "Lambda",
                system.Limits.Mixture is { } limits
                    ? $"leaner than allowed: {string.Join(", ", limits.Leanest.Select(limit => $"{_style.Number(limit.Lambda, "N2")} from {_style.Boost(limit.Boost)}"))}"
                    : "no leanest lambda was given: set one before the pull, and write it here: ________",
            ],
            ["Rail pressure", "falls as speed or boost rises, or stays below the expected by more than the gauge's error: a pump, its supply or the reference hose has failed."],
            ["Duty cycle", $"over {_style.Of(system.Limits.DutyCycle)}{(system.Limits.MarkOf(RuleOfThumb.DutyCycle) is null ? string.Empty : " (common practice, no source)")}"],
            ["Boost", $"over {_style.Boost(_pull.Results.Max(result => result.Point.Boost))}, the most that was calculated here"],
            ["Anything else", "knock, misfire, smell or sight of fuel, a pump that changes its note, a lambda sensor that does not move."],
        ];
    }

    // A sheet of a plan that does not hold may be printed to be looked at, not to be driven by.
    private string? Urgent() => _pull.Verdict.Outcome switch
    {
        Outcome.Fails => "the plan does not hold, see above. Change it and calculate again before anything is run on boost.",
        Outcome.CannotSay => "whether the plan holds cannot be said, see above. Supply what is missing before anything is run on boost.",
        _ => null,
    };

    private static IReadOnlyList<IReadOnlyList<string>> Warnings() => [.. Cautions.Lines.Select(line => (IReadOnlyList<string>)["!", line])];
}
