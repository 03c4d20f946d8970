using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Electrical;
using FuelSizing.Engines;
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
