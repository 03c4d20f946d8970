using System.Globalization;
using FuelSizing.Quantities;
using UnitsNet.Units;

namespace FuelSizing.Logs;

/// <summary>One column of a file: the channel it holds, where it stands, in which unit.</summary>
/// <remarks>Without a unit, the file's own units row must give it (<see cref="UnitsRow.Used"/>).</remarks>
public sealed record RunColumn
{
    private const string UnitAdvice = "Give a unit of this quantity, or none where the file's units row says it.";

    internal RunColumn(Channel channel, ColumnPlace place, ChannelUnit? unit, PressureReference? reference)
    {
        ArgumentNullException.ThrowIfNull(place);
        (Channel, Place, Unit, Reference) = (channel, place, unit, reference);
    }

    /// <summary>What the column holds.</summary>
    public Channel Channel { get; }

    /// <summary>Where it stands.</summary>
    public ColumnPlace Place { get; }

    /// <summary>What a column of pressure is measured against; null for others.</summary>
    public PressureReference? Reference { get; }

    /// <summary>Null where the units row gives it.</summary>
    internal ChannelUnit? Unit { get; }

    /// <summary>Time since any start.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit, a fixed length of time.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn Time(ColumnPlace place, DurationUnit? unit = null) => Of(Channel.Time, place, unit, ChannelUnits.Of);

    /// <summary>Engine speed.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn Speed(ColumnPlace place, RotationalSpeedUnit? unit = null) =>
        Of(Channel.Speed, place, unit, ChannelUnits.Of);

    /// <summary>Manifold pressure relative to ambient pressure: boost, negative under throttle.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn Boost(ColumnPlace place, PressureUnit? unit = null) =>
        Of(Channel.ManifoldAbsolute, place, unit, ChannelUnits.Of, PressureReference.Gauge);

    /// <summary>Manifold pressure against vacuum.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn ManifoldAbsolute(ColumnPlace place, PressureUnit? unit = null) =>
        Of(Channel.ManifoldAbsolute, place, unit, ChannelUnits.Of, PressureReference.Absolute);

    /// <summary>Rail pressure relative to ambient pressure.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn RailGauge(ColumnPlace place, PressureUnit? unit = null) =>
        Of(Channel.RailGauge, place, unit, ChannelUnits.Of, PressureReference.Gauge);

    /// <summary>Rail pressure against vacuum.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn RailAbsolute(ColumnPlace place, PressureUnit? unit = null) =>
        Of(Channel.RailGauge, place, unit, ChannelUnits.Of, PressureReference.Absolute);

    /// <summary>Commanded pulse of one injector, dead time included.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit, a fixed length of time.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn InjectorPulse(ColumnPlace place, DurationUnit? unit = null) =>
        Of(Channel.InjectorPulse, place, unit, ChannelUnits.Of);

    /// <summary>Pulse ÷ time available.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn DutyCycle(ColumnPlace place, RatioUnit? unit = null) =>
        Of(Channel.DutyCycle, place, unit, ChannelUnits.Of);

    /// <summary>Lambda as the sensor in the exhaust says.</summary>
    /// <param name="place">The column.</param>
    /// <returns>The column.</returns>
    public static RunColumn Lambda(ColumnPlace place) => new(Channel.Lambda, place, ChannelUnits.Plain, null);

    /// <summary>Lambda written as an air-fuel ratio: λ = AFR ÷ the stoichiometric ratio that the instrument calculates with.</summary>
    /// <param name="place">The column.</param>
    /// <param name="stoichiometric">
    /// The instrument's own ratio, 5 to 20, whatever fuel is burnt: the sensor measures lambda, and the instrument multiplies.
    /// </param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is outside its range.</exception>
    public static RunColumn AirFuelRatio(ColumnPlace place, double stoichiometric) =>
        new(
            Channel.Lambda,
            place,
            ChannelUnits.AirFuelRatio(
                Guard.Number(stoichiometric, 5, 20, "Give the ratio that the instrument shows at lambda 1.", nameof(stoichiometric))),
            null);

    /// <summary>Voltage of the supply.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn BatteryVoltage(ColumnPlace place, ElectricPotentialUnit? unit = null) =>
        Of(Channel.BatteryVoltage, place, unit, ChannelUnits.Of);

    /// <summary>Power where it was recorded, not corrected for the air.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn Power(ColumnPlace place, PowerUnit? unit = null) => Of(Channel.Power, place, unit, ChannelUnits.Of);

    /// <summary>Torque where it was recorded, not corrected for the air.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn Torque(ColumnPlace place, TorqueUnit? unit = null) => Of(Channel.Torque, place, unit, ChannelUnits.Of);

    /// <summary>Fuel temperature.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn FuelTemperature(ColumnPlace place, TemperatureUnit? unit = null) =>
        Of(Channel.FuelTemperature, place, unit, ChannelUnits.Of);

    /// <summary>Fuel burnt, by volume.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn FuelVolumeFlow(ColumnPlace place, VolumeFlowUnit? unit = null) =>
        Of(Channel.FuelVolumeFlow, place, unit, ChannelUnits.Of);

    /// <summary>Fuel burnt, by mass.</summary>
    /// <param name="place">The column.</param>
    /// <param name="unit">Its unit.</param>
    /// <returns>The column.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such unit.</exception>
    public static RunColumn FuelMassFlow(ColumnPlace place, MassFlowUnit? unit = null) =>
        Of(Channel.FuelMassFlow, place, unit, ChannelUnits.Of);

    /// <summary>The channel and its column in words.</summary>
    /// <returns>For instance <c>Speed in "Engine speed"</c>.</returns>
    public override string ToString() => $"{Channel} in {Place}";

    private static RunColumn Of<TUnit>(
        Channel channel, ColumnPlace place, TUnit? unit, Func<TUnit, ChannelUnit> toLine, PressureReference? reference = null)
        where TUnit : struct, Enum =>
        new(channel, place, unit is { } given ? toLine(Guard.Member(given, UnitAdvice, nameof(unit))) : null, reference);
}

/// <summary>Which column of a file: by its heading, or by its number where the heading will not do.</summary>
public sealed record ColumnPlace
{
    private ColumnPlace(string? heading, int number) => (Heading, Number) = (heading, number);

    /// <summary>The heading, without blanks at its ends; null where the column is told by number.</summary>
    public string? Heading { get; }

    /// <summary>The column's number, the first being 1; 0 where the column is told by heading.</summary>
    public int Number { get; }

    /// <summary>A column told by its heading, which must stand once; case counts, blanks at its ends do not.</summary>
    /// <param name="heading">1 to 80 characters on one line.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentException">The heading is not such a text.</exception>
    public static ColumnPlace Named(string heading) => new(Guard.Name(heading, nameof(heading)).Trim(), 0);

    /// <summary>A column told by its number, whatever it is called; a unit in its heading must still not contradict the mapping.</summary>
    /// <param name="number">1 to 1,000, the first being 1.</param>
    /// <returns>The place.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is outside its range.</exception>
    public static ColumnPlace Numbered(int number) =>
        new(null, Guard.Count(number, 1, 1000, "Count the columns from the left, the first being 1.", nameof(number)));

    /// <summary>A column told by its heading: <see cref="Named"/>.</summary>
    /// <param name="heading">1 to 80 characters on one line.</param>
    public static implicit operator ColumnPlace(string heading) => Named(heading);

    /// <summary>A column told by its heading: <see cref="Named"/>.</summary>
    /// <param name="heading">1 to 80 characters on one line.</param>
    /// <returns>The place.</returns>
    public static ColumnPlace FromString(string heading) => Named(heading);

    /// <summary>The place in words.</summary>
    /// <returns>For instance <c>"Engine speed"</c> or <c>column 3</c>.</returns>
    public override string ToString() =>
        Heading is null ? string.Create(CultureInfo.InvariantCulture, $"column {Number}") : $"\"{Heading}\"";
}

/// <summary>What a column of pressure is measured against.</summary>
public enum PressureReference
{
    /// <summary>The ambient air.</summary>
    Gauge,

    /// <summary>Vacuum.</summary>
    Absolute,
}
