using System.Globalization;

namespace FuelSizing.Logs;

/// <summary>A mapping file that is not one, with the place and the reason.</summary>
public sealed class RunMappingException : FormatException
{
    internal RunMappingException(long line, long position, string reason)
        : base(string.Create(CultureInfo.InvariantCulture, $"line {line}, position {position}: {reason}")) =>
        (Line, Position) = (line, position);

    /// <summary>Line of the file, the first being 1.</summary>
    public long Line { get; }

    /// <summary>Character in that line, the first being 1.</summary>
    public long Position { get; }
}
