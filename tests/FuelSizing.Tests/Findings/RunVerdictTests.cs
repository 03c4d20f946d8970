using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Logs;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>The verdict on a run is the worst of mixture, rail pressure, duty cycle and faults, and never greener than what was looked at.</summary>
public class RunVerdictTests
{
    private static readonly PulledWren Car = PulledWren.With(RunFault.None, 1);

    /// <summary>A sound car's pulls at the usual supply, without glitches: 120 rows and more, most of them on boost.</summary>
    private static readonly Cells[] Sound = [.. Car.Recorded(1, outliers: 0).Rows
        .Where(row => row.BatteryVoltage is not { } volts || volts.Volts > Car.SupplyVolts - 0.3)
        .Select(Cells.Of)];

    [Fact]
    public void SoundCar_Holds()
    {
        RunFindings findings = Judged(Sound);
        Assert.Equal("the run is as planned, within tolerances and accuracy", findings.Verdict.ToString());
        Assert.Equal(Outcome.Holds, findings.Verdict.Outcome);
        Assert.Empty(findings.Verdict.NotJudged);
        Assert.Equal(["Nothing needs to change."], findings.WhatToChange.Select(change => change.ToString()));
        Assert.Equal(findings.Verdict.ToString(), findings.ToString());
    }

    [Theory]
    [InlineData(0.92)]
    [InlineData(1.0)]
    [InlineData(1.21)]
    [InlineData(1.99)]
    public void Lean_AtFullBoost_FailsAndSaysWhatThatDoes(double lambda)
    {
        RunFindings findings = Judged(Sound.Select(cell => Boost(cell) > 50 ? cell with { Lambda = lambda } : cell));
        Assert.Equal(Outcome.Fails, findings.Verdict.Outcome);
        Assert.StartsWith($"the run does not hold: lean on boost: lambda {lambda:0.00} at ", findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Contains("0.82 planned", findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Contains("detonates and destroys an engine", findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Equal("remedy.lean", findings.WhatToChange[0].Code);
        Assert.Equal(Part.Mixture, findings.Judgements[0].Part);
    }

    [Fact]
    public void Lean_InEverySecondRowAlone_Fails() =>
        Assert.Equal(Outcome.Fails, Judged(Sound.Select((cell, i) => cell with { Lambda = i % 2 == 0 ? null : Boost(cell) > 50 ? 0.95 : cell.Lambda })).Verdict.Outcome);

    [Fact]
    public void Lean_WithTheChannelStuckThere_FailsAllTheSame() =>
        Assert.Equal(Outcome.Fails, Judged(Sound.Select(cell => cell with { Lambda = 1.21 })).Verdict.Outcome);

    [Fact]
    public void Mixture_WithoutLambda_CannotBeTold()
    {
        AssertMixtureOpen(Sound.Select(cell => cell with { Lambda = null }), "lambda and manifold pressure must both be recorded");
        AssertMixtureOpen(Sound.Select(cell => cell with { Manifold = null }), "lambda and manifold pressure must both be recorded");
    }

    [Fact]
    public void Mixture_WithLambdaBlankOnBoost_CannotBeTold() =>
        AssertMixtureOpen(Sound.Select(cell => Boost(cell) > 4 ? cell with { Lambda = null } : cell), "no row on boost has a usable lambda");

    [Fact]
    public void Mixture_OfASensorAtItsRichEnd_CannotBeTold() =>
        AssertMixtureOpen(Sound.Select(cell => Boost(cell) > 4 ? cell with { Lambda = 0.65 } : cell), "lambda stays at 0.65 on boost");

    [Fact]
    public void Mixture_OfASensorThatEndsAboveLambda070_CannotBeTold() =>
        AssertMixtureOpen(Sound.Select(cell => Boost(cell) > 4 ? cell with { Lambda = 0.76 } : cell), "lambda stays at 0.76 on boost");

    [Fact]
    public void Mixture_OfAChannelThatNeverMoves_CannotBeTold() =>
        AssertMixtureOpen(Sound.Select(cell => cell.Lambda is null ? cell : cell with { Lambda = 0.82 }), "lambda reads 0.82 throughout");

    [Fact]
    public void Mixture_NeverOnBoost_CannotBeTold() =>
        AssertMixtureOpen(Sound.Where(cell => Boost(cell) < 4), "the run was never on boost");

    [Fact]
    public void Mixture_WithLambdaInEverySecondRow_IsJudgedInPart()
    {
        RunFindings findings = Judged(Sound.Select((cell, i) => i % 2 == 0 ? cell with { Lambda = null } : cell));
        AssertInPart(findings, Part.Mixture, "lambda is known of ");
        Assert.InRange((double)findings.Lean.Answer!.RowsJudged / findings.Lean.Answer.Rows, 0.45, 0.55);
    }

    [Fact]
    public void Mixture_WithSomeRowsAtTheRichEnd_IsJudgedInPart() =>
        AssertInPart(Judged(Sound.Select(cell => Boost(cell) > 50 ? cell with { Lambda = 0.65 } : cell)), Part.Mixture, "the end of what the sensor reads");

    [Fact]
    public void Mixture_WithOneBlankCell_IsJudgedInPart()
    {
        int at = Array.FindIndex(Sound, cell => Boost(cell) > 50);
        AssertInPart(Judged(Sound.Select((cell, i) => i == at ? cell with { Lambda = null } : cell)), Part.Mixture, "lambda is known of ");
    }

    [Fact]
    public void Mixture_WithoutManifoldInSomeRows_IsJudgedInPart() =>
        AssertInPart(Judged(Sound.Select((cell, i) => i % 10 == 0 ? cell with { Manifold = null } : cell)), Part.Mixture, "rows lack manifold pressure");

    /// <summary>One row at 20 rows a second is a glitch; without times, or at a row a second, it may have been lean for long.</summary>
    [Theory]
    [InlineData(0.05, Outcome.Holds)]
    [InlineData(1.0, Outcome.Fails)]
    [InlineData(null, Outcome.HoldsAsFarAsJudged)]
    public void SingleLeanRow_CountsByTheTimeItMayHaveLasted(double? seconds, Outcome outcome)
    {
        int at = Array.FindIndex(Sound, cell => Boost(cell) > 50) + 1;
        RunFindings findings = Judged(Sound.Select((cell, i) => cell with
        {
            Lambda = i == at ? 1.05 : cell.Lambda,
            Time = seconds is { } step ? Duration.FromSeconds(i * step) : null,
        }));
        Assert.Equal(outcome, findings.Verdict.Outcome);
    }

    [Fact]
    public void FuelCut_IsNotLean()
    {
        // The driver lifts: no pulse, some boost left, lambda off its scale.
        int first = Array.FindLastIndex(Sound, cell => Boost(cell) > 50) - 3;
        RunFindings findings = Judged(Sound.Select((cell, i) =>
            i >= first && i < first + 4 ? cell with { Pulse = Duration.Zero, Lambda = 5, Flow = null, Power = null } : cell));
        Assert.Empty(findings.Lean.Answer!.Stretches);
        Assert.NotEqual(Outcome.Fails, findings.Judgements.Single(one => one.Part == Part.Mixture).Outcome);
    }

    [Fact]
    public void ManyLeanStretches_FitInALine()
    {
        RunFindings findings = Judged(Sound.Select((cell, i) => Boost(cell) > 10 && i % 5 < 2 ? cell with { Lambda = 1 } : cell));
        Assert.True(findings.Lean.Answer!.Stretches.Count > 8);
        Assert.Contains("stretches more", findings.Lean.ToString(), StringComparison.Ordinal);
        Assert.InRange(findings.Verdict.ToString().Length, 100, 1000);
    }

    [Fact]
    public void EngineWithoutCompressor_IsJudgedNearFullLoad()
    {
        FuelSizing.Systems.FuelSystem plan = OddRunTests.Plan("drawn");
        RecordedRun Of(double lambda) => RecordedRun.Of("drawn", Atmosphere.Standard, Enumerable.Range(0, 40).Select(i => RunRow.Of(
            i + 1, Wren.Rpm(2500 + (100 * i)), Duration.FromSeconds(0.05 * i), Wren.Kpa(101 + (i % 2 * 0.2)), lambda: lambda + (0.001 * (i % 3)))));
        Assert.Equal(Outcome.Fails, RunFindings.Of(plan, Of(1.0)).Verdict.Outcome);
        LeanExcursions sound = RunFindings.Of(plan, Of(0.82)).Lean.Answer!;
        Assert.Equal("no lean stretch near full load", sound.ToString());
        Assert.Equal(40, sound.RowsJudged);
    }

    [Fact]
    public void DutyCycle_OverItsLimit_Fails()
    {
        RunFindings findings = Judged(Sound.Select((cell, i) => i == 60 ? cell with { Duty = Ratio.FromPercent(91) } : cell));
        Assert.Equal(Outcome.Fails, findings.Verdict.Outcome);
        Assert.Contains("duty cycle up to 91.0 %", findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Contains("over the 85 % limit (common practice, no source) in 1 rows", findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.Contains(findings.WhatToChange, change => change.Code == "remedy.duty-cycle-run");
    }

    [Fact]
    public void DutyCycle_OfTwoChannelsThatDisagree_IsTheHigher()
    {
        RunFindings findings = Judged(Sound.Select(cell => cell.Pulse is null ? cell : cell with { Duty = Ratio.FromPercent(40 + (cell.Speed.RevolutionsPerSecond / 20)) }));
        Assert.InRange(findings.Duty.Answer!.Maximum.Percent, 65, 85);
    }

    [Fact]
    public void DutyCycle_InEverySecondRow_IsJudgedInPart()
    {
        RunFindings findings = Judged(Sound.Select((cell, i) => i % 2 == 0 ? cell with { Pulse = null } : cell));
        AssertInPart(findings, Part.Injectors, "duty cycle is known of ");
    }

    [Fact]
    public void DutyCycle_NotRecordedBlankOrStuck_CannotBeTold()
    {
        RunFindings none = Judged(Sound.Select(cell => cell with { Pulse = null }));
        Assert.Equal(Outcome.CannotSay, none.Verdict.Outcome);
        Assert.Contains("neither pulse nor duty cycle was recorded", none.Verdict.ToString(), StringComparison.Ordinal);

        RunFindings stuck = Judged(Sound.Select(cell => cell with { Pulse = null, Duty = cell.Pulse is null ? null : Ratio.FromPercent(60) }));
        RunJudgement duty = stuck.Judgements.Single(one => one.Part == Part.Injectors);
        Assert.Equal(Outcome.CannotSay, duty.Outcome);
        Assert.Contains("reads the same throughout", duty.ToString(), StringComparison.Ordinal);

        RunFindings over = Judged(Sound.Select(cell => cell with { Pulse = null, Duty = cell.Pulse is null ? null : Ratio.FromPercent(95) }));
        Assert.Equal(Outcome.Fails, over.Verdict.Outcome);
    }

    /// <summary>
    /// A rail that does not rise with boost: 300 kPa base, gain 3 from 20 kPa on, so at 59 kPa it should hold 300 + 20 + 3 · 39 = 437 kPa.
    /// The fault that explains it, a gain of zero, does not explain the sag away.
    /// </summary>
    [Fact]
    public void Rail_FlatOnBoost_IsMeasuredAgainstThePlan()
    {
        RunFindings findings = Judged(Sound.Select((cell, i) => cell.Rail is null ? cell : cell with { Rail = Wren.Kpa(300 + (i % 3)) }));
        double boost = Sound.Max(cell => Boost(cell));
        PressureSag sag = findings.Sag.Answer!;
        Assert.Equal(Outcome.Fails, findings.Verdict.Outcome);
        Assert.InRange(sag.Maximum.Kilopascals, 20 + (3 * (boost - 20)) - 8, 20 + (3 * (boost - 20)) + 8);
        Assert.True(sag.Points > 5);
        Assert.Contains("below its set pressure", findings.Verdict.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Rail_ThatThePlanHasSaggingToo_FailsAndSaysSo()
    {
        RunFindings findings = RunFindings.Of(PulledWren.Check, Car.Recorded(1, outliers: 0));
        Assert.Equal(RunFault.None, findings.Fault);
        Assert.Equal(Outcome.Fails, findings.Verdict.Outcome);
        Assert.True(findings.Sag.Answer!.Predicted > Wren.Kpa(20));
        Assert.Contains("the pump being the limit", findings.Verdict.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Rail_LowInOneRowAlone_IsAGlitch()
    {
        int at = Array.FindIndex(Sound, cell => Boost(cell) > 50);
        Cells[] few = [.. Sound.Skip(12).Take(60)];
        Assert.Equal(0, Judged(few.Select((cell, i) => i == at - 12 ? cell with { Rail = cell.Rail - Wren.Kpa(150) } : cell)).Sag.Answer!.Points);
    }

    [Fact]
    public void Rail_NotRecordedOrOnlyInSomeRows_IsNamedAsNotJudged()
    {
        AssertInPart(Judged(Sound.Select(cell => cell with { Rail = null })), "rail pressure", "must both be recorded");
        AssertInPart(Judged(Sound.Select((cell, i) => i % 2 == 0 ? cell with { Rail = null } : cell)), "rail pressure", "rail pressure is known of ");
    }

    [Fact]
    public void Log_WithRowsThatCouldNotBeRead_IsNotWhollyJudged()
    {
        RecordedRun run = RunOf(Sound);
        RunAccount account = new(run.Rows.Count + 3, run.Rows.Count, 0, 3, [.. new long[(int)RunProblemKind.ReversedTime], 3]);
        RecordedRun lost = With(run, account, isComplete: true);
        AssertInPart(RunFindings.Of(PulledWren.Check, lost), "coverage", "3 of ");
        AssertInPart(RunFindings.Of(PulledWren.Check, With(run, run.Account, isComplete: false)), "coverage", "was stopped after");
    }

    [Fact]
    public void Log_WithABlankLineOrACutLastOne_IsWhollyJudged()
    {
        RecordedRun run = RunOf(Sound);
        long[] kinds = new long[(int)RunProblemKind.ReversedTime + 1];
        (kinds[(int)RunProblemKind.BlankLine], kinds[(int)RunProblemKind.TruncatedLine]) = (1, 1);
        Assert.Equal(
            Outcome.Holds,
            RunFindings.Of(PulledWren.Check, With(run, new(run.Rows.Count + 2, run.Rows.Count, 0, 2, kinds), isComplete: true)).Verdict.Outcome);
    }

    [Fact]
    public void Judgements_HaveTheMostUrgentFirst()
    {
        RunFindings findings = Judged(Sound.Select(cell => cell with { Lambda = null, Rail = cell.Rail - Wren.Kpa(60) }));
        Assert.Equal(Outcome.Fails, findings.Verdict.Outcome);
        int[] ranks = [.. findings.Judgements.Select(one => Urgency.Rank(one.Outcome))];
        Assert.Equal(ranks.OrderDescending(), ranks);
        Assert.Contains(findings.Judgements, one => one.Part == Part.Mixture && one.Outcome == Outcome.CannotSay);
        Assert.StartsWith("rail pressure: rail up to ", findings.Judgements[0].ToString(), StringComparison.Ordinal);
    }

    private static void AssertMixtureOpen(IEnumerable<Cells> cells, string words)
    {
        RunFindings findings = Judged(cells);
        Assert.Equal(Outcome.CannotSay, findings.Verdict.Outcome);
        Assert.Equal(Outcome.CannotSay, findings.Judgements.Single(one => one.Part == Part.Mixture).Outcome);
        Assert.Contains(words, findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("no lean stretch", $"{findings.Verdict} {findings.Lean}", StringComparison.Ordinal);
    }

    private static void AssertInPart(RunFindings findings, Part part, string words) => AssertInPart(findings, part.Name, words);

    private static void AssertInPart(RunFindings findings, string part, string words)
    {
        Assert.Equal(Outcome.HoldsAsFarAsJudged, findings.Verdict.Outcome);
        NotJudged open = Assert.Single(findings.Verdict.NotJudged, one => one.Part.Name == part);
        Assert.Contains(words, open.ToString(), StringComparison.Ordinal);
        Assert.Contains(words, findings.Verdict.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("no lean stretch", part == Part.Mixture.Name ? findings.Lean.ToString() : "", StringComparison.Ordinal);
    }

    private static double Boost(Cells cell) => ((cell.Manifold ?? PulledWren.Air.Pressure) - PulledWren.Air.Pressure).Kilopascals;

    private static RunFindings Judged(IEnumerable<Cells> cells) => RunFindings.Of(PulledWren.Check, RunOf(cells));

    private static RecordedRun RunOf(IEnumerable<Cells> cells) =>
        RecordedRun.Of("pull", PulledWren.Air, cells.Select((cell, i) => cell.Row(i + 1)));

    private static RecordedRun With(RecordedRun run, RunAccount account, bool isComplete) => new(
        run.Name,
        run.Atmosphere,
        [.. run.Rows.Select(row => row.Line)],
        [.. Enum.GetValues<Channel>().Select(channel => run.Has(channel) ? run.Si(channel).ToArray() : null)],
        [],
        account,
        isComplete);
}
