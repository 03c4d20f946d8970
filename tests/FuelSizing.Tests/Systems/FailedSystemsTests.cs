using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>The system that each single failure leaves, against that system described anew: before anything is solved.</summary>
public class FailedSystemsTests
{
    private static readonly Pump P = Named("pump P", 900, 2000);

    private static readonly Pump Q = Named("pump Q", 700, 1900);

    private static readonly Pump R = Named("pump R", 800, 1800);

    public static TheoryData<int> Assemblies => [.. Enumerable.Range(0, WithDeadPumps.Length)];

    /// <summary>Each assembly, and what each of its pumps leaves when it is dead; none where nobody knows what that lets through.</summary>
    private static (PumpAssembly Pumps, (string Dead, PumpAssembly? Left)[] Expected)[] WithDeadPumps { get; } =
    [
        (P, []),
        (PumpParallel.Of(P, Q), [("pump P", Q), ("pump Q", P)]),
        (PumpParallel.Of(P, Q, R), [("pump P", PumpParallel.Of(Q, R)), ("pump Q", PumpParallel.Of(P, R)), ("pump R", PumpParallel.Of(P, Q))]),
        (Series(P, Q, R), [("pump P", Series(Q, R)), ("pump Q", Series(P, R)), ("pump R", Series(P, Q))]),
        (Series(P, PumpParallel.Of(Q, R)), [("pump P", PumpParallel.Of(Q, R)), ("pump Q", Series(P, R)), ("pump R", Series(P, Q))]),
        (PumpParallel.Of(P, Series(Q, R)), [("pump P", Series(Q, R)), ("pump Q", PumpParallel.Of(P, R)), ("pump R", PumpParallel.Of(P, Q))]),
        (Series(P, P, Q), [("pump P", Series(P, Q)), ("pump Q", Series(P, P))]),
        (PumpSeries.Of(SeriesBypass.None, P, Q), [("pump P", null), ("pump Q", null)]),
        (Series(P, PumpSeries.Of(SeriesBypass.None, Q, R)), [("pump P", PumpSeries.Of(SeriesBypass.None, Q, R)), ("pump Q", null), ("pump R", null)]),

        // A branch goes with the pump in it; one around several goes on with the rest.
        (PumpParallel.Of(PumpBranch.Of(P, [Strainer("S")]), Q), [("pump P", Q), ("pump Q", PumpBranch.Of(P, [Strainer("S")]))]),
        (PumpBranch.Of(PumpParallel.Of(P, Q), [Strainer("S")]), [("pump P", PumpBranch.Of(Q, [Strainer("S")])), ("pump Q", PumpBranch.Of(P, [Strainer("S")]))]),
        (PumpBranch.Of(PumpSeries.Of(SeriesBypass.None, P, Q), [Strainer("S")]), [("pump P", null), ("pump Q", null)]),

        // So does a switched pump.
        (PumpParallel.Of(P, Switched(Q)), [("pump P", Switched(Q)), ("pump Q", P)]),
        (PumpParallel.Of(P, PumpBranch.Of(Switched(Q), [Strainer("S")])), [("pump P", PumpBranch.Of(Switched(Q), [Strainer("S")])), ("pump Q", P)]),
    ];

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void Pump_ThatIsDead_LeavesTheOthers(int assembly)
    {
        (PumpAssembly pumps, (string Dead, PumpAssembly? Left)[] expected) = WithDeadPumps[assembly];
        Assert.Equal(
            expected.Select(one => ($"{one.Dead} dead, or its relay", one.Left)),
            Of(Wren.System().With(pumps), "failure.pump").Select(failure => (failure.Text.ToString(), failure.System?.Pump)));
    }

    /// <summary>Stuck open a switch does not close below 400 kPa, the highest boost there is; stuck shut it has closed at any: the pump is then as without a switch.</summary>
    [Fact]
    public void Switch_ThatSticks_IsMovedOutOfReach()
    {
        FuelSystem system = Wren.System().With(PumpParallel.Of(P, Switched(Q)));
        FuelSystem never = Assert.Single(Of(system, "failure.not-switched")).System!;
        FuelSystem always = Assert.Single(Of(system, "failure.always-on")).System!;
        foreach (double kilopascals in new[] { -80, 0, 40, 150, 399.9 })
        {
            OperatingPoint point = OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(kilopascals), Wren.Hill);
            Assert.Equal([true, false], never.Solve(point).Circuit.Pumps.Select(pump => pump.IsRunning));
            Assert.Equal([true, true], always.Solve(point).Circuit.Pumps.Select(pump => pump.IsRunning));
            Assert.Null(never.Solve(point).Falling);
            Assert.Null(always.Solve(point).Falling);
        }

        // What the pump does at its low speed stays, and of two of one description the first sticks.
        FuelSystem twins = Wren.System().With(PumpParallel.Of(Switched(Q), Switched(Q), P));
        FuelSystem stuck = Assert.Single(Of(twins, "failure.not-switched")).System!;
        Assert.Equal([400, 60], stuck.Pump.Switches.Select(pump => pump.On.Kilopascals));
        Assert.Equal([399.999, 45], stuck.Pump.Switches.Select(pump => Math.Round(pump.Off.Kilopascals, 6)));
        Assert.All(stuck.Pump.Switches, pump => Assert.Equal((Q, PumpLowSpeed.Stopped), (pump.Pump, pump.LowSpeed)));
        Assert.Equal("pump Q not switched on, its switch or relay stuck open", Of(twins, "failure.not-switched")[0].Text.ToString());
        Assert.Empty(Of(Wren.System(), "failure.not-switched"));
    }

    /// <summary>The setting at −40, 0 and 60 kPa of boost that each failure of each kind leaves; a regulator that stands open sets nothing that is known.</summary>
    [Fact]
    public void Regulator_ThatFails_SetsWhatIsLeft()
    {
        RisingRate unit = RisingRate.From(Pressure.Zero, 9, Pressure.Zero);
        RisingRate based = RisingRate.From(Wren.Kpa(330), 3, Wren.Kpa(20));
        ManifoldReferenced follows = ManifoldReferenced.From(Wren.Kpa(300));
        Same(Wren.System(follows), ("failure.hose", [300, 300, 300]), ("failure.open", null));
        Same(Wren.System(Fixed.At(Wren.Kpa(320))), ("failure.open", null));
        Same(Wren.System(based), ("failure.hose", [330, 330, 330]), ("failure.open", null));
        Same(Wren.System(CustomRegulator.Of(new OwnSetting(310))), ("failure.hose", [310, 310, 310]), ("failure.open", null));

        // The base sets 260, 300 and 360 kPa, the unit −40, 0 and 540; each without its hose what it sets without boost.
        Same(
            Wren.System(RegulatorSeries.Of(follows, unit)),
            ("failure.unit-hose", [260, 300, 360]),
            ("failure.unit-open", [260, 300, 360]),
            ("failure.base-open", [-40, 0, 540]),
            ("failure.base-hose", [300, 300, 540]));
        Same(
            Wren.System(RegulatorSeries.Of(Fixed.At(Wren.Kpa(300)), based)),
            ("failure.unit-hose", [330, 330, 330]),
            ("failure.unit-open", [300, 300, 300]),
            ("failure.base-open", [290, 330, 330 + 20 + 120]));

        // A gain that is only quoted stays so; one that is known does not become quoted.
        Assert.All(
            Of(Wren.System(RegulatorSeries.Of(follows, unit).WithQuotedGain())).Where(failure => failure.Text.Code is "failure.unit-hose" or "failure.base-hose"),
            failure => Assert.True(((RegulatorSeries)failure.System!.Regulator).IsGainQuoted));
        Assert.All(
            Of(Wren.System(RegulatorSeries.Of(follows, unit))).Where(failure => failure.Text.Code is "failure.unit-hose" or "failure.base-hose"),
            failure => Assert.False(((RegulatorSeries)failure.System!.Regulator).IsGainQuoted));
    }

    /// <summary>What a regulator needs returned, and how its pressure changes with that, is no matter of its hose.</summary>
    [Fact]
    public void Hose_ThatIsOff_LeavesTheRegulatorsFlow()
    {
        RegulatorFlow slope = RegulatorFlow.Rising(Wren.Kpa(30), VolumeFlow.FromLitersPerHour(100), VolumeFlow.FromLitersPerHour(60));
        PressureRegulator still = Assert.Single(Of(Wren.System(ManifoldReferenced.From(Wren.Kpa(300), VolumeFlow.FromLitersPerHour(17)).WithFlow(slope)), "failure.hose")).System!.Regulator;
        Assert.Equal((slope, 17), (still.Flow, Math.Round(still.MinimumReturnFlow.LitersPerHour, 9)));
    }

    /// <summary>A sensor whose hose is off holds the pressure without boost, by the same pumps; one without a hose cannot lose it. Stuck shut means a pump that is not slowed.</summary>
    [Fact]
    public void PumpControl_ThatFails_HoldsAmbientOrNothing()
    {
        FuelSystem Returnless(bool follows) => FuelSystem.Returnless(
            Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), ElectronicReturnless.Holding(Wren.Kpa(300), follows, Wren.Volt(7)), Pump.From(Wren.WiredCurve(13.5, 1)));
        ElectronicReturnless held = (ElectronicReturnless)Assert.Single(Of(Returnless(true), "failure.hose")).System!.Regulator;
        Assert.Equal((false, 7, 300), (held.FollowsManifold, held.MinimumVoltage.Volts, Math.Round(held.SetPascals(60e3) / 1e3, 9)));
        Assert.Equal(["failure.full-speed", "failure.alternator"], Of(Returnless(false)).Select(failure => failure.Text.Code));
        Assert.IsType<Fixed>(Assert.Single(Of(Returnless(false), "failure.full-speed")).System!.Regulator);
    }

    /// <summary>
    /// A regulator stuck shut stands 100 kPa over what the pumps give without flow at the joint: over a pump's own, less what its check valve opens at. Where nobody knows what
    /// they give, or it is 4,900 kPa and more, it stands at 5,000 kPa.
    /// </summary>
    [Fact]
    public void RegulatorStuckShut_StandsOverWhatThePumpsGive()
    {
        double Stands(PumpAssembly pumps) => Math.Round(Assert.Single(Of(Wren.System().With(pumps), "failure.shut")).System!.Regulator.SetPascals(50e3) / 1e3, 3);
        Assert.Equal(2100, Stands(P));
        Assert.Equal(2000 + 1900 + 100, Stands(Series(P, Q)));
        Assert.Equal(2100, Stands(PumpParallel.Of(P, Q)));
        Assert.Equal(2000 - 80 + 100, Stands(PumpBranch.Of(P, discharge: [CheckValve.OfCoefficient("valve", Wren.Kpa(80), 6, Length.FromMillimeters(7))])), 1.0);
        Assert.Equal(2000 + 1900 + 999 + 100, Stands(Series(P, Q, Named("pump W", 900, 999))));
        Assert.Equal(5000, Stands(Series(P, Q, Named("pump W", 900, 1000))));
        Assert.Equal(5000, Stands(Series(P, Q, Named("pump W", 900, 1010))));
        Assert.Equal(5000, Stands(Pump.From(PumpCurve.At("pump C", Wren.Volt(13.5), (Pressure.Zero, VolumeFlow.FromLitersPerHour(215)), (Wren.Kpa(200), VolumeFlow.FromLitersPerHour(185))))));
    }

    /// <summary>What compares with the pressure set is not judged then. A system that has nothing of what is asked for is judged as it was.</summary>
    [Fact]
    public void RegulatorStuckShut_IsJudgedByWhatThereIs()
    {
        FuelSystem system = Wren.System().With(Plumbing.Of(supply: [Strainer("F")]));
        FuelSystem shut = Assert.Single(Of(system, "failure.shut")).System!;
        Assert.Equal([Part.Suction, Part.Filter], shut.Applicable.Select(check => check.Part));
        Assert.Contains(Part.Injectors, system.Applicable.Select(check => check.Part));
        FuelSystem bare = Wren.System();
        Assert.Same(bare, bare.JudgedOnlyBy([Part.Fuse]));
    }

    /// <summary>Half of a filter passes twice the flow for its area: twice its clogging. Each filter by itself: of the four lines, and of each pump's own, wherever it lies.</summary>
    [Fact]
    public void Filter_OfAnyLine_IsHalfBlockedByItself()
    {
        Line hose = Line.Of("hose", Length.FromMillimeters(9), Length.FromMeters(2), Roughness.RubberHose);
        Plumbing Lines(double suction, double before, double first, double second, double back) => Plumbing.Of(
            [Strainer("S", suction), hose], [hose, Strainer("F", first), Strainer("G", second)], [hose, Strainer("R", back)], [Strainer("B", before)]);
        FuelSystem system = FuelSystem.Returnless(Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(500), 4), Fixed.At(Wren.Kpa(320)), P, plumbing: Lines(1.1, 1.2, 1.3, 1.4, 1.5));
        Assert.Equal(
            [
                ("S half blocked", Lines(2.2, 1.2, 1.3, 1.4, 1.5)),
                ("B half blocked", Lines(1.1, 2.4, 1.3, 1.4, 1.5)),
                ("F half blocked", Lines(1.1, 1.2, 2.6, 1.4, 1.5)),
                ("G half blocked", Lines(1.1, 1.2, 1.3, 2.8, 1.5)),
                ("R half blocked", Lines(1.1, 1.2, 1.3, 1.4, 3.0)),
            ],
            Of(system, "failure.filter").Select(failure => (failure.Text.ToString(), failure.System!.Plumbing)));

        PumpAssembly Pumps(double first, double out1, double second, double out2) => PumpParallel.Of(
            PumpBranch.Of(P, [hose, Strainer("S1", first)], [Strainer("D1", out1)]), PumpBranch.Of(Q, [Strainer("S2", second)], [hose, Strainer("D2", out2)]));
        Assert.Equal(
            [
                ("S1 half blocked", Pumps(2.2, 1.2, 1.3, 1.4)),
                ("D1 half blocked", Pumps(1.1, 2.4, 1.3, 1.4)),
                ("S2 half blocked", Pumps(1.1, 1.2, 2.6, 1.4)),
                ("D2 half blocked", Pumps(1.1, 1.2, 1.3, 2.8)),
            ],
            Of(Wren.System().With(Pumps(1.1, 1.2, 1.3, 1.4)), "failure.filter").Select(failure => (failure.Text.ToString(), failure.System!.Pump)));
    }

    /// <summary>A dead alternator leaves the battery's 12 V where there was more; the fuel stays as warm as it was, and the system what it is.</summary>
    [Theory]
    [InlineData(12.1, true)]
    [InlineData(12.0, false)]
    [InlineData(11.0, false)]
    public void Alternator_ThatIsOff_LeavesTheBattery(double volts, bool expected)
    {
        Conditions conditions = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Temperature.FromDegreesCelsius(41));
        FuelSystem system = Wren.System();
        (Statement Text, FuelSystem? System, Conditions Conditions)[] found = [.. SingleFailures.Of(system, conditions).Where(failure => failure.Text.Code == "failure.alternator")];
        Assert.Equal(expected ? 1 : 0, found.Length);
        Assert.All(found, off => Assert.Equal((system, 12, 41), (off.System, off.Conditions.SupplyVoltage.Volts, Math.Round(off.Conditions.FuelTemperature.DegreesCelsius, 9))));
        Assert.All(SingleFailures.Of(system, conditions).Except(found), failure => Assert.Equal(conditions, failure.Conditions));
    }

    private static Pump Named(string name, double litresPerHour, double deadhead) => Pump.From(PumpCurve.At(
        name, Wren.Volt(13.5), (Pressure.Zero, VolumeFlow.FromLitersPerHour(litresPerHour)), (Wren.Kpa(deadhead), VolumeFlow.Zero)));

    private static SwitchedPump Switched(Pump pump) => SwitchedPump.Above(Wren.Kpa(60), Wren.Kpa(45), pump);

    private static Filter Strainer(string name, double clogging = 1.1) => Filter.Of(name, VolumeFlow.FromLitersPerHour(300), Wren.Kpa(8), clogging);

    private static PumpSeries Series(params PumpAssembly[] stages) => PumpSeries.Of(SeriesBypass.CheckValve, stages);

    private static (Statement Text, FuelSystem? System, Conditions Conditions)[] Of(FuelSystem system, string? code = null) =>
        [.. SingleFailures.Of(system, Wren.Hill).Where(failure => code is null || failure.Text.Code == code)];

    /// <summary>These failures of the regulator and no others, with these settings, kPa, at −40, 0 and 60 kPa of boost; none where the answer is not known.</summary>
    private static void Same(FuelSystem system, params (string Code, double[]? Set)[] expected)
    {
        (Statement Text, FuelSystem? System, Conditions)[] found = [.. Of(system).Where(failure => failure.Text.Code is not ("failure.shut" or "failure.alternator"))];
        Assert.Equal(expected.Select(one => one.Code).Order(), found.Select(failure => failure.Text.Code).Order());
        foreach ((string code, double[]? set) in expected)
        {
            FuelSystem? left = found.Single(failure => failure.Text.Code == code).System;
            Assert.Equal(set, left is null ? null : [.. new[] { -40e3, 0, 60e3 }.Select(boost => Math.Round(left.Regulator.SetPascals(boost) / 1e3, 6))]);
        }
    }
}
