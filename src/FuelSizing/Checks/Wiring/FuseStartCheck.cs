using FuelSizing.Electrical;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>A fuse while its motors start: how long they take against how long it carries what they draw with their rotors still locked.</summary>
/// <remarks>
/// All motors behind a fuse are taken to start together, and to draw their locked-rotor current for as long as the slowest of them takes: more than they do. Judged where a
/// fuse's opening times or a motor's start are given.
/// </remarks>
internal sealed class FuseStartCheck(Part part, JudgedCircuit judged) : ICheck
{
    /// <inheritdoc/>
    public Part Part => part;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Time of the start", LimitDirection.AtMost, si => Duration.FromSeconds(si), units => units.Time);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => FusedMotor.Applies(judged.PumpsOf(parts), start => start.Time is not null, "time of a start");

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        (_, _, double taken, double carries, double opened) = Worst(parts);
        return new(taken, carries, CheckReading.MarginOf<T>(carries, taken), CheckReading.MarginOf<T>(opened, taken));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        (Feed feed, ElectricCurrent current, double taken, double carries, double opened) = Worst(point.Parts);
        (Duration time, ElectricCurrent rating) = (Duration.FromSeconds(taken), feed.Fuse!.Value);
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of(
                "fuse-start.within", $"the fuse of {feed.Name}, {rating}, carries the {current} of a start for at least {Duration.FromSeconds(carries):time}, {time:time} taken"),
            Outcome.Fails => Statement.Of(
                "fuse-start.opens", $"the fuse of {feed.Name}, {rating}, opens within {Duration.FromSeconds(opened):time} at the {current} of a start, {time:time} taken"),
            _ when double.IsNaN(carries) => Statement.Of(
                "fuse-start.beyond-data", $"the {current} of a start is over the highest multiple of {rating} at which opening times are given: the fuse of {feed.Name} may open within the {time:time} taken"),
            _ => Statement.Of(
                "fuse-start.bounds", $"the fuse of {feed.Name}, {rating}, surely carries the {current} of a start for only {Duration.FromSeconds(carries):time}, {time:time} taken: by its data it may open or not"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task) => null;

    /// <summary>The fuse that is nearest to opening at a start: its feed, the current, and times in s.</summary>
    private (Feed Feed, ElectricCurrent Current, double Taken, double Carries, double Opened) Worst(SystemParts parts)
    {
        Pumps.Pump[] pumps = [.. judged.PumpsOf(parts)!.Pumps];
        (Feed, ElectricCurrent, double, double, double) worst = default;
        double share = double.PositiveInfinity;

        // Motors behind the same fuse: that of a pump's own feed, though another may have one like it, or of all that hang on its splice.
        Feed[] feeds = [.. pumps.Select(pump => pump.Feed).OfType<Feed>()];
        (Feed Feed, Feed[] Behind)[] fused =
        [
            .. feeds.Select(own => (own, new[] { own })),
            .. feeds.Select(own => own.Shared).OfType<Feed>().Distinct().Select(shared => (shared, Array.FindAll(feeds, own => shared.Equals(own.Shared)))),
        ];
        foreach ((Feed feed, Feed[] behind) in fused.Where(one => one.Feed is { Fuse: not null, FuseTimes: not null }))
        {
            MotorStart[] starts = [.. behind.Select(own => own.Start).OfType<MotorStart>()];
            if (!Array.Exists(starts, start => start.Time is not null))
            {
                continue;
            }

            ElectricCurrent together = ElectricCurrent.FromAmperes(starts.Sum(start => start.LockedRotor.Amperes));
            double taken = starts.Max(start => start.Time?.Seconds ?? 0);
            double multiple = together / feed.Fuse!.Value;
            double carries = feed.FuseTimes!.SurelyCarries(multiple);

            // What is not known is worse than anything that is.
            double left = double.IsNaN(carries) ? -1 : carries / taken;
            if (left < share)
            {
                (worst, share) = ((feed, together, taken, carries, feed.FuseTimes.SurelyOpened(multiple)), left);
            }
        }

        return worst;
    }
}
