using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Within which ranges air, supply voltage, fuel temperature and ethanol content may lie: for the worst corner of them.</summary>
/// <remarks>
/// What has no range stays as in the conditions that it began with. Where tank or pump inlet have a temperature of their own there, they keep
/// it; the range is that of the fuel in the rail.
/// </remarks>
/// <example>
/// <code>
/// OperatingRanges ranges = OperatingRanges.Around(Conditions.Default)
///     .WithAmbientTemperature(Temperature.FromDegreesCelsius(-10), Temperature.FromDegreesCelsius(35))
///     .WithSupplyVoltage(ElectricPotential.FromVolts(12.4), ElectricPotential.FromVolts(14.2));
/// Console.WriteLine(ranges);   // ambient temperature −10 °C to 35 °C; supply voltage 12.4 V to 14.2 V
/// </code>
/// </example>
public sealed record OperatingRanges
{
    private static readonly Identity<OperatingRanges> _identity = new Identity<OperatingRanges>()
        .Value(ranges => ranges.Conditions)
        .Number(ranges => ranges.AmbientPressure?.Lowest.Pascals)
        .Number(ranges => ranges.AmbientPressure?.Highest.Pascals)
        .Number(ranges => ranges.AmbientTemperature?.Lowest.Kelvins)
        .Number(ranges => ranges.AmbientTemperature?.Highest.Kelvins)
        .Number(ranges => ranges.SupplyVoltage?.Lowest.Volts)
        .Number(ranges => ranges.SupplyVoltage?.Highest.Volts)
        .Number(ranges => ranges.FuelTemperature?.Lowest.Kelvins)
        .Number(ranges => ranges.FuelTemperature?.Highest.Kelvins)
        .Number(ranges => ranges.EthanolContent?.Lowest.DecimalFractions)
        .Number(ranges => ranges.EthanolContent?.Highest.DecimalFractions)
        .Value(ranges => ranges.Petrol);

    private OperatingRanges(Conditions conditions) => Conditions = conditions;

    /// <summary>What holds where no range is given.</summary>
    public Conditions Conditions { get; }

    /// <summary>Barometric pressure, absolute; none if it does not vary.</summary>
    public (Pressure Lowest, Pressure Highest)? AmbientPressure { get; private init; }

    /// <summary>Of the ambient air; none if it does not vary.</summary>
    public (Temperature Lowest, Temperature Highest)? AmbientTemperature { get; private init; }

    /// <summary>At the injectors and at the source of the pumps' wiring; none if it does not vary.</summary>
    public (ElectricPotential Lowest, ElectricPotential Highest)? SupplyVoltage { get; private init; }

    /// <summary>Of the fuel in the rail; none if it does not vary.</summary>
    public (Temperature Lowest, Temperature Highest)? FuelTemperature { get; private init; }

    /// <summary>Share of ethanol in the fuel by volume; none if it does not vary.</summary>
    public (Ratio Lowest, Ratio Highest)? EthanolContent { get; private init; }

    /// <summary>The petrol that the ethanol is blended with; none if the content does not vary.</summary>
    public Fuel? Petrol { get; private init; }

    /// <summary>Begins with conditions of which nothing varies.</summary>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <returns>The ranges, none so far.</returns>
    public static OperatingRanges Around(Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        return new(conditions);
    }

    /// <summary>The same ranges with one of ambient pressure.</summary>
    /// <param name="lowest">Absolute, 40 to 110 kPa.</param>
    /// <param name="highest">From the lowest to 110 kPa.</param>
    /// <returns>The ranges.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A pressure is outside its range.</exception>
    public OperatingRanges WithAmbientPressure(Pressure lowest, Pressure highest)
    {
        const string Advice = "Give absolute pressure as a barometer reads it there, not reduced to sea level.";
        Pressure low = Guard.Between(lowest, Pressure.FromKilopascals(40), Pressure.FromKilopascals(110), Advice, nameof(lowest));
        return this with { AmbientPressure = (low, Guard.Between(highest, low, Pressure.FromKilopascals(110), Advice, nameof(highest))) };
    }

    /// <summary>The same ranges with one of ambient temperature.</summary>
    /// <param name="lowest">−50 to 60 °C: the coldest day, whose air is densest.</param>
    /// <param name="highest">From the lowest to 60 °C.</param>
    /// <returns>The ranges.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A temperature is outside its range.</exception>
    public OperatingRanges WithAmbientTemperature(Temperature lowest, Temperature highest)
    {
        const string Advice = "Give the temperature of the coldest and of the hottest air.";
        Temperature low = Guard.Between(
            lowest, Temperature.FromDegreesCelsius(-50), Temperature.FromDegreesCelsius(60), Advice, nameof(lowest));
        return this with
        {
            AmbientTemperature = (low, Guard.Between(highest, low, Temperature.FromDegreesCelsius(60), Advice, nameof(highest))),
        };
    }

    /// <summary>The same ranges with one of supply voltage.</summary>
    /// <param name="lowest">6 to 20 V.</param>
    /// <param name="highest">From the lowest to 20 V.</param>
    /// <returns>The ranges.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A voltage is outside its range.</exception>
    public OperatingRanges WithSupplyVoltage(ElectricPotential lowest, ElectricPotential highest)
    {
        ElectricPotential low = Quantities.SupplyVoltage.Within(lowest, nameof(lowest));
        return this with
        {
            SupplyVoltage = (low, Guard.Between(
                Quantities.SupplyVoltage.Within(highest, nameof(highest)),
                low,
                ElectricPotential.FromVolts(20),
                "Give the highest voltage, from the lowest on.",
                nameof(highest))),
        };
    }

    /// <summary>The same ranges with one of the fuel's temperature in the rail.</summary>
    /// <param name="lowest">−30 to 80 °C.</param>
    /// <param name="highest">From the lowest to 80 °C.</param>
    /// <returns>The ranges.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A temperature is outside its range.</exception>
    public OperatingRanges WithFuelTemperature(Temperature lowest, Temperature highest)
    {
        Temperature low = Fuel.WithinRange(lowest, nameof(lowest));
        return this with
        {
            FuelTemperature = (low, Guard.Between(
                highest, low, Fuel.MaximumTemperature, "Give the temperature of the warmest fuel in the rail, from the lowest on.", nameof(highest))),
        };
    }

    /// <summary>
    /// The same ranges with one of ethanol content. A controller with an ethanol sensor knows the content, one without believes in the fuel of
    /// its calibration.
    /// </summary>
    /// <param name="lowest">Share by volume, 0 to 100 %.</param>
    /// <param name="highest">From the lowest to 100 %.</param>
    /// <param name="petrol">What the ethanol is blended with; <see cref="Fuel.Petrol"/> if not given.</param>
    /// <returns>The ranges. The fuel of the system that they are asked of must be such a blend, or that petrol.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A share is outside its range.</exception>
    public OperatingRanges WithEthanolContent(Ratio lowest, Ratio highest, Fuel? petrol = null)
    {
        const string Advice = "It is the share of ethanol by volume.";
        Ratio low = Guard.Between(lowest, Ratio.Zero, Ratio.FromPercent(100), Advice, nameof(lowest));
        return this with
        {
            EthanolContent = (low, Guard.Between(highest, low, Ratio.FromPercent(100), Advice, nameof(highest))),
            Petrol = petrol ?? Fuel.Petrol,
        };
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(OperatingRanges? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The ranges that were given.</summary>
    /// <returns>One line.</returns>
    public override string ToString()
    {
        List<string> given = [];
        if (AmbientPressure is { } pressure)
        {
            given.Add($"ambient pressure {Readable.Of(pressure.Lowest)} to {Readable.Of(pressure.Highest)}");
        }

        if (AmbientTemperature is { } air)
        {
            given.Add($"ambient temperature {Readable.Of(air.Lowest)} to {Readable.Of(air.Highest)}");
        }

        if (SupplyVoltage is { } supply)
        {
            given.Add($"supply voltage {Readable.Of(supply.Lowest)} to {Readable.Of(supply.Highest)}");
        }

        if (FuelTemperature is { } fuel)
        {
            given.Add($"fuel temperature {Readable.Of(fuel.Lowest)} to {Readable.Of(fuel.Highest)}");
        }

        if (EthanolContent is { } ethanol)
        {
            given.Add($"ethanol content {Readable.Of(ethanol.Lowest)} to {Readable.Of(ethanol.Highest)}");
        }

        return given.Count > 0 ? string.Join("; ", given) : $"no range; {Conditions}";
    }
}
