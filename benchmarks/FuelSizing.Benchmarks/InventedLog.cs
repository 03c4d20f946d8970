using System.Globalization;
using FuelSizing.Logs;
using UnitsNet.Units;

namespace FuelSizing.Benchmarks;

/// <summary>An invented log of ten columns, of any length.</summary>
internal static class InventedLog
{
    public const string Heading = "Time,Speed,MAP,Rail,Pulse,Duty,Lambda,Volts,Power,Note";

    public static RunMapping Mapping { get; } = RunMapping.Of(
        RunColumn.Time("Time", DurationUnit.Second),
        RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute),
        RunColumn.ManifoldAbsolute("MAP", PressureUnit.Kilopascal),
        RunColumn.RailGauge("Rail", PressureUnit.Kilopascal),
        RunColumn.InjectorPulse("Pulse", DurationUnit.Millisecond),
        RunColumn.DutyCycle("Duty", RatioUnit.Percent),
        RunColumn.Lambda("Lambda"),
        RunColumn.BatteryVoltage("Volts", ElectricPotentialUnit.Volt),
        RunColumn.Power("Power", PowerUnit.Kilowatt));

    public static void Write(TextWriter file, int rows)
    {
        file.Write(Heading + "\n");
        for (int i = 0; i < rows; i++)
        {
            double swing = Math.Sin(i / 500.0);
            file.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"{i * 0.001:F3},{4800 + (2300 * swing):F0},{110 + (45 * swing):F1},{360 + (44 * swing):F1},{9.5 + (4 * swing):F3},{48 + (36 * swing):F2},{0.9 - (0.08 * swing):F3},{13.6 - (0.3 * swing):F2},{120 + (80 * swing):F1},pull\n"));
        }
    }
}
