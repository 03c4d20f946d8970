using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Systems;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Systems;

/// <summary>The worst corner of air, voltage, fuel temperature and ethanol content: none of a dense scan is worse.</summary>
public class WorstCornerTests(ITestOutputHelper output)
{
    private const int Places = 40;

    [Fact]
    public void WorstCorner_OfRandomCars_IsNoBetterThanADenseScan()
    {
        int cars = RandomCars.Count(2);
        Tally tally = new();
        RandomCars.Any.Sample(car => IsNoBetterThanADenseScan(car, tally), iter: cars);
        output.WriteLine(
            $"{cars} cars, {tally.Blends} on a blend, lambda known everywhere of {tally.Known}; {tally.Inside} places inside; {tally.Solved / cars} points solved each, {tally.Scanned / cars} scanned");
        Assert.True(tally.Known >= cars / 2, $"lambda is known everywhere of {tally.Known} only");
        Assert.True(tally.Inside > 0 || cars < 20, "every place is a corner: does it look inside?");
    }

    /// <summary>Two humps along the speed that are almost as high, at corners whose order differs from that of their grids.</summary>
    [Fact]
    public void WorstCorner_OfACarWithTwoHumps_IsThatOfTheHigher() =>
        RandomCars.Any.Sample(car => IsNoBetterThanADenseScan(car, new()), seed: "4Cmt-QgKltE1");

    private static void IsNoBetterThanADenseScan(RandomCar car, Tally tally)
    {
        bool isBlend = car.System.Demand.Consumption.Fuel.Name != Fuel.Petrol.Name;
        OperatingRanges ranges = OperatingRanges.Around(car.Conditions)
            .WithAmbientPressure(Wren.Kpa(82), Wren.Kpa(103))
            .WithAmbientTemperature(Temperature.FromDegreesCelsius(-12), Temperature.FromDegreesCelsius(38))
            .WithSupplyVoltage(Wren.Volt(11.8), Wren.Volt(14.5))
            .WithFuelTemperature(Temperature.FromDegreesCelsius(-5), Temperature.FromDegreesCelsius(60));
        ranges = isBlend ? ranges.WithEthanolContent(Wren.Percent(0), Wren.Percent(85)) : ranges;
        WorstCornerResult found = car.System.FindWorstCorner(car.Line, car.Slowest, car.Fastest, ranges);
        double leanest = double.NegativeInfinity;
        OperatingResult? leanestAt = null;
        Margin?[] tightest = new Margin?[found.System.Applicable.Length];
        Random random = new(160_016);
        long points = 0;
        for (int place = 0; place < 32 + Places; place++)
        {
            // The corners first, then places anywhere: a third of their inputs at an end.
            double Share(int axis) => place < 32 ? place >> axis & 1 : random.Next(3) == 0 ? random.Next(2) : random.NextDouble();
            (double pressure, double air, double volts, double fuel, double ethanol) =
                (82 + (21 * Share(0)), -12 + (50 * Share(1)), 11.8 + (2.7 * Share(2)), -5 + (65 * Share(3)), 0.85 * Share(4));
            Conditions conditions = Conditions.Of(
                Atmosphere.Of(Wren.Kpa(pressure), Temperature.FromDegreesCelsius(air)), Wren.Volt(volts), Temperature.FromDegreesCelsius(fuel));
            FuelSystem system = isBlend
                ? found.System.With(found.System.Demand.With(FuelBlend.EthanolInPetrol(Ratio.FromDecimalFractions(ethanol))))
                : found.System;
            foreach (RotationalSpeed speed in car.Speeds(place < 32 ? 41 : 21))
            {
                OperatingResult result = car.Solve(system, speed, conditions);
                points++;
                if ((result.Mixture.MaximumLambda ?? double.NegativeInfinity) > leanest)
                {
                    (leanest, leanestAt) = (result.Mixture.MaximumLambda!.Value, result);
                }

                for (int check = 0; check < tightest.Length; check++)
                {
                    Margin margin = result.Margins[check];
                    tightest[check] = tightest[check] is not { } before || Urgency.Order.Compare(margin, before) < 0 ? margin : before;
                }
            }
        }

        lock (tally)
        {
            tally.Inside += found.Checks.Append(found.Leanest).Count(at => at is { IsAtCorner: false });
            tally.Known += found.NotKnown > 0 ? 0 : 1;
            tally.Blends += isBlend ? 1 : 0;
            (tally.Solved, tally.Scanned) = (tally.Solved + found.PointsSolved, tally.Scanned + points);
        }

        double lambda = found.Leanest?.Result.Mixture.MaximumLambda ?? double.NegativeInfinity;

        // Where lambda is not known everywhere the answer says that it may be leaner there, and looks for the leanest of the rest.
        Assert.True(lambda >= leanest * (1 - 1e-6) || found.NotKnown > 0, $"{found}, but the scan has {leanest}: {leanestAt?.Mixture} at {leanestAt?.Point} in {leanestAt?.Point.Conditions}: {car}");
        foreach (Margin worst in tightest.OfType<Margin>())
        {
            WorstPlace place = found.Checks.Single(place => place.Margin!.Part == worst.Part);
            Margin own = place.Margin!;
            Assert.True(
                Urgency.Rank(own.Outcome) > Urgency.Rank(worst.Outcome)
                || (own.Outcome == worst.Outcome && (own.Share ?? double.PositiveInfinity) <= (worst.Share ?? double.PositiveInfinity) + 1e-6),
                $"{place} has {own.Share}, but the scan {worst.Share}: {worst} at {worst.Point} in {worst.Point.Conditions}: {car}");
        }

        // What was found is what the system does there.
        foreach (WorstPlace place in found.Checks.Append(found.Leanest).OfType<WorstPlace>())
        {
            OperatingResult again = place.Result.System.Solve(place.Result.Point);
            Assert.Equal(place.Result.Mixture.MaximumLambda, again.Mixture.MaximumLambda);
            Assert.Equal(place.Result.Margins.Select(margin => margin.Share), again.Margins.Select(margin => margin.Share));
        }
    }

    /// <summary>
    /// Ethanol needs more fuel for the same air (about 9.0 kg of air for 1 kg, petrol about 14.7): a controller without a sensor leans with it,
    /// one with a sensor does not.
    /// </summary>
    [Fact]
    public void EthanolContent_LeansAControllerWithoutASensor_AndNotOneWithOne()
    {
        ControllerData data = ControllerData.Of(Wren.InjectorOf(900), Fuel.Petrol, TargetLambda.At(0.82)).WithFuelTemperature(Wren.Hill.FuelTemperature);
        OperatingRanges ranges = OperatingRanges.Around(Wren.Hill).WithEthanolContent(Wren.Percent(0), Wren.Percent(20));
        WorstPlace Leanest(ControllerData of) => Car(2)
            .With(FuelDemandModel.Of(Wren.Engine, Belt, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, DemandBasis.Air))
            .With(SpeedDensityController.Of(of, Wren.VolumetricEfficiency, Wren.Kpa(250)))
            .FindWorstCorner(Line, Wren.Rpm(2500), Wren.Rpm(6500), ranges).Leanest!;

        WorstPlace without = Leanest(data);
        Assert.Equal(RangeEnd.Highest, without.Inputs.Single().End);
        Assert.Equal(20, ((Ratio)without.Inputs.Single().Value).Percent, 1e-9);
        Assert.True(without.Result.Mixture.Lambda > 0.87, without.ToString());
        WorstPlace with = Leanest(data.WithEthanolSensor());
        Assert.Equal(0.82, with.Result.Mixture.Lambda!.Value, 1e-9);
        Assert.Equal(RangeEnd.NoEffect, with.Inputs.Single().End);
    }

    [Fact]
    public void Rectangle_AndSinglePoints_GiveTheWorstToo()
    {
        FuelSystem system = Car(1).With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(9)), (Wren.Rpm(7200), Wren.Ms(8))));
        OperatingRanges ranges = OperatingRanges.Around(Wren.Hill)
            .WithAmbientTemperature(Temperature.FromDegreesCelsius(-10), Temperature.FromDegreesCelsius(35))
            .WithSupplyVoltage(Wren.Volt(12.2), Wren.Volt(14.2));
        WorstCornerResult worst = system.FindWorstCorner([Wren.Rpm(3000), Wren.Rpm(6500)], [Pressure.Zero, Wren.Kpa(50)], ranges);
        double leanest = (from air in new[] { -10.0, 35 }
                          from volts in new[] { 12.2, 14.2 }
                          from rpm in Enumerable.Range(0, 36)
                          from boost in new[] { 0.0, 50 }
                          select system.Solve(OperatingPoint.At(
                              Wren.Rpm(3000 + (100 * rpm)),
                              Wren.Kpa(boost),
                              Conditions.Of(Atmosphere.Of(Wren.Hill.Atmosphere.Pressure, Temperature.FromDegreesCelsius(air)), Wren.Volt(volts), Wren.Hill.FuelTemperature)))
                              .Mixture.Lambda!.Value).Max();
        Assert.InRange(worst.Leanest!.Result.Mixture.Lambda!.Value, leanest * (1 - 1e-9), leanest * 1.01);
        Assert.Equal([RangeEnd.Lowest, RangeEnd.Lowest], worst.Leanest.Inputs.Select(input => input.End));
        Assert.True(worst.Leanest.IsAtCorner);
        Assert.Contains("−10 °C (lowest), supply voltage 12.2 V (lowest)", worst.ToString(), StringComparison.Ordinal);

        // One point, and nothing that varies: it is that point.
        OperatingResult point = system.Solve(Wren.At(5000, 0.4));
        WorstCornerResult one = system.FindWorstCorner([Wren.Rpm(5000)], [Pressure.FromBars(0.4)], OperatingRanges.Around(Wren.Hill));
        Assert.Equal(1, one.PointsSolved);
        Assert.Equal(point.Mixture.Lambda!.Value, one.Leanest!.Result.Mixture.Lambda!.Value, 1e-12);
        Assert.Empty(one.Leanest.Inputs);
    }

    [Fact]
    public void Ranges_ThatCannotBe_AreRefused()
    {
        OperatingRanges ranges = OperatingRanges.Around(Wren.Hill);
        Assert.Throws<ArgumentOutOfRangeException>(() => ranges.WithAmbientPressure(Wren.Kpa(100), Wren.Kpa(95)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ranges.WithAmbientTemperature(Temperature.FromDegreesCelsius(-60), Temperature.FromDegreesCelsius(20)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ranges.WithSupplyVoltage(Wren.Volt(14), Wren.Volt(12)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ranges.WithSupplyVoltage(Wren.Volt(12), Wren.Volt(24)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ranges.WithFuelTemperature(Temperature.FromDegreesCelsius(20), Temperature.FromDegreesCelsius(90)));
        Assert.Throws<ArgumentOutOfRangeException>(() => ranges.WithEthanolContent(Wren.Percent(10), Wren.Percent(120)));

        FuelSystem methanol = Car(1).With(Wren.Demand(Wren.Petrol, Belt).With(Fuel.Methanol));
        ArgumentException refused = Assert.Throws<ArgumentException>(
            () => methanol.FindWorstCorner(Line, Wren.Rpm(3000), Wren.Rpm(6000), ranges.WithEthanolContent(Wren.Percent(0), Wren.Percent(10))));
        Assert.Contains("is no blend of ethanol with petrol", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Car(1).FindWorstCorner(Line, Wren.Rpm(6000), Wren.Rpm(3000), ranges));
        Assert.Throws<ArgumentOutOfRangeException>(() => Car(1).FindWorstCorner([], [Pressure.Zero], ranges));
    }

    private static Induction Belt { get; } = Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95));

    private static BoostLine Line { get; } = CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(0.4), Atmosphere.Standard);

    private static FuelSystem Car(double pump) => Wren.System(injector: 900, pump: pump).With(Wren.Demand(induction: Belt));

    private sealed class Tally
    {
        public int Inside { get; set; }

        public int Known { get; set; }

        public int Blends { get; set; }

        public long Solved { get; set; }

        public long Scanned { get; set; }
    }
}
