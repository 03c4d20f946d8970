using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Fuel that the engine burns, from its power and from its air.</summary>
public static class FuelDemandFlow
{
    /// <summary>Fuel that a power takes.
    /// <para><c>ṁ_1 = P_g · b</c></para>
    /// </summary>
    /// <param name="grossPower"><c>P_g</c> (W): power at the crank, a compressor drive's share included.</param>
    /// <param name="brakeSpecificFuelConsumption"><c>b</c> (kg/J): brake specific fuel consumption.</param>
    /// <returns><c>ṁ_1</c> (kg/s): fuel mass flow from power.</returns>
    /// <remarks>
    /// <para>Range: any power over 0 at full load.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = FuelDemandFlow.FromPower&lt;Real&gt;(grossPower: 100e3, brakeSpecificFuelConsumption: 9e-8);
    /// // result = 9e-3 kg/s
    /// </code>
    /// </example>
    /// <para>Source: definition of brake specific fuel consumption; what a belt takes is burnt for as well.</para>
    /// </remarks>
    public static T FromPower<T>(T grossPower, T brakeSpecificFuelConsumption)
        where T : struct, IReal<T> => grossPower * brakeSpecificFuelConsumption;

    /// <summary>Fuel that an air flow takes.
    /// <para><c>ṁ_2 = ṁ_a/AFR</c></para>
    /// </summary>
    /// <param name="airMassFlow"><c>ṁ_a</c> (kg/s): air mass flow of the engine.</param>
    /// <param name="airFuelRatio"><c>AFR</c> (kg/kg): air–fuel ratio as burnt.</param>
    /// <returns><c>ṁ_2</c> (kg/s): fuel mass flow from air.</returns>
    /// <remarks>
    /// <para>Range: AFR over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = FuelDemandFlow.FromAir&lt;Real&gt;(airMassFlow: 0.147, airFuelRatio: 11.76);
    /// // result = 0.0125 kg/s
    /// </code>
    /// </example>
    /// <para>Source: definition of the air–fuel ratio.</para>
    /// </remarks>
    public static T FromAir<T>(T airMassFlow, Divisor<T> airFuelRatio)
        where T : struct, IReal<T> => airMassFlow / airFuelRatio;

    /// <summary>Volume flow of a fuel mass flow.
    /// <para><c>Q_f = ṁ_f/ρ</c></para>
    /// </summary>
    /// <param name="massFlow"><c>ṁ_f</c> (kg/s): fuel mass flow of the engine.</param>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <returns><c>Q_f</c> (m³/s): fuel flow of the engine.</returns>
    /// <remarks>
    /// <para>Range: ρ over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = FuelDemandFlow.Volume&lt;Real&gt;(massFlow: 0.015, density: 750);
    /// // result = 2e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: definition of density.</para>
    /// </remarks>
    public static T Volume<T>(T massFlow, Divisor<T> density)
        where T : struct, IReal<T> => massFlow / density;
}
