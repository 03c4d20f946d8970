using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>A centrifugal compressor: its work from the speed of its impeller's tip, and its pressure ratio from one known point.</summary>
public static class CentrifugalCompressor
{
    /// <summary>Work that an impeller with radial blades does on the air.
    /// <para><c>w_c = ψ · σ_s · U_2²</c></para>
    /// </summary>
    /// <param name="powerInputFactor"><c>ψ</c> (1): power input factor of the impeller; what friction at its disc adds, about 1.04.</param>
    /// <param name="slipFactor"><c>σ_s</c> (1): slip factor of the impeller; whirl of the air that leaves it ÷ tip speed.</param>
    /// <param name="tipSpeed"><c>U_2</c> (m/s): tip speed of the impeller.</param>
    /// <returns><c>w_c</c> (J/kg): work that the compressor does on a mass of air.</returns>
    /// <remarks>
    /// <para>Range: σ_s 0.85 to 0.95, ψ 1 to 1.05; radial blades, and air that enters without whirl.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = CentrifugalCompressor.EulerWork&lt;Real&gt;(powerInputFactor: 1.04, slipFactor: 0.9, tipSpeed: 400);
    /// // result = 149760 J/kg
    /// </code>
    /// </example>
    /// <para>Source: derived from Euler's equation of turbomachines.</para>
    /// </remarks>
    public static T EulerWork<T>(T powerInputFactor, T slipFactor, T tipSpeed)
        where T : struct, IReal<T> => powerInputFactor * slipFactor * (tipSpeed * tipSpeed);

    /// <summary>Pressure ratio that a compressor makes of its work.
    /// <para><c>r = (1 + η_c · w_c/(c_p · T_1))^(γ/(γ − 1))</c></para>
    /// </summary>
    /// <param name="compressorWork"><c>w_c</c> (J/kg): work that the compressor does on a mass of air.</param>
    /// <param name="isentropicEfficiency"><c>η_c</c> (1): isentropic efficiency of the compressor.</param>
    /// <param name="inletTemperature"><c>T_1</c> (K): temperature at the compressor inlet.</param>
    /// <returns><c>r</c> (1): pressure ratio of the compressor.</returns>
    /// <remarks>
    /// <para>Range: w_c of 0 or more, 0 &lt; η_c ≤ 1; air as a perfect gas, no heat through the housing.</para>
    /// <para>Outside: nothing is checked; a negative work gives a ratio below 1.</para>
    /// <example>
    /// <code>
    /// Real result = CentrifugalCompressor.PressureRatio&lt;Real&gt;(compressorWork: 149760, isentropicEfficiency: 0.75, inletTemperature: 288);
    /// // result = 3.151822
    /// </code>
    /// </example>
    /// <para>Source: derived from the energy balance of an adiabatic compressor and the isentropic relation of a perfect gas.</para>
    /// </remarks>
    public static T PressureRatio<T>(T compressorWork, T isentropicEfficiency, Divisor<T> inletTemperature)
        where T : struct, IReal<T> =>
        Compression.FromIsentropicRatio(1.0 + (isentropicEfficiency * compressorWork / StandardAir.HeatCapacity / inletTemperature));

    /// <summary>Pressure ratio at another speed and inlet temperature, from one known point of the same compressor.
    /// <para><c>r = (1 + (r_k^((γ − 1)/γ) − 1) · (N_c/N_k)² · T_k/T_1)^(γ/(γ − 1))</c></para>
    /// </summary>
    /// <param name="knownRatio"><c>r_k</c> (1): pressure ratio of the compressor at its known point.</param>
    /// <param name="knownSpeed"><c>N_k</c> (rev/s): compressor speed at its known point.</param>
    /// <param name="knownTemperature"><c>T_k</c> (K): temperature at the compressor inlet at its known point.</param>
    /// <param name="compressorSpeed"><c>N_c</c> (rev/s): compressor speed.</param>
    /// <param name="inletTemperature"><c>T_1</c> (K): temperature at the compressor inlet.</param>
    /// <returns><c>r</c> (1): pressure ratio of the compressor.</returns>
    /// <remarks>
    /// <para>
    /// Range: r_k over 1, speeds over 0; work coefficient and efficiency as at the known point, so between surge and choke and not
    /// far from it.
    /// </para>
    /// <para>Outside: nothing is checked; past choke or in surge a real compressor makes less.</para>
    /// <example>
    /// <code>
    /// Real result = CentrifugalCompressor.RatioAtSpeed&lt;Real&gt;(knownRatio: 1.5, knownSpeed: 500, knownTemperature: 288, compressorSpeed: 600, inletTemperature: 308);
    /// // result = 1.708595
    /// </code>
    /// </example>
    /// <para>Source: derived from Euler's equation of turbomachines at a constant work coefficient and efficiency.</para>
    /// </remarks>
    public static T RatioAtSpeed<T>(
        T knownRatio, Divisor<T> knownSpeed, T knownTemperature, T compressorSpeed, Divisor<T> inletTemperature)
        where T : struct, IReal<T>
    {
        T speeds = compressorSpeed / knownSpeed;
        return Compression.FromIsentropicRatio(
            1.0 + ((Compression.IsentropicRatio(knownRatio) - 1.0) * (speeds * speeds) * knownTemperature / inletTemperature));
    }
}
