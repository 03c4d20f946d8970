using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing;

/// <summary>What stands in for values that were not given: of each the end of its range that is worst, or best, for injectors and pump alike.</summary>
/// <remarks>
/// Every figure is common practice with no source. Base pressure and boost are no part of it: what is worse for the injectors is better for the pump.
/// </remarks>
internal sealed class AssumedValues
{
    private AssumedValues()
    {
    }

    /// <summary>Where each value asks the most of injectors and pump.</summary>
    public static AssumedValues Worst { get; } = new()
    {
        Speed = RotationalSpeed.FromRevolutionsPerMinute(9000),
        Lambda = 0.78,
        Consumption = BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(395),
        VolumetricEfficiency = Ratio.FromPercent(110),
        Induction = Induction.Turbocharged(Ratio.FromPercent(80), Ratio.FromPercent(90), Pressure.Zero),
        InjectionsOfFourStroke = 2,
        DeadTime = Times(3.5, 1.5, 1.3),
        TestFluid = TestFluid.Heptane,
        Conditions = ConditionsOf(103, 0, 13.5, 60),
    };

    /// <summary>Where each value asks the smallest of them.</summary>
    public static AssumedValues Best { get; } = new()
    {
        Speed = RotationalSpeed.FromRevolutionsPerMinute(5000),
        Lambda = 0.9,
        Consumption = BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(275),
        VolumetricEfficiency = Ratio.FromPercent(75),
        Induction = Induction.Turbocharged(Ratio.FromPercent(60), Ratio.Zero, Pressure.FromKilopascals(10)),
        InjectionsOfFourStroke = 1,
        DeadTime = Times(1.5, 0.5, 0.4),
        TestFluid = TestFluid.Of("a heavier test liquid", Density.FromKilogramsPerCubicMeter(780)),
        Conditions = ConditionsOf(95, 40, 14.4, 20),
    };

    /// <summary>The regulators' base pressures: what is worse for the injectors, and what is worse for the pump.</summary>
    public static (Pressure Low, Pressure High) Base { get; } = (Pressure.FromKilopascals(250), Pressure.FromKilopascals(400));

    /// <summary>The boost, where it was not given.</summary>
    public static (Pressure Low, Pressure High) Boost { get; } = (Pressure.Zero, Pressure.FromKilopascals(200));

    /// <summary>
    /// A pump where none was given, more than any engine asks for. It is judged by nothing, and injectors are judged at the pressure that the
    /// regulator is set to, whatever a pump delivers.
    /// </summary>
    public static Pump StandInPump { get; } = Pump.Of([PumpAt(6), PumpAt(20)]);

    public required RotationalSpeed Speed { get; init; }

    public required double Lambda { get; init; }

    /// <summary>On petrol.</summary>
    public required BrakeSpecificFuelConsumption Consumption { get; init; }

    public required Ratio VolumetricEfficiency { get; init; }

    public required Induction Induction { get; init; }

    public required int InjectionsOfFourStroke { get; init; }

    public required DeadTimeTable DeadTime { get; init; }

    public required TestFluid TestFluid { get; init; }

    public required Conditions Conditions { get; init; }

    /// <summary>Lambda and BSFC on a fuel: that of petrol carried over at equal brake efficiency.</summary>
    public FuelConsumption ConsumptionOn(Fuel fuel) => FuelConsumption.Of(Fuel.Petrol, Lambda, Consumption).With(fuel);

    /// <summary>An injector of which only the flow is known: how short a pulse and how high a pressure it takes is not judged.</summary>
    public Injector InjectorOf(VolumeFlow flow, Pressure ratedAt) => Injector.Of(
        "injector", flow, ratedAt, TestFluid, DeadTime, minimumLinearPulse: Duration.FromMilliseconds(5), maximumDifferential: Pressure.FromKilopascals(2000));

    private static DeadTimeTable Times(double at8, double at14, double at16) => DeadTimeTable.ByVoltage(
        (ElectricPotential.FromVolts(8), Duration.FromMilliseconds(at8)),
        (ElectricPotential.FromVolts(14), Duration.FromMilliseconds(at14)),
        (ElectricPotential.FromVolts(16), Duration.FromMilliseconds(at16)));

    private static Conditions ConditionsOf(double barometer, double air, double supply, double fuel) => Conditions.Of(
        Atmosphere.Of(Pressure.FromKilopascals(barometer), Temperature.FromDegreesCelsius(air)),
        ElectricPotential.FromVolts(supply),
        Temperature.FromDegreesCelsius(fuel));

    private static PumpCurve PumpAt(double volts) => PumpCurve.At(
        "a pump that is not given",
        ElectricPotential.FromVolts(volts),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(3000)),
        (Pressure.FromKilopascals(2000), VolumeFlow.FromLitersPerHour(2900)));
}
