using FuelSizing.Engines;
using FuelSizing.Logs;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Logs;

/// <summary>Short files for tests, read with the mapping that fits them.</summary>
internal static class LogText
{
    public const string Heading = "Time,Speed,Boost,Rail,Lambda\n";

    /// <summary>The air on the hill, so that gauge and absolute differ by a known 95 kPa.</summary>
    public static Atmosphere Air { get; } = Atmosphere.Of(Pressure.FromKilopascals(95), Temperature.FromDegreesCelsius(20));

    public static RunMapping Mapping { get; } = RunMapping.Of(
        RunColumn.Time("Time", DurationUnit.Second),
        RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute),
        RunColumn.Boost("Boost", PressureUnit.Bar),
        RunColumn.RailGauge("Rail", PressureUnit.Kilopascal),
        RunColumn.Lambda("Lambda"));

    public static RecordedRun Read(string text, RunMapping? mapping = null) =>
        RunReader.Read("run", new StringReader(text), mapping ?? Mapping, Air);

    public static RunProblem Refusal(string text, RunMapping? mapping = null) =>
        Assert.Throws<RunFileException>(() => Read(text, mapping)).Problem;
}
