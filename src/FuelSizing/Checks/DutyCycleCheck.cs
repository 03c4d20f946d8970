using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The injectors' flow: duty cycle against its limit, at the pressure that the regulator sets.</summary>
internal sealed class DutyCycleCheck(JudgedSet set) : ICheck
{
    /// <inheritdoc/>
    public Part Part => set.Flow;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Duty cycle", LimitDirection.AtMost, si => Ratio.FromDecimalFractions(si), units => units.DutyCycle);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => set.IsIn(parts) ? Applicability.Judged : Applicability.NotApplicable;

    // The margin is that of the fuel, not of the duty cycle: dead time takes its share of the cycle at any flow. Below the differential
    // from which the flow is known an injector passes no more than there, and opens after no less than no time: what even that does not
    // feed fails.
    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        InjectorSet injectors = set.Of(parts);
        InjectorValues<T> own = set.Read(at);
        Injector injector = injectors.Injector;
        T most = InjectorFlow.Static<T>(injector.RatingAt<Real>(injector.MinimumPascals).Value, injector.RatedPascals, injector.TestDensity, injector.MinimumPascals, at.FuelDensity);
        T open = T.IfLess(-1, own.DeadTime, own.DeadTime, 0);
        T bound = InjectorFlow.Capacity(most, injectors.Count, own.AvailableTime, parts.Limits.DutyCycleShare, open);
        T margin = T.IfLess(0, at.Differential, CheckReading.MarginOf<T>(own.Capacity, own.Injected), -1);
        T best = margin;
        if (parts.Regulator.HasBand)
        {
            // They are judged by the lowest pressure that the regulator may hold; at the highest they pass more, open no sooner, and a set that
            // takes over by duty cycle has less to pass.
            T higher = injector.StaticFrom(own.StaticFlow, at.Differential, at.Maximum.Differential, at.FuelDensity);
            T capacity = InjectorFlow.Capacity(higher, injectors.Count, own.AvailableTime, parts.Limits.DutyCycleShare, open);
            T better = T.IfLess(0, at.Differential, CheckReading.MarginOf<T>(capacity, own.Injected * own.InjectedAtLeast), double.NaN);
            best = T.IfLess(at.Differential, at.Maximum.Differential, better, margin);
        }

        return set.WhileInjecting<T>(own.Injected, new(
            own.DutyCycle,
            parts.Limits.DutyCycleShare,
            margin,
            T.IfLess(
                0,
                at.Differential,
                T.IfLess(at.Differential, injector.MinimumPascals, CheckReading.MarginOf<T>(bound, own.Injected), best),
                best)));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        Ratio limit = point.Parts.Limits.DutyCycle;
        Injection own = set.Of(point.Judged);
        if (set.IsIdle(point))
        {
            return JudgedSet.Idle(point);
        }

        if (own.StaticFlow <= 0)
        {
            return Statement.Of(
                "injectors.no-flow",
                $"no flow: the pressure across the injector is {Pressure.FromPascals(point.Judged.Differential)}");
        }

        if (own.DutyCycle is not { } duty)
        {
            return CheckReading.OutcomeOf(reading) == Outcome.Fails
                ? Statement.Of(
                    "injectors.too-small-at-minimum-differential",
                    $"at {Pressure.FromPascals(point.Judged.Differential)} across them they pass no more than at {set.Of(point.Parts).Injector.MinimumDifferential}, which is too little at a duty cycle of {limit:duty-cycle}")
                : set.UnknownPulse(point);
        }

        Ratio used = Ratio.FromDecimalFractions(duty);
        Statement? rule = point.Parts.Limits.MarkOf(RuleOfThumb.DutyCycle);
        if (CheckReading.OutcomeOf(reading) == Outcome.CannotSay)
        {
            return Statement.Of(
                "injectors.regulator-bounds",
                $"duty cycle {used.ApartFrom(limit):duty-cycle} at the lowest pressure that the regulator may hold, over the {limit.ApartFrom(used):duty-cycle} limit{rule}; at the highest it may be within it");
        }

        return (CheckReading.OutcomeOf(reading) == Outcome.Holds, Sag(point)) switch
        {
            (true, null) => Statement.Of("injectors.within", $"duty cycle {used:duty-cycle} of at most {limit:duty-cycle}{rule}"),
            (true, { } sag) => Statement.Of("injectors.within-while-sagging", $"duty cycle {used:duty-cycle} of at most {limit:duty-cycle}{rule}{sag}"),
            (false, null) => Statement.Of("injectors.over", $"duty cycle {used.ApartFrom(limit):duty-cycle} over the {limit.ApartFrom(used):duty-cycle} limit{rule}"),
            (false, { } sag) => Statement.Of("injectors.over-while-sagging", $"duty cycle {used.ApartFrom(limit):duty-cycle} over the {limit.ApartFrom(used):duty-cycle} limit{rule}{sag}"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        double? largest = 0;
        foreach (SolvedPoint point in task.Points.Where(point => !set.IsIdle(point)))
        {
            largest = largest is { } soFar && RequiredRating(point) is { } required ? Math.Max(soFar, required) : null;
        }

        Injector fitted = set.Of(task.Parts).Injector;
        if (largest is not { } flow)
        {
            return Remedy.Of(
                Part,
                null,
                Statement.Of(
                    "injectors.no-size-adequate",
                    $"No injector size is adequate with this regulator: at some point there is no pressure across the injector, or less than its flow is known at, no time left in the cycle, or no dead time known."));
        }

        VolumeFlow needed = VolumeFlow.FromCubicMetersPerSecond(flow * (1 + Remedy.Hair));
        bool isOfAKind = fitted.MeasuredFlows.Count > 0;
        return Remedy.Of(Part, needed, (set == JudgedSet.Primary, isOfAKind) switch
        {
            (true, false) => Statement.Of(
                "injectors.larger",
                $"Injectors of at least {needed:injector-flow:up} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, with dead times like these."),
            (true, true) => Statement.Of(
                "injectors.larger-of-a-kind",
                $"Injectors of at least {needed:injector-flow:up} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, with dead times like these, and flows that go with pressure as these do."),
            (false, false) => Statement.Of(
                "injectors.larger-secondary",
                $"Secondary injectors of at least {needed:injector-flow:up} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, with dead times like these, or a smaller share of the fuel."),
            _ => Statement.Of(
                "injectors.larger-secondary-of-a-kind",
                $"Secondary injectors of at least {needed:injector-flow:up} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, with dead times like these, and flows that go with pressure as these do, or a smaller share of the fuel."),
        });
    }

    private Statement? Sag(SolvedPoint point) => (point.RailState, set.Of(point.Actual).DutyCycle) switch
    {
        (Circuits.RailState.Sagging, { } duty) => Statement.Of(
            "injectors.sagging-rail",
            $" at the pressure set, {Ratio.FromDecimalFractions(duty):duty-cycle} with the rail sagging"),
        (Circuits.RailState.Sagging or Circuits.RailState.Starved, _) => Statement.Of(
            "injectors.set-pressure-not-reached", $" at the pressure set, which the rail does not reach"),
        _ => null,
    };

    private static bool InjectsBy(Injector injector, double differential) =>
        KnownFlow.Of<Real>(1, differential, injector.MinimumPascals) > 0;

    // At the regulator's set pressure, so that larger injectors are not asked to make up for a sagging pump.
    private double? RequiredRating(SolvedPoint point)
    {
        SystemParts parts = point.Parts;
        InjectorSet injectors = set.Of(parts);
        Injection own = set.Of(point.Judged);
        double differential = RailPressure.Differential<Real>(
            point.SolvedCircuit.RailSet,
            point.Point.Conditions.Atmosphere.Pascals,
            point.SolvedDemand.Chain.ManifoldAbsolute);
        differential = point.SolvedCircuit.Task.Held is null ? differential : point.Judged.Differential;
        if (!InjectsBy(injectors.Injector, differential)
            || double.IsNaN(set.InjectedBy(point))
            || !injectors.Injector.DeadTime.TryAt(point.Point.Conditions.SupplyVolts, differential, out double deadTime))
        {
            return null;
        }

        double required = InjectorFlow.Rated<Real>(
            InjectorFlow.RequiredStatic<Real>(
                set.InjectedBy(point),
                injectors.Count,
                own.AvailableTime,
                parts.Limits.DutyCycleShare,
                deadTime),
            injectors.Injector.RatedPascals,
            injectors.Injector.TestDensity,
            differential,
            point.SolvedDemand.Density);
        required = injectors.Injector.RatedFor(required, differential);
        return double.IsFinite(required) && required > 0 ? required : null;
    }
}
