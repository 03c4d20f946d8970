using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Sizing;

/// <summary>The fitted rising-rate unit of random cars is beaten by none of a dense grid of base, gain and onset.</summary>
public class FitGridTests(ITestOutputHelper output)
{
    private static readonly RotationalSpeed[] Speeds = [.. Enumerable.Range(0, 4).Select(at => Wren.Rpm(2700 + (at * 1150)))];

    private static readonly Gen<(FuelSystem System, BoostLine Line)> Any = Gen.Select(
        Gen.Double[0.25, 0.6], Gen.Double[300, 520], Gen.Double[1.6, 3], Gen.Double[0.82, 1.1], Gen.Double[0.9, 1.08]).Select(
            (boost, injector, pump, rich, shape) =>
            {
                FuelSystem system = FuelSystem.Return(
                    Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(66), Wren.Percent(60), Wren.Kpa(4), Wren.Percent(95))),
                    InjectorSet.Of(
                        Injector.Of(
                            "injector K",
                            VolumeFlow.FromMillilitersPerMinute(injector),
                            Wren.Kpa(300),
                            TestFluid.Heptane,
                            DeadTimeTable.Of(
                                [Wren.Volt(11), Wren.Volt(14)],
                                [Wren.Kpa(50), Wren.Kpa(400), Wren.Kpa(1600)],
                                [[Wren.Ms(1.1), Wren.Ms(0.72)], [Wren.Ms(1.39), Wren.Ms(0.88)], [Wren.Ms(2.5), Wren.Ms(1.42)]]),
                            Wren.Ms(1.5),
                            Wren.Kpa(1500)),
                        4),
                    RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero),
                    PumpSeries.Of(SeriesBypass.CheckValve, Pump.From(CurveOf(pump)), Pump.From(CurveOf(pump))),
                    SizingLimits.Of(Wren.Percent(95), Wren.Percent(5)));

                // Pulses that give about the target without boost, higher or lower along the speed.
                return (
                    system.With(RecordedPulseController.BySpeed(
                    [
                        .. Enumerable.Range(0, 12).Select(at => Wren.Rpm(1000 + (at * 520))).Select((speed, at) =>
                            system.Solve(OperatingPoint.At(speed, Pressure.Zero, Wren.Hill)) is var rest
                                ? (speed, Duration.FromSeconds(rest.DeadTime!.Value.Seconds
                                    + ((rest.Pulse!.Value.Seconds - rest.DeadTime!.Value.Seconds) * rich * (at % 2 == 0 ? shape : 1 / shape))))
                                : default),
                    ])),
                    (BoostLine)CentrifugalBoost.From(8.3, Wren.Rpm(6000), Pressure.FromBars(boost), Atmosphere.Standard));
            });

    [Fact]
    public void Fit_OfRandomCars_IsBeatenByNoneOfADenseGrid()
    {
        int cars = Environment.GetEnvironmentVariable("FUELSIZING_WHAT_IFS") is { Length: > 0 } more
            ? Math.Min(30, int.Parse(more, System.Globalization.CultureInfo.InvariantCulture))
            : 1;
        int served = 0;
        Any.Sample(
            car => Interlocked.Add(ref served, IsBeatenByNone(car.System, car.Line) ? 1 : 0),
            iter: cars);
        output.WriteLine($"{served} of {cars} cars have a unit that serves");
        Assert.True(served >= cars / 2, $"{served} of {cars} have a unit that serves");
    }

    /// <summary>A narrow valley of base and onset, across the directions of both: a search that keeps to these stops half-way.</summary>
    [Fact]
    public void Fit_AlongANarrowValley_IsFollowedToItsEnd() =>
        Any.Sample(car => Assert.True(IsBeatenByNone(car.System, car.Line)), seed: "ccqc-ifn_6H1");

    private static bool IsBeatenByNone(FuelSystem unfitted, BoostLine line)
    {
        RisingRateFit fit = MixtureSizing.FitRisingRate(
            unfitted, line, Speeds, Wren.Hill, RisingRateBounds.Of(Wren.Kpa(260), Wren.Kpa(340), maximumOnset: Wren.Kpa(20)));
        double best = double.PositiveInfinity;
        for (int place = 0; place < 5 * 5 * 36; place++)
        {
            FuelSystem system = unfitted.With(RisingRate.From(
                Wren.Kpa(260 + (20 * (place % 5))), 1 + (0.4 * (place / 25)), Wren.Kpa(5 * (place / 5 % 5))));
            OperatingResult[] results = [.. Speeds.Select(speed => system.Solve(OperatingPoint.At(speed, line.At(speed, system.Demand, Wren.Hill.Atmosphere), Wren.Hill)))];
            if (results.All(result => result.Margins.All(margin => margin.Outcome == Outcome.Holds)))
            {
                best = Math.Min(best, results.Max(result => Math.Abs((result.Mixture.Lambda!.Value / 0.82) - 1)));
            }
        }

        Assert.True(fit.Serves || double.IsInfinity(best), $"{fit}: the grid has {best}");
        Assert.True(!fit.Serves || fit.LargestDeviation!.Value.DecimalFractions <= best + 1e-6, $"{fit}: the grid has {best}: {unfitted}");
        return fit.Serves;
    }

    private static PumpCurve CurveOf(double scale) => PumpCurve.At(
        "pump T",
        Wren.Volt(13.5),
        (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(219 * scale)),
        (Wren.Kpa(400), VolumeFlow.FromLitersPerHour(161 * scale)),
        (Wren.Kpa(800), VolumeFlow.FromLitersPerHour(92 * scale)),
        (Wren.Kpa(1200), VolumeFlow.Zero));
}
