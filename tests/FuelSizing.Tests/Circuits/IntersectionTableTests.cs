using FuelSizing.Circuits;
using FuelSizing.Pumps;

namespace FuelSizing.Tests.Circuits;

/// <summary>A table of intersections, compared with circuits that a formula solves.</summary>
public class IntersectionTableTests
{
    private const double FreeFlow = 6e-5;
    private const double Deadhead = 8e5;
    private const double Minimum = 2.5e5;
    private const double Maximum = 4.5e5;
    private const int Cells = 128;

    // 60 kPa at 5e-5 m³/s, 180 L/h: a long hose.
    private const double Factor = 6e4 / (5e-5 * 5e-5);

    // A few roundings of the quadratic's terms.
    private const double Rounding = 1e-14;

    // Losses are those before the last step, which is a trace.
    private const double LossRounding = 1e-12;

    /// <summary>What a table is for: the answer, for one question to the pumps and one to the lines.</summary>
    [Theory]
    [InlineData(true, false, 1)]
    [InlineData(true, true, 1)]
    [InlineData(false, false, 1)]
    [InlineData(false, true, 2)]
    public void Meeting_AnywhereInTheTable_IsTheFormulasForAQuestionOrTwo(bool givesFlow, bool bySquare, int maximum)
    {
        (SquareLawResistance way, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow, bySquare);
        IntersectionTable table = new(like, pumps, Minimum, Maximum, Cells);
        for (int place = 0; place <= 1000; place++)
        {
            double set = Minimum + ((Maximum - Minimum) * place / 1000);
            (int ways, int rises) = (way.Asked, pumps.Asked);
            Assert.True(table.TryIntersect(like with { Set = set }, out Intersection met));
            Assert.InRange(way.Asked - ways, 1, maximum);
            Assert.InRange(pumps.Asked - rises, 1, maximum);
            double expected = pumps.Intersection(set, Factor);
            Assert.InRange(met.Flow / expected, 1 - Rounding, 1 + Rounding);
            Assert.InRange(met.Losses.Supply / (Factor * expected * expected), 1 - LossRounding, 1 + LossRounding);
            Assert.Equal(0, met.Losses.Suction);
        }
    }

    /// <summary>A coarse table asks again; it does not answer worse.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Meeting_InACoarseTable_IsTheSameForAFewQuestions(bool givesFlow)
    {
        (SquareLawResistance way, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow);
        IntersectionTable table = new(like, pumps, Minimum, Maximum, cells: 2);
        for (int place = 0; place <= 100; place++)
        {
            double set = Minimum + ((Maximum - Minimum) * place / 100);
            int ways = way.Asked;
            Assert.True(table.TryIntersect(like with { Set = set }, out Intersection met));
            Assert.InRange(way.Asked - ways, 1, 3);
            Assert.InRange(met.Flow / pumps.Intersection(set, Factor), 1 - Rounding, 1 + Rounding);
        }
    }

    /// <summary>Each meeting is found from the one before it: three questions, or four, and two for the slope.</summary>
    [Theory]
    [InlineData(true, 5)]
    [InlineData(false, 6)]
    public void Table_InTheMaking_AsksAFewQuestionsForEachPressure(bool givesFlow, int each)
    {
        (SquareLawResistance way, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow);
        _ = new IntersectionTable(like, pumps, Minimum, Maximum, Cells);

        // The first has none before it.
        const int First = 5;
        Assert.InRange(way.Asked, Cells, (each * (Cells + 1)) + First);
    }

    [Fact]
    public void Meeting_OutsideTheTable_IsNotInIt()
    {
        (_, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow: true);
        IntersectionTable table = new(like, pumps, Minimum, Maximum, Cells);
        Assert.True(table.TryIntersect(like with { Set = Minimum }, out _));
        Assert.True(table.TryIntersect(like with { Set = Maximum }, out _));
        Assert.False(table.TryIntersect(like with { Set = Minimum * (1 - 1e-9) }, out _));
        Assert.False(table.TryIntersect(like with { Set = Maximum * (1 + 1e-9) }, out _));
    }

    /// <summary>Where the set pressure is over the deadhead nothing flows, and there is nothing to look up.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Intersection_AboveTheDeadhead_IsNotInTheTable(bool givesFlow)
    {
        (_, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow);
        IntersectionTable table = new(like, pumps, Deadhead * 0.5, Deadhead * 1.5, Cells);
        for (int place = 0; place <= 100; place++)
        {
            double set = Deadhead * (0.5 + (place / 100.0));
            bool met = table.TryIntersect(like with { Set = set }, out Intersection meeting);
            if (set < Deadhead * 0.99)
            {
                Assert.True(met);
                Assert.InRange(meeting.Flow / pumps.Intersection(set, Factor), 1 - 1e-12, 1 + 1e-12);
            }
            else if (set >= Deadhead)
            {
                Assert.False(met);
            }
        }
    }

    /// <summary>Without a table a few secants find the meeting; with something near it to begin from, fewer.</summary>
    [Theory]
    [InlineData(true, 1e5, 5, 4)]
    [InlineData(true, 2.5e5, 5, 3)]
    [InlineData(true, 4.5e5, 4, 3)]
    [InlineData(true, 7e5, 4, 3)]
    [InlineData(false, 1e5, 9, 5)]
    [InlineData(false, 2.5e5, 9, 5)]
    [InlineData(false, 4.5e5, 8, 5)]
    [InlineData(false, 7e5, 8, 4)]
    public void Meeting_WithoutATable_IsTheSameForAFewQuestions(bool givesFlow, double set, int maximum, int maximumNear)
    {
        (SquareLawResistance way, FormulaPumps pumps, CircuitTask like) = Circuit(givesFlow);
        double expected = pumps.Intersection(set, Factor);
        Intersection plain = PumpIntersection.AtSet(like with { Set = set }, pumps);
        Assert.InRange(way.Asked, 2, maximum);
        int asked = way.Asked;
        double guess = (givesFlow ? Factor * expected * expected : expected) * 1.001;
        Intersection near = PumpIntersection.AtSet(like with { Set = set }, pumps, guess);
        Assert.InRange(way.Asked - asked, 2, maximumNear);
        foreach (Intersection met in new[] { plain, near })
        {
            Assert.InRange(met.Flow / expected, 1 - Rounding, 1 + Rounding);
            Assert.InRange(met.Losses.Total / (Factor * expected * expected), 1 - (2 * Rounding), 1 + (2 * Rounding));
        }
    }

    private static (SquareLawResistance Way, FormulaPumps Pumps, CircuitTask Like) Circuit(
        bool givesFlow, bool bySquare = false)
    {
        SquareLawResistance way = new(Factor);
        return (
            way,
            new(FreeFlow, Deadhead, givesFlow, bySquare),
            new(LineLayout.Return, Pump.From(Wren.Pump), Plumbing.Of(supply: [way]), 13.5, null, 3e5, 0, 0, 740, 5e-7));
    }
}
