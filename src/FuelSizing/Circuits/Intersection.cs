using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Regulators;

namespace FuelSizing.Circuits;

/// <summary>Finds where the pumps' curve meets the system curve.</summary>
internal static class PumpIntersection
{
    // A secant's error after a step is of the order of the product of the last two steps, on a smooth function.
    private const double SmallStep = 1e-8;
    private const double SmallProduct = 1e-14;
    private const int MaximumSteps = 12;

    // Of the scale of pressure.
    private const double SmallMissing = 1e-13;

    // Of the flow. A curve that falls steeply bends within less than the last two steps, so what is left is looked at too.
    private const double SmallFlow = 1e-12;

    /// <summary>Where the pumps meet the circuit with the rail at its set pressure, whatever is injected.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="pumps">The pumps.</param>
    /// <param name="guess">
    /// Something near it, if that is known: the losses, Pa, for pumps that give flow by rise; the flow, m³/s, for others.
    /// </param>
    public static Intersection AtSet(in CircuitTask task, RunningPumps pumps, double guess = double.NaN)
    {
        if (pumps.FreeFlow <= 0)
        {
            return default;
        }

        if (!task.HasPathToRegulator && pumps.GivesFlow)
        {
            return new(pumps.FlowAt(task.Set), default);
        }

        if ((pumps.IsNested && TryTangents(task, pumps, held: null, task.Set + (pumps.GivesFlow && guess > 0 ? guess : 0), out Intersection met))
            || TryFind(task, pumps, held: null, task.Set + (double.IsNaN(guess) ? 0 : guess), out met))
        {
            return met;
        }

        RiseExcess excess = new(task, pumps, asSet: true);
        double flow = pumps.FreeFlow
            * (!pumps.GivesFlow && guess > 0
                && Secant.TryNear(excess, guess / pumps.FreeFlow, out double near) && near <= 1
                    ? near
                    : Bracket.Of(excess, 0, 1));
        return new(flow, task.LossesAt(flow));
    }

    /// <summary>Where pumps meet the circuit, by a <see cref="TangentSearch"/>; false where that does not settle.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="pumps">The pumps.</param>
    /// <param name="held">By which side of the regulator's data; none with the rail as set, whatever the return line asks for.</param>
    /// <param name="guess">A rise near the one wanted, Pa.</param>
    /// <param name="met">The meeting.</param>
    public static bool TryTangents(in CircuitTask task, RunningPumps pumps, RegulatorReading? held, double guess, out Intersection met)
    {
        TangentSearch search = new(stackalloc double[RunningPumps.MaximumGuesses]);
        return search.TryFind(task, pumps, held, guess, out met);
    }

    /// <summary>
    /// Where pumps meet the circuit, found by way of the rise, of which their flow follows at once. Losses change little with
    /// it, so a few secants do; the last step carries the losses on instead of asking for them again. False where they do
    /// not settle: where a relief valve opens, or where pumps give their flow by a search themselves.
    /// </summary>
    /// <param name="task">The circuit.</param>
    /// <param name="pumps">The pumps.</param>
    /// <param name="held">By which side of the regulator's data; none with the rail as set, whatever the return line asks for.</param>
    /// <param name="guess">A rise near the one wanted, Pa.</param>
    /// <param name="met">The meeting.</param>
    public static bool TryFind(in CircuitTask task, RunningPumps pumps, RegulatorReading? held, double guess, out Intersection met)
    {
        met = default;
        if (!pumps.GivesFlow)
        {
            return false;
        }

        double before = guess;
        double flowBefore = pumps.FlowAt(before);
        PathLosses lossesBefore = task.LossesAt(flowBefore);
        double missingBefore = Missing(task, flowBefore, lossesBefore, held, before);
        if (missingBefore == 0)
        {
            met = new(flowBefore, lossesBefore);
            return Within(pumps, flowBefore);
        }

        double rise = before + FirstStep(pumps, before, flowBefore, lossesBefore.Total, missingBefore);
        for (int step = 0; step < MaximumSteps && rise >= 0; step++)
        {
            double flow = pumps.FlowAt(rise);
            PathLosses losses = task.LossesAt(flow);
            double missing = Missing(task, flow, losses, held, rise);
            if (missing == 0)
            {
                met = new(flow, losses);
                return Within(pumps, flow);
            }

            double slope = (missing - missingBefore) / (rise - before);
            if (!(slope < 0))
            {
                return false;
            }

            double move = missing / slope;
            if (Math.Abs(move) <= SmallStep * task.Scale
                && Math.Abs(move * (rise - before)) <= SmallProduct * task.Scale * task.Scale
                && rise >= move)
            {
                double last = pumps.FlowAt(rise - move);
                double share = (last - flow) / (flow - flowBefore);
                share = double.IsFinite(share) ? share : 0;
                met = new(last, losses.CarriedOn(lossesBefore, share));
                double left = missing + move + (share * (missing + rise - missingBefore - before));
                if (task.Held is null || held is null
                    ? Math.Abs(left * (last - flow)) <= Math.Abs(SmallFlow * last * missing)
                    : IsMet(task, pumps, held, rise - move, ref met))
                {
                    return Within(pumps, last);
                }
            }

            (before, flowBefore, lossesBefore, missingBefore) = (rise, flow, losses, missing);
            rise -= move;
        }

        return false;
    }

    // A measured regulator's curve has corners, at which nothing can be carried on.
    private static bool IsMet(in CircuitTask task, RunningPumps pumps, RegulatorReading? held, double rise, ref Intersection met)
    {
        met = met with { Losses = task.LossesAt(met.Flow) };
        return Math.Abs(Missing(task, met.Flow, met.Losses, held, rise)) <= SmallMissing * task.Scale;
    }

    private static bool Within(RunningPumps pumps, double flow) => flow > 0 && flow < pumps.FreeFlow;

    /// <summary>What is asked for at a flow over a rise, Pa.</summary>
    private static double Missing(in CircuitTask task, double flow, in PathLosses losses, RegulatorReading? held, double rise) =>
        losses.Total + (held is { } side ? task.PressureAt(flow, side) : task.Set) - rise;

    // Losses grow about as flow^1.8, and a pump's flow falls about as the square of the rise: good enough to begin with.
    private static double FirstStep(RunningPumps pumps, double rise, double flow, double loss, double missing)
    {
        double stiffness = 2 * 1.8 * loss * (pumps.FreeFlow - flow) / (flow * rise);
        return stiffness > 0 && stiffness < double.PositiveInfinity ? missing / (1 + stiffness) : missing;
    }
}

/// <summary>What the pumps' rise is over the one asked for, as a share of the circuit's scale of pressure, by share of their free flow.</summary>
internal readonly struct RiseExcess(CircuitTask task, RunningPumps pumps, bool asSet) : IFalling
{
    public double At(double x)
    {
        double flow = x * pumps.FreeFlow;
        double asked = asSet ? task.RiseToDeliver(flow) : task.RiseToPass(flow);
        return (pumps.RiseAt(flow) - asked) / task.Scale;
    }
}

/// <summary>The same where the regulator holds a pressure that changes with what returns through it, by one side of its data.</summary>
internal readonly struct HeldExcess(CircuitTask task, RunningPumps pumps, RegulatorReading reading) : IFalling
{
    public double At(double x)
    {
        double flow = x * pumps.FreeFlow;
        return (pumps.RiseAt(flow) - task.RiseToPass(flow, reading)) / task.Scale;
    }
}
