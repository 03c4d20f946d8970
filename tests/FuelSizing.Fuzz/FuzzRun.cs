using System.Diagnostics;
using CsCheck;

namespace FuelSizing.Fuzz;

/// <summary>
/// Gives a reader the kept corpus and then mutated copies of it. An input that brings out a kind of answer not met before joins
/// those that are mutated. The same count, seed and corpus give the same inputs.
/// </summary>
internal sealed class FuzzRun
{
    private const long MaximumAllocated = 512 << 20;
    private const int LongestOfPool = 20_000;

    private readonly FuzzedReader _reader;
    private readonly Action<long, byte[]>? _before;
    private readonly List<byte[]> _good = [];
    private readonly List<byte[]> _pool = [];
    private readonly FuzzReport _report = new();

    /// <summary>A run of a reader.</summary>
    /// <param name="reader">The reader.</param>
    /// <param name="before">Told the number and bytes of each input before it is read.</param>
    public FuzzRun(FuzzedReader reader, Action<long, byte[]>? before = null) => (_reader, _before) = (reader, before);

    /// <summary>Told each input that brings out a new kind of answer, beyond the kept ones.</summary>
    public Action<string, byte[]>? Novel { get; init; }

    /// <summary>Told each fault, with its input made small.</summary>
    public Action<FuzzFault, byte[]>? Fault { get; init; }

    /// <summary>Told how many inputs were read, after every ten thousand.</summary>
    public Action<long, FuzzReport>? Progress { get; init; }

    /// <summary>Runs.</summary>
    /// <param name="corpus">Kept inputs, one or more of which can be read.</param>
    /// <param name="count">Mutated inputs in addition.</param>
    /// <param name="seed">Of chance.</param>
    public FuzzReport Run(IReadOnlyList<byte[]> corpus, long count, ulong seed)
    {
        for (int kept = 0; kept < corpus.Count; kept++)
        {
            Give(kept - corpus.Count, corpus[kept], isKept: true);
        }

        if (_good.Count == 0)
        {
            throw new ArgumentException("The corpus has no input that can be read.", nameof(corpus));
        }

        // Something beside what is good, whatever the corpus holds.
        _pool.Add([]);

        Gen<byte[]> mutated = _reader.Mutated(_good, _pool);
        int pool = _pool.Count + _good.Count;
        PCG chance = new(1, seed);
        for (long number = 1; number <= count; number++)
        {
            if (pool != _pool.Count + _good.Count)
            {
                (mutated, pool) = (_reader.Mutated(_good, _pool), _pool.Count + _good.Count);
            }

            Give(number, mutated.Generate(chance, null, out _), isKept: false);
            if (number % 10_000 == 0)
            {
                Progress?.Invoke(number, _report);
            }
        }

        return _report;
    }

    private void Give(long number, byte[] input, bool isKept)
    {
        _before?.Invoke(number, input);
        long began = Stopwatch.GetTimestamp();
        long allocated = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            Reading reading = _reader.Read(input);
            TimeSpan took = Stopwatch.GetElapsedTime(began);
            allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
            BrokenPromiseException.Unless(allocated <= MaximumAllocated, $"One input allocates no more than {MaximumAllocated >> 20} MB.");
            _report.MaximumAllocated = Math.Max(_report.MaximumAllocated, allocated);
            if (number > 0 && took > _report.Slowest && Again(input, took) is var shortest && shortest > _report.Slowest)
            {
                (_report.Slowest, _report.SlowestLength) = (shortest, input.Length);
            }

            IReadOnlyList<string> fresh = _report.Count(reading);
            if (!isKept && fresh.Count > 0)
            {
                Novel?.Invoke(fresh[0], input);
            }

            if ((isKept || fresh.Count > 0) && input.Length <= LongestOfPool)
            {
                (reading.Accepted ? _good : _pool).Add(input);
            }
        }
#pragma warning disable CA1031 // Whatever a reader throws beside its documented exception is what is looked for.
        catch (Exception thrown)
#pragma warning restore CA1031
        {
            FuzzFault fault = FuzzFault.Of(thrown, number);
            if (_report.Add(fault))
            {
                Fault?.Invoke(fault, isKept ? input : Shrinking.Shrunk(input, _reader, smaller => FaultOf(smaller)?.Kind == fault.Kind));
            }
        }
    }

    /// <summary>The fault that an input brings out; none if the reader keeps its promises.</summary>
    private FuzzFault? FaultOf(byte[] input)
    {
        try
        {
            _reader.Read(input);
            return null;
        }
#pragma warning disable CA1031 // As above.
        catch (Exception thrown)
#pragma warning restore CA1031
        {
            return FuzzFault.Of(thrown, 0);
        }
    }

    // A machine that does something else, or a collection of garbage, is no slowness of the reader.
    private TimeSpan Again(byte[] input, TimeSpan took)
    {
        for (int time = 0; time < 2; time++)
        {
            long began = Stopwatch.GetTimestamp();
            _reader.Read(input);
            TimeSpan again = Stopwatch.GetElapsedTime(began);
            took = again < took ? again : took;
        }

        return took;
    }
}
