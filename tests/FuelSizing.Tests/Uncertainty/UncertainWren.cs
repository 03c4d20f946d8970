using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>The invented car with inputs that nobody knows exactly.</summary>
internal static class UncertainWren
{
    public static UncertainInput Bsfc { get; } = UncertainInput.BrakeSpecificFuelConsumption(Distribution.Normal(
        Grams(315), Grams(10), Grams(280), Grams(350)));

    public static UncertainInput Loss { get; } = UncertainInput.DrivetrainLoss(Uniform(0.12, 0.18));

    public static UncertainInput Air { get; } = UncertainInput.VolumetricEfficiencyFactor(Uniform(0.95, 1.05));

    public static UncertainInput Flow { get; } = UncertainInput.InjectorFlowFactor(Uniform(0.96, 1.04));

    public static UncertainInput Matching { get; } =
        UncertainInput.InjectorMatchingFactor(Distribution.Normal(Fraction(1), Fraction(0.01), Fraction(0.95), Fraction(1.05)));

    public static UncertainInput Regulator { get; } =
        UncertainInput.RegulatorOffset(Distribution.Triangular(Wren.Kpa(-15), Wren.Kpa(0), Wren.Kpa(15)));

    public static UncertainInput Volts { get; } = UncertainInput.SupplyVoltage(
        Distribution.Triangular(Wren.Volt(12.5), Wren.Volt(13.5), Wren.Volt(14.2)));

    public static UncertainInput Warmth { get; } = UncertainInput.FuelTemperature(Distribution.Uniform(
        Temperature.FromDegreesCelsius(15), Temperature.FromDegreesCelsius(50)));

    public static UncertainInput Ethanol { get; } = UncertainInput.EthanolContent(Uniform(0, 0.10));

    public static UncertainInput[] All { get; } = [Bsfc, Loss, Air, Flow, Matching, Regulator, Volts, Warmth, Ethanol];

    public static FuelSystem Car(DemandBasis basis = DemandBasis.Larger, double injector = 570, SizingLimits? limits = null) =>
        FuelSystem.Return(
            FuelDemandModel.Of(
                Wren.Engine, Wren.Turbocharger, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, basis),
            InjectorSet.Of(Wren.InjectorOf(injector), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            FuelSizing.Pumps.Pump.From(Wren.PumpOf(1.2)),
            limits);

    public static OperatingPoint Point { get; } = Wren.At(6800, 0.6);

    public static UncertainSystem Of(params UncertainInput[] inputs) => UncertainSystem.Of(Car(), Point, inputs);

    /// <summary>The result of a drawn system where it is judged; along a line, at its slowest speed.</summary>
    public static OperatingResult Solved(UncertainSystem system, Perturbation drawn)
    {
        (_, SystemParts parts) = drawn.Of(system.Nominal);
        return system.Nominal.With(parts).Solve(system.PlacesOf(drawn, parts)[0]);
    }

    /// <summary>What a run keeps of a result, its injectors as they match.</summary>
    public static SampledPoint Sampled(OperatingResult result, params Real[] matching) =>
        SampledPoint.Of(result.System.Applicable, result.Parts, result.Point, matching);

    /// <summary>What is left of a part, as a share.</summary>
    public static double? Reserve(SampledPoint point, Part part) =>
        CheckReading.MarginOf(point.Readings[Array.FindIndex(point.Checks, check => check.Part == part)]);

    public static Distribution<Ratio> Uniform(double minimum, double maximum) => Distribution.Uniform(Fraction(minimum), Fraction(maximum));

    public static Ratio Fraction(double value) => Ratio.FromDecimalFractions(value);

    public static BrakeSpecificFuelConsumption Grams(double value) =>
        BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(value);
}
