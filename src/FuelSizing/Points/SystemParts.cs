using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>The parts of a fuel system and the limits that they are judged by: everything about it but the checks.</summary>
/// <remarks>Made by <c>FuelSystem.Return</c> and <c>FuelSystem.Returnless</c>, which see that the parts fit each other.</remarks>
public sealed class SystemParts
{
    private readonly double? _minimumSupply;
    private readonly double _minimumReturn;
    private readonly double _dutyLimit;
    private readonly double _pumpReserve;
    private readonly PumpStates? _pumps;
    private readonly Lazy<SystemParts>? _falling;
    private readonly bool _needsViscosity;

    internal SystemParts(
        LineLayout layout,
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpAssembly pump,
        Plumbing plumbing,
        SizingLimits limits,
        EngineController controller,
        SurgeTank? surgeTank,
        StagedInjectors? stagedInjectors,
        SecondStream? secondStream,
        bool isFalling = false)
    {
        IsFalling = isFalling;
        _pumps = pump.Switches.Any() ? new(pump, isFalling) : null;
        _falling = _pumps is null || isFalling ? null : new(() => With(pump, isFalling: true));
        (Layout, Demand, Injectors, Regulator) = (layout, demand, injectors, regulator);
        (Pump, Plumbing, Limits, Controller) = (pump, plumbing, limits, controller);
        SurgeTank = surgeTank;
        StagedInjectors = stagedInjectors;
        SecondStream = secondStream;
        _needsViscosity = plumbing.NeedsViscosity || pump.HasOwnLines || surgeTank?.Plumbing.NeedsViscosity == true;
        HasFilter = plumbing.HasFilter || (pump.HasOwnLines && pump.OwnBranches.Any(branch => branch.Suction.Concat(branch.Discharge).Any(part => part is Lines.ILimitedLoss)));
        Injection = InjectionOf<Real>();
        _minimumSupply = (regulator as ElectronicReturnless)?.MinimumVoltage.Volts;
        _minimumReturn = regulator.MinimumReturnFlow.CubicMetersPerSecond;
        _dutyLimit = limits.DutyCycle.DecimalFractions;
        _pumpReserve = limits.PumpReserve.DecimalFractions;
    }

    /// <summary>Where surplus fuel goes back.</summary>
    public LineLayout Layout { get; }

    /// <summary>How much fuel the engine burns.</summary>
    public FuelDemandModel Demand { get; }

    /// <summary>The injectors; the primary set of them where there are <see cref="StagedInjectors"/>.</summary>
    public InjectorSet Injectors { get; }

    /// <summary>The regulator.</summary>
    public PressureRegulator Regulator { get; }

    /// <summary>The pump or pumps.</summary>
    public PumpAssembly Pump { get; }

    /// <summary>The lines and filters.</summary>
    public Plumbing Plumbing { get; }

    /// <summary>The limits that the parts are judged by.</summary>
    public SizingLimits Limits { get; }

    /// <summary>Who decides the pulse.</summary>
    public EngineController Controller { get; }

    /// <summary>The surge tank that the pumps draw from, with its lift circuit; none where they draw from the main tank.</summary>
    public SurgeTank? SurgeTank { get; }

    /// <summary>A secondary set of injectors and its hand-over; none where one set injects all the fuel.</summary>
    public StagedInjectors? StagedInjectors { get; }

    /// <summary>A second stream of fuel beside the system; none where there is none.</summary>
    public SecondStream? SecondStream { get; }

    /// <summary>True if a part of the main circuit, shared or of a branch, has a loss that is known up to a flow only.</summary>
    internal bool HasFilter { get; }

    /// <summary>True if there is a filter in the main circuit, shared or of a branch.</summary>
    internal bool IsFiltered => Plumbing.IsFiltered || Pump.OwnBranches.Any(branch => branch.Suction.Concat(branch.Discharge).Any(part => part is Lines.Filter));

    /// <summary>Injectors, regulator and pump.</summary>
    /// <returns>For instance <c>4 × injector A, 580 mL/min each; fixed at 300 kPa; pump R</c>.</returns>
    public override string ToString() =>
        $"{Injectors}{(StagedInjectors is { } staged ? $", secondary {staged.Secondary}" : string.Empty)}; {Regulator}; {Pump.Name}";

    /// <summary>True if what is lost in a line depends on the fuel's viscosity.</summary>
    internal bool NeedsViscosity => _needsViscosity;

    /// <summary>What the injectors' chain of equations is given, the same at every point.</summary>
    internal InjectionConstants<Real> Injection { get; }

    /// <summary>The same parts with other injectors, of two sets the primary one.</summary>
    internal SystemParts With(InjectorSet injectors) =>
        new(Layout, Demand, injectors, Regulator, Pump, Plumbing, Limits, Controller, SurgeTank, StagedInjectors, SecondStream, IsFalling);

    /// <summary>The same parts on another engine or fuel, unchecked: it is known to fit.</summary>
    internal SystemParts With(FuelDemandModel demand) =>
        new(Layout, demand, Injectors, Regulator, Pump, Plumbing, Limits, Controller, SurgeTank, StagedInjectors, SecondStream, IsFalling);

    /// <summary>The same parts with another regulator, unchecked: it is known to fit.</summary>
    internal SystemParts With(PressureRegulator regulator) =>
        new(Layout, Demand, Injectors, regulator, Pump, Plumbing, Limits, Controller, SurgeTank, StagedInjectors, SecondStream, IsFalling);

    /// <summary>The same parts with other lines, unchecked: they are known to fit.</summary>
    internal SystemParts With(Plumbing plumbing) =>
        new(Layout, Demand, Injectors, Regulator, Pump, plumbing, Limits, Controller, SurgeTank, StagedInjectors, SecondStream, IsFalling);

    /// <summary>The same parts with other pumps or other wiring, unchecked: they are known to fit.</summary>
    internal SystemParts With(PumpAssembly pump) => With(pump, IsFalling);

    /// <summary>
    /// The same parts as boost falls, where a switched pump still runs that did not yet as boost rose; none where that makes no difference.
    /// </summary>
    /// <param name="boost">Pa.</param>
    internal SystemParts? FallingAt(double boost) =>
        _falling is not null && Pump.Switches.Any(pump => boost >= pump.Off.Pascals && boost <= pump.On.Pascals) ? _falling.Value : null;

    /// <summary>True where these are the parts as boost falls, a switched pump being still at full speed.</summary>
    internal bool IsFalling { get; }

    /// <summary>The switched pumps, where these are the parts as boost falls.</summary>
    internal string? StillOn => IsFalling ? string.Join(" and ", Pump.Switches.Select(pump => pump.Pump.Name).Distinct()) : null;

    private SystemParts With(PumpAssembly pump, bool isFalling) =>
        new(Layout, Demand, Injectors, Regulator, pump, Plumbing, Limits, Controller, SurgeTank, StagedInjectors, SecondStream, isFalling);

    /// <summary>The same parts with another surge tank, or with another lift pump or wiring in it, unchecked: it is known to fit.</summary>
    internal SystemParts With(SurgeTank? surgeTank) =>
        new(Layout, Demand, Injectors, Regulator, Pump, Plumbing, Limits, Controller, surgeTank, StagedInjectors, SecondStream, IsFalling);

    /// <summary>What the engine asks for at a point: of all parts only the fuel matters.</summary>
    internal PointDemand DemandAt(OperatingPoint point) => DemandAt(point.Place, point.Boost);

    /// <summary>The same at a place in numbers.</summary>
    /// <param name="point">The place.</param>
    /// <param name="boost">Its boost as it was given.</param>
    internal PointDemand DemandAt(in PointPlace point, Pressure boost)
    {
        Fuel fuel = Demand.Consumption.Fuel;
        DemandState<Real> demand = Demand.ChainAt(
            point.Speed, point.RevolutionsPerSecond, boost, point.BoostPascals, point.Conditions.Atmosphere);
        double density = fuel.DensityAtKelvins(point.Conditions.FuelKelvins);
        PointDemand alone = new PointDemand(
            point, demand, Demand.Basis, density, _needsViscosity ? fuel.KinematicViscosityAtKelvins(point.Conditions.ColdestKelvins) : 0, 0, 0)
            .Feeding(SecondStream is { TakesBack: true } less ? less.MainFuelTakenBack.DecimalFractions * less.ShareAt(point.BoostPascals) : 0);
        return SecondStream is null
            ? alone
            : alone.With(SolvedStream.Of(SecondStream, point.BoostPascals, point.Conditions.SupplyVolts, point.Conditions.FuelKelvins));
    }

    /// <summary>The circuit that a demand asks to be solved.</summary>
    internal CircuitTask TaskAt(in PointDemand demand) => TaskOf(
        demand.Point.Conditions.SupplyVolts, demand.Point.BoostPascals, demand.Injected, demand.Density, demand.KinematicViscosity);

    /// <summary>The circuit at a supply voltage, V, a boost, Pa, and an injected flow, m³/s, of fuel so dense, kg/m³, and viscous, m²/s.</summary>
    internal CircuitTask TaskOf(double supply, double boost, double injected, double density, double viscosity) => new(
        Layout,
        (_pumps?.At(boost) ?? Pump).InLiquid(new(density, viscosity)),
        Plumbing,
        supply,
        _minimumSupply,
        Regulator.SetPascals(boost),
        _minimumReturn,
        injected,
        density,
        viscosity)
    {
        Held = Regulator.HeldAt(boost),
    };

    /// <summary>
    /// What the pumps could feed more with their reserve kept, by the lower bound of their data, as a share of the flow injected; not a number
    /// where their data gives none. Where a switched pump may be on or off, the less of both.
    /// </summary>
    internal double PumpReserveAt(double supply, double boost, double injected, double density, double viscosity)
    {
        double reserve = PumpReserveOf(TaskOf(supply, boost, injected, density, viscosity));
        return FallingAt(boost) is { } falling
            ? Math.Min(reserve, falling.PumpReserveAt(supply, boost, injected, density, viscosity))
            : reserve;
    }

    /// <summary>The same of one circuit.</summary>
    internal double PumpReserveOf(in CircuitTask task)
    {
        SolvedCircuit circuit = CircuitOf(task, CircuitSolver.SolveBounds(task));
        return circuit.Uncovered is not null ? double.NaN
            : task.Injected > 0 ? Reserve.Of<Real>(circuit.MinimumInjectable, task.Injected)
            : circuit.MinimumInjectable >= 0 ? double.PositiveInfinity
            : double.NegativeInfinity;
    }

    /// <summary>Pumps, lines and regulator at a demand, solved: the injectors take no part in it.</summary>
    /// <param name="demand">What the engine asks for.</param>
    /// <param name="table">What is known of circuits like it, if a sweep has made that out.</param>
    /// <param name="room">Of a search that keeps no circuit; none where it is kept.</param>
    internal SolvedCircuit CircuitAt(in PointDemand demand, CircuitTable? table = null, PumpRoom? room = null)
    {
        CircuitTask task = TaskAt(demand);
        CircuitBounds bounds = CircuitSolver.SolveBounds(task, table);
        SolvedCircuit circuit = CircuitOf(task, bounds, room);
        return SurgeTank is null ? circuit : circuit with { Lift = LiftOf(JoinedCircuits.Of(SurgeTank, task, bounds), task, bounds) };
    }

    /// <summary>The lift circuit, solved with the main one, with what follows from it.</summary>
    private SolvedLift LiftOf(JoinedCircuits joined, in CircuitTask main, in CircuitBounds emptying)
    {
        CircuitState sure = joined.Sure.Estimate;
        (double leastLifted, double mostLifted) = Known(sure);
        (double leastFilled, double mostFilled) = Known(joined.Filling.Estimate);
        return new()
        {
            Joined = joined,
            Filling = CircuitOf(joined.FillingTask, joined.Filling),
            Full = joined.Full is { } full ? CircuitOf(joined.FullTask, full) : null,
            MainFull = joined.MainFull is { } over ? CircuitOf(main, over) : null,
            MinimumLifted = leastLifted,
            MaximumLifted = mostLifted,
            MinimumFilled = leastFilled,
            MaximumFilled = mostFilled,
            MinimumDrawn = joined.DrawOf(emptying.FlowsLess),
            MaximumDrawn = Math.Max(main.Injected, joined.DrawOf(emptying.FlowsMore)),
            MinimumSustained = double.IsNaN(leastLifted) ? double.NaN : PumpDuty.Injectable<Real>(leastLifted, _pumpReserve, 0),
            MaximumSustained = double.IsNaN(mostLifted) ? double.NaN : PumpDuty.Injectable<Real>(mostLifted, _pumpReserve, 0),
        };

        // Under its first point a curve still says what is delivered at the least, but not what at the most.
        static (double Minimum, double Maximum) Known(in CircuitState lifting)
        {
            PumpCoverage lacking = lifting.Uncovered(ends: false);
            return (
                lacking.HasFlag(PumpCoverage.VoltageBelow) ? double.NaN : lifting.MinimumAtSet,
                lifting.State == RailState.NotCovered ? double.NaN : lifting.MaximumAtSet);
        }
    }

    /// <summary>A solved circuit with what follows from it.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="bounds">Its solution.</param>
    /// <param name="room">Of a search that keeps no circuit; none where it is kept.</param>
    internal SolvedCircuit CircuitOf(in CircuitTask task, in CircuitBounds bounds, PumpRoom? room = null)
    {
        CircuitState state = bounds.Estimate;
        PumpPoint[] pumps = room is null ? [.. state.Pumps] : room.Estimate(state);
        PumpPoint[] lower = IsSame(bounds.Lower, state) ? pumps : room is null ? [.. bounds.Lower.Pumps] : room.Lower(bounds.Lower);
        PumpPoint[] upper = IsSame(bounds.Upper, state) ? pumps : room is null ? [.. bounds.Upper.Pumps] : room.Upper(bounds.Upper);

        // Pumps that are known pass least where the pressure is highest.
        PumpPoint[] Of(in CircuitState flows, in CircuitBounds all) => IsSame(flows, all.Lower) ? lower : IsSame(flows, all.Upper) ? upper : [.. flows.Pumps];
        return new()
        {
            Task = task,
            State = state,
            Lower = bounds.Lower,
            Upper = bounds.Upper,
            Pumps = pumps,
            Flows = bounds.Flows,
            LowerPumps = lower,
            UpperPumps = upper,
            FlowPumps = bounds.Flows is { } flows ? [Of(flows.Least, bounds), Of(flows.Most, bounds)] : [],
            Required = PumpDuty.Required<Real>(task.Injected, _pumpReserve, _minimumReturn),
            MinimumInjectable = PumpDuty.Injectable<Real>(state.MinimumAtSet, _pumpReserve, _minimumReturn),
            MaximumInjectable = PumpDuty.Injectable<Real>(state.MaximumAtSet, _pumpReserve, _minimumReturn),
        };
    }

    // Pumps on an upright of their curve pass the same at any pressure that a regulator may hold.
    private static bool IsSame(in CircuitState one, in CircuitState other) =>
        ReferenceEquals(one.Running, other.Running) && one.Flow == other.Flow && (double.IsNaN(one.Held) || one.RailGauge == other.RailGauge);

    /// <summary>The injectors at the pressure that a circuit gives them, and at the one they are judged by.</summary>
    /// <remarks>They are judged with the regulator at its set pressure, so that the shortfall of a pump is not charged to them.</remarks>
    internal (Injection Actual, Injection Judged) InjectionAt(in PointDemand demand, in SolvedCircuit circuit)
    {
        Injection actual = Inject(demand, circuit.Rail);
        if (circuit.Task.Held is not null)
        {
            // What a regulator may hold less than shown is charged to them.
            return (actual, Inject(demand, circuit.Lower.State is RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor
                ? circuit.Lower.RailGauge
                : circuit.Task.RailAsJudged));
        }

        return (actual, circuit.Sags ? Inject(demand, circuit.Task.RailAsSet) : actual);
    }

    /// <summary>The injectors in SI numbers, for one number or for a column of them.</summary>
    internal InjectionConstants<T> InjectionOf<T>()
        where T : struct, IReal<T> => InjectionOf<T>(Injectors);

    private InjectionConstants<T> InjectionOf<T>(InjectorSet set)
        where T : struct, IReal<T> => new(
            set.Injector.RatedFlow,
            set.Injector.RatedPascals,
            set.Injector.TestDensity,
            set.Count,
            set.InjectionsPerCycle,
            Demand.Engine.RevolutionsPerCycle);

    private Injection Inject(in PointDemand demand, double rail)
    {
        PointPlace point = demand.Point;
        double differential = RailPressure.Differential<Real>(
            rail, point.Conditions.Atmosphere.Pascals, demand.Chain.ManifoldAbsolute);
        if (StagedInjectors is not { } staged)
        {
            return Inject(Injectors, Injection, demand, differential, demand.Injected);
        }

        double atBegin = staged.HandOver.BeginDuty is { } begin ? PassedBy(Injectors, demand, differential, begin) : double.NaN;
        double share = staged.HandOver.ShareAt(point.BoostPascals, demand.Injected, atBegin);
        double secondary = StagedFlow.Secondary<Real>(demand.Injected, share).Value;
        Injection second = Inject(staged.Secondary, InjectionOf<Real>(staged.Secondary), demand, differential, secondary);
        return Inject(Injectors, Injection, demand, differential, demand.Injected - secondary) with
        {
            // Idle, it has no pulse: not one of its dead time.
            Secondary = new(
                share,
                share == 0 ? new(differential, second.StaticFlow, second.AvailableTime, second.DeadTime ?? double.NaN, 0, 0, second.Capacity ?? double.NaN) : second,
                atBegin),
        };
    }

    private Injection Inject(InjectorSet set, in InjectionConstants<Real> constants, in PointDemand demand, double differential, double injected)
    {
        PointPlace point = demand.Point;
        bool timed = set.Injector.DeadTime.TryAt(
            point.Conditions.SupplyVolts, differential, out double deadTime);
        InjectionState<Real> state = InjectionChain.Evaluate(
            constants with { RatedFlow = set.Injector.RatingAt<Real>(differential) },
            new InjectionInput<Real>(point.RevolutionsPerSecond, differential, deadTime, injected, demand.Density));
        double flow = KnownFlow.Of<Real>(state.StaticFlow, differential, set.Injector.MinimumPascals);
        Injection injection = timed && flow > 0
            ? new(
                differential,
                flow,
                state.AvailableTime,
                deadTime,
                state.Pulse,
                state.DutyCycle,
                InjectorFlow.Capacity<Real>(flow, set.Count, state.AvailableTime, _dutyLimit, deadTime))
            : new(differential, flow, state.AvailableTime, timed ? deadTime : double.NaN);
        return injection with { Injected = injected };
    }

    /// <summary>What a set passes at a duty cycle, m³/s; zero where nothing flows, not a number where that is not known.</summary>
    private double PassedBy(InjectorSet set, in PointDemand demand, double differential, double dutyCycle)
    {
        double flow = KnownFlow.Of<Real>(set.Injector.StaticAt(differential, demand.Density), differential, set.Injector.MinimumPascals);
        double deadTime = set.Injector.DeadTime.TryAt(demand.Point.Conditions.SupplyVolts, differential, out double known) ? known : double.NaN;
        return flow == 0 ? 0 : InjectorFlow.Capacity<Real>(
            flow,
            set.Count,
            InjectorFlow.AvailableTime<Real>(demand.Point.RevolutionsPerSecond, Demand.Engine.RevolutionsPerCycle, set.InjectionsPerCycle).Value,
            dutyCycle,
            deadTime).Value;
    }
}
