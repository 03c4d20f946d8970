using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// The rail pressure at which a cut-out has to act. With a dead time that does not depend on pressure, and no sag, lambda goes with the
/// reciprocal of the root of the differential, so that the pressure is a formula: Δp_cut = Δp · (λ/λ_limit)².
/// </summary>
public class CutOutTests
{
    private const double Limit = 0.9;

    private static readonly RotationalSpeed Slowest = Wren.Rpm(2600);

    private static readonly RotationalSpeed Fastest = Wren.Rpm(6600);

    [Fact]
    public void Pressures_WithEqualDeadTimes_AreTheClosedForm_AndItsExtremesAlongTheLine()
    {
        FuelSystem system = Car(RisingRate.From(Wren.Kpa(300), 7, Pressure.FromBars(0.02)));
        CutOutResult found = CutOut.PressuresFor(system, Line, Slowest, Fastest, Wren.Hill);
        Assert.True(found.Points.Count > 6);
        Assert.All(found.Points, point => Assert.Equal(Closed(point.Result), point.RequiredRail!.Value.Kilopascals, 1e-6));

        // The same along the whole line, at 401 speeds that the answer knows nothing of.
        OperatingResult[] scan =
        [
            .. Enumerable.Range(0, 401).Select(at => Solve(system, 2600 + (10.0 * at))).Where(result => result.Point.Boost.Bars >= 0.06),
        ];
        Between(scan.Max(Closed), found.FixedSwitch.Minimum!.Value);
        Between(scan.Max(result => Closed(result) - result.Point.Boost.Kilopascals), found.DifferentialSwitch.Minimum!.Value);
        Between(-scan.Min(result => result.Mixture.RailGauge.Kilopascals), -found.FixedSwitch.Maximum);
        Between(-scan.Min(result => result.Mixture.RailGauge.Kilopascals - result.Point.Boost.Kilopascals), -found.DifferentialSwitch.Maximum);

        // Put back: the rail at the limit's pressure gives the limit's lambda.
        CutOutPoint put = found.Points[^1];
        Assert.Equal(Limit, system.With(Fixed.At(put.RequiredRail!.Value)).Solve(put.Result.Point).Mixture.Lambda!.Value, 1e-9);

        static void Between(double scanned, Pressure answer) => Assert.InRange(answer.Kilopascals, scanned - 1e-6, scanned + 0.5);
    }

    /// <summary>Steep gain: at low boost the rail in sound operation stands under what high boost requires, and no one setting serves.</summary>
    [Fact]
    public void FixedSwitch_OfASteepRail_ServesNowhere_AndSaysWhy()
    {
        CutOutResult steep = CutOut.PressuresFor(Car(RisingRate.From(Wren.Kpa(300), 7, Pressure.FromBars(0.02))), Line, Slowest, Fastest, Wren.Hill);
        Assert.False(steep.FixedSwitch.Serves);
        Assert.True(steep.FixedSwitch.MinimumAt.Result.Point.Speed > steep.FixedSwitch.MaximumAt.Result.Point.Speed);
        Assert.Contains("none: a switch at one setting comes too late at", steep.ToString(), StringComparison.Ordinal);

        // With a controller that follows the boost the rail only follows the manifold, and one difference serves at all speeds.
        CutOutResult flat = CutOut.PressuresFor(
            Car(ManifoldReferenced.From(Wren.Kpa(300))).With(AirflowMeterController.Of(
                ControllerData.Of(Injector, FuelSizing.Fuels.Fuel.Petrol, TargetLambda.At(0.82)).WithFuelTemperature(Wren.Hill.FuelTemperature))),
            Line,
            Slowest,
            Fastest,
            Wren.Hill);
        Assert.True(flat.DifferentialSwitch.Serves, flat.ToString());
        Assert.Equal(300 * Math.Pow(0.82 / Limit, 2), flat.DifferentialSwitch.Minimum!.Value.Kilopascals, 1e-6);
        Assert.Equal(300, flat.DifferentialSwitch.Maximum.Kilopascals, 1e-6);
        Assert.True(flat.DifferentialSwitch.IsDifferential);
    }

    /// <summary>Pulses that end before the line does: what is required there is not known, and no switch is said to serve.</summary>
    [Fact]
    public void Switches_WhereThePulseIsNotKnown_AreNotSaidToServe()
    {
        CutOutResult found = CutOut.PressuresFor(
            Car(RisingRate.From(Wren.Kpa(300), 5, Pressure.Zero)).With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(6)), (Wren.Rpm(5000), Wren.Ms(6)))),
            Line,
            Slowest,
            Fastest,
            Wren.Hill);
        Assert.False(found.FixedSwitch.Serves);
        Assert.Null(found.FixedSwitch.Minimum);
        Assert.Contains("no rail pressure is known", found.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatHasNoCutOut_IsRefused()
    {
        FuelSystem system = Car(ManifoldReferenced.From(Wren.Kpa(300)));
        Assert.Throws<ArgumentException>(() => CutOut.PressuresFor(system.With(IdealController.Instance), Line, Slowest, Fastest, Wren.Hill));
        Assert.Throws<ArgumentException>(() => CutOut.PressuresFor(system.With(SizingLimits.Default), Line, Slowest, Fastest, Wren.Hill));
        Assert.Throws<ArgumentException>(() => CutOut.PressuresFor(
            system.With(SizingLimits.Default.With(MixtureLimits.Of(Limit, Pressure.FromBars(3)))), Line, Slowest, Fastest, Wren.Hill));
        Assert.Throws<ArgumentOutOfRangeException>(() => CutOut.PressuresFor(system, Line, Fastest, Slowest, Wren.Hill));
    }

    private static BoostLine Line { get; } = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(0.45), Atmosphere.Standard);

    private static Injector Injector { get; } = FuelSizing.Injectors.Injector.Of(
        "injector K", VolumeFlow.FromMillilitersPerMinute(640), Wren.Kpa(300), TestFluid.Heptane, DeadTimeTable.ByVoltage([(Wren.Volt(8), Wren.Ms(1.9)), (Wren.Volt(15), Wren.Ms(0.8))]), Wren.Ms(1.6), Wren.Kpa(1900));

    private static double Closed(OperatingResult result) =>
        result.Point.Boost.Kilopascals + (result.Mixture.InjectorDifferential.Kilopascals * Math.Pow(result.Mixture.Lambda!.Value / Limit, 2));

    private static OperatingResult Solve(FuelSystem system, double rpm) =>
        system.Solve(OperatingPoint.At(Wren.Rpm(rpm), Line.At(Wren.Rpm(rpm), system.Demand, Wren.Hill.Atmosphere), Wren.Hill));

    private static FuelSystem Car(PressureRegulator regulator) => FuelSystem.Return(
        Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95))),
        InjectorSet.Of(Injector, 4),
        regulator,
        FuelSizing.Pumps.Pump.From(FuelSizing.Pumps.PumpCurve.At(
            "ample", Wren.Volt(13.5), (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(2000)), (Wren.Kpa(1900), VolumeFlow.FromLitersPerHour(1500)))),
        SizingLimits.Default.With(MixtureLimits.Of(Limit, Pressure.FromBars(0.06))))
        .With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(8.2)), (Wren.Rpm(5000), Wren.Ms(8.8)), (Wren.Rpm(7200), Wren.Ms(8.1))));
}
