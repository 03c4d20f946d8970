using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Pressure;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

using Pressure = UnitsNet.Pressure;

/// <summary>A whole fuel system on an engine: does it all keep up?</summary>
/// <remarks>
/// <para>One steady operating point at a time: air → fuel demand → rail pressure by the regulator → differential pressure
/// across the injector → static flow → pulse and duty cycle; beside it the pump's curve against injected and returned
/// flow. Where the pump cannot keep the set pressure, the rail sags to where it can.</para>
/// <para>Not reckoned: pressure lost in lines and filter, voltage lost in the pump's wiring, pulsation, transients. Give
/// the pump's curve at the voltage and pressure that truly reach it, or leave room.</para>
/// </remarks>
/// <example>
/// <code>
/// OperatingResult result = system.Solve(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6)));
/// Console.WriteLine(result.Limiting);
/// </code>
/// </example>
public sealed class FuelSystem
{
    private readonly InjectionConstants<Real> _injection;
    private readonly double _minimumReturn;
    private readonly double _dutyLimit;
    private readonly double _pumpReserve;

    private FuelSystem(
        LineLayout layout,
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpCurve pump,
        SizingLimits limits)
    {
        (Layout, Demand, Injectors, Regulator, Pump, Limits) = (layout, demand, injectors, regulator, pump, limits);
        _injection = new(
            injectors.Injector.RatedFlow,
            injectors.Injector.RatedPascals,
            injectors.Injector.TestDensity,
            injectors.Count,
            injectors.InjectionsPerCycle,
            demand.Engine.RevolutionsPerCycle);
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

    /// <summary>The pump.</summary>
    public PumpCurve Pump { get; }

    /// <summary>The limits the system is held to.</summary>
    public SizingLimits Limits { get; }

    /// <summary>A return system: the regulator sits at the rail and sends surplus fuel back to the tank.</summary>
    /// <param name="demand">How much fuel the engine burns.</param>
    /// <param name="injectors">The injectors.</param>
    /// <param name="regulator">Any regulator.</param>
    /// <param name="pump">The pump.</param>
    /// <param name="limits">The limits; <see cref="SizingLimits.Usual"/> if not given.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The regulator needs another of its kind before it.</exception>
    public static FuelSystem Return(
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpCurve pump,
        SizingLimits? limits = null) =>
        Of(LineLayout.Return, demand, injectors, regulator, pump, limits);

    /// <summary>A returnless system: the regulator sits in or at the tank and only injected fuel goes forward.</summary>
    /// <param name="demand">How much fuel the engine burns.</param>
    /// <param name="injectors">The injectors.</param>
    /// <param name="regulator">
    /// As a rule <see cref="Fixed"/>, for the tank knows nothing of the manifold; a reference hose may make it another.
    /// Not a rising-rate unit behind a base regulator: there is no return line to put it in.
    /// </param>
    /// <param name="pump">The pump.</param>
    /// <param name="limits">The limits; <see cref="SizingLimits.Usual"/> if not given.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The regulator needs a return line, or another of its kind before it.</exception>
    public static FuelSystem Returnless(
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpCurve pump,
        SizingLimits? limits = null) =>
        regulator is RegulatorSeries
            ? throw new ArgumentException(
                $"regulator was {regulator.Description}; a returnless system has no return line for the second unit. Use FuelSystem.Return, or one regulator.",
                nameof(regulator))
            : Of(LineLayout.Returnless, demand, injectors, regulator, pump, limits);

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
        FuelDemand demand = Demand.At(point.Speed, point.Boost, point.Conditions.Atmosphere);
        double density = Demand.Consumption.Fuel.DensityAtKelvins(point.Conditions.FuelKelvins);
        double injected = FuelDemandFlow.Volume<Real>(demand.KilogramsPerSecond, density);
        double wanted = PumpDuty.Required<Real>(injected, _pumpReserve, _minimumReturn);
        double set = Regulator.SetPascals(point.Boost.Pascals);
        bool voltageCovered = point.Conditions.SupplyVolts >= Pump.Voltage.Volts - VoltageTolerance;
        RailBalance balance = voltageCovered
            ? RailBalance.Of(Pump, set, injected, wanted, _minimumReturn)
            : new(RailState.NotCovered, set, null, false, null);
        double differential = RailPressure.Differential<Real>(
            balance.RailGauge, point.Conditions.Atmosphere.Pascals, demand.ManifoldPascals);
        bool timed = Injectors.Injector.DeadTime.TryAt(
            point.Conditions.SupplyVolts, differential, out double deadTime);
        InjectionState<Real> injection = InjectionChain.Evaluate(
            _injection,
            new InjectionInput<Real>(point.Speed.RevolutionsPerSecond, differential, deadTime, injected, density));
        bool flows = timed && injection.StaticFlow > 0;
        return new(
            this,
            point,
            demand,
            new()
            {
                RailSet = set,
                Balance = balance,
                Differential = differential,
                FuelDensity = density,
                Injected = injected,
                Wanted = wanted,
                Injectable = balance.AtSet is { } atSet
                    ? PumpDuty.Injectable<Real>(atSet, _pumpReserve, _minimumReturn)
                    : null,
                StaticFlow = injection.StaticFlow,
                AvailableTime = injection.AvailableTime,
                DeadTime = timed ? deadTime : null,
                Pulse = flows ? injection.Pulse : null,
                DutyCycle = flows ? injection.DutyCycle : null,
                Capacity = flows
                    ? InjectorFlow.Capacity<Real>(
                        injection.StaticFlow, Injectors.Count, injection.AvailableTime, _dutyLimit, deadTime)
                    : null,
                PumpVoltageCovered = voltageCovered,
            });
    }

    /// <summary>Solves every pair of a speed and a boost.</summary>
    /// <param name="speeds">One or more, rising, within the engine's tables and limit.</param>
    /// <param name="boosts">One or more, rising.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Usual"/> if not given.</param>
    /// <returns>The results, the margins' worst places, and which part runs out first and where.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A list is empty or out of order, or the engine's tables do not cover a point.</exception>
    public SweepResult Sweep(
        IReadOnlyList<RotationalSpeed> speeds, IReadOnlyList<Pressure> boosts, Conditions? conditions = null)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(boosts);
        Rising(speeds, EngineSpeed.Within, Readable.Of, nameof(speeds));
        Rising(boosts, ManifoldPressure.Within, Readable.Boost, nameof(boosts));
        Conditions all = conditions ?? Conditions.Usual;
        return new(
            this,
            [.. speeds],
            [.. boosts],
            [.. boosts.SelectMany(_ => speeds, (boost, speed) => Solve(OperatingPoint.At(speed, boost, all)))]);
    }

    // An alternator's voltage is never known closer than this.
    private const double VoltageTolerance = 0.05;

    private static FuelSystem Of(
        LineLayout layout,
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpCurve pump,
        SizingLimits? limits)
    {
        ArgumentNullException.ThrowIfNull(demand);
        ArgumentNullException.ThrowIfNull(injectors);
        ArgumentNullException.ThrowIfNull(regulator);
        ArgumentNullException.ThrowIfNull(pump);
        return regulator is RisingRate { Base.Pascals: 0 }
            ? throw new ArgumentException(
                $"regulator was {regulator.Description}; with no base of its own it needs a base regulator before it. Use RegulatorSeries.Of.",
                nameof(regulator))
            : new(layout, demand, injectors, regulator, pump, limits ?? SizingLimits.Usual);
    }

    private static void Rising<T, TChecked>(
        IReadOnlyList<T> values, Func<T, string, TChecked> check, Func<T, string> text, string name)
        where T : struct, IComparable<T>
    {
        Allowed.Count(values.Count, 1, 10_000, "Give at least one.", name);
        for (int i = 0; i < values.Count; i++)
        {
            check(values[i], name);
            if (i > 0 && values[i].CompareTo(values[i - 1]) <= 0)
            {
                throw Allowed.OutOfRange(
                    name, text(values[i]), $"over the {text(values[i - 1])} before it", "Sort the list and give each value once.");
            }
        }
    }
}
