using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

/// <summary>Target lambda, compressor and cooler that change with engine speed, against engines that have the same figures at every speed.</summary>
public class AlongSpeedTests
{
    private static readonly AlongSpeed Table = AlongSpeed.Of(
        SpeedRow.Of(Wren.Rpm(2400), 0.88, Wren.Percent(56), Wren.Percent(70)),
        SpeedRow.Of(Wren.Rpm(4800), 0.84, Wren.Percent(68), Wren.Percent(60)),
        SpeedRow.Of(Wren.Rpm(6400), 0.80, Wren.Percent(62), Wren.Percent(52)));

    private static readonly Conditions Day = Conditions.Of(
        Atmosphere.Of(Wren.Kpa(98.1), Temperature.FromDegreesCelsius(14)), Wren.Volt(13.6), Temperature.FromDegreesCelsius(37));

    // At the rows, and a quarter of the way between two of them: 3,000 and 5,200 rev/min, worked by hand.
    [Theory]
    [InlineData(2400, 0.88, 56, 70)]
    [InlineData(3000, 0.87, 59, 67.5)]
    [InlineData(4800, 0.84, 68, 60)]
    [InlineData(5200, 0.83, 66.5, 58)]
    [InlineData(6400, 0.80, 62, 52)]
    public void PointAtASpeed_IsThatOfAnEngineWithTheFiguresOfThatSpeed(double rpm, double lambda, double compressor, double cooler)
    {
        FuelSystem changing = System(Dunnock.Demand().With(Table));
        FuelSystem same = System(Constant(lambda, compressor, cooler));
        foreach (BoostLine line in new BoostLine[] { Dunnock.Centrifugal, Dunnock.Displacement })
        {
            Pressure boost = line.At(Wren.Rpm(rpm), changing.Demand, Day.Atmosphere);
            Assert.Equal(line.At(Wren.Rpm(rpm), same.Demand, Day.Atmosphere).Pascals, boost.Pascals, 1e-6);
            OperatingResult expected = same.Solve(OperatingPoint.At(Wren.Rpm(rpm), boost, Day));
            OperatingResult found = changing.Solve(expected.Point);
            Assert.Equal(expected.Demand.ChargeTemperature.Kelvins, found.Demand.ChargeTemperature.Kelvins, 1e-9);
            Assert.Equal(expected.Demand.FromAir.GramsPerSecond, found.Demand.FromAir.GramsPerSecond, 1e-9);
            Assert.Equal(expected.Demand.FromPower.GramsPerSecond, found.Demand.FromPower.GramsPerSecond, 1e-9);
            Assert.Equal(lambda, found.Mixture.TargetLambda, 1e-12);
            Assert.Equal(expected.Mixture.Lambda ?? double.NaN, found.Mixture.Lambda ?? double.NaN, 1e-12);
            Assert.Equal(expected.Mixture.Causes.Select(cause => cause.ToString()), found.Mixture.Causes.Select(cause => cause.ToString()));
        }
    }

    [Fact]
    public void Fit_HoldsEachSpeedToItsOwnTarget()
    {
        RisingRateFit fit = MixtureSizing.FitRisingRate(
            System(Dunnock.Demand().With(Table), 560),
            Dunnock.Centrifugal,
            [Wren.Rpm(3600), Wren.Rpm(5000), Wren.Rpm(6200)],
            Day,
            RisingRateBounds.Of(Wren.Kpa(300), Wren.Kpa(300), maximumOnset: Pressure.Zero));
        Assert.True(fit.Points.Count(point => point.RequiredRail is not null) >= 2, "too few speeds have a rail that gives the target");
        foreach (FittedPoint point in fit.Points.Where(point => point.RequiredRail is not null))
        {
            FuelSystem there = System(Dunnock.Demand().With(Table), 560).With(Fixed.At(point.RequiredRail!.Value));
            Assert.Equal(Table.Lambda!.At(point.Result.Point.Speed.RevolutionsPerSecond), there.Solve(point.Result.Point).Mixture.Lambda!.Value, 1e-9);
        }
    }

    [Fact]
    public void Working_NamesTheTable()
    {
        string working = System(Dunnock.Demand().With(Table)).Solve(OperatingPoint.At(Wren.Rpm(5200), Wren.Kpa(30), Day)).Working.ToString();
        Assert.Contains("table by speed, at 5,200 rev/min", working, StringComparison.Ordinal);
        Assert.Contains("0.83", working, StringComparison.Ordinal);
    }

    [Fact]
    public void Setup_WithATable_IsReadAsItWasWritten()
    {
        FuelSystem system = System(Dunnock.Demand().With(Table));
        Setup setup = Setup.Of(system);
        string written = setup.ToJson();
        Assert.Contains("along_speed", written, StringComparison.Ordinal);
        Assert.Equal(system.Demand, Setup.Parse("dunnock", written).System.Demand);

        // A column in some rows only is refused at its place.
        SetupException refused = Assert.Throws<SetupException>(() => Setup.Parse("dunnock", written.Replace("\"lambda\": 0.88,", string.Empty, StringComparison.Ordinal)));
        Assert.Contains("along_speed", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatMakesNoSense_IsRefused()
    {
        ArgumentException some = Assert.Throws<ArgumentException>(() => AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(2000), 0.9), SpeedRow.Of(Wren.Rpm(6000))));
        Assert.Contains("1 of 2 rows", some.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(2000)), SpeedRow.Of(Wren.Rpm(6000))));
        Assert.Throws<ArgumentOutOfRangeException>(() => AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(6000), 0.9), SpeedRow.Of(Wren.Rpm(2000), 0.9)));
        Assert.Throws<ArgumentOutOfRangeException>(() => AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(2000), 12.5), SpeedRow.Of(Wren.Rpm(6000), 12.5)));

        FuelDemandModel drawn = Wren.Demand(induction: Induction.NaturallyAspirated);
        ArgumentException none = Assert.Throws<ArgumentException>(() => drawn.With(Table));
        Assert.Contains("naturally aspirated", none.Message, StringComparison.Ordinal);
        Assert.Equal(0.85, drawn.With(AlongSpeed.Of(SpeedRow.Of(Wren.Rpm(1000), 0.9), SpeedRow.Of(Wren.Rpm(5000), 0.8))).TargetLambdaAt(Wren.Rpm(3000)), 1e-12);

        FuelSystem system = System(Dunnock.Demand().With(Table));
        ArgumentException outside = Assert.Throws<ArgumentOutOfRangeException>(() => system.Solve(OperatingPoint.At(Wren.Rpm(2000), Pressure.Zero, Day)));
        Assert.Contains("table by speed covers no more", outside.Message, StringComparison.Ordinal);
        ArgumentException batch = Assert.Throws<ArgumentException>(() => PointBatch.Of(system.Parts, Day));
        Assert.Contains("batch does not carry", batch.Message, StringComparison.Ordinal);
    }

    private static FuelDemandModel Constant(double lambda, double compressor, double cooler) => FuelDemandModel.Of(
        Dunnock.Engine,
        Induction.BeltDriven(Wren.Percent(compressor), Wren.Percent(cooler), Wren.Kpa(6), Wren.Percent(94)),
        Dunnock.VolumetricEfficiency,
        Dunnock.Power,
        Wren.Percent(83),
        FuelConsumption.Of(Fuel.Petrol, lambda, Dunnock.Petrol.BrakeSpecificFuelConsumption));

    private static FuelSystem System(FuelDemandModel demand, double flow = 280) => FuelSystem.Return(
        demand,
        InjectorSet.Of(Wren.InjectorOf(flow), 6),
        RisingRate.From(Wren.Kpa(300), 5, Pressure.Zero),
        Pump.From(PumpCurve.At(
            "ample", Wren.Volt(13.5), (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(400)), (Wren.Kpa(900), VolumeFlow.FromLitersPerHour(250)))))
        .With(RecordedPulseController.BySpeed((Wren.Rpm(2000), Wren.Ms(9)), (Wren.Rpm(6600), Wren.Ms(8))));
}
