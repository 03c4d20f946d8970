using FuelSizing.Checks;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Checks;

/// <summary>What a check makes of two figures: the share that is left, the outcome, and the bound that decides. Shares are worked by hand.</summary>
public class CheckReadingTests
{
    /// <summary>Of 100 allowed: 80 used could grow by a quarter, 125 are a fifth too much.</summary>
    [Theory]
    [InlineData(80, 0.25, Outcome.Holds)]
    [InlineData(100, 0, Outcome.Holds)]
    [InlineData(125, -0.2, Outcome.Fails)]
    public void AtMost_OfAKnownUse_LeavesTheShareByWhichItCouldGrow(double used, double share, Outcome outcome)
    {
        CheckReading<Real> reading = CheckReading.AtMost<Real>(used, 100);
        Assert.Equal((used, 100), (reading.Used.Value, reading.Allowed.Value));
        Assert.Equal(share, reading.Margin.Value, 15);
        Assert.Equal(share, reading.BestMargin.Value, 15);
        Assert.Equal(outcome, CheckReading.OutcomeOf(reading));
        Assert.Equal(share, CheckReading.MarginOf(reading)!.Value, 15);
    }

    [Theory]
    [InlineData(125, 0.25, Outcome.Holds)]
    [InlineData(100, 0, Outcome.Holds)]
    [InlineData(80, -0.2, Outcome.Fails)]
    public void AtLeast_OfAKnownFigure_LeavesTheShareOverItsLimit(double figure, double share, Outcome outcome)
    {
        CheckReading<Real> reading = CheckReading.AtLeast<Real>(figure, 100);
        Assert.Equal((figure, 100), (reading.Used.Value, reading.Allowed.Value));
        Assert.Equal(share, reading.Margin.Value, 15);
        Assert.Equal(share, reading.BestMargin.Value, 15);
        Assert.Equal(outcome, CheckReading.OutcomeOf(reading));
    }

    /// <summary>It holds by the higher bound, fails by the lower one, and between the two nobody can say; the bound that decides is the one shown.</summary>
    [Theory]
    [InlineData(50, 80, 80, 0.25, 1, Outcome.Holds)]
    [InlineData(80, 100, 100, 0, 0.25, Outcome.Holds)]
    [InlineData(80, 125, 125, -0.2, 0.25, Outcome.CannotSay)]
    [InlineData(100, 125, 125, -0.2, 0, Outcome.CannotSay)]
    [InlineData(125, 200, 125, -0.5, -0.2, Outcome.Fails)]
    public void AtMost_BetweenTwoBounds_HoldsByTheHigherAndFailsByTheLower(
        double minimum, double maximum, double shown, double margin, double best, Outcome outcome)
    {
        CheckReading<Real> reading = CheckReading.AtMost<Real>(minimum, maximum, 100);
        Assert.Equal(shown, reading.Used.Value);
        Assert.Equal(100, reading.Allowed.Value);
        Assert.Equal(margin, reading.Margin.Value, 15);
        Assert.Equal(best, reading.BestMargin.Value, 15);
        Assert.Equal(outcome, CheckReading.OutcomeOf(reading));
    }

    [Theory]
    [InlineData(125, 150, 125, 0.25, 0.5, Outcome.Holds)]
    [InlineData(100, 150, 100, 0, 0.5, Outcome.Holds)]
    [InlineData(80, 125, 80, -0.2, 0.25, Outcome.CannotSay)]
    [InlineData(80, 100, 80, -0.2, 0, Outcome.CannotSay)]
    [InlineData(50, 80, 80, -0.5, -0.2, Outcome.Fails)]
    public void AtLeast_BetweenTwoBounds_HoldsByTheLowerAndFailsByTheHigher(
        double minimum, double maximum, double shown, double margin, double best, Outcome outcome)
    {
        CheckReading<Real> reading = CheckReading.AtLeast<Real>(minimum, maximum, 100);
        Assert.Equal(shown, reading.Used.Value);
        Assert.Equal(100, reading.Allowed.Value);
        Assert.Equal(margin, reading.Margin.Value, 15);
        Assert.Equal(best, reading.BestMargin.Value, 15);
        Assert.Equal(outcome, CheckReading.OutcomeOf(reading));
    }

    /// <summary>The last bit of a sum decides nothing: 400 kPa of at most 400 kPa holds. The eleventh figure does.</summary>
    [Fact]
    public void Margin_OfFiguresEqualToTwelve_IsNothing()
    {
        Assert.Equal(0, CheckReading.MarginOf<Real>(400e3 * (1 - 5e-13), 400e3).Value);
        Assert.True(CheckReading.MarginOf<Real>(400e3 * (1 - 2e-12), 400e3).Value < 0);
        Assert.True(CheckReading.MarginOf<Real>(400e3 * (1 + 5e-13), 400e3).Value > 0);
    }

    /// <summary>Where nothing is used there is no share of it: only on which side of the limit nothing is.</summary>
    [Fact]
    public void Margin_WhereNothingIsUsed_SaysOnlyTheSideOfTheLimit()
    {
        Assert.Equal(double.PositiveInfinity, CheckReading.MarginOf<Real>(100, 0).Value);
        Assert.Equal(double.PositiveInfinity, CheckReading.MarginOf<Real>(0, 0).Value);
        Assert.Equal(double.PositiveInfinity, CheckReading.MarginOf<Real>(0, -50).Value);
        Assert.Equal(double.NegativeInfinity, CheckReading.MarginOf<Real>(-1, 0).Value);
        Assert.Equal(double.NaN, CheckReading.MarginOf<Real>(double.NaN, 0).Value);
        Assert.Equal(double.NaN, CheckReading.MarginOf<Real>(100, double.NaN).Value);
    }

    [Fact]
    public void Outcome_OfWhatIsNotKnown_CannotBeSaid()
    {
        Assert.Equal(Outcome.CannotSay, CheckReading.OutcomeOf(new CheckReading<Real>(1, 2, double.NaN)));
        Assert.Equal(Outcome.CannotSay, CheckReading.OutcomeOf(new CheckReading<Real>(1, 2, -0.1, double.NaN)));
        Assert.Equal(Outcome.Fails, CheckReading.OutcomeOf(new CheckReading<Real>(1, 2, double.NaN, -0.1)));
        Assert.Equal(Outcome.Holds, CheckReading.OutcomeOf(new CheckReading<Real>(1, 2, double.PositiveInfinity)));
    }

    /// <summary>The conservative margin where it holds, the optimistic one where even that fails; none where there is nothing to say or to compare with.</summary>
    [Fact]
    public void Margin_ThatGoesWithTheOutcome_IsThatOfTheBoundThatDecides()
    {
        Assert.Equal(0.1, CheckReading.MarginOf(new CheckReading<Real>(1, 2, 0.1, 0.4)));
        Assert.Equal(-0.1, CheckReading.MarginOf(new CheckReading<Real>(1, 2, -0.4, -0.1)));
        Assert.Null(CheckReading.MarginOf(new CheckReading<Real>(1, 2, -0.1, 0.4)));
        Assert.Null(CheckReading.MarginOf(new CheckReading<Real>(1, 2, double.PositiveInfinity)));
        Assert.Null(CheckReading.MarginOf(new CheckReading<Real>(1, 2, double.NegativeInfinity)));
    }
}
