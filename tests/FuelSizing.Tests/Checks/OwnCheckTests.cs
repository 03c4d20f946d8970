using FuelSizing.Checks;
using FuelSizing.Points;
using FuelSizing.Selection;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Selection;
using UnitsNet;

namespace FuelSizing.Tests.Checks;

/// <summary>A check that another assembly defines takes part in everything by one file and one registration.</summary>
public class OwnCheckTests
{
    private static readonly Part Cooling = ReturnFlowForCooling.Cooling;

    private static FuelSystem With(double litresPerHour) =>
        Wren.System().With(new ReturnFlowForCooling(VolumeFlow.FromLitersPerHour(litresPerHour)));

    [Fact]
    public void Margin_OfOwnCheck_IsReturnedOverRequired()
    {
        OperatingResult result = With(20).Solve(Wren.At(6000, 0.3));
        Margin margin = result.Margins.Single(margin => margin.Part == Cooling);
        double returned = result.ReturnedFlow!.Value.LitersPerHour;
        Assert.Equal((returned / 20) - 1, margin.Reserve!.Value.DecimalFractions, 9);
        Assert.Equal(returned, ((VolumeFlow)margin.Used!).LitersPerHour, 9);
        Assert.Equal(20, ((VolumeFlow)margin.Allowed!).LitersPerHour, 9);
        Assert.Equal(LimitDirection.AtLeast, margin.Direction);
        Assert.Equal(returned >= 20 ? Outcome.Holds : Outcome.Fails, margin.Outcome);
    }

    [Fact]
    public void Sweep_WhereOwnCheckFails_NamesItInVerdictStandingsAndRemedies()
    {
        SweepResult sweep = With(400).Sweep([Wren.Rpm(3000), Wren.Rpm(6000)], [Pressure.Zero, Wren.Kpa(30)], Wren.Hill);
        Assert.Equal(Outcome.Fails, sweep.Verdict.Outcome);
        Assert.Equal(Cooling, sweep.Limiting.Part);
        Assert.Contains("return flow for cooling", sweep.Verdict.Headline.ToString(), StringComparison.Ordinal);
        Assert.Contains(sweep.Standings, standing => standing.Part == Cooling);
        Remedy remedy = sweep.Remedies.Single(remedy => remedy.Part == Cooling);
        Assert.StartsWith("A pump that returns at least 400 L/h", remedy.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Ranking_OfAPlanWithOwnCheck_JudgesByIt()
    {
        Stage plain = Shelf.Petrol;
        Stage strict = Stage.Of(
            "with cooling", plain.System.With(new ReturnFlowForCooling(VolumeFlow.FromLitersPerHour(10_000))), [.. plain.Points]);
        CandidateParts parts = CandidateParts.Of([Shelf.Injector(900, 260)], [Shelf.Pump(2, 240)]);
        Assert.NotNull(Ranking.Of([plain], parts).Best);
        Ranking judged = Ranking.Of([strict], parts);
        Assert.Null(judged.Best);
        Assert.Equal(Cooling, judged.Combinations[0].WeakestPart);
    }

    [Fact]
    public void Sizing_OfASystemWithOwnCheck_StopsAtIt()
    {
        SizingAnswer<Pressure> answer = SystemSizing.MaximumBoost(With(1), [Wren.Rpm(6000)], Wren.Hill);
        OperatingPoint limit = OperatingPoint.At(Wren.Rpm(6000), answer.Value!.Value, Wren.Hill);
        double returned = With(1).Solve(limit).ReturnedFlow!.Value.LitersPerHour;
        SizingAnswer<Pressure> stricter = SystemSizing.MaximumBoost(With(returned * 1.05), [Wren.Rpm(6000)], Wren.Hill);
        Assert.Equal(Cooling, stricter.Binding.Part);
        Assert.True(stricter.Value!.Value < answer.Value!.Value);
    }

    [Fact]
    public void With_OfAPartJudgedAlready_IsRefused()
    {
        FuelSystem system = With(20);
        ArgumentException error = Assert.Throws<ArgumentException>(
            () => system.With(new ReturnFlowForCooling(VolumeFlow.FromLitersPerHour(30))));
        Assert.Contains("own.return-flow", error.Message, StringComparison.Ordinal);
        Assert.Contains(system.With(Wren.System().Pump).Checks, check => check.Part == Cooling);
    }
}
