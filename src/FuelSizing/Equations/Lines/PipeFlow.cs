using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Flow of a liquid through a round pipe and what it costs in pressure.</summary>
public static class PipeFlow
{
    /// <summary>Mean velocity in a round pipe.
    /// <para><c>v = 4 · Q/(π · d²)</c></para>
    /// </summary>
    /// <param name="flow"><c>Q</c> (m³/s): flow in the line.</param>
    /// <param name="bore"><c>d</c> (m): bore of the line.</param>
    /// <returns><c>v</c> (m/s): mean velocity in the line.</returns>
    /// <remarks>
    /// <para>Range: d over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = PipeFlow.Velocity&lt;Real&gt;(flow: 5e-5, bore: 8e-3);
    /// // result = 0.994718 m/s
    /// </code>
    /// </example>
    /// <para>Source: conservation of mass.</para>
    /// </remarks>
    public static T Velocity<T>(T flow, T bore)
        where T : struct, IReal<T> => flow * (4 / Math.PI) / (bore * bore);

    /// <summary>Reynolds number of flow in a round pipe.
    /// <para><c>Re = v · d/ν</c></para>
    /// </summary>
    /// <param name="velocity"><c>v</c> (m/s): mean velocity in the line.</param>
    /// <param name="bore"><c>d</c> (m): bore of the line.</param>
    /// <param name="kinematicViscosity"><c>ν</c> (m²/s): kinematic viscosity of the fuel.</param>
    /// <returns><c>Re</c> (1): Reynolds number.</returns>
    /// <remarks>
    /// <para>Range: ν over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = PipeFlow.Reynolds&lt;Real&gt;(velocity: 1, bore: 8e-3, kinematicViscosity: 5e-7);
    /// // result = 16000
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T Reynolds<T>(T velocity, T bore, T kinematicViscosity)
        where T : struct, IReal<T> => velocity * bore / kinematicViscosity;

    /// <summary>Pressure drop of straight pipe: Darcy–Weisbach, written with f Re so that it is 0 and not 0/0 when the flow stops.
    /// <para><c>Δp_f = Po · ρ · ν · l · v/(2 · d²)</c></para>
    /// </summary>
    /// <param name="frictionNumber"><c>Po</c> (1): friction number f Re (Poiseuille number); from PipeFriction.Number.</param>
    /// <param name="length"><c>l</c> (m): length of the line.</param>
    /// <param name="bore"><c>d</c> (m): bore of the line.</param>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <param name="kinematicViscosity"><c>ν</c> (m²/s): kinematic viscosity of the fuel.</param>
    /// <param name="velocity"><c>v</c> (m/s): mean velocity in the line.</param>
    /// <returns><c>Δp_f</c> (Pa): pressure drop of straight pipe.</returns>
    /// <remarks>
    /// <para>Range: steady, fully developed flow of a liquid; d over 0.</para>
    /// <para>Outside: nothing is checked; entrance effects are left out.</para>
    /// <example>
    /// <code>
    /// Real result = PipeFlow.StraightLoss&lt;Real&gt;(frictionNumber: 64, length: 4, bore: 8e-3, density: 740, kinematicViscosity: 5e-6, velocity: 1);
    /// // result = 7400 Pa
    /// </code>
    /// </example>
    /// <para>Source: Darcy–Weisbach equation Δp = f (l/d) ρ v²/2 with f = Po ν/(v d).</para>
    /// </remarks>
    public static T StraightLoss<T>(
        T frictionNumber, T length, T bore, T density, T kinematicViscosity, T velocity)
        where T : struct, IReal<T> =>
        frictionNumber * density * kinematicViscosity * length * velocity / (2.0 * bore * bore);

    /// <summary>Pressure drop of fittings.
    /// <para><c>Δp_K = K · ρ · v²/2</c></para>
    /// </summary>
    /// <param name="lossCoefficient"><c>K</c> (1): loss coefficient; the sum over the fittings.</param>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <param name="velocity"><c>v</c> (m/s): mean velocity in the line.</param>
    /// <returns><c>Δp_K</c> (Pa): pressure drop of fittings.</returns>
    /// <remarks>
    /// <para>Range: turbulent flow; fittings far enough apart not to disturb one another.</para>
    /// <para>Outside: nothing is checked; in laminar flow real fittings lose more.</para>
    /// <example>
    /// <code>
    /// Real result = PipeFlow.FittingsLoss&lt;Real&gt;(lossCoefficient: 3, density: 740, velocity: 1);
    /// // result = 1110 Pa
    /// </code>
    /// </example>
    /// <para>Source: definition of the loss coefficient.</para>
    /// </remarks>
    public static T FittingsLoss<T>(T lossCoefficient, T density, T velocity)
        where T : struct, IReal<T> => lossCoefficient * density * velocity * velocity * 0.5;

    /// <summary>Pressure difference of a column of liquid.
    /// <para><c>Δp_h = ρ · g · Δh</c></para>
    /// </summary>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <param name="height"><c>Δh</c> (m): height that the line rises; over 0 where the pipe rises and pressure is lost.</param>
    /// <returns><c>Δp_h</c> (Pa): pressure difference of a fuel column.</returns>
    /// <remarks>
    /// <para>Range: a liquid of constant density.</para>
    /// <para>Outside: nothing is checked; a negative height gives a negative difference.</para>
    /// <example>
    /// <code>
    /// Real result = PipeFlow.Column&lt;Real&gt;(density: 740, height: 0.5);
    /// // result = 3628.461 Pa
    /// </code>
    /// </example>
    /// <para>Source: hydrostatics; standard acceleration of free fall.</para>
    /// </remarks>
    public static T Column<T>(T density, T height)
        where T : struct, IReal<T> => density * StandardAir.Gravity * height;
}
