using FuelSizing.Equations;
using FuelSizing.Quantities;

namespace FuelSizing.Pumps;

/// <summary>Pumps fed with one voltage: flow against pressure rise, and back, in SI numbers.</summary>
/// <remarks>
/// What depends on the voltage alone is worked out once, so that a solver may ask for flow and rise many times. Flow never
/// grows with rise, nor rise with flow.
/// </remarks>
internal abstract class RunningPumps
{
    /// <summary>The most that passes, m³/s: against no pressure rise.</summary>
    public abstract double FreeFlow { get; }

    /// <summary>The rise at which nothing passes any more, Pa.</summary>
    public abstract double Deadhead { get; }

    /// <summary>Delivered flow at a rise, m³/s.</summary>
    /// <param name="rise">Pa, not negative.</param>
    public abstract double FlowAt(double rise);

    /// <summary>Pressure rise at a flow, Pa; zero from the free flow on.</summary>
    /// <param name="flow">m³/s, not negative.</param>
    public abstract double RiseAt(double flow);

    /// <summary>Adds each pump where it runs when the whole passes a flow.</summary>
    /// <param name="flow">m³/s, 0 to <see cref="FreeFlow"/>.</param>
    /// <param name="points">To add to.</param>
    public abstract void Describe(double flow, ICollection<PumpPoint> points);

    /// <summary>The place in [0, most] where a falling function passes a value.</summary>
    /// <param name="falling">The function; it may jump.</param>
    /// <param name="value">The value.</param>
    /// <param name="most">End of the range, over zero.</param>
    /// <param name="scale">A size of the function's values, for the root finder's accuracy is absolute.</param>
    protected static double Inverse(Func<double, double> falling, double value, double most, double scale)
    {
        return most * Crossing.Of(share => Share.Of<Real>(falling(share * most) - value, scale), 0, 1);
    }
}
