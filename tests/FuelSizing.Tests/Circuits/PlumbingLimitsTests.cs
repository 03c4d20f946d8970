using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>What lines as a whole know: up to which flow their filters' losses are known, and whether anything depends on viscosity.</summary>
public class PlumbingLimitsTests
{
    private static readonly IFlowLoss[] Bare = [new SquareLawResistance(1e12)];

    /// <summary>The pumps pass the filters before, between and behind them; those in the return line as much less as is injected.</summary>
    [Theory]
    [InlineData(90, 200, 200, 200, 90)]
    [InlineData(200, 90, 200, 200, 90)]
    [InlineData(200, 200, 90, 200, 90)]
    [InlineData(200, 200, 200, 60, 100)]
    [InlineData(200, 200, 200, 180, 200)]
    public void MaximumKnownFlow_IsThatOfTheFirstFilterToEnd(double suction, double toRegulator, double supply, double back, double expected)
    {
        Plumbing lines = Plumbing.Of(FilterOf(suction), FilterOf(supply), FilterOf(back), FilterOf(toRegulator));
        Assert.Equal(expected / 3.6e6, lines.MaximumKnownFlow(40 / 3.6e6), 1e-15);
        Assert.True(lines.HasFilter);
    }

    /// <summary>A filter anywhere is one; lines without any have no end.</summary>
    [Fact]
    public void Filter_OnAnyPath_IsFound()
    {
        Assert.True(Plumbing.Of(suction: FilterOf(90)).HasFilter);
        Assert.True(Plumbing.Of(supply: FilterOf(90)).HasFilter);
        Assert.True(Plumbing.Of(returnLine: FilterOf(90)).HasFilter);
        Assert.True(Plumbing.Of(toRegulator: FilterOf(90)).HasFilter);
        Plumbing none = Plumbing.Of(Bare, Bare, Bare, Bare);
        Assert.False(none.HasFilter);
        Assert.Equal(double.PositiveInfinity, none.MaximumKnownFlow(1e-5));
    }

    /// <summary>A part on any path may lose more in a colder fuel.</summary>
    [Fact]
    public void Viscosity_MattersWhereThereIsAnyPart()
    {
        Assert.False(Plumbing.None.NeedsViscosity);
        Assert.True(Plumbing.Of(suction: Bare).NeedsViscosity);
        Assert.True(Plumbing.Of(supply: Bare).NeedsViscosity);
        Assert.True(Plumbing.Of(returnLine: Bare).NeedsViscosity);
        Assert.True(Plumbing.Of(toRegulator: Bare).NeedsViscosity);
        Assert.True(Plumbing.Of(toRegulator: Bare).HasToRegulator);
        Assert.False(Plumbing.Of(Bare, Bare, Bare).HasToRegulator);
        Assert.Equal("parts: suction 1, supply 0, return 2", Plumbing.Of(Bare, null, [.. Bare, .. Bare]).ToString());
        Assert.Equal("parts: suction 0, to the regulator 1, supply 1, return 0", Plumbing.Of(supply: Bare, toRegulator: Bare).ToString());
    }

    /// <summary>A part that is missing from a line of a surge tank is named by that line.</summary>
    [Fact]
    public void MissingPart_OfASurgeTanksLine_IsNamedByTheLine()
    {
        Pump lift = Pump.From(Systems.SurgeTanks.LiftCurve());
        Volume litre = Volume.FromLiters(1);
        Refused.Missing("suction", () => SurgeTank.Of(litre, lift, ReturnDestination.SurgeTank, suction: [Bare[0], null!]));
        Refused.Missing("liftLine", () => SurgeTank.Of(litre, lift, ReturnDestination.SurgeTank, liftLine: [null!]));
        Refused.Missing("overflow", () => SurgeTank.Of(litre, lift, ReturnDestination.SurgeTank, overflow: [null!]));
        Refused.Missing("liftPump", () => SurgeTank.Of(litre, null!, ReturnDestination.SurgeTank));
        Refused.Missing("liftPump", () => SurgeTank.Of(litre, lift, ReturnDestination.SurgeTank).With(null!));
        Assert.Equal("1.00 L usable, lift pump L, return to the surge tank", SurgeTank.Of(litre, lift, ReturnDestination.SurgeTank).ToString());
        Assert.Equal("1.00 L usable, lift pump L, return to the main tank", SurgeTank.Of(litre, lift, ReturnDestination.MainTank).ToString());
    }

    // Of which the loss is known up to so much, three times the flow at which it was measured.
    private static IFlowLoss[] FilterOf(double litresPerHour) => [Filter.Of("filter", VolumeFlow.FromLitersPerHour(litresPerHour / 3), Wren.Kpa(5))];
}
