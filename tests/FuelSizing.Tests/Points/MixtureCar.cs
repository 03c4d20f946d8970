using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>
/// A car whose mixture can be worked by hand: flow goes with √Δp, dead time rises straight with pressure and falls straight with voltage, and the engine's
/// fuel follows from its air. All figures are invented.
/// </summary>
internal static class MixtureCar
{
    public static Pump Ample { get; } = Pump.From(PumpCurve.At(
        "ample",
        Wren.Volt(13.5),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(900)),
        (Wren.Kpa(1500), VolumeFlow.FromLitersPerHour(700))));

    // ms at 13.5 V: 0.9 ms at 300 kPa, 1 µs more for each kPa.
    public static double Dead(double kilopascals) => 0.9 + ((kilopascals - 300) / 1000);

    // m³/s of one injector: √(Δp/300 kPa) and √(ρ of heptane/ρ of the fuel).
    public static double Injector(double millilitresPerMinute, double kilopascals, double density) =>
        millilitresPerMinute / 60e6 * Math.Sqrt(kilopascals / 300 * TestFluid.Heptane.Density.KilogramsPerCubicMeter / density);

    public static double Density(FuelSystem system) => system.Demand.Consumption.Fuel.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter;

    public static double Needed(FuelSystem system, double boost) => system.Demand.At(Wren.Rpm(5000), Wren.Kpa(boost), Wren.Hill.Atmosphere).MassFlow.KilogramsPerSecond;

    public static Injector InjectorOf(double millilitresPerMinute) => FuelSizing.Injectors.Injector.Of(
        "injector A",
        VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.Of([Wren.Volt(11), Wren.Volt(16)], [Wren.Kpa(50), Wren.Kpa(900)], [[Wren.Ms(0.9), Wren.Ms(0.4)], [Wren.Ms(1.75), Wren.Ms(1.25)]]),
        Wren.Ms(1.6),
        Wren.Kpa(900)).WithMinimumDifferential(Wren.Kpa(60));

    public static Pump PumpOf(double litresPerHour) => Pump.From(PumpCurve.At(
        "pump P",
        Wren.Volt(13.5),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(litresPerHour)),
        (Wren.Kpa(900), VolumeFlow.FromLitersPerHour(litresPerHour / 3))));

    /// <summary>Its fuel follows from its air; no cooler, so that the charge is as warm whatever the sensor reads.</summary>
    public static FuelSystem Car(PressureRegulator regulator, Pump pump) => FuelSystem.Return(
        FuelDemandModel.Of(
            Wren.Engine, Induction.Turbocharged(Wren.Percent(70), Wren.Percent(0), Pressure.Zero), Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, DemandBasis.Air),
        InjectorSet.Of(InjectorOf(360), 4),
        regulator,
        pump);
}
