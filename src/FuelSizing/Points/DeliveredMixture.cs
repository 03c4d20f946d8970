using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>The mixture that the engine gets at a point from its controller, with the pulse, the pressure and the flow that make it.</summary>
/// <remarks>
/// The circuit is solved with the flow that is really injected, which is not the one that the engine needs. Where the engine's fuel is that of
/// <see cref="Engines.DemandBasis.Power"/>, its air is what that fuel burns with at the target. With a second stream it is the mixture of the main fuel alone;
/// that of both is in <see cref="SecondStreamResult"/>.
/// </remarks>
public sealed class DeliveredMixture : IReadable
{
    private readonly SolvedMixture _mixture;
    private readonly bool _isStaged;
    private readonly SecondStreamResult? _stream;

    internal DeliveredMixture(SystemParts parts, in PointDemand demand, in SolvedMixture mixture, SecondaryState? secondary, SecondStreamResult? stream)
    {
        _mixture = mixture;
        _stream = stream is { Acts: true } ? stream : null;
        Controller = parts.Controller;
        TargetLambda = parts.Demand.TargetLambdaAt(demand.Point.RevolutionsPerSecond);
        IsBelowLinearRange = mixture.OpenTime < parts.Injectors.Injector.MinimumOpenSeconds || secondary is { IsIdle: false, Injection: { Pulse: { } pulse, DeadTime: { } deadTime } }
            && pulse - deadTime < parts.StagedInjectors!.Secondary.Injector.MinimumOpenSeconds;
        _isStaged = parts.StagedInjectors is not null;
        TurnOverDifferential = parts.Controller.FollowsDifferential || double.IsNaN(mixture.Command.Pulse)
            ? null
            : TurnOver.Of(parts.Injectors.Injector, demand.Point.Conditions.SupplyVolts, mixture.Command.Pulse);
        Causes = MixtureCause.Of(parts, demand, mixture);
    }

    /// <summary>Who decides the pulse.</summary>
    public EngineController Controller { get; }

    /// <summary>The lambda that the engine is meant to have.</summary>
    public double TargetLambda { get; }

    /// <summary>
    /// Air–fuel ratio ÷ stoichiometric ratio; none where data of pump, dead time, injector or recorded pulses does not cover the point;
    /// infinite where no fuel is delivered.
    /// </summary>
    public double? Lambda => Known(_mixture.Lambda);

    /// <summary>The richest that it can be by the pumps' data; <see cref="Lambda"/> where that covers the point.</summary>
    public double? MinimumLambda => Known(_mixture.MinimumLambda);

    /// <summary>The leanest that it can be.</summary>
    public double? MaximumLambda => Known(_mixture.MaximumLambda);

    /// <summary>
    /// How much leaner than the target, as a share of it: positive is lean; none where lambda is not known, or no fuel is delivered.
    /// </summary>
    public Ratio? Deviation => Lambda is { } lambda && double.IsFinite(lambda) ? Ratio.FromDecimalFractions((lambda / TargetLambda) - 1) : null;

    /// <summary>Pulse that is commanded; none where recorded pulses give no data.</summary>
    public Duration? CommandedPulse => Known(_mixture.Command.Pulse) is { } pulse ? Duration.FromSeconds(pulse) : null;

    /// <summary>Pulse ÷ available time.</summary>
    public Ratio? CommandedDutyCycle => Known(_mixture.Command.Pulse) is { } pulse
        ? Ratio.FromDecimalFractions((double)InjectorFlow.DutyCycle<Real>(pulse, _mixture.AvailableTime))
        : null;

    /// <summary>Dead time of the injectors that are fitted; none where their table does not cover the point.</summary>
    public Duration? DeadTime => Known(_mixture.DeadTime) is { } time ? Duration.FromSeconds(time) : null;

    /// <summary>Time in each cycle for which an injector passes its static flow; none where it is not known.</summary>
    public Duration? OpenTime => Known(_mixture.OpenTime) is { } time ? Duration.FromSeconds(time) : null;

    /// <summary>Gauge pressure in the rail with the flow that is injected.</summary>
    public Pressure RailGauge => Pressure.FromPascals(_mixture.Rail);

    /// <summary>What determines it.</summary>
    public RailState RailState => _mixture.State.State;

    /// <summary>Pressure across the injector.</summary>
    public Pressure InjectorDifferential => Pressure.FromPascals(_mixture.Differential);

    /// <summary>Fuel that is injected into the whole engine; none where it is not known.</summary>
    public VolumeFlow? InjectedFlow =>
        Known(_mixture.Delivered) is { } flow ? VolumeFlow.FromCubicMetersPerSecond(flow) : null;

    /// <summary>What a lambda sensor multiplies the fuel by: 1 where the loop is open.</summary>
    public double ClosedLoopFactor => _mixture.Trim;

    /// <summary>True if the pulse is as long as the cycle, so that the injectors never close.</summary>
    public bool IsHeldOpen => _mixture.IsHeldOpen;

    /// <summary>True if the controller's greatest duty cycle cuts the pulse off.</summary>
    public bool IsDutyLimited => _mixture.Command.IsLimited;

    /// <summary>True if there is more air or manifold pressure than the controller's sensor or table reaches.</summary>
    public bool IsPastSensor => _mixture.Wanted.IsAirAtEnd;

    /// <summary>True if the open time, of either set where there are two, is under the injectors' linear range, so that the fuel may be off by more than is calculated.</summary>
    public bool IsBelowLinearRange { get; }

    /// <summary>
    /// Pressure across the injector past which more pressure leans this pulse, for its dead time then grows by more than the flow does; none
    /// within the dead-time table, where dead time does not depend on pressure, or where the controller follows the pressure.
    /// </summary>
    public Pressure? TurnOverDifferential { get; }

    /// <summary>True if more pressure would lean the mixture here.</summary>
    public bool IsPastTurnOver => TurnOverDifferential is { } turn && !IsHeldOpen && _mixture.Differential >= turn.Pascals;

    /// <summary>Why lambda is not the target: each cause with its share, the largest first; together they make the whole deviation.</summary>
    public IReadOnlyList<MixtureCause> Causes { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Lambda, target and the main cause.</summary>
    /// <returns>For instance <c>lambda 1.214 (target 0.820): 48 % leaner by air that the controller does not know of</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>Lambda, target and the main cause, as a code with its figures.</summary>
    public Statement Text => _stream is null ? Alone
        : _stream.Lambda is { } both ? Statement.Of("mixture.with-stream", $"of the main fuel alone {Alone}; lambda {both:0.000} with {_stream.Stream.Name}")
        : Statement.Of("mixture.with-stream-unknown", $"of the main fuel alone {Alone}; with {_stream.Stream.Name} lambda cannot be said");

    private Statement Alone => (Lambda, Causes.Count) switch
    {
        (null, _) when _isStaged => Statement.Of("mixture.unknown-staged", $"lambda cannot be said: data ends before this point, or a set of injectors would have to stay open for the whole cycle or has no pressure, and what the controller then commands of the other set is not known"),
        (null, _) => Statement.Of("mixture.unknown", $"lambda cannot be said: data of pump, dead time, injector or pulses ends before this point"),
        ({ } none, _) when double.IsInfinity(none) => Statement.Of("mixture.no-fuel", $"no fuel is delivered (target lambda {TargetLambda:0.000})"),
        ({ } lambda, 0) => Statement.Of("mixture.at-target", $"lambda {lambda:0.000} (target {TargetLambda:0.000})"),
        ({ } lambda, _) => Statement.Of("mixture.by-cause", $"lambda {lambda:0.000} (target {TargetLambda:0.000}): {Causes[0]}"),
    };

    internal ref readonly SolvedMixture Solved => ref _mixture;

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
