using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>Which time of an injector a controller asks for.</summary>
public enum TimeFigureKind
{
    /// <summary>Dead time: what is added to the open time.</summary>
    DeadTime,

    /// <summary>Minimum linear pulse, dead time included.</summary>
    MinimumPulse,
}

/// <summary>
/// A dead time or a minimum pulse to type into a controller, at one voltage and one differential pressure; none where nothing covers the place, with the reason: it is never extrapolated.
/// </summary>
public sealed class TimeFigure : IReadable
{
    internal TimeFigure(
        TimeFigureKind kind, ElectricPotential voltage, Pressure differential, Duration? time, Statement basis, Duration? minimum = null, Duration? maximum = null)
    {
        (Kind, Voltage, Differential, Time, Basis) = (kind, voltage, differential, time, basis);
        (Minimum, Maximum) = (minimum, maximum);
    }

    /// <summary>Which time it is.</summary>
    public TimeFigureKind Kind { get; }

    /// <summary>At the injector's driver.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>Across the injector.</summary>
    public Pressure Differential { get; }

    /// <summary>The time; none where nothing covers the place.</summary>
    public Duration? Time { get; }

    /// <summary>
    /// Of a dead time the lower end of its interval of 95 %, of a minimum pulse the longest pulse weighed that was not linear; none where it was not weighed at this place.
    /// </summary>
    public Duration? Minimum { get; }

    /// <summary>Upper end.</summary>
    public Duration? Maximum { get; }

    /// <summary>Where the figure and its interval come from, or why there is none.</summary>
    public Statement Basis { get; }

    /// <summary>Time, interval and where it comes from, as a code with its figures.</summary>
    public Statement Text => (Time, Minimum, Maximum) switch
    {
        (null, _, _) => Statement.Of("controller.time-none", $"no {Name} at {Voltage} and {Differential}: {Basis}"),
        ({ } time, { } low, { } high) => Statement.Of(
            "controller.time-interval",
            $"{Name} {time.Milliseconds:0.000} ms ({low.Milliseconds:0.000} ms to {high.Milliseconds:0.000} ms) at {Voltage} and {Differential}: {Basis}"),
        ({ } time, _, _) => Statement.Of("controller.time", $"{Name} {time.Milliseconds:0.000} ms at {Voltage} and {Differential}: {Basis}"),
    };

    private string Name => Kind == TimeFigureKind.DeadTime ? "dead time" : "minimum pulse";

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Time, interval and where it comes from.</summary>
    /// <returns>For instance <c>dead time 1.003 ms (0.998 ms to 1.008 ms) at 13.5 V and 300 kPa: the bench, 95 %</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
