using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>The worst place of ranges whose margin is a formula of the inputs, so that place and margin are known beforehand.</summary>
public class WorstPlaceTests
{
    private static readonly OperatingRanges AirAndSupply = OperatingRanges.Around(Wren.Hill)
        .WithAmbientPressure(Wren.Kpa(82), Wren.Kpa(102))
        .WithAmbientTemperature(Temperature.FromDegreesCelsius(-10), Temperature.FromDegreesCelsius(30))
        .WithSupplyVoltage(Wren.Volt(11), Wren.Volt(15));

    /// <summary>A bowl in speed, boost, ambient pressure and voltage has its bottom inside of all four; temperature has no effect.</summary>
    [Fact]
    public void Place_OfABowl_IsItsBottomInsideTheRanges()
    {
        WorstCornerResult found = Judging(at => 0.2 + Square(((at.Speed * 60) - 5321) / 500) + Square((at.Boost - 17e3) / 20e3) + Square((at.Ambient - 91.3e3) / 10e3) + Square((at.Supply - 12.7) / 2))
            .FindWorstCorner([Wren.Rpm(5000), Wren.Rpm(6000)], [Wren.Kpa(10), Wren.Kpa(40)], AirAndSupply);
        WorstPlace place = found.Limiting;
        Assert.Equal(0.2, place.Margin!.Share!.Value, 1e-6);
        Assert.Equal(5321, place.Result.Point.Speed.RevolutionsPerMinute, 0.5);
        Assert.Equal(17, place.Result.Point.Boost.Kilopascals, 0.02);
        Assert.Equal(91.3, place.Result.Point.Conditions.Atmosphere.Pressure.Kilopascals, 0.01);
        Assert.Equal(12.7, place.Result.Point.Conditions.SupplyVoltage.Volts, 0.002);
        Assert.Equal(35, place.Result.Point.Conditions.FuelTemperature.DegreesCelsius, 1e-9);
        Assert.Equal([RangeEnd.Inside, RangeEnd.NoEffect, RangeEnd.Inside], place.Inputs.Select(input => input.End));
        Assert.False(place.IsAtCorner);
        Assert.Equal((91.3, 12.7), (Math.Round(((Pressure)place.Inputs[0].Value).Kilopascals, 1), Math.Round(((ElectricPotential)place.Inputs[2].Value).Volts, 1)));
        Assert.Contains(" with ambient pressure 91 kPa (inside its range), ambient temperature ", place.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(" °C (no effect here), supply voltage 12.7 V (inside its range)", place.ToString(), StringComparison.Ordinal);
    }

    /// <summary>A dip that is seen from one corner only, or from the middle: each corner is looked at, and so is the middle.</summary>
    [Theory]
    [InlineData(82, 11, 0)]
    [InlineData(82, 11, 60)]
    [InlineData(82, 15, 0)]
    [InlineData(82, 15, 60)]
    [InlineData(102, 11, 0)]
    [InlineData(102, 11, 60)]
    [InlineData(102, 15, 0)]
    [InlineData(102, 15, 60)]
    [InlineData(92, 13, 30)]
    public void Place_OfADipAtOneCorner_IsThatCorner(double pressure, double volts, double celsius)
    {
        double Density(double fuel) => Fuel.Petrol.DensityAt(Temperature.FromDegreesCelsius(fuel)).KilogramsPerCubicMeter;
        double there = Density(celsius);
        OperatingRanges ranges = OperatingRanges.Around(Wren.Hill)
            .WithAmbientPressure(Wren.Kpa(82), Wren.Kpa(102))
            .WithSupplyVoltage(Wren.Volt(11), Wren.Volt(15))
            .WithFuelTemperature(Temperature.FromDegreesCelsius(0), Temperature.FromDegreesCelsius(60));
        WorstPlace place = Judging(at => Square((at.Ambient - (pressure * 1e3)) / 3e3) + Square((at.Supply - volts) / 0.5) + Square((at.FuelDensity - there) / 8) is var off && off < 1 ? 0.5 - (0.4 * (1 - off)) : 0.5)
            .FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], ranges).Limiting;
        Assert.Equal(0.1, place.Margin!.Share!.Value, 1e-9);
        Assert.Equal((pressure, volts, celsius), (
            Math.Round(place.Result.Point.Conditions.Atmosphere.Pressure.Kilopascals, 6),
            Math.Round(place.Result.Point.Conditions.SupplyVoltage.Volts, 6),
            Math.Round(place.Result.Point.Conditions.FuelTemperature.DegreesCelsius, 6)));
        RangeEnd End(double value, double low, double high) => value <= low ? RangeEnd.Lowest : value >= high ? RangeEnd.Highest : RangeEnd.Inside;
        Assert.Equal([End(pressure, 82, 102), End(volts, 11, 15), End(celsius, 0, 60)], place.Inputs.Select(input => input.End));
        Assert.Equal(pressure != 92, place.IsAtCorner);
    }

    /// <summary>
    /// One input, one speed, one boost, and a margin that is the same everywhere: both ends and the middle, and from each of them fourteen steps of
    /// 2 V, 1 V, … to where the range goes on. From the ends 13 of those are new, from the middle 26, and 12 V and 14 V are met twice.
    /// </summary>
    [Fact]
    public void Points_OfAnInputWithoutEffect_AreThoseOfFourteenHalvings()
    {
        WorstCornerResult found = Judging(_ => 0.5).FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], OperatingRanges.Around(Wren.Hill).WithSupplyVoltage(Wren.Volt(11), Wren.Volt(15)));
        Assert.Equal(3 + 13 + 13 + 26 - 2, found.PointsSolved);
        Assert.Equal(RangeEnd.NoEffect, found.Limiting.Inputs.Single().End);
        Assert.True(found.Limiting.IsAtCorner);
    }

    /// <summary>Each input has its name and its value at the worst place, here the highest of its range.</summary>
    [Fact]
    public void Input_OfEachRange_HasItsNameAndValue()
    {
        OperatingRanges around = OperatingRanges.Around(Wren.Hill);
        RangeInput Of(OperatingRanges ranges, Func<PointValues<Real>, double> rising) =>
            Judging(at => 1 - rising(at)).FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], ranges).Limiting.Inputs.Single();
        Assert.Equal(
            ("range.ambient-pressure", 102.0),
            Of(around.WithAmbientPressure(Wren.Kpa(82), Wren.Kpa(102)), at => at.Ambient / 1e6) is var pressure ? (pressure.Name.Code, ((Pressure)pressure.Value).Kilopascals) : default);
        Assert.Equal(
            ("range.ambient-temperature", 30.0),
            Of(around.WithAmbientTemperature(Temperature.FromDegreesCelsius(-10), Temperature.FromDegreesCelsius(30)), at => -at.Injected * 1e3) is var air ? (air.Name.Code, Math.Round(((Temperature)air.Value).DegreesCelsius, 9)) : default);
        Assert.Equal(
            ("range.supply-voltage", 15.0),
            Of(around.WithSupplyVoltage(Wren.Volt(11), Wren.Volt(15)), at => at.Supply / 100) is var supply ? (supply.Name.Code, ((ElectricPotential)supply.Value).Volts) : default);
        Assert.Equal(
            ("range.fuel-temperature", 60.0),
            Of(around.WithFuelTemperature(Temperature.FromDegreesCelsius(0), Temperature.FromDegreesCelsius(60)), at => -at.FuelDensity / 1e4) is var fuel ? (fuel.Name.Code, Math.Round(((Temperature)fuel.Value).DegreesCelsius, 9)) : default);
        Assert.Equal(
            ("range.ethanol-content", 20.0),
            Of(around.WithEthanolContent(Wren.Percent(0), Wren.Percent(20)), at => at.Injected * 1e3) is var blend ? (blend.Name.Code, ((Ratio)blend.Value).Percent) : default);
    }

    /// <summary>Of two inputs one at its end and one inside is no corner; without ranges nothing is said of any.</summary>
    [Fact]
    public void Place_InsideOneOfTwoRanges_IsNoCorner()
    {
        OperatingRanges two = OperatingRanges.Around(Wren.Hill).WithAmbientPressure(Wren.Kpa(82), Wren.Kpa(102)).WithSupplyVoltage(Wren.Volt(11), Wren.Volt(15));
        WorstPlace place = Judging(at => (at.Ambient / 1e6) + Square((at.Supply - 12.7) / 2)).FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], two).Limiting;
        Assert.Equal([RangeEnd.Lowest, RangeEnd.Inside], place.Inputs.Select(input => input.End));
        Assert.False(place.IsAtCorner);
        WorstPlace alone = Judging(_ => 0.5).FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], OperatingRanges.Around(Wren.Hill)).Limiting;
        Assert.DoesNotContain(" with ", alone.ToString(), StringComparison.Ordinal);
    }

    /// <summary>A range without width is no input, but its value counts.</summary>
    [Fact]
    public void Range_WithoutWidth_IsAValueAndNoInput()
    {
        WorstCornerResult found = Judging(at => (at.Supply - 10) / 10).FindWorstCorner(
            [Wren.Rpm(5500)],
            [Wren.Kpa(10)],
            OperatingRanges.Around(Wren.Hill).WithSupplyVoltage(Wren.Volt(12.5), Wren.Volt(12.5)));
        Assert.Equal((1, 0), (found.PointsSolved, found.Limiting.Inputs.Count));
        Assert.Equal(0.25, found.Limiting.Margin!.Share!.Value, 1e-12);
    }

    /// <summary>Six humps along the speed, each seen from a point of the grid, the last least of them; it is the worst by a little and is found at its top.</summary>
    [Fact]
    public void Place_OfManyHumps_IsTheWorstOfThem()
    {
        double[] tops = [3520, 4000, 4480, 4960, 5440, 5920];
        double Margin(double rpm) => tops.Select((top, at) => 0.5 - ((0.21 + (0.01 * at)) * Math.Exp(-Square((rpm - top) / 120)))).Min();
        WorstPlace place = Judging(at => Margin(at.Speed * 60))
            .FindWorstCorner([.. Enumerable.Range(0, 13).Select(step => Wren.Rpm(3000 + (250 * step)))], [Wren.Kpa(10)], OperatingRanges.Around(Wren.Hill)).Limiting;
        Assert.Equal(5920, place.Result.Point.Speed.RevolutionsPerMinute, 0.5);
        Assert.Equal(0.5 - 0.26, place.Margin!.Share!.Value, 1e-6);
    }

    /// <summary>Speed and boost are coordinates of the search too, to both ends of their ranges.</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, -1)]
    [InlineData(-1, 1)]
    [InlineData(-1, -1)]
    public void Place_OfASlope_IsAtTheEndOfSpeedAndBoost(int bySpeed, int byBoost)
    {
        WorstPlace place = Judging(at => 0.5 + (bySpeed * at.Speed / 1000) + (byBoost * at.Boost / 1e6))
            .FindWorstCorner([Wren.Rpm(5000), Wren.Rpm(5400), Wren.Rpm(6000)], [Wren.Kpa(10), Wren.Kpa(40)], OperatingRanges.Around(Wren.Hill)).Limiting;
        Assert.Equal((bySpeed > 0 ? 5000 : 6000, byBoost > 0 ? 10 : 40), (Math.Round(place.Result.Point.Speed.RevolutionsPerMinute, 6), Math.Round(place.Result.Point.Boost.Kilopascals, 6)));
    }

    /// <summary>A narrow dip at a bend of the parts, between the speeds and boosts that were asked for, is looked at as it is.</summary>
    [Fact]
    public void Place_OfADipAtAKnot_IsThatKnot()
    {
        // Wren's volumetric efficiency has a point at 5,000 rev/min; of a rising-rate unit that sets in at 20 kPa the boost is a knot.
        FuelSystem system = Wren.System(FuelSizing.Regulators.RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(20)));
        WorstPlace place = Judging(at => Math.Abs((at.Speed * 60) - 5000) < 0.1 && Math.Abs(at.Boost - 20e3) < 10 ? 0.01 : 0.5, system)
            .FindWorstCorner([Wren.Rpm(4000), Wren.Rpm(5700)], [Wren.Kpa(0), Wren.Kpa(50)], OperatingRanges.Around(Wren.Hill)).Limiting;
        Assert.Equal((0.01, 5000, 20), (place.Margin!.Share!.Value, Math.Round(place.Result.Point.Speed.RevolutionsPerMinute, 6), Math.Round(place.Result.Point.Boost.Kilopascals, 6)));
    }

    /// <summary>Along a line boost follows from speed, and of a compressor on a belt from the air: the coldest, densest air makes most of it.</summary>
    [Fact]
    public void Place_AlongALine_LiesOnTheLineOfItsOwnAir()
    {
        Induction belt = Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95));
        BoostLine line = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(0.4), Atmosphere.Standard);
        FuelSystem system = Judging(at => 1 - (at.Boost / 100e3), Wren.System().With(Wren.Demand(induction: belt)));
        WorstCornerResult found = system.FindWorstCorner(line, Wren.Rpm(3000), Wren.Rpm(6500), AirAndSupply);
        WorstPlace place = found.Checks.Single(of => of.Margin!.Part == ShapedCheck.Shape);
        Assert.Equal([RangeEnd.Highest, RangeEnd.Lowest, RangeEnd.NoEffect], place.Inputs.Select(input => input.End));
        Assert.Equal(6500, place.Result.Point.Speed.RevolutionsPerMinute, 1e-6);
        Pressure most = line.At(Wren.Rpm(6500), system.Demand, Atmosphere.Of(Wren.Kpa(102), Temperature.FromDegreesCelsius(-10)));
        Assert.Equal(most.Pascals, place.Result.Point.Boost.Pascals, 1e-6);
        Assert.Equal(1 - (most.Pascals / 100e3), place.Margin!.Share!.Value, 1e-9);

        // A dip between the speeds that are looked at first: 25 of them over the line.
        WorstPlace dip = Judging(at => 0.5 - (0.3 * Math.Exp(-Square(((at.Speed * 60) - 4444) / 100))), Wren.System().With(Wren.Demand(induction: belt)))
            .FindWorstCorner(line, Wren.Rpm(3000), Wren.Rpm(6500), OperatingRanges.Around(Wren.Hill)).Checks.Single(of => of.Margin!.Part == ShapedCheck.Shape);
        Assert.Equal(4444, dip.Result.Point.Speed.RevolutionsPerMinute, 1.0);
    }

    /// <summary>A jump of the margin's own kind counts as an effect: from a figure to none, and from holding to what cannot be said.</summary>
    [Fact]
    public void Effect_OfAnInput_IsAnyDifferenceAtItsEndsOrItsMiddle()
    {
        RangeEnd End(Func<double, double> margin) => Judging(at => margin(at.Supply))
            .FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], OperatingRanges.Around(Wren.Hill).WithSupplyVoltage(Wren.Volt(11), Wren.Volt(15))).Limiting.Inputs.Single().End;
        Assert.Equal(RangeEnd.NoEffect, End(_ => double.PositiveInfinity));
        Assert.Equal(RangeEnd.NoEffect, End(_ => double.NaN));
        Assert.Equal(RangeEnd.NoEffect, End(volts => 0.5 + (1e-14 * volts)));
        Assert.Equal(RangeEnd.NoEffect, End(volts => 5e5 + (1e-9 * volts)));
        Assert.Equal(RangeEnd.Lowest, End(volts => 0.5 + (1e-9 * volts)));
        Assert.Equal(RangeEnd.Highest, End(volts => 0.5 - (1e-9 * volts)));
        Assert.Equal(RangeEnd.Lowest, End(volts => volts > 14 ? double.PositiveInfinity : 0.5));
        Assert.Equal(RangeEnd.Highest, End(volts => volts > 14 ? double.NaN : 0.5));
        Assert.Equal(RangeEnd.Highest, End(volts => volts > 14 ? double.NaN : double.PositiveInfinity));
        Assert.Equal(RangeEnd.Inside, End(volts => Math.Abs(volts - 13) / 10));
    }

    /// <summary>Where recorded pulses end lambda is not known: those points are counted, and the leanest of the others is told.</summary>
    [Fact]
    public void Lambda_ThatIsNotKnownEverywhere_IsCountedApart()
    {
        FuelSystem system = Wren.System().With(RecordedPulseController.BySpeed((Wren.Rpm(5200), Wren.Ms(9)), (Wren.Rpm(6000), Wren.Ms(7))));
        WorstCornerResult nowhere = system.FindWorstCorner([Wren.Rpm(5100)], [Wren.Kpa(10)], OperatingRanges.Around(Wren.Hill));
        Assert.Equal((1, 1, true), (nowhere.NotKnown, nowhere.PointsSolved, nowhere.Leanest is null));
        Assert.StartsWith("lambda is known nowhere; ", nowhere.ToString(), StringComparison.Ordinal);

        WorstCornerResult partly = system.FindWorstCorner([Wren.Rpm(5100), Wren.Rpm(5900)], [Wren.Kpa(10)], OperatingRanges.Around(Wren.Hill));
        Assert.InRange(partly.NotKnown, 1, partly.PointsSolved - 2);
        Assert.Equal(5900, partly.Leanest!.Result.Point.Speed.RevolutionsPerMinute, 1e-6);
        Assert.Null(partly.Leanest.Margin);
        Assert.Contains($"; not known at {partly.NotKnown} of {partly.PointsSolved} points, where it may be leaner; limiting: ", partly.ToString(), StringComparison.Ordinal);

        WorstCornerResult known = system.FindWorstCorner([Wren.Rpm(5300), Wren.Rpm(5900)], [Wren.Kpa(10)], OperatingRanges.Around(Wren.Hill));
        Assert.Equal(0, known.NotKnown);
        Assert.StartsWith("leanest lambda ", known.ToString(), StringComparison.Ordinal);
        Assert.EndsWith($"; limiting: {known.Limiting.Margin!.Part.Name}", known.ToString(), StringComparison.Ordinal);
        Assert.Equal(known.Checks.Order(Comparer<WorstPlace>.Create((one, other) => Urgency.Order.Compare(one.Margin!, other.Margin!))), known.Checks);
        Assert.Equal(system.Applicable.Length, known.Checks.Count);
    }

    /// <summary>Between petrol and a fifth of ethanol the worst blend is what its own description makes it.</summary>
    [Fact]
    public void Place_OfABlend_HasTheFuelOfThatBlend()
    {
        OperatingRanges ranges = OperatingRanges.Around(Wren.Hill).WithEthanolContent(Wren.Percent(0), Wren.Percent(20));
        WorstPlace most = Judging(at => 1 - (at.Injected * 1e3)).FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], ranges).Limiting;
        Assert.Equal(RangeEnd.Highest, most.Inputs.Single().End);
        FuelSystem fifth = Wren.System().With(Wren.Demand().With(FuelBlend.EthanolInPetrol(Wren.Percent(20))));
        OperatingResult own = fifth.Solve(OperatingPoint.At(Wren.Rpm(5500), Wren.Kpa(10), Wren.Hill));
        Assert.Equal(own.SolvedDemand.Injected, most.Result.SolvedDemand.Injected, 1e-12 * own.SolvedDemand.Injected);
        WorstPlace least = Judging(at => at.Injected * 1e3).FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], ranges).Limiting;
        Assert.Equal(RangeEnd.Lowest, least.Inputs.Single().End);
        Assert.Equal(0, ((Ratio)least.Inputs.Single().Value).Percent, 1e-12);
    }

    /// <summary>A content that is known, from 10 to 10 %, is that content: lambda is that of the car on this blend, not on petrol.</summary>
    [Fact]
    public void EthanolContent_WithoutWidth_IsThatContent()
    {
        FuelSystem system = Wren.System().With(RecordedPulseController.BySpeed((Wren.Rpm(5000), Wren.Ms(9)), (Wren.Rpm(6000), Wren.Ms(9))));
        OperatingResult tenth = system.With(Wren.Demand().With(FuelBlend.EthanolInPetrol(Wren.Percent(10)))).Solve(OperatingPoint.At(Wren.Rpm(5500), Wren.Kpa(10), Wren.Hill));
        WorstPlace leanest = system.FindWorstCorner([Wren.Rpm(5500)], [Wren.Kpa(10)], OperatingRanges.Around(Wren.Hill).WithEthanolContent(Wren.Percent(10), Wren.Percent(10))).Leanest!;
        Assert.Equal(tenth.Mixture.Lambda!.Value, leanest.Result.Mixture.Lambda!.Value, 1e-12);
        Assert.True(leanest.Result.Mixture.Lambda > system.Solve(leanest.Result.Point).Mixture.Lambda * 1.02);
        Assert.Empty(leanest.Inputs);
    }

    [Fact]
    public void Question_WithAPieceMissing_IsRefusedByName()
    {
        FuelSystem system = Wren.System();
        BoostLine line = HeldBoost.Of(Wren.Kpa(30), Wren.Rpm(3000), Wren.Rpm(6000));
        OperatingRanges ranges = OperatingRanges.Around(Wren.Hill);
        Refused.Missing("system", () => WorstCorner.FindWorstCorner(null!, line, Wren.Rpm(3000), Wren.Rpm(6000), ranges));
        Refused.Missing("line", () => system.FindWorstCorner(null!, Wren.Rpm(3000), Wren.Rpm(6000), ranges));
        Refused.Missing("ranges", () => system.FindWorstCorner(line, Wren.Rpm(3000), Wren.Rpm(6000), null!));
        Refused.Missing("system", () => WorstCorner.FindWorstCorner(null!, [Wren.Rpm(3000)], [Wren.Kpa(0)], ranges));
        Refused.Missing("speeds", () => system.FindWorstCorner(null!, [Wren.Kpa(0)], ranges));
        Refused.Missing("boosts", () => system.FindWorstCorner([Wren.Rpm(3000)], null!, ranges));
        Refused.Missing("ranges", () => system.FindWorstCorner([Wren.Rpm(3000)], [Wren.Kpa(0)], null!));
        Refused.OutOfRange("speeds", () => system.FindWorstCorner([], [Wren.Kpa(0)], ranges));
        Refused.OutOfRange("boosts", () => system.FindWorstCorner([Wren.Rpm(3000)], [], ranges));
        Refused.OutOfRange("speeds", () => system.FindWorstCorner([Wren.Rpm(3000), Wren.Rpm(3000)], [Wren.Kpa(0)], ranges));
        Refused.OutOfRange("boosts", () => system.FindWorstCorner([Wren.Rpm(3000)], [Wren.Kpa(20), Wren.Kpa(10)], ranges));
        Refused.OutOfRange("speeds", () => system.FindWorstCorner([Wren.Rpm(99)], [Wren.Kpa(0)], ranges));
        Refused.OutOfRange("boosts", () => system.FindWorstCorner([Wren.Rpm(3000)], [Wren.Kpa(401)], ranges));
        Refused.OutOfRange("fastest", () => system.FindWorstCorner(line, Wren.Rpm(5000), Wren.Rpm(5000), ranges));
        WorstCornerResult found = system.FindWorstCorner([Wren.Rpm(3000)], [Wren.Kpa(0)], ranges.WithSupplyVoltage(Wren.Volt(12), Wren.Volt(14)));
        Refused.Missing("style", () => found.In(null!));
        Refused.Missing("style", () => found.Limiting.In(null!));
        Refused.Missing("style", () => found.Limiting.Inputs[0].In(null!));
    }

    private static double Square(double of) => of * of;

    private static FuelSystem Judging(Func<PointValues<Real>, double> margin, FuelSystem? system = null) => ShapedCheck.Judging(margin, system);
}
