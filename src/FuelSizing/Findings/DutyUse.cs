using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>How much of their time the injectors used.</summary>
public sealed record DutyUse
{
    internal DutyUse(Ratio highest, RunPlace place, Ratio limit, int rowsOver) =>
        (Highest, Place, Limit, RowsOver) = (highest, place, limit, rowsOver);

    /// <summary>The highest duty cycle.</summary>
    public Ratio Highest { get; }

    /// <summary>Where it was.</summary>
    public RunPlace Place { get; }

    /// <summary>The plan's limit.</summary>
    public Ratio Limit { get; }

    /// <summary>Rows over the limit.</summary>
    public int RowsOver { get; }

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"duty cycle up to {Readable.DutyCycle(Highest)} at {Place}, limit {Readable.Of(Limit)}";
}
