using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Findings;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How what a recorded run says is shown.</summary>
internal static class FindingShown
{
    public static void Register()
    {
        Shown.As<RunFindings>(FindingTables.Findings);
        Shown.As<Calibration>(FindingTables.Calibrated);
        RegisterFindings();
        RegisterComparisons();
        Estimate<BrakeSpecificFuelConsumption>(Readable.Of);
        Estimate<Duration>(Readable.Of);
        Estimate<Pressure>(Readable.Of);
        Estimate<Ratio>(Readable.DutyCycle);
        Estimate<double>(value => PartText.Number(value));
    }

    private static void RegisterFindings()
    {
        Finding<DutyUse>("Duty cycle", duty =>
        [
            new("Highest", "D", Readable.DutyCycle(duty.Maximum), $"at {duty.Place}"),
            new("Limit", "", Readable.Of(duty.Limit)),
            new("Rows over it", "", PartText.Count(duty.RowsOver)),
        ]);
        Finding<DifferentialUse>("Across the injectors", use =>
        [
            new("Lowest", "Δp", Readable.Of(use.Minimum), $"at {use.MinimumPlace}"),
            new("Highest", "Δp", Readable.Of(use.Maximum), $"at {use.MaximumPlace}"),
        ]);
        Finding<RegulatorFit>("Regulator by the run", fit =>
        [
            Fact.Words("Behaves as", Behaviour(fit.Behaviour)),
            Of("Base pressure", "p_base", fit.Base, Readable.Of),
            Of("Gain", "g", fit.Gain, value => PartText.Number(value)),
            .. fit.Onset is { } onset ? (Fact[])[Of("Onset", "o", onset, Readable.Boost)] : [],
            new("Scatter", "", Readable.PressureLoss(fit.Scatter), $"{PartText.Count(fit.Points)} points, {PartText.Count(fit.Outliers)} of them far off"),
        ]);
        Finding<PressureSag>("Rail under its set pressure", sag =>
        [
            new("Most", "Δp_s", Readable.Of(sag.Maximum), sag.Points == 0 ? "the regulator held the rail everywhere" : $"at {sag.Place}"),
            new("Fuel there", "Q_f", Readable.PumpFlow(sag.Flow)),
            new("Points", "", PartText.Count(sag.Points)),
            .. sag.Causes.Select(cause => Fact.Words("May be", $"{cause}")),
        ]);
        Finding<FuelBalance>("Fuel, by several methods", balance =>
            [.. balance.Comparisons.Select(one => Of($"By {one.By}", "", one.OverInjectors, Readable.Chance, "of that by the injectors"))]);
        Finding<BrakeConsumptionFound>("BSFC by the run", found =>
            [Of("Found", "b", found.Found, Readable.Of), new("Planned", "b", Readable.Of(found.Planned))]);
        Finding<VolumetricEfficiencyFound>("Air by the run", found =>
        [
            Of("Share of the planned", "", found.Factor, Readable.DutyCycle),
            .. found.BySpeed.Select(one => new Fact($"At {Readable.Of(one.Speed)}", "η_v", Readable.DutyCycle(one.Efficiency))),
        ]);
        Finding<DeadTimeFound>("Dead time by the run", found =>
            [Of("Over the table", "Δt_d", found.OverPlanned, Readable.Of), Of("Static flow", "Q_s", found.FlowFactor, Readable.DutyCycle, "of the planned")]);
        Finding<LeanExcursions>("Lean on boost", lean =>
        [
            new("Lean over", "λ", PartText.Number(lean.Limit), lean.Stretches.Count == 0 ? "no stretch was" : ""),
            .. lean.Stretches.Select(stretch => new Fact("Stretch", "λ", PartText.Number(stretch.Lambda), Length(stretch))),
        ]);
    }

    private static void RegisterComparisons()
    {
        Shown.By<FuelComparison>(one => new($"Fuel by {one.By}", [Of("Share of that by the injectors", "", one.OverInjectors, Readable.Chance)]));
        Shown.By<LeanExcursion>(stretch => new(
            "Lean stretch",
            [new("Lambda", "λ", PartText.Number(stretch.Lambda), Length(stretch)), Fact.Words("Begins at", $"{stretch.From}")]));
        Shown.By<RunPlace>(place => new(
            "Place in a run",
            [
                new("Line", "", PartText.Count(place.Line)),
                .. place.Time is { } time ? (Fact[])[new("Time", "t", PartText.Seconds(time))] : [],
                new("Engine speed", "n", Readable.Of(place.Speed)),
                .. place.Boost is { } boost ? (Fact[])[new("Boost", "p_b", Readable.Boost(boost))] : [],
            ]));
        Shown.By<FaultFinding>(fault => new(
            $"Fault: {fault.Name}",
            [new("Evidence", "", PartText.Number(fault.Evidence, 0)), Fact.Words("It would be", fault.Size), Fact.Words("Change", fault.Change)]));
        Shown.By<PlanAgreement>(one => new(
            $"Run against plan: {one.Name}",
            [
                new("Measured − predicted", "", FindingText.Figure(one.Difference, one.Unit), one.Agrees ? "agrees" : "does not agree"),
                new("May be", "", PartText.Within(FindingText.Figure(one.Allowed, one.Unit))),
                new("Points beyond", "", PartText.Count(one.PointsBeyond), $"of {PartText.Count(one.Points)}"),
            ]));
        Shown.By<CalibratedFigure>(figure => new(
            "A figure of the plan by the run",
            [
                new(FindingText.Name(figure.Quantity), "", FindingText.ByRun(figure), FindingText.Source(figure)),
                .. figure.IsDetermined ? (Fact[])[new("Standard error", "", FindingText.Error(figure))] : [],
                new("Planned", "", FindingText.Figure(figure.Planned, figure.Unit)),
            ]));
        Shown.By<RunCheck>(check => new(
            "A plan to compare a run with",
            [
                .. SystemShown.Of(check.Plan),
                new("Supply voltage", "V", Readable.Of(check.SupplyVoltage), "where the run does not say"),
                new("Fuel in the rail", "T_f", Readable.Of(check.FuelTemperature), "where the run does not say"),
                new("Drivetrain's loss", "", Readable.DutyCycle(check.DriveLoss)),
            ]));
        Shown.By<SensorAccuracy>(accuracy => new(
            "How well a run was measured",
            [
                Give("Rail pressure", "p_r", Readable.PressureLoss(accuracy.Rail)),
                Give("Rail pressure, offset", "p_r", Readable.PressureLoss(accuracy.RailOffset)),
                Give("Manifold pressure", "p", Readable.PressureLoss(accuracy.Manifold)),
                Give("Manifold pressure, offset", "p", Readable.PressureLoss(accuracy.ManifoldOffset)),
                Give("Pulse", "t", Readable.Of(accuracy.Pulse)),
                Give("Lambda", "λ", Readable.DutyCycle(accuracy.Lambda)),
                Give("Fuel flow", "Q_f", Readable.DutyCycle(accuracy.FuelFlow)),
                Give("Fuel flow, factor", "Q_f", Readable.DutyCycle(accuracy.FuelFlowFactor)),
                Give("Power", "P", Readable.DutyCycle(accuracy.Power)),
            ]));
        Shown.By<PlanTolerance>(tolerance => new(
            "How far sound parts may be off the plan",
            [
                Give("Pump's flow", "Q_p", Readable.DutyCycle(tolerance.PumpFlow)),
                Give("Feed's resistance", "R", Readable.Of(tolerance.FeedResistance)),
                Give("Filter's loss", "Δp", Readable.DutyCycle(tolerance.FilterLoss)),
                Give("Regulator's base", "p_base", Readable.PressureLoss(tolerance.RegulatorBase)),
                Give("Regulator's gain", "g", Readable.DutyCycle(tolerance.RegulatorGain)),
                Give("Regulator's onset", "o", Readable.PressureLoss(tolerance.RegulatorOnset)),
                Give("Injectors' flow", "Q_s", Readable.DutyCycle(tolerance.InjectorFlow)),
                Give("Dead time", "t_d", Readable.Of(tolerance.DeadTime)),
                Give("Volumetric efficiency", "η_v", Readable.DutyCycle(tolerance.VolumetricEfficiency)),
                Give("BSFC", "b", Readable.DutyCycle(tolerance.BrakeSpecificFuelConsumption)),
                Give("Supply voltage", "V", Readable.VoltageDrop(tolerance.SupplyVoltage)),
            ]));
    }

    /// <summary>What was found, or why it cannot be told; the answer by itself shows the same.</summary>
    private static void Finding<T>(string title, Func<T, IReadOnlyList<Fact>> lines)
        where T : class
    {
        Shown.By<T>(found => new(title, lines(found)));
        Shown.By<Finding<T>>(finding => new(
            title,
            finding.Answer is { } answer
                ? lines(answer)
                :
                [
                    Fact.Words("Cannot tell", finding.Reason),
                    .. finding.Missing.Count > 0 ? (Fact[])[Fact.Words("Channels it takes", RunText.Names(finding.Missing))] : [],
                ]));
    }

    private static void Estimate<T>(Func<T, string> text)
        where T : struct =>
        Shown.By<Estimate<T>>(estimate => new("Estimate", [Of("Estimate", "", estimate, text)]));

    private static Fact Of<T>(string name, string symbol, Estimate<T> estimate, Func<T, string> text, string of = "")
        where T : struct =>
        new(name, symbol, text(estimate.Value), $"{(of.Length > 0 ? $"{of}; " : "")}95 % range {text(estimate.Minimum)} to {text(estimate.Maximum)}");

    private static Fact Give(string name, string symbol, string figure) => new(name, symbol, PartText.Within(figure));

    private static string Length(LeanExcursion stretch) =>
        $"at {stretch.Worst}, {(stretch.Length is { } length ? PartText.Seconds(length) : $"{PartText.Count(stretch.Rows)} rows")} long";

    private static string Behaviour(RegulatorBehaviour behaviour) => behaviour switch
    {
        RegulatorBehaviour.Fixed => "fixed",
        RegulatorBehaviour.ManifoldReferenced => "manifold-referenced",
        RegulatorBehaviour.RisingRate => "rising-rate",
        _ => "proportional to boost",
    };
}
