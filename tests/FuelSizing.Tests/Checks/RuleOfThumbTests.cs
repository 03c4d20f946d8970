using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Checks;

/// <summary>A limit that is a rule of thumb is marked as one wherever it is read; a figure of one's own is not.</summary>
public class RuleOfThumbTests
{
    private const string Mark = "common practice, no source";

    // One hundredth over or under each default: the same checks are judged, by figures that nobody else has.
    private static readonly SizingLimits Own = SizingLimits.Of(
        Wren.Percent(84), Wren.Percent(11), null, Wren.Percent(5.1), Wren.Kpa(10.1));

    private static readonly Part[] Ruled = [Part.Injectors, Part.Pump, Part.Feed, Part.Suction];

    [Fact]
    public void Finding_ByARuleOfThumb_SaysThatItIsOne_WhetherItHoldsOrFails()
    {
        foreach (FuelSystem system in new[] { SystemOf(injector: 360, pump: 0.6), SystemOf(injector: 900, pump: 2) })
        {
            OperatingResult result = system.Solve(Wren.At(6800, 0.6));
            Assert.All(Ruled, part => Assert.Contains(Mark, Text(result, part), StringComparison.Ordinal));
            Assert.All(
                result.Margins.Where(margin => !Ruled.Contains(margin.Part)),
                margin => Assert.DoesNotContain(Mark, margin.Finding.ToString(), StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Finding_ByALimitOfOnesOwn_SaysNothingOfTheKind()
    {
        OperatingResult result = SystemOf(injector: 360, pump: 0.6).With(Own).Solve(Wren.At(6800, 0.6));
        Assert.All(Ruled, part => Assert.DoesNotContain(Mark, Text(result, part), StringComparison.Ordinal));
    }

    [Fact]
    public void Verdict_ByRulesOfThumb_SaysSoInItsReasons()
    {
        SweepResult sweep = SystemOf(injector: 360, pump: 0.6).Sweep([Wren.Rpm(3000), Wren.Rpm(6800)], [Pressure.Zero, Pressure.FromBars(0.6)], Wren.Hill);
        Assert.All(Ruled, part => Assert.Contains(
            Mark, sweep.Verdict.Reasons.OfType<PartStanding>().Single(reason => reason.Part == part).ToString(), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(85, 10)]
    [InlineData(0.85 * 100, 0.1 * 100)]
    public void Limit_AtItsDefault_IsMarkedWhoeverWroteIt(double duty, double reserve)
    {
        SizingLimits written = SizingLimits.Of(Wren.Percent(duty), Wren.Percent(reserve), null, Ratio.FromDecimalFractions(0.05), Pressure.FromBars(0.1));
        Assert.All(Enum.GetValues<RuleOfThumb>(), rule => Assert.NotNull(written.MarkOf(rule)));
        Assert.All(Enum.GetValues<RuleOfThumb>(), rule => Assert.Null(Own.MarkOf(rule)));
    }

    [Fact]
    public void Mark_OfNoRule_IsRefused() =>
        Assert.Equal("rule", Assert.Throws<ArgumentOutOfRangeException>(() => SizingLimits.Default.MarkOf((RuleOfThumb)9)).ParamName);

    private static FuelSystem SystemOf(double injector, double pump) =>
        Wren.System(injector: injector).With(Pump.Of([Wren.WiredCurve(13.5, pump)]).WithFeed(PumpAssemblyTests.FeedOf(2, 1)));

    private static string Text(OperatingResult result, Part part) => result.Margins.Single(margin => margin.Part == part).Finding.ToString();
}
