using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Whether fuel stays liquid on its way into the pump.</summary>
public static class Suction
{
    /// <summary>Absolute pressure at the pump inlet.
    /// <para><c>p_in = p_t + p_h − Δp_sf</c></para>
    /// </summary>
    /// <param name="tankAbsolute"><c>p_t</c> (Pa): pressure over the fuel in the tank, absolute.</param>
    /// <param name="column"><c>p_h</c> (Pa): pressure of the fuel column above the pump inlet; negative where the pump sits higher.</param>
    /// <param name="loss"><c>Δp_sf</c> (Pa): pressure drop of the suction line by friction.</param>
    /// <returns><c>p_in</c> (Pa): pressure at the pump inlet, absolute.</returns>
    /// <remarks>
    /// <para>Range: liquid fuel all the way.</para>
    /// <para>Outside: nothing is checked; a result below the vapour pressure does not occur: the fuel boils first.</para>
    /// <example>
    /// <code>
    /// Real result = Suction.InletPressure&lt;Real&gt;(tankAbsolute: 95e3, column: 1e3, loss: 2e3);
    /// // result = 94e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: energy balance of steady flow, velocity head left out.</para>
    /// </remarks>
    public static T InletPressure<T>(T tankAbsolute, T column, T loss)
        where T : struct, IReal<T> => tankAbsolute + column - loss;

    /// <summary>Net positive suction pressure: the pressure at the inlet above the vapour pressure of the fuel.
    /// <para><c>NPSP = p_in − p_vp</c></para>
    /// </summary>
    /// <param name="inletAbsolute"><c>p_in</c> (Pa): pressure at the pump inlet, absolute.</param>
    /// <param name="vapourPressure"><c>p_vp</c> (Pa): vapour pressure of the fuel, absolute.</param>
    /// <returns><c>NPSP</c> (Pa): net positive suction pressure.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; negative where the fuel boils.</para>
    /// <example>
    /// <code>
    /// Real result = Suction.NetPositive&lt;Real&gt;(inletAbsolute: 94e3, vapourPressure: 54e3);
    /// // result = 40e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T NetPositive<T>(T inletAbsolute, T vapourPressure)
        where T : struct, IReal<T> => inletAbsolute - vapourPressure;
}
