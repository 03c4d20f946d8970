using System.Globalization;
using FuelSizing.Findings;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>Tables of what a recorded run says.</summary>
public static class FindingTables
{
    /// <summary>Everything that the run was asked, with the answer or why there is none.</summary>
    /// <param name="findings">The findings.</param>
    /// <returns>The table, a line a question.</returns>
    /// <exception cref="ArgumentNullException">There are no findings.</exception>
    public static Table Findings(RunFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return new Table(
            "What the run says",
            [TableColumn.Text("Asked"), TableColumn.Text("Found")],
            [
                ["Duty cycle", Text(findings.Duty)],
                ["Across the injectors", Text(findings.Differential)],
                ["Regulator", Text(findings.Regulator)],
                ["Rail under its set pressure", Text(findings.Sag)],
                ["Fuel", Text(findings.Fuel)],
                ["BSFC", Text(findings.BrakeConsumption)],
                ["Air", Text(findings.VolumetricEfficiency)],
                ["Dead time", Text(findings.DeadTime)],
                ["Lean on boost", Text(findings.Lean)],
            ],
            string.Create(
                CultureInfo.InvariantCulture,
                $"{findings.PointsCompared} points from {findings.RowsUsed} rows; {findings.RowsOutsideThePlan} rows outside the plan or at rest, {findings.RowsUnsteady} left out as unsteady."));
    }

    /// <summary>Run against plan: each comparison, and how far off it may be while nothing is wrong.</summary>
    /// <param name="findings">The findings; something must have been compared.</param>
    /// <returns>The table, a line a comparison.</returns>
    /// <exception cref="ArgumentException">Nothing was compared.</exception>
    public static Table Agreement(RunFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        if (findings.Agreement.Count == 0)
        {
            throw new ArgumentException("findings holds no comparison of run and plan. Its notes say which channels are missing.", nameof(findings));
        }

        return new Table(
            "Run against plan",
            [
                TableColumn.Text("Compared"),
                TableColumn.Number("Measured − predicted"),
                TableColumn.Number("May be"),
                TableColumn.Number("Points beyond"),
                TableColumn.Text("Agrees"),
            ],
            [.. findings.Agreement.Select(one => (IReadOnlyList<string>)
            [
                one.Name,
                FindingText.Figure(one.Difference, one.Unit),
                PartText.Within(FindingText.Figure(one.Allowed, one.Unit)),
                string.Create(CultureInfo.InvariantCulture, $"{one.PointsBeyond} of {one.Points}"),
                one.Agrees ? "yes" : "no",
            ])],
            "Medians over the run. What may be follows from the tolerances of sound parts, the accuracy of the channels and the scatter.");
    }

    /// <summary>The single faults that were tried, the likeliest first.</summary>
    /// <param name="findings">The findings; faults must have been tried.</param>
    /// <returns>The table, a line a fault; its size where there is evidence enough to name it.</returns>
    /// <exception cref="ArgumentException">No fault could be tried.</exception>
    public static Table Faults(RunFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        if (findings.Faults.Count == 0)
        {
            throw new ArgumentException("findings has tried no fault. Its notes say which channels are missing.", nameof(findings));
        }

        return new Table(
            "Faults tried, the likeliest first",
            [TableColumn.Text("Fault"), TableColumn.Number("Evidence"), TableColumn.Text("It would be")],
            [.. findings.Faults.Select(fault => (IReadOnlyList<string>)
            [
                fault.Name,
                fault.Evidence.ToString("N0", CultureInfo.InvariantCulture),
                findings.Fault == fault.Fault || findings.Rivals.Contains(fault) ? fault.Size : "–",
            ])],
            "Evidence: by how much the fit improves, about the square of how many tolerances the quantity must be off.");
    }

    /// <summary>The plan's figures by the run, with their standard errors.</summary>
    /// <param name="calibration">The calibration.</param>
    /// <returns>The table, a line a figure.</returns>
    /// <exception cref="ArgumentNullException">There is no calibration.</exception>
    public static Table Calibrated(Calibration calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        double shared = calibration.Correlation(CalibratedQuantity.BrakeSpecificFuelConsumption, CalibratedQuantity.VolumetricEfficiency);
        return new Table(
            "The plan's figures by this run",
            [TableColumn.Text("Figure"), TableColumn.Number("Value"), TableColumn.Number("Error"), TableColumn.Number("Planned"), TableColumn.Text("Note")],
            [.. calibration.Figures.Select(figure => (IReadOnlyList<string>)
            [
                FindingText.Name(figure.Quantity),
                FindingText.ByRun(figure),
                FindingText.Error(figure),
                FindingText.Figure(figure.Planned, figure.Unit),
                FindingText.Source(figure),
            ])],
            string.Create(CultureInfo.InvariantCulture, $"Error: one standard error. Correlation of the errors of BSFC and air: {shared:0.0}.").Replace('-', '−'));
    }

    /// <summary>The verdict on a run: as planned, not as planned and what to change, or cannot say.</summary>
    /// <param name="findings">The findings.</param>
    /// <returns>The callout.</returns>
    /// <exception cref="ArgumentNullException">There are no findings.</exception>
    public static Callout Verdict(RunFindings findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return !findings.IsDiagnosed ? Callout.CannotSay("the run", [findings.Verdict, .. findings.Notes])
            : findings.Fault == RunFault.None ? Callout.Holds("the run is as planned", [findings.Verdict, .. findings.Notes])
            : Callout.Fails("the run is not as planned", [findings.Verdict, .. findings.WhatToChange, .. findings.Notes]);
    }

    private static string Text(object finding) => finding.ToString()!.Replace(" -", " −", StringComparison.Ordinal).Replace("(-", "(−", StringComparison.Ordinal);
}
