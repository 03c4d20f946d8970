using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Injectors that are not quite alike, all held open for one and the same pulse.</summary>
/// <remarks>
/// The pulse is the one that gives the engine its fuel as a whole. Each injector then passes fuel in proportion to its
/// static flow, since dead time is taken as the same for all.
/// </remarks>
public static class InjectorMatching
{
    /// <summary>Mean of the flow factors, Σ f/z.</summary>
    /// <param name="factors">f: each injector's static flow ÷ that of its kind.</param>
    internal static T Mean<T>(ReadOnlySpan<T> factors)
        where T : struct, IReal<T>
    {
        T sum = 0;
        foreach (T factor in factors)
        {
            sum += factor;
        }

        return sum / factors.Length;
    }

    /// <summary>Lambda of a cylinder whose injectors differ from the mean; every cylinder draws the same air.
    /// <para><c>λ_q = λ · q_m/q</c></para>
    /// </summary>
    /// <param name="lambda"><c>λ</c> (1): lambda of the engine.</param>
    /// <param name="mean"><c>q_m</c> (1): mean flow factor of all injectors.</param>
    /// <param name="factor"><c>q</c> (1): flow factor of an injector, its static flow ÷ that of its kind.</param>
    /// <returns><c>λ_q</c> (1): lambda of one cylinder.</returns>
    /// <remarks>
    /// <para>Range: flow factors over 0; one pulse and one dead time for all injectors.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorMatching.Lambda&lt;Real&gt;(lambda: 0.82, mean: 1.01, factor: 0.96);
    /// // result = 0.862708
    /// </code>
    /// </example>
    /// <para>Source: derived from conservation of mass.</para>
    /// </remarks>
    public static T Lambda<T>(T lambda, T mean, T factor)
        where T : struct, IReal<T> => lambda * mean / factor;

    /// <summary>Duty cycle at which one injector would give its cylinder an even share of the fuel.
    /// <para><c>D_q = D_d + (D − D_d) · q_m/q</c></para>
    /// </summary>
    /// <param name="dutyCycle"><c>D</c> (1): duty cycle.</param>
    /// <param name="deadShare"><c>D_d</c> (1): share of the available time that is dead time.</param>
    /// <param name="mean"><c>q_m</c> (1): mean flow factor of all injectors.</param>
    /// <param name="factor"><c>q</c> (1): flow factor of an injector, its static flow ÷ that of its kind.</param>
    /// <returns><c>D_q</c> (1): duty cycle at which one injector gives its even share.</returns>
    /// <remarks>
    /// <para>Range: D over D_d, flow factors over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorMatching.EvenDutyCycle&lt;Real&gt;(dutyCycle: 0.8, deadShare: 0.05, mean: 1.01, factor: 0.96);
    /// // result = 0.839063
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of dead time.</para>
    /// </remarks>
    public static T EvenDutyCycle<T>(T dutyCycle, T deadShare, T mean, T factor)
        where T : struct, IReal<T> => deadShare + ((dutyCycle - deadShare) * mean / factor);
}
