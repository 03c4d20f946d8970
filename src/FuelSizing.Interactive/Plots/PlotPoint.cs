namespace FuelSizing.Interactive;

/// <summary>A point marked and named on a plot.</summary>
public sealed class PlotPoint
{
    /// <summary>Creates a marked point.</summary>
    /// <param name="label">Its name beside the mark; not empty.</param>
    /// <param name="x">Position in the unit of the x axis; finite.</param>
    /// <param name="y">Position in the unit of the y axis; finite.</param>
    /// <exception cref="ArgumentException">The label is empty, too long, or cannot be written as XML.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite.</exception>
    public PlotPoint(string label, double x, double y)
    {
        Label = Require.Text(label, nameof(label));
        X = Require.Finite(x, nameof(x));
        Y = Require.Finite(y, nameof(y));
    }

    /// <summary>Its name beside the mark.</summary>
    public string Label { get; }

    /// <summary>Position in the unit of the x axis.</summary>
    public double X { get; }

    /// <summary>Position in the unit of the y axis.</summary>
    public double Y { get; }
}
