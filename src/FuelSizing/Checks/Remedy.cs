using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A change that would remedy a failing check.</summary>
public sealed class Remedy : IReadable
{
    private Remedy(Part part, IQuantity? needed, Statement text) => (Part, Needed, Text) = (part, needed, text);

    /// <summary>What it remedies.</summary>
    public Part Part { get; }

    /// <summary>The figure that the part needs to have, if there is one.</summary>
    public IQuantity? Needed { get; }

    /// <summary>The change, as a code with its figures.</summary>
    public Statement Text { get; }

    /// <summary>Describes a change.</summary>
    /// <param name="part">What it remedies.</param>
    /// <param name="needed">The figure that the part needs to have, if there is one.</param>
    /// <param name="text">The change in words, one sentence with its unit on every figure.</param>
    /// <returns>The remedy.</returns>
    public static Remedy Of(Part part, IQuantity? needed, Statement text)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(text);
        return new(part, needed, text);
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The change in words.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => Text.ToString();
}
