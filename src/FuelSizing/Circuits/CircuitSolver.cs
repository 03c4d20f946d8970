using System.Runtime.CompilerServices;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Regulators;

namespace FuelSizing.Circuits;

/// <summary>Finds the flow and pressures at which pumps, lines and regulator agree.</summary>
/// <remarks>
/// The unknown is the flow through the pumps. What they give falls with it and what the circuit asks for grows with it, so
/// there is one crossing at the most, and it lies in a bracket: from the injected flow to the pumps' free flow. Where the
/// circuit asks for more than the pumps give already at the injected flow, the regulator is shut and the rail is what is left.
/// </remarks>
internal static class CircuitSolver
{
    // Of the set pressure. A steep slope changes by less within the last digits of a flow, an end of data by all.
    private const double Upright = 1e-3;

    /// <summary>Solves the circuit; every circuit has an answer, for one that cannot do its job says so in its state.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="table">What is known of circuits like it, if a sweep has made that out; the answer is the same within 10⁻¹².</param>
    public static CircuitState Solve(in CircuitTask task, CircuitTable? table = null) => SolveBounds(task, table).Estimate;

    /// <summary>
    /// Solves the circuit with its pumps as results show them, and with the least and the most that their data allow; all the same where
    /// the data covers the point.
    /// </summary>
    /// <param name="task">The circuit.</param>
    /// <param name="table">What is known of circuits like it, if a sweep has made that out.</param>
    public static CircuitBounds SolveBounds(in CircuitTask task, CircuitTable? table = null)
    {
        // A plain circuit is solved in less than the making of a search takes.
        if (task.Held is not null || (table?.Serves(task) == true ? table.Pumps : task.Pump.Bounds(task.Supply)).IsNested)
        {
            return SolveNested(task, table);
        }

        TangentSearch none = default;
        return SolveBounds(task, table, ref none);
    }

    // Apart, for its room is made where it is called.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static CircuitBounds SolveNested(in CircuitTask task, CircuitTable? table)
    {
        TangentSearch search = new(stackalloc double[RunningPumps.MaximumGuesses]);
        return SolveBounds(task, table, ref search);
    }

    /// <summary>The same from where a circuit that differs little was solved; the answer is the same within 10⁻¹².</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="table">What is known of circuits like it, if a sweep has made that out.</param>
    /// <param name="search">That goes on from there.</param>
    public static CircuitBounds SolveBounds(in CircuitTask task, CircuitTable? table, ref TangentSearch search)
    {
        if (task.Held is not null)
        {
            return SolveByFlow(task, ref search);
        }

        if (table?.Serves(task) == false)
        {
            table = null;
        }

        PumpBounds bounds = table?.Pumps ?? task.Pump.Bounds(task.Supply);

        // A pump that is slowed may run under its lowest curve though the supply is over it.
        bool slowed = task.MinimumSupply is { } minimum && !task.Pump.IsMeasured(Math.Min(minimum, task.Supply));
        CircuitState estimate = Solve(task, bounds.Estimate, PumpReading.Estimate, AtSet(task, bounds.Estimate, table?.Estimate, ref search));
        CircuitState lower = !slowed && ReferenceEquals(bounds.Lower, bounds.Estimate)
            ? estimate
            : Beside(task, estimate, bounds.Lower, PumpReading.Lower, table?.Lower, ref search);
        CircuitState upper = !slowed && ReferenceEquals(bounds.Upper, bounds.Estimate)
            ? estimate
            : Beside(task, estimate, bounds.Upper, PumpReading.Upper, table?.Upper, ref search);
        return new(estimate with { MinimumAtSet = lower.MinimumAtSet, MaximumAtSet = upper.MaximumAtSet }, lower, upper);
    }

    /// <summary>One of the bounds, without the others where that saves them; what the pumps deliver with the rail as set may be left out.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="side">Which bound.</param>
    public static CircuitState SolveSide(in CircuitTask task, CircuitSide side)
    {
        TangentSearch search = new(stackalloc double[RunningPumps.MaximumGuesses]);
        return SolveSide(task, side, ref search);
    }

    /// <summary>The same from where a circuit that differs little was solved.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="side">Which bound.</param>
    /// <param name="search">That goes on from there.</param>
    public static CircuitState SolveSide(in CircuitTask task, CircuitSide side, ref TangentSearch search)
    {
        PumpBounds pumps = task.Pump.Bounds(task.Supply);
        bool banded = task.Held is { HasBand: true };
        if (task.Held is null || (pumps.IsKnown && !banded))
        {
            return SolveBounds(task, null, ref search).Of(side);
        }

        return side switch
        {
            // Without a band every reading of the regulator is the same.
            CircuitSide.FlowsLess => ByFlow(task, pumps.Lower, RegulatorReading.Upper, ref search),
            CircuitSide.FlowsMore => ByFlow(task, pumps.Upper, RegulatorReading.Lower, ref search),
            _ => ByFlow(task, pumps.Estimate, RegulatorReading.Estimate, ref search),
        };
    }

    /// <summary>Solves a circuit whose regulator holds a pressure that changes with what returns through it, by every reading of pumps and regulator.</summary>
    private static CircuitBounds SolveByFlow(in CircuitTask task, ref TangentSearch search)
    {
        PumpBounds pumps = task.Pump.Bounds(task.Supply);
        bool banded = task.Held!.HasBand;
        bool known = pumps.IsKnown;
        CircuitState estimate = ByFlow(task, pumps.Estimate, RegulatorReading.Estimate, ref search);
        CircuitState lower = known && !banded ? estimate : ByFlow(task, pumps.Lower, RegulatorReading.Lower, ref search);
        CircuitState upper = known && !banded ? estimate : ByFlow(task, pumps.Upper, RegulatorReading.Upper, ref search);
        double losses = estimate.PumpRise - Math.Max(estimate.Held, estimate.ReturnGauge);
        double minimum = Against(task, pumps.Lower, RegulatorReading.Upper, losses, ref search);
        double maximum = known && !banded ? minimum : Against(task, pumps.Upper, RegulatorReading.Lower, losses, ref search);
        CircuitState Delivering(in CircuitState state) => state with { MinimumAtSet = minimum, MaximumAtSet = maximum };
        return new(Delivering(estimate), Delivering(lower), Delivering(upper))
        {
            Flows = !banded ? null
                : known ? (upper, lower)
                : (ByFlow(task, pumps.Lower, RegulatorReading.Upper, ref search), ByFlow(task, pumps.Upper, RegulatorReading.Lower, ref search)),
        };
    }

    /// <summary>What pumps deliver against the pressure that they are judged by, m³/s; found the sooner from losses near those there.</summary>
    private static double Against(in CircuitTask task, RunningPumps pumps, RegulatorReading reading, double losses, ref TangentSearch search)
    {
        CircuitTask against = task with { Set = Math.Max(task.DeliveredAgainst(reading), 1), Held = null };
        return search.TryFind(against, pumps, held: null, against.Set + losses, out Intersection met)
            ? met.Flow
            : PumpIntersection.AtSet(against, pumps, pumps.GivesFlow && losses > 0 ? losses : double.NaN).Flow;
    }

    /// <summary>
    /// Solves such a circuit by one reading. What the regulator holds jumps where its data ends: there its flow is known, and the pressure is what the pumps leave.
    /// </summary>
    private static CircuitState ByFlow(in CircuitTask task, RunningPumps pumps, RegulatorReading reading, ref TangentSearch search)
    {
        // To either side of the flow found, for what is held there where that is an upright.
        const double Beside = 1e-12;
        CircuitState solved;
        if (task.Injected >= pumps.FreeFlow)
        {
            solved = Starved(task, pumps, 0, 0);
        }
        else if (!TryMeet(task, pumps, reading, ref search, out Intersection met))
        {
            solved = Sagging(task, pumps) with { Held = task.RegulatedAt(task.Injected, RegulatorReading.Estimate) };
        }
        else
        {
            double flow = met.Flow;
            double back = task.ReturnPressureAt(flow);
            (double under, double over) = (flow - (Beside * pumps.FreeFlow), flow + (Beside * pumps.FreeFlow));

            // Upright: over more than the flow's own last digits account for, which are those that the return line differs by between the two.
            double held = task.RegulatedAt(over, back, reading) - task.RegulatedAt(under, back, reading) > Upright * task.Scale
                ? Math.Clamp(
                    CircuitPressure.Remaining<Real>(pumps.RiseAt(flow), met.Losses.Total), task.RegulatedAt(under, reading), task.RegulatedAt(over, reading))
                : task.RegulatedAt(flow, back, reading);
            RailState state = back > held ? RailState.ReturnFloor : Regulating(task, flow);
            solved = Reaching(task, pumps, At(task, pumps, state, met, Math.Max(held, back), back, task.Supply)) with { Held = held };
        }

        return solved with { State = Judged(solved) };
    }

    /// <summary>Where pumps meet a circuit that returns something; false where they do not bring what is injected.</summary>
    private static bool TryMeet(in CircuitTask task, RunningPumps pumps, RegulatorReading reading, ref TangentSearch search, out Intersection met)
    {
        double guess = task.RiseToPass(task.Injected, reading);
        if (search.TryFind(task, pumps, reading, guess, out met) || PumpIntersection.TryFind(task, pumps, reading, guess, out met))
        {
            return met.Flow >= task.Injected;
        }

        HeldExcess excess = new(task, pumps, reading);
        double from = task.Injected / pumps.FreeFlow;
        if (excess.At(from) < 0)
        {
            return false;
        }

        double flow = pumps.FreeFlow * Bracket.Of(excess, from, 1);
        met = new(flow, task.LossesAt(flow));
        return true;
    }

    /// <summary>
    /// Solves the circuit with another reading of its pumps. Pumps that deliver the very same with the rail as set settle where the others
    /// do, as long as the regulator governs: what they would do past the end of their curves is not asked of them.
    /// </summary>
    private static CircuitState Beside(
        in CircuitTask task, in CircuitState estimate, RunningPumps pumps, PumpReading reading, IntersectionTable? table, ref TangentSearch search)
    {
        Intersection atSet = AtSet(task, pumps, table, ref search);
        bool same = atSet.Flow == estimate.MinimumAtSet
            && estimate.State is RailState.Regulated or RailState.AtRegulatorLimit
            && task.MinimumSupply is null;
        return same ? estimate : Solve(task, pumps, reading, atSet);
    }

    /// <summary>Solves the circuit with one reading of its pumps, by where they meet it with the rail as set.</summary>
    private static CircuitState Solve(in CircuitTask task, RunningPumps pumps, PumpReading reading, in Intersection atSet)
    {
        if (atSet.Flow < task.Injected || atSet.Flow >= pumps.FreeFlow || task.MinimumSupply is not null)
        {
            return Unregulated(task, pumps, reading, atSet);
        }

        // With the rail as set this is where they meet; only a return line that asks for more moves the crossing.
        double back = task.ReturnPressureAt(atSet.Flow);
        double rail = task.RailAsSet;
        return back <= task.Set && rail > 0 && pumps.IsFullyCovered(ends: false)
            ? At(task, pumps, Regulating(task, atSet.Flow), atSet, rail, task.Set, back, task.Supply, atSet.Flow, atSet.Flow)
            : Unregulated(task, pumps, reading, atSet);
    }

    /// <summary>Solves a circuit that is not simply regulated, or not surely covered by data.</summary>
    private static CircuitState Unregulated(in CircuitTask task, RunningPumps pumps, PumpReading reading, in Intersection atSet)
    {
        CircuitState solved = task.Injected >= pumps.FreeFlow
            ? Starved(task, pumps, 0, 0)
            : task.MinimumSupply is { } minimum ? Controlled(task, pumps, reading, minimum) : Governed(task, pumps, atSet);
        return solved with { State = Judged(solved), MinimumAtSet = atSet.Flow, MaximumAtSet = atSet.Flow };
    }

    private static RailState Regulating(in CircuitTask task, double flow) =>
        flow - task.Injected < task.MinimumReturn ? RailState.AtRegulatorLimit : RailState.Regulated;

    private static Intersection AtSet(in CircuitTask task, RunningPumps pumps, IntersectionTable? table, ref TangentSearch search) =>
        (table is not null && table.TryIntersect(task, out Intersection met))
        || (search.IsBetterFor(pumps) && search.TryFind(task, pumps, held: null, task.Set, out met))
            ? met
            : PumpIntersection.AtSet(task, pumps);

    private static CircuitState Governed(in CircuitTask task, RunningPumps pumps, in Intersection atSet)
    {
        Intersection met = atSet;
        if (met.Flow < task.Injected)
        {
            return Sagging(task, pumps);
        }

        double back = task.ReturnPressureAt(met.Flow);
        if (back > task.Set)
        {
            double guess = task.RiseToPass(atSet.Flow);
            if (!(pumps.IsNested && PumpIntersection.TryTangents(task, pumps, RegulatorReading.Estimate, guess, out met))
                && !PumpIntersection.TryFind(task, pumps, RegulatorReading.Estimate, guess, out met))
            {
                RiseExcess excess = new(task, pumps, asSet: false);
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

            back = task.ReturnPressureAt(met.Flow);
        }

        RailState state = back > task.Set ? RailState.ReturnFloor : Regulating(task, met.Flow);
        return Reaching(task, pumps, At(task, pumps, state, met, Math.Max(task.Set, back), back, task.Supply));
    }

    private static CircuitState Controlled(in CircuitTask task, RunningPumps full, PumpReading reading, double minimum)
    {
        CircuitTask given = task;
        double Excess(double supply)
        {
            double rise = given.Pump.Running(supply, reading).RiseAt(given.Injected);
            return (rise - given.RiseToPass(given.Injected)) / given.Set;
        }

        if (Excess(task.Supply) < 0)
        {
            return Sagging(task, full);
        }

        Intersection injected = new(task.Injected, task.LossesAt(task.Injected));
        double slowest = Math.Min(minimum, task.Supply);
        if (Excess(slowest) > 0)
        {
            RunningPumps slow = task.Pump.Running(slowest, reading);
            double rail = CircuitPressure.Remaining<Real>(slow.RiseAt(task.Injected), injected.Losses.Total);
            return At(task, slow, RailState.PumpFloor, injected, rail, task.ReturnLossAt(0), slowest);
        }

        double fed = task.Supply
            * Bracket.Of(share => -Excess(share * given.Supply), slowest / task.Supply, 1);
        return At(
            task, task.Pump.Running(fed, reading), RailState.Regulated, injected, task.Set, task.ReturnLossAt(0), fed);
    }

    private static CircuitState Sagging(in CircuitTask task, RunningPumps pumps)
    {
        Intersection injected = new(task.Injected, task.LossesAt(task.Injected));
        double regulator = CircuitPressure.Remaining<Real>(pumps.RiseAt(task.Injected), injected.Losses.Total);
        return Reaching(
            task, pumps, At(task, pumps, RailState.Sagging, injected, regulator, task.ReturnLossAt(0), task.Supply));
    }

    // A line that eats all the pressure on its way lets the demand through to nobody. A regulator at the tank that is open stays so.
    private static CircuitState Reaching(in CircuitTask task, RunningPumps pumps, in CircuitState state) =>
        state.RailGauge > 0 ? state
        : state.State == RailState.Sagging ? Starved(task, pumps, 0, 0)
        : Starved(task, pumps, state.OutletGauge - task.ToRegulator(state.Flow), state.Flow);

    /// <summary>What still gets to a rail without pressure: less than the demand, which is all that the pumps pass and the regulator returns not.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="pumps">The pumps at their supply.</param>
    /// <param name="held">Pressure that a regulator at the tank holds before the supply line, Pa; zero where it is shut.</param>
    /// <param name="pumped">Flow through the pumps at that pressure, m³/s.</param>
    private static CircuitState Starved(in CircuitTask task, RunningPumps pumps, double held, double pumped)
    {
        CircuitTask given = task;
        double Left(double flow) => (held > 0 ? held : pumps.RiseAt(flow) - given.Plumbing.SuctionLoss(flow, given.Density, given.KinematicViscosity) - given.ToRegulator(flow))
            - given.Plumbing.SupplyLoss(flow, given.Density, given.KinematicViscosity);
        double most = Math.Min(task.Injected, pumps.FreeFlow);
        double scale = Math.Max(task.Set, 1);
        double delivered = Left(most) >= 0 ? most
            : Left(0) <= 0 ? 0
            : most * Bracket.Of(share => Left(share * most) / scale, 0, 1);
        double flow = held > 0 ? pumped : delivered;
        double inlet = CircuitPressure.Inlet<Real>(task.Plumbing.SuctionLoss(flow, task.Density, task.KinematicViscosity));
        return new()
        {
            State = RailState.Starved,
            RailGauge = 0,
            InletGauge = inlet,
            OutletGauge = held > 0 ? held + (Real)task.ToRegulator(flow) : inlet + (Real)pumps.RiseAt(flow),
            ReturnGauge = 0,
            Flow = flow,
            ReturnFlow = flow - (Real)delivered,
            FedVoltage = task.Supply,
            Running = pumps,
        };
    }

    /// <summary>The state of the circuit with its flow and regulator pressure known.</summary>
    private static CircuitState At(
        in CircuitTask task,
        RunningPumps pumps,
        RailState state,
        in Intersection met,
        double regulator,
        double back,
        double supply) => At(task, pumps, state, met, task.RailAt(regulator), regulator, back, supply, 0, 0);

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
            InletGauge = CircuitPressure.Inlet<Real>(met.Losses.Suction),
            OutletGauge = CircuitPressure.Outlet<Real>(regulator, met.Losses.Supply),
            ReturnGauge = back,
            Flow = met.Flow,
            ReturnFlow = met.Flow - (Real)task.Injected,
            FedVoltage = supply,
            Running = pumps,
            MinimumAtSet = minimumAtSet,
            MaximumAtSet = maximumAtSet,
            IsByTangents = met.IsByTangents,
        };

    /// <summary>Data that ends before the point leaves only the regulator's word.</summary>
    private static RailState Judged(in CircuitState solved)
    {
        // A curve that ends with flow to spare still gives a least flow, which is enough where the regulator governs.
        bool governs = solved.State is RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor;
        return solved.Uncovered(ends: !governs) == 0 ? solved.State : RailState.NotCovered;
    }
}
