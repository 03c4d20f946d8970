using System.Globalization;
using CsCheck;
using Xunit.Sdk;

namespace FuelSizing.Tests;

/// <summary>Checks laws on cases drawn from a pinned seed: the same cases at every run, on any number of threads.</summary>
/// <remarks>
/// <para>CsCheck's own <c>Sample</c> draws fresh cases each time (a seed given to it fixes the first case only), so that a run of
/// the tests would be a lottery. These methods have its name, and stand nearer to the tests than its own, so the compiler takes
/// them; <c>PinnedSampleTests</c> makes sure that no test calls CsCheck's. The generators, and what makes one case smaller than
/// another, are CsCheck's.</para>
/// <para>Each case has a seed of its own, of which the generator draws all of it. The first case that fails is shrunk by
/// drawing smaller ones, from seeds that follow from its own, and the smallest that fails is named with its seed. To pin that
/// case, give its seed to a call of its own: <c>generator.Sample(law, seed: "…")</c>.</para>
/// <para>Fresh cases are the job of <c>.ci/explore</c>. <c>FUELSIZING_EXPLORE=7 dotnet test</c> repeats the cases of one of its
/// rounds, the one with base seed 7.</para>
/// </remarks>
public static class PinnedSample
{
    /// <summary>How many cases are drawn where a test does not say.</summary>
    private const int DefaultCases = 100;

    /// <summary>How many smaller cases are drawn of one that fails.</summary>
    private const int Shrinks = 1000;

    private static readonly ParallelOptions OnThePool = new() { TaskScheduler = TaskScheduler.Default };

    private static long _cases;

    /// <summary>Of which the seed of each case is made.</summary>
    public static ulong BaseSeed { get; set; } =
        Environment.GetEnvironmentVariable("FUELSIZING_EXPLORE") is { Length: > 0 } explored
            ? ulong.Parse(explored, CultureInfo.InvariantCulture)
            : 0;

    /// <summary>Cases tried so far in this process, shrinking left out.</summary>
    public static long Cases => Interlocked.Read(ref _cases);

    /// <summary>Passes if the law fails on none of the cases.</summary>
    /// <param name="generator">Draws a case.</param>
    /// <param name="law">Throws where it fails.</param>
    /// <param name="iter">How many cases.</param>
    /// <param name="threads">1 for a law that must not run beside itself.</param>
    /// <param name="seed">Of one case, to try no other.</param>
    /// <exception cref="XunitException">A case fails; the message has it, and its seed.</exception>
    public static void Sample<T>(
        this Gen<T> generator, Action<T> law, int iter = DefaultCases, int threads = -1, string? seed = null)
    {
        ArgumentNullException.ThrowIfNull(generator);
        ArgumentNullException.ThrowIfNull(law);
        if (seed is not null)
        {
            Interlocked.Increment(ref _cases);
            if (Failure(generator, law, PCG.Parse(seed)) is { } pinned)
            {
                throw pinned.Exception("The pinned case");
            }

            return;
        }

        Interlocked.Add(ref _cases, iter);
        ulong baseSeed = BaseSeed;
        ParallelOptions options = threads == -1 ? OnThePool : new() { TaskScheduler = TaskScheduler.Default, MaxDegreeOfParallelism = threads };
        long? first = Parallel.For(0L, iter, options, (number, loop) =>
        {
            if (Failure(generator, law, Chance(baseSeed, number)) is not null)
            {
                // Lower numbers are tried all the same, so that the first is the first.
                loop.Break();
            }
        }).LowestBreakIteration;
        if (first is { } failed)
        {
            Case<T> found = Failure(generator, law, Chance(baseSeed, failed))
                ?? throw new XunitException($"Case {failed} of {iter} failed once and holds now: the law depends on more than its case.");
            throw Smallest(generator, law, found).Exception($"Case {failed} of {iter}, base seed {baseSeed}, shrunk");
        }
    }

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T>(
        this Gen<T> generator, Func<T, bool> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(
            drawn =>
            {
                if (!law(drawn))
                {
                    throw new XunitException("The law does not hold.");
                }
            },
            iter,
            threads,
            seed);

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T1, T2>(
        this Gen<(T1, T2)> generator, Action<T1, T2> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(drawn => law(drawn.Item1, drawn.Item2), iter, threads, seed);

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T1, T2>(
        this Gen<(T1, T2)> generator, Func<T1, T2, bool> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(drawn => law(drawn.Item1, drawn.Item2), iter, threads, seed);

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T1, T2, T3>(
        this Gen<(T1, T2, T3)> generator, Action<T1, T2, T3> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(drawn => law(drawn.Item1, drawn.Item2, drawn.Item3), iter, threads, seed);

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T1, T2, T3>(
        this Gen<(T1, T2, T3)> generator, Func<T1, T2, T3, bool> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(drawn => law(drawn.Item1, drawn.Item2, drawn.Item3), iter, threads, seed);

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> generator, Action<T1, T2, T3, T4> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(drawn => law(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4), iter, threads, seed);

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> generator, Func<T1, T2, T3, T4, bool> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(drawn => law(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4), iter, threads, seed);

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> generator, Action<T1, T2, T3, T4, T5> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(drawn => law(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4, drawn.Item5), iter, threads, seed);

    /// <inheritdoc cref="Sample{T}(Gen{T}, Action{T}, int, int, string?)"/>
    public static void Sample<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> generator, Func<T1, T2, T3, T4, T5, bool> law, int iter = DefaultCases, int threads = -1, string? seed = null) =>
        generator.Sample(drawn => law(drawn.Item1, drawn.Item2, drawn.Item3, drawn.Item4, drawn.Item5), iter, threads, seed);

    /// <summary>The chance that a case is drawn from.</summary>
    /// <remarks>
    /// SplitMix64 (Steele, Lea and Flood, OOPSLA 2014): neighbouring numbers and base seeds give unrelated seeds, where those of
    /// PCG itself would begin alike.
    /// </remarks>
    private static PCG Chance(ulong baseSeed, long number)
    {
        ulong Mixed(ulong z)
        {
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }

        const ulong Golden = 0x9E3779B97F4A7C15;
        return new(1, Mixed(Mixed((baseSeed + 1) * Golden) + (((ulong)number + 1) * Golden)));
    }

    private static Case<T>? Failure<T>(Gen<T> generator, Action<T> law, PCG chance, Size? under = null)
    {
        string seed = chance.ToString();
        T? drawn = default;
        Size? size = null;
        try
        {
            drawn = generator.Generate(chance, under, out Size whole);
            size = whole;
            if (under is null || Size.IsLessThan(whole, under))
            {
                law(drawn);
            }

            return null;
        }
        catch (Exception error)
        {
            return new(seed, drawn, size, error);
        }
    }

    private static Case<T> Smallest<T>(Gen<T> generator, Action<T> law, Case<T> found)
    {
        ulong state = PCG.Parse(found.Seed).State;
        for (long number = 0; number < Shrinks && found.Size is not null; number++)
        {
            found = Failure(generator, law, Chance(state, number), found.Size) ?? found;
        }

        return found;
    }

    private sealed record Case<T>(string Seed, T? Drawn, Size? Size, Exception Error)
    {
        private const int MaximumCharacters = 5000;

        public XunitException Exception(string which)
        {
            string text = Size is null ? "it cannot be drawn" : Check.Print(Drawn!);
            return new(
                $"{which} to seed: \"{Seed}\" fails: {(text.Length > MaximumCharacters ? text[..MaximumCharacters] + " …" : text)}\n{Error.Message}", Error);
        }
    }
}
