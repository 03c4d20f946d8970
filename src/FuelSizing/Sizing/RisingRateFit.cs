using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>The rising-rate unit that holds lambda nearest to its target along a boost line, and the deviation that is left.</summary>
/// <remarks>
/// <para>Base, gain and onset are chosen so that the largest deviation of lambda from its target, as a share of the fuel, is smallest over the
/// points of the line, while every other check holds. A ceiling is kept as given, unless <see cref="RisingRateBounds.MinimumCeiling"/> lets it
/// be looked for.</para>
/// <para>Where no setting keeps the other checks, the setting that breaks them least is given all the same, and the reason why it will not
/// do.</para>
/// </remarks>
public sealed class RisingRateFit : IReadable
{
    internal RisingRateFit(FuelSystem system, RisingRate unit, FittedPoint[] points, double deviation, Statement? obstacle)
    {
        (System, Unit, Points) = (system, unit, Array.AsReadOnly(points));
        (LargestDeviation, Obstacle) = (double.IsFinite(deviation) ? Ratio.FromDecimalFractions(deviation) : null, obstacle);
    }

    /// <summary>The system with the unit fitted.</summary>
    public FuelSystem System { get; }

    /// <summary>The unit: base, gain and onset.</summary>
    public RisingRate Unit { get; }

    /// <summary>Each point of the line: the pressure that its target needs, and the mixture that is left.</summary>
    public IReadOnlyList<FittedPoint> Points { get; }

    /// <summary>Largest deviation of lambda from its target, lean or rich, as a share of the fuel; none where lambda is not known somewhere.</summary>
    public Ratio? LargestDeviation { get; }

    /// <summary>Why no rising-rate unit does it: the check that no setting keeps, or where lambda is not known; none where one does.</summary>
    public Statement? Obstacle { get; }

    /// <summary>True where every other check holds, and lambda is known, at every point.</summary>
    public bool Serves => Obstacle is null;

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The unit, and what it leaves, as a code with its figures.</summary>
    public Statement Text => (Obstacle, LargestDeviation) switch
    {
        ({ } obstacle, { } deviation) => Statement.Of("fit.none-serves", $"No rising-rate unit does it: {obstacle}; the nearest mixture would be {deviation:share} off with {Unit}."),
        ({ } obstacle, _) => Statement.Of("fit.none-known", $"No rising-rate unit does it: {obstacle}."),
        (_, { } deviation) => Statement.Of("fit.serves", $"{Unit}: lambda within {deviation:share} of its target along the line."),
        _ => throw new InvalidOperationException("A unit serves where lambda is not known."),
    };

    /// <summary>The unit, and what it leaves.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => In(TextStyle.Metric);
}

/// <summary>One point of the line with a fitted unit.</summary>
public sealed class FittedPoint
{
    internal FittedPoint(OperatingResult result, double required) =>
        (Result, RequiredRail) = (result, double.IsNaN(required) ? null : Pressure.FromPascals(required));

    /// <summary>The point, solved with the unit.</summary>
    public OperatingResult Result { get; }

    /// <summary>
    /// Rail pressure that gives the target, gauge; none where none does up to the highest pressure at which the injectors open: too short a
    /// pulse, or one past its turn-over.
    /// </summary>
    public Pressure? RequiredRail { get; }

    /// <summary>Point, pressure required and pressure set.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"{Result.Point}: rail {(RequiredRail is { } required ? Readable.Of(required) : "none")} required, {Readable.Of(Result.RailSetGauge)} set, lambda {Result.Mixture.Lambda:0.000}";
}

/// <summary>Within which bounds a rising-rate unit is looked for.</summary>
/// <remarks>Gains from about 4 to 12 are common practice, no source; any from 1 to 15 is looked at.</remarks>
public sealed record RisingRateBounds
{
    private static readonly Identity<RisingRateBounds> _identity = new Identity<RisingRateBounds>()
        .Number(bounds => bounds.MinimumBase.Pascals)
        .Number(bounds => bounds.MaximumBase.Pascals)
        .Number(bounds => bounds.MaximumGain)
        .Number(bounds => bounds.MaximumOnset.Pascals)
        .Number(bounds => bounds.Ceiling?.Pascals)
        .Number(bounds => bounds.MinimumCeiling?.Pascals);

    private RisingRateBounds(
        Pressure minimumBase, Pressure maximumBase, double maximumGain, Pressure maximumOnset, Pressure? ceiling, Pressure? minimumCeiling)
    {
        (MinimumBase, MaximumBase, MaximumGain, MaximumOnset) = (minimumBase, maximumBase, maximumGain, maximumOnset);
        (Ceiling, MinimumCeiling) = (ceiling, minimumCeiling);
    }

    /// <summary>Lowest base pressure.</summary>
    public Pressure MinimumBase { get; }

    /// <summary>Highest base pressure; the same as the lowest where the base is to stay.</summary>
    public Pressure MaximumBase { get; }

    /// <summary>Highest gain.</summary>
    public double MaximumGain { get; }

    /// <summary>Highest onset.</summary>
    public Pressure MaximumOnset { get; }

    /// <summary>Highest pressure that the unit sets; none where it has no such stop.</summary>
    public Pressure? Ceiling { get; }

    /// <summary>Lowest ceiling that is looked at; none where the ceiling is to stay as given.</summary>
    public Pressure? MinimumCeiling { get; }

    /// <summary>Describes the bounds.</summary>
    /// <param name="minimumBase">Lowest base pressure, 100 to 1,500 kPa.</param>
    /// <param name="maximumBase">Highest base pressure, from the lowest on.</param>
    /// <param name="maximumGain">1 to 15.</param>
    /// <param name="maximumOnset">0 to 200 kPa; 50 kPa if not given.</param>
    /// <param name="ceiling">Highest pressure that the unit sets, from the highest base to 2,000 kPa; none if not given.</param>
    /// <param name="minimumCeiling">
    /// Lowest ceiling to look at, from the highest base to 2,000 kPa and no higher than <paramref name="ceiling"/>; if not given, the ceiling
    /// stays as it is.
    /// </param>
    /// <returns>The bounds.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static RisingRateBounds Of(
        Pressure minimumBase, Pressure maximumBase, double maximumGain = 15, Pressure? maximumOnset = null, Pressure? ceiling = null, Pressure? minimumCeiling = null)
    {
        Pressure lowest = Guard.Between(
            minimumBase,
            Pressure.FromKilopascals(100),
            Pressure.FromKilopascals(1500),
            "Give the rail's gauge pressure with the manifold at atmospheric pressure.",
            nameof(minimumBase));
        Pressure highest = Guard.Between(
            maximumBase, lowest, Pressure.FromKilopascals(1500), "Give a base from the lowest on.", nameof(maximumBase));
        return new(
            lowest,
            highest,
            Guard.Number(maximumGain, RisingRate.MinimumGain, RisingRate.MaximumGain, "Give the rise of rail pressure for each 1 of boost.", nameof(maximumGain)),
            Guard.Between(
                maximumOnset ?? Pressure.FromKilopascals(50),
                Pressure.Zero,
                Pressure.FromKilopascals(200),
                "Give the boost at which the rail starts to rise faster than the manifold.",
                nameof(maximumOnset)),
            ceiling is { } stop
                ? Guard.Between(stop, highest, Pressure.FromKilopascals(2000), "Give the gauge pressure that the unit never passes.", nameof(ceiling))
                : null,
            minimumCeiling is { } least
                ? Guard.Between(
                    least, highest, ceiling ?? Pressure.FromKilopascals(2000), "Give the lowest ceiling that the unit can be had with.", nameof(minimumCeiling))
                : null);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RisingRateBounds? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Base, gain, onset, and the ceiling if there is one.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => FormattableString.Invariant(
        $"base {Readable.Of(MinimumBase)} to {Readable.Of(MaximumBase)}, gain up to {MaximumGain:0.##}, onset up to {Readable.Boost(MaximumOnset)}")
        + (MinimumCeiling is { } least ? $", ceiling from {Readable.Of(least)}" : string.Empty)
        + (Ceiling is { } stop ? $"{(MinimumCeiling is null ? ", ceiling" : " to")} {Readable.Of(stop)}" : string.Empty);
}
