using FuelSizing.Equations;
using FuelSizing.Pumps;
using MathNet.Numerics.RootFinding;

namespace FuelSizing.Systems;

/// <summary>Finds the flow and pressures at which pumps, lines and regulator agree.</summary>
/// <remarks>
/// The unknown is the flow through the pumps. What they give falls with it and what the circuit asks for grows with it, so
/// there is one crossing at the most, and it lies in a bracket: from the injected flow to the pumps' free flow. Where the
/// circuit asks for more than the pumps give already at the injected flow, the regulator is shut and the rail is what is left.
/// </remarks>
internal static class CircuitSolver
{
    private const double Accuracy = 1e-14;
    private const int MostIterations = 300;

    /// <summary>Solves the circuit; every circuit has an answer, for one that cannot do its job says so in its state.</summary>
    public static CircuitState Solve(in CircuitTask task)
    {
        double free = task.Pump.FreeFlow(task.Supply);
        double least = AtSet(task, free, generous: false);
        double most = AtSet(task, free, generous: true);
        CircuitState solved = task.Injected >= free
            ? Starved(task)
            : task.LowestSupply is { } lowest ? Controlled(task, lowest) : Governed(task, free);
        return Judged(solved with { LeastAtSet = least, MostAtSet = most });
    }

    /// <summary>Flow that the pumps deliver with the rail at its set pressure, whatever is injected, m³/s.</summary>
    private static double AtSet(in CircuitTask task, double free, bool generous)
    {
        CircuitTask given = task;
        double Excess(double flow) =>
            given.Pump.RiseAt(flow, given.Supply, generous) - ToRegulator(given, flow) - given.Set;
        return free <= 0 || Excess(0) <= 0 ? 0 : free * Root(share => Excess(share * free) / given.Set, 0);
    }

    private static CircuitState Governed(in CircuitTask task, double free)
    {
        CircuitTask given = task;
        double Excess(double flow) => given.Pump.RiseAt(flow, given.Supply, generous: false) - Asked(given, flow);
        if (Excess(task.Injected) < 0)
        {
            return Sagging(task, task.Supply);
        }

        double flow = free * Root(share => Excess(share * free) / given.Set, task.Injected / free);
        double returned = Math.Max(0, flow - task.Injected);
        double back = Back(task, returned);
        double regulator = Math.Max(task.Set, back);
        RailState state = back > task.Set ? RailState.ReturnFloor
            : returned < task.MinimumReturn ? RailState.AtRegulatorLimit
            : RailState.Regulated;
        return At(task, state, flow, returned, regulator, task.Supply);
    }

    private static CircuitState Controlled(in CircuitTask task, double lowest)
    {
        CircuitTask given = task;
        double Excess(double supply) =>
            given.Injected >= given.Pump.FreeFlow(supply)
                ? -given.Set
                : given.Pump.RiseAt(given.Injected, supply, generous: false) - Asked(given, given.Injected);
        if (Excess(task.Supply) < 0)
        {
            return Sagging(task, task.Supply);
        }

        if (Excess(lowest) > 0)
        {
            double rail = task.Pump.RiseAt(task.Injected, lowest, generous: false) - ToRegulator(task, task.Injected);
            return At(task, RailState.PumpFloor, task.Injected, 0, rail, lowest);
        }

        double fed = task.Supply * Root(share => Excess(share * given.Supply) / given.Set, lowest / task.Supply);
        return At(task, RailState.Regulated, task.Injected, 0, task.Set, fed);
    }

    private static CircuitState Sagging(in CircuitTask task, double supply)
    {
        double regulator =
            task.Pump.RiseAt(task.Injected, supply, generous: false) - ToRegulator(task, task.Injected);
        CircuitState state = At(task, RailState.Sagging, task.Injected, 0, regulator, supply);
        return state.RailGauge > 0 ? state : Starved(task);
    }

    private static CircuitState Starved(in CircuitTask task)
    {
        List<PumpPoint> pumps = [];
        double free = task.Pump.FreeFlow(task.Supply);
        task.Pump.Describe(free, task.Supply, pumps);
        return new()
        {
            State = RailState.Starved,
            RailGauge = 0,
            InletGauge = 0,
            OutletGauge = 0,
            BackGauge = 0,
            PumpFlow = free,
            Returned = 0,
            FedVoltage = task.Supply,
            LeastAtSet = 0,
            MostAtSet = 0,
            Pumps = pumps,
        };
    }

    /// <summary>The state of the circuit with its flow and regulator pressure known.</summary>
    private static CircuitState At(
        in CircuitTask task, RailState state, double flow, double returned, double regulator, double supply)
    {
        List<PumpPoint> pumps = [];
        task.Pump.Describe(flow, supply, pumps);
        bool atRail = task.Layout == LineLayout.Return || task.LowestSupply is not null;
        double inlet = 0 - Way(task, task.Plumbing.Suction, flow);
        double outlet = regulator + (atRail ? Way(task, task.Plumbing.Supply, flow) : 0);
        return new()
        {
            State = state,
            RailGauge = atRail ? regulator : regulator - Way(task, task.Plumbing.Supply, task.Injected),
            InletGauge = inlet,
            OutletGauge = outlet,
            BackGauge = Back(task, returned),
            PumpFlow = flow,
            Returned = returned,
            FedVoltage = supply,
            LeastAtSet = 0,
            MostAtSet = 0,
            Pumps = pumps,
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
    private static double Asked(in CircuitTask task, double flow) =>
        ToRegulator(task, flow) + Math.Max(task.Set, Back(task, Math.Max(0, flow - task.Injected)));

    /// <summary>Pressure lost from the tank to where the regulator feels it, Pa.</summary>
    private static double ToRegulator(in CircuitTask task, double flow)
    {
        Real loss = Way(task, task.Plumbing.Suction, flow);
        return task.Layout == LineLayout.Return || task.LowestSupply is not null
            ? loss + Way(task, task.Plumbing.Supply, flow)
            : loss;
    }

    private static double Back(in CircuitTask task, double returned) => Way(task, task.Plumbing.Back, returned);

    private static double Way(in CircuitTask task, IReadOnlyList<Lines.IFlowLoss> way, double flow) =>
        Plumbing.Loss(way, flow, task.Density, task.KinematicViscosity);

    private static double Root(Func<double, double> falling, double from) =>
        falling(from) <= 0 ? from : Brent.FindRoot(falling, from, 1, Accuracy, MostIterations);
}
