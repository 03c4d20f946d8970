using FuelSizing.Quantities;

namespace FuelSizing;

/// <summary>A value that nobody gave, and that a <see cref="QuickCheck"/> stands in for.</summary>
/// <remarks>Where it is a range, the check is calculated with both ends of it: it holds only by the worst one, and fails only by the best one.</remarks>
public sealed class Assumption : IReadable
{
    internal Assumption(string code, string name, Statement worst, Statement? best, Statement source, Statement replacedBy) =>
        (Code, Name, Worst, Best, Source, ReplacedBy) = (code, name, worst, best, source, replacedBy);

    /// <summary>A stable code of lower-case words with hyphens, for files and programs.</summary>
    public string Code { get; }

    /// <summary>What is assumed.</summary>
    public string Name { get; }

    /// <summary>The value, or that end of the range at which the check comes out worst; its figures are among the statement's arguments.</summary>
    public Statement Worst { get; }

    /// <summary>The other end of the range; none where one value is assumed, or where the subject is not judged.</summary>
    public Statement? Best { get; }

    /// <summary>Where the value is from, or that it is common practice with no source.</summary>
    public Statement Source { get; }

    /// <summary>By what it is replaced, so that it is assumed no more.</summary>
    public Statement ReplacedBy { get; }

    /// <summary>Name, values, source and what replaces it, in words.</summary>
    public Statement Text => Best is null
        ? Statement.Of("assumed.value", $"{Name}: {Worst} ({Source}); replaced by {ReplacedBy}")
        : Statement.Of("assumed.range", $"{Name}: {Worst} at worst, {Best} at best ({Source}); replaced by {ReplacedBy}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Name, values, source and what replaces it.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
