using FuelSizing.Checks;

namespace FuelSizing.Tests.Checks;

/// <summary>What must be looked at first: what fails, then what cannot be said, then the smallest margin.</summary>
public class UrgencyTests
{
    private static readonly Outcome[] Rising = [Outcome.Holds, Outcome.HoldsAsFarAsJudged, Outcome.CannotSay, Outcome.Fails];

    [Fact]
    public void Order_OfOutcomes_PutsTheWorstFirst_WhateverTheMargins()
    {
        for (int worse = 1; worse < Rising.Length; worse++)
        {
            Assert.True(Urgency.Compare(Rising[worse], 0.9, Rising[worse - 1], -0.9) < 0);
            Assert.True(Urgency.Compare(Rising[worse - 1], -0.9, Rising[worse], 0.9) > 0);
        }
    }

    [Fact]
    public void Order_OfOneOutcome_PutsTheSmallestMarginFirst_AndWhatHasNoneLast()
    {
        foreach (Outcome outcome in Rising)
        {
            Assert.True(Urgency.Compare(outcome, 0.1, outcome, 0.2) < 0);
            Assert.True(Urgency.Compare(outcome, 0.2, outcome, 0.1) > 0);
            Assert.Equal(0, Urgency.Compare(outcome, 0.1, outcome, 0.1));
            Assert.True(Urgency.Compare(outcome, null, outcome, 0.2) > 0);
            Assert.True(Urgency.Compare(outcome, 0.2, outcome, null) < 0);
            Assert.Equal(0, Urgency.Compare(outcome, null, outcome, null));
        }
    }

    [Fact]
    public void Worse_OfTwoOutcomes_IsTheOneHigherUp_WhicheverComesFirst()
    {
        for (int one = 0; one < Rising.Length; one++)
        {
            for (int other = 0; other < Rising.Length; other++)
            {
                Assert.Equal(Rising[Math.Max(one, other)], Urgency.Worse(Rising[one], Rising[other]));
            }
        }
    }

    [Fact]
    public void Holding_IsWhatHolds_WhollyOrAsFarAsJudged() => Assert.Equal([true, true, false, false], Rising.Select(Urgency.IsHolding));
}
