using FuelSizing.Equations;
using FuelSizing.Pumps;
using FuelSizing.Quantities;

namespace FuelSizing.Systems;

/// <summary>Finds the flow and pressures at which pumps, lines and regulator agree.</summary>
/// <remarks>
/// The unknown is the flow through the pumps. What they give falls with it and what the circuit asks for grows with it, so
/// there is one crossing at the most, and it lies in a bracket: from the injected flow to the pumps' free flow. Where the
/// circuit asks for more than the pumps give already at the injected flow, the regulator is shut and the rail is what is left.
/// </remarks>
internal static class CircuitSolver
{
    /// <summary>Solves the circuit; every circuit has an answer, for one that cannot do its job says so in its state.</summary>
    public static CircuitState Solve(in CircuitTask task)
    {
        KeptPumps kept = task.Pump.Kept(task.Supply);
        RunningPumps pumps = kept.Surely;
        double least = AtSet(task, pumps);
        double most = ReferenceEquals(kept.Perhaps, pumps) ? least : AtSet(task, kept.Perhaps);
        CircuitState solved = task.Injected >= pumps.FreeFlow
            ? Starved(task, pumps)
            : task.LowestSupply is { } lowest ? Controlled(task, pumps, lowest) : Governed(task, pumps, least);
        return Judged(solved with { LeastAtSet = least, MostAtSet = most });
    }

    /// <summary>Rise that the pumps need to deliver a flow with the rail at its set pressure, Pa.</summary>
    public static double RiseToDeliver(in CircuitTask task, double flow)
    {
        Real loss = ToRegulator(task, flow);
        return loss + task.Set;
    }

    /// <summary>Flow that the pumps deliver with the rail at its set pressure, whatever is injected, m³/s.</summary>
    private static double AtSet(in CircuitTask task, RunningPumps pumps) =>
        pumps.FreeFlow <= 0 ? 0
        : Meeting(task, pumps, asSet: true, task.Set, out double flow) ? flow
        : pumps.FreeFlow * Crossing.Of(new Excess(task, pumps, asSet: true), 0, 1);

    /// <summary>
    /// The flow at which pumps meet the circuit, found by way of the rise, of which their flow follows at once. Losses
    /// change little with it, so a few secants do. False where they do not settle: where a relief valve opens, or where
    /// pumps give their flow by a search themselves.
    /// </summary>
    /// <param name="task">The circuit.</param>
    /// <param name="pumps">The pumps.</param>
    /// <param name="asSet">The rail is as set, whatever the way back asks for.</param>
    /// <param name="guess">A rise near the one wanted, Pa.</param>
    /// <param name="flow">m³/s.</param>
    private static bool Meeting(in CircuitTask task, RunningPumps pumps, bool asSet, double guess, out double flow)
    {
        flow = 0;
        if (!pumps.GivesFlow
            || !Crossing.TryNear(new Missing(task, pumps, asSet), Share.Of<Real>(guess, task.Set), out double share))
        {
            return false;
        }

        flow = pumps.FlowAt(share * task.Set);
        return flow > 0 && flow < pumps.FreeFlow;
    }

    private static CircuitState Governed(in CircuitTask task, RunningPumps pumps, double atSet)
    {
        // With the rail as set this is where they meet; only a way back that asks for more moves the crossing.
        double flow = atSet;
        if (atSet < task.Injected)
        {
            return Sagging(task, pumps);
        }

        double back = Back(task, atSet - task.Injected);
        if (back > task.Set)
        {
            if (!Meeting(task, pumps, asSet: false, Asked(task, atSet), out flow))
            {
                Excess excess = new(task, pumps, asSet: false);
                double from = Share.Of<Real>(task.Injected, pumps.FreeFlow);
                flow = excess.At(from) < 0
                    ? 0
                    : pumps.FreeFlow * Crossing.Of(excess, from, Share.Of<Real>(atSet, pumps.FreeFlow));
            }

            if (flow < task.Injected)
            {
                return Sagging(task, pumps);
            }

            back = Back(task, flow - task.Injected);
        }

        double returned = flow - task.Injected;
        double regulator = Math.Max(task.Set, back);
        RailState state = back > task.Set ? RailState.ReturnFloor
            : returned < task.MinimumReturn ? RailState.AtRegulatorLimit
            : RailState.Regulated;
        return Reaching(task, pumps, At(task, pumps, state, flow, returned, regulator, back, task.Supply));
    }

    private static CircuitState Controlled(in CircuitTask task, RunningPumps full, double lowest)
    {
        CircuitTask given = task;
        double Excess(double supply)
        {
            double rise = given.Pump.Running(supply).RiseAt(given.Injected);
            return Share.Of<Real>(rise - Asked(given, given.Injected), given.Set);
        }

        if (Excess(task.Supply) < 0)
        {
            return Sagging(task, full);
        }

        double slowest = Math.Min(lowest, task.Supply);
        if (Excess(slowest) > 0)
        {
            RunningPumps slow = task.Pump.Running(slowest);
            double rail = slow.RiseAt(task.Injected) - ToRegulator(task, task.Injected);
            return At(task, slow, RailState.PumpFloor, task.Injected, 0, rail, Back(task, 0), slowest);
        }

        double fed = task.Supply
            * Crossing.Of(share => -Excess(share * given.Supply), Share.Of<Real>(slowest, task.Supply), 1);
        return At(task, task.Pump.Running(fed), RailState.Regulated, task.Injected, 0, task.Set, Back(task, 0), fed);
    }

    private static CircuitState Sagging(in CircuitTask task, RunningPumps pumps)
    {
        double regulator = pumps.RiseAt(task.Injected) - ToRegulator(task, task.Injected);
        return Reaching(
            task, pumps, At(task, pumps, RailState.Sagging, task.Injected, 0, regulator, Back(task, 0), task.Supply));
    }

    // A line that eats all the pressure on its way lets the demand through to nobody.
    private static CircuitState Reaching(in CircuitTask task, RunningPumps pumps, in CircuitState state) =>
        state.RailGauge > 0 ? state : Starved(task, pumps);

    private static CircuitState Starved(in CircuitTask task, RunningPumps pumps)
    {
        List<PumpPoint> points = [];
        pumps.Describe(pumps.FreeFlow, points);
        return new()
        {
            State = RailState.Starved,
            RailGauge = 0,
            InletGauge = 0,
            OutletGauge = 0,
            BackGauge = 0,
            PumpFlow = pumps.FreeFlow,
            Returned = 0,
            FedVoltage = task.Supply,
            Pumps = points,
            Residual = 0,
        };
    }

    /// <summary>The state of the circuit with its flow and regulator pressure known.</summary>
    private static CircuitState At(
        in CircuitTask task,
        RunningPumps pumps,
        RailState state,
        double flow,
        double returned,
        double regulator,
        double back,
        double supply)
    {
        double inlet = 0 - Way(task, task.Plumbing.Suction, flow);
        double outlet = regulator + (task.HoldsAtRail ? Way(task, task.Plumbing.Supply, flow) : 0);

        // A hair to either side, since the pumps' curve may be upright there.
        const double Beside = 1e-12;
        double rise = Math.Max(0, outlet - inlet);

        // At their ends the pumps' rise is theirs alone.
        List<PumpPoint> points = new(1);
        pumps.Describe(flow, flow > 0 && flow < pumps.FreeFlow ? rise : pumps.RiseAt(flow), points);
        double off = Math.Max(
            pumps.FlowNear(rise * (1 + Beside), flow) - flow, flow - pumps.FlowNear(rise * (1 - Beside), flow));
        return new()
        {
            State = state,
            RailGauge = task.HoldsAtRail ? regulator : regulator - Way(task, task.Plumbing.Supply, task.Injected),
            InletGauge = inlet,
            OutletGauge = outlet,
            BackGauge = back,
            PumpFlow = flow,
            Returned = returned,
            FedVoltage = supply,
            Pumps = points,
            Residual = Share.Of<Real>(Math.Max(0, off), flow),
        };
    }

    /// <summary>Data that ends before the point leaves only the regulator's word.</summary>
    private static CircuitState Judged(in CircuitState solved)
    {
        PumpCoverage coverage = PumpCoverage.Measured;
        foreach (PumpPoint pump in solved.Pumps)
        {
            coverage |= pump.Coverage;
        }

        // A curve that ends with flow to spare still gives a least flow, which is enough where the regulator governs.
        bool governs = solved.State is RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor;
        PumpCoverage lacking = governs
            ? PumpCoverage.VoltageBelow | PumpCoverage.PressureBelow
            : PumpCoverage.NotCovered;
        return (coverage & lacking) == 0
            ? solved
            : solved with { State = RailState.NotCovered, PumpFlow = null, Returned = null };
    }

    /// <summary>Pressure that the circuit asks of the pumps to pass a flow, Pa.</summary>
    public static double Asked(in CircuitTask task, double flow) =>
        ToRegulator(task, flow) + Math.Max(task.Set, Back(task, Math.Max(0, flow - task.Injected)));

    /// <summary>Pressure lost from the tank to where the regulator feels it, Pa.</summary>
    private static double ToRegulator(in CircuitTask task, double flow)
    {
        Real loss = Way(task, task.Plumbing.Suction, flow);
        return task.HoldsAtRail
            ? loss + Way(task, task.Plumbing.Supply, flow)
            : loss;
    }

    private static double Back(in CircuitTask task, double returned) => Way(task, task.Plumbing.Back, returned);

    private static double Way(in CircuitTask task, IReadOnlyList<Lines.IFlowLoss> way, double flow) =>
        Plumbing.Loss(way, flow, task.Density, task.KinematicViscosity);

    private static double Asked(in CircuitTask task, double flow, bool asSet) =>
        asSet ? RiseToDeliver(task, flow) : Asked(task, flow);

    /// <summary>What the pumps' rise is over the one asked for, as a share of the set pressure, by share of their free flow.</summary>
    private readonly struct Excess(CircuitTask task, RunningPumps pumps, bool asSet) : IFalling
    {
        public double At(double x)
        {
            double flow = x * pumps.FreeFlow;
            return Share.Of<Real>(pumps.RiseAt(flow) - Asked(task, flow, asSet), task.Set);
        }
    }

    /// <summary>What is asked for over a rise, as a share of the set pressure, by that rise as a share of it.</summary>
    private readonly struct Missing(CircuitTask task, RunningPumps pumps, bool asSet) : IFalling
    {
        public double At(double x) => Share.Of<Real>(Asked(task, pumps.FlowAt(x * task.Set), asSet), task.Set) - x;
    }
}
