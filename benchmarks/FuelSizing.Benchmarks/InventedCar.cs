using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>An invented car, for timings.</summary>
internal static class InventedCar
{
    public static (double Rpm, double Percent)[] Efficiencies { get; } =
        [(800, 72), (2000, 84), (3500, 94), (5000, 101), (6000, 101), (6800, 97), (7200, 91)];

    public static (double Rpm, double Kilowatts)[] Powers { get; } =
        [(800, 9), (2000, 33), (3500, 68), (5000, 105), (6200, 127), (6800, 132), (7200, 128)];

    public static FuelDemandModel Demand { get; } = FuelDemandModel.Of(
        Engine.Of("2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Rpm(7200)),
        Induction.Turbocharged(Ratio.FromPercent(72), Ratio.FromPercent(70), Kpa(5)),
        VolumetricEfficiency.Of([.. Efficiencies.Select(point => (Rpm(point.Rpm), Ratio.FromPercent(point.Percent)))]),
        PowerCurve.AtWheels(
            Atmosphere.Standard,
            Ratio.FromPercent(15),
            [.. Powers.Select(point => (Rpm(point.Rpm), Power.FromKilowatts(point.Kilowatts)))]),
        Ratio.FromPercent(85),
        FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(315)));

    public static double[] DeadTimeVolts { get; } = [8, 12, 13.5, 16];

    public static double[] DeadTimeKilopascals { get; } = [100, 200, 300, 400, 600];

    public static double[][] DeadTimeMilliseconds { get; } =
        [.. new[] { 0.92, 0.96, 1.0, 1.1, 1.35 }.Select(more => new[] { 2.4, 1.1, 0.9, 0.7 }.Select(time => time * more).ToArray())];

    /// <summary>Dead times, s, over voltage, a curve for each pressure.</summary>
    public static Curve[] DeadTimes { get; } =
    [
        .. DeadTimeMilliseconds.Select(row => new Curve(
            DeadTimeVolts, [.. row.Select(time => time / 1000)], Interpolation.Monotone)),
    ];

    public static Injector Injector { get; } = Injector.Of(
        "injector",
        VolumeFlow.FromMillilitersPerMinute(440),
        Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.Of(
            [.. DeadTimeVolts.Select(Volt)],
            [.. DeadTimeKilopascals.Select(Kpa)],
            [.. DeadTimeMilliseconds.Select(row => row.Select(time => Duration.FromMilliseconds(time)).ToArray())]),
        Duration.FromMilliseconds(1.4),
        Kpa(600));

    public static PumpCurve Pump { get; } = PumpCurve.At(
        "pump",
        Volt(13.5),
        (Kpa(0), VolumeFlow.FromLitersPerHour(330)),
        (Kpa(200), VolumeFlow.FromLitersPerHour(290)),
        (Kpa(300), VolumeFlow.FromLitersPerHour(265)),
        (Kpa(400), VolumeFlow.FromLitersPerHour(230)),
        (Kpa(500), VolumeFlow.FromLitersPerHour(185)),
        (Kpa(650), VolumeFlow.FromLitersPerHour(90)),
        (Kpa(750), VolumeFlow.Zero));

    public static Plumbing Plumbing { get; } = Plumbing.Of(
        supply:
        [
            Line.Of("supply", Length.FromMillimeters(8), Length.FromMeters(4.5), Roughness.DrawnTube, [Fitting.Bend90.Times(6)]),
            Filter.Of("filter", VolumeFlow.FromLitersPerHour(150), Kpa(10)),
        ],
        returnLine: [Line.Of("return", Length.FromMillimeters(6), Length.FromMeters(4.5), Roughness.DrawnTube)]);

    public static FuelSystem System { get; } = FuelSystem.Return(
        Demand,
        InjectorSet.Of(Injector, 4),
        RisingRate.From(Kpa(300), 2, Kpa(10), Kpa(480)),
        FuelSizing.Pumps.Pump.From(Pump));

    public static FuelSystem WithLines { get; } = System.With(Plumbing);

    public static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);

    public static Pressure Kpa(double pressure) => Pressure.FromKilopascals(pressure);

    public static ElectricPotential Volt(double voltage) => ElectricPotential.FromVolts(voltage);
}
