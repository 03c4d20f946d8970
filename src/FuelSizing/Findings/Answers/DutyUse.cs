using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>How much of their time the injectors used.</summary>
public sealed record DutyUse : IReadable
{
    internal DutyUse(Ratio maximum, RunPlace place, Ratio limit, int rowsOver) =>
        (Maximum, Place, Limit, RowsOver) = (maximum, place, limit, rowsOver);

    /// <summary>The highest duty cycle.</summary>
    public Ratio Maximum { get; }

    /// <summary>Where it was.</summary>
    public RunPlace Place { get; }

    /// <summary>The plan's limit.</summary>
    public Ratio Limit { get; }

    /// <summary>Rows over the limit.</summary>
    public int RowsOver { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "run.duty-cycle", $"duty cycle up to {Maximum:duty-cycle} at {Place}, limit {Limit}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
