using FuelSizing.Engines;

namespace FuelSizing.Logs;

/// <summary>Gathers rows into columns, one for each channel that turns out to have a value.</summary>
internal sealed class RunColumns
{
    private readonly List<long> _lines = [];

    private readonly List<double>?[] _columns = new List<double>?[ChannelValues.Count];

    /// <summary>Rows gathered so far.</summary>
    public int Count => _lines.Count;

    /// <summary>Adds a row at the end.</summary>
    public void Add(in RunRow row)
    {
        for (int i = 0; i < ChannelValues.Count; i++)
        {
            double value = row[(Channel)i];
            if (_columns[i] is null && !double.IsNaN(value))
            {
                _columns[i] = [.. Enumerable.Repeat(double.NaN, _lines.Count)];
            }

            _columns[i]?.Add(value);
        }

        _lines.Add(row.Line);
    }

    /// <summary>The run of all rows gathered.</summary>
    public RecordedRun ToRun(string name, Atmosphere atmosphere, IReadOnlyList<RunProblem> problems, RunAccount account, bool isComplete) =>
        new(name, atmosphere, [.. _lines], [.. _columns.Select(c => c?.ToArray())], problems, account, isComplete);
}
