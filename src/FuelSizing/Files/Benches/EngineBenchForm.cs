using FuelSizing.Bench;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A tank weighed before and after steady runs of an engine.</summary>
internal static class EngineBenchForm
{
    private static readonly QuantityField<Mass> Scale = new("scale", Measures.Mass, "standard deviation of one weighing") { Example = "5 g", Range = "0.01 g to 10 kg" };

    private static readonly QuantityField<Duration> Clock = new("clock", Measures.Time, "standard deviation of one timing, start and stop together") { Example = "0.2 s", Range = "1 ms to 10 s" };

    private static readonly QuantityField<Ratio> PowerShare = new("power", Measures.Share, "standard deviation of the mean power of one run") { Example = "0.5 %", Range = "0 to 10 %" };

    private static readonly QuantityField<Ratio> Calibration =
        new("calibration", Measures.Share, "standard deviation of what all runs have in common: the dynamometer's calibration, the scale's") { Example = "1.5 %", Range = "0 to 10 %" };

    private static readonly QuantityField<Mass> Before = new("before", Measures.Mass, "tank and fuel before the run") { Example = "31.24 kg", Range = "0 to 500 kg" };

    private static readonly QuantityField<Mass> After = new("after", Measures.Mass, "tank and fuel after it") { Example = "29.9 kg", Range = "0 kg to `before`" };

    private static readonly QuantityField<Duration> Time = new("time", Measures.Time, "how long it ran") { Example = "90 s", Range = "5 s to 24 h" };

    private static readonly QuantityField<Power> Power = new("power", Measures.Power, "mean power at the crank; at the wheels the losses of the drivetrain are missing") { Range = "0.5 kW to 2 MW" };

    private static readonly RecordForm<ConsumptionReading> ARun = new(
        "consumption_reading", "a steady run", values => ConsumptionReading.Of(values.Required(Before), values.Required(After), values.Required(Time), values.Required(Power)))
    {
        { Before, reading => reading.Before },
        { After, reading => reading.After },
        { Time, reading => reading.Time },
        { Power, reading => reading.Power },
    };

    private static readonly ListField<ConsumptionReading> Runs = new("readings", () => ARun, "a row for each run, all within 10 % of one power (common practice, no source)") { IsTable = true, Minimum = 3 };

    /// <summary>A tank weighed before and after steady runs.</summary>
    public static RecordForm<ConsumptionTest> Tests { get; } = new(
        "consumption_test",
        "a tank weighed before and after runs",
        values => ConsumptionTest.Of(
            values.Required(BenchFields.Name), values.Required(Scale), values.Required(Clock), values.Required(PowerShare), values.Required(Calibration), [.. values.Required(Runs)]))
    {
        { BenchFields.Name, test => test.Name },
        { Scale, test => test.Scale },
        { Clock, test => test.Clock },
        { PowerShare, test => test.Power },
        { Calibration, test => test.Calibration },
        { Runs, test => test.Readings },
    };
}
