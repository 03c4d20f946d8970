using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Compressing the charge and cooling it.</summary>
internal static class Compression
{
    private const double Exponent = (StandardAir.HeatCapacityRatio - 1) / StandardAir.HeatCapacityRatio;

    /// <summary>
    /// Pressure ratio of the compressor: (manifold + cooler loss)/inlet, and never below 1: under throttle the
    /// compressor is idle.
    /// </summary>
    /// <param name="manifoldAbsolute">Pa.</param>
    /// <param name="coolerLoss">Pressure lost between compressor and manifold, Pa.</param>
    /// <param name="inletAbsolute">Pa.</param>
    public static T PressureRatio<T>(T manifoldAbsolute, T coolerLoss, Divisor<T> inletAbsolute)
        where T : struct, IReal<T> => T.Max(1, (manifoldAbsolute + coolerLoss) / inletAbsolute);

    /// <summary>Compressor outlet temperature, K: T2 = T1 (1 + (r^((γ−1)/γ) − 1)/η).</summary>
    /// <param name="inletTemperature">T1, K.</param>
    /// <param name="pressureRatio">r.</param>
    /// <param name="isentropicEfficiency">η.</param>
    public static T OutletTemperature<T>(T inletTemperature, T pressureRatio, Divisor<T> isentropicEfficiency)
        where T : struct, IReal<T> => Heated(inletTemperature, IsentropicRatio(pressureRatio), isentropicEfficiency);

    /// <summary>Temperature ratio of a compressor without loss: r^((γ−1)/γ).</summary>
    /// <param name="pressureRatio">r.</param>
    public static T IsentropicRatio<T>(T pressureRatio)
        where T : struct, IReal<T> => Powers.Of(pressureRatio, Exponent);

    /// <summary>As <see cref="IsentropicRatio{T}(T)"/>, of many compressors at once.</summary>
    /// <param name="ratios">Pressure ratios, a whole number of vectors; the temperature ratios take their place.</param>
    public static void IsentropicRatios<T>(Span<double> ratios)
        where T : struct, ILanes<T>, IReal<T> => Elementary.Power<T>(ratios, Exponent);

    /// <summary>Compressor outlet temperature, K: T2 = T1 (1 + (t − 1)/η).</summary>
    /// <param name="inletTemperature">T1, K.</param>
    /// <param name="isentropicRatio">t.</param>
    /// <param name="isentropicEfficiency">η.</param>
    public static T Heated<T>(T inletTemperature, T isentropicRatio, Divisor<T> isentropicEfficiency)
        where T : struct, IReal<T> => inletTemperature * (1.0 + ((isentropicRatio - 1.0) / isentropicEfficiency));

    /// <summary>Temperature behind the charge cooler, K: T3 = T2 − ε (T2 − Tc).</summary>
    /// <param name="outletTemperature">Compressor outlet T2, K.</param>
    /// <param name="coolantTemperature">Cooling air or water Tc, K.</param>
    /// <param name="effectiveness">ε, 0 (no cooler) to 1.</param>
    public static T CooledTemperature<T>(T outletTemperature, T coolantTemperature, T effectiveness)
        where T : struct, IReal<T> =>
        outletTemperature - (effectiveness * (outletTemperature - coolantTemperature));

    /// <summary>Power taken to drive the compressor, W: ṁ cp (T2 − T1)/η_m.</summary>
    /// <param name="airMassFlow">ṁ, kg/s.</param>
    /// <param name="inletTemperature">T1, K.</param>
    /// <param name="outletTemperature">T2, K.</param>
    /// <param name="mechanicalEfficiency">Of the drive, η_m.</param>
    public static T DrivePower<T>(T airMassFlow, T inletTemperature, T outletTemperature, Divisor<T> mechanicalEfficiency)
        where T : struct, IReal<T> =>
        airMassFlow * StandardAir.HeatCapacity * (outletTemperature - inletTemperature) / mechanicalEfficiency;
}
