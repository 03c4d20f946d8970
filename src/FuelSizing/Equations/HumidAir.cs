using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The share that water vapour has in the air's pressure.</summary>
internal static class HumidAir
{
    private const double CelsiusZero = 273.15;

    /// <summary>Vapour pressure at saturation over water, Pa: 611.2 exp(17.62 t/(243.12 + t)), t in °C, −45 to 60 °C.</summary>
    /// <param name="temperature">Of the air, K.</param>
    /// <remarks>
    /// World Meteorological Organization, Guide to Meteorological Instruments and Methods of Observation, WMO-No. 8 (2008),
    /// annex 4.B, after Sonntag (1990). Written as Antoine's equation, which it is.
    /// </remarks>
    public static T SaturationPressure<T>(T temperature)
        where T : struct, IReal<T> =>
        VapourPressure.Antoine(
            (T)(Math.Log(611.2) + 17.62), 17.62 * 243.12, 243.12 - CelsiusZero, temperature);

    /// <summary>Pressure of the vapour in the air, Pa: p_v = φ p_s(T).</summary>
    /// <param name="relativeHumidity">φ, a share.</param>
    /// <param name="temperature">Of the air, K.</param>
    public static T PartialPressure<T>(T relativeHumidity, T temperature)
        where T : struct, IReal<T> => relativeHumidity * SaturationPressure(temperature);

    /// <summary>Pressure of the dry air alone, Pa: p_d = p − p_v.</summary>
    /// <param name="pressure">p, the barometer's, Pa.</param>
    /// <param name="vapour">p_v, Pa.</param>
    public static T DryPressure<T>(T pressure, T vapour)
        where T : struct, IReal<T> => pressure - vapour;
}
