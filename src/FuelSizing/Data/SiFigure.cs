using UnitsNet;

namespace FuelSizing.Data;

/// <summary>A quantity as a number in SI and the symbol of its unit.</summary>
/// <param name="Value">The number.</param>
/// <param name="Unit">The unit's symbol; none of a ratio.</param>
internal readonly record struct SiFigure(double Value, string? Unit)
{
    /// <summary>
    /// The number in SI. UnitsNet's own base units are SI with three exceptions, which stand first: grams, radians and what has several.
    /// </summary>
    public static SiFigure Of(IQuantity quantity) => quantity switch
    {
        Pressure pressure => new(pressure.Pascals, "Pa"),
        VolumeFlow flow => new(flow.CubicMetersPerSecond, "m³/s"),
        MassFlow flow => new(flow.KilogramsPerSecond, "kg/s"),
        RotationalSpeed speed => new(speed.RevolutionsPerSecond, "rev/s"),
        Ratio ratio => new(ratio.DecimalFractions, null),
        Duration time => new(time.Seconds, "s"),
        Temperature temperature => new(temperature.Kelvins, "K"),
        ElectricPotential voltage => new(voltage.Volts, "V"),
        ElectricCurrent current => new(current.Amperes, "A"),
        ElectricResistance resistance => new(resistance.Ohms, "Ω"),
        ElectricResistivity resistivity => new(resistivity.OhmMeters, "Ω·m"),
        Power power => new((double)power.Watts, "W"),
        LinearPowerDensity heat => new((double)heat.WattsPerMeter, "W/m"),
        Mass mass => new(mass.Kilograms, "kg"),
        Density density => new(density.KilogramsPerCubicMeter, "kg/m³"),
        SpecificEnergy energy => new(energy.JoulesPerKilogram, "J/kg"),
        BrakeSpecificFuelConsumption consumption => new(consumption.KilogramsPerJoule, "kg/J"),
        Length length => new(length.Meters, "m"),
        Area area => new(area.SquareMeters, "m²"),
        Volume volume => new(volume.CubicMeters, "m³"),
        Speed velocity => new(velocity.MetersPerSecond, "m/s"),
        Torque torque => new(torque.NewtonMeters, "N·m"),
        DynamicViscosity viscosity => new(viscosity.NewtonSecondsPerMeterSquared, "Pa·s"),
        KinematicViscosity viscosity => new(viscosity.SquareMetersPerSecond, "m²/s"),
        CoefficientOfThermalExpansion expansion => new(expansion.PerKelvin, "1/K"),
        Energy energy => new(energy.Joules, "J"),
        Frequency frequency => new(frequency.Hertz, "Hz"),

        // A quantity that only a check of one's own has: in UnitsNet's base unit, whose name is told.
        _ => new(quantity.As(quantity.QuantityInfo.BaseUnitInfo.Value), quantity.QuantityInfo.BaseUnitInfo.Name),
    };
}
