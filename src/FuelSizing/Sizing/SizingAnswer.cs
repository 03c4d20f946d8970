using FuelSizing.Checks;
using FuelSizing.Quantities;

namespace FuelSizing.Sizing;

/// <summary>The answer to an inverse question: a figure, what holds it there, and what comes next.</summary>
/// <typeparam name="T">What was asked for: a flow, a pressure, a gain.</typeparam>
/// <remarks>
/// The figure has been put back into the system and solved forward: <see cref="Binding"/> and <see cref="Next"/> are margins
/// of that solution. Where no value is adequate, <see cref="Value"/> is none and <see cref="Binding"/> is what stands in the way.
/// </remarks>
public sealed class SizingAnswer<T> : IReadable
    where T : struct
{
    internal SizingAnswer(T? value, Limit binding, Limit? next, Statement text) =>
        (Value, Binding, Next, Text) = (value, binding, next, text);

    /// <summary>The value; none if none is adequate.</summary>
    public T? Value { get; }

    /// <summary>True if a value is adequate.</summary>
    public bool IsFeasible => Value is not null;

    /// <summary>The part that holds the figure where it is, or that stands in the way.</summary>
    public Limit Binding { get; }

    /// <summary>The part with the next tightest margin; none if there is no other.</summary>
    public Limit? Next { get; }

    /// <summary>The answer, as a code with its figures.</summary>
    public Statement Text { get; }

    /// <summary>The answer in words.</summary>
    /// <returns>One or two sentences.</returns>
    public override string ToString() => Text.ToString();

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);
}
