using FuelSizing.Interactive;

namespace FuelSizing.Notebooks;

/// <summary>Writes how far the work of a cell is behind the cell's number, in the same line of the console and not too often: a log of the run keeps it all.</summary>
/// <param name="output">Where to.</param>
/// <param name="interval">At least so long between two words; what is finished before that says nothing.</param>
internal sealed class ProgressText(TextWriter output, TimeSpan interval)
{
    private readonly Lock _gate = new();
    private string? _name;
    private TimeSpan _next;
    private bool _isOpen;

    /// <summary>A cell begins.</summary>
    public void Begin()
    {
        lock (_gate)
        {
            (_name, _isOpen) = (null, true);
        }
    }

    /// <summary>The cell is done; a line that comes late is not written.</summary>
    public void End()
    {
        lock (_gate)
        {
            if (_name is not null)
            {
                output.Write("; ");
            }

            _isOpen = false;
        }
    }

    public void Take(ProgressLine line)
    {
        lock (_gate)
        {
            bool isNew = line.Name != _name;
            if (!_isOpen || line.State != ProgressState.Runs || line.Elapsed < (isNew ? interval : _next))
            {
                return;
            }

            string how = line.Share is null ? $"{line.Elapsed.TotalSeconds:0} s" : $"{Math.Floor(100 * line.Share.Value):0} %";
            output.Write(isNew ? $"{(_name is null ? string.Empty : "; ")}{line.Name}: {how}" : $", {how}");
            output.Flush();
            (_name, _next) = (line.Name, line.Elapsed + interval);
        }
    }
}
