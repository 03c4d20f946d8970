using System.Globalization;
using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>A circuit's figures as tables word them: losses and heat are small beside rail pressure and engine power.</summary>
internal static class CircuitText
{
    /// <summary>Where the data ends.</summary>
    public const string Unknown = "cannot say";

    /// <summary>A loss, for instance <c>3.4 kPa</c>.</summary>
    public static string Loss(UnitsNet.Pressure pressure) => Readable.PressureLoss(pressure);

    /// <summary>A gain or loss with its sign, for instance <c>−3.4 kPa</c>.</summary>
    public static string Change(UnitsNet.Pressure pressure) => Readable.PressureChange(pressure);

    /// <summary>Heat, for instance <c>62 W</c>.</summary>
    public static string Heat(Power power) => Text((double)power.Watts, "#,##0", "W");

    /// <summary>Heat that is small, for instance <c>0.9 W</c>.</summary>
    public static string SmallHeat(Power power) => Text((double)power.Watts, "#,##0.0", "W");

    /// <summary>Heat along a wire, for instance <c>0.9 W/m</c>.</summary>
    public static string Heat(LinearPowerDensity heat) => Text((double)heat.WattsPerMeter, "#,##0.0", "W/m");

    /// <summary>A length of line or wire, for instance <c>4.5 m</c>.</summary>
    public static string Metres(Length length) => Readable.Of(length);

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

    private static string Text(double value, string format, string unit) =>
        $"{value.ToString(format, CultureInfo.InvariantCulture).Replace('-', '−')} {unit}";

    /// <summary>What each pump gets: volts at its motor, current, what its feed takes.</summary>
    public static string Electrical(PumpResult pump)
    {
        string current = pump.Current is { } amperes ? $", {Readable.Of(amperes)}" : "";
        string feed = pump.Pump.Feed is null ? "" : $", {Readable.VoltageDrop(pump.FeedDrop)} lost in its feed";
        string estimate = pump.IsEstimate ? " (an estimate: scaled curve)" : "";
        return $"{Readable.Of(pump.Voltage)} at the motor{current}{feed}{estimate}";
    }
}
