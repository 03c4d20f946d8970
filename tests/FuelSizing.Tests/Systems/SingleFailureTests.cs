using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Which failures a car can have, and what each leaves: rails by the regulators' own figures at 50 kPa of boost, the rest as systems described anew.</summary>
public class SingleFailureTests
{
    private const double Boost = 50;

    private static readonly BoostLine Line = HeldBoost.Of(Wren.Kpa(Boost), Wren.Rpm(5000), Wren.Rpm(6000));

    private static readonly Pump P = Named("pump P", 900, 2000);

    private static readonly Pump Q = Named("pump Q", 700, 1900);

    private static readonly Pump R = Named("pump R", 800, 1800);

    /// <summary>One that follows the manifold sets 350 kPa, without its hose 300; stuck shut it holds nothing down, stuck open nobody knows.</summary>
    [Fact]
    public void Regulator_ThatFollowsTheManifold_LosesItsHoseOrSticks() => Same(
        Car(ManifoldReferenced.From(Wren.Kpa(300))), ("failure.hose", 300), ("failure.open", null), ("failure.shut", double.NaN), ("failure.alternator", 350));

    [Fact]
    public void Regulator_WithoutAHose_OnlySticks() => Same(
        Car(Fixed.At(Wren.Kpa(320))), ("failure.open", null), ("failure.shut", double.NaN), ("failure.alternator", 320));

    [Fact]
    public void RisingRate_WithoutItsHose_SetsItsBase() => Same(
        Car(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10))), ("failure.hose", 300), ("failure.open", null), ("failure.shut", double.NaN), ("failure.alternator", 300 + 10 + (4 * 40)));

    /// <summary>The base follows the manifold, 350 kPa; the unit sets 9 · 50 kPa. Either may fail, and the other then governs.</summary>
    [Fact]
    public void Pair_LosesAHoseOrSticks_AndTheOtherGoverns()
    {
        RisingRate unit = RisingRate.From(Pressure.Zero, 9, Pressure.Zero);
        Same(
            Car(RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), unit)),
            ("failure.unit-hose", 350), ("failure.unit-open", 350), ("failure.base-open", 450), ("failure.base-hose", 450), ("failure.shut", double.NaN), ("failure.alternator", 450));
        Same(
            Car(RegulatorSeries.Of(Fixed.At(Wren.Kpa(300)), RisingRate.From(Wren.Kpa(330), 3, Wren.Kpa(20)))),
            ("failure.unit-hose", 330), ("failure.unit-open", 300), ("failure.base-open", 330 + 20 + 90), ("failure.shut", double.NaN), ("failure.alternator", 440));

        // With the base's hose off and a unit that sets less than the base does without it.
        Same(
            Car(RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 4, Pressure.Zero))),
            ("failure.unit-hose", 350), ("failure.unit-open", 350), ("failure.base-open", 200), ("failure.base-hose", 300), ("failure.shut", double.NaN), ("failure.alternator", 350));
    }

    /// <summary>A pump that is held by its speed has no regulator to stand open; its sensor may lose its hose.</summary>
    [Fact]
    public void PumpControl_LosesItsHose_OrSlowsNothing()
    {
        FuelSystem Returnless(bool follows) => FuelSystem.Returnless(
            Wren.Demand(), Set(), ElectronicReturnless.Holding(Wren.Kpa(300), follows, Wren.Volt(7)), Pump.From(Wren.PumpOf(2))).With(Pulses);
        Same(Returnless(true), ("failure.hose", 300), ("failure.full-speed", double.NaN), ("failure.alternator", 350));
        Same(Returnless(false), ("failure.full-speed", double.NaN), ("failure.alternator", 300));
    }

    /// <summary>Shut, it stands 100 kPa over what the pumps give without flow, 2,000 kPa; only what does not compare with the set pressure is judged.</summary>
    [Fact]
    public void RegulatorStuckShut_HoldsNothingDown()
    {
        FuelSystem system = Car(ManifoldReferenced.From(Wren.Kpa(300)));
        FailureResult shut = Of(system).Single(failure => failure.Failure.Code == "failure.shut");
        Assert.Equal(2100, shut.Sweep!.System.Regulator.SetPascals(0) / 1e3, 1e-6);
        Assert.Equal(2100, shut.Sweep.System.Regulator.SetPascals(50e3) / 1e3, 1e-6);

        // 400 mL/min · 4 · 7.7 ms − 0.6 ms in 20 ms at 6,000 rev/min is little of 900 L/h: what is not injected does not return.
        OperatingResult fastest = shut.Sweep.Results[^1];
        Assert.Equal(RailState.Sagging, fastest.Mixture.RailState);
        Assert.InRange(shut.HighestRail!.Mixture.RailGauge.Kilopascals, 1700, 2000);
        Part[] compared = [Part.Injectors, Part.Pump, Part.PressureRating];
        Assert.NotEmpty(shut.Sweep.Standings);
        Assert.All(shut.Sweep.Standings, standing => Assert.DoesNotContain(standing.Part, compared));
        Assert.Contains(Of(system).Single(failure => failure.Failure.Code == "failure.hose").Sweep!.Standings, standing => compared.Contains(standing.Part));
    }

    public static TheoryData<int> Assemblies => [.. Enumerable.Range(0, WithDeadPumps.Length)];

    /// <summary>Each assembly, and what each of its pumps leaves when it is dead; of two of one description one fails, and the other is left.</summary>
    private static (PumpAssembly Pumps, (string Dead, PumpAssembly? Left)[] Expected)[] WithDeadPumps { get; } =
    [
        (P, []),
        (PumpParallel.Of(P, Q), [("pump P", Q), ("pump Q", P)]),
        (PumpParallel.Of(P, Q, R), [("pump P", PumpParallel.Of(Q, R)), ("pump Q", PumpParallel.Of(P, R)), ("pump R", PumpParallel.Of(P, Q))]),
        (Series(P, Q), [("pump P", Q), ("pump Q", P)]),
        (Series(P, PumpParallel.Of(Q, R)), [("pump P", PumpParallel.Of(Q, R)), ("pump Q", Series(P, R)), ("pump R", Series(P, Q))]),
        (PumpParallel.Of(P, Series(Q, R)), [("pump P", Series(Q, R)), ("pump Q", PumpParallel.Of(P, R)), ("pump R", PumpParallel.Of(P, Q))]),
        (Series(P, P), [("pump P", P)]),
        (Series(P, P, Q), [("pump P", Series(P, Q)), ("pump Q", Series(P, P))]),

        // What a dead pump lets through that others push fuel through is not known: without a check valve around it, alone or within a branch.
        (PumpSeries.Of(SeriesBypass.None, P, Q), [("pump P", null), ("pump Q", null)]),
        (Series(P, PumpSeries.Of(SeriesBypass.None, Q, R)), [("pump P", PumpSeries.Of(SeriesBypass.None, Q, R)), ("pump Q", null), ("pump R", null)]),
    ];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Pump_OfSeveral_LeavesTheOthers(int assembly)
    {
        (PumpAssembly pumps, (string Dead, PumpAssembly? Left)[] expected) = WithDeadPumps[assembly];
        FailureResult[] failures = [.. Of(Car(Fixed.At(Wren.Kpa(320)), pumps)).Where(failure => failure.Failure.Code == "failure.pump")];
        Assert.Equal(expected.Select(one => $"{one.Dead} dead, or its relay").Order(), failures.Select(failure => failure.Failure.ToString()).Order());
        foreach ((string dead, PumpAssembly? left) in expected)
        {
            Assert.Equal(left, failures.Single(failure => failure.Failure.ToString().StartsWith(dead, StringComparison.Ordinal)).Sweep?.System.Pump);
        }
    }

    [Fact]
    public void Failure_ThatIsNotKnown_SaysSo()
    {
        FailureResult unknown = Of(Car(Fixed.At(Wren.Kpa(320)), PumpSeries.Of(SeriesBypass.None, P, Q)))[0];
        Assert.Equal((true, true, true, true, 0), (unknown.Sweep is null, unknown.Leanest is null, unknown.LowestRail is null, unknown.HighestRail is null, unknown.NotKnown));
        Assert.Equal("pump P dead, or its relay: what then reaches the engine is not known", unknown.ToString());
        Refused.Missing("style", () => unknown.In(null!));
    }

    /// <summary>Half of a filter passes twice the flow for its area: twice its clogging. Each filter by itself, wherever it lies; lines stay.</summary>
    [Fact]
    public void Filter_OfEachLine_IsHalfBlockedByItself()
    {
        Filter Of(string name, double clogging) => Filter.Of(name, VolumeFlow.FromLitersPerHour(300), Wren.Kpa(8), clogging);
        Line hose = FuelSizing.Lines.Line.Of("hose", Length.FromMillimeters(9), Length.FromMeters(2), Roughness.RubberHose);
        FuelSystem system = Car(Fixed.At(Wren.Kpa(320))).With(Plumbing.Of([Of("S", 1.1), hose], [hose, Of("F", 1.2), Of("G", 1.3)], [hose, Of("R", 1.4)]));
        FailureResult[] failures = [.. SingleFailureTests.Of(system).Where(failure => failure.Failure.Code == "failure.filter")];
        Assert.Equal(["F half blocked", "G half blocked", "R half blocked", "S half blocked"], failures.Select(failure => failure.Failure.ToString()).Order());
        Dictionary<string, Plumbing> expected = new()
        {
            ["S half blocked"] = Plumbing.Of([Of("S", 2.2), hose], [hose, Of("F", 1.2), Of("G", 1.3)], [hose, Of("R", 1.4)]),
            ["F half blocked"] = Plumbing.Of([Of("S", 1.1), hose], [hose, Of("F", 2.4), Of("G", 1.3)], [hose, Of("R", 1.4)]),
            ["G half blocked"] = Plumbing.Of([Of("S", 1.1), hose], [hose, Of("F", 1.2), Of("G", 2.6)], [hose, Of("R", 1.4)]),
            ["R half blocked"] = Plumbing.Of([Of("S", 1.1), hose], [hose, Of("F", 1.2), Of("G", 1.3)], [hose, Of("R", 2.8)]),
        };
        Assert.All(failures, failure => Assert.Equal(expected[failure.Failure.ToString()], failure.Sweep!.System.Plumbing));
    }

    /// <summary>A dead alternator leaves the battery's 12 V, where there was more; the fuel stays as warm as it was.</summary>
    [Theory]
    [InlineData(12.1, true)]
    [InlineData(12.0, false)]
    [InlineData(11.0, false)]
    public void Alternator_OffLeavesTheBattery(double volts, bool expected)
    {
        Conditions conditions = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Temperature.FromDegreesCelsius(41));
        FailureResult? off = Car(Fixed.At(Wren.Kpa(320)), Pump.From(Wren.PumpOf(2))).WithEachFailure(Line, Wren.Rpm(5000), Wren.Rpm(6000), conditions)
            .SingleOrDefault(failure => failure.Failure.Code == "failure.alternator");
        Assert.Equal(expected, off is not null);
        Assert.All(off?.Sweep!.Results ?? [], result => Assert.Equal((12, 41), (result.Point.Conditions.SupplyVoltage.Volts, Math.Round(result.Point.Conditions.FuelTemperature.DegreesCelsius, 9))));
        Assert.Equal(expected ? "alternator off, 12.0 V" : null, off?.Failure.ToString());
    }

    /// <summary>
    /// The leanest comes first, and what is not known before it. With equal dead times lambda goes with 1/√Δp: 300 kPa across the injectors as it is,
    /// 250 kPa with the hose off.
    /// </summary>
    [Fact]
    public void Failures_AreInTheOrderOfTheirLambda()
    {
        FuelSystem system = Car(ManifoldReferenced.From(Wren.Kpa(300)), PumpSeries.Of(SeriesBypass.None, P, Q));
        IReadOnlyList<FailureResult> failures = Of(system);
        Assert.Equal(
            ["failure.pump", "failure.pump", "failure.open", "failure.hose", "failure.alternator", "failure.shut"],
            failures.Select(failure => failure.Failure.Code));
        double whole = system.Pull(Line, Wren.Rpm(5000), Wren.Rpm(6000), Wren.Hill).Leanest!.Mixture.MaximumLambda!.Value;
        Assert.Equal(whole * Math.Sqrt(300.0 / 250), failures[3].Leanest!.Mixture.MaximumLambda!.Value, 1e-6);
        Assert.True(failures[3].Leanest!.Mixture.MaximumLambda > failures[4].Leanest!.Mixture.MaximumLambda);
    }

    /// <summary>Thirteen speeds are shown, 83⅓ rev/min apart: before pulses that were recorded from 5,300 on four of them have no lambda.</summary>
    [Fact]
    public void Failure_WhoseMixtureIsKnownInPart_CountsTheRest()
    {
        IReadOnlyList<FailureResult> failures = Of(Car(Fixed.At(Wren.Kpa(320)))
            .With(RecordedPulseController.BySpeed((Wren.Rpm(5300), Wren.Ms(7.7)), (Wren.Rpm(6100), Wren.Ms(7.7)))));
        FailureResult failure = failures.Single(of => of.Failure.Code == "failure.alternator");
        Assert.Equal((4, 13), (failure.NotKnown, failure.Sweep!.Results.Count));
        Assert.InRange(failure.Leanest!.Point.Speed.RevolutionsPerMinute, 5300, 6000);
        Assert.EndsWith(", rail 320 kPa; not known at 4 of 13 points, where it may be leaner", failure.ToString(), StringComparison.Ordinal);

        IReadOnlyList<FailureResult> nowhere = Of(Car(Fixed.At(Wren.Kpa(320)))
            .With(RecordedPulseController.BySpeed((Wren.Rpm(6100), Wren.Ms(7.7)), (Wren.Rpm(6500), Wren.Ms(7.7)))));
        Assert.All(nowhere, of => Assert.Null(of.Leanest));
        Assert.Equal(13, nowhere.Single(of => of.Failure.Code == "failure.alternator").NotKnown);
    }

    /// <summary>A rail over the rating of the hoses is told; one at the rating is not.</summary>
    [Fact]
    public void Failure_OverTheRating_SaysSo()
    {
        FuelSystem system = Car(RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Pressure.Zero, 9, Pressure.Zero)));
        string Words(double rating) => Of(system.With(SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(rating))))
            .Single(failure => failure.Failure.Code == "failure.base-open").ToString();
        Assert.EndsWith("rail 450 kPa; rail up to 450 kPa, over the rating of 440 kPa", Words(440), StringComparison.Ordinal);
        Assert.EndsWith(", rail 450 kPa", Words(460), StringComparison.Ordinal);
        Assert.StartsWith("base regulator stuck open: lambda ", Words(460), StringComparison.Ordinal);
    }

    [Fact]
    public void Question_WithAPieceMissing_IsRefusedByName()
    {
        FuelSystem system = Wren.System();
        Refused.Missing("system", () => SingleFailures.WithEachFailure(null!, Line, Wren.Rpm(5000), Wren.Rpm(6000), Wren.Hill));
        Refused.Missing("line", () => system.WithEachFailure(null!, Wren.Rpm(5000), Wren.Rpm(6000), Wren.Hill));
        Refused.Missing("conditions", () => system.WithEachFailure(Line, Wren.Rpm(5000), Wren.Rpm(6000), null!));
        Refused.Missing("system", () => LineSweep.Sweep(null!, Line, [Wren.Rpm(5000), Wren.Rpm(6000)]));
        Refused.Missing("line", () => system.Sweep(null!, [Wren.Rpm(5000), Wren.Rpm(6000)]));
        Refused.Missing("speeds", () => system.Sweep(Line, null!));
        Refused.OutOfRange("speeds", () => system.Sweep(Line, [Wren.Rpm(5000)]));
        Refused.OutOfRange("speeds", () => system.Sweep(Line, [Wren.Rpm(6000), Wren.Rpm(5000)]));
    }

    private static RecordedPulseController Pulses { get; } = RecordedPulseController.BySpeed((Wren.Rpm(4900), Wren.Ms(7.7)), (Wren.Rpm(6100), Wren.Ms(7.7)));

    private static InjectorSet Set() => InjectorSet.Of(
        Injector.Of(
            "injector A",
            VolumeFlow.FromMillilitersPerMinute(400),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1.1)), (Wren.Volt(16), Wren.Ms(0.6))),
            Wren.Ms(1.6),
            Wren.Kpa(2000)).WithMinimumDifferential(Wren.Kpa(50)),
        4);

    private static FuelSystem Car(PressureRegulator regulator, PumpAssembly? pump = null) =>
        FuelSystem.Return(Wren.Demand(), Set(), regulator, pump ?? P).With(Pulses);

    private static Pump Named(string name, double litresPerHour, double deadhead) => Pump.From(PumpCurve.At(
        name,
        Wren.Volt(13.5),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(litresPerHour)),
        (Wren.Kpa(deadhead), VolumeFlow.Zero)));

    private static IReadOnlyList<FailureResult> Of(FuelSystem system) => system.WithEachFailure(Line, Wren.Rpm(5000), Wren.Rpm(6000), Wren.Hill);

    /// <summary>These failures and no others, with these rails, kPa, at every speed: none where nothing is known, not a number where this does not say.</summary>
    private static void Same(FuelSystem system, params (string Code, double? Rail)[] expected)
    {
        IReadOnlyList<FailureResult> failures = Of(system);
        Assert.Equal(expected.Select(one => one.Code).Order(), failures.Select(failure => failure.Failure.Code).Order());
        foreach ((string code, double? rail) in expected)
        {
            FailureResult failure = failures.Single(of => of.Failure.Code == code);
            Assert.Equal(rail is null, failure.Sweep is null);
            if (rail is { } kilopascals && double.IsFinite(kilopascals))
            {
                Assert.All(failure.Sweep!.Results, result => Assert.Equal(kilopascals, result.Mixture.RailGauge.Kilopascals, 1e-6));
                Assert.Equal((kilopascals, kilopascals), (Math.Round(failure.LowestRail!.Mixture.RailGauge.Kilopascals, 6), Math.Round(failure.HighestRail!.Mixture.RailGauge.Kilopascals, 6)));
            }
        }
    }

    private static PumpSeries Series(params PumpAssembly[] stages) => PumpSeries.Of(SeriesBypass.CheckValve, stages);
}
