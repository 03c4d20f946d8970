using FuelSizing.Checks;
using FuelSizing.Quantities;

namespace FuelSizing.Findings;

/// <summary>One thing that a run is judged by: faults, mixture, duty cycle, rail pressure.</summary>
public sealed record RunJudgement : IReadable
{
    /// <summary>The search for faults.</summary>
    internal static readonly Part Fault = Part.Of("run.fault", "faults");

    /// <summary>Rail pressure against what the regulator as planned should hold.</summary>
    internal static readonly Part Rail = Part.Of("run.rail", "rail pressure");

    /// <summary>What rows and columns of the log cover.</summary>
    internal static readonly Part Coverage = Part.Of("run.coverage", "coverage");

    internal RunJudgement(Part part, Outcome outcome, Statement text, Statement? gap = null) =>
        (Part, Outcome, Text, Gap) = (part, outcome, text, gap);

    /// <summary>What was judged.</summary>
    public Part Part { get; }

    /// <summary>Holds, fails or cannot say, of what rows and columns cover.</summary>
    public Outcome Outcome { get; }

    /// <summary>What was found, as a code with its figures.</summary>
    public Statement Text { get; }

    /// <summary>What of it the run does not cover; none where it was judged throughout.</summary>
    public Statement? Gap { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => $"{Part.Name}: {Text.In(style)}";

    /// <summary>What was judged and what was found.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
