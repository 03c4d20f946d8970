using FuelSizing.Engines;
using FuelSizing.Fuels;
using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>
/// The invented second car, an in-line six with a belt-driven compressor. Nothing here is the expected value of a test of
/// correctness.
/// </summary>
internal static class Dunnock
{
    public static Engine Engine { get; } = Engine.Of(
        "Dunnock 2.83 L", Volume.FromLiters(2.83), 6, EngineCycle.FourStroke, Wren.Rpm(6650));

    public static VolumetricEfficiency VolumetricEfficiency { get; } = VolumetricEfficiency.Of(
        (Wren.Rpm(850), Wren.Percent(74)),
        (Wren.Rpm(1900), Wren.Percent(83)),
        (Wren.Rpm(3100), Wren.Percent(90)),
        (Wren.Rpm(4300), Wren.Percent(94)),
        (Wren.Rpm(5400), Wren.Percent(91)),
        (Wren.Rpm(6650), Wren.Percent(82)));

    public static PowerCurve Power { get; } = PowerCurve.AtWheels(
        Atmosphere.Standard,
        Wren.Percent(16),
        (Wren.Rpm(850), UnitsNet.Power.FromKilowatts(11)),
        (Wren.Rpm(1900), UnitsNet.Power.FromKilowatts(34)),
        (Wren.Rpm(3100), UnitsNet.Power.FromKilowatts(63)),
        (Wren.Rpm(4300), UnitsNet.Power.FromKilowatts(93)),
        (Wren.Rpm(5400), UnitsNet.Power.FromKilowatts(112)),
        (Wren.Rpm(6650), UnitsNet.Power.FromKilowatts(116)));

    public static Induction Belt { get; } =
        Induction.BeltDriven(Wren.Percent(63), Wren.Percent(55), Wren.Kpa(6), Wren.Percent(94));

    public static FuelConsumption Petrol { get; } = FuelConsumption.Of(
        Fuel.Petrol, 0.83, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(345));

    /// <summary>0.41 bar at 5,900 rev/min on a mild day, the impeller at 8.37 times the crank's speed.</summary>
    public static CentrifugalBoost Centrifugal { get; } = CentrifugalBoost.From(
        8.37, Wren.Rpm(5900), Pressure.FromBars(0.41), Atmosphere.Of(Wren.Kpa(98.6), Temperature.FromDegreesCelsius(17)));

    public static DisplacementBoost Displacement { get; } =
        DisplacementBoost.Of(1.83, Volume.FromLiters(1.16), Wren.Percent(87));

    public static FuelDemandModel Demand(VolumetricEfficiency? efficiency = null, Induction? induction = null) =>
        FuelDemandModel.Of(Engine, induction ?? Belt, efficiency ?? VolumetricEfficiency, Power, Wren.Percent(83), Petrol);
}
