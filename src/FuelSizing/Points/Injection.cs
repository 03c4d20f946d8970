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

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
