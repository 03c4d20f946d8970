using System.Collections;

namespace FuelSizing.Logs;

/// <summary>A run's rows, each put together when asked for.</summary>
internal sealed class RunRows(RecordedRun run) : IReadOnlyList<RunRow>
{
    public int Count => run.Count;

    public RunRow this[int index] => run.RowAt(index);

    public IEnumerator<RunRow> GetEnumerator()
    {
        for (int i = 0; i < run.Count; i++)
        {
            yield return run.RowAt(i);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
