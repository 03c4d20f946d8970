using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The injectors' open time, pulse less dead time, against that of the minimum linear pulse width.</summary>
/// <remarks>
/// A pulse width is stated at one voltage. At a lower one the dead time takes more of it, so that pulses of one width open the injector for
/// less: what is compared is the time that is left after the dead time on either side.
/// </remarks>
internal sealed class MinimumPulseCheck(JudgedSet set) : ICheck
{
    // The smallest that an injector can be described with.
    private static readonly VolumeFlow SmallestInjector = VolumeFlow.FromMillilitersPerMinute(20);

    /// <inheritdoc/>
    public Part Part => set.MinimumPulse;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Open time of the injector", LimitDirection.AtLeast, si => Duration.FromSeconds(si), units => units.Pulse);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => !set.IsIn(parts) ? Applicability.NotApplicable
        : set.Of(parts).Injector is { MinimumOpenSeconds: > 0 } ? Applicability.Judged
        : Applicability.NotJudged(Statement.Of(
            "minimum-pulse.shorter-than-dead-time",
            $"the minimum pulse width stated, {set.Of(parts).Injector.MinimumLinearPulse}, is no longer than the dead time at {set.Of(parts).Injector.MinimumPulseVoltage}"));

    // Without flow there is no pulse to be too short; the duty cycle's own check fails.
    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        Injector injector = set.Of(parts).Injector;
        InjectorValues<T> own = set.Read(at);
        T minimum = injector.MinimumOpenSeconds;
        T open = at.MinimumInjectedShare * (own.Pulse - own.DeadTime);

        // A rail that may be higher than it should passes the same fuel in less time; a split that follows the duty cycle may leave less of it.
        T higher = injector.StaticFrom(own.StaticFlow, at.Differential, at.Maximum.Differential, at.FuelDensity);
        T shortest = T.IfLess(at.Differential, at.Maximum.Differential, own.InjectedAtLeast * open * own.StaticFlow / higher, own.InjectedAtLeast * open);
        T known = IsSplitByDutyCycle(parts) ? own.Pulse - own.DeadTime : open;
        T least = CheckReading.MarginOf<T>(shortest, minimum);
        T best = CheckReading.MarginOf<T>(known, minimum);
        return set.WhileInjecting<T>(own.Injected, new(
            T.IfLess(best, 0, known, shortest),
            minimum,
            T.IfLess(0, at.Differential, least, double.PositiveInfinity),
            T.IfLess(0, at.Differential, best, double.PositiveInfinity)));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        if (set.IsIdle(point))
        {
            return JudgedSet.Idle(point);
        }

        Injection own = set.Of(point.Judged);
        Duration minimum = set.Of(point.Parts).Injector.MinimumOpenTime;
        if (own.StaticFlow <= 0)
        {
            return Statement.Of("minimum-pulse.no-flow", $"no pulse to judge: the injectors pass nothing");
        }

        if (own.Pulse is not { } seconds)
        {
            return set.UnknownPulse(point);
        }

        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return CircuitFinding.OpenTimeNotDecided(
                (reading.Used, (IsSplitByDutyCycle(point.Parts) ? 1 : point.MinimumInjectedShare) * (seconds - (own.DeadTime ?? double.NaN))), reading.Allowed, point.Parts.Regulator.HasBand);
        }

        Duration pulse = Duration.FromSeconds(seconds);
        Duration open = Duration.FromSeconds(reading.Used.Value);
        return outcome == Outcome.Holds
            ? Statement.Of("minimum-pulse.within", $"pulse {pulse}, open for {open} of it after the dead time, of at least {minimum}")
            : Statement.Of("minimum-pulse.under", $"pulse {pulse}, open for {open.ApartFrom(minimum):pulse} of it after the dead time, below the {minimum.ApartFrom(open):pulse} of the minimum linear pulse width");
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        double? smallest = null;
        double largestShare = 0;
        foreach (SolvedPoint point in task.Points.Where(point => !set.IsIdle(point)))
        {
            Injection own = set.Of(point.Judged);
            if (own is { DeadTime: { } deadTime, StaticFlow: > 0 } && !double.IsNaN(set.InjectedBy(point)))
            {
                double most = LargestRating(point, own, deadTime);
                smallest = smallest is { } soFar ? Math.Min(soFar, most) : most;
                largestShare = Math.Max(largestShare, SmallestShare(point, own));
            }
        }

        Injector fitted = set.Of(task.Parts).Injector;
        VolumeFlow size = VolumeFlow.FromCubicMetersPerSecond((smallest ?? fitted.RatedFlow) * (1 - Remedy.Hair));
        bool isOfAKind = fitted.MeasuredFlows.Count > 0;
        return set == JudgedSet.Primary
            ? Remedy.Of(Part, size, isOfAKind
                ? Statement.Of(
                    "minimum-pulse.smaller-injectors-of-a-kind",
                    $"Injectors of at most {size:injector-flow:down} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, with flows that go with pressure as these do, or ones that are linear to a shorter pulse.")
                : Statement.Of(
                    "minimum-pulse.smaller-injectors",
                    $"Injectors of at most {size:injector-flow:down} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, or ones that are linear to a shorter pulse."))
            : OfSecondary(size, Ratio.FromDecimalFractions(largestShare * (1 + Remedy.Hair)), fitted, isOfAKind);
    }

    // A share that starts at nothing leaves a pulse of nothing to injectors of any size: then only a larger share serves.
    private Remedy OfSecondary(VolumeFlow size, Ratio share, Injector fitted, bool isOfAKind) => (share <= HandOver.MaximumShare, size >= SmallestInjector, isOfAKind) switch
    {
        (true, true, false) => Remedy.Of(Part, share, Statement.Of(
            "minimum-pulse.larger-share-or-smaller-injectors",
            $"A hand-over that begins with at least {share:share:up} of the fuel, or secondary injectors of at most {size:injector-flow:down} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}.")),
        (true, true, true) => Remedy.Of(Part, share, Statement.Of(
            "minimum-pulse.larger-share-or-smaller-injectors-of-a-kind",
            $"A hand-over that begins with at least {share:share:up} of the fuel, or secondary injectors of at most {size:injector-flow:down} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, with flows that go with pressure as these do.")),
        (true, false, _) => Remedy.Of(Part, share, Statement.Of(
            "minimum-pulse.larger-share", $"A hand-over that begins with at least {share:share:up} of the fuel.")),
        (false, true, false) => Remedy.Of(Part, size, Statement.Of(
            "minimum-pulse.smaller-secondary-injectors",
            $"Secondary injectors of at most {size:injector-flow:down} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, or ones that are linear to a shorter pulse.")),
        (false, true, true) => Remedy.Of(Part, size, Statement.Of(
            "minimum-pulse.smaller-secondary-injectors-of-a-kind",
            $"Secondary injectors of at most {size:injector-flow:down} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, with flows that go with pressure as these do, or ones that are linear to a shorter pulse.")),
        _ => Remedy.Of(Part, null, Statement.Of(
            "minimum-pulse.no-share-adequate", $"No share and no size of these secondary injectors is adequate: a hand-over at more boost or at a higher duty cycle, or injectors that are linear to a shorter pulse.")),
    };

    private static bool IsSplitByDutyCycle(SystemParts parts) => parts.StagedInjectors is { HandOver.IsByDutyCycle: true };

    /// <summary>The highest pressure that may be across the injectors, Pa, at which they pass the same fuel in the shortest time.</summary>
    private double Highest(SolvedPoint point) =>
        point.SolvedCircuit.Task.Held is null && set == JudgedSet.Primary && !IsSplitByDutyCycle(point.Parts) ? point.Judged.Differential : PointReading.Of(point).Maximum.Differential is var highest && double.IsFinite(highest) ? highest : point.Judged.Differential;

    /// <summary>The share of all the fuel with which a pulse is long enough.</summary>
    private double SmallestShare(SolvedPoint point, in Injection own)
    {
        InjectorSet injectors = set.Of(point.Parts);
        double staticFlow = injectors.Injector.StaticAt(Highest(point), point.SolvedDemand.Density);
        return DeliveredFuel.Flow<Real>(staticFlow, injectors.Count, injectors.Injector.MinimumOpenSeconds, own.AvailableTime)
            / (point.MinimumInjectedShare * point.SolvedDemand.Injected);
    }

    private double LargestRating(SolvedPoint point, in Injection own, double deadTime)
    {
        InjectorSet injectors = set.Of(point.Parts);
        double least = set == JudgedSet.Primary
            ? StagedBounds.Primary(point.Parts, point.SolvedDemand, point.Judged, Highest(point))
            : StagedBounds.Secondary(point.Parts, point.SolvedDemand, point.Judged, Highest(point)).InjectedAtLeast;
        double most = InjectorFlow.Rated<Real>(
            InjectorFlow.StaticForPulse<Real>(
                point.MinimumInjectedShare * set.InjectedBy(point) * least,
                injectors.Count,
                own.AvailableTime,
                injectors.Injector.MinimumOpenSeconds + deadTime,
                deadTime),
            injectors.Injector.RatedPascals,
            injectors.Injector.TestDensity,
            Highest(point),
            point.SolvedDemand.Density);
        most = injectors.Injector.RatedFor(most, Highest(point));

        // With a dead time as long as the minimum pulse, any injector's pulse is long enough.
        return most > 0 && double.IsFinite(most) ? most : set == JudgedSet.Primary ? injectors.Injector.RatedFlow : 0;
    }
}
