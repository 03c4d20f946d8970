using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Where a line's loss jumps, as where a valve snaps open, no few steps settle: table and secants give up after as many as they may take, and the search ends
/// at the jump. Pumps by formula: p = 800 kPa (1 − Q/6e-5).
/// </summary>
public class UnsettledIntersectionTests
{
    private const double FreeFlow = 6e-5;
    private const double Deadhead = 8e5;
    private const double Jump = 3e-5;

    /// <summary>At the jump the pumps have 400 kPa, of which the line takes 20 kPa or 60: set pressures between 340 and 380 kPa meet neither branch.</summary>
    [Theory]
    [InlineData(true, 345e3)]
    [InlineData(true, 360e3)]
    [InlineData(true, 375e3)]
    [InlineData(false, 345e3)]
    [InlineData(false, 360e3)]
    [InlineData(false, 375e3)]
    public void Intersection_AtAJump_IsGivenUpByTheTableAndFoundByTheSearch(bool givesFlow, double set)
    {
        (Snap way, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow);
        IntersectionTable table = new(like, pumps, 2.5e5, 4.5e5, 8);
        int asked = way.Asked;
        Assert.False(table.TryIntersect(like with { Set = set }, out _));
        Assert.InRange(way.Asked - asked, 1, 4);

        Intersection met = PumpIntersection.AtSet(like with { Set = set }, pumps);
        Assert.Equal(Jump, met.Flow, 1e-12);

        asked = way.Asked;
        Assert.False(PumpIntersection.TryFind(like with { Set = set }, pumps, held: null, set, out _));
        Assert.InRange(way.Asked - asked, 0, 13);
    }

    /// <summary>Beside the jump both branches are smooth, and table, secants and search agree with the formula.</summary>
    [Theory]
    [InlineData(true, 300e3)]
    [InlineData(true, 420e3)]
    [InlineData(false, 300e3)]
    [InlineData(false, 420e3)]
    public void Intersection_BesideAJump_IsTheFormulas(bool givesFlow, double set)
    {
        (_, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow);
        double loss = set < 360e3 ? 60e3 : 20e3;
        double expected = FreeFlow * (1 - ((set + loss) / Deadhead));
        Assert.Equal(set < 360e3, expected > Jump);
        Intersection met = PumpIntersection.AtSet(like with { Set = set }, pumps);
        Assert.Equal(expected, met.Flow, 1e-15);
        Assert.Equal(loss, met.Losses.Total, 1e-6);
        IntersectionTable table = new(like, pumps, 2.5e5, 4.5e5, 64);
        Assert.True(table.TryIntersect(like with { Set = set }, out Intersection read));
        Assert.Equal(expected, read.Flow, 1e-15);
    }

    /// <summary>Without a line to the regulator the pumps' flow at the set pressure is the answer: no question to anything but the pumps, once.</summary>
    [Fact]
    public void Intersection_WithoutLines_IsThePumpsOwnFlow()
    {
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: true, bySquare: false);
        CircuitTask task = Circuit(true).Like with { Plumbing = Plumbing.None, Set = 2e5 };
        Assert.Equal(FreeFlow * 0.75, PumpIntersection.AtSet(task, pumps).Flow, 1e-18);
        Assert.Equal(1, pumps.Asked);
        Assert.Equal(FreeFlow * 0.75, PumpIntersection.AtSet(task, new FormulaPumps(FreeFlow, Deadhead, givesFlow: false, bySquare: false)).Flow, 1e-15);
        Assert.Equal(default, PumpIntersection.AtSet(task, new FormulaPumps(0, Deadhead, givesFlow: true, bySquare: false)));
        Assert.Equal(default, PumpIntersection.AtSet(task, new FormulaPumps(0, Deadhead, givesFlow: false, bySquare: false)));
    }

    /// <summary>A first guess that is right is the answer, for one question; beside the jump the line takes just 20 kPa.</summary>
    [Fact]
    public void Guess_ThatIsRight_IsAskedOnce()
    {
        (Snap way, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow: true);
        Assert.True(PumpIntersection.TryFind(like with { Set = 420e3 }, pumps, held: null, 440e3, out Intersection met));
        Assert.Equal(1, way.Asked);
        Assert.Equal(FreeFlow * 0.45, met.Flow, 1e-18);
        Assert.Equal(20e3, met.Losses.Total);
    }

    /// <summary>Lines that take most of the pumps' rise: the first step allows for how stiff they are, so that few more questions are asked than of wide ones.</summary>
    [Theory]
    [InlineData(5e4)]
    [InlineData(2e5)]
    [InlineData(1e6)]
    [InlineData(5e6)]
    public void Intersection_WithStiffLines_TakesFewSteps(double lossAtFiveThirds)
    {
        double factor = lossAtFiveThirds / (5e-5 * 5e-5);
        SquareLawResistance way = new(factor);
        FormulaPumps pumps = new(FreeFlow, Deadhead, givesFlow: true, bySquare: true);
        CircuitTask task = Circuit(true).Like with { Plumbing = Plumbing.Of(supply: [way]), Set = 1.5e5 };
        Assert.True(PumpIntersection.TryFind(task, pumps, held: null, task.Set, out Intersection met));
        Assert.Equal(pumps.Intersection(task.Set, factor), met.Flow, 1e-17);
        Assert.InRange(way.Asked, 3, 6);
    }

    /// <summary>Under the voltage of its curve a pump is read by bounds that differ: a table for each gives what each gives alone.</summary>
    [Theory]
    [InlineData(11.5)]
    [InlineData(14.6)]
    public void Table_OfAPumpOffItsVoltage_ServesEachReading(double volts)
    {
        SquareLawResistance way = new(6e4 / (5e-5 * 5e-5));
        CircuitTask task = new(LineLayout.Return, Pump.From(Wren.Pump), Plumbing.Of(supply: [way]), volts, null, 3e5, 0, 1e-5, 740, 5e-7);
        CircuitTable table = CircuitTable.Of(task, 2e5, 3.5e5, 400)!;
        int differing = 0;
        for (double set = 2e5; set < 3.5e5; set += 7e3)
        {
            CircuitBounds alone = CircuitSolver.SolveBounds(task with { Set = set });
            CircuitBounds read = CircuitSolver.SolveBounds(task with { Set = set }, table);
            foreach ((CircuitState one, CircuitState other) in new[] { (alone.Estimate, read.Estimate), (alone.Lower, read.Lower), (alone.Upper, read.Upper) })
            {
                Assert.Equal(one.State, other.State);
                Assert.Equal(one.Flow, other.Flow, 1e-12 * FreeFlow);
                Assert.Equal(one.OutletGauge, other.OutletGauge, 1e-6);
            }

            Assert.Equal(alone.Estimate.MinimumAtSet, read.Estimate.MinimumAtSet, 1e-12 * FreeFlow);
            Assert.Equal(alone.Estimate.MaximumAtSet, read.Estimate.MaximumAtSet, 1e-12 * FreeFlow);
            differing += alone.Estimate.MinimumAtSet < alone.Estimate.MaximumAtSet * 0.99 ? 1 : 0;
        }

        Assert.True(differing > 10, $"{differing}");
    }

    private static (Snap Way, FormulaPumps Pumps, CircuitTask Like) Circuit(bool givesFlow)
    {
        Snap way = new();
        return (
            way,
            new(FreeFlow, Deadhead, givesFlow, bySquare: false),
            new(LineLayout.Return, Pump.From(Wren.Pump), Plumbing.Of(supply: [way]), 13.5, null, 3e5, 0, 0, 740, 5e-7));
    }

    /// <summary>A line that takes 20 kPa up to a flow and 60 kPa over it, and counts how often it is asked.</summary>
    private sealed class Snap : IFlowLoss
    {
        public string Name => "snap";

        public int Asked { get; private set; }

        double IFlowLoss.LossPascals(double flow, double density, double kinematicViscosity)
        {
            Asked++;
            return flow <= Jump ? 20e3 : 60e3;
        }

        double IFlowLoss.ElevationPascals(double density) => 0;
    }
}
