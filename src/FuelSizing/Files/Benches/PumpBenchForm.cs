using FuelSizing.Bench;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A pump on the bench, filling a vessel or with its outlet shut.</summary>
internal static class PumpBenchForm
{
    private static readonly BenchFields.Gauge Gauge = new("gauge", "the pressure gauge");

    private static readonly QuantityField<Mass> Scale = new("scale", Measures.Mass, "standard deviation of one weighing, with `test_density`; or `vessel`") { Example = "2 g", Range = "1 mg to 1 kg", Optional = true };

    private static readonly QuantityField<Volume> Vessel = new("vessel", Measures.Volume, "standard deviation of one reading of volume; or `scale`") { Example = "5 mL", Range = "0.01 mL to 1 L", Optional = true };

    private static readonly QuantityField<Duration> Clock =
        new("clock", Measures.Time, "standard deviation of one timing, start and stop together; by hand about 0.2 s (common practice, no source)") { Example = "0.2 s", Range = "1 ms to 10 s" };

    private static readonly QuantityField<Ratio> DensityShare = new("density", Measures.Share, "standard deviation of the density; with `scale`") { Example = "0.2 %", Range = "0 to 10 %", Optional = true, Default = "0 %" };

    private static readonly QuantityField<Ratio> Calibration =
        new("calibration", Measures.Share, "standard deviation of what all flows have in common: the scale's or vessel's calibration, the clock's") { Example = "0.2 %", Range = "0 to 10 %" };

    private static readonly QuantityField<ElectricCurrent> Ammeter = new("ammeter", Measures.Current, "standard deviation of a reading of current; with `current`") { Example = "0.1 A", Range = "1 mA to 10 A", Optional = true };

    private static readonly QuantityField<Pressure> Rise = new("rise", Measures.Pressure, "pressure rise over the pump: the gauge at its outlet, less that at its inlet") { Range = "0 to 2,000 kPa" };

    private static readonly QuantityField<ElectricPotential> Voltage = new("voltage", Measures.Voltage, "at the pump's terminals, not at the supply") { Range = "5 to 30 V" };

    private static readonly QuantityField<Mass> Weighed = new("weighed", Measures.Mass, "what was collected, where `scale` is given") { Example = "1047 g", Range = "0 to 200 kg", Optional = true };

    private static readonly QuantityField<Volume> Measured = new("measured", Measures.Volume, "what was collected, where `vessel` is given") { Example = "1.5 L", Range = "0 to 200 L", Optional = true };

    private static readonly QuantityField<Duration> Time = new("time", Measures.Time, "in which time") { Example = "30 s", Range = "1 s to 60 min" };

    private static readonly QuantityField<ElectricCurrent> Current = new("current", Measures.Current, "that the pump drew, in all readings or in none") { Example = "6.2 A", Range = "0.1 to 100 A", Optional = true };

    private static readonly RecordForm<PumpFlowReading> AFilling = new(
        "pump_reading",
        "a filled vessel",
        values => values.Optional(Weighed) is { } weighed
            ? PumpFlowReading.OfMass(values.Required(Rise), values.Required(Voltage), weighed, values.Required(Time), values.Optional(Current))
            : PumpFlowReading.OfVolume(values.Required(Rise), values.Required(Voltage), values.Required(Measured), values.Required(Time), values.Optional(Current)),
        values => BenchFields.OneOf(values, Weighed, Measured),
        """ "oneOf": [ { "required": [ "weighed" ] }, { "required": [ "measured" ] } ] """)
    {
        { Rise, reading => reading.PressureRise },
        { Voltage, reading => reading.Voltage },
        { Weighed, reading => reading.Weighed },
        { Measured, reading => reading.Measured },
        { Time, reading => reading.Time },
        { Current, reading => reading.Current },
    };

    private static readonly ListField<PumpFlowReading> Fillings = new("readings", () => AFilling, "a row for each reading, at three pressures or more of each voltage, three of them repeats")
    {
        IsTable = true,
        Minimum = 6,
        EachOrNone = Current.Name,
    };

    private static readonly TruthField GaugeEnd = new("gauge_end", "whether the gauge ended there, or the test was stopped there") { Optional = true, Default = "false", Arguments = ["isGaugeEnd"] };

    private static readonly RecordForm<DeadheadReading> AStop = new(
        "deadhead_reading", "a reading with the outlet shut", values => DeadheadReading.Of(values.Required(Voltage), values.Required(Rise), values.Optional(GaugeEnd) ?? false))
    {
        { Voltage, reading => reading.Voltage },
        { Rise, reading => reading.PressureRise },
        { GaugeEnd, reading => reading.IsGaugeEnd },
    };

    private static readonly ListField<DeadheadReading> Stops = new("readings", () => AStop, "a row for each reading, three or more at each voltage unless the gauge ended") { IsTable = true, Minimum = 3 };

    /// <summary>A pump that fills a vessel.</summary>
    public static RecordForm<PumpFlowTest> FlowTests { get; } = Flow();

    /// <summary>A pump with its outlet shut.</summary>
    public static RecordForm<DeadheadTest> DeadheadTests { get; } = Deadhead();

    private static RecordForm<PumpFlowTest> Flow()
    {
        RecordForm<PumpFlowTest> form = new(
            "pump_test",
            "a pump that fills a vessel",
            FlowOf,
            values =>
            {
                BenchFields.BothOrNeither(values);
                BenchFields.OneOf(values, Scale, Vessel);
            },
            BenchFields.FluidCondition)
        {
            { BenchFields.Name, test => test.Name },
            { BenchFields.Fluid, test => test.Fluid?.Name },
            { BenchFields.FluidDensity, test => test.Fluid?.Density },
            { Scale, test => test.Scale },
            { Vessel, test => test.Vessel },
            { Clock, test => test.Clock },
        };
        Gauge.AddTo(form, test => test.Gauge);
        form.Add(DensityShare, test => test.Scale is null ? null : test.Density);
        form.Add(Calibration, test => test.Calibration);
        form.Add(Ammeter, test => test.Ammeter);
        form.Add(Fillings, test => test.Readings);
        return form;
    }

    private static RecordForm<DeadheadTest> Deadhead()
    {
        RecordForm<DeadheadTest> form = new(
            "deadhead_test",
            "a pump with its outlet shut",
            values => Gauge.Of(values) is { } gauge ? DeadheadTest.Of(values.Required(BenchFields.Name), gauge, [.. values.Required(Stops)]) : null)
        {
            { BenchFields.Name, test => test.Name },
        };
        Gauge.AddTo(form, test => test.Gauge);
        form.Add(Stops, test => test.Readings);
        return form;
    }

    private static PumpFlowTest? FlowOf(FieldValues values)
    {
        if (Gauge.Of(values) is not { } gauge || BenchFields.FluidOf(values) is not { } fluid)
        {
            return null;
        }

        (string name, Duration clock, Ratio calibration, IReadOnlyList<PumpFlowReading> readings) = (values.Required(BenchFields.Name), values.Required(Clock), values.Required(Calibration), values.Required(Fillings));
        return values.Optional(Scale) is { } scale
            ? PumpFlowTest.Weighed(name, fluid, scale, clock, gauge, values.Optional(DensityShare) ?? Ratio.Zero, calibration, readings, values.Optional(Ammeter))
            : PumpFlowTest.Measured(name, values.Required(Vessel), clock, gauge, calibration, readings, values.Optional(Ammeter));
    }
}
