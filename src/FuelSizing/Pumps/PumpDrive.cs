using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Pumps;

/// <summary>How a pump moves fuel, and the resistance of its motor's winding: what it delivers at a voltage at which it was not measured.</summary>
/// <remarks>
/// <para>A motor turns as fast as its back-EMF lets it, k_e n = V − I R. A turbine's torque goes with the square of its speed, a displacement
/// pump's with pressure. Where the kind is not known both bound the flow, and where the winding is not, one without resistance and one that
/// takes half of the voltage (<see cref="Pump.MaximumResistiveShare"/>) do; each check takes the bound that is conservative for it.</para>
/// <para>The winding is that of the running, warm motor: of copper it has a third more at 100 °C than at 20 °C. Measured at rest, at several
/// positions of the shaft and less the leads, the least of the readings is the winding without its brushes. The voltage that brushes take, and a
/// winding that warms up with voltage, are not modelled: with kind and winding given both bounds are one, and an estimate.</para>
/// </remarks>
/// <example>
/// <code>
/// PumpDrive drive = PumpDrive.Of(PumpKind.Displacement, ElectricResistance.FromOhms(0.25));
/// </code>
/// </example>
public sealed record PumpDrive : IReadable
{
    private static readonly Identity<PumpDrive> _identity = new Identity<PumpDrive>()
        .Number(drive => (double)drive.Kind)
        .Number(drive => drive.Winding?.Ohms);

    private PumpDrive(PumpKind kind, ElectricResistance? winding) => (Kind, Winding) = (kind, winding);

    /// <summary>How the pump moves fuel.</summary>
    public PumpKind Kind { get; }

    /// <summary>Resistance of the winding; none where it is not known.</summary>
    public ElectricResistance? Winding { get; }

    /// <summary>Describes the drive.</summary>
    /// <param name="kind">How the pump moves fuel.</param>
    /// <param name="winding">Resistance of the motor's winding, 0.01 to 5 Ω; not known if not given. Needs curves with current.</param>
    /// <returns>The drive.</returns>
    /// <exception cref="ArgumentException">Neither kind nor winding is known, which says nothing: leave the drive out.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The kind is none of those there are, or the resistance is outside its range.</exception>
    public static PumpDrive Of(PumpKind kind, ElectricResistance? winding = null) => new(
        kind == PumpKind.Unknown && winding is null
            ? throw new ArgumentException("kind was Unknown, and no winding was given, which says nothing of a pump. Give one of them, or no drive.", nameof(kind))
            : Guard.Member(kind, "Say how the pump moves fuel, or that it is not known.", nameof(kind)),
        winding is { } resistance
            ? Guard.Between(
                resistance,
                ElectricResistance.FromOhms(0.01),
                ElectricResistance.FromOhms(5),
                "Give the resistance of the motor's winding, measured with the motor at rest.",
                nameof(winding))
            : null);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PumpDrive? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Kind and winding, as a code with its figures.</summary>
    public Statement Text => (Kind, Winding) switch
    {
        (PumpKind.Turbine, { } winding) => Statement.Of("pump-drive.turbine", $"turbine pump, winding {winding}"),
        (PumpKind.Turbine, _) => Statement.Of("pump-drive.turbine-winding-unknown", $"turbine pump, winding not known"),
        (PumpKind.Displacement, { } winding) => Statement.Of("pump-drive.displacement", $"displacement pump, winding {winding}"),
        (PumpKind.Displacement, _) => Statement.Of("pump-drive.displacement-winding-unknown", $"displacement pump, winding not known"),
        _ => Statement.Of("pump-drive.kind-unknown", $"pump of unknown kind, winding {Winding.GetValueOrDefault()}"),
    };

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Kind and winding.</summary>
    /// <returns>For instance <c>displacement pump, winding 250.0 mΩ</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
