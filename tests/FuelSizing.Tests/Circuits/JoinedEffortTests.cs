using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Two circuits joined by a surge tank are a search over circuits, each of which is a search: what is known already is not solved again. Lift line, overflow line and the main circuit's supply line count how
/// often they are asked.
/// </summary>
public class JoinedEffortTests
{
    private const double MainFree = 6e-5;
    private const double MainDeadhead = 8e5;
    private const double LiftFree = 8e-5;
    private const double LiftDeadhead = 9e4;

    // Questions to the supply line for the main circuit by itself.
    private const int Alone = 4;

    private readonly SquareLawResistance _liftLine = new(8e3 / (5e-5 * 5e-5));
    private readonly SquareLawResistance _overflow = new(2e4 / (5e-5 * 5e-5));
    private readonly SquareLawResistance _supply = new(4e4 / (5e-5 * 5e-5));

    /// <summary>
    /// With all pumps known there is one balance. A return to the surge tank draws what is injected at any pressure: the lift pump meets its circuit as the tank fills and as it overflows, and the main pumps
    /// meet theirs with the tank at ambient pressure, and under its own. A return to the other tank draws more the more pressure there is in this: the balance is searched for, with a few circuits more.
    /// </summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank, 12, 9, 8)]
    [InlineData(ReturnDestination.MainTank, 42, 49, 24)]
    public void KnownPumps_HaveOneBalance(ReturnDestination to, int lift, int overflow, int main)
    {
        JoinedCircuits joined = Join(to, Pumps(LiftFree, LiftDeadhead));
        Assert.True(joined.IsFull && joined.IsSurelyFull);
        AtMost(lift, overflow, main);
        Assert.Equal((joined.Balance.Pressure, joined.Balance.Pressure), (joined.MinimumGauge, joined.MaximumGauge));
    }

    /// <summary>With a lift pump whose most is not its estimate there are two balances more, no other circuit is asked for, and the tank's pressure has bounds.</summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank, 31, 26, 24)]
    [InlineData(ReturnDestination.MainTank, 120, 145, 72)]
    public void OpenLiftPump_HasAsManyBalancesAsReadings(ReturnDestination to, int lift, int overflow, int main)
    {
        JoinedCircuits joined = Join(to, Pumps(LiftFree, LiftDeadhead, open: true));
        AtMost(lift, overflow, main);
        Assert.Equal(joined.Balance.Pressure, joined.MinimumGauge);
        Assert.True(joined.MaximumGauge > joined.MinimumGauge * 1.02);
        Assert.Equal(joined.Filling.Estimate, joined.Filling.Lower with { MinimumAtSet = joined.Filling.Estimate.MinimumAtSet, MaximumAtSet = joined.Filling.Estimate.MaximumAtSet });
    }

    /// <summary>Where no more is lifted than drawn the tank does not fill, and both circuits are known already: the lift pump meets its own once, and the main circuit is not solved again.</summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank)]
    [InlineData(ReturnDestination.MainTank)]
    public void TankThatDoesNotFill_IsNotSolvedFor(ReturnDestination to)
    {
        JoinedCircuits joined = Join(to, Pumps(1.9e-5, LiftDeadhead));
        Assert.False(joined.IsFull || joined.IsSurelyFull);
        AtMost(4, 1, Alone);
    }

    /// <summary>Without an overflow line a full tank has no pressure either: nothing is searched for.</summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank)]
    [InlineData(ReturnDestination.MainTank)]
    public void TankWithoutAnOverflowLine_IsNotSearchedFor(ReturnDestination to)
    {
        JoinedCircuits joined = Join(to, Pumps(LiftFree, LiftDeadhead), []);
        Assert.Equal((true, 0, 0), (joined.IsFull, joined.MinimumGauge, joined.MaximumGauge));
        AtMost(6, 0, Alone);
    }

    /// <summary>What a lift pump has to bring is improved until it settles: at once where the pressure in the tank does not change the draw, after a few circuits where it does.</summary>
    [Theory]
    [InlineData(ReturnDestination.SurgeTank, 1, 4)]
    [InlineData(ReturnDestination.MainTank, 5, 20)]
    public void RequiredLift_SettlesAfterAFewCircuits(ReturnDestination to, int overflow, int main)
    {
        JoinedCircuits joined = Join(to, Pumps(3.5e-5, LiftDeadhead));
        (int before, int supply) = (_overflow.Asked, _supply.Asked);
        Assert.InRange(joined.RequiredWith(0.1), 1.1 * joined.MaximumDraw, 1.2 * joined.MaximumDraw);
        Assert.InRange(_overflow.Asked - before, 1, overflow);
        Assert.InRange(_supply.Asked - supply, 1, main);
    }

    private void AtMost(int lift, int overflow, int main)
    {
        Assert.InRange(_liftLine.Asked, 1, lift);
        Assert.InRange(_overflow.Asked, 0, overflow);
        Assert.InRange(_supply.Asked, 1, main);
    }

    private JoinedCircuits Join(ReturnDestination to, PumpAssembly lift, IFlowLoss[]? overflow = null)
    {
        CircuitTask task = new(LineLayout.Return, Pumps(MainFree, MainDeadhead), Plumbing.Of(supply: [_supply]), 13.5, null, 3e5, 0, 2e-5, 740, 0.6e-6);
        SurgeTank tank = SurgeTank.Of(Volume.FromLiters(1), lift, to, liftLine: [_liftLine], overflow: overflow ?? [_overflow]);
        return JoinedCircuits.Of(tank, task, CircuitSolver.SolveBounds(task));
    }

    private static FormulaAssembly Pumps(double freeFlow, double deadhead, bool open = false)
    {
        FormulaPumps own = new(freeFlow, deadhead, givesFlow: true, bySquare: false);
        FormulaPumps upper = new(freeFlow * 1.02, deadhead, givesFlow: true, bySquare: false);
        return new((_, reading) => reading == PumpReading.Upper ? upper : own, EndsOpen: open);
    }
}
