using CsCheck;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// Random cars with a boost line, a controller that does not know everything, and every kind of regulator and of pump assembly: for questions
/// of what if. All figures are invented.
/// </summary>
internal static class RandomCars
{
    /// <summary>More by FUELSIZING_WHAT_IFS, for the count that docs/mixture.md states.</summary>
    public static int Count(int few) => Environment.GetEnvironmentVariable("FUELSIZING_WHAT_IFS") is { Length: > 0 } more
        ? int.Parse(more, System.Globalization.CultureInfo.InvariantCulture)
        : few;

    public static Gen<RandomCar> Any { get; } = Gen.Select(
        Gen.Select(Gen.Int[0, 3], Gen.Double[0.2, 0.7], Gen.Double[4500, 6500], Gen.Bool),
        Gen.Select(Gen.Int[0, 4], Gen.Double[260, 380], Gen.Double[1.2, 9], Gen.Double[0, 0.15], Gen.Double[550, 1200]),
        Gen.Select(Gen.Double[380, 900], Gen.Double[0.9, 2.4], Gen.Int[0, 5], Gen.Int[0, 3]),
        Gen.Select(Gen.Double[84, 102], Gen.Double[-5, 32], Gen.Double[12.2, 14.4], Gen.Double[5, 55]),
        Gen.Select(Gen.Double[1400, 3200], Gen.Double[4600, 7000], Gen.Double[0, 60], Gen.Bool)).Select(
            (boost, regulator, parts, air, range) =>
            {
                FuelDemandModel demand = Wren.Demand(Wren.Petrol, Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95)));
                demand = range.Item4 ? demand.With(FuelBlend.EthanolInPetrol(Wren.Percent(range.Item3))) : demand;
                FuelSystem system = FuelSystem.Return(
                    demand,
                    InjectorSet.Of(InjectorOf(parts.Item1), 4),
                    RegulatorOf(regulator.Item1, regulator.Item2, regulator.Item3, regulator.Item4, regulator.Item5),
                    PumpsOf(parts.Item3, parts.Item2),
                    SizingLimits.Of(Wren.Percent(88), Wren.Percent(8), Wren.Kpa(900)).With(MixtureLimits.Of(0.9, Pressure.FromBars(0.06), 0.62)),
                    LinesOf(parts.Item4));
                BoostLine line = boost.Item1 switch
                {
                    0 => MeasuredBoost.Of(
                        (Wren.Rpm(1000), Pressure.FromBars(0.02)),
                        (Wren.Rpm(boost.Item3), Pressure.FromBars(boost.Item2)),
                        (Wren.Rpm(7200), Pressure.FromBars(boost.Item2 * 0.8))),
                    1 => HeldBoost.Of(Pressure.FromBars(boost.Item2), Wren.Rpm(3600), Wren.Rpm(7200), Wren.Rpm(1200)),
                    2 => CentrifugalBoost.From(8.3, Wren.Rpm(boost.Item3), Pressure.FromBars(boost.Item2), Atmosphere.Standard).WithMaximumCompressorSpeed(Wren.Rpm(54_000)),
                    _ => DisplacementBoost.Of(2.1, Volume.FromLiters(0.75 * (1 + boost.Item2)), Wren.Percent(82)),
                };
                Conditions conditions = Conditions.Of(
                    Atmosphere.Of(Wren.Kpa(air.Item1), Temperature.FromDegreesCelsius(air.Item2)),
                    Wren.Volt(air.Item3),
                    Temperature.FromDegreesCelsius(air.Item4));
                return new RandomCar(
                    system.With(ControllerOf((int)(parts.Item1 * 10) % 4, system, boost.Item4)), line, Wren.Rpm(range.Item1), Wren.Rpm(range.Item2), conditions)
                {
                    Setting = new(regulator.Item1, regulator.Item2, regulator.Item3, regulator.Item4, regulator.Item5),
                    PumpKind = parts.Item3,
                };
            });

    // Dead times far up, so that a rail over boost seldom leaves the table, and lambda with it.
    private static Injector InjectorOf(double millilitresPerMinute) => Injector.Of(
        "injector K",
        VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.Of(
            [Wren.Volt(8), Wren.Volt(11), Wren.Volt(14), Wren.Volt(16)],
            [Wren.Kpa(50), Wren.Kpa(400), Wren.Kpa(900), Wren.Kpa(1600)],
            [
                [Wren.Ms(1.8), Wren.Ms(1.1), Wren.Ms(0.72), Wren.Ms(0.6)],
                [Wren.Ms(2.4), Wren.Ms(1.39), Wren.Ms(0.88), Wren.Ms(0.72)],
                [Wren.Ms(3.3), Wren.Ms(1.8), Wren.Ms(1.09), Wren.Ms(0.88)],
                [Wren.Ms(4.9), Wren.Ms(2.5), Wren.Ms(1.42), Wren.Ms(1.1)],
            ]),
        Wren.Ms(1.6),
        Wren.Kpa(1000)) is var injector && millilitresPerMinute % 3 < 1
            ? injector.WithMeasuredFlows(
                Flow(millilitresPerMinute, 120, 0.97), Flow(millilitresPerMinute, 460, 1.02), Flow(millilitresPerMinute, 720, 0.95), Flow(millilitresPerMinute, 910, 0.93))
            : injector;

    // A share of what the square-root law gives.
    private static (Pressure, VolumeFlow) Flow(double rated, double kilopascals, double share) =>
        (Wren.Kpa(kilopascals), VolumeFlow.FromMillilitersPerMinute(rated * Math.Sqrt(kilopascals / 300) * share));

    private static PressureRegulator RegulatorOf(int kind, double pressure, double gain, double onset, double ceiling) => kind switch
    {
        0 => Fixed.At(Wren.Kpa(pressure)),
        1 => ManifoldReferenced.From(Wren.Kpa(pressure)),
        2 => RisingRate.From(Wren.Kpa(pressure), gain, Pressure.FromBars(onset), Wren.Kpa(ceiling)),
        3 => RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(pressure)), RisingRate.From(Pressure.Zero, gain, Pressure.Zero, Wren.Kpa(ceiling))),
        _ => RegulatorSeries.Of(Fixed.At(Wren.Kpa(pressure)), RisingRate.From(Wren.Kpa(pressure + (100 * onset)), gain, Pressure.FromBars(onset), Wren.Kpa(ceiling))),
    };

    private static PumpAssembly PumpsOf(int kind, double scale)
    {
        // Two descriptions that differ, for a failure names one of them; measured at two voltages or at one.
        Pump first = Pump.Of([CurveOf("pump P", 12, 0.86 * scale), CurveOf("pump P", 13.5, scale)]);
        Pump second = Pump.Of([CurveOf("pump Q", 11.5, 0.7 * scale), CurveOf("pump Q", 14, 0.93 * scale)]);
        return kind switch
        {
            0 => first,
            1 => Pump.From(CurveOf("pump P", 13.5, scale)),
            2 => PumpSeries.Of(SeriesBypass.CheckValve, first, second),
            3 => PumpParallel.Of(first, second),
            4 => PumpSeries.Of(SeriesBypass.CheckValve, first, PumpParallel.Of(second, Pump.From(CurveOf("pump R", 13.5, scale)))),
            _ => PumpSeries.Of(SeriesBypass.CheckValve, second, second),
        };
    }

    private static PumpCurve CurveOf(string name, double volts, double scale)
    {
        double square = volts / 13.5 * volts / 13.5;
        return PumpCurve.At(
            name,
            Wren.Volt(volts),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(219 * scale)),
            (Wren.Kpa(330 * square), VolumeFlow.FromLitersPerHour(166 * scale)),
            (Wren.Kpa(610 * square), VolumeFlow.FromLitersPerHour(93 * scale)),
            (Wren.Kpa(880 * square), VolumeFlow.Zero));
    }

    private static Plumbing LinesOf(int kind)
    {
        Filter filter = Filter.Of("filter F", VolumeFlow.FromLitersPerHour(190), Wren.Kpa(12), 1.4);
        Line Hose(string name, double bore) => Line.Of(name, Length.FromMillimeters(bore), Length.FromMeters(3.4), Roughness.RubberHose);
        return kind switch
        {
            0 => Plumbing.None,
            1 => Plumbing.Of(supply: [filter]),
            2 => Plumbing.Of(supply: [Hose("supply", 7.4), filter], returnLine: [Hose("return", 6.8)]),
            _ => Plumbing.Of(supply: [filter, Filter.Of("filter G", VolumeFlow.FromLitersPerHour(230), Wren.Kpa(7))], returnLine: [Hose("return", 7.2)]),
        };
    }

    private static EngineController ControllerOf(int kind, FuelSystem system, bool sensor)
    {
        ControllerData data = ControllerData.Of(system.Injectors.Injector, sensor ? system.Demand.Consumption.Fuel : Fuel.Petrol, TargetLambda.At(0.83));
        data = sensor ? data.WithEthanolSensor() : data;
        return kind switch
        {
            0 => RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(9)), (Wren.Rpm(5000), Wren.Ms(8.5)), (Wren.Rpm(7200), Wren.Ms(7.5))),
            1 => SpeedDensityController.Of(data, Wren.VolumetricEfficiency, Wren.Kpa(125)),
            2 => ThrottleController.Of(data, Wren.VolumetricEfficiency, calibratedAt: Atmosphere.Standard),
            _ => AirflowMeterController.Of(data, MassFlow.FromGramsPerSecond(140)),
        };
    }
}

/// <summary>A car, its boost line, the pull, and the day.</summary>
internal sealed record RandomCar(FuelSystem System, BoostLine Line, RotationalSpeed Slowest, RotationalSpeed Fastest, Conditions Conditions)
{
    /// <summary>The figures of its regulator.</summary>
    public required RandomSetting Setting { get; init; }

    /// <summary>How its pumps are put together.</summary>
    public required int PumpKind { get; init; }

    /// <summary>What is left of its pumps, written for each kind of assembly, with one of them dead.</summary>
    public PumpAssembly Without(string dead)
    {
        IReadOnlyList<Pump> pumps = System.Pump.Pumps;
        return (PumpKind, dead) switch
        {
            (2 or 3, "pump P") => pumps[1],
            (2 or 3, "pump Q") => pumps[0],
            (4, "pump P") => PumpParallel.Of(pumps[1], pumps[2]),
            (4, "pump Q") => PumpSeries.Of(SeriesBypass.CheckValve, pumps[0], pumps[2]),
            (4, "pump R") => PumpSeries.Of(SeriesBypass.CheckValve, pumps[0], pumps[1]),
            (5, "pump Q") => pumps[0],
            _ => throw new InvalidOperationException($"{dead} is not in {System.Pump.Name}."),
        };
    }

    /// <summary>Speeds of the pull, evenly spaced.</summary>
    public IEnumerable<RotationalSpeed> Speeds(int count) => Enumerable.Range(0, count).Select(at =>
        at == 0 ? Slowest
        : at == count - 1 ? Fastest
        : Wren.Rpm(Slowest.RevolutionsPerMinute + ((Fastest.RevolutionsPerMinute - Slowest.RevolutionsPerMinute) * at / (count - 1))));

    /// <summary>A system solved at a speed of the line, by its definition.</summary>
    public OperatingResult Solve(FuelSystem system, RotationalSpeed speed, Conditions conditions) =>
        system.Solve(OperatingPoint.At(speed, Line.At(speed, system.Demand, conditions.Atmosphere), conditions));
}

/// <summary>The figures of a regulator: kPa, the gain, bar, kPa.</summary>
internal sealed record RandomSetting(int Kind, double Base, double Gain, double Onset, double Ceiling);
