using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The affinity laws: a pump's curve carried from the voltage at which it was measured to another.</summary>
/// <remarks>
/// Speed is taken as proportional to voltage; flow goes with speed, pressure and torque (and so current) with its square.
/// An estimate: friction and leakage do not scale so.
/// </remarks>
internal static class PumpScaling
{
    /// <summary>Speed ratio: s = V/V0.</summary>
    /// <param name="voltage">V, V.</param>
    /// <param name="measuredVoltage">V0, V.</param>
    public static T SpeedRatio<T>(T voltage, T measuredVoltage)
        where T : struct, IReal<T> => voltage / measuredVoltage;

    /// <summary>Pressure of the measured curve that answers to one at another speed: p0 = p/s².</summary>
    /// <param name="pressure">p, Pa.</param>
    /// <param name="speedRatio">s.</param>
    public static T MeasuredPressure<T>(T pressure, T speedRatio)
        where T : struct, IReal<T> => pressure / (speedRatio * speedRatio);

    /// <summary>Pressure at another speed: p = p0 s².</summary>
    /// <param name="measuredPressure">p0, Pa.</param>
    /// <param name="speedRatio">s.</param>
    public static T Pressure<T>(T measuredPressure, T speedRatio)
        where T : struct, IReal<T> => measuredPressure * speedRatio * speedRatio;

    /// <summary>Flow at another speed: Q = Q0 s.</summary>
    /// <param name="measuredFlow">Q0, m³/s.</param>
    /// <param name="speedRatio">s.</param>
    public static T Flow<T>(T measuredFlow, T speedRatio)
        where T : struct, IReal<T> => measuredFlow * speedRatio;

    /// <summary>Current at another speed: I = I0 s².</summary>
    /// <param name="measuredCurrent">I0, A.</param>
    /// <param name="speedRatio">s.</param>
    public static T Current<T>(T measuredCurrent, T speedRatio)
        where T : struct, IReal<T> => measuredCurrent * speedRatio * speedRatio;
}
