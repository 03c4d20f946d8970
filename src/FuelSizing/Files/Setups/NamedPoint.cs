using FuelSizing.Points;

namespace FuelSizing.Files;

/// <summary>An operating point with the name that a setup gives it.</summary>
public sealed record NamedPoint
{
    internal NamedPoint(string name, OperatingPoint point) => (Name, Point) = (name, point);

    /// <summary>Its name, once in a setup.</summary>
    public string Name { get; }

    /// <summary>Where the engine runs there, and under which conditions.</summary>
    public OperatingPoint Point { get; }
}
