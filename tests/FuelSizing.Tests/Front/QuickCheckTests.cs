using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Front;

/// <summary>A check from a few numbers: what it assumes is on the safe side, or is named, and described parts take its place up to the full model.</summary>
public class QuickCheckTests
{
    private static readonly RotationalSpeed Speed = Wren.Rpm(6800);
    private static readonly Pressure Boost = Pressure.FromBars(0.6);
    private static readonly SizingLimits Limits = SizingLimits.Of(Wren.Percent(80), Wren.Percent(15));
    private static readonly Plumbing Lines = Plumbing.Of(supply: [Line.Of("supply", Length.FromMillimeters(7.5), Length.FromMeters(3), Length.FromMillimeters(0.0015))]);
    private static readonly EngineController Controller = SpeedDensityController.Of(ControllerData.Of(Wren.InjectorOf(360), Fuel.Petrol, TargetLambda.At(0.82)), Wren.VolumetricEfficiency, Wren.Kpa(300));

    /// <summary>Each refinement with the parts of the whole system; between them they describe all of it.</summary>
    private static readonly (string Name, Func<QuickCheck, QuickCheck> Give)[] Refinements =
    [
        ("demand", check => check.With(Wren.Demand(), Speed, Boost)),
        ("injectors", check => check.With(InjectorSet.Of(Wren.InjectorOf(360), 4))),
        ("regulator", check => check.With(ManifoldReferenced.From(Wren.Kpa(300)))),
        ("pump", check => check.With(Pump.From(Wren.Pump))),
        ("limits", check => check.With(Limits)),
        ("conditions", check => check.With(Wren.Hill)),
        ("lines", check => check.With(Lines)),
        ("controller", check => check.With(Controller)),
    ];

    private static FuelSystem Whole { get; } = FuelSystem.Return(
        Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(360), 4), ManifoldReferenced.From(Wren.Kpa(300)), Pump.From(Wren.Pump), Limits, Lines).With(Controller);

    private static Engine Engine => Wren.Engine;

    [Fact]
    public void Refined_InAnyOrder_IsTheFullModelToTheLastBit() => Gen.Select(Gen.Int[0, int.MaxValue], Gen.Bool).Sample((seed, fromPower) =>
    {
        (string Name, Func<QuickCheck, QuickCheck> Give)[] order = [.. Refinements];
        new Random(seed).Shuffle(order);
        QuickCheck check = fromPower ? FromPower(220, 850) : FromEngine(0.9, 700);
        foreach ((string name, Func<QuickCheck, QuickCheck> give) in order)
        {
            QuickCheck next = give(check);
            Assert.True(next.Assumed.Count < check.Assumed.Count, $"{name} leaves as much assumed as before: {string.Join("; ", next.Assumed)}");
            Assert.Empty(next.Assumed.Select(each => each.Code).Except(check.Assumed.Select(each => each.Code)).Except(["speed", "boost", "charge"]));
            check = next;
        }

        Assert.Empty(check.Assumed);
        Same(Whole.Solve(Wren.At(6800, 0.6)), check);
    });

    /// <summary>A part that is given twice counts as it was given last, and a fuel or an engine that is given after the demand changes that.</summary>
    [Fact]
    public void Refined_Again_CountsTheLast()
    {
        QuickCheck check = Refinements.Aggregate(FromPower(220, 850), (each, refinement) => refinement.Give(each));
        Same(Whole.With(Fuel.E85).Solve(Wren.At(6800, 0.6)), check.With(Fuel.E85));
        Same(Whole.With(InjectorSet.Of(Wren.InjectorOf(500), 4)).Solve(Wren.At(6800, 0.6)), check.With(Wren.InjectorOf(500)));
        Same(Whole.Solve(Wren.At(6500, 0.5)), check.WithSpeed(Wren.Rpm(6500)).WithBoost(Pressure.FromBars(0.5)));
        Engine larger = Engine.Of("larger", Volume.FromLiters(2.6), 4, EngineCycle.FourStroke, Wren.Rpm(7200));
        Same(Whole.With(Wren.Demand().With(larger)).Solve(Wren.At(6800, 0.6)), check.With(larger));
        FuelConsumption leaner = FuelConsumption.Of(Fuel.Petrol, 0.88, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(300));
        Same(Whole.With(Wren.Demand(leaner)).Solve(Wren.At(6800, 0.6)), check.With(leaner));
    }

    /// <summary>A returnless system with a fixed regulator is the described one too.</summary>
    [Fact]
    public void Refined_ToAReturnlessSystem_IsIt()
    {
        InjectorSet injectors = InjectorSet.Of(Wren.InjectorOf(700), 4);
        FuelSystem system = FuelSystem.Returnless(Wren.Demand(), injectors, Fixed.At(Wren.Kpa(400)), Pump.From(Wren.Pump));
        QuickCheck check = FromPower(220, 850)
            .WithReturnless(Fixed.At(Wren.Kpa(400)))
            .With(Wren.Demand(), Speed, Boost)
            .With(Pump.From(Wren.Pump))
            .With(injectors)
            .With(Wren.Hill);
        Same(system.Solve(Wren.At(6800, 0.6)), check);
        Assert.Equal(["limits", "lines", "controller"], check.Assumed.Select(each => each.Code));
    }

    /// <summary>
    /// Whatever described values within the ranges take the place of the assumed ones, what held still does and what failed still does: the ends of
    /// the ranges are the worst and the best for the injectors.
    /// </summary>
    [Fact]
    public void Verdict_FromPower_IsNotOverturnedByAnyValueWithinTheRanges()
    {
        int[] decided = [0, 0];
        Gen.Select(Gen.Double[20, 900], Gen.Double[0.15, 2.2], Gen.Double[0, 1].Array[13], Gen.OneOfConst(Fuel.Petrol, Fuel.E10, Fuel.E85, Fuel.Methanol), Gen.Bool).Sample(
            (kilowatts, scale, within, fuel, sequential) =>
            {
                VolumeFlow flow = Clamped(kilowatts * scale * 3);
                QuickCheck check = QuickCheck.FromPower(Power.FromKilowatts(kilowatts), fuel, 4, flow, Wren.Kpa(300));
                double Between(int at, double one, double other) => one + ((other - one) * within[at]);

                FuelConsumption consumption = FuelConsumption.Of(
                    Fuel.Petrol, Between(0, 0.78, 0.9), BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(Between(1, 275, 395))).With(fuel);
                QuickCheck described = check
                    .With(consumption)
                    .WithSpeed(Wren.Rpm(Between(2, 5000, 9000)))
                    .WithBoost(Wren.Kpa(Between(3, 0, 200)))
                    .With(InjectorSet.Of(InjectorWithin(flow, within), 4, sequential ? 1 : 2))
                    .With(ManifoldReferenced.From(Wren.Kpa(Between(4, 250, 400))))
                    .With(ConditionsWithin(within));

                NotOverturned(check, described, decided);
            },
            iter: 400);
        Decided(decided, 400);
    }

    [Fact]
    public void Verdict_FromEngine_IsNotOverturnedByAnyValueWithinTheRanges()
    {
        int[] decided = [0, 0];
        Gen.Select(Gen.Double[0, 1.5], Gen.Double[0.02, 1.1], Gen.Double[0, 1].Array[13], Gen.OneOfConst(Fuel.Petrol, Fuel.E85), Gen.Bool).Sample(
            (boost, scale, within, fuel, twoStroke) =>
            {
                double Between(int at, double one, double other) => one + ((other - one) * within[at]);
                Engine engine = Engine.Of("engine", Volume.FromLiters(2), 4, twoStroke ? EngineCycle.TwoStroke : EngineCycle.FourStroke, Wren.Rpm(7000));
                VolumeFlow flow = Clamped(900 * (1 + boost) * scale * (twoStroke ? 2 : 1));
                QuickCheck check = QuickCheck.FromEngine(engine, Pressure.FromBars(boost), fuel, 4, flow, Wren.Kpa(300));

                Ratio efficiency = Wren.Percent(Between(0, 75, 110));
                Power any = Power.FromKilowatts(100);
                FuelDemandModel demand = FuelDemandModel.Of(
                    engine,
                    Induction.Turbocharged(Wren.Percent(Between(1, 60, 80)), Wren.Percent(Between(2, 0, 90)), Wren.Kpa(boost > 0 ? Between(3, 0, 10) : 0)),
                    VolumetricEfficiency.Of((Wren.Rpm(1000), efficiency), (Wren.Rpm(7000), efficiency)),
                    PowerCurve.AtCrank(Atmosphere.Standard, (Wren.Rpm(1000), any), (Wren.Rpm(7000), any)),
                    Wren.Percent(100),
                    FuelConsumption.Of(Fuel.Petrol, Between(5, 0.78, 0.9), BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(320)).With(fuel),
                    DemandBasis.Air);
                QuickCheck described = check
                    .With(demand, Wren.Rpm(7000), Pressure.FromBars(boost))
                    .With(InjectorSet.Of(InjectorWithin(flow, within), 4))
                    .With(ManifoldReferenced.From(Wren.Kpa(Between(4, 250, 400))))
                    .With(ConditionsWithin(within));

                NotOverturned(check, described, decided);
            },
            iter: 400);
        Decided(decided, 400);
    }

    /// <summary>The same of a pump, whose worst base pressure and boost are the injectors' best.</summary>
    [Fact]
    public void Verdict_OfThePump_IsNotOverturnedByAnyValueWithinTheRanges()
    {
        int[] decided = [0, 0];
        Gen.Select(Gen.Double[50, 700], Gen.Double[0.1, 3], Gen.Double[0, 1].Array[13], Gen.Bool).Sample(
            (kilowatts, pump, within, sequential) =>
            {
                double Between(int at, double one, double other) => one + ((other - one) * within[at]);
                VolumeFlow flow = Clamped(kilowatts * 6);
                QuickCheck check = QuickCheck.FromPower(Power.FromKilowatts(kilowatts), Fuel.Petrol, 4, flow, Wren.Kpa(300)).With(Pump.From(Wren.PumpOf(pump)));
                QuickCheck described = check
                    .With(FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(Between(1, 275, 395))))
                    .WithSpeed(Wren.Rpm(Between(2, 5000, 9000)))
                    .WithBoost(Wren.Kpa(Between(3, 0, 200)))
                    .With(InjectorSet.Of(InjectorWithin(flow, within), 4, sequential ? 1 : 2))
                    .With(ManifoldReferenced.From(Wren.Kpa(Between(4, 250, 400))))
                    .With(ConditionsWithin(within));

                NotOverturned(check, described, decided, Part.Pump);
                NotOverturned(check, described, [0, 0]);
            },
            iter: 400);
        Decided(decided, 400);
    }

    /// <summary>0.4 kg/kWh of 100 kW is 40 kg/h; the assumed 395 g/kWh of 220 kW 24.14 g/s, and on E85 that times the ratio of the heating values.</summary>
    [Fact]
    public void Fuel_FromPower_IsPowerTimesConsumption()
    {
        QuickCheck own = FromPower(100, 500).With(FuelConsumption.Of(Fuel.Petrol, 0.85, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(400)));
        Assert.Equal(40, own.WorstCase.Demand.MassFlow.KilogramsPerHour, 1e-10);
        Assert.Equal(40, own.BestCase.Demand.MassFlow.KilogramsPerHour, 1e-10);
        Assert.Equal(100, (double)own.WorstCase.Demand.BrakePower.Kilowatts, 1e-10);

        double petrol = 220 * 395 / 3600.0;
        Assert.Equal(petrol, FromPower(220, 850).WorstCase.Demand.MassFlow.GramsPerSecond, 1e-10);
        QuickCheck ethanol = FromPower(220, 850).With(Fuel.E85);
        Assert.Equal(
            petrol * Fuel.Petrol.LowerHeatingValue.MegajoulesPerKilogram / Fuel.E85.LowerHeatingValue.MegajoulesPerKilogram,
            ethanol.WorstCase.Demand.MassFlow.GramsPerSecond,
            1e-10);
        Assert.Contains("E85, by heating value from petrol's", ethanol.Assumed.Single(each => each.Code == "bsfc").ToString(), StringComparison.Ordinal);
    }

    /// <summary>Worked by hand: 110 % of 103 kPa and 0 °C in 2.4 L at 7,200 rev/min, 14.6 as the stoichiometric ratio to a tenth, lambda 0.78.</summary>
    [Fact]
    public void Fuel_FromEngine_IsThatOfTheDensestAirAtTheSpeedLimit()
    {
        double air = 1.10 * 103e3 / (287.05287 * 273.15) * 2.4e-3 * 7200 / 120;
        QuickCheck check = FromEngine(0, 850);
        Assert.Equal(air, check.WorstCase.Demand.AirMassFlow.KilogramsPerSecond, 1e-6);
        Assert.Equal(air / (0.78 * 14.6), check.WorstCase.Demand.MassFlow.KilogramsPerSecond, air / (0.78 * 14.6) * 0.004);
        Assert.Equal("the speed limit, 7,200 rev/min", check.Assumed.Single(each => each.Code == "speed").Worst.ToString());
    }

    /// <summary>Of power and air one is known; the other, which a result shows too, does not contradict it.</summary>
    [Fact]
    public void Estimates_OfAssumedDemand_AgreeSoThatNoNoteSaysOtherwise()
    {
        foreach (QuickCheck check in new[] { FromPower(220, 850), FromPower(220, 850).With(Engine), FromEngine(0.9, 700), FromPower(220, 850).With(Fuel.Methanol) })
        {
            Assert.Equal(0, check.WorstCase.Demand.Difference.DecimalFractions, 1e-9);
            Assert.DoesNotContain(check.WorstCase.Notes, note => note.Code == "demand.estimates-differ");
        }
    }

    [Fact]
    public void Margins_OfWhatIsNotKnown_AreNotJudgedAndNamed()
    {
        QuickCheck check = FromPower(100, 850);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, check.Verdict.Outcome);
        Assert.Equal([Part.Injectors], check.Margins.Select(range => range.Part));
        foreach (Part part in new[] { Part.Pump, Part.MinimumPulse, Part.OpeningPressure, Part.Mixture, Part.SupplyLine, Part.PressureRating })
        {
            Assert.Contains(check.Verdict.NotJudged, open => open.Part == part && open.Waiver is null);
        }

        Assert.Contains(check.Verdict.NotJudged, open => open.Part.Code == "rail-pressure");
        Assert.Contains("pump;", check.Verdict.ToString(), StringComparison.Ordinal);
        Assert.All(check.Assumed, each => Assert.Contains("common practice, no source", each.ToString(), StringComparison.Ordinal));

        QuickCheck pumped = check.With(Pump.From(Wren.PumpOf(2)));
        Assert.Equal([Part.Injectors, Part.Pump], pumped.Margins.Select(range => range.Part).OrderBy(part => part.Code));
        Assert.DoesNotContain(pumped.With(ManifoldReferenced.From(Wren.Kpa(300))).Verdict.NotJudged, open => open.Part.Code == "rail-pressure");
    }

    [Fact]
    public void Injectors_FarTooSmallOrLarge_FailOrHoldWhateverIsAssumed()
    {
        QuickCheck small = FromPower(220, 150);
        Assert.Equal(Outcome.Fails, small.Verdict.Outcome);
        Assert.StartsWith("Does not hold over the whole ranges of the 11 values that are assumed: injectors: duty cycle", small.Verdict.ToString(), StringComparison.Ordinal);
        QuickCheck open = FromPower(220, 500);
        Assert.Equal(Outcome.CannotSay, open.Verdict.Outcome);
        Assert.StartsWith("Cannot be judged with what is assumed: injectors: at worst duty cycle", open.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, FromPower(220, 2000).Verdict.Outcome);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, FromPower(1, 10_000).Verdict.Outcome);
        Assert.Equal(Outcome.Fails, QuickCheck.FromPower(Power.FromKilowatts(1000), Fuel.Methanol, 1, VolumeFlow.FromMillilitersPerMinute(10_000), Wren.Kpa(300)).Verdict.Outcome);
    }

    [Fact]
    public void Check_WithoutBoost_IsOfAnEngineWithoutCompressor()
    {
        QuickCheck check = FromEngine(0, 900);
        Assert.DoesNotContain(check.Assumed, each => each.Code == "charge");
        Assert.Equal(CompressorDrive.None, check.System.Demand.Induction.Drive);
        Assert.Contains(FromEngine(0.6, 900).Assumed, each => each.Code == "charge");
        Assert.Equal(Outcome.HoldsAsFarAsJudged, FromPower(80, 850).WithBoost(Pressure.Zero).Verdict.Outcome);
    }

    [Fact]
    public void Units_OfAnotherCountry_GiveTheSame()
    {
        QuickCheck one = QuickCheck.FromPower(Power.FromMechanicalHorsepower(295), Fuel.Petrol, 4, VolumeFlow.FromMillilitersPerMinute(850), Pressure.FromPoundsForcePerSquareInch(43.5));
        QuickCheck other = QuickCheck.FromPower(
            Power.FromWatts((double)Power.FromMechanicalHorsepower(295).Watts),
            Fuel.Petrol,
            4,
            VolumeFlow.FromCubicMetersPerSecond(850e-6 / 60),
            Pressure.FromKilopascals(43.5 * 6.894757293168361));
        Assert.Equal(one.Margins[0].Worst.Reserve!.Value.DecimalFractions, other.Margins[0].Worst.Reserve!.Value.DecimalFractions, 1e-9);
        Assert.Contains("psi", one.Assumed.Single(each => each.Code == "regulator").In(TextStyle.UsCustomary), StringComparison.Ordinal);
        Assert.Contains("°F", one.Assumed.Single(each => each.Code == "air").In(TextStyle.UsCustomary), StringComparison.Ordinal);
    }

    /// <summary>A two-stroke of the same size draws its air in every turn, and its cycle is one: fuel twice, in the same time.</summary>
    [Fact]
    public void TwoStroke_OfTheSameSize_AsksTwice()
    {
        Engine two = Engine.Of("two-stroke", Engine.Displacement, 4, EngineCycle.TwoStroke, Engine.SpeedLimit);
        QuickCheck four = FromEngine(0.6, 2000);
        QuickCheck check = four.With(two);
        Assert.Equal(2 * four.WorstCase.Demand.MassFlow.GramsPerSecond, check.WorstCase.Demand.MassFlow.GramsPerSecond, 1e-9);
        Assert.Equal(1, check.System.Injectors.InjectionsPerCycle);
        Assert.Equal(four.WorstCase.AvailableTime.Milliseconds, check.WorstCase.AvailableTime.Milliseconds, 1e-12);
    }

    [Fact]
    public void Fuel_WithoutViscosity_IsJudgedUntilLinesNeedIt()
    {
        Fuel bare = Fuel.Of(
            "bare",
            ElementalComposition.OfAtomRatios(1.9),
            SpecificEnergy.FromMegajoulesPerKilogram(43),
            Density.FromKilogramsPerCubicMeter(750),
            CoefficientOfThermalExpansion.FromPerKelvin(1.2e-3));
        QuickCheck check = FromPower(100, 850).With(bare).With(Pump.From(Wren.Pump)).With(Wren.Hill);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, check.Verdict.Outcome);
        Assert.Contains("viscosity", Assert.Throws<ArgumentException>(() => check.With(Lines)).Message, StringComparison.Ordinal);
    }

    /// <summary>Over a boost that is not known, what does not follow it one for one may be worse in between than at both ends.</summary>
    [Fact]
    public void Boost_ThatIsNotKnown_LeavesARegulatorOrASwitchUnjudged()
    {
        QuickCheck check = FromPower(60, 2000);
        foreach (PressureRegulator regulator in new PressureRegulator[] { Fixed.At(Wren.Kpa(300)), RisingRate.From(Wren.Kpa(300), 6, Wren.Kpa(10)) })
        {
            Assert.Equal(Outcome.CannotSay, check.With(regulator).Verdict.Outcome);
            Assert.Equal("check.unknown", check.With(regulator).Verdict.Headline.Code);
            Assert.Equal(Outcome.HoldsAsFarAsJudged, check.With(regulator).WithBoost(Boost).Verdict.Outcome);
        }
    }

    [Fact]
    public void Limits_ThatAreMilder_MakeNothingWorse() => Gen.Select(Gen.Double[100, 2000], Gen.Double[85, 100], Gen.Double[0, 10]).Sample((flow, duty, reserve) =>
    {
        QuickCheck check = FromPower(220, flow).With(Pump.From(Wren.PumpOf(1.3)));
        QuickCheck milder = check.With(SizingLimits.Of(Wren.Percent(duty), Wren.Percent(reserve)));
        Assert.True(Badness(milder.Verdict.Outcome) <= Badness(check.Verdict.Outcome));
    });

    private static QuickCheck FromPower(double kilowatts, double flow) =>
        QuickCheck.FromPower(Power.FromKilowatts(kilowatts), Fuel.Petrol, 4, VolumeFlow.FromMillilitersPerMinute(flow), Wren.Kpa(300));

    private static QuickCheck FromEngine(double boost, double flow) =>
        QuickCheck.FromEngine(Engine, Pressure.FromBars(boost), Fuel.Petrol, 4, VolumeFlow.FromMillilitersPerMinute(flow), Wren.Kpa(300));

    private static VolumeFlow Clamped(double millilitres) => VolumeFlow.FromMillilitersPerMinute(Math.Clamp(millilitres, 20, 10_000));

    // Dead times of any shape between the two tables, and any liquid between the two.
    private static Injector InjectorWithin(VolumeFlow flow, double[] within) => Injector.Of(
        "described",
        flow,
        Wren.Kpa(300),
        TestFluid.Of("liquid", Density.FromKilogramsPerCubicMeter(683.8 + ((780 - 683.8) * within[6]))),
        DeadTimeTable.ByVoltage(
            (Wren.Volt(8), Wren.Ms(1.5 + (2 * within[7]))), (Wren.Volt(14), Wren.Ms(0.5 + within[7])), (Wren.Volt(16), Wren.Ms(0.4 + (0.9 * within[7])))),
        Wren.Ms(2),
        Wren.Kpa(600));

    private static Conditions ConditionsWithin(double[] within) => Conditions.Of(
        Atmosphere.Of(Wren.Kpa(95 + (8 * within[8])), Temperature.FromDegreesCelsius(40 * within[9])),
        Wren.Volt(13.5 + (0.9 * within[10])),
        Temperature.FromDegreesCelsius(20 + (40 * within[11])));

    // A law about what is decided says nothing where too little is.
    private static void Decided(int[] decided, int cases) => Assert.All(decided, count => Assert.InRange(count, cases / 20, cases));

    private static void NotOverturned(QuickCheck check, QuickCheck described, int[] decided, Part? part = null)
    {
        Outcome before = OutcomeOf(check, part);
        Outcome after = OutcomeOf(described, part);
        if (before != Outcome.CannotSay)
        {
            Interlocked.Increment(ref decided[before == Outcome.Fails ? 0 : 1]);
            Assert.True(before == after, $"{before} became {after}: {check.Verdict}; {described.Verdict}; {string.Join("; ", described.Margins)}");
        }
    }

    private static Outcome OutcomeOf(QuickCheck check, Part? part) =>
        part is null ? check.Verdict.Outcome : check.Margins.Single(range => range.Part == part).Outcome;

    private static int Badness(Outcome outcome) => outcome switch { Outcome.Fails => 2, Outcome.CannotSay => 1, _ => 0 };

    private static void Same(OperatingResult solved, QuickCheck check)
    {
        Assert.Equal(solved.System, check.System);
        Assert.Equal(solved.Point, check.Point);
        Assert.Same(check.WorstCase, check.BestCase);
        Assert.Equal(solved.Outcome, check.Verdict.Outcome);
        Assert.Equal(solved.NotJudged.Select(open => open.ToString()), check.Verdict.NotJudged.Select(open => open.ToString()));
        Assert.Equal(solved.Margins.Select(Bits), check.WorstCase.Margins.Select(Bits));
        Assert.Equal(solved.Margins.Select(Bits).Order(), check.Margins.Select(range => Bits(range.Worst)).Order());
        Assert.Equal(Bits(solved.Demand.MassFlow.KilogramsPerSecond), Bits(check.WorstCase.Demand.MassFlow.KilogramsPerSecond));
        Assert.Equal(Bits(solved.Pulse!.Value.Seconds), Bits(check.WorstCase.Pulse!.Value.Seconds));
        Assert.Equal(Bits(solved.RailGauge.Pascals), Bits(check.WorstCase.RailGauge.Pascals));
        Assert.Equal(solved.Notes, check.WorstCase.Notes);
    }

    private static string Bits(Margin margin) => $"{margin.Part.Code} {margin.Outcome} {Bits(margin.Reading.Used.Value)} {Bits(margin.Reading.Allowed.Value)} {Bits(margin.Share ?? 0)}";

    private static long Bits(double number) => BitConverter.DoubleToInt64Bits(number);
}
