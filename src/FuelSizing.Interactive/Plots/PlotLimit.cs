namespace FuelSizing.Interactive;

/// <summary>A limit drawn across a plot: a horizontal line of a <see cref="LinePlot"/>, an emphasised contour of a <see cref="MapPlot"/>.</summary>
public sealed class PlotLimit
{
    /// <summary>Creates a limit.</summary>
    /// <param name="label">What is limited, such as "limit 85 %"; not empty.</param>
    /// <param name="value">The limiting value in the unit of the value axis; finite.</param>
    /// <exception cref="ArgumentException">The label is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public PlotLimit(string label, double value)
    {
        Label = Require.Text(label, nameof(label));
        Value = Require.Finite(value, nameof(value));
    }

    /// <summary>What is limited.</summary>
    public string Label { get; }

    /// <summary>The limiting value in the unit of the value axis.</summary>
    public double Value { get; }

    /// <summary>True of a figure that is aimed at, not limited: drawn in another colour, dashed, and named in the key.</summary>
    public bool IsReference { get; internal init; }
}
