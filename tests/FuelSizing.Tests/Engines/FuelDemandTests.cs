using CsCheck;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

public class FuelDemandTests
{
    private static readonly Gen<(double Rpm, double Boost)> Point = Gen.Select(Gen.Double[800, 7200], Gen.Double[0, 2]);

    /// <summary>
    /// At the air of the measured pull and no boost, power is the measured power: a cooler loss apart, which this
    /// induction does not have.
    /// </summary>
    [Fact]
    public void BrakePower_WithoutBoostInTheMeasuredAir_IsTheMeasuredPower() =>
        Gen.Double[800, 7200].Sample(rpm =>
        {
            FuelDemand demand = Wren.Demand(induction: Induction.NaturallyAspirated)
                .At(Wren.Rpm(rpm), Pressure.Zero, Atmosphere.Standard);
            double measured = (double)Wren.Power.At(Wren.Rpm(rpm)).Watts;
            return Math.Abs((double)demand.BrakePower.Watts - measured) < 1e-9 * measured;
        });

    [Fact]
    public void BothEstimates_WithMoreBoost_Grow() =>
        Gen.Select(Point, Gen.Double[0.01, 0.5]).Sample((at, more) =>
        {
            FuelDemand less = Wren.Demand().At(Wren.Rpm(at.Rpm), Pressure.FromBars(at.Boost), Atmosphere.Standard);
            FuelDemand grown = Wren.Demand().At(Wren.Rpm(at.Rpm), Pressure.FromBars(at.Boost + more), Atmosphere.Standard);
            return grown.FromAir > less.FromAir && grown.FromPower > less.FromPower;
        });

    [Fact]
    public void MassFlow_OnEachBasis_IsTheOneNamed() =>
        Point.Sample(at =>
        {
            FuelDemand On(DemandBasis basis) =>
                FuelDemandModel.Of(
                    Wren.Engine, Wren.Turbocharger, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, basis)
                .At(Wren.Rpm(at.Rpm), Pressure.FromBars(at.Boost), Atmosphere.Standard);
            FuelDemand air = On(DemandBasis.Air);
            return air.MassFlow.Equals(air.FromAir, MassFlow.Zero)
                && On(DemandBasis.Power).MassFlow.Equals(air.FromPower, MassFlow.Zero)
                && On(DemandBasis.Larger).MassFlow.GramsPerSecond
                    == Math.Max(air.FromAir.GramsPerSecond, air.FromPower.GramsPerSecond);
        });

    [Fact]
    public void BeltDrive_AgainstATurbine_CostsItsPower() =>
        Point.Sample(at =>
        {
            FuelDemand turbine = Wren.Demand().At(Wren.Rpm(at.Rpm), Pressure.FromBars(at.Boost), Atmosphere.Standard);
            FuelDemand belt = Wren.Demand(induction: Induction.BeltDriven(
                    Wren.Percent(72), Wren.Percent(70), Wren.Kpa(5), Wren.Percent(95)))
                .At(Wren.Rpm(at.Rpm), Pressure.FromBars(at.Boost), Atmosphere.Standard);
            double lost = (double)(turbine.BrakePower - belt.BrakePower).Watts;
            return Math.Abs(lost - (double)belt.CompressorDrivePower.Watts) < 1e-6 * (1 + lost)
                && belt.CompressorDrivePower > turbine.CompressorDrivePower;
        });

    /// <summary>
    /// "A charge-cooled centrifugal blower at 8 psi adds 50 to 60 %": common practice, no source. Here at sea level, 75 %
    /// compressor, 70 % cooler, 95 % drive. Density alone gives 51 %; friction that does not grow adds, the belt takes.
    /// </summary>
    [Fact]
    public void BrakePower_OfACooledBlowerAtEightPsi_AddsAboutHalf()
    {
        Induction blower = Induction.BeltDriven(
            Wren.Percent(75), Wren.Percent(70), Wren.Kpa(3), Wren.Percent(95));
        FuelDemand demand = Wren.Demand(induction: blower).At(
            Wren.Rpm(6200), Pressure.FromPoundsForcePerSquareInch(8), Atmosphere.Standard);
        double gain = (double)(demand.BrakePower / Wren.Power.At(Wren.Rpm(6200))) - 1;
        Assert.InRange(gain, 0.45, 0.60);
    }

    [Fact]
    public void BrakeEfficiency_OfTheDemo_IsTheIdentity() =>
        // η = 3600/(BSFC in g/kWh × LHV in MJ/kg).
        Assert.Equal(3600 / (315 * 44.0), Wren.Petrol.BrakeEfficiency.DecimalFractions, 9);

    [Fact]
    public void Consumption_TooGoodToBeTrue_IsRefused()
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(() => FuelConsumption.Of(
            Fuel.E85, 0.8, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(200)));
        Assert.Contains("E85", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void At_BeyondTheTables_IsRefused()
    {
        Assert.Contains(
            "7,200 rev/min",
            Assert.Throws<ArgumentOutOfRangeException>(
                () => Wren.Demand().At(Wren.Rpm(7300), Pressure.Zero, Atmosphere.Standard)).Message,
            StringComparison.Ordinal);
        Assert.Contains(
            "800 rev/min",
            Assert.Throws<ArgumentOutOfRangeException>(
                () => Wren.Demand().At(Wren.Rpm(700), Pressure.Zero, Atmosphere.Standard)).Message,
            StringComparison.Ordinal);
        Assert.Contains(
            "no compressor",
            Assert.Throws<ArgumentOutOfRangeException>(
                () => Wren.Demand(induction: Induction.NaturallyAspirated)
                    .At(Wren.Rpm(5000), Pressure.FromBars(0.1), Atmosphere.Standard)).Message,
            StringComparison.Ordinal);
    }
}
