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

namespace FuelSizing.Systems;

/// <summary>A whole fuel system on an engine: its parts, and the checks that it must pass.</summary>
/// <remarks>
/// <para>A description: <see cref="SystemSolver.Solve"/> solves it at one steady operating point and
/// <see cref="SystemSweep.Sweep"/> over a range of speed and boost.</para>
/// <para>Lines and wiring count where they are given (<see cref="Plumbing"/>, <see cref="Pumps.Pump.Feed"/>); without them
/// pressure at the pump is pressure at the rail. Pulsation and transients are not modelled.</para>
/// </remarks>
/// <example>
/// <code>
/// OperatingResult result = system.Solve(OperatingPoint.At(RotationalSpeed.FromRevolutionsPerMinute(6800), Pressure.FromBars(0.6)));
/// Console.WriteLine(result.Limiting);
/// </code>
/// </example>
public sealed record FuelSystem
{
    private static readonly Identity<FuelSystem> _identity = new Identity<FuelSystem>()
        .Value(system => system.Layout)
        .Value(system => system.Demand)
        .Value(system => system.Injectors)
        .Value(system => system.Regulator)
        .Value(system => system.Pump)
        .Value(system => system.Plumbing)
        .Value(system => system.Limits)
        .Value(system => system.Controller)
        .Value(system => system.SurgeTank)
        .Value(system => system.StagedInjectors)
        .Value(system => system.SecondStream)
        .List(system => system.Checks)
        .List(system => system.Waivers);

    private FuelSystem(SystemParts parts, IReadOnlyList<ICheck> checks, IReadOnlyList<Waiver> waivers)
    {
        (Parts, Checks, Waivers) = (parts, checks, waivers);
        List<ICheck> applicable = [];
        List<NotJudged> notJudged = [];
        foreach (ICheck check in checks)
        {
            Applicability applies = check.AppliesTo(parts);
            if (applies.IsJudged)
            {
                applicable.Add(check);
            }

            if (applies.Gap is { } gap)
            {
                notJudged.Add(new(check.Part, gap, waivers.FirstOrDefault(waiver => waiver.Part == check.Part)?.Reason));
            }
        }

        (Applicable, NotJudged) = ([.. applicable], notJudged.AsReadOnly());
        IsWholeJudged = notJudged.TrueForAll(open => open.Waiver is not null);
    }

    // With other injectors, where every check applies, or not, as it did.
    private FuelSystem(SystemParts parts, FuelSystem alike)
    {
        (Parts, Checks, Waivers) = (parts, alike.Checks, alike.Waivers);
        (Applicable, NotJudged, IsWholeJudged) = (alike.Applicable, alike.NotJudged, alike.IsWholeJudged);
    }

    /// <summary>All parts and limits: everything but the checks.</summary>
    public SystemParts Parts { get; }

    /// <summary>Where surplus fuel goes back.</summary>
    public LineLayout Layout => Parts.Layout;

    /// <summary>How much fuel the engine burns.</summary>
    public FuelDemandModel Demand => Parts.Demand;

    /// <summary>The injectors; the primary set of them where there are <see cref="StagedInjectors"/>.</summary>
    public InjectorSet Injectors => Parts.Injectors;

    /// <summary>The regulator.</summary>
    public PressureRegulator Regulator => Parts.Regulator;

    /// <summary>The pump or pumps.</summary>
    public PumpAssembly Pump => Parts.Pump;

    /// <summary>The lines and filters.</summary>
    public Plumbing Plumbing => Parts.Plumbing;

    /// <summary>The limits that the parts are judged by.</summary>
    public SizingLimits Limits => Parts.Limits;

    /// <summary>
    /// Who decides the pulse: <see cref="IdealController"/>, which commands whatever is needed, until the system is given another.
    /// </summary>
    public EngineController Controller => Parts.Controller;

    /// <summary>The surge tank that the pumps draw from, with its lift circuit; none where they draw from the main tank.</summary>
    public SurgeTank? SurgeTank => Parts.SurgeTank;

    /// <summary>A secondary set of injectors and its hand-over; none where one set injects all the fuel.</summary>
    public StagedInjectors? StagedInjectors => Parts.StagedInjectors;

    /// <summary>A second stream of fuel beside the system; none where there is none.</summary>
    public SecondStream? SecondStream => Parts.SecondStream;

    /// <summary>The checks that are made where they apply: the standard ones, and those that were added.</summary>
    public IReadOnlyList<ICheck> Checks { get; }

    /// <summary>What the user does without a judgement of, and why.</summary>
    public IReadOnlyList<Waiver> Waivers { get; }

    /// <summary>What the system has, or may have, that no check judges, waived or not; empty if everything is judged.</summary>
    public IReadOnlyList<NotJudged> NotJudged { get; }

    /// <summary>Whether the system can be solved at a point: within the engine's tables, its speed limit, and the boost that it may have.</summary>
    /// <remarks>What the parts' data does not cover there is an answer of the result, not a refusal.</remarks>
    /// <param name="point">Any operating point.</param>
    /// <returns>True if <see cref="SystemSolver.Solve"/> answers.</returns>
    public bool Covers(OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        return Demand.Covers(point.Speed, point.Boost, point.Conditions.Atmosphere);
    }

    /// <summary>Those of the checks that apply to these parts.</summary>
    internal ICheck[] Applicable { get; }

    /// <summary>True if everything that the system has is judged, or waived.</summary>
    internal bool IsWholeJudged { get; }

    /// <summary>What the worst outcome of the checks amounts to for the whole system.</summary>
    internal Outcome Whole(Outcome worst) =>
        worst == Outcome.Holds && !IsWholeJudged ? Outcome.HoldsAsFarAsJudged : worst;

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
        Of(LineLayout.Return, demand, injectors, regulator, pump, limits, plumbing, IdealController.Instance, null, null, null, StandardChecks.All, []);

    /// <summary>A returnless system: the regulator sits before the rail, in or at the tank or behind a filter, and only injected fuel goes on to a dead-headed rail.</summary>
    /// <param name="demand">How much fuel the engine burns.</param>
    /// <param name="injectors">The injectors.</param>
    /// <param name="regulator">
    /// As a rule <see cref="Fixed"/>, for the tank knows nothing of the manifold; a reference hose may make it another.
    /// Not a rising-rate unit in series with a base regulator: there is no return line to put it in.
    /// </param>
    /// <param name="pump">The pump or pumps.</param>
    /// <param name="limits">The limits; <see cref="SizingLimits.Default"/> if not given.</param>
    /// <param name="plumbing">
    /// The lines and filters; <see cref="Plumbing.None"/> if not given. Its supply leads from the regulator to the rail; what lies between pump and regulator, as a
    /// filter with the regulator behind it, is given as <see cref="Plumbing.ToRegulator"/>.
    /// </param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">
    /// The regulator does not fit the layout or the plumbing, or the fuel lacks a property that the plumbing needs.
    /// </exception>
    public static FuelSystem Returnless(
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpAssembly pump,
        SizingLimits? limits = null,
        Plumbing? plumbing = null) =>
        Of(LineLayout.Returnless, demand, injectors, regulator, pump, limits, plumbing, IdealController.Instance, null, null, null, StandardChecks.All, []);

    /// <summary>The same system with other injectors.</summary>
    /// <param name="injectors">The injectors.</param>
    /// <returns>The system.</returns>
    public FuelSystem With(InjectorSet injectors) => Of(Layout, Demand, injectors, Regulator, Pump, Limits, Plumbing, Controller, SurgeTank, StagedInjectors, SecondStream, Checks, Waivers);

    /// <summary>The same system with another regulator.</summary>
    /// <param name="regulator">A regulator that fits the layout.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The regulator does not fit the layout.</exception>
    public FuelSystem With(PressureRegulator regulator) =>
        Of(Layout, Demand, Injectors, regulator, Pump, Limits, Plumbing, Controller, SurgeTank, StagedInjectors, SecondStream, Checks, Waivers);

    /// <summary>The same system with another pump or other pumps.</summary>
    /// <param name="pump">The pump or pumps.</param>
    /// <returns>The system.</returns>
    public FuelSystem With(PumpAssembly pump) => Of(Layout, Demand, Injectors, Regulator, pump, Limits, Plumbing, Controller, SurgeTank, StagedInjectors, SecondStream, Checks, Waivers);

    /// <summary>The same system with other lines and filters.</summary>
    /// <param name="plumbing">The lines and filters.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The fuel lacks a property that the plumbing needs.</exception>
    public FuelSystem With(Plumbing plumbing)
    {
        ArgumentNullException.ThrowIfNull(plumbing);
        return Of(Layout, Demand, Injectors, Regulator, Pump, Limits, plumbing, Controller, SurgeTank, StagedInjectors, SecondStream, Checks, Waivers);
    }

    /// <summary>The same system held to other limits.</summary>
    /// <param name="limits">The limits.</param>
    /// <returns>The system.</returns>
    public FuelSystem With(SizingLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        return Of(Layout, Demand, Injectors, Regulator, Pump, limits, Plumbing, Controller, SurgeTank, StagedInjectors, SecondStream, Checks, Waivers);
    }

    /// <summary>The same system with an engine controller whose knowledge is described: results then say which mixture the engine gets.</summary>
    /// <param name="controller">What it knows of air, injectors and fuel.</param>
    /// <returns>The system.</returns>
    public FuelSystem With(EngineController controller)
    {
        ArgumentNullException.ThrowIfNull(controller);
        return Of(Layout, Demand, Injectors, Regulator, Pump, Limits, Plumbing, controller, SurgeTank, StagedInjectors, SecondStream, Checks, Waivers);
    }

    /// <summary>The same system with its pumps drawing from a surge tank, which a lift pump fills from the main tank.</summary>
    /// <param name="surgeTank">The surge tank and its lift circuit.</param>
    /// <returns>The system. Its suction line is then that from the surge tank to the pumps.</returns>
    /// <exception cref="ArgumentException">The fuel lacks a property that the lift circuit needs.</exception>
    public FuelSystem With(SurgeTank surgeTank)
    {
        ArgumentNullException.ThrowIfNull(surgeTank);
        return Of(Layout, Demand, Injectors, Regulator, Pump, Limits, Plumbing, Controller, surgeTank, StagedInjectors, SecondStream, Checks, Waivers);
    }

    /// <summary>The same system with its pumps drawing from the main tank.</summary>
    /// <returns>The system.</returns>
    public FuelSystem WithoutSurgeTank() => Of(Layout, Demand, Injectors, Regulator, Pump, Limits, Plumbing, Controller, null, StagedInjectors, SecondStream, Checks, Waivers);

    /// <summary>The same system with a secondary set of injectors, which takes part of the fuel above a hand-over; its other injectors are the primary set.</summary>
    /// <param name="stagedInjectors">The secondary set and its hand-over.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">
    /// A controller is described, whose pulses know one set of injectors only; or the hand-over begins at a duty cycle over the limit.
    /// </exception>
    public FuelSystem With(StagedInjectors stagedInjectors)
    {
        ArgumentNullException.ThrowIfNull(stagedInjectors);
        return Of(Layout, Demand, Injectors, Regulator, Pump, Limits, Plumbing, Controller, SurgeTank, stagedInjectors, SecondStream, Checks, Waivers);
    }

    /// <summary>The same system with one set of injectors, the primary one, that injects all the fuel.</summary>
    /// <returns>The system.</returns>
    public FuelSystem WithoutStagedInjectors() => Of(Layout, Demand, Injectors, Regulator, Pump, Limits, Plumbing, Controller, SurgeTank, null, SecondStream, Checks, Waivers);

    /// <summary>The same system with a second stream of fuel beside it.</summary>
    /// <param name="secondStream">The stream, with its own pump, nozzles and tank.</param>
    /// <returns>The system. It is judged without the stream's help, unless main fuel is taken back for it (<see cref="SecondStream.WithMainFuelTakenBack"/>).</returns>
    /// <exception cref="ArgumentException">
    /// Its pump shares a feed with a pump of the system; or main fuel is taken back for it and the controller's pulses are recorded, which hold what is taken back already.
    /// </exception>
    public FuelSystem With(SecondStream secondStream)
    {
        ArgumentNullException.ThrowIfNull(secondStream);
        return Of(Layout, Demand, Injectors, Regulator, Pump, Limits, Plumbing, Controller, SurgeTank, StagedInjectors, secondStream, Checks, Waivers);
    }

    /// <summary>The same system without a second stream.</summary>
    /// <returns>The system.</returns>
    public FuelSystem WithoutSecondStream() => Of(Layout, Demand, Injectors, Regulator, Pump, Limits, Plumbing, Controller, SurgeTank, StagedInjectors, null, Checks, Waivers);

    /// <summary>The same system on another engine, or on another fuel.</summary>
    /// <param name="demand">How much fuel the engine burns.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The fuel lacks a property that the plumbing needs.</exception>
    public FuelSystem With(FuelDemandModel demand) => Of(Layout, demand, Injectors, Regulator, Pump, Limits, Plumbing, Controller, SurgeTank, StagedInjectors, SecondStream, Checks, Waivers);

    /// <summary>The same system on another fuel: the engine's BSFC goes with 1/heating value (<see cref="FuelConsumption.With"/>).</summary>
    /// <param name="fuel">What the engine burns then.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">The fuel lacks a property that the plumbing needs.</exception>
    public FuelSystem With(Fuel fuel) => With(Demand.With(fuel));

    /// <summary>The same system with a check more: it takes part in margins, verdict, tables, remedies, sheet and ranking.</summary>
    /// <param name="check">A check whose part no other check of the system judges.</param>
    /// <returns>The system.</returns>
    /// <exception cref="ArgumentException">Another check judges that part.</exception>
    public FuelSystem With(ICheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return Checks.Any(other => other.Part == check.Part)
            ? throw new ArgumentException(
                $"check judges {check.Part.Code}, which another check of the system judges already. Give its part a code of its own by Part.Of.",
                nameof(check))
            : new(Parts, Array.AsReadOnly<ICheck>([.. Checks, check]), Waivers);
    }

    /// <summary>The same system with a check in place of one that judges its part: a line's own, not that of the line before.</summary>
    internal FuelSystem JudgedBy(ICheck check) =>
        new(Parts, Array.AsReadOnly<ICheck>([.. Checks.Where(other => other.Part != check.Part), check]), Waivers);

    /// <summary>
    /// The same system, of which only some parts are judged: where what the others compare with means nothing. One that has none of these parts
    /// is judged as it was, for something must be.
    /// </summary>
    internal FuelSystem JudgedOnlyBy(IReadOnlyList<Part> parts)
    {
        FuelSystem judged = new(Parts, Array.AsReadOnly<ICheck>([.. Checks.Where(check => parts.Contains(check.Part))]), Waivers);
        return judged.Applicable.Length > 0 ? judged : this;
    }

    /// <summary>The same system, which does without a judgement of something that its data leaves open.</summary>
    /// <param name="part">What is not judged, for instance <see cref="Part.PressureRating"/>. Where it is judged, it stays judged.</param>
    /// <param name="reason">Why that is in order, 1 to 80 characters; results show it.</param>
    /// <returns>The system; a later reason takes the place of an earlier one.</returns>
    /// <exception cref="ArgumentException">No check of the system has that part, or the reason cannot be shown.</exception>
    /// <example>
    /// <code>
    /// FuelSystem waived = system.Waive(Part.PressureRating, "all hoses are new and rated for 1,000 kPa");
    /// </code>
    /// </example>
    public FuelSystem Waive(Part part, string reason)
    {
        ArgumentNullException.ThrowIfNull(part);
        Waiver waiver = Waiver.Of(part, reason);
        return Checks.Any(check => check.Part == part)
            ? new(Parts, Checks, Array.AsReadOnly<Waiver>([.. Waivers.Where(other => other.Part != part), waiver]))
            : throw new ArgumentException(
                $"part is {part.Code}, which no check of this system judges; give one of {string.Join(", ", Checks.Select(check => check.Part.Code))}.",
                nameof(part));
    }

    /// <summary>The same system with other parts, unchecked: they are known to fit.</summary>
    internal FuelSystem With(SystemParts parts) => new(parts, Checks, Waivers);

    /// <summary>The same system with these parts in it, unchecked: they are known to fit.</summary>
    internal FuelSystem With(FuelDemandModel demand, InjectorSet injectors, PressureRegulator regulator) =>
        new(new(Layout, demand, injectors, regulator, Pump, Plumbing, Limits, Controller, SurgeTank, StagedInjectors, SecondStream), Checks, Waivers);

    /// <summary>The checks of which it may depend on the injectors whether they apply.</summary>
    internal ICheck[] AskingForInjectors => [.. Checks.Where(check => !StandardChecks.ApplyWhateverInjectors.Contains(check))];

    /// <summary>The same system with other injectors, unchecked: they are known to fit.</summary>
    /// <param name="injectors">Of two sets the primary one.</param>
    /// <param name="asking"><see cref="AskingForInjectors"/>, which are asked again whether they apply.</param>
    internal FuelSystem Injecting(InjectorSet injectors, ICheck[] asking)
    {
        SystemParts parts = Parts.With(injectors);
        return Array.TrueForAll(asking, AppliesAsBefore) ? new(parts, this) : With(parts);

        bool AppliesAsBefore(ICheck check) =>
            check.AppliesTo(parts) is { Gap: null } applies
            && applies.IsJudged == Applicable.Contains(check)
            && !NotJudged.Any(open => open.Part == check.Part);
    }

    /// <summary>Injectors, regulator and pump.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"{(Layout == LineLayout.Return ? "return" : "returnless")} system: {Injectors.Count} × {Injectors.Injector.Name}{(StagedInjectors is { Secondary: { } secondary } ? $" and secondary {secondary.Count} × {secondary.Injector.Name}" : string.Empty)}, {Regulator.Description}, {Pump.Name}";

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(FuelSystem? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    private static FuelSystem Of(
        LineLayout layout,
        FuelDemandModel demand,
        InjectorSet injectors,
        PressureRegulator regulator,
        PumpAssembly pump,
        SizingLimits? limits,
        Plumbing? plumbing,
        EngineController controller,
        SurgeTank? surgeTank,
        StagedInjectors? stagedInjectors,
        SecondStream? secondStream,
        IReadOnlyList<ICheck> checks,
        IReadOnlyList<Waiver> waivers)
    {
        ArgumentNullException.ThrowIfNull(demand);
        ArgumentNullException.ThrowIfNull(injectors);
        ArgumentNullException.ThrowIfNull(regulator);
        ArgumentNullException.ThrowIfNull(pump);
        Plumbing lines = plumbing ?? Plumbing.None;
        Fitting(layout, regulator, lines);
        Fuel fuel = demand.Consumption.Fuel;
        if (lines.HasToRegulator && layout == LineLayout.Return)
        {
            throw new ArgumentException(
                $"plumbing has {lines.ToRegulator[0].Name} before a regulator that sits before the rail, and the system's regulator sits at the rail. Give it among the supply, or use FuelSystem.Returnless.",
                nameof(plumbing));
        }

        if ((pump.HasOwnLines && !fuel.HasViscosity) || (pump.HasOwnSuction && !fuel.HasVapourPressure))
        {
            throw new ArgumentException(
                $"pump has lines of its own, which need the viscosity of {fuel.Name}, and on the suction side its vapour pressure. Give them with Fuel.WithViscosity and Fuel.WithVapourPressure.",
                nameof(pump));
        }

        if ((lines.NeedsViscosity && !fuel.HasViscosity) || (lines.HasSuction && !fuel.HasVapourPressure))
        {
            throw new ArgumentException(
                $"plumbing needs the viscosity of {fuel.Name}, and on the suction side its vapour pressure. Give them with Fuel.WithViscosity and Fuel.WithVapourPressure.",
                nameof(plumbing));
        }

        if (surgeTank?.Plumbing is { } lift && ((lift.NeedsViscosity && !fuel.HasViscosity) || (lift.HasSuction && !fuel.HasVapourPressure)))
        {
            throw new ArgumentException(
                $"surgeTank needs the viscosity of {fuel.Name}, and on the lift pump's suction side its vapour pressure. Give them with Fuel.WithViscosity and Fuel.WithVapourPressure.",
                nameof(surgeTank));
        }

        if (surgeTank?.LiftPump.Pumps.FirstOrDefault(lift => lift.Feed?.Shared is { } part && pump.Pumps.Any(main => main.Feed?.Shared?.Name == part.Name)) is { } both)
        {
            throw new ArgumentException(
                $"surgeTank has {both.Name} on {both.Feed!.Shared!.Name}, which feeds the main pumps too: the two circuits are solved with a feed each. Give the lift pump a feed of its own.",
                nameof(surgeTank));
        }

        SizingLimits held = limits ?? SizingLimits.Default;
        if (stagedInjectors is not null && !controller.IsIdeal)
        {
            throw new ArgumentException(
                $"controller is {controller}, which commands one pulse for one set of injectors and knows nothing of a secondary set, so that the mixture with both cannot be calculated. Leave out the controller (IdealController), or the secondary set (WithoutStagedInjectors).",
                nameof(controller));
        }

        if (stagedInjectors?.HandOver.BeginDutyCycle is { } begin && begin > held.DutyCycle)
        {
            throw Guard.OutOfRange(
                nameof(stagedInjectors),
                $"a hand-over that begins at {TextStyle.Metric.DutyCycle(begin)} duty cycle",
                $"at most the limit of the duty cycle, {TextStyle.Metric.DutyCycle(held.DutyCycle)}",
                "Begin the hand-over below the limit, for the primary set alone reaches it first.");
        }

        if (secondStream is { TakesBack: true } && controller is RecordedPulseController or CustomController)
        {
            throw new ArgumentException(
                $"secondStream has main fuel taken back for {secondStream.Name}, and the controller's pulses are recorded, or a law of their own: they hold what is taken back already. Give them so, and leave WithMainFuelTakenBack out.",
                nameof(secondStream));
        }

        if (secondStream?.Pump?.Pumps.FirstOrDefault(own => own.Feed?.Shared is { } part
            && pump.Pumps.Concat(surgeTank?.LiftPump.Pumps ?? []).Any(main => main.Feed?.Shared?.Name == part.Name)) is { } wired)
        {
            throw new ArgumentException(
                $"secondStream has {wired.Name} on {wired.Feed!.Shared!.Name}, which feeds pumps of the fuel system too: the two are solved with a feed each. Give the second stream's pump a feed of its own.",
                nameof(secondStream));
        }

        return new(new(layout, demand, injectors, regulator, pump, lines, held, controller, surgeTank, stagedInjectors, secondStream), checks, waivers);
    }

    /// <summary>Refuses a system with a secondary set of injectors where only one set can be asked for.</summary>
    /// <param name="name">Of the argument.</param>
    /// <param name="what">That does not take it.</param>
    /// <exception cref="ArgumentException">There is a secondary set.</exception>
    internal void RequireOneSet(string name, string what)
    {
        if (StagedInjectors is { } staged)
        {
            throw new ArgumentException(
                $"{name} has a secondary set of injectors ({staged}), which {what} does not take. Ask with one set (WithoutStagedInjectors), or solve and sweep the system with both.",
                name);
        }
    }

    /// <summary>Refuses a hand-over by duty cycle where the answer would have to be true over a range that moves with the duty cycle.</summary>
    /// <param name="name">Of the argument.</param>
    /// <param name="what">That does not take it.</param>
    /// <exception cref="ArgumentException">There is a hand-over by duty cycle.</exception>
    internal void RequireHandOverByBoost(string name, string what)
    {
        if (StagedInjectors is { HandOver: { IsByDutyCycle: true } handOver })
        {
            throw new ArgumentException(
                $"{name} has a hand-over by duty cycle ({handOver}), whose place moves with what is asked for, and which {what} does not take. Give a hand-over by boost (HandOver.ByBoost), or sweep the system.",
                name);
        }
    }

    /// <summary>Why a regulator does not fit a layout and its lines; none if it does.</summary>
    internal static Statement? Misfit(LineLayout layout, PressureRegulator regulator, Plumbing lines) => (layout, regulator) switch
    {
        (LineLayout.Returnless, ElectronicReturnless) when lines.HasToRegulator => Statement.Of(
            "regulator.needs-none-before",
            $"it holds the rail itself, and the plumbing has {lines.ToRegulator[0].Name} before a regulator that sits before the rail. Give that among the supply."),
        (LineLayout.Return, ElectronicReturnless) =>
            Statement.Of("regulator.needs-returnless", $"a pump held by its speed returns nothing. Use FuelSystem.Returnless."),
        (LineLayout.Returnless, RegulatorSeries) => Statement.Of(
            "regulator.needs-return", $"a returnless system has no return line for the second unit. Use FuelSystem.Return, or one regulator."),
        (_, RisingRate { Base.Pascals: 0 }) =>
            Statement.Of("regulator.needs-base", $"with no base of its own it needs a base regulator before it. Use RegulatorSeries.Of."),
        _ => null,
    };

    private static void Fitting(LineLayout layout, PressureRegulator regulator, Plumbing lines)
    {
        if (Misfit(layout, regulator, lines) is { } misfit)
        {
            throw new ArgumentException($"regulator was {regulator.Description}; {misfit}", nameof(regulator));
        }
    }
}
