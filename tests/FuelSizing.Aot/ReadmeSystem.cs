using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Aot;

/// <summary>The README's system.</summary>
internal static class ReadmeSystem
{
    public static OperatingPoint FullLoad { get; } = OperatingPoint.At(Rpm(6800), Pressure.FromBars(0.6));

    public static FuelSystem System { get; } = FuelSystem.Return(
        FuelDemandModel.Of(
            Engine.Of("hill-climb 2.4 L", Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Rpm(7200)),
            Induction.Turbocharged(Ratio.FromPercent(72), Ratio.FromPercent(70), Pressure.FromKilopascals(5)),
            VolumetricEfficiency.Of((Rpm(2000), Ratio.FromPercent(84)), (Rpm(7200), Ratio.FromPercent(95))),
            PowerCurve.AtWheels(
                Atmosphere.Standard, Ratio.FromPercent(15), (Rpm(2000), Power.FromKilowatts(33)), (Rpm(7200), Power.FromKilowatts(132))),
            Ratio.FromPercent(85),
            FuelConsumption.Of(Fuel.Petrol, 0.82, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(320))),
        InjectorSet.Of(
            Injector.Of(
                "injector A",
                VolumeFlow.FromMillilitersPerMinute(360),
                Pressure.FromKilopascals(300),
                TestFluid.Heptane,
                DeadTimeTable.ByVoltage(
                    (ElectricPotential.FromVolts(8), Duration.FromMilliseconds(2.3)),
                    (ElectricPotential.FromVolts(16), Duration.FromMilliseconds(0.7))),
                minimumLinearPulse: Duration.FromMilliseconds(1.6),
                maximumDifferential: Pressure.FromKilopascals(500)),
            count: 4),
        ManifoldReferenced.From(Pressure.FromKilopascals(300)),
        Pump.From(PumpCurve.At(
            "pump P",
            ElectricPotential.FromVolts(13.5),
            (Pressure.FromKilopascals(0), VolumeFlow.FromLitersPerHour(215)),
            (Pressure.FromKilopascals(400), VolumeFlow.FromLitersPerHour(140)),
            (Pressure.FromKilopascals(750), VolumeFlow.FromLitersPerHour(0)))));

    private static RotationalSpeed Rpm(double speed) => RotationalSpeed.FromRevolutionsPerMinute(speed);
}
