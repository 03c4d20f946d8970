using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>Plots of a recorded run against time, with the plan beside it.</summary>
/// <remarks>
/// The plan is what the sized system does at the very speed, manifold pressure, voltage and fuel temperature of each row shown; where it
/// knows nothing of a row, its curve has a gap. Of a long run the least and the greatest value of each stretch are shown, so that a
/// short excursion is never lost.
/// </remarks>
public static class RunPlots
{
    private static readonly Channel[] Default = [Channel.Speed, Channel.Lambda, Channel.RailGauge, Channel.DutyCycle];

    /// <summary>Speed, lambda, rail pressure and duty cycle against time, as far as the run holds them.</summary>
    /// <param name="run">The run. Duty cycle is also taken from the pulse, where a plan says how many strokes a cycle has.</param>
    /// <param name="check">The plan to show beside the record; none if left out.</param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>One to four plots, each of which can be shown by itself.</returns>
    /// <exception cref="ArgumentException">The run has no rows.</exception>
    /// <exception cref="ArgumentNullException">There is no run.</exception>
    public static IReadOnlyList<LinePlot> Traces(RecordedRun run, RunCheck? check = null, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(run);
        return [.. Default.Where(channel => channel == Channel.Speed || RunTrace.IsIn(run, channel, check)).Select(channel => Trace(run, channel, check, style))];
    }

    /// <summary>One channel against time.</summary>
    /// <param name="run">The run.</param>
    /// <param name="channel">Any but time; the run must hold it.</param>
    /// <param name="check">
    /// The plan to show beside the record; none if left out. It has a curve of rail pressure, pulse, duty cycle (with its limit), lambda
    /// and fuel.
    /// </param>
    /// <param name="style">Units and culture; those of the notebook if not given (<see cref="Units.Use"/>).</param>
    /// <returns>The plot. A run without time is shown against the lines of its file.</returns>
    /// <exception cref="ArgumentException">The run has no row with that channel.</exception>
    /// <exception cref="ArgumentNullException">There is no run.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The channel is time, or none.</exception>
    public static LinePlot Trace(RecordedRun run, Channel channel, RunCheck? check = null, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(run);
        if (channel == Channel.Time || !Enum.IsDefined(channel))
        {
            throw new ArgumentOutOfRangeException(
                nameof(channel), channel, $"channel is {channel}; it must be a recorded channel other than time. Time is what the others are shown against.");
        }

        return new RunTrace(run, channel, check, style ?? Units.Current).Plot();
    }
}
