using System.Globalization;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace FuelSizing.Logs;

/// <summary>One row of a recorded run: what was recorded at one moment, and where in the file it stands.</summary>
/// <remarks>
/// Holds SI numbers, so that millions of rows cost no more than their numbers; a property makes its quantity when asked.
/// </remarks>
public readonly record struct RunRow
{
    private readonly ChannelValues _values;

    /// <summary>Takes values that are known to be within range.</summary>
    internal RunRow(long line, in ChannelValues values) => (Line, _values) = (line, values);

    /// <summary>Line of the file, the first being 1; of a run made in code, the row's number.</summary>
    public long Line { get; }

    /// <summary>Since any start.</summary>
    public Duration? Time => Has(Channel.Time) ? Duration.FromSeconds(this[Channel.Time]) : null;

    /// <summary>Engine speed.</summary>
    public RotationalSpeed Speed => RotationalSpeed.FromRevolutionsPerSecond(_values[(int)Channel.Speed]);

    /// <summary>Against vacuum.</summary>
    public Pressure? ManifoldAbsolute => PressureIn(Channel.ManifoldAbsolute);

    /// <summary>Relative to ambient pressure.</summary>
    public Pressure? RailGauge => PressureIn(Channel.RailGauge);

    /// <summary>Commanded, dead time included.</summary>
    public Duration? InjectorPulse => Has(Channel.InjectorPulse) ? Duration.FromSeconds(this[Channel.InjectorPulse]) : null;

    /// <summary>Pulse ÷ time available.</summary>
    public Ratio? DutyCycle => Has(Channel.DutyCycle) ? Ratio.FromDecimalFractions(this[Channel.DutyCycle]) : null;

    /// <summary>Air-fuel ratio ÷ the stoichiometric one.</summary>
    public double? Lambda => Has(Channel.Lambda) ? this[Channel.Lambda] : null;

    /// <summary>Of the supply, where it was recorded.</summary>
    public ElectricPotential? BatteryVoltage =>
        Has(Channel.BatteryVoltage) ? ElectricPotential.FromVolts(this[Channel.BatteryVoltage]) : null;

    /// <summary>Where it was recorded, not corrected for the air.</summary>
    public Power? Power => Has(Channel.Power) ? UnitsNet.Power.FromWatts(this[Channel.Power]) : null;

    /// <summary>Where it was recorded, not corrected for the air.</summary>
    public Torque? Torque => Has(Channel.Torque) ? UnitsNet.Torque.FromNewtonMeters(this[Channel.Torque]) : null;

    /// <summary>Where it was recorded.</summary>
    public Temperature? FuelTemperature =>
        Has(Channel.FuelTemperature) ? Temperature.FromKelvins(this[Channel.FuelTemperature]) : null;

    /// <summary>Fuel burnt, by volume.</summary>
    public VolumeFlow? FuelVolumeFlow =>
        Has(Channel.FuelVolumeFlow) ? VolumeFlow.FromCubicMetersPerSecond(this[Channel.FuelVolumeFlow]) : null;

    /// <summary>Fuel burnt, by mass.</summary>
    public MassFlow? FuelMassFlow =>
        Has(Channel.FuelMassFlow) ? MassFlow.FromKilogramsPerSecond(this[Channel.FuelMassFlow]) : null;

    /// <summary>
    /// The channel's value in SI: s, rev/s, Pa, a share, V, W, N·m, K, m³/s, kg/s; NaN where the row has none.
    /// </summary>
    internal double this[Channel channel] => Line == 0 ? double.NaN : _values[(int)channel];

    /// <summary>Describes a row in code.</summary>
    /// <param name="line">The row's number, 1 to 10⁹.</param>
    /// <param name="speed">Engine speed, 0 to 25,000 rev/min.</param>
    /// <param name="time">Since any start, −10¹⁰ to 10¹⁰ s.</param>
    /// <param name="manifoldAbsolute">Against vacuum, 5 to 550 kPa.</param>
    /// <param name="railGauge">Relative to ambient pressure, −110 to 3,000 kPa.</param>
    /// <param name="injectorPulse">Commanded, dead time included, 0 to 500 ms.</param>
    /// <param name="dutyCycle">Pulse ÷ time available, 0 to 200 %.</param>
    /// <param name="lambda">Air-fuel ratio ÷ the stoichiometric one, 0.3 to 30.</param>
    /// <param name="batteryVoltage">Of the supply, 0 to 32 V.</param>
    /// <param name="power">Not corrected for the air, −500 to 3,000 kW.</param>
    /// <param name="torque">Not corrected for the air, −20,000 to 20,000 N·m.</param>
    /// <param name="fuelTemperature">−50 to 150 °C.</param>
    /// <param name="fuelVolumeFlow">Fuel burnt, by volume, −100 to 5,000 L/h.</param>
    /// <param name="fuelMassFlow">Fuel burnt, by mass, −20 to 1,000 g/s.</param>
    /// <returns>The row.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static RunRow Of(
        int line,
        RotationalSpeed speed,
        Duration? time = null,
        Pressure? manifoldAbsolute = null,
        Pressure? railGauge = null,
        Duration? injectorPulse = null,
        Ratio? dutyCycle = null,
        double? lambda = null,
        ElectricPotential? batteryVoltage = null,
        Power? power = null,
        Torque? torque = null,
        Temperature? fuelTemperature = null,
        VolumeFlow? fuelVolumeFlow = null,
        MassFlow? fuelMassFlow = null)
    {
        Quantities.Guard.Count(line, 1, 1_000_000_000, "Number the rows from 1.", nameof(line));
        var values = ChannelValues.None;
        Put(ref values, Channel.Time, time?.Seconds, nameof(time));
        Put(ref values, Channel.Speed, speed.RevolutionsPerSecond, nameof(speed));
        Put(ref values, Channel.ManifoldAbsolute, manifoldAbsolute?.Pascals, nameof(manifoldAbsolute));
        Put(ref values, Channel.RailGauge, railGauge?.Pascals, nameof(railGauge));
        Put(ref values, Channel.InjectorPulse, injectorPulse?.Seconds, nameof(injectorPulse));
        Put(ref values, Channel.DutyCycle, dutyCycle?.DecimalFractions, nameof(dutyCycle));
        Put(ref values, Channel.Lambda, lambda, nameof(lambda));
        Put(ref values, Channel.BatteryVoltage, batteryVoltage?.Volts, nameof(batteryVoltage));
        Put(ref values, Channel.Power, (double?)power?.Watts, nameof(power));
        Put(ref values, Channel.Torque, torque?.NewtonMeters, nameof(torque));
        Put(ref values, Channel.FuelTemperature, fuelTemperature?.Kelvins, nameof(fuelTemperature));
        Put(ref values, Channel.FuelVolumeFlow, fuelVolumeFlow?.CubicMetersPerSecond, nameof(fuelVolumeFlow));
        Put(ref values, Channel.FuelMassFlow, fuelMassFlow?.KilogramsPerSecond, nameof(fuelMassFlow));
        return new(line, values);
    }

    /// <summary>Whether the row has a value in a channel.</summary>
    /// <param name="channel">Any.</param>
    /// <returns>False where the cell was blank, refused, or not recorded at all.</returns>
    public bool Has(Channel channel) => Enum.IsDefined(channel) && !double.IsNaN(this[channel]);

    /// <summary>The same row with the same values; missing values are alike.</summary>
    /// <param name="other">Another row.</param>
    /// <returns>Whether line and all values agree.</returns>
    public bool Equals(RunRow other)
    {
        if (Line != other.Line)
        {
            return false;
        }

        for (int i = 0; i < ChannelValues.Count; i++)
        {
            if (!_values[i].Equals(other._values[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Line, _values[(int)Channel.Speed], _values[(int)Channel.Time]);

    /// <summary>The row in words, for instance <c>line 12: Speed 6,800 rev/min, Lambda 0.82</c>.</summary>
    /// <returns>Line and values.</returns>
    public override string ToString()
    {
        RunRow row = this;
        return string.Create(CultureInfo.InvariantCulture, $"line {Line}: ")
            + string.Join(
                ", ",
                Enum.GetValues<Channel>().Where(row.Has).Select(c => $"{c} {ChannelRange.Text(c, row[c])}"));
    }

    private static void Put(ref ChannelValues values, Channel channel, double? value, string name)
    {
        if (value is { } given)
        {
            values[(int)channel] = ChannelRange.Within(channel, given, name);
        }
    }

    private Pressure? PressureIn(Channel channel) => Has(channel) ? Pressure.FromPascals(this[channel]) : null;
}

/// <summary>One SI value a channel, NaN where there is none.</summary>
[InlineArray(Count)]
internal struct ChannelValues
{
    /// <summary>Number of channels.</summary>
    public const int Count = (int)Channel.FuelMassFlow + 1;

    private double _first;

    /// <summary>No value in any channel.</summary>
    public static ChannelValues None
    {
        get
        {
            ChannelValues values = default;
            ((Span<double>)values).Fill(double.NaN);
            return values;
        }
    }
}
