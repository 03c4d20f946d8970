using FuelSizing.Checks;
using FuelSizing.Quantities;

namespace FuelSizing.Sizing;

/// <summary>The answer to an inverse question: a figure, what holds it there, and what comes next.</summary>
/// <typeparam name="T">What was asked for: a flow, a pressure, a gain.</typeparam>
/// <remarks>
/// <para>The figure has been put back into the system and solved forward: <see cref="Binding"/> and <see cref="Next"/> are margins
/// of that solution. Where no value is adequate, <see cref="Value"/> is none and <see cref="Binding"/> is what stands in the way.</para>
/// <para>What holds need not be all that lies beyond the figure: larger injectors help until the shortest pulse is too short.
/// <see cref="Ranges"/> has every range over which all holds, and the words name them where they end within the range that was searched.
/// In words a figure is rounded to the side that holds, with as many digits as it takes.</para>
/// </remarks>
public sealed class SizingAnswer<T> : IReadable
    where T : struct
{
    internal SizingAnswer(
        T? value, Statement? figure, IReadOnlyList<SizingRange<T>> ranges, Limit binding, Limit? next, Statement text) =>
        (Value, Figure, Ranges, Binding, Next, Text) = (value, figure, [.. ranges], binding, next, text);

    /// <summary>
    /// The value; none if none is adequate. Of a maximum, which is counted up from the start of its range, none too where what
    /// holds does not begin there: then see <see cref="Ranges"/>.
    /// </summary>
    public T? Value { get; }

    /// <summary>The value in words, rounded to the side that holds; none if there is none.</summary>
    public Statement? Figure { get; }

    /// <summary>
    /// Every range over which everything holds, rising; empty if there is none. Of a power they are the lowest and the highest over each range
    /// of boost.
    /// </summary>
    public IReadOnlyList<SizingRange<T>> Ranges { get; }

    /// <summary>True if there is a value.</summary>
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

/// <summary>A range of a figure over which everything holds, its ends included.</summary>
/// <typeparam name="T">What was asked for: a flow, a pressure, a gain.</typeparam>
public sealed class SizingRange<T> : IReadable
    where T : struct
{
    internal SizingRange(T minimum, T maximum, Statement text) => (Minimum, Maximum, Text) = (minimum, maximum, text);

    /// <summary>Its lower end.</summary>
    public T Minimum { get; }

    /// <summary>Its upper end.</summary>
    public T Maximum { get; }

    /// <summary>Both ends in words, rounded into the range.</summary>
    public Statement Text { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Both ends in words.</summary>
    /// <returns>For instance <c>from 421 mL/min to 515 mL/min</c>.</returns>
    public override string ToString() => Text.ToString();
}
