using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>An engine that burns two fuels at once: the main fuel, and that of a second stream.</summary>
/// <remarks>Of a liquid that is fuel and water, ratio and heating value are those of the whole liquid: the fuel's times its share by mass.</remarks>
public static class TwoFuels
{
    /// <summary>Lambda of an engine that is given two fuels: its air, by the air that burns both.
    /// <para><c>λ = ṁ_a/(AFR_m · ṁ_m + AFR_s · ṁ_s)</c></para>
    /// </summary>
    /// <param name="airFlow"><c>ṁ_a</c> (kg/s): air mass flow of the engine.</param>
    /// <param name="mainRatio"><c>AFR_m</c> (kg/kg): stoichiometric air–fuel ratio of the main fuel.</param>
    /// <param name="mainFlow"><c>ṁ_m</c> (kg/s): mass flow of the main fuel.</param>
    /// <param name="streamRatio"><c>AFR_s</c> (kg/kg): stoichiometric air–fuel ratio of the second stream's liquid.</param>
    /// <param name="streamFlow"><c>ṁ_s</c> (kg/s): mass flow of the second stream's liquid.</param>
    /// <returns><c>λ</c> (1): lambda of the engine.</returns>
    /// <remarks>
    /// <para>Range: flows not under 0, at least one over 0; both fuels burn in the same air.</para>
    /// <para>Outside: nothing is checked; infinite where no fuel flows.</para>
    /// <example>
    /// <code>
    /// Real result = TwoFuels.Lambda&lt;Real&gt;(airFlow: 0.2, mainRatio: 14.5, mainFlow: 0.012, streamRatio: 6.5, streamFlow: 0.004);
    /// // result = 1
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of lambda and conservation of mass.</para>
    /// </remarks>
    public static T Lambda<T>(T airFlow, T mainRatio, T mainFlow, T streamRatio, T streamFlow)
        where T : struct, IReal<T> => airFlow / ((mainRatio * mainFlow) + (streamRatio * streamFlow));

    /// <summary>Share of the heat of both fuels that the second stream brings.
    /// <para><c>z_s = H_s · ṁ_s/(H_m · ṁ_m + H_s · ṁ_s)</c></para>
    /// </summary>
    /// <param name="mainHeat"><c>H_m</c> (J/kg): lower heating value of the main fuel.</param>
    /// <param name="mainFlow"><c>ṁ_m</c> (kg/s): mass flow of the main fuel.</param>
    /// <param name="streamHeat"><c>H_s</c> (J/kg): lower heating value of the second stream's liquid.</param>
    /// <param name="streamFlow"><c>ṁ_s</c> (kg/s): mass flow of the second stream's liquid.</param>
    /// <returns><c>z_s</c> (1): share of the heat of both fuels that the second stream brings.</returns>
    /// <remarks>
    /// <para>Range: flows not under 0, at least one over 0; of a rich mixture both leave the same share unburnt.</para>
    /// <para>Outside: nothing is checked; no number where no fuel flows.</para>
    /// <example>
    /// <code>
    /// Real result = TwoFuels.HeatShare&lt;Real&gt;(mainHeat: 44e6, mainFlow: 0.015, streamHeat: 22e6, streamFlow: 0.01);
    /// // result = 0.25
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of the lower heating value.</para>
    /// </remarks>
    public static T HeatShare<T>(T mainHeat, T mainFlow, T streamHeat, T streamFlow)
        where T : struct, IReal<T>
    {
        T heat = streamHeat * streamFlow;
        return heat / ((mainHeat * mainFlow) + heat);
    }
}
