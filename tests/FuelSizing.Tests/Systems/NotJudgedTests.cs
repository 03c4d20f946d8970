using FuelSizing.Checks;
using FuelSizing.Circuits;
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

/// <summary>A whole system holds only if everything that it has was judged, or waived with a reason.</summary>
public class NotJudgedTests
{
    private static readonly RotationalSpeed[] Speeds = [Wren.Rpm(2000), Wren.Rpm(6000)];

    private static readonly Pressure[] Boosts = [Pressure.Zero, Wren.Kpa(30)];

    private static FuelSystem Roomy => Wren.System(injector: 800, pump: 1.5);

    private static FuelSystem AllWaived(FuelSystem system) =>
        system.NotJudged.Aggregate(system, (waived, open) => waived.Waive(open.Part, "looked at on the bench"));

    [Fact]
    public void Default_OfAnOutcome_IsThatItCannotBeSaid() => Assert.Equal(Outcome.CannotSay, default);

    [Fact]
    public void Holds_WithThingsNotJudged_IsOnlyAsFarAsJudged()
    {
        OperatingResult result = Roomy.Solve(Wren.At(3000, 0.2));
        Assert.Equal(Outcome.HoldsAsFarAsJudged, result.Outcome);
        Assert.Contains(result.NotJudged, open => open.Part == Part.Mixture);
        Assert.Contains("holds as far as judged", result.ToString(), StringComparison.Ordinal);
        SweepResult sweep = Roomy.Sweep(Speeds, Boosts, Wren.Hill);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, sweep.Verdict.Outcome);
        Assert.Equal("verdict.holds-as-far-as-judged", sweep.Verdict.Headline.Code);
        Assert.All(sweep.Verdict.NotJudged, open => Assert.Contains(open.Part.Name, sweep.Verdict.Headline.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public void Holds_WithAllThatIsNotJudgedWaived_IsAWholeVerdictThatShowsTheReasons()
    {
        SweepResult sweep = AllWaived(Roomy).Sweep(Speeds, Boosts, Wren.Hill);
        Assert.Equal(Outcome.Holds, sweep.Verdict.Outcome);
        Assert.All(sweep.Verdict.NotJudged, open => Assert.Contains("waived: looked at on the bench", open.ToString(), StringComparison.Ordinal));
        Assert.Equal(Outcome.Holds, AllWaived(Roomy).Solve(Wren.At(3000, 0.2)).Outcome);
    }

    [Fact]
    public void Waiver_OfAllButOne_LeavesThatOneOpen()
    {
        foreach (NotJudged left in Roomy.NotJudged)
        {
            FuelSystem system = Roomy.NotJudged.Where(open => open.Part != left.Part)
                .Aggregate(Roomy, (waived, open) => waived.Waive(open.Part, "looked at"));
            Assert.Equal(Outcome.HoldsAsFarAsJudged, system.Solve(Wren.At(3000, 0.2)).Outcome);
            Assert.Contains($"Not judged: {left.Part.Name}.", system.Sweep(Speeds, Boosts, Wren.Hill).Verdict.Headline.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Waiver_OfWhatIsJudged_DoesNotStopTheJudging()
    {
        FuelSystem small = Wren.System(injector: 300).Waive(Part.Injectors, "trust me");
        Assert.Equal(Outcome.Fails, small.Solve(Wren.At(6500, 0.6)).Outcome);
    }

    [Fact]
    public void Waiver_WithoutAReason_OrOfNoPart_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => Roomy.Waive(Part.Mixture, " "));
        Assert.Contains("mixture", Assert.Throws<ArgumentException>(() => Roomy.Waive(Part.Of("own.other", "another"), "why")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Waiver_StaysWithTheSystem_WhateverPartIsChanged()
    {
        FuelSystem waived = AllWaived(Roomy);
        FuelSystem[] changed =
        [
            waived.With(InjectorSet.Of(Wren.InjectorOf(900), 4)), waived.With(Fixed.At(Wren.Kpa(300))), waived.With(Wren.System().Pump),
            waived.With(Plumbing.None), waived.With(SizingLimits.Default), waived.With(Wren.Demand()),
        ];
        Assert.All(changed, system => Assert.Equal(waived.Waivers, system.Waivers));
        Assert.NotEqual(Roomy, waived);
        Assert.Equal(AllWaived(Roomy), waived);
    }

    /// <summary>In-tank pump, no suction line, 2,000 m, petrol at 60 °C: its vapour pressure is over the pressure of the air.</summary>
    [Fact]
    public void Inlet_WithoutASuctionLine_IsJudgedAtTheTank_AndBoilingFuelFails()
    {
        Conditions hot = Conditions.Of(
            Atmosphere.AtAltitude(Length.FromMeters(2000)), ElectricPotential.FromVolts(13.5), Temperature.FromDegreesCelsius(60));
        OperatingResult result = Roomy.Solve(OperatingPoint.At(Wren.Rpm(3000), Wren.Kpa(10), hot));
        Margin inlet = result.Margins.Single(margin => margin.Part == Part.Suction);
        Assert.Equal(Outcome.Fails, result.Outcome);
        Assert.Equal(Outcome.Fails, inlet.Outcome);
        Assert.Equal(hot.Atmosphere.Pressure.Pascals, ((Pressure)inlet.Used!).Pascals, 6);
        Assert.Equal(Outcome.Holds, Roomy.Solve(Wren.At(3000, 0.1)).Margins.Single(margin => margin.Part == Part.Suction).Outcome);
    }

    [Fact]
    public void Inlet_OfAFuelWithoutAVapourLaw_IsNotJudgedAndSaysSo()
    {
        Fuel bare = Fuel.Of(
            "bare", Fuel.Petrol.Composition, Fuel.Petrol.LowerHeatingValue, Fuel.Petrol.DensityAt15C, Fuel.Petrol.ExpansionAt15C);
        FuelConsumption unknown = FuelConsumption.Of(bare, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(320));
        FuelSystem system = Roomy.With(Wren.Demand(unknown));
        NotJudged open = system.NotJudged.Single(open => open.Part == Part.Suction);
        Assert.Equal("suction.no-vapour-pressure", open.Reason.Code);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, AllBut(system, Part.Suction).Solve(Wren.At(3000, 0.2)).Outcome);
    }

    /// <summary>The first hose bears what the line loses besides the pressure of the rail.</summary>
    [Fact]
    public void Rating_OverTheRailButUnderThePumpOutlet_Fails()
    {
        Line narrow = Line.Of("supply", Length.FromMillimeters(4), Length.FromMeters(4), Roughness.DrawnTube);
        FuelSystem system = FuelSystem.Return(
            Wren.Demand(), InjectorSet.Of(Wren.InjectorOf(800), 4), Fixed.At(Wren.Kpa(300)), Pump.From(Wren.PumpOf(1)),
            SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(320)), Plumbing.Of(supply: [narrow]));
        OperatingResult result = system.Solve(Wren.At(3000, 0.2));
        Margin rating = result.Margins.Single(margin => margin.Part == Part.PressureRating);
        Assert.True(result.RailGauge < Wren.Kpa(320));
        Assert.True((Pressure)rating.Used! > Wren.Kpa(320));
        Assert.Equal(Outcome.Fails, rating.Outcome);
    }

    [Fact]
    public void Wire_OverItsAmpacity_Fails_AndWithoutInsulationIsNotJudged()
    {
        Feed thin = Feed.Of(
            "to the tank", Conductor.Awg(18), Length.FromMeters(0.5), Length.FromMeters(0.5), Temperature.FromDegreesCelsius(60), Contact.DefaultFuse);
        Margin within = WireOf(thin.WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(30)))!;
        Margin hot = WireOf(thin.WithInsulation(Temperature.FromDegreesCelsius(60), Temperature.FromDegreesCelsius(58)))!;
        Margin none = WireOf(thin.WithInsulation(Temperature.FromDegreesCelsius(60), Temperature.FromDegreesCelsius(70)))!;
        Assert.Equal(Outcome.Holds, within.Outcome);
        Assert.Equal((Outcome.Fails, Outcome.Fails), (hot.Outcome, none.Outcome));
        Assert.Null(WireOf(thin));
        Assert.Contains(Wired(thin).NotJudged, open => open.Part == Part.Wire);
    }

    /// <summary>33 CFR 183.425, table 5 (read in the source): 18 AWG with insulation for 105 °C carries 20 A at 30 °C.</summary>
    [Fact]
    public void Wire_AtThirtyDegrees_MayCarryWhatTheTableSays()
    {
        Feed feed = Feed.Of("feed", Conductor.Awg(18), Length.FromMeters(1), Length.FromMeters(1), Temperature.FromDegreesCelsius(60))
            .WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(30));
        Assert.Equal(20, ((ElectricCurrent)WireOf(feed)!.Allowed!).Amperes, 9);
    }

    [Fact]
    public void Wire_ThinnerThanTheTableBegins_IsNotJudgedAndSaysWhy()
    {
        Feed feed = Feed.Of(
                "feed", Conductor.OfArea(Area.FromSquareMillimeters(0.2), ConductorMaterial.Copper, Ratio.Zero), Length.FromMeters(0.2), Length.FromMeters(0.2), Temperature.FromDegreesCelsius(150))
            .WithInsulation(Temperature.FromDegreesCelsius(125), Temperature.FromDegreesCelsius(40));
        Assert.Contains(
            "thinner than", Wired(feed).NotJudged.Single(open => open.Part == Part.Wire).ToString(), StringComparison.Ordinal);
        Assert.NotEqual(Outcome.Holds, AllBut(Wired(feed), Part.Wire).Solve(Wren.At(3000, 0.2)).Outcome);
    }

    [Fact]
    public void Fuse_LoadedOverItsShare_OrOverTheAmpacity_Fails()
    {
        Feed feed = Feed.Of("feed", Conductor.Awg(12), Length.FromMeters(1), Length.FromMeters(1), Temperature.FromDegreesCelsius(60))
            .WithInsulation(Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(30));
        double amperes = ((ElectricCurrent)WireOf(feed)!.Used!).Amperes;
        Assert.Equal(Outcome.Fails, FuseOf(feed.WithFuse(ElectricCurrent.FromAmperes(amperes / 0.8 * 0.99))).Outcome);
        Assert.Equal(Outcome.Holds, FuseOf(feed.WithFuse(ElectricCurrent.FromAmperes(amperes / 0.8 * 1.01))).Outcome);
        Margin large = FuseOf(feed.WithFuse(ElectricCurrent.FromAmperes(46)));
        Assert.Equal((Outcome.Fails, "fuse.over-ampacity"), (large.Outcome, large.Finding.Code));
        Assert.Equal(46, ((ElectricCurrent)large.Used!).Amperes, 9);
        Assert.Equal(45, ((ElectricCurrent)large.Allowed!).Amperes, 9);
        Assert.Equal(Outcome.Holds, FuseOf(feed.WithFuse(ElectricCurrent.FromAmperes(45))).Outcome);
    }

    /// <summary>The same time open after the dead time passes by the same margin, whatever the voltage.</summary>
    [Theory]
    [InlineData(10)]
    [InlineData(12)]
    [InlineData(14)]
    [InlineData(16)]
    public void MinimumPulse_OfOneOpenTime_HasOneMarginAtEveryVoltage(double volts)
    {
        Conditions conditions = Conditions.Of(Atmosphere.Standard, Wren.Volt(volts), Temperature.FromDegreesCelsius(20));
        OperatingResult idle = Roomy.Solve(OperatingPoint.At(Wren.Rpm(900), Wren.Kpa(-60), conditions));
        Margin margin = idle.Margins.Single(margin => margin.Part == Part.MinimumPulse);
        double open = idle.Pulse!.Value.Milliseconds - idle.DeadTime!.Value.Milliseconds;

        // 1.60 ms at 14 V, where the dead time is 0.85 ms at 300 kPa: 0.75 ms are left.
        Assert.Equal((open / 0.75) - 1, margin.Reserve!.Value.DecimalFractions, 6);
    }

    [Fact]
    public void MinimumPulse_StatedAtAnotherVoltage_IsJudgedByTheDeadTimeThere()
    {
        Injector stated = Injector.Of(
            "injector", VolumeFlow.FromMillilitersPerMinute(800), Wren.Kpa(300), TestFluid.Heptane, Wren.DeadTime,
            Duration.FromMilliseconds(1.6), Wren.Kpa(600), Wren.Volt(12));
        Assert.Equal(0.5, stated.MinimumOpenTime.Milliseconds, 9);
    }

    [Fact]
    public void MinimumPulse_ShorterThanItsDeadTime_IsNotJudged()
    {
        Injector contradictory = Injector.Of(
            "injector", VolumeFlow.FromMillilitersPerMinute(800), Wren.Kpa(300), TestFluid.Heptane, Wren.DeadTime,
            Duration.FromMilliseconds(0.8), Wren.Kpa(600));
        FuelSystem system = Roomy.With(InjectorSet.Of(contradictory, 4));
        Assert.Equal("minimum-pulse.shorter-than-dead-time", system.NotJudged.Single(open => open.Part == Part.MinimumPulse).Reason.Code);
    }

    /// <summary>
    /// A unit of gain 6 without a base of its own, in series with 300 kPa: at 0.3 bar it would hold 180 kPa, which never exceeds the base
    /// regulator's; quoted over base pressure it would hold 480.
    /// </summary>
    [Fact]
    public void Unit_ThatNeverActs_IsSaidToNeverAct()
    {
        RisingRate ownBase = RisingRate.From(Wren.Kpa(300), 6, Pressure.Zero);
        RisingRate none = RisingRate.From(Pressure.Zero, 6, Pressure.Zero);
        Assert.Contains("regulator.unit-never-acts", NotesWith(RegulatorSeries.Of(Fixed.At(Wren.Kpa(300)), none)));
        Assert.DoesNotContain("regulator.unit-never-acts", NotesWith(RegulatorSeries.Of(Fixed.At(Wren.Kpa(300)), ownBase)));
        Assert.DoesNotContain("regulator.unit-never-acts", NotesWith(RegulatorSeries.Of(Fixed.At(Wren.Kpa(170)), none)));
        Assert.Contains("regulator.gain-never-sets-in", NotesWith(RisingRate.From(Wren.Kpa(300), 6, Wren.Kpa(30))));
        Assert.DoesNotContain("regulator.gain-never-sets-in", NotesWith(RisingRate.From(Wren.Kpa(300), 6, Wren.Kpa(29))));

        static IEnumerable<string> NotesWith(PressureRegulator regulator) =>
            Roomy.With(regulator).Sweep(Speeds, Boosts, Wren.Hill).Notes.Select(note => note.Code);
    }

    private static FuelSystem AllBut(FuelSystem system, Part part) =>
        system.NotJudged.Where(open => open.Part != part).Aggregate(system, (waived, open) => waived.Waive(open.Part, "looked at"));

    private static FuelSystem Wired(Feed feed) => Roomy.With(Wren.WiredPump.WithFeed(feed));

    private static Margin? WireOf(Feed feed) =>
        Wired(feed).Solve(Wren.At(3000, 0.2)).Margins.SingleOrDefault(margin => margin.Part == Part.Wire);

    private static Margin FuseOf(Feed feed) => Wired(feed).Solve(Wren.At(3000, 0.2)).Margins.Single(margin => margin.Part == Part.Fuse);
}
