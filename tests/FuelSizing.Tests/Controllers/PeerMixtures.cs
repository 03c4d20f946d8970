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
using FuelSizing.Tests.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Controllers;

/// <summary>
/// Systems with controllers of every kind, the same ones on each run, whose mixture an independent program calculates too (tests/peer). All
/// figures are invented.
/// </summary>
/// <remarks>
/// What a system is to meet (a rail that sags, injectors held open) is made likely by the sizes of its parts; whether it does is counted
/// by the tests, and by the program from its own answers.
/// </remarks>
internal static class PeerMixtures
{
    private const int Count = 500;

    /// <summary>What a system is meant to meet; half of them nothing in particular. The kinds of controllers turn ten times as fast.</summary>
    private static readonly Aim[] Aims =
    [
        Aim.None, Aim.Sagging, Aim.None, Aim.HeldOpen, Aim.Starved, Aim.PartLoad, Aim.None, Aim.DutyCut, Aim.None, Aim.Floor,
        Aim.None, Aim.Sagging, Aim.PartLoad, Aim.DataEnds, Aim.None, Aim.HeldOpen, Aim.Starved, Aim.Floor, Aim.None, Aim.PartLoad,
        Aim.DutyCut, Aim.DataEnds, Aim.Sagging, Aim.PartLoad, Aim.Floor,
    ];

    private enum Aim
    {
        None,
        PartLoad,
        Sagging,
        Starved,
        Floor,
        HeldOpen,
        DutyCut,
        DataEnds,
    }

    /// <summary>Every system, with the point at which it is solved.</summary>
    public static IReadOnlyList<PeerMixture> All { get; } = [.. Enumerable.Range(0, Count).Select(Of)];

    private static PeerMixture Of(int number)
    {
        Draw draw = new(number);
        Aim aim = Aims[number / 10 % Aims.Length];
        (FuelDemandModel demand, OperatingPoint point) = Engine(draw, aim);
        demand = number % 5 == 2 ? demand.WithEvaporation(Wren.Percent(new Draw(-number).Between(5, 60))) : demand;
        double needed = demand.At(point.Speed, point.Boost, point.Conditions.Atmosphere).MassFlow.KilogramsPerSecond
            / demand.Consumption.Fuel.DensityAt(point.Conditions.FuelTemperature).KilogramsPerCubicMeter;
        LineLayout layout = aim != Aim.Floor && draw.Is(0.3) ? LineLayout.Returnless : LineLayout.Return;
        PressureRegulator regulator = Regulator(draw, layout, aim);
        double differential = Math.Max(3e4, regulator.RailGauge(point.Boost).Pascals - point.Boost.Pascals);
        InjectorSet injectors = Injectors(draw, aim, demand, point, needed, differential);
        injectors = number % 4 == 1 ? Measured(injectors, new Draw(-number)) : injectors;
        RecordedPulses? recorded = number % 10 > 6
            ? Recorded(draw, aim, number % 10 > 7, demand, point, injectors, needed, differential)
            : null;
        EngineController controller = number % 10 == 0
            ? IdealController.Instance
            : recorded is not null ? recorded.Controller : Calculating(draw, aim, number % 10, demand, point, injectors, differential);
        Plumbing plumbing = Lines(draw, aim);
        FuelSystem ample = System(layout, demand, injectors, regulator, Ample(point), plumbing).With(controller);
        // A pump is sized by what the injectors would take from a rail that is held, since that is what it sags under.
        double taken = ample.Solve(point).Mixture.InjectedFlow?.CubicMetersPerSecond is { } flow and > 0 ? flow : needed;
        double share = aim switch
        {
            Aim.Sagging => draw.Between(0.4, 0.95),
            Aim.Starved => draw.Between(0.04, 0.2),
            // A hundred litres an hour and more to return, through a narrow line.
            Aim.Floor => 1.1 + (draw.Between(3e-5, 9e-5) / taken),
            _ => draw.Between(1.1, 2.5),
        };
        Pump pump = PumpFor(draw, point, regulator.RailGauge(point.Boost).Pascals, share * taken);
        return new($"{number}, {aim}, {controller.GetType().Name}", ample.With(pump), point, recorded);
    }

    private static FuelSystem System(
        LineLayout layout, FuelDemandModel demand, InjectorSet injectors, PressureRegulator regulator, Pump pump, Plumbing plumbing) =>
        layout == LineLayout.Return
            ? FuelSystem.Return(demand, injectors, regulator, pump, plumbing: plumbing)
            : FuelSystem.Returnless(demand, injectors, regulator, pump, plumbing: plumbing);

    private static (FuelDemandModel Demand, OperatingPoint Point) Engine(Draw draw, Aim aim)
    {
        bool throttled = aim is Aim.PartLoad or Aim.Starved;
        Atmosphere air = Atmosphere.Of(Wren.Kpa(draw.Between(84, 103)), Temperature.FromDegreesCelsius(draw.Between(-10, 40)));
        double boost = aim switch
        {
            Aim.Starved => draw.Between(-68, -52),
            Aim.PartLoad => draw.Between(-50, -5),
            _ => draw.Between(0, 110),
        };
        Induction induction = draw.Is(0.5)
            ? Induction.Turbocharged(Wren.Percent(draw.Between(55, 78)), Wren.Percent(draw.Between(0, 85)), Wren.Kpa(draw.Between(0, 9)))
            : Induction.BeltDriven(
                Wren.Percent(draw.Between(50, 72)), Wren.Percent(draw.Between(0, 80)), Wren.Kpa(draw.Between(0, 6)), Wren.Percent(draw.Between(80, 98)));
        if (draw.Is(0.3))
        {
            induction = induction.WithCoolant(Temperature.FromDegreesCelsius(draw.Between(0, 70)));
        }

        Fuel fuel = draw.Is(0.4) ? Fuel.Petrol
            : draw.Is(0.5) ? FuelBlend.EthanolInPetrol(Wren.Percent(draw.Between(5, 95)))
            : FuelBlend.ByVolume(
                "peer blend",
                (Fuel.PetrolOf(Density.FromKilogramsPerCubicMeter(728)), Wren.Percent(55)),
                (Fuel.Ethanol, Wren.Percent(32)),
                (Fuel.Methanol, Wren.Percent(13)));
        FuelDemandModel demand = FuelDemandModel.Of(
            FuelSizing.Engines.Engine.Of(
                "peer engine",
                Volume.FromLiters(draw.Between(0.9, 3.4)),
                4,
                draw.Is(0.2) ? EngineCycle.TwoStroke : EngineCycle.FourStroke,
                Wren.Rpm(7200)),
            induction,
            Breathing(draw),
            Wren.Power,
            Wren.Percent(draw.Between(76, 92)),
            // The consumption on petrol, carried to the fuel by its heat.
            FuelConsumption.Of(Fuel.Petrol, draw.Between(0.76, 0.92), BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(draw.Between(270, 360))).With(fuel),
            draw.Of(DemandBasis.Air, DemandBasis.Air, DemandBasis.Larger, DemandBasis.Power),
            draw.Is(0.5) ? Wren.Rpm(5300) : null);
        double rpm = throttled ? draw.Between(1300, 5200) : draw.Between(1500, 7000);
        Conditions conditions = Conditions.Of(
            air, Wren.Volt(draw.Between(11.2, 14.6)), Temperature.FromDegreesCelsius(draw.Between(-5, 65)));
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(rpm), Wren.Kpa(boost), conditions);
        return demand.At(point.Speed, point.Boost, air).MassFlow.KilogramsPerSecond > 1e-4
            ? (demand, point)
            // At little load friction can take all that the pull's density gives: then air alone says what is burnt.
            : (FuelDemandModel.Of(
                demand.Engine, induction, demand.VolumetricEfficiency, Wren.Power, demand.MechanicalEfficiency, demand.Consumption, DemandBasis.Air), point);
    }

    private static VolumetricEfficiency Breathing(Draw draw) => VolumetricEfficiency.Of(
        (Wren.Rpm(900), Wren.Percent(draw.Between(58, 76))),
        (Wren.Rpm(2300), Wren.Percent(draw.Between(72, 88))),
        (Wren.Rpm(3900), Wren.Percent(draw.Between(84, 104))),
        (Wren.Rpm(5400), Wren.Percent(draw.Between(86, 108))),
        (Wren.Rpm(7300), Wren.Percent(draw.Between(72, 96))));

    private static PressureRegulator Regulator(Draw draw, LineLayout layout, Aim aim)
    {
        Pressure set = Wren.Kpa(aim == Aim.Floor ? draw.Between(200, 260) : draw.Between(240, 420));
        VolumeFlow? least = draw.Is(0.3) ? VolumeFlow.FromLitersPerHour(draw.Between(1, 25)) : null;
        RisingRate Unit(Pressure basePressure) => RisingRate.From(
            basePressure, draw.Between(1.2, 5), Wren.Kpa(draw.Between(0, 30)), draw.Is(0.4) ? Wren.Kpa(draw.Between(430, 640)) : null, least);
        return draw.Index(layout == LineLayout.Return ? 4 : 3) switch
        {
            0 => Fixed.At(set, least),
            1 => ManifoldReferenced.From(set, least),
            2 => Unit(set),
            _ => RegulatorSeries.Of(draw.Is(0.5) ? Fixed.At(set, least) : ManifoldReferenced.From(set, least), Unit(Wren.Kpa(draw.Between(0, 250)))),
        };
    }

    // Up to a tenth off the square-root law, from under the pressures of the point to over them.
    private static InjectorSet Measured(InjectorSet set, Draw draw)
    {
        Injector injector = set.Injector;
        double[] kilopascals = [draw.Between(120, 170), draw.Between(560, 700)];
        return InjectorSet.Of(
            injector.WithMeasuredFlows([.. kilopascals.Select(pressure => (
                Wren.Kpa(pressure),
                injector.StaticFlow * Math.Sqrt(Wren.Kpa(pressure) / injector.RatedDifferential) * draw.Between(0.92, 1.04)))]),
            set.Count,
            set.InjectionsPerCycle);
    }

    private static InjectorSet Injectors(
        Draw draw, Aim aim, FuelDemandModel demand, OperatingPoint point, double needed, double differential)
    {
        int count = draw.Of(4, 4, 6, 8);
        double duty = aim switch
        {
            Aim.HeldOpen => draw.Between(1.05, 1.6),
            Aim.DutyCut => draw.Between(0.75, 0.98),
            Aim.Sagging => draw.Between(0.5, 1),
            _ => draw.Between(0.2, 0.8),
        };
        double density = demand.Consumption.Fuel.DensityAt(point.Conditions.FuelTemperature).KilogramsPerCubicMeter;
        double rated = draw.Of(250e3, 300e3, 300e3, 380e3);
        double flow = needed / (count * duty) / Math.Sqrt(differential / rated * 683.8 / density);
        return InjectorSet.Of(
            InjectorOf(
                "peer injector",
                Math.Clamp(flow * 6e7, 25, 9000),
                rated,
                aim == Aim.DataEnds ? EndingDeadTime(draw, point, differential) : DeadTime(draw),
                aim == Aim.Starved ? 12e3 : draw.Of(30e3, 80e3, 30e3)),
            count,
            draw.Is(0.3) ? 2 : 1);
    }

    private static Injector InjectorOf(string name, double millilitresPerMinute, double rated, DeadTimeTable deadTime, double lowest) => Injector.Of(
        name,
        VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute),
        Pressure.FromPascals(rated),
        TestFluid.Heptane,
        deadTime,
        Wren.Ms(1.5),
        Wren.Kpa(1900)).WithMinimumDifferential(Pressure.FromPascals(lowest));

    private static DeadTimeTable DeadTime(Draw draw) => draw.Is(0.3)
        ? DeadTimeTable.ByVoltage(
            (Wren.Volt(6.5), Wren.Ms(draw.Between(2, 3))),
            (Wren.Volt(9.2), Wren.Ms(draw.Between(1.2, 1.8))),
            (Wren.Volt(12.1), Wren.Ms(draw.Between(0.7, 1.1))),
            (Wren.Volt(14.2), Wren.Ms(draw.Between(0.5, 0.69))),
            (Wren.Volt(16.5), Wren.Ms(0.45)))
        : TableOver(draw, [6.5, 9, 11.4, 12.6, 14.1, 16.8], [50, 140, 260, 390, 700, 1900]);

    private static DeadTimeTable TableOver(Draw draw, double[] volts, double[] kilopascals)
    {
        (double time, double exponent, double slope) = (draw.Between(0.6, 1.1), draw.Between(1.2, 1.9), draw.Between(0.3e-3, 1.3e-3));
        return DeadTimeTable.Of(
            [.. volts.Select(Wren.Volt)],
            [.. kilopascals.Select(Wren.Kpa)],
            [.. kilopascals.Select(pressure =>
            {
                double bent = draw.Between(0.97, 1.03);
                return (IReadOnlyList<Duration>)[.. volts.Select(each => Wren.Ms(Math.Min(
                    5, bent * time * Math.Pow(12 / each, exponent) * (1 + (slope * Math.Min(pressure, 900))))))];
            })]);
    }

    /// <summary>A table that ends before the point, over voltage or over pressure.</summary>
    private static DeadTimeTable EndingDeadTime(Draw draw, OperatingPoint point, double differential) => draw.Is(0.5)
        ? TableOver(draw, [point.Conditions.SupplyVoltage.Volts + 0.4, 15.3, 16.8], [50, 300, 1900])
        : TableOver(draw, [6.5, 11, 13, 16.8], [50, 0.4e-3 * (differential + 50e3), 0.7e-3 * differential]);

    private static CalculatingController Calculating(
        Draw draw, Aim aim, int kind, FuelDemandModel demand, OperatingPoint point, InjectorSet injectors, double differential)
    {
        double manifold = (point.Boost + point.Conditions.Atmosphere.Pressure).Pascals;
        ControllerData data = Data(draw, aim, demand, injectors, differential, manifold);
        VolumetricEfficiency table = draw.Is(0.5) ? demand.VolumetricEfficiency : VolumetricEfficiency.Of(
            (Wren.Rpm(1700), Wren.Percent(draw.Between(70, 84))),
            (Wren.Rpm(3600), Wren.Percent(draw.Between(84, 104))),
            (Wren.Rpm(6100), Wren.Percent(draw.Between(80, 100))));
        if (kind <= 2)
        {
            return SpeedDensityController.Of(
                data,
                table,
                Pressure.FromPascals(Math.Clamp(manifold * draw.Between(0.6, 1.5), 1e4, 5e5)),
                draw.Is(0.3) ? Temperature.FromDegreesCelsius(draw.Between(10, 60)) : null);
        }

        if (kind <= 4)
        {
            return ThrottleController.Of(
                data,
                table,
                Atmosphere.Of(Wren.Kpa(draw.Between(92, 102)), Temperature.FromDegreesCelsius(draw.Between(5, 30))),
                draw.Is(0.5),
                draw.Is(0.5));
        }

        double air = demand.At(point.Speed, point.Boost, point.Conditions.Atmosphere).AirMassFlow.KilogramsPerSecond;
        return AirflowMeterController.Of(data, draw.Is(0.2) ? null : MassFlow.FromKilogramsPerSecond(Math.Max(2e-3, air * draw.Between(0.55, 1.4))));
    }

    private static ControllerData Data(
        Draw draw, Aim aim, FuelDemandModel demand, InjectorSet injectors, double differential, double manifold)
    {
        Injector fitted = injectors.Injector;
        Injector believed = draw.Is(0.5) && aim != Aim.DataEnds ? fitted : InjectorOf(
            "as the controller has it",
            Math.Clamp(fitted.StaticFlow.MillilitersPerMinute * draw.Between(0.8, 1.2), 25, 9000),
            draw.Of(250e3, 300e3),
            DeadTime(draw),
            60e3);
        bool sensor = draw.Is(0.5);
        ControllerData data = ControllerData.Of(
            believed,
            sensor || draw.Is(0.7) ? Fuel.Petrol : Fuel.E10,
            draw.Is(0.4) ? TargetLambda.At(draw.Between(0.8, 1)) : TargetLambda.Of(
                (Wren.Percent(30), draw.Between(0.98, 1.02)), (Wren.Percent(75), draw.Between(0.9, 0.97)), (Wren.Percent(125), draw.Between(0.78, 0.89))));
        if (sensor)
        {
            data = data.WithEthanolSensor();
        }

        if (draw.Is(0.3))
        {
            data = data.WithFuelTemperature(Temperature.FromDegreesCelsius(draw.Between(0, 40)));
        }

        if (draw.Is(0.25))
        {
            data = data.WithRailPressureCorrection();
        }
        else if (aim is Aim.PartLoad or Aim.Starved || draw.Is(0.3))
        {
            data = data.WithDifferential(Pressure.FromPascals(Math.Clamp(differential * draw.Between(0.9, 1.1), 6e4, 1.8e6)));
        }

        if (draw.Is(0.25))
        {
            data = data.WithoutVoltageCorrection(Wren.Volt(draw.Between(12, 14.4)));
        }

        if (aim == Aim.DutyCut || draw.Is(0.2))
        {
            data = data.WithMaximumDutyCycle(Wren.Percent(draw.Between(55, 97)));
        }

        return draw.Is(aim == Aim.PartLoad ? 0.9 : 0.25)
            ? data.WithClosedLoop(ClosedLoop.Of(
                Wren.Percent(draw.Between(2, 30)),
                Pressure.FromPascals(Math.Clamp(manifold * draw.Of(0.8, 1.2, 1.3, 1.1), 1e4, 5e5))))
            : data;
    }

    private static RecordedPulses Recorded(
        Draw draw, Aim aim, bool byManifold, FuelDemandModel demand, OperatingPoint point, InjectorSet injectors, double needed, double differential)
    {
        Injector injector = injectors.Injector;
        double cycle = (demand.Engine.Cycle == EngineCycle.TwoStroke ? 1 : 2)
            / (point.Speed.RevolutionsPerSecond * injectors.InjectionsPerCycle);
        double density = demand.Consumption.Fuel.DensityAt(point.Conditions.FuelTemperature).KilogramsPerCubicMeter;
        double open = needed / injectors.Count * cycle
            / (injector.StaticFlow.CubicMetersPerSecond * Math.Sqrt(differential / injector.RatedDifferential.Pascals * 683.8 / density));
        double pulse = aim == Aim.HeldOpen ? cycle * draw.Between(1.02, 1.5) : 0.9e-3 + (open * draw.Between(0.7, 1.15));
        double rpm = point.Speed.RevolutionsPerMinute;
        double manifold = (point.Boost + point.Conditions.Atmosphere.Pressure).Pascals;
        // One in twelve was recorded up to less speed than this.
        double last = draw.Is(0.08) ? 0.95 : 1.25;
        double[] loads = byManifold ? [0.9, 1, 1.08] : [1];
        return new(
            [Wren.Rpm(0.6 * rpm), Wren.Rpm(0.88 * rpm), Wren.Rpm(last * rpm)],
            byManifold ? [.. new[] { 0.7, 0.94, 1.2 }.Select(share => Pressure.FromPascals(Math.Clamp(share * manifold, 1e4, 5e5)))] : [],
            [.. loads.Select(load => (IReadOnlyList<Duration>)[.. Enumerable.Range(0, 3).Select(_ =>
                Duration.FromSeconds(Math.Clamp(pulse * load * draw.Between(0.97, 1.05), 1e-4, 0.2)))])],
            draw.Is(0.55) ? (DeadTime(draw), Wren.Volt(draw.Between(12.5, 14.5)), Wren.Kpa(draw.Between(200, 400))) : null);
    }

    private static Plumbing Lines(Draw draw, Aim aim)
    {
        Line Hose(double millimetres, double metres, params Fitting[] fittings) => Line.Of(
            "peer hose", Length.FromMillimeters(millimetres), Length.FromMeters(metres), Roughness.RubberHose, fittings, Length.Zero);
        if (aim == Aim.Floor)
        {
            return Plumbing.Of(
                supply: draw.Is(0.5) ? [Hose(8, 3)] : [],
                returnLine: [Hose(draw.Between(2.1, 2.9), draw.Between(2, 4), Fitting.Elbow90.Times(4), Fitting.Exit)]);
        }

        Filter filter = Filter.Of("peer filter", VolumeFlow.FromLitersPerHour(450), Wren.Kpa(draw.Between(3, 20)), draw.Between(1, 2));
        return draw.Index(4) switch
        {
            0 => Plumbing.None,
            1 => Plumbing.Of(supply: [filter]),
            2 => Plumbing.Of([Hose(12, 0.5, Fitting.Entrance)], [Hose(7.5, 3.2, Fitting.Bend90.Times(3)), filter], [Hose(7.5, 3.4, Fitting.Exit)]),
            _ => Plumbing.Of(supply: [Hose(draw.Between(6, 9), 2.8, Fitting.Elbow90.Times(2))], returnLine: [Hose(8, 3.1, Fitting.Exit)]),
        };
    }

    private static Pump Ample(OperatingPoint point) => Pump.From(PumpCurve.At(
        "ample",
        point.Conditions.SupplyVoltage,
        (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(2400)),
        (Wren.Kpa(1900), VolumeFlow.FromLitersPerHour(2000))));

    /// <summary>A pump that passes a flow, m³/s, at a pressure, Pa: measured at the supply's voltage, or on both sides of it, or wired.</summary>
    private static Pump PumpFor(Draw draw, OperatingPoint point, double pressure, double flow)
    {
        double volts = point.Conditions.SupplyVoltage.Volts;
        // At this share of its highest pressure the curve below passes a little under half of its free flow.
        double highest = Math.Max(300e3, pressure * draw.Between(1.4, 1.8));
        double free = Math.Min(flow / 0.45, 7.8e-4);
        (double Pressure, double Flow, double Amperes)[] shape =
            [(0, 1, 0.36), (0.11, 0.95, 0.42), (0.34, 0.79, 0.55), (0.52, 0.6, 0.7), (0.71, 0.36, 0.86), (0.9, 0.09, 0.97), (1, 0, 1)];
        bool wired = draw.Is(0.3);
        bool two = draw.Is(0.3);
        PumpCurve At(double voltage, double speed) => wired
            ? PumpCurve.WithCurrent(
                "peer pump, wired",
                Wren.Volt(voltage),
                [.. shape.Select(each => (
                    Pressure.FromPascals(each.Pressure * highest * speed * speed),
                    VolumeFlow.FromCubicMetersPerSecond(each.Flow * free * speed),
                    ElectricCurrent.FromAmperes(each.Amperes * 13 * speed)))])
            : PumpCurve.At(
                "peer pump",
                Wren.Volt(voltage),
                [.. shape.Select(each => (
                    Pressure.FromPascals(each.Pressure * highest * speed * speed), VolumeFlow.FromCubicMetersPerSecond(each.Flow * free * speed)))]);
        PumpCurve[] curves = wired
            ? [At(volts - 2.5, 0.82), At(volts, 1)]
            : two ? [At(volts - 1.7, 0.9), At(volts + 0.6, 1.04)] : [At(volts, 1)];
        return Pump.Of(curves, feed: wired ? PumpAssemblyTests.FeedOf(draw.Between(2, 5), 12) : null);
    }

    /// <summary>Figures drawn for one system, the same ones on each run.</summary>
    private sealed class Draw(int number)
    {
        private readonly Random _random = new(160_000 + number);

        public double Between(double least, double most) => least + ((most - least) * _random.NextDouble());

        public bool Is(double chance) => _random.NextDouble() < chance;

        public int Index(int count) => _random.Next(count);

        public T Of<T>(params T[] choices) => choices[Index(choices.Length)];
    }
}

/// <summary>A system, the point at which it is solved, and the pulses of its controller where they were recorded.</summary>
internal sealed record PeerMixture(string Name, FuelSystem System, OperatingPoint Point, RecordedPulses? Recorded);

/// <summary>Recorded pulses as the controller is given them, a row for each pressure; one row where they are over speed alone.</summary>
internal sealed record RecordedPulses(
    IReadOnlyList<RotationalSpeed> Speeds,
    IReadOnlyList<Pressure> Manifold,
    IReadOnlyList<IReadOnlyList<Duration>> Pulses,
    (DeadTimeTable DeadTime, ElectricPotential Volts, Pressure Differential)? Correction)
{
    public RecordedPulseController Controller
    {
        get
        {
            RecordedPulseController recorded = Manifold.Count == 0
                ? RecordedPulseController.BySpeed([.. Speeds.Zip(Pulses[0])])
                : RecordedPulseController.Of(Speeds, Manifold, Pulses);
            return Correction is { } by ? recorded.WithVoltageCorrection(by.DeadTime, by.Volts, by.Differential) : recorded;
        }
    }
}
