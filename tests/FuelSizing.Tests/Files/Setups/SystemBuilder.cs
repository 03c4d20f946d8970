using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>
/// Whole systems at random: every kind of part, every way to give it, odd numbers in any unit. What a number is does not
/// matter here, only that it comes back.
/// </summary>
internal sealed class SystemBuilder(int seed, int deepest = 3)
{
    // What wiring has besides draws from numbers of its own, so that the rest of a seed's system stays as it is.
    private readonly Random _wiring = new(seed ^ 0x77697265);

    // The same of lines that pumps have of their own, and of what lies before a regulator.
    private readonly Random _lines = new(seed ^ 0x6c696e65);

    private Random _random = new(seed);
    private int _names;

    /// <summary>A system and some points of it.</summary>
    public Setup Setup()
    {
        // Plumbing needs the fuel's viscosity and, on the suction side, its vapour pressure.
        bool plumbed = Chance(0.7);
        FuelDemandModel demand = Demand(FuelOf(complete: plumbed, depth: 0));
        InjectorSet injectors = InjectorSet.Of(InjectorOf(), _random.Next(1, 13), _random.Next(1, 5));
        PumpAssembly pump = Sharing(Assembly(0));
        pump = plumbed ? Branching(pump) : pump;
        Plumbing? plumbing = plumbed ? Plumbing.Of(Way(), Way(), Way()) : null;
        SizingLimits? limits = Chance(0.5) ? Limits() : null;
        FuelSystem system = Chance(0.5)
            ? FuelSystem.Return(demand, injectors, Chance(0.4) ? Series() : Regulator(), pump, limits, plumbing)
            : FuelSystem.Returnless(demand, injectors, Chance(0.4) ? Electronic() : Regulator(), pump, limits, plumbing);
        if (plumbing is not null && system is { Layout: LineLayout.Returnless, Regulator: not ElectronicReturnless } && _lines.Next(2) == 0)
        {
            system = system.With(Plumbing.Of(plumbing.Suction, plumbing.Supply, plumbing.ReturnLine, Own(() => Way())));
        }

        system = Chance(0.6) ? system.With(Controller()) : system;
        system = plumbed && seed % 3 == 0 ? system.With(Tank()) : system;
        system = system.Controller.IsIdeal && seed % 2 == 0 ? system.With(StagedSet(system)) : system;
        system = seed % 4 == 1 ? system.With(Stream(system.Controller is RecordedPulseController)) : system;
        system = system.Checks.Where(_ => Chance(0.1)).ToArray().Aggregate(system, (waived, check) => waived.Waive(check.Part, Name("reason")));
        bool boosted = demand.Induction.Drive != CompressorDrive.None;
        Setup setup = FuelSizing.Files.Setup.Of(
            system, [.. Enumerable.Range(0, _random.Next(1, 4)).Select(_ => (Name("point"), PointOf(boosted)))]);
        setup = boosted && Chance(0.6) ? setup.With(BoostLineOf(demand.Induction.Drive)) : setup;
        return setup.BoostLine is not null && Chance(0.6)
            ? setup.WithPull(Speed(1000, 3000), Speed(4000, 7000), Chance(0.2) ? null : Conditions.Of(Air(), Volts(Any(10, 15)), Celsius(0, 50)))
            : setup;
    }

    private SurgeTank Tank() => SurgeTank.Of(
        Volume.FromLiters(Any(0.1, 5)).ToUnit(One(VolumeUnit.Liter, VolumeUnit.CubicInch, VolumeUnit.UsGallon)),
        Assembly(0, converters: false),
        One(ReturnDestination.SurgeTank, ReturnDestination.MainTank),
        Way(),
        Way(),
        Way(),
        Chance(0.5) ? Kpa(20, 200) : null,
        Chance(0.5) ? Duration.FromSeconds(Any(0, 5)) : null);

    // From numbers of its own, so that the rest of a seed's system stays as it is.
    private StagedInjectors StagedSet(FuelSystem system)
    {
        Random before = _random;
        _random = new(seed ^ 0x73746167);
        Ratio share = Share(0.3, 0.9);
        Ratio? atBegin = Chance(0.5) ? Share(0, 0.3) : null;
        StagedInjectors staged = StagedInjectors.Of(
            InjectorSet.Of(InjectorOf(), _random.Next(1, 13), _random.Next(1, 5)),
            Chance(0.5)
                ? HandOver.ByBoost(Kpa(-20, 40), Kpa(50, 120), share, atBegin)
                : HandOver.ByDutyCycle(system.Limits.DutyCycle * Any(0.95, 1), share, atBegin));
        _random = before;
        return staged;
    }

    // Draws from numbers of its own as well.
    private SecondStream Stream(bool recorded)
    {
        Random before = _random;
        _random = new(seed ^ 0x73747265);
        Fuel fuel = One(Fuel.Methanol, Fuel.Ethanol).WithHeatOfVaporisation(SpecificEnergy.FromKilojoulesPerKilogram(Any(900, 1200)));
        StreamFluid fluid = _random.Next(4) switch
        {
            0 => StreamFluid.Of(fuel),
            1 => StreamFluid.WithWaterByMass(fuel, Ratio.FromPercent(Any(0, 99))),
            2 => StreamFluid.WithWaterByVolume(fuel, Ratio.FromDecimalFractions(Any(0, 0.99))),
            _ => StreamFluid.WithWaterByVolume(Fuel.Methanol, Ratio.FromPercent(50)).WithDensity(Density.FromKilogramsPerCubicMeter(Any(900, 925)).ToUnit(DensityUnit.GramPerMilliliter)),
        };
        SprayNozzles nozzles = SprayNozzles.Of(
            _random.Next(1, 25),
            VolumeFlow.FromMillilitersPerMinute(Any(50, 900)).ToUnit(One(VolumeFlowUnit.MilliliterPerMinute, VolumeFlowUnit.UsGallonPerHour)),
            Kpa(200, 1000),
            Chance(0.5) ? SprayNozzles.Water : TestFluid.Of(Name("liquid"), Density.FromKilogramsPerCubicMeter(Any(650, 1100))),
            One(SprayPlace.Manifold, SprayPlace.BeforeCompressor));
        nozzles = Chance(0.5) ? nozzles.WithMinimumDifferential(Kpa(0, 150)) : nozzles;
        Pump? pump = Chance(0.6)
            ? Pump.From(PumpCurve.At(Name("own pump"), Volts(Any(11, 14)), (Pressure.Zero, VolumeFlow.FromLitersPerHour(Any(40, 200))), (Kpa(700, 1500), VolumeFlow.Zero)))
            : null;
        Pressure begin = Kpa(0, 80);
        SecondStream stream = SecondStream.Of(
            Name("stream"), fluid, nozzles, begin, pump is null || Chance(0.5) ? Kpa(400, 1500) : null, pump, Chance(0.5) ? begin + Kpa(1, 100) : null);
        stream = Chance(0.5) ? stream.WithTank(Volume.FromLiters(Any(0.2, 20)), Chance(0.5) ? Duration.FromMinutes(Any(0.1, 60)) : null) : stream;
        stream = stream.HeldPressure is not null && Chance(0.5) ? stream.WithEvaporation(Ratio.FromPercent(Any(0, 100))) : stream;
        stream = !recorded && Chance(0.5) ? stream.WithMainFuelTakenBack(Ratio.FromPercent(Any(0, 60))) : stream;
        _random = before;
        return stream;
    }

    private BoostLine BoostLineOf(CompressorDrive drive) => _random.Next(drive == CompressorDrive.Belt ? 4 : 2) switch
    {
        0 => MeasuredBoost.Of([.. Speeds().Select(speed => (speed, Kpa(-20, 150)))]),
        1 => HeldBoost.Of(Kpa(0, 150), Speed(2500, 3500), Speed(7000, 9000), Chance(0.5) ? Speed(500, 2400) : null),
        2 => Driven(CentrifugalBoost.From(Any(4, 12), Speed(4000, 7000), Kpa(20, 90), Air())),
        _ => Driven(DisplacementBoost.Of(
            Any(1, 3), Volume.FromLiters(Any(0.5, 2)).ToUnit(One(VolumeUnit.Liter, VolumeUnit.CubicInch)), Share(0.6, 0.95))),
    };

    private BeltDrivenBoost Driven(BeltDrivenBoost line)
    {
        line = Chance(0.4) ? line.WithCompressorPulley(Ratio.FromPercent(Any(-20, 20))) : line;
        line = Chance(0.2) ? line.WithDriveRatio(Any(1, 12)) : line;
        return Chance(0.5) ? line.WithMaximumCompressorSpeed(Speed(40_000, 90_000)) : line;
    }

    private FuelDemandModel Demand(Fuel fuel) => FuelDemandModel.Of(
        Engine.Of(Name("engine"), Volume.FromLiters(Any(1, 5)).ToUnit(One(VolumeUnit.Liter, VolumeUnit.CubicInch, VolumeUnit.CubicCentimeter)), _random.Next(1, 13), One(EngineCycle.FourStroke, EngineCycle.TwoStroke), Speed(7600, 9000)),
        _random.Next(3) switch
        {
            0 => Induction.NaturallyAspirated,
            1 => Induction.Turbocharged(Share(0.5, 0.8), Share(0, 0.9), Kpa(0, 20)),
            _ => Induction.BeltDriven(Share(0.5, 0.8), Share(0, 0.9), Kpa(0, 20), Share(0.8, 0.99)),
        },
        VolumetricEfficiency.Of([.. Speeds().Select(speed => (speed, Share(0.7, 1.1)))]),
        PowerOf([.. Speeds().Select(speed => (speed, Power.FromKilowatts(Any(20, 150)).ToUnit(One(PowerUnit.Kilowatt, PowerUnit.MechanicalHorsepower, PowerUnit.MetricHorsepower))))]),
        Share(0.7, 0.95),
        FuelConsumption.Of(fuel, Any(0.7, 1.1), BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(Any(600, 900)).ToUnit(One(BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour, BrakeSpecificFuelConsumptionUnit.PoundPerMechanicalHorsepowerHour))),
        One(DemandBasis.Larger, DemandBasis.Air, DemandBasis.Power));

    private RotationalSpeed[] Speeds() =>
        [Speed(400, 600), .. Rising(_random.Next(1, 6), 700, 7000).Select(Rpm), Speed(7200, 7500)];

    private PowerCurve PowerOf((RotationalSpeed Speed, Power Power)[] points) =>
        Chance(0.5) ? PowerCurve.AtCrank(Air(), points) : PowerCurve.AtWheels(Air(), Share(0, 0.3), points);

    private Fuel FuelOf(bool complete, int depth)
    {
        Fuel fuel = _random.Next(depth > 1 ? 4 : 6) switch
        {
            0 => Fuel.Petrol,
            1 => Fuel.Ethanol,
            2 => Fuel.Methanol,
            3 => Fuel.PetrolOf(Density.FromKilogramsPerCubicMeter(Any(680, 780)).ToUnit(One(DensityUnit.KilogramPerCubicMeter, DensityUnit.PoundPerCubicFoot)), ElementalComposition.OfAtomRatios(Any(1.7, 2), Any(0, 0.02)), null, Name("petrol")),
            4 => Other(),
            _ => Blend(complete, depth),
        };
        if (Chance(0.3) || (complete && !fuel.HasViscosity))
        {
            fuel = fuel.WithViscosity((Celsius(10, 20), Stokes(0.6, 0.9)), (Celsius(30, 40), Stokes(0.3, 0.5)));
        }

        if (Chance(0.2) || (complete && !fuel.HasVapourPressure))
        {
            fuel = fuel.WithVapourPressure((Celsius(10, 20), Kpa(10, 20)), (Celsius(30, 40), Kpa(30, 60)));
        }

        return Chance(0.2) ? fuel.WithReidVapourPressure(Kpa(40, 90)) : fuel;
    }

    private Fuel Other() => Fuel.Of(
        Name("fuel"),
        _random.Next(3) switch
        {
            0 => ElementalComposition.OfMolecule(_random.Next(2, 9), 18, _random.Next(3)),
            1 => ElementalComposition.OfAtomRatios(Any(1, 3), Any(0, 0.5)),
            _ => Fuel.E85.Composition,
        },
        SpecificEnergy.FromMegajoulesPerKilogram(Any(25, 45)).ToUnit(One(SpecificEnergyUnit.MegajoulePerKilogram, SpecificEnergyUnit.BtuPerPound)),
        Density.FromKilogramsPerCubicMeter(Any(700, 850)),
        CoefficientOfThermalExpansion.FromPerKelvin(Any(0.0008, 0.0015)).ToUnit(One(CoefficientOfThermalExpansionUnit.PerKelvin, CoefficientOfThermalExpansionUnit.PerDegreeFahrenheit)));

    private Fuel Blend(bool complete, int depth)
    {
        double share = Any(0.1, 0.9);
        return Chance(0.5)
            ? FuelBlend.EthanolInPetrol(Ratio.FromPercent(share * 100), Name("blend"))
            : FuelBlend.ByVolume(
                Name("blend"),
                (FuelOf(complete, depth + 1), Ratio.FromDecimalFractions(share)),
                (FuelOf(complete, depth + 1), Ratio.FromDecimalFractions(1 - share)));
    }

    private Injector InjectorOf()
    {
        ElectricPotential[] volts = [.. Rising(_random.Next(2, 6), 6, 18).Select(Volts)];
        Pressure[] across = [.. Rising(_random.Next(2, 5), 60, 900).Select(value => Kpa(value))];
        Duration[] Times() => [.. Rising(volts.Length, 0.4, 4).OrderDescending().Select(time => Milliseconds(time))];
        Injector injector = Injector.Of(
            Name("injector"),
            Flow(20, 80),
            Kpa(250, 350),
            Chance(0.5) ? TestFluid.Heptane : TestFluid.Of(Name("oil"), Density.FromKilogramsPerCubicMeter(Any(650, 850))),
            Chance(0.5)
                ? DeadTimeTable.ByVoltage([.. volts.Zip(Times())])
                : DeadTimeTable.Of(volts, across, [.. across.Select(_ => Times())]),
            Milliseconds(Any(1, 2)),
            Kpa(400, 900),
            Chance(0.5) ? null : ElectricPotential.FromVolts(Any(11, 15)));
        return Chance(0.7)
            ? injector
            : injector.WithMeasuredFlows([.. new[] { Kpa(60, 200), Kpa(355, 395) }.Select(pressure => (
                pressure, injector.StaticFlow * Math.Sqrt(pressure / injector.RatedDifferential) * Any(0.99, 1.01)))]);
    }

    private PressureRegulator Regulator() => _random.Next(3) switch
    {
        0 => Fixed.At(Kpa(250, 450), Minimum()) is var plain && Chance(0.3) ? plain.WithFlow(Returning()) : plain,
        1 => ManifoldReferenced.From(Kpa(250, 450), Minimum()) is var following && Chance(0.3) ? following.WithFlow(Returning()) : following,
        _ => Rising(Kpa(250, 350)),
    };

    private RisingRate Rising(Pressure basePressure)
    {
        RisingRate unit = RisingRate.From(basePressure, Any(1, 8), Kpa(0, 30), Chance(0.5) ? Kpa(600, 900) : null, Minimum());
        return Chance(0.3) ? unit.WithFlow(Returning()) : unit;
    }

    private RegulatorSeries Series()
    {
        RegulatorSeries series = RegulatorSeries.Of(Chance(0.2) ? Series() : Regulator(), Rising(Chance(0.5) ? Pressure.Zero : Kpa(250, 350)));
        return Chance(0.3) ? series.WithQuotedGain() : series;
    }

    private RegulatorFlow Returning()
    {
        RegulatorFlow flow = _random.Next(3) switch
        {
            0 => RegulatorFlow.Constant,
            1 => RegulatorFlow.Rising(Kpa(1, 40), Flow(50, 150), Flow(0, 80)),
            _ => RegulatorFlow.Measured(Flow(20, 90), (Flow(0, 15), Kpa(280, 290)), (Flow(40, 60), Kpa(291, 300)), (Flow(100, 160), Kpa(301, 330))),
        };
        flow = Chance(0.5) ? flow.WithHysteresis(Kpa(1, 20)) : flow;
        return Chance(0.5) ? flow.WithOutletShare(Any(-0.1, 0.3)) : flow;
    }

    private ElectronicReturnless Electronic() =>
        ElectronicReturnless.Holding(Kpa(300, 450), Chance(0.5), Volts(Any(5, 9)));

    private VolumeFlow? Minimum() => Chance(0.5) ? Flow(1, 20) : null;

    private PumpAssembly Assembly(int depth, bool converters = true) => _random.Next(depth >= deepest ? 2 : 4) switch
    {
        2 => InSeries(Members(depth, converters)),
        3 => PumpParallel.Of([.. Members(depth, converters)]),
        _ => Chance(0.25) ? Switched(PumpOf(converters)) : PumpOf(converters),
    };

    private PumpSeries InSeries(PumpAssembly[] stages) => PumpSeries.Of(
        stages.Any(stage => stage.MayStop) ? SeriesBypass.CheckValve : One(SeriesBypass.CheckValve, SeriesBypass.None), stages);

    private SwitchedPump Switched(Pump pump) => SwitchedPump.Above(
        Kpa(20, 90),
        Kpa(-20, 19),
        pump,
        Chance(0.4) ? null
        : pump.Converter is not null ? PumpLowSpeed.ConverterBypassed
        : pump.Curves[0].HasCurrent && Chance(0.5) ? PumpLowSpeed.Through(ElectricResistance.FromOhms(Any(0.1, 1)))
        : PumpLowSpeed.At(Ratio.FromDecimalFractions(Any(0.5, 1))));

    private PumpAssembly[] Members(int depth, bool converters) =>
        [.. Enumerable.Range(0, _random.Next(2, 4)).Select(_ => Assembly(depth + 1, converters))];

    private Pump PumpOf(bool converters)
    {
        string name = Name("pump");
        bool current = Chance(0.6);
        double[] volts = [.. Rising(_random.Next(1, 4), 9, 16)];
        double size = Any(0.7, 2);
        PumpCurve[] curves =
        [
            .. volts.Select(volt =>
            {
                // Each voltage's curve lies whole above the one before.
                double scale = size * volt / 12;
                (Pressure, VolumeFlow)[] points =
                [
                    .. Rising(_random.Next(2, 6), 0, 1).Zip(Rising(6, 0, 1)).Select(pair =>
                        (Kpa(600 * scale * pair.First), Litres(250 * scale * scale * (1 - pair.First)))),
                ];
                points = Chance(0.5) ? [(Pressure.Zero, Litres(260 * scale * scale)), .. points, (Kpa(601 * scale), VolumeFlow.Zero)] : points;
                return current
                    ? PumpCurve.WithCurrent(name, Volts(volt), [.. points.Select(point => (point.Item1, point.Item2, ElectricCurrent.FromAmperes(Any(3, 15))))])
                    : PumpCurve.At(name, Volts(volt), points);
            }),
        ];
        Pump pump = Pump.Of(
            curves,
            Chance(0.5) ? Kpa(700, 1200) : null,
            Chance(0.5) ? Share(0.5, 1) : null,
            current && Chance(0.7) ? FeedOf() : null);
        return converters && current && Chance(0.3) ? pump.WithConverter(ConverterOf()) : pump;
    }

    private VoltageConverter ConverterOf()
    {
        ElectricCurrent? limit = Chance(0.5) ? ElectricCurrent.FromAmperes(Any(10, 40)) : null;
        return Chance(0.5)
            ? VoltageConverter.Holding(Name("converter"), Volts(Any(12, 16)), Share(0.7, 1), limit)
            : VoltageConverter.Times(Name("converter"), Any(0.8, 1.4), Share(0.7, 1), limit);
    }

    private Feed FeedOf()
    {
        ConductorMaterial material = One(ConductorMaterial.Copper, ConductorMaterial.Aluminium);
        Conductor conductor = _random.Next(4) switch
        {
            0 => Conductor.Awg(_random.Next(0, 17), material),
            1 => Conductor.AwgZeros(_random.Next(2, 5), material),
            2 => Conductor.Metric(Area.FromSquareMillimeters(One(1.5, 2.5, 4.0, 6.0))),
            _ => Conductor.OfArea(Area.FromSquareMillimeters(Any(1, 10)).ToUnit(One(AreaUnit.SquareMillimeter, AreaUnit.SquareInch)), material, Share(0, 0.05)),
        };
        Contact[] contacts =
            [.. Enumerable.Range(0, _random.Next(4)).Select(_ => Contact.Of(Name("contact"), ElectricResistance.FromMilliohms(Any(0, 10)).ToUnit(One(ElectricResistanceUnit.Milliohm, ElectricResistanceUnit.Ohm))))];
        return Chance(0.5)
            ? Judged(Feed.Of(Name("feed"), conductor, Metres(0, 6), Metres(0, 6), Celsius(20, 90), contacts))
            : Judged(Feed.WithChassisReturn(Name("feed"), conductor, Metres(0, 6), ElectricResistance.FromMilliohms(Any(0, 10)), Celsius(20, 90), contacts));
    }

    private Feed Judged(Feed feed)
    {
        feed = Chance(0.5) ? feed.WithInsulation(Celsius(70, 120), Celsius(20, 60)) : feed;
        return Chance(0.5) ? Further(feed.WithFuse(ElectricCurrent.FromAmperes(Any(5, 40)))) : Further(feed);
    }

    // What cannot hang on a splice with others does not.
    private PumpAssembly Sharing(PumpAssembly pump)
    {
        if (pump.Pumps.Any(one => one.Converter is not null) || pump.Switches.Any(one => one.LowSpeed.Share is not null) || _wiring.Next(2) == 0)
        {
            return Starting(pump);
        }

        Feed trunk = Further(Feed.Of(
            "trunk", Conductor.Awg(8), Length.FromMeters(4), Length.Zero, Temperature.FromDegreesCelsius(60), Contact.DefaultFuse, Contact.DefaultRelay));
        return Starting(pump).Rewired(feed => feed.WithShared(trunk));
    }

    private PumpAssembly Starting(PumpAssembly pump)
    {
        Random others = _random;
        _random = _wiring;
        pump = pump.Rewired(feed => Chance(0.3) ? feed.WithStart(StartOf()) : feed);
        _random = others;
        return pump;
    }

    private Feed Further(Feed feed)
    {
        Random others = _random;
        _random = _wiring;
        feed = feed.Fuse is { } fuse && Chance(0.3) ? feed.WithFuse(fuse, TimesOf()) : feed;
        feed = Chance(0.3) ? feed.WithRelay(ElectricCurrent.FromAmperes(Any(10, 70))) : feed;
        feed = Chance(0.3) ? feed.WithBundle(_random.Next(1, 40)) : feed;
        feed = feed.ReturnLength.Meters == 0 && Chance(0.5) ? feed.WithGround(GroundOf()) : feed;
        _random = others;
        return feed;
    }

    private FuseTimeCurrent TimesOf()
    {
        (double Multiple, Duration Minimum, Duration Maximum)[] points = [.. Rising(_random.Next(1, 4), 1.2, 8).Select(multiple => (multiple, Duration.FromSeconds(2 / multiple), Duration.FromSeconds(90 / multiple)))];
        return FuseTimeCurrent.Of(points);
    }

    private MotorStart StartOf() => MotorStart.Of(
        ElectricCurrent.FromAmperes(Any(20, 90)),
        Chance(0.6) ? Duration.FromMilliseconds(Any(20, 300)) : null,
        Chance(0.6) ? Duration.FromSeconds(Any(1, 60)) : null);

    private GroundReturn GroundOf()
    {
        GroundReturn ground = GroundReturn.Of(
            Conductor.Awg(_random.Next(0, 17)),
            Metres(0, 2),
            Celsius(20, 90),
            Chance(0.5) ? ElectricResistance.Zero : ElectricResistance.FromMilliohms(Any(1, 10)),
            [.. Enumerable.Range(0, _random.Next(3)).Select(_ => Contact.Of("stud", ElectricResistance.FromMilliohms(Any(0, 10))))]);
        ground = Chance(0.5) ? ground.WithInsulation(Celsius(70, 120), Celsius(20, 60)) : ground;
        return Chance(0.3) ? ground.WithBundle(_random.Next(1, 40)) : ground;
    }

    private IFlowLoss[] Way() => [.. Enumerable.Range(0, _random.Next(3)).Select(_ => Chance(0.7) ? (IFlowLoss)LineOf() : FilterOf())];

    private Line LineOf() => Line.Of(
        Name("line"),
        Length.FromMillimeters(Any(8, 16)).ToUnit(One(LengthUnit.Millimeter, LengthUnit.Inch)),
        Metres(0.1, 4),
        Chance(0.5) ? Roughness.DrawnTube : Length.FromMicrometers(Any(1, 20)),
        [.. Enumerable.Range(0, _random.Next(4)).Select(_ => FittingOf())],
        Metres(-0.5, 0.5));

    private Fitting FittingOf()
    {
        Fitting fitting = _random.Next(3) switch
        {
            0 => Fitting.Elbow90,
            1 => Fitting.Of(Name("fitting"), Any(0, 5)),
            _ => Fitting.OfDiameters(Name("fitting"), Any(0, 100)),
        };
        return Chance(0.5) ? fitting.Times(_random.Next(1, 8)) : fitting;
    }

    private IFlowLoss[] OwnWay() => [.. Way(), .. Chance(0.6) ? [ValveOf()] : Array.Empty<IFlowLoss>()];

    private CheckValve ValveOf()
    {
        Pressure opening = Kpa(0, 20);
        return Chance(0.5)
            ? CheckValve.OfCoefficient(Name("valve"), opening, Any(0, 20), Length.FromMillimeters(Any(5, 12)).ToUnit(One(LengthUnit.Millimeter, LengthUnit.Inch)))
            : CheckValve.Of(Name("valve"), opening, Litres(Any(60, 400)), opening + Kpa(0, 30), Chance(0.5) ? Density.FromKilogramsPerCubicMeter(Any(680, 1000)) : null);
    }

    // Branches anywhere, but in a row that nothing leads past.
    private PumpAssembly Branching(PumpAssembly pump) => pump switch
    {
        PumpSeries series => series.Bypass == SeriesBypass.None ? series : PumpSeries.Of(series.Bypass, [.. series.Stages.Select(Branching)]),
        PumpParallel parallel => PumpParallel.Of([.. parallel.Branches.Select(Branching)]),
        _ => _lines.Next(3) == 0 ? Own(() => PumpBranch.Of(pump, Chance(0.5) ? Way() : null, Chance(0.8) ? OwnWay() : null)) : pump,
    };

    private T Own<T>(Func<T> made)
    {
        Random others = _random;
        _random = _lines;
        T own = made();
        _random = others;
        return own;
    }

    private Filter FilterOf() => Filter.Of(
        Name("filter"),
        Litres(Any(150, 900)),
        Kpa(0, 30),
        Chance(0.5) ? Any(1, 3) : 1,
        Chance(0.5) ? DynamicViscosity.FromMillipascalSeconds(Any(0.3, 1.2)).ToUnit(One(DynamicViscosityUnit.MillipascalSecond, DynamicViscosityUnit.Centipoise)) : null);

    private EngineController Controller() => _random.Next(5) switch
    {
        0 => SpeedDensityController.Of(Data(), Efficiencies(), Kpa(95, 180), Chance(0.5) ? Celsius(20, 60) : null),
        1 => ThrottleController.Of(Data(), Efficiencies(), Air(), Chance(0.5), Chance(0.5)),
        2 => AirflowMeterController.Of(Data(), Chance(0.6) ? MassFlow.FromGramsPerSecond(Any(60, 300)).ToUnit(One(MassFlowUnit.GramPerSecond, MassFlowUnit.PoundPerHour)) : null),
        3 => Corrected(RecordedPulseController.BySpeed([.. Speeds().Select(speed => (speed, Duration.FromMilliseconds(Any(4, 12))))])),
        _ => Corrected(RecordedPulseController.Of(
            [Speed(500, 900), Speed(7000, 9000)],
            [Kpa(10, 60), Kpa(100, 140), Kpa(300, 500)],
            [.. Enumerable.Range(0, 3).Select(_ => new[] { Duration.FromMilliseconds(Any(3, 6)), Duration.FromMilliseconds(Any(6, 12)) })])),
    };

    private RecordedPulseController Corrected(RecordedPulseController controller) => Chance(0.5)
        ? controller.WithVoltageCorrection(InjectorOf().DeadTime, ElectricPotential.FromVolts(Any(12, 14)), Kpa(250, 400))
        : controller;

    private VolumetricEfficiency Efficiencies() => VolumetricEfficiency.Of([.. Speeds().Select(speed => (speed, Share(0.7, 1.1)))]);

    private ControllerData Data()
    {
        ControllerData data = ControllerData.Of(
            InjectorOf(),
            FuelOf(complete: false, depth: 0),
            Chance(0.5) ? TargetLambda.At(Any(0.8, 1)) : TargetLambda.Of((Share(0.2, 0.5), Any(0.9, 1)), (Share(0.6, 1.2), Any(0.8, 0.9))));
        data = Chance(0.5) ? data.WithDifferential(Kpa(200, 500)) : data;
        data = Chance(0.5) ? data.WithFuelTemperature(Celsius(10, 40)) : data;
        data = Chance(0.5) ? data.WithRailPressureCorrection() : data;
        data = Chance(0.5) ? data.WithoutVoltageCorrection(ElectricPotential.FromVolts(Any(12, 14))) : data;
        data = Chance(0.5) ? data.WithMaximumDutyCycle(Share(0.8, 0.99)) : data;
        data = Chance(0.5) ? data.WithClosedLoop(ClosedLoop.Of(Share(0.05, 0.3), Kpa(60, 95))) : data;
        return Chance(0.5) ? data.WithEthanolSensor() : data;
    }

    private SizingLimits Limits() => Chance(0.6) ? PlainLimits().With(Mixture()) : PlainLimits();

    private MixtureLimits Mixture() => MixtureLimits.ByBoost(
        [.. Rising(_random.Next(1, 4), 5, 150).Select(boost => (Pressure.FromKilopascals(boost), Any(0.8, 1)))], Chance(0.5) ? Any(0.6, 0.75) : null);

    private SizingLimits PlainLimits() => SizingLimits.Of(
        Share(0.7, 0.95),
        Share(0, 0.4),
        Chance(0.5) ? Kpa(500, 1500) : null,
        Chance(0.5) ? Share(0.01, 0.1) : null,
        Chance(0.5) ? Kpa(0, 40) : null);

    private OperatingPoint PointOf(bool boosted) => OperatingPoint.At(
        Speed(700, 7000),
        boosted ? Kpa(-60, 120) : Kpa(-60, 0),
        Chance(0.2) ? null : Conditions.Of(Air(), Volts(Any(10, 15)), Celsius(0, 50)));

    private Atmosphere Air() => _random.Next(3) switch
    {
        0 => Atmosphere.Standard,
        1 => Atmosphere.AtAltitude(Metres(0, 2000), Chance(0.5) ? Celsius(-10, 40) : null),
        _ => Atmosphere.Of(Kpa(85, 105), Celsius(-10, 40)),
    };

    private string Name(string what) => $"{what} {++_names}{One(string.Empty, " \"ü\"", " <½″>", "\\", " 🜁")}";

    private bool Chance(double share) => _random.NextDouble() < share;

    private T One<T>(params T[] of) => of[_random.Next(of.Length)];

    private double Any(double minimum, double maximum) => minimum + ((maximum - minimum) * _random.NextDouble());

    private double[] Rising(int count, double minimum, double maximum)
    {
        double step = (maximum - minimum) / count;
        return [.. Enumerable.Range(0, count).Select(at => minimum + (step * (at + (0.9 * _random.NextDouble()))))];
    }

    private Ratio Share(double minimum, double maximum) =>
        Ratio.FromDecimalFractions(Any(minimum, maximum)).ToUnit(One(RatioUnit.Percent, RatioUnit.DecimalFraction, RatioUnit.PartPerThousand));

    private Pressure Kpa(double minimum, double maximum) => Kpa(Any(minimum, maximum));

    private Pressure Kpa(double value) => Pressure.FromKilopascals(value)
        .ToUnit(One(PressureUnit.Kilopascal, PressureUnit.Bar, PressureUnit.PoundForcePerSquareInch, PressureUnit.Pascal, PressureUnit.InchOfMercury));

    private RotationalSpeed Speed(double minimum, double maximum) => Rpm(Any(minimum, maximum));

    private RotationalSpeed Rpm(double value) => RotationalSpeed.FromRevolutionsPerMinute(value)
        .ToUnit(One(RotationalSpeedUnit.RevolutionPerMinute, RotationalSpeedUnit.RadianPerSecond, RotationalSpeedUnit.RevolutionPerSecond));

    private VolumeFlow Flow(double minimum, double maximum) => Litres(Any(minimum, maximum));

    private VolumeFlow Litres(double value) => VolumeFlow.FromLitersPerHour(value)
        .ToUnit(One(VolumeFlowUnit.LiterPerHour, VolumeFlowUnit.UsGallonPerHour, VolumeFlowUnit.MilliliterPerMinute, VolumeFlowUnit.CubicMeterPerSecond));

    private ElectricPotential Volts(double value) =>
        ElectricPotential.FromVolts(value).ToUnit(One(ElectricPotentialUnit.Volt, ElectricPotentialUnit.Millivolt));

    private Duration Milliseconds(double value) =>
        Duration.FromMilliseconds(value).ToUnit(One(DurationUnit.Millisecond, DurationUnit.Microsecond, DurationUnit.Second));

    private Length Metres(double minimum, double maximum) =>
        Length.FromMeters(Any(minimum, maximum)).ToUnit(One(LengthUnit.Meter, LengthUnit.Foot, LengthUnit.Centimeter));

    private Temperature Celsius(double minimum, double maximum) =>
        Temperature.FromDegreesCelsius(Any(minimum, maximum)).ToUnit(One(TemperatureUnit.DegreeCelsius, TemperatureUnit.Kelvin, TemperatureUnit.DegreeFahrenheit));

    private KinematicViscosity Stokes(double minimum, double maximum) =>
        KinematicViscosity.FromCentistokes(Any(minimum, maximum)).ToUnit(One(KinematicViscosityUnit.Centistokes, KinematicViscosityUnit.SquareMeterPerSecond));
}
