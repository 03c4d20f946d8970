using FuelSizing.Equations;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

using Pressure = UnitsNet.Pressure;

/// <summary>Works out what each failing part of a sweep would have to be.</summary>
internal static class SystemRemedies
{
    /// <summary>One remedy for each failing part, then the boost that the parts as they are can bear.</summary>
    public static IReadOnlyList<Remedy> For(SweepResult sweep)
    {
        List<Remedy> remedies = [];
        foreach (PartStanding standing in sweep.Standings.Where(standing => standing.Outcome == Outcome.Fails))
        {
            remedies.Add(standing.Part switch
            {
                Part.Injectors => LargerInjectors(sweep),
                Part.ShortestPulse => SmallerInjectors(sweep),
                Part.Pump => LargerPump(sweep),
                Part.InjectorOpening => Rated(
                    sweep, standing.Part, "Injectors known to open against at least {0}, or less rail pressure.", result => result.InjectorDifferential),
                _ => Rated(
                    sweep, standing.Part, "Hoses, fittings and filter rated for at least {0} at the rail, or less rail pressure.", result => result.RailSetGauge),
            });
        }

        if (sweep.RunsOutFirst.RunsOutAt is { } limit && limit.Boost > sweep.Boosts[0])
        {
            remedies.Add(new(
                sweep.RunsOutFirst.Part,
                limit.Boost,
                $"Or, with the parts as they are, no more than {Readable.Boost(limit.Boost)} of boost."));
        }

        return remedies;
    }

    private static Remedy LargerInjectors(SweepResult sweep)
    {
        double? most = 0;
        foreach (OperatingResult result in sweep.Results)
        {
            most = most is { } soFar && NeededRating(result) is { } needed ? Math.Max(soFar, needed) : null;
        }

        VolumeFlow? flow = most is { } m ? VolumeFlow.FromCubicMetersPerSecond(m) : null;
        return new(
            Part.Injectors,
            flow,
            flow is { } f
                ? $"Injectors of at least {Readable.InjectorFlow(RoundedUp(f))} at {Readable.Of(sweep.System.Injectors.Injector.RatedDifferential)} on {sweep.System.Injectors.Injector.TestFluid.Name}, with dead times like these."
                : "No injector size mends it with this regulator: there is no pressure across the injector, or no time left in the cycle, at some point.");
    }

    // At the regulator's set pressure, so that a sagging pump is not mended by injectors.
    private static double? NeededRating(OperatingResult result)
    {
        FuelSystem system = result.System;
        double differential = RailPressure.Differential<Real>(
            result.RailSetGauge.Pascals, result.Point.Conditions.Atmosphere.Pascals, result.Demand.ManifoldPascals);
        if (!system.Injectors.Injector.DeadTime.TryAt(
            result.Point.Conditions.SupplyVolts, differential, out double deadTime))
        {
            return null;
        }

        double needed = InjectorFlow.Rated<Real>(
            InjectorFlow.RequiredStatic<Real>(
                result.InjectedPerSecond,
                system.Injectors.Count,
                result.AvailableTime.Seconds,
                system.Limits.DutyCycle.DecimalFractions,
                deadTime),
            system.Injectors.Injector.RatedPascals,
            system.Injectors.Injector.TestDensity,
            differential,
            result.FuelDensity.KilogramsPerCubicMeter);
        return double.IsFinite(needed) && needed > 0 ? needed : null;
    }

    private static Remedy SmallerInjectors(SweepResult sweep)
    {
        VolumeFlow least = sweep.Results
            .Where(result => result.DeadTimeSeconds is not null && result.StaticFlow > VolumeFlow.Zero)
            .Select(MostForShortestPulse)
            .Min();
        return new(
            Part.ShortestPulse,
            least,
            $"Injectors of at most {Readable.InjectorFlow(least)} at {Readable.Of(sweep.System.Injectors.Injector.RatedDifferential)} on {sweep.System.Injectors.Injector.TestFluid.Name}, or ones that are linear to a shorter pulse.");
    }

    private static VolumeFlow MostForShortestPulse(OperatingResult result)
    {
        FuelSystem system = result.System;
        double most = InjectorFlow.Rated<Real>(
            InjectorFlow.StaticForPulse<Real>(
                result.InjectedPerSecond,
                system.Injectors.Count,
                result.AvailableTime.Seconds,
                system.Injectors.Injector.MinimumLinearPulse.Seconds,
                result.DeadTimeSeconds ?? 0),
            system.Injectors.Injector.RatedPascals,
            system.Injectors.Injector.TestDensity,
            result.InjectorDifferential.Pascals,
            result.FuelDensity.KilogramsPerCubicMeter);

        // With a dead time as long as the shortest pulse, any injector is long enough.
        return most > 0 && double.IsFinite(most)
            ? VolumeFlow.FromCubicMetersPerSecond(most)
            : system.Injectors.Injector.StaticFlow;
    }

    private static Remedy LargerPump(SweepResult sweep)
    {
        OperatingResult[] failing = [.. sweep.Results.Where(
            result => result.Margins.Any(margin => margin is { Part: Part.Pump, Outcome: Outcome.Fails }))];

        // A pump delivers no less at a lower pressure: the largest flow at the highest pressure serves every point.
        VolumeFlow flow = VolumeFlow.FromCubicMetersPerSecond(failing.Max(result => result.WantedPerSecond));
        Pressure pressure = failing.Max(result => result.RailSetGauge);
        return new(
            Part.Pump,
            flow,
            $"A pump that delivers at least {Readable.PumpFlow(flow)} at {Readable.Of(pressure)} and {Readable.Of(failing[0].Point.Conditions.SupplyVoltage)} at its terminals.");
    }

    private static Remedy Rated(SweepResult sweep, Part part, string text, Func<OperatingResult, Pressure> pressure)
    {
        Pressure most = sweep.Results.Max(pressure);
        return new(part, most, string.Format(System.Globalization.CultureInfo.InvariantCulture, text, Readable.Of(most)));
    }

    // A requirement rounded down would not meet itself.
    private static VolumeFlow RoundedUp(VolumeFlow flow) =>
        VolumeFlow.FromMillilitersPerMinute(Math.Ceiling(flow.MillilitersPerMinute));
}
