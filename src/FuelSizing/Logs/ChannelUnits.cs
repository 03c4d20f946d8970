using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Logs;

/// <summary>The units that a mapping file or a units row may say, and those of UnitsNet that code may say.</summary>
internal static class ChannelUnits
{
    /// <summary>A number that is in its SI unit already; stands before the table, which holds it.</summary>
    public static ChannelUnit Plain { get; } = new("1", 1, 0);

    /// <summary>Each channel's unit texts; texts of one unit stand together, the usual one first.</summary>
    private static readonly Dictionary<Channel, (string Text, ChannelUnit Unit)[]> Known = new()
    {
        [Channel.Time] = Times(("s", DurationUnit.Second), ("ms", DurationUnit.Millisecond), ("min", DurationUnit.Minute)),
        [Channel.Speed] =
        [
            ("rev/min", Of(RotationalSpeedUnit.RevolutionPerMinute)),
            ("rpm", Of(RotationalSpeedUnit.RevolutionPerMinute)),
            ("1/min", Of(RotationalSpeedUnit.RevolutionPerMinute)),
            ("rev/s", Of(RotationalSpeedUnit.RevolutionPerSecond)),
            ("rad/s", Of(RotationalSpeedUnit.RadianPerSecond)),
        ],
        [Channel.ManifoldAbsolute] = Pressures(),
        [Channel.RailGauge] = Pressures(),
        [Channel.InjectorPulse] = Times(
            ("ms", DurationUnit.Millisecond), ("µs", DurationUnit.Microsecond), ("us", DurationUnit.Microsecond), ("s", DurationUnit.Second)),
        [Channel.DutyCycle] = [("%", Of(RatioUnit.Percent)), ("1", Of(RatioUnit.DecimalFraction))],
        [Channel.Lambda] = [("1", Plain), ("lambda", Plain), ("λ", Plain)],
        [Channel.BatteryVoltage] =
            [("V", Of(ElectricPotentialUnit.Volt)), ("mV", Of(ElectricPotentialUnit.Millivolt))],
        [Channel.Power] =
        [
            ("kW", Of(PowerUnit.Kilowatt)),
            ("W", Of(PowerUnit.Watt)),
            ("hp", Of(PowerUnit.MechanicalHorsepower)),
            ("PS", Of(PowerUnit.MetricHorsepower)),
        ],
        [Channel.Torque] =
        [
            ("N·m", Of(TorqueUnit.NewtonMeter)),
            ("N m", Of(TorqueUnit.NewtonMeter)),
            ("Nm", Of(TorqueUnit.NewtonMeter)),
            ("lbf·ft", Of(TorqueUnit.PoundForceFoot)),
            ("lbf ft", Of(TorqueUnit.PoundForceFoot)),
        ],
        [Channel.FuelTemperature] =
        [
            ("°C", Of(TemperatureUnit.DegreeCelsius)),
            ("C", Of(TemperatureUnit.DegreeCelsius)),
            ("°F", Of(TemperatureUnit.DegreeFahrenheit)),
            ("F", Of(TemperatureUnit.DegreeFahrenheit)),
            ("K", Of(TemperatureUnit.Kelvin)),
        ],
        [Channel.FuelVolumeFlow] =
        [
            ("L/h", Of(VolumeFlowUnit.LiterPerHour)),
            ("l/h", Of(VolumeFlowUnit.LiterPerHour)),
            ("L/min", Of(VolumeFlowUnit.LiterPerMinute)),
            ("l/min", Of(VolumeFlowUnit.LiterPerMinute)),
            ("mL/min", Of(VolumeFlowUnit.MilliliterPerMinute)),
            ("ml/min", Of(VolumeFlowUnit.MilliliterPerMinute)),
            ("cc/min", Of(VolumeFlowUnit.MilliliterPerMinute)),
            ("gal/h", Of(VolumeFlowUnit.UsGallonPerHour)),
        ],
        [Channel.FuelMassFlow] =
        [
            ("g/s", Of(MassFlowUnit.GramPerSecond)),
            ("kg/h", Of(MassFlowUnit.KilogramPerHour)),
            ("kg/s", Of(MassFlowUnit.KilogramPerSecond)),
            ("lb/h", Of(MassFlowUnit.PoundPerHour)),
        ],
    };

    /// <summary>The texts that may be written for a channel.</summary>
    public static IEnumerable<string> Texts(Channel channel) => Known[channel].Select(known => known.Text);

    /// <summary>A unit by its text, case counting; brackets around it and blanks do not count.</summary>
    public static bool TryFind(Channel channel, ReadOnlySpan<char> text, out ChannelUnit unit)
    {
        text = text.Trim();
        if (text.Length > 1 && (text[0], text[^1]) is ('[', ']') or ('(', ')'))
        {
            text = text[1..^1].Trim();
        }

        foreach ((string known, ChannelUnit found) in Known[channel])
        {
            if (text.SequenceEqual(known))
            {
                unit = found with { Text = known };
                return true;
            }
        }

        unit = default;
        return false;
    }

    /// <summary>The text of a unit; none where it has none, for code may say any unit of UnitsNet.</summary>
    public static string? TextOf(Channel channel, ChannelUnit unit) =>
        Known[channel].FirstOrDefault(known => known.Unit.Scale == unit.Scale && known.Unit.Offset == unit.Offset).Text;

    /// <summary>Lambda from an air-fuel ratio: λ = AFR ÷ the stoichiometric ratio.</summary>
    public static ChannelUnit AirFuelRatio(double stoichiometric) => new("air-fuel ratio", 1 / stoichiometric, 0, stoichiometric);

    public static ChannelUnit Of(DurationUnit unit) => Line(unit, value => Duration.From(value, unit).Seconds);

    public static ChannelUnit Of(RotationalSpeedUnit unit) =>
        Line(unit, value => RotationalSpeed.From(value, unit).RevolutionsPerSecond);

    public static ChannelUnit Of(PressureUnit unit) => Line(unit, value => Pressure.From(value, unit).Pascals);

    public static ChannelUnit Of(RatioUnit unit) => Line(unit, value => Ratio.From(value, unit).DecimalFractions);

    public static ChannelUnit Of(ElectricPotentialUnit unit) => Line(unit, value => ElectricPotential.From(value, unit).Volts);

    public static ChannelUnit Of(PowerUnit unit) => Line(unit, value => (double)Power.From(value, unit).Watts);

    public static ChannelUnit Of(TorqueUnit unit) => Line(unit, value => Torque.From(value, unit).NewtonMeters);

    public static ChannelUnit Of(TemperatureUnit unit) => Line(unit, value => Temperature.From(value, unit).Kelvins);

    public static ChannelUnit Of(VolumeFlowUnit unit) =>
        Line(unit, value => VolumeFlow.From(value, unit).CubicMetersPerSecond);

    public static ChannelUnit Of(MassFlowUnit unit) => Line(unit, value => MassFlow.From(value, unit).KilogramsPerSecond);

    /// <summary>The straight line through two of its points; each of these units is one, and was checked to be a unit where it was given.</summary>
    private static ChannelUnit Line<TUnit>(TUnit unit, Func<double, double> toSi)
        where TUnit : struct, Enum
    {
        double offset = toSi(0);
        return new(unit.ToString(), toSi(1) - offset, offset);
    }

    private static (string, ChannelUnit)[] Times(params (string Text, DurationUnit Unit)[] units) =>
        [.. units.Select(unit => (unit.Text, Of(unit.Unit)))];

    private static (string, ChannelUnit)[] Pressures() =>
    [
        ("kPa", Of(PressureUnit.Kilopascal)),
        ("bar", Of(PressureUnit.Bar)),
        ("mbar", Of(PressureUnit.Millibar)),
        ("hPa", Of(PressureUnit.Hectopascal)),
        ("Pa", Of(PressureUnit.Pascal)),
        ("MPa", Of(PressureUnit.Megapascal)),
        ("psi", Of(PressureUnit.PoundForcePerSquareInch)),
        ("inHg", Of(PressureUnit.InchOfMercury)),
        ("mmHg", Of(PressureUnit.MillimeterOfMercury)),
    ];
}

/// <summary>A unit as a straight line to SI: SI value = scale × number + offset.</summary>
/// <param name="Text">The unit as people write it.</param>
/// <param name="Scale">SI units in one unit.</param>
/// <param name="Offset">SI value at the number zero.</param>
/// <param name="Stoichiometric">The instrument's ratio, where lambda is written as an air-fuel ratio.</param>
internal readonly record struct ChannelUnit(string Text, double Scale, double Offset, double? Stoichiometric = null);
