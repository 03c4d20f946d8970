using FuelSizing.Engines;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Controllers;

/// <summary>A controller's correction of its fuel by a lambda sensor, at part load: how far it reaches, and up to which load it is made.</summary>
/// <remarks>
/// Up to the stated manifold pressure the fuel is multiplied until lambda is the controller's own target, within the authority; over it the
/// loop is open and the fuel is as calculated. What a controller learns at part load and applies on boost is not modelled.
/// </remarks>
/// <example>
/// <code>
/// ClosedLoop loop = ClosedLoop.Of(authority: Ratio.FromPercent(15), maximumManifoldAbsolute: Pressure.FromKilopascals(80));
/// Console.WriteLine(loop);   // ±15 % up to 80.0 kPa in the manifold, absolute
/// </code>
/// </example>
public sealed record ClosedLoop
{
    private static readonly Identity<ClosedLoop> _identity = new Identity<ClosedLoop>()
        .Number(loop => loop.Authority.DecimalFractions)
        .Number(loop => loop.MaximumManifoldAbsolute.Pascals);

    private ClosedLoop(Ratio authority, Pressure maximum) =>
        (Authority, MaximumManifoldAbsolute) = (authority, maximum);

    /// <summary>Most that the fuel is raised or lowered.</summary>
    public Ratio Authority { get; }

    /// <summary>Manifold pressure, absolute, over which the loop is open.</summary>
    public Pressure MaximumManifoldAbsolute { get; }

    /// <summary>Describes the correction.</summary>
    /// <param name="authority">0 to 50 %.</param>
    /// <param name="maximumManifoldAbsolute">10 to 500 kPa absolute.</param>
    /// <returns>The correction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ClosedLoop Of(Ratio authority, Pressure maximumManifoldAbsolute) => new(
        Guard.Between(
            authority,
            Ratio.Zero,
            Ratio.FromPercent(50),
            "Give the most that the sensor may raise or lower the fuel.",
            nameof(authority)),
        ManifoldAbsolute.Within(maximumManifoldAbsolute, nameof(maximumManifoldAbsolute)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ClosedLoop? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Authority and load.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"±{Readable.Of(Authority)} up to {Readable.Of(MaximumManifoldAbsolute)} in the manifold, absolute";
}

/// <summary>Checks on absolute pressures in the inlet manifold.</summary>
internal static class ManifoldAbsolute
{
    private static readonly Pressure Maximum = Pressure.FromKilopascals(500);

    /// <summary>An absolute pressure that a manifold may have.</summary>
    public static Pressure Within(Pressure pressure, string name) => Guard.Between(
        pressure,
        ManifoldPressure.MinimumAbsolute,
        Maximum,
        "Give absolute pressure in the manifold: about 100 kPa at full throttle without boost.",
        name);
}
