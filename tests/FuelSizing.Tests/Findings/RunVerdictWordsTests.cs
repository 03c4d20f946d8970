using FuelSizing.Checks;
using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>A verdict on a run, whole: its sentence, its judgements in their order, and what was not judged.</summary>
public class RunVerdictWordsTests
{
    /// <summary>Rows on boost at which no pump is the limit, as planned.</summary>
    private static readonly Cells[] Sound = [.. ExactRun.Of(PulledWren.Plan).Rows.Skip(8).Take(16).Select((row, i) => Cells.Of(row) with { Lambda = 0.81 + (0.001 * i) })];

    [Fact]
    public void SoundRun_IsAsPlanned()
    {
        RunFindings findings = Found(Sound);
        Assert.Equal("the run is as planned, within tolerances and accuracy", findings.Verdict.ToString());
        Assert.Equal(
            [
                "mixture: no lean stretch on boost",
                "rail pressure: the regulator held the rail everywhere",
                $"injectors: {findings.Duty}",
                "faults: none found within tolerances and accuracy",
            ],
            findings.Judgements.Select(one => one.ToString()).OrderBy(text => text[0] switch { 'm' => 0, 'r' => 1, 'i' => 2, _ => 3 }));
        Assert.All(findings.Judgements, one => Assert.Equal(Outcome.Holds, one.Outcome));
        Assert.Empty(findings.Verdict.NotJudged);
        Assert.True(findings.IsComplete);
        Assert.True(findings.IsDiagnosed);
        Assert.Equal((16, 16, 0, 0), (findings.PointsCompared, findings.RowsUsed, findings.RowsOutsideThePlan, findings.RowsUnsteady));
        Assert.Equal("Nothing needs to change.", Assert.Single(findings.WhatToChange).ToString());
        Assert.Equal(findings.Verdict.In(TextStyle.Metric), findings.In(TextStyle.Metric));
    }

    /// <summary>Lean, over the duty cycle and with the rail down in a few rows, so that no single fault explains it: the sentence says the first, and names the others.</summary>
    [Fact]
    public void RunThatFailsInSeveralWays_SaysOneAndNamesTheOthers()
    {
        RunFindings findings = Found(Sound.Select((cells, i) => cells with
        {
            Lambda = i is 9 or 10 ? 0.81 + (0.01 * i) : cells.Lambda,
            Duty = i is 7 or 8 or 9 ? Ratio.FromPercent(88 + i) : null,
            Rail = i is 11 or 12 ? cells.Rail - Wren.Kpa(60) : cells.Rail,
        }));
        Assert.Equal(
            $"the run does not hold: {findings.Judgements[0].Text}; nor do: rail pressure, injectors, faults",
            findings.Verdict.ToString());
        Assert.All(findings.Judgements, one => Assert.Equal(Outcome.Fails, one.Outcome));
        Assert.Equal(
            [
                "mixture: lean on boost: lambda 0.91 at 3,700 rev/min, 0.35 bar, 0.10 s long, 0.82 planned and 0.87 the limit, 6 % over it (common practice, no source); a lean mixture under load detonates and destroys an engine in seconds",
                $"rail pressure: rail up to 60 kPa below its set pressure at 4,300 rev/min, 0.35 bar, {findings.Sag.Answer!.Flow!.Value.LitersPerHour:0} L/h injected",
                "injectors: duty cycle up to 97.0 % at 3,100 rev/min, 0.35 bar, over the 85 % limit (common practice, no source) in 3 rows",
            ],
            findings.Judgements.Take(3).Select(one => one.ToString()));
        Assert.Equal(["remedy.lean", "remedy.duty-cycle-run", "remedy.unexplained"], findings.WhatToChange.Select(change => change.Code));
        Assert.StartsWith("Stay off full load until lambda is as planned:", findings.WhatToChange[0].ToString(), StringComparison.Ordinal);
        Assert.StartsWith("Run at less boost or engine speed, or fit larger injectors:", findings.WhatToChange[1].ToString(), StringComparison.Ordinal);
    }

    /// <summary>Some rows without lambda, some without pulse, no rail: as planned as far as judged, with the list.</summary>
    [Fact]
    public void RunThatIsJudgedInPart_ListsWhatWasNotJudged()
    {
        RunFindings findings = Found(Sound.Select((cells, i) => cells with
        {
            Lambda = i == 10 ? null : cells.Lambda,
            Pulse = i is 6 or 7 ? null : cells.Pulse,
            Rail = null,
        }));
        Assert.Equal(Outcome.HoldsAsFarAsJudged, findings.Verdict.Outcome);
        Assert.Equal(
            [
                "mixture, lambda is known of 7 of 8 rows on boost", "injectors, duty cycle is known of 14 of 16 rows with the engine turning",
                "rail pressure, rail and manifold pressure must both be recorded",
            ],
            findings.Verdict.NotJudged.Select(one => one.ToString()));
        Assert.Equal(
            $"the run is as planned as far as judged, within tolerances and accuracy; not judged: {string.Join("; ", findings.Verdict.NotJudged)}",
            findings.Verdict.ToString());
        Assert.Equal(3, findings.Judgements.Count);
    }

    /// <summary>A log with lost rows and channels, that was not read to its end, is not wholly judged.</summary>
    [Fact]
    public void Log_ThatCouldNotBeReadWhole_SaysWhatIsLost()
    {
        RecordedRun run = RunOf(Sound);
        long[] kinds = new long[(int)RunProblemKind.ReversedTime + 1];
        (kinds[(int)RunProblemKind.BlankLine], kinds[(int)RunProblemKind.TruncatedLine]) = (2, 1);
        RunProblem Lost(ProblemEffect effect) => new(1, 1, "x", RunProblemKind.BlankLine, effect, Statement.Of("run.lost", $"lost"));
        RecordedRun part = With(
            run,
            [Lost(ProblemEffect.ChannelLeftOut), Lost(ProblemEffect.ChannelLeftOut), .. Enum.GetValues<ProblemEffect>().Where(one => one != ProblemEffect.ChannelLeftOut).Select(Lost)],
            new(20, 12, 0, 8, kinds),
            isComplete: false);
        RunFindings findings = RunFindings.Of(PulledWren.Check, part);
        Assert.Equal(
            [
                "coverage, the reading of the log was stopped after 16 rows", "coverage, 5 of 20 rows could not be read",
                "coverage, 2 channels of the log could not be read, see its problems",
            ],
            findings.Verdict.NotJudged.Select(one => one.ToString()));
        Assert.False(findings.IsComplete);
        Assert.Equal(Outcome.HoldsAsFarAsJudged, findings.Verdict.Outcome);
        Assert.Empty(RunFindings.Of(PulledWren.Check, With(run, [], new(19, 16, 0, 3, kinds), isComplete: true)).Verdict.NotJudged);
    }

    /// <summary>Neither pulse nor lambda: what cannot be told is listed in the sentence.</summary>
    [Fact]
    public void RunThatCannotBeTold_SaysWhy()
    {
        RunFindings findings = Found(Sound.Select(cells => cells with { Lambda = null, Pulse = null }));
        Assert.Equal(Outcome.CannotSay, findings.Verdict.Outcome);
        Assert.Equal(
            "cannot tell whether the run holds: mixture: lambda and manifold pressure must both be recorded; injectors: neither pulse nor duty cycle was recorded",
            findings.Verdict.ToString());
    }

    /// <summary>Eleven comparisons are too few to look for faults; twelve are not.</summary>
    [Theory]
    [InlineData(11, false)]
    [InlineData(12, true)]
    public void Faults_NeedTwelveComparisons(int rows, bool diagnosed)
    {
        RunFindings findings = Found(Sound.Take(rows).Select(cells => cells with { Lambda = null, Pulse = null, Power = null }));
        Assert.Equal(diagnosed, findings.IsDiagnosed);
        Assert.Equal(diagnosed, findings.Faults.Count > 0);
        Assert.Equal(
            diagnosed ? "faults: none found within tolerances and accuracy" : "faults: rail pressure and fuel give too few comparisons with the plan to look for faults",
            findings.Judgements.Single(one => one.Part.Name == "faults").ToString());
        Assert.True(findings.IsComplete);
        Assert.Equal(diagnosed ? 1 : 0, findings.WhatToChange.Count);
    }

    /// <summary>Stopped in the search, what the channels say by themselves is kept, and no fault is named; the work is then not told to be done.</summary>
    [Fact]
    public void Search_ThatWasStopped_NamesNoFault()
    {
        using CancellationTokenSource source = new();
        List<double> told = [];
        RunFindings findings = RunFindings.Of(
            PulledWren.Check,
            DiagnosisTests.RunWith(RunFault.WrongGain),
            new Told(share =>
            {
                told.Add(share);
                source.Cancel();
            }),
            source.Token);
        Assert.Equal([0.0], told);
        Assert.False(findings.IsComplete);
        Assert.False(findings.IsDiagnosed);
        Assert.Empty(findings.Faults);
        Assert.Empty(findings.Rivals);
        Assert.Equal(RunFault.None, findings.Fault);
        Assert.NotNull(findings.Duty.Answer);
        Assert.Contains(findings.Notes, note => note.ToString() == "the search for faults was stopped, so none is named");
        Assert.Contains(findings.Judgements, one => one.ToString() == "faults: the search for faults was stopped, so none is named" && one.Outcome == Outcome.CannotSay);
        using CancellationTokenSource early = new();
        early.Cancel();
        Assert.Throws<OperationCanceledException>(() => RunFindings.Of(PulledWren.Check, RunOf(Sound), null, early.Token));
        List<double> whole = [];
        RunFindings.Of(PulledWren.Check, RunOf(Sound), new Told(whole.Add));
        Assert.Equal(1, whole[^1]);
    }

    /// <summary>
    /// Lambda alone, 15 % off: wrong injectors and other air explain it alike. Both are named, with their evidence, and what tells them apart
    /// comes first.
    /// </summary>
    [Fact]
    public void FaultsThatLookAlike_AreNamedTogether()
    {
        RunFindings findings = Found(Sound.Select(cells => cells with { Flow = null, Power = null, Lambda = cells.Lambda * 0.85 }));
        Assert.Contains(findings.Fault, new[] { RunFault.WrongInjectorSize, RunFault.AirOffPlan });
        FaultFinding rival = Assert.Single(findings.Rivals);
        Assert.Equal(findings.Faults[1].Fault, rival.Fault);
        Assert.Equal(
            $"faults: {findings.Faults[0]}, or {rival}; this run cannot tell them apart", findings.Judgements.Single(one => one.Part.Name == "faults").ToString());
        Assert.Equal(
            ["Measure the static flow of the injectors at a known pressure.", findings.Faults[0].Change.ToString(), rival.Change.ToString()],
            findings.WhatToChange.Select(change => change.ToString()));
    }

    private static RunFindings Found(IEnumerable<Cells> cells) => RunFindings.Of(PulledWren.Check, RunOf(cells));

    private static RecordedRun RunOf(IEnumerable<Cells> cells) => RecordedRun.Of("rows", PulledWren.Air, cells.Select((one, i) => one.Row(i + 1)));

    private static RecordedRun With(RecordedRun run, RunProblem[] problems, RunAccount account, bool isComplete) => new(
        run.Name,
        run.Atmosphere,
        [.. run.Rows.Select(row => row.Line)],
        [.. Enum.GetValues<Channel>().Select(channel => run.Has(channel) ? run.Si(channel).ToArray() : null)],
        problems,
        account,
        isComplete);

    private sealed class Told(Action<double> tell) : IProgress<Ratio>
    {
        public void Report(Ratio value) => tell(value.DecimalFractions);
    }
}
