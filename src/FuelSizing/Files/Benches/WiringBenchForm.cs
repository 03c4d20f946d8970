using FuelSizing.Bench;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>Voltage across a part of the wiring, at several currents.</summary>
internal static class WiringBenchForm
{
    private static readonly QuantityField<ElectricPotential> Meter = new("meter", Measures.Voltage, "standard deviation of one reading of voltage") { Example = "1 mV", Range = "0.001 mV to 1 V" };

    private static readonly QuantityField<ElectricPotential> Offset = new("offset", Measures.Voltage, "standard deviation of what all readings of voltage are off by alike") { Example = "0.5 mV", Range = "0 to 1 V" };

    private static readonly QuantityField<ElectricCurrent> Ammeter = new("ammeter", Measures.Current, "standard deviation of one reading of current") { Example = "0.05 A", Range = "0 to 10 A" };

    private static readonly QuantityField<Ratio> Calibration =
        new("calibration", Measures.Share, "standard deviation of what all have in common in proportion, both meters together") { Example = "0.8 %", Range = "0 to 10 %" };

    private static readonly QuantityField<ElectricCurrent> Current = new("current", Measures.Current, "through the part; at no current the meter's offset shows") { Range = "0 to 500 A" };

    private static readonly QuantityField<ElectricPotential> Drop = new("drop", Measures.Voltage, "across the part") { Example = "101 mV", Range = "−1 to 20 V" };

    private static readonly RecordForm<VoltageDropReading> ADrop = new("voltage_drop_reading", "a voltage drop", values => VoltageDropReading.Of(values.Required(Current), values.Required(Drop)))
    {
        { Current, reading => reading.Current },
        { Drop, reading => reading.Drop },
    };

    private static readonly ListField<VoltageDropReading> Drops = new("readings", () => ADrop, "a row for each reading, at three currents or more") { IsTable = true, Minimum = 6 };

    /// <summary>Voltage across a part of the wiring.</summary>
    public static RecordForm<VoltageDropTest> Tests { get; } = new(
        "voltage_drop_test",
        "a voltage drop along the wiring",
        values => VoltageDropTest.Of(
            values.Required(BenchFields.Name), values.Required(Meter), values.Required(Offset), values.Required(Ammeter), values.Required(Calibration), [.. values.Required(Drops)]))
    {
        { BenchFields.Name, test => test.Name },
        { Meter, test => test.Meter },
        { Offset, test => test.Offset },
        { Ammeter, test => test.Ammeter },
        { Calibration, test => test.Calibration },
        { Drops, test => test.Readings },
    };
}
