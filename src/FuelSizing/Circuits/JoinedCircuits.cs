using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Pumps;

namespace FuelSizing.Circuits;

/// <summary>Two circuits joined by a surge tank, solved: the lift circuit while the tank fills and while it is full, and the main circuit with it full.</summary>
/// <remarks>
/// The main circuit by itself is solved with its tank at ambient pressure, as while the surge tank falls. With the tank full its pressure is over that,
/// by what the overflow line takes: the lift pump works against it, and the main pumps gain it. Both are states of the same car.
/// </remarks>
internal sealed class JoinedCircuits
{
    private readonly SurgeTank _tank;
    private readonly CircuitTask _main;
    private readonly CircuitBounds _emptying;
    private readonly double[] _guesses = new double[RunningPumps.MaximumGuesses];
    private (double Pressure, CircuitSide Side, CircuitState State) _last = (double.NaN, default, default);
    private TangentEnd _end;

    private JoinedCircuits(SurgeTank tank, in CircuitTask main, in CircuitBounds emptying)
    {
        (_tank, _main, _emptying) = (tank, main, emptying);
        PumpBounds pumps = tank.LiftPump.Bounds(main.Supply);
        FillingTask = LiftCircuit.Of(tank, main, main.Injected, 0);
        Lifted filling = Lifted.Of(pumps, FillingTask);
        Filling = Each(pumps, filling, FillingTask);
        double floor = LiftCircuit.FloorOf(FillingTask);
        FullTask = FillingTask with { Set = floor };
        Lifted sure = floor > 0 ? Lifted.Of(pumps, FullTask) : filling;
        Sure = floor > 0 ? Each(pumps, sure, FullTask) : Filling;

        // The most pressure goes with the most lifted and the least drawn.
        bool exact = IsExact(pumps);
        Join estimate = JoinedBy(pumps.Estimate, sure.Estimate, CircuitSide.Estimate);
        Join lower = exact ? estimate : JoinedBy(pumps.Lower, sure.Lower, CircuitSide.FlowsMore);
        Join upper = exact ? estimate : JoinedBy(pumps.Upper, sure.Upper, CircuitSide.FlowsLess);

        // A curve that begins at a higher pressure says nothing of the most that is lifted.
        bool isKnown = Sure.Upper.State != RailState.NotCovered && upper.Lift?.State != RailState.NotCovered;
        (MinimumGauge, MaximumGauge) = (lower.Pressure, isKnown ? upper.Pressure : double.NaN);
        Full = upper.Lift is null && estimate.Lift is null && lower.Lift is null
            ? null
            : new(estimate.Lift ?? Filling.Estimate, lower.Lift ?? Filling.Lower, upper.Lift ?? Filling.Upper);
        IsFull = estimate.Lift is not null && !double.IsNaN(estimate.Drawn);
        IsSurelyFull = lower.Lift is not null && !double.IsNaN(lower.Drawn);
        Balance = estimate;
        if (!(MaximumGauge <= 0))
        {
            // Mostly all three are one pressure, and often one state, which the join has found already.
            CircuitBounds shown = exact && main.MinimumSupply is null && main.Pump.Bounds(main.Supply).IsKnown
                ? CircuitBounds.Exactly(estimate.Main)
                : MainAt(estimate.Pressure);
            CircuitBounds lowest = lower.Pressure == estimate.Pressure ? shown : MainAt(lower.Pressure);
            CircuitBounds highest = upper.Pressure == estimate.Pressure ? shown : MainAt(upper.Pressure);
            MainFull = new(shown.Estimate, lowest.Lower, isKnown ? highest.Upper : highest.Upper with { State = RailState.NotCovered })
            {
                Flows = shown.Flows is null ? null : (lowest.FlowsLess, highest.FlowsMore),
            };
        }

        CircuitBounds full = MainFull ?? emptying;
        MinimumDraw = Math.Max(DemandOf(emptying.FlowsLess), DemandOf(full.FlowsLess));

        // A tank under more pressure than the rail is set to would push its fuel through the pumps.
        MaximumDraw = MaximumGauge < main.Set || tank.ReturnsTo == ReturnDestination.SurgeTank
            ? Math.Max(DemandOf(emptying.FlowsMore), DemandOf(full.FlowsMore))
            : double.NaN;
    }

    /// <summary>The lift circuit into a tank at ambient pressure.</summary>
    public CircuitTask FillingTask { get; }

    /// <summary>Where that settles.</summary>
    public CircuitBounds Filling { get; }

    /// <summary>The lift circuit into a full tank.</summary>
    public CircuitTask FullTask { get; }

    /// <summary>Where it settles; none where no more is lifted than drawn.</summary>
    public CircuitBounds? Full { get; }

    /// <summary>The lift circuit against the column of fuel in the overflow line, with nothing that overflows: the most demand that it can sustain.</summary>
    public CircuitBounds Sure { get; }

    /// <summary>The main circuit with the tank full, its pressures over ambient; none where the full tank is at ambient pressure as well.</summary>
    public CircuitBounds? MainFull { get; }

    /// <summary>Lower bound of the pressure in the full tank, gauge, Pa; zero where it does not stay full.</summary>
    public double MinimumGauge { get; }

    /// <summary>Upper bound of it, gauge, Pa.</summary>
    public double MaximumGauge { get; }

    /// <summary>
    /// Lower bound of the net draw that the lift pump has to sustain, m³/s: all that the engine asks for, also where the rail does not get it.
    /// </summary>
    public double MinimumDraw { get; }

    /// <summary>Upper bound of it, m³/s; not a number where it is not known.</summary>
    public double MaximumDraw { get; }

    /// <summary>True if the tank stays full, as results show it.</summary>
    public bool IsFull { get; }

    /// <summary>True if it stays full by the least that the data of the pumps allow.</summary>
    public bool IsSurelyFull { get; }

    /// <summary>Both circuits as results show them.</summary>
    public Join Balance { get; }

    /// <summary>Solves two circuits joined by a tank.</summary>
    /// <param name="tank">The tank.</param>
    /// <param name="main">The circuit that draws from it.</param>
    /// <param name="emptying">The same solved, with the tank at ambient pressure.</param>
    public static JoinedCircuits Of(SurgeTank tank, in CircuitTask main, in CircuitBounds emptying) => new(tank, main, emptying);

    /// <summary>Net draw of a state of the main circuit from the surge tank, m³/s; not a number where it is not known.</summary>
    /// <param name="state">The state.</param>
    public double DrawOf(in CircuitState state) =>
        state.State == RailState.NotCovered
            ? _tank.ReturnsTo == ReturnDestination.SurgeTank ? _main.Injected : double.NaN
            : SurgeTankVolume.NetDraw<Real>(state.Flow, _tank.ReturnsTo == ReturnDestination.SurgeTank ? state.ReturnFlow : 0);

    /// <summary>
    /// What a lift pump has to bring so that the draw is sustained with a reserve, m³/s: the more it brings the more overflows, and where the main pumps gain the pressure
    /// that this makes in the tank, they draw more.
    /// </summary>
    /// <param name="reserve">As a share of the draw.</param>
    public double RequiredWith(double reserve)
    {
        const int MaximumSteps = 50;
        const double Settled = 1e-13;
        double draw = double.IsNaN(MaximumDraw) ? MinimumDraw : MaximumDraw;
        double required = PumpDuty.Required<Real>(draw, reserve, 0);
        for (int step = 0; step < MaximumSteps && !double.IsNaN(MaximumDraw); step++)
        {
            double least = DrawOf(MainAt(0).FlowsLess);
            double pressure = Math.Max(FullTask.Set, FullTask.ReturnLossAt(PumpDuty.Returned<Real>(required, double.IsNaN(least) ? 0 : least)));
            double before = required;
            required = PumpDuty.Required<Real>(Math.Max(draw, DemandOf(MainAt(pressure).FlowsMore)), reserve, 0);
            if (!(Math.Abs(required - before) > Settled * before))
            {
                break;
            }
        }

        return required;
    }

    // Where the rail starves, less is drawn than asked for: the lift pump must be good for what is asked for.
    private double DemandOf(in CircuitState state) => _tank.ReturnsTo == ReturnDestination.SurgeTank
        ? _main.Injected
        : Math.Max(_main.Injected, DrawOf(state));

    private bool IsExact(PumpBounds lift) =>
        lift.IsKnown
        && ReferenceEquals(_emptying.Lower.Running, _emptying.Estimate.Running)
        && ReferenceEquals(_emptying.Upper.Running, _emptying.Estimate.Running)
        && _emptying.Flows is null;

    /// <summary>The two circuits with one reading of either's pumps: the pressure at which the overflow line passes what is lifted and not drawn.</summary>
    private Join JoinedBy(RunningPumps lift, Intersection atSet, CircuitSide side)
    {
        // Not known is not nothing, but the less is drawn the more overflows.
        double[] guesses = new double[RunningPumps.MaximumGuesses];
        TangentEnd end = default;
        CircuitState? Over(double drawn)
        {
            TangentSearch search = new(guesses, double.NaN, end);
            CircuitState? full = LiftCircuit.Full(FullTask with { Injected = double.IsNaN(drawn) ? 0 : drawn }, lift, atSet, ref search);
            end = search.Last;
            return full;
        }

        Join At(double pressure)
        {
            CircuitState main = MainAt(pressure, side);
            double drawn = DrawOf(main);
            CircuitState? full = Over(drawn);
            return new(full?.RailGauge ?? 0, full, main, drawn);
        }

        // Between a tank that is not full and one that overflows: fuel stands in an overflow line that rises, as high as the lift pump just brings what is drawn.
        Join Column(Join notFull)
        {
            double Missing(double pressure) =>
                LiftCircuit.Filling(FillingTask with { Set = pressure }, lift).Flow - (DrawOf(MainAt(pressure, side)) is var drawn && double.IsNaN(drawn) ? 0 : drawn);
            double floor = FullTask.Set;
            if (!(floor > 0) || !(Missing(0) > 0))
            {
                return notFull;
            }

            double pressure = floor * Bracket.Of(share => Missing(share * floor) / lift.FreeFlow, 0, 1);
            CircuitState main = MainAt(pressure, side);
            return new(pressure, LiftCircuit.Filling(FillingTask with { Set = pressure }, lift), main, DrawOf(main));
        }

        Join first = At(0);
        if (first.Lift is null)
        {
            return Column(first);
        }

        if (first.Pressure == 0)
        {
            return first;
        }

        double highest = first.Pressure;
        CircuitState there = MainAt(highest, side);
        double drawnThere = DrawOf(there);
        if (drawnThere == first.Drawn || double.IsNaN(first.Drawn))
        {
            CircuitState? full = drawnThere == first.Drawn ? first.Lift : Over(drawnThere);
            return new(full?.RailGauge ?? 0, full, there, drawnThere);
        }

        // The more pressure in the tank, the more is drawn, and the less overflows: secants settle at once, the first of them from an empty tank to here.
        if (!TrySecants(first, At, out Join met))
        {
            double found = highest * Bracket.Of(new PressureExcess(pressure => At(pressure).Pressure, highest), 0, 1);
            met = At(found) with { Pressure = found };
        }

        return met.Lift is null ? Column(first with { Pressure = 0, Lift = null }) : met;
    }

    /// <summary>The join at whose pressure so much passes that it makes that pressure; false where secants do not settle.</summary>
    /// <param name="first">With no pressure in the tank.</param>
    /// <param name="at">The join at a pressure, with the pressure that it makes.</param>
    /// <param name="met">The join.</param>
    private static bool TrySecants(Join first, Func<double, Join> at, out Join met)
    {
        const int MaximumSteps = 12;
        const double Settled = 2e-13;
        double highest = first.Pressure;
        (double before, double madeBefore, double pressure) = (0, first.Pressure, highest);
        met = default;
        for (int step = 0; step < MaximumSteps; step++)
        {
            Join here = at(pressure);
            double slope = ((here.Pressure - madeBefore) / (pressure - before)) - 1;
            double move = (pressure - here.Pressure) / slope;
            if (here.Lift is null || !(slope < 0))
            {
                return false;
            }

            if (Math.Abs(move) <= Settled * highest)
            {
                met = here with { Pressure = pressure };
                return true;
            }

            (before, madeBefore) = (pressure, here.Pressure);
            pressure += move;
            if (!(pressure >= 0 && pressure <= highest))
            {
                return false;
            }
        }

        return false;
    }

    /// <summary>One side of the main circuit with so much pressure in its tank; the last one is kept, for it is often asked for again.</summary>
    private CircuitState MainAt(double pressure, CircuitSide side)
    {
        if (pressure == 0)
        {
            return _emptying.Of(side);
        }

        if (_last.Pressure != pressure || _last.Side != side)
        {
            // Each side from a fresh start: two that are the same come out the same to the last bit.
            CircuitState near = _emptying.Of(side);
            TangentSearch search = new(_guesses, RiseNear(near.PumpRise - pressure), _last.Side == side ? _end : default);
            _last = (pressure, side, Raised(CircuitSolver.SolveSide(Under(pressure), side, ref search), pressure));
            _end = search.Last;
        }

        return _last.State;
    }

    /// <summary>A rise to begin with, Pa: none where a controller slows the pumps.</summary>
    private double RiseNear(double rise) => _main.MinimumSupply is null && rise > 0 ? rise : double.NaN;

    /// <summary>The main circuit with so much pressure in its tank, from which its own are counted.</summary>
    private CircuitTask Under(double pressure) => _main with
    {
        Set = Math.Max(_main.Set - pressure, 1),
        ReturnEnd = _tank.ReturnsTo == ReturnDestination.SurgeTank ? 0 : -pressure,
        Origin = pressure,
    };

    /// <summary>The main circuit with so much pressure in its tank: pressures are counted from there, and turned back.</summary>
    private CircuitBounds MainAt(double pressure)
    {
        if (pressure == 0)
        {
            return _emptying;
        }

        TangentSearch search = new(stackalloc double[RunningPumps.MaximumGuesses], RiseNear(_emptying.Estimate.PumpRise - pressure));
        CircuitBounds over = CircuitSolver.SolveBounds(Under(pressure), null, ref search);
        return new(Raised(over.Estimate, pressure), Raised(over.Lower, pressure), Raised(over.Upper, pressure))
        {
            Flows = over.Flows is { } flows ? (Raised(flows.Least, pressure), Raised(flows.Most, pressure)) : null,
        };
    }

    private static CircuitState Raised(in CircuitState state, double pressure) => state with
    {
        RailGauge = state.RailGauge + pressure,
        InletGauge = state.InletGauge + pressure,
        OutletGauge = state.OutletGauge + pressure,
        ReturnGauge = state.ReturnGauge + pressure,
        Held = state.Held + pressure,
    };

    private static CircuitBounds Each(PumpBounds pumps, in Lifted lifted, in CircuitTask task)
    {
        CircuitState estimate = LiftCircuit.Filling(task, pumps.Estimate, lifted.Estimate);
        CircuitState lower = ReferenceEquals(pumps.Lower, pumps.Estimate) ? estimate : LiftCircuit.Filling(task, pumps.Lower, lifted.Lower);
        CircuitState upper = ReferenceEquals(pumps.Upper, pumps.Estimate) ? estimate : LiftCircuit.Filling(task, pumps.Upper, lifted.Upper);
        return new(estimate with { MinimumAtSet = lower.Flow, MaximumAtSet = upper.Flow }, lower, upper);
    }

    /// <summary>Where the lift pumps meet their circuit with a pressure in the tank, by every reading.</summary>
    private readonly record struct Lifted(Intersection Estimate, Intersection Lower, Intersection Upper)
    {
        public static Lifted Of(PumpBounds pumps, in CircuitTask task)
        {
            Intersection estimate = LiftCircuit.AtSet(task, pumps.Estimate);
            return new(
                estimate,
                ReferenceEquals(pumps.Lower, pumps.Estimate) ? estimate : LiftCircuit.AtSet(task, pumps.Lower),
                ReferenceEquals(pumps.Upper, pumps.Estimate) ? estimate : LiftCircuit.AtSet(task, pumps.Upper));
        }
    }

    private readonly struct PressureExcess(Func<double, double> passing, double highest) : IFalling
    {
        public double At(double x) => (passing(x * highest) / highest) - x;
    }
}

/// <summary>Both circuits with the tank as full as it stays.</summary>
/// <param name="Pressure">In the tank, gauge, Pa; zero where it does not stay full.</param>
/// <param name="Lift">The lift circuit; none where no more is lifted than drawn.</param>
/// <param name="Main">The main circuit.</param>
/// <param name="Drawn">Net draw, m³/s; not a number where it is not known.</param>
internal readonly record struct Join(double Pressure, CircuitState? Lift, CircuitState Main, double Drawn);
