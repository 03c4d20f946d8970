using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Viscosity of a liquid fuel against temperature.</summary>
public static class LiquidViscosity
{
    /// <summary>Dynamic viscosity of a liquid fuel at a temperature; a blend takes its coefficients by volume share (Arrhenius).
    /// <para><c>μ = exp(A_μ + B_μ/T + C_μ · ln(T))</c></para>
    /// </summary>
    /// <param name="a"><c>A_μ</c> (ln Pa·s): constant of the viscosity law.</param>
    /// <param name="b"><c>B_μ</c> (K): coefficient of 1/T in the viscosity law.</param>
    /// <param name="c"><c>C_μ</c> (1): coefficient of ln T in the viscosity law.</param>
    /// <param name="temperature"><c>T</c> (K): temperature of the air or fuel.</param>
    /// <returns><c>μ</c> (Pa·s): dynamic viscosity of the fuel.</returns>
    /// <remarks>
    /// <para>Range: the range for which the coefficients were fitted, typically 250 to 350 K.</para>
    /// <para>Outside: nothing is checked; the law is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = LiquidViscosity.Dynamic&lt;Real&gt;(a: -4, b: 600, c: 0.1, temperature: 300);
    /// // result = 0.239399 Pa·s
    /// </code>
    /// </example>
    /// <para>Source: R. H. Perry and D. W. Green, Perry's Chemical Engineers' Handbook, table 2-313 (form of the equation).</para>
    /// </remarks>
    public static T Dynamic<T>(T a, T b, T c, T temperature)
        where T : struct, IReal<T> => T.Exp(a + (b / temperature) + (c * T.Log(temperature)));

    /// <summary>Kinematic viscosity from dynamic viscosity.
    /// <para><c>ν = μ/ρ</c></para>
    /// </summary>
    /// <param name="dynamic"><c>μ</c> (Pa·s): dynamic viscosity of the fuel.</param>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <returns><c>ν</c> (m²/s): kinematic viscosity of the fuel.</returns>
    /// <remarks>
    /// <para>Range: ρ over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = LiquidViscosity.Kinematic&lt;Real&gt;(dynamic: 3.7e-4, density: 740);
    /// // result = 5e-7 m²/s
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T Kinematic<T>(T dynamic, T density)
        where T : struct, IReal<T> => dynamic / density;

    /// <summary>Dynamic viscosity from kinematic viscosity.
    /// <para><c>μ = ν · ρ</c></para>
    /// </summary>
    /// <param name="kinematic"><c>ν</c> (m²/s): kinematic viscosity of the fuel.</param>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <returns><c>μ</c> (Pa·s): dynamic viscosity of the fuel.</returns>
    /// <remarks>
    /// <para>Range: any.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = LiquidViscosity.FromKinematic&lt;Real&gt;(kinematic: 5e-7, density: 740);
    /// // result = 3.7e-4 Pa·s
    /// </code>
    /// </example>
    /// <para>Source: definition; the inverse of Kinematic.</para>
    /// </remarks>
    public static T FromKinematic<T>(T kinematic, T density)
        where T : struct, IReal<T> => kinematic * density;
}
