using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Checks;

/// <summary>A compressor at 8 times the crank's speed: 48,000 rev/min at 6,000.</summary>
public class CompressorSpeedCheckTests
{
    private static readonly BeltDrivenBoost Line =
        CentrifugalBoost.From(8, Wren.Rpm(6000), UnitsNet.Pressure.FromBars(0.4), Atmosphere.Standard);

    private static readonly FuelSystem System =
        Wren.System(pump: 2).With(Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95))));

    [Theory]
    [InlineData(50_000, Outcome.Holds, 2.0 / 48, "the compressor turns at 48,000 rev/min of at most 50,000 rev/min")]
    [InlineData(48_000, Outcome.Holds, 0, "the compressor turns at 48,000 rev/min of at most 48,000 rev/min")]
    [InlineData(45_000, Outcome.Fails, -3.0 / 48, "the compressor turns at 48,000 rev/min, at most 45,000 rev/min allowed")]
    public void Speed_OfTheCompressor_IsThatOfTheCrankTimesTheRatio(double maximum, Outcome outcome, double share, string words)
    {
        CompressorSpeedCheck check = new(Line.WithMaximumCompressorSpeed(Wren.Rpm(maximum)));
        OperatingResult result = System.Solve(Wren.At(6000, 0.4));
        CheckReading<Real> reading = check.Read<Real>(result.Parts, PointReading.Of(result));
        Assert.Equal(outcome, CheckReading.OutcomeOf(reading));
        Assert.Equal(800, reading.Used.Value, 9);
        Assert.Equal(maximum / 60, reading.Allowed.Value, 9);
        Assert.Equal(share, reading.Margin.Value, 9);
        Assert.Equal(words, check.Explain(result, reading).ToString());
    }

    /// <summary>At 6,400 rev/min, the fastest of the points, 45,000 rev/min allow 7.03125, of which 7.031 is printed: rounded up it would not serve.</summary>
    [Fact]
    public void Remedy_IsTheRatioThatServesAtTheFastestPoint()
    {
        CompressorSpeedCheck check = new(Line.WithMaximumCompressorSpeed(Wren.Rpm(45_000)));
        OperatingResult[] results = [.. new[] { 3000.0, 6400, 6000 }.Select(rpm => System.Solve(Wren.At(rpm, 0.3)))];
        Remedy remedy = check.RemedyFor(new(results, results[1..]))!;
        Assert.Equal("A drive ratio of at most 7.031, a larger compressor pulley, or a lower engine speed limit.", remedy.ToString());
        Assert.Null(remedy.Needed);
        Assert.Equal(Part.CompressorSpeed, remedy.Part);
        Assert.True(7.031 * 6400 <= 45_000 && 7.032 * 6400 > 45_000);
    }

    [Fact]
    public void Check_WithoutAMaximumOrACompressor_JudgesNothing()
    {
        OperatingResult result = System.Solve(Wren.At(6000, 0.4));
        CompressorSpeedCheck open = new(Line);
        Assert.Equal("not judged: no maximum compressor speed given", open.AppliesTo(System.Parts).ToString());
        Assert.Equal(Outcome.CannotSay, CheckReading.OutcomeOf(open.Read<Real>(result.Parts, PointReading.Of(result))));
        Assert.Null(open.RemedyFor(new([result], [result])));
        CompressorSpeedCheck held = new(HeldBoost.Of(UnitsNet.Pressure.FromBars(0.4), Wren.Rpm(3000), Wren.Rpm(6500)));
        Assert.Equal("not applicable", held.AppliesTo(System.Parts).ToString());
        Assert.Null(held.RemedyFor(new([result], [result])));
        Assert.Equal("judged", new CompressorSpeedCheck(Line.WithMaximumCompressorSpeed(Wren.Rpm(45_000))).AppliesTo(System.Parts).ToString());
    }
}
