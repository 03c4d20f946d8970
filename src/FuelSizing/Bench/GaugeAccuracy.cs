using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>How accurate a pressure gauge is: what differs from reading to reading, and what all its readings have in common.</summary>
/// <remarks>
/// A gauge of a class of 1 % of 10 bar may be off by 10 kPa anywhere on its scale: as a standard deviation about half of that, 5 kPa, all of it in common. Compared with a dead-weight tester or
/// a better gauge it is known better.
/// </remarks>
public sealed record GaugeAccuracy : IReadable
{
    private static readonly Identity<GaugeAccuracy> _identity = new Identity<GaugeAccuracy>()
        .Number(accuracy => accuracy.Reading.Pascals)
        .Number(accuracy => accuracy.Zero.Pascals)
        .Number(accuracy => accuracy.Span.DecimalFractions);

    private GaugeAccuracy(Pressure reading, Pressure zero, Ratio span) => (Reading, Zero, Span) = (reading, zero, span);

    /// <summary>Standard deviation of one reading: reading the needle, a pressure that is not held.</summary>
    public Pressure Reading { get; }

    /// <summary>Standard deviation of what all readings are off by alike.</summary>
    public Pressure Zero { get; }

    /// <summary>Standard deviation of what all readings are off by in proportion.</summary>
    public Ratio Span { get; }

    /// <summary>Describes a gauge's accuracy by standard deviations.</summary>
    /// <param name="reading">Of one reading, 0.001 to 100 kPa.</param>
    /// <param name="zero">Of what all readings are off by alike, 0 to 100 kPa.</param>
    /// <param name="span">Of what all readings are off by in proportion, 0 to 10 %.</param>
    /// <returns>The accuracy.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static GaugeAccuracy Of(Pressure reading, Pressure zero, Ratio span) => new(
        Guard.Between(
            reading, Pressure.FromKilopascals(0.001), Pressure.FromKilopascals(100), "Give the standard deviation of one reading, a third of a division for instance.", nameof(reading)),
        Guard.Between(zero, Pressure.Zero, Pressure.FromKilopascals(100), "Give the standard deviation of what all readings are off by alike.", nameof(zero)),
        Guard.Between(span, Ratio.Zero, Ratio.FromPercent(10), "Give the standard deviation of what all readings are off by, as a share.", nameof(span)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(GaugeAccuracy? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The three deviations.</summary>
    /// <returns>For instance <c>±1.0 kPa a reading, ±2.0 kPa and ±0.5 % in common</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.gauge-accuracy", $"±{Reading:pressure-loss} a reading, ±{Zero:pressure-loss} and ±{Span:duty-cycle} in common");

    /// <summary>Of what all readings near a pressure are off by, Pa.</summary>
    internal double SharedPascals(double pascals) => Math.Sqrt(Math.Pow(Zero.Pascals, 2) + Math.Pow(Span.DecimalFractions * pascals, 2));
}
