using FuelSizing.Quantities;

namespace FuelSizing.Findings;

/// <summary>A fault that would explain the run: its size, the evidence, and what to do.</summary>
public sealed record FaultFinding : IReadable
{
    internal FaultFinding(RunFault fault, string name, double evidence, Statement size, Statement change) =>
        (Fault, Name, Evidence, Size, Change) = (fault, name, evidence, size, change);

    /// <summary>Which.</summary>
    public RunFault Fault { get; }

    /// <summary>Its name in words.</summary>
    public string Name { get; }

    /// <summary>
    /// What the fault takes off the sum of squared differences, in squared standard deviations: twice the gain in log likelihood
    /// against a sound car. Over 14 names a fault; two within 6 of each other cannot be told apart.
    /// </summary>
    public double Evidence { get; }

    /// <summary>How large the fault would be.</summary>
    public Statement Size { get; }

    /// <summary>What to change or measure.</summary>
    public Statement Change { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of("run.fault", $"{Size} (evidence {Evidence:0})");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
