using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Compressing the charge and cooling it.</summary>
public static class Compression
{
    private const double Exponent = (StandardAir.HeatCapacityRatio - 1) / StandardAir.HeatCapacityRatio;

    /// <summary>Pressure ratio of the compressor, which also overcomes the charge cooler.
    /// <para><c>r = max(1; (p_3 + Δp_c)/p_1)</c></para>
    /// </summary>
    /// <param name="manifoldAbsolute"><c>p_3</c> (Pa): pressure in the manifold, absolute.</param>
    /// <param name="coolerLoss"><c>Δp_c</c> (Pa): pressure drop of the charge cooler.</param>
    /// <param name="inletAbsolute"><c>p_1</c> (Pa): pressure at the compressor inlet, absolute.</param>
    /// <returns><c>r</c> (1): pressure ratio of the compressor.</returns>
    /// <remarks>
    /// <para>Range: pressures over 0.</para>
    /// <para>Outside: nothing is checked; under throttle, where the quotient is below 1, the compressor idles and the result is 1.</para>
    /// <example>
    /// <code>
    /// Real result = Compression.PressureRatio&lt;Real&gt;(manifoldAbsolute: 150e3, coolerLoss: 10e3, inletAbsolute: 100e3);
    /// // result = 1.6
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T PressureRatio<T>(T manifoldAbsolute, T coolerLoss, Divisor<T> inletAbsolute)
        where T : struct, IReal<T> => T.Max(1, (manifoldAbsolute + coolerLoss) / inletAbsolute);

    /// <summary>Temperature at the compressor outlet.
    /// <para><c>T_2 = T_1 · (1 + (r^((γ − 1)/γ) − 1)/η_c)</c></para>
    /// </summary>
    /// <param name="inletTemperature"><c>T_1</c> (K): temperature at the compressor inlet.</param>
    /// <param name="pressureRatio"><c>r</c> (1): pressure ratio of the compressor.</param>
    /// <param name="isentropicEfficiency"><c>η_c</c> (1): isentropic efficiency of the compressor.</param>
    /// <returns><c>T_2</c> (K): temperature at the compressor outlet.</returns>
    /// <remarks>
    /// <para>Range: r ≥ 1, 0 &lt; η_c ≤ 1; air as a perfect gas, good to 1 % below 500 K.</para>
    /// <para>Outside: nothing is checked; r below 1 gives a temperature below T_1.</para>
    /// <example>
    /// <code>
    /// Real result = Compression.OutletTemperature&lt;Real&gt;(inletTemperature: 300, pressureRatio: 2, isentropicEfficiency: 0.7);
    /// // result = 393.8630 K
    /// </code>
    /// </example>
    /// <para>Source: derived from the isentropic relation of a perfect gas and the definition of efficiency.</para>
    /// </remarks>
    public static T OutletTemperature<T>(T inletTemperature, T pressureRatio, Divisor<T> isentropicEfficiency)
        where T : struct, IReal<T> => Heated(inletTemperature, IsentropicRatio(pressureRatio), isentropicEfficiency);

    /// <summary>Temperature ratio of an isentropic compressor.
    /// <para><c>τ = r^((γ − 1)/γ)</c></para>
    /// </summary>
    /// <param name="pressureRatio"><c>r</c> (1): pressure ratio of the compressor.</param>
    /// <returns><c>τ</c> (1): temperature ratio of an isentropic compressor.</returns>
    /// <remarks>
    /// <para>Range: r over 0; air as a perfect gas.</para>
    /// <para>Outside: nothing is checked; r of 0 or less is not a number.</para>
    /// <example>
    /// <code>
    /// Real result = Compression.IsentropicRatio&lt;Real&gt;(pressureRatio: 2);
    /// // result = 1.219014
    /// </code>
    /// </example>
    /// <para>Source: isentropic relation of a perfect gas.</para>
    /// </remarks>
    public static T IsentropicRatio<T>(T pressureRatio)
        where T : struct, IReal<T> => T.Power(pressureRatio, Exponent);

    /// <summary>As <see cref="IsentropicRatio{T}(T)"/>, of many compressors at once.</summary>
    /// <param name="ratios">Pressure ratios, a whole number of vectors; the temperature ratios take their place.</param>
    internal static void IsentropicRatios<T>(Span<double> ratios)
        where T : struct, ILanes<T>, IReal<T> => Elementary.Power<T>(ratios, Exponent);

    /// <summary>Pressure ratio of a compressor from its isentropic temperature ratio.
    /// <para><c>r = τ^(γ/(γ − 1))</c></para>
    /// </summary>
    /// <param name="isentropicRatio"><c>τ</c> (1): temperature ratio of an isentropic compressor.</param>
    /// <returns><c>r</c> (1): pressure ratio of the compressor.</returns>
    /// <remarks>
    /// <para>Range: τ over 0; air as a perfect gas.</para>
    /// <para>Outside: nothing is checked; τ of 0 or less is not a number.</para>
    /// <example>
    /// <code>
    /// Real result = Compression.FromIsentropicRatio&lt;Real&gt;(isentropicRatio: 1.2);
    /// // result = 1.892929
    /// </code>
    /// </example>
    /// <para>Source: isentropic relation of a perfect gas.</para>
    /// </remarks>
    public static T FromIsentropicRatio<T>(T isentropicRatio)
        where T : struct, IReal<T> => T.Power(isentropicRatio, 1 / Exponent);

    /// <summary>Temperature at the compressor outlet from the isentropic temperature ratio.
    /// <para><c>T_2 = T_1 · (1 + (τ − 1)/η_c)</c></para>
    /// </summary>
    /// <param name="inletTemperature"><c>T_1</c> (K): temperature at the compressor inlet.</param>
    /// <param name="isentropicRatio"><c>τ</c> (1): temperature ratio of an isentropic compressor.</param>
    /// <param name="isentropicEfficiency"><c>η_c</c> (1): isentropic efficiency of the compressor.</param>
    /// <returns><c>T_2</c> (K): temperature at the compressor outlet.</returns>
    /// <remarks>
    /// <para>Range: τ ≥ 1, 0 &lt; η_c ≤ 1.</para>
    /// <para>Outside: nothing is checked; τ below 1 gives a temperature below T_1.</para>
    /// <example>
    /// <code>
    /// Real result = Compression.Heated&lt;Real&gt;(inletTemperature: 300, isentropicRatio: 1.2, isentropicEfficiency: 0.75);
    /// // result = 380 K
    /// </code>
    /// </example>
    /// <para>Source: definition of isentropic efficiency.</para>
    /// </remarks>
    public static T Heated<T>(T inletTemperature, T isentropicRatio, Divisor<T> isentropicEfficiency)
        where T : struct, IReal<T> => inletTemperature * (1.0 + ((isentropicRatio - 1.0) / isentropicEfficiency));

    /// <summary>Temperature of the charge after the charge cooler.
    /// <para><c>T_3 = T_2 − ε · (T_2 − T_c)</c></para>
    /// </summary>
    /// <param name="outletTemperature"><c>T_2</c> (K): temperature at the compressor outlet.</param>
    /// <param name="coolantTemperature"><c>T_c</c> (K): temperature of the medium that cools the charge; air or water.</param>
    /// <param name="effectiveness"><c>ε</c> (1): effectiveness of the charge cooler; 0 without a cooler.</param>
    /// <returns><c>T_3</c> (K): temperature of the charge in the manifold.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ ε ≤ 1.</para>
    /// <para>Outside: nothing is checked; ε over 1 would cool below T_c, which no cooler does.</para>
    /// <example>
    /// <code>
    /// Real result = Compression.CooledTemperature&lt;Real&gt;(outletTemperature: 400, coolantTemperature: 300, effectiveness: 0.7);
    /// // result = 330 K
    /// </code>
    /// </example>
    /// <para>Source: definition of effectiveness.</para>
    /// </remarks>
    public static T CooledTemperature<T>(T outletTemperature, T coolantTemperature, T effectiveness)
        where T : struct, IReal<T> =>
        outletTemperature - (effectiveness * (outletTemperature - coolantTemperature));

    /// <summary>Power that drives the compressor.
    /// <para><c>P_d = ṁ_a · c_p · (T_2 − T_1)/η_b</c></para>
    /// </summary>
    /// <param name="airMassFlow"><c>ṁ_a</c> (kg/s): air mass flow of the engine.</param>
    /// <param name="inletTemperature"><c>T_1</c> (K): temperature at the compressor inlet.</param>
    /// <param name="outletTemperature"><c>T_2</c> (K): temperature at the compressor outlet.</param>
    /// <param name="mechanicalEfficiency"><c>η_b</c> (1): mechanical efficiency of the compressor drive.</param>
    /// <returns><c>P_d</c> (W): power that drives the compressor, taken from the crank.</returns>
    /// <remarks>
    /// <para>Range: T_2 ≥ T_1, 0 &lt; η_b ≤ 1; no heat through the housing.</para>
    /// <para>Outside: nothing is checked; T_2 below T_1 gives a negative power.</para>
    /// <example>
    /// <code>
    /// Real result = Compression.DrivePower&lt;Real&gt;(airMassFlow: 0.2, inletTemperature: 300, outletTemperature: 400, mechanicalEfficiency: 0.9);
    /// // result = 22326.33 W
    /// </code>
    /// </example>
    /// <para>Source: derived from the energy balance of an adiabatic compressor.</para>
    /// </remarks>
    public static T DrivePower<T>(T airMassFlow, T inletTemperature, T outletTemperature, Divisor<T> mechanicalEfficiency)
        where T : struct, IReal<T> =>
        airMassFlow * StandardAir.HeatCapacity * (outletTemperature - inletTemperature) / mechanicalEfficiency;
}
