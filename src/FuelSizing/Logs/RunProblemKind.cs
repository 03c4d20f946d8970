namespace FuelSizing.Logs;

/// <summary>What is wrong with a place in a recorded run.</summary>
public enum RunProblemKind
{
    /// <summary>The file has no line at all.</summary>
    EmptyFile,

    /// <summary>A column that the mapping names is not in the heading.</summary>
    MissingColumn,

    /// <summary>A heading that the mapping names stands over more than one column.</summary>
    DuplicateColumn,

    /// <summary>The units row cannot be read, or says another unit than the mapping.</summary>
    Unit,

    /// <summary>A row has fewer cells than the heading.</summary>
    TooFewCells,

    /// <summary>A row has more cells than the heading.</summary>
    TooManyCells,

    /// <summary>A line has nothing in it.</summary>
    BlankLine,

    /// <summary>A line is longer than the reader takes.</summary>
    LineTooLong,

    /// <summary>A quote is not closed on its line, or closed before the end of its cell.</summary>
    Quote,

    /// <summary>The last line has no line end: the file may have been cut there.</summary>
    TruncatedLine,

    /// <summary>A cell is neither blank nor a number.</summary>
    NotANumber,

    /// <summary>A cell says that there is no number: NaN or infinity in words.</summary>
    NotFinite,

    /// <summary>A number is outside the channel's range: another unit, or a failed sensor.</summary>
    OutOfRange,

    /// <summary>A row has no speed, or no time though time is mapped.</summary>
    MissingValue,

    /// <summary>A row has the same time as the last row used.</summary>
    DuplicateTime,

    /// <summary>A row is earlier than the last row used.</summary>
    ReversedTime,
}
