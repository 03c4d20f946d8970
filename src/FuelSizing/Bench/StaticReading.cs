using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>One timed collection from an injector held open: for how long, and what was weighed or read off a measuring cylinder.</summary>
public sealed record StaticReading : IReadable
{
    private static readonly Identity<StaticReading> _identity = new Identity<StaticReading>()
        .Number(reading => reading.Time.Seconds)
        .Number(reading => reading.Weighed?.Kilograms)
        .Number(reading => reading.Filled?.CubicMeters);

    private StaticReading(Duration time, Mass? weighed, Volume? filled) => (Time, Weighed, Filled) = (time, weighed, filled);

    /// <summary>How long the injector was held open, by the clock.</summary>
    public Duration Time { get; }

    /// <summary>What was collected, by a scale; none where it was read off a measuring cylinder.</summary>
    public Mass? Weighed { get; }

    /// <summary>What was collected, by a measuring cylinder; none where it was weighed.</summary>
    public Volume? Filled { get; }

    /// <summary>Describes a weighing.</summary>
    /// <param name="time">How long the injector was held open, 1 s to 1 h.</param>
    /// <param name="weighed">What was collected, over 0 to 20 kg: the full vessel less the empty one.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static StaticReading ByMass(Duration time, Mass weighed) => new(
        Within(time), Guard.Above(weighed, Mass.Zero, Mass.FromKilograms(20), "Give what was collected: the full vessel less the empty one.", nameof(weighed)), null);

    /// <summary>Describes a reading of a measuring cylinder.</summary>
    /// <param name="time">How long the injector was held open, 1 s to 1 h.</param>
    /// <param name="filled">What was collected, over 0 to 25 L, at the temperature of the test.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static StaticReading ByVolume(Duration time, Volume filled) => new(
        Within(time), null, Guard.Above(filled, Volume.Zero, Volume.FromLiters(25), "Give what was collected, as the measuring cylinder reads it.", nameof(filled)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(StaticReading? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Time, and mass or volume.</summary>
    /// <returns>For instance <c>30.00 s: 156.20 g</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Weighed is { } weighed
        ? Statement.Of("bench.static-weighed", $"{Time:time}: {weighed}")
        : Statement.Of("bench.static-filled", $"{Time:time}: {Filled!.Value.Milliliters:N1} mL");

    internal double Seconds => Time.Seconds;

    /// <summary>What was collected, m³ of the test liquid.</summary>
    internal double CubicMetres(double density) => Filled?.CubicMeters ?? (Weighed!.Value.Kilograms / density);

    private static Duration Within(Duration time) =>
        Guard.Between(time, Duration.FromSeconds(1), Duration.FromHours(1), "Give the time for which the injector was held open.", nameof(time));
}
