using FuelSizing.Quantities;

namespace FuelSizing.Conformance;

/// <summary>Whether a part of your own keeps what the library relies on.</summary>
/// <example>
/// <code>
/// ConformanceReport report = ConformanceKit.Of(Fuel.Petrol);
/// if (!report.Conforms) throw new InvalidOperationException(report.ToString());
/// </code>
/// </example>
public sealed class ConformanceReport : IReadable
{
    internal ConformanceReport(Statement subject, IReadOnlyList<ConformanceRule> rules) => (Subject, Rules) = (subject, rules);

    /// <summary>What was tried.</summary>
    public Statement Subject { get; }

    /// <summary>Every rule that was tried, in its order.</summary>
    public IReadOnlyList<ConformanceRule> Rules { get; }

    /// <summary>True if every rule is kept wherever it was tried. Places that were not tried may still break one.</summary>
    public bool Conforms => Rules.All(rule => rule.Fault is null);

    /// <summary>The rules that are not kept.</summary>
    public IReadOnlyList<ConformanceRule> Faults => [.. Rules.Where(rule => rule.Fault is not null)];

    /// <inheritdoc/>
    public string In(TextStyle style) => Conforms
        ? $"{Subject.In(style)} keeps all {Rules.Count} rules"
        : $"{Subject.In(style)} breaks {Faults.Count} of {Rules.Count} rules: {string.Join("; ", Faults.Select(rule => rule.In(style)))}";

    /// <summary>Kept, or which rules are not and where.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>One rule that the library relies on, and whether it is kept.</summary>
public sealed class ConformanceRule : IReadable
{
    internal ConformanceRule(Statement requirement, Statement? fault) => (Requirement, Fault) = (requirement, fault);

    /// <summary>What is required.</summary>
    public Statement Requirement { get; }

    /// <summary>Where and how it is broken; none where it is kept.</summary>
    public Statement? Fault { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => $"{Requirement.In(style)}{(Fault is { } fault ? $": {fault.In(style)}" : string.Empty)}";

    /// <summary>What is required, and how it is broken.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
