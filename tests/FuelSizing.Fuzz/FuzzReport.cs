using System.Globalization;

namespace FuelSizing.Fuzz;

/// <summary>What became of many inputs.</summary>
internal sealed class FuzzReport
{
    private readonly HashSet<string> _kinds = [];
    private readonly Dictionary<string, FuzzFault> _faults = [];

    /// <summary>Inputs that were read.</summary>
    public long Accepted { get; private set; }

    /// <summary>Inputs that were refused by the documented exception.</summary>
    public long Refused { get; private set; }

    /// <summary>The longest that one input took, the shortest of three readings of it.</summary>
    public TimeSpan Slowest { get; set; }

    /// <summary>Bytes of that input.</summary>
    public int SlowestLength { get; set; }

    /// <summary>The most memory that one input had allocated.</summary>
    public long MaximumAllocated { get; set; }

    /// <summary>Kinds of answer.</summary>
    public int Kinds => _kinds.Count;

    /// <summary>Faults, each kind once.</summary>
    public IReadOnlyCollection<FuzzFault> Faults => _faults.Values;

    /// <summary>Counts an answer, and gives the kinds that are new.</summary>
    public IReadOnlyList<string> Count(Reading reading)
    {
        _ = reading.Accepted ? Accepted++ : Refused++;
        List<string> fresh = [];
        foreach (string kind in reading.Kinds)
        {
            if (_kinds.Add(kind))
            {
                fresh.Add(kind);
            }
        }

        return fresh;
    }

    /// <summary>Keeps a fault; false where it is known.</summary>
    public bool Add(FuzzFault fault) => _faults.TryAdd(fault.Kind, fault);

    /// <summary>A line of the page of figures.</summary>
    public string Row(string reader, long count, ulong seed) => string.Create(
        CultureInfo.InvariantCulture,
        $"| {reader} | {count:N0} | {seed} | {Accepted:N0} | {Refused:N0} | {Kinds} | {Slowest.TotalMilliseconds:0.0} ms of {SlowestLength:N0} bytes | {MaximumAllocated / 1e6:0.0} MB | {Faults.Count} |");
}
