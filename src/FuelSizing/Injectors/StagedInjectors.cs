using FuelSizing.Quantities;

namespace FuelSizing.Injectors;

/// <summary>A secondary set of injectors on the same rail, which takes part of the fuel above a hand-over; the system's other injectors are the primary set.</summary>
/// <remarks>
/// <para>Both sets are on one rail and inject into the same manifold pressure, so that the same differential pressure is across both: a
/// secondary set upstream of the throttle or of the compressor, which injects into another pressure, is not modelled.</para>
/// <para>Both sets together inject the fuel of the engine, of which the hand-over gives the secondary set a share. That holds for a controller
/// that commands each set whatever is needed (<c>IdealController</c>); one whose pulses are described knows one set only, and a system
/// refuses the two together.</para>
/// </remarks>
/// <example>
/// <code>
/// StagedInjectors staged = StagedInjectors.Of(
///     InjectorSet.Of(injector, 4),
///     HandOver.ByBoost(
///         begin: Pressure.FromBars(0.3), full: Pressure.FromBars(0.5), share: Ratio.FromPercent(45), shareAtBegin: Ratio.FromPercent(25)));
/// FuelSystem twoSets = system.With(staged);
/// </code>
/// </example>
public sealed record StagedInjectors
{
    private static readonly Identity<StagedInjectors> _identity = new Identity<StagedInjectors>()
        .Value(staged => staged.Secondary)
        .Value(staged => staged.HandOver);

    private StagedInjectors(InjectorSet secondary, HandOver handOver) => (Secondary, HandOver) = (secondary, handOver);

    /// <summary>The secondary set.</summary>
    public InjectorSet Secondary { get; }

    /// <summary>When it takes part of the fuel, and how much.</summary>
    public HandOver HandOver { get; }

    /// <summary>Describes a secondary set and its hand-over.</summary>
    /// <param name="secondary">The secondary set.</param>
    /// <param name="handOver">When it takes part of the fuel, and how much.</param>
    /// <returns>The description.</returns>
    public static StagedInjectors Of(InjectorSet secondary, HandOver handOver)
    {
        ArgumentNullException.ThrowIfNull(secondary);
        ArgumentNullException.ThrowIfNull(handOver);
        return new(secondary, handOver);
    }

    /// <summary>The same hand-over to another secondary set.</summary>
    /// <param name="secondary">The secondary set.</param>
    /// <returns>The description.</returns>
    public StagedInjectors WithSecondary(InjectorSet secondary) => Of(secondary, HandOver);

    /// <summary>The same secondary set with another hand-over.</summary>
    /// <param name="handOver">When it takes part of the fuel, and how much.</param>
    /// <returns>The description.</returns>
    public StagedInjectors WithHandOver(HandOver handOver) => Of(Secondary, handOver);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(StagedInjectors? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The secondary set and its hand-over.</summary>
    /// <returns>For instance <c>4 × injector C, 700 mL/min each, above 0.30 bar, 25 % of the fuel rising to 45 % at 0.50 bar</c>.</returns>
    public override string ToString() => $"{Secondary}, {HandOver}";
}
