using FuelSizing.Numerics;
using FuelSizing.Pumps;

namespace FuelSizing.Circuits;

/// <summary>Finds the flow and pressures at which pumps, lines and regulator agree.</summary>
/// <remarks>
/// The unknown is the flow through the pumps. What they give falls with it and what the circuit asks for grows with it, so
/// there is one crossing at the most, and it lies in a bracket: from the injected flow to the pumps' free flow. Where the
/// circuit asks for more than the pumps give already at the injected flow, the regulator is shut and the rail is what is left.
/// </remarks>
internal static class CircuitSolver
{
    // A secant's error after a step is of the order of the product of the last two steps, on a smooth function.
    private const double SmallStep = 1e-8;
    private const double SmallProduct = 1e-14;
    private const int MaximumSteps = 12;

    // Of the flow. A curve that falls steeply bends within less than the last two steps, so what is left is looked at too.
    private const double SmallFlow = 1e-12;

    /// <summary>Solves the circuit; every circuit has an answer, for one that cannot do its job says so in its state.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="table">What is known of circuits like it, if a sweep has made that out; the answer is the same within 10⁻¹².</param>
    public static CircuitState Solve(in CircuitTask task, CircuitTable? table = null)
    {
        if (table?.Serves(task) == false)
        {
            table = null;
        }

        PumpBounds kept = table?.Pumps ?? task.Pump.Kept(task.Supply);
        RunningPumps pumps = kept.Lower;
        Intersection atSet = AtSet(task, pumps, table?.Lower);
        double maximum = ReferenceEquals(kept.Upper, pumps) ? atSet.Flow : AtSet(task, kept.Upper, table?.Upper).Flow;
        if (atSet.Flow < task.Injected || atSet.Flow >= pumps.FreeFlow || task.MinimumSupply is not null)
        {
            return Unregulated(task, pumps, atSet, maximum);
        }

        // With the rail as set this is where they meet; only a way back that asks for more moves the crossing.
        double back = ReturnAt(task, atSet.Flow);
        double rail = RailAt(task, task.Set);
        return back <= task.Set && rail > 0 && pumps.IsFullyCovered(ends: false)
            ? At(task, pumps, Regulating(task, atSet.Flow), atSet, rail, task.Set, back, task.Supply, atSet.Flow, maximum)
            : Unregulated(task, pumps, atSet, maximum);
    }

    /// <summary>Solves a circuit that is not simply regulated, or not surely covered by data.</summary>
    private static CircuitState Unregulated(in CircuitTask task, RunningPumps pumps, in Intersection atSet, double maximum)
    {
        CircuitState solved = task.Injected >= pumps.FreeFlow
            ? Starved(task, pumps)
            : task.MinimumSupply is { } minimum ? Controlled(task, pumps, minimum) : Governed(task, pumps, atSet);
        return solved with { State = Judged(solved), MinimumAtSet = atSet.Flow, MaximumAtSet = maximum };
    }

    private static RailState Regulating(in CircuitTask task, double flow) =>
        flow - task.Injected < task.MinimumReturn ? RailState.AtRegulatorLimit : RailState.Regulated;

    /// <summary>Rise that the pumps need to deliver a flow with the rail at its set pressure, Pa.</summary>
    public static double RiseToDeliver(in CircuitTask task, double flow) => (Real)task.LossesAt(flow).Total + task.Set;

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

        if (TryIntersect(task, pumps, asSet: true, task.Set + (double.IsNaN(guess) ? 0 : guess), out Intersection met))
        {
            return met;
        }

        Excess excess = new(task, pumps, asSet: true);
        double flow = pumps.FreeFlow
            * (!pumps.GivesFlow && guess > 0
                && Secant.TryNear(excess, guess / pumps.FreeFlow, out double near) && near <= 1
                    ? near
                    : Bracket.Of(excess, 0, 1));
        return new(flow, task.LossesAt(flow));
    }

    private static Intersection AtSet(in CircuitTask task, RunningPumps pumps, IntersectionTable? table) =>
        table is not null && table.TryIntersect(task, out Intersection met) ? met : AtSet(task, pumps);

    /// <summary>
    /// Where pumps meet the circuit, found by way of the rise, of which their flow follows at once. Losses change little with
    /// it, so a few secants do; the last step carries the losses on instead of asking for them again. False where they do
    /// not settle: where a relief valve opens, or where pumps give their flow by a search themselves.
    /// </summary>
    /// <param name="task">The circuit.</param>
    /// <param name="pumps">The pumps.</param>
    /// <param name="asSet">The rail is as set, whatever the way back asks for.</param>
    /// <param name="guess">A rise near the one wanted, Pa.</param>
    /// <param name="met">The meeting.</param>
    private static bool TryIntersect(in CircuitTask task, RunningPumps pumps, bool asSet, double guess, out Intersection met)
    {
        met = default;
        if (!pumps.GivesFlow)
        {
            return false;
        }

        double before = guess;
        double flowBefore = pumps.FlowAt(before);
        PathLosses lossesBefore = task.LossesAt(flowBefore);
        double missingBefore = Missing(task, flowBefore, lossesBefore, asSet, before);
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
            double missing = Missing(task, flow, losses, asSet, rise);
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
            if (Math.Abs(move) <= SmallStep * task.Set
                && Math.Abs(move * (rise - before)) <= SmallProduct * task.Set * task.Set
                && rise >= move)
            {
                double last = pumps.FlowAt(rise - move);
                double share = (last - flow) / (flow - flowBefore);
                share = double.IsFinite(share) ? share : 0;
                met = new(last, losses.CarriedOn(lossesBefore, share));
                double left = missing + move + (share * (missing + rise - missingBefore - before));
                if (Math.Abs(left * (last - flow)) <= Math.Abs(SmallFlow * last * missing))
                {
                    return Within(pumps, last);
                }
            }

            (before, flowBefore, lossesBefore, missingBefore) = (rise, flow, losses, missing);
            rise -= move;
        }

        return false;
    }

    private static bool Within(RunningPumps pumps, double flow) => flow > 0 && flow < pumps.FreeFlow;

    /// <summary>What is asked for at a flow over a rise, Pa.</summary>
    private static double Missing(in CircuitTask task, double flow, in PathLosses losses, bool asSet, double rise) =>
        losses.Total + (asSet ? task.Set : Math.Max(task.Set, ReturnAt(task, flow))) - rise;

    // Losses grow about as flow^1.8, and a pump's flow falls about as the square of the rise: good enough to begin with.
    private static double FirstStep(RunningPumps pumps, double rise, double flow, double loss, double missing)
    {
        double stiffness = 2 * 1.8 * loss * (pumps.FreeFlow - flow) / (flow * rise);
        return stiffness > 0 && stiffness < double.PositiveInfinity ? missing / (1 + stiffness) : missing;
    }

    private static CircuitState Governed(in CircuitTask task, RunningPumps pumps, in Intersection atSet)
    {
        Intersection met = atSet;
        if (met.Flow < task.Injected)
        {
            return Sagging(task, pumps);
        }

        double back = ReturnAt(task, met.Flow);
        if (back > task.Set)
        {
            if (!TryIntersect(task, pumps, asSet: false, Asked(task, atSet.Flow), out met))
            {
                Excess excess = new(task, pumps, asSet: false);
                double from = task.Injected / pumps.FreeFlow;
                double flow = excess.At(from) < 0
                    ? 0
                    : pumps.FreeFlow * Bracket.Of(excess, from, atSet.Flow / pumps.FreeFlow);
                met = new(flow, task.LossesAt(flow));
            }

            if (met.Flow < task.Injected)
            {
                return Sagging(task, pumps);
            }

            back = ReturnAt(task, met.Flow);
        }

        RailState state = back > task.Set ? RailState.ReturnFloor : Regulating(task, met.Flow);
        return Reaching(task, pumps, At(task, pumps, state, met, Math.Max(task.Set, back), back, task.Supply));
    }

    private static CircuitState Controlled(in CircuitTask task, RunningPumps full, double minimum)
    {
        CircuitTask given = task;
        double Excess(double supply)
        {
            double rise = given.Pump.Running(supply).RiseAt(given.Injected);
            return (rise - Asked(given, given.Injected)) / given.Set;
        }

        if (Excess(task.Supply) < 0)
        {
            return Sagging(task, full);
        }

        Intersection injected = new(task.Injected, task.LossesAt(task.Injected));
        double slowest = Math.Min(minimum, task.Supply);
        if (Excess(slowest) > 0)
        {
            RunningPumps slow = task.Pump.Running(slowest);
            double rail = slow.RiseAt(task.Injected) - (Real)injected.Losses.Total;
            return At(task, slow, RailState.PumpFloor, injected, rail, task.BackLossAt(0), slowest);
        }

        double fed = task.Supply
            * Bracket.Of(share => -Excess(share * given.Supply), slowest / task.Supply, 1);
        return At(
            task, task.Pump.Running(fed), RailState.Regulated, injected, task.Set, task.BackLossAt(0), fed);
    }

    private static CircuitState Sagging(in CircuitTask task, RunningPumps pumps)
    {
        Intersection injected = new(task.Injected, task.LossesAt(task.Injected));
        double regulator = pumps.RiseAt(task.Injected) - (Real)injected.Losses.Total;
        return Reaching(
            task, pumps, At(task, pumps, RailState.Sagging, injected, regulator, task.BackLossAt(0), task.Supply));
    }

    // A line that eats all the pressure on its way lets the demand through to nobody.
    private static CircuitState Reaching(in CircuitTask task, RunningPumps pumps, in CircuitState state) =>
        state.RailGauge > 0 ? state : Starved(task, pumps);

    private static CircuitState Starved(in CircuitTask task, RunningPumps pumps) => new()
    {
        State = RailState.Starved,
        RailGauge = 0,
        InletGauge = 0,
        OutletGauge = 0,
        ReturnGauge = 0,
        Flow = pumps.FreeFlow,
        Back = 0,
        FedVoltage = task.Supply,
        Running = pumps,
    };

    /// <summary>The state of the circuit with its flow and regulator pressure known.</summary>
    private static CircuitState At(
        in CircuitTask task,
        RunningPumps pumps,
        RailState state,
        in Intersection met,
        double regulator,
        double back,
        double supply) => At(task, pumps, state, met, RailAt(task, regulator), regulator, back, supply, 0, 0);

    private static CircuitState At(
        in CircuitTask task,
        RunningPumps pumps,
        RailState state,
        in Intersection met,
        double rail,
        double regulator,
        double back,
        double supply,
        double minimumAtSet,
        double maximumAtSet) => new()
        {
            State = state,
            RailGauge = rail,
            InletGauge = 0 - (Real)met.Losses.Suction,
            OutletGauge = regulator + (Real)met.Losses.Supply,
            ReturnGauge = back,
            Flow = met.Flow,
            Back = met.Flow - (Real)task.Injected,
            FedVoltage = supply,
            Running = pumps,
            MinimumAtSet = minimumAtSet,
            MaximumAtSet = maximumAtSet,
        };

    /// <summary>Pressure in the rail when the regulator has one, Pa.</summary>
    private static double RailAt(in CircuitTask task, double regulator) =>
        task.HoldsAtRail
            ? regulator
            : regulator - (Real)task.Plumbing.SupplyLoss(task.Injected, task.Density, task.KinematicViscosity);

    /// <summary>Data that ends before the point leaves only the regulator's word.</summary>
    private static RailState Judged(in CircuitState solved)
    {
        // A curve that ends with flow to spare still gives a least flow, which is enough where the regulator governs.
        bool governs = solved.State is RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor;
        return solved.Uncovered(ends: !governs) == 0 ? solved.State : RailState.NotCovered;
    }

    /// <summary>Pressure that the circuit asks of the pumps to pass a flow, Pa.</summary>
    public static double Asked(in CircuitTask task, double flow) =>
        (Real)task.LossesAt(flow).Total + Math.Max(task.Set, ReturnAt(task, flow));

    /// <summary>What the way back takes when the pumps pass a flow, Pa.</summary>
    private static double ReturnAt(in CircuitTask task, double flow) =>
        task.BackLossAt(Math.Max(0, flow - task.Injected));

    /// <summary>What the pumps' rise is over the one asked for, as a share of the set pressure, by share of their free flow.</summary>
    private readonly struct Excess(CircuitTask task, RunningPumps pumps, bool asSet) : IFalling
    {
        public double At(double x)
        {
            double flow = x * pumps.FreeFlow;
            double asked = asSet ? RiseToDeliver(task, flow) : Asked(task, flow);
            return (pumps.RiseAt(flow) - asked) / task.Set;
        }
    }
}
