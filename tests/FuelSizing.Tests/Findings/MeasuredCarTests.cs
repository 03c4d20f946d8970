using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>Which parts of a next stage are those that a run has measured.</summary>
public class MeasuredCarTests
{
    private static readonly FuelSystem Plan = PulledWren.Plan;

    private static readonly Pump Pump = (Pump)Plan.Pump;

    [Fact]
    public void Plan_HasAllItsParts()
    {
        MeasuredCar car = new(Plan, Plan);
        Assert.Equal((true, true, true, true, true, true), Flags(car));
        Assert.Same(Plan, car.Next);
        Assert.True(car.HasFuel);
        Assert.Equal(1, car.BrakeConsumptionFactor, 12);
        Assert.False(car.IsScaledAir(out double factor));
        Assert.Equal(1, factor, 12);
        Assert.False(car.HasWorn(1));
        Assert.False(car.HasWorn(0.8));
    }

    [Fact]
    public void PartThatIsAnother_IsNotTheMeasuredOne()
    {
        Assert.Equal((false, false, true, true, true, true), Flags(Next(Plan.With(Pump.From(Wren.Pump)))));
        Assert.Equal((false, false, true, true, true, true), Flags(Next(Plan.With(Pump.WithCondition(Ratio.FromPercent(80))))));
        Assert.Equal((false, false, true, true, true, true), Flags(Next(Plan.With(Pump.Of(Pump.Curves, relief: Wren.Kpa(700), condition: Pump.Condition, feed: Pump.Feed)))));
        Assert.Equal((true, false, true, true, true, true), Flags(Next(Plan.With(Pump.WithFeed(Wired(3))))));
        Assert.Equal((true, true, false, false, true, true), Flags(Next(Plan.With(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(20))))));
        Assert.Equal((true, true, true, true, false, true), Flags(Next(Plan.With(InjectorSet.Of(Wren.InjectorOf(600), 4)))));
        Assert.Equal((true, true, true, true, true, false), Flags(Next(Plan.With(Plumbing.None))));
        Assert.Equal((true, true, true, true, true, false), Flags(Next(Plan.With(Plumbing.Of(supply: [Filter.Of("other", VolumeFlow.FromLitersPerHour(100), Wren.Kpa(9))])))));

        // The same filter elsewhere in the path, and another line beside it, is the same filter.
        Filter filter = Plan.Plumbing.Supply.OfType<Filter>().Single();
        Assert.Equal((true, true, true, true, true, true), Flags(Next(Plan.With(Plumbing.Of(suction: [filter])))));
        Assert.Equal((true, true, true, true, true, false), Flags(Next(Plan.With(Plumbing.Of(suction: [filter], supply: [filter])))));
    }

    /// <summary>A feed whose resistance was found to be another is another feed, though its wire and joints are the same.</summary>
    [Fact]
    public void Feed_OfAnotherResistance_IsAnother()
    {
        Assert.NotEqual(Pump.Feed, Pump.Feed!.Plus(0.01));
        Assert.False(Next(Plan.With(Pump.WithFeed(Pump.Feed.Plus(0.01)))).HasFeed);
        Assert.Equal(Pump.Feed, Pump.Feed.Plus(0));
    }

    /// <summary>A plan without filters has none to compare, and one without a unit no gain.</summary>
    [Fact]
    public void PlanWithoutAPart_HasNoneMeasured()
    {
        FuelSystem bare = Plan.With(Plumbing.None).With(ManifoldReferenced.From(Wren.Kpa(300))).With(Pump.From(Wren.Pump));
        Assert.Equal((true, false, true, false, true, false), Flags(new MeasuredCar(bare, bare)));
        FuelSystem series = Plan.With(RegulatorSeries.Of(ManifoldReferenced.From(Wren.Kpa(300)), RisingRate.From(Wren.Kpa(150), 6, Wren.Kpa(0))));
        Assert.True(new MeasuredCar(series, series).HasUnit);
    }

    /// <summary>Two of the next stage's pumps are the plan's where the plan has two, and one where it has one.</summary>
    [Fact]
    public void Pumps_AreMeasuredAsManyAsThePlanHas()
    {
        FuelSystem two = Plan.With(PumpParallel.Of(Pump, Pump));
        MeasuredCar more = Next(two);
        Assert.Equal([0.45, 0.9], more.Pumping(two, 0.5).Pump.Pumps.Select(pump => Math.Round(pump.Condition.DecimalFractions, 9)));
        Assert.Equal([0.45, 0.45], new MeasuredCar(two, two).Pumping(two, 0.5).Pump.Pumps.Select(pump => Math.Round(pump.Condition.DecimalFractions, 9)));
        FuelSystem behind = Plan.With(PumpSeries.Of(SeriesBypass.None, Pump.From(Wren.Pump), Pump));
        MeasuredCar second = Next(behind);
        Assert.True(second.HasPump);
        Assert.True(second.HasFeed);
        Assert.Equal([1, 0.45], second.Pumping(behind, 0.5).Pump.Pumps.Select(pump => Math.Round(pump.Condition.DecimalFractions, 9)));
        Assert.IsType<PumpSeries>(second.Pumping(behind, 0.5).Pump);
        double ohms = Pump.Feed!.LoopResistance.Ohms;
        FuelSystem fed = more.Fed(two, 0.03);
        Assert.Equal([ohms + 0.03, ohms], fed.Pump.Pumps.Select(pump => pump.Feed!.LoopResistance.Ohms), (one, other) => Math.Abs(one - other) < 1e-9);
    }

    /// <summary>A filter with so many new ones' losses more, in the suction and the supply; lines stay as they are.</summary>
    [Fact]
    public void Filters_AreFoundWhereverTheyAre()
    {
        Filter filter = Filter.Of("filter", VolumeFlow.FromLitersPerHour(150), Wren.Kpa(15), 1.5);
        Line line = Line.Of("line", Length.FromMillimeters(8), Length.FromMeters(1), Roughness.DrawnTube);
        FuelSystem plan = Plan.With(Plumbing.Of(suction: [line, filter], supply: [filter, line], returnLine: [line]));
        Plumbing found = MeasuredCar.Filtering(plan, 2).Plumbing;
        Assert.Equal([line, filter.Found(2)], found.Suction);
        Assert.Equal([filter.Found(2), line], found.Supply);
        Assert.Equal([line], found.ReturnLine);
        Assert.Equal(3.5, ((Filter)found.Suction[1]).Clogging, 9);
    }

    /// <summary>A table that is the plan's times 1.05 is told as such; one that is so in part, or has other speeds, is another table.</summary>
    [Fact]
    public void Air_ScaledThroughout_IsTold()
    {
        Assert.True(Next(Air(Wren.VolumetricEfficiency.Scaled(1.05))).IsScaledAir(out double factor));
        Assert.Equal(1.05, factor, 9);
        Assert.True(Next(Air(Wren.VolumetricEfficiency.Scaled(0.9))).IsScaledAir(out factor));
        Assert.Equal(0.9, factor, 9);
        Assert.False(Next(Air(VolumetricEfficiency.Of((Wren.Rpm(800), Wren.Percent(75.6)), (Wren.Rpm(7200), Wren.Percent(91))))).IsScaledAir(out _));

        // Fewer rows are another table, though each of them is the plan's times 1.05.
        Assert.False(Next(Air(VolumetricEfficiency.Of((Wren.Rpm(800), Wren.Percent(75.6)), (Wren.Rpm(2000), Wren.Percent(88.2))))).IsScaledAir(out _));
        (RotationalSpeed, Ratio)[] points = [.. Wren.VolumetricEfficiency.BySpeed.Points.Select((point, i) =>
            (RotationalSpeed.FromRevolutionsPerSecond(point.X), Ratio.FromDecimalFractions(point.Y * (i == 3 ? 1.04 : 1.05))))];
        Assert.False(Next(Air(VolumetricEfficiency.Of(points))).IsScaledAir(out _));
        (RotationalSpeed, Ratio)[] moved = [.. Wren.VolumetricEfficiency.BySpeed.Points.Select((point, i) =>
            (RotationalSpeed.FromRevolutionsPerSecond(point.X + (i == 2 ? 1 : 0)), Ratio.FromDecimalFractions(point.Y * 1.05)))];
        Assert.False(Next(Air(VolumetricEfficiency.Of(moved))).IsScaledAir(out _));
    }

    /// <summary>BSFC by its ratio; of another fuel by brake efficiency, so that a conversion by heating value is no change.</summary>
    [Fact]
    public void Bsfc_IsComparedByItsRatio()
    {
        FuelConsumption consumption = Plan.Demand.Consumption;
        MeasuredCar more = Next(Burning(consumption.Using(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(330.75))));
        Assert.Equal(1.05, more.BrakeConsumptionFactor, 9);
        Assert.True(more.HasFuel);
        MeasuredCar other = Next(Burning(consumption.With(Fuel.E85)));
        Assert.Equal(1, other.BrakeConsumptionFactor, 9);
        Assert.False(other.HasFuel);
        Assert.Equal(1.05, Next(Burning(consumption.Using(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(330.75)).With(Fuel.E85))).BrakeConsumptionFactor, 9);
    }

    /// <summary>A pump of 90 % in the plan and 72 % in the next stage is the plan's times 0.8, where its curves are the same.</summary>
    [Fact]
    public void Pump_WornByAFactor_IsTold()
    {
        MeasuredCar car = Next(Plan.With(Pump.WithCondition(Ratio.FromPercent(72))));
        Assert.True(car.HasWorn(0.8));
        Assert.False(car.HasWorn(0.81));

        // Any of several pumps of the plan may be the worn one.
        Assert.True(new MeasuredCar(Plan.With(PumpParallel.Of(Pump.From(Wren.Pump), Pump)), Plan.With(Pump.WithCondition(Ratio.FromPercent(72)))).HasWorn(0.8));
        Assert.False(Next(Plan.With(Pump.From(Wren.Pump).WithCondition(Ratio.FromPercent(72)))).HasWorn(0.8));
        Assert.True(Next(Plan.With(PumpParallel.Of(Pump.From(Wren.Pump), Pump.WithCondition(Ratio.FromPercent(72))))).HasWorn(0.8));
    }

    /// <summary>Alike is to a billionth.</summary>
    [Fact]
    public void Numbers_AreAlikeToABillionth()
    {
        Assert.True(MeasuredCar.Alike(2 + 1.9e-9, 2));
        Assert.False(MeasuredCar.Alike(2 + 2.1e-9, 2));
        Assert.True(MeasuredCar.Alike(-2 + 1.9e-9, -2));
        Assert.True(MeasuredCar.Alike(0, 0));
        Assert.False(MeasuredCar.Differs(1 + 0.9e-9));
        Assert.True(MeasuredCar.Differs(1 + 1.1e-9));
    }

    private static Feed Wired(double metres) => Feed.Of(
        "other feed", Conductor.Metric(Area.FromSquareMillimeters(2.5)), Length.FromMeters(metres), Length.FromMeters(1), Temperature.FromDegreesCelsius(50));

    private static MeasuredCar Next(FuelSystem next) => new(Plan, next);

    private static FuelSystem Air(VolumetricEfficiency table) => Plan.With(Plan.Demand.With(table, Plan.Demand.MeasuredPower, Plan.Demand.Consumption));

    private static FuelSystem Burning(FuelConsumption consumption) =>
        Plan.With(Plan.Demand.With(Plan.Demand.VolumetricEfficiency, Plan.Demand.MeasuredPower, consumption));

    private static (bool Pump, bool Feed, bool Regulator, bool Unit, bool Injectors, bool Filters) Flags(MeasuredCar car) =>
        (car.HasPump, car.HasFeed, car.HasRegulator, car.HasUnit, car.HasInjectors, car.HasFilters);
}
