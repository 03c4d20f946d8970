using FuelSizing.Quantities;

namespace FuelSizing.Checks;

/// <summary>What a check has to do with a system: nothing, or to judge it, or to say why it cannot.</summary>
/// <remarks>
/// What a system has but was given no data of is not left out in silence: it is <see cref="NotJudged"/>, and the whole system then
/// holds only as far as judged, unless the user waives it with a reason.
/// </remarks>
/// <example>
/// <code>
/// Applicability wiring = Applicability.NotJudged(Statement.Of("own.no-wiring", $"no wiring given"));
/// Console.WriteLine(wiring);                       // not judged: no wiring given
/// Console.WriteLine(Applicability.Judged);         // judged
/// </code>
/// </example>
public sealed class Applicability : IReadable
{
    private Applicability(bool isJudged, Statement? gap) => (IsJudged, Gap) = (isJudged, gap);

    /// <summary>The system has what is checked, and its data is given.</summary>
    public static Applicability Judged { get; } = new(true, null);

    /// <summary>The system has nothing of the kind: a return line in a returnless system, for instance.</summary>
    public static Applicability NotApplicable { get; } = new(false, null);

    /// <summary>Whether the check reads the points of the system.</summary>
    public bool IsJudged { get; }

    /// <summary>What is not judged, and why; none where nothing is left out.</summary>
    public Statement? Gap { get; }

    /// <summary>The system has what is checked, or may have it, and its data is not given.</summary>
    /// <param name="gap">Why it is not judged, for instance <c>no rating given</c>.</param>
    /// <returns>The answer.</returns>
    /// <exception cref="ArgumentNullException">There is no reason.</exception>
    public static Applicability NotJudged(Statement gap)
    {
        ArgumentNullException.ThrowIfNull(gap);
        return new(false, gap);
    }

    /// <summary>The data is given of some of what is checked, which is judged, and not of the rest.</summary>
    /// <param name="gap">What is not judged, for instance <c>pump S has no feed given</c>.</param>
    /// <returns>The answer.</returns>
    /// <exception cref="ArgumentNullException">There is no reason.</exception>
    public static Applicability JudgedInPart(Statement gap)
    {
        ArgumentNullException.ThrowIfNull(gap);
        return new(true, gap);
    }

    /// <inheritdoc/>
    public string In(TextStyle style) =>
        $"{(IsJudged ? "judged" : Gap is null ? "not applicable" : "not judged")}{(Gap is { } gap ? $"{(IsJudged ? ", but " : ": ")}{gap.In(style)}" : string.Empty)}";

    /// <summary>Judged or not, and why not.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>Something that a system has, or may have, and that was not judged.</summary>
public sealed class NotJudged : IReadable
{
    internal NotJudged(Part part, Statement reason, string? waiver) => (Part, Reason, Waiver) = (part, reason, waiver);

    /// <summary>What was not judged.</summary>
    public Part Part { get; }

    /// <summary>Why not.</summary>
    public Statement Reason { get; }

    /// <summary>The reason for which the user does without a judgement; none where it is not waived.</summary>
    public string? Waiver { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Part, reason and waiver in words.</summary>
    public Statement Text => Waiver is { } waiver
        ? Statement.Of("not-judged.waived", $"{Part.Name}, waived: {waiver}")
        : Statement.Of("not-judged.open", $"{Part.Name}, {Reason}");

    /// <summary>Part, reason and waiver.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
