using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>A question about an input whose value is possible and not plausible, such as a static flow of 24 mL/min.</summary>
/// <remarks>It refuses nothing: whoever gave the value corrects it, or confirms it.</remarks>
public sealed class InputQuestion : IReadable
{
    // One line has room for the likeliest; the list holds them all.
    private const int Named = 2;

    internal InputQuestion(string input, PlausibleRange range, string value, IReadOnlyList<string> likely, int line = 0) =>
        (Input, Range, Value, Likely, Line) = (input, range, value, [.. likely], line);

    /// <summary>The input: a field with its path, such as <c>injectors.injector.static_flow</c>, or a variable of a notebook.</summary>
    public string Input { get; }

    /// <summary>What is plausible for it.</summary>
    public PlausibleRange Range { get; }

    /// <summary>The value as it was given, with its unit.</summary>
    public string Value { get; }

    /// <summary>What was probably meant, each with its conversion, for instance <c>24 lb/h, that is 266 mL/min</c>; none where no unit makes it plausible.</summary>
    public IReadOnlyList<string> Likely { get; }

    /// <summary>Line in the file, from 1; 0 where the input is of no file.</summary>
    public int Line { get; }

    /// <summary>The question, as a code with its arguments.</summary>
    public Statement Text => Statement.Of(
        "input.question",
        $"{Place}{Input} is {Value}; plausible for {Range.Name}: {Range.Limits} ({PlausibleRange.Source}). {Cure}");

    /// <summary>The question.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    internal InputQuestion At(int line) => new(Input, Range, Value, Likely, line);

    private Statement? Place => Line > 0 ? Statement.Of("input.line", $"line {Line:ordinal}, ") : null;

    private Statement Cure => Likely.Count > 0
        ? Statement.Of("input.likely", $"Likely meant: {string.Join("; or ", Likely.Take(Named))}. Give the value with that unit, or confirm it.")
        : Statement.Of("input.check", $"Check number and unit, or confirm it.");
}
