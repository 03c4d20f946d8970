namespace FuelSizing.Interactive;

/// <summary>One bar of a <see cref="PlotBarRow"/>.</summary>
public sealed class PlotBar
{
    /// <summary>Creates a bar.</summary>
    /// <param name="kind">Place in the plot's kinds, from 0.</param>
    /// <param name="from">Where it starts, in the unit of the axis; finite.</param>
    /// <param name="to">Where it ends; finite, on either side of the start.</param>
    /// <param name="interval">The range in which the end may lie, drawn as a whisker; none if left out.</param>
    /// <exception cref="ArgumentOutOfRangeException">The kind is negative, or a value is not finite.</exception>
    public PlotBar(int kind, double from, double to, (double Minimum, double Maximum)? interval = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(kind);
        Kind = kind;
        From = Require.Finite(from, nameof(from));
        To = Require.Finite(to, nameof(to));
        if (interval is { } range)
        {
            Require.Finite(range.Minimum, nameof(interval));
            Require.Finite(range.Maximum, nameof(interval));
        }

        Interval = interval;
    }

    /// <summary>Place in the plot's kinds.</summary>
    public int Kind { get; }

    /// <summary>Where it starts.</summary>
    public double From { get; }

    /// <summary>Where it ends.</summary>
    public double To { get; }

    /// <summary>The range in which the end may lie, or <see langword="null"/>.</summary>
    public (double Minimum, double Maximum)? Interval { get; }

    internal double Left => Math.Min(From, To);

    internal double Right => Math.Max(From, To);
}
