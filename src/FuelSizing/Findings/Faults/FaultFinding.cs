using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>A fault that would explain the run: its size, the evidence, and what to do.</summary>
public sealed record FaultFinding : IReadable
{
    internal FaultFinding(RunFault fault, string name, Ratio probability, double evidence, Statement size, Statement change) =>
        (Fault, Name, Probability, Evidence, Size, Change) = (fault, name, probability, evidence, size, change);

    /// <summary>Which.</summary>
    public RunFault Fault { get; }

    /// <summary>Its name in words.</summary>
    public string Name { get; }

    /// <summary>Probability that the fault is there, alone or with another, after the run; before it, all faults are taken for equally probable.</summary>
    public Ratio Probability { get; }

    /// <summary>
    /// Twice ln of how much more probable this fault alone makes the run than a sound car does, all that may be off averaged over: the Bayes factor.
    /// Over 6 is strong, over 10 very strong (Kass and Raftery, Bayes factors, J. Amer. Statist. Assoc. 90, 1995).
    /// </summary>
    public double Evidence { get; }

    /// <summary>How large the fault would be.</summary>
    public Statement Size { get; }

    /// <summary>What to change or measure.</summary>
    public Statement Change { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of("run.fault", $"{Size} (probability {Probability:chance})");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
