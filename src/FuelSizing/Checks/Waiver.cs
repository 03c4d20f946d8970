using FuelSizing.Quantities;

namespace FuelSizing.Checks;

/// <summary>That the user does without a judgement of something, and why.</summary>
public sealed record Waiver
{
    private Waiver(Part part, string reason) => (Part, Reason) = (part, reason);

    /// <summary>What is not judged.</summary>
    public Part Part { get; }

    /// <summary>Why that is in order, in the user's words.</summary>
    public string Reason { get; }

    /// <summary>Describes a waiver.</summary>
    /// <param name="part">What is not judged.</param>
    /// <param name="reason">Why that is in order, 1 to 80 characters.</param>
    /// <returns>The waiver.</returns>
    /// <exception cref="ArgumentException">The reason cannot be shown.</exception>
    public static Waiver Of(Part part, string reason)
    {
        ArgumentNullException.ThrowIfNull(part);
        return new(part, Guard.Name(reason, nameof(reason)));
    }

    /// <summary>Part and reason.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => $"{Part.Name}, waived: {Reason}";
}
