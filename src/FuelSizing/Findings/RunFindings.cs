using FuelSizing.Checks;
using FuelSizing.Logs;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>A recorded run compared with its plan: did the fuel system perform as sized, and if not, why?</summary>
/// <remarks>
/// Neighbouring rows are gathered to steady points. At each, rail pressure, fuel flow, lambda and power are compared with what
/// the plan makes of speed, manifold pressure, pulse and voltage as recorded. See <c>docs/findings.md</c> for the method and its limits.
/// </remarks>
/// <example>
/// <code>
/// RecordedRun run = RecordedRun.Of("pull", air, [RunRow.Of(1, Rpm(6800), railGauge: Pressure.FromKilopascals(355))]);
/// RunFindings findings = RunFindings.Of(system, run);
/// Console.WriteLine(findings.Verdict);
/// </code>
/// </example>
public sealed class RunFindings : IReadable
{
    private RunFindings(RunCheck check, RecordedRun run, RunModel model, Diagnosis? diagnosis, bool isStopped)
    {
        (Check, Run) = (check, run);
        UseReading use = new(check, run, model);
        MixtureReading mixture = new(check, run, model);
        (Duty, Differential) = (use.Duty(), use.Differential());
        (Lean, Mixture) = (mixture.Lean(), mixture.BesidePlan());
        PressureReading pressure = new(check, run, model);
        (Regulator, Sag) = (pressure.Regulator(diagnosis), pressure.Sag(diagnosis));
        FuelReading fuel = new(check, run, model);
        (Fuel, BrakeConsumption) = (fuel.Fuel(), fuel.BrakeConsumption());
        (VolumetricEfficiency, DeadTime) = (fuel.VolumetricEfficiency(), fuel.DeadTime(diagnosis));
        Agreement = new AgreementReading(check, run, model).Agreement();
        Notes = new NoteReading(check, run, model).Notes(diagnosis, isStopped);
        IsComplete = run.IsComplete && !isStopped;
        PointsCompared = model.Points.Count;
        RowsUsed = model.Points.RowsUsed;
        RowsOutsideThePlan = model.Points.RowsOutside;
        (Fault, Faults, Rivals, NextTests) = (RunFault.None, [], [], []);
        if (diagnosis is not null)
        {
            Fault = diagnosis.Likeliest == RunFault.None && diagnosis.Lack > Unexplained ? RunFault.Unexplained : diagnosis.Likeliest;
            Faults = [.. diagnosis.Suspects.Select(one => FaultWords.Of(Check, diagnosis, one))];
            Rivals = [.. diagnosis.Rivals.Select(one => FaultWords.Of(Check, diagnosis, one))];
            Second = Faults.FirstOrDefault(one => one.Fault == diagnosis.Second);
            NextTests = TestChoice.Of(Check, diagnosis);
            NoFault = Ratio.FromDecimalFractions(diagnosis.NoFault);
            IsDiagnosed = true;
        }

        (Judgements, Verdict) = RunVerdict.Of(this, isStopped);
    }

    /// <summary>Sum of squares per comparison over which something is off that no single fault explains.</summary>
    private const double Unexplained = 2;

    /// <summary>What it was compared with.</summary>
    public RunCheck Check { get; }

    /// <summary>The run.</summary>
    public RecordedRun Run { get; }

    /// <summary>Duty cycle used.</summary>
    public Finding<DutyUse> Duty { get; }

    /// <summary>Pressure across the injectors.</summary>
    public Finding<DifferentialUse> Differential { get; }

    /// <summary>The regulator's base, gain and onset as run.</summary>
    public Finding<RegulatorFit> Regulator { get; }

    /// <summary>Fuel by flow meter, by air and by power against fuel by the injectors.</summary>
    public Finding<FuelBalance> Fuel { get; }

    /// <summary>BSFC implied.</summary>
    public Finding<BrakeConsumptionFound> BrakeConsumption { get; }

    /// <summary>Volumetric efficiency implied.</summary>
    public Finding<VolumetricEfficiencyFound> VolumetricEfficiency { get; }

    /// <summary>How far the rail fell under the pressure that the regulator as planned should hold, and why.</summary>
    public Finding<PressureSag> Sag { get; }

    /// <summary>Dead time and static flow of the injectors.</summary>
    public Finding<DeadTimeFound> DeadTime { get; }

    /// <summary>Lean stretches on boost, of an engine without compressor near full load.</summary>
    public Finding<LeanExcursions> Lean { get; }

    /// <summary>Lambda as recorded beside that which the plan's controller gives; cannot be told where the plan has no controller described.</summary>
    public Finding<MixtureComparison> Mixture { get; }

    /// <summary>Where run and plan agree within tolerances and accuracy, and where not.</summary>
    public IReadOnlyList<PlanAgreement> Agreement { get; }

    /// <summary>False if the reading of the run, or the search for faults, was stopped; <see cref="Notes"/> says which.</summary>
    public bool IsComplete { get; }

    /// <summary>
    /// True if the channels allowed a search for faults, and it was not stopped; else <see cref="Notes"/> says what is missing.
    /// </summary>
    public bool IsDiagnosed { get; }

    /// <summary>The likeliest single fault.</summary>
    public RunFault Fault { get; }

    /// <summary>Probability that nothing is at fault; none where no fault was looked for.</summary>
    public Ratio? NoFault { get; }

    /// <summary>A second fault that the run needs beside the likeliest; none where one explains it.</summary>
    public FaultFinding? Second { get; }

    /// <summary>Every fault tried, the likeliest first, with its probability.</summary>
    public IReadOnlyList<FaultFinding> Faults { get; }

    /// <summary>Faults that explain the run nearly as well: the data cannot tell them from the likeliest.</summary>
    public IReadOnlyList<FaultFinding> Rivals { get; }

    /// <summary>
    /// Measurements that would tell apart what the run leaves open, the most telling first; none where it leaves nothing open. They say nothing of cost: one
    /// that is quicker may do.
    /// </summary>
    public IReadOnlyList<NextTest> NextTests { get; }

    /// <summary>Points at which run and plan were compared.</summary>
    public int PointsCompared { get; }

    /// <summary>Rows gathered in them.</summary>
    public int RowsUsed { get; }

    /// <summary>Rows of which the plan says nothing: outside its tables, or the engine at rest.</summary>
    public int RowsOutsideThePlan { get; }

    /// <summary>Rows between steady points, too few and too unlike their neighbours to be gathered.</summary>
    public int RowsUnsteady => Run.Rows.Count - RowsUsed - RowsOutsideThePlan;

    /// <summary>What could not be worked out for lack of which channel, and what a careful reader should know.</summary>
    public IReadOnlyList<Statement> Notes { get; }

    /// <summary>What to change or measure next.</summary>
    public IReadOnlyList<Statement> WhatToChange =>
    [
        .. Lean.Answer is { Stretches.Count: > 0 } ? (Statement[])[RunVerdict.StayOffLoad] : [],
        .. Duty.Answer is { RowsOver: > 0 } ? (Statement[])[RunVerdict.LargerInjectors] : [],
        .. IsDiagnosed && Faults.Count > 0 ? ForFaults() : [],
    ];

    /// <summary>What the verdict is the worst of: faults, mixture, duty cycle and, where it was recorded, rail pressure; the most urgent first.</summary>
    public IReadOnlyList<RunJudgement> Judgements { get; }

    /// <summary>
    /// Whether the run is as planned: fails if anything judged fails, cannot say if faults, mixture or duty cycle cannot be told, holds as
    /// far as judged where something else, or a part of the rows, was not judged.
    /// </summary>
    public Verdict Verdict { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Verdict.In(style);

    /// <summary>The verdict, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Verdict.ToString();

    private IEnumerable<Statement> ForFaults()
    {
        if (Fault is RunFault.None or RunFault.Unexplained)
        {
            // Nothing needs to change only where nothing else is wrong.
            return Fault == RunFault.None && Verdict.Outcome == Outcome.Fails ? [] : [FaultWords.Advice(Check, Fault)];
        }

        return
        [
            .. Rivals.Count > 0 ? NextTests.Take(1).Select(test => test.What) : [],
            Faults[0].Change,
            .. Second is { } second ? (Statement[])[second.Change] : [],
            .. Rivals.Select(rival => rival.Change),
        ];
    }

    /// <summary>Compares a run with a plan, with default tolerances, accuracy and conditions.</summary>
    /// <param name="plan">What was sized.</param>
    /// <param name="run">What was recorded.</param>
    /// <returns>The findings.</returns>
    public static RunFindings Of(FuelSystem plan, RecordedRun run) => Of(RunCheck.Of(plan), run);

    /// <summary>Compares a run with a plan.</summary>
    /// <param name="check">The plan, and what it and the recording may be off by.</param>
    /// <param name="run">What was recorded.</param>
    /// <param name="progress">Told the share that is done.</param>
    /// <param name="cancellation">Stops the search for faults; what the channels say by themselves is kept, and no fault is named.</param>
    /// <returns>The findings.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped before the run was gathered.</exception>
    public static RunFindings Of(
        RunCheck check, RecordedRun run, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(run);
        RunModel model = check.Model(run);
        cancellation.ThrowIfCancellationRequested();
        bool isDiagnosable = model.Comparisons >= MinimumComparisons;
        Diagnosis? diagnosis = isDiagnosable ? Diagnosis.Of(check, model, progress, cancellation) : null;
        bool isStopped = isDiagnosable && diagnosis is null;
        RunFindings findings = new(check, run, model, diagnosis, isStopped);
        if (!isStopped)
        {
            progress?.Report(Ratio.FromPercent(100));
        }

        return findings;
    }

    /// <summary>Comparisons without which no fault is looked for.</summary>
    private const int MinimumComparisons = 12;
}
