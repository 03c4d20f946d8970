namespace FuelSizing.Interactive;

/// <summary>A named row of a <see cref="BarPlot"/>.</summary>
public sealed class PlotBarRow
{
    /// <summary>Creates a row.</summary>
    /// <param name="label">Its name, written above its bars; not empty.</param>
    /// <param name="bars">One bar a kind at most; none leaves the row empty.</param>
    /// <exception cref="ArgumentException">The label is empty, too long, or cannot be written as XML; or two bars are of one kind.</exception>
    public PlotBarRow(string label, params IReadOnlyList<PlotBar> bars)
    {
        ArgumentNullException.ThrowIfNull(bars);
        Label = Require.Text(label, nameof(label));
        PlotBar[] own = [.. bars.Select(bar => bar ?? throw new ArgumentException("bars has a bar without a value. Leave the bar out instead.", nameof(bars)))];
        if (own.DistinctBy(bar => bar.Kind).Count() < own.Length)
        {
            throw new ArgumentException($"bars of '{label}' has two of one kind, which could not be told apart. Give each kind once.", nameof(bars));
        }

        Bars = Array.AsReadOnly(own);
    }

    /// <summary>Its name.</summary>
    public string Label { get; }

    /// <summary>Its bars.</summary>
    public IReadOnlyList<PlotBar> Bars { get; }
}
