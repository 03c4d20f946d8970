using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>How the fuel of an engine is split between two sets of injectors on one rail.</summary>
public static class StagedFlow
{
    /// <summary>Share of the fuel that the secondary set carries, where the hand-over follows boost: straight from its begin to its end.
    /// <para><c>x_s = x_b + (x_f − x_b) · min(1; (p_b − p_hb)/(p_hf − p_hb))</c></para>
    /// </summary>
    /// <param name="boost"><c>p_b</c> (Pa): boost, gauge pressure in the manifold.</param>
    /// <param name="begin"><c>p_hb</c> (Pa): boost at which the hand-over begins.</param>
    /// <param name="full"><c>p_hf</c> (Pa): boost at which the hand-over is full.</param>
    /// <param name="shareAtBegin"><c>x_b</c> (1): share of the fuel that the secondary set carries just above the begin.</param>
    /// <param name="share"><c>x_f</c> (1): share of the fuel that the secondary set carries at full hand-over.</param>
    /// <returns><c>x_s</c> (1): share of the fuel that the secondary set carries.</returns>
    /// <remarks>
    /// <para>Range: p_b over p_hb, p_hf over p_hb, 0 ≤ x_b ≤ x_f &lt; 1. At p_hb and below it the secondary set is idle.</para>
    /// <para>Outside: nothing is checked; below p_hb the straight line goes on.</para>
    /// <example>
    /// <code>
    /// Real result = StagedFlow.ShareByBoost&lt;Real&gt;(boost: 45e3, begin: 30e3, full: 60e3, shareAtBegin: 0.2, share: 0.5);
    /// // result = 0.35
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T ShareByBoost<T>(T boost, T begin, T full, T shareAtBegin, T share)
        where T : struct, IReal<T> => shareAtBegin + ((share - shareAtBegin) * T.Min(1, (boost - begin) / (full - begin)));

    /// <summary>Share of the fuel that the secondary set carries, where the primary set is held at a duty cycle: what the primary set does not pass there.
    /// <para><c>x_s = min(x_f; max(x_b; 1 − Q_h/Q_f))</c></para>
    /// </summary>
    /// <param name="fuelFlow"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <param name="primaryFlow"><c>Q_h</c> (m³/s): fuel flow that the primary set passes at the duty cycle at which the hand-over begins.</param>
    /// <param name="shareAtBegin"><c>x_b</c> (1): share of the fuel that the secondary set carries just above the begin.</param>
    /// <param name="share"><c>x_f</c> (1): share of the fuel that the secondary set carries at full hand-over.</param>
    /// <returns><c>x_s</c> (1): share of the fuel that the secondary set carries.</returns>
    /// <remarks>
    /// <para>Range: Q_f over Q_h, 0 ≤ x_b ≤ x_f &lt; 1. Where Q_f is no more than Q_h the secondary set is idle.</para>
    /// <para>Outside: nothing is checked; x_b where Q_f is no more than Q_h.</para>
    /// <example>
    /// <code>
    /// Real result = StagedFlow.ShareByDutyCycle&lt;Real&gt;(fuelFlow: 5e-5, primaryFlow: 3e-5, shareAtBegin: 0.2, share: 0.5);
    /// // result = 0.4
    /// </code>
    /// </example>
    /// <para>Source: derived from the mass balance: both sets together inject the fuel of the engine, of one density.</para>
    /// </remarks>
    public static T ShareByDutyCycle<T>(T fuelFlow, T primaryFlow, T shareAtBegin, T share)
        where T : struct, IReal<T> => T.Min(share, T.Max(shareAtBegin, 1 - (primaryFlow / fuelFlow)));

    /// <summary>Fuel flow of the secondary set.
    /// <para><c>Q_f2 = x_s · Q_f</c></para>
    /// </summary>
    /// <param name="fuelFlow"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <param name="share"><c>x_s</c> (1): share of the fuel that the secondary set carries.</param>
    /// <returns><c>Q_f2</c> (m³/s): fuel flow of the secondary set.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ x_s &lt; 1. The primary set injects the rest, Q_f − Q_f2: both together the fuel of the engine.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = StagedFlow.Secondary&lt;Real&gt;(fuelFlow: 5e-5, share: 0.4);
    /// // result = 2e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T Secondary<T>(T fuelFlow, T share)
        where T : struct, IReal<T> => share * fuelFlow;
}
