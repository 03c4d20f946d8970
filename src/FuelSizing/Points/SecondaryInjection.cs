using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>The secondary set of injectors at one operating point: what it carries of the fuel, and how.</summary>
public sealed class SecondaryInjection : IReadable
{
    private readonly Injection _own;
    private readonly double _share;

    internal SecondaryInjection(StagedInjectors staged, SecondaryState state) =>
        (Staged, _own, _share) = (staged, state.Injection, state.Share);

    /// <summary>The set and its hand-over.</summary>
    public StagedInjectors Staged { get; }

    /// <summary>True below the hand-over, where the primary set injects all the fuel.</summary>
    public bool IsIdle => _share == 0;

    /// <summary>Share of the fuel that it carries; none where the primary set's duty cycle, which decides it, is not known.</summary>
    public Ratio? Share => double.IsNaN(_share) ? null : Ratio.FromDecimalFractions(_share);

    /// <summary>Fuel that it injects, by volume; none where that is not known.</summary>
    public VolumeFlow? Flow => Volume(_own.Injected);

    /// <summary>Static flow of one of its injectors; none below <see cref="Injector.MinimumDifferential"/>.</summary>
    public VolumeFlow? StaticFlow => Volume(_own.StaticFlow);

    /// <summary>Time between the starts of two injections.</summary>
    public Duration AvailableTime => Duration.FromSeconds(_own.AvailableTime);

    /// <summary>Dead time; none where the table does not cover the point.</summary>
    public Duration? DeadTime => Seconds(_own.DeadTime);

    /// <summary>Commanded pulse; zero where the set is idle, none where it cannot be said.</summary>
    public Duration? Pulse => Seconds(_own.Pulse);

    /// <summary>Pulse ÷ available time; none where it cannot be said.</summary>
    public Ratio? DutyCycle => _own.DutyCycle is { } duty ? Ratio.FromDecimalFractions(duty) : null;

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Share, pulse and duty cycle, as a code with its figures.</summary>
    public Statement Text => (IsIdle, Share, DutyCycle) switch
    {
        (true, _, _) => Statement.Of("secondary.idle", $"secondary set idle"),
        (_, { } share, { } duty) => Statement.Of("secondary.carries", $"secondary set carries {share:share} of the fuel: pulse {Pulse!.Value}, duty cycle {duty:duty-cycle}"),
        (_, { } share, _) => Statement.Of("secondary.carries-unknown", $"secondary set carries {share:share} of the fuel; its pulse cannot be said"),
        _ => Statement.Of("secondary.not-known", $"the share of the secondary set cannot be said: the primary set's duty cycle is not known"),
    };

    /// <summary>Share, pulse and duty cycle.</summary>
    /// <returns>For instance <c>secondary set carries 45 % of the fuel: pulse 7.91 ms, duty cycle 42 %</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private static VolumeFlow? Volume(double flow) => double.IsNaN(flow) ? null : VolumeFlow.FromCubicMetersPerSecond(flow);

    private static Duration? Seconds(double? seconds) => seconds is { } s ? Duration.FromSeconds(s) : null;
}
