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
}
