using FuelSizing.Bench;
using FuelSizing.Files;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How measurements at a bench, and what they say of a part, are shown.</summary>
internal static class BenchShown
{
    public const string Caution = "Test fluid sprays and its vapour burns: no ignition sources, ventilation, goggles, an extinguisher within reach. Local codes take precedence.";

    private const string Tenths = "+0.0;−0.0;0.0";

    public static void Register()
    {
        Shown.By<PulseReading>((reading, style) => new("Weighing", Of(reading, style)));
        Shown.By<PulseTest>((test, style) => new(
            $"Bench: {test.Name}",
            [
                new("Across the injector", "", style.Of(test.Differential)),
                new("Voltage", "", style.Of(test.Voltage)),
                new("Density of the test liquid", "ρ_r", style.Of(test.Fluid.Density), test.Fluid.Name),
                new("A weighing", "", style.Of(test.Scale), "standard deviation"),
                new("What all have in common", "", style.Of(test.Calibration), "standard deviation"),
                new("Weighings", "", style.Count(test.Readings.Count)),
            ],
            Caution));
        Shown.By<PulseFit>((fit, style) => new(
            $"Line of {fit.Test.Name} at {style.Of(fit.Test.Differential)} and {style.Of(fit.Test.Voltage)}",
            [
                Fact.Words("Found", fit.In(style)),
                new("Through", "", style.Count(fit.OnLine), "weighings, the longest pulses"),
                new("Scatter of a weighing", "", style.Of(fit.Scatter), "standard deviation"),
                Fact.Words("Correlation of slope and offset", style.Number(fit.Correlation.DecimalFractions)),
                .. fit.Widths.Select(width => new Fact(
                    $"In a pulse of {style.Of(width.Pulse)}", "", width.Deviation is { } deviation ? style.Change(deviation) : style.Of(width.Each), width.Deviation is null ? "the line delivers nothing" : "of the line")),
                .. fit.IsStraight == false ? (Fact[])[Fact.Words("Form", "weighings of one width agree better among each other than with a line")] : [],
                .. fit.Outliers.Select(place => Fact.Words("Far off", fit.Test.Readings[place].In(style))),
            ],
            Caution));
        Shown.By<StaticReading>((reading, style) => new("Timed collection", Of(reading, style)));
        Shown.By<StaticTest>((test, style) => new(
            $"Bench: {test.Name} held open",
            [
                new("Across the injector", "", style.Of(test.Differential)),
                new("Density of the test liquid", "ρ_r", style.Of(test.Fluid.Density), test.Fluid.Name),
                test.Scale is { } scale
                    ? new("A weighing", "", style.Of(scale), "standard deviation")
                    : Fact.Words("A reading of the cylinder", $"{Millilitres(test.Graduation!.Value, style)}, standard deviation"),
                new("A time", "", style.Time(test.Clock), "standard deviation"),
                new("What all have in common", "", style.Of(test.Calibration), "standard deviation"),
                .. test.Readings.Select(reading => Fact.Words("Collected", reading.In(style))),
            ],
            $"{Caution} A coil held open grows hot."));
        Shown.By<StaticFlow>((flow, style) => new(
            $"Static flow of {flow.Test.Name} at {style.Of(flow.Test.Differential)}",
            [
                Fact.Words("Found", flow.In(style)),
                .. flow.StartAndStop is { } hand ? (Fact[])[new("Starting and stopping add", "", style.Time(hand), "to each collection")] : [],
                .. flow.Outliers.Select(place => Fact.Words("Far off", flow.Test.Readings[place].In(style))),
            ],
            Caution));
        Shown.By<MatchedSet>((set, style) => new(
            "Injectors and their cylinders",
            [
                .. set.Order.Select((place, cylinder) => new Fact(
                    $"Cylinder {style.Count(cylinder + 1)}", "", $"{style.Number(set.Lambdas[cylinder].Richest.Percent, Tenths)} to {style.Number(set.Lambdas[cylinder].Leanest.Percent, Tenths)} %", $"of the engine's lambda, with {set.Fits[place].Test.Name}")),
                Fact.Words("From the least delivery to the greatest", $"{style.Number(set.Spread.Percent, "N1")} %"),
                .. set.Pulses.Select(pulse => new Fact("Compared at a pulse of", "", style.Of(pulse))),
            ],
            "A leaner cylinder is the one that fails: what a set does not match, the engine's lambda does not show."));
        Shown.By<PulsePlan>((plan, style) => new(
            "A test planned",
            [
                Fact.Words("To do", plan.In(style)),
                Fact.Words("Pulse widths", string.Join(", ", plan.Pulses.Select(style.Of))),
                new("Pulses a weighing", "", style.Count(plan.Injections)),
                new("Each width", "", style.Count(plan.Repeats), "times"),
                Fact.Words("Slope within", $"{style.Number(plan.SlopeWithin.Percent, "N2")} %: half an interval of 95 %, without what all readings have in common"),
            ],
            Caution));
        Shown.By<BenchTests>((tests, style) => new(
            "Tests at the bench",
            [
                .. tests.PulseTests.Select(test => Fact.Words("Weighed in pulses", test.In(style))),
                .. tests.StaticTests.Select(test => Fact.Words("Held open", test.In(style))),
            ],
            Caution));
        Shown.By<BenchColumn>((column, style) => new(
            $"Column {column.Heading}",
            [
                Fact.Words("What it is", column.Meaning),
                Fact.Words("Given", $"{(column.IsReading ? "with each reading" : "once a test")}{(column.IsOptional ? ", if it applies" : string.Empty)}"),
            ]));
    }

    private static Fact[] Of(StaticReading reading, TextStyle style) =>
    [
        new("Time", "", style.Time(reading.Time)),
        reading.Weighed is { } weighed ? new("Collected", "", style.Of(weighed)) : Fact.Words("Collected", Millilitres(reading.Filled!.Value, style)),
    ];

    private static string Millilitres(Volume volume, TextStyle style) => $"{style.Number(volume.Milliliters, "N1")} mL";


    private static Fact[] Of(PulseReading reading, TextStyle style) =>
    [
        new("Pulse", "", style.Of(reading.Pulse)),
        new("Injections", "", style.Count(reading.Injections)),
        new("Collected", "", style.Of(reading.Collected)),
    ];
}
