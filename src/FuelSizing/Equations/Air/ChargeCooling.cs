using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What the fuel takes out of the charge as it evaporates.</summary>
public static class ChargeCooling
{
    /// <summary>Temperature of the charge after a share of the fuel has evaporated in it.
    /// <para><c>T_4 = T_3 − x_e · h_v/(AFR · c_p)</c></para>
    /// </summary>
    /// <param name="chargeTemperature"><c>T_3</c> (K): temperature of the charge in the manifold.</param>
    /// <param name="evaporatedShare"><c>x_e</c> (1): share of the fuel that evaporates in the charge; before the inlet valve closes, by the heat of the charge alone.</param>
    /// <param name="heatOfVaporisation"><c>h_v</c> (J/kg): heat of vaporisation of the fuel.</param>
    /// <param name="airFuelRatio"><c>AFR</c> (kg/kg): air–fuel ratio as burnt.</param>
    /// <returns><c>T_4</c> (K): temperature of the charge after evaporation.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ x_e ≤ 1; c_p that of air. What the liquid fuel brings of heat is left out: the charge is then a little colder, and the demand higher, than it is.</para>
    /// <para>Outside: nothing is checked; fuel stops evaporating where the charge is saturated with it, which is the user's share to state.</para>
    /// <example>
    /// <code>
    /// Real result = ChargeCooling.Temperature&lt;Real&gt;(chargeTemperature: 320, evaporatedShare: 0.25, heatOfVaporisation: 400e3, airFuelRatio: 12.5);
    /// // result = 312.0373 K
    /// </code>
    /// </example>
    /// <para>Source: derived from the energy balance of charge and fuel at constant pressure without heat from the walls.</para>
    /// </remarks>
    public static T Temperature<T>(T chargeTemperature, T evaporatedShare, T heatOfVaporisation, Divisor<T> airFuelRatio)
        where T : struct, IReal<T> => chargeTemperature - (evaporatedShare * heatOfVaporisation / StandardAir.HeatCapacity / airFuelRatio);

    /// <summary>What the air of the engine grows by as the liquid of a second stream evaporates in the charge.
    /// <para><c>y_s = 1 + x_es · h_s · ṁ_s/(c_p · T_3 · ṁ_a)</c></para>
    /// </summary>
    /// <param name="chargeTemperature"><c>T_3</c> (K): temperature of the charge in the manifold.</param>
    /// <param name="evaporatedShare"><c>x_es</c> (1): share of the second stream's liquid that evaporates in the charge; before the inlet valve closes, by the heat of the charge alone.</param>
    /// <param name="heatOfVaporisation"><c>h_s</c> (J/kg): heat of vaporisation of the second stream's liquid.</param>
    /// <param name="streamFlow"><c>ṁ_s</c> (kg/s): mass flow of the second stream's liquid.</param>
    /// <param name="airFlow"><c>ṁ_a</c> (kg/s): air mass flow of the engine.</param>
    /// <returns><c>y_s</c> (1): air mass flow with evaporation ÷ that without.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ x_es ≤ 1; ṁ_a that without this evaporation; c_p that of air. The charge is then at T_3/y_s, so that the air that is cooled is the air
    /// that the engine draws. What the liquid brings of heat is left out: the demand comes out a little higher than it is.</para>
    /// <para>Outside: nothing is checked; a liquid stops evaporating where the charge is saturated with it, which is the user's share to state.</para>
    /// <example>
    /// <code>
    /// Real result = ChargeCooling.AirGain&lt;Real&gt;(chargeTemperature: 320, evaporatedShare: 0.25, heatOfVaporisation: 1e6, streamFlow: 0.004, airFlow: 0.2);
    /// // result = 1.015552
    /// </code>
    /// </example>
    /// <para>Source: derived from the energy balance of charge and liquid at constant pressure without heat from the walls, and the ideal gas.</para>
    /// </remarks>
    public static T AirGain<T>(T chargeTemperature, T evaporatedShare, T heatOfVaporisation, T streamFlow, T airFlow)
        where T : struct, IReal<T> => 1.0 + (evaporatedShare * heatOfVaporisation * streamFlow / (chargeTemperature * StandardAir.HeatCapacity * airFlow));
}
