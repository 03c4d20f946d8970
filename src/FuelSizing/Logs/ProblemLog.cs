using FuelSizing.Quantities;

namespace FuelSizing.Logs;

/// <summary>Hears of every problem, keeps the first ones word for word and counts them all.</summary>
internal sealed class ProblemLog(Action<RunProblem>? eachProblem)
{
    /// <summary>How many problems stay in memory.</summary>
    public const int Maximum = 1000;

    private readonly List<RunProblem> _problems = [];

    private readonly long[] _byKind = new long[(int)RunProblemKind.ReversedTime + 1];

    /// <summary>The first problems.</summary>
    public IReadOnlyList<RunProblem> Problems => _problems.AsReadOnly();

    /// <summary>Values that rows came through without.</summary>
    private long ValuesLeftOut { get; set; }

    /// <summary>All problems.</summary>
    private long Count { get; set; }

    /// <summary>Whether a further problem need be put in words: it is kept, or somebody hears of each.</summary>
    public bool IsHeard => eachProblem is not null || _problems.Count < Maximum;

    /// <summary>The account so far of a reading that came to so many rows.</summary>
    public RunAccount Account(long rows, long rowsUsed) => new(rows, rowsUsed, ValuesLeftOut, Count, [.. _byKind]);

    /// <summary>Takes down a problem; its reason may be none while nobody hears it.</summary>
    public void Add(long line, int column, string field, RunProblemKind kind, ProblemEffect effect, Statement? reason)
    {
        _byKind[(int)kind]++;
        Count++;
        ValuesLeftOut += effect == ProblemEffect.ValueLeftOut ? 1 : 0;
        if (!IsHeard)
        {
            return;
        }

        var problem = new RunProblem(line, column, field, kind, effect, reason!);
        eachProblem?.Invoke(problem);
        if (_problems.Count < Maximum)
        {
            _problems.Add(problem);
        }
    }
}
