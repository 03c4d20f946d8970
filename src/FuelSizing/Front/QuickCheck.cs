using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing;

/// <summary>A check of injectors, and of a pump once one is given, from a few numbers; what is not given is assumed, and listed.</summary>
/// <remarks>
/// <para>It is a <see cref="FuelSystem"/> solved at one operating point of full load, with both ends of everything that is assumed: it holds only where it
/// does with all that is assumed at its worst, and fails only where it does with all of it at its best. In between it cannot be said, and what is assumed
/// is what to find out. While an input of the calculation is assumed, it holds as far as judged at best.</para>
/// <para>Each <c>With</c> gives a check of which something is described that was assumed before. With engine, injectors, regulator, pump and
/// conditions described, the check is <see cref="SystemSolver.Solve"/> of the described system, number for number.</para>
/// <para>One point is judged, not a range: sweep the <see cref="System"/> once it is described. Pulsation, transients and knock are not modelled, and a
/// lean mixture on boost destroys an engine: see <see cref="Cautions"/>.</para>
/// </remarks>
/// <example>
/// <code>
/// QuickCheck check = QuickCheck.FromPower(
///     Power.FromKilowatts(220), Fuel.Petrol, injectors: 4, VolumeFlow.FromMillilitersPerMinute(850), ratedAt: Pressure.FromKilopascals(300));
/// Console.WriteLine(check.Verdict);
/// foreach (Assumption assumed in check.Assumed)
/// {
///     Console.WriteLine(assumed);
/// }
/// </code>
/// </example>
public sealed class QuickCheck : IReadable
{
    private readonly GivenInputs _given;

    private QuickCheck(GivenInputs given)
    {
        _given = given;
        OperatingResult[] results = [.. given.Cases().Select(each => each.System.Solve(each.Point))];
        Assumed = given.Assumed();
        Margins = Array.AsReadOnly<MarginRange>(
        [
            .. Enumerable.Range(0, results[0].Margins.Count)
                .Select(check => MarginRange.Over(results, check))
                .OrderBy(range => range.Worst, Urgency.Order),
        ]);
        WorstCase = results.MinBy(result => result.Limiting.Margin, Urgency.Order)!;
        BestCase = results.MaxBy(result => result.Limiting.Margin, Urgency.Order)!;
        Verdict = VerdictOf(given.Unknown());
    }

    /// <summary>Whether it holds, and what was not judged.</summary>
    public Verdict Verdict { get; }

    /// <summary>Each check with what is assumed at its worst and at its best for it, the most urgent first.</summary>
    public IReadOnlyList<MarginRange> Margins { get; }

    /// <summary>Every value that was not given, in the order in which it comes into the calculation.</summary>
    public IReadOnlyList<Assumption> Assumed { get; }

    /// <summary>The solved point with everything that is assumed at its worst for the limiting component; the solved point where nothing is.</summary>
    public OperatingResult WorstCase { get; }

    /// <summary>The solved point with everything that is assumed at its best for the limiting component; the solved point where nothing is.</summary>
    public OperatingResult BestCase { get; }

    /// <summary>The system of <see cref="WorstCase"/>: the described parts, and stand-ins for those that are not.</summary>
    public FuelSystem System => WorstCase.System;

    /// <summary>The operating point of <see cref="WorstCase"/>.</summary>
    public OperatingPoint Point => WorstCase.Point;

    /// <summary>Checks injectors for a power.</summary>
    /// <param name="crankPower">At full load, boosted, at the crank, 1 to 1,000 kW. Power at the wheels is less: <see cref="Drivetrain.ToCrank"/>.</param>
    /// <param name="fuel">What the engine burns; of another fuel than petrol the assumed BSFC is converted by heating value.</param>
    /// <param name="injectors">How many there are, 1 to 48.</param>
    /// <param name="injectorFlow">Static flow of one of them, 20 to 10,000 mL/min.</param>
    /// <param name="ratedAt">Differential pressure at which that flow was measured, 50 to 2,000 kPa.</param>
    /// <param name="speed">At which the power is made, 500 to 25,000 rev/min; assumed if not given.</param>
    /// <param name="boost">At which it is made, 0 to 400 kPa; assumed if not given.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static QuickCheck FromPower(
        Power crankPower,
        Fuel fuel,
        int injectors,
        VolumeFlow injectorFlow,
        Pressure ratedAt,
        RotationalSpeed? speed = null,
        Pressure? boost = null)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        return new(new()
        {
            Power = Guard.Between(
                crankPower, UnitsNet.Power.FromKilowatts(1), UnitsNet.Power.FromKilowatts(1000), "Give the power of the whole engine at the crank.", nameof(crankPower)),
            Fuel = fuel,
            Injectors = Counted(injectors),
            InjectorFlow = Flowing(injectorFlow),
            RatedAt = Rated(ratedAt),
            Speed = speed is { } turns ? Turning(turns, nameof(speed)) : null,
            Boost = boost is { } pressure ? Boosted(pressure, nameof(boost)) : null,
        });
    }

    /// <summary>Checks injectors for an engine at a boost, by the air that it draws at its speed limit.</summary>
    /// <param name="engine">Displacement, cycle and speed limit.</param>
    /// <param name="boost">Manifold gauge pressure at full load, 0 to 400 kPa; 0 without a compressor.</param>
    /// <param name="fuel">What the engine burns.</param>
    /// <param name="injectors">How many there are, 1 to 48.</param>
    /// <param name="injectorFlow">Static flow of one of them, 20 to 10,000 mL/min.</param>
    /// <param name="ratedAt">Differential pressure at which that flow was measured, 50 to 2,000 kPa.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <example>
    /// <code>
    /// Engine engine = Engine.Of("hill-climb 2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, RotationalSpeed.FromRevolutionsPerMinute(7200));
    /// Console.WriteLine(QuickCheck.FromEngine(
    ///     engine, Pressure.FromBars(0.6), Fuel.E85, injectors: 4, VolumeFlow.FromMillilitersPerMinute(1500), ratedAt: Pressure.FromKilopascals(300)));
    /// </code>
    /// </example>
    public static QuickCheck FromEngine(
        Engine engine, Pressure boost, Fuel fuel, int injectors, VolumeFlow injectorFlow, Pressure ratedAt)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(fuel);
        return new(new()
        {
            Engine = engine,
            Boost = Boosted(boost, nameof(boost)),
            Fuel = fuel,
            Injectors = Counted(injectors),
            InjectorFlow = Flowing(injectorFlow),
            RatedAt = Rated(ratedAt),
        });
    }

    /// <summary>The same check at an engine speed.</summary>
    /// <param name="speed">500 to 25,000 rev/min, up to the engine's limit where an engine was given.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is outside its range, or the described engine's tables do not cover it.</exception>
    public QuickCheck WithSpeed(RotationalSpeed speed) => new(_given with { Speed = Turning(speed, nameof(speed)) });

    /// <summary>The same check at a boost.</summary>
    /// <param name="boost">Manifold gauge pressure at full load, 0 to 400 kPa.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The boost is outside its range, or the described engine has no compressor.</exception>
    public QuickCheck WithBoost(Pressure boost) => new(_given with { Boost = Boosted(boost, nameof(boost)) });

    /// <summary>The same check on another fuel: BSFC goes with 1/heating value, whether it was given or assumed.</summary>
    /// <param name="fuel">What the engine burns then.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentException">The fuel lacks a property that described parts need.</exception>
    public QuickCheck With(Fuel fuel)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        return new(_given with { Fuel = fuel, Consumption = _given.Consumption?.With(fuel), Demand = _given.Demand?.With(fuel) });
    }

    /// <summary>The same check with a described engine in place of the assumed one.</summary>
    /// <param name="engine">Displacement, cycle and speed limit. Where a power was given, the fuel follows from that as before.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed that was given is over the engine's limit.</exception>
    public QuickCheck With(Engine engine)
    {
        ArgumentNullException.ThrowIfNull(engine);
        return new(_given with { Engine = engine, Demand = _given.Demand?.With(engine) });
    }

    /// <summary>The same check with a known lambda and BSFC, on the fuel to which they belong.</summary>
    /// <param name="consumption">Fuel, lambda and BSFC at full load.</param>
    /// <returns>The check.</returns>
    public QuickCheck With(FuelConsumption consumption)
    {
        ArgumentNullException.ThrowIfNull(consumption);
        return new(_given with { Fuel = consumption.Fuel, Consumption = consumption, Demand = _given.Demand?.With(consumption) });
    }

    /// <summary>The same check with the engine's demand described, at the point at which it asks for the most fuel.</summary>
    /// <param name="demand">How much fuel the engine burns; power, engine, lambda, BSFC and fuel are the model's from then on.</param>
    /// <param name="speed">Within the model's tables, 500 to 25,000 rev/min.</param>
    /// <param name="boost">Manifold gauge pressure at full load, 0 to 400 kPa.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the model's tables do not cover it.</exception>
    public QuickCheck With(FuelDemandModel demand, RotationalSpeed speed, Pressure boost)
    {
        ArgumentNullException.ThrowIfNull(demand);
        return new(_given with
        {
            Demand = demand,
            Engine = demand.Engine,
            Fuel = demand.Consumption.Fuel,
            Consumption = demand.Consumption,
            Speed = Turning(speed, nameof(speed)),
            Boost = Boosted(boost, nameof(boost)),
        });
    }

    /// <summary>The same check with a described injector, as many of them as before.</summary>
    /// <param name="injector">Flow, dead time, shortest pulse and highest pressure.</param>
    /// <returns>The check.</returns>
    public QuickCheck With(Injector injector)
    {
        ArgumentNullException.ThrowIfNull(injector);
        return new(_given with
        {
            Injector = injector,
            Set = _given.Set is { } set ? InjectorSet.Of(injector, set.Count, set.InjectionsPerCycle) : null,
        });
    }

    /// <summary>The same check with a described set of injectors.</summary>
    /// <param name="injectors">Injector, how many, and pulses in a working cycle.</param>
    /// <returns>The check.</returns>
    public QuickCheck With(InjectorSet injectors)
    {
        ArgumentNullException.ThrowIfNull(injectors);
        return new(_given with { Set = injectors, Injector = injectors.Injector, Injectors = injectors.Count });
    }

    /// <summary>The same check with a pump, which is judged from then on.</summary>
    /// <param name="pump">The pump or pumps.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentException">The fuel lacks a property that the pump's own lines need.</exception>
    public QuickCheck With(PumpAssembly pump)
    {
        ArgumentNullException.ThrowIfNull(pump);
        return new(_given with { Pump = pump });
    }

    /// <summary>The same check with a described regulator at the rail, from which surplus fuel returns to the tank.</summary>
    /// <param name="regulator">What holds the rail's pressure.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentException">The regulator does not fit a return system.</exception>
    public QuickCheck With(PressureRegulator regulator)
    {
        ArgumentNullException.ThrowIfNull(regulator);
        return new(_given with { Regulator = regulator, Layout = LineLayout.Return });
    }

    /// <summary>The same check with a described regulator before the rail, so that no line returns from there.</summary>
    /// <param name="regulator">What holds the rail's pressure.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentException">The regulator does not fit a returnless system.</exception>
    public QuickCheck WithReturnless(PressureRegulator regulator)
    {
        ArgumentNullException.ThrowIfNull(regulator);
        return new(_given with { Regulator = regulator, Layout = LineLayout.Returnless });
    }

    /// <summary>The same check against your own limits.</summary>
    /// <param name="limits">Duty cycle, pump reserve and others.</param>
    /// <returns>The check.</returns>
    public QuickCheck With(SizingLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        return new(_given with { Limits = limits });
    }

    /// <summary>The same check in known conditions.</summary>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <returns>The check.</returns>
    public QuickCheck With(Conditions conditions)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        return new(_given with { Conditions = conditions });
    }

    /// <summary>The same check with lines and filters; they are counted once pump and conditions are given.</summary>
    /// <param name="plumbing">The lines and filters.</param>
    /// <returns>The check.</returns>
    /// <exception cref="ArgumentException">The lines do not fit the layout, or the fuel lacks a property that they need.</exception>
    public QuickCheck With(Plumbing plumbing)
    {
        ArgumentNullException.ThrowIfNull(plumbing);
        return new(_given with { Plumbing = plumbing });
    }

    /// <summary>The same check with an engine controller whose knowledge is described; the mixture is judged once nothing of engine and parts is assumed.</summary>
    /// <param name="controller">What it knows of air, injectors and fuel.</param>
    /// <returns>The check.</returns>
    public QuickCheck With(EngineController controller)
    {
        ArgumentNullException.ThrowIfNull(controller);
        return new(_given with { Controller = controller });
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Verdict.In(style);

    /// <summary>The verdict.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private Verdict VerdictOf(Statement? unknown)
    {
        Outcome worst = unknown is null ? Margins.Select(range => range.Outcome).Aggregate(Urgency.Worse) : Outcome.CannotSay;
        Outcome outcome = System.Whole(worst);
        MarginRange first = Margins.First(range => unknown is not null || range.Outcome == worst);
        Statement? over = ReferenceEquals(WorstCase, BestCase) ? null : Statement.Of("check.over-the-ranges", $" over the whole ranges of the {Assumed.Count(each => each.Best is not null)} values that are assumed");
        Statement headline = (outcome, unknown) switch
        {
            (_, { } why) => Statement.Of("check.unknown", $"Cannot be judged: {why}."),
            (Outcome.Fails, _) => Statement.Of("check.fails", $"Does not hold{over}: {first.Best}."),
            (Outcome.CannotSay, _) when over is null => Statement.Of("check.cannot-say", $"Cannot be judged: {first.Worst}."),
            (Outcome.CannotSay, _) => Statement.Of("check.rests-on-assumed", $"Cannot be judged with what is assumed: {first}."),
            (Outcome.HoldsAsFarAsJudged, _) => Statement.Of(
                "check.holds-as-far-as-judged", $"Holds as far as judged{over}: tightest margin: {first.Part.Name}, {first.Worst.Reserve ?? Ratio.Zero:change}. Not judged: {Verdict.Open(System.NotJudged):;}."),
            _ => Statement.Of("check.holds", $"Holds: tightest margin: {first.Part.Name}, {first.Worst.Reserve ?? Ratio.Zero:change}."),
        };
        return new(outcome, headline, [.. Margins], System.NotJudged);
    }

    private static int Counted(int injectors) => Guard.Count(injectors, 1, 48, "Count the injectors that feed the engine.", nameof(injectors));

    private static VolumeFlow Flowing(VolumeFlow injectorFlow) => Guard.Between(
        injectorFlow, VolumeFlow.FromMillilitersPerMinute(20), VolumeFlow.FromMillilitersPerMinute(10_000), "Give the flow of one injector held open.", nameof(injectorFlow));

    private static Pressure Rated(Pressure ratedAt) => Guard.Between(
        ratedAt, Pressure.FromKilopascals(50), Pressure.FromKilopascals(2000), "Give the pressure at which the flow was measured; 300 kPa is typical.", nameof(ratedAt));

    private static RotationalSpeed Turning(RotationalSpeed speed, string name) => Guard.Between(
        speed, RotationalSpeed.FromRevolutionsPerMinute(500), RotationalSpeed.FromRevolutionsPerMinute(25_000), "Give the crankshaft's speed at full load.", name);

    private static Pressure Boosted(Pressure boost, string name) => Guard.Between(
        boost, Pressure.Zero, Pressure.FromKilopascals(400), "Give the gauge pressure in the manifold at full load; 0 without a compressor.", name);
}
