using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>A part's margin and the place where it was found.</summary>
public sealed record Limit
{
    internal Limit(Margin margin, OperatingPoint point) => (Margin, Point) = (margin, point);

    /// <summary>How the part stands there.</summary>
    public Margin Margin { get; }

    /// <summary>Where.</summary>
    public OperatingPoint Point { get; }

    /// <summary>Which part.</summary>
    public Part Part => Margin.Part;

    /// <summary>Part, finding and place in one line.</summary>
    /// <returns>For instance <c>injectors: duty cycle 93.1 % over the 85.0 % limit at 6,800 rev/min, 0.60 bar</c>.</returns>
    public override string ToString() => $"{Margin} at {Point}";
}
