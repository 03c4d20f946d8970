using FuelSizing.Circuits;
using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>The mixture that the engine gets from its controller; with a second stream that of the main fuel alone.</summary>
public sealed record MixtureData : PartlyKnownData
{
    /// <summary>Who decides the pulse.</summary>
    public required string Controller { get; init; }

    /// <summary>True where no controller was described: it is assumed to command whatever is needed, and the mixture is not judged.</summary>
    public required bool IsControllerAssumed { get; init; }

    /// <summary>The lambda that the engine is meant to have.</summary>
    public required double TargetLambda { get; init; }

    /// <summary>Air–fuel ratio ÷ stoichiometric ratio.</summary>
    public required double? Lambda { get; init; }

    /// <summary>The richest that it can be by the pumps' data.</summary>
    public required double? MinimumLambda { get; init; }

    /// <summary>The leanest that it can be.</summary>
    public required double? MaximumLambda { get; init; }

    /// <summary>How much leaner than the target, as a share of it: positive is lean.</summary>
    public required double? DeviationShare { get; init; }

    /// <summary>What determines the rail pressure with the flow that is injected.</summary>
    public required RailState RailState { get; init; }

    /// <summary>Gauge pressure in the rail with that flow.</summary>
    public required double? RailGaugePascals { get; init; }

    /// <summary>Across the injector.</summary>
    public required double? DifferentialPascals { get; init; }

    /// <summary>Fuel that is injected into the whole engine.</summary>
    public required double? InjectedCubicMetersPerSecond { get; init; }

    /// <summary>Pulse that is commanded.</summary>
    public required double? CommandedPulseSeconds { get; init; }

    /// <summary>Commanded pulse ÷ available time.</summary>
    public required double? CommandedDutyCycleShare { get; init; }

    /// <summary>Dead time of the injectors that are fitted.</summary>
    public required double? DeadTimeSeconds { get; init; }

    /// <summary>Time in each cycle for which an injector passes its static flow.</summary>
    public required double? OpenSeconds { get; init; }

    /// <summary>What a lambda sensor multiplies the fuel by.</summary>
    public required double? ClosedLoopFactor { get; init; }

    /// <summary>Pressure across the injector past which more pressure leans this pulse.</summary>
    public required double? TurnOverDifferentialPascals { get; init; }

    /// <summary>True if more pressure would lean the mixture here.</summary>
    public required bool IsPastTurnOver { get; init; }

    /// <summary>True if the injectors never close.</summary>
    public required bool IsHeldOpen { get; init; }

    /// <summary>True if the controller's greatest duty cycle cuts the pulse off.</summary>
    public required bool IsDutyLimited { get; init; }

    /// <summary>True if there is more air or manifold pressure than the controller's sensor or table reaches.</summary>
    public required bool IsPastSensor { get; init; }

    /// <summary>True if the open time is under the injectors' linear range.</summary>
    public required bool IsBelowLinearRange { get; init; }

    /// <summary>Why lambda is not the target, the largest cause first.</summary>
    public required DataList<MixtureCauseData> Causes { get; init; }

    /// <summary>Lambda, target and the main cause in words.</summary>
    public required StatementData Text { get; init; }

    private protected override string InOneLine => Text.Text;

    internal static MixtureData Of(DeliveredMixture mixture)
    {
        Gaps gaps = new();
        Statement reason = mixture.Lambda is null ? mixture.Text : Statement.Of("data.mixture-bound", $"the data of the parts does not bound it on this side");
        Statement noFuel = Statement.Of("data.no-fuel", $"no fuel is delivered, so that lambda has no bound");
        return new()
        {
            Controller = $"{mixture.Controller}",
            IsControllerAssumed = mixture.Controller.IsIdeal,
            TargetLambda = mixture.TargetLambda,
            Lambda = gaps.Figure(nameof(Lambda), mixture.Lambda, reason, noFuel),
            MinimumLambda = gaps.Figure(nameof(MinimumLambda), mixture.MinimumLambda, reason, noFuel),
            MaximumLambda = gaps.Figure(nameof(MaximumLambda), mixture.MaximumLambda, reason, noFuel),
            DeviationShare = gaps.Figure(
                nameof(DeviationShare), mixture.Deviation?.DecimalFractions, mixture.Lambda is { } lambda && double.IsInfinity(lambda) ? noFuel : reason),
            RailState = mixture.RailState,
            RailGaugePascals = gaps.Figure(nameof(RailGaugePascals), mixture.RailGauge.Pascals, CircuitData.NotCovered),
            DifferentialPascals = gaps.Figure(nameof(DifferentialPascals), mixture.InjectorDifferential.Pascals, CircuitData.NotCovered),
            InjectedCubicMetersPerSecond = gaps.Figure(nameof(InjectedCubicMetersPerSecond), mixture.InjectedFlow?.CubicMetersPerSecond, reason),
            CommandedPulseSeconds = gaps.Figure(nameof(CommandedPulseSeconds), mixture.CommandedPulse?.Seconds, reason),
            CommandedDutyCycleShare = gaps.Figure(nameof(CommandedDutyCycleShare), mixture.CommandedDutyCycle?.DecimalFractions, reason),
            DeadTimeSeconds = gaps.Figure(nameof(DeadTimeSeconds), mixture.DeadTime?.Seconds, InjectionData.NoDeadTime),
            OpenSeconds = gaps.Figure(nameof(OpenSeconds), mixture.OpenTime?.Seconds, reason),
            ClosedLoopFactor = gaps.Figure(nameof(ClosedLoopFactor), mixture.ClosedLoopFactor, reason),
            TurnOverDifferentialPascals = gaps.Figure(
                nameof(TurnOverDifferentialPascals),
                mixture.TurnOverDifferential?.Pascals,
                Statement.Of("data.no-turn-over", $"no pressure within the dead-time table leans this pulse, dead time does not depend on pressure, or the controller follows it")),
            IsPastTurnOver = mixture.IsPastTurnOver,
            IsHeldOpen = mixture.IsHeldOpen,
            IsDutyLimited = mixture.IsDutyLimited,
            IsPastSensor = mixture.IsPastSensor,
            IsBelowLinearRange = mixture.IsBelowLinearRange,
            Causes = [.. mixture.Causes.Select(MixtureCauseData.Of)],
            Text = StatementData.Of(mixture.Text),
            NotKnown = gaps.Found,
        };
    }
}

/// <summary>One of the reasons why lambda is not its target.</summary>
public sealed record MixtureCauseData : DataRecord
{
    /// <summary>What it is.</summary>
    public required MixtureCauseKind Kind { get; init; }

    /// <summary>What it multiplies lambda by: over 1 it leans.</summary>
    public required double Factor { get; init; }

    /// <summary>How much, and by what, in words.</summary>
    public required StatementData Text { get; init; }

    private protected override string InOneLine => Text.Text;

    internal static MixtureCauseData Of(MixtureCause cause) => new() { Kind = cause.Kind, Factor = cause.Factor, Text = StatementData.Of(cause.Text) };
}
