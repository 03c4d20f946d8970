using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>One weighing of what an injector delivered in many pulses of one width.</summary>
public sealed record PulseReading : IReadable
{
    private static readonly Identity<PulseReading> _identity = new Identity<PulseReading>()
        .Number(reading => reading.Pulse.Seconds)
        .Number(reading => reading.Injections)
        .Number(reading => reading.Collected.Kilograms);

    private PulseReading(Duration pulse, int injections, Mass collected) => (Pulse, Injections, Collected) = (pulse, injections, collected);

    /// <summary>Commanded pulse width.</summary>
    public Duration Pulse { get; }

    /// <summary>How many pulses.</summary>
    public int Injections { get; }

    /// <summary>What was collected of all of them.</summary>
    public Mass Collected { get; }

    /// <summary>Describes a weighing.</summary>
    /// <param name="pulse">Commanded pulse width, 0.1 to 100 ms.</param>
    /// <param name="injections">How many pulses, 10 to 1,000,000.</param>
    /// <param name="collected">What was collected of all of them, 0 to 20 kg: the full vessel less the empty one; nothing where the injector did not open.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static PulseReading Of(Duration pulse, int injections, Mass collected) => new(
        Guard.Between(pulse, Duration.FromMilliseconds(0.1), Duration.FromMilliseconds(100), "Give the commanded pulse width.", nameof(pulse)),
        Guard.Count(injections, 10, 1_000_000, "Give the number of pulses; a hundred or more make a reading that a scale can tell.", nameof(injections)),
        Guard.Between(
            collected, Mass.Zero, Mass.FromKilograms(20), "Give what was collected of all pulses together: the full vessel less the empty one.", nameof(collected)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PulseReading? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Pulse, count and mass.</summary>
    /// <returns>For instance <c>2.50 ms × 1,000: 12.40 g</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.pulse-reading", $"{Pulse} × {Injections}: {Collected}");

    internal double SecondsOpen => Pulse.Seconds;

    internal double KilogramsEach => Collected.Kilograms / Injections;
}
