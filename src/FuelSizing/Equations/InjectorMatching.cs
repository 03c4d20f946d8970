using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Injectors that are not quite alike, all held open for one and the same pulse.</summary>
/// <remarks>
/// The pulse is the one that gives the engine its fuel as a whole. Each injector then passes fuel in proportion to its
/// static flow, since dead time is taken as the same for all.
/// </remarks>
internal static class InjectorMatching
{
    /// <summary>Mean of the flow factors, Σ f/z.</summary>
    /// <param name="factors">f: each injector's static flow ÷ that of its kind.</param>
    public static T Mean<T>(ReadOnlySpan<T> factors)
        where T : struct, IReal<T>
    {
        T sum = 0;
        foreach (T factor in factors)
        {
            sum += factor;
        }

        return sum / factors.Length;
    }

    /// <summary>Lambda of a cylinder: λ · f̄/f. Every cylinder draws the same air.</summary>
    /// <param name="lambda">Of the engine as a whole, λ.</param>
    /// <param name="mean">f̄ of all injectors.</param>
    /// <param name="factor">f of the cylinder's injectors.</param>
    public static T Lambda<T>(T lambda, T mean, T factor)
        where T : struct, IReal<T> => lambda * mean / factor;

    /// <summary>
    /// Duty cycle at which one injector would give its cylinder an even share of the fuel: d + (D − d) · f̄/f, d the share
    /// of dead time.
    /// </summary>
    /// <param name="dutyCycle">D, of the common pulse.</param>
    /// <param name="deadShare">d: dead time ÷ available time.</param>
    /// <param name="mean">f̄ of all injectors.</param>
    /// <param name="factor">f of the injector.</param>
    public static T EvenDutyCycle<T>(T dutyCycle, T deadShare, T mean, T factor)
        where T : struct, IReal<T> => deadShare + ((dutyCycle - deadShare) * mean / factor);
}
