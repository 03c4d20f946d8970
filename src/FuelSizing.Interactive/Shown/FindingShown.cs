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
        Shown.By<RunJudgement>((one, style) => new(
            "A run is judged by",
            [Fact.Words(one.Part.Name, PartText.Say(one.Text, style)), Fact.Words("Outcome", SizingTables.Word(one.Outcome)), .. Gap(one.Gap, style)]));
        Estimate<BrakeSpecificFuelConsumption>(style => style.Of);
        Estimate<Duration>(style => style.Of);
        Estimate<Pressure>(style => style.Of);
        Estimate<Ratio>(style => style.DutyCycle);
        Estimate<double>(style => value => style.Number(value));
    }

    private static void RegisterFindings()
    {
        Finding<DutyUse>("Duty cycle", (duty, style) =>
        [
            new("Highest", "D", style.DutyCycle(duty.Maximum), $"at {PartText.Say(duty.Place, style)}"),
            new("Limit", "D_max", style.Of(duty.Limit)),
            new("Rows over it", "", style.Count(duty.RowsOver), Judged(duty.RowsJudged, duty.Rows, style)),
            .. Gap(duty.Gap, style),
        ]);
        Finding<DifferentialUse>("Across the injectors", (use, style) =>
        [
            new("Lowest", "Δp", style.Of(use.Minimum), $"at {PartText.Say(use.MinimumPlace, style)}"),
            new("Highest", "Δp", style.Of(use.Maximum), $"at {PartText.Say(use.MaximumPlace, style)}"),
        ]);
        Finding<RegulatorFit>("Regulator, from the log", (fit, style) =>
        [
            Fact.Words("Behaves as", Behaviour(fit.Behaviour)),
            Of("Base pressure", "p_base", fit.Base, style.Of),
            Of("Gain", "G", fit.Gain, value => style.Number(value)),
            .. fit.Onset is { } onset ? (Fact[])[Of("Onset", "p_on", onset, style.Boost)] : [],
            new("Scatter", "", style.PressureLoss(fit.Scatter), $"{style.Count(fit.Points)} points, {style.Count(fit.Outliers)} of them far off"),
        ]);
        Finding<PressureSag>("Rail pressure below its setting", (sag, style) =>
        [
            new("Most", "Δp_sag", style.Of(sag.Maximum), sag.Points == 0 ? "the regulator held the rail where it is known" : $"at {PartText.Say(sag.Place, style)}"),
            .. sag.Points > 0 && sag.Predicted > Pressure.Zero ? (Fact[])[new("By the plan there", "Δp_sag", style.Of(sag.Predicted), "the pump being the limit")] : [],
            .. sag.Flow is { } flow ? (Fact[])[new("Fuel there", "Q_f", style.PumpFlow(flow))] : [],
            new("Points below", "", style.Count(sag.Points)),
            .. Gap(sag.Gap, style),
            .. sag.Causes.Select(cause => Fact.Words("Possible cause", PartText.Say(cause, style))),
        ]);
        Finding<FuelBalance>("Fuel, by several methods", (balance, style) =>
            [.. balance.Comparisons.Select(one => Of($"By {one.By}", "", one.OverInjectors, style.Chance, "of that by the injectors"))]);
        Finding<BrakeConsumptionFound>("BSFC, from the log", (found, style) =>
            [Of("Found", "b", found.Found, style.Of), new("Planned", "b", style.Of(found.Planned))]);
        Finding<VolumetricEfficiencyFound>("Air, from the log", (found, style) =>
        [
            Of("Share of the planned", "", found.Factor, style.DutyCycle),
            .. found.BySpeed.Select(one => new Fact($"At {style.Of(one.Speed)}", "η_v", style.DutyCycle(one.Efficiency))),
        ]);
        Finding<DeadTimeFound>("Dead time, from the log", (found, style) =>
            [Of("Over the table", "t_d", found.OverPlanned, style.Of), Of("Static flow", "Q_s", found.FlowFactor, style.DutyCycle, "of the planned")]);
        Finding<LeanExcursions>("Lean on boost", (lean, style) =>
        [
            new("Lean over", "λ", style.Number(lean.Worst?.Limit ?? lean.Limit), lean.Stretches.Count > 0 ? Judged(lean.RowsJudged, lean.Rows, style) : $"no stretch was; {Judged(lean.RowsJudged, lean.Rows, style)}"),
            .. Gap(lean.Gap, style),
            .. lean.Stretches.Select(stretch => new Fact("Stretch", "λ", style.Number(stretch.Lambda), Length(stretch, style))),
        ]);
    }

    private static void RegisterComparisons()
    {
        Finding<MixtureComparison>("Lambda beside that of the plan's controller", (beside, style) =>
        [
            new("Recorded, over the plan's", "", style.DutyCycle(beside.Median), $"median of {style.Count(beside.Places.Count)} rows of {style.Count(beside.Rows)}"),
            .. Beside(beside.Leanest, style),
        ]);
        Shown.By<MixturePlace>((place, style) => new("Lambda at a place of the run", [.. Beside(place, style)]));
        Shown.By<FuelComparison>((one, style) => new($"Fuel by {one.By}", [Of("Share of that by the injectors", "", one.OverInjectors, style.Chance)]));
        Shown.By<LeanExcursion>((stretch, style) => new(
            "Lean stretch",
            [new("Lambda", "λ", style.Number(stretch.Lambda), Length(stretch, style)), Fact.Words("Begins at", PartText.Say(stretch.From, style))]));
        Shown.By<RunPlace>((place, style) => new(
            "Place in a run",
            [
                new("Line", "", style.Count(place.Line)),
                .. place.Time is { } time ? (Fact[])[new("Time", "", style.Time(time))] : [],
                new("Engine speed", "n", style.Of(place.Speed)),
                .. place.Boost is { } boost ? (Fact[])[new("Boost", "p_b", style.Boost(boost))] : [],
            ]));
        Shown.By<FaultFinding>((fault, style) => new(
            $"Fault: {fault.Name}",
            [new("Probability", "", style.Chance(fault.Probability)), Fact.Words("It would be", PartText.Say(fault.Size, style)), Fact.Words("Change", PartText.Say(fault.Change, style))]));
        Shown.By<NextTest>((test, style) => new(
            "Next test",
            [
                Fact.Words("Measure", PartText.Say(test.What, style)),
                new("Points to the right one", "", style.Chance(test.Separates)),
                new("Information", "", $"{style.Number(test.Information)} bit"),
            ]));
        Shown.By<PlanAgreement>((one, style) => new(
            $"Run against plan: {one.Name}",
            [
                new("Measured − predicted", "", FindingText.Figure(one.Difference, one.Unit, style), one.Agrees ? "agrees" : "does not agree"),
                new("Allowed difference", "", PartText.Within(FindingText.Figure(one.Allowed, one.Unit, style))),
                new("Points beyond", "", style.Count(one.PointsBeyond), $"of {style.Count(one.Points)}"),
            ]));
        Shown.By<CalibratedFigure>((figure, style) => new(
            "A figure of the plan, from the log",
            [
                new(FindingText.Name(figure.Quantity), "", FindingText.ByRun(figure, style), FindingText.Source(figure, style)),
                .. figure.IsDetermined ? (Fact[])[new("Standard error", "", FindingText.Error(figure, style))] : [],
                new("Planned", "", FindingText.Figure(figure.Planned, figure.Unit, style)),
            ]));
        Shown.By<RunCheck>((check, style) => new(
            "A plan to compare a run with",
            [
                .. SystemShown.Of(check.Plan, style),
                new("Supply voltage", "V_s", style.Of(check.SupplyVoltage), "where the run does not say"),
                new("Fuel in the rail", "T", style.Of(check.FuelTemperature), "where the run does not say"),
                new("Drivetrain's loss", "", style.DutyCycle(check.DriveLoss)),
            ]));
        Shown.By<SensorAccuracy>((accuracy, style) => new(
            "How well a run was measured",
            [
                Give("Rail pressure", "p_r", style.PressureLoss(accuracy.Rail)),
                Give("Rail pressure, offset", "p_r", style.PressureLoss(accuracy.RailOffset)),
                Give("Manifold pressure", "p_3", style.PressureLoss(accuracy.Manifold)),
                Give("Manifold pressure, offset", "p_3", style.PressureLoss(accuracy.ManifoldOffset)),
                Give("Pulse", "t", style.Of(accuracy.Pulse)),
                Give("Lambda", "λ", style.DutyCycle(accuracy.Lambda)),
                Give("Fuel flow", "Q_f", style.DutyCycle(accuracy.FuelFlow)),
                Give("Fuel flow, factor", "Q_f", style.DutyCycle(accuracy.FuelFlowFactor)),
                Give("Power", "P", style.DutyCycle(accuracy.Power)),
            ]));
        Shown.By<ModelDiscrepancy>((car, style) => new(
            "What the plan's equations do not know",
            [
                Give($"Air, in {style.PressureLoss(Pressure.FromKilopascals(100))} of boost", "", style.DutyCycle(car.AirByBoost)),
                Give($"Charge temperature, in {style.PressureLoss(Pressure.FromKilopascals(100))} of boost", "T", $"{style.Number(car.ChargeTemperature.Kelvins)} K"),
                Give("Air at any speed", "", style.DutyCycle(car.AirBySpeed)),
                Give("Regulator, all fuel returning to none", "p_r", style.PressureLoss(car.RegulatorSlope)),
                Give("Lambda comes late", "t", style.Of(car.LambdaDelay)),
                Give("Lambda comes late, standard deviation", "t", style.Of(car.LambdaDelayDeviation)),
                Give("Clock of a separate device", "t", style.Of(car.Clock)),
                Give("Lag of pressure sensors", "t", style.Of(car.PressureLag)),
                Give("Density of the fuel", "ρ", style.DutyCycle(car.FuelDensity)),
            ]));
        Shown.By<PlanTolerance>((tolerance, style) => new(
            "Tolerances of sound parts",
            [
                Give("Pump's flow", "Q_p", style.DutyCycle(tolerance.PumpFlow)),
                Give("Feed's resistance", "R", style.Of(tolerance.FeedResistance)),
                Give("Filter's loss", "Δp_F", style.DutyCycle(tolerance.FilterLoss)),
                Give("Regulator's base", "p_base", style.PressureLoss(tolerance.RegulatorBase)),
                Give("Regulator's gain", "G", style.DutyCycle(tolerance.RegulatorGain)),
                Give("Regulator's onset", "p_on", style.PressureLoss(tolerance.RegulatorOnset)),
                Give("Injectors' flow", "Q_s", style.DutyCycle(tolerance.InjectorFlow)),
                Give("Dead time", "t_d", style.Of(tolerance.DeadTime)),
                Give("Volumetric efficiency", "η_v", style.DutyCycle(tolerance.VolumetricEfficiency)),
                Give("BSFC", "b", style.DutyCycle(tolerance.BrakeSpecificFuelConsumption)),
                Give("Supply voltage", "V_s", style.VoltageDrop(tolerance.SupplyVoltage)),
            ]));
    }

    /// <summary>What was found, or why it cannot be told; the answer by itself shows the same.</summary>
    private static void Finding<T>(string title, Func<T, TextStyle, IReadOnlyList<Fact>> lines)
        where T : class, IReadable
    {
        Shown.By<T>((found, style) => new(title, lines(found, style)));
        Shown.By<Finding<T>>((finding, style) => new(
            title,
            finding.Answer is { } answer
                ? lines(answer, style)
                :
                [
                    Fact.Words("Cannot tell", PartText.Say(finding.Reason!, style)),
                    .. finding.Missing.Count > 0 ? (Fact[])[Fact.Words("Channels it takes", RunText.Names(finding.Missing))] : [],
                ]));
    }

    private static void Estimate<T>(Func<TextStyle, Func<T, string>> text)
        where T : struct =>
        Shown.By<Estimate<T>>((estimate, style) => new("Estimate", [Of("Estimate", "", estimate, text(style))]));

    private static Fact Of<T>(string name, string symbol, Estimate<T> estimate, Func<T, string> text, string of = "")
        where T : struct =>
        new(name, symbol, text(estimate.Value), $"{(of.Length > 0 ? $"{of}; " : "")}95 % range {text(estimate.Minimum)} to {text(estimate.Maximum)}");

    private static Fact Give(string name, string symbol, string figure) => new(name, symbol, PartText.Within(figure));

    private static string Judged(int judged, int rows, TextStyle style) => $"of {style.Count(judged)} rows judged, {style.Count(rows)} in all";

    private static Fact[] Gap(Statement? gap, TextStyle style) => gap is null ? [] : [Fact.Words("Not judged", PartText.Say(gap, style))];

    private static Fact[] Beside(MixturePlace place, TextStyle style) =>
    [
        new("Leanest recorded", "λ", MixtureText.Lambda(place.Recorded, style), PartText.Say(place.Place, style)),
        new("The plan's controller gives", "λ", MixtureText.Lambda(place.Planned.Lambda, style), place.IsExplained ? "as lean, to 6 % (common practice, no source)" : "which does not explain it"),
        .. place.Planned.Causes.Take(2).Select(cause => Fact.Words("By the plan", PartText.Say(cause, style))),
    ];

    private static string Length(LeanExcursion stretch, TextStyle style) =>
        $"at {PartText.Say(stretch.Worst, style)}, {(stretch.Length is { } length ? style.Time(length) : $"{style.Count(stretch.Rows)} rows")} long";

    private static string Behaviour(RegulatorBehaviour behaviour) => behaviour switch
    {
        RegulatorBehaviour.Fixed => "fixed",
        RegulatorBehaviour.ManifoldReferenced => "manifold-referenced",
        RegulatorBehaviour.RisingRate => "rising-rate",
        _ => "proportional to boost",
    };
}
