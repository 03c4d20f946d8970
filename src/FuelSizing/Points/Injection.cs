namespace FuelSizing.Points;

/// <summary>How the fuel goes in at one rail pressure, in SI numbers.</summary>
internal readonly record struct Injection
{
    // Not a number where there is none, for a number that may be missing takes twice the room.
    private readonly double _deadTime;
    private readonly double _pulse;
    private readonly double _dutyCycle;
    private readonly double _capacity;

    /// <summary>Takes what is known; not a number is what is not.</summary>
    public Injection(
        double differential,
        double staticFlow,
        double availableTime,
        double deadTime = double.NaN,
        double pulse = double.NaN,
        double dutyCycle = double.NaN,
        double capacity = double.NaN)
    {
        (Differential, StaticFlow, AvailableTime) = (differential, staticFlow, availableTime);
        (_deadTime, _pulse, _dutyCycle, _capacity) = (deadTime, pulse, dutyCycle, capacity);
    }

    /// <summary>Across the injector, Pa.</summary>
    public double Differential { get; }

    /// <summary>Of one injector, m³/s; not a number below the differential from which its flow is known.</summary>
    public double StaticFlow { get; }

    /// <summary>s.</summary>
    public double AvailableTime { get; }

    /// <summary>s; null where the table does not cover the point.</summary>
    public double? DeadTime => Known(_deadTime);

    /// <summary>s; null where there is no dead time or no flow.</summary>
    public double? Pulse => Known(_pulse);

    /// <summary>Null where there is no pulse.</summary>
    public double? DutyCycle => Known(_dutyCycle);

    /// <summary>Fuel that the injectors can pass at the duty limit, m³/s; null where there is no dead time or no flow.</summary>
    public double? Capacity => Known(_capacity);

    /// <summary>Fuel that this set is to inject, m³/s: all of it where there is no other.</summary>
    public double Injected { get; init; }

    /// <summary>The secondary set at the same pressure; null where there is none.</summary>
    public SecondaryState? Secondary { get; init; }

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}

/// <summary>A secondary set of injectors at one rail pressure, in SI numbers.</summary>
/// <param name="Share">Of the fuel, that it carries; not a number where that is not known.</param>
/// <param name="Injection">How its fuel goes in; no pulse where it is idle.</param>
/// <param name="PrimaryAtBegin">What the primary set passes at the duty cycle at which the hand-over begins, m³/s; not a number where it follows boost.</param>
internal sealed record SecondaryState(double Share, Injection Injection, double PrimaryAtBegin)
{
    /// <summary>True below the begin of the hand-over.</summary>
    public bool IsIdle => Share == 0;
}
