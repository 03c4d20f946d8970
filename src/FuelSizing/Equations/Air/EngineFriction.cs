using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What an engine's friction takes, pumping and auxiliaries included, and how that grows with speed.</summary>
public static class EngineFriction
{
    /// <summary>Friction power of a measured pull from its mechanical efficiency.
    /// <para><c>P_fr0 = P_m0/η_m − P_m0</c></para>
    /// </summary>
    /// <param name="measuredPower"><c>P_m0</c> (W): brake power of the measured pull at the speed of its mechanical efficiency.</param>
    /// <param name="mechanicalEfficiency"><c>η_m</c> (1): mechanical efficiency of the measured pull, brake ÷ indicated power.</param>
    /// <returns><c>P_fr0</c> (W): friction power at that speed.</returns>
    /// <remarks>
    /// <para>Range: 0 &lt; η_m ≤ 1.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = EngineFriction.OfMeasuredPull&lt;Real&gt;(measuredPower: 100e3, mechanicalEfficiency: 0.8);
    /// // result = 25e3 W
    /// </code>
    /// </example>
    /// <para>Source: definition of mechanical efficiency.</para>
    /// </remarks>
    public static T OfMeasuredPull<T>(T measuredPower, Divisor<T> mechanicalEfficiency)
        where T : struct, IReal<T> => (measuredPower / mechanicalEfficiency) - measuredPower;

    /// <summary>Friction mean effective pressure against speed, of four-stroke spark-ignition engines motored at full throttle.
    /// <para><c>p_fr = 97000 + 900 · n + 18 · n^2</c></para>
    /// </summary>
    /// <param name="speed"><c>n</c> (rev/s): engine speed.</param>
    /// <returns><c>p_fr</c> (Pa): friction mean effective pressure.</returns>
    /// <remarks>
    /// <para>Range: about 15 to 100 rev/s; four-cylinder engines of 0.85 to 2 L. Used here for its shape alone.</para>
    /// <para>Outside: nothing is checked; the parabola is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = EngineFriction.MeanEffectivePressure&lt;Real&gt;(speed: 100);
    /// // result = 367e3 Pa
    /// </code>
    /// </example>
    /// <para>Source: Heywood, Internal Combustion Engine Fundamentals, ch. 13, after Barnes-Moss (1975): 0.97 + 0.15 N/1000 +
    /// 0.05 (N/1000)² bar, N in rev/min; from memory, two public programs quote the same.</para>
    /// </remarks>
    public static T MeanEffectivePressure<T>(T speed)
        where T : struct, IReal<T> => 97_000 + (900 * speed) + (18 * (speed * speed));

    /// <summary>Friction power at a speed from that at another: mean effective pressure by its shape against speed, times speed.
    /// <para><c>P_fr = P_fr0 · (n · (97000 + 900 · n + 18 · n^2)/(n_0 · (97000 + 900 · n_0 + 18 · n_0^2)))</c></para>
    /// </summary>
    /// <param name="statedFriction"><c>P_fr0</c> (W): friction power at that speed.</param>
    /// <param name="statedSpeed"><c>n_0</c> (rev/s): speed at which the mechanical efficiency is stated.</param>
    /// <param name="speed"><c>n</c> (rev/s): engine speed.</param>
    /// <returns><c>P_fr</c> (W): friction power of the engine at this speed.</returns>
    /// <remarks>
    /// <para>Range: that of MeanEffectivePressure.</para>
    /// <para>Outside: nothing is checked; the shape is carried on; at n = n_0 the result is P_fr0.</para>
    /// <example>
    /// <code>
    /// Real result = EngineFriction.AtSpeed&lt;Real&gt;(statedFriction: 25e3, statedSpeed: 100, speed: 50);
    /// // result = 6369.21 W
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of mean effective pressure; MeanEffectivePressure.</para>
    /// </remarks>
    public static T AtSpeed<T>(T statedFriction, T statedSpeed, T speed)
        where T : struct, IReal<T> =>
        statedFriction * (speed * MeanEffectivePressure(speed) / (statedSpeed * MeanEffectivePressure(statedSpeed)));
}
