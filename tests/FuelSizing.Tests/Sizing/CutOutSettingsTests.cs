using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// Settings of a cut-out along a line whose boost is known, with a controller that knows the air: 300 kPa across the injectors give lambda 0.82 everywhere, of at most 0.9, so
/// that 249.04 kPa across them are required, and the boost beside that in the rail.
/// </summary>
public class CutOutSettingsTests
{
    private static readonly double Required = 300 * Math.Pow(0.82 / 0.9, 2);

    /// <summary>0.10 bar at 2,500 rev/min, a hump of 0.50 bar at 4,100, 0.30 bar at 6,000.</summary>
    private static readonly BoostLine Hump = MeasuredBoost.Of((Wren.Rpm(2500), Wren.Kpa(10)), (Wren.Rpm(4100), Wren.Kpa(50)), (Wren.Rpm(6000), Wren.Kpa(30)));

    /// <summary>
    /// A rail that follows the manifold: its difference to the manifold is 300 kPa all along, and 249 is required; on the rail alone the hump requires 299, and at the start
    /// of the line there are 310.
    /// </summary>
    [Fact]
    public void Settings_OfARailThatFollows_LieBetweenWhatIsRequiredAndWhatThereIs()
    {
        CutOutResult found = Found(ManifoldReferenced.From(Wren.Kpa(300)), Hump);
        Is(found.FixedSwitch, isDifferential: false, Required + 50, 4100, 310, 2500);
        Is(found.DifferentialSwitch, isDifferential: true, Required, null, 300, null);
        Assert.True(found.FixedSwitch.Serves);
        Assert.Equal("a setting between 300 kPa and 310 kPa serves", found.FixedSwitch.ToString());
        Assert.Equal("a setting between 250 kPa and 300 kPa serves", found.DifferentialSwitch.ToString());
        Assert.Equal("On rail pressure: a setting between 300 kPa and 310 kPa serves; on rail less manifold pressure: a setting between 250 kPa and 300 kPa serves", found.ToString());
        Assert.All(found.Points, point =>
        {
            Assert.Equal(0.9, point.Lambda);
            Assert.Equal(Required + point.Result.Point.Boost.Kilopascals, point.RequiredRail!.Value.Kilopascals, 1e-5);
            Assert.Equal(
                $"{point.Result.Point}: lambda 0.900 at {Readable.Of(point.RequiredRail.Value)} in the rail, {Readable.Of(point.Result.Mixture.RailGauge)} as built", point.ToString());
        });
        Assert.Same(found.System, found.Points[0].Result.System);
    }

    /// <summary>
    /// A fixed rail of 330 kPa over a steeper hump: 1.30 bar require 379 kPa there, and 330 are all that there is. On the difference, 200 kPa are left at the hump, less than the 249
    /// required: no switch serves, and each says where it comes too late and where it trips.
    /// </summary>
    [Fact]
    public void Settings_WhereTheHumpRequiresMoreThanThereIs_AreNone()
    {
        BoostLine steep = MeasuredBoost.Of((Wren.Rpm(2500), Wren.Kpa(10)), (Wren.Rpm(4100), Wren.Kpa(130)), (Wren.Rpm(6000), Wren.Kpa(30)));
        CutOutResult found = Found(Fixed.At(Wren.Kpa(330)), steep);
        Assert.False(found.FixedSwitch.Serves);
        Is(found.FixedSwitch, false, Required + 130, 4100, 330, null);
        Is(found.DifferentialSwitch, true, Required, null, 200, 4100);
        Assert.False(found.DifferentialSwitch.Serves);
        Assert.StartsWith("none: a switch at one setting comes too late at 4,100 rev/min, 1.30 bar below 379 kPa, and trips in sound operation at ", found.FixedSwitch.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("and trips in sound operation at 4,100 rev/min, 1.30 bar above 200 kPa", found.DifferentialSwitch.ToString(), StringComparison.Ordinal);
    }

    /// <summary>Five humps of boost along the line: what is required on the rail alone is at the highest of them, 0.50 bar at 4,300 rev/min, whatever lies before and after it.</summary>
    [Fact]
    public void Settings_AlongFiveHumps_AreThoseOfTheHighest()
    {
        BoostLine humps = MeasuredBoost.Of(
            [.. new (double Rpm, double Boost)[] { (2500, 10), (2900, 35), (3200, 15), (3600, 40), (3900, 20), (4300, 50), (4700, 25), (5100, 45), (5400, 18), (5700, 30), (6000, 12) }
                .Select(point => (Wren.Rpm(point.Rpm), Wren.Kpa(point.Boost)))]);
        CutOutResult found = Found(ManifoldReferenced.From(Wren.Kpa(300)), humps);
        Is(found.FixedSwitch, isDifferential: false, Required + 50, 4300, 310, 2500);
        Assert.Equal(4300, found.FixedSwitch.MinimumAt.Result.Point.Speed.RevolutionsPerMinute, 1e-3);
    }

    /// <summary>
    /// Pumps too weak for the hump: the rail sags most where most fuel is asked for, which is at no speed of a table. Any speed beside the one that is named has more pressure in the
    /// rail, by as little as a tenth of a turn.
    /// </summary>
    [Fact]
    public void Settings_OfARailThatSags_AreThoseWhereItIsLowest()
    {
        BoostLine steep = MeasuredBoost.Of((Wren.Rpm(2500), Wren.Kpa(10)), (Wren.Rpm(4100), Wren.Kpa(90)), (Wren.Rpm(7000), Wren.Kpa(5)));
        FuelSystem weak = Built(ManifoldReferenced.From(Wren.Kpa(300)), 2).With(Pump.From(PumpCurve.At(
            "weak",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(74)),
            (Wren.Kpa(600), VolumeFlow.Zero))));
        CutOutResult found = CutOut.PressuresFor(weak, steep, Wren.Rpm(2500), Wren.Rpm(6800), Wren.Hill);
        double lowest = found.FixedSwitch.Maximum.Kilopascals;
        double rpm = found.FixedSwitch.MaximumAt.Result.Point.Speed.RevolutionsPerMinute;
        Assert.InRange(rpm, 4200, 6700);
        Assert.Equal(RailAt(rpm), lowest, 1e-9);
        foreach (double beside in new[] { -300, -100, -30, -10, -3, -1, -0.1, 0.1, 1, 3, 10, 30, 100, 300 })
        {
            Assert.True(RailAt(rpm + beside) >= lowest - 1e-9, $"{rpm + beside:R}: {RailAt(rpm + beside):R} under {lowest:R} at {rpm:R}");
        }

        Assert.True(RailAt(rpm + 30) > lowest + 1e-4 && RailAt(rpm - 30) > lowest + 1e-4);

        double RailAt(double speed) => weak.Solve(OperatingPoint.At(Wren.Rpm(speed), steep.At(Wren.Rpm(speed), weak.Demand, Wren.Hill.Atmosphere), Wren.Hill)).Mixture.RailGauge.Kilopascals;
    }

    /// <summary>The limit counts from 0.25 bar on: no point of less boost is asked, and what the rail has there does not matter.</summary>
    [Fact]
    public void Settings_CountOnlyWhereTheLimitDoes()
    {
        CutOutResult found = Found(ManifoldReferenced.From(Wren.Kpa(300)), Hump, from: 25);

        Assert.All(found.Points, point => Assert.True(point.Result.Point.Boost.Kilopascals >= 25 - 1e-9));
        Assert.True(found.Points.Count >= 2);
        Is(found.FixedSwitch, false, Required + 50, 4100, 325, null, tolerance: 2);
        Assert.True(found.FixedSwitch.Maximum.Kilopascals >= 325 - 1e-6);
    }

    /// <summary>
    /// Injectors whose flow is known from 250 kPa on: 249 are not known to give lambda 0.9, and a switch that would need to know serves nowhere.
    /// </summary>
    [Fact]
    public void Settings_BelowWhatIsKnownOfTheInjectors_AreNotKnown()
    {
        FuelSystem system = Built(ManifoldReferenced.From(Wren.Kpa(300)), 5);
        InjectorSet known = InjectorSet.Of(system.Injectors.Injector.WithMinimumDifferential(Wren.Kpa(248)), 4);
        InjectorSet unknown = InjectorSet.Of(system.Injectors.Injector.WithMinimumDifferential(Wren.Kpa(250)), 4);
        Assert.True(CutOut.PressuresFor(system.With(known), Hump, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill).FixedSwitch.Serves);
        CutOutResult found = CutOut.PressuresFor(system.With(unknown), Hump, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill);
        Assert.All(found.Points, point => Assert.Null(point.RequiredRail));
        Assert.False(found.FixedSwitch.Serves);
        Assert.Null(found.FixedSwitch.Minimum);
        Assert.Equal(310, found.FixedSwitch.Maximum.Kilopascals, 1e-3);
        Assert.Equal(
            "none: 2,500 rev/min, 0.10 bar: no rail pressure is known that gives lambda 0.900, 310 kPa as built", found.FixedSwitch.ToString());
    }

    /// <summary>Dead times known from 260 kPa across the injectors on: 249 are before they begin.</summary>
    [Fact]
    public void Settings_BeforeTheDeadTimesThatAreKnown_AreNotKnown()
    {
        FuelSystem system = Built(ManifoldReferenced.From(Wren.Kpa(300)), 5);
        foreach ((double first, bool isKnown) in new[] { (260.0, false), (240, true) })
        {
            Injector of = Injector.Of(
                "injector K",
                VolumeFlow.FromMillilitersPerMinute(640),
                Wren.Kpa(300),
                TestFluid.Heptane,
                DeadTimeTable.Of([Wren.Volt(8), Wren.Volt(15)], [Wren.Kpa(first), Wren.Kpa(400)], [[Wren.Ms(1.9), Wren.Ms(0.8)], [Wren.Ms(1.9), Wren.Ms(0.8)]]),
                Wren.Ms(1.6),
                Wren.Kpa(400));
            CutOutPoint point = CutOut.PressuresFor(system.With(InjectorSet.Of(of, 4)), Hump, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill).Points[0];
            Assert.Equal(isKnown, point.RequiredRail is not null);
        }
    }

    [Fact]
    public void WhatIsMissing_IsNamedWithItsCure()
    {
        FuelSystem system = Built(ManifoldReferenced.From(Wren.Kpa(300)), 5);
        Refused.Missing("system", () => CutOut.PressuresFor(null!, Hump, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill));
        Refused.Missing("line", () => CutOut.PressuresFor(system, null!, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill));
        Refused.Missing("conditions", () => CutOut.PressuresFor(system, Hump, Wren.Rpm(2500), Wren.Rpm(6000), null!));
        Says(system.With(FuelSizing.Controllers.IdealController.Instance), "system has no controller: it is assumed to command whatever pulse is needed at any pressure. Give it one by FuelSystem.With.");
        Says(system.With(SizingLimits.Default), "system has no leanest mixture, which a cut-out has to keep. Give it by SizingLimits.With(MixtureLimits).");
        Says(Built(ManifoldReferenced.From(Wren.Kpa(300)), 60), "system allows a leanest mixture from 0.60 bar of boost on, which ");

        CutOutResult found = Found(ManifoldReferenced.From(Wren.Kpa(300)), Hump);
        Refused.Missing("style", () => found.In(null!));
        Refused.Missing("style", () => found.FixedSwitch.In(null!));
        Refused.Missing("style", () => found.Points[0].In(null!));

        static void Says(FuelSystem system, string words) => Assert.StartsWith(
            words, Assert.Throws<ArgumentException>(nameof(system), () => CutOut.PressuresFor(system, Hump, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill)).Message, StringComparison.Ordinal);
    }

    private static void Is(CutOutSwitch found, bool isDifferential, double minimum, double? minimumAt, double maximum, double? maximumAt, double tolerance = 0.001)
    {
        Assert.Equal(isDifferential, found.IsDifferential);
        Assert.Equal(minimum, found.Minimum!.Value.Kilopascals, tolerance);
        Assert.Equal(maximum, found.Maximum.Kilopascals, tolerance);
        if (minimumAt is { } late)
        {
            Assert.Equal(late, found.MinimumAt.Result.Point.Speed.RevolutionsPerMinute, 30.0);
        }

        if (maximumAt is { } early)
        {
            Assert.Equal(early, found.MaximumAt.Result.Point.Speed.RevolutionsPerMinute, 30.0);
        }
    }

    private static FuelSystem Built(PressureRegulator regulator, double from)
    {
        FuelSystem system = EqualDeadTimes.Built(regulator, SizingLimits.Of(Wren.Percent(99), Wren.Percent(10)).With(MixtureLimits.Of(0.9, Wren.Kpa(from))));
        return system.With(AirflowMeterController.Of(
            ControllerData.Of(system.Injectors.Injector, FuelSizing.Fuels.Fuel.Petrol, TargetLambda.At(0.82)).WithFuelTemperature(Wren.Hill.FuelTemperature)));
    }

    private static CutOutResult Found(PressureRegulator regulator, BoostLine line, double from = 5) =>
        CutOut.PressuresFor(Built(regulator, from), line, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill);
}
