using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

public class EngineAirTests
{
    // Three litres, 3,000 rev/min, 0.068 m³/s of air at 20 °C and 1 bar: 0.907 of the swept volume a second.
    [Fact(DisplayName = "Volumetric efficiency from air mass flow; Stone, chapter 2")]
    public void MassFlow_OfStonesEngine_GivesHisVolumetricEfficiency() =>
        Published.Value(
            "Stone, Introduction to Internal Combustion Engines, ch. 2 exercise (3 L, 3,000 rev/min, 0.068 m³/s, 1 bar, 20 °C)",
            0.068 * 1e5 / (287.05287 * 293.15),
            EngineAir.MassFlow<Real>(0.907, StandardAir.Density<Real>(1e5, 293.15), 3e-3, 50, 2),
            5e-4);

    // Companion example 1.5: 4 × 120 mm bore × 100 mm stroke, 2,000 rev/min, 0.062112 m³/s of air.
    [Fact(DisplayName = "Volumetric efficiency from air mass flow; companion example 1.5")]
    public void MassFlow_OfACompanionExample_GivesItsVolumetricEfficiency()
    {
        double displacement = 4 * Math.PI / 4 * 0.12 * 0.12 * 0.10;
        Published.Value(
            "Textbook companion, internal combustion engines, example 1.5 (air density 1.15 kg/m³)",
            0.062112 * 1.15,
            EngineAir.MassFlow<Real>(0.8238, 1.15, displacement, 2000 / 60.0, 2),
            5e-4);
    }

    [Fact(DisplayName = "Brake efficiency; Stone, chapter 2")]
    public void BrakeEfficiency_OfStonesEngine_IsHis() =>
        // BSFC 0.090 kg/MJ on fuel of 44 MJ/kg.
        Published.Value(
            "Stone, Introduction to Internal Combustion Engines, ch. 2 exercise",
            0.2525,
            Combustion.BrakeEfficiency<Real>(0.090e-6, 44e6),
            2e-4);

    [Fact(DisplayName = "Brake efficiency on a test bed; companion example 18.1")]
    public void BrakeEfficiency_OfATestBedExample_IsTheCompanions() =>
        // 36 kW on 10.5 kg/h of 42,000 kJ/kg.
        Published.Value(
            "Textbook companion, testing and performance, example 18.1 (brake efficiency 0.294)",
            0.294,
            Combustion.BrakeEfficiency<Real>(
                BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(10_500 / 36.0).KilogramsPerJoule, 42e6),
            1e-3);

    [Fact(DisplayName = "Fuel demand from power; Stone, chapter 2")]
    public void FuelFromPower_OfStonesEngine_IsHis() =>
        Published.Value(
            "Stone, Introduction to Internal Combustion Engines, ch. 2 exercise (74.14 kW, 0.090 kg/MJ)",
            6.673e-3,
            FuelDemandFlow.FromPower<Real>(74.14e3, 0.090e-6),
            1e-3);

    [Fact(DisplayName = "Fuel demand from air; Stone, chapter 2")]
    public void AirFuelRatio_OfStonesEngine_GivesTheSameFuel() =>
        Published.Value(
            "Stone, Introduction to Internal Combustion Engines, ch. 2 exercise (air–fuel ratio 12.12)",
            6.673e-3,
            FuelDemandFlow.FromAir<Real>(0.068 * 1e5 / (287.05287 * 293.15), Combustion.AirFuelRatio<Real>(12.12 / 14.6, 14.6)),
            1e-3);

    [Fact(DisplayName = "Unit conversion, lb/(hp·h) to g/kWh; NIST SP 811")]
    public void Unit_PoundPerHorsepowerHour_IsTheMetricFigure() =>
        // One pound 453.59237 g exactly, one horsepower 0.745699872 kW (NIST SP 811, appendix B).
        Published.Value(
            "NIST Special Publication 811 (2008), appendix B.8",
            304.14,
            BrakeSpecificFuelConsumption.FromPoundsPerMechanicalHorsepowerHour(0.50).GramsPerKiloWattHour,
            1e-4);

    [Fact]
    public void ToCrank_OfWheelPower_IsUndoneByTheLoss() =>
        Gen.Select(Gen.Double[0, 500], Gen.Double[0, 40]).Sample((kilowatts, loss) =>
        {
            double crank = (double)Drivetrain.ToCrank(Power.FromKilowatts(kilowatts), Ratio.FromPercent(loss)).Kilowatts;
            return Math.Abs((crank * (1 - (loss / 100))) - kilowatts) < 1e-9;
        });

    [Fact]
    public void MassFlow_OfATwoStroke_IsTwiceThatOfAFourStroke() =>
        Assert.Equal(
            2 * EngineAir.MassFlow<Real>(0.9, 1.16, 2e-3, 100, (int)EngineCycle.FourStroke).Value,
            EngineAir.MassFlow<Real>(0.9, 1.16, 2e-3, 100, (int)EngineCycle.TwoStroke).Value,
            12);
}
