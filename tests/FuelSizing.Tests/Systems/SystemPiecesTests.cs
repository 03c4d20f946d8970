using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>The small pieces of which systems, checks and answers are made, each by itself.</summary>
public class SystemPiecesTests
{
    private static readonly InjectorSet Set = InjectorSet.Of(Wren.InjectorOf(360), 4);

    private static readonly ManifoldReferenced Regulator = ManifoldReferenced.From(Wren.Kpa(300));

    private static readonly Pump OnePump = Pump.From(Wren.Pump);

    [Fact]
    public void System_WithAPieceMissing_IsRefusedByName()
    {
        Refused.Missing("demand", () => FuelSystem.Return(null!, Set, Regulator, OnePump));
        Refused.Missing("injectors", () => FuelSystem.Return(Wren.Demand(), null!, Regulator, OnePump));
        Refused.Missing("regulator", () => FuelSystem.Return(Wren.Demand(), Set, null!, OnePump));
        Refused.Missing("pump", () => FuelSystem.Returnless(Wren.Demand(), Set, Regulator, null!));
        Refused.Missing("plumbing", () => Wren.System().With((Plumbing)null!));
        Refused.Missing("limits", () => Wren.System().With((SizingLimits)null!));
        Refused.Missing("controller", () => Wren.System().With((FuelSizing.Controllers.EngineController)null!));
        Refused.Missing("check", () => Wren.System().With((ICheck)null!));
        Refused.Missing("part", () => Wren.System().Waive(null!, "why"));
        Refused.Missing("point", () => Wren.System().Solve(null!));
        Refused.Missing("system", () => SystemSolver.Solve(null!, Wren.At(3000, 0)));
        Refused.Missing("system", () => SystemSweep.Sweep(null!, [Wren.Rpm(3000)], [Wren.Kpa(0)]));
        Refused.Missing("style", () => Wren.System().Solve(Wren.At(3000, 0)).In(null!));
        Refused.Missing("style", () => Wren.System().Solve(Wren.At(3000, 0)).WorkingIn(null!));
        Refused.Missing("style", () => Wren.At(3000, 0).In(null!));
        Refused.Missing("speeds", () => Wren.System().Sweep(null!, [Wren.Kpa(0)]));
        Refused.Missing("boosts", () => Wren.System().Sweep([Wren.Rpm(3000)], null!));
        Refused.Missing("parts", () => PointBatch.Of(null!));
        Refused.Missing("atmosphere", () => Conditions.Of(null!, Wren.Volt(13), Temperature.FromDegreesCelsius(20)));
        Refused.Missing("suction", () => Plumbing.Of(suction: [null!]));
        Refused.Missing("supply", () => Plumbing.Of(supply: [null!]));
        Refused.Missing("returnLine", () => Plumbing.Of(returnLine: [null!]));
    }

    [Fact]
    public void Question_WithAPieceMissing_IsRefusedByName()
    {
        FuelSystem system = Wren.System();
        OperatingPoint point = Wren.At(3000, 0);
        Refused.Missing("system", () => SystemSizing.MinimumStaticFlow(null!, point));
        Refused.Missing("points", () => SystemSizing.MinimumStaticFlow(system, null!));
        Refused.Missing("points", () => SystemSizing.MinimumStaticFlow(system, point, null!));
        Refused.Missing("system", () => SystemSizing.MinimumBasePressure(null!, point));
        Refused.Missing("system", () => SystemSizing.MinimumGain(null!, Pressure.Zero, point));
        Refused.Missing("system", () => SystemSizing.MinimumWireArea(null!, point));
        Refused.Missing("system", () => SystemSizing.RequiredPump(null!, point));
        Refused.Missing("system", () => SystemSizing.MinimumBore(null!, LineOf(), point));
        Refused.Missing("line", () => SystemSizing.MinimumBore(system, null!, point));
        Refused.Missing("system", () => SystemSizing.MaximumBoost(null!, [Wren.Rpm(3000)], Wren.Hill));
        Refused.Missing("speeds", () => SystemSizing.MaximumBoost(system, null!, Wren.Hill));
        Refused.Missing("conditions", () => SystemSizing.MaximumBoost(system, [Wren.Rpm(3000)], null!));
        Refused.OutOfRange("speeds", () => SystemSizing.MaximumBoost(system, [], Wren.Hill));
        Refused.OutOfRange("speeds", () => SystemSizing.MaximumBoost(system, [Wren.Rpm(-1)], Wren.Hill));
        Refused.Missing("system", () => SystemSizing.MaximumPower(null!, Wren.Rpm(3000), Wren.Hill));
        Refused.Missing("conditions", () => SystemSizing.MaximumPower(system, Wren.Rpm(3000), null!));
        Refused.Missing("system", () => SystemSizing.MaximumSpeed(null!, Wren.Kpa(20), Wren.Rpm(3000), Wren.Hill));
        Refused.Missing("conditions", () => SystemSizing.MaximumSpeed(system, Wren.Kpa(20), Wren.Rpm(3000), null!));
        Refused.OutOfRange("from", () => SystemSizing.MaximumSpeed(system, Wren.Kpa(20), Wren.Rpm(7200), Wren.Hill));
        Refused.OutOfRange("from", () => SystemSizing.MaximumSpeed(system, Wren.Kpa(20), Wren.Rpm(-1), Wren.Hill));
    }

    [Fact]
    public void Sweep_OfNothingOrOfOneValueTwice_IsRefused()
    {
        FuelSystem system = Wren.System();
        Refused.OutOfRange("speeds", () => system.Sweep([], [Wren.Kpa(0)]));
        Refused.OutOfRange("boosts", () => system.Sweep([Wren.Rpm(3000)], []));
        Refused.OutOfRange("speeds", () => system.Sweep([Wren.Rpm(3000), Wren.Rpm(3000)], [Wren.Kpa(0)]));
        Refused.OutOfRange("boosts", () => system.Sweep([Wren.Rpm(3000)], [Wren.Kpa(20), Wren.Kpa(10)]));
        Refused.OutOfRange("speeds", () => system.Sweep([Wren.Rpm(-1)], [Wren.Kpa(0)]));
        Refused.OutOfRange("speed", () => system.Sweep([Wren.Rpm(3000)], [Wren.Kpa(0)]).At(1, 0));
        Refused.OutOfRange("boost", () => system.Sweep([Wren.Rpm(3000)], [Wren.Kpa(0)]).At(0, 1));
        Assert.Equal(Conditions.Default, system.Sweep([Wren.Rpm(3000)], [Wren.Kpa(0)]).At(0, 0).Point.Conditions);
    }

    [Fact]
    public void Point_WithoutConditions_HasTheDefaultOnes()
    {
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(6200), Pressure.FromBars(0.65));
        Assert.Equal(Conditions.Default, point.Conditions);
        Assert.Equal("6,200 rev/min, 0.65 bar", point.ToString());
        Assert.Equal(Wren.Hill, Wren.At(3000, 0).Conditions);
        Refused.OutOfRange("speed", () => OperatingPoint.At(Wren.Rpm(99), Pressure.Zero));
        Refused.OutOfRange("boost", () => OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(401)));
        Assert.Equal(Conditions.Default, PointBatch.Of(Wren.System().Parts).Conditions);
        Assert.Equal(Wren.Hill, PointBatch.Of(Wren.System().Parts, Wren.Hill).Conditions);
    }

    [Fact]
    public void System_WithOnePieceExchanged_KeepsTheRest()
    {
        Plumbing plumbing = Plumbing.Of(supply: [LineOf()]);
        SizingLimits limits = SizingLimits.Of(Wren.Percent(80), Wren.Percent(15));
        ElectronicReturnless control = ElectronicReturnless.Holding(Wren.Kpa(300), true, Wren.Volt(6));
        FuelSystem system = FuelSystem.Returnless(Wren.Demand(), Set, control, OnePump, limits, plumbing);
        Pump other = Pump.From(Wren.PumpOf(2));
        InjectorSet wide = InjectorSet.Of(Wren.InjectorOf(500), 4);
        foreach (FuelSystem changed in new[] { system.With(wide), system.With(Regulator), system.With(other), system.With(Plumbing.None) })
        {
            Assert.Equal(LineLayout.Returnless, changed.Layout);
            Assert.Same(limits, changed.Limits);
            Assert.Same(system.Demand, changed.Demand);
        }

        Assert.Same(wide, system.With(wide).Injectors);
        Assert.Same(Regulator, system.With(Regulator).Regulator);
        Assert.Same(other, system.With(other).Pump);
        Assert.Same(Plumbing.None, system.With(Plumbing.None).Plumbing);
        Assert.Same(plumbing, system.With(other).Plumbing);
        Assert.Equal(LineLayout.Return, Wren.System().With(Fixed.At(Wren.Kpa(400))).Layout);
        Assert.Same(SizingLimits.Default, Wren.System().Limits);
        Assert.Same(Plumbing.None, Wren.System().Plumbing);
    }

    [Fact]
    public void Limits_NotGiven_AreTheDefaultOnes()
    {
        SizingLimits usual = SizingLimits.Of(Wren.Percent(85), Wren.Percent(10));
        Assert.Equal(SizingLimits.Default, usual);
        Assert.Null(usual.RailCeiling);
        Assert.Equal((5, 10), (usual.FeedDrop.Percent, usual.SuctionMargin.Kilopascals));
        SizingLimits own = SizingLimits.Of(
            Wren.Percent(80), Wren.Percent(20), Wren.Kpa(700), Wren.Percent(3), Wren.Kpa(15));
        Assert.Equal(
            (80, 20, 700, 3, 15),
            (own.DutyCycle.Percent, own.PumpReserve.Percent, own.RailCeiling!.Value.Kilopascals, own.FeedDrop.Percent, own.SuctionMargin.Kilopascals));
        Refused.OutOfRange("dutyCycle", () => SizingLimits.Of(Wren.Percent(101), Wren.Percent(10)));
    }

    [Fact]
    public void Check_OfAReserve_HoldsDownToNone()
    {
        static Outcome Of(double margin, double best) => CheckReading.OutcomeOf(new CheckReading<Real>(1, 1, margin, best));
        Assert.Equal(Outcome.Holds, Of(0, 0));
        Assert.Equal(Outcome.Holds, Of(double.PositiveInfinity, double.PositiveInfinity));
        Assert.Equal(Outcome.Fails, Of(-1e-12, -1e-12));
        Assert.Equal(Outcome.CannotSay, Of(-1e-12, 0));
        Assert.Equal(Outcome.CannotSay, Of(double.NaN, double.NaN));
        Assert.Equal(Outcome.CannotSay, default);
    }

    /// <summary>What fails comes before what cannot be said, and that before what holds; within each the tightest margin.</summary>
    [Fact]
    public void Tightest_OfManyChecks_ComesFirst()
    {
        Judgement[] ordered =
        [
            new(Part.Pump, Outcome.Fails, -0.5),
            new(Part.Pump, Outcome.Fails, -0.1),
            new(Part.Pump, Outcome.CannotSay, null),
            new(Part.Pump, Outcome.Holds, 0),
            new(Part.Pump, Outcome.Holds, 0.3),
            new(Part.Pump, Outcome.Holds, null),
        ];
        Assert.Equal(ordered, Enumerable.Reverse(ordered).Order(Comparer<Judgement>.Create((x, y) => Urgency.Compare(x.Outcome, x.Share, y.Outcome, y.Share))));
    }

    [Fact]
    public void Reserve_WithNothingUsed_IsNotCompared()
    {
        Assert.Equal(0.25, CheckReading.MarginOf(CheckReading.AtMost<Real>(400, 500))!.Value, 12);
        Assert.Null(CheckReading.MarginOf(CheckReading.AtMost<Real>(0, 500)));
        Assert.Null(CheckReading.MarginOf(CheckReading.AtMost<Real>(-1, 500)));
        Assert.Equal(Outcome.Holds, CheckReading.OutcomeOf(CheckReading.AtMost<Real>(0, 500)));
        Assert.Equal(Outcome.CannotSay, CheckReading.OutcomeOf(CheckReading.AtMost<Real>(double.NaN, 500)));
        Assert.Equal(-0.2, CheckReading.MarginOf(CheckReading.AtLeast<Real>(80, 100))!.Value, 12);
        Assert.Null(CheckReading.MarginOf(CheckReading.AtLeast<Real>(80, 0)));
    }

    [Fact]
    public void Outcome_OfALimitThatIsNotKnown_CannotBeSaidEvenWhereNothingIsUsed()
    {
        Assert.Equal(Outcome.CannotSay, CheckReading.OutcomeOf(CheckReading.AtMost<Real>(0, double.NaN)));
        Assert.Equal(Outcome.CannotSay, CheckReading.OutcomeOf(CheckReading.AtMost<Real>(-1, double.NaN)));
        Assert.Equal(Outcome.CannotSay, CheckReading.OutcomeOf(CheckReading.AtLeast<Real>(double.NaN, 0)));
    }

    [Fact]
    public void Outcome_OfLessThanALimitBelowZero_Fails()
    {
        Assert.Equal(Outcome.Fails, CheckReading.OutcomeOf(CheckReading.AtLeast<Real>(-10, -5)));
        Assert.Equal(Outcome.Holds, CheckReading.OutcomeOf(CheckReading.AtLeast<Real>(-5, -5)));
        Assert.Equal(Outcome.Holds, CheckReading.OutcomeOf(CheckReading.AtLeast<Real>(-1, -5)));
    }

    /// <summary>Of four duties one is asked for by another; of two the same, one is enough.</summary>
    [Fact]
    public void Requirement_OfManyDuties_IsGovernedByThoseThatNoOtherCovers()
    {
        PumpDutyPoint Duty(double flow, double rise) =>
            new(Wren.At(3000, 0), VolumeFlow.FromLitersPerHour(flow), Wren.Kpa(rise));
        PumpDutyPoint low = Duty(200, 200);
        PumpDutyPoint high = Duty(100, 400);
        PumpDutyPoint middle = Duty(150, 300);
        PumpRequirement required = new([low, Duty(150, 200), high, Duty(100, 300), middle, Duty(150, 300)]);
        Assert.Equal([high, middle, low], required.Governing);
        Assert.Equal(6, required.Points.Count);
        Assert.Equal(200, required.LargestFlow.LitersPerHour, 9);
        Assert.Equal(400, required.MaximumPressureRise.Kilopascals, 9);
        Assert.Equal("100 L/h against 400 kPa at 3,000 rev/min, 0.00 bar", high.ToString());
        Assert.StartsWith(
            "A pump, or pumps together, that deliver at least 100 L/h against 400 kPa", required.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Requirement_OfTwoDutiesAlikeInOne_IsGovernedByTheHarder()
    {
        PumpDutyPoint Duty(double flow, double rise) =>
            new(Wren.At(3000, 0), VolumeFlow.FromLitersPerHour(flow), Wren.Kpa(rise));
        PumpDutyPoint hard = Duty(200, 300);
        Assert.Equal([hard], new PumpRequirement([Duty(150, 300), hard]).Governing);
        Assert.Equal([hard], new PumpRequirement([hard, Duty(200, 250)]).Governing);
    }

    [Fact]
    public void Names_OfParts_AreAllDifferent()
    {
        Part[] parts = [.. StandardChecks.All.Select(check => check.Part)];
        Assert.Equal(parts.Length, parts.Select(part => part.Name).Distinct().Count());
        Assert.Equal(parts.Length, parts.Select(part => part.Code).Distinct().Count());
        Assert.Equal("hoses, fittings and filter", Part.PressureRating.Name);
        Assert.Equal(Part.Pump, Part.Of("pump", "another name"));
        Assert.Throws<ArgumentException>("code", () => Part.Of("Pump", "pump"));
        Assert.Throws<ArgumentException>("name", () => Part.Of("own.pump", " "));
    }

    /// <summary>Darcy's filter and half a metre of fuel: 8 kPa · 1/2 and 740 · 9.80665 · 0.5 Pa, together.</summary>
    [Fact]
    public void Way_OfSeveralParts_LosesTheirSum()
    {
        Filter filter = Filter.Of(
            "filter", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(8), 1, DynamicViscosity.FromMillipascalSeconds(0.444));
        Line up = Line.Of("up", Length.FromMillimeters(60), Length.Zero, Length.Zero, rise: Length.FromMeters(0.5));
        double flow = 100 / 3.6e6;
        double loss = PathLoss.Of([filter, up], flow, 740, 6e-7);
        Assert.Equal(4000 + 3628.4605, loss, 1e-3);
        Assert.Equal(3628.4605, new PathResult(up, flow, 740, 6e-7).PressureLoss.Pascals, 1e-3);
        Assert.Equal("filter", new PathResult(filter, flow, 740, 6e-7).Name);

        Assert.False(Plumbing.None.NeedsViscosity);
        Assert.True(Plumbing.Of(suction: [up]).NeedsViscosity);
        Assert.True(Plumbing.Of(supply: [up]).NeedsViscosity);
        Assert.True(Plumbing.Of(returnLine: [up]).NeedsViscosity);
        Assert.False(Plumbing.Of(suction: [up]).HasFilter);
        Assert.True(Plumbing.Of(suction: [up, filter]).HasFilter);
        Assert.True(Plumbing.Of(supply: [filter]).HasFilter);
        Assert.True(Plumbing.Of(returnLine: [filter]).HasFilter);
    }

    /// <summary>Whatever lies on a way, its loss to flow and its height both count: 2 kPa and 740 · 9.80665 · 0.5 Pa.</summary>
    [Fact]
    public void Way_OfAPartOfAnotherKind_LosesToFlowAndHeight()
    {
        Plumbing plumbing = Plumbing.Of(suction: [new Riser()], supply: [new Riser()], returnLine: [new Riser()]);
        const double Expected = 2000 + 3628.4605;
        Assert.Equal(Expected, PathLoss.Of([new Riser()], 1e-5, 740, 6e-7), 1e-3);
        Assert.Equal(Expected, plumbing.SuctionLoss(1e-5, 740, 6e-7), 1e-3);
        Assert.Equal(Expected, plumbing.SupplyLoss(1e-5, 740, 6e-7), 1e-3);
        Assert.Equal(Expected, plumbing.ReturnLoss(1e-5, 740, 6e-7), 1e-3);
    }

    /// <summary>The pressure is held at the rail or at the tank: only what lies before that place comes between the two.</summary>
    [Fact]
    public void Circuit_OfALayout_KnowsWhatLiesBeforeTheRegulator()
    {
        Plumbing suction = Plumbing.Of(suction: [LineOf()]);
        Plumbing supply = Plumbing.Of(supply: [LineOf()]);
        Plumbing back = Plumbing.Of(returnLine: [LineOf()]);
        bool Between(FuelSystem system, Plumbing plumbing)
        {
            FuelSystem with = system.With(plumbing);
            return with.Parts.TaskAt(with.Parts.DemandAt(Wren.At(3000, 0))).HasPathToRegulator;
        }

        FuelSystem atRail = Wren.System();
        FuelSystem atTank = FuelSystem.Returnless(Wren.Demand(), Set, Regulator, OnePump);
        FuelSystem bySpeed = FuelSystem.Returnless(
            Wren.Demand(), Set, ElectronicReturnless.Holding(Wren.Kpa(300), true, Wren.Volt(6)), OnePump);
        Assert.All([atRail, atTank, bySpeed], system => Assert.False(Between(system, Plumbing.None)));
        Assert.All([atRail, atTank, bySpeed], system => Assert.True(Between(system, suction)));
        Assert.All([atRail, atTank, bySpeed], system => Assert.False(Between(system, back)));
        Assert.Equal([true, false, true], new[] { atRail, atTank, bySpeed }.Select(system => Between(system, supply)));
    }

    /// <summary>A filter's pressure drop is known to three times its rated flow: 300 L/h to the rail; downstream the injected flow adds to it.</summary>
    [Fact]
    public void MaximumKnownFlow_IsTheSmallestFilters()
    {
        Filter small = Filter.Of("small", VolumeFlow.FromLitersPerHour(100), Wren.Kpa(8));
        CircuitResult Of(Plumbing plumbing) => Wren.System().With(plumbing).Solve(Wren.At(3000, 0)).Circuit;
        Assert.Equal(10_000, Of(Plumbing.None).MaximumKnownFlow.LitersPerHour, 6);
        Assert.Equal(300, Of(Plumbing.Of(supply: [small])).MaximumKnownFlow.LitersPerHour, 6);
        Assert.Equal(300, Of(Plumbing.Of(suction: [small])).MaximumKnownFlow.LitersPerHour, 6);
        CircuitResult back = Of(Plumbing.Of(returnLine: [small]));
        Assert.Equal(300 + back.InjectedFlow.LitersPerHour, back.MaximumKnownFlow.LitersPerHour, 6);
        Assert.True(Of(Plumbing.Of(supply: [small])).PressureAsked(VolumeFlow.FromLitersPerHour(299.99)).Kilopascals > 300);
        Refused.OutOfRange(
            "flow", () => Of(Plumbing.Of(supply: [small])).PressureAsked(VolumeFlow.FromLitersPerHour(300.01)));
    }

    [Fact]
    public void Pump_OfAResult_TellsItsFeedAndWhetherItIsEstimated()
    {
        PumpResult fed = Wren.System()
            .With(Pump.From(Wren.WiredCurve(13.5, 1)).WithFeed(PumpAssemblyTests.FeedOf(3)))
            .Solve(Wren.At(3000, 0)).Circuit.Pumps.Single();
        Assert.Equal(13.5 - fed.Voltage.Volts, fed.FeedDrop.Volts, 9);
        Assert.Equal(fed.FeedDrop.Volts, fed.Current!.Value.Amperes * PumpAssemblyTests.FeedOf(3).LoopResistance.Ohms, 6);
        Assert.True(fed.IsEstimate);

        CircuitResult plain = Wren.System().Solve(Wren.At(3000, 0)).Circuit;
        Assert.False(plain.Pumps.Single().IsEstimate);
        Assert.Null(plain.Pumps.Single().Current);
        Assert.Null(plain.HeatToTank);
        Assert.Equal(300, plain.Pumps.Single().PressureRise.Kilopascals, 3);
    }

    /// <summary>A flow that the feed's other pump takes is the other's: the one that gets least is judged.</summary>
    [Fact]
    public void Feed_OfTwoPumps_IsJudgedByTheWorseFed()
    {
        Pump near = Wren.WiredPump.WithFeed(PumpAssemblyTests.FeedOf(0.5));
        Pump far = Wren.WiredPump.WithFeed(PumpAssemblyTests.FeedOf(4));
        OperatingResult result = Wren.System().With(PumpParallel.Of(near, Wren.WiredPump, far)).Solve(Wren.At(6000, 0.5));
        Margin margin = result.Margins.Single(margin => margin.Part == Part.Feed);
        double minimum = result.Circuit.Pumps.Min(pump => pump.Voltage.Volts);
        Assert.Equal(13.5 - minimum, ((ElectricPotential)margin.Used!).Volts, 9);
        Assert.Equal(13.5 * 0.05, ((ElectricPotential)margin.Allowed!).Volts, 9);
        Assert.Equal((13.5 * 0.05 / (13.5 - minimum)) - 1, margin.Reserve!.Value.DecimalFractions, 9);
    }

    private static Line LineOf() =>
        Line.Of("l", Length.FromMillimeters(8), Length.FromMeters(4), Roughness.DrawnTube);

    /// <summary>Neither line nor filter: half a metre up, and 2 kPa whatever flows.</summary>
    private sealed class Riser : IFlowLoss
    {
        public string Name => "riser";

        double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity) => 2000;

        double IFlowLoss.ElevationPascals(double density) => density * 9.80665 * 0.5;
    }
}
