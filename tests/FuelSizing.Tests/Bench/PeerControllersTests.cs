using System.Text.Json;
using FuelSizing.Bench;
using FuelSizing.Controllers;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Points;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// From the scale to lambda: injectors on benches that an independent program makes (<c>tests/peer/bench.py</c>, by <c>.ci/peer</c>) are weighed at two voltages, their figures typed into a controller,
/// and a car with the injectors as they were made is run. How often its fuel lies within the interval that the figures state.
/// </summary>
public class PeerControllersTests(ITestOutputHelper output)
{
    private static readonly string? Path = Environment.GetEnvironmentVariable("FUELSIZING_PEER_CONTROLLERS");

    private static readonly (double Rpm, double Boost)[] Points =
        [.. from rpm in new[] { 1200.0, 2500, 4500, 6500 } from boost in new[] { -70.0, -45, -20, 0, 30 } select (rpm, boost)];

    [Fact]
    public void Fuel_OverManyBenches_LiesWithinTheIntervalOfTheFigures()
    {
        if (Path is null)
        {
            return;
        }

        (int runs, int within, int shorter, int shorterWithin, int flows, int deadTimes, int benches) = (0, 0, 0, 0, 0, 0, 0);
        List<double> errors = [];
        FuelSystem car = MixtureCar.Car(ManifoldReferenced.From(Wren.Kpa(300)), MixtureCar.Ample);
        using JsonDocument made = JsonDocument.Parse(File.ReadAllText(Path));
        foreach (JsonElement pair in made.RootElement.EnumerateArray())
        {
            PulseFit[] fits = [Fit(pair.GetProperty("low"), 12), Fit(pair.GetProperty("running"), 13.5)];
            ControllerFigures Figures(params Duration[] pulses) => ControllerFigures.From(
                fits, Wren.Kpa(300), Wren.Kpa(600), car.Demand.Consumption.Fuel, Wren.Hill.FuelTemperature, [Wren.Kpa(300)], pulses: pulses);
            double Of(string bench, string name) => pair.GetProperty(bench).GetProperty(name).GetDouble();
            ControllerFigures figures = Figures(Wren.Ms(5));
            double flow = Of("running", "slope") / Math.Sqrt(683.8 * figures.FuelDensity.KilogramsPerCubicMeter);
            benches++;
            flows += flow >= figures.ReferenceFlow.MinimumFlow!.Value.CubicMetersPerSecond && flow <= figures.ReferenceFlow.MaximumFlow!.Value.CubicMetersPerSecond ? 1 : 0;
            deadTimes += figures.DeadTimes.Zip(["low", "running"], (time, bench) => Of(bench, "offset") >= time.Minimum!.Value.Seconds && Of(bench, "offset") <= time.Maximum!.Value.Seconds ? 1 : 0).Sum();

            Injector asMade = Injector.Of(
                "as it was made",
                VolumeFlow.FromCubicMetersPerSecond(Of("running", "slope") / 683.8),
                Wren.Kpa(300),
                TestFluid.Heptane,
                DeadTimeTable.ByVoltage((Wren.Volt(12), Duration.FromSeconds(Of("low", "offset"))), (Wren.Volt(13.5), Duration.FromSeconds(Of("running", "offset")))),
                Duration.FromSeconds(Of("running", "end")),
                Wren.Kpa(600));
            FuelSystem typed = car.With(InjectorSet.Of(asMade, 4)).With(SpeedDensityController.Of(figures.DataFor(TargetLambda.At(0.82)), Wren.VolumetricEfficiency, Wren.Kpa(300)));

            // The shortest and the longest pulse that this car commands and the bench holds.
            (DeliveredMixture Mixture, FuelErrorFigure Error)[] held =
            [
                .. Points.Select(point => typed.Solve(OperatingPoint.At(Wren.Rpm(point.Rpm), Wren.Kpa(point.Boost), Wren.Hill)).Mixture)
                    .Where(mixture => mixture is { IsHeldOpen: false, IsDutyLimited: false, CommandedPulse: not null })
                    .OrderBy(mixture => mixture.CommandedPulse!.Value)
                    .Select(mixture => (mixture, Figures(mixture.CommandedPulse!.Value).FuelErrors.Single()))
                    .Where(run => run.Item2.Minimum is not null),
            ];
            if (held.Length == 0)
            {
                continue;
            }

            bool Within((DeliveredMixture Mixture, FuelErrorFigure Error) run)
            {
                double error = (0.82 / run.Mixture.Lambda!.Value) - 1;
                errors.Add(Math.Abs(error));
                return error >= run.Error.Minimum!.Value.DecimalFractions && error <= run.Error.Maximum!.Value.DecimalFractions;
            }

            (runs, within) = (runs + 1, within + (Within(held[^1]) ? 1 : 0));
            (shorter, shorterWithin) = (shorter + 1, shorterWithin + (Within(held[0]) ? 1 : 0));
        }

        errors.Sort();
        output.WriteLine(FormattableString.Invariant(
            $"{benches} benches: flow {flows / (double)benches:P2}, dead times {deadTimes / (2.0 * benches):P2}; {runs} cars: fuel at the longest pulse {within / (double)runs:P2}, at the shortest {shorterWithin / (double)shorter:P2} within the interval; 95 % of errors under {errors[(int)(0.95 * errors.Count)]:P2}, largest {errors[^1]:P2}"));
        Assert.True(runs > 0.9 * benches);

        // 93 to 97 % of 2,000; of fewer as much more as their counting error is wider.
        double room = 0.02 * Math.Sqrt(Math.Max(1, 2000.0 / runs));
        Assert.All(
            new[] { within / (double)runs, shorterWithin / (double)shorter, flows / (double)benches, deadTimes / (2.0 * benches) }, share => Assert.InRange(share, 0.95 - room, 0.95 + room));
    }

    private static PulseFit Fit(JsonElement bench, double volts) => PulseFit.Of(PulseTest.Of(
        "bench",
        TestFluid.Heptane,
        Wren.Kpa(300),
        Wren.Volt(volts),
        Mass.FromKilograms(bench.GetProperty("scale").GetDouble()),
        Ratio.FromDecimalFractions(bench.GetProperty("calibration").GetDouble()),
        [
            .. bench.GetProperty("readings").EnumerateArray().Select(reading => PulseReading.Of(
                Duration.FromSeconds(reading[0].GetDouble()), reading[1].GetInt32(), Mass.FromKilograms(reading[2].GetDouble()))),
        ]));
}
