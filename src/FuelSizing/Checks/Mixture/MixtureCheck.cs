using FuelSizing.Controllers;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Checks;

/// <summary>The mixture that the engine gets from its controller: lambda against the leanest that is allowed on boost.</summary>
internal sealed class MixtureCheck : ICheck
{
    /// <summary>Lambda is a ratio without a unit, to three figures.</summary>
    internal static readonly DisplayUnit<Ratio> Lambda = DisplayUnit.Of(
        string.Empty, "0.000", ratio => ratio.DecimalFractions, value => Ratio.FromDecimalFractions(value));

    /// <inheritdoc/>
    public Part Part => Part.Mixture;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Lambda", LimitDirection.AtMost, si => Ratio.FromDecimalFractions(si), _ => Lambda);

    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) => parts switch
    {
        { Controller: IdealController ideal } => Applicability.NotJudged(ideal.Text),
        { Limits.Mixture: null } => Applicability.NotJudged(
            Statement.Of("mixture.no-limit", $"no leanest lambda is given")),
        _ => Applicability.Judged,
    };

    // Fuel goes with 1/lambda: the margin is the share of fuel that could be lost. Where no fuel is delivered, lambda is infinite and it fails. What is stated to
    // evaporate in the charge counts here as if it did, and in the check for a rich mixture as if it did not.
    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T>
    {
        T allowed = parts.Limits.Mixture!.LeanestAt(at.Boost);

        // A second stream may stop: it counts only where the user says that main fuel is taken back for it, and another check then looks at it stopped.
        CheckReading<T> reading = parts.SecondStream is not { } stream ? CheckReading.AtMost(at.MinimumLambda / at.MinimumInjectedShare, at.MaximumLambda, allowed)
            : stream.TakesBack ? CheckReading.AtMost(at.Stream.LeanMinimumLambda, at.Stream.LeanMaximumLambda, allowed)
            : CheckReading.AtMost(at.MinimumLambda / at.Stream.MainInjectedShare, at.MaximumLambda, allowed);
        return new(
            reading.Used,
            allowed,
            T.IfLess(allowed, double.PositiveInfinity, reading.Margin, double.PositiveInfinity),
            T.IfLess(allowed, double.PositiveInfinity, reading.BestMargin, double.PositiveInfinity));
    }

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        double allowed = reading.Allowed;
        if (!double.IsFinite(allowed))
        {
            return Statement.Of("mixture.not-on-boost", $"not judged at {point.Point.Boost:boost}: the leanest lambda counts from {point.Parts.Limits.Mixture!.Leanest[0].Boost:boost}");
        }

        DeliveredMixture mixture = point.Mixture;
        if (point.Parts.SecondStream is { TakesBack: true } && point.SecondStream is { Acts: true } with)
        {
            return WithStream(point, with, reading);
        }

        if (mixture.MaximumLambda is not { } leanest)
        {
            return mixture.Text;
        }

        double least = (mixture.MinimumLambda ?? leanest) / point.MainInjectedShare;
        Statement? cause = mixture.Causes.FirstOrDefault(cause => cause.Factor > 1) is { } first
            ? Statement.Of("mixture.mainly", $"; {first.Text}")
            : null;
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of("mixture.within", $"lambda {leanest:0.000}, at most {allowed:0.000} allowed"),
            Outcome.Fails when double.IsInfinity(leanest) => Statement.Of("mixture.no-fuel-on-boost", $"no fuel is delivered, lambda {allowed:0.000} allowed{cause}"),
            Outcome.Fails => Statement.Of("mixture.lean", $"lambda {least:0.000} is leaner than the {allowed:0.000} allowed{cause}"),
            _ => Statement.Of(
                "mixture.not-decided",
                $"lambda lies between {least:0.000} and {leanest:0.000}, at most {allowed:0.000} allowed: the pumps' data does not decide"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task) => MixtureRemedy.For(Part, task);

    private static Statement WithStream(SolvedPoint point, SecondStreamResult with, in CheckReading<Real> reading)
    {
        double allowed = reading.Allowed;
        StreamValues<Real> at = StreamReading.Of(point.Parts, point.SolvedDemand, point.SolvedMixture);
        (double least, double leanest) = (at.LeanMinimumLambda, at.LeanMaximumLambda);
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of("mixture.stream-within", $"lambda {leanest:0.000} while {with.Stream.Name} flows, at most {allowed:0.000} allowed"),
            Outcome.Fails => Statement.Of("mixture.stream-lean", $"lambda {least:0.000} is leaner than the {allowed:0.000} allowed, though {with.Stream.Name} flows"),
            _ when double.IsNaN(leanest) => Statement.Of("mixture.stream-not-known", $"lambda with {with.Stream.Name} cannot be said: {point.Mixture.Text}"),
            _ => Statement.Of(
                "mixture.stream-not-decided",
                $"lambda lies between {least:0.000} and {leanest:0.000} while {with.Stream.Name} flows, at most {allowed:0.000} allowed: data of pumps, nozzles or liquid does not decide"),
        };
    }
}

/// <summary>The same mixture against the richest that is allowed, with or without boost.</summary>
internal sealed class RichMixtureCheck : ICheck
{
    /// <inheritdoc/>
    public Part Part => Part.RichMixture;

    /// <inheritdoc/>
    public CheckFigure Figure { get; } = CheckFigure.Of(
        "Lambda", LimitDirection.AtLeast, si => Ratio.FromDecimalFractions(si), _ => MixtureCheck.Lambda);

    // That the controller is assumed is said once, by the check for a lean mixture.
    /// <inheritdoc/>
    public Applicability AppliesTo(SystemParts parts) =>
        parts.Limits.Mixture?.Richest is not null && (!parts.Controller.IsIdeal || parts.SecondStream is not null) ? Applicability.Judged
            : parts.SecondStream is not null ? Applicability.NotJudged(Statement.Of("rich-mixture.no-limit", $"no richest lambda is given, and the second stream makes the mixture richer"))
            : Applicability.NotApplicable;

    /// <inheritdoc/>
    public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
        where T : struct, IReal<T> => parts.SecondStream is null
            ? CheckReading.AtLeast<T>(at.MinimumLambda, at.MaximumLambda * at.MinimumInjectedShare, parts.Limits.Mixture!.Richest!.Value)
            : CheckReading.AtLeast<T>(at.Stream.RichMinimumLambda, at.Stream.RichMaximumLambda, parts.Limits.Mixture!.Richest!.Value);

    /// <inheritdoc/>
    public Statement Explain(SolvedPoint point, in CheckReading<Real> reading)
    {
        double allowed = reading.Allowed;
        DeliveredMixture mixture = point.Mixture;
        if (point.SecondStream is { Acts: true } with)
        {
            return WithStream(point, with, reading);
        }

        if (mixture.MinimumLambda is not { } richest)
        {
            return mixture.Text;
        }

        double most = (mixture.MaximumLambda ?? richest) * point.MainInjectedShare;
        Statement? cause = mixture.Causes.FirstOrDefault(cause => cause.Factor < 1) is { } first
            ? Statement.Of("mixture.mainly", $"; {first.Text}")
            : null;
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of("mixture.rich-within", $"lambda {richest:0.000}, at least {allowed:0.000} allowed"),
            Outcome.Fails => Statement.Of("mixture.rich", $"lambda {most:0.000} is richer than the {allowed:0.000} allowed{cause}"),
            _ => Statement.Of(
                "mixture.rich-not-decided",
                $"lambda lies between {richest:0.000} and {most:0.000}, at least {allowed:0.000} allowed: the pumps' data does not decide"),
        };
    }

    /// <inheritdoc/>
    public Remedy? RemedyFor(RemedyTask task) => MixtureRemedy.For(Part, task);

    private static Statement WithStream(SolvedPoint point, SecondStreamResult with, in CheckReading<Real> reading)
    {
        double allowed = reading.Allowed;
        StreamValues<Real> at = StreamReading.Of(point.Parts, point.SolvedDemand, point.SolvedMixture);
        (double richest, double most) = (at.RichMinimumLambda, at.RichMaximumLambda);
        return CheckReading.OutcomeOf(reading) switch
        {
            Outcome.Holds => Statement.Of("mixture.stream-rich-within", $"lambda {richest:0.000} with {with.Stream.Name}, at least {allowed:0.000} allowed"),
            Outcome.Fails => Statement.Of("mixture.stream-rich", $"lambda {most:0.000} with {with.Stream.Name} is richer than the {allowed:0.000} allowed"),
            _ when double.IsNaN(richest) => Statement.Of("mixture.stream-rich-not-known", $"lambda with {with.Stream.Name} cannot be said: {point.Mixture.Text}"),
            _ => Statement.Of(
                "mixture.stream-rich-not-decided",
                $"lambda lies between {richest:0.000} and {most:0.000} with {with.Stream.Name}, at least {allowed:0.000} allowed: data of pumps, nozzles or liquid does not decide"),
        };
    }
}
