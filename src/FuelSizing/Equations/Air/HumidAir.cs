using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The share that water vapour has in the air's pressure.</summary>
public static class HumidAir
{
    private const double CelsiusZero = 273.15;

    /// <summary>Saturation pressure of water vapour over water.
    /// <para><c>p_ws = 611.2 · exp(17.62 · (T − 273.15)/(243.12 + T − 273.15))</c></para>
    /// </summary>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel.</param>
    /// <returns><c>p_ws</c> (Pa): saturation pressure of water vapour.</returns>
    /// <remarks>
    /// <para>Range: 228 ≤ T ≤ 333 K (−45 to 60 °C).</para>
    /// <para>Outside: nothing is checked; the correlation is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = HumidAir.SaturationPressure&lt;Real&gt;(temperature: 293.15);
    /// // result = 2332.596 Pa
    /// </code>
    /// </example>
    /// <para>Source: World Meteorological Organization, Guide to Meteorological Instruments and Methods of Observation, WMO-No. 8
    /// (2008), annex 4.B, after Sonntag (1990).</para>
    /// </remarks>
    public static T SaturationPressure<T>(T temperature)
        where T : struct, IReal<T> =>
        VapourPressure.Antoine(
            (T)(Math.Log(611.2) + 17.62), 17.62 * 243.12, 243.12 - CelsiusZero, temperature);

    /// <summary>Partial pressure of water vapour in humid air.
    /// <para><c>p_w = φ · p_ws with p_ws = 611.2 · exp(17.62 · (T − 273.15)/(243.12 + T − 273.15))</c></para>
    /// </summary>
    /// <param name="relativeHumidity"><c>φ</c> (1): relative humidity.</param>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel.</param>
    /// <returns><c>p_w</c> (Pa): partial pressure of water vapour.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ φ ≤ 1, 228 ≤ T ≤ 333 K.</para>
    /// <para>Outside: nothing is checked; the correlation is carried on; φ over 1 would be fog.</para>
    /// <example>
    /// <code>
    /// Real result = HumidAir.PartialPressure&lt;Real&gt;(relativeHumidity: 0.5, temperature: 293.15);
    /// // result = 1166.298 Pa
    /// </code>
    /// </example>
    /// <para>Source: definition of relative humidity; SaturationPressure.</para>
    /// </remarks>
    public static T PartialPressure<T>(T relativeHumidity, T temperature)
        where T : struct, IReal<T> => relativeHumidity * SaturationPressure(temperature);

    /// <summary>Pressure of the dry air in humid air.
    /// <para><c>p_d = p − p_w</c></para>
    /// </summary>
    /// <param name="pressure"><c>p</c> (Pa): pressure of the air, absolute.</param>
    /// <param name="vapour"><c>p_w</c> (Pa): partial pressure of water vapour.</param>
    /// <returns><c>p_d</c> (Pa): pressure of the dry air.</returns>
    /// <remarks>
    /// <para>Range: p_w below p.</para>
    /// <para>Outside: nothing is checked; the difference may be negative.</para>
    /// <example>
    /// <code>
    /// Real result = HumidAir.DryPressure&lt;Real&gt;(pressure: 100e3, vapour: 1166);
    /// // result = 98834 Pa
    /// </code>
    /// </example>
    /// <para>Source: Dalton's law.</para>
    /// </remarks>
    public static T DryPressure<T>(T pressure, T vapour)
        where T : struct, IReal<T> => pressure - vapour;
}
