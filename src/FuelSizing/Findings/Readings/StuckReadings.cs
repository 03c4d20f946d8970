namespace FuelSizing.Findings;

/// <summary>Readings that a channel gives whatever the truth is: a sensor at the end of its range, or a channel that never moves.</summary>
internal readonly record struct StuckReadings
{
    /// <summary>Readings that must be the same for a channel that never moves to be called so.</summary>
    private const int AlwaysSame = 20;

    /// <summary>Engine speeds that such a run must go over, rev/s; a steady engine may well give one reading.</summary>
    private const double SpeedRange = 500 / 60.0;

    /// <summary>Readings in a row at the end of what a run holds, where no other value comes so often in a row.</summary>
    private const int InARow = 5;

    private StuckReadings(double end, bool never) => (End, NeverMoves) = (end, never);

    /// <summary>The value that the channel sticks at; NaN where it does not stick.</summary>
    public double End { get; }

    /// <summary>True where the channel gives one value for the whole run, while the engine's speed changes.</summary>
    public bool NeverMoves { get; }

    /// <summary>True of a reading that says nothing.</summary>
    public bool Holds(double value) => value == End;

    /// <summary>Looks for where a channel sticks.</summary>
    /// <param name="values">SI, NaN where there is none.</param>
    /// <param name="speeds">rev/s.</param>
    /// <param name="isMaximum">True to look at the upper end of what the run holds, false for the lower.</param>
    /// <param name="surely">True for an end at which three readings in a row are enough.</param>
    public static StuckReadings Of(ReadOnlySpan<double> values, ReadOnlySpan<double> speeds, bool isMaximum, Func<double, bool> surely)
    {
        double end = double.NaN;
        int count = 0;
        bool same = true;
        (double slowest, double fastest) = (double.PositiveInfinity, double.NegativeInfinity);
        for (int i = 0; i < values.Length; i++)
        {
            double value = values[i];
            if (double.IsNaN(value))
            {
                continue;
            }

            same &= count == 0 || value == end;
            end = count == 0 || (isMaximum ? value > end : value < end) ? value : end;
            count++;
            (slowest, fastest) = (Math.Min(slowest, speeds[i]), Math.Max(fastest, speeds[i]));
        }

        if (count >= AlwaysSame && same && fastest - slowest > SpeedRange)
        {
            return new(end, never: true);
        }

        (int ofEnd, int ofOthers) = Repeats(values, end);
        return (ofEnd >= 3 && surely(end)) || (ofEnd >= InARow && ofOthers < 3) ? new(end, never: false) : new(double.NaN, never: false);
    }

    // The longest rows of one and the same reading: of the end, and of any other value.
    private static (int OfEnd, int OfOthers) Repeats(ReadOnlySpan<double> values, double end)
    {
        (int ofEnd, int ofOthers, int now, double last) = (0, 0, 0, double.NaN);
        foreach (double value in values)
        {
            if (double.IsNaN(value))
            {
                continue;
            }

            now = value == last ? now + 1 : 1;
            last = value;
            (ofEnd, ofOthers) = value == end ? (Math.Max(ofEnd, now), ofOthers) : (ofEnd, Math.Max(ofOthers, now));
        }

        return (ofEnd, ofOthers);
    }
}
