using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Brake power of an engine, scaled from a measured pull by charge density.</summary>
public static class BoostedPower
{
    /// <summary>Crank power from power measured at the wheels.
    /// <para><c>P = P_w/(1 − ζ)</c></para>
    /// </summary>
    /// <param name="wheelPower"><c>P_w</c> (W): power at the wheels.</param>
    /// <param name="drivetrainLoss"><c>ζ</c> (1): drivetrain loss, share of crank power.</param>
    /// <returns><c>P</c> (W): brake power at the crank.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ ζ &lt; 1; typical losses are 0.1 to 0.25 (common practice, no source).</para>
    /// <para>Outside: nothing is checked; at ζ = 1 the result is infinite, above it negative.</para>
    /// <example>
    /// <code>
    /// Real result = BoostedPower.CrankFromWheel&lt;Real&gt;(wheelPower: 85e3, drivetrainLoss: 0.15);
    /// // result = 100e3 W
    /// </code>
    /// </example>
    /// <para>Source: definition of the loss.</para>
    /// </remarks>
    public static T CrankFromWheel<T>(T wheelPower, T drivetrainLoss)
        where T : struct, IReal<T> => wheelPower / (1.0 - drivetrainLoss);

    /// <summary>Power at the crank before a compressor drive takes its share, scaled from a measured pull: indicated power grows with the
    /// density of the charge, friction stays as it is at that speed.
    /// <para><c>P_g = max(0; (P_m + P_fr) · δ − P_fr)</c></para>
    /// </summary>
    /// <param name="measuredPower"><c>P_m</c> (W): brake power of the measured pull at this speed.</param>
    /// <param name="friction"><c>P_fr</c> (W): friction power of the engine at this speed.</param>
    /// <param name="densityRatio"><c>δ</c> (1): density ratio, charge ÷ air of the measured pull.</param>
    /// <returns><c>P_g</c> (W): power at the crank, a compressor drive's share included.</returns>
    /// <remarks>
    /// <para>Range: powers of 0 or more, δ up to about 2.5; the same speed, lambda and ignition quality as in the measured pull.</para>
    /// <para>Outside: nothing is checked; where friction takes more than is indicated the result is 0.</para>
    /// <example>
    /// <code>
    /// Real result = BoostedPower.Gross&lt;Real&gt;(measuredPower: 100e3, friction: 25e3, densityRatio: 1.5);
    /// // result = 162.5e3 W
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of friction power; friction that does not grow with boost is common practice, no source.</para>
    /// </remarks>
    public static T Gross<T>(T measuredPower, T friction, T densityRatio)
        where T : struct, IReal<T> => T.Max(0, ((measuredPower + friction) * densityRatio) - friction);

    /// <summary>Brake power that a compressor drive leaves.
    /// <para><c>P = max(0; P_g − P_d)</c></para>
    /// </summary>
    /// <param name="grossPower"><c>P_g</c> (W): power at the crank, a compressor drive's share included.</param>
    /// <param name="drivePower"><c>P_d</c> (W): power that drives the compressor, taken from the crank; 0 without a belt-driven
    /// compressor.</param>
    /// <returns><c>P</c> (W): brake power at the crank.</returns>
    /// <remarks>
    /// <para>Range: powers of 0 or more.</para>
    /// <para>Outside: nothing is checked; where the drive takes more than there is the result is 0.</para>
    /// <example>
    /// <code>
    /// Real result = BoostedPower.Brake&lt;Real&gt;(grossPower: 162.5e3, drivePower: 5e3);
    /// // result = 157.5e3 W
    /// </code>
    /// </example>
    /// <para>Source: conservation of energy.</para>
    /// </remarks>
    public static T Brake<T>(T grossPower, T drivePower)
        where T : struct, IReal<T> => T.Max(0, grossPower - drivePower);
}
