using FuelSizing.Numerics;
using FuelSizing.Quantities;

namespace FuelSizing.Workings;

/// <summary>A working while it is written: equations run on numbers that remember where they come from, line by line.</summary>
/// <param name="style">Units and culture in which figures are written beside their SI values.</param>
internal sealed class Derivation(TextStyle style)
{
    private readonly List<WorkingStep> _given = [];
    private readonly List<WorkingStep> _steps = [];
    private int _points;

    /// <summary>In which figures are written beside their SI values.</summary>
    public TextStyle Style => style;

    /// <summary>The symbol of a quantity that several parts have: <c>d_2</c> and <c>Δp_f,2</c> are those of part 2.</summary>
    /// <param name="symbol">The quantity's own.</param>
    /// <param name="mark">Number of the part; empty where there is but one.</param>
    public static string Marked(string symbol, string mark) =>
        mark.Length == 0 ? symbol : $"{symbol}{(symbol.Contains('_', StringComparison.Ordinal) ? ',' : '_')}{mark}";

    /// <summary>The line of a symbol; none where it has none.</summary>
    public WorkingStep? Find(string symbol) => _steps.Find(step => step.Symbol == symbol) ?? _given.Find(step => step.Symbol == symbol);

    /// <summary>What has been written.</summary>
    /// <param name="subject">What it is the working of.</param>
    /// <param name="main">Symbols of the lines that matter most; none where all do.</param>
    public Working Of(string subject, params string[] main) => new(subject, _given.AsReadOnly(), _steps.AsReadOnly(), main);

    /// <summary>A figure from outside.</summary>
    public Traced Given(string name, string symbol, double value, string unit, string readable, string source, bool intermediate = false)
    {
        _given.Add(new(WorkingSource.Given, name, symbol, null, null, Si(value, unit), readable, source) { IsIntermediate = intermediate, Si = value, Unit = unit });
        return Traced.Given(symbol, value);
    }

    /// <summary>The number of the next point of a table: one count for the whole working, from 1.</summary>
    public int NextPoint() => ++_points;

    /// <summary>A figure read from a table or a curve; the source says which one, and where it was read.</summary>
    public Traced Table(string name, string symbol, double value, string unit, string readable, string source, bool intermediate = false) =>
        Found(WorkingSource.Table, name, symbol, value, unit, readable, source, intermediate);

    /// <summary>A figure read between the points of a table, with the way in which it was read.</summary>
    /// <param name="line">The line.</param>
    /// <param name="reading">The interpolation's own steps.</param>
    /// <param name="value">As the library read it: the same to the last digits.</param>
    /// <param name="unit">SI.</param>
    /// <param name="how">Of the interpolation.</param>
    public Traced Read(in ReadFigure line, Traced reading, double value, string unit, string how)
    {
        Term term = reading.Term!;
        _steps.Add(new(
            WorkingSource.Table, line.Name, line.Symbol, term.InSymbols(), term.InNumbers(), Si(value, unit), line.Readable, $"{line.Source}; {how}")
        { IsIntermediate = line.IsIntermediate, Si = value, Unit = unit });
        return Traced.Given(line.Symbol, value);
    }

    /// <summary>The line of a quantity that has this figure to the last digit; none if none has. Another quantity of the same figure is not it.</summary>
    /// <param name="value">SI.</param>
    /// <param name="symbols">Of the quantity, the first that has it before the others; of several parts whichever has it.</param>
    public Traced? Written(double value, params ReadOnlySpan<string> symbols)
    {
        foreach (string symbol in symbols)
        {
            if (_steps.Find(step => step.Si == value && IsOf(step.Symbol, symbol)) is { } step)
            {
                return Traced.Given(step.Symbol, value);
            }
        }

        return null;

        static bool IsOf(string written, string symbol) =>
            written.StartsWith(symbol, StringComparison.Ordinal)
            && (written.Length == symbol.Length || (written[symbol.Length] is '_' or ',' && written.AsSpan(symbol.Length + 1).IndexOfAnyExceptInRange('0', '9') < 0));
    }

    /// <summary>A figure that a solver found; both sides of what it solves need lines of their own.</summary>
    public Traced Solved(string name, string symbol, double value, string unit, string readable, string source, bool intermediate = false) =>
        Found(WorkingSource.Solver, name, symbol, value, unit, readable, source, intermediate);

    /// <summary>A figure that nobody can give, and why.</summary>
    public void NotKnown(string name, string symbol, string reason) =>
        _steps.Add(new(WorkingSource.NotKnown, name, symbol, null, null, "not known", "cannot say", reason));

    /// <summary>
    /// A figure that an equation gives. Where the equation hands another figure on unchanged, the line says that they are
    /// equal; what comes later is then written in this one's symbol.
    /// </summary>
    /// <param name="name">The quantity.</param>
    /// <param name="symbol">Its symbol.</param>
    /// <param name="number">What the equation gives.</param>
    /// <param name="unit">SI.</param>
    /// <param name="readable">The value as reports write it.</param>
    /// <param name="source">In words.</param>
    /// <param name="intermediate">True for a line that a short table leaves out.</param>
    /// <param name="law">The equation by its name in the index; none where none of it is used.</param>
    public Traced Step(string name, string symbol, Traced number, string unit, string readable, string source, bool intermediate = false, string? law = null)
    {
        if (number.Term is not { } term || (!term.IsMade && term.Symbol is null))
        {
            // A plain constant: nothing to derive, and nothing to point to.
            return Found(WorkingSource.Equation, name, symbol, number.Value, unit, readable, source, intermediate);
        }

        // A number that has had a line already is quoted by its symbol.
        bool named = term.Symbol is not null;
        _steps.Add(new(
            WorkingSource.Equation,
            name,
            symbol,
            named ? term.Symbol : term.InSymbols(),
            named ? Term.Text(term.Value) : term.InNumbers(),
            Si(number.Value, unit),
            readable,
            source)
        { IsIntermediate = intermediate, Si = number.Value, Unit = unit, Law = named ? null : law });
        if (named)
        {
            return Traced.Given(symbol, number.Value);
        }

        term.Symbol = symbol;
        return number;
    }

    private Traced Found(
        WorkingSource kind, string name, string symbol, double value, string unit, string readable, string source, bool intermediate)
    {
        _steps.Add(new(kind, name, symbol, null, null, Si(value, unit), readable, source) { IsIntermediate = intermediate, Si = value, Unit = unit });
        return Traced.Given(symbol, value);
    }

    private static string Si(double value, string unit) => unit == "1" ? Term.Text(value) : $"{Term.Text(value)} {unit}";
}
