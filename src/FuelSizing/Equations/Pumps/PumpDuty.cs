using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What is asked of a pump, and what it has left.</summary>
public static class PumpDuty
{
    /// <summary>Flow that returns to the tank.
    /// <para><c>Q_ret = max(0; Q_p − Q_f)</c></para>
    /// </summary>
    /// <param name="delivered"><c>Q_p</c> (m³/s): flow that the pump delivers.</param>
    /// <param name="injected"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <returns><c>Q_ret</c> (m³/s): flow that returns to the tank.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; 0 where less is delivered than injected.</para>
    /// <example>
    /// <code>
    /// Real result = PumpDuty.Returned&lt;Real&gt;(delivered: 6e-5, injected: 4e-5);
    /// // result = 2e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: conservation of mass.</para>
    /// </remarks>
    public static T Returned<T>(T delivered, T injected)
        where T : struct, IReal<T> => T.Max(0, delivered - injected);

    /// <summary>Flow required of the pump.
    /// <para><c>Q_req = Q_f · (1 + σ) + Q_min</c></para>
    /// </summary>
    /// <param name="injected"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <param name="reserve"><c>σ</c> (1): pump reserve, share of the injected flow.</param>
    /// <param name="minimumReturn"><c>Q_min</c> (m³/s): minimum return flow of the regulator.</param>
    /// <returns><c>Q_req</c> (m³/s): flow required of the pump.</returns>
    /// <remarks>
    /// <para>Range: σ and Q_min of 0 or more; a reserve of 0.1 to 0.2 is common practice, no source.</para>
    /// <para>Outside: nothing is checked; the sum is taken as it is.</para>
    /// <example>
    /// <code>
    /// Real result = PumpDuty.Required&lt;Real&gt;(injected: 4e-5, reserve: 0.15, minimumReturn: 5e-6);
    /// // result = 5.1e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: definition of the reserve.</para>
    /// </remarks>
    public static T Required<T>(T injected, T reserve, T minimumReturn)
        where T : struct, IReal<T> => (injected * (1.0 + reserve)) + minimumReturn;

    /// <summary>Flow that may be injected with the reserve kept; the inverse of Required.
    /// <para><c>Q_f = max(0; Q_p − Q_min)/(1 + σ)</c></para>
    /// </summary>
    /// <param name="delivered"><c>Q_p</c> (m³/s): flow that the pump delivers.</param>
    /// <param name="reserve"><c>σ</c> (1): pump reserve, share of the injected flow.</param>
    /// <param name="minimumReturn"><c>Q_min</c> (m³/s): minimum return flow of the regulator.</param>
    /// <returns><c>Q_f</c> (m³/s): fuel flow of the engine.</returns>
    /// <remarks>
    /// <para>Range: σ and Q_min of 0 or more.</para>
    /// <para>Outside: nothing is checked; 0 where the regulator takes all that is delivered.</para>
    /// <example>
    /// <code>
    /// Real result = PumpDuty.Injectable&lt;Real&gt;(delivered: 5.1e-5, reserve: 0.15, minimumReturn: 5e-6);
    /// // result = 4e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: definition of the reserve.</para>
    /// </remarks>
    public static T Injectable<T>(T delivered, T reserve, T minimumReturn)
        where T : struct, IReal<T> => T.Max(0, delivered - minimumReturn) / (1.0 + reserve);
}
