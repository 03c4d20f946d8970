using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>How much of their time the injectors used.</summary>
public sealed record DutyUse : IReadable
{
    internal DutyUse(Ratio maximum, RunPlace place, Ratio limit, int rowsOver, int rowsJudged, int rows, Statement? gap, Statement? rule) =>
        (Maximum, Place, Limit, RowsOver, RowsJudged, Rows, Gap, Rule) = (maximum, place, limit, rowsOver, rowsJudged, rows, gap, rule);

    /// <summary>The highest duty cycle.</summary>
    public Ratio Maximum { get; }

    /// <summary>Where it was.</summary>
    public RunPlace Place { get; }

    /// <summary>The plan's limit.</summary>
    public Ratio Limit { get; }

    /// <summary>Rows over the limit.</summary>
    public int RowsOver { get; }

    /// <summary>Rows with the engine turning of which the duty cycle is known.</summary>
    public int RowsJudged { get; }

    /// <summary>All rows with the engine turning.</summary>
    public int Rows { get; }

    /// <summary>Which rows were not judged, and why; none where all were.</summary>
    public Statement? Gap { get; }

    /// <summary>Says that the limit is a rule of thumb, where it is.</summary>
    internal Statement? Rule { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Gap is null
        ? Statement.Of("run.duty-cycle", $"duty cycle up to {Maximum:duty-cycle} at {Place}, limit {Limit}{Rule}")
        : Statement.Of("run.duty-cycle-in-part", $"duty cycle up to {Maximum:duty-cycle} at {Place}, limit {Limit}{Rule}; judged in part: {Gap}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
