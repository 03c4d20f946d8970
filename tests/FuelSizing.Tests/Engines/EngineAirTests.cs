using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

public class EngineAirTests
{
    // Three litres, 3,000 rev/min, 0.068 m³/s of air at 20 °C and 1 bar: 0.907 of the swept volume a second.
    [Fact(DisplayName = "Volumetric efficiency from air mass flow; Stone, chapter 2")]
    public void MassFlow_OfStonesEngine_GivesHisVolumetricEfficiency() =>
        Published.Value(
            Works.Stone.At("3 L, 3,000 rev/min, 0.068 m³/s, 1 bar, 20 °C"),
            0.068 * 1e5 / (287.05287 * 293.15),
            EngineAir.MassFlow<Real>(0.907, StandardAir.Density<Real>(1e5, 293.15), 3e-3, 50, 2),
            5e-4);

    // 6.74 L/h of 0.735 at 14.5 : 1 is 0.019953 kg/s of air; the four cylinders sweep 918.6 cc: 76.0 % at 1.013 bar and 15 °C.
    [Fact(DisplayName = "Volumetric efficiency from air mass flow; Eastop and McConkey, example 13.2")]
    public void MassFlow_OfEastopsEngine_GivesItsVolumetricEfficiency()
    {
        double displacement = 4 * Math.PI / 4 * 0.057 * 0.057 * 0.090;
        Published.Value(
            Works.EastopEngine.At("air, kg/s"),
            6.74e-3 / 3600 * 735 * 14.5,
            EngineAir.MassFlow<Real>(0.760, 1.013e5 / (287 * 288.15), displacement, 2800 / 60.0, 2),
            1e-3);
    }

    [Fact(DisplayName = "Brake efficiency; Stone, chapter 2")]
    public void BrakeEfficiency_OfStonesEngine_IsHis() =>
        // BSFC 0.090 kg/MJ on fuel of 44 MJ/kg.
        Published.Value(
            Works.Stone,
            0.2525,
            Combustion.BrakeEfficiency<Real>(0.090e-6, 44e6),
            2e-4);

    [Fact(DisplayName = "Brake efficiency on a test bed; Gupta, example 16.4")]
    public void BrakeEfficiency_OfGuptasEngine_IsWorkedApart()
    {
        // 17.593 kW on 6.6 L/h of 0.78 and 44 MJ/kg: 28.0 %.
        double power = 2 * Math.PI * 3000 / 60 * 160 * 0.35;
        double fuel = 6.6e-3 / 3600 * 780;
        Published.Value(
            Works.GuptaTest.At("brake efficiency"),
            0.280,
            Combustion.BrakeEfficiency<Real>(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(fuel * 3.6e9 / power).KilogramsPerJoule, 44e6),
            0.0005 / 0.280);
    }

    [Fact(DisplayName = "Fuel demand from power; Stone, chapter 2")]
    public void FuelFromPower_OfStonesEngine_IsHis() =>
        Published.Value(
            Works.Stone.At("74.14 kW, 0.090 kg/MJ"),
            6.673e-3,
            FuelDemandFlow.FromPower<Real>(74.14e3, 0.090e-6),
            1e-3);

    [Fact(DisplayName = "Fuel demand from air; Stone, chapter 2")]
    public void AirFuelRatio_OfStonesEngine_GivesTheSameFuel() =>
        Published.Value(
            Works.Stone.At("air–fuel ratio 12.12"),
            6.673e-3,
            FuelDemandFlow.FromAir<Real>(0.068 * 1e5 / (287.05287 * 293.15), Combustion.AirFuelRatio<Real>(12.12 / 14.6, 14.6)),
            1e-3);

    [Fact(DisplayName = "Unit conversion, lb/(hp·h) to g/kWh; NIST SP 811")]
    public void Unit_PoundPerHorsepowerHour_IsTheMetricFigure() =>
        // One pound 453.59237 g exactly, one horsepower 0.745699872 kW (NIST SP 811, appendix B).
        Published.Value(
            Works.Nist811,
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
