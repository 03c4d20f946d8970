using FuelSizing.Quantities;

namespace FuelSizing.Workings;

/// <summary>One line of a working: a quantity, its equation, the numbers put in, and what comes out.</summary>
public sealed record WorkingStep
{
    internal WorkingStep(string name, string symbol, string? equation, string? numbers, string value, string readable, string source)
    {
        (Name, Symbol, Equation, Numbers) = (name, symbol, equation, numbers);
        (Value, Readable, Source) = (value, readable, source);
    }

    /// <summary>The quantity.</summary>
    public string Name { get; }

    /// <summary>Its symbol.</summary>
    public string Symbol { get; }

    /// <summary>Its equation in symbols, for instance <c>p_0 + p_b</c>; none for a figure that is given.</summary>
    public string? Equation { get; }

    /// <summary>The equation with numbers put in, in SI units; none for a figure that is given.</summary>
    public string? Numbers { get; }

    /// <summary>The value in SI units.</summary>
    public string Value { get; }

    /// <summary>The value as reports write it.</summary>
    public string Readable { get; }

    /// <summary>Where the equation or the figure comes from.</summary>
    public string Source { get; }

    /// <summary>The line as one would write it by hand.</summary>
    /// <returns>For instance <c>p = p_0 + p_b = 94322 + 60000 = 1.5432·10^5 Pa (154 kPa)</c>.</returns>
    public override string ToString() =>
        Equation is null
            ? $"{Symbol} = {Value} ({Readable})"
            : $"{Symbol} = {Equation} = {Numbers} = {Value} ({Readable})";
}
