using FuelSizing.Circuits;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The tank of a second stream: the time in which it is emptied at the point's flow against the time that it has to last.</summary>
internal sealed class StreamTankCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.StreamTank;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Time until the second stream's tank is empty", LimitDirection.AtLeast, si => Duration.FromSeconds(si), units => units.Time);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts.SecondStream switch
    {
        null => Applicability.NotApplicable,
        { UsableVolume: null } => Applicability.NotJudged(Statement.Of("stream-tank.none-given", $"no tank given: how long it lasts is not judged")),
        { RequiredDuration: null } => Applicability.NotJudged(Statement.Of("stream-tank.no-time-given", $"no time is given that it has to last")),
        _ => Applicability.Judged,
    };

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        StreamValues<T> stream = at.Stream;
        T volume = parts.SecondStream!.UsableVolume!.Value.CubicMeters;
        CheckReading<T> reading = CheckReading.AtLeast<T>(volume / stream.MaximumFlow, volume / stream.MinimumFlow, parts.SecondStream.RequiredDuration!.Value.Seconds);
        return new(
            reading.Used,
            reading.Allowed,
            T.IfLess(0, stream.Share, reading.Margin, double.PositiveInfinity),
            T.IfLess(0, stream.Share, reading.BestMargin, double.PositiveInfinity));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        SecondStreamResult stream = point.SecondStream!;
        if (!stream.Acts)
        {
            return stream.Text;
        }

        Duration required = stream.Stream.RequiredDuration!.Value;
        Volume tank = stream.Stream.UsableVolume!.Value;
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds when double.IsInfinity(reading.Used) => Statement.Of("stream-tank.nothing-flows", $"nothing flows out of {tank}"),
            Outcome.Holds => Statement.Of("stream-tank.lasts", $"{tank} last {Duration.FromSeconds(reading.Used.Value):time} at this flow, {required:time} required"),
            Outcome.Fails => Statement.Of("stream-tank.too-small", $"{tank} last only {Duration.FromSeconds(reading.Used.Value):time} at this flow, {required:time} required: empty, the stream stops"),
            _ => Statement.Of("stream-tank.not-decided", $"how long {tank} last cannot be said: data of pump or nozzles does not cover this point"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        SecondStream stream = task.Parts.SecondStream!;

        // Math.Max, not Max of a list, which would pass over a flow that is not known.
        double flow = task.Points.Select(point => point.SolvedDemand.Stream!.Solved is { Acts: true } solved ? solved.MaximumFlow : 0).Aggregate(Math.Max);
        if (!double.IsFinite(flow))
        {
            return null;
        }

        Volume needed = Volume.FromCubicMeters(flow * stream.RequiredDuration!.Value.Seconds * (1 + Remedy.Hair));
        return Remedy.Of(Part, needed, Statement.Of("stream-tank.larger", $"A tank for {stream.Name} of at least {needed:displacement:up} usable, or a filling sooner."));
    }
}
