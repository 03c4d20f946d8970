using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Air as a perfect gas, and the standard atmosphere below 11 km (ISO 2533:1975).</summary>
public static class StandardAir
{
    /// <summary><c>R_a</c> (J/(kg·K)): specific gas constant of dry air. ISO 2533.</summary>
    public const double GasConstant = 287.05287;

    /// <summary><c>γ</c> (1): ratio of specific heats of air. ISO 2533.</summary>
    public const double HeatCapacityRatio = 1.4;

    /// <summary><c>c_p</c> (J/(kg·K)): specific heat of air at constant pressure. γ R_a/(γ − 1).</summary>
    public const double HeatCapacity = HeatCapacityRatio * GasConstant / (HeatCapacityRatio - 1);

    /// <summary><c>p_SL</c> (Pa): pressure at sea level. ISO 2533.</summary>
    public const double SeaLevelPressure = 101_325;

    /// <summary><c>T_SL</c> (K): temperature at sea level. ISO 2533.</summary>
    public const double SeaLevelTemperature = 288.15;

    /// <summary><c>β</c> (K/m): fall of temperature with altitude. ISO 2533.</summary>
    public const double LapseRate = 0.0065;

    /// <summary><c>g</c> (m/s²): standard acceleration of free fall. ISO 2533.</summary>
    public const double Gravity = 9.80665;

    /// <summary>Temperature of the standard atmosphere.
    /// <para><c>T = T_SL − β · h</c></para>
    /// </summary>
    /// <param name="altitude"><c>h</c> (m): geopotential altitude.</param>
    /// <returns><c>T</c> (K): temperature of the air or fuel.</returns>
    /// <remarks>
    /// <para>Range: −2,000 ≤ h ≤ 11,000 m.</para>
    /// <para>Outside: nothing is checked; the line is carried on; above 11 km the standard has another law.</para>
    /// <example>
    /// <code>
    /// Real result = StandardAir.Temperature&lt;Real&gt;(altitude: 1000);
    /// // result = 281.65 K
    /// </code>
    /// </example>
    /// <para>Source: ISO 2533:1975.</para>
    /// </remarks>
    public static T Temperature<T>(T altitude)
        where T : struct, IReal<T> => SeaLevelTemperature - (LapseRate * altitude);

    /// <summary>Pressure of the standard atmosphere.
    /// <para><c>p = p_SL · ((T_SL − β · h)/T_SL)^(g/(R_a · β))</c></para>
    /// </summary>
    /// <param name="altitude"><c>h</c> (m): geopotential altitude.</param>
    /// <returns><c>p</c> (Pa): pressure of the air, absolute.</returns>
    /// <remarks>
    /// <para>Range: −2,000 ≤ h ≤ 11,000 m.</para>
    /// <para>Outside: nothing is checked; the law is carried on; above 11 km the standard has another.</para>
    /// <example>
    /// <code>
    /// Real result = StandardAir.Pressure&lt;Real&gt;(altitude: 1000);
    /// // result = 89874.56 Pa
    /// </code>
    /// </example>
    /// <para>Source: ISO 2533:1975.</para>
    /// </remarks>
    public static T Pressure<T>(T altitude)
        where T : struct, IReal<T> =>
        SeaLevelPressure
        * T.Power(Temperature(altitude) / SeaLevelTemperature, (T)(Gravity / (GasConstant * LapseRate)));

    /// <summary>Density of dry air as a perfect gas.
    /// <para><c>ρ_air = p/(R_a · T)</c></para>
    /// </summary>
    /// <param name="pressure"><c>p</c> (Pa): pressure of the air, absolute.</param>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel.</param>
    /// <returns><c>ρ_air</c> (kg/m³): density of air.</returns>
    /// <remarks>
    /// <para>Range: T over 0; within 0.5 % below 1 MPa and above 250 K.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = StandardAir.Density&lt;Real&gt;(pressure: 89874.56, temperature: 281.65);
    /// // result = 1.11164 kg/m³
    /// </code>
    /// </example>
    /// <para>Source: ideal gas law; gas constant of ISO 2533.</para>
    /// </remarks>
    public static T Density<T>(T pressure, T temperature)
        where T : struct, IReal<T> => pressure / (GasConstant * temperature);
}
