using CsCheck;
using FuelSizing.Circuits;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// The search behind every inverse question, on reserves written down as formulas of the figure: where the edge lies is
/// then known beforehand. The figure goes from 0 to 96, so that the scan's steps are the whole numbers.
/// </summary>
public class SizingSearchTests
{
    private const double End = 96;

    private static readonly FuelSystem Wide = Wren.System(injector: 900, pump: 4);

    private static readonly PointDemand Demand = Wide.Parts.DemandAt(Wren.At(3000, 0));

    private static readonly CircuitState Circuit = CircuitSolver.Solve(Wide.Parts.TaskAt(Demand));

    [Fact]
    public void Minimum_OfAReserveThatRises_IsWhereItReachesNought() =>
        Gen.Select(Gen.Double[0.01, 95.99], Gen.Double[0.001, 0.9]).Sample((edge, slope) =>
        {
            SizingAnswer<double> answer = Minimum(figure => slope * (figure - edge));
            Assert.InRange(answer.Value!.Value, edge, edge + 1e-7);
            Assert.StartsWith($"At least {Text(answer.Value.Value)}: injectors is then at its limit (", answer.Text.ToString(), StringComparison.Ordinal);
        });

    [Fact]
    public void Maximum_OfAReserveThatFalls_IsWhereItReachesNought() =>
        Gen.Select(Gen.Double[0.01, 95.99], Gen.Double[0.001, 0.9]).Sample((edge, slope) =>
        {
            SizingAnswer<double> answer = Maximum(figure => slope * (edge - figure));
            Assert.InRange(answer.Value!.Value, edge - 1e-7, edge);
            Assert.StartsWith($"At most {Text(answer.Value.Value)}: injectors is then at its limit (", answer.Text.ToString(), StringComparison.Ordinal);
        });

    /// <summary>The weakest of all points decides, wherever it stands in the list.</summary>
    [Fact]
    public void Edge_OfSeveralPoints_IsThatOfTheWeakest()
    {
        Assert.Equal(20.5, Minimum(figure => figure - 3.5, figure => figure - 20.5, figure => figure - 10.5).Value!.Value, 6);
        Assert.Equal(3.5, Maximum(figure => 20.5 - figure, figure => 3.5 - figure, figure => 10.5 - figure).Value!.Value, 6);
    }

    /// <summary>The scan steps over it, and finds it beside the step that comes nearest, whichever side it lies on.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.7)]
    [InlineData(30.4)]
    [InlineData(30.6)]
    [InlineData(95.3)]
    [InlineData(95.7)]
    public void Minimum_OfANarrowRangeBetweenTwoSteps_IsItsLowerEnd(double middle)
    {
        SizingAnswer<double> answer = Minimum(figure => 0.2 - Math.Abs(figure - middle));
        Assert.Equal(middle - 0.2, answer.Value!.Value, 7);
        Assert.StartsWith("At least ", answer.Text.ToString(), StringComparison.Ordinal);
    }

    /// <summary>However narrow the range that holds, the answer lies inside it, though double precision is coarse there.</summary>
    [Fact]
    public void Minimum_OfAVeryNarrowRange_HoldsWhenPutBack() =>
        Gen.Select(Gen.Double[0.5, 95.5], Gen.Double[-7, -1]).Sample((middle, digits) =>
        {
            double half = Math.Pow(10, digits);
            double minimum = Minimum(figure => half - Math.Abs(figure - middle)).Value!.Value;
            return half - Math.Abs(minimum - middle) >= -1e-15 && minimum <= middle - (half * (1 - 1e-6));
        });

    /// <summary>Where data begins or ends just at a step of the scan, what holds jumps there; the answer is on the side that holds.</summary>
    [Fact]
    public void Edge_ThatIsAJumpAtAStepOfTheScan_HoldsWhenPutBack()
    {
        for (int edge = 1; edge < End; edge++)
        {
            double from = Minimum(figure => figure >= edge ? 1 : -1).Value!.Value;
            double over = Minimum(figure => figure > edge ? 1 : -1).Value!.Value;
            double upTo = Maximum(figure => figure <= edge ? 1 : -1).Value!.Value;
            double under = Maximum(figure => figure < edge ? 1 : -1).Value!.Value;
            Assert.True(from >= edge && over > edge && upTo <= edge && under < edge, $"{edge}: {from:R}, {over:R}, {upTo:R}, {under:R}");
            Assert.All([from, over, upTo, under], found => Assert.Equal(edge, found, 7));
        }
    }

    [Fact]
    public void Figure_WithNothingToSpare_Serves()
    {
        // At 48 alone, and again from 60 on.
        Assert.Equal(48, Minimum(figure => figure == 48 ? 0 : figure > 60 ? 0.5 : -0.5).Value!.Value);

        // Between two steps of the scan.
        Assert.InRange(Minimum(figure => Math.Min(0, 0.1 - Math.Abs(figure - 30.4))).Value!.Value, 30.3, 30.5);

        // Down to nothing at 48, and up again.
        Assert.Equal(End, Maximum(figure => Math.Abs(figure - 48)).Value!.Value);
    }

    [Fact]
    public void Edge_InTheLastStepOfTheRange_IsFound()
    {
        Assert.Equal(End, Minimum(figure => figure < End ? -0.5 : 0.5).Value!.Value, 9);
        Assert.Equal(95.5, Maximum(figure => 95.5 - figure).Value!.Value, 6);
    }

    [Fact]
    public void Range_ThatHoldsThroughout_IsAnsweredByItsEnd()
    {
        SizingAnswer<double> minimum = Minimum(_ => 0.2);
        Assert.Equal(0, minimum.Value);
        Assert.StartsWith("At least 0.0: injectors has the tightest margin (", minimum.Text.ToString(), StringComparison.Ordinal);
        SizingAnswer<double> maximum = Maximum(_ => 0.2);
        Assert.Equal(End, maximum.Value);
        Assert.StartsWith("At most 96.0: injectors has the tightest margin (", maximum.Text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Range_ThatServesNowhere_IsAnsweredByWhereItComesNearest()
    {
        Assert.StartsWith("Nothing from 0.0 to 96.0 is adequate: at 40.4, where it comes nearest, injectors: ", Nearest(Minimum(figure => -0.1 - Math.Abs(figure - 40.4))), StringComparison.Ordinal);

        // Counted up from its start, it ends there; where no figure is nearer than another, the first is named.
        Assert.StartsWith("Nothing from 0.0 to 96.0 is adequate: at 0.0, ", Nearest(Maximum(figure => figure - 30)), StringComparison.Ordinal);
        Assert.StartsWith("Nothing from 0.0 to 96.0 is adequate: at 0.0, ", Nearest(Minimum(_ => -0.5)), StringComparison.Ordinal);

        static string Nearest(SizingAnswer<double> answer)
        {
            Assert.Null(answer.Value);
            return answer.Text.ToString();
        }
    }

    /// <summary>On a straight reserve a secant lands at once; halving to the last figure would take over forty solves.</summary>
    [Fact]
    public void Minimum_OfAStraightReserve_IsFoundInAFewSolves()
    {
        int solves = 0;
        Minimum(figure =>
        {
            solves++;
            return 0.3 * (figure - 10.5);
        });

        // Twelve for the scan up to 11.
        Assert.InRange(solves, 12, 12 + 15);
    }

    /// <summary>A pump at minimum speed that holds exactly the set pressure is not short of it, but does not govern.</summary>
    [Fact]
    public void Part_ThatFailsByNothing_DoesNotServe()
    {
        FuelSystem held = FuelSystem.Returnless(
            Wren.Demand(), Wide.Injectors, ElectronicReturnless.Holding(Wren.Kpa(300), followsManifold: true, Wren.Volt(13)), Wide.Pump);
        CircuitState floor = CircuitSolver.Solve(held.Parts.TaskAt(Demand)) with { State = RailState.PumpFloor, RailGauge = 300e3 };
        SizingSearch search = new(0, End, _ => [new(held, Demand, held.Parts.CircuitOf(held.Parts.TaskAt(Demand), CircuitBounds.Exactly(floor)), (ReserveOf(1), ReserveOf(1)))]);
        Assert.Null(search.Minimum(figure => figure, Text).Value);
        Assert.Null(search.Maximum(figure => figure, Text).Value);
    }

    private static SizingAnswer<double> Minimum(params Func<double, double>[] reserves) =>
        Over(reserves).Minimum(figure => figure, Text);

    private static SizingAnswer<double> Maximum(params Func<double, double>[] reserves) =>
        Over(reserves).Maximum(figure => figure, Text);

    private static Statement Text(double figure) => Statement.Of("figure", $"{figure:0.0}");

    /// <summary>A search among results that have these reserves, one result for each; no figure outside the range may be asked for.</summary>
    private static SizingSearch Over(params Func<double, double>[] reserves) => new(0, End, figure =>
    {
        Assert.InRange(figure, 0, End);
        return Array.ConvertAll(reserves, reserve => WithReserve(reserve(figure)));
    });

    /// <summary>A result in which the injectors have this margin, and every other part much more.</summary>
    private static OperatingResult WithReserve(double reserve) =>
        new(Wide, Demand, Wide.Parts.CircuitOf(Wide.Parts.TaskAt(Demand), CircuitBounds.Exactly(Circuit)), (ReserveOf(reserve), ReserveOf(reserve)));

    private static Injection ReserveOf(double reserve) =>
        new(250e3, 15e-6, 0.04, 1e-3, 1, 0.5, (1 + reserve) * Demand.Injected);
}
