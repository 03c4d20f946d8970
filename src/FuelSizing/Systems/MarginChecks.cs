using FuelSizing.Equations;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

using Pressure = UnitsNet.Pressure;

/// <summary>The checks of every part at one solved point.</summary>
internal static class MarginChecks
{
    /// <summary>One margin for each part that has a limit.</summary>
    public static IReadOnlyList<Margin> Of(FuelSystem system, OperatingPoint point, in SolvedPoint solved)
    {
        List<Margin> margins =
        [
            Injectors(system, point, solved),
            ShortestPulse(system, point, solved),
            Opening(system, solved),
            .. CircuitChecks.Of(system, point, solved),
        ];
        if (system.Limits.RailCeiling is { } ceiling)
        {
            margins.Add(AtMost(
                Part.RailRating,
                "rail pressure",
                UnitMath.Max(Pressure.FromPascals(solved.RailSet), Pressure.FromPascals(solved.Rail)),
                ceiling,
                "rated for"));
        }

        return margins;
    }

    private static Margin Injectors(FuelSystem system, OperatingPoint point, in SolvedPoint solved)
    {
        Ratio limit = system.Limits.DutyCycle;
        Injection judged = solved.Judged;
        if (judged.StaticFlow <= 0)
        {
            return new(
                Part.Injectors,
                Outcome.Fails,
                -1,
                null,
                limit,
                $"no flow: the pressure across the injector is {Readable.Of(Pressure.FromPascals(judged.Differential))}");
        }

        if (judged.DutyCycle is not { } duty || judged.Capacity is not { } capacity)
        {
            return UnknownDeadTime(Part.Injectors, system, point, judged);
        }

        Ratio used = Ratio.FromDecimalFractions(duty);
        double reserve = Reserve.Of<Real>(capacity, solved.Injected);
        string sag = Sag(solved);
        return Margin.Of(
            Part.Injectors,
            reserve,
            used,
            limit,
            $"duty cycle {Readable.DutyCycle(used)} of at most {Readable.DutyCycle(limit)}{sag}",
            $"duty cycle {Readable.DutyCycle(used)} over the {Readable.DutyCycle(limit)} limit{sag}");
    }

    private static string Sag(in SolvedPoint solved) => (solved.Circuit.State, solved.Actual.DutyCycle) switch
    {
        (RailState.Sagging, { } duty) =>
            $" at the pressure set, {Readable.DutyCycle(Ratio.FromDecimalFractions(duty))} with the rail sagging",
        (RailState.Sagging or RailState.Starved, _) => " at the pressure set, which the rail does not reach",
        _ => string.Empty,
    };

    private static Margin ShortestPulse(FuelSystem system, OperatingPoint point, in SolvedPoint solved)
    {
        if (solved.Judged is { StaticFlow: > 0, Pulse: null })
        {
            return UnknownDeadTime(Part.ShortestPulse, system, point, solved.Judged);
        }

        Duration least = system.Injectors.Injector.MinimumLinearPulse;
        if (solved.Judged.Pulse is not { } seconds)
        {
            // Without flow there is no pulse to be too short; the injectors' own check fails.
            return new(Part.ShortestPulse, Outcome.Holds, null, null, least, "no pulse to judge: the injectors pass nothing");
        }

        Duration pulse = Duration.FromSeconds(seconds);
        double reserve = Reserve.Of<Real>(seconds, least.Seconds);
        return Margin.Of(
            Part.ShortestPulse,
            reserve,
            pulse,
            least,
            $"pulse {Readable.Of(pulse)} of at least {Readable.Of(least)}",
            $"pulse {Readable.Of(pulse)} under the least linear one of {Readable.Of(least)}");
    }

    private static Margin Opening(FuelSystem system, in SolvedPoint solved) =>
        AtMost(
            Part.InjectorOpening,
            "pressure across the injector",
            Pressure.FromPascals(solved.Judged.Differential),
            system.Injectors.Injector.HighestDifferential,
            "known to open against");

    private static Margin UnknownDeadTime(Part part, FuelSystem system, OperatingPoint point, in Injection injection) =>
        new(
            part,
            Outcome.CannotSay,
            null,
            null,
            null,
            $"the dead-time table covers {system.Injectors.Injector.DeadTime.Coverage} and says nothing of {Readable.Of(point.Conditions.SupplyVoltage)}, {Readable.Of(Pressure.FromPascals(injection.Differential))}");

    private static Margin AtMost(Part part, string what, Pressure used, Pressure most, string qualifier)
    {
        // A pressure of zero or less cannot pass a limit; it has no share to grow by either.
        double? reserve = used > Pressure.Zero ? Reserve.Of<Real>(most.Pascals, used.Pascals) : null;
        return Margin.Of(
            part,
            reserve,
            used,
            most,
            $"{what} {Readable.Of(used)}, {qualifier} {Readable.Of(most)}",
            $"{what} {Readable.Of(used)}, {qualifier} only {Readable.Of(most)}");
    }
}
