using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Numerics;

namespace FuelSizing.Points;

/// <summary>What a check may read of one set of injectors, in SI numbers, at the pressure at which injectors are judged.</summary>
/// <typeparam name="T">One number, or a column of them.</typeparam>
public readonly record struct InjectorValues<T>
    where T : struct, IReal<T>
{
    /// <summary>Fuel that the set injects, m³/s; zero where it is idle, not a number where the split is not known.</summary>
    public required T Injected { get; init; }

    /// <summary>The least that it may inject by what is known of its pressure, as a share of that, while it is not idle; 1 where the split does not depend on pressure.</summary>
    public required T InjectedAtLeast { get; init; }

    /// <summary>Static flow of one injector, m³/s; not a number below the differential from which its flow is known.</summary>
    public required T StaticFlow { get; init; }

    /// <summary>Time between the starts of two injections, s.</summary>
    public required T AvailableTime { get; init; }

    /// <summary>Dead time, s.</summary>
    public required T DeadTime { get; init; }

    /// <summary>Commanded pulse, s; zero where it is idle.</summary>
    public required T Pulse { get; init; }

    /// <summary>Pulse ÷ available time.</summary>
    public required T DutyCycle { get; init; }

    /// <summary>Fuel that the set passes at the duty limit, m³/s.</summary>
    public required T Capacity { get; init; }
}

/// <summary>What each of two sets of injectors carries, and what it may carry less where pressure or fuel is known between bounds only.</summary>
/// <remarks>
/// A split that follows boost is the same at any pressure. One that follows the duty cycle is not: at a higher pressure, or with less fuel, the
/// primary set passes more of it within its duty cycle, and the secondary set carries less, though no less than its share at the begin while it
/// injects at all.
/// </remarks>
internal static class StagedBounds
{
    /// <summary>The least that the primary set may inject, as a share of what it is taken to.</summary>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="demand">What the engine asks for.</param>
    /// <param name="judged">At the pressure by which injectors are judged, the lowest.</param>
    /// <param name="highest">The highest pressure that may be across them, Pa.</param>
    public static double Primary(SystemParts parts, in PointDemand demand, in Injection judged, double highest)
    {
        if (!MayDiffer(parts, demand, judged, highest) || judged is not { Pulse: { } pulse, DeadTime: { } deadTime, StaticFlow: > 0 } || !(pulse > deadTime))
        {
            return 1;
        }

        // Held at its duty cycle it is open for that less the dead time, which may be longer at the higher pressure. Just above the begin it has handed over the
        // share at the begin, which is never more than what it hands over here. A check takes its open time to fall with the static flow, which is undone here.
        HandOver handOver = parts.StagedInjectors!.HandOver;
        Injector injector = parts.Injectors.Injector;
        double across = double.IsFinite(highest) ? Math.Max(highest, judged.Differential) : judged.Differential;
        double dead = Math.Max(deadTime, injector.DeadTime.Nearest(demand.Point.Conditions.SupplyVolts, across));
        double open = Math.Max(0, (handOver.BeginDuty!.Value * judged.AvailableTime) - dead);
        return Math.Min(1, open * injector.StaticAt(across, demand.Density) / (judged.StaticFlow * (pulse - deadTime)));
    }

    /// <summary>The secondary set, with the least that it may inject while it is not idle.</summary>
    /// <param name="parts">The parts of the system.</param>
    /// <param name="demand">What the engine asks for.</param>
    /// <param name="judged">At the pressure by which injectors are judged, the lowest.</param>
    /// <param name="highest">The highest pressure that may be across them, Pa.</param>
    public static InjectorValues<Real> Secondary(SystemParts parts, in PointDemand demand, in Injection judged, double highest)
    {
        if (judged.Secondary is not { } secondary)
        {
            return new()
            {
                Injected = 0,
                InjectedAtLeast = 1,
                StaticFlow = double.NaN,
                AvailableTime = double.NaN,
                DeadTime = double.NaN,
                Pulse = double.NaN,
                DutyCycle = double.NaN,
                Capacity = double.NaN,
            };
        }

        Injection own = secondary.Injection;
        return new()
        {
            Injected = own.Injected,
            InjectedAtLeast = MayDiffer(parts, demand, judged, highest) ? demand.Injected * parts.StagedInjectors!.HandOver.ShareAtBeginFraction / own.Injected : 1,
            StaticFlow = own.StaticFlow,
            AvailableTime = own.AvailableTime,
            DeadTime = own.DeadTime ?? double.NaN,
            Pulse = own.Pulse ?? double.NaN,
            DutyCycle = own.DutyCycle ?? double.NaN,
            Capacity = own.Capacity ?? double.NaN,
        };
    }

    private static bool MayDiffer(SystemParts parts, in PointDemand demand, in Injection judged, double highest) =>
        parts.StagedInjectors is { HandOver.IsByDutyCycle: true }
        && judged.Secondary is { IsIdle: false }
        && (highest > judged.Differential || FuelDemand.ShareWithoutEvaporation(demand.Chain, demand.Basis) < 1);
}
