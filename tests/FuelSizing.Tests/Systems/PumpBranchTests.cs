using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Findings;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Systems.ByPart;

namespace FuelSizing.Tests.Systems;

/// <summary>Whole systems whose pumps have lines of their own, and whose regulator sits before the rail: what is judged where.</summary>
public class PumpBranchTests
{
    private static readonly CheckValve Valve = CheckValve.OfCoefficient("valve", Wren.Kpa(10), 6, Length.FromMillimeters(7));

    private static readonly Line Hose = Line.Of("branch hose", Length.FromMillimeters(6), Length.FromMeters(1.2), Roughness.RubberHose);

    private static readonly Filter Strainer = Filter.Of("own filter", VolumeFlow.FromLitersPerHour(60), Wren.Kpa(6));

    /// <summary>The outlet of each pump is over the joint by its own discharge, its inlet under the tank by its own suction: rating and inlet are judged there.</summary>
    [Fact]
    public void InletAndRating_AreJudgedAtThePumps()
    {
        OperatingResult result = Piped([Hose], [Hose, Valve]).Solve(Wren.At(5000, 0.4));
        Assert.All(result.Circuit.Branches, branch =>
        {
            double lost = branch.Discharge.Sum(part => part.PressureLoss.Pascals);
            Assert.True(lost > 10e3);
            Assert.Equal(result.Circuit.OutletGauge!.Value.Pascals + lost, branch.OutletGauge.Pascals, 1e-3);
            Assert.Equal(result.Circuit.InletGauge!.Value.Pascals - branch.Suction.Sum(part => part.PressureLoss.Pascals), branch.InletGauge.Pascals, 1e-3);
        });
        BranchResult own = result.Circuit.Branches[0];
        Assert.Equal(
            own.InletGauge.Pascals + result.Point.Conditions.Atmosphere.Pressure.Pascals,
            Find(result, Part.Suction).Used!.As(UnitsNet.Units.PressureUnit.Pascal),
            1);

        // Rated between the joint's pressure and the pump's own.
        Pressure between = (result.Circuit.OutletGauge!.Value + own.OutletGauge) / 2;
        FuelSystem rated = result.System.With(SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), between));
        Assert.Equal(Outcome.Fails, Find(rated.Solve(result.Point), Part.PressureRating).Outcome);
        FuelSystem joint = rated.With(PumpParallel.Of(Pump.From(Wren.Pump), Pump.From(Wren.Pump)));
        Assert.Equal(Outcome.Holds, Find(joint.Solve(result.Point), Part.PressureRating).Outcome);
    }

    /// <summary>A filter in a branch passes only its own pump's flow: it is judged by that.</summary>
    [Fact]
    public void FilterOfABranch_IsJudgedByItsOwnFlow()
    {
        OperatingResult result = Piped([], [Strainer, Hose]).Solve(Wren.At(5000, 0.4));
        Assert.Equal(
            result.Circuit.Branches.Max(branch => branch.Flow).CubicMetersPerSecond,
            Find(result, Part.Filter).Used!.As(UnitsNet.Units.VolumeFlowUnit.CubicMeterPerSecond),
            1e-9);
        Assert.Contains(Piped([], [Hose]).NotJudged, open => open.Part == Part.Filter);
    }

    /// <summary>A pump against its shut valve stands at all that it gives: the rating is judged by that, though the joint has less.</summary>
    [Fact]
    public void PumpAgainstItsShutValve_IsJudgedByItsDeadhead()
    {
        CheckValve tight = CheckValve.OfCoefficient("tight", Wren.Kpa(500), 1, Length.FromMillimeters(7));
        OperatingResult result = Wren.System(pump: 1)
            .With(PumpParallel.Of(Pump.From(Wren.Pump), PumpBranch.Of(Pump.From(Wren.Pump), discharge: [tight])))
            .Solve(Wren.At(3000, 0.2));
        BranchResult shut = Assert.Single(result.Circuit.Branches);
        Assert.True(shut.IsShut);
        Assert.Empty(shut.Discharge);
        Assert.Equal(Wren.Pump.Deadhead!.Value.Pascals, shut.OutletGauge.Pascals, 1e3);
        Assert.True(PointReading.Of(result).Maximum.OutletGauge.Value >= shut.OutletGauge.Pascals - 1e-6);
    }

    /// <summary>The remedy says what is asked for at the joint: pumps without lines that give just that serve.</summary>
    [Fact]
    public void Remedy_OfPumpsWithLines_SpeaksOfTheJoint()
    {
        OperatingResult result = Piped([], [Hose, Valve], 0.35).Solve(Wren.At(6500, 0.6));
        Assert.Equal(Outcome.Fails, Find(result, Part.Pump).Outcome);
        Assert.Contains("at the joint", Find(result, Part.Pump).Check.RemedyFor(new([result], [result]))!.ToString(), StringComparison.Ordinal);
    }

    /// <summary>A filter before the regulator takes from the pumps and not from the rail; one behind it takes from the rail.</summary>
    [Fact]
    public void FilterBeforeTheRegulator_CostsThePumpsAndNotTheRail()
    {
        Filter filter = Filter.Of("filter", VolumeFlow.FromLitersPerHour(200), Wren.Kpa(30));
        FuelSystem plain = FuelSystem.Returnless(Wren.Demand(), Wren.System(pump: 1).Injectors, Fixed.At(Wren.Kpa(380)), Pump.From(Wren.PumpOf(1.3)));
        OperatingResult bare = plain.Solve(Wren.At(4500, 0.3));
        OperatingResult before = plain.With(Plumbing.Of(supply: [Hose], toRegulator: [filter])).Solve(Wren.At(4500, 0.3));
        OperatingResult behind = plain.With(Plumbing.Of(supply: [filter, Hose])).Solve(Wren.At(4500, 0.3));
        double hose = before.Circuit.Paths[1].PressureLoss.Pascals;
        Assert.Equal(bare.RailGauge.Pascals - hose, before.RailGauge.Pascals, 1e-6);
        Assert.True(behind.RailGauge < before.RailGauge);
        Assert.True(before.Circuit.PumpFlow < bare.Circuit.PumpFlow);
        Assert.Equal(before.Circuit.PumpFlow!.Value.CubicMetersPerSecond, before.Circuit.Paths[0].Flow.CubicMetersPerSecond, 1e-15);
        Assert.Equal(before.InjectedFlow.CubicMetersPerSecond, before.Circuit.Paths[1].Flow.CubicMetersPerSecond, 1e-15);
        Assert.Equal(
            before.Circuit.PumpFlow.Value.CubicMetersPerSecond, Find(before, Part.Filter).Used!.As(UnitsNet.Units.VolumeFlowUnit.CubicMeterPerSecond), 1e-12);
    }

    /// <summary>The more is injected, the lower the dead-headed rail; the less returns, the less a regulator with a slope holds besides.</summary>
    [Fact]
    public void DeadHeadedRail_FallsWithTheInjectedFlow()
    {
        FuelSystem system = FuelSystem.Returnless(
            Wren.Demand(), Wren.System(pump: 1).Injectors, Fixed.At(Wren.Kpa(380)), Pump.From(Wren.PumpOf(1.3)), plumbing: Plumbing.Of(supply: [Hose], toRegulator: [Strainer]));
        FuelSystem sloped = system.With(Fixed.At(Wren.Kpa(380)).WithFlow(RegulatorFlow.Rising(Wren.Kpa(20), VolumeFlow.FromLitersPerHour(100), VolumeFlow.Zero)));
        (double Rail, double Over) before = (double.PositiveInfinity, double.PositiveInfinity);
        foreach (double rpm in (double[])[1500, 2500, 3500, 4500, 5500])
        {
            OperatingResult one = system.Solve(Wren.At(rpm, 0.3));
            OperatingResult other = sloped.Solve(Wren.At(rpm, 0.3));
            double over = (other.RailGauge - one.RailGauge).Pascals;
            Assert.Equal(20e3 * other.Circuit.ReturnedFlow!.Value.LitersPerHour / 100, over, 1);
            Assert.True(one.RailGauge.Pascals < before.Rail && over < before.Over);
            before = (one.RailGauge.Pascals, over);
        }
    }

    [Fact]
    public void WhatIsNotModelled_IsRefused()
    {
        PumpBranch branch = PumpBranch.Of(Pump.From(Wren.Pump), discharge: [Hose]);
        Assert.Throws<ArgumentException>(() => PumpSeries.Of(SeriesBypass.None, branch, Pump.From(Wren.Pump)));
        Assert.Throws<ArgumentException>(() => SurgeTank.Of(Volume.FromLiters(1), branch, ReturnDestination.SurgeTank));
        Assert.Throws<ArgumentException>(() => RunCheck.Of(Wren.System(pump: 1).With(branch)));
        Assert.Throws<InvalidOperationException>(() => branch.CurveAt(Wren.Volt(13.5)));
        Plumbing lines = Plumbing.Of(toRegulator: [Hose]);
        Assert.Throws<ArgumentException>(() => Wren.System(pump: 1).With(lines));
        FuelSystem returnless = FuelSystem.Returnless(Wren.Demand(), Wren.System(pump: 1).Injectors, Fixed.At(Wren.Kpa(380)), Pump.From(Wren.Pump), plumbing: lines);
        Assert.Throws<ArgumentException>(() => returnless.With(ElectronicReturnless.Holding(Wren.Kpa(380), false, Wren.Volt(9))));
        Assert.Throws<ArgumentException>(() => RunCheck.Of(returnless));
    }

    private static FuelSystem Piped(IFlowLoss[] suction, IFlowLoss[] discharge, double scale = 1)
    {
        PumpBranch branch = PumpBranch.Of(Pump.From(Wren.PumpOf(scale)), suction, discharge);
        return Wren.System(pump: 1).With(PumpParallel.Of(branch, branch));
    }
}
