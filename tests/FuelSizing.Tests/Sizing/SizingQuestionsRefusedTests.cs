using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>What no question can be asked of, and what each refusal says; and the ends of what is searched.</summary>
public class SizingQuestionsRefusedTests
{
    private static readonly FuelSystem System = Wren.System(injector: 800, pump: 2);

    private static readonly OperatingPoint Point = Wren.At(4000, 0.3);

    [Fact]
    public void WhatIsMissing_IsNamed()
    {
        Line line = Line.Of("supply", Length.FromMillimeters(8), Length.FromMeters(3), Roughness.DrawnTube);
        Refused.Missing("system", () => SystemSizing.MinimumStaticFlow(null!, Point));
        Refused.Missing("points", () => SystemSizing.MinimumStaticFlow(System, null!));
        Refused.Missing("points", () => SystemSizing.MinimumStaticFlow(System, Point, null!));
        Refused.Missing("system", () => SystemSizing.MinimumBasePressure(null!, Point));
        Refused.Missing("system", () => SystemSizing.MinimumGain(null!, Pressure.Zero, Point));
        Refused.Missing("system", () => SystemSizing.MinimumBore(null!, line, Point));
        Refused.Missing("line", () => SystemSizing.MinimumBore(System, null!, Point));
        Refused.Missing("system", () => SystemSizing.MinimumWireArea(null!, Point));
        Refused.Missing("system", () => SystemSizing.RequiredPump(null!, Point));
        Refused.Missing("points", () => SystemSizing.RequiredPump(System, null!));
        Refused.Missing("system", () => SystemSizing.MaximumBoost(null!, [Wren.Rpm(4000)], Wren.Hill));
        Refused.Missing("speeds", () => SystemSizing.MaximumBoost(System, null!, Wren.Hill));
        Refused.Missing("conditions", () => SystemSizing.MaximumBoost(System, [Wren.Rpm(4000)], null!));
        Refused.Missing("system", () => SystemSizing.MaximumPower(null!, Wren.Rpm(4000), Wren.Hill));
        Refused.Missing("conditions", () => SystemSizing.MaximumPower(System, Wren.Rpm(4000), null!));
        Refused.Missing("system", () => SystemSizing.MaximumSpeed(null!, Pressure.Zero, Wren.Rpm(3000), Wren.Hill));
        Refused.Missing("conditions", () => SystemSizing.MaximumSpeed(System, Pressure.Zero, Wren.Rpm(3000), null!));

        BeltDrivenBoost belt = Dunnock.Centrifugal;
        Refused.Missing("system", () => BoostSizing.MaximumDriveRatio(null!, belt, Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill));
        Refused.Missing("line", () => BoostSizing.MaximumDriveRatio(System, null!, Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill));
        Refused.Missing("conditions", () => BoostSizing.MaximumDriveRatio(System, belt, Wren.Rpm(3000), Wren.Rpm(6000), null!));
        Refused.Missing("system", () => BoostSizing.InjectorsInstead(null!, belt, Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill));
        Refused.Missing("line", () => BoostSizing.InjectorsInstead(System, null!, Wren.Rpm(3000), Wren.Rpm(6000), Wren.Hill));
        Refused.Missing("conditions", () => BoostSizing.InjectorsInstead(System, belt, Wren.Rpm(3000), Wren.Rpm(6000), null!));
        Refused.Missing("system", () => MixtureSizing.FitRisingRate(null!, belt, [Wren.Rpm(3000)], Wren.Hill));
        Refused.Missing("line", () => MixtureSizing.FitRisingRate(System, null!, [Wren.Rpm(3000)], Wren.Hill));
        Refused.Missing("speeds", () => MixtureSizing.FitRisingRate(System, belt, null!, Wren.Hill));
        Refused.Missing("conditions", () => MixtureSizing.FitRisingRate(System, belt, [Wren.Rpm(3000)], null!));
    }

    [Fact]
    public void QuestionsWithoutPointsOrSpeeds_AreRefused()
    {
        Assert.StartsWith(
            "points was empty; give at least one operating point.",
            Assert.Throws<ArgumentException>("points", () => SystemSizing.MinimumStaticFlow(System)).Message,
            StringComparison.Ordinal);
        Assert.Throws<ArgumentException>("points", () => SystemSizing.RequiredPump(System));
        Refused.OutOfRange("speeds", () => SystemSizing.MaximumBoost(System, [], Wren.Hill));
        Refused.OutOfRange("speeds", () => SystemSizing.MaximumBoost(System, [Wren.Rpm(50_000)], Wren.Hill));
        Refused.OutOfRange("speeds", () => MixtureSizing.FitRisingRate(System, Dunnock.Centrifugal, [], Wren.Hill));
        Refused.OutOfRange("speeds", () => MixtureSizing.FitRisingRate(System, Dunnock.Centrifugal, [Wren.Rpm(50_000)], Wren.Hill));
        Assert.StartsWith(
            "system has no controller: it is assumed to command whatever pulse is needed, and then any pressure serves. Give it one by FuelSystem.With.",
            Assert.Throws<ArgumentException>("system", () => MixtureSizing.FitRisingRate(System, Dunnock.Centrifugal, [Wren.Rpm(3000)], Wren.Hill)).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void MaximumSpeed_FromTheEnginesLimitOn_IsRefused()
    {
        Assert.Contains(
            "from is 7,200 rev/min; it must be under 7,200 rev/min. Start below the engine's speed limit.",
            Assert.Throws<ArgumentOutOfRangeException>("from", () => SystemSizing.MaximumSpeed(System, Pressure.Zero, Wren.Rpm(7200), Wren.Hill)).Message,
            StringComparison.Ordinal);
        Refused.OutOfRange("from", () => SystemSizing.MaximumSpeed(System, Pressure.Zero, Wren.Rpm(50_000), Wren.Hill));

        // Right below it, it is asked, and where all holds the answer is the limit itself.
        SizingAnswer<RotationalSpeed> answer = SystemSizing.MaximumSpeed(System, Pressure.Zero, Wren.Rpm(7100), Wren.Hill);
        Assert.Equal(7200, answer.Value!.Value.RevolutionsPerMinute, 1e-9);
        Assert.StartsWith("At most 7,200 rev/min: ", answer.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void PartsThatTheSystemDoesNotHave_AreNamed()
    {
        Line line = Line.Of("hose", Length.FromMillimeters(8), Length.FromMeters(3), Roughness.DrawnTube);
        Line same = Line.Of("hose", Length.FromMillimeters(8), Length.FromMeters(3), Roughness.DrawnTube);
        FuelSystem with = System.With(Plumbing.Of(supply: [line]));
        Assert.StartsWith(
            "line was hose, which is not in the system's supply line. Give the very line that the plumbing holds.",
            Assert.Throws<ArgumentException>("line", () => SystemSizing.MinimumBore(with, same, Point)).Message,
            StringComparison.Ordinal);
        Assert.NotNull(SystemSizing.MinimumBore(with, line, Point).Value);
        Assert.Throws<ArgumentException>("system", () => SystemSizing.MinimumWireArea(System, Point));
        Assert.Contains(
            "a gain belongs to a manifold-referenced or rising-rate one.",
            Assert.Throws<ArgumentException>("system", () => SystemSizing.MinimumGain(System.With(Fixed.At(Wren.Kpa(300))), Pressure.Zero, Point)).Message,
            StringComparison.Ordinal);
    }

    /// <summary>A ceiling below 100 kPa leaves no base to search; one at 350 ends the search there.</summary>
    [Fact]
    public void MinimumBasePressure_UnderACeiling_IsSearchedUpToIt()
    {
        FuelSystem low = System.With(RisingRate.From(Wren.Kpa(60), 2, Pressure.Zero, ceiling: Wren.Kpa(90)));
        SizingAnswer<Pressure> none = SystemSizing.MinimumBasePressure(low, Point, Wren.At(6500, 0.5));
        Assert.Null(none.Value);
        Assert.False(none.IsFeasible);
        Assert.Empty(none.Ranges);
        Assert.Null(none.Next);
        Assert.Equal("Nothing from 100 kPa to 1,500 kPa is adequate: the regulator's ceiling is 90 kPa, below the lowest base pressure.", none.ToString());

        // The most urgent of what it fails by now.
        Assert.Equal(
            new[] { Point, Wren.At(6500, 0.5) }.SelectMany(point => low.Solve(point).Margins).Order(FuelSizing.Checks.Urgency.Order).First().ToString(),
            none.Binding.Margin.ToString());

        SizingAnswer<Pressure> capped = SystemSizing.MinimumBasePressure(
            System.With(RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero, ceiling: Wren.Kpa(350))), Wren.At(2000, -0.2));
        Assert.True(capped.IsFeasible, capped.ToString());
        Assert.Equal(350, capped.Ranges[^1].Maximum.Kilopascals, 1e-9);
        SizingAnswer<Pressure> just = SystemSizing.MinimumBasePressure(
            System.With(RisingRate.From(Wren.Kpa(100), 1, Pressure.Zero, ceiling: Wren.Kpa(100))), Wren.At(2000, -0.2));
        Assert.DoesNotContain("below the lowest base", just.ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// Four points: 100 L/h against 300 kPa is covered by 100 against 350, and 90 against 350 by it too; 120 against 310 is not. The governing ones are listed by falling pressure.
    /// </summary>
    [Fact]
    public void RequiredPump_NamesThePointsThatNoOtherCovers()
    {
        PumpDutyPoint Of(double litres, double kilopascals) => new(Point, VolumeFlow.FromLitersPerHour(litres), Wren.Kpa(kilopascals));
        PumpRequirement requirement = new([Of(100, 300), Of(120, 310), Of(100, 350), Of(90, 350), Of(100, 350), Of(120, 305)]);
        Assert.Equal([(100, 350), (120, 310)], requirement.Governing.Select(point => ((int)Math.Round(point.Flow.LitersPerHour), (int)Math.Round(point.PressureRise.Kilopascals))));
        Assert.Equal(6, requirement.Points.Count);
        Assert.Equal(120, requirement.LargestFlow.LitersPerHour, 9);
        Assert.Equal(350, requirement.MaximumPressureRise.Kilopascals, 9);
        Assert.Equal(
            "A pump, or pumps together, that deliver at least 100 L/h against 350 kPa at 4,000 rev/min, 0.30 bar; 120 L/h against 310 kPa at 4,000 rev/min, 0.30 bar.",
            requirement.ToString());

        // One point alone governs, and of two that are the same one is named.
        Assert.Single(new PumpRequirement([Of(80, 300)]).Governing);
        Assert.Single(new PumpRequirement([Of(80, 300), Of(80, 300)]).Governing);
        Assert.Equal(2, new PumpRequirement([Of(80, 310), Of(90, 300)]).Governing.Count);
        Assert.Single(new PumpRequirement([Of(80, 300), Of(90, 300)]).Governing);
        Assert.Single(new PumpRequirement([Of(90, 310), Of(90, 300)]).Governing);
    }

    /// <summary>Parts that stand anything: the most that is searched, 400 kPa, at every speed.</summary>
    [Fact]
    public void MaximumBoost_OfPartsThatStandAll_IsWhatIsSearched()
    {
        FuelSystem ample = EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(300))).With(FuelSizing.Injectors.InjectorSet.Of(Wren.InjectorOf(6000), 4));
        SizingAnswer<Pressure> answer = SystemSizing.MaximumBoost(ample, [Wren.Rpm(4000), Wren.Rpm(6000)], Wren.Hill);
        Assert.Equal(400, answer.Value!.Value.Kilopascals, 1e-9);
        Assert.Equal(0, answer.Ranges[0].Minimum.Pascals, 1e-9);
        Assert.Equal("from 0.00 bar to 4.00 bar", answer.Ranges[0].ToString());
    }

    [Fact]
    public void Styles_ThatAreMissing_AreNamed()
    {
        MaximumBoostResult boost = new(
            Dunnock.Centrifugal, SizingSearchAnswer(), null, null, null);
        Refused.Missing("style", () => boost.In(null!));
    }

    private static SizingAnswer<double> SizingSearchAnswer() => new SizingSearch(0, 1, 1, _ => SizedSystem.Of(System, System.Parts, [Point]))
        .Maximum(new SizedFigure<double>(figure => figure, (figure, other) => Statement.Of("figure", $"{figure.Towards(other):0.0}"), figure => figure));
}
