using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>What surrounds the fuel system: air, supply voltage, fuel temperature.</summary>
public sealed record Conditions
{
    private static readonly Identity<Conditions> _identity = new Identity<Conditions>()
        .Value(conditions => conditions.Atmosphere)
        .Number(conditions => conditions.SupplyVolts)
        .Number(conditions => conditions.FuelKelvins);

    private Conditions(Atmosphere atmosphere, ElectricPotential supplyVoltage, Temperature fuelTemperature)
    {
        (Atmosphere, SupplyVoltage, FuelTemperature) = (atmosphere, supplyVoltage, fuelTemperature);
        SupplyVolts = supplyVoltage.Volts;
        FuelKelvins = fuelTemperature.Kelvins;
    }

    /// <summary>Standard air at sea level, 13.5 V from a charging alternator (common practice, no source), fuel at 20 °C.</summary>
    public static Conditions Default { get; } =
        Of(Atmosphere.Standard, ElectricPotential.FromVolts(13.5), Temperature.FromDegreesCelsius(20));

    /// <summary>The ambient air.</summary>
    public Atmosphere Atmosphere { get; }

    /// <summary>Voltage at the injectors, and at the source of the pumps' wiring.</summary>
    public ElectricPotential SupplyVoltage { get; }

    /// <summary>Fuel in the rail.</summary>
    public Temperature FuelTemperature { get; }

    internal double SupplyVolts { get; }

    internal double FuelKelvins { get; }

    /// <summary>Describes the conditions.</summary>
    /// <param name="atmosphere">The ambient air.</param>
    /// <param name="supplyVoltage">At the injectors, and at the source of the pumps' wiring, 6 to 20 V.</param>
    /// <param name="fuelTemperature">In the rail, −30 to 80 °C.</param>
    /// <returns>The conditions.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Conditions Of(
        Atmosphere atmosphere, ElectricPotential supplyVoltage, Temperature fuelTemperature)
    {
        ArgumentNullException.ThrowIfNull(atmosphere);
        return new(
            atmosphere,
            Quantities.SupplyVoltage.Within(supplyVoltage, nameof(supplyVoltage)),
            Fuel.WithinRange(fuelTemperature, nameof(fuelTemperature)));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Conditions? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Air, supply voltage and fuel temperature.</summary>
    /// <returns>For instance <c>air 101 kPa, 15 °C; supply 13.5 V; fuel 20 °C</c>.</returns>
    public override string ToString() =>
        $"air {Atmosphere}; supply {Readable.Of(SupplyVoltage)}; fuel {Readable.Of(FuelTemperature)}";

    /// <summary>The same air at another voltage and fuel temperature, unchecked: they are known to be within range.</summary>
    internal Conditions With(ElectricPotential supplyVoltage, Temperature fuelTemperature) =>
        new(Atmosphere, supplyVoltage, fuelTemperature);
}
