using FuelSizing.Bench;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>An injector on the bench, weighed in pulses or held open.</summary>
internal static class InjectorBenchForm
{
    private static readonly QuantityField<Pressure> Differential = new("differential", Measures.Pressure, "across the injector") { Range = "50 to 1,000 kPa" };

    private static readonly QuantityField<ElectricPotential> Voltage = new("voltage", Measures.Voltage, "at the injector's driver") { Range = "6 to 20 V" };

    private static readonly QuantityField<Mass> Scale = new("scale", Measures.Mass, "standard deviation of one weighing: reading the scale, drops left behind") { Example = "10 mg", Range = "0.1 mg to 100 g" };

    private static readonly QuantityField<Ratio> Calibration = new("calibration", Measures.Share, "standard deviation of what all readings have in common: the scale's calibration, half of what the pressure gauge is off by")
    {
        Example = "0.3 %",
        Range = "0 to 10 %",
    };

    private static readonly QuantityField<Duration> Pulse = new("pulse", Measures.Time, "commanded pulse width") { Example = "2.5 ms", Range = "0.1 to 100 ms" };

    private static readonly CountField Injections = new("injections", 1000, 10, 1_000_000, "how many pulses");

    private static readonly QuantityField<Mass> Collected = new("collected", Measures.Mass, "of all of them: the full vessel less the empty one") { Range = "0 to 20 kg" };

    private static readonly RecordForm<PulseReading> APulse = new(
        "pulse_reading", "a weighing of pulses", values => PulseReading.Of(values.Required(Pulse), values.Required(Injections), values.Required(Collected)))
    {
        { Pulse, reading => reading.Pulse },
        { Injections, reading => reading.Injections },
        { Collected, reading => reading.Collected },
    };

    private static readonly ListField<PulseReading> Pulses = new("readings", () => APulse, "a row for each weighing, at four pulse widths or more") { IsTable = true, Minimum = 6 };

    private static readonly QuantityField<Mass> OneScale = new("scale", Measures.Mass, "standard deviation of one weighing; or `graduation`") { Example = "0.1 g", Range = "0.1 mg to 100 g", Optional = true };

    private static readonly QuantityField<Volume> Graduation =
        new("graduation", Measures.Volume, "standard deviation of one reading of the measuring cylinder; or `scale`") { Example = "1 mL", Range = "0.001 to 100 mL", Optional = true };

    private static readonly QuantityField<Duration> Clock = new("clock", Measures.Time, "standard deviation of one time: the hand on the valve; 0 s where the bench times by itself") { Example = "0.1 s", Range = "0 to 5 s" };

    private static readonly QuantityField<Duration> Time = new("time", Measures.Time, "for which the injector was held open") { Example = "30 s", Range = "1 s to 1 h" };

    private static readonly QuantityField<Mass> Weighed = new("weighed", Measures.Mass, "what was collected, where `scale` is given") { Example = "156.2 g", Range = "over 0 to 20 kg", Optional = true };

    private static readonly QuantityField<Volume> Filled =
        new("filled", Measures.Volume, "what was collected, where `graduation` is given") { Example = "228 mL", Range = "over 0 to 25 L", Optional = true };

    private static readonly RecordForm<StaticReading> ACollecting = new(
        "static_reading",
        "a timed collection",
        values => values.Optional(Weighed) is { } weighed ? StaticReading.ByMass(values.Required(Time), weighed) : StaticReading.ByVolume(values.Required(Time), values.Required(Filled)),
        values => BenchFields.OneOf(values, Weighed, Filled),
        """ "oneOf": [ { "required": [ "weighed" ] }, { "required": [ "filled" ] } ] """)
    {
        { Time, reading => reading.Time },
        { Weighed, reading => reading.Weighed },
        { Filled, reading => reading.Filled },
    };

    private static readonly ListField<StaticReading> Collectings = new("readings", () => ACollecting, "a row for each timed collection, of two times one of which is twice the other") { IsTable = true, Minimum = 3 };

    /// <summary>An injector weighed in pulses.</summary>
    public static RecordForm<PulseTest> PulseTests { get; } = new(
        "pulse_test",
        "an injector weighed in pulses",
        values => BenchFields.FluidOf(values) is { } fluid
            ? PulseTest.Of(
                values.Required(BenchFields.Name), fluid, values.Required(Differential), values.Required(Voltage), values.Required(Scale), values.Required(Calibration), [.. values.Required(Pulses)])
            : null,
        BenchFields.BothOrNeither,
        BenchFields.FluidCondition)
    {
        { BenchFields.Name, test => test.Name },
        { BenchFields.Fluid, test => test.Fluid.Name },
        { BenchFields.FluidDensity, test => test.Fluid.Density },
        { Differential, test => test.Differential },
        { Voltage, test => test.Voltage },
        { Scale, test => test.Scale },
        { Calibration, test => test.Calibration },
        { Pulses, test => test.Readings },
    };

    /// <summary>An injector held open.</summary>
    public static RecordForm<StaticTest> StaticTests { get; } = new(
        "static_test",
        "an injector held open",
        StaticOf,
        values =>
        {
            BenchFields.BothOrNeither(values);
            BenchFields.OneOf(values, OneScale, Graduation);
        },
        BenchFields.FluidCondition)
    {
        { BenchFields.Name, test => test.Name },
        { BenchFields.Fluid, test => test.Fluid.Name },
        { BenchFields.FluidDensity, test => test.Fluid.Density },
        { Differential, test => test.Differential },
        { OneScale, test => test.Scale },
        { Graduation, test => test.Graduation },
        { Clock, test => test.Clock },
        { Calibration, test => test.Calibration },
        { Collectings, test => test.Readings },
    };

    private static StaticTest? StaticOf(FieldValues values)
    {
        if (BenchFields.FluidOf(values) is not { } fluid)
        {
            return null;
        }

        (string name, Pressure differential, Duration clock, Ratio calibration) = (values.Required(BenchFields.Name), values.Required(Differential), values.Required(Clock), values.Required(Calibration));
        StaticReading[] readings = [.. values.Required(Collectings)];
        return values.Optional(OneScale) is { } scale
            ? StaticTest.ByMass(name, fluid, differential, scale, clock, calibration, readings)
            : StaticTest.ByVolume(name, fluid, differential, values.Required(Graduation), clock, calibration, readings);
    }
}
