using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>What surrounds the fuel system: air, supply voltage, fuel temperature.</summary>
public sealed record Conditions
{
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

    /// <summary>The same air at another voltage and fuel temperature, unchecked: they are known to be within range.</summary>
    internal Conditions With(ElectricPotential supplyVoltage, Temperature fuelTemperature) =>
        new(Atmosphere, supplyVoltage, fuelTemperature);
}
