using System.Collections;
using System.Reflection;
using FuelSizing.Bench;
using FuelSizing.Circuits;
using FuelSizing.Conformance;
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
using FuelSizing.Tests;
using FuelSizing.Uncertainty;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Notebooks.Tests;

/// <summary>One or more of every type that the library hands out: what is made here, and all that hangs on it.</summary>
internal static class Specimens
{
    /// <summary>A name that a careless page would take for markup.</summary>
    public const string Hostile = "<b title='x'>\"A&B\"</b>";

    // Two of a type may differ in what they hold; many of one look alike.
    private const int MaximumOfAType = 6;

    /// <summary>Everything, found anew: what is written depends on the units of the day.</summary>
    public static IReadOnlyDictionary<Type, List<object>> Collect()
    {
        Dictionary<Type, List<object>> found = [];
        Queue<object> waiting = new(Roots());
        while (waiting.TryDequeue(out object? next))
        {
            if (next is IEnumerable many and not string)
            {
                foreach (object one in many.Cast<object>().Take(MaximumOfAType))
                {
                    waiting.Enqueue(one);
                }

                continue;
            }

            Type type = next.GetType();
            if (type.FullName!.StartsWith("System.ValueTuple", StringComparison.Ordinal))
            {
                foreach (FieldInfo field in type.GetFields())
                {
                    waiting.Enqueue(field.GetValue(next)!);
                }
            }

            if (type.Assembly != typeof(FuelSystem).Assembly || type.IsEnum)
            {
                continue;
            }

            List<object> kept = found.TryGetValue(type, out var others) ? others : found[type] = [];
            if (kept.Count >= MaximumOfAType)
            {
                continue;
            }

            kept.Add(next);
            foreach (PropertyInfo property in type.GetProperties().Where(property => property.GetIndexParameters().Length == 0))
            {
                if (property.GetValue(next) is { } value)
                {
                    waiting.Enqueue(value);
                }
            }
        }

        return found;
    }

    /// <summary>Parts by laws of one's own, what those are asked with, and whether they keep the rules.</summary>
    private static IEnumerable<object> OfOnesOwn(FuelSystem system, OperatingPoint point)
    {
        Asked asked = new();
        FuelSystem own = system.With(CustomRegulator.Of(new OwnSetting(300))).With(Plumbing.Of(supply: [CustomLoss.Of(new OwnLoss(5))]))
            .With(system.Demand.With(asked)).With(CustomController.Of(asked));
        yield return own.Solve(point);
        yield return own.Plumbing;
        yield return own.Controller;
        yield return own.Regulator;
        yield return own.Demand;
        yield return asked.Place!;
        yield return asked.Reading!;
        ConformanceReport kept = ConformanceKit.Of(new OwnSetting(300));
        ConformanceReport broken = ConformanceKit.Of(new OwnSetting(-40));
        yield return (object[])[kept, broken, .. kept.Rules, .. broken.Rules];
    }

    /// <summary>A law of demand and of pulses with a careless name, which keeps what it is asked with.</summary>
    private sealed class Asked : IFuelDemandLaw, IControllerLaw
    {
        public DemandPlace? Place { get; private set; }

        public ControllerReading? Reading { get; private set; }

        public Statement Text => Statement.Of("own.asked", $"the law of {Hostile}");

        public bool FollowsEstimate => true;

        public bool ReadsRailPressure => true;

        public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

        public IReadOnlyList<Pressure> BoostKinks => [];

        public IReadOnlyList<Pressure> ManifoldKinks => [];

        public MassFlow FuelAt(DemandPlace place) => (Place = place).Estimate.MassFlow;

        public Duration? PulseAt(ControllerReading at)
        {
            Reading = at;
            return Duration.FromMilliseconds(8);
        }
    }

    private static IEnumerable<object> Roots()
    {
        SweepResult sweep = SizingSheetTests.Sweep();
        FuelSystem system = sweep.System;
        OperatingPoint peak = OperatingPoint.At(Rpm(6500), Pressure.FromBars(0.8));
        OperatingPoint calm = OperatingPoint.At(Rpm(4000), Pressure.FromBars(0.3));
        FuelSystem calmer = FuelSystem.Return(
            system.Demand, Big, ManifoldReferenced.From(Kpa(300)), Pump.From(Curve(300)), SizingLimits.Default, Plumbing.None);
        yield return sweep;
        yield return sweep.Verdict;
        yield return calmer.Waive(Checks.Part.PressureRating, "all hoses are new");
        yield return calmer.Waive(Checks.Part.PressureRating, Hostile);
        yield return Setup.Of(system, (Hostile, peak));
        yield return sweep.System.Plumbing;
        foreach (object shown in SurgeTanks(system, peak, calm))
        {
            yield return shown;
        }

        foreach (object shown in Staged(calmer, peak, calm).Concat(SecondStreams(calmer, peak, calm)).Concat(FromFewNumbers()))
        {
            yield return shown;
        }

        foreach (object shown in OfOnesOwn(calmer, calm))
        {
            yield return shown;
        }

        yield return Checks.Applicability.Judged;
        yield return calmer.Checks[0].AppliesTo(calmer.Parts);

        foreach (object shown in Warm(system, peak, calm))
        {
            yield return shown;
        }

        // The same names in every part.
        yield return Engine.Of(Hostile, Volume.FromLiters(2), 4, EngineCycle.TwoStroke, Rpm(7000));
        yield return Big;
        yield return Big.Injector;
        yield return DeadTimeTable.Of([Volts(8), Volts(16)], [Kpa(200), Kpa(400)], [[Ms(2), Ms(0.7)], [Ms(2.2), Ms(0.8)]]);
        yield return Fitting.Elbow90;
        yield return Fitting.Of(Hostile, 1);
        yield return Line.Of(Hostile, Length.FromMillimeters(8), Length.FromMeters(3), Roughness.PlasticTube, [Fitting.Of(Hostile, 1)]);
        yield return Line.Of("line", Length.FromMillimeters(8), Length.FromMeters(3), Roughness.PlasticTube)
            .PressureLoss(VolumeFlow.FromLitersPerHour(150), Fuel.E10, Celsius(20));
        yield return Filter.Of(Hostile, VolumeFlow.FromLitersPerHour(120), Kpa(10));
        yield return SuctionMargin.Of(Kpa(101), Length.FromMeters(0.2), Kpa(3), Fuel.Petrol, Celsius(40));
        yield return Fuel.E85;
        yield return Induction.NaturallyAspirated;
        yield return Induction.BeltDriven(Ratio.FromPercent(65), Ratio.FromPercent(70), Kpa(5), Ratio.FromPercent(95));
        yield return MeasuredBoost.Of((Rpm(2000), Kpa(5)), (Rpm(6000), Kpa(52)));
        yield return HeldBoost.Of(Kpa(58), Rpm(3400), Rpm(6600));
        yield return HeldBoost.Of(Kpa(58), Rpm(3400), Rpm(6600), Rpm(1900));
        yield return CentrifugalBoost.From(8.37, Rpm(5900), Kpa(41), Atmosphere.Standard).WithMaximumCompressorSpeed(Rpm(52_000));
        yield return DisplacementBoost.Of(1.83, Volume.FromLiters(1.16), Ratio.FromPercent(87));
        yield return PowerCorrection.By(PowerStandard.Iso1585, Atmosphere.Standard, Ratio.FromPercent(60));
        yield return PowerCorrection.By(PowerStandard.SaeJ1349, Atmosphere.Of(Kpa(70), Celsius(45)), Ratio.FromPercent(90), BoostControl.CompensatesForAmbient);

        PressureRegulator[] regulators =
        [
            Fixed.At(Kpa(300)),
            ManifoldReferenced.From(Kpa(300)),
            RisingRate.From(Kpa(300), 4, Kpa(10)).WithFlow(RegulatorFlow.Rising(Kpa(20), VolumeFlow.FromLitersPerHour(100), VolumeFlow.FromLitersPerHour(60)).WithOutletShare(0.05)),
            ManifoldReferenced.From(Kpa(300)).WithFlow(RegulatorFlow.Measured(
                VolumeFlow.FromLitersPerHour(60), (VolumeFlow.FromLitersPerHour(10), Kpa(290)), (VolumeFlow.FromLitersPerHour(90), Kpa(310))).WithHysteresis(Kpa(8))),
            RegulatorSeries.Of(ManifoldReferenced.From(Kpa(300)), RisingRate.From(Kpa(300), 4, Kpa(10), Kpa(600))),
            ElectronicReturnless.Holding(Kpa(300), true, Volts(9)),
            ElectronicReturnless.Holding(Kpa(300), false, Volts(9)),
        ];
        yield return regulators;
        yield return regulators[3].Flow!;
        yield return regulators[3].Flow!.Points;
        yield return regulators[3].Flow!.Points[0];
        Pump pump = Pump.From(Curve(200));
        yield return PumpSeries.Of(SeriesBypass.CheckValve, pump, pump);
        yield return PumpParallel.Of(pump, pump);
        CheckValve valve = CheckValve.Of(Hostile, Kpa(6), VolumeFlow.FromLitersPerHour(180), Kpa(14));
        yield return valve;
        FuseTimeCurrent fuseTimes = FuseTimeCurrent.Of((1.5, Duration.FromSeconds(2), Duration.FromSeconds(400)), (5, Duration.FromSeconds(0.05), Duration.FromSeconds(0.4)));
        yield return fuseTimes;
        yield return fuseTimes.Points[0];
        yield return MotorStart.Of(ElectricCurrent.FromAmperes(46), Duration.FromSeconds(0.08), Duration.FromSeconds(10));
        yield return CheckValve.OfCoefficient("by its coefficient", Kpa(6), 2, Length.FromMillimeters(8));
        Line hose = Line.Of("branch hose", Length.FromMillimeters(7), Length.FromMeters(0.8), Roughness.RubberHose);
        yield return PumpBranch.Of(pump, [hose], [hose, valve]);
        yield return pump;
        yield return PumpDrive.Of(PumpKind.Displacement, ElectricResistance.FromOhms(0.21));
        yield return PumpDrive.Of(PumpKind.Turbine);
        PumpDriveFit driveFit = PumpDriveFit.Of(DriveCurve(11.3, 0), DriveCurve(13.9, 34), Ratio.FromPercent(1.2), Ratio.FromPercent(1.2));
        yield return driveFit;
        yield return driveFit.Turbine;
        yield return driveFit.Displacement!;
        double[] grams = [0.3, 5.2, 10.41, 15.62, 20.79, 26.02, 36.38];
        PulseTest bench = PulseTest.Of(
            Hostile,
            TestFluid.Heptane,
            Kpa(300),
            Volts(13.5),
            Mass.FromMilligrams(12),
            Ratio.FromPercent(0.3),
            [.. new[] { 1.3, 2, 3, 4, 5, 6, 8 }.Select((width, at) => PulseReading.Of(Duration.FromMilliseconds(width), 1000, Mass.FromGrams(grams[at])))]);
        yield return bench;
        yield return bench.Readings[0];
        PulseFit line = PulseFit.Of(bench);
        yield return line;
        yield return CorrelatedInputs.Of(
            UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(96), Ratio.FromPercent(104))),
            UncertainInput.DeadTimeOffset(Distribution.Uniform(Duration.FromMilliseconds(-0.02), Duration.FromMilliseconds(0.02))),
            Ratio.FromPercent(71));
        PulseFit like = PulseFit.Of(PulseTest.Of("injector D", TestFluid.Heptane, Kpa(300), Volts(13.5), Mass.FromMilligrams(12), Ratio.FromPercent(0.3), [.. bench.Readings]));
        yield return MatchedSet.Of([line, like], [Duration.FromMilliseconds(2), Duration.FromMilliseconds(8)], [Ratio.FromPercent(101), Ratio.FromPercent(99)]);
        yield return PulsePlan.For(
            Duration.FromMicroseconds(3),
            VolumeFlow.FromMillilitersPerMinute(460),
            Density.FromKilogramsPerCubicMeter(683.8),
            Duration.FromMilliseconds(1),
            Duration.FromMilliseconds(1.6),
            Duration.FromMilliseconds(10),
            Mass.FromMilligrams(10),
            Duration.FromMilliseconds(20),
            Mass.FromGrams(150));
        StaticTest held = StaticTest.ByMass(
            Hostile,
            TestFluid.Heptane,
            Kpa(300),
            Mass.FromGrams(0.1),
            Duration.FromSeconds(0.1),
            Ratio.FromPercent(0.3),
            [.. new[] { (20, 105.9), (20, 106.2), (60, 316.4), (60, 315.8) }.Select(read => StaticReading.ByMass(Duration.FromSeconds(read.Item1), Mass.FromGrams(read.Item2)))]);
        yield return held;
        yield return held.Readings[0];
        yield return StaticFlow.Of(held);
        StaticTest filled = StaticTest.ByVolume(
            Hostile,
            TestFluid.Heptane,
            Kpa(300),
            Volume.FromMilliliters(1),
            Duration.Zero,
            Ratio.Zero,
            [.. new[] { 229, 230, 231 }.Select(read => StaticReading.ByVolume(Duration.FromSeconds(30), Volume.FromMilliliters(read)))]);
        yield return filled;
        yield return filled.Readings[0];
        yield return BenchTests.Parse(
            "bench.csv",
            "static_tests 1,differential [kPa],scale [g],clock [s],calibration [%],readings.time [s],readings.weighed [g]\nC,300,0.1,0.1,0.3,20,105.9\nC,,,,,20,106.2\nC,,,,,60,316.4\n");
        yield return BenchColumn.Of(BenchTestKind.StaticTest)[^1];
        ControllerFigures typed = ControllerSheetTests.Figures(Hostile);
        yield return typed;
        yield return typed.ReferenceFlow;
        yield return typed.DeadTimes[0];
        yield return typed.ShortPulses[0];
        yield return typed.FuelErrors[^1];
        FlowScaling share = typed.ScaledTo(VolumeFlow.FromMillilitersPerMinute(300), TargetLambda.Of((Ratio.FromPercent(50), 1), (Ratio.FromPercent(120), 0.8)));
        yield return share;
        yield return share.Lookups[0];
        GaugeAccuracy gauge = GaugeAccuracy.Of(Kpa(1), Kpa(2), Ratio.FromPercent(0.5));
        yield return gauge;
        PumpFlowTest bucket = PumpFlowTest.Weighed(
            Hostile,
            TestFluid.Heptane,
            Mass.FromGrams(2),
            Duration.FromSeconds(0.1),
            gauge,
            Ratio.FromPercent(0.1),
            Ratio.FromPercent(0.2),
            [
                .. new[] { 0.0, 0, 200, 200, 400, 400, 600, 600 }.Select((rise, at) => PumpFlowReading.OfMass(
                    Kpa(rise), Volts(13.5), Mass.FromGrams(1200 - rise + at + (at == 5 ? 300 : 0)), Duration.FromSeconds(30), ElectricCurrent.FromAmperes(5))),
            ],
            ElectricCurrent.FromAmperes(0.1));
        yield return bucket;
        yield return bucket.Readings[0];
        yield return PumpFlowFit.Of(bucket);
        yield return PumpFlowFit.Of(bucket).Points[0];
        yield return PumpFlowTest.Measured(
            Hostile,
            Volume.FromMilliliters(5),
            Duration.FromSeconds(0.1),
            gauge,
            Ratio.FromPercent(0.2),
            [.. new[] { 0.0, 0, 200, 200, 400, 400 }.Select(rise => PumpFlowReading.OfVolume(Kpa(rise), Volts(13.5), Volume.FromMilliliters(1000 - rise), Duration.FromSeconds(30)))]);
        DeadheadTest shut = DeadheadTest.Of(
            Hostile, gauge, [.. new[] { 690.0, 693, 688, 691 }.Select((pressure, at) => DeadheadReading.Of(Volts(at == 3 ? 13.5 : 12), Kpa(pressure), at == 3))]);
        yield return shut;
        yield return shut.Readings[0];
        yield return shut.Readings[3];
        yield return DeadheadFit.Of(shut);
        yield return DeadheadFit.Of(shut).Points[0];
        yield return DeadheadFit.Of(shut).Points[1];
        VoltageDropTest drops = VoltageDropTest.Of(
            Hostile,
            ElectricPotential.FromMillivolts(1),
            ElectricPotential.FromMillivolts(0.5),
            ElectricCurrent.FromMilliamperes(20),
            Ratio.FromPercent(0.8),
            [.. new[] { 4.0, 4, 8, 8, 12, 12 }.Select((current, at) => VoltageDropReading.Of(ElectricCurrent.FromAmperes(current), ElectricPotential.FromMillivolts((25 * current) + (at % 3) + 20)))]);
        yield return drops;
        yield return drops.Readings[0];
        yield return VoltageDropFit.Of(drops);
        foreach (double gain in new[] { 1.0, 5, 0.3 })
        {
            RegulatorTest rail = RegulatorTest.Of(
                Hostile,
                true,
                gauge,
                gauge,
                [
                    .. new[] { 0.0, 10, 20, 30, 40, 50, 60, 70 }.Select((applied, at) => RegulatorGaugeReading.Of(
                        Kpa(applied), Kpa(300 + Math.Min(20, applied) + (gain * Math.Max(0, applied - 20)) + (at % 3)), VolumeFlow.FromLitersPerHour(60 + (at * 37 % 50)))),
                ]);
            yield return rail;
            yield return rail.Readings[0];
            yield return RegulatorTestFit.Of(rail);
        }

        ConsumptionTest runs = ConsumptionTest.Of(
            Hostile,
            Mass.FromGrams(5),
            Duration.FromSeconds(0.2),
            Ratio.FromPercent(0.5),
            Ratio.FromPercent(1),
            [.. new[] { 900.0, 905, 897, 902 }.Select(burnt => ConsumptionReading.Of(Mass.FromGrams(30_000), Mass.FromGrams(30_000 - burnt), Duration.FromSeconds(60), Power.FromKilowatts(180)))]);
        yield return runs;
        yield return runs.Readings[0];
        yield return ConsumptionFit.Of(runs);
        yield return SwitchedPump.Above(Kpa(40), Kpa(30), pump);
        yield return VoltageConverter.Holding(Hostile, Volts(16), Ratio.FromPercent(90), ElectricCurrent.FromAmperes(20));
        yield return VoltageConverter.Times("converter", 1.2, Ratio.FromPercent(90));
        yield return SwitchedPump.Above(Kpa(40), Kpa(30), pump, PumpLowSpeed.At(Ratio.FromPercent(60)));
        yield return PumpDrive.Of(PumpKind.Unknown, ElectricResistance.FromOhms(0.21));
        yield return Pump.From(PumpCurve.At(Hostile, Volts(12), (Kpa(100), VolumeFlow.FromLitersPerHour(100)), (Kpa(400), VolumeFlow.FromLitersPerHour(50))));

        Feed feed = Feed.Of(Hostile, Conductor.Awg(14), Length.FromMeters(5), Length.FromMeters(5), Celsius(60), Contact.DefaultFuse);
        yield return feed;
        GroundReturn ground = GroundReturn.Of(Conductor.Awg(14), Length.FromMeters(1), Celsius(60), ElectricResistance.FromMilliohms(4), Contact.Of(Hostile, ElectricResistance.FromMilliohms(1)));
        yield return ground;
        yield return feed.WithShared(Feed.Of(Hostile, Conductor.Awg(8), Length.FromMeters(5), Length.Zero, Celsius(60)));
        yield return ground.WithInsulation(Celsius(105), Celsius(40)).WithBundle(5);
        yield return Feed.Of(Hostile, Conductor.Awg(14), Length.FromMeters(5), Length.Zero, Celsius(60)).WithInsulation(Celsius(105), Celsius(40)).WithBundle(8).WithGround(ground);
        yield return feed.VoltageAtMotor(Volts(13.5), ElectricCurrent.FromAmperes(12));
        yield return FuseChoice.For(ElectricCurrent.FromAmperes(12), Conductor.Awg(12), Celsius(90), Celsius(40));
        yield return FuseChoice.For(ElectricCurrent.FromAmperes(12), Conductor.Awg(20), Celsius(60), Celsius(40));
        yield return SmallestConductor.ForDrop(ElectricPotential.FromVolts(0.4), ElectricCurrent.FromAmperes(12), Length.FromMeters(9), Celsius(40));
        yield return SmallestConductor.ForDrop(
            ElectricPotential.FromVolts(0.01), ElectricCurrent.FromAmperes(12), Length.FromMeters(9), Celsius(40), Contact.DefaultFuse);

        yield return SystemSizing.MinimumStaticFlow(system, calm);
        yield return SystemSizing.MinimumBasePressure(system, calm);
        yield return SystemSizing.MinimumGain(system, Kpa(10), calm);
        yield return SystemSizing.MinimumBore(system, (Line)system.Plumbing.Supply[1], calm);
        yield return SystemSizing.MinimumWireArea(system, calm);
        yield return SystemSizing.MaximumBoost(calmer, [Rpm(4000)], Conditions.Default);
        yield return SystemSizing.MaximumPower(calmer, Rpm(4000), Conditions.Default);
        yield return SystemSizing.MaximumSpeed(calmer, Pressure.FromBars(0.3), Rpm(2000), Conditions.Default);
        yield return SystemSizing.RequiredPump(system, calm, peak);

        yield return Catalogue.Parse(
            "list.json",
            """
            {
              "catalogue": 1,
              "injectors": [ {
                "name": "<b title='x'>\"A&B\"</b>", "static_flow": "360 mL/min", "rated_differential": "300 kPa",
                "minimum_linear_pulse": "1.6 ms", "maximum_differential": "550 kPa", "cost": 60,
                "dead_times": [ { "voltage": "8 V", "time": "2.4 ms" }, { "voltage": "16 V", "time": "0.7 ms" } ] } ],
              "pumps": [ {
                "name": "pump", "cost": 180,
                "curve": [ { "voltage": "13.5 V", "pressure_rise": "0 kPa", "flow": "215 L/h" }, { "voltage": "13.5 V", "pressure_rise": "800 kPa", "flow": "0 L/h" } ] } ],
              "regulators": [ { "name": "regulator", "kind": "fixed", "base": "3 bar" } ]
            }
            """);
        CandidateParts parts = CandidateParts.Of(
            [Candidate.Of(Hostile, Big.Injector, 120m), Candidate.Of("small", Small.Injector, 80m)],
            [Candidate.Of<PumpAssembly>("pump", pump), Candidate.Of<PumpAssembly>("two pumps", PumpParallel.Of(pump, pump))],
            [Candidate.Of("base", regulators[1]), Candidate.Of("fits no return line", regulators[5])]);
        yield return parts;
        yield return Ranking.Of([Stage.Of(Hostile, calmer, calm)], parts);
        yield return Problems();

        foreach (object one in Mixtures(calmer))
        {
            yield return one;
        }

        UncertainSystem unsure = UncertainSystem.Of(
            calmer,
            calm,
            UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(96), Ratio.FromPercent(104))),
            UncertainInput.InjectorMatchingFactor(Distribution.Uniform(Ratio.FromPercent(97), Ratio.FromPercent(103))),
            UncertainInput.FuelTemperature(Distribution.Uniform(Celsius(20), Celsius(40))));
        yield return unsure;
        yield return unsure.MonteCarlo(Sampling.Of(64));
        yield return unsure.MonteCarlo(Sampling.Of(64)).Mixture[0];
        yield return unsure.Tornado(SystemOutput.DutyCycle);
        yield return unsure.Sobol(SystemOutput.DutyCycle, Sampling.Of(64));
        yield return Distribution.Uniform(Celsius(20), Celsius(40));
        yield return Distribution.Uniform(Kpa(1), Kpa(2));
        yield return Distribution.Uniform(Volts(12), Volts(14));
        yield return Distribution.Uniform(Duration.FromMilliseconds(-0.02), Duration.FromMilliseconds(0.03));
        yield return Distribution.Uniform(ElectricResistance.FromMilliohms(2), ElectricResistance.FromMilliohms(9));
        yield return Distribution.Uniform(Ratio.FromPercent(10), Ratio.FromPercent(20));
        yield return Distribution.Uniform(
            BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(300), BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(330));

        yield return default(RunRow);
        RunMapping mapping = RunMapping.Of(
            RunColumn.Time("Time", DurationUnit.Second),
            RunColumn.Speed(Hostile, RotationalSpeedUnit.RevolutionPerMinute),
            RunColumn.Boost(ColumnPlace.Numbered(3), PressureUnit.Bar));
        yield return mapping;
        yield return RunReader.Read(
            Hostile,
            new StringReader("Time,<b>\u0001</b>\n0,3000\n1,abc\n2,\u0001\n3,3100\n"),
            RunMapping.Of(
                RunColumn.Time("Time", DurationUnit.Second), RunColumn.Speed(ColumnPlace.Numbered(2), RotationalSpeedUnit.RevolutionPerMinute)),
            Atmosphere.Standard);
        Progress seen = new();
        using (RunReader reader = RunReader.Open(
            new StringReader($"Speed\n{string.Concat(Enumerable.Repeat("3000\n", 70_000))}"),
            RunMapping.Of(RunColumn.Speed("Speed", RotationalSpeedUnit.RevolutionPerMinute)),
            Atmosphere.Standard,
            progress: seen))
        {
            while (reader.TryRead(out _))
            {
            }
        }

        yield return seen.All;
        foreach (object found in Found(calmer))
        {
            yield return found;
        }
    }

    /// <summary>Controllers of each kind, and what comes of pulses that know nothing of boost.</summary>
    private static IEnumerable<object> Mixtures(FuelSystem system)
    {
        ControllerData plain = ControllerData.Of(Big.Injector, Fuel.Petrol, TargetLambda.At(0.87));
        ControllerData aware = ControllerData.Of(Big.Injector, Fuel.E85, TargetLambda.Of((Ratio.FromPercent(40), 1), (Ratio.FromPercent(90), 0.84)))
            .WithRailPressureCorrection()
            .WithoutVoltageCorrection(Volts(13))
            .WithMaximumDutyCycle(Ratio.FromPercent(92))
            .WithClosedLoop(ClosedLoop.Of(Ratio.FromPercent(12), Kpa(75)))
            .WithEthanolSensor();
        EngineController recorded = RecordedPulseController.BySpeed((Rpm(2500), Ms(5.2)), (Rpm(6500), Ms(5.6)));
        EngineController[] controllers =
        [
            IdealController.Instance,
            SpeedDensityController.Of(plain, system.Demand.VolumetricEfficiency, Kpa(104)),
            SpeedDensityController.Of(aware, system.Demand.VolumetricEfficiency, Kpa(220), Celsius(38)),
            ThrottleController.Of(plain, system.Demand.VolumetricEfficiency, Atmosphere.Standard),
            AirflowMeterController.Of(aware, MassFlow.FromGramsPerSecond(96)),
            AirflowMeterController.Of(plain),
            recorded,
        ];
        yield return controllers;
        yield return recorded;
        AlongSpeed table = AlongSpeed.Of(
            SpeedRow.Of(Rpm(2500), 0.88, Ratio.FromPercent(58), Ratio.FromPercent(66)), SpeedRow.Of(Rpm(6500), 0.81, Ratio.FromPercent(64), Ratio.FromPercent(55)));
        yield return table;
        yield return table.Rows[0];
        yield return system.Demand.With(table);
        yield return MixtureLimits.ByBoost([(Kpa(10), 0.9), (Kpa(60), 0.84)], 0.68);
        BoostLine line = HeldBoost.Of(Kpa(42), Rpm(3000), Rpm(6500), Rpm(2500));
        yield return PullRange.Of(Rpm(3000), Rpm(6000));
        yield return PlausibleRange.For("static_flow")!;
        yield return PlausibleRange.For("static_flow")!.Question("static_flow", VolumeFlow.FromMillilitersPerMinute(24))!;
        FuelSystem blind = system.With(recorded)
            .With(system.Limits.With(MixtureLimits.Of(0.9, Kpa(8))))
            .With(PumpSeries.Of(SeriesBypass.CheckValve, Pump.From(Curve(300)), Pump.From(Curve(290))));
        yield return blind.With(PumpParallel.Of(Pump.From(Curve(300)), PumpBranch.Of(
                Pump.From(Curve(290)),
                [Line.Of("own suction", Length.FromMillimeters(9), Length.FromMeters(0.4), Roughness.RubberHose)],
                [CheckValve.Of(Hostile, Kpa(6), VolumeFlow.FromLitersPerHour(180), Kpa(14))])))
            .Solve(OperatingPoint.At(Rpm(5200), Kpa(42))).Circuit.Branches;
        RisingRateBounds bounds = RisingRateBounds.Of(Kpa(300), Kpa(300), maximumOnset: Pressure.Zero, ceiling: Kpa(1900));
        yield return bounds;
        yield return controllers.Select(controller => blind.With(controller).Solve(OperatingPoint.At(Rpm(5200), Kpa(42))).Mixture);
        yield return MixtureSizing.FitRisingRate(blind, line, [Rpm(3000), Rpm(6500)], Conditions.Default, bounds);
        yield return blind.Pull(line, Rpm(2500), Rpm(6500));
        yield return blind.WithEachFailure(line, Rpm(2500), Rpm(6500), Conditions.Default);
        RecordedRun pull = RecordedRun.Of(
            Hostile,
            Atmosphere.Standard,
            [.. Enumerable.Range(0, 12).Select(row => RunRow.Of(
                row + 1, Rpm(3000 + (row * 300)), manifoldAbsolute: Kpa(143), railGauge: Kpa(352), injectorPulse: Ms(5.3), lambda: 1.02 + (0.01 * row)))]);
        yield return RunFindings.Of(blind, pull).Mixture;
        CutOutResult cut = CutOut.PressuresFor(blind, line, Rpm(2500), Rpm(6500), Conditions.Default);
        yield return cut;
        yield return cut.Points;
        yield return cut.DifferentialSwitch;
        yield return BoostSizing.InjectorsInstead(blind, line, Rpm(2500), Rpm(6500), Conditions.Default);
        FuelSystem belted = blind.With(FuelDemandModel.Of(
            blind.Demand.Engine,
            Induction.BeltDriven(Ratio.FromPercent(60), Ratio.FromPercent(50), Kpa(5), Ratio.FromPercent(94)),
            blind.Demand.VolumetricEfficiency,
            blind.Demand.MeasuredPower,
            blind.Demand.MechanicalEfficiency,
            blind.Demand.Consumption));
        BeltDrivenBoost belt = CentrifugalBoost.From(8, Rpm(6500), Kpa(40), Atmosphere.Standard);
        yield return BoostSizing.MaximumDriveRatio(belted, belt, Rpm(2500), Rpm(6500), Conditions.Default);
        yield return BoostSizing.MaximumDriveRatio(belted.With(SizingLimits.Default), belt, Rpm(2500), Rpm(6500), Conditions.Default);
        OperatingRanges ranges = OperatingRanges.Around(Conditions.Default)
            .WithAmbientTemperature(Celsius(-10), Celsius(35))
            .WithSupplyVoltage(ElectricPotential.FromVolts(12.5), ElectricPotential.FromVolts(14));
        yield return ranges.WithEthanolContent(Ratio.FromPercent(0), Ratio.FromPercent(10));
        WorstCornerResult worst = blind.FindWorstCorner(line, Rpm(2500), Rpm(6500), ranges);
        yield return worst;
        yield return worst.Checks;
        yield return worst.Limiting.Inputs;
        yield return blind.With(PumpSeries.Of(SeriesBypass.None, Pump.From(Curve(300)), Pump.From(Curve(290))))
            .WithEachFailure(line, Rpm(2500), Rpm(6500), Conditions.Default);
    }

    private static IEnumerable<object> Problems()
    {
        try
        {
            Catalogue.Parse($"{Hostile}.json", "{ \"catalogue\": 1, \"injectors\": [ { \"wrong\": 1 } ] }");
            return [];
        }
        catch (CatalogueException refused)
        {
            return refused.Problems;
        }
    }

    /// <summary>What a run of the plan itself says; a lean stretch is in it.</summary>
    private static IEnumerable<object> Found(FuelSystem plan)
    {
        List<RunRow> rows = [];
        for (int step = 0; step < 600; step++)
        {
            RotationalSpeed speed = Rpm(2500 + (5 * step));
            Pressure boost = Pressure.FromBars(-0.5 + (1.1 * (step % 150) / 150));
            OperatingResult result = plan.Solve(OperatingPoint.At(speed, boost));
            rows.Add(RunRow.Of(
                step + 2,
                speed,
                time: Duration.FromSeconds(0.1 * step),
                manifoldAbsolute: result.Demand.ManifoldAbsolute,
                railGauge: result.RailGauge,
                injectorPulse: result.Pulse,
                lambda: step is > 100 and < 110 ? 1.05 : 0.82,
                batteryVoltage: Volts(13.5),
                power: result.Demand.BrakePower,
                fuelMassFlow: result.Demand.MassFlow));
        }

        RecordedRun run = RecordedRun.Of(Hostile, Atmosphere.Standard, rows);
        RunCheck check = RunCheck.Of(plan);
        return [run, RunFindings.Of(check, run), Calibration.Of(check, run)];
    }

    private sealed class Progress : IProgress<RunProgress>
    {
        public List<RunProgress> All { get; } = [];

        public void Report(RunProgress value) => All.Add(value);
    }

    // A tank that stays full and one that does not, with return to either, all given or nothing.
    private static IEnumerable<object> SurgeTanks(FuelSystem system, OperatingPoint peak, OperatingPoint calm)
    {
        Line hose = Line.Of(Hostile, Length.FromMillimeters(8), Length.FromMeters(2), Roughness.RubberHose);
        SurgeTank bare = SurgeTank.Of(Volume.FromLiters(1.2), Pump.From(Curve(40)), ReturnDestination.SurgeTank);
        SurgeTank whole = SurgeTank.Of(
            Volume.FromLiters(1.2), Pump.From(Curve(420)), ReturnDestination.MainTank, [hose], [hose], [hose], Kpa(80), Duration.FromSeconds(1.5));
        HeldBoost line = HeldBoost.Of(Kpa(58), Rpm(3400), Rpm(6600));
        foreach (FuelSystem fed in new[] { system.With(bare), system.With(whole) })
        {
            yield return fed;
            yield return fed.SurgeTank!;
            yield return fed.Solve(peak).SurgeTank!;
            yield return fed.UncoverPickup(peak);
            yield return fed.UncoverPickup(line, Rpm(3400), Rpm(6400));
            yield return fed.UncoverPickup(PickupPattern.Of(peak, Duration.FromSeconds(6), calm, Duration.FromSeconds(9), 3));
        }
    }

    // Idle, injecting, and with a hand-over of either kind.
    private static IEnumerable<object> Staged(FuelSystem system, OperatingPoint peak, OperatingPoint calm)
    {
        Ratio share = Ratio.FromPercent(40);
        foreach (HandOver handOver in new[] { HandOver.ByBoost(Pressure.FromBars(0.4), Pressure.FromBars(0.6), share, share), HandOver.ByDutyCycle(Ratio.FromPercent(50), share) })
        {
            FuelSystem two = system.With(StagedInjectors.Of(Big, handOver));
            yield return handOver;
            yield return two.StagedInjectors!;
            yield return two;
            yield return two.Solve(peak);
            yield return two.Solve(peak).SecondaryInjection!;
            yield return two.Solve(calm).SecondaryInjection!;
        }
    }

    // Held or free, with everything stated or nothing, flowing, not flowing, and not known.
    private static IEnumerable<object> SecondStreams(FuelSystem system, OperatingPoint peak, OperatingPoint calm)
    {
        StreamFluid half = StreamFluid.WithWaterByVolume(Fuel.Methanol, Ratio.FromPercent(50));
        SprayNozzles nozzles = SprayNozzles.Of(2, VolumeFlow.FromMillilitersPerMinute(210), Kpa(700), SprayNozzles.Water);
        yield return half;
        yield return StreamFluid.Of(Fuel.Methanol);
        yield return nozzles;
        yield return nozzles.WithMinimumDifferential(Kpa(90));
        SecondStream held = SecondStream.Of(Hostile, half, nozzles, Kpa(20), Kpa(850));
        SecondStream whole = SecondStream.Of(Hostile, half, nozzles, Kpa(20), Kpa(850), Pump.From(Curve(120)), Kpa(40))
            .WithTank(Volume.FromLiters(2), Duration.FromSeconds(90)).WithEvaporation(Ratio.FromPercent(10)).WithMainFuelTakenBack(Ratio.FromPercent(8));
        SecondStream unknown = SecondStream.Of(Hostile, StreamFluid.Of(Fuel.Methanol), nozzles, Kpa(20), Kpa(peak.Boost.Kilopascals + 60));
        foreach (FuelSystem with in new[] { system.With(held), system.With(whole), system.With(unknown) })
        {
            yield return with;
            yield return with.SecondStream!;
            yield return with.Solve(peak);
            yield return with.Solve(peak).SecondStream!;
            yield return with.Solve(calm).SecondStream!;
            yield return with.ConsumeStream([(peak, Duration.FromSeconds(30)), (calm, Duration.FromSeconds(10))]);
        }
    }

    // Walls or none, a temperature or the reason why there is none.
    private static IEnumerable<object> Warm(FuelSystem system, OperatingPoint peak, OperatingPoint calm)
    {
        TankHeat insulated = TankHeat.Of(Volume.FromLiters(33), Power.FromWatts(140));
        TankHeat whole = insulated
            .WithWalls(Area.FromSquareMeters(0.6), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(7))
            .WithAmbient(Temperature.FromDegreesCelsius(18))
            .WithSpecificHeat(SpecificEntropy.FromKilojoulesPerKilogramKelvin(2.2));
        PumpCurve known = PumpCurve.WithCurrent(
            Hostile, Volts(13.5), (Pressure.Zero, VolumeFlow.FromLitersPerHour(300), ElectricCurrent.FromAmperes(6)), (Kpa(900), VolumeFlow.Zero, ElectricCurrent.FromAmperes(15)));
        foreach (FuelSystem warmed in new[] { system, system.With(Pump.From(known)) })
        {
            foreach (TankHeat tank in new[] { insulated, whole })
            {
                yield return tank;
                yield return warmed.WarmTank(tank, calm, Duration.FromMinutes(8));
                yield return warmed.WarmTank(tank, peak, Duration.FromMinutes(200));
            }
        }
    }

    // Checks from a few numbers, with much assumed and with little.
    private static IEnumerable<object> FromFewNumbers()
    {
        QuickCheck check = QuickCheck.FromPower(Power.FromKilowatts(220), Fuel.E85, 4, VolumeFlow.FromMillilitersPerMinute(850), Kpa(300));
        foreach (QuickCheck each in new[] { check, check.With(Pump.From(Curve(300))).With(Big).WithSpeed(Rpm(6500)) })
        {
            yield return each;
            yield return each.Margins[0];
            foreach (Assumption assumed in each.Assumed)
            {
                yield return assumed;
            }
        }
    }

    private static InjectorSet Big => InjectorSet.Of(
        Injector.Of(
            Hostile,
            VolumeFlow.FromMillilitersPerMinute(700),
            Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Volts(8), Ms(2.2)), (Volts(16), Ms(0.7))),
            Ms(1.2),
            Kpa(600)),
        4);

    private static InjectorSet Small => InjectorSet.Of(
        Injector.Of(
            "small",
            VolumeFlow.FromMillilitersPerMinute(200),
            Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Volts(10), Ms(2.2)), (Volts(12), Ms(0.7))),
            Ms(1.2),
            Kpa(600)),
        4);

    private static PumpCurve Curve(double litresPerHour) => PumpCurve.WithCurrent(
        Hostile,
        Volts(13.5),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(litresPerHour), ElectricCurrent.FromAmperes(6)),
        (Kpa(900), VolumeFlow.Zero, ElectricCurrent.FromAmperes(16)));

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);

    private static Pressure Kpa(double pressure) => Pressure.FromKilopascals(pressure);

    private static ElectricPotential Volts(double voltage) => ElectricPotential.FromVolts(voltage);

    private static Duration Ms(double time) => Duration.FromMilliseconds(time);

    private static Temperature Celsius(double temperature) => Temperature.FromDegreesCelsius(temperature);

    // More by so many L/h at every pressure, and the same current: what a displacement pump does at more voltage.
    private static PumpCurve DriveCurve(double volts, double more) => PumpCurve.WithCurrent(
        "pump D",
        ElectricPotential.FromVolts(volts),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(143 + more), ElectricCurrent.FromAmperes(3.2)),
        (Pressure.FromKilopascals(190), VolumeFlow.FromLitersPerHour(112 + more), ElectricCurrent.FromAmperes(5.1)),
        (Pressure.FromKilopascals(370), VolumeFlow.FromLitersPerHour(77 + more), ElectricCurrent.FromAmperes(7)));
}
