namespace FuelSizing.Interactive;

/// <summary>One named series of a <see cref="LinePlot"/>: a computed line, or readings.</summary>
public sealed class PlotLine
{
    /// <summary>Creates a computed line: drawn through its points, without markers.</summary>
    /// <param name="name">Its name in the key; not empty.</param>
    /// <param name="x">Positions along the x axis, each finite.</param>
    /// <param name="y">Values along the y axis, as many as <paramref name="x"/>; a NaN leaves a gap.</param>
    /// <exception cref="ArgumentException">The name is empty, the counts differ, or no value is finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite, or a value is infinite.</exception>
    public PlotLine(string name, IReadOnlyList<double> x, IReadOnlyList<double> y)
        : this(name, x, y, false)
    {
    }

    private PlotLine(string name, IReadOnlyList<double> x, IReadOnlyList<double> y, bool isMeasured)
    {
        Name = Require.Text(name, nameof(name));
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        if (x.Count != y.Count)
        {
            throw new ArgumentException($"y has {y.Count} value(s) but x has {x.Count}. Give one y for each x; NaN leaves a gap.", nameof(y));
        }

        if (!y.Any(double.IsFinite))
        {
            throw new ArgumentException($"y of '{name}' holds no finite value, so there is nothing to draw. Leave the series out.", nameof(y));
        }

        X = Array.AsReadOnly([.. x.Select(value => Require.Finite(value, nameof(x)))]);
        Y = Array.AsReadOnly([.. y.Select(value => double.IsNaN(value) ? value : Require.Finite(value, nameof(y)))]);
        IsMeasured = isMeasured;
    }

    /// <summary>Readings: a mark each, and nothing drawn between them.</summary>
    /// <param name="name">Its name in the key; not empty.</param>
    /// <param name="x">Positions along the x axis, each finite.</param>
    /// <param name="y">Values along the y axis, as many as <paramref name="x"/>; a NaN is no reading.</param>
    /// <returns>The series.</returns>
    /// <exception cref="ArgumentException">The name is empty, the counts differ, or no value is finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A position is not finite, or a value is infinite.</exception>
    public static PlotLine Measured(string name, IReadOnlyList<double> x, IReadOnlyList<double> y) => new(name, x, y, true);

    /// <summary>Its name in the key.</summary>
    public string Name { get; }

    /// <summary>Positions along the x axis.</summary>
    public IReadOnlyList<double> X { get; }

    /// <summary>Values along the y axis; NaN is a gap.</summary>
    public IReadOnlyList<double> Y { get; }

    /// <summary>True of readings, which are drawn as marks; false of a computed line, which has none.</summary>
    public bool IsMeasured { get; }
}
