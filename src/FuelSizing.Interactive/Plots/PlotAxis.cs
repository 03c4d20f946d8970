namespace FuelSizing.Interactive;

/// <summary>What a plot's axis or colour bar measures.</summary>
public sealed class PlotAxis
{
    /// <summary>Creates an axis.</summary>
    /// <param name="label">The quantity, such as "Rail pressure, gauge"; not empty.</param>
    /// <param name="unit">Its unit, such as "kPa"; not empty. Write "1" for a pure ratio.</param>
    /// <exception cref="ArgumentException">A text is empty, too long, or cannot be written as XML.</exception>
    public PlotAxis(string label, string unit)
    {
        Label = Require.Text(label, nameof(label));
        Unit = Require.Text(unit, nameof(unit));
    }

    /// <summary>The quantity.</summary>
    public string Label { get; }

    /// <summary>Its unit.</summary>
    public string Unit { get; }

    /// <summary>The axis title: the quantity with its unit in brackets; a pure ratio has none.</summary>
    public string Title => Heading(Label);

    /// <summary>A column's name with the unit in brackets; a pure ratio has none.</summary>
    internal string Heading(string name) => Unit == "1" ? name : $"{name} ({Unit})";

    /// <summary>A figure with its unit; a pure ratio has none.</summary>
    internal string Figure(string number) => Unit == "1" ? number : $"{number} {Unit}";
}
