using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Power of a turning shaft.</summary>
public static class EnginePower
{
    /// <summary>Power of a turning shaft.
    /// <para><c>P = 2 · π · n · M</c></para>
    /// </summary>
    /// <param name="torque"><c>M</c> (N·m): torque.</param>
    /// <param name="speed"><c>n</c> (rev/s): engine speed.</param>
    /// <returns><c>P</c> (W): brake power at the crank.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; a negative torque gives a negative power.</para>
    /// <example>
    /// <code>
    /// Real result = EnginePower.OfTorque&lt;Real&gt;(torque: 200, speed: 100);
    /// // result = 125663.7 W
    /// </code>
    /// </example>
    /// <para>Source: definition of mechanical power.</para>
    /// </remarks>
    public static T OfTorque<T>(T torque, T speed)
        where T : struct, IReal<T> => (T)(2 * Math.PI) * speed * torque;
}
