using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Uncertainty.UncertainWren;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>A system judged along a boost line, nothing of it drawn: every figure is the worst of the places, which are solved here one by one.</summary>
public class JudgedAlongALineTests
{
    private static readonly RotationalSpeed Slowest = Wren.Rpm(2500);
    private static readonly RotationalSpeed Fastest = Wren.Rpm(6400);
    private static readonly HeldBoost Held = HeldBoost.Of(Wren.Kpa(60), Wren.Rpm(3300), Wren.Rpm(6900), Wren.Rpm(2000));
    private static readonly UncertainInput Fixed = UncertainInput.InjectorFlowFactor(Distribution.Fixed(Fraction(1)));

    /// <summary>
    /// A car that holds everywhere; injectors too small at speed; a pump too small; a mixture judged over 30 kPa only, and one that is judged nowhere; a battery
    /// under the dead-time table, of which no duty cycle can be said; a pump whose data ends at 340 kPa, on the way.
    /// </summary>
    [Theory]
    [InlineData(700, 1.6, 0, 13.5, Outcome.Holds)]
    [InlineData(430, 1.6, 0, 13.5, Outcome.Fails)]
    [InlineData(700, 0.6, 0, 13.5, Outcome.Fails)]
    [InlineData(700, 1.6, 30, 13.5, Outcome.Holds)]
    [InlineData(700, 1.6, 90, 13.5, Outcome.Holds)]
    [InlineData(700, 1.6, 0, 7.5, Outcome.CannotSay)]
    [InlineData(700, 0, 0, 13.5, Outcome.CannotSay)]
    public void Result_WithNothingDrawn_IsTheWorstOfThePlaces(double injector, double pump, double judgedOver, double volts, Outcome expected)
    {
        FuelSystem car = Built(injector, pump, judgedOver);
        Conditions day = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(volts), Wren.Hill.FuelTemperature);
        UncertainSystem system = UncertainSystem.Along(car, Held, Slowest, Fastest, day, Fixed);
        OperatingResult[] places = [.. system.NominalResults];
        MonteCarloResult result = system.MonteCarlo(Sampling.Of(16));

        // Each place is the system's own solution there.
        foreach (OperatingResult place in places)
        {
            OperatingResult alone = car.Solve(OperatingPoint.At(place.Point.Speed, Held.At(place.Point.Speed, car.Demand, day.Atmosphere), day));
            Assert.Equal(alone.Demand.KilogramsPerSecond, place.Demand.KilogramsPerSecond, 12);
            Assert.Equal(alone.RailGauge.Pascals, place.RailGauge.Pascals, 3);
        }

        Assert.Equal(16, result.FuelFlow.Known);
        Assert.Equal(places.Max(place => place.Demand.KilogramsPerSecond), result.FuelFlow.Sorted[0].KilogramsPerSecond, 12);
        Same(Worst(place => place.DutyCycle?.DecimalFractions, high: true), result.DutyCycle);
        Same(Worst(place => place.Margins.Any(margin => margin.Outcome == Outcome.CannotSay) ? null : place.Margins.Min(margin => margin.Reserve?.DecimalFractions), high: false), result.MinimumReserve);
        bool isCovered = places.All(place => place.RailState != RailState.NotCovered);
        Assert.Equal(isCovered ? 16 : 0, result.RailGauge.Known);
        Assert.Equal(isCovered ? places.Max(place => place.RailGauge.Pascals) : 0, isCovered ? result.RailGauge.Sorted[^1].Pascals : 0, 3);
        if (places.All(place => place.Mixture.Lambda is not null))
        {
            Assert.Equal(places.Max(place => place.Mixture.Lambda!.Value), result.Injectors.LeanestLambda.Sorted[0], 9);
            Assert.Equal(places.Min(place => place.Mixture.Lambda!.Value), result.Injectors.RichestLambda.Sorted[0], 9);
            Assert.Equal(places.Select(place => place.Mixture.Lambda!.Value), result.Mixture.Select(place => place.Lambda.Sorted[^1]));
        }

        Same(Worst(place => place.DutyCycle?.DecimalFractions, high: true), result.Injectors.MaximumDutyCycle);
        Assert.Equal(places.Select(place => place.Point), result.Mixture.Select(place => place.Point));

        Assert.Equal(places[0].Margins.Select(margin => margin.Part), result.Parts.Select(part => part.Part));
        for (int part = 0; part < result.Parts.Count; part++)
        {
            Margin[] margins = [.. places.Select(place => place.Margins[part])];
            Outcome worst = margins.Any(margin => margin.Outcome == Outcome.Fails) ? Outcome.Fails
                : margins.Any(margin => margin.Outcome == Outcome.CannotSay) ? Outcome.CannotSay : Outcome.Holds;
            Chance chance = result.Parts[part].Chance;
            Assert.Equal(
                (worst == Outcome.Holds ? 16 : 0, worst == Outcome.CannotSay ? 16 : 0, worst == Outcome.Fails ? 16 : 0),
                (chance.Holding, chance.CannotSay, chance.Failing));
            double? least = margins.Any(margin => margin is { Outcome: not Outcome.Holds, Reserve: null }) ? null : margins.Min(margin => margin.Reserve?.DecimalFractions);
            Same(least, result.Parts[part].Reserve);
        }

        Assert.Equal(expected == Outcome.Holds ? 16 : 0, result.All.Holding);
        Assert.Equal(expected == Outcome.Fails ? 16 : 0, result.All.Failing);

        double? Worst(Func<OperatingResult, double?> figure, bool high)
        {
            double?[] figures = [.. places.Select(figure)];
            return figures.Contains(null) ? null : high ? figures.Max() : figures.Min();
        }

        static void Same(double? expected, OutputSpread<Ratio> actual)
        {
            Assert.Equal(expected is null ? 0 : 16, actual.Known);
            if (expected is { } known)
            {
                Assert.Equal(known, actual.Sorted[0].DecimalFractions, 9);
                Assert.Equal(known, actual.Sorted[^1].DecimalFractions, 9);
            }
        }
    }

    /// <summary>25 speeds evenly spaced, both ends among them, and where the engine's tables bend; rising.</summary>
    [Fact]
    public void Places_OfALine_AreEvenSpeedsAndKinks()
    {
        UncertainSystem system = UncertainSystem.Along(Built(700, 1.6), Held, Slowest, Fastest, Wren.Hill, Fixed);
        double[] speeds = [.. system.NominalResults.Select(result => Math.Round(result.Point.Speed.RevolutionsPerMinute, 6))];
        Assert.Equal(2500, speeds[0]);
        Assert.Equal(6400, speeds[^1]);
        Assert.Equal(speeds.Distinct().Order(), speeds);
        Assert.Empty(Enumerable.Range(0, 25).Select(step => 2500 + (162.5 * step)).Except(speeds));
        Assert.Empty(new double[] { 3300, 3500, 5000, 6000, 6200 }.Except(speeds));
        Assert.InRange(speeds.Length, 30, 50);
        Assert.Same(Held, system.Line);
        Assert.Equal("along the boost line from 2,500 rev/min to 6,400 rev/min", system.Where.ToString());
        Assert.Equal("1 uncertain inputs along the boost line from 2,500 rev/min to 6,400 rev/min", system.ToString());
    }

    /// <summary>The place of a line is the one that is most urgent: where something fails, and by how much; else the smallest margin.</summary>
    [Theory]
    [InlineData(700)]
    [InlineData(430)]
    public void Point_OfALine_IsWhereTheNominalMarginIsTightest(double injector)
    {
        UncertainSystem system = UncertainSystem.Along(Built(injector, 1.6), Held, Slowest, Fastest, Wren.Hill, Fixed);
        Margin Tightest(OperatingResult result) => result.Margins.OrderBy(margin => margin.Outcome == Outcome.Fails ? 0 : 1)
            .ThenBy(margin => margin.Reserve?.DecimalFractions ?? double.PositiveInfinity).First();
        OperatingResult tightest = system.NominalResults.OrderBy(result => Tightest(result).Outcome == Outcome.Fails ? 0 : 1)
            .ThenBy(result => Tightest(result).Reserve!.Value.DecimalFractions).First();
        Assert.Equal(tightest.Point, system.Point);
        Assert.Equal(tightest.Point, system.NominalResult.Point);
        Assert.NotEqual(system.NominalResults[0].Point, system.Point);
    }

    [Fact]
    public void Line_WithoutWhatItNeeds_IsRefused()
    {
        FuelSystem car = Built(700, 1.6);
        Refused.Missing("nominal", () => UncertainSystem.Along(null!, Held, Slowest, Fastest, Wren.Hill, Fixed));
        Refused.Missing("line", () => UncertainSystem.Along(car, null!, Slowest, Fastest, Wren.Hill, Fixed));
        Refused.Missing("inputs", () => UncertainSystem.Along(car, Held, Slowest, Fastest, Wren.Hill, (UncertainInput[])null!));
        Refused.Missing("inputs", () => UncertainSystem.Along(car, Held, Slowest, Fastest, Wren.Hill, [null!]));
        Refused.Missing("nominal", () => UncertainSystem.Of(null!, Point, Fixed));
        Refused.Missing("point", () => UncertainSystem.Of(car, null!, Fixed));
        Assert.ThrowsAny<ArgumentException>(() => UncertainSystem.Along(car, Dunnock.Centrifugal, Slowest, Fastest, Wren.Hill, Fixed));
        Assert.Equal(
            Conditions.Default, UncertainSystem.Along(car, Held, Slowest, Fastest, null, Fixed).Point.Conditions);
    }

    /// <summary>Over a boost the mixture is judged, of pulses that are recorded along the line itself; at zero there is no such limit.</summary>
    private static FuelSystem Built(double injector, double pump, double judgedOver = 0)
    {
        SizingLimits limits = SizingLimits.Of(Wren.Percent(85), Wren.Percent(10), Wren.Kpa(500));
        FuelSystem plain = FuelSystem.Return(
            Wren.Demand(),
            InjectorSet.Of(Wren.InjectorOf(injector), 4),
            ManifoldReferenced.From(Wren.Kpa(300)),
            Pump.From(pump > 0
                ? Wren.PumpOf(pump)
                : PumpCurve.At("short", Wren.Volt(13.5), (Wren.Kpa(200), VolumeFlow.FromLitersPerHour(420)), (Wren.Kpa(340), VolumeFlow.FromLitersPerHour(390)))),
            judgedOver > 0 ? limits.With(MixtureLimits.Of(0.9, Wren.Kpa(judgedOver))) : limits);
        double[] recorded = [2000, 2500, 3300, 3500, 4200, 5000, 5600, 6000, 6400, 6900];
        return judgedOver > 0
            ? plain.With(RecordedPulseController.BySpeed([.. recorded.Select(rpm => (
                Wren.Rpm(rpm),
                plain.Solve(OperatingPoint.At(Wren.Rpm(rpm), Held.At(Wren.Rpm(rpm), plain.Demand, Wren.Hill.Atmosphere), Wren.Hill)).Mixture.CommandedPulse!.Value))]))
            : plain;
    }
}
