using System.Reflection;
using System.Runtime.CompilerServices;
using FuelSizing.Bench;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Findings;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests;

/// <summary>
/// Descriptions are the same if their values are: however often built, from whichever lists, in whichever units; and not the
/// same as soon as one argument differs.
/// </summary>
public class DescriptionTests
{
    private const string Json = """{ "catalogue": 1, "regulators": [ { "name": "R", "kind": "fixed", "base": "3 bar" } ] }""";

    /// <summary>Every description with the arguments of a factory, and for each argument another value.</summary>
    private static readonly Dictionary<string, Made> All = new Made[]
    {
        Of(typeof(ElementalComposition), nameof(ElementalComposition.OfMolecule), [2, 6, 1], [3, 5, 0]),
        Of(typeof(ElementalComposition), nameof(ElementalComposition.OfAtomRatios), [1.87, 0.02], [1.9, 0.0]),
        AFuel,
        Of(
            typeof(Fuel),
            nameof(Fuel.PetrolOf),
            [Kilograms(745), null, Heat(43), "petrol A"],
            [Kilograms(740), ElementalComposition.OfAtomRatios(1.9), Heat(44), "petrol B"]),
        Of(
            Fuel.Petrol,
            nameof(Fuel.WithViscosity),
            [(Celsius(20), Centistokes(0.6)), (Celsius(-20), Centistokes(0.95))],
            [(Celsius(21), Centistokes(0.6)), (Celsius(-20), Centistokes(1))]),
        Of(
            Fuel.Petrol,
            nameof(Fuel.WithVapourPressure),
            [(Celsius(20), Wren.Kpa(30)), (Celsius(40), Wren.Kpa(60))],
            [(Celsius(21), Wren.Kpa(30)), (Celsius(40), Wren.Kpa(61))]),
        Of(Fuel.Petrol, nameof(Fuel.WithReidVapourPressure), [Wren.Kpa(70)], [Wren.Kpa(71)]),
        Of(
            typeof(FuelBlend),
            nameof(FuelBlend.ByVolume),
            ["E30", new[] { (Fuel.Petrol, Wren.Percent(70)), (Fuel.Ethanol, Wren.Percent(30)) }],
            ["E31", new[] { (Fuel.Petrol, Wren.Percent(69)), (Fuel.Ethanol, Wren.Percent(31)) }]),
        Of(typeof(Atmosphere), nameof(Atmosphere.Of), [Wren.Kpa(94.3), Celsius(17)], [Wren.Kpa(94.4), Celsius(18)]),
        AnEngine,
        AConsumption,
        Of(
            typeof(Induction),
            nameof(Induction.BeltDriven),
            [Wren.Percent(65), Wren.Percent(0), Wren.Kpa(0), Wren.Percent(95)],
            [Wren.Percent(66), Wren.Percent(70), Wren.Kpa(3), Wren.Percent(96)]),
        Air,
        Pull,
        Of(
            typeof(MeasuredBoost),
            nameof(MeasuredBoost.Of),
            [new[] { (Wren.Rpm(1700), Wren.Kpa(2.3)), (Wren.Rpm(6300), Wren.Kpa(52)) }],
            [new[] { (Wren.Rpm(1700), Wren.Kpa(2.3)), (Wren.Rpm(6300), Wren.Kpa(53)) }]),
        Of(
            typeof(HeldBoost),
            nameof(HeldBoost.Of),
            [Wren.Kpa(57.3), Wren.Rpm(3400), Wren.Rpm(6600), Wren.Rpm(1900)],
            [Wren.Kpa(57.4), Wren.Rpm(3500), Wren.Rpm(6500), null]),
        Of(
            typeof(CentrifugalBoost),
            nameof(CentrifugalBoost.From),
            [8.37, Wren.Rpm(5900), Wren.Kpa(41.3), Atmosphere.Standard],
            [8.38, Wren.Rpm(5800), Wren.Kpa(41.4), Wren.Hill.Atmosphere]),
        Of(
            typeof(DisplacementBoost),
            nameof(DisplacementBoost.Of),
            [1.83, Volume.FromLiters(1.16), Wren.Percent(87)],
            [1.84, Volume.FromLiters(1.17), Wren.Percent(88)]),
        Of(
            typeof(SpeedRow),
            nameof(SpeedRow.Of),
            [Wren.Rpm(2400), 0.88, Wren.Percent(58), Wren.Percent(66)],
            [Wren.Rpm(2500), 0.87, Wren.Percent(59), Wren.Percent(67)]),
        Of(
            typeof(AlongSpeed),
            nameof(AlongSpeed.Of),
            [new[] { SpeedRow.Of(Wren.Rpm(2400), 0.88), SpeedRow.Of(Wren.Rpm(6400), 0.81) }],
            [new[] { SpeedRow.Of(Wren.Rpm(2400), 0.88), SpeedRow.Of(Wren.Rpm(6400), 0.8) }]),
        Of(Dunnock.Centrifugal, nameof(BeltDrivenBoost.WithDriveRatio), [9.1], [9.2]),
        Of(Dunnock.Displacement, nameof(BeltDrivenBoost.WithMaximumCompressorSpeed), [Wren.Rpm(13_000)], [Wren.Rpm(13_100)]),
        Demand,
        Of(typeof(TestFluid), nameof(TestFluid.Of), ["fluid", Kilograms(690)], ["other", Kilograms(691)]),
        Of(
            typeof(DeadTimeTable),
            nameof(DeadTimeTable.ByVoltage),
            [new[] { (Wren.Volt(8), Wren.Ms(2.4)), (Wren.Volt(16), Wren.Ms(0.7)) }],
            [new[] { (Wren.Volt(8), Wren.Ms(2.4)), (Wren.Volt(16), Wren.Ms(0.71)) }]),
        DeadTimes,
        AnInjector,
        Injectors,
        Of(typeof(TargetLambda), nameof(TargetLambda.Of), [new[] { (Wren.Percent(40), 1.0), (Wren.Percent(80), 0.88) }], [new[] { (Wren.Percent(40), 1.0), (Wren.Percent(81), 0.88) }]),
        Of(typeof(ClosedLoop), nameof(ClosedLoop.Of), [Wren.Percent(15), Wren.Kpa(80)], [Wren.Percent(16), Wren.Kpa(81)]),
        Controller,
        Of(Data, nameof(ControllerData.WithDifferential), [Wren.Kpa(290)], [Wren.Kpa(291)]),
        Of(Data, nameof(ControllerData.WithFuelTemperature), [Celsius(21)], [Celsius(22)]),
        Of(Data, nameof(ControllerData.WithoutVoltageCorrection), [Wren.Volt(13)], [Wren.Volt(13.1)]),
        Of(Data, nameof(ControllerData.WithMaximumDutyCycle), [Wren.Percent(95)], [Wren.Percent(96)]),
        Of(Data, nameof(ControllerData.WithClosedLoop), [ClosedLoop.Of(Wren.Percent(15), Wren.Kpa(80))], [ClosedLoop.Of(Wren.Percent(14), Wren.Kpa(80))]),
        Of(
            typeof(SpeedDensityController),
            nameof(SpeedDensityController.Of),
            [Data, Wren.VolumetricEfficiency, Wren.Kpa(105), null],
            [Data.WithEthanolSensor(), OtherEfficiency, Wren.Kpa(106), Celsius(40)]),
        Of(
            typeof(ThrottleController),
            nameof(ThrottleController.Of),
            [Data, Wren.VolumetricEfficiency, Atmosphere.Standard, false, false],
            [Data.WithRailPressureCorrection(), OtherEfficiency, Wren.Hill.Atmosphere, true, true]),
        Of(
            typeof(AirflowMeterController),
            nameof(AirflowMeterController.Of),
            [Data, MassFlow.FromGramsPerSecond(118)],
            [Data.WithDifferential(Wren.Kpa(290)), null]),
        Of(
            typeof(RecordedPulseController),
            nameof(RecordedPulseController.Of),
            [new[] { Wren.Rpm(2000), Wren.Rpm(6000) }, new[] { Wren.Kpa(60), Wren.Kpa(100) }, new IReadOnlyList<Duration>[] { new[] { Wren.Ms(4), Wren.Ms(5) }, new[] { Wren.Ms(7), Wren.Ms(8) } }],
            [new[] { Wren.Rpm(2001), Wren.Rpm(6000) }, new[] { Wren.Kpa(61), Wren.Kpa(100) }, new IReadOnlyList<Duration>[] { new[] { Wren.Ms(4), Wren.Ms(5) }, new[] { Wren.Ms(7), Wren.Ms(8.1) } }]),
        Of(
            RecordedPulseController.BySpeed((Wren.Rpm(2000), Wren.Ms(4)), (Wren.Rpm(6000), Wren.Ms(5))),
            nameof(RecordedPulseController.WithVoltageCorrection),
            [Wren.DeadTime, Wren.Volt(13.5), Wren.Kpa(300)],
            [DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(0.7))), Wren.Volt(13.4), Wren.Kpa(310)]),
        Of(
            typeof(MixtureLimits),
            nameof(MixtureLimits.ByBoost),
            [new[] { (Wren.Kpa(10), 0.9), (Wren.Kpa(60), 0.84) }, 0.7],
            [new[] { (Wren.Kpa(11), 0.9), (Wren.Kpa(60), 0.84) }, null]),
        Of(SizingLimits.Default, nameof(SizingLimits.With), [MixtureLimits.Of(0.9)], [MixtureLimits.Of(0.91)]),
        Of(Wren.Demand(), nameof(FuelDemandModel.WithBasis), [DemandBasis.Air], [DemandBasis.Power]),
        Of(SizingLimits.Default, nameof(SizingLimits.WithDutyCycle), [Wren.Percent(80)], [Wren.Percent(81)]),
        Of(SizingLimits.Default, nameof(SizingLimits.WithPumpReserve), [Wren.Percent(15)], [Wren.Percent(16)]),
        Of(SizingLimits.Default, nameof(SizingLimits.WithRailCeiling), [Wren.Kpa(700)], [Wren.Kpa(701)]),
        Of(SizingLimits.Default, nameof(SizingLimits.WithFeedDrop), [Wren.Percent(4)], [Wren.Percent(3)]),
        Of(SizingLimits.Default, nameof(SizingLimits.WithSuctionMargin), [Wren.Kpa(12)], [Wren.Kpa(13)]),
        Of(typeof(Fixed), nameof(Fixed.At), [Wren.Kpa(230), Litres(20)], [Wren.Kpa(231), Litres(21)]),
        Base,
        Of(
            typeof(RisingRate),
            nameof(RisingRate.From),
            [Wren.Kpa(230), 4.0, Wren.Kpa(7), Wren.Kpa(610), Litres(20)],
            [Wren.Kpa(231), 4.1, Wren.Kpa(8), null, null]),
        Of(typeof(RegulatorFlow), nameof(RegulatorFlow.Rising), [Wren.Kpa(20), Litres(100), Litres(60)], [Wren.Kpa(21), Litres(101), Litres(61)]),
        Of(
            typeof(RegulatorFlow),
            nameof(RegulatorFlow.Measured),
            [Litres(60), new[] { (Litres(10), Wren.Kpa(290)), (Litres(90), Wren.Kpa(310)) }],
            [Litres(61), new[] { (Litres(10), Wren.Kpa(290)), (Litres(90), Wren.Kpa(311)) }]),
        Of(RegulatorFlow.Constant, nameof(RegulatorFlow.WithHysteresis), [Wren.Kpa(8)], [Wren.Kpa(9)]),
        Of(RegulatorFlow.Constant, nameof(RegulatorFlow.WithOutletShare), [0.1], [-0.1]),
        Of(Fixed.At(Wren.Kpa(300)), nameof(Fixed.WithFlow), [Returning], [RegulatorFlow.Constant]),
        Of(ManifoldReferenced.From(Wren.Kpa(300)), nameof(ManifoldReferenced.WithFlow), [Returning], [RegulatorFlow.Constant]),
        Of(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10)), nameof(RisingRate.WithFlow), [Returning], [RegulatorFlow.Constant]),
        Of(
            typeof(RegulatorSeries),
            nameof(RegulatorSeries.Of),
            [Base, RisingRate.From(Wren.Kpa(0), 6, Wren.Kpa(10))],
            [Fixed.At(Wren.Kpa(300)), RisingRate.From(Wren.Kpa(0), 7, Wren.Kpa(10))]),
        Of(
            typeof(ElectronicReturnless),
            nameof(ElectronicReturnless.Holding),
            [Wren.Kpa(350), true, Wren.Volt(6.3)],
            [Wren.Kpa(351), false, Wren.Volt(6.4)]),
        Of(
            typeof(PumpCurve),
            nameof(PumpCurve.At),
            ["pump", Wren.Volt(13.5), new[] { (Wren.Kpa(0), Litres(215)), (Wren.Kpa(730), Litres(0)) }],
            ["other", Wren.Volt(13.4), new[] { (Wren.Kpa(0), Litres(215)), (Wren.Kpa(740), Litres(0)) }]),
        ACurve,
        APump,
        Of(typeof(PulseReading), nameof(PulseReading.Of), [Wren.Ms(2.5), 1000, Mass.FromGrams(7.8)], [Wren.Ms(2.6), 1001, Mass.FromGrams(7.9)]),
        Of(
            typeof(PulseTest),
            nameof(PulseTest.Of),
            ["injector", TestFluid.Heptane, Wren.Kpa(300), Wren.Volt(13.5), Mass.FromMilligrams(10), Wren.Percent(0.3), Weighed(7.8)],
            ["other", TestFluid.Of("other", Kilograms(690)), Wren.Kpa(310), Wren.Volt(13), Mass.FromMilligrams(11), Wren.Percent(0.4), Weighed(7.9)]),
        Of(typeof(StaticReading), nameof(StaticReading.ByMass), [Duration.FromSeconds(30), Mass.FromGrams(156)], [Duration.FromSeconds(31), Mass.FromGrams(157)]),
        Of(
            typeof(StaticTest),
            nameof(StaticTest.ByMass),
            ["injector", TestFluid.Heptane, Wren.Kpa(300), Mass.FromGrams(0.1), Duration.FromSeconds(0.1), Wren.Percent(0.3), HeldOpen(156)],
            ["other", TestFluid.Of("other", Kilograms(690)), Wren.Kpa(310), Mass.FromGrams(0.2), Duration.FromSeconds(0.2), Wren.Percent(0.4), HeldOpen(157)]),
        Of(
            typeof(CorrelatedInputs),
            nameof(CorrelatedInputs.Of),
            [UncertainInput.BoostFactor(Factor(97)), UncertainInput.InjectorFlowFactor(Factor(98)), Wren.Percent(50)],
            [UncertainInput.VolumetricEfficiencyFactor(Factor(97)), UncertainInput.RegulatorGainFactor(Factor(98)), Wren.Percent(51)]),
        Of(typeof(GaugeAccuracy), nameof(GaugeAccuracy.Of), [Wren.Kpa(1), Wren.Kpa(2), Wren.Percent(0.5)], [Wren.Kpa(1.1), Wren.Kpa(2.1), Wren.Percent(0.6)]),
        Of(
            typeof(PumpFlowReading),
            nameof(PumpFlowReading.OfMass),
            [Wren.Kpa(300), Wren.Volt(13.5), Mass.FromGrams(1200), Duration.FromSeconds(30), Amperes(6)],
            [Wren.Kpa(310), Wren.Volt(13.4), Mass.FromGrams(1210), Duration.FromSeconds(31), null]),
        Of(
            typeof(PumpFlowReading),
            nameof(PumpFlowReading.OfVolume),
            [Wren.Kpa(300), Wren.Volt(13.5), Volume.FromLiters(1.6), Duration.FromSeconds(30), Amperes(6)],
            [Wren.Kpa(310), Wren.Volt(13.4), Volume.FromLiters(1.7), Duration.FromSeconds(31), null]),
        Of(
            typeof(PumpFlowTest),
            nameof(PumpFlowTest.Weighed),
            ["pump", TestFluid.Heptane, Mass.FromGrams(2), Duration.FromSeconds(0.1), AGauge, Wren.Percent(0.1), Wren.Percent(0.2), Filled(1000), Amperes(0.1)],
            ["other", TestFluid.Of("other", Kilograms(690)), Mass.FromGrams(3), Duration.FromSeconds(0.2), OtherGauge, Wren.Percent(0.2), Wren.Percent(0.3), Filled(1001), Amperes(0.2)]),
        Of(typeof(DeadheadReading), nameof(DeadheadReading.Of), [Wren.Volt(13.5), Wren.Kpa(690), false], [Wren.Volt(13.4), Wren.Kpa(700), true]),
        Of(typeof(DeadheadTest), nameof(DeadheadTest.Of), ["pump", AGauge, Shut(690)], ["other", OtherGauge, Shut(691)]),
        Of(typeof(VoltageDropReading), nameof(VoltageDropReading.Of), [Amperes(12), Wren.Volt(0.3)], [Amperes(13), Wren.Volt(0.31)]),
        Of(
            typeof(VoltageDropTest),
            nameof(VoltageDropTest.Of),
            ["joint", Wren.Volt(0.001), Wren.Volt(0.0005), Amperes(0.02), Wren.Percent(0.8), Drops(25)],
            ["other", Wren.Volt(0.002), Wren.Volt(0.0006), Amperes(0.03), Wren.Percent(0.9), Drops(26)]),
        Of(
            typeof(RegulatorGaugeReading),
            nameof(RegulatorGaugeReading.Of),
            [Wren.Kpa(40), Wren.Kpa(420), Litres(80)],
            [Wren.Kpa(41), Wren.Kpa(421), null]),
        Of(typeof(RegulatorTest), nameof(RegulatorTest.Of), ["unit", true, AGauge, AGauge, Gauged(300)], ["other", false, OtherGauge, OtherGauge, Gauged(301)]),
        Of(
            typeof(ConsumptionReading),
            nameof(ConsumptionReading.Of),
            [Mass.FromKilograms(30), Mass.FromKilograms(29), Duration.FromSeconds(60), Power.FromKilowatts(180)],
            [Mass.FromKilograms(31), Mass.FromKilograms(28), Duration.FromSeconds(61), Power.FromKilowatts(181)]),
        Of(
            typeof(ConsumptionTest),
            nameof(ConsumptionTest.Of),
            ["engine", Mass.FromGrams(5), Duration.FromSeconds(0.2), Wren.Percent(0.5), Wren.Percent(1), Steady(900)],
            ["other", Mass.FromGrams(6), Duration.FromSeconds(0.3), Wren.Percent(0.6), Wren.Percent(1.1), Steady(901)]),
        Of(typeof(PumpDrive), nameof(PumpDrive.Of), [PumpKind.Turbine, Milliohms(210)], [PumpKind.Displacement, Milliohms(220)]),
        Of(
            Pump.From(Wren.WiredCurve(13.5, 1)),
            nameof(Pump.WithDrive),
            [PumpDrive.Of(PumpKind.Turbine, Milliohms(210))],
            [PumpDrive.Of(PumpKind.Displacement, Milliohms(210))]),
        Of(Pump.From(Wren.Pump), nameof(Pump.WithCondition), [Wren.Percent(93)], [Wren.Percent(94)]),
        Of(
            typeof(PumpSeries),
            nameof(PumpSeries.Of),
            [SeriesBypass.CheckValve, new PumpAssembly[] { Pump.From(Wren.Pump), Pump.From(Wren.Pump) }],
            [SeriesBypass.None, new PumpAssembly[] { Pump.From(Wren.Pump), Pump.From(Wren.PumpOf(1.1)) }]),
        Of(
            typeof(PumpParallel),
            nameof(PumpParallel.Of),
            [new PumpAssembly[] { Pump.From(Wren.Pump), Pump.From(Wren.Pump) }],
            [new PumpAssembly[] { Pump.From(Wren.Pump), Pump.From(Wren.Pump), Pump.From(Wren.Pump) }]),
        Of(
            typeof(SwitchedPump),
            nameof(SwitchedPump.Above),
            [Wren.Kpa(43), Wren.Kpa(31), Pump.From(Wren.WiredCurve(13.5, 1)), PumpLowSpeed.Through(Milliohms(210))],
            [Wren.Kpa(44), Wren.Kpa(32), Pump.From(Wren.WiredCurve(12, 0.85)), null]),
        Of(
            typeof(VoltageConverter),
            nameof(VoltageConverter.Holding),
            ["converter", Wren.Volt(15.5), Wren.Percent(91), Amperes(19)],
            ["other", Wren.Volt(15.6), Wren.Percent(92), null]),
        Of(
            typeof(VoltageConverter),
            nameof(VoltageConverter.Times),
            ["converter", 1.21, Wren.Percent(91), Amperes(19)],
            ["other", 1.22, Wren.Percent(92), null]),
        Of(
            Pump.From(Wren.WiredCurve(13.5, 1)),
            nameof(Pump.WithConverter),
            [VoltageConverter.Times("converter", 1.21, Wren.Percent(91))],
            [VoltageConverter.Times("converter", 1.22, Wren.Percent(91))]),
        Of(typeof(PumpLowSpeed), nameof(PumpLowSpeed.Through), [Milliohms(210)], [Milliohms(220)]),
        Of(typeof(PumpLowSpeed), nameof(PumpLowSpeed.At), [Wren.Percent(63)], [Wren.Percent(64)]),
        ALine,
        Of(typeof(Fitting), nameof(Fitting.Of), ["tee", 0.9], ["elbow", 1.0]),
        Of(typeof(Fitting), nameof(Fitting.OfDiameters), ["tee", 20.0], ["elbow", 21.0]),
        Of(Fitting.Elbow90, nameof(Fitting.Times), [3], [4]),
        AFilter,
        Of(typeof(CustomRegulator), nameof(CustomRegulator.Of), [new OwnSetting(310), Litres(12)], [new OwnSetting(311), Litres(13)]),
        Of(typeof(CustomLoss), nameof(CustomLoss.Of), [new OwnLoss(5)], [new OwnLoss(6)]),
        Of(typeof(CustomController), nameof(CustomController.Of), [new OwnPulse(7)], [new OwnPulse(8)]),
        Of(typeof(PumpLaw), nameof(PumpLaw.Tabulated), [new OwnPump(210)], [new OwnPump(211)]),
        Of(
            typeof(CheckValve),
            nameof(CheckValve.Of),
            ["valve", Wren.Kpa(6.3), Litres(183), Wren.Kpa(14.7), Kilograms(790)],
            ["other", Wren.Kpa(6.4), Litres(184), Wren.Kpa(14.8), null]),
        Of(
            typeof(CheckValve),
            nameof(CheckValve.OfCoefficient),
            ["valve", Wren.Kpa(6.3), 3.7, Millimetres(7.3)],
            ["other", Wren.Kpa(6.4), 3.8, Millimetres(7.4)]),
        Of(
            typeof(FuseTimeCurrent),
            nameof(FuseTimeCurrent.Of),
            [new[] { (2.3, Duration.FromSeconds(1), Duration.FromSeconds(5)) }],
            [new[] { (2.4, Duration.FromSeconds(1), Duration.FromSeconds(5)) }]),
        Of(typeof(FuseTimeCurrent), nameof(FuseTimeCurrent.From), [new[] { ATime(2.3) }], [new[] { ATime(2.4) }]),
        Of(
            typeof(FuseTime),
            nameof(FuseTime.Of),
            [2.3, Duration.FromSeconds(0.21), Duration.FromSeconds(6.1)],
            [2.4, Duration.FromSeconds(0.22), Duration.FromSeconds(6.2)]),
        Of(
            typeof(MotorStart),
            nameof(MotorStart.Of),
            [Amperes(46), Duration.FromSeconds(0.11), Duration.FromSeconds(9)],
            [Amperes(47), null, Duration.FromSeconds(8)]),
        Of(
            typeof(PumpBranch),
            nameof(PumpBranch.Of),
            [Pump.From(Wren.Pump), new IFlowLoss[] { Hose(8) }, new IFlowLoss[] { Strainer, Hose(6) }],
            [Pump.From(Wren.PumpOf(1.1)), Array.Empty<IFlowLoss>(), new IFlowLoss[] { Hose(6), Strainer }]),
        Of(typeof(Contact), nameof(Contact.Of), ["stud", Milliohms(2.3)], ["joint", Milliohms(2.4)]),
        Of(typeof(Conductor), nameof(Conductor.Awg), [12, ConductorMaterial.Copper], [10, ConductorMaterial.Aluminium]),
        Of(typeof(Conductor), nameof(Conductor.AwgZeros), [2, null], [3, ConductorMaterial.Aluminium]),
        Of(typeof(Conductor), nameof(Conductor.Metric), [Area.FromSquareMillimeters(4)], [Area.FromSquareMillimeters(6)]),
        Of(
            typeof(Conductor),
            nameof(Conductor.OfArea),
            [Area.FromSquareMillimeters(4.3), ConductorMaterial.Copper, Wren.Percent(2)],
            [Area.FromSquareMillimeters(4.4), ConductorMaterial.Aluminium, Wren.Percent(3)]),
        AFeed,
        Of(
            typeof(GroundReturn),
            nameof(GroundReturn.Of),
            [Conductor.Awg(12), Metres(0.4), Celsius(60), Milliohms(4), new[] { Contact.DefaultJoint }],
            [Conductor.Awg(14), Metres(0.5), Celsius(61), Milliohms(5), Array.Empty<Contact>()]),
        Of(
            typeof(Feed),
            nameof(Feed.WithChassisReturn),
            ["feed", Conductor.Awg(12), Metres(4.3), Milliohms(5), Celsius(70), Array.Empty<Contact>()],
            ["other", Conductor.Awg(10), Metres(4.4), Milliohms(6), Celsius(71), new[] { Contact.DefaultFuse }]),
        Of(
            typeof(Conditions),
            nameof(Conditions.Of),
            [Wren.Hill.Atmosphere, Wren.Volt(13.3), Celsius(35)],
            [Atmosphere.Standard, Wren.Volt(13.4), Celsius(36)]),
        Of(OperatingRanges.Around(Wren.Hill), nameof(OperatingRanges.WithAmbientPressure), [Wren.Kpa(90), Wren.Kpa(102)], [Wren.Kpa(91), Wren.Kpa(103)]),
        Of(OperatingRanges.Around(Wren.Hill), nameof(OperatingRanges.WithAmbientTemperature), [Celsius(-5), Celsius(30)], [Celsius(-6), Celsius(31)]),
        Of(OperatingRanges.Around(Wren.Hill), nameof(OperatingRanges.WithSupplyVoltage), [Wren.Volt(12), Wren.Volt(14)], [Wren.Volt(12.1), Wren.Volt(14.1)]),
        Of(OperatingRanges.Around(Wren.Hill), nameof(OperatingRanges.WithFuelTemperature), [Celsius(5), Celsius(50)], [Celsius(6), Celsius(51)]),
        Of(
            OperatingRanges.Around(Wren.Hill),
            nameof(OperatingRanges.WithEthanolContent),
            [Wren.Percent(0), Wren.Percent(10), null],
            [Wren.Percent(1), Wren.Percent(11), Fuel.PetrolOf(Kilograms(740))]),
        APoint,
        Limits,
        Lines,
        ASystem,
        Of(
            typeof(SurgeTank),
            nameof(SurgeTank.Of),
            [
                Volume.FromLiters(1.3), Pump.From(Wren.Pump), ReturnDestination.MainTank, new IFlowLoss[] { Hose(8) }, new IFlowLoss[] { Strainer, Hose(6) },
                new IFlowLoss[] { Hose(7) }, Wren.Kpa(60), Duration.FromSeconds(2),
            ],
            [
                Volume.FromLiters(1.4), Pump.From(Wren.PumpOf(1.1)), ReturnDestination.SurgeTank, new IFlowLoss[] { Hose(9) }, new IFlowLoss[] { Hose(6), Strainer },
                Array.Empty<IFlowLoss>(), null, Duration.FromSeconds(3),
            ]),
        Of(Systems.SurgeTanks.Everything, nameof(SurgeTank.WithUsableVolume), [Volume.FromLiters(1.1)], [Volume.FromLiters(1.2)]),
        Of(Systems.SurgeTanks.Everything, nameof(SurgeTank.WithReturnTo), [ReturnDestination.SurgeTank], [ReturnDestination.MainTank]),
        Of(Systems.SurgeTanks.Everything, nameof(SurgeTank.WithMaximumPressure), [Wren.Kpa(50)], [Wren.Kpa(51)]),
        Of(Systems.SurgeTanks.Everything, nameof(SurgeTank.WithPrimingTime), [Duration.FromSeconds(1)], [Duration.FromSeconds(1.5)]),
        Of(
            Systems.SurgeTanks.Everything,
            nameof(SurgeTank.WithLines),
            [new IFlowLoss[] { Hose(8) }, new IFlowLoss[] { Strainer, Hose(6) }, new IFlowLoss[] { Hose(7) }],
            [new IFlowLoss[] { Hose(9) }, new IFlowLoss[] { Hose(6), Strainer }, Array.Empty<IFlowLoss>()]),
        Of(typeof(HandOver), nameof(HandOver.ByBoost), [Wren.Kpa(30), Wren.Kpa(50), Wren.Percent(45), Wren.Percent(20)], [Wren.Kpa(31), Wren.Kpa(51), Wren.Percent(46), Wren.Percent(21)]),
        Of(typeof(HandOver), nameof(HandOver.ByDutyCycle), [Wren.Percent(70), Wren.Percent(45), Wren.Percent(20)], [Wren.Percent(71), Wren.Percent(46), Wren.Percent(21)]),
        Of(Systems.Staged.ByBoost, nameof(HandOver.WithShare), [Wren.Percent(50)], [Wren.Percent(51)]),
        Of(Systems.Staged.ByBoost, nameof(HandOver.WithShareAtBegin), [Wren.Percent(22)], [Wren.Percent(23)]),
        Of(
            typeof(StagedInjectors),
            nameof(StagedInjectors.Of),
            [Injectors, Systems.Staged.ByBoost],
            [InjectorSet.Of(Wren.InjectorOf(300), 6, 2), Systems.Staged.ByDutyCycle]),
        Of(Systems.Staged.Of(), nameof(StagedInjectors.WithSecondary), [Injectors], [InjectorSet.Of(Wren.InjectorOf(300), 6, 2)]),
        Of(Systems.Staged.Of(), nameof(StagedInjectors.WithHandOver), [Systems.Staged.ByDutyCycle], [Systems.Staged.ByBoost]),
        Of(typeof(StreamFluid), nameof(StreamFluid.Of), [Fuel.Methanol], [Fuel.Ethanol]),
        Of(typeof(StreamFluid), nameof(StreamFluid.WithWaterByMass), [Fuel.Methanol, Wren.Percent(50)], [Fuel.Ethanol, Wren.Percent(51)]),
        Of(typeof(StreamFluid), nameof(StreamFluid.WithWaterByVolume), [Fuel.Methanol, Wren.Percent(50)], [Fuel.Ethanol, Wren.Percent(51)]),
        Of(Systems.SecondStreams.Half, nameof(StreamFluid.WithDensity), [Kilograms(917)], [Kilograms(918)]),
        Of(
            typeof(SprayNozzles),
            nameof(SprayNozzles.Of),
            [2, VolumeFlow.FromMillilitersPerMinute(300), Wren.Kpa(700), SprayNozzles.Water, SprayPlace.Manifold],
            [3, VolumeFlow.FromMillilitersPerMinute(310), Wren.Kpa(710), TestFluid.Heptane, SprayPlace.BeforeCompressor]),
        Of(Systems.SecondStreams.Nozzles, nameof(SprayNozzles.WithMinimumDifferential), [Wren.Kpa(100)], [Wren.Kpa(110)]),
        Of(
            typeof(SecondStream),
            nameof(SecondStream.Of),
            ["stream", Systems.SecondStreams.Half, Systems.SecondStreams.Nozzles, Wren.Kpa(40), Wren.Kpa(850), Pump.From(Wren.Pump), Wren.Kpa(60)],
            ["other", StreamFluid.Of(Fuel.Methanol), Systems.SecondStreams.Spraying(400), Wren.Kpa(41), Wren.Kpa(860), Pump.From(Wren.PumpOf(1.1)), Wren.Kpa(61)]),
        Of(
            Systems.SecondStreams.Everything,
            nameof(SecondStream.WithTank),
            [Volume.FromLiters(3), Duration.FromSeconds(90)],
            [Volume.FromLiters(4), Duration.FromSeconds(91)]),
        Of(Systems.SecondStreams.Everything, nameof(SecondStream.WithEvaporation), [Wren.Percent(30)], [Wren.Percent(31)]),
        Of(Systems.SecondStreams.Everything, nameof(SecondStream.WithMainFuelTakenBack), [Wren.Percent(12)], [Wren.Percent(13)]),
        Of(typeof(TankHeat), nameof(TankHeat.Of), [Volume.FromLiters(30), Power.FromWatts(150)], [Volume.FromLiters(31), Power.FromWatts(160)]),
        Of(ATank, nameof(TankHeat.WithFuelVolume), [Volume.FromLiters(20)], [Volume.FromLiters(21)]),
        Of(ATank, nameof(TankHeat.WithRailPickup), [Power.FromWatts(120)], [Power.FromWatts(121)]),
        Of(
            ATank,
            nameof(TankHeat.WithWalls),
            [Area.FromSquareMeters(0.7), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(6)],
            [Area.FromSquareMeters(0.8), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(7)]),
        Of(ATank, nameof(TankHeat.WithAmbient), [Celsius(20)], [Celsius(21)]),
        Of(
            ATank,
            nameof(TankHeat.WithSpecificHeat),
            [SpecificEntropy.FromKilojoulesPerKilogramKelvin(2.1)],
            [SpecificEntropy.FromKilojoulesPerKilogramKelvin(2.2)]),
        Of(
            typeof(PickupPattern),
            nameof(PickupPattern.Of),
            [Wren.At(6000, 0.5), Duration.FromSeconds(5), Wren.At(3000, 0), Duration.FromSeconds(8), 7],
            [Wren.At(6100, 0.5), Duration.FromSeconds(6), Wren.At(3100, 0), Duration.FromSeconds(9), 8]),
        Of(
            typeof(FuelSystem),
            nameof(FuelSystem.Returnless),
            [Demand, Injectors, Base, APump, Limits, Lines],
            [Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(300), 4), Fixed.At(Wren.Kpa(300)), Pump.From(Wren.Pump), null, null]),
        ACandidate,
        Of(
            typeof(CandidateParts),
            nameof(CandidateParts.Of),
            [
                new[] { Candidate.Of("A", Wren.InjectorOf(360)) },
                new[] { Candidate.Of<PumpAssembly>("P", Pump.From(Wren.Pump)) },
                new[] { Candidate.Of<PressureRegulator>("R", Fixed.At(Wren.Kpa(300))) },
            ],
            [
                new[] { Candidate.Of("A", Wren.InjectorOf(370)) },
                new[] { Candidate.Of<PumpAssembly>("P", Pump.From(Wren.PumpOf(1.1))) },
                Array.Empty<Candidate<PressureRegulator>>(),
            ]),
        Of(
            typeof(Stage),
            nameof(Stage.Of),
            ["now", ASystem, new[] { Wren.At(3000, 0) }],
            ["later", Wren.System(), new[] { Wren.At(3000, 0), Wren.At(6000, 0.5) }]),
        Of(
            typeof(Setup),
            nameof(Setup.Of),
            [ASystem, new[] { ("idle", Wren.At(900, -0.6)) }],
            [Wren.System(), new[] { ("full", Wren.At(900, -0.6)) }]),
        Of(typeof(PullRange), nameof(PullRange.Of), [Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill], [Wren.Rpm(3100), Wren.Rpm(6100), null]),
        Of(Setup.Of(Wren.System()), nameof(Setup.With), [HeldAt(0.6)], [HeldAt(0.5)]),
        Of(
            Setup.Of(Wren.System()).With(HeldAt(0.6)),
            nameof(Setup.WithPull),
            [Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill],
            [Wren.Rpm(3100), Wren.Rpm(6100), null]),
        Of(
            typeof(Catalogue),
            nameof(Catalogue.Parse),
            ["list.json", Json],
            ["list.json", Json.Replace("3 bar", "310 kPa", StringComparison.Ordinal)]),
        Of(
            typeof(BenchTests),
            nameof(BenchTests.Parse),
            ["bench.json", Files.Benches.BenchFiles.Json],
            ["bench.json", Files.Benches.BenchFiles.Json.Replace("300 kPa", "310 kPa", StringComparison.Ordinal)]),
        Generic(nameof(Distribution.Fixed), [Wren.Kpa(2.3)], [Wren.Kpa(2.4)]),
        Generic(nameof(Distribution.Uniform), [Wren.Kpa(2.3), Wren.Kpa(4.7)], [Wren.Kpa(2.4), Wren.Kpa(4.8)]),
        Generic(
            nameof(Distribution.Triangular), [Wren.Kpa(2.3), Wren.Kpa(3), Wren.Kpa(4.7)], [Wren.Kpa(2.4), Wren.Kpa(3.1), Wren.Kpa(4.8)]),
        Generic(
            nameof(Distribution.Normal),
            [Wren.Kpa(3), Wren.Kpa(0.3), Wren.Kpa(2.3), Wren.Kpa(4.7)],
            [Wren.Kpa(3.1), Wren.Kpa(0.4), Wren.Kpa(2.4), Wren.Kpa(4.8)]),
        Of(
            typeof(UncertainInput),
            nameof(UncertainInput.EthanolContent),
            [Distribution.Uniform(Wren.Percent(60), Wren.Percent(83)), Fuel.Petrol],
            [Distribution.Uniform(Wren.Percent(61), Wren.Percent(83)), Fuel.PetrolOf(Kilograms(730))]),
        Of(typeof(SystemOutput), nameof(SystemOutput.ReserveOf), [Part.Pump], [Part.Injectors]),
        Of(typeof(Sampling), nameof(Sampling.Of), [100, 3L, 2], [101, 4L, 3]),
        Of(typeof(ColumnPlace), nameof(ColumnPlace.Named), ["Speed"], ["Drehzahl"]),
        Of(typeof(ColumnPlace), nameof(ColumnPlace.Numbered), [3], [4]),
        Of(
            typeof(RunColumn),
            nameof(RunColumn.Speed),
            [ColumnPlace.Named("Speed"), RotationalSpeedUnit.RevolutionPerMinute],
            [ColumnPlace.Numbered(1), null]),
        Of(
            typeof(RunMapping),
            nameof(RunMapping.Of),
            [new[] { RunColumn.Speed("Speed"), RunColumn.Lambda("Lambda") }],
            [new[] { RunColumn.Speed("Speed"), RunColumn.Lambda("Lambda 2") }]),
        Of(Mapping, nameof(RunMapping.Written), [CellSeparator.Semicolon, DecimalMark.Comma], [CellSeparator.Tab, DecimalMark.Point]),
        Of(Mapping, nameof(RunMapping.WithHeadingLine), [2], [3]),
        Of(Mapping, nameof(RunMapping.WithUnitsRow), [UnitsRow.Used], [UnitsRow.Skipped]),
        Of(
            typeof(ModelDiscrepancy),
            nameof(ModelDiscrepancy.Of),
            [
                Wren.Percent(4), TemperatureDelta.FromKelvins(13), Wren.Percent(2), Wren.Kpa(10), Wren.Ms(200), Wren.Ms(120), Wren.Ms(50), Wren.Ms(40),
                Wren.Percent(0.8),
            ],
            [
                Wren.Percent(5), TemperatureDelta.FromKelvins(14), Wren.Percent(3), Wren.Kpa(11), Wren.Ms(210), Wren.Ms(130), Wren.Ms(60), Wren.Ms(50),
                Wren.Percent(0.9),
            ]),
        Of(
            typeof(SensorAccuracy),
            nameof(SensorAccuracy.Of),
            [
                Wren.Kpa(2), Wren.Kpa(0.5), Wren.Ms(0.01), Wren.Percent(1), Wren.Percent(1), Wren.Percent(1), Wren.Kpa(3), Wren.Kpa(1),
                Wren.Percent(1),
            ],
            [
                Wren.Kpa(2.1), Wren.Kpa(0.6), Wren.Ms(0.02), Wren.Percent(1.1), Wren.Percent(1.1), Wren.Percent(1.1), Wren.Kpa(3.1),
                Wren.Kpa(1.1), Wren.Percent(1.1),
            ]),
        Of(
            typeof(PlanTolerance),
            nameof(PlanTolerance.Of),
            [
                Wren.Percent(3), Milliohms(10), Wren.Percent(30), Wren.Kpa(5), Wren.Percent(2), Wren.Kpa(2), Wren.Percent(1.5), Wren.Ms(0.03),
                Wren.Percent(2.5), Wren.Percent(4), Wren.Volt(0.3),
            ],
            [
                Wren.Percent(3.1), Milliohms(11), Wren.Percent(31), Wren.Kpa(6), Wren.Percent(2.1), Wren.Kpa(2.1), Wren.Percent(1.6),
                Wren.Ms(0.04), Wren.Percent(2.6), Wren.Percent(4.1), Wren.Volt(0.4),
            ]),
    }.ToDictionary(made => made.Name);

    private static readonly string[] Folders =
    [
        "Fuels", "Engines", "Injectors", "Controllers", "Regulators", "Pumps", "Lines", "Electrical", "Circuits", "Points", "Systems", "Selection", "Files",
    ];

    public static TheoryData<string> Names => [.. All.Keys];

    private static Made Returning => Of(
        typeof(RegulatorFlow), nameof(RegulatorFlow.Rising), [Wren.Kpa(20), Litres(100), Litres(60)], [Wren.Kpa(21), Litres(101), Litres(61)]);

    private static Made AFuel => Of(
        typeof(Fuel),
        nameof(Fuel.Of),
        ["f", ElementalComposition.OfMolecule(2, 6, 1), Heat(26.9), Kilograms(793.5), Expansion(1.08e-3)],
        ["g", ElementalComposition.OfMolecule(1, 4, 1), Heat(27), Kilograms(794), Expansion(1.1e-3)]);

    private static Made AnEngine => Of(
        typeof(Engine),
        nameof(Engine.Of),
        ["engine", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Wren.Rpm(7200)],
        ["other", Volume.FromLiters(2.3), 6, EngineCycle.TwoStroke, Wren.Rpm(7100)]);

    private static Made AConsumption => Of(
        typeof(FuelConsumption),
        nameof(FuelConsumption.Of),
        [Fuel.Petrol, 0.82, Grams(315)],
        [Fuel.PetrolOf(Kilograms(730)), 0.83, Grams(316)]);

    private static Made Air => Of(
        typeof(VolumetricEfficiency),
        nameof(VolumetricEfficiency.Of),
        [new[] { (Wren.Rpm(800), Wren.Percent(72)), (Wren.Rpm(7200), Wren.Percent(91)) }],
        [new[] { (Wren.Rpm(800), Wren.Percent(72)), (Wren.Rpm(7300), Wren.Percent(91)) }]);

    private static Made Pull => Of(
        typeof(PowerCurve),
        nameof(PowerCurve.AtWheels),
        [Atmosphere.Standard, Wren.Percent(15), new[] { (Wren.Rpm(800), Power.FromKilowatts(9)), (Wren.Rpm(7200), Power.FromKilowatts(128)) }],
        [Wren.Hill.Atmosphere, Wren.Percent(16), new[] { (Wren.Rpm(800), Power.FromKilowatts(9)), (Wren.Rpm(7200), Power.FromKilowatts(129)) }]);

    private static Made Demand => Of(
        typeof(FuelDemandModel),
        nameof(FuelDemandModel.Of),
        [AnEngine, Wren.Turbocharger, Air, Pull, Wren.Percent(85), AConsumption, DemandBasis.Air, Wren.Rpm(6000)],
        [Wren.Engine, Induction.NaturallyAspirated, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(86), FuelConsumption.Of(Fuel.Petrol, 0.83, Grams(315)), DemandBasis.Power, Wren.Rpm(6100)]);

    private static Made DeadTimes => Of(
        typeof(DeadTimeTable),
        nameof(DeadTimeTable.Of),
        [
            new[] { Wren.Volt(8), Wren.Volt(16) },
            new[] { Wren.Kpa(230), Wren.Kpa(430) },
            new[] { new[] { Wren.Ms(2.3), Wren.Ms(0.7) }, new[] { Wren.Ms(2.6), Wren.Ms(0.8) } },
        ],
        [
            new[] { Wren.Volt(8), Wren.Volt(15) },
            new[] { Wren.Kpa(230), Wren.Kpa(440) },
            new[] { new[] { Wren.Ms(2.3), Wren.Ms(0.7) }, new[] { Wren.Ms(2.6), Wren.Ms(0.9) } },
        ]);

    private static Made AnInjector => Of(
        typeof(Injector),
        nameof(Injector.Of),
        ["injector", VolumeFlow.FromMillilitersPerMinute(370), Wren.Kpa(300), TestFluid.Heptane, DeadTimes, Wren.Ms(1.3), Wren.Kpa(550), Wren.Volt(13)],
        [
            "other", VolumeFlow.FromMillilitersPerMinute(371), Wren.Kpa(301), TestFluid.Of("n-heptane", Kilograms(684)), Wren.DeadTime,
            Wren.Ms(1.4), Wren.Kpa(551), Wren.Volt(12),
        ]);

    private static Made Injectors => Of(typeof(InjectorSet), nameof(InjectorSet.Of), [AnInjector, 4, 1], [Wren.InjectorOf(300), 6, 2]);

    private static Made Base =>
        Of(typeof(ManifoldReferenced), nameof(ManifoldReferenced.From), [Wren.Kpa(230), Litres(20)], [Wren.Kpa(231), null]);

    private static Made ACurve => Of(
        typeof(PumpCurve),
        nameof(PumpCurve.WithCurrent),
        ["pump", Wren.Volt(13.5), new[] { (Wren.Kpa(0), Litres(215), Amperes(4.3)), (Wren.Kpa(730), Litres(0), Amperes(12)) }],
        ["other", Wren.Volt(13.4), new[] { (Wren.Kpa(0), Litres(215), Amperes(4.3)), (Wren.Kpa(730), Litres(0), Amperes(13)) }]);

    private static Made APump => Of(
        typeof(Pump),
        nameof(Pump.Of),
        [new[] { Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1) }, Wren.Kpa(730), Wren.Percent(93), AFeed, PumpDrive.Of(PumpKind.Turbine)],
        [new[] { Wren.WiredCurve(12, 0.85) }, null, Wren.Percent(94), null, null]);

    private static FuseTime ATime(double multiple) => FuseTime.Of(multiple, Duration.FromSeconds(1), Duration.FromSeconds(5));

    private static Made ALine => Of(
        typeof(Line),
        nameof(Line.Of),
        ["line", Millimetres(7.3), Metres(4.3), Millimetres(0.01), new[] { Fitting.Bend90.Times(6), Fitting.Exit }, Metres(-0.3)],
        ["other", Millimetres(7.4), Metres(4.4), Millimetres(0.02), new[] { Fitting.Exit, Fitting.Bend90.Times(6) }, Metres(0)]);

    private static Made AFilter => Of(
        typeof(Filter),
        nameof(Filter.Of),
        ["filter", Litres(230), Wren.Kpa(8.3), 1.3, DynamicViscosity.FromMillipascalSeconds(0.47)],
        ["other", Litres(231), Wren.Kpa(8.4), 1.4, DynamicViscosity.FromMillipascalSeconds(0.48)]);

    private static Made AFeed => Of(
        typeof(Feed),
        nameof(Feed.Of),
        ["feed", Conductor.Awg(12), Metres(4.3), Metres(4.7), Celsius(70), new[] { Contact.DefaultFuse, Contact.DefaultRelay }],
        ["other", Conductor.Awg(10), Metres(4.4), Metres(4.8), Celsius(71), new[] { Contact.DefaultRelay, Contact.DefaultFuse }]);

    private static TankHeat ATank => TankHeat.Of(Volume.FromLiters(30), Power.FromWatts(150));

    private static Made APoint => Of(
        typeof(OperatingPoint),
        nameof(OperatingPoint.At),
        [Wren.Rpm(6100), Wren.Kpa(57), Wren.Hill],
        [Wren.Rpm(6101), Wren.Kpa(58), null]);

    private static ControllerData Data => ControllerData.Of(Wren.InjectorOf(360), Fuel.Petrol, TargetLambda.At(0.9));

    private static HeldBoost HeldAt(double bars) => HeldBoost.Of(Pressure.FromBars(bars), Wren.Rpm(2500), Wren.Rpm(6800));

    private static VolumetricEfficiency OtherEfficiency => VolumetricEfficiency.Of((Wren.Rpm(1000), Wren.Percent(80)), (Wren.Rpm(7000), Wren.Percent(90)));

    private static Made Controller => Of(
        typeof(ControllerData),
        nameof(ControllerData.Of),
        [Wren.InjectorOf(360), Fuel.Petrol, TargetLambda.At(0.9)],
        [Wren.InjectorOf(361), Fuel.E10, TargetLambda.At(0.91)]);

    private static Made Limits => Of(
        typeof(SizingLimits),
        nameof(SizingLimits.Of),
        [Wren.Percent(83), Wren.Percent(11), Wren.Kpa(730), Wren.Percent(4), Wren.Kpa(12)],
        [Wren.Percent(84), Wren.Percent(12), null, Wren.Percent(5), Wren.Kpa(13)]);

    private static Made Lines => Of(
        typeof(Plumbing),
        nameof(Plumbing.Of),
        [new IFlowLoss[] { Hose(8) }, new IFlowLoss[] { Strainer, Hose(6) }, new IFlowLoss[] { Hose(7) }, Array.Empty<IFlowLoss>()],
        [new IFlowLoss[] { Hose(9) }, new IFlowLoss[] { Hose(6), Strainer }, Array.Empty<IFlowLoss>(), new IFlowLoss[] { Strainer }]);

    private static Made ASystem => Of(
        typeof(FuelSystem),
        nameof(FuelSystem.Return),
        [Demand, Injectors, Base, APump, Limits, Lines],
        [Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(300), 4), Fixed.At(Wren.Kpa(300)), Pump.From(Wren.Pump), null, null]);

    private static Made ACandidate => new(
        null,
        typeof(Candidate),
        typeof(Candidate).GetMethod(nameof(Candidate.Of))!.MakeGenericMethod(typeof(Injector)),
        ["A", AnInjector, 42.50m],
        ["B", Wren.InjectorOf(300), null]);

    private static RunMapping Mapping => RunMapping.Of(RunColumn.Speed("Speed"));

    private static Filter Strainer => Filter.Of("strainer", Litres(230), Wren.Kpa(8));

    [Theory]
    [MemberData(nameof(Names))]
    public void Description_BuiltTwice_InOtherUnitsAndOfOtherLists_IsTheSame(string name)
    {
        Made made = All[name];
        object one = made.Build();
        for (int unit = 0; unit < Twin.UnitsOfAQuantity; unit++)
        {
            object other = made.Build(unit);

            Assert.NotSame(one, other);
            Assert.True(one.Equals(other), $"unit {unit}: {one} | {other}");
            Assert.Equal(one.GetHashCode(), other.GetHashCode());
            Assert.True(Operator("op_Equality", one, other));
            Assert.False(Operator("op_Inequality", one, other));
        }

        Assert.False(one.Equals(null));
        Assert.False(one.Equals("text"));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Description_WithOneArgumentChanged_IsAnother(string name)
    {
        Made made = All[name];
        object one = made.Build();
        int tried = 0;
        for (int argument = 0; argument < made.Others.Length; argument++)
        {
            if (Equals(made.Others[argument], made.Arguments[argument]))
            {
                // A file's name is no part of what was read from it.
                Assert.Contains(made.Type, new[] { typeof(Catalogue), typeof(BenchTests) });
                continue;
            }

            tried++;
            Assert.False(one.Equals(made.Changed(argument)), $"argument {argument} of {name} takes no part");
        }

        Assert.NotEqual(0, tried);
    }

    /// <summary>A conductor's material, a regulator's measured point and a setup's named point have no factory: they hang on others. A problem is text.</summary>
    [Fact]
    public void EveryDescription_IsInTheList()
    {
        HashSet<string> listed = [.. All.Values.Select(made => Plain(made.Build().GetType()))];
        listed.UnionWith([nameof(ConductorMaterial), nameof(IdealController), nameof(NamedPoint), nameof(RegulatorPoint), nameof(FileProblem)]);

        Assert.Empty(
            from type in typeof(Fuel).Assembly.GetExportedTypes()
            where type is { IsClass: true, IsAbstract: false } && Folders.Contains(type.Namespace!.Split('.')[^1])
                && type.GetInterfaces().Any(face => face.IsGenericType
                    && face.GetGenericTypeDefinition() == typeof(IEquatable<>)
                    && Plain(face.GetGenericArguments()[0]) == Plain(type))
                && !listed.Contains(Plain(type))
            select type.Name);
    }

    [Fact]
    public void EveryFactory_OfAPart_ListsAsManyOtherValuesAsItTakes() =>
        Assert.All(All.Values, made => Assert.Equal(made.Arguments.Length, made.Others.Length));

    [Fact]
    public void Pressure_InBarAndKilopascals_MakesOneRegulator()
    {
        // 2.3 · 100,000 is 229,999.99999999997: the two differ in the last bit.
        Assert.NotEqual(Pressure.FromBars(2.3).Pascals, Pressure.FromKilopascals(230).Pascals);
        Assert.Equal(Fixed.At(Pressure.FromBars(2.3)), Fixed.At(Pressure.FromKilopascals(230)));
        Assert.NotEqual(Fixed.At(Pressure.FromBars(2.3)), Fixed.At(Pressure.FromPascals(230_000.001)));
        Assert.NotEqual<PressureRegulator>(Fixed.At(Wren.Kpa(300)), ManifoldReferenced.From(Wren.Kpa(300)));
    }

    /// <summary>Two atoms of carbon, six of hydrogen, one of oxygen; or three and a half for each of carbon.</summary>
    [Fact]
    public void Composition_ByFormulaOrByRatio_IsTheSame() =>
        Assert.Equal(ElementalComposition.OfMolecule(2, 6, 1), ElementalComposition.OfAtomRatios(3, 0.5));

    [Theory]
    [InlineData(229_999.99999999997, 230_000)]
    [InlineData(999_999.9999999999, 1_000_000)]
    [InlineData(0.1 + 0.2, 0.3)]
    [InlineData(6.2e-6, 6.2000000000000007e-6)]
    [InlineData(-0.0, 0.0)]
    [InlineData(double.NaN, double.NaN)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity)]
    public void Numbers_ApartByTheirLastBits_AreTheSame(double one, double other)
    {
        Assert.True(Significant.Same(one, other));
        Assert.Equal(Significant.Hash(one), Significant.Hash(other));
    }

    [Theory]
    [InlineData(1, 1.00000000001)]
    [InlineData(230_000, 230_000.000001)]
    [InlineData(0, 1e-300)]
    [InlineData(1, -1)]
    [InlineData(double.NaN, 0)]
    [InlineData(double.PositiveInfinity, double.NegativeInfinity)]
    public void Numbers_ApartInTheTwelfthDigit_AreNot(double one, double other) => Assert.False(Significant.Same(one, other));

    /// <summary>A judgement that nobody has made says so: only a stated answer is one.</summary>
    [Fact]
    public void EveryPublicEnum_HasAZero_OrMustBeGiven()
    {
        // Its numbers are turns of the crank in a cycle; zero is refused as no member.
        string[] mustBeGiven = [nameof(EngineCycle)];

        Assert.Empty(
            from type in typeof(Fuel).Assembly.GetExportedTypes()
            where type.IsEnum && !mustBeGiven.Contains(type.Name) && !Enum.IsDefined(type, Enum.ToObject(type, 0))
            select type.Name);
        // What judges claims nothing where nobody has set it.
        Assert.Equal(nameof(Outcome.CannotSay), default(Outcome).ToString());
        Assert.Equal(nameof(RailState.NotCovered), default(RailState).ToString());
        Assert.Equal(nameof(DryAnswer.CannotSay), default(DryAnswer).ToString());
        Assert.Equal(nameof(HeatAnswer.CannotSay), default(HeatAnswer).ToString());
        Assert.Equal(nameof(RefillAnswer.CannotSay), default(RefillAnswer).ToString());
        Assert.Equal(nameof(FuelSizing.Data.ResultKind.None), default(FuelSizing.Data.ResultKind).ToString());
    }

    private static bool Operator(string name, object one, object other) =>
        (bool)one.GetType().GetMethod(name, BindingFlags.Public | BindingFlags.Static, [one.GetType(), one.GetType()])!
            .Invoke(null, [one, other])!;

    private static string Plain(Type type) => type.Name.Split('`')[0];

    private static Made Of(Type type, string factory, object?[] arguments, object?[] others) => new(
        null,
        type,
        type.GetMethods(BindingFlags.Public | BindingFlags.Static)
            .Single(method => method.Name == factory && method.GetParameters().Length == arguments.Length),
        arguments,
        others);

    private static Made Of(object target, string method, object?[] arguments, object?[] others) => new(
        target, target.GetType(), target.GetType().GetMethod(method)!, arguments, others);

    private static Made Generic(string factory, object?[] arguments, object?[] others) => new(
        null, typeof(Distribution), typeof(Distribution).GetMethod(factory)!.MakeGenericMethod(typeof(Pressure)), arguments, others);

    private static Line Hose(double millimetres) =>
        Line.Of("hose", Millimetres(millimetres), Metres(1.3), Roughness.RubberHose, [Fitting.Elbow45]);

    private static Density Kilograms(double density) => Density.FromKilogramsPerCubicMeter(density);

    private static SpecificEnergy Heat(double megajoules) => SpecificEnergy.FromMegajoulesPerKilogram(megajoules);

    private static CoefficientOfThermalExpansion Expansion(double perKelvin) => CoefficientOfThermalExpansion.FromPerKelvin(perKelvin);

    private static Temperature Celsius(double temperature) => Temperature.FromDegreesCelsius(temperature);

    private static KinematicViscosity Centistokes(double viscosity) => KinematicViscosity.FromCentistokes(viscosity);

    private static BrakeSpecificFuelConsumption Grams(double consumption) =>
        BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(consumption);

    private static Distribution<Ratio> Factor(double percent) => Distribution.Uniform(Wren.Percent(percent), Wren.Percent(102));

    private static StaticReading[] HeldOpen(double grams) =>
        [.. new[] { 1, 1, 2 }.Select(times => StaticReading.ByMass(Duration.FromSeconds(30 * times), Mass.FromGrams(grams * times)))];

    private static GaugeAccuracy AGauge => GaugeAccuracy.Of(Wren.Kpa(1), Wren.Kpa(2), Wren.Percent(0.5));

    private static GaugeAccuracy OtherGauge => GaugeAccuracy.Of(Wren.Kpa(1), Wren.Kpa(2), Wren.Percent(0.6));

    private static PumpFlowReading[] Filled(double grams) =>
        [.. new[] { 0.0, 0, 200, 200, 400, 400 }.Select(rise => PumpFlowReading.OfMass(Wren.Kpa(rise), Wren.Volt(13.5), Mass.FromGrams(grams - rise), Duration.FromSeconds(30), Amperes(5)))];

    private static DeadheadReading[] Shut(double kilopascals) => [.. new[] { 0, 1, 2 }.Select(more => DeadheadReading.Of(Wren.Volt(13.5), Wren.Kpa(kilopascals + more)))];

    private static VoltageDropReading[] Drops(double milliohms) =>
        [.. new[] { 4.0, 4, 8, 8, 12, 12 }.Select(current => VoltageDropReading.Of(Amperes(current), Wren.Volt(milliohms * current / 1000)))];

    private static RegulatorGaugeReading[] Gauged(double kilopascals) =>
        [.. new[] { 0.0, 10, 20, 30, 40, 50 }.Select(applied => RegulatorGaugeReading.Of(Wren.Kpa(applied), Wren.Kpa(kilopascals + applied)))];

    private static ConsumptionReading[] Steady(double grams) =>
        [.. new[] { 0, 1, 2 }.Select(more => ConsumptionReading.Of(Mass.FromKilograms(30), Mass.FromGrams(30_000 - grams - more), Duration.FromSeconds(60), Power.FromKilowatts(180)))];

    private static PulseReading[] Weighed(double grams) =>
        [.. new[] { 2.0, 3, 4, 5, 6, 8, 10 }.Select(width => PulseReading.Of(Wren.Ms(width), 1000, Mass.FromGrams(grams * width)))];

    private static VolumeFlow Litres(double perHour) => VolumeFlow.FromLitersPerHour(perHour);

    private static ElectricCurrent Amperes(double current) => ElectricCurrent.FromAmperes(current);

    private static ElectricResistance Milliohms(double resistance) => ElectricResistance.FromMilliohms(resistance);

    private static Length Metres(double length) => Length.FromMeters(length);

    private static Length Millimetres(double length) => Length.FromMillimeters(length);

    /// <summary>A description by its factory: as listed, in other units, or with one argument changed.</summary>
    private sealed record Made(object? Target, Type Type, MethodInfo Factory, object?[] Arguments, object?[] Others)
    {
        public string Name => $"{Type.Name}.{Factory.Name}";

        public object Build() => Invoke(Array.ConvertAll(Arguments, argument => argument is Made made ? made.Build() : argument));

        /// <summary>The same, every quantity in another unit and every list another list.</summary>
        public object Build(int unit) => Invoke(Array.ConvertAll(Arguments, argument => Twin.Of(argument, unit)));

        public object Changed(int argument)
        {
            object?[] arguments = Array.ConvertAll(Arguments, given => given is Made made ? made.Build() : given);
            arguments[argument] = Others[argument];
            return Invoke(arguments);
        }

        public override string ToString() => Name;

        private object Invoke(object?[] arguments) => Factory.Invoke(Target, arguments)!;
    }

    /// <summary>The same value once more: in another unit, in another list.</summary>
    private static class Twin
    {
        public const int UnitsOfAQuantity = 3;

        private static readonly Dictionary<Type, Enum[]> Units = new Enum[][]
        {
            [PressureUnit.Bar, PressureUnit.PoundForcePerSquareInch, PressureUnit.Millibar],
            [MassFlowUnit.KilogramPerSecond, MassFlowUnit.PoundPerHour, MassFlowUnit.KilogramPerHour],
            [VolumeFlowUnit.LiterPerMinute, VolumeFlowUnit.CubicMeterPerHour, VolumeFlowUnit.CubicCentimeterPerMinute],
            [RotationalSpeedUnit.RadianPerSecond, RotationalSpeedUnit.RevolutionPerSecond, RotationalSpeedUnit.DegreePerSecond],
            [TemperatureUnit.Kelvin, TemperatureUnit.DegreeFahrenheit, TemperatureUnit.DegreeRankine],
            [DurationUnit.Second, DurationUnit.Microsecond, DurationUnit.Minute],
            [TemperatureDeltaUnit.Kelvin, TemperatureDeltaUnit.DegreeFahrenheit, TemperatureDeltaUnit.DegreeCelsius],
            [RatioUnit.DecimalFraction, RatioUnit.PartPerThousand, RatioUnit.PartPerMillion],
            [LengthUnit.Inch, LengthUnit.Centimeter, LengthUnit.Foot],
            [AreaUnit.SquareCentimeter, AreaUnit.SquareInch, AreaUnit.SquareMeter],
            [VolumeUnit.CubicCentimeter, VolumeUnit.CubicInch, VolumeUnit.CubicMeter],
            [MassUnit.Gram, MassUnit.Ounce, MassUnit.Milligram],
            [DensityUnit.GramPerCubicCentimeter, DensityUnit.PoundPerCubicFoot, DensityUnit.KilogramPerLiter],
            [PowerUnit.Watt, PowerUnit.MechanicalHorsepower, PowerUnit.MetricHorsepower],
            [ElectricPotentialUnit.Millivolt, ElectricPotentialUnit.Kilovolt, ElectricPotentialUnit.Microvolt],
            [ElectricCurrentUnit.Milliampere, ElectricCurrentUnit.Kiloampere, ElectricCurrentUnit.Microampere],
            [ElectricResistanceUnit.Ohm, ElectricResistanceUnit.Kiloohm, ElectricResistanceUnit.Microohm],
            [DynamicViscosityUnit.PascalSecond, DynamicViscosityUnit.Poise, DynamicViscosityUnit.MicropascalSecond],
            [KinematicViscosityUnit.SquareMeterPerSecond, KinematicViscosityUnit.Stokes, KinematicViscosityUnit.Millistokes],
            [SpecificEnergyUnit.JoulePerKilogram, SpecificEnergyUnit.KilojoulePerKilogram, SpecificEnergyUnit.KilowattHourPerKilogram],
            [SpecificEntropyUnit.JoulePerKilogramKelvin, SpecificEntropyUnit.KilojoulePerKilogramDegreeCelsius, SpecificEntropyUnit.CaloriePerGramKelvin],
            [
                HeatTransferCoefficientUnit.WattPerSquareMeterKelvin, HeatTransferCoefficientUnit.WattPerSquareMeterCelsius,
                HeatTransferCoefficientUnit.BtuPerHourSquareFootDegreeFahrenheit,
            ],
            [
                BrakeSpecificFuelConsumptionUnit.KilogramPerJoule, BrakeSpecificFuelConsumptionUnit.KilogramPerJoule,
                BrakeSpecificFuelConsumptionUnit.PoundPerMechanicalHorsepowerHour,
            ],
            [
                CoefficientOfThermalExpansionUnit.PerDegreeCelsius, CoefficientOfThermalExpansionUnit.PerDegreeFahrenheit,
                CoefficientOfThermalExpansionUnit.PpmPerKelvin,
            ],
        }.ToDictionary(units => units[0].GetType());

        public static object? Of(object? value, int unit) => value switch
        {
            null => null,
            Made made => made.Build(unit),
            IQuantity quantity => quantity.ToUnit(Units[quantity.Unit.GetType()][unit]),
            string text => new string(text.AsSpan()),
            ITuple tuple => Activator.CreateInstance(
                tuple.GetType(), [.. Enumerable.Range(0, tuple.Length).Select(part => Of(tuple[part], unit))]),
            Array array => Copy(array, unit),
            _ => value,
        };

        private static Array Copy(Array array, int unit)
        {
            Array copy = Array.CreateInstance(array.GetType().GetElementType()!, array.Length);
            for (int at = 0; at < array.Length; at++)
            {
                copy.SetValue(Of(array.GetValue(at), unit), at);
            }

            return copy;
        }
    }
}
