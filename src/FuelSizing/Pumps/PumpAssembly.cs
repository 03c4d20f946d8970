using FuelSizing.Equations;
using FuelSizing.Quantities;
using MathNet.Numerics.RootFinding;
using UnitsNet;

namespace FuelSizing.Pumps;

using Pressure = UnitsNet.Pressure;

/// <summary>One pump, or several in series or in parallel, in any nesting.</summary>
/// <remarks>
/// In series the same flow passes through all and their pressure rises add; in parallel all see the same rise and their
/// flows add, never backward.
/// </remarks>
public abstract class PumpAssembly
{
    private const double Accuracy = 1e-14;
    private const int MostIterations = 300;

    private protected PumpAssembly()
    {
    }

    /// <summary>The name shown in results.</summary>
    public abstract string Name { get; }

    /// <summary>Every pump in the assembly.</summary>
    public abstract IReadOnlyList<Pump> Pumps { get; }

    /// <summary>
    /// The assembly's curve at a supply voltage: the least that it surely delivers against each pressure rise, wiring and
    /// condition included.
    /// </summary>
    /// <param name="supply">At the battery or alternator, 6 to 20 V.</param>
    /// <param name="points">How many, 2 to 1,000.</param>
    /// <returns>Points of evenly spaced pressure, from none to the highest at which something is delivered.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public IReadOnlyList<(Pressure PressureRise, VolumeFlow Flow)> CurveAt(ElectricPotential supply, int points = 61)
    {
        double volts = SupplyVoltage.Within(supply, nameof(supply)).Volts;
        Allowed.Count(points, 2, 1000, "Give the number of points wanted.", nameof(points));
        double highest = RiseAt(0, volts, generous: false);
        return
        [
            .. Enumerable.Range(0, points)
                .Select(point => StraightLine.Through<Real>(0, 0, points - 1, highest, point).Value)
                .Select(rise => (
                    Pressure.FromPascals(rise),
                    VolumeFlow.FromCubicMetersPerSecond(FlowAt(rise, volts, generous: false)))),
        ];
    }

    /// <summary>The most that passes, m³/s: against no pressure rise.</summary>
    /// <param name="supply">Voltage at the source, V.</param>
    internal abstract double FreeFlow(double supply);

    /// <summary>The most rise that any flow is given, Pa.</summary>
    /// <param name="supply">Voltage at the source, V.</param>
    /// <param name="generous">Take a curve that ends with flow to spare as going on for ever, instead of ending there.</param>
    internal abstract double HighestRise(double supply, bool generous);

    /// <summary>Delivered flow at a rise, m³/s; never grows with it.</summary>
    /// <param name="rise">Pa, not negative.</param>
    /// <param name="supply">Voltage at the source, V.</param>
    /// <param name="generous">See <see cref="HighestRise"/>.</param>
    internal abstract double FlowAt(double rise, double supply, bool generous);

    /// <summary>Pressure rise at a flow, Pa; never grows with it.</summary>
    /// <param name="flow">m³/s, 0 to <see cref="FreeFlow"/>.</param>
    /// <param name="supply">Voltage at the source, V.</param>
    /// <param name="generous">See <see cref="HighestRise"/>.</param>
    internal abstract double RiseAt(double flow, double supply, bool generous);

    /// <summary>Adds each pump where it runs when the assembly passes a flow.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="supply">Voltage at the source, V.</param>
    /// <param name="points">To add to.</param>
    internal abstract void Describe(double flow, double supply, ICollection<PumpPoint> points);

    /// <summary>
    /// A flow at which deadhead pressure is read: with none at all, any pressure over the deadhead would serve as well.
    /// </summary>
    private protected double Trickle(double flow, double supply) => Math.Max(flow, 1e-9 * FreeFlow(supply));

    /// <summary>The greatest x in a range at which a falling function is not below a value.</summary>
    private protected static double Inverse(Func<double, double> falling, double value, double most)
    {
        if (falling(most) >= value)
        {
            return most;
        }

        // Relative to the value, since the root finder's accuracy is absolute.
        double Short(double share) => Reserve.Of<Real>(falling(share * most), value);
        return Short(0) <= 0 ? 0 : most * Brent.FindRoot(Short, 0, 1, Accuracy, MostIterations);
    }
}
