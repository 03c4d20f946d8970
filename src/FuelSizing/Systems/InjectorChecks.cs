using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>The checks of the injectors at one solved point.</summary>
internal static class InjectorChecks
{
    /// <summary>Adds one check for each limit that an injector has.</summary>
    /// <param name="checks">To add to.</param>
    /// <param name="system">The injectors and their limits.</param>
    /// <param name="injected">Of the whole engine, m³/s.</param>
    /// <param name="judged">Injection at the pressure at which injectors are judged.</param>
    public static void Add(ICollection<Check> checks, FuelSystem system, double injected, in Injection judged)
    {
        checks.Add(DutyCycle(injected, judged));
        checks.Add(MinimumPulse(system, judged));
        checks.Add(Check.Of(
            Part.OpeningPressure,
            CircuitChecks.OverPressure(judged.Differential, system.Injectors.Injector.MaximumDifferential.Pascals)));
    }

    private static Check DutyCycle(double injected, in Injection judged) =>
        judged.StaticFlow <= 0 ? new(Part.Injectors, Outcome.Fails, -1)
        : judged.Capacity is { } capacity ? Check.Of(Part.Injectors, ReserveOf(capacity, injected))
        : Check.CannotSay(Part.Injectors);

    /// <summary>What is left over the injected flow; none where nothing is injected, which leaves nothing to compare with.</summary>
    public static double? ReserveOf(double capacity, double injected) =>
        injected > 0 ? Reserve.Of<Real>(capacity, injected) : null;

    // Without flow there is no pulse to be too short; the duty cycle's own check fails.
    private static Check MinimumPulse(FuelSystem system, in Injection judged) =>
        judged is { StaticFlow: > 0, Pulse: null } ? Check.CannotSay(Part.MinimumPulse)
        : judged.Pulse is { } pulse
            ? Check.Of(Part.MinimumPulse, Reserve.Of<Real>(pulse, system.Injectors.Injector.MinimumLinearPulse.Seconds))
        : new(Part.MinimumPulse, Outcome.Holds, null);
}
