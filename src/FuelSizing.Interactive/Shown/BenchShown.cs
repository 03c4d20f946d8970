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
                .. tests.PumpTests.Select(test => Fact.Words("Pump", test.In(style))),
                .. tests.DeadheadTests.Select(test => Fact.Words("Outlet shut", test.In(style))),
                .. tests.VoltageDropTests.Select(test => Fact.Words("Wiring", test.In(style))),
                .. tests.RegulatorTests.Select(test => Fact.Words("Regulator", test.In(style))),
                .. tests.ConsumptionTests.Select(test => Fact.Words("Engine", test.In(style))),
            ],
            Caution));
        Shown.By<BenchColumn>((column, style) => new(
            $"Column {column.Heading}",
            [
                Fact.Words("What it is", column.Meaning),
                Fact.Words("Given", $"{(column.IsReading ? "with each reading" : "once a test")}{(column.IsOptional ? ", if it applies" : string.Empty)}"),
            ]));
        RegisterParts();
    }

    private static void RegisterParts()
    {
        Shown.By<GaugeAccuracy>((gauge, style) => new("Accuracy of a gauge", Of(gauge, style)));
        Shown.By<PumpFlowReading>((reading, style) => new("Filling of a vessel", [Fact.Words("Read", reading.In(style))]));
        Shown.By<PumpFlowTest>((test, style) => new(
            $"Bench: {test.Name}",
            [
                .. test.Fluid is { } fluid ? (Fact[])[new("Density of the test liquid", "ρ_r", style.Of(fluid.Density), fluid.Name), new("A weighing", "", style.Of(test.Scale!.Value), "standard deviation")] : [],
                new("A timing", "", style.Time(test.Clock), "standard deviation"),
                Fact.Words("Gauge", test.Gauge.In(style)),
                new("What all have in common", "", style.DutyCycle(test.Calibration), "standard deviation"),
                new("Readings", "", style.Count(test.Readings.Count)),
            ],
            PumpCaution));
        Shown.By<PumpFlowPoint>((point, style) => new("Set point of a pump", [.. Of(point, style)]));
        Shown.By<PumpFlowFit>((fit, style) => new(
            $"Flow of {fit.Test.Name}",
            [
                .. fit.Points.SelectMany(point => Of(point, style)),
                new("Scatter over what the instruments explain", "", style.DutyCycle(fit.Scatter), "standard deviation"),
                .. fit.Rising.Select(point => Fact.Words("Rises with pressure", point.In(style))),
                .. fit.Outliers.Select(place => Fact.Words("Far off", fit.Test.Readings[place].In(style))),
            ],
            PumpCaution));
        Shown.By<DeadheadReading>((reading, style) => new("Outlet shut", [Fact.Words("Read", reading.In(style))]));
        Shown.By<DeadheadTest>((test, style) => new(
            $"Bench: {test.Name}, outlet shut", [Fact.Words("Gauge", test.Gauge.In(style)), .. test.Readings.Select(reading => Fact.Words("Read", reading.In(style)))], ShutCaution));
        Shown.By<DeadheadPoint>((point, style) => new("Pressure without flow", [Fact.Words("Found", point.In(style))]));
        Shown.By<DeadheadFit>((fit, style) => new(
            $"{fit.Test.Name} with its outlet shut", [Fact.Words("Found", fit.In(style)), .. fit.Points.Select(point => Fact.Words("At a voltage", point.In(style)))], ShutCaution));
        Shown.By<VoltageDropReading>((reading, style) => new("Voltage drop", [new("Current", "", style.Of(reading.Current)), new("Drop", "", style.VoltageDrop(reading.Drop))]));
        Shown.By<VoltageDropTest>((test, style) => new(
            $"Bench: {test.Name}",
            [
                new("A reading of voltage", "", Millivolts(test.Meter, style), "standard deviation"),
                new("Offset of the meter", "", Millivolts(test.Offset, style), "standard deviation"),
                new("What all have in common", "", style.DutyCycle(test.Calibration), "standard deviation"),
                new("Readings", "", style.Count(test.Readings.Count)),
            ],
            WiringCaution));
        Shown.By<VoltageDropFit>((fit, style) => new(
            $"Resistance of {fit.Test.Name}",
            [
                Fact.Words("Found", fit.In(style)),
                new("Scatter of a reading", "", Millivolts(fit.Scatter, style), "standard deviation"),
                new("Meter at no current", "", Millivolts(fit.Offset, style), fit.IsThroughZero ? "as stated" : "more than stated"),
                .. fit.IsStraight == false ? (Fact[])[Fact.Words("Form", "readings of one current agree better among each other than with a line: a part that warms, or a joint that burns")] : [],
                .. fit.Outliers.Select(place => Fact.Words("Far off", fit.Test.Readings[place].In(style))),
            ],
            WiringCaution));
        Shown.By<RegulatorGaugeReading>((reading, style) => new("Rail pressure", [Fact.Words("Read", reading.In(style))]));
        Shown.By<RegulatorTest>((test, style) => new(
            $"Bench: {test.Name}",
            [
                Fact.Words("Gauge at the rail", test.Rail.In(style)),
                Fact.Words("Gauge of the applied pressure", test.Applied.In(style)),
                Fact.Words("Below the onset", test.FollowsManifold ? "follows the applied pressure" : "the same at any applied pressure"),
                new("Readings", "", style.Count(test.Readings.Count)),
            ],
            PumpCaution));
        Shown.By<RegulatorTestFit>((fit, style) => new(
            $"Line of {fit.Test.Name}",
            [
                Fact.Words("Found", fit.In(style)),
                new("Scatter of a reading", "", style.PressureLoss(fit.Scatter), "standard deviation"),
                .. fit.FlowRise is { } rise
                    ? (Fact[])[new("Rise with returned flow", "", style.PressureLoss(rise), $"{style.PressureLoss(fit.MinimumFlowRise!.Value)} to {style.PressureLoss(fit.MaximumFlowRise!.Value)} over {style.PumpFlow(RegulatorTestFit.FlowStep)}")]
                    : [],
                .. fit.IsBrokenLine == false ? (Fact[])[Fact.Words("Form", "readings at one pressure agree better among each other than with the line: a ceiling, or hysteresis")] : [],
                .. fit.Outliers.Select(place => Fact.Words("Far off", fit.Test.Readings[place].In(style))),
            ],
            PumpCaution));
        Shown.By<ConsumptionReading>((reading, style) => new("Steady run", [Fact.Words("Read", reading.In(style))]));
        Shown.By<ConsumptionTest>((test, style) => new(
            $"Bench: {test.Name}",
            [
                new("A weighing", "", style.Of(test.Scale), "standard deviation"),
                new("A timing", "", style.Time(test.Clock), "standard deviation"),
                new("Power of one run", "", style.DutyCycle(test.Power), "standard deviation"),
                new("What all have in common", "", style.DutyCycle(test.Calibration), "standard deviation"),
                new("Runs", "", style.Count(test.Readings.Count)),
            ],
            EngineCaution));
        Shown.By<ConsumptionFit>((fit, style) => new(
            $"Consumption of {fit.Test.Name}",
            [
                new("BSFC", "", style.Of(fit.Value), $"{style.Of(fit.Minimum)} to {style.Of(fit.Maximum)}"),
                new("Scatter over what the instruments explain", "", style.DutyCycle(fit.Scatter), "standard deviation"),
                .. fit.Outliers.Select(place => Fact.Words("Far off", fit.Test.Readings[place].In(style))),
            ],
            EngineCaution));
    }

    private static Fact[] Of(GaugeAccuracy gauge, TextStyle style) =>
    [
        new("A reading", "", style.PressureLoss(gauge.Reading), "standard deviation"),
        new("Zero, all readings alike", "", style.PressureLoss(gauge.Zero), "standard deviation"),
        new("Span, all readings alike", "", style.DutyCycle(gauge.Span), "standard deviation"),
    ];

    private static IEnumerable<Fact> Of(PumpFlowPoint point, TextStyle style)
    {
        yield return new($"At {style.Of(point.PressureRise)} and {style.Of(point.Voltage)}", "", style.PumpFlow(point.Flow), $"{style.PumpFlow(point.MinimumFlow)} to {style.PumpFlow(point.MaximumFlow)}");
        if (point.Current is { } current)
        {
            yield return new("Current", "", style.Of(current), $"{style.Of(point.MinimumCurrent!.Value)} to {style.Of(point.MaximumCurrent!.Value)}");
        }
    }

    private static string Millivolts(UnitsNet.ElectricPotential voltage, TextStyle style) => $"{style.Number(voltage.Millivolts, "N1")} mV";

    public const string PumpCaution =
        "Fuel under pressure sprays and its vapour burns: hoses, clamps and gauge rated for the highest pressure, no ignition sources, ventilation, goggles, an extinguisher within reach. Local codes take precedence.";

    public const string ShutCaution =
        "A pump that delivers nothing heats its fuel and may fail within a minute, and a hose rated for less bursts: two or three seconds a reading. No ignition sources, goggles. Local codes take precedence.";

    public const string WiringCaution =
        "Fire: a fuse in each test lead, near the supply; no sparks near fuel vapour. Local codes and a licensed practitioner take precedence.";

    public const string EngineCaution =
        "Fire: a tank on a scale beside a running engine; a shut-off and an extinguisher within reach. Full load may detonate when lean: watch lambda, stop at the first knock. Local codes take precedence.";


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
