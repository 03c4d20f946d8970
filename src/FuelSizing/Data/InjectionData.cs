using System.Text.Json.Serialization;
using FuelSizing.Points;
using FuelSizing.Quantities;

namespace FuelSizing.Data;

/// <summary>What the injectors have to do so that the engine gets what it needs; of two sets the primary one.</summary>
public sealed record InjectionData : PartlyKnownData
{
    /// <summary>Fuel injected into the whole engine, by both sets where there are two.</summary>
    public required double InjectedCubicMetersPerSecond { get; init; }

    /// <summary>Density of the fuel.</summary>
    public required double FuelKilogramsPerCubicMeter { get; init; }

    /// <summary>Fuel that this set injects.</summary>
    public required double? PrimaryCubicMetersPerSecond { get; init; }

    /// <summary>Across the injector: rail gauge + ambient − manifold absolute.</summary>
    public required double DifferentialPascals { get; init; }

    /// <summary>Static flow of one injector.</summary>
    public required double? StaticFlowCubicMetersPerSecond { get; init; }

    /// <summary>Time between the starts of two injections.</summary>
    public required double AvailableSeconds { get; init; }

    /// <summary>Dead time.</summary>
    public required double? DeadTimeSeconds { get; init; }

    /// <summary>Pulse that is needed.</summary>
    public required double? PulseSeconds { get; init; }

    /// <summary>Pulse ÷ available time.</summary>
    public required double? DutyCycleShare { get; init; }

    /// <summary>The secondary set; none where one set injects all of it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SecondaryInjectionData? Secondary { get; init; }

    private protected override string InOneLine => FormattableString.Invariant($"{DifferentialPascals:G6} Pa, pulse {PulseSeconds:G6} s");

    internal static readonly Statement NoStaticFlow = Statement.Of(
        "data.flow-not-known", $"below the minimum differential pressure at which the injector's flow is known");

    internal static readonly Statement NoDeadTime = Statement.Of("data.dead-time-not-known", $"the dead-time table does not cover this voltage and pressure");

    internal static readonly Statement NoPulse = Statement.Of(
        "data.pulse-not-known", $"dead time or static flow is not known here, or the share of each set of injectors is not");

    internal static InjectionData Of(SolvedPoint point)
    {
        Gaps gaps = new();
        return new()
        {
            InjectedCubicMetersPerSecond = point.InjectedFlow.CubicMetersPerSecond,
            FuelKilogramsPerCubicMeter = point.FuelDensity.KilogramsPerCubicMeter,
            PrimaryCubicMetersPerSecond = gaps.Figure(nameof(PrimaryCubicMetersPerSecond), point.PrimaryFlow?.CubicMetersPerSecond, NoPulse),
            DifferentialPascals = point.InjectorDifferential.Pascals,
            StaticFlowCubicMetersPerSecond = gaps.Figure(nameof(StaticFlowCubicMetersPerSecond), point.StaticFlow?.CubicMetersPerSecond, NoStaticFlow),
            AvailableSeconds = point.AvailableTime.Seconds,
            DeadTimeSeconds = gaps.Figure(nameof(DeadTimeSeconds), point.DeadTime?.Seconds, NoDeadTime),
            PulseSeconds = gaps.Figure(nameof(PulseSeconds), point.Pulse?.Seconds, NoPulse),
            DutyCycleShare = gaps.Figure(nameof(DutyCycleShare), point.DutyCycle?.DecimalFractions, NoPulse),
            Secondary = point.SecondaryInjection is { } secondary ? SecondaryInjectionData.Of(secondary) : null,
            NotKnown = gaps.Found,
        };
    }
}

/// <summary>The secondary set of injectors: what it carries of the fuel, and how.</summary>
public sealed record SecondaryInjectionData : PartlyKnownData
{
    /// <summary>True below the hand-over, where the primary set injects all the fuel.</summary>
    public required bool IsIdle { get; init; }

    /// <summary>Share of the fuel that it carries.</summary>
    public required double? CarriedShare { get; init; }

    /// <summary>Fuel that it injects.</summary>
    public required double? FlowCubicMetersPerSecond { get; init; }

    /// <summary>Static flow of one of its injectors.</summary>
    public required double? StaticFlowCubicMetersPerSecond { get; init; }

    /// <summary>Time between the starts of two injections.</summary>
    public required double AvailableSeconds { get; init; }

    /// <summary>Dead time.</summary>
    public required double? DeadTimeSeconds { get; init; }

    /// <summary>Pulse that is needed; zero where the set is idle.</summary>
    public required double? PulseSeconds { get; init; }

    /// <summary>Pulse ÷ available time.</summary>
    public required double? DutyCycleShare { get; init; }

    /// <summary>Share, pulse and duty cycle in words.</summary>
    public required StatementData Text { get; init; }

    private protected override string InOneLine => Text.Text;

    internal static SecondaryInjectionData Of(SecondaryInjection secondary)
    {
        Gaps gaps = new();
        return new()
        {
            IsIdle = secondary.IsIdle,
            CarriedShare = gaps.Figure(nameof(CarriedShare), secondary.Share?.DecimalFractions, InjectionData.NoPulse),
            FlowCubicMetersPerSecond = gaps.Figure(nameof(FlowCubicMetersPerSecond), secondary.Flow?.CubicMetersPerSecond, InjectionData.NoPulse),
            StaticFlowCubicMetersPerSecond = gaps.Figure(
                nameof(StaticFlowCubicMetersPerSecond), secondary.StaticFlow?.CubicMetersPerSecond, InjectionData.NoStaticFlow),
            AvailableSeconds = secondary.AvailableTime.Seconds,
            DeadTimeSeconds = gaps.Figure(nameof(DeadTimeSeconds), secondary.DeadTime?.Seconds, InjectionData.NoDeadTime),
            PulseSeconds = gaps.Figure(nameof(PulseSeconds), secondary.Pulse?.Seconds, InjectionData.NoPulse),
            DutyCycleShare = gaps.Figure(nameof(DutyCycleShare), secondary.DutyCycle?.DecimalFractions, InjectionData.NoPulse),
            Text = StatementData.Of(secondary.Text),
            NotKnown = gaps.Found,
        };
    }
}
