using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>An upright line across a plot, and its label.</summary>
/// <param name="Label">Short: it stands above the plot.</param>
/// <param name="Value">Where, in the unit of the horizontal axis.</param>
/// <param name="IsLimit">A limit is drawn stronger than a mark, and without dashes.</param>
internal sealed record Flag(string Label, double Value, bool IsLimit)
{
    public double Thickness => IsLimit ? PlotStyle.LimitThickness : 1.6;

    public OxyColor Color => IsLimit ? PlotStyle.Limit : PlotStyle.Ink;
}
