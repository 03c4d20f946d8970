using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What a commanded pulse delivers, and the mixture that the engine then runs on.</summary>
public static class DeliveredFuel
{
    /// <summary>Time in each cycle for which an injector passes its static flow. A pulse as long as the cycle never lets it close.
    /// <para><c>t_o = max(0; t − t_d) if t &lt; t_c; t_c otherwise</c></para>
    /// </summary>
    /// <param name="pulse"><c>t</c> (s): commanded pulse width.</param>
    /// <param name="deadTime"><c>t_d</c> (s): dead time.</param>
    /// <param name="availableTime"><c>t_c</c> (s): available time, between the starts of two injections.</param>
    /// <returns><c>t_o</c> (s): effective open time.</returns>
    /// <remarks>
    /// <para>Range: t and t_d not under 0, t_c over 0. Between t_c − t_d and t_c an injector has no time to close: it passes more than this.</para>
    /// <para>Outside: nothing is checked; a pulse shorter than its dead time delivers nothing.</para>
    /// <example>
    /// <code>
    /// Real result = DeliveredFuel.OpenTime&lt;Real&gt;(pulse: 0.006, deadTime: 1e-3, availableTime: 0.02);
    /// // result = 0.005 s
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of dead time.</para>
    /// </remarks>
    public static T OpenTime<T>(T pulse, T deadTime, T availableTime)
        where T : struct, IReal<T> => T.IfLess(pulse, availableTime, T.Max(0, pulse - deadTime), availableTime);

    /// <summary>Fuel flow that all injectors deliver with an open time.
    /// <para><c>Q_d = Q_s · N · t_o/t_c</c></para>
    /// </summary>
    /// <param name="staticFlow"><c>Q_s</c> (m³/s): static flow of one injector.</param>
    /// <param name="injectors"><c>N</c> (1): number of injectors.</param>
    /// <param name="openTime"><c>t_o</c> (s): effective open time.</param>
    /// <param name="availableTime"><c>t_c</c> (s): available time, between the starts of two injections.</param>
    /// <returns><c>Q_d</c> (m³/s): fuel flow that is delivered to the engine.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ t_o ≤ t_c.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = DeliveredFuel.Flow&lt;Real&gt;(staticFlow: 6e-6, injectors: 4, openTime: 0.005, availableTime: 0.02);
    /// // result = 6e-6 m³/s
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of static flow.</para>
    /// </remarks>
    public static T Flow<T>(T staticFlow, T injectors, T openTime, T availableTime)
        where T : struct, IReal<T> => staticFlow * injectors * openTime / availableTime;

    /// <summary>Lambda of an engine that is given another fuel flow than it needs at its target.
    /// <para><c>λ = λ_t · Q_f/Q_d</c></para>
    /// </summary>
    /// <param name="targetLambda"><c>λ_t</c> (1): target lambda, at which the fuel flow is needed.</param>
    /// <param name="fuelFlow"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <param name="deliveredFlow"><c>Q_d</c> (m³/s): fuel flow that is delivered to the engine.</param>
    /// <returns><c>λ</c> (1): lambda of the engine.</returns>
    /// <remarks>
    /// <para>Range: Q_d over 0; the same air and the same fuel for both flows.</para>
    /// <para>Outside: nothing is checked; infinite where nothing is delivered.</para>
    /// <example>
    /// <code>
    /// Real result = DeliveredFuel.Lambda&lt;Real&gt;(targetLambda: 0.82, fuelFlow: 2.4e-5, deliveredFlow: 1.6e-5);
    /// // result = 1.23
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of mass.</para>
    /// </remarks>
    public static T Lambda<T>(T targetLambda, T fuelFlow, T deliveredFlow)
        where T : struct, IReal<T> => targetLambda * fuelFlow / deliveredFlow;

    /// <summary>Open time below which more pressure leans the mixture of a fixed pulse: the dead time grows by more than the flow.
    /// <para><c>t_o = 2 · Δp · t_d′/(1 + 2 · Δp · Q_r′/Q_r)</c></para>
    /// </summary>
    /// <param name="differential"><c>Δp</c> (Pa): differential pressure across the injector.</param>
    /// <param name="deadTimeSlope"><c>t_d′</c> (s/Pa): rise of the dead time with differential pressure.</param>
    /// <param name="ratedFlow"><c>Q_r</c> (m³/s): rated flow of one injector.</param>
    /// <param name="ratedSlope"><c>Q_r′</c> (m³/(s·Pa)): rise of the rated flow with differential pressure; 0 where the flow keeps the square-root law.</param>
    /// <returns><c>t_o</c> (s): effective open time.</returns>
    /// <remarks>
    /// <para>Range: Δp and Q_r over 0; a pulse that does not follow the pressure, shorter than the cycle; a flow that rises with pressure.</para>
    /// <para>Outside: nothing is checked; zero for a dead time that does not depend on pressure: more pressure never leans.</para>
    /// <example>
    /// <code>
    /// Real result = DeliveredFuel.TurnOverOpenTime&lt;Real&gt;(differential: 500e3, deadTimeSlope: 2e-9, ratedFlow: 6e-6, ratedSlope: -1.2e-12);
    /// // result = 0.0025 s
    /// </code>
    /// </example>
    /// <para>Source: derived from the orifice equation and the definition of dead time: the maximum of Q_r · √Δp · (t − t_d).</para>
    /// </remarks>
    public static T TurnOverOpenTime<T>(T differential, T deadTimeSlope, T ratedFlow, T ratedSlope)
        where T : struct, IReal<T> => (T)2 * differential * deadTimeSlope / (1 + ((T)2 * differential * ratedSlope / ratedFlow));
}
