using FuelSizing.Controllers;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>
/// A car whose injectors open after the same time at every pressure, with ample pumps: what a pulse delivers goes with the root of the pressure across them, so that the
/// pressure for a lambda is Δp · (λ/λ_wanted)², worked by hand.
/// </summary>
internal static class EqualDeadTimes
{
    /// <summary>Of the engine, at every speed.</summary>
    public const double Target = 0.82;

    public static FuelSystem Built(PressureRegulator regulator, SizingLimits? limits = null, double opensAgainst = 1900, double pump = 1) => FuelSystem.Return(
        Wren.Demand(),
        InjectorSet.Of(
            Injector.Of(
                "injector K",
                VolumeFlow.FromMillilitersPerMinute(640),
                Wren.Kpa(300),
                TestFluid.Heptane,
                DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1.9)), (Wren.Volt(15), Wren.Ms(0.8))),
                Wren.Ms(1.6),
                Wren.Kpa(opensAgainst)),
            4),
        regulator,
        Pump.From(PumpCurve.At(
            "ample",
            Wren.Volt(13.5),
            (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(2000 * pump)),
            (Wren.Kpa(1900), VolumeFlow.FromLitersPerHour(1500 * pump)),
            (Wren.Kpa(2000), VolumeFlow.Zero))),
        limits ?? SizingLimits.Of(Wren.Percent(99), Wren.Percent(10)));

    /// <summary>The car with pulses that give these lambdas at these speeds and boosts with 300 kPa across the injectors; speeds rise.</summary>
    public static FuelSystem With(FuelSystem system, params (double Rpm, double Boost, double Lambda)[] points)
    {
        FuelSystem following = system.With(ManifoldReferenced.From(Wren.Kpa(300)));
        return system.With(RecordedPulseController.BySpeed(
        [
            .. points.Append((points[^1].Rpm + 300, points[^1].Boost, points[^1].Lambda)).Select(point =>
            {
                // What is injected goes with the time that it is open.
                DeliveredMixture before = following
                    .With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(7)), (Wren.Rpm(7200), Wren.Ms(7))))
                    .Solve(Wren.At(point.Item1, point.Item2)).Mixture;
                return (
                    Wren.Rpm(point.Item1), Duration.FromSeconds(before.DeadTime!.Value.Seconds + (before.OpenTime!.Value.Seconds * before.Lambda!.Value / point.Item3)));
            }),
        ]));
    }

    /// <summary>Rail pressure, kPa, that gives the target where 300 kPa across the injectors give this lambda.</summary>
    public static double RailFor(double boostKpa, double lambda) => boostKpa + (300 * Math.Pow(lambda / Target, 2));
}
