using FuelSizing.Circuits;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>A circuit's findings as tables word them.</summary>
internal static class CircuitText
{
    /// <summary>Where the data ends.</summary>
    public const string Unknown = "cannot say";

    /// <summary>A value, or that it cannot be said.</summary>
    public static string Known<T>(T? value, Func<T, string> text)
        where T : struct => value is { } known ? text(known) : Unknown;

    /// <summary>Who governs the rail's pressure.</summary>
    public static string Governs(OperatingResult result) => result.RailState switch
    {
        RailState.Regulated => result.System.Regulator is ElectronicReturnless ? "controller" : "regulator",
        RailState.AtRegulatorLimit => "regulator, barely: little returns",
        RailState.ReturnFloor => "return line too small",
        RailState.PumpFloor => "pump at its lowest speed",
        RailState.Sagging => "pump at its end: the rail sags",
        RailState.Starved => "nobody: starved",
        _ => Unknown,
    };

    /// <summary>What each pump gets: volts at its motor, current, what its feed takes.</summary>
    public static string Electrical(PumpResult pump, TextStyle style)
    {
        string current = pump.Current is { } amperes ? $", {style.Of(amperes)}" : "";
        string feed = pump.Pump.Feed is null ? "" : $", {style.VoltageDrop(pump.FeedDrop)} lost in its feed";
        string estimate = pump.IsEstimate ? " (an estimate: scaled curve)" : "";
        return $"{style.Of(pump.Voltage)} at the motor{current}{feed}{estimate}";
    }
}
