using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>The static flow that a demand needs.</summary>
public static class SizeInjector
{
    /// <summary>
    /// The short rule: Q = P · BSFC/(z · D · ρ), static flow of one injector at its own differential pressure on this
    /// fuel. Dead time is not in it: the duty limit must leave room for it.
    /// </summary>
    /// <param name="crankPower">P, 0 to 3,000 kW.</param>
    /// <param name="consumption">BSFC and fuel (density at 15 °C).</param>
    /// <param name="injectors">z, 1 to 48.</param>
    /// <param name="dutyLimit">D, 10 to 100 %.</param>
    /// <returns>Static flow of one injector.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static VolumeFlow ForPower(Power crankPower, FuelConsumption consumption, int injectors, Ratio dutyLimit)
    {
        ArgumentNullException.ThrowIfNull(consumption);
        Real fuel = FuelDemandFlow.FromPower<Real>(
            (double)Drivetrain.Within(crankPower, nameof(crankPower)).Watts,
            consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule);
        return VolumeFlow.FromCubicMetersPerSecond((double)InjectorFlow.RequiredStatic<Real>(
            FuelDemandFlow.Volume(fuel, (Real)consumption.Fuel.ReferenceDensity),
            Guard.Count(injectors, 1, 48, "Count the injectors that feed the engine.", nameof(injectors)),
            1,
            DutyCycle.WithinLimit(dutyLimit, nameof(dutyLimit)),
            0));
    }
}
