using FuelSizing.Bench;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>How measurements at a bench, and what they say of a part, are shown.</summary>
internal static class BenchShown
{
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
    }

    private const string Caution = "Test fluid sprays and its vapour burns: no ignition sources, ventilation, goggles, an extinguisher within reach. Local codes take precedence.";

    private static Fact[] Of(PulseReading reading, TextStyle style) =>
    [
        new("Pulse", "", style.Of(reading.Pulse)),
        new("Injections", "", style.Count(reading.Injections)),
        new("Collected", "", style.Of(reading.Collected)),
    ];
}
