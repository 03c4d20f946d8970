namespace FuelSizing.Pumps;

/// <summary>What is known of a pump's curve at the point where it runs.</summary>
[Flags]
internal enum PumpCoverage
{
    /// <summary>A measured curve covers it.</summary>
    Measured = 0,

    /// <summary>The affinity laws carried a measured curve to this voltage.</summary>
    Scaled = 1,

    /// <summary>The voltage is over that of every curve; the highest one was used, and the pump delivers no less.</summary>
    VoltageAbove = 2,

    /// <summary>The voltage is too far under that of every curve.</summary>
    VoltageBelow = 4,

    /// <summary>The curve ends before this pressure with flow to spare.</summary>
    PressureAbove = 8,

    /// <summary>The curve begins only at a higher pressure.</summary>
    PressureBelow = 16,

    /// <summary>Data that says nothing of this point.</summary>
    NotCovered = VoltageBelow | PressureAbove | PressureBelow,
}

/// <summary>One pump where it runs, in SI numbers.</summary>
/// <param name="Pump">Which.</param>
/// <param name="Flow">m³/s.</param>
/// <param name="Rise">Pa.</param>
/// <param name="Voltage">At the motor, V.</param>
/// <param name="Current">A; null where it was not measured.</param>
/// <param name="Coverage">What is known of the curve there.</param>
internal readonly record struct PumpPoint(
    Pump Pump, double Flow, double Rise, double Voltage, double? Current, PumpCoverage Coverage);
