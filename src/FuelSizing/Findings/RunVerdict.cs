using FuelSizing.Checks;
using FuelSizing.Logs;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>The verdict on a run: the worst of faults, mixture, duty cycle and rail pressure, and what was not judged of them.</summary>
internal static class RunVerdict
{
    /// <summary>Rivals that the verdict names; the findings hold them all.</summary>
    private const int NamedRivals = 3;

    /// <summary>What to do about a lean mixture before anything else.</summary>
    public static Statement StayOffLoad { get; } = Statement.Of(
        "remedy.lean",
        $"Stay off full load until lambda is as planned: a lean mixture under load detonates and destroys an engine in seconds. Check the lambda sensor, rail pressure and what the controller commands.");

    /// <summary>What to do about a duty cycle over its limit.</summary>
    public static Statement LargerInjectors { get; } = Statement.Of(
        "remedy.duty-cycle-run", $"Run at less boost or engine speed, or fit larger injectors: over its limit an injector has no time left for what the next row may need.");

    /// <summary>The worst of all judgements, the most urgent first, and what was not judged.</summary>
    public static (IReadOnlyList<RunJudgement> Judgements, Verdict Verdict) Of(RunFindings findings, bool isStopped)
    {
        RunJudgement[] judgements =
        [
            .. new[] { Mixture(findings), Rail(findings), Duty(findings), Faults(findings, isStopped) }
                .OfType<RunJudgement>()
                .OrderByDescending(one => Urgency.Rank(one.Outcome)),
        ];
        NotJudged[] open =
        [
            .. judgements.Where(one => one.Gap is not null).Select(one => new NotJudged(one.Part, one.Gap!, null)),
            .. findings.Sag.Reason is { } noRail ? (NotJudged[])[new(RunJudgement.Rail, noRail, null)] : [],
            .. Lost(findings.Run).Select(lost => new NotJudged(RunJudgement.Coverage, lost, null)),
        ];
        Outcome worst = judgements.Select(one => one.Outcome).Aggregate(Urgency.Worse);
        Outcome outcome = worst == Outcome.Holds && open.Length > 0 ? Outcome.HoldsAsFarAsJudged : worst;
        RunJudgement[] decisive = [.. judgements.Where(one => one.Outcome == outcome)];
        Statement headline = outcome switch
        {
            Outcome.Fails => Statement.Of("run.verdict-fails", $"the run does not hold: {decisive[0].Text}{Also(decisive[1..])}"),
            Outcome.CannotSay => Statement.Of("run.verdict-cannot-tell", $"cannot tell whether the run holds: {decisive:;}"),
            Outcome.HoldsAsFarAsJudged => Statement.Of(
                "run.verdict-as-far-as-judged", $"the run is as planned as far as judged, within tolerances and accuracy; not judged: {open:;}"),
            _ => Statement.Of("run.as-planned", $"the run is as planned, within tolerances and accuracy"),
        };
        return (judgements.AsReadOnly(), new(outcome, headline, judgements, open.AsReadOnly()));
    }

    // One line has room for one reason; the others stand in the list beneath it.
    private static Statement? Also(RunJudgement[] others) => others.Length == 0
        ? null
        : Statement.Of("run.verdict-also", $"; nor do: {others.Select(one => Statement.Of("run.verdict-part", $"{one.Part.Name}")).ToArray():,}");

    private static RunJudgement Mixture(RunFindings findings) =>
        findings.Lean.Answer is not { } lean ? new(Part.Mixture, Outcome.CannotSay, findings.Lean.Reason!)
        : lean.Worst is { } worst ? new(
            Part.Mixture,
            Outcome.Fails,
            worst.IsPlanLimit
                ? Statement.Of(
                    "run.leaner-than-allowed",
                    $"lean {lean.Load}: {worst}, {worst.Planned:0.00} planned and {worst.Limit:0.00} the leanest that the plan allows there; a lean mixture under load detonates and destroys an engine in seconds{Cause(findings)}")
                : Statement.Of(
                    "run.too-lean",
                    $"lean {lean.Load}: {worst}, {worst.Planned:0.00} planned and {worst.Limit:0.00} the limit, 6 % over it (common practice, no source); a lean mixture under load detonates and destroys an engine in seconds{Cause(findings)}"),
            lean.Gap)
        : new(Part.Mixture, Outcome.Holds, lean.Text, lean.Gap);

    // Where the plan's controller is described, it may have foretold the lean place.
    private static Statement? Cause(RunFindings findings) => findings.Mixture.Answer is { } beside
        ? Statement.Of("run.lean-cause", $"; leanest {beside.Leanest}")
        : null;

    // Rail pressure is not in every log; without it the verdict says that it was not judged.
    private static RunJudgement? Rail(RunFindings findings) =>
        findings.Sag.Answer is { } sag
            ? new(RunJudgement.Rail, sag.Points > 0 ? Outcome.Fails : Outcome.Holds, sag.Text, sag.Gap)
            : null;

    private static RunJudgement Duty(RunFindings findings) =>
        findings.Duty.Answer is not { } duty ? new(Part.Injectors, Outcome.CannotSay, findings.Duty.Reason!)
        : duty.RowsOver > 0 ? new(
            Part.Injectors,
            Outcome.Fails,
            Statement.Of("run.duty-over-limit", $"duty cycle up to {duty.Maximum:duty-cycle} at {duty.Place}, over the {duty.Limit} limit{duty.Rule} in {duty.RowsOver} rows"),
            duty.Gap)
        : new(Part.Injectors, Outcome.Holds, duty.Text, duty.Gap);

    private static RunJudgement Faults(RunFindings findings, bool isStopped)
    {
        if (!findings.IsDiagnosed)
        {
            return new(
                RunJudgement.Fault,
                Outcome.CannotSay,
                isStopped
                    ? Statement.Of("run.search-stopped", $"the search for faults was stopped, so none is named")
                    : Statement.Of("run.nothing-to-search", $"rail pressure and fuel give too few comparisons with the plan to look for faults"));
        }

        return findings.Fault switch
        {
            RunFault.None when findings.NoFault is { } none && none < Ratio.FromPercent(50) => new(
                RunJudgement.Fault,
                Outcome.CannotSay,
                Statement.Of(
                    "run.fault-possible",
                    $"a fault is likelier than none ({none:chance} for none) but not so much that one may be named; the likeliest is {findings.Faults[0].Name}, {findings.Faults[0].Probability:chance}")),
            RunFault.None => new(RunJudgement.Fault, Outcome.Holds, Statement.Of("run.no-fault", $"none found within tolerances and accuracy")),
            RunFault.Unexplained => new(
                RunJudgement.Fault, Outcome.Fails, Statement.Of("run.unexplained", $"off the plan, and no single fault explains it")),
            _ when findings.Second is { } second => new(
                RunJudgement.Fault,
                Outcome.Fails,
                Statement.Of("run.two-faults", $"one fault does not explain the run: {findings.Faults[0]}, and {second}")),
            _ when findings.Rivals.Count > 0 => new(
                RunJudgement.Fault,
                Outcome.Fails,
                Statement.Of(
                    "run.several-faults",
                    $"{findings.Faults[0]}, or {findings.Rivals.Take(NamedRivals).ToArray():, or}; this run cannot tell them apart")),
            _ => new(RunJudgement.Fault, Outcome.Fails, findings.Faults[0].Text),
        };
    }

    /// <summary>What the log as a whole does not cover.</summary>
    private static IEnumerable<Statement> Lost(RecordedRun run)
    {
        RunAccount account = run.Account;
        long lost = account.RowsRefused - account.CountOf(RunProblemKind.BlankLine) - account.CountOf(RunProblemKind.TruncatedLine);
        long channels = run.Problems.Count(problem => problem.Effect == ProblemEffect.ChannelLeftOut);
        if (!run.IsComplete)
        {
            yield return Statement.Of("run.read-in-part", $"the reading of the log was stopped after {run.Rows.Count} rows");
        }

        if (lost > 0)
        {
            yield return Statement.Of("run.rows-lost", $"{lost} of {account.Rows} rows could not be read");
        }

        if (channels > 0)
        {
            yield return Statement.Of("run.channels-lost", $"{channels} channels of the log could not be read, see its problems");
        }
    }
}
