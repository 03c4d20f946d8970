using CsCheck;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>How long a surge tank carries an uncovered pickup, how long it takes to refill, and patterns of corners: by hand.</summary>
public class UncoveredPickupTests
{
    private static readonly OperatingPoint Full = Wren.At(6000, 0.6);
    private static readonly OperatingPoint Cruise = Wren.At(2500, -0.3);

    /// <summary>t = V/Q and t = V/(Q_lift − Q): a lift pump of no lines brings its free flow, 232 L/h.</summary>
    [Fact]
    public void Times_AreVolumeOverFlow()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare(litres: 1.3));
        UncoveredPickupResult corner = system.UncoverPickup(Full);
        double draw = system.Solve(Full).InjectedFlow.LitersPerHour;
        Assert.Equal(1.3 / draw * 3600, corner.MinimumCarried!.Value.Seconds, 1e-9);
        Assert.Equal(corner.MinimumCarried, corner.MaximumCarried);
        Assert.Equal(RefillAnswer.Refills, corner.Refill);
        Assert.Equal(1.3 / (232 - draw) * 3600, corner.MaximumRefill!.Value.Seconds, 1e-9);
        Assert.Equal(corner.MinimumRefill, corner.MaximumRefill);
    }

    /// <summary>Until it has primed the lift pump brings nothing: the tank carries so much less, and refills so much later.</summary>
    [Fact]
    public void PrimingTime_IsTakenOffAndAdded()
    {
        FuelSystem at = SurgeTanks.Wren(SurgeTanks.Bare());
        FuelSystem slow = SurgeTanks.Wren(SurgeTanks.Bare().WithPrimingTime(Duration.FromSeconds(3)));
        Assert.Equal(3, at.UncoverPickup(Full).MinimumCarried!.Value.Seconds - slow.UncoverPickup(Full).MinimumCarried!.Value.Seconds, 1e-9);
        Assert.Equal(3, slow.UncoverPickup(Full).MaximumRefill!.Value.Seconds - at.UncoverPickup(Full).MaximumRefill!.Value.Seconds, 1e-9);

        // More than the tank carries: nothing.
        FuelSystem never = SurgeTanks.Wren(SurgeTanks.Bare(litres: 0.05).WithPrimingTime(Duration.FromSeconds(60)));
        Assert.Equal(Duration.Zero, never.UncoverPickup(Full).MinimumCarried);
    }

    /// <summary>A lift pump that brings just what is drawn never refills the tank; a hair more does, in the end.</summary>
    [Fact]
    public void LiftFlow_EqualToTheDraw_NeverRefills()
    {
        double draw = SurgeTanks.Wren(SurgeTanks.Bare()).Solve(Full).InjectedFlow.LitersPerHour;
        UncoveredPickupResult Of(double flow) => SurgeTanks.Wren(SurgeTank.Of(
            Volume.FromLiters(1),
            Pump.From(PumpCurve.At("lift pump", Wren.Volt(13.5), (Pressure.Zero, SurgeTanks.Litres(flow)), (SurgeTanks.Kpa(50), VolumeFlow.Zero))),
            ReturnDestination.SurgeTank)).UncoverPickup(Full);
        Assert.Equal(RefillAnswer.NeverRefills, Of(draw).Refill);
        Assert.Null(Of(draw).MaximumRefill);
        Assert.Null(Of(draw).MinimumRefill);
        Assert.Equal(RefillAnswer.NeverRefills, Of(draw * 0.9).Refill);
        Assert.Contains("never refills", Of(draw).ToString(), StringComparison.Ordinal);
        Assert.Equal(RefillAnswer.Refills, Of(draw * 1.000001).Refill);
        Assert.True(Of(draw * 1.000001).MaximumRefill > Duration.FromDays(10));
    }

    /// <summary>Three corners by hand: 20 mL/s drawn for 30 s, 10 mL/s gained for 40 s: 1.3 L → 0.7 → 1.1 → 0.5 → 0.9 → 0.3 → 0.7.</summary>
    [Fact]
    public void Pattern_OfThreeCorners_IsTheSumByHand()
    {
        // One demand at both points, so that the car's own figure scales the times: 1.3 L less 0.6 L each time, and 0.4 L back.
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare(litres: 1.3));
        double draw = system.Solve(Full).InjectedFlow.CubicMetersPerSecond;
        double gain = (232 / 3.6e6) - draw;
        PickupPatternResult three = system.UncoverPickup(PickupPattern.Of(
            Full, Duration.FromSeconds(0.6e-3 / draw), Full, Duration.FromSeconds(0.4e-3 / gain), 3));
        double[] levels = [1.3, 0.7, 1.1, 0.5, 0.9, 0.3, 0.7];
        Assert.Equal(levels.Length, three.Levels.Count);
        foreach ((double level, (Volume? minimum, Volume? maximum)) in levels.Zip(three.Levels))
        {
            Assert.Equal(level, minimum!.Value.Liters, 1e-9);
            Assert.Equal(level, maximum!.Value.Liters, 1e-9);
        }

        Assert.Equal(DryAnswer.StaysWet, three.Answer);
        Assert.Equal(0.3, three.MinimumLowest!.Value.Liters, 1e-9);
        Assert.Equal(0.7, three.MinimumAtEnd!.Value.Liters, 1e-9);

        // In the fifth corner 0.5 − 0.6 would be left.
        PickupPatternResult five = system.UncoverPickup(PickupPattern.Of(
            Full, Duration.FromSeconds(0.6e-3 / draw), Full, Duration.FromSeconds(0.4e-3 / gain), 6));
        Assert.Equal(DryAnswer.RunsDry, five.Answer);
        Assert.Equal(5, five.DryIn);
        Assert.Equal(Volume.Zero, five.MinimumLowest);
    }

    /// <summary>A pattern that the tank carries to the last drop stays wet; a hair more does not: the same limit as of the time that it carries.</summary>
    [Fact]
    public void Pattern_OfAsLongAsTheTankCarries_StaysWet()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare());
        Duration carried = system.UncoverPickup(Full).MinimumCarried!.Value;
        DryAnswer For(double times) => system.UncoverPickup(PickupPattern.Of(Full, carried * times, Cruise, Duration.Zero, 1)).Answer;
        Assert.Equal(DryAnswer.StaysWet, For(1));
        Assert.Equal(DryAnswer.RunsDry, For(1.000001));
    }

    /// <summary>The pump primes while the pickup is covered: a covered stretch that is shorter is as good as uncovered.</summary>
    [Fact]
    public void Pattern_WithStretchesShorterThanPriming_NeverRefills()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare(litres: 5).WithPrimingTime(Duration.FromSeconds(10)));
        PickupPatternResult result = system.UncoverPickup(PickupPattern.Of(Full, Duration.FromSeconds(2), Full, Duration.FromSeconds(8), 3));
        double draw = system.Solve(Full).InjectedFlow.Liters();
        Assert.Equal(5 - (30 * draw), result.MinimumAtEnd!.Value.Liters, 1e-9);
    }

    /// <summary>A huge surge tank never runs dry.</summary>
    [Fact]
    public void HugeTank_NeverRunsDry() =>
        Gen.Select(Gen.Double[2000, 7000], Gen.Double[-0.3, 0.8], Gen.Double[0, 30], Gen.Double[0, 30], Gen.Int[1, 12]).Sample((rpm, boost, uncovered, covered, times) =>
            SurgeTanks.Wren(SurgeTanks.Bare(litres: 50)).UncoverPickup(PickupPattern.Of(
                Wren.At(rpm, boost), Duration.FromSeconds(uncovered), Cruise, Duration.FromSeconds(covered), times)).Answer == DryAnswer.StaysWet);

    /// <summary>A larger tank, a shorter corner, a longer straight: none leaves less in the tank.</summary>
    [Fact]
    public void Lowest_OfAnEasierPattern_IsNoLess() =>
        Gen.Select(Gen.Double[0.2, 3], Gen.Double[0, 15], Gen.Double[0, 15], Gen.Int[1, 10], Gen.Double[0, 1]).Sample((litres, uncovered, covered, times, more) =>
        {
            double Lowest(double volume, double corner, double straight, int often) => SurgeTanks.Wren(SurgeTanks.Bare(volume)).UncoverPickup(PickupPattern.Of(
                Full, Duration.FromSeconds(corner), Cruise, Duration.FromSeconds(straight), often)).MinimumLowest!.Value.Liters;
            double lowest = Lowest(litres, uncovered, covered, times) - 1e-12;
            return Lowest(litres + more, uncovered, covered, times) >= lowest
                && Lowest(litres, uncovered * (1 - more), covered, times) >= lowest
                && Lowest(litres, uncovered, covered + more, times) >= lowest
                && Lowest(litres, uncovered, covered, Math.Max(1, times - 1)) >= lowest;
        });

    /// <summary>Where the pumps' data ends the true answer lies between the bounds: every lift pump that the data allow is within them.</summary>
    [Fact]
    public void Bounds_GoInTheirDirection()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(0.6, 15)), ReturnDestination.SurgeTank));
        PickupPatternResult pattern = system.UncoverPickup(PickupPattern.Of(Full, Duration.FromSeconds(10), Cruise, Duration.FromSeconds(5), 4));
        Assert.True(pattern.MinimumLowest < pattern.MaximumLowest);
        Assert.True(pattern.MinimumAtEnd < pattern.MaximumAtEnd);
        Assert.All(pattern.Levels, level => Assert.True(level.Minimum <= level.Maximum));
    }

    [Fact]
    public void Pattern_BetweenItsBounds_CannotSay()
    {
        // The conservative bound of the lift pump's flow leaves the tank dry in the end, the other does not.
        FuelSystem system = SurgeTanks.Wren(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(0.45, 15)), ReturnDestination.SurgeTank));
        PickupPattern pattern = PickupPattern.Of(Full, Duration.FromSeconds(1), Full, Duration.FromSeconds(20), 300);
        PickupPatternResult result = system.UncoverPickup(pattern);
        Assert.Equal(DryAnswer.CannotSay, result.Answer);
        Assert.NotNull(result.DryIn);
        Assert.Contains("may run dry", result.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Along a line the worst place is no better than any of the places shown, and it is where most is drawn.</summary>
    [Fact]
    public void AlongALine_TheWorstIsNoBetterThanAnyPlace()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Everything);
        HeldBoost line = HeldBoost.Of(Pressure.FromBars(0.6), Wren.Rpm(3000), Wren.Rpm(6800));
        UncoveredPickupAlongLine pull = system.UncoverPickup(line, Wren.Rpm(3000), Wren.Rpm(6800), Wren.Hill);
        Assert.Equal(13, pull.Results.Count);
        Assert.All(pull.Results, result => Assert.True(pull.Shortest.MinimumCarried <= result.MinimumCarried));
        for (int rpm = 3000; rpm <= 6800; rpm += 25)
        {
            Pressure boost = line.At(Wren.Rpm(rpm), system.Demand, Wren.Hill.Atmosphere);
            UncoveredPickupResult at = system.UncoverPickup(OperatingPoint.At(Wren.Rpm(rpm), boost, Wren.Hill));
            Assert.True(pull.Shortest.MinimumCarried!.Value.Seconds <= at.MinimumCarried!.Value.Seconds * (1 + 1e-6), $"{rpm} rev/min");
        }
    }

    /// <summary>A second main pump that boost switches may still run as boost falls: with the return to the main tank more is drawn then, and that counts.</summary>
    [Fact]
    public void SwitchedMainPump_BetweenItsBoosts_IsTakenWhereMoreIsDrawn()
    {
        Pump pump = Pump.From(Wren.PumpOf(0.6));
        FuelSystem plain = SurgeTanks.Wren(SurgeTanks.Bare(to: ReturnDestination.MainTank));
        FuelSystem staged = plain.With(PumpParallel.Of(pump, SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), pump)));
        double Carried(FuelSystem system, double boost) => system.UncoverPickup(Wren.At(4000, boost)).MinimumCarried!.Value.Seconds;
        Assert.Equal(Carried(plain.With(PumpParallel.Of(pump, pump)), 0.35), Carried(staged, 0.35), 1e-9);
        Assert.Equal(Carried(plain.With(pump), 0.25), Carried(staged, 0.25), 1e-9);
        Assert.Equal(
            plain.With(PumpParallel.Of(pump, pump)).UncoverPickup(PickupPattern.Of(
                Wren.At(4000, 0.35), Duration.FromSeconds(9), Wren.At(4000, 0.25), Duration.Zero, 1)).MinimumLowest!.Value.Liters,
            staged.UncoverPickup(PickupPattern.Of(
                Wren.At(4000, 0.35), Duration.FromSeconds(9), Wren.At(4000, 0.25), Duration.Zero, 1)).MinimumLowest!.Value.Liters,
            1e-9);
    }

    [Fact]
    public void System_WithoutASurgeTank_IsRefused()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Wren.System().UncoverPickup(Full));
        Assert.Equal("system", refused.ParamName);
        Assert.Contains("FuelSystem.With(SurgeTank)", refused.Message, StringComparison.Ordinal);
    }
}

/// <summary>Litres a second.</summary>
file static class FlowReading
{
    public static double Liters(this VolumeFlow flow) => flow.LitersPerSecond;
}
