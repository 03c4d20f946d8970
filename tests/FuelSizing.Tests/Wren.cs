using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>
/// The invented hill-climb car, for tests that need a whole system. Nothing here is the expected value of a test of
/// correctness.
/// </summary>
internal static class Wren
{
    public static Engine Engine { get; } = Engine.Of(
        "Wren 2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Rpm(7200));

    public static VolumetricEfficiency VolumetricEfficiency { get; } = VolumetricEfficiency.Of(
        (Rpm(800), Percent(72)),
        (Rpm(2000), Percent(84)),
        (Rpm(3500), Percent(94)),
        (Rpm(5000), Percent(101)),
        (Rpm(6000), Percent(101)),
        (Rpm(6800), Percent(97)),
        (Rpm(7200), Percent(91)));

    public static PowerCurve Power { get; } = PowerCurve.AtWheels(
        Atmosphere.Standard,
        Percent(15),
        (Rpm(800), UnitsNet.Power.FromKilowatts(9)),
        (Rpm(2000), UnitsNet.Power.FromKilowatts(33)),
        (Rpm(3500), UnitsNet.Power.FromKilowatts(68)),
        (Rpm(5000), UnitsNet.Power.FromKilowatts(105)),
        (Rpm(6200), UnitsNet.Power.FromKilowatts(127)),
        (Rpm(6800), UnitsNet.Power.FromKilowatts(132)),
        (Rpm(7200), UnitsNet.Power.FromKilowatts(128)));

    public static Induction Turbocharger { get; } =
        Induction.Turbocharged(Percent(72), Percent(70), Pressure.FromKilopascals(5));

    public static FuelConsumption Petrol { get; } = FuelConsumption.Of(
        Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315));

    public static DeadTimeTable DeadTime { get; } = DeadTimeTable.Of(
        [Volt(8), Volt(10), Volt(12), Volt(14), Volt(16)],
        [Kpa(100), Kpa(200), Kpa(300), Kpa(400), Kpa(600)],
        [
            [Ms(2.05), Ms(1.42), Ms(1.00), Ms(0.76), Ms(0.62)],
            [Ms(2.20), Ms(1.50), Ms(1.05), Ms(0.80), Ms(0.65)],
            [Ms(2.40), Ms(1.60), Ms(1.10), Ms(0.85), Ms(0.70)],
            [Ms(2.60), Ms(1.75), Ms(1.20), Ms(0.90), Ms(0.75)],
            [Ms(3.20), Ms(2.10), Ms(1.40), Ms(1.05), Ms(0.85)],
        ]);

    public static PumpCurve Pump { get; } = PumpOf(1);

    public static Conditions Hill { get; } = Conditions.Of(
        Atmosphere.AtAltitude(Length.FromMeters(600)), Volt(13.5), Temperature.FromDegreesCelsius(35));

    public static FuelDemandModel Demand(FuelConsumption? consumption = null, Induction? induction = null) =>
        FuelDemandModel.Of(
            Engine, induction ?? Turbocharger, VolumetricEfficiency, Power, Percent(85), consumption ?? Petrol);

    public static Injector InjectorOf(double millilitresPerMinute) => Injector.Of(
        "injector A",
        VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute),
        Kpa(300),
        TestFluid.Heptane,
        DeadTime,
        Ms(1.6),
        Kpa(550));

    public static PumpCurve PumpOf(double scale) => PumpCurve.At(
        "pump P",
        Volt(13.5),
        (Kpa(0), VolumeFlow.FromLitersPerHour(215 * scale)),
        (Kpa(200), VolumeFlow.FromLitersPerHour(185 * scale)),
        (Kpa(300), VolumeFlow.FromLitersPerHour(165 * scale)),
        (Kpa(400), VolumeFlow.FromLitersPerHour(140 * scale)),
        (Kpa(500), VolumeFlow.FromLitersPerHour(110 * scale)),
        (Kpa(650), VolumeFlow.FromLitersPerHour(50 * scale)),
        (Kpa(750), VolumeFlow.Zero));

    /// <summary>A pump's curve with current, its flow scaled; pressures go with the square of the voltage.</summary>
    public static PumpCurve WiredCurve(double volts, double scale)
    {
        double square = volts / 13.5 * volts / 13.5;
        return PumpCurve.WithCurrent(
            "pump W",
            Volt(volts),
            (Kpa(0), VolumeFlow.FromLitersPerHour(215 * scale), ElectricCurrent.FromAmperes(4.5 * square)),
            (Kpa(200 * square), VolumeFlow.FromLitersPerHour(185 * scale), ElectricCurrent.FromAmperes(6 * square)),
            (Kpa(400 * square), VolumeFlow.FromLitersPerHour(140 * scale), ElectricCurrent.FromAmperes(8 * square)),
            (Kpa(600 * square), VolumeFlow.FromLitersPerHour(70 * scale), ElectricCurrent.FromAmperes(10.5 * square)),
            (Kpa(750 * square), VolumeFlow.Zero, ElectricCurrent.FromAmperes(12.5 * square)));
    }

    /// <summary>That pump, measured at two voltages.</summary>
    public static FuelSizing.Pumps.Pump WiredPump { get; } = FuelSizing.Pumps.Pump.Of([WiredCurve(12, 0.85), WiredCurve(13.5, 1)]);

    public static FuelSystem System(
        PressureRegulator? regulator = null,
        double injector = 360,
        double pump = 1,
        FuelConsumption? consumption = null,
        SizingLimits? limits = null) =>
        FuelSystem.Return(
            Demand(consumption),
            InjectorSet.Of(InjectorOf(injector), 4),
            regulator ?? ManifoldReferenced.From(Kpa(300)),
            FuelSizing.Pumps.Pump.From(PumpOf(pump)),
            limits);

    public static OperatingPoint At(double rpm, double boostBar) =>
        OperatingPoint.At(Rpm(rpm), Pressure.FromBars(boostBar), Hill);

    public static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);

    public static Ratio Percent(double share) => Ratio.FromPercent(share);

    public static Pressure Kpa(double pressure) => Pressure.FromKilopascals(pressure);

    public static ElectricPotential Volt(double voltage) => ElectricPotential.FromVolts(voltage);

    public static Duration Ms(double time) => Duration.FromMilliseconds(time);
}
