using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Points;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

/// <summary>A demand with one part exchanged is the demand described with that part.</summary>
public class DemandWhatIfTests
{
    private static readonly Engine Larger = Engine.Of("larger", Volume.FromLiters(2.6), 4, EngineCycle.FourStroke, Wren.Rpm(7000));

    private static readonly VolumetricEfficiency Fuller = VolumetricEfficiency.Of((Wren.Rpm(800), Wren.Percent(80)), (Wren.Rpm(7200), Wren.Percent(104)));

    private static readonly PowerCurve Pull = PowerCurve.AtCrank(
        Atmosphere.Standard, (Wren.Rpm(800), Power.FromKilowatts(12)), (Wren.Rpm(6000), Power.FromKilowatts(160)), (Wren.Rpm(7200), Power.FromKilowatts(150)));

    private static readonly FuelConsumption Richer = FuelConsumption.Of(Fuel.Petrol, 0.78, BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(350));

    [Fact]
    public void Demand_WithAnExchangedPart_IsTheOneDescribedWithIt()
    {
        Assert.Equal(Of(engine: Larger), Wren.Demand().With(Larger));
        Assert.Equal(Of(induction: Induction.NaturallyAspirated), Wren.Demand().With(Induction.NaturallyAspirated));
        Assert.Equal(Of(efficiency: Fuller), Wren.Demand().With(Fuller));
        Assert.Equal(Of(pull: Pull), Wren.Demand().With(Pull));
        Assert.Equal(Wren.Rpm(6000), Wren.Demand().With(Pull).MechanicalEfficiencySpeed);
        Assert.Equal(Of(consumption: Richer), Wren.Demand().With(Richer));
        Assert.Equal(Of(basis: DemandBasis.Air), Wren.Demand().WithBasis(DemandBasis.Air));
    }

    /// <summary>Evaporation and the table by speed stay, a mechanical efficiency stays at the speed at which it was stated, and what does not fit is refused.</summary>
    [Fact]
    public void Demand_WithAnExchangedPart_KeepsTheOthers()
    {
        FuelDemandModel demand = Wren.Demand()
            .With(AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(1000), 0.9, Wren.Percent(70)), SpeedRow.Of(Wren.Rpm(7000), 0.8, Wren.Percent(66))))
            .WithEvaporation(Wren.Percent(20));
        foreach (FuelDemandModel other in new[] { demand.With(Larger), demand.With(Fuller), demand.With(Pull), demand.With(Richer), demand.WithBasis(DemandBasis.Power), demand.With(Fuel.E85) })
        {
            Assert.Equal(demand.AlongSpeed, other.AlongSpeed);
            Assert.Equal(demand.EvaporatedShare, other.EvaporatedShare);
        }

        Assert.Contains("a table by speed", Assert.Throws<ArgumentException>(() => demand.With(Induction.NaturallyAspirated)).Message, StringComparison.Ordinal);
        FuelDemandModel stated = Of(speed: Wren.Rpm(3000));
        Assert.Equal(Wren.Rpm(3000), stated.With(Pull).MechanicalEfficiencySpeed);
        PowerCurve high = PowerCurve.AtCrank(Atmosphere.Standard, (Wren.Rpm(4000), Power.FromKilowatts(90)), (Wren.Rpm(7200), Power.FromKilowatts(150)));
        Assert.Throws<ArgumentOutOfRangeException>(() => stated.With(high));
    }

    [Fact]
    public void System_OnAnotherFuel_IsTheOneDescribedOnIt() =>
        Assert.Equal(Wren.System(consumption: Wren.Petrol.With(Fuel.E85)), Wren.System().With(Fuel.E85));

    /// <summary>Each limit alone changes, and those of the mixture stay.</summary>
    [Fact]
    public void Limits_WithOneExchanged_KeepTheOthers()
    {
        SizingLimits limits = SizingLimits.Of(Wren.Percent(82), Wren.Percent(12), Wren.Kpa(700), Wren.Percent(4), Wren.Kpa(15)).With(MixtureLimits.Of(0.9));
        SizingLimits Others(double duty = 82, double reserve = 12, double ceiling = 700, double drop = 4, double suction = 15) =>
            SizingLimits.Of(Wren.Percent(duty), Wren.Percent(reserve), Wren.Kpa(ceiling), Wren.Percent(drop), Wren.Kpa(suction)).With(MixtureLimits.Of(0.9));

        Assert.Equal(Others(duty: 75), limits.WithDutyCycle(Wren.Percent(75)));
        Assert.Equal(Others(reserve: 20), limits.WithPumpReserve(Wren.Percent(20)));
        Assert.Equal(Others(ceiling: 600), limits.WithRailCeiling(Wren.Kpa(600)));
        Assert.Equal(Others(drop: 3), limits.WithFeedDrop(Wren.Percent(3)));
        Assert.Equal(Others(suction: 20), limits.WithSuctionMargin(Wren.Kpa(20)));
    }

    private static FuelDemandModel Of(
        Engine? engine = null,
        Induction? induction = null,
        VolumetricEfficiency? efficiency = null,
        PowerCurve? pull = null,
        FuelConsumption? consumption = null,
        DemandBasis basis = DemandBasis.Larger,
        RotationalSpeed? speed = null) => FuelDemandModel.Of(
            engine ?? Wren.Engine,
            induction ?? Wren.Turbocharger,
            efficiency ?? Wren.VolumetricEfficiency,
            pull ?? Wren.Power,
            Wren.Percent(85),
            consumption ?? Wren.Petrol,
            basis,
            speed);
}
