using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Electrical;
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

/// <summary>Solved points of invented systems, one for each way in which a working can go.</summary>
/// <remarks>The tables of the notebooks' package are tested on the same points.</remarks>
internal static class WorkingCases
{
    /// <summary>An invented two-stroke twin with two injections a cycle, filter, lines, fittings and a pump below the rail.</summary>
    public const string TwoStroke = "two-stroke, two injections, filter and lines";

    public const string NoPressure = "no pressure across the injector";

    public const string LowPressure = "under the least pressure of the injector's data";

    public const string VoltageAlone = "dead time by voltage alone";

    public const string OwnDemand = "demand by a law of one's own";

    public const string Evaporating = "fuel that evaporates in the charge";

    public const string BySpeed = "tables by speed";

    public const string Converted = "consumption converted to another fuel";

    public const string Narrow = "starved behind a narrow line, regulator at the tank";

    /// <summary>A filter and a hose before a regulator that sits before the rail.</summary>
    public const string BeforeRegulator = "filter before a regulator at the tank";

    /// <summary>A pump that gives the same flow against any pressure up to a limit.</summary>
    public const string Upright = "curve that stands upright";

    /// <summary>Two pumps with lines of their own, one behind a valve that stays shut.</summary>
    public const string Branched = "pumps with lines of their own";

    /// <summary>A second stream that cools the charge, and for which main fuel is taken back.</summary>
    public const string TakenBack = "main fuel taken back for a second stream";

    private static readonly Dictionary<string, Func<OperatingResult>> Cases = new()
    {
        [TwoStroke] = () => Teal().Solve(Wren.At(5200, 0.35)),
        ["two-stroke under throttle"] = () => Teal().Solve(Wren.At(2600, -0.3)),
        ["four-stroke, one injection, no lines"] = () => Wren.System().Solve(Wren.At(6000, 0.5)),
        ["sized for the fuel from power"] = () => FuelSystem.Return(
            FuelDemandModel.Of(Wren.Engine, Wren.Turbocharger, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, DemandBasis.Power),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            Fixed.At(Wren.Kpa(400)),
            Pump.From(Wren.Pump)).Solve(Wren.At(5000, 0.4)),
        ["rising-rate unit in series"] = () => Wren.System(
            RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 8, Wren.Kpa(5))), pump: 2).Solve(Wren.At(4000, 0.5)),
        ["rising rate with a ceiling"] = () => Wren.System(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10), Wren.Kpa(480)), pump: 2).Solve(Wren.At(4000, 0.5)),
        ["sagging rail"] = () => Wren.System(pump: 0.5).Solve(Wren.At(6500, 0.6)),
        ["sagging rail behind lines"] = () => Wren.System(pump: 0.5).With(Lines()).Solve(Wren.At(6500, 0.6)),
        ["sagging rail, regulator at the tank"] = () => Returnless(Fixed.At(Wren.Kpa(400)), 0.6).Solve(Wren.At(6500, 0.6)),
        ["narrow return line"] = () => Wren.System(pump: 1.6).With(Plumbing.Of(
            returnLine: [Line.Of("return", Length.FromMillimeters(3), Length.FromMeters(4), Roughness.DrawnTube)])).Solve(Wren.At(2500, 0)),
        ["regulator at the tank"] = () => Returnless(Fixed.At(Wren.Kpa(400)), 1.4).Solve(Wren.At(5500, 0.4)),
        ["electronic returnless"] = () => Returnless(ElectronicReturnless.Holding(Wren.Kpa(350), true, Wren.Volt(6)), 1.4).Solve(Wren.At(5500, 0.4)),
        ["electronic returnless at its lowest voltage"] = () => Returnless(ElectronicReturnless.Holding(Wren.Kpa(300), false, Wren.Volt(12)), 1.4).Solve(Wren.At(1500, 0)),
        ["electronic returnless, sagging"] = () => Returnless(ElectronicReturnless.Holding(Wren.Kpa(400), true, Wren.Volt(6)), 0.7).Solve(Wren.At(6500, 0.6)),
        ["starved"] = () => Wren.System(pump: 0.2).Solve(Wren.At(6500, 0.6)),
        ["belt-driven compressor"] = () => FuelSystem.Return(
            Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(65), Wren.Percent(60), Wren.Kpa(3), Wren.Percent(95))),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.Pump)).Solve(Wren.At(6000, 0.5)),
        ["flows measured around the pressure"] = () => Measured().Solve(Wren.At(4000, 0.5)),
        ["above the highest measured flow"] = () => Measured(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10))).Solve(Wren.At(4000, 0.5)),
        ["staged injectors by boost"] = () => TwoSets(HandOver.ByBoost(Pressure.FromBars(0.3), Pressure.FromBars(0.55), Wren.Percent(45), Wren.Percent(30))).Solve(Wren.At(5000, 0.4)),
        ["staged injectors by duty cycle"] = () => TwoSets(HandOver.ByDutyCycle(Wren.Percent(60), Wren.Percent(50), Wren.Percent(25))).Solve(Wren.At(6000, 0.5)),
        ["staged injectors, idle"] = () => TwoSets(HandOver.ByBoost(Pressure.FromBars(0.3), Pressure.FromBars(0.55), Wren.Percent(45), Wren.Percent(30))).Solve(Wren.At(5000, 0.2)),
        ["staged injectors, dead time not covered"] = () => TwoSets(HandOver.ByDutyCycle(Wren.Percent(60), Wren.Percent(50), Wren.Percent(25))).Solve(OperatingPoint.At(
            Wren.Rpm(3000), Pressure.FromBars(0.6), Conditions.Of(Atmosphere.Standard, Wren.Volt(7.5), Temperature.FromDegreesCelsius(20)))),
        ["wired pump between two measured voltages"] = () => Wren.System(pump: 2).With(Fed(Wren.WiredPump, 4)).Solve(Wren.At(4200, 0.3)),
        ["wired pump under its lowest voltage"] = () => Wren.System(pump: 2).With(Fed(Wren.WiredPump, 9)).Solve(Wren.At(2200, 0)),
        ["two worn pumps in parallel"] = () => Wren.System().With(PumpParallel.Of(Pump.From(Wren.PumpOf(0.7)).WithCondition(Wren.Percent(88)), Fed(Wren.WiredPump, 2))).Solve(Wren.At(6100, 0.5)),
        ["two pumps in series"] = () => Wren.System().With(PumpSeries.Of(SeriesBypass.None, Pump.From(Wren.PumpOf(1.1)), Pump.From(Wren.PumpOf(0.9)))).Solve(Wren.At(6100, 0.5)),
        ["table of manifold pressure that ends"] = () => With(data => SpeedDensityController.Of(data, Wren.VolumetricEfficiency, Wren.Kpa(120))).Solve(Wren.At(4700, 0.4)),
        ["throttle alone"] = () => With(data => ThrottleController.Of(data, Wren.VolumetricEfficiency, Atmosphere.Standard)).Solve(Wren.At(4700, 0.4)),
        ["closed loop at the end of its authority"] = () => With(data => SpeedDensityController.Of(
            data.WithClosedLoop(ClosedLoop.Of(Wren.Percent(12), Wren.Kpa(240))), Wren.VolumetricEfficiency, Wren.Kpa(120))).Solve(Wren.At(4700, 0.4)),
        ["pulse cut off at the greatest duty cycle"] = () => With(data => AirflowMeterController.Of(data.WithMaximumDutyCycle(Wren.Percent(60)).WithRailPressureCorrection())).Solve(Wren.At(6700, 0.5)),
        ["recorded pulses"] = () => Wren.System().With(RecordedPulseController.BySpeed((Wren.Rpm(1500), Wren.Ms(7)), (Wren.Rpm(7000), Wren.Ms(11)))).Solve(Wren.At(4700, 0.4)),
        ["described controller, starved"] = () => With(data => AirflowMeterController.Of(data), 0.2).Solve(Wren.At(6500, 0.6)),
        ["staged injectors by boost, dead time not covered"] = () => TwoSets(HandOver.ByBoost(Pressure.FromBars(0.3), Pressure.FromBars(0.55), Wren.Percent(45), Wren.Percent(30))).Solve(OperatingPoint.At(
            Wren.Rpm(3000), Pressure.FromBars(0.6), Conditions.Of(Atmosphere.Standard, Wren.Volt(7.5), Temperature.FromDegreesCelsius(20)))),
        [NoPressure] = () => Wren.System(Fixed.At(Wren.Kpa(150))).With(ByVoltage).Solve(Wren.At(3000, 1.6)),
        [LowPressure] = () => Wren.System(Fixed.At(Wren.Kpa(150))).With(ByVoltage).Solve(Wren.At(3000, 0.6)),
        ["pump data that ends"] = () => Wren.System().With(Cut).Solve(Wren.At(3000, 0.2)),
        ["pump data that ends, regulator at the tank"] = () => Returnless(Fixed.At(Wren.Kpa(400)), 1).With(Cut).Solve(Wren.At(3000, 0.2)),
        ["starved, regulator at the tank"] = () => Returnless(Fixed.At(Wren.Kpa(400)), 0.2).Solve(Wren.At(6500, 0.6)),
        [Narrow] = () => Returnless(Fixed.At(Wren.Kpa(400)), 1).With(Plumbing.Of(
            supply: [Line.Of("supply", Length.FromMillimeters(2), Length.FromMeters(9), Roughness.DrawnTube)])).Solve(Wren.At(6500, 0.6)),
        [BeforeRegulator] = () => Behind(Lines(), 1.4).Solve(Wren.At(5500, 0.4)),
        ["filter before a regulator at the tank, no return line"] = () => Behind(Lines(back: false), 1.4).Solve(Wren.At(5500, 0.4)),
        ["filter before a regulator at the tank, sagging"] = () => Behind(Lines(), 0.6).Solve(Wren.At(6500, 0.6)),
        ["regulator with a slope"] = () => Wren.System(ManifoldReferenced.From(Wren.Kpa(300)).WithFlow(Slope), pump: 1.6).With(Lines()).Solve(Wren.At(2500, 0.1)),
        ["regulator that adds a share of its outlet's pressure"] = () => Wren.System(ManifoldReferenced.From(Wren.Kpa(300)).WithFlow(Slope.WithOutletShare(0.8)), pump: 1.6).With(Lines()).Solve(Wren.At(2500, 0.1)),
        ["measured regulator"] = () => Wren.System(
            ManifoldReferenced.From(Wren.Kpa(300)).WithFlow(RegulatorFlow.Measured(
                VolumeFlow.FromLitersPerHour(60),
                (VolumeFlow.FromLitersPerHour(15), Wren.Kpa(292)),
                (VolumeFlow.FromLitersPerHour(60), Wren.Kpa(300)),
                (VolumeFlow.FromLitersPerHour(260), Wren.Kpa(321)))),
            pump: 1.2).Solve(Wren.At(2500, 0.1)),
        ["pair, one of which has a slope"] = () => Wren.System(
            RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)).WithFlow(Slope), RisingRate.From(Pressure.Zero, 8, Wren.Kpa(5))), pump: 2).Solve(Wren.At(4000, 0.5)),
        ["law of one's own"] = () => Wren.System(CustomRegulator.Of(new OwnSetting(320))).Solve(Wren.At(5000, 0.4)),
        ["law of one's own that is off, before a rising-rate unit"] = () => Wren.System(
            RegulatorSeries.Of(CustomRegulator.Of(new OwnSetting(320)).Off(4e3), RisingRate.From(Pressure.Zero, 9, Wren.Kpa(5))), pump: 2).Solve(Wren.At(4000, 0.5)),
        [Upright] = () => Wren.System().With(Pump.From(PumpCurve.At(
            "pump U",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(170)),
            (Wren.Kpa(500), VolumeFlow.FromLitersPerHour(170)),
            (Wren.Kpa(700), VolumeFlow.Zero)))).Solve(Wren.At(3000, 0.2)),
        [Branched] = () => Wren.System().With(PumpParallel.Of(
            PumpBranch.Of(Pump.From(Wren.PumpOf(0.6)), [Line.Of("own suction", Length.FromMillimeters(9), Length.FromMeters(0.4), Roughness.RubberHose)], [Line.Of("riser", Length.FromMillimeters(6), Length.FromMeters(1.2), Roughness.RubberHose)]),
            PumpBranch.Of(Pump.From(Wren.PumpOf(0.5)), discharge: [CheckValve.OfCoefficient("valve", Wren.Kpa(500), 1, Length.FromMillimeters(7))]))).Solve(Wren.At(3000, 0.2)),
        [OwnDemand] = () => Wren.System().With(Wren.Demand().With(new Tests.OwnDemand(1.25))).Solve(Wren.At(5000, 0.4)),
        [Evaporating] = () => Wren.System(pump: 1.6).With(Wren.Demand().WithEvaporation(Wren.Percent(30))).Solve(Wren.At(5000, 0.4)),
        [TakenBack] = () => Wren.System(pump: 1.6).With(SecondStream.Of(
            "stream M",
            StreamFluid.WithWaterByVolume(Fuel.Methanol, Wren.Percent(50)),
            SprayNozzles.Of(1, VolumeFlow.FromMillilitersPerMinute(390), Wren.Kpa(700), SprayNozzles.Water),
            Wren.Kpa(30),
            Wren.Kpa(850)).WithEvaporation(Wren.Percent(20)).WithMainFuelTakenBack(Wren.Percent(10))).Solve(Wren.At(5000, 0.4)),
        [BySpeed] = () => Wren.System().With(Wren.Demand().With(AlongSpeed.Of(
            SpeedRow.Of(Wren.Rpm(800), 0.95, Wren.Percent(60), Wren.Percent(80)),
            SpeedRow.Of(Wren.Rpm(7200), 0.8, Wren.Percent(74), Wren.Percent(60))))).Solve(Wren.At(5000, 0.4)),
        [Converted] = () => Wren.System(pump: 1.6).With(Wren.Demand().With(Fuel.E85)).Solve(Wren.At(5000, 0.2)),
        [VoltageAlone] = () => Wren.System().With(ByVoltage).Solve(Wren.At(5000, 0.4)),
        ["dead time not covered"] = () => Wren.System().Solve(OperatingPoint.At(
            Wren.Rpm(3000), Pressure.Zero, Conditions.Of(Atmosphere.Standard, Wren.Volt(7.5), Temperature.FromDegreesCelsius(20)))),
    };

    public static IEnumerable<string> Names => Cases.Keys;

    public static OperatingResult Solve(string name) => Cases[name]();

    private static Pump Fed(Pump pump, double metres) => pump.WithFeed(Feed.Of(
        "feed", Conductor.Awg(14), Length.FromMeters(metres), Length.FromMeters(metres), Temperature.FromDegreesCelsius(60), Contact.DefaultRelay));

    private static FuelSystem With(Func<ControllerData, EngineController> controller, double pump = 1) => Wren.System(pump: pump).With(controller(
        ControllerData.Of(Wren.InjectorOf(340), FuelSizing.Fuels.Fuel.Petrol, TargetLambda.At(0.86)).WithFuelTemperature(Temperature.FromDegreesCelsius(5))));

    private static FuelSystem TwoSets(HandOver handOver) => Wren.System(pump: 1.6).With(StagedInjectors.Of(
        InjectorSet.Of(
            Wren.InjectorOf(430).WithMeasuredFlows((Wren.Kpa(150), VolumeFlow.FromMillilitersPerMinute(297)), (Wren.Kpa(500), VolumeFlow.FromMillilitersPerMinute(548))),
            4),
        handOver));

    private static FuelSystem Measured(PressureRegulator? regulator = null) => Wren.System(regulator ?? ManifoldReferenced.From(Wren.Kpa(330)), pump: 2).With(InjectorSet.Of(
        Wren.InjectorOf(500).WithMeasuredFlows(
            (Wren.Kpa(200), VolumeFlow.FromMillilitersPerMinute(412)), (Wren.Kpa(400), VolumeFlow.FromMillilitersPerMinute(571))),
        4));

    private static FuelSystem Returnless(PressureRegulator regulator, double pump) => FuelSystem.Returnless(
        Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), regulator, Pump.From(Wren.WiredCurve(13.5, pump)), plumbing: Lines(back: regulator is Fixed));

    private static Plumbing Lines(bool back = true) => Plumbing.Of(
        suction: [Line.Of("suction hose", Length.FromMillimeters(9.5), Length.FromMeters(0.6), Roughness.RubberHose, [Fitting.Entrance], Length.FromMeters(-0.2))],
        supply:
        [
            Filter.Of("filter", VolumeFlow.FromLitersPerHour(170), Wren.Kpa(9), clogging: 1.3),
            Line.Of("supply", Length.FromMillimeters(6.5), Length.FromMeters(4.2), Roughness.DrawnTube, [Fitting.Bend90, Fitting.Bend90, Fitting.Elbow90], Length.FromMeters(0.45)),
        ],
        returnLine: back ? [Line.Of("return", Length.FromMillimeters(6.5), Length.FromMeters(4), Roughness.DrawnTube, rise: Length.FromMeters(-0.45))] : null);

    private static RegulatorFlow Slope => RegulatorFlow.Rising(Wren.Kpa(30), VolumeFlow.FromLitersPerHour(100), VolumeFlow.FromLitersPerHour(60));

    /// <summary>Injectors whose dead time goes by voltage alone, and whose flow is known from 120 kPa on.</summary>
    private static InjectorSet ByVoltage => InjectorSet.Of(
        Injector.Of(
            "injector V",
            VolumeFlow.FromMillilitersPerMinute(400),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1.1)), (Wren.Volt(16), Wren.Ms(0.6))),
            Wren.Ms(1.6),
            Wren.Kpa(550)).WithMinimumDifferential(Wren.Kpa(120)),
        4);

    /// <summary>A curve that ends at 200 kPa.</summary>
    private static Pump Cut => Pump.From(PumpCurve.At(
        "pump C", Wren.Volt(13.5), (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215)), (Wren.Kpa(200), VolumeFlow.FromLitersPerHour(185))));

    /// <summary>The regulator at the tank behind a filter and a hose.</summary>
    private static FuelSystem Behind(Plumbing lines, double pump) => FuelSystem.Returnless(
        Wren.Demand(),
        InjectorSet.Of(Wren.InjectorOf(500), 4),
        Fixed.At(Wren.Kpa(400)),
        Pump.From(Wren.WiredCurve(13.5, pump)),
        plumbing: Plumbing.Of(
            lines.Suction,
            lines.Supply,
            lines.ReturnLine,
            [Filter.Of("fine filter", VolumeFlow.FromLitersPerHour(170), Wren.Kpa(12)), Line.Of("riser", Length.FromMillimeters(7), Length.FromMeters(0.8), Roughness.RubberHose)]));

    private static FuelSystem Teal()
    {
        Engine engine = Engine.Of("Teal 1.3 L", Volume.FromLiters(1.3), 2, EngineCycle.TwoStroke, Wren.Rpm(6200));
        FuelDemandModel demand = FuelDemandModel.Of(
            engine,
            Induction.Turbocharged(Wren.Percent(68), Wren.Percent(55), Wren.Kpa(4)),
            VolumetricEfficiency.Of((Wren.Rpm(1500), Wren.Percent(58)), (Wren.Rpm(4000), Wren.Percent(71)), (Wren.Rpm(6200), Wren.Percent(66))),
            PowerCurve.AtCrank(
                Atmosphere.Standard, (Wren.Rpm(1500), Power.FromKilowatts(16)), (Wren.Rpm(4000), Power.FromKilowatts(57)), (Wren.Rpm(6200), Power.FromKilowatts(79))),
            Wren.Percent(86),
            Wren.Petrol);
        return FuelSystem.Return(
            demand,
            InjectorSet.Of(Wren.InjectorOf(820), 2, injectionsPerCycle: 2),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.WiredCurve(13.5, 1)),
            plumbing: Lines());
    }
}
