using FuelSizing.Checks;
using FuelSizing.Findings;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>Tables of what a recorded run says.</summary>
public static class FindingTables
{
    /// <summary>Everything that the run was asked, with the answer or why there is none.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a question.</returns>
    /// <exception cref="ArgumentNullException">There are no findings.</exception>
    public static Table Findings(RunFindings findings, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(findings);
        style ??= Units.Current;
        return new Table(
            "What the run says",
            [TableColumn.Text("Asked"), TableColumn.Text("Found")],
            [
                ["Verdict", PartText.Say(findings.Verdict, style)],
                ["Duty cycle", PartText.Say(findings.Duty, style)],
                ["Across the injectors", PartText.Say(findings.Differential, style)],
                ["Regulator", PartText.Say(findings.Regulator, style)],
                ["Rail pressure below its setting", PartText.Say(findings.Sag, style)],
                ["Fuel", PartText.Say(findings.Fuel, style)],
                ["BSFC", PartText.Say(findings.BrakeConsumption, style)],
                ["Air", PartText.Say(findings.VolumetricEfficiency, style)],
                ["Dead time", PartText.Say(findings.DeadTime, style)],
                ["Lean on boost", PartText.Say(findings.Lean, style)],
                ["Lambda beside that of the plan's controller", PartText.Say(findings.Mixture, style)],
            ],
            $"{style.Count(findings.PointsCompared)} points from {style.Count(findings.RowsUsed)} rows; {style.Count(findings.RowsOutsideThePlan)} rows outside the plan or at rest, {style.Count(findings.RowsUnsteady)} left out as unsteady.");
    }

    /// <summary>Run against plan: each comparison, and how far off it may be while nothing is wrong.</summary>
    /// <param name="findings">The findings; something must have been compared.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a comparison.</returns>
    /// <exception cref="ArgumentException">Nothing was compared.</exception>
    public static Table Agreement(RunFindings findings, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(findings);
        style ??= Units.Current;
        if (findings.Agreement.Count == 0)
        {
            throw new ArgumentException("findings holds no comparison of run and plan. Its notes say which channels are missing.", nameof(findings));
        }

        return new Table(
            "Run against plan",
            [
                TableColumn.Text("Compared"),
                TableColumn.Number("Measured − predicted"),
                TableColumn.Number("Allowed difference"),
                TableColumn.Number("Points beyond"),
                TableColumn.Text("Agrees"),
            ],
            [.. findings.Agreement.Select(one => (IReadOnlyList<string>)
            [
                one.Name,
                FindingText.Figure(one.Difference, one.Unit, style),
                PartText.Within(FindingText.Figure(one.Allowed, one.Unit, style)),
                $"{style.Count(one.PointsBeyond)} of {style.Count(one.Points)}",
                one.Agrees ? "yes" : "no",
            ])],
            "Medians over the run. The allowed difference follows from the tolerances of sound parts, the accuracy of the channels and the scatter.");
    }

    /// <summary>The single faults that were tried, the likeliest first.</summary>
    /// <param name="findings">The findings; faults must have been tried.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a fault; its size where it is probable enough to be named.</returns>
    /// <exception cref="ArgumentException">No fault could be tried.</exception>
    public static Table Faults(RunFindings findings, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(findings);
        style ??= Units.Current;
        if (findings.Faults.Count == 0)
        {
            throw new ArgumentException("findings has tried no fault. Its notes say which channels are missing.", nameof(findings));
        }

        return new Table(
            "Faults tried, the likeliest first",
            [TableColumn.Text("Fault"), TableColumn.Number("Probability"), TableColumn.Text("It would be")],
            [.. findings.Faults.Select(fault => (IReadOnlyList<string>)
            [
                fault.Name,
                style.Chance(fault.Probability),
                findings.Fault == fault.Fault || findings.Second == fault || findings.Rivals.Contains(fault) ? PartText.Say(fault.Size, style) : "–",
            ])],
            $"Probability after the run, what the plan's equations do not know averaged over; none at fault: {(findings.NoFault is { } none ? style.Chance(none) : "–")}.");
    }

    /// <summary>Measurements that would tell apart what the run leaves open, the most telling first.</summary>
    /// <param name="findings">The findings; the run must have left something open.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a measurement.</returns>
    /// <exception cref="ArgumentException">The run leaves nothing open.</exception>
    public static Table NextTests(RunFindings findings, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(findings);
        style ??= Units.Current;
        if (findings.NextTests.Count == 0)
        {
            throw new ArgumentException("findings leaves no faults to tell apart. Ask for the table where NextTests holds any.", nameof(findings));
        }

        return new Table(
            "What to measure next",
            [TableColumn.Text("Measurement"), TableColumn.Number("Points to the right one"), TableColumn.Number("Bits")],
            [.. findings.NextTests.Select(test => (IReadOnlyList<string>)[PartText.Say(test.What, style), style.Chance(test.Separates), style.Number(test.Information)])],
            "By what each would read under every suspected fault. Fuel under pressure: cautions of the safety page hold for measuring, too.");
    }

    /// <summary>The plan's figures by the run, with their standard errors.</summary>
    /// <param name="calibration">The calibration.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The table, a line a figure.</returns>
    /// <exception cref="ArgumentNullException">There is no calibration.</exception>
    public static Table Calibrated(Calibration calibration, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        style ??= Units.Current;
        double shared = calibration.Correlation(CalibratedQuantity.BrakeSpecificFuelConsumption, CalibratedQuantity.VolumetricEfficiency);
        return new Table(
            "The plan's figures, from this log",
            [TableColumn.Text("Figure"), TableColumn.Number("Value"), TableColumn.Number("Error"), TableColumn.Number("Planned"), TableColumn.Text("Note")],
            [.. calibration.Figures.Select(figure => (IReadOnlyList<string>)
            [
                FindingText.Name(figure.Quantity),
                FindingText.ByRun(figure, style),
                FindingText.Error(figure, style),
                FindingText.Figure(figure.Planned, figure.Unit, style),
                FindingText.Source(figure, style),
            ])],
            $"Error: one standard error. Correlation of the errors of BSFC and air: {style.Number(shared, "0.0")}.");
    }

    /// <summary>The verdict on a run: as planned, as planned as far as judged, not as planned and what to change, or cannot say.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The callout.</returns>
    /// <exception cref="ArgumentNullException">There are no findings.</exception>
    public static Callout Verdict(RunFindings findings, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(findings);
        style ??= Units.Current;
        Callout verdict = SizingCallouts.Verdict(findings.Verdict, style);
        IEnumerable<Statement> further = findings.Verdict.Outcome == Outcome.Fails ? [.. findings.WhatToChange, .. findings.Notes] : findings.Notes;
        return new Callout(verdict.Kind, verdict.Title, [.. verdict.Lines, .. further.Select(one => one.In(style))]);
    }
}
