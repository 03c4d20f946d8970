namespace FuelSizing.Findings;

/// <summary>A channel that is read less often than the log is written: between its readings it is blank, or holds the last.</summary>
/// <remarks>
/// A held reading is as old as it is long held, which in a pull is a wrong one. It is told by its changes: of a channel that is held no row changes
/// that comes just after a change. Between two readings the channel is taken to go straight.
/// </remarks>
internal sealed class SlowChannel
{
    /// <summary>Changes without which nothing is said of how a channel changes.</summary>
    private const int MinimumChanges = 10;

    /// <summary>Share of changes that may come just after another, as a device's clock drifts.</summary>
    private const double Close = 0.02;

    /// <summary>Rows in which the channel holds while the engine's speed moves, for each change.</summary>
    private const double Held = 0.8;

    /// <summary>So many rows are looked through for a reading, however long they take.</summary>
    private const int MaximumRows = 100;

    /// <summary>So many are at the most, of logs with thousands of rows a second.</summary>
    private const int MaximumFastRows = 4000;

    /// <summary>Readings that lie further apart say nothing of what is between, s.</summary>
    private const double MaximumTime = 1;

    private readonly Func<int, double> _recorded;
    private readonly Func<int, double> _time;
    private readonly int _rows;

    // Readings about the last row that had none: rows are asked for one after the other, and a stretch without readings may be a whole log.
    private (int Before, int After) _stretch;

    private SlowChannel(Func<int, double> recorded, Func<int, double> time, int rows, bool isHeld) =>
        (_recorded, _time, _rows, IsHeld) = (recorded, time, rows, isHeld);

    /// <summary>True of a channel that holds its last reading.</summary>
    public bool IsHeld { get; }

    /// <summary>Looks at how a channel changes.</summary>
    /// <param name="recorded">Its value in a row, NaN where it has none.</param>
    /// <param name="time">The row's time, s; NaN where there is none.</param>
    /// <param name="rows">How many there are.</param>
    /// <param name="moves">True of a row at which the engine turns at another speed than in the row before.</param>
    public static SlowChannel Of(Func<int, double> recorded, Func<int, double> time, int rows, Func<int, bool> moves)
    {
        (int changes, int close, int held) = (0, 0, 0);
        (double last, bool hasChanged) = (double.NaN, false);
        for (int row = 0; row < rows; row++)
        {
            double value = recorded(row);
            bool isChange = !double.IsNaN(last) && !double.IsNaN(value) && value != last;
            changes += isChange ? 1 : 0;
            close += isChange && hasChanged ? 1 : 0;
            held += value == last && moves(row) ? 1 : 0;
            (last, hasChanged) = (value, isChange);
        }

        return new(recorded, time, rows, changes >= MinimumChanges && close <= Close * changes && held >= Held * changes);
    }

    /// <summary>True if the row holds a reading of its own.</summary>
    public bool IsRead(int row)
    {
        double value = _recorded(row);
        return !double.IsNaN(value) && !(IsHeld && row > 0 && value == _recorded(row - 1));
    }

    /// <summary>The value at a row: its reading, or straight between those before and after; NaN where they lie too far apart.</summary>
    public double At(int row)
    {
        if (IsRead(row))
        {
            return _recorded(row);
        }

        (int before, int after) = Readings(row);
        if (before < 0 || after >= _rows || !IsNear(before, row) || !IsNear(after, row))
        {
            return double.NaN;
        }

        double gap = _time(after) - _time(before);
        double share = gap > 0 ? (_time(row) - _time(before)) / gap : (double)(row - before) / (after - before);

        // What a channel holds too long to be bridged is the best that is known; a blank stays blank.
        return gap <= MaximumTime ? _recorded(before) + (share * (_recorded(after) - _recorded(before))) : _recorded(row);
    }

    /// <summary>The value so much time after a row, straight between the rows about it; that of the row where there are no times.</summary>
    /// <param name="row">The row.</param>
    /// <param name="later">s.</param>
    public double At(int row, double later)
    {
        double time = _time(row) + later;
        int after = row;
        while (after + 1 < _rows && after - row < MaximumFastRows && _time(after) < time)
        {
            after++;
        }

        double gap = after > row ? _time(after) - _time(after - 1) : 0;
        return _time(after) < time || gap > MaximumTime ? double.NaN
            : gap > 0 ? At(after - 1) + ((At(after) - At(after - 1)) * (time - _time(after - 1)) / gap)
            : At(after);
    }

    /// <summary>Rows with a reading before and after one that has none; −1, and the number of rows, where there is none.</summary>
    private (int Before, int After) Readings(int row)
    {
        if (row <= _stretch.Before || row >= _stretch.After)
        {
            (int before, int after) = (row - 1, row + 1);
            while (before >= 0 && !IsRead(before))
            {
                before--;
            }

            while (after < _rows && !IsRead(after))
            {
                after++;
            }

            _stretch = (before, after);
        }

        return _stretch;
    }

    // A log with many rows a second has many between two readings that are close in time.
    private bool IsNear(int place, int row)
    {
        int rows = Math.Abs(place - row);
        return rows <= MaximumRows || (rows <= MaximumFastRows && Math.Abs(_time(place) - _time(row)) <= MaximumTime);
    }
}
