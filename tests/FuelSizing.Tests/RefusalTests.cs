using System.Collections;
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
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Tests;

/// <summary>
/// Every public method of the library is called with a good set of arguments, then with each number among them, one at a
/// time, turned to nonsense: it must be refused by name, with its value and unit and the allowed range.
/// </summary>
public class RefusalTests
{
    private static TankHeat ATank => TankHeat.Of(Volume.FromLiters(30), Power.FromWatts(150));

    private static PulseReading[] PulseReadings =>
        [.. new[] { 2.0, 3, 4, 5, 6, 8, 10 }.Select(width => PulseReading.Of(Wren.Ms(width), 1000, Mass.FromGrams((5.2 * (width - 1)) + (0.01 * (width % 3)))))];

    private static StaticTest AHeldOpen => StaticTest.ByMass(
        "injector",
        TestFluid.Heptane,
        Wren.Kpa(300),
        Mass.FromGrams(0.1),
        Duration.FromSeconds(0.1),
        Wren.Percent(0.3),
        [.. new[] { (20, 105.9), (20, 106.2), (60, 316.4) }.Select(read => StaticReading.ByMass(Duration.FromSeconds(read.Item1), Mass.FromGrams(read.Item2)))]);

    private static PulseTest ABench => PulseTest.Of(
        "injector", TestFluid.Heptane, Wren.Kpa(300), Wren.Volt(13.5), Mass.FromMilligrams(10), Wren.Percent(0.3), PulseReadings);

    private static PulseFit[] BenchFits =>
        [PulseFit.Of(ABench), PulseFit.Of(PulseTest.Of("injector", TestFluid.Heptane, Wren.Kpa(300), Wren.Volt(12), Mass.FromMilligrams(10), Wren.Percent(0.3), PulseReadings))];

    private static ControllerFigures Figures => ControllerFigures.Of(Wren.InjectorOf(360), Fuel.Petrol, Temperature.FromDegreesCelsius(30), [Wren.Kpa(300)]);

    private static GaugeAccuracy AGauge => GaugeAccuracy.Of(Wren.Kpa(1), Wren.Kpa(2), Wren.Percent(0.5));

    private static PumpFlowReading[] Weighings =>
        [.. new[] { 0.0, 0, 200, 200, 400, 400, 600, 600 }.Select((rise, at) => PumpFlowReading.OfMass(Wren.Kpa(rise), Wren.Volt(13.5), Mass.FromGrams(1000 - rise + (at % 3)), Duration.FromSeconds(30)))];

    private static PumpFlowReading[] Volumes =>
        [.. new[] { 0.0, 0, 200, 200, 400, 400, 600, 600 }.Select((rise, at) => PumpFlowReading.OfVolume(Wren.Kpa(rise), Wren.Volt(13.5), Volume.FromMilliliters(1000 - rise + (at % 3)), Duration.FromSeconds(30), ElectricCurrent.FromAmperes(5)))];

    private static PumpFlowTest ABucket => PumpFlowTest.Weighed(
        "pump", TestFluid.Heptane, Mass.FromGrams(2), Duration.FromSeconds(0.1), AGauge, Wren.Percent(0.1), Wren.Percent(0.2), Weighings);

    private static VoltageDropReading[] Drops =>
        [.. new[] { 4.0, 4, 8, 8, 12, 12, 16 }.Select((current, at) => VoltageDropReading.Of(ElectricCurrent.FromAmperes(current), ElectricPotential.FromMillivolts((25 * current) + (at % 3))))];

    private static RegulatorGaugeReading[] Gauged =>
        [.. new[] { 0.0, 10, 20, 30, 40, 50, 60 }.Select((applied, at) => RegulatorGaugeReading.Of(Wren.Kpa(applied), Wren.Kpa(300 + applied + (4 * Math.Max(0, applied - 20)) + (at % 3))))];

    private static ConsumptionReading[] SteadyRuns =>
        [.. new[] { 900.0, 905, 897, 902 }.Select(grams => ConsumptionReading.Of(Mass.FromGrams(30_000), Mass.FromGrams(30_000 - grams), Duration.FromSeconds(60), Power.FromKilowatts(180)))];

    private static ConsumptionTest AConsumption =>
        ConsumptionTest.Of("engine", Mass.FromGrams(5), Duration.FromSeconds(0.2), Wren.Percent(0.5), Wren.Percent(1), SteadyRuns);

    private static readonly FuelSystem System = Wren.System();

    private static readonly QuickCheck Quick = QuickCheck.FromPower(
        Power.FromKilowatts(220), Fuel.Petrol, 4, VolumeFlow.FromMillilitersPerMinute(850), Wren.Kpa(300));

    private static readonly ControllerData Data = ControllerData.Of(Wren.InjectorOf(360), Fuel.Petrol, TargetLambda.At(0.9));

    private static readonly FuelSystem Pulsed = System.With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(9)), (Wren.Rpm(7000), Wren.Ms(8))));

    private static readonly FuelSystem Belted = System.With(
        Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95))));

    private static readonly OperatingRanges Ranges = OperatingRanges.Around(Wren.Hill);

    private static readonly SweepResult Sweep = System.Sweep([Wren.Rpm(3000)], [Wren.Kpa(0)], Wren.Hill);

    private static readonly (RotationalSpeed, Ratio)[] Efficiencies =
        [(Wren.Rpm(1000), Wren.Percent(80)), (Wren.Rpm(6000), Wren.Percent(90))];

    private static readonly (RotationalSpeed, Power)[] Powers =
        [(Wren.Rpm(1000), Power.FromKilowatts(20)), (Wren.Rpm(6000), Power.FromKilowatts(100))];

    private static readonly (RotationalSpeed, Pressure)[] Boosts =
        [(Wren.Rpm(1700), Wren.Kpa(3)), (Wren.Rpm(6300), Wren.Kpa(52))];

    private static readonly MonteCarloResult Sampled = UncertainSystem
        .Of(System, Wren.At(3000, 0), UncertainInput.InjectorFlowFactor(Distribution.Fixed(Wren.Percent(100))))
        .MonteCarlo(Sampling.Of(16));

    private static readonly VarianceOfInput Shared =
        Sampled.System.Sobol(SystemOutput.DutyCycle, Sampling.Of(16)).Inputs[0];

    /// <summary>
    /// Takes any value: it only shows it, or answers false; a distribution takes any values in order (its own tests refuse
    /// others), for the input that it is given to knows the range; a run takes a progress to report to; a reading has no such
    /// channel or no such problems; a question asks of any value; a batch takes columns, which reflection cannot pass (its own tests refuse them).
    /// </summary>
    private static readonly HashSet<string> TakesAnything =
    [
        // Laws of one's own, which the library reads and checks.
        $"{nameof(UncertainInput)}.{nameof(UncertainInput.Of)}",
        nameof(IRegulatorLaw),
        nameof(IPumpLaw),
        nameof(IFlowLossLaw),

        // What a check of one's own makes of its own numbers.
        nameof(CheckFigure),
        $"{nameof(Remedy)}.{nameof(Remedy.Of)}",

        $"{nameof(PlausibleRange)}.{nameof(PlausibleRange.Question)}",
        nameof(Readable),
        nameof(TextStyle),
        nameof(StatementText),
        nameof(DisplayUnit),
        typeof(DisplayUnit<>).Name,
        $"{nameof(DeadTimeTable)}.{nameof(DeadTimeTable.TryAt)}",

        // Asks whether it would be refused.
        $"{nameof(FuelDemandModel)}.{nameof(FuelDemandModel.Covers)}",
        nameof(Distribution),
        typeof(Distribution<>).Name,
        $"{nameof(PointBatch)}.{nameof(PointBatch.Evaluate)}",
        $"{nameof(UncertainSystem)}.{nameof(UncertainSystem.MonteCarlo)}",
        $"{nameof(UncertainSystem)}.{nameof(UncertainSystem.Sobol)}",
        $"{nameof(RunFindings)}.{nameof(RunFindings.Of)}",
        $"{nameof(Calibration)}.{nameof(Calibration.Of)}",
        $"{nameof(RunRow)}.{nameof(RunRow.Has)}",
        $"{nameof(RecordedRun)}.{nameof(RecordedRun.Has)}",
        $"{nameof(RunAccount)}.{nameof(RunAccount.CountOf)}",
    ];

    private static readonly Dictionary<string, Call> Calls = new Call[]
    {
        new(null, typeof(ElementalComposition), nameof(ElementalComposition.OfMolecule), 2, 6, 1),
        new(null, typeof(ElementalComposition), nameof(ElementalComposition.OfAtomRatios), 1.87, 0.02),
        new(
            null,
            typeof(Fuel),
            nameof(Fuel.Of),
            "f",
            Fuel.Ethanol.Composition,
            SpecificEnergy.FromMegajoulesPerKilogram(30),
            Density.FromKilogramsPerCubicMeter(780),
            CoefficientOfThermalExpansion.FromPerKelvin(1e-3)),
        new(
            null,
            typeof(Fuel),
            nameof(Fuel.PetrolOf),
            Density.FromKilogramsPerCubicMeter(740),
            null,
            SpecificEnergy.FromMegajoulesPerKilogram(43),
            "p"),
        new(Fuel.Petrol, typeof(Fuel), nameof(Fuel.DensityAt), Temperature.FromDegreesCelsius(20)),
        new(Fuel.Petrol, typeof(Fuel), nameof(Fuel.DynamicViscosityAt), Temperature.FromDegreesCelsius(20)),
        new(Fuel.Petrol, typeof(Fuel), nameof(Fuel.KinematicViscosityAt), Temperature.FromDegreesCelsius(20)),
        new(Fuel.Petrol, typeof(Fuel), nameof(Fuel.VapourPressureAt), Temperature.FromDegreesCelsius(20)),
        new(Fuel.Petrol, typeof(Fuel), nameof(Fuel.IsVapourPressureEstimatedAt), Temperature.FromDegreesCelsius(20)),
        new(
            Fuel.Petrol,
            typeof(Fuel),
            nameof(Fuel.WithViscosity),
            (Temperature.FromDegreesCelsius(20), KinematicViscosity.FromCentistokes(0.6)),
            (Temperature.FromDegreesCelsius(40), KinematicViscosity.FromCentistokes(0.5))),
        new(
            Fuel.Petrol,
            typeof(Fuel),
            nameof(Fuel.WithVapourPressure),
            (Temperature.FromDegreesCelsius(20), Wren.Kpa(30)),
            (Temperature.FromDegreesCelsius(40), Wren.Kpa(60))),
        new(Fuel.Petrol, typeof(Fuel), nameof(Fuel.WithReidVapourPressure), Wren.Kpa(90)),
        new(
            null,
            typeof(FuelBlend),
            nameof(FuelBlend.ByVolume),
            "b",
            new[] { (Fuel.Petrol, Wren.Percent(40)), (Fuel.Ethanol, Wren.Percent(60)) }),
        new(null, typeof(FuelBlend), nameof(FuelBlend.EthanolInPetrol), Wren.Percent(20), "E20"),
        new(
            null,
            typeof(Engine),
            nameof(Engine.Of),
            "e",
            Volume.FromLiters(2),
            4,
            EngineCycle.FourStroke,
            Wren.Rpm(7000)),
        new(null, typeof(Atmosphere), nameof(Atmosphere.AtAltitude), Length.FromMeters(600), Temperature.FromDegreesCelsius(20)),
        new(null, typeof(Atmosphere), nameof(Atmosphere.Of), Wren.Kpa(100), Temperature.FromDegreesCelsius(20)),
        new(null, typeof(Drivetrain), nameof(Drivetrain.ToCrank), Power.FromKilowatts(100), Wren.Percent(15)),
        new(null, typeof(VolumetricEfficiency), nameof(VolumetricEfficiency.Of), [Efficiencies]),
        new(VolumetricEfficiency.Of(Efficiencies), typeof(VolumetricEfficiency), nameof(VolumetricEfficiency.At), Wren.Rpm(3000)),
        new(null, typeof(PowerCurve), nameof(PowerCurve.AtCrank), Atmosphere.Standard, Powers),
        new(null, typeof(PowerCurve), nameof(PowerCurve.AtWheels), Atmosphere.Standard, Wren.Percent(15), Powers),
        new(PowerCurve.AtCrank(Atmosphere.Standard, Powers), typeof(PowerCurve), nameof(PowerCurve.At), Wren.Rpm(3000)),
        new(null, typeof(Induction), nameof(Induction.Turbocharged), Wren.Percent(70), Wren.Percent(60), Wren.Kpa(4)),
        new(
            null,
            typeof(Induction),
            nameof(Induction.BeltDriven),
            Wren.Percent(70),
            Wren.Percent(60),
            Wren.Kpa(4),
            Wren.Percent(95)),
        new(
            null,
            typeof(FuelConsumption),
            nameof(FuelConsumption.Of),
            Fuel.Petrol,
            0.85,
            BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(320)),
        new(
            null,
            typeof(FuelDemandModel),
            nameof(FuelDemandModel.Of),
            Wren.Engine,
            Wren.Turbocharger,
            Wren.VolumetricEfficiency,
            Wren.Power,
            Wren.Percent(85),
            Wren.Petrol,
            DemandBasis.Air,
            Wren.Rpm(6000)),
        new(null, typeof(MeasuredBoost), nameof(MeasuredBoost.Of), [Boosts]),
        new(null, typeof(HeldBoost), nameof(HeldBoost.Of), Wren.Kpa(58), Wren.Rpm(3400), Wren.Rpm(6600), Wren.Rpm(1900)),
        new(null, typeof(CentrifugalBoost), nameof(CentrifugalBoost.From), 8.37, Wren.Rpm(5900), Wren.Kpa(41), Atmosphere.Standard),
        new(null, typeof(DisplacementBoost), nameof(DisplacementBoost.Of), 1.83, Volume.FromLiters(1.16), Wren.Percent(87)),
        new(Dunnock.Displacement, typeof(BoostLine), nameof(BoostLine.At), Wren.Rpm(3000), Dunnock.Demand(), Atmosphere.Standard),
        new(Dunnock.Centrifugal, typeof(BeltDrivenBoost), nameof(BeltDrivenBoost.CompressorSpeedAt), Wren.Rpm(3000)),
        new(Dunnock.Centrifugal, typeof(BeltDrivenBoost), nameof(BeltDrivenBoost.WithDriveRatio), 9.1),
        new(Dunnock.Centrifugal, typeof(BeltDrivenBoost), nameof(BeltDrivenBoost.WithCompressorPulley), Wren.Percent(-12)),
        new(Dunnock.Centrifugal, typeof(BeltDrivenBoost), nameof(BeltDrivenBoost.WithCrankPulley), Wren.Percent(12)),
        new(Dunnock.Centrifugal, typeof(BeltDrivenBoost), nameof(BeltDrivenBoost.WithMaximumCompressorSpeed), Wren.Rpm(52_000)),
        new(
            Wren.Demand().With(AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(1000), 0.9), SpeedRow.Of(Wren.Rpm(6000), 0.8))),
            typeof(FuelDemandModel),
            nameof(FuelDemandModel.TargetLambdaAt),
            Wren.Rpm(3000)),
        new(null, typeof(SpeedRow), nameof(SpeedRow.Of), Wren.Rpm(3000), 0.82, Wren.Percent(66), Wren.Percent(60)),
        new(Wren.Demand(), typeof(FuelDemandModel), nameof(FuelDemandModel.At), Wren.Rpm(3000), Wren.Kpa(50), Atmosphere.Standard),
        new(null, typeof(TestFluid), nameof(TestFluid.Of), "t", Density.FromKilogramsPerCubicMeter(700)),
        new(
            null,
            typeof(DeadTimeTable),
            nameof(DeadTimeTable.Of),
            new[] { Wren.Volt(8), Wren.Volt(16) },
            new[] { Wren.Kpa(200), Wren.Kpa(400) },
            new IReadOnlyList<Duration>[] { [Wren.Ms(2), Wren.Ms(1)], [Wren.Ms(2.2), Wren.Ms(1.1)] }),
        new(
            null,
            typeof(DeadTimeTable),
            nameof(DeadTimeTable.ByVoltage),
            [new[] { (Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(1)) }]),
        new(Wren.DeadTime, typeof(DeadTimeTable), nameof(DeadTimeTable.At), Wren.Volt(12), Wren.Kpa(300)),
        new(
            null,
            typeof(Injector),
            nameof(Injector.Of),
            "i",
            VolumeFlow.FromMillilitersPerMinute(360),
            Wren.Kpa(300),
            TestFluid.Heptane,
            Wren.DeadTime,
            Wren.Ms(1.5),
            Wren.Kpa(500),
            Wren.Volt(14)),
        new(Wren.InjectorOf(360), typeof(Injector), nameof(Injector.WithMinimumDifferential), Wren.Kpa(60)),
        new(Wren.InjectorOf(360), typeof(Injector), nameof(Injector.WithMeasuredFlows), new[] { (Wren.Kpa(450), VolumeFlow.FromMillilitersPerMinute(440)) }),
        new(Wren.Demand(), typeof(FuelDemandModel), nameof(FuelDemandModel.WithEvaporation), Wren.Percent(30)),
        new(Wren.Demand(), typeof(FuelDemandModel), nameof(FuelDemandModel.WithBasis), DemandBasis.Air),
        new(SizingLimits.Default, typeof(SizingLimits), nameof(SizingLimits.WithDutyCycle), Wren.Percent(80)),
        new(SizingLimits.Default, typeof(SizingLimits), nameof(SizingLimits.WithPumpReserve), Wren.Percent(20)),
        new(SizingLimits.Default, typeof(SizingLimits), nameof(SizingLimits.WithRailCeiling), Wren.Kpa(700)),
        new(SizingLimits.Default, typeof(SizingLimits), nameof(SizingLimits.WithFeedDrop), Wren.Percent(4)),
        new(SizingLimits.Default, typeof(SizingLimits), nameof(SizingLimits.WithSuctionMargin), Wren.Kpa(12)),
        new(
            null,
            typeof(QuickCheck),
            nameof(QuickCheck.FromPower),
            Power.FromKilowatts(220),
            Fuel.Petrol,
            4,
            VolumeFlow.FromMillilitersPerMinute(850),
            Wren.Kpa(300),
            Wren.Rpm(6800),
            Wren.Kpa(60)),
        new(null, typeof(QuickCheck), nameof(QuickCheck.FromEngine), Wren.Engine, Wren.Kpa(60), Fuel.Petrol, 4, VolumeFlow.FromMillilitersPerMinute(850), Wren.Kpa(300)),
        new(Quick, typeof(QuickCheck), nameof(QuickCheck.WithSpeed), Wren.Rpm(6500)),
        new(Quick, typeof(QuickCheck), nameof(QuickCheck.WithBoost), Wren.Kpa(70)),
        new(Quick, typeof(QuickCheck), nameof(QuickCheck.With), Wren.Demand(), Wren.Rpm(6500), Wren.Kpa(70)),
        new(Fuel.Petrol, typeof(Fuel), nameof(Fuel.WithHeatOfVaporisation), SpecificEnergy.FromKilojoulesPerKilogram(360)),
        new(null, typeof(TestFluid), nameof(TestFluid.HeptaneAt), Temperature.FromDegreesCelsius(25)),
        new(Wren.Turbocharger, typeof(Induction), nameof(Induction.WithCoolant), Temperature.FromDegreesCelsius(40)),
        new(Wren.Hill, typeof(Conditions), nameof(Conditions.WithTankTemperature), Temperature.FromDegreesCelsius(25)),
        new(Wren.Hill, typeof(Conditions), nameof(Conditions.WithInletTemperature), Temperature.FromDegreesCelsius(25)),
        new(
            Wren.InjectorOf(360),
            typeof(Injector),
            nameof(Injector.StaticFlowAt),
            Wren.Kpa(300),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(20)),
        new(
            Wren.InjectorOf(360),
            typeof(Injector),
            nameof(Injector.StaticMassFlowAt),
            Wren.Kpa(300),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(20)),
        new(null, typeof(InjectorSet), nameof(InjectorSet.Of), Wren.InjectorOf(360), 4, 1),
        new(null, typeof(HandOver), nameof(HandOver.ByBoost), Wren.Kpa(30), Wren.Kpa(50), Wren.Percent(45), Wren.Percent(20)),
        new(null, typeof(HandOver), nameof(HandOver.ByDutyCycle), Wren.Percent(70), Wren.Percent(45), Wren.Percent(20)),
        new(Systems.Staged.ByBoost, typeof(HandOver), nameof(HandOver.WithShare), Wren.Percent(50)),
        new(Systems.Staged.ByBoost, typeof(HandOver), nameof(HandOver.WithShareAtBegin), Wren.Percent(22)),
        new(null, typeof(DutyCycle), nameof(DutyCycle.AvailableTime), Wren.Rpm(3000), EngineCycle.FourStroke, 1),
        new(null, typeof(DutyCycle), nameof(DutyCycle.Of), Wren.Ms(10), Wren.Rpm(3000), EngineCycle.FourStroke, 1),
        new(
            null,
            typeof(SizeInjector),
            nameof(SizeInjector.ForPower),
            Power.FromKilowatts(200),
            Wren.Petrol,
            4,
            Wren.Percent(85)),
        new(null, typeof(RegulatorFlow), nameof(RegulatorFlow.Rising), Wren.Kpa(20), VolumeFlow.FromLitersPerHour(100), VolumeFlow.FromLitersPerHour(60)),
        new(
            null,
            typeof(RegulatorFlow),
            nameof(RegulatorFlow.Measured),
            VolumeFlow.FromLitersPerHour(60),
            new[] { (VolumeFlow.FromLitersPerHour(10), Wren.Kpa(290)), (VolumeFlow.FromLitersPerHour(90), Wren.Kpa(310)) }),
        new(RegulatorFlow.Constant, typeof(RegulatorFlow), nameof(RegulatorFlow.WithHysteresis), Wren.Kpa(8)),
        new(RegulatorFlow.Constant, typeof(RegulatorFlow), nameof(RegulatorFlow.WithOutletShare), 0.1),
        new(
            ManifoldReferenced.From(Wren.Kpa(300)),
            typeof(PressureRegulator),
            nameof(PressureRegulator.RailGauge),
            Wren.Kpa(50)),
        new(null, typeof(RisingRateBounds), nameof(RisingRateBounds.Of), Wren.Kpa(270), Wren.Kpa(330), 12.0, Wren.Kpa(30), Wren.Kpa(900), Wren.Kpa(500)),
        new(
            null,
            typeof(MixtureSizing),
            nameof(MixtureSizing.FitRisingRate),
            Pulsed,
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)),
            new[] { Wren.Rpm(3000) },
            Wren.Hill,
            null),
        new(
            null,
            typeof(UncertainSystem),
            nameof(UncertainSystem.Along),
            Pulsed,
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)),
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Wren.Hill,
            new[] { UncertainInput.InjectorFlowFactor(AFactor) }),
        new(
            Setup.Of(Wren.System()).With(HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500))),
            typeof(Setup),
            nameof(Setup.WithPull),
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Wren.Hill),
        new(
            null,
            typeof(SurgeTank),
            nameof(SurgeTank.Of),
            Volume.FromLiters(1.3),
            Pump.From(Wren.Pump),
            ReturnDestination.MainTank,
            Systems.SurgeTanks.Suction,
            Systems.SurgeTanks.LiftLine,
            Systems.SurgeTanks.Overflow,
            Wren.Kpa(60),
            Duration.FromSeconds(2)),
        new(Systems.SurgeTanks.Everything, typeof(SurgeTank), nameof(SurgeTank.WithReturnTo), ReturnDestination.SurgeTank),
        new(Systems.SurgeTanks.Everything, typeof(SurgeTank), nameof(SurgeTank.WithUsableVolume), Volume.FromLiters(1.1)),
        new(Systems.SurgeTanks.Everything, typeof(SurgeTank), nameof(SurgeTank.WithMaximumPressure), Wren.Kpa(50)),
        new(Systems.SurgeTanks.Everything, typeof(SurgeTank), nameof(SurgeTank.WithPrimingTime), Duration.FromSeconds(1.5)),
        new(null, typeof(TankHeat), nameof(TankHeat.Of), Volume.FromLiters(30), Power.FromWatts(150)),
        new(ATank, typeof(TankHeat), nameof(TankHeat.WithFuelVolume), Volume.FromLiters(20)),
        new(ATank, typeof(TankHeat), nameof(TankHeat.WithRailPickup), Power.FromWatts(120)),
        new(ATank, typeof(TankHeat), nameof(TankHeat.WithWalls), Area.FromSquareMeters(0.7), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(6)),
        new(ATank, typeof(TankHeat), nameof(TankHeat.WithAmbient), Temperature.FromDegreesCelsius(20)),
        new(ATank, typeof(TankHeat), nameof(TankHeat.WithSpecificHeat), SpecificEntropy.FromKilojoulesPerKilogramKelvin(2.1)),
        new(null, typeof(TankWarming), nameof(TankWarming.WarmTank), Wren.System().With(Wren.WiredPump), ATank, Wren.At(2000, 0.1), Duration.FromMinutes(5)),
        new(
            Wren.System().With(Wren.WiredPump).WarmTank(ATank, Wren.At(2000, 0.1), Duration.FromMinutes(5)),
            typeof(HeatRun),
            nameof(HeatRun.TankTemperatureAt),
            Duration.FromMinutes(2)),
        new(
            Wren.System().With(Wren.WiredPump).WarmTank(ATank, Wren.At(2000, 0.1), Duration.FromMinutes(5)),
            typeof(HeatRun),
            nameof(HeatRun.VapourMarginAt),
            Duration.FromMinutes(2)),
        new(null, typeof(PickupPattern), nameof(PickupPattern.Of), Wren.At(6000, 0.5), Duration.FromSeconds(5), Wren.At(3000, 0), Duration.FromSeconds(8), 7),
        new(
            null,
            typeof(UncoveredPickup),
            nameof(UncoveredPickup.UncoverPickup),
            Systems.SurgeTanks.Wren(Systems.SurgeTanks.Everything),
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)),
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Wren.Hill),
        new(null, typeof(StreamFluid), nameof(StreamFluid.WithWaterByMass), Fuel.Methanol, Wren.Percent(50)),
        new(null, typeof(StreamFluid), nameof(StreamFluid.WithWaterByVolume), Fuel.Methanol, Wren.Percent(50)),
        new(Systems.SecondStreams.Half, typeof(StreamFluid), nameof(StreamFluid.WithDensity), Density.FromKilogramsPerCubicMeter(917)),
        new(Systems.SecondStreams.Half, typeof(StreamFluid), nameof(StreamFluid.DensityAt), Temperature.FromDegreesCelsius(30)),
        new(null, typeof(SprayNozzles), nameof(SprayNozzles.Of), 2, VolumeFlow.FromMillilitersPerMinute(300), Wren.Kpa(700), SprayNozzles.Water, SprayPlace.Manifold),
        new(Systems.SecondStreams.Nozzles, typeof(SprayNozzles), nameof(SprayNozzles.WithMinimumDifferential), Wren.Kpa(100)),
        new(
            null,
            typeof(SecondStream),
            nameof(SecondStream.Of),
            "stream",
            Systems.SecondStreams.Half,
            Systems.SecondStreams.Nozzles,
            Wren.Kpa(40),
            Wren.Kpa(850),
            Pump.From(Wren.Pump),
            Wren.Kpa(60)),
        new(Systems.SecondStreams.Everything, typeof(SecondStream), nameof(SecondStream.WithTank), Volume.FromLiters(2), Duration.FromSeconds(90)),
        new(Systems.SecondStreams.Everything, typeof(SecondStream), nameof(SecondStream.WithEvaporation), Wren.Percent(30)),
        new(Systems.SecondStreams.Everything, typeof(SecondStream), nameof(SecondStream.WithMainFuelTakenBack), Wren.Percent(12)),
        new(Systems.SecondStreams.Everything, typeof(SecondStream), nameof(SecondStream.ShareAt), Wren.Kpa(50)),
        new(
            null,
            typeof(StreamRun),
            nameof(StreamRun.ConsumeStream),
            Systems.SecondStreams.Judged(Systems.SecondStreams.Everything),
            new[] { (Wren.At(5000, 0.5), Duration.FromSeconds(20)) }),
        new(null, typeof(PullRange), nameof(PullRange.Of), Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill),
        new(null, typeof(LineSweep), nameof(LineSweep.Pull), Pulsed, HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)), Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill),
        new(
            null,
            typeof(LineSweep),
            nameof(LineSweep.Sweep),
            Pulsed,
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)),
            new[] { Wren.Rpm(3000), Wren.Rpm(6000) },
            Wren.Hill),
        new(
            null,
            typeof(SingleFailures),
            nameof(SingleFailures.WithEachFailure),
            Pulsed,
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)),
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Wren.Hill),
        new(
            null,
            typeof(CutOut),
            nameof(CutOut.PressuresFor),
            Pulsed.With(SizingLimits.Default.With(MixtureLimits.Of(0.9))),
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)),
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Wren.Hill),
        new(
            null,
            typeof(BoostSizing),
            nameof(BoostSizing.MaximumDriveRatio),
            Belted,
            CentrifugalBoost.From(8, Wren.Rpm(6000), Wren.Kpa(30), Atmosphere.Standard),
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Wren.Hill),
        new(
            null,
            typeof(BoostSizing),
            nameof(BoostSizing.InjectorsInstead),
            Pulsed,
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)),
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Wren.Hill,
            Wren.Kpa(300),
            null),
        new(Ranges, typeof(OperatingRanges), nameof(OperatingRanges.WithAmbientPressure), Wren.Kpa(90), Wren.Kpa(102)),
        new(Ranges, typeof(OperatingRanges), nameof(OperatingRanges.WithAmbientTemperature), Temperature.FromDegreesCelsius(-5), Temperature.FromDegreesCelsius(30)),
        new(Ranges, typeof(OperatingRanges), nameof(OperatingRanges.WithSupplyVoltage), Wren.Volt(12), Wren.Volt(14)),
        new(Ranges, typeof(OperatingRanges), nameof(OperatingRanges.WithFuelTemperature), Temperature.FromDegreesCelsius(5), Temperature.FromDegreesCelsius(50)),
        new(Ranges, typeof(OperatingRanges), nameof(OperatingRanges.WithEthanolContent), Wren.Percent(0), Wren.Percent(10), null),
        new(
            null,
            typeof(WorstCorner),
            nameof(WorstCorner.FindWorstCorner),
            Pulsed,
            HeldBoost.Of(Wren.Kpa(40), Wren.Rpm(2000), Wren.Rpm(6500)),
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Ranges),
        new(null, typeof(TargetLambda), nameof(TargetLambda.At), 0.9),
        new(TargetLambda.At(0.9), typeof(TargetLambda), nameof(TargetLambda.LambdaAt), Wren.Percent(90)),
        new(null, typeof(TargetLambda), nameof(TargetLambda.Of), [new[] { (Wren.Percent(40), 1.0), (Wren.Percent(80), 0.88) }]),
        new(null, typeof(ClosedLoop), nameof(ClosedLoop.Of), Wren.Percent(15), Wren.Kpa(80)),
        new(Data, typeof(ControllerData), nameof(ControllerData.WithDifferential), Wren.Kpa(290)),
        new(Data, typeof(ControllerData), nameof(ControllerData.WithFuelTemperature), Temperature.FromDegreesCelsius(21)),
        new(Data, typeof(ControllerData), nameof(ControllerData.WithoutVoltageCorrection), Wren.Volt(13)),
        new(Data, typeof(ControllerData), nameof(ControllerData.WithMaximumDutyCycle), Wren.Percent(95)),
        new(null, typeof(SpeedDensityController), nameof(SpeedDensityController.Of), Data, Wren.VolumetricEfficiency, Wren.Kpa(105), Temperature.FromDegreesCelsius(40)),
        new(null, typeof(AirflowMeterController), nameof(AirflowMeterController.Of), Data, MassFlow.FromGramsPerSecond(118)),
        new(null, typeof(RecordedPulseController), nameof(RecordedPulseController.BySpeed), [new[] { (Wren.Rpm(2000), Wren.Ms(4)), (Wren.Rpm(6000), Wren.Ms(5)) }]),
        new(
            null,
            typeof(RecordedPulseController),
            nameof(RecordedPulseController.Of),
            new[] { Wren.Rpm(2000), Wren.Rpm(6000) },
            new[] { Wren.Kpa(60), Wren.Kpa(100) },
            new IReadOnlyList<Duration>[] { new[] { Wren.Ms(4), Wren.Ms(5) }, new[] { Wren.Ms(7), Wren.Ms(8) } }),
        new(
            RecordedPulseController.BySpeed((Wren.Rpm(2000), Wren.Ms(4)), (Wren.Rpm(6000), Wren.Ms(5))),
            typeof(RecordedPulseController),
            nameof(RecordedPulseController.WithVoltageCorrection),
            Wren.DeadTime,
            Wren.Volt(13.5),
            Wren.Kpa(300)),
        new(MixtureLimits.Of(0.9), typeof(MixtureLimits), nameof(MixtureLimits.LeanestAllowed), Wren.Kpa(50)),
        new(null, typeof(MixtureLimits), nameof(MixtureLimits.Of), 0.9, Wren.Kpa(10), 0.7),
        new(null, typeof(MixtureLimits), nameof(MixtureLimits.ByBoost), new[] { (Wren.Kpa(10), 0.9), (Wren.Kpa(60), 0.84) }, 0.7),
        new(null, typeof(Fixed), nameof(Fixed.At), Wren.Kpa(400), VolumeFlow.FromLitersPerHour(10)),
        new(null, typeof(ManifoldReferenced), nameof(ManifoldReferenced.From), Wren.Kpa(300), VolumeFlow.FromLitersPerHour(10)),
        new(
            null,
            typeof(RisingRate),
            nameof(RisingRate.From),
            Wren.Kpa(300),
            6.0,
            Wren.Kpa(10),
            Wren.Kpa(700),
            VolumeFlow.FromLitersPerHour(10)),
        new(
            null,
            typeof(PumpCurve),
            nameof(PumpCurve.At),
            "p",
            Wren.Volt(13.5),
            new[]
            {
                (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200)), (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(150)),
            }),
        new(Wren.Pump, typeof(PumpCurve), nameof(PumpCurve.FlowAt), Wren.Kpa(300)),
        new(
            null,
            typeof(PumpCurve),
            nameof(PumpCurve.WithCurrent),
            "p",
            Wren.Volt(13.5),
            new[]
            {
                (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(200), ElectricCurrent.FromAmperes(4)),
                (Wren.Kpa(300), VolumeFlow.FromLitersPerHour(150), ElectricCurrent.FromAmperes(7)),
            }),
        new(Wren.WiredCurve(13.5, 1), typeof(PumpCurve), nameof(PumpCurve.CurrentAt), Wren.Kpa(300)),
        new(Pump.From(Wren.Pump), typeof(Pump), nameof(Pump.WithCondition), Wren.Percent(93)),
        new(
            null,
            typeof(Pump),
            nameof(Pump.Of),
            new[] { Wren.Pump },
            Wren.Kpa(700),
            Wren.Percent(90),
            null,
            null),
        new(null, typeof(PumpDrive), nameof(PumpDrive.Of), PumpKind.Turbine, ElectricResistance.FromOhms(0.2)),
        new(null, typeof(PumpDriveFit), nameof(PumpDriveFit.Of), Wren.WiredCurve(12, 0.85), Wren.WiredCurve(13.5, 1), Wren.Percent(2), Wren.Percent(3)),
        new(null, typeof(PulseReading), nameof(PulseReading.Of), Wren.Ms(2.5), 1000, Mass.FromGrams(7.8)),
        new(
            null,
            typeof(PulseTest),
            nameof(PulseTest.Of),
            "injector",
            TestFluid.Heptane,
            Wren.Kpa(300),
            Wren.Volt(13.5),
            Mass.FromMilligrams(10),
            Wren.Percent(0.3),
            PulseReadings),
        new(ABench, typeof(PulseTest), nameof(PulseTest.Without), new[] { 1 }),
        new(null, typeof(GaugeAccuracy), nameof(GaugeAccuracy.Of), Wren.Kpa(1), Wren.Kpa(2), Wren.Percent(0.5)),
        new(null, typeof(PumpFlowReading), nameof(PumpFlowReading.OfMass), Wren.Kpa(300), Wren.Volt(13.5), Mass.FromKilograms(1.2), Duration.FromSeconds(30), ElectricCurrent.FromAmperes(6)),
        new(null, typeof(PumpFlowReading), nameof(PumpFlowReading.OfVolume), Wren.Kpa(300), Wren.Volt(13.5), Volume.FromLiters(1.6), Duration.FromSeconds(30), ElectricCurrent.FromAmperes(6)),
        new(
            null,
            typeof(PumpFlowTest),
            nameof(PumpFlowTest.Weighed),
            "pump",
            TestFluid.Heptane,
            Mass.FromGrams(2),
            Duration.FromSeconds(0.1),
            AGauge,
            Wren.Percent(0.1),
            Wren.Percent(0.2),
            Weighings,
            null),
        new(
            null,
            typeof(PumpFlowTest),
            nameof(PumpFlowTest.Measured),
            "pump",
            Volume.FromMilliliters(5),
            Duration.FromSeconds(0.1),
            AGauge,
            Wren.Percent(0.2),
            Volumes,
            ElectricCurrent.FromAmperes(0.1)),
        new(ABucket, typeof(PumpFlowTest), nameof(PumpFlowTest.Without), new[] { 1 }),
        new(null, typeof(DeadheadReading), nameof(DeadheadReading.Of), Wren.Volt(13.5), Wren.Kpa(690), false),
        new(null, typeof(VoltageDropReading), nameof(VoltageDropReading.Of), ElectricCurrent.FromAmperes(12), Wren.Volt(0.3)),
        new(
            null,
            typeof(VoltageDropTest),
            nameof(VoltageDropTest.Of),
            "joint",
            ElectricPotential.FromMillivolts(1),
            ElectricPotential.FromMillivolts(0.5),
            ElectricCurrent.FromMilliamperes(20),
            Wren.Percent(0.8),
            Drops),
        new(
            VoltageDropTest.Of("joint", ElectricPotential.FromMillivolts(1), ElectricPotential.Zero, ElectricCurrent.Zero, Ratio.Zero, Drops),
            typeof(VoltageDropTest),
            nameof(VoltageDropTest.Without),
            new[] { 1 }),
        new(
            VoltageDropFit.Of(VoltageDropTest.Of("joint", ElectricPotential.FromMillivolts(1), ElectricPotential.Zero, ElectricCurrent.Zero, Ratio.Zero, Drops)),
            typeof(VoltageDropFit),
            nameof(VoltageDropFit.InputOver),
            ElectricResistance.FromMilliohms(5)),
        new(null, typeof(RegulatorGaugeReading), nameof(RegulatorGaugeReading.Of), Wren.Kpa(40), Wren.Kpa(420), VolumeFlow.FromLitersPerHour(80)),
        new(RegulatorTest.Of("unit", true, AGauge, AGauge, Gauged), typeof(RegulatorTest), nameof(RegulatorTest.Without), new[] { 6 }),
        new(null, typeof(ConsumptionReading), nameof(ConsumptionReading.Of), Mass.FromKilograms(30), Mass.FromKilograms(29), Duration.FromSeconds(60), Power.FromKilowatts(180)),
        new(
            null, typeof(ConsumptionTest), nameof(ConsumptionTest.Of), "engine", Mass.FromGrams(5), Duration.FromSeconds(0.2), Wren.Percent(0.5), Wren.Percent(1), SteadyRuns),
        new(AConsumption, typeof(ConsumptionTest), nameof(ConsumptionTest.Without), new[] { 1 }),
        new(ConsumptionFit.Of(AConsumption), typeof(ConsumptionFit), nameof(ConsumptionFit.Consumption), Fuel.Petrol, 0.82),
        new(ConsumptionFit.Of(AConsumption), typeof(ConsumptionFit), nameof(ConsumptionFit.MaximumConsumption), Fuel.Petrol, 0.82),
        new(null, typeof(PulseFit), nameof(PulseFit.Of), ABench, Wren.Percent(5)),
        new(null, typeof(StaticReading), nameof(StaticReading.ByMass), Duration.FromSeconds(30), Mass.FromGrams(156)),
        new(null, typeof(StaticReading), nameof(StaticReading.ByVolume), Duration.FromSeconds(30), Volume.FromMilliliters(228)),
        new(null, typeof(StaticTest), nameof(StaticTest.ByMass), "injector", TestFluid.Heptane, Wren.Kpa(300), Mass.FromGrams(0.1), Duration.FromSeconds(0.1), Wren.Percent(0.3), AHeldOpen.Readings.ToArray()),
        new(
            null,
            typeof(StaticTest),
            nameof(StaticTest.ByVolume),
            "injector",
            TestFluid.Heptane,
            Wren.Kpa(300),
            Volume.FromMilliliters(1),
            Duration.FromSeconds(0.1),
            Wren.Percent(0.3),
            Enumerable.Repeat(StaticReading.ByVolume(Duration.FromSeconds(30), Volume.FromMilliliters(228)), 3).ToArray()),
        new(StaticFlow.Of(AHeldOpen), typeof(StaticFlow), nameof(StaticFlow.At), Wren.Kpa(400), Density.FromKilogramsPerCubicMeter(740)),
        new(
            null,
            typeof(MatchedSet),
            nameof(MatchedSet.Of),
            new[] { PulseFit.Of(ABench), PulseFit.Of(PulseTest.Of("other", TestFluid.Heptane, Wren.Kpa(300), Wren.Volt(13.5), Mass.FromMilligrams(10), Wren.Percent(0.3), PulseReadings)) },
            new[] { Wren.Ms(5) },
            new[] { Wren.Percent(101), Wren.Percent(99) }),
        new(
            null,
            typeof(PulsePlan),
            nameof(PulsePlan.For),
            Duration.FromMicroseconds(3),
            VolumeFlow.FromMillilitersPerMinute(460),
            Density.FromKilogramsPerCubicMeter(683.8),
            Wren.Ms(1),
            Wren.Ms(1.6),
            Wren.Ms(10),
            Mass.FromMilligrams(10),
            Wren.Ms(20),
            Mass.FromGrams(150)),
        new(
            null,
            typeof(MeasuredInjector),
            nameof(MeasuredInjector.Of),
            new[] { PulseFit.Of(ABench), PulseFit.Of(PulseTest.Of("injector", TestFluid.Heptane, Wren.Kpa(300), Wren.Volt(12), Mass.FromMilligrams(10), Wren.Percent(0.3), PulseReadings)) },
            Wren.Kpa(300),
            Wren.Kpa(550)),
        new(null, typeof(SwitchedPump), nameof(SwitchedPump.Above), Wren.Kpa(40), Wren.Kpa(30), Pump.From(Wren.Pump), null),
        new(null, typeof(PumpLowSpeed), nameof(PumpLowSpeed.Through), ElectricResistance.FromOhms(0.4)),
        new(null, typeof(VoltageConverter), nameof(VoltageConverter.Holding), "converter", Wren.Volt(16), Wren.Percent(90), ElectricCurrent.FromAmperes(20)),
        new(null, typeof(VoltageConverter), nameof(VoltageConverter.Times), "converter", 1.2, Wren.Percent(90), ElectricCurrent.FromAmperes(20)),
        new(null, typeof(PumpLowSpeed), nameof(PumpLowSpeed.At), Wren.Percent(60)),
        new(Pump.From(Wren.Pump), typeof(PumpAssembly), nameof(PumpAssembly.CurveAt), Wren.Volt(13.5), 20),
        new(
            null,
            typeof(PumpSeries),
            nameof(PumpSeries.Of),
            SeriesBypass.None,
            new PumpAssembly[] { Pump.From(Wren.Pump), Pump.From(Wren.Pump) }),
        new(
            null,
            typeof(ElectronicReturnless),
            nameof(ElectronicReturnless.Holding),
            Wren.Kpa(400),
            true,
            Wren.Volt(6)),
        new(null, typeof(Fitting), nameof(Fitting.Of), "k", 1.5),
        new(null, typeof(Fitting), nameof(Fitting.OfDiameters), "n", 30.0),
        new(Fitting.Exit, typeof(Fitting), nameof(Fitting.Times), 2),
        new(Fitting.Elbow90, typeof(Fitting), nameof(Fitting.LossCoefficientIn), Length.FromMillimeters(8)),
        new(
            null,
            typeof(Line),
            nameof(Line.Of),
            "l",
            Length.FromMillimeters(8),
            Length.FromMeters(3),
            Roughness.DrawnTube,
            new[] { Fitting.Bend90 },
            Length.FromMeters(0.2)),
        new(
            Line.Of("l", Length.FromMillimeters(8), Length.FromMeters(3), Roughness.DrawnTube),
            typeof(Line),
            nameof(Line.PressureLoss),
            VolumeFlow.FromLitersPerHour(100),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(20)),
        new(
            null,
            typeof(Filter),
            nameof(Filter.Of),
            "f",
            VolumeFlow.FromLitersPerHour(100),
            Wren.Kpa(5),
            2.0,
            DynamicViscosity.FromMillipascalSeconds(0.5)),
        new(
            Filter.Of("f", VolumeFlow.FromLitersPerHour(100), Wren.Kpa(5)),
            typeof(Filter),
            nameof(Filter.PressureLoss),
            VolumeFlow.FromLitersPerHour(100),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(20)),
        new(
            null,
            typeof(CheckValve),
            nameof(CheckValve.Of),
            "v",
            Wren.Kpa(6),
            VolumeFlow.FromLitersPerHour(180),
            Wren.Kpa(14),
            Density.FromKilogramsPerCubicMeter(790)),
        new(
            null,
            typeof(FuseTimeCurrent),
            nameof(FuseTimeCurrent.Of),
            new (double, Duration, Duration)[] { (2, Duration.FromSeconds(1), Duration.FromSeconds(5)), (4, Duration.FromSeconds(0.1), Duration.FromSeconds(1)) }),
        new(null, typeof(FuseTime), nameof(FuseTime.Of), 2.5, Duration.FromSeconds(0.2), Duration.FromSeconds(6)),
        new(null, typeof(MotorStart), nameof(MotorStart.Of), ElectricCurrent.FromAmperes(46), Duration.FromSeconds(0.1), Duration.FromSeconds(10)),
        new(null, typeof(CheckValve), nameof(CheckValve.OfCoefficient), "v", Wren.Kpa(6), 2.0, Length.FromMillimeters(8)),
        new(
            Pump.From(Wren.Pump),
            typeof(PumpAssembly),
            nameof(PumpAssembly.CurveOf),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(20),
            Wren.Volt(13.5),
            20),
        new(
            Pump.From(Wren.Pump),
            typeof(PumpAssembly),
            nameof(PumpAssembly.CurveAtBoost),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(20),
            Wren.Volt(13.5),
            Wren.Kpa(60),
            20),
        new(
            null,
            typeof(SuctionMargin),
            nameof(SuctionMargin.Of),
            Wren.Kpa(95),
            Length.FromMeters(0.1),
            Wren.Kpa(3),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(20)),
        new(
            null,
            typeof(Conditions),
            nameof(Conditions.Of),
            Atmosphere.Standard,
            Wren.Volt(13.5),
            Temperature.FromDegreesCelsius(20)),
        new(null, typeof(OperatingPoint), nameof(OperatingPoint.At), Wren.Rpm(3000), Wren.Kpa(50), null),
        new(SizingLimits.Default, typeof(SizingLimits), nameof(SizingLimits.MarkOf), RuleOfThumb.DutyCycle),
        new(null, typeof(SizingLimits), nameof(SizingLimits.Of), Wren.Percent(85), Wren.Percent(10), Wren.Kpa(700), Wren.Percent(4), Wren.Kpa(12)),
        new(
            null,
            typeof(SystemSweep),
            nameof(SystemSweep.Sweep),
            System,
            new[] { Wren.Rpm(3000), Wren.Rpm(4000) },
            new[] { Wren.Kpa(0), Wren.Kpa(30) },
            null,
            null,
            CancellationToken.None),
        new(Sweep, typeof(SweepResult), nameof(SweepResult.At), 0, 0),
        new(
            System.Solve(Wren.At(3000, 0)).Circuit,
            typeof(CircuitResult),
            nameof(CircuitResult.PressureAsked),
            VolumeFlow.FromLitersPerHour(100)),
        new(null, typeof(SystemSizing), nameof(SystemSizing.MinimumGain), System, Wren.Kpa(10), new[] { Wren.At(3000, 0.2) }),
        new(null, typeof(SystemSizing), nameof(SystemSizing.MaximumBoost), System, new[] { Wren.Rpm(3000) }, Wren.Hill),
        new(null, typeof(SystemSizing), nameof(SystemSizing.MaximumPower), System, Wren.Rpm(3000), Wren.Hill),
        new(null, typeof(SystemSizing), nameof(SystemSizing.MaximumSpeed), System, Wren.Kpa(30), Wren.Rpm(3000), Wren.Hill),
        new(null, typeof(Conductor), nameof(Conductor.Awg), 12, null),
        new(null, typeof(Conductor), nameof(Conductor.AwgZeros), 2, null),
        new(null, typeof(Conductor), nameof(Conductor.Metric), Area.FromSquareMillimeters(2.5)),
        new(
            null,
            typeof(Conductor),
            nameof(Conductor.OfArea),
            Area.FromSquareMillimeters(3),
            ConductorMaterial.Copper,
            Wren.Percent(2)),
        new(
            Conductor.Awg(12),
            typeof(Conductor),
            nameof(Conductor.ResistanceOf),
            Length.FromMeters(5),
            Temperature.FromDegreesCelsius(60)),
        new(null, typeof(Contact), nameof(Contact.Of), "c", ElectricResistance.FromMilliohms(5)),
        new(
            null,
            typeof(Feed),
            nameof(Feed.Of),
            "f",
            Conductor.Awg(12),
            Length.FromMeters(5),
            Length.FromMeters(1),
            Temperature.FromDegreesCelsius(60),
            new[] { Contact.DefaultFuse }),
        new(
            null,
            typeof(Feed),
            nameof(Feed.WithChassisReturn),
            "f",
            Conductor.Awg(12),
            Length.FromMeters(5),
            ElectricResistance.FromMilliohms(5),
            Temperature.FromDegreesCelsius(60),
            new[] { Contact.DefaultFuse }),
        new(
            Feed.Of("f", Conductor.Awg(12), Length.FromMeters(5), Length.Zero, Temperature.FromDegreesCelsius(60)),
            typeof(Feed),
            nameof(Feed.VoltageAtMotor),
            Wren.Volt(13.5),
            ElectricCurrent.FromAmperes(12)),
        new(
            Feed.Of("f", Conductor.Awg(12), Length.FromMeters(5), Length.Zero, Temperature.FromDegreesCelsius(60)),
            typeof(Feed),
            nameof(Feed.WithInsulation),
            Temperature.FromDegreesCelsius(105),
            Temperature.FromDegreesCelsius(60)),
        new(
            Feed.Of("f", Conductor.Awg(12), Length.FromMeters(5), Length.Zero, Temperature.FromDegreesCelsius(60)),
            typeof(Feed),
            nameof(Feed.WithFuse),
            ElectricCurrent.FromAmperes(15)),
        new(
            Feed.Of("f", Conductor.Awg(12), Length.FromMeters(5), Length.Zero, Temperature.FromDegreesCelsius(60)),
            typeof(Feed),
            nameof(Feed.WithRelay),
            ElectricCurrent.FromAmperes(30)),
        new(
            Feed.Of("f", Conductor.Awg(12), Length.FromMeters(5), Length.Zero, Temperature.FromDegreesCelsius(60)),
            typeof(Feed),
            nameof(Feed.WithBundle),
            4),
        new(
            null,
            typeof(GroundReturn),
            nameof(GroundReturn.Of),
            Conductor.Awg(14),
            Length.FromMeters(0.4),
            Temperature.FromDegreesCelsius(60),
            ElectricResistance.FromMilliohms(4),
            new[] { Contact.DefaultJoint }),
        new(
            Ground,
            typeof(GroundReturn),
            nameof(GroundReturn.WithInsulation),
            Temperature.FromDegreesCelsius(105),
            Temperature.FromDegreesCelsius(60)),
        new(
            Ground,
            typeof(GroundReturn),
            nameof(GroundReturn.WithBundle),
            4),
        new(
            null,
            typeof(SmallestConductor),
            nameof(SmallestConductor.ForDrop),
            Wren.Volt(0.5),
            ElectricCurrent.FromAmperes(12),
            Length.FromMeters(6),
            Temperature.FromDegreesCelsius(60),
            new[] { Contact.DefaultFuse }),
        new(
            null,
            typeof(Ampacity),
            nameof(Ampacity.Of),
            Conductor.Awg(12),
            Temperature.FromDegreesCelsius(105),
            Temperature.FromDegreesCelsius(60),
            4),
        new(
            null,
            typeof(FuseChoice),
            nameof(FuseChoice.For),
            ElectricCurrent.FromAmperes(12),
            Conductor.Awg(12),
            Temperature.FromDegreesCelsius(105),
            Temperature.FromDegreesCelsius(60),
            4),
        new(
            null,
            typeof(PowerCorrection),
            nameof(PowerCorrection.By),
            PowerStandard.Iso1585,
            Atmosphere.Standard,
            Wren.Percent(40),
            BoostControl.FollowsAir),
        new(Correction, typeof(PowerCorrection), nameof(PowerCorrection.CorrectedPower), Power.FromKilowatts(100)),
        new(Correction, typeof(PowerCorrection), nameof(PowerCorrection.CorrectedTorque), Torque.FromNewtonMeters(200)),
        new(
            null,
            typeof(RunRow),
            nameof(RunRow.Of),
            1,
            Wren.Rpm(3000),
            null, // Time goes further than this test's nonsense; RecordedRunTests has its own.
            Wren.Kpa(150),
            Wren.Kpa(350),
            Wren.Ms(8),
            Wren.Percent(40),
            0.85,
            Wren.Volt(13.5),
            Power.FromKilowatts(100),
            Torque.FromNewtonMeters(200),
            Temperature.FromDegreesCelsius(40),
            VolumeFlow.FromLitersPerHour(50),
            MassFlow.FromGramsPerSecond(10)),
        new(null, typeof(ColumnPlace), nameof(ColumnPlace.Numbered), 2),
        new(null, typeof(RunColumn), nameof(RunColumn.Time), ColumnPlace.Named("c"), DurationUnit.Second),
        new(null, typeof(RunColumn), nameof(RunColumn.Speed), ColumnPlace.Named("c"), RotationalSpeedUnit.RevolutionPerMinute),
        new(null, typeof(RunColumn), nameof(RunColumn.Boost), ColumnPlace.Named("c"), PressureUnit.Bar),
        new(null, typeof(RunColumn), nameof(RunColumn.ManifoldAbsolute), ColumnPlace.Named("c"), PressureUnit.Bar),
        new(null, typeof(RunColumn), nameof(RunColumn.RailGauge), ColumnPlace.Named("c"), PressureUnit.Bar),
        new(null, typeof(RunColumn), nameof(RunColumn.RailAbsolute), ColumnPlace.Named("c"), PressureUnit.Bar),
        new(null, typeof(RunColumn), nameof(RunColumn.InjectorPulse), ColumnPlace.Named("c"), DurationUnit.Millisecond),
        new(null, typeof(RunColumn), nameof(RunColumn.DutyCycle), ColumnPlace.Named("c"), RatioUnit.Percent),
        new(null, typeof(RunColumn), nameof(RunColumn.AirFuelRatio), ColumnPlace.Named("c"), 14.7),
        new(null, typeof(RunColumn), nameof(RunColumn.BatteryVoltage), ColumnPlace.Named("c"), ElectricPotentialUnit.Volt),
        new(null, typeof(RunColumn), nameof(RunColumn.Power), ColumnPlace.Named("c"), PowerUnit.Kilowatt),
        new(null, typeof(RunColumn), nameof(RunColumn.Torque), ColumnPlace.Named("c"), TorqueUnit.NewtonMeter),
        new(null, typeof(RunColumn), nameof(RunColumn.FuelTemperature), ColumnPlace.Named("c"), TemperatureUnit.DegreeCelsius),
        new(null, typeof(RunColumn), nameof(RunColumn.FuelVolumeFlow), ColumnPlace.Named("c"), VolumeFlowUnit.LiterPerHour),
        new(null, typeof(RunColumn), nameof(RunColumn.FuelMassFlow), ColumnPlace.Named("c"), MassFlowUnit.GramPerSecond),
        new(Mapping, typeof(RunMapping), nameof(RunMapping.Written), CellSeparator.Tab, DecimalMark.Comma),
        new(Mapping, typeof(RunMapping), nameof(RunMapping.WithHeadingLine), 2),
        new(Mapping, typeof(RunMapping), nameof(RunMapping.WithUnitsRow), UnitsRow.Skipped),
        new(null, typeof(Sampling), nameof(Sampling.Of), 100, 1L, 2),
        new(
            null,
            typeof(UncertainInput),
            nameof(UncertainInput.BrakeSpecificFuelConsumption),
            Distribution.Fixed(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(320))),
        new(null, typeof(UncertainInput), nameof(UncertainInput.VolumetricEfficiencyFactor), AFactor),
        new(null, typeof(UncertainInput), nameof(UncertainInput.DrivetrainLoss), Distribution.Fixed(Wren.Percent(15))),
        new(null, typeof(UncertainInput), nameof(UncertainInput.InjectorFlowFactor), AFactor),
        new(null, typeof(UncertainInput), nameof(UncertainInput.InjectorMatchingFactor), AFactor),
        new(null, typeof(UncertainInput), nameof(UncertainInput.RegulatorOffset), Distribution.Fixed(Wren.Kpa(5))),
        new(null, typeof(UncertainInput), nameof(UncertainInput.RegulatorGainFactor), AFactor),
        new(null, typeof(UncertainInput), nameof(UncertainInput.RegulatorOnsetOffset), Distribution.Fixed(Wren.Kpa(5))),
        new(null, typeof(UncertainInput), nameof(UncertainInput.BoostFactor), AFactor),
        new(null, typeof(UncertainInput), nameof(UncertainInput.DeadTimeOffset), Distribution.Fixed(Wren.Ms(0.05))),
        new(null, typeof(UncertainInput), nameof(UncertainInput.PumpFlowFactor), AFactor),
        new(null, typeof(UncertainInput), nameof(UncertainInput.FeedResistanceOffset), Distribution.Fixed(ElectricResistance.FromMilliohms(5))),
        new(null, typeof(CorrelatedInputs), nameof(CorrelatedInputs.Of), UncertainInput.BoostFactor(AFactor), UncertainInput.InjectorFlowFactor(AFactor), Wren.Percent(50)),
        new(null, typeof(BenchColumn), nameof(BenchColumn.Of), BenchTestKind.StaticTest),
        new(null, typeof(BenchTests), nameof(BenchTests.Blank), BenchTestKind.StaticTest),
        new(null, typeof(UncertainInput), nameof(UncertainInput.AmbientPressure), Distribution.Fixed(Wren.Kpa(98))),
        new(null, typeof(UncertainInput), nameof(UncertainInput.AmbientTemperature), Distribution.Fixed(Temperature.FromDegreesCelsius(15))),
        new(null, typeof(UncertainInput), nameof(UncertainInput.SupplyVoltage), Distribution.Fixed(Wren.Volt(13))),
        new(
            null,
            typeof(UncertainInput),
            nameof(UncertainInput.FuelTemperature),
            Distribution.Fixed(Temperature.FromDegreesCelsius(30))),
        new(
            null,
            typeof(ControllerFigures),
            nameof(ControllerFigures.Of),
            Wren.InjectorOf(360),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(30),
            new[] { Wren.Kpa(300), Wren.Kpa(360) },
            Wren.Kpa(300),
            new[] { Wren.Volt(12), Wren.Volt(14) },
            new[] { Wren.Ms(3), Wren.Ms(6) }),
        new(
            null,
            typeof(ControllerFigures),
            nameof(ControllerFigures.From),
            BenchFits,
            Wren.Kpa(300),
            Wren.Kpa(500),
            Fuel.Petrol,
            Temperature.FromDegreesCelsius(30),
            new[] { Wren.Kpa(300), Wren.Kpa(360) },
            Wren.Kpa(300),
            new[] { Wren.Volt(12), Wren.Volt(13) },
            new[] { Wren.Ms(3), Wren.Ms(6) }),
        new(Figures, typeof(ControllerFigures), nameof(ControllerFigures.ToCsv), DurationUnit.Microsecond, PressureUnit.Bar, null),
        new(Figures, typeof(ControllerFigures), nameof(ControllerFigures.ScaledTo), VolumeFlow.FromMillilitersPerMinute(200), TargetLambda.At(0.9)),
        new(Figures, typeof(ControllerFigures), nameof(ControllerFigures.ScaledToMass), MassFlow.FromGramsPerSecond(2), TargetLambda.At(0.9)),
        new(
            null,
            typeof(FuelSizing.Conformance.ConformanceKit),
            nameof(FuelSizing.Conformance.ConformanceKit.Of),
            System,
            Wren.Rpm(3000),
            Wren.Rpm(6000),
            Wren.Kpa(0),
            Wren.Kpa(20)),
        new(null, typeof(CustomRegulator), nameof(CustomRegulator.Of), new OwnSetting(300), VolumeFlow.FromLitersPerHour(10)),
        new(
            CustomLoss.Of(new OwnLoss(5)),
            typeof(CustomLoss),
            nameof(CustomLoss.PressureLoss),
            VolumeFlow.FromLitersPerHour(100),
            Density.FromKilogramsPerCubicMeter(745),
            KinematicViscosity.FromCentistokes(0.7)),
        new(null, typeof(UncertainInput), nameof(UncertainInput.EthanolContent), Distribution.Fixed(Wren.Percent(85)), Fuel.Petrol),
        new(UncertainInput.InjectorFlowFactor(AFactor), typeof(UncertainInput), nameof(UncertainInput.ValueAt), Wren.Percent(50)),
        new(Sampled.System, typeof(UncertainSystem), nameof(UncertainSystem.Tornado), SystemOutput.DutyCycle, Wren.Percent(5), null, CancellationToken.None),
        new(Sampled.All, typeof(Chance), nameof(Chance.Interval), Wren.Percent(95)),
        new(
            null,
            typeof(SensorAccuracy),
            nameof(SensorAccuracy.Of),
            Wren.Kpa(2),
            Wren.Kpa(0.5),
            Wren.Ms(0.01),
            Wren.Percent(1),
            Wren.Percent(1),
            Wren.Percent(1),
            Wren.Kpa(3),
            Wren.Kpa(1),
            Wren.Percent(1)),
        new(
            null,
            typeof(PlanTolerance),
            nameof(PlanTolerance.Of),
            Wren.Percent(3),
            ElectricResistance.FromMilliohms(10),
            Wren.Percent(30),
            Wren.Kpa(5),
            Wren.Percent(2),
            Wren.Kpa(2),
            Wren.Percent(1.5),
            Wren.Ms(0.03),
            Wren.Percent(2.5),
            Wren.Percent(4),
            Wren.Volt(0.3)),
        new(null, typeof(RunCheck), nameof(RunCheck.Of), System, null, null, null, Wren.Percent(15), null),
        new(
            null,
            typeof(ModelDiscrepancy),
            nameof(ModelDiscrepancy.Of),
            Wren.Percent(4),
            TemperatureDelta.FromKelvins(13),
            Wren.Percent(2),
            Wren.Kpa(10),
            Wren.Ms(200),
            Wren.Ms(120),
            Wren.Ms(50),
            Wren.Ms(40),
            Wren.Percent(0.8)),
        new(
            FuelSizing.Findings.Calibration.Of(System, RecordedRun.Of("r", Atmosphere.Standard, [])),
            typeof(FuelSizing.Findings.Calibration),
            nameof(FuelSizing.Findings.Calibration.Correlation),
            CalibratedQuantity.PumpFlow,
            CalibratedQuantity.RegulatorGain),
        new(Sampled.All, typeof(Chance), nameof(Chance.Reaches), Wren.Percent(99), Wren.Percent(95)),
        new(Shared, typeof(VarianceOfInput), nameof(VarianceOfInput.FirstOrderInterval), Wren.Percent(95)),
        new(Shared, typeof(VarianceOfInput), nameof(VarianceOfInput.TotalInterval), Wren.Percent(95)),
        new(Sampled.DutyCycle, typeof(OutputSpread<Ratio>), nameof(OutputSpread<Ratio>.Percentile), Wren.Percent(95)),
        new(null, typeof(PumpArrangement), nameof(PumpArrangement.InParallel), Listed, 2, null),
        new(
            null,
            typeof(PumpArrangement),
            nameof(PumpArrangement.InSeriesWith),
            Listed[0].Part,
            SeriesBypass.CheckValve,
            Listed,
            null),
        new(
            null,
            typeof(Ranking),
            nameof(Ranking.Of),
            new[] { Stage.Of("now", System, Wren.At(3000, 0)) },
            CandidateParts.Of([Candidate.Of("injector B", Wren.InjectorOf(500))]),
            1,
            null,
            CancellationToken.None),
    }.ToDictionary(call => call.Name);

    private static Candidate<Pump>[] Listed => [Candidate.Of("pump B", Pump.From(Wren.PumpOf(1)))];

    private static GroundReturn Ground => GroundReturn.Of(
        Conductor.Awg(14), Length.FromMeters(0.4), Temperature.FromDegreesCelsius(60), ElectricResistance.FromMilliohms(4), Contact.DefaultJoint);

    private static PowerCorrection Correction =>
        PowerCorrection.By(PowerStandard.SaeJ1349, Atmosphere.Standard, Wren.Percent(40));

    private static RunMapping Mapping =>
        RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute));

    private static Distribution<Ratio> AFactor => Distribution.Fixed(Wren.Percent(100));

    public static TheoryData<string> Names => [.. Calls.Keys];

    [Fact]
    public void Nonsense_InUnitsThemselves_IsRefusedByTheUnits()
    {
        foreach (double nonsense in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity })
        {
            Assert.ThrowsAny<ArgumentException>(() => Pressure.FromKilopascals(nonsense));
            Assert.ThrowsAny<Exception>(() => Power.FromKilowatts(nonsense));
        }
    }

    [Fact]
    public void EveryPublicMethod_ThatTakesANumber_IsInTheList()
    {
        IEnumerable<string> missing =
            from type in typeof(Fuel).Assembly.GetExportedTypes()
            from method in type.GetMethods(
                BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            where !method.IsSpecialName && method.GetCustomAttribute<CompilerGeneratedAttribute>() is null
            where method.GetParameters().Any(parameter => HoldsNumbers(parameter.ParameterType))
            let name = $"{type.Name}.{method.Name}"
            where !TakesAnything.Contains(type.Name) && !TakesAnything.Contains(name) && !Calls.ContainsKey(name)
            select name;
        Assert.Empty(missing);
    }

    // But for plain numbers, on which equations are evaluated: they check nothing, and say so. And one that the compiler makes, of an interpolated string; and the numbers that a check reads.
    [Fact]
    public void EveryPublicType_OfTheLibrary_IsBuiltOnlyThroughCheckedMethods() =>
        Assert.Empty(
            from type in typeof(Fuel).Assembly.GetExportedTypes()
            where type.Namespace != typeof(FuelSizing.Numerics.Real).Namespace && type != typeof(StatementText) && type != typeof(CheckReading<>)
            from constructor in type.GetConstructors()
            where constructor.GetParameters().Length > 0
            select $"{type.Name} has a public constructor");

    [Theory]
    [MemberData(nameof(Names))]
    public void GoodArguments_OfEachMethod_AreTaken(string name) => Calls[name].Invoke(Calls[name].Arguments);

    /// <summary>A caller may go on using the lists that it handed over.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Lists_ChangedAfterTheCall_ChangeNothingThatWasBuilt(string name)
    {
        List<Array> handed = [];
        object? built = Calls[name].Invoke([.. Calls[name].Arguments.Select(argument => Handed(argument, handed))]);
        if (built is null)
        {
            return;
        }

        IReadOnlyList<long> before = ObjectGraph.Bits(built);
        handed.ForEach(Array.Clear);
        Assert.Equal(before, ObjectGraph.Bits(built));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Nonsense_InAnyNumberOfAMethod_IsRefusedByNameValueAndRange(string name)
    {
        Call call = Calls[name];
        int tried = 0;
        for (int i = 0; i < call.Arguments.Length; i++)
        {
            foreach ((object bad, string shown) in Nonsense(call.Arguments[i]))
            {
                tried++;
                object?[] arguments = [.. call.Arguments];
                arguments[i] = bad;
                ArgumentOutOfRangeException error =
                    Assert.Throws<ArgumentOutOfRangeException>(() => call.Invoke(arguments));
                Assert.Equal(call.Method.GetParameters()[i].Name, error.ParamName);
                Assert.Contains(" is ", error.Message, StringComparison.Ordinal);
                Assert.Contains("it must be ", error.Message, StringComparison.Ordinal);
                Assert.Contains(shown, error.Message.Replace('−', '-'), StringComparison.Ordinal);
            }
        }

        Assert.NotEqual(0, tried);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void MissingArgument_OfEachMethod_IsRefusedByName(string name)
    {
        Call call = Calls[name];
        ParameterInfo[] parameters = call.Method.GetParameters();
        for (int i = 0; i < parameters.Length; i++)
        {
            if (parameters[i].ParameterType.IsValueType
                || new NullabilityInfoContext().Create(parameters[i]).ReadState == NullabilityState.Nullable)
            {
                continue;
            }

            object?[] arguments = [.. call.Arguments];
            arguments[i] = null;
            Assert.Equal(
                parameters[i].Name, Assert.Throws<ArgumentNullException>(() => call.Invoke(arguments)).ParamName);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("two\nlines")]
    public void Name_ThatCannotBeShown_IsRefused(string name) =>
        Assert.Equal(
            "name",
            Assert.Throws<ArgumentException>(
                () => TestFluid.Of(name, Density.FromKilogramsPerCubicMeter(700))).ParamName);

    /// <summary>The argument with each list in it copied to an array that may be changed.</summary>
    private static object? Handed(object? argument, List<Array> handed)
    {
        if (argument is not IList { Count: > 0 } list)
        {
            return argument;
        }

        object?[] elements = [.. list.Cast<object?>().Select(element => Handed(element, handed))];
        Array copy = Array.CreateInstance(argument.GetType().GetElementType() ?? elements[0]!.GetType(), elements.Length);
        Array.Copy(elements, copy, elements.Length);
        handed.Add(copy);
        return copy;
    }

    private static bool HoldsNumbers(Type type)
    {
        Type plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain == typeof(double) || plain == typeof(int) || plain.IsEnum || typeof(IQuantity).IsAssignableFrom(plain)
            || (plain.IsArray && HoldsNumbers(plain.GetElementType()!))
            || (plain.IsGenericType && plain.GetGenericArguments().Any(HoldsNumbers));
    }

    /// <summary>The argument with one of its numbers turned to nonsense, and the unit that the message must show.</summary>
    private static IEnumerable<(object Bad, string Shown)> Nonsense(object? argument)
    {
        foreach ((object, string) bad in Spreads(argument))
        {
            yield return bad;
        }

        switch (argument)
        {
            case double:
                yield return (double.NaN, "NaN");
                yield return (double.PositiveInfinity, "Infinity");
                yield return (double.NegativeInfinity, "-Infinity");
                yield return (-1.0, "-1");
                yield return (1e9, "1E+09");
                break;
            case int:
                yield return (-1, "-1");
                yield return (int.MaxValue, "2147483647");
                break;
            case Enum value:
                yield return (Enum.ToObject(value.GetType(), 99), "99");
                break;
            case IQuantity quantity:
                string unit = quantity is RotationalSpeed
                    ? "rev/min"
                    : quantity.ToString("A", global::System.Globalization.CultureInfo.InvariantCulture);
                foreach (double number in new[] { -1e9, 1e9 })
                {
                    yield return (Quantity.From(number, quantity.Unit), unit);
                }

                break;
            case ITuple tuple:
                for (int i = 0; i < tuple.Length; i++)
                {
                    foreach ((object bad, string shown) in Nonsense(tuple[i]))
                    {
                        object?[] parts = [.. Enumerable.Range(0, tuple.Length).Select(part => tuple[part])];
                        parts[i] = bad;
                        yield return (Activator.CreateInstance(tuple.GetType(), parts)!, shown);
                    }
                }

                break;
            case Array { Rank: 1 } array:
                for (int i = 0; i < array.Length; i++)
                {
                    foreach ((object bad, string shown) in Nonsense(array.GetValue(i)))
                    {
                        Array changed = (Array)array.Clone();
                        changed.SetValue(bad, i);
                        yield return (changed, shown);
                    }
                }

                break;
            case IList list:
                object?[] copy = [.. list.Cast<object?>()];
                Array row = Array.CreateInstance(copy[0]!.GetType(), copy.Length);
                Array.Copy(copy, row, copy.Length);
                foreach ((object, string) bad in Nonsense(row))
                {
                    yield return bad;
                }

                break;
            default:
                break;
        }
    }

    /// <summary>If it is a distribution: the same with one end or the other out of all reason.</summary>
    private static IEnumerable<(object Bad, string Shown)> Spreads(object? argument) => argument switch
    {
        Distribution<Ratio> good => Ends(good),
        Distribution<Pressure> good => Ends(good),
        Distribution<Duration> good => Ends(good),
        Distribution<ElectricResistance> good => Ends(good),
        Distribution<ElectricPotential> good => Ends(good),
        Distribution<Temperature> good => Ends(good),
        Distribution<BrakeSpecificFuelConsumption> good => Ends(good),
        _ => [],
    };

    private static IEnumerable<(object Bad, string Shown)> Ends<T>(Distribution<T> good)
        where T : struct, IQuantity, IComparable<T>
    {
        (T low, T high) = ((T)Quantity.From(-1e9, good.Minimum.Unit), (T)Quantity.From(1e9, good.Minimum.Unit));
        string unit = good.Minimum.ToString("A", global::System.Globalization.CultureInfo.InvariantCulture);
        return new object[]
        {
            Distribution.Uniform(low, good.Maximum),
            Distribution.Uniform(good.Minimum, high),
            Distribution.Fixed(low),
            Distribution.Fixed(high),
        }.Select(bad => (bad, unit));
    }

    /// <summary>A public method and good arguments for it.</summary>
    private sealed class Call(object? target, Type type, string method, params object?[] arguments)
    {
        public string Name { get; } = $"{type.Name}.{method}";

        public MethodInfo Method { get; } = Found(type, method, arguments);

        // A token that stops the work is given by its default.
        public object?[] Arguments { get; } =
            Found(type, method, arguments).GetParameters().Length == arguments.Length ? arguments : [.. arguments, CancellationToken.None];

        private static MethodInfo Found(Type type, string method, object?[] arguments) => type.GetMethods()
            .Where(one => one.Name == method && Takes(one.GetParameters(), arguments))
            .OrderBy(one => one.GetParameters().Length)
            .First();

        private static bool Takes(ParameterInfo[] parameters, object?[] arguments) =>
            (parameters.Length == arguments.Length || (parameters.Length == arguments.Length + 1 && parameters[^1].ParameterType == typeof(CancellationToken)))
            && parameters.Zip(arguments).All(pair => pair.Second is null || pair.First.ParameterType.ContainsGenericParameters || pair.First.ParameterType.IsInstanceOfType(pair.Second));

        public object? Invoke(object?[] values)
        {
            try
            {
                return Method.Invoke(target, values);
            }
            catch (TargetInvocationException error)
            {
                global::System.Runtime.ExceptionServices.ExceptionDispatchInfo.Capture(error.InnerException!).Throw();
                throw;
            }
        }
    }
}
