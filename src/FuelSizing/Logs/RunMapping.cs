using FuelSizing.Quantities;

namespace FuelSizing.Logs;

/// <summary>How a file is to be read: which column holds which channel in which unit, and how the file is written.</summary>
public sealed record RunMapping
{
    private static readonly Identity<RunMapping> _identity = new Identity<RunMapping>()
        .List(mapping => mapping.Columns)
        .Value(mapping => mapping.Separator)
        .Value(mapping => mapping.DecimalMark)
        .Value(mapping => mapping.HeadingLine)
        .Value(mapping => mapping.UnitsRow);

    private RunMapping(IReadOnlyList<RunColumn> columns) => Columns = [.. columns];

    /// <summary>The columns to read; others of the file are passed over.</summary>
    public IReadOnlyList<RunColumn> Columns { get; }

    /// <summary>Between cells; a comma unless said otherwise.</summary>
    public CellSeparator Separator { get; private init; }

    /// <summary>Before decimals; a point unless said otherwise.</summary>
    public DecimalMark DecimalMark { get; private init; }

    /// <summary>The heading's line, the first being 1; lines above it are passed over.</summary>
    public int HeadingLine { get; private init; } = 1;

    /// <summary>Whether units stand below the heading; none unless said otherwise.</summary>
    public UnitsRow UnitsRow { get; private init; }

    /// <summary>A file of commas and decimal points, its heading in the first line.</summary>
    /// <param name="columns">The columns to read: no channel twice, speed among them.</param>
    /// <returns>The mapping.</returns>
    /// <exception cref="ArgumentException">Speed is not among the columns, or a channel is there twice.</exception>
    public static RunMapping Of(params RunColumn[] columns)
    {
        ArgumentNullException.ThrowIfNull(columns);
        foreach (RunColumn column in columns)
        {
            ArgumentNullException.ThrowIfNull(column, nameof(columns));
            if (columns.Count(other => other.Channel == column.Channel) > 1)
            {
                throw new ArgumentException($"columns name the channel {column.Channel} twice. Keep the column that is to be read.", nameof(columns));
            }
        }

        return columns.Any(column => column.Channel == Channel.Speed)
            ? new([.. columns])
            : throw new ArgumentException("columns lack Speed. Name the column of engine speed: every finding needs it.", nameof(columns));
    }

    /// <summary>The same mapping of a file written otherwise.</summary>
    /// <param name="separator">Between cells.</param>
    /// <param name="decimalMark">Before decimals; a comma only where cells are not parted by commas too.</param>
    /// <returns>The mapping.</returns>
    /// <exception cref="ArgumentException">Commas are to do both, or there is no such mark.</exception>
    public RunMapping Written(CellSeparator separator, DecimalMark decimalMark)
    {
        Guard.Member(separator, "Say what stands between two cells.", nameof(separator));
        Guard.Member(decimalMark, "Say what stands before a number's decimals.", nameof(decimalMark));
        return separator == CellSeparator.Comma && decimalMark == DecimalMark.Comma
            ? throw new ArgumentException(
                "decimalMark and separator are both a comma: then 1,5 may be one number or two. Write the file with semicolons or tabs between its cells.",
                nameof(decimalMark))
            : (this with { Separator = separator, DecimalMark = decimalMark });
    }

    /// <summary>The same mapping of a file with lines above its heading.</summary>
    /// <param name="headingLine">The heading's line, 1 to 1,000, the first being 1.</param>
    /// <returns>The mapping.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The line is outside its range.</exception>
    public RunMapping WithHeadingLine(int headingLine) =>
        this with { HeadingLine = Guard.Count(headingLine, 1, 1000, "Count the file's lines, the first being 1.", nameof(headingLine)) };

    /// <summary>The same mapping of a file with units below its heading, or without.</summary>
    /// <param name="unitsRow">What is done with them.</param>
    /// <returns>The mapping.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such choice.</exception>
    public RunMapping WithUnitsRow(UnitsRow unitsRow) =>
        this with { UnitsRow = Guard.Member(unitsRow, "Say whether units stand below the heading.", nameof(unitsRow)) };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RunMapping? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>How many columns, and how the file is written.</summary>
    /// <returns>For instance <c>columns: 6; separator Comma, decimal mark Point, heading in line 1</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"columns: {Columns.Count}; separator {Separator}, decimal mark {DecimalMark}, heading in line {HeadingLine}");

    /// <summary>Refuses a mapping with a column whose unit nobody says.</summary>
    internal RunMapping Complete(string name) =>
        UnitsRow != UnitsRow.Used && Columns.FirstOrDefault(column => column.Unit is null) is { } column
            ? throw new ArgumentException(
                $"{name} gives no unit for {column}, and the file's units row is not used. Give the column a unit, or say WithUnitsRow(UnitsRow.Used).",
                name)
            : this;
}

/// <summary>What stands between two cells of a line.</summary>
public enum CellSeparator
{
    /// <summary>A comma.</summary>
    Comma,

    /// <summary>A semicolon.</summary>
    Semicolon,

    /// <summary>A tab.</summary>
    Tab,
}

/// <summary>What stands before a number's decimals.</summary>
public enum DecimalMark
{
    /// <summary>A point.</summary>
    Point,

    /// <summary>A comma.</summary>
    Comma,
}

/// <summary>Whether the line below the heading holds units, and what is done with it.</summary>
public enum UnitsRow
{
    /// <summary>There is none: the line below the heading holds numbers.</summary>
    None,

    /// <summary>There is one, and it is not looked at.</summary>
    Skipped,

    /// <summary>There is one: it gives the unit of a column that the mapping gives none, and must not contradict the others.</summary>
    Used,
}
