using FuelSizing.Quantities;

namespace FuelSizing.Uncertainty;

/// <summary>How many samples, from which seed, on how many threads.</summary>
/// <remarks>
/// The same samples and seed give the same answer, to the last bit, on any number of threads. Random numbers are
/// Philox4x32-10 (Salmon, Moraes, Dror and Shaw, Parallel random numbers: as easy as 1, 2, 3, SC '11, 2011), a function of
/// seed, sample and input.
/// </remarks>
public sealed record Sampling
{
    private Sampling(int samples, long seed, int threads) => (Samples, Seed, Threads) = (samples, seed, threads);

    /// <summary>How many samples.</summary>
    public int Samples { get; }

    /// <summary>Where the random numbers start from; any number.</summary>
    public long Seed { get; }

    /// <summary>The most threads that work at once.</summary>
    public int Threads { get; }

    /// <summary>Describes the sampling.</summary>
    /// <param name="samples">16 to 1,000,000; errors shrink with the square root of it.</param>
    /// <param name="seed">Any number; another gives another, equally good answer.</param>
    /// <param name="threads">1 to 256.</param>
    /// <returns>The sampling.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Sampling Of(int samples, long seed = 1, int threads = 1) =>
        new(
            Guard.Count(samples, 16, 1_000_000, "10,000 is typical.", nameof(samples)),
            seed,
            Guard.Count(threads, 1, 256, "Give the number of processor cores, or fewer.", nameof(threads)));

    /// <summary>Samples, seed and threads.</summary>
    /// <returns>For instance <c>10,000 samples, seed 1, threads 1</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Samples:N0} samples, seed {Seed}, threads {Threads}");
}
