using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;

namespace FuelSizing.Points;

/// <summary>Finds the mixture that an engine gets from its controller: the circuit at the flow that is really injected.</summary>
/// <remarks>
/// The unknown is the injected flow. The pressure in the rail falls with it, or stays, and what a pulse delivers falls with the pressure; so
/// there is one crossing, or, past the point where dead time outgrows flow, one that is found all the same, for the difference changes its
/// sign once between no flow and more than the pumps can feed.
/// </remarks>
internal readonly struct MixtureSolver
{
    // Two flows as near as this are one: the rail did not follow the flow.
    private const double SameFlow = 1e-14;

    private const int MaximumDoublings = 60;

    // Enough to find on which side of the turn-over a pressure lies: what is delivered has one maximum.
    private const int TurnOverSteps = 64;

    private readonly SystemParts _parts;
    private readonly PointDemand _demand;
    private readonly ControllerInput _input;
    private readonly FuelWanted _wanted;
    private readonly PulseCommanded _command;

    private MixtureSolver(SystemParts parts, in PointDemand demand)
    {
        (_parts, _demand) = (parts, demand);
        _input = InputOf(parts, demand);
        _wanted = Less(parts.Controller.Want(_input), demand);

        // What does not follow the pressure is the same at every flow that is tried.
        _command = parts.Controller.FollowsDifferential ? default : parts.Controller.Command(_input, _wanted, 1, 0);
    }

    /// <summary>The mixture at a point.</summary>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="demand">What the engine asks for there.</param>
    /// <param name="circuit">The circuit at that demand: where the rail does not follow the flow, it is that of the delivered flow too.</param>
    public static SolvedMixture Of(SystemParts parts, in PointDemand demand, in SolvedCircuit circuit)
    {
        SolvedMixture mixture = ByPumpData(parts, demand, circuit);

        // The share that is stated to evaporate draws more air, and leans the mixture; without it the engine has less air, and is richer.
        double without = FuelDemand.ShareWithoutEvaporation(demand.Chain, demand.Basis);
        return mixture with { MinimumLambda = mixture.MinimumLambda * without };
    }

    private static SolvedMixture ByPumpData(SystemParts parts, in PointDemand demand, in SolvedCircuit circuit)
    {
        MixtureSolver solver = new(parts, demand);
        CircuitBounds at = new(circuit.State, circuit.Lower, circuit.Upper);
        SolvedMixture mixture = solver.Solved(at, Reading.Estimate);
        if (circuit.IsExact && BoundsAt(mixture.Task) is var own && own.Lower == own.Estimate && own.Upper == own.Estimate)
        {
            return mixture;
        }

        double lower = solver.Solved(at, Reading.Lower).Lambda;
        double upper = solver.Solved(at, Reading.Upper).Lambda;
        return mixture with
        {
            MinimumLambda = Math.Min(mixture.Lambda, Math.Min(lower, upper)),
            MaximumLambda = Math.Max(mixture.Lambda, Math.Max(lower, upper)),
        };
    }

    /// <summary>The mixture that a system's own controller, or one that is assumed, gives at a point.</summary>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="demand">What the engine asks for there.</param>
    /// <param name="circuit">The circuit at that demand.</param>
    /// <param name="injection">Injection at the pressure in the rail, and at the one that injectors are judged by.</param>
    public static SolvedMixture In(SystemParts parts, in PointDemand demand, in SolvedCircuit circuit, (Injection Actual, Injection Judged) injection) =>
        parts.Controller.IsIdeal ? Assumed(parts, demand, circuit, injection) : Of(parts, demand.Alone, circuit);

    /// <summary>
    /// The mixture of a controller that commands whatever is needed: the target, unless the cycle is too short at the pressure that there is.
    /// </summary>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="demand">What the engine asks for there.</param>
    /// <param name="circuit">The circuit at that demand.</param>
    /// <param name="injection">Injection at the pressure in the rail, and at the one that injectors are judged by.</param>
    public static SolvedMixture Assumed(SystemParts parts, in PointDemand demand, in SolvedCircuit circuit, (Injection Actual, Injection Judged) injection)
    {
        Injection actual = injection.Actual;

        // Where the rail may be lower than shown, the cycle must not be too short there either.
        bool mayLean = circuit.Flows is not null && !(injection.Judged is { DutyCycle: < 1 } && Closes(injection.Judged.Secondary));
        if (parts.StagedInjectors is not null)
        {
            // What a controller commands of one set when the other never closes, or when the rail has no pressure, nobody stated.
            bool isMet = !mayLean && circuit.IsCovered && circuit.State.State != RailState.Starved
                && actual is { Pulse: not null, DeadTime: not null, DutyCycle: < 1 } && Closes(actual.Secondary);
            return At(parts, demand, circuit, actual, isMet);
        }

        if (mayLean || actual is not { Pulse: not null, DeadTime: not null, DutyCycle: < 1 } || !circuit.IsCovered || circuit.State.State == RailState.Starved)
        {
            return Of(parts, demand, circuit);
        }

        return At(parts, demand, circuit, actual, isMet: true);
    }

    private static bool Closes(SecondaryState? secondary) => secondary is null or { Injection.DutyCycle: < 1 };

    /// <summary>The mixture at its target; not known where a set of injectors may not pass its share.</summary>
    private static SolvedMixture At(SystemParts parts, in PointDemand demand, in SolvedCircuit circuit, in Injection actual, bool isMet)
    {
        double target = parts.Demand.TargetLambdaAt(demand.Point.RevolutionsPerSecond);
        double lambda = isMet ? target / (1 - demand.TakenBack) : double.NaN;
        (double pulse, double deadTime) = (actual.Pulse ?? double.NaN, actual.DeadTime ?? double.NaN);
        return new()
        {
            Command = new(pulse, pulse, actual.StaticFlow, deadTime),
            Wanted = Less(new(FuelDemand.Chosen(demand.Chain, demand.Basis), target, double.NaN, false), demand),
            Trim = 1,
            Task = circuit.Task,
            State = circuit.State,
            Differential = actual.Differential,
            DeadTime = deadTime,
            AvailableTime = actual.AvailableTime,
            OpenTime = pulse - (Real)deadTime,
            Delivered = isMet ? demand.Injected : double.NaN,
            Lambda = lambda,
            MinimumLambda = lambda,
            MaximumLambda = lambda,
        };
    }

    /// <summary>
    /// The pressure in the rail at which the mixture has a lambda, gauge, Pa, by the law and nearest to the one that is set; not a number where
    /// no pressure up to the highest at which the injectors open gives it.
    /// </summary>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="demand">What the engine asks for at a point.</param>
    /// <param name="lambda">That is wanted.</param>
    public static double RailFor(SystemParts parts, in PointDemand demand, double lambda)
    {
        MixtureSolver solver = new(parts, demand);
        double gauge = solver._input.ManifoldAbsolute - (Real)solver._input.Ambient;
        double most = parts.Injectors.Injector.MaximumDifferential.Pascals;
        double wanted = demand.Required * (Real)parts.Demand.TargetLambdaAt(demand.Point.RevolutionsPerSecond) / lambda;

        // Past the turn-over more pressure delivers less: the rising branch ends at the most that a pressure gives.
        double top = most;
        double best = 0;
        if (double.IsNaN(solver.Delivered(gauge + most, 1)))
        {
            return double.NaN;
        }

        for (int step = 1; step <= TurnOverSteps; step++)
        {
            double differential = most * step / TurnOverSteps;
            double flow = solver.Delivered(gauge + differential, 1);
            (top, best) = flow >= best ? (differential, flow) : (top, best);
        }

        double share = Bracket.Of(of => (wanted - solver.Delivered(gauge + (of * top), 1)) / wanted, 0, 1);
        return solver.Delivered(gauge + (share * top), 1) >= wanted * (1 - Curve.EndTolerance) && share > 0 ? gauge + (share * top) : double.NaN;
    }

    /// <summary>What a controller wants, less the share that it takes back for a second stream.</summary>
    private static FuelWanted Less(in FuelWanted wanted, in PointDemand demand) => wanted with { Fuel = wanted.Fuel * (1 - demand.TakenBack) };

    public static ControllerInput InputOf(SystemParts parts, in PointDemand demand)
    {
        FuelDemandModel model = parts.Demand;
        Conditions conditions = demand.Point.Conditions;
        double required = FuelDemand.Chosen(demand.Chain, demand.Basis);
        double stoichiometric = model.Consumption.Fuel.AirFuelRatio;
        double target = model.TargetLambdaAt(demand.Point.RevolutionsPerSecond);
        return new()
        {
            Speed = demand.Point.RevolutionsPerSecond,
            ManifoldAbsolute = demand.Chain.ManifoldAbsolute,
            ChargeTemperature = demand.Chain.ChargeTemperature,
            Ambient = conditions.Atmosphere.Pascals,
            AmbientTemperature = conditions.Atmosphere.Kelvins,

            // Where fuel follows from power, the air is what that fuel burns with at its lambda.
            Air = required * (double)Combustion.AirFuelRatio<Real>(target, stoichiometric),
            Displacement = model.Engine.Displacement.CubicMeters,
            RevolutionsPerCycle = model.Engine.RevolutionsPerCycle,
            AvailableTime = InjectorFlow.AvailableTime<Real>(
                demand.Point.RevolutionsPerSecond, model.Engine.RevolutionsPerCycle, parts.Injectors.InjectionsPerCycle).Value,
            Volts = conditions.SupplyVolts,
            Density = demand.Density,
            StoichiometricRatio = stoichiometric,
            Required = required,
            TargetLambda = target,
            Injectors = parts.Injectors,
        };
    }

    /// <summary>The mixture with one reading of where the pumps' data ends.</summary>
    private SolvedMixture Solved(in CircuitBounds atDemand, Reading reading)
    {
        if (_parts.Controller.Loop is not { } loop || _input.ManifoldAbsolute > loop.MaximumManifoldAbsolute.Pascals)
        {
            return Solved(atDemand, reading, 1);
        }

        // Closed loop: the flow that the controller's own lambda asks for, if its authority reaches it.
        SolvedMixture lean = Solved(atDemand, reading, 1 - loop.Authority.DecimalFractions);
        SolvedMixture rich = Solved(atDemand, reading, 1 + loop.Authority.DecimalFractions);
        if (lean.Lambda <= _wanted.Lambda)
        {
            return lean;
        }

        if (!(rich.Lambda < _wanted.Lambda))
        {
            return rich;
        }

        MixtureSolver solver = this;
        CircuitBounds start = atDemand;
        double authority = loop.Authority.DecimalFractions;
        double share = Bracket.Of(
            trim => solver.Solved(start, reading, 1 + ((trim - 1.5) * 2 * authority)).Lambda - solver._wanted.Lambda, 1, 2);
        return Solved(atDemand, reading, 1 + ((share - 1.5) * 2 * authority));
    }

    private SolvedMixture Solved(in CircuitBounds atDemand, Reading reading, double trim)
    {
        double flow = Delivered(RailIn(atDemand, _parts.TaskAt(_demand), reading), trim);
        if (double.IsNaN(flow))
        {
            return At(_parts.TaskAt(_demand), Read(atDemand, reading), trim, double.NaN);
        }

        CircuitTask task = TaskAt(flow);
        CircuitBounds bounds = BoundsAt(task);
        double again = Delivered(RailIn(bounds, task, reading), trim);
        if (Math.Abs(again - flow) > SameFlow * Math.Max(again, flow))
        {
            flow = Crossing(reading, trim, Math.Max(_demand.Injected, Math.Max(flow, again)));
            task = TaskAt(flow);
            bounds = BoundsAt(task);
        }

        return At(task, Read(bounds, reading), trim, flow);
    }

    private double Crossing(Reading reading, double trim, double flow)
    {
        double most = 2 * flow;
        for (int doubling = 0; doubling < MaximumDoublings && Excess(most, reading, trim) > 0; doubling++)
        {
            most *= 2;
        }

        MixtureSolver solver = this;
        return most * Bracket.Of(share => solver.Excess(share * most, reading, trim) / most, 0, 1);
    }

    /// <summary>What the pulse delivers with a flow injected, over that flow, m³/s.</summary>
    private double Excess(double flow, Reading reading, double trim)
    {
        CircuitTask task = TaskAt(flow);
        return Delivered(RailIn(BoundsAt(task), task, reading), trim) - flow;
    }

    /// <summary>What the pulse delivers with a pressure in the rail, gauge, Pa: by the law, wherever its data ends.</summary>
    private double Delivered(double rail, double trim)
    {
        double differential = DifferentialAt(rail);
        return DeliveredFuel.Flow<Real>(
            _input.StaticFlow(differential),
            _parts.Injectors.Count,
            OpenTime(CommandAt(differential, trim).Pulse, _input.DeadTime(differential)),
            _input.AvailableTime);
    }

    /// <summary>Open time, s; not a number where the pulse is none, which is no pulse as long as the cycle.</summary>
    private double OpenTime(double pulse, double deadTime) =>
        double.IsNaN(pulse) ? double.NaN : DeliveredFuel.OpenTime<Real>(pulse, deadTime, _input.AvailableTime);

    private SolvedMixture At(in CircuitTask task, in CircuitState state, double trim, double flow)
    {
        double differential = DifferentialAt(state.RailOr(task.RailAsSet));
        PulseCommanded command = CommandAt(differential, trim);
        Injector injector = _parts.Injectors.Injector;
        double deadTime = injector.DeadTime.TryAt(_input.Volts, differential, out double known) ? known : double.NaN;
        double open = OpenTime(command.Pulse, deadTime);
        bool isKnown = state.State != RailState.NotCovered
            && !double.IsNaN(open)
            && !double.IsNaN(KnownFlow.Of<Real>(1, differential, injector.MinimumPascals));

        // A starved rail has no pressure to say what is injected: it is what the pumps still pass, and no more.
        double fed = state.State == RailState.Starved ? Math.Min(flow, state.Flow - (Real)state.ReturnFlow) : flow;
        double delivered = isKnown ? fed : double.NaN;
        double lambda = DeliveredFuel.Lambda<Real>(_input.TargetLambda, _demand.Required, delivered);
        return new()
        {
            Command = command,
            Wanted = _wanted,
            Trim = trim,
            Task = task,
            State = state,
            Differential = differential,
            DeadTime = deadTime,
            AvailableTime = _input.AvailableTime,
            OpenTime = open,
            Delivered = delivered,
            Lambda = lambda,
            MinimumLambda = lambda,
            MaximumLambda = lambda,
        };
    }

    private PulseCommanded CommandAt(double differential, double trim) => _parts.Controller.FollowsDifferential || !trim.Equals(1)
        ? _parts.Controller.Command(_input, _wanted, trim, differential)
        : _command;

    private double DifferentialAt(double rail) =>
        RailPressure.Differential<Real>(rail, _input.Ambient, _input.ManifoldAbsolute);

    private CircuitTask TaskAt(double injected) => _parts.TaskOf(
        _input.Volts, _demand.Point.BoostPascals, injected, _demand.Density, _demand.KinematicViscosity);

    private static CircuitBounds BoundsAt(in CircuitTask task) => CircuitSolver.SolveBounds(task);

    private static CircuitState Read(in CircuitBounds bounds, Reading reading) => reading switch
    {
        Reading.Lower => bounds.Lower,
        Reading.Upper => bounds.Upper,
        _ => bounds.Estimate,
    };

    private static double RailIn(in CircuitBounds bounds, in CircuitTask task, Reading reading) =>
        Read(bounds, reading).RailOr(task.RailAsSet);

    private enum Reading
    {
        Estimate,
        Lower,
        Upper,
    }
}
