using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>What is said of an uncovered pickup where everything is known, where pumps are known between bounds, and where nothing is.</summary>
public class PickupBoundsTests
{
    private static readonly OperatingPoint Full = Wren.At(6000, 0.6);
    private static readonly OperatingPoint Cruise = Wren.At(2500, -0.3);

    // On 6 V nobody knows what any of the pumps gives.
    private static readonly OperatingPoint Dim = OperatingPoint.At(
        Wren.Rpm(5000), Pressure.FromBars(0.5), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(6), Wren.Hill.FuelTemperature));

    /// <summary>What is exact is told as it is, both times with the 3 s in which the lift pump primes.</summary>
    [Fact]
    public void Times_ThatAreExact_AreToldAsTheyAre()
    {
        UncoveredPickupResult exact = SurgeTanks.Wren(SurgeTanks.Bare().WithPrimingTime(Duration.FromSeconds(3))).UncoverPickup(Full);
        double draw = exact.Result.InjectedFlow.LitersPerHour;
        Assert.Equal((1.3 / draw * 3600) - 3, exact.MaximumCarried!.Value.Seconds, 1e-9);
        Assert.Equal((1.3 / (232 - draw) * 3600) + 3, exact.MinimumRefill!.Value.Seconds, 1e-9);
        Assert.Equal(
            FormattableString.Invariant($"carries {exact.MaximumCarried.Value.Seconds:0.00} s of uncovered pickup, refills in {exact.MinimumRefill.Value.Seconds:0.00} s"), exact.ToString());
    }

    /// <summary>A lift pump over the highest voltage of its data is known between bounds: it refills in at most so long, and may do so sooner.</summary>
    [Fact]
    public void Times_BetweenBounds_AreToldAsBounds()
    {
        UncoveredPickupResult bounded = SurgeTanks.Wren(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(1, 12)), ReturnDestination.SurgeTank)).UncoverPickup(Full);
        Assert.Equal(RefillAnswer.Refills, bounded.Refill);
        Assert.True(bounded.MinimumRefill < bounded.MaximumRefill);
        Assert.Contains(", refills in at most ", bounded.ToString(), StringComparison.Ordinal);

        // A lift pump that may bring more than is drawn, or less.
        UncoveredPickupResult open = SurgeTanks.Wren(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(0.41, 12)), ReturnDestination.SurgeTank)).UncoverPickup(Full);
        Assert.Equal((RefillAnswer.CannotSay, false, true), (open.Refill, open.MinimumRefill is null, open.MaximumRefill is null));
        Assert.EndsWith(", whether it refills at this demand is not known: the pumps' data ends before the point", open.ToString(), StringComparison.Ordinal);

        // One that surely brings less: neither bound is a time.
        UncoveredPickupResult never = SurgeTanks.Wren(SurgeTanks.Bare(scale: 0.3)).UncoverPickup(Full);
        Assert.Equal((RefillAnswer.NeverRefills, true, true), (never.Refill, never.MinimumRefill is null, never.MaximumRefill is null));
    }

    /// <summary>A main pump known between bounds, whose return goes to the main tank, draws between bounds: the tank surely carries so long, and may carry longer.</summary>
    [Fact]
    public void Carried_ByABoundedDraw_IsAtLeast()
    {
        OperatingPoint strong = OperatingPoint.At(Wren.Rpm(4000), Wren.Kpa(20), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(14.5), Wren.Hill.FuelTemperature));
        UncoveredPickupResult corner = SurgeTanks.Wren(SurgeTanks.Bare(to: ReturnDestination.MainTank)).UncoverPickup(strong);
        Assert.True(corner.MinimumCarried < corner.MaximumCarried);
        Assert.StartsWith("carries at least ", corner.ToString(), StringComparison.Ordinal);
    }

    /// <summary>An engine that burns nothing draws nothing where all else returns to the surge tank; what a pump without data draws is not known.</summary>
    [Fact]
    public void Carried_OfNoDrawOrAnUnknownOne_SaysWhich()
    {
        FuelSystem idle = FuelSystem.Return(
            FuelDemandModel.Of(Wren.Engine, Wren.Turbocharger, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, DemandBasis.Power),
            InjectorSet.Of(Wren.InjectorOf(500), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(Wren.Pump)).With(SurgeTanks.Bare());
        UncoveredPickupResult still = idle.UncoverPickup(Wren.At(7000, -0.83));
        Assert.Null(still.MinimumCarried);
        Assert.StartsWith("carries the uncovered pickup without end, for nothing is drawn, ", still.ToString(), StringComparison.Ordinal);

        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare(to: ReturnDestination.MainTank));
        UncoveredPickupResult unknown = system.UncoverPickup(Dim);
        Assert.Null(unknown.MinimumCarried);
        Assert.StartsWith("how long it carries an uncovered pickup is not known, for the main pump's data does not cover the point, ", unknown.ToString(), StringComparison.Ordinal);
        Assert.NotNull(system.UncoverPickup(Cruise).MinimumCarried);
    }

    /// <summary>A pattern with a point of which nothing is known has no level from there on; one that only names such a point, for no time, has all of them.</summary>
    [Fact]
    public void Pattern_WithAPointThatIsNotKnown_HasNoLevelAfterIt()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare(to: ReturnDestination.MainTank));
        PickupPatternResult unknown = system.UncoverPickup(PickupPattern.Of(Cruise, Duration.FromSeconds(2), Dim, Duration.FromSeconds(3), 2));
        Assert.Equal(DryAnswer.CannotSay, unknown.Answer);
        Assert.Equal([true, true, false, false, false], unknown.Levels.Select(level => level.Minimum is not null));
        Assert.Equal((true, true), (unknown.MinimumLowest is null, unknown.MinimumAtEnd is null));
        Assert.Equal("the level in the surge tank is not known: the pumps' data does not cover the points", unknown.ToString());

        PickupPatternResult named = system.UncoverPickup(PickupPattern.Of(Cruise, Duration.FromSeconds(2), Dim, Duration.Zero, 2));
        Assert.Equal(DryAnswer.StaysWet, named.Answer);
        Assert.All(named.Levels, level => Assert.NotNull(level.Minimum));
    }

    /// <summary>In words the repetition is the one in which it runs dry, or may.</summary>
    [Fact]
    public void Words_NameTheRepetition()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare(scale: 0.3));
        double draw = system.Solve(Full).InjectedFlow.LitersPerSecond;
        Assert.StartsWith(
            "the surge tank runs dry in repetition 4 of 9: ",
            system.UncoverPickup(PickupPattern.Of(Full, Duration.FromSeconds(1.3 / draw / 3.5), Full, Duration.Zero, 9)).ToString(),
            StringComparison.Ordinal);

        FuelSystem bounded = SurgeTanks.Wren(SurgeTank.Of(Volume.FromLiters(1), Pump.From(SurgeTanks.LiftCurve(0.45, 15)), ReturnDestination.SurgeTank));
        PickupPatternResult may = bounded.UncoverPickup(PickupPattern.Of(Full, Duration.FromSeconds(1), Full, Duration.FromSeconds(20), 300));
        Assert.True(may.DryIn > 1);
        Assert.StartsWith($"the surge tank may run dry in repetition {may.DryIn} of 300: ", may.ToString(), StringComparison.Ordinal);
    }

    /// <summary>A ten-millionth more than the tank carries is too much, for a tank of any size.</summary>
    [Fact]
    public void Pattern_OfAHairMoreThanTheTankCarries_RunsDry()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare(scale: 0.3));
        double seconds = 1.3 / system.Solve(Full).InjectedFlow.LitersPerSecond;
        DryAnswer For(double times) => system.UncoverPickup(PickupPattern.Of(Full, Duration.FromSeconds(seconds * times), Full, Duration.Zero, 1)).Answer;
        Assert.Equal((DryAnswer.StaysWet, DryAnswer.RunsDry), (For(1), For(1.0000001)));
    }

    [Fact]
    public void Question_WithAPieceMissing_IsRefusedByName()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare());
        Refused.Missing("system", () => UncoveredPickup.UncoverPickup(null!, Full));
        Refused.Missing("point", () => system.UncoverPickup((OperatingPoint)null!));
        Refused.Missing("pattern", () => system.UncoverPickup((PickupPattern)null!));
        Refused.Missing("uncovered", () => PickupPattern.Of(null!, Duration.Zero, Full, Duration.Zero, 1));
        Refused.Missing("covered", () => PickupPattern.Of(Full, Duration.Zero, null!, Duration.Zero, 1));
        HeldBoost line = HeldBoost.Of(Pressure.FromBars(0.6), Wren.Rpm(3000), Wren.Rpm(6800));
        Assert.Equal("system", Assert.Throws<ArgumentException>(() => Wren.System().UncoverPickup(line, Wren.Rpm(3000), Wren.Rpm(6800))).ParamName);
        Assert.Equal("system", Assert.Throws<ArgumentException>(() => Wren.System().UncoverPickup(PickupPattern.Of(Full, Duration.Zero, Full, Duration.Zero, 1))).ParamName);
    }
}
