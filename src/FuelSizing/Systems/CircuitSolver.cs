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
    private static double AtSet(in CircuitTask task, RunningPumps pumps)
    {
        CircuitTask given = task;
        double free = pumps.FreeFlow;
        double Excess(double share) =>
            Share.Of<Real>(pumps.RiseAt(share * free) - ToRegulator(given, share * free) - given.Set, given.Set);
        return free <= 0 ? 0 : free * Crossing.Of(Excess, 0, 1);
    }

    private static CircuitState Governed(in CircuitTask task, RunningPumps pumps, double atSet)
    {
        // With the rail as set this is where they meet; only a way back that asks for more moves the crossing.
        double flow = atSet;
        if (atSet < task.Injected)
        {
            return Sagging(task, pumps);
        }

        if (Back(task, atSet - task.Injected) > task.Set)
        {
            CircuitTask given = task;
            double Excess(double share) => Share.Of<Real>(
                pumps.RiseAt(share * pumps.FreeFlow) - Asked(given, share * pumps.FreeFlow), given.Set);
            double from = Share.Of<Real>(task.Injected, pumps.FreeFlow);
            if (Excess(from) < 0)
            {
                return Sagging(task, pumps);
            }

            flow = pumps.FreeFlow * Crossing.Of(Excess, from, Share.Of<Real>(atSet, pumps.FreeFlow));
        }

        double returned = Math.Max(0, flow - task.Injected);
        double back = Back(task, returned);
        double regulator = Math.Max(task.Set, back);
        RailState state = back > task.Set ? RailState.ReturnFloor
            : returned < task.MinimumReturn ? RailState.AtRegulatorLimit
            : RailState.Regulated;
        return Reaching(task, pumps, At(task, pumps, state, flow, returned, regulator, task.Supply));
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
            return At(task, slow, RailState.PumpFloor, task.Injected, 0, rail, slowest);
        }

        double fed = task.Supply
            * Crossing.Of(share => -Excess(share * given.Supply), Share.Of<Real>(slowest, task.Supply), 1);
        return At(task, task.Pump.Running(fed), RailState.Regulated, task.Injected, 0, task.Set, fed);
    }

    private static CircuitState Sagging(in CircuitTask task, RunningPumps pumps)
    {
        double regulator = pumps.RiseAt(task.Injected) - ToRegulator(task, task.Injected);
        return Reaching(
            task, pumps, At(task, pumps, RailState.Sagging, task.Injected, 0, regulator, task.Supply));
    }

    // A line that eats all the pressure on its way lets the demand through to nobody.
    private static CircuitState Reaching(in CircuitTask task, RunningPumps pumps, CircuitState state) =>
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
        double supply)
    {
        List<PumpPoint> points = [];
        pumps.Describe(flow, points);
        double inlet = 0 - Way(task, task.Plumbing.Suction, flow);
        double outlet = regulator + (task.HoldsAtRail ? Way(task, task.Plumbing.Supply, flow) : 0);

        // A hair to either side, since the pumps' curve may be upright there.
        const double Beside = 1e-12;
        double rise = Math.Max(0, outlet - inlet);
        double off = Math.Max(
            pumps.FlowAt(rise * (1 + Beside)) - flow, flow - pumps.FlowAt(rise * (1 - Beside)));
        return new()
        {
            State = state,
            RailGauge = task.HoldsAtRail ? regulator : regulator - Way(task, task.Plumbing.Supply, task.Injected),
            InletGauge = inlet,
            OutletGauge = outlet,
            BackGauge = Back(task, returned),
            PumpFlow = flow,
            Returned = returned,
            FedVoltage = supply,
            Pumps = points,
            Residual = Share.Of<Real>(Math.Max(0, off), flow),
        };
    }

    /// <summary>Data that ends before the point leaves only the regulator's word.</summary>
    private static CircuitState Judged(CircuitState solved)
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
}
