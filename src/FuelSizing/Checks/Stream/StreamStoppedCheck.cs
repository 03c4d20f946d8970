using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>
/// The mixture that the engine gets if a second stream stops for which main fuel is taken back: that of the main fuel alone, which stays taken back, against the
/// leanest that is allowed on boost. Where none is taken back, the check of the mixture looks at the main fuel alone already.
/// </summary>
internal sealed class StreamStoppedCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.StreamStopped;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Lambda if the second stream stops", LimitDirection.AtMost, si => Ratio.FromDecimalFractions(si), _ => MixtureCheck.Lambda);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts.SecondStream is not { TakesBack: true } stream ? Applicability.NotApplicable
        : parts.Limits.Mixture is not null ? Applicability.Judged
        : Applicability.NotJudged(Statement.Of("stream-stopped.no-limit", $"no leanest lambda is given, and {stream.MainFuelTakenBack} of the main fuel is taken back for {stream.Name}"));

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        T allowed = parts.Limits.Mixture!.LeanestAt(at.Boost);
        CheckReading<T> reading = CheckReading.AtMost(at.Stream.MinimumStoppedLambda, at.Stream.MaximumStoppedLambda, allowed);
        return new(reading.Used, allowed, Judged(reading.Margin), Judged(reading.BestMargin));

        T Judged(T margin) => T.IfLess(allowed, double.PositiveInfinity, margin, double.PositiveInfinity);
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        SecondStreamResult stream = point.SecondStream!;
        double allowed = reading.Allowed;
        if (!double.IsFinite(allowed))
        {
            return Statement.Of("stream-stopped.not-on-boost", $"not judged at {point.Point.Boost:boost}: the leanest lambda counts from {point.Parts.Limits.Mixture!.Leanest[0].Boost:boost}");
        }

        if (!stream.Acts)
        {
            return stream.Text;
        }

        StreamValues<Real> at = StreamReading.Of(point.Parts, point.SolvedDemand, point.SolvedMixture);
        (double least, double most) = (at.MinimumStoppedLambda, at.MaximumStoppedLambda);
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of("stream-stopped.within", $"lambda {most:0.000} if {stream.Stream.Name} stops, at most {allowed:0.000} allowed"),
            Outcome.Fails when double.IsInfinity(least) => Statement.Of("stream-stopped.no-fuel", $"no fuel is delivered if {stream.Stream.Name} stops, lambda {allowed:0.000} allowed"),
            Outcome.Fails => Statement.Of(
                "stream-stopped.lean",
                $"lambda {least:0.000} if {stream.Stream.Name} stops (pump, fuse, nozzle, empty tank) is leaner than the {allowed:0.000} allowed: on boost that destroys an engine in seconds"),
            _ when double.IsNaN(most) && point.Mixture.MaximumLambda is not null => Statement.Of(
                "stream-stopped.closed-loop", $"the controller's lambda sensor trims the main fuel by both fuels here: what is left if {stream.Stream.Name} stops cannot be said"),
            _ => Statement.Of("stream-stopped.not-decided", $"lambda if {stream.Stream.Name} stops cannot be said: data of pump, dead time or injector ends before this point"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task)
    {
        SolvedPoint worst = task.Failing.MinBy(Allowed)!;
        double share = Allowed(worst) * (1 - Remedy.Hair);
        string name = task.Parts.SecondStream!.Name;
        if (!(share > 0))
        {
            return Remedy.Of(
                Part,
                null,
                Statement.Of("stream-stopped.main-too-lean", $"The main fuel alone is too lean at {worst.Point}, whatever is taken back for {name}: first the mixture without the second stream."));
        }

        Ratio most = Ratio.FromDecimalFractions(share);
        return Remedy.Of(
            Part,
            most,
            Statement.Of("stream-stopped.take-less", $"At most {most:share:down} of the main fuel taken back for {name}, or less boost; and a safeguard that takes the boost away as soon as it stops."));
    }

    /// <summary>The most that may be taken back while all of the stream flows, as a share.</summary>
    private static double Allowed(SolvedPoint point)
    {
        double stopped = point.SecondStream!.LambdaIfStopped ?? double.PositiveInfinity;
        double whole = stopped * (1 - point.SolvedDemand.TakenBack);
        return (1 - (whole / point.Parts.Limits.Mixture!.LeanestAt<Real>(point.Point.BoostPascals))) / point.SecondStream.Share.DecimalFractions;
    }
}
