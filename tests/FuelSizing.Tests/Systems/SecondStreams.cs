using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Points;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Invented second streams, and cars with them. Nothing here is the expected value of a test of correctness.</summary>
internal static class SecondStreams
{
    public static SprayNozzles Nozzles { get; } = Spraying(390);

    public static StreamFluid Half { get; } = StreamFluid.WithWaterByVolume(Fuel.Methanol, Wren.Percent(50));

    /// <summary>Held, with its pump, its tank, a ramp, evaporation and main fuel taken back.</summary>
    public static SecondStream Everything { get; } = SecondStream.Of("stream M", Half, Nozzles, Wren.Kpa(30), Wren.Kpa(850), OwnPump(60), Wren.Kpa(70))
        .WithTank(Volume.FromLiters(2), Duration.FromSeconds(60)).WithEvaporation(Wren.Percent(20)).WithMainFuelTakenBack(Wren.Percent(10));

    public static SprayNozzles Spraying(double millilitresPerMinute, SprayPlace into = SprayPlace.Manifold) =>
        SprayNozzles.Of(1, VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute), Wren.Kpa(700), SprayNozzles.Water, into);

    /// <summary>A straight curve from a free flow to a pressure at which nothing passes.</summary>
    public static Pump OwnPump(double litresPerHour, double kilopascals = 1200) => Pump.From(PumpCurve.At(
        "pump M", Wren.Volt(13.5), (Pressure.Zero, VolumeFlow.FromLitersPerHour(litresPerHour)), (Wren.Kpa(kilopascals), VolumeFlow.Zero)));

    public static SecondStream Held(StreamFluid? fluid = null, double begin = 30, double millilitresPerMinute = 390) =>
        SecondStream.Of("stream M", fluid ?? StreamFluid.Of(Fuel.Methanol), Spraying(millilitresPerMinute), Wren.Kpa(begin), Wren.Kpa(850));

    /// <summary>A controller that meters its air rightly and knows its injectors as they are, aiming at a lambda.</summary>
    public static FuelSystem Aiming(this FuelSystem system, double lambda) => system.With(AirflowMeterController.Of(
        ControllerData.Of(system.Injectors.Injector, system.Demand.Consumption.Fuel, TargetLambda.At(lambda))
            .WithFuelTemperature(Wren.Hill.FuelTemperature).WithRailPressureCorrection()));

    /// <summary>A car of which everything about the stream is judged.</summary>
    public static FuelSystem Judged(SecondStream stream) =>
        Car().Aiming(0.85).With(SizingLimits.Default.With(MixtureLimits.Of(0.9, richest: 0.65))).With(stream);

    public static FuelSystem Car() => MixtureCar.Car(FuelSizing.Regulators.ManifoldReferenced.From(Wren.Kpa(300)), MixtureCar.Ample);
}
