using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Logs;

/// <summary>
/// The values that a channel may have, for a file and for a row made in code alike: wide enough for an engine at rest, on
/// overrun, or behind a noisy sensor, and too narrow for another unit's numbers.
/// </summary>
internal static class ChannelRange
{
    private static readonly (double Minimum, double Maximum)[] Ends = new (double, double)[ChannelValues.Count];

    static ChannelRange()
    {
        Set(Channel.Time, -1e10, 1e10);
        Set(Channel.Speed, 0, 25_000 / 60.0);
        Set(Channel.ManifoldAbsolute, 5e3, 550e3);
        Set(Channel.RailGauge, -110e3, 3e6);
        Set(Channel.InjectorPulse, 0, 0.5);
        Set(Channel.DutyCycle, 0, 2);
        Set(Channel.Lambda, 0.3, 30);
        Set(Channel.BatteryVoltage, 0, 32);
        Set(Channel.Power, -500e3, 3e6);
        Set(Channel.Torque, -20e3, 20e3);
        Set(Channel.FuelTemperature, 223.15, 423.15);
        Set(Channel.FuelVolumeFlow, -0.1 / 3600, 5.0 / 3600);
        Set(Channel.FuelMassFlow, -0.02, 1);
    }

    /// <summary>Whether an SI value may be; NaN and infinities may not.</summary>
    public static bool Holds(Channel channel, double value)
    {
        (double minimum, double maximum) = Ends[(int)channel];
        return value >= minimum && value <= maximum;
    }

    /// <summary>The lower end, as an argument of a statement.</summary>
    public static StatementArgument Minimum(Channel channel) => Figure(channel, Ends[(int)channel].Minimum);

    /// <summary>The upper end, as an argument of a statement.</summary>
    public static StatementArgument Maximum(Channel channel) => Figure(channel, Ends[(int)channel].Maximum);

    /// <summary>Whether an SI value is over the upper end.</summary>
    public static bool IsOver(Channel channel, double value) => value > Ends[(int)channel].Maximum;

    /// <summary>Whether a value is so far outside that it is no figure to write: a thousand times the wider end, or infinite.</summary>
    public static bool IsFarOutside(Channel channel, double value)
    {
        (double minimum, double maximum) = Ends[(int)channel];
        return !(Math.Abs(value) <= 1e3 * Math.Max(-minimum, maximum));
    }

    /// <summary>An SI value as an argument of a statement: a quantity with the kind that the channel is written in, lambda a number.</summary>
    public static StatementArgument Figure(Channel channel, double value) => channel switch
    {
        Channel.Time => Of("time", Duration.FromSeconds(value)),
        Channel.Speed => Of("speed", RotationalSpeed.FromRevolutionsPerSecond(value)),
        Channel.ManifoldAbsolute or Channel.RailGauge => Of("pressure", Pressure.FromPascals(value)),
        Channel.InjectorPulse => Of("pulse", Duration.FromSeconds(value)),
        Channel.DutyCycle => Of("duty-cycle", Ratio.FromDecimalFractions(value)),
        Channel.Lambda => new("number", value, "G6"),
        Channel.BatteryVoltage => Of("voltage", ElectricPotential.FromVolts(value)),
        Channel.Power => Of("power", Power.FromWatts(value)),
        Channel.Torque => Of("torque", Torque.FromNewtonMeters(value)),
        Channel.FuelTemperature => Of("temperature", Temperature.FromKelvins(value)),
        Channel.FuelVolumeFlow => Of("pump-flow", VolumeFlow.FromCubicMetersPerSecond(value)),
        _ => Of("mass-flow", MassFlow.FromKilogramsPerSecond(value)),
    };

    /// <summary>The range in the units people read, for the text of an exception.</summary>
    public static string Text(Channel channel) =>
        $"between {Text(channel, Ends[(int)channel].Minimum)} and {Text(channel, Ends[(int)channel].Maximum)}";

    /// <summary>An SI value in the unit people read.</summary>
    public static string Text(Channel channel, double value)
    {
        (double scaled, string unit) = channel switch
        {
            Channel.Time => (value, " s"),
            Channel.Speed => (value * 60, " rev/min"),
            Channel.ManifoldAbsolute or Channel.RailGauge => (value / 1e3, " kPa"),
            Channel.InjectorPulse => (value * 1e3, " ms"),
            Channel.DutyCycle => (value * 100, " %"),
            Channel.Lambda => (value, ""),
            Channel.BatteryVoltage => (value, " V"),
            Channel.Power => (value / 1e3, " kW"),
            Channel.Torque => (value, " N·m"),
            Channel.FuelTemperature => (value - 273.15, " °C"),
            Channel.FuelVolumeFlow => (value * 3.6e6, " L/h"),
            _ => (value * 1e3, " g/s"),
        };
        string text = FormattableString.Invariant($"{scaled:G6}{unit}");
        return text.StartsWith('-') ? $"−{text[1..]}" : text;
    }

    /// <summary>An SI value within the range.</summary>
    public static double Within(Channel channel, double value, string name) =>
        Holds(channel, value)
            ? value
            : throw Guard.OutOfRange(
                name, Text(channel, value), Text(channel), "Give the value as the instrument recorded it, or leave it out.");

    private static StatementArgument Of<T>(string kind, T figure)
        where T : struct, IQuantity => new(FigureKind.Named(kind, typeof(T)), figure);

    private static void Set(Channel channel, double minimum, double maximum) => Ends[(int)channel] = (minimum, maximum);
}
