using System.Diagnostics.CodeAnalysis;

namespace FuelSizing.Quantities;

/// <summary>Something that can be written for people in a style that the reader chooses.</summary>
/// <remarks>Its <see cref="object.ToString"/> is the same in <see cref="TextStyle.Metric"/>, on one line.</remarks>
public interface IReadable
{
    /// <summary>In words, on one line.</summary>
    /// <param name="style">Units and culture.</param>
    /// <returns>The text.</returns>
    [SuppressMessage("Naming", "CA1716", Justification = "verdict.In(style) reads as speech; a keyword of another language can be escaped there.")]
    string In(TextStyle style);
}
