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
internal sealed class MinimumPulseCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.MinimumPulse;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Open time of the injector", LimitDirection.AtLeast, si => Duration.FromSeconds(si), units => units.Pulse);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts.Injectors.Injector is { MinimumOpenSeconds: > 0 }
        ? Applicability.Judged
        : Applicability.NotJudged(Statement.Of(
            "minimum-pulse.shorter-than-dead-time",
            $"the minimum pulse width stated, {parts.Injectors.Injector.MinimumLinearPulse}, is no longer than the dead time at {parts.Injectors.Injector.MinimumPulseVoltage}"));

    // Without flow there is no pulse to be too short; the duty cycle's own check fails.
    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        T minimum = parts.Injectors.Injector.MinimumOpenSeconds;
        T open = at.MinimumInjectedShare * (at.Pulse - at.DeadTime);

        // A rail that may be higher than it should passes the same fuel in less time.
        T higher = parts.Injectors.Injector.StaticFrom(at.StaticFlow, at.Differential, at.Maximum.Differential, at.FuelDensity);
        T shortest = T.IfLess(at.Differential, at.Maximum.Differential, open * at.StaticFlow / higher, open);
        T least = CheckReading.MarginOf<T>(shortest, minimum);
        T best = CheckReading.MarginOf<T>(open, minimum);
        return new(
            T.IfLess(best, 0, open, shortest),
            minimum,
            T.IfLess(0, at.Differential, least, double.PositiveInfinity),
            T.IfLess(0, at.Differential, best, double.PositiveInfinity));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        Duration minimum = point.Parts.Injectors.Injector.MinimumOpenTime;
        if (point.Judged.StaticFlow <= 0)
        {
            return Statement.Of("minimum-pulse.no-flow", $"no pulse to judge: the injectors pass nothing");
        }

        if (point.Judged.Pulse is not { } seconds)
        {
            return UnknownPulse(point);
        }

        Outcome outcome = CheckReading.OutcomeOf(reading);
        if (outcome == Outcome.CannotSay)
        {
            return CircuitFinding.OpenTimeNotDecided(
                (reading.Used, point.MinimumInjectedShare * (seconds - (point.Judged.DeadTime ?? double.NaN))), reading.Allowed, point.Parts.Regulator.HasBand);
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
        foreach (SolvedPoint point in task.Points)
        {
            if (point.Judged is { DeadTime: { } deadTime, StaticFlow: > 0 })
            {
                double most = LargestRating(point, deadTime);
                smallest = smallest is { } soFar ? Math.Min(soFar, most) : most;
            }
        }

        Injector fitted = task.Parts.Injectors.Injector;
        VolumeFlow size = VolumeFlow.FromCubicMetersPerSecond((smallest ?? fitted.RatedFlow) * (1 - Remedy.Hair));
        return Remedy.Of(
            Part,
            size,
            fitted.MeasuredFlows.Count == 0
                ? Statement.Of(
                    "minimum-pulse.smaller-injectors",
                    $"Injectors of at most {size:injector-flow:down} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, or ones that are linear to a shorter pulse.")
                : Statement.Of(
                    "minimum-pulse.smaller-injectors-of-a-kind",
                    $"Injectors of at most {size:injector-flow:down} at {fitted.RatedDifferential} on {fitted.TestFluid.Name}, with flows that go with pressure as these do, or ones that are linear to a shorter pulse."));
    }

    /// <summary>Why there is no pulse: the injector's flow is not known at the differential, or the dead-time table does not cover the point.</summary>
    internal static Statement UnknownPulse(SolvedPoint point)
    {
        Injector injector = point.Parts.Injectors.Injector;
        Pressure differential = Pressure.FromPascals(point.Judged.Differential);
        return !double.IsNaN(point.Judged.StaticFlow) ? UnknownDeadTime(point)
            : injector.IsMinimumDifferentialStated ? Statement.Of(
                "injectors.flow-not-known",
                $"the flow of {injector.Name} is known from {injector.MinimumDifferential} across it, not at {differential}")
            : Statement.Of(
                "injectors.flow-not-stated",
                $"the flow of {injector.Name} is taken as known from a third of its rated pressure, {injector.MinimumDifferential} (common practice, no source), not at {differential}");
    }

    private static Statement UnknownDeadTime(SolvedPoint point) => Statement.Of(
        "injectors.dead-time-not-covered",
        $"the dead-time table covers {point.Parts.Injectors.Injector.DeadTime.Coverage} and gives no data for {point.Point.Conditions.SupplyVoltage}, {Pressure.FromPascals(point.Judged.Differential)}");

    private static double LargestRating(SolvedPoint point, double deadTime)
    {
        SystemParts parts = point.Parts;
        double differential = point.SolvedCircuit.Task.Held is null ? point.Judged.Differential : PointReading.Of(point).Maximum.Differential;
        double most = InjectorFlow.Rated<Real>(
            InjectorFlow.StaticForPulse<Real>(
                point.MinimumInjectedShare * point.SolvedDemand.Injected,
                parts.Injectors.Count,
                point.Judged.AvailableTime,
                parts.Injectors.Injector.MinimumOpenSeconds + deadTime,
                deadTime),
            parts.Injectors.Injector.RatedPascals,
            parts.Injectors.Injector.TestDensity,
            differential,
            point.SolvedDemand.Density);
        most = parts.Injectors.Injector.RatedFor(most, differential);

        // With a dead time as long as the minimum pulse, any injector's pulse is long enough.
        return most > 0 && double.IsFinite(most) ? most : parts.Injectors.Injector.RatedFlow;
    }
}
