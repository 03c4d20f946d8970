using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>An operating point with the name that a setup gives it.</summary>
public sealed record NamedPoint
{
    private static readonly Identity<NamedPoint> _identity = new Identity<NamedPoint>()
        .Value(named => named.Name)
        .Value(named => named.Point);

    internal NamedPoint(string name, OperatingPoint point) => (Name, Point) = (name, point);

    /// <summary>Its name, once in a setup.</summary>
    public string Name { get; }

    /// <summary>Where the engine runs there, and under which conditions.</summary>
    public OperatingPoint Point { get; }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(NamedPoint? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, speed and boost.</summary>
    /// <returns>For instance <c>full load: 6,800 rev/min, 0.60 bar</c>.</returns>
    public override string ToString() =>
        $"{Name}: {Point}";
}
