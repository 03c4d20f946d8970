using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Numerics;

namespace FuelSizing.Points;

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

        // Held at its duty cycle it is open for that less the dead time, which may be longer at the higher pressure; just above the begin it
        // has handed over the share at the begin. A check takes its open time to fall with the static flow, which is undone here.
        HandOver handOver = parts.StagedInjectors!.HandOver;
        Injector injector = parts.Injectors.Injector;
        double across = double.IsFinite(highest) ? Math.Max(highest, judged.Differential) : judged.Differential;
        double dead = Math.Max(deadTime, injector.DeadTime.Nearest(demand.Point.Conditions.SupplyVolts, across));
        double open = Math.Max(0, (handOver.BeginDuty!.Value * judged.AvailableTime) - dead);
        double held = open * injector.StaticAt(across, demand.Density) / (judged.StaticFlow * (pulse - deadTime));
        double handedOver = demand.Injected * (1 - handOver.ShareAtBeginFraction) / judged.Injected;
        return Math.Min(1, Math.Min(held, handedOver));
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
            return new(0, 1, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
        }

        Injection own = secondary.Injection;
        return new(
            own.Injected,
            MayDiffer(parts, demand, judged, highest) ? demand.Injected * parts.StagedInjectors!.HandOver.ShareAtBeginFraction / own.Injected : 1,
            own.StaticFlow,
            own.AvailableTime,
            own.DeadTime ?? double.NaN,
            own.Pulse ?? double.NaN,
            own.DutyCycle ?? double.NaN,
            own.Capacity ?? double.NaN);
    }

    private static bool MayDiffer(SystemParts parts, in PointDemand demand, in Injection judged, double highest) =>
        parts.StagedInjectors is { HandOver.IsByDutyCycle: true }
        && judged.Secondary is { IsIdle: false }
        && (highest > judged.Differential || FuelDemand.ShareWithoutEvaporation(demand.Chain, demand.Basis) < 1);
}
