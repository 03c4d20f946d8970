using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A fuse on a locked rotor: within what it has opened, against the time that motor and wire stand it.</summary>
/// <remarks>One rotor is taken to be locked while every other motor behind the fuse stands still: what they draw makes it open sooner.</remarks>
internal sealed class LockedRotorCheck(Part part, JudgedCircuit judged) : ICheck
{
    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Time until the fuse opens", LimitDirection.AtMost, si => Duration.FromSeconds(si), units => units.Time);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) =>
        FusedMotor.Applies(judged.PumpsOf(parts), start => start.OpensWithin is not null, "time that a locked rotor is allowed");

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        (_, _, double allowed, double opened, double carries) = Worst(parts);
        T used = carries > allowed ? carries : double.IsFinite(opened) ? opened : double.NaN;
        return new(used, allowed, CheckReading.MarginOf<T>(allowed, opened), CheckReading.MarginOf<T>(allowed, carries));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        (Feed feed, ElectricCurrent current, double limit, double opened, double carries) = Worst(point.Parts);
        (Duration allowed, ElectricCurrent rating) = (Duration.FromSeconds(limit), feed.Fuse!.Value);
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of(
                "locked-rotor.opens", $"the fuse of {feed.Name}, {rating}, opens within {Duration.FromSeconds(opened):time} at the {current} of a locked rotor, {allowed:time} allowed"),
            Outcome.Fails => Statement.Of(
                "locked-rotor.carries", $"the fuse of {feed.Name}, {rating}, carries the {current} of a locked rotor for at least {Duration.FromSeconds(carries):time}, {allowed:time} allowed"),
            _ when double.IsInfinity(opened) => Statement.Of(
                "locked-rotor.below-data", $"the {current} of a locked rotor is under the lowest multiple of {rating} at which opening times are given: whether the fuse of {feed.Name} opens at all is not known"),
            _ => Statement.Of(
                "locked-rotor.bounds", $"the fuse of {feed.Name}, {rating}, has surely opened only within {Duration.FromSeconds(opened):time} at the {current} of a locked rotor, {allowed:time} allowed: by its data it may open in time or not"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task) => null;

    /// <summary>The motor whose fuse may carry its locked rotor longest for what is allowed: the fuse's feed, the current, and times in s.</summary>
    private (Feed Feed, ElectricCurrent Current, double Allowed, double Opened, double Carries) Worst(SystemParts parts)
    {
        (Feed, ElectricCurrent, double, double, double) worst = default;
        double share = double.NegativeInfinity;
        foreach (Pumps.Pump pump in judged.PumpsOf(parts)!.Pumps)
        {
            if (pump.Feed is { Start: { OpensWithin: { } limit } start } feed && FusedMotor.FusedPartOf(feed) is { FuseTimes: { } times } fused)
            {
                double multiple = start.LockedRotor / fused.Fuse!.Value;
                double opened = times.SurelyOpened(multiple);
                if (opened / limit.Seconds > share)
                {
                    double carries = times.SurelyCarries(multiple);
                    (worst, share) = ((fused, start.LockedRotor, limit.Seconds, opened, double.IsNaN(carries) ? 0 : carries), opened / limit.Seconds);
                }
            }
        }

        return worst;
    }
}

/// <summary>What the checks of a fuse against its motors' start have in common.</summary>
internal static class FusedMotor
{
    /// <summary>The part of a feed whose fuse opens first: its own, or what it shares.</summary>
    public static Feed? FusedPartOf(Feed feed) => feed.Fuse is not null ? feed : feed.Shared is { Fuse: not null } shared ? shared : null;

    /// <summary>Judged where a fuse's times and the start of each motor behind it are given; not asked for where neither is.</summary>
    public static Applicability Applies(Pumps.PumpAssembly? pumps, Func<MotorStart, bool> isGiven, string what)
    {
        if (pumps?.Pumps is not { } all || !all.SelectMany(FeedsGiven.PartsOf).Any(feed => feed.FuseTimes is not null || feed.Start is not null))
        {
            return Applicability.NotApplicable;
        }

        Pumps.Pump[] open =
        [
            .. all.Where(pump => pump.Feed is not { Start: { } start } feed || !isGiven(start) || FusedPartOf(feed) is not { FuseTimes: not null }),
        ];
        return open.Length == 0 ? Applicability.Judged
            : open.Length == all.Count ? Applicability.NotJudged(Statement.Of("fuse-start.none-given", $"no {what}, or no opening times of the fuse, given"))
            : Applicability.JudgedInPart(Statement.Of(
                "fuse-start.some-not-given", $"no {what}, or no opening times of the fuse, given of {string.Join(", ", open.Select(pump => pump.Name))}"));
    }
}
