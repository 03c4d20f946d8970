namespace FuelSizing.Workings;

/// <summary>Where the value of a working's line comes from.</summary>
public enum WorkingSource
{
    /// <summary>Nowhere: the data does not give it, and the line says why.</summary>
    NotKnown,

    /// <summary>From outside: a figure of a part, or of the operating point.</summary>
    Given,

    /// <summary>Read from a table or a curve; the line says which one, and where it was read; between points its equation is that of the interpolation.</summary>
    Table,

    /// <summary>Calculated by an equation.</summary>
    Equation,

    /// <summary>The root of an equation, found by a solver; both sides of that equation stand in lines of their own.</summary>
    Solver,
}

/// <summary>One line of a working: a quantity, its equation, the numbers put in, and what comes out.</summary>
public sealed record WorkingStep
{
    internal WorkingStep(
        WorkingSource kind, string name, string symbol, string? equation, string? numbers, string value, string readable, string source)
    {
        (Kind, Name, Symbol, Equation, Numbers) = (kind, name, symbol, equation, numbers);
        (Value, Readable, Source) = (value, readable, source);
    }

    /// <summary>Where the value comes from.</summary>
    public WorkingSource Kind { get; }

    /// <summary>The quantity.</summary>
    public string Name { get; }

    /// <summary>Its symbol, that of the list of symbols; of several parts each has its number behind it.</summary>
    public string Symbol { get; }

    /// <summary>Its equation in symbols, for instance <c>p_0 + p_b</c>, or how a table was read between two points; none for a figure that no equation gives.</summary>
    public string? Equation { get; }

    /// <summary>The equation with numbers put in, in SI units; none for a figure that no equation gives.</summary>
    public string? Numbers { get; }

    /// <summary>The value in SI units; <c>not known</c> where there is none.</summary>
    public string Value { get; }

    /// <summary>The value as reports write it.</summary>
    public string Readable { get; }

    /// <summary>Where the equation or the figure comes from.</summary>
    public string Source { get; }

    /// <summary>
    /// The equation of the index that the line is an instance of, by the name that it has there and in <c>FuelSizing.Equations</c>, for instance <c>InjectorFlow.Static</c>;
    /// there stands where it comes from and how that was obtained. None of a sum, of a margin, and of a figure that no equation gives.
    /// </summary>
    public string? Law { get; internal init; }

    /// <summary>True for a line on the way to the result of one part, such as a line's Reynolds number, which a short table leaves out.</summary>
    public bool IsIntermediate { get; internal init; }

    /// <summary>The value in SI with all its digits; none where it is not known.</summary>
    internal double? Si { get; init; }

    /// <summary>Unit of that, <c>1</c> of a number without one; none where it is not known.</summary>
    internal string? Unit { get; init; }

    /// <summary>The line as one would write it by hand.</summary>
    /// <returns>For instance <c>p_3 = p_0 + p_b = 94322 + 60000 = 1.5432·10^5 Pa (154 kPa)</c>.</returns>
    public override string ToString() =>
        Equation is null
            ? $"{Symbol} = {Value} ({Readable})"
            : $"{Symbol} = {Equation} = {Numbers} = {Value} ({Readable})";
}
