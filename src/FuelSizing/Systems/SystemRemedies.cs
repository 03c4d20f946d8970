using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Works out what each failing part of a sweep would have to be.</summary>
internal static class SystemRemedies
{
    /// <summary>One remedy for each failing part, then the boost that the parts as they are can bear.</summary>
    /// <param name="sweep">What fails in it is to be mended.</param>
    /// <param name="cancellation">Stops the search between two parts.</param>
    /// <param name="areAll">False if it was stopped.</param>
    public static IReadOnlyList<Remedy> For(SweepResult sweep, CancellationToken cancellation, out bool areAll)
    {
        List<Remedy> remedies = [];
        areAll = true;
        foreach (PartStanding standing in sweep.Standings.Where(standing => standing.Outcome == Outcome.Fails))
        {
            if (cancellation.IsCancellationRequested)
            {
                areAll = false;
                break;
            }

            remedies.Add(standing.Part switch
            {
                Part.Injectors => LargerInjectors(sweep),
                Part.MinimumPulse => SmallerInjectors(sweep),
                Part.Pump => LargerPump(sweep),
                Part.ReturnLine => WiderReturnLine(sweep),
                Part.PumpControl => new(
                    Part.PumpControl,
                    null,
                    "A controller that slows the pump further, a smaller pump, or a regulator that lets surplus fuel back."),
                Part.Suction => BetterInlet(sweep),
                Part.Feed => BetterFeed(sweep),
                Part.OpeningPressure => Rated(
                    sweep, standing.Part, "Injectors known to open against at least {0}, or less rail pressure.", result => result.InjectorDifferential),
                _ => Rated(
                    sweep, standing.Part, "Hoses, fittings and filter rated for at least {0} at the rail, or less rail pressure.", result => result.RailSetGauge),
            });
        }

        if (sweep.Limiting.LimitReachedAt is { } limit && limit.Boost > sweep.Boosts[0])
        {
            remedies.Add(new(
                sweep.Limiting.Part,
                limit.Boost,
                $"Or, with the parts as they are, no more than {Readable.Boost(limit.Boost)} of boost."));
        }

        return remedies.AsReadOnly();
    }

    private static Remedy LargerInjectors(SweepResult sweep)
    {
        double? maximum = 0;
        foreach (OperatingResult result in sweep.Results)
        {
            maximum = maximum is { } soFar && NeededRating(result) is { } needed ? Math.Max(soFar, needed) : null;
        }

        VolumeFlow? flow = maximum is { } m ? VolumeFlow.FromCubicMetersPerSecond(m) : null;
        return new(
            Part.Injectors,
            flow,
            flow is { } f
                ? $"Injectors of at least {Readable.InjectorFlow(RoundedUp(f))} at {Readable.Of(sweep.System.Injectors.Injector.RatedDifferential)} on {sweep.System.Injectors.Injector.TestFluid.Name}, with dead times like these."
                : "No injector size mends it with this regulator: there is no pressure across the injector, no time left in the cycle, or no dead time known, at some point.");
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
        VolumeFlow minimum = sweep.Results
            .Where(result => result.DeadTimeSeconds is not null && result.StaticFlow > VolumeFlow.Zero)
            .Select(MaximumForMinimumPulse)
            .Min();
        return new(
            Part.MinimumPulse,
            minimum,
            $"Injectors of at most {Readable.InjectorFlow(minimum)} at {Readable.Of(sweep.System.Injectors.Injector.RatedDifferential)} on {sweep.System.Injectors.Injector.TestFluid.Name}, or ones that are linear to a shorter pulse.");
    }

    private static VolumeFlow MaximumForMinimumPulse(OperatingResult result)
    {
        FuelSystem system = result.System;
        double maximum = InjectorFlow.Rated<Real>(
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
        return maximum > 0 && double.IsFinite(maximum)
            ? VolumeFlow.FromCubicMetersPerSecond(maximum)
            : system.Injectors.Injector.StaticFlow;
    }

    private static Remedy LargerPump(SweepResult sweep)
    {
        OperatingResult[] failing = [.. Failing(sweep, Part.Pump)];

        // A pump delivers no less at a lower pressure: the largest flow at the highest pressure serves every point.
        VolumeFlow flow = VolumeFlow.FromCubicMetersPerSecond(failing.Max(result => result.WantedPerSecond));
        Pressure rise = Pressure.FromPascals(failing.Max(result => result.WantedRisePascals));
        ElectricPotential voltage = ElectricPotential.FromVolts(
            failing.Min(result => result.PumpPoints.Min(pump => pump.Voltage)));
        return new(
            Part.Pump,
            flow,
            $"A pump, or pumps together, that deliver at least {Readable.PumpFlow(flow)} against {Readable.Of(rise)} with {Readable.Of(voltage)} at the motor.");
    }

    private static Remedy WiderReturnLine(SweepResult sweep)
    {
        OperatingResult worst = Failing(sweep, Part.ReturnLine).MaxBy(result => result.MaximumAtSetPerSecond)!;
        VolumeFlow surplus = VolumeFlow.FromCubicMetersPerSecond(
            PumpDuty.Returned<Real>(worst.MaximumAtSetPerSecond, worst.InjectedPerSecond).Value);
        return new(
            Part.ReturnLine,
            surplus,
            $"A way back that passes {Readable.PumpFlow(surplus)} at {Readable.Of(worst.RailSetGauge)} or less (wider, shorter, fewer fittings), or a pump that delivers less.");
    }

    private static Remedy BetterInlet(SweepResult sweep)
    {
        Margin worst = Failing(sweep, Part.Suction)
            .Select(result => result.Margins.First(margin => margin.Part == Part.Suction))
            .MinBy(margin => margin.Reserve!.Value.DecimalFractions)!;
        Pressure missing = (Pressure)worst.Used! - (Pressure)worst.Allowed!;
        return new(
            Part.Suction,
            missing,
            $"{Readable.Of(missing)} more at the pump's inlet: a wider or shorter way to it, a lower pump, or cooler fuel.");
    }

    private static Remedy BetterFeed(SweepResult sweep)
    {
        ElectricResistance maximum = Failing(sweep, Part.Feed).Min(LargestFeed);
        return new(
            Part.Feed,
            maximum,
            $"A feed of no more than about {Readable.Of(maximum)} out and back: thicker or shorter wire, a relay near the pump, better joints.");
    }

    // At the voltage that the limit leaves, where the pump draws a little more than it does now.
    private static ElectricResistance LargestFeed(OperatingResult result)
    {
        double supply = result.Point.Conditions.SupplyVolts;
        Real drop = supply * (Real)result.System.Limits.FeedDrop.DecimalFractions;
        PumpPoint worst = result.PumpPoints.Where(pump => pump.Pump.Feed is not null).MinBy(pump => pump.Voltage);
        double current = worst.Pump.CurrentAtMotor(worst.Rise, supply - drop) ?? 0;
        return ElectricResistance.FromOhms(drop.Value / current);
    }

    private static IEnumerable<OperatingResult> Failing(SweepResult sweep, Part part) =>
        sweep.Results.Where(
            result => result.Margins.Any(margin => margin.Part == part && margin.Outcome == Outcome.Fails));

    private static Remedy Rated(SweepResult sweep, Part part, string text, Func<OperatingResult, Pressure> pressure)
    {
        Pressure maximum = sweep.Results.Max(pressure);
        return new(part, maximum, string.Format(System.Globalization.CultureInfo.InvariantCulture, text, Readable.Of(maximum)));
    }

    // A requirement rounded down would not meet itself.
    private static VolumeFlow RoundedUp(VolumeFlow flow) =>
        VolumeFlow.FromMillilitersPerMinute(Math.Ceiling(flow.MillilitersPerMinute));
}
