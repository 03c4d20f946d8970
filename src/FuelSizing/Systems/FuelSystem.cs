using System.Collections.Immutable;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>A whole fuel system on an engine: does it all keep up?</summary>
/// <remarks>
/// <para>One steady operating point at a time: air → fuel demand → rail pressure by the regulator → differential pressure
/// across the injector → static flow → pulse and duty cycle; beside it the circuit: pumps with their wiring, lines, filter
/// and regulator solved together. Where the pumps cannot keep the set pressure, the rail sags to where they can.</para>
/// <para>Lines and wiring count where they are given (<see cref="Plumbing"/>, <see cref="Pumps.Pump.Feed"/>); without them
/// pressure at the pump is pressure at the rail. Pulsation and transients are not reckoned.</para>
/// </remarks>
/// <example>
/// <code>
/// OperatingResult result = system.Solve(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6)));
/// Console.WriteLine(result.Limiting);
/// </code>
/// </example>
public sealed class FuelSystem
{
    private readonly double? _minimumSupply;
    private readonly double _minimumReturn;
    private readonly double _dutyLimit;
    private readonly double _pumpReserve;

    private FuelSystem(
        LineLayout layout,
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpAssembly pump,
        Plumbing plumbing,
        SizingLimits limits)
    {
        (Layout, Demand, Injectors, Regulator) = (layout, demand, injectors, regulator);
        (Pump, Plumbing, Limits) = (pump, plumbing, limits);
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

    /// <summary>The injectors.</summary>
    public InjectorSet Injectors { get; }

    /// <summary>The regulator.</summary>
    public PressureRegulator Regulator { get; }

    /// <summary>The pump or pumps.</summary>
    public PumpAssembly Pump { get; }

    /// <summary>The lines and filters.</summary>
    public Plumbing Plumbing { get; }

    /// <summary>The limits the system is held to.</summary>
    public SizingLimits Limits { get; }

    /// <summary>A return system: the regulator sits at the rail and sends surplus fuel back to the tank.</summary>
    /// <param name="demand">How much fuel the engine burns.</param>
    /// <param name="injectors">The injectors.</param>
    /// <param name="regulator">Any regulator.</param>
    /// <param name="pump">The pump or pumps.</param>
    /// <param name="limits">The limits; <see cref="SizingLimits.Default"/> if not given.</param>
    /// <param name="plumbing">The lines and filters; <see cref="Plumbing.None"/> if not given.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">
    /// The regulator does not fit the layout, or the fuel lacks a property that the plumbing needs.
    /// </exception>
    public static FuelSystem Return(
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpAssembly pump,
        SizingLimits? limits = null,
        Plumbing? plumbing = null) =>
        regulator is ElectronicReturnless
            ? throw new ArgumentException(
                $"regulator was {regulator.Description}; a pump held by its speed returns nothing. Use FuelSystem.Returnless.",
                nameof(regulator))
            : Of(LineLayout.Return, demand, injectors, regulator, pump, limits, plumbing);

    /// <summary>A returnless system: the regulator sits in or at the tank and only injected fuel goes forward.</summary>
    /// <param name="demand">How much fuel the engine burns.</param>
    /// <param name="injectors">The injectors.</param>
    /// <param name="regulator">
    /// As a rule <see cref="Fixed"/>, for the tank knows nothing of the manifold; a reference hose may make it another.
    /// Not a rising-rate unit behind a base regulator: there is no return line to put it in.
    /// </param>
    /// <param name="pump">The pump or pumps.</param>
    /// <param name="limits">The limits; <see cref="SizingLimits.Default"/> if not given.</param>
    /// <param name="plumbing">The lines and filters; <see cref="Plumbing.None"/> if not given.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">
    /// The regulator does not fit the layout, or the fuel lacks a property that the plumbing needs.
    /// </exception>
    public static FuelSystem Returnless(
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpAssembly pump,
        SizingLimits? limits = null,
        Plumbing? plumbing = null) =>
        regulator is RegulatorSeries
            ? throw new ArgumentException(
                $"regulator was {regulator.Description}; a returnless system has no return line for the second unit. Use FuelSystem.Return, or one regulator.",
                nameof(regulator))
            : Of(LineLayout.Returnless, demand, injectors, regulator, pump, limits, plumbing);

    /// <summary>The same system with other injectors.</summary>
    /// <param name="injectors">The injectors.</param>
    /// <returns>The system.</returns>
    public FuelSystem With(InjectorSet injectors) => Of(Layout, Demand, injectors, Regulator, Pump, Limits, Plumbing);

    /// <summary>The same system with another regulator.</summary>
    /// <param name="regulator">A regulator that fits the layout.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The regulator does not fit the layout.</exception>
    public FuelSystem With(PressureRegulator regulator) =>
        Layout == LineLayout.Return
            ? Return(Demand, Injectors, regulator, Pump, Limits, Plumbing)
            : Returnless(Demand, Injectors, regulator, Pump, Limits, Plumbing);

    /// <summary>The same system with another pump or other pumps.</summary>
    /// <param name="pump">The pump or pumps.</param>
    /// <returns>The system.</returns>
    public FuelSystem With(PumpAssembly pump) => Of(Layout, Demand, Injectors, Regulator, pump, Limits, Plumbing);

    /// <summary>The same system with other lines and filters.</summary>
    /// <param name="plumbing">The lines and filters.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The fuel lacks a property that the plumbing needs.</exception>
    public FuelSystem With(Plumbing plumbing)
    {
        ArgumentNullException.ThrowIfNull(plumbing);
        return Of(Layout, Demand, Injectors, Regulator, Pump, Limits, plumbing);
    }

    /// <summary>What the injectors' chain of equations is given, the same at every point.</summary>
    internal InjectionConstants<Real> Injection { get; }

    /// <summary>The same system with these parts in it, unchecked: they are known to fit.</summary>
    internal FuelSystem With(FuelDemandModel demand, InjectorSet injectors, PressureRegulator regulator) =>
        new(Layout, demand, injectors, regulator, Pump, Plumbing, Limits);

    /// <summary>Solves one operating point.</summary>
    /// <param name="point">Speed, boost and conditions, within the engine's tables and limits.</param>
    /// <returns>Every intermediate, each part's margin, and the part that limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover the point.</exception>
    /// <remarks>
    /// A system that cannot do the job is an answer, not an error: see <see cref="OperatingResult.Margins"/>. Duty cycle
    /// is reckoned at full demand, also where it comes out over 100 %.
    /// </remarks>
    public OperatingResult Solve(OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        return SolveBy(point, null);
    }

    private OperatingResult SolveBy(OperatingPoint point, CircuitTable? table)
    {
        PointDemand demand = DemandAt(point);
        CircuitTask task = TaskAt(demand);
        CircuitState state = CircuitSolver.Solve(task, table);
        return new(this, demand, task.Set, state, Inject(demand, state.RailOr(task.Set)));
    }

    /// <summary>What the engine asks for at a point: no part of the system but its fuel has a say in it.</summary>
    internal PointDemand DemandAt(OperatingPoint point)
    {
        Fuel fuel = Demand.Consumption.Fuel;
        DemandState<Real> demand = Demand.ChainAt(
            point.Speed, point.RevolutionsPerSecond, point.Boost, point.BoostPascals, point.Conditions.Atmosphere);
        double density = fuel.DensityAtKelvins(point.Conditions.FuelKelvins);
        return new(
            point,
            demand,
            Demand.Basis,
            density,
            Plumbing.NeedsViscosity ? fuel.KinematicViscosityAtKelvins(point.Conditions.FuelKelvins) : 0,
            FuelDemandFlow.Volume<Real>(FuelDemand.Chosen(demand, Demand.Basis), density));
    }

    /// <summary>Pumps, lines and regulator against a demand: the injectors have no part in it.</summary>
    internal SolvedCircuit CircuitAt(in PointDemand demand) => CircuitOf(demand, CircuitSolver.Solve(TaskAt(demand)));

    /// <summary>The circuit that a demand asks to be solved.</summary>
    internal CircuitTask TaskAt(in PointDemand demand) => new(
        Layout,
        Pump,
        Plumbing,
        demand.Point.Conditions.SupplyVolts,
        _minimumSupply,
        Regulator.SetPascals(demand.Point.BoostPascals),
        _minimumReturn,
        demand.Injected,
        demand.Density,
        demand.KinematicViscosity);

    /// <summary>A solved circuit with what follows from it.</summary>
    internal SolvedCircuit CircuitOf(in PointDemand demand, in CircuitState state) => new()
    {
        Task = TaskAt(demand),
        State = state,
        Wanted = WantedAt(demand),
        MinimumInjectable = PumpDuty.Injectable<Real>(state.MinimumAtSet, _pumpReserve, _minimumReturn),
        MaximumInjectable = PumpDuty.Injectable<Real>(state.MaximumAtSet, _pumpReserve, _minimumReturn),
    };

    /// <summary>Flow wanted of the pumps, m³/s.</summary>
    internal double WantedAt(in PointDemand demand) =>
        PumpDuty.Required<Real>(demand.Injected, _pumpReserve, _minimumReturn);

    /// <summary>The injectors at the pressure that a circuit gives them, and at the one they are judged by.</summary>
    internal (Injection Actual, Injection Judged) InjectionAt(in PointDemand demand, in SolvedCircuit circuit)
    {
        Injection actual = Inject(demand, circuit.Rail);
        return (actual, Judged(demand, circuit, actual));
    }

    /// <summary>The injectors as they are judged: at the pressure set, so that a failing pump is not laid to them.</summary>
    internal Injection Judged(in PointDemand demand, in SolvedCircuit circuit, in Injection actual) =>
        circuit.Sags ? Inject(demand, circuit.RailSet) : actual;

    /// <summary>The injectors in SI numbers, for one number or for many side by side.</summary>
    internal InjectionConstants<T> InjectionOf<T>()
        where T : struct, IReal<T> => new(
            Injectors.Injector.RatedFlow,
            Injectors.Injector.RatedPascals,
            Injectors.Injector.TestDensity,
            Injectors.Count,
            Injectors.InjectionsPerCycle,
            Demand.Engine.RevolutionsPerCycle);

    private Injection Inject(in PointDemand demand, double rail)
    {
        OperatingPoint point = demand.Point;
        double differential = RailPressure.Differential<Real>(
            rail, point.Conditions.Atmosphere.Pascals, demand.Chain.ManifoldAbsolute);
        bool timed = Injectors.Injector.DeadTime.TryAt(
            point.Conditions.SupplyVolts, differential, out double deadTime);
        InjectionState<Real> state = InjectionChain.Evaluate(
            Injection,
            new InjectionInput<Real>(point.RevolutionsPerSecond, differential, deadTime, demand.Injected, demand.Density));
        return timed && state.StaticFlow > 0
            ? new(
                differential,
                state.StaticFlow,
                state.AvailableTime,
                deadTime,
                state.Pulse,
                state.DutyCycle,
                InjectorFlow.Capacity<Real>(state.StaticFlow, Injectors.Count, state.AvailableTime, _dutyLimit, deadTime))
            : new(differential, state.StaticFlow, state.AvailableTime, timed ? deadTime : double.NaN);
    }

    /// <summary>Solves every pair of a speed and a boost.</summary>
    /// <param name="speeds">One or more, rising, within the engine's tables and limit.</param>
    /// <param name="boosts">One or more, rising.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <param name="progress">Told the share that is done, boost by boost; working out what would mend a part comes last.</param>
    /// <param name="cancellation">Stops the work; the boosts done until then are kept.</param>
    /// <returns>
    /// The results, the margins' worst places, and which part runs out first and where; of the first so many boosts where the
    /// sweep was stopped.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A list is empty or out of order, or the engine's tables do not cover a point.</exception>
    /// <exception cref="OperationCanceledException">The sweep was stopped before a boost was done.</exception>
    public SweepResult Sweep(
        IReadOnlyList<RotationalSpeed> speeds,
        IReadOnlyList<Pressure> boosts,
        Conditions? conditions = null,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(boosts);
        Rising(speeds, EngineSpeed.Within, Readable.Of, nameof(speeds));
        Rising(boosts, ManifoldPressure.Within, Readable.Boost, nameof(boosts));
        Conditions all = conditions ?? Conditions.Default;
        ImmutableArray<OperatingResult>.Builder results = ImmutableArray.CreateBuilder<OperatingResult>(speeds.Count * boosts.Count);
        double[] sets = [.. boosts.Select(boost => Regulator.SetPascals(boost.Pascals))];
        CircuitTable? table = CircuitTable.Of(
            TaskAt(DemandAt(OperatingPoint.At(speeds[0], boosts[0], all))), sets.Min(), sets.Max(), results.Capacity);
        int done = 0;
        while (done < boosts.Count && !cancellation.IsCancellationRequested)
        {
            foreach (RotationalSpeed speed in speeds)
            {
                results.Add(SolveBy(OperatingPoint.At(speed, boosts[done], all), table));
            }

            done++;
            progress?.Report(Ratio.FromDecimalFractions((double)done / (boosts.Count + 1)));
        }

        if (done == 0)
        {
            throw new OperationCanceledException("The sweep was stopped before a boost was done.", cancellation);
        }

        SweepResult sweep = new(this, [.. speeds], [.. boosts.Take(done)], results.ToImmutable(), boosts[^1], cancellation);
        if (sweep.IsComplete)
        {
            progress?.Report(Ratio.FromPercent(100));
        }

        return sweep;
    }

    private static FuelSystem Of(
        LineLayout layout,
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpAssembly pump,
        SizingLimits? limits,
        Plumbing? plumbing)
    {
        ArgumentNullException.ThrowIfNull(demand);
        ArgumentNullException.ThrowIfNull(injectors);
        ArgumentNullException.ThrowIfNull(regulator);
        ArgumentNullException.ThrowIfNull(pump);
        if (regulator is RisingRate { Base.Pascals: 0 })
        {
            throw new ArgumentException(
                $"regulator was {regulator.Description}; with no base of its own it needs a base regulator before it. Use RegulatorSeries.Of.",
                nameof(regulator));
        }

        Plumbing ways = plumbing ?? Plumbing.None;
        Fuel fuel = demand.Consumption.Fuel;
        if ((ways.NeedsViscosity && !fuel.HasViscosity) || (ways.Suction.Count > 0 && !fuel.HasVapourPressure))
        {
            throw new ArgumentException(
                $"plumbing needs the viscosity of {fuel.Name}, and on the suction side its vapour pressure. Give them with Fuel.WithViscosity and Fuel.WithVapourPressure.",
                nameof(plumbing));
        }

        return new(layout, demand, injectors, regulator, pump, ways, limits ?? SizingLimits.Default);
    }

    private static void Rising<T, TChecked>(
        IReadOnlyList<T> values, Func<T, string, TChecked> check, Func<T, string> text, string name)
        where T : struct, IComparable<T>
    {
        Guard.Count(values.Count, 1, 10_000, "Give at least one.", name);
        for (int i = 0; i < values.Count; i++)
        {
            check(values[i], name);
            if (i > 0 && values[i].CompareTo(values[i - 1]) <= 0)
            {
                throw Guard.OutOfRange(
                    name, text(values[i]), $"over the {text(values[i - 1])} before it", "Sort the list and give each value once.");
            }
        }
    }
}
