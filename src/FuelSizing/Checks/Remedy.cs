using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A change that would remedy a failing check.</summary>
/// <remarks>
/// A figure that must be reached at least is written rounded up, and one that must not be passed rounded down, so that a part bought by the words
/// serves: <c>{needed:pump-flow:up}</c> in a <see cref="Statement"/>.
/// </remarks>
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

    /// <summary>
    /// A hair on the side that serves, as a share: a figure worked out backward is put back forward, and the last bit of either may be the wrong one.
    /// </summary>
    internal const double Hair = 1e-12;

    /// <summary>The figure needed as the words write it, rounded to the side that serves.</summary>
    /// <param name="style">Units and culture.</param>
    /// <returns>Number and unit; none where there is no figure, or the words do not write it.</returns>
    public string? NeededIn(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        StatementArgument[] written = [.. Text.Arguments.Where(argument => Needed is not null && Needed.Equals(argument.Value))];
        return written.Length > 0 ? written[0].In(style) : null;
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The change in words.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => Text.ToString();
}
