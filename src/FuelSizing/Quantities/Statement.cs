using System.Collections.ObjectModel;
using System.Runtime.CompilerServices;
using System.Text;
using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>A reason, note, remedy or finding: a code that stays the same, its arguments, and English words that hold them.</summary>
/// <remarks>
/// A program asks the <see cref="Code"/> and the <see cref="Arguments"/>; a reader gets the words, in whichever units and culture. Codes are listed in
/// the documentation with an example of each. Statements compare by value; quantities by their size, not their unit, to twelve figures.
/// </remarks>
/// <example>
/// <code>
/// VolumeFlow flow = VolumeFlow.FromLitersPerHour(140);
/// Statement note = Statement.Of("pump.reserve", $"delivers {flow:pump-flow} at {Pressure.FromKilopascals(400)} in the rail");
/// Console.WriteLine(note);                             // delivers 140 L/h at 400 kPa in the rail
/// Console.WriteLine(note.In(TextStyle.UsCustomary));   // delivers 37.0 US gal/h at 58.0 psi in the rail
/// </code>
/// </example>
public sealed class Statement : IReadable, IEquatable<Statement>
{
    private readonly string[] _literals;
    private readonly StatementArgument[] _arguments;

    private Statement(string code, StatementText text)
    {
        (_literals, _arguments) = text.Parts();
        (Code, Arguments) = (code, _arguments.AsReadOnly());
    }

    /// <summary>What it says, in a form that a program can compare, for instance <c>pump.delivers-too-little</c>.</summary>
    public string Code { get; }

    /// <summary>The figures, names and statements in it, in the order of the words.</summary>
    public ReadOnlyCollection<StatementArgument> Arguments { get; }

    /// <summary>Makes a statement.</summary>
    /// <param name="code">Lower-case words joined by hyphens, rooms by dots, 1 to 80 characters.</param>
    /// <param name="text">
    /// An interpolated string. A hole takes a quantity, a count, a name, another statement, or anything readable; after a colon comes the kind of figure
    /// where a quantity has several: <c>{flow:pump-flow}</c>, <c>{pressure:boost}</c>. A pure number takes its format: <c>{gain:0.00}</c>. A minimum that is
    /// fitted by is rounded up, <c>{flow:pump-flow:up}</c>, and a maximum down, <c>{pressure:boost:down}</c>, so that it still serves as it is printed.
    /// </param>
    /// <returns>The statement.</returns>
    /// <exception cref="ArgumentException">The code is none, or a kind does not belong to its quantity.</exception>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    public static Statement Of(string code, StatementText text)
    {
        ArgumentNullException.ThrowIfNull(code);
        return IsCode(code)
            ? new(code, text)
            : throw new ArgumentException(
                $"code was \"{code}\"; give lower-case words joined by hyphens and dots, such as pump.delivers-too-little.", nameof(code));
    }

    /// <summary>In words, in a style.</summary>
    /// <param name="style">Units and culture.</param>
    /// <returns>One line.</returns>
    /// <exception cref="ArgumentNullException">There is no style.</exception>
    public string In(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        StringBuilder words = new(_literals[0]);
        for (int i = 0; i < _arguments.Length; i++)
        {
            words.Append(_arguments[i].In(style)).Append(_literals[i + 1]);
        }

        return words.ToString();
    }

    /// <summary>True if code, words and arguments are the same.</summary>
    /// <param name="other">Another statement.</param>
    /// <returns>True if the same.</returns>
    public bool Equals(Statement? other) =>
        other is not null
        && (ReferenceEquals(this, other)
            || (Code == other.Code
                && _literals.AsSpan().SequenceEqual(other._literals)
                && _arguments.AsSpan().SequenceEqual(other._arguments)));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Statement);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Code, _arguments.Length);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private static bool IsCode(string code)
    {
        char before = '.';
        foreach (char letter in code)
        {
            if (letter is '.' or '-' ? before is '.' or '-' : !char.IsAsciiLetterLower(letter) && !char.IsAsciiDigit(letter))
            {
                return false;
            }

            before = letter;
        }

        return before is not ('.' or '-') && code.Length <= 80;
    }
}

/// <summary>One figure, name or statement within a statement.</summary>
public readonly struct StatementArgument : IEquatable<StatementArgument>
{
    private readonly FigureKind? _figure;
    private readonly string? _kind;

    // Of a pure number how many figures, of a list what stands between.
    private readonly string? _format;

    // None where a figure is rounded to the nearest.
    private readonly FigureRounding? _rounding;

    internal StatementArgument(FigureKind figure, IQuantity value, FigureRounding? rounding = null) =>
        (_figure, Value, _rounding) = (figure, value, rounding);

    internal StatementArgument(string kind, object? value, string? format = null, FigureRounding? rounding = null) =>
        (_kind, Value, _format, _rounding) = (kind, value, format, rounding);

    /// <summary>
    /// For a quantity its kind of figure, as <see cref="FigureUnits"/> names it; else <c>name</c>, <c>count</c>, <c>ordinal</c>, <c>number</c>,
    /// <c>cost</c>, <c>statement</c> or <c>list</c>.
    /// </summary>
    public string Kind => _figure?.Name ?? _kind ?? string.Empty;

    /// <summary>
    /// A UnitsNet quantity, a string, a whole number, a number, something <see cref="IReadable"/>, or a list of such; none where a part of the words that is
    /// said only sometimes is not said.
    /// </summary>
    public object? Value { get; }

    /// <summary>Compares two arguments.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>True if they are the same.</returns>
    public static bool operator ==(StatementArgument left, StatementArgument right) => left.Equals(right);

    /// <summary>Compares two arguments.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    /// <returns>True if they differ.</returns>
    public static bool operator !=(StatementArgument left, StatementArgument right) => !left.Equals(right);

    /// <summary>Compares kind and value; quantities by size to twelve figures.</summary>
    /// <param name="other">The other.</param>
    /// <returns>True if they are the same.</returns>
    public bool Equals(StatementArgument other) =>
        Kind == other.Kind
        && _format == other._format
        && IsRoundedAs(other)
        && (_figure is not null
            ? _figure.Compared(Value!).Equals(_figure.Compared(other.Value!))
            : (Value, other.Value) is (IReadOnlyList<IReadable> list, IReadOnlyList<IReadable> others)
                ? list.SequenceEqual(others)
                : Equals(Value, other.Value));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is StatementArgument other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Kind.GetHashCode(StringComparison.Ordinal);

    /// <summary>In words, in metric units.</summary>
    /// <returns>For instance <c>360 kPa</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    internal string In(TextStyle style) => Value switch
    {
        null => string.Empty,
        _ when _figure is not null => _figure.Text(Value, style, _rounding),
        string name => name,
        long count => _kind == "ordinal" ? style.Number(count, "0") : style.Count(count),
        double number => _rounding is null ? style.Number(number, _format!) : style.Number(number, _format!, _rounding),
        decimal cost => style.Number((double)cost, "N0"),
        IReadable readable => readable.In(style),
        IReadOnlyList<IReadable> list => string.Join(_format, list.Select(one => one.In(style))),
        _ => throw new InvalidOperationException($"A statement holds a {Value.GetType().Name}, which it cannot write."),
    };

    private bool IsRoundedAs(StatementArgument other) =>
        _rounding?.Way == other._rounding?.Way
        && (_rounding?.Bound, other._rounding?.Bound) switch
        {
            (null, null) => true,
            ({ } bound, { } limit) => _figure is null ? Equals(bound, limit) : _figure.Compared(bound).Equals(_figure.Compared(limit)),
            _ => false,
        };
}

/// <summary>Takes an interpolated string apart into words and arguments; the compiler makes and fills it for <see cref="Statement.Of"/>.</summary>
[InterpolatedStringHandler]
public ref struct StatementText
{
    private readonly List<string> _literals;
    private readonly List<StatementArgument> _arguments;
    private string _pending;

    /// <summary>Starts an empty text.</summary>
    /// <param name="literalLength">Characters of the words.</param>
    /// <param name="formattedCount">Number of arguments.</param>
    public StatementText(int literalLength, int formattedCount)
    {
        _ = literalLength;
        (_literals, _arguments, _pending) = (new(formattedCount + 1), new(formattedCount), string.Empty);
    }

    /// <summary>Takes words.</summary>
    /// <param name="words">As they stand.</param>
    public void AppendLiteral(string words) => _pending += words;

    /// <summary>Takes a name or a word that is not translated.</summary>
    /// <param name="name">As it is given.</param>
    public void AppendFormatted(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        Add(new("name", name));
    }

    /// <summary>Takes a count, written with the culture's groups.</summary>
    /// <param name="count">Any count.</param>
    public void AppendFormatted(long count) => Add(new("count", count));

    /// <summary>Takes the number of a line, a row or a place, written without groups.</summary>
    /// <param name="place">Any number.</param>
    /// <param name="format"><c>ordinal</c>; or <c>count</c>.</param>
    public void AppendFormatted(long place, string format) =>
        Add(new(
            format is "ordinal" or "count" ? format : throw new ArgumentException($"format was \"{format}\"; a whole number is a count or an ordinal.", nameof(format)),
            place));

    /// <summary>Takes a pure number.</summary>
    /// <param name="number">Any number.</param>
    /// <param name="format">How many figures, as .NET writes it: <c>0.00</c>, <c>N1</c>, <c>+0.0;−0.0;0.0</c>.</param>
    public void AppendFormatted(double number, string format)
    {
        ArgumentNullException.ThrowIfNull(format);
        FigureRounding? rounding = FigureRounding.TakenFrom(ref format);

        // Letters in a custom format are written as they are, so a misspelt kind would pass for a number.
        bool isStandard = format.Length is 2 or 3 && format[0] is 'N' or 'F' or 'G' && format.Skip(1).All(char.IsAsciiDigit);
        if (!isStandard && (!format.Contains('0', StringComparison.Ordinal) || format.Any(char.IsAsciiLetter)))
        {
            throw new ArgumentException($"format was \"{format}\"; a pure number is written as 0.00, N2 or the like.", nameof(format));
        }

        Add(new("number", number, format, rounding));
    }

    /// <summary>Takes a cost in whatever money it was given.</summary>
    /// <param name="cost">Any cost.</param>
    public void AppendFormatted(decimal cost) => Add(new("cost", cost));

    /// <summary>Takes a statement, or a part of the words that is said only sometimes.</summary>
    /// <param name="statement">What to say there; nothing if there is none.</param>
    public void AppendFormatted(Statement? statement) => Add(new("statement", statement));

    /// <summary>Takes anything readable, an operating point for instance.</summary>
    /// <param name="readable">What to write there.</param>
    public void AppendFormatted(IReadable readable)
    {
        ArgumentNullException.ThrowIfNull(readable);
        Add(new("statement", readable));
    }

    /// <summary>Takes a list.</summary>
    /// <param name="list">What to write there, one after the other.</param>
    /// <param name="format">What stands between them before a space, for instance <c>{points:;}</c> or <c>{faults:, or}</c>.</param>
    public void AppendFormatted(IReadOnlyList<IReadable> list, string format)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(format);
        Add(new("list", Array.AsReadOnly<IReadable>([.. list]), $"{format} "));
    }

    /// <summary>Takes a quantity that has several kinds of figure.</summary>
    /// <typeparam name="T">The quantity.</typeparam>
    /// <param name="figure">Any value.</param>
    /// <param name="format">
    /// The kind, as <see cref="FigureUnits"/> names it; after it <c>:up</c> for a minimum that is rounded up, <c>:down</c> for a maximum.
    /// </param>
    public void AppendFormatted<T>(T figure, string format)
        where T : struct, IQuantity
    {
        ArgumentNullException.ThrowIfNull(format);
        FigureRounding? rounding = FigureRounding.TakenFrom(ref format);
        Add(new(FigureKind.Named(format, typeof(T)), figure, rounding));
    }

    /// <summary>Takes a quantity with the rounding it needs.</summary>
    internal void AppendFormatted<T>(RoundedFigure<T> figure, string format)
        where T : struct, IQuantity => Add(new(FigureKind.Named(format, typeof(T)), figure.Figure, figure.Rounding));

    /// <summary>Takes a pure number with the rounding it needs.</summary>
    internal void AppendFormatted(RoundedFigure<double> figure, string format) => Add(new("number", figure.Figure, format, figure.Rounding));

    /// <summary>Takes a pressure of the size of rail pressure; boost, losses and changes name their kind.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Pressure figure) => Add(figure);

    /// <summary>Takes an engine speed.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(RotationalSpeed figure) => Add(figure);

    /// <summary>Takes a mass flow.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(MassFlow figure) => Add(figure);

    /// <summary>Takes a mass on a scale.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Mass figure) => Add(figure);

    /// <summary>Takes an engine's power; heat names its kind.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Power figure) => Add(figure);

    /// <summary>Takes a temperature.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Temperature figure) => Add(figure);

    /// <summary>Takes a liquid's density; a gas's names its kind.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Density figure) => Add(figure);

    /// <summary>Takes a heating value.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(SpecificEnergy figure) => Add(figure);

    /// <summary>Takes a specific fuel consumption.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(BrakeSpecificFuelConsumption figure) => Add(figure);

    /// <summary>Takes a length of line or wire; a bore names its kind.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Length figure) => Add(figure);

    /// <summary>Takes a pulse or dead time; a time in a log names its kind.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Duration figure) => Add(figure);

    /// <summary>Takes a share; a duty cycle, a chance and a change name their kind.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Ratio figure) => Add(figure);

    /// <summary>Takes a voltage; a voltage drop names its kind.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(ElectricPotential figure) => Add(figure);

    /// <summary>Takes a current.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(ElectricCurrent figure) => Add(figure);

    /// <summary>Takes a resistance of wire or contacts.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(ElectricResistance figure) => Add(figure);

    /// <summary>Takes a conductor's area.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Area figure) => Add(figure);

    /// <summary>Takes an engine's displacement.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Volume figure) => Add(figure);

    /// <summary>Takes a torque.</summary>
    /// <param name="figure">Any value.</param>
    public void AppendFormatted(Torque figure) => Add(figure);

    /// <summary>Takes an argument that was made elsewhere, of a kind that is not known where the words stand.</summary>
    internal void AppendFormatted(StatementArgument argument) => Add(argument);

    internal (string[] Literals, StatementArgument[] Arguments) Parts()
    {
        if (_literals is null)
        {
            throw new ArgumentException("text was empty; give an interpolated string.");
        }

        return ([.. _literals, _pending], [.. _arguments]);
    }

    private void Add<T>(T figure)
        where T : struct, IQuantity =>
        Add(new StatementArgument(FigureKind.DefaultOf(typeof(T)), figure));

    private void Add(StatementArgument argument)
    {
        _literals.Add(_pending);
        _arguments.Add(argument);
        _pending = string.Empty;
    }
}
