using System.Text.Json;
using FuelSizing.Bench;
using FuelSizing.Injectors;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// Injectors on benches that an independent program makes (<c>tests/peer/bench.py</c>, by <c>.ci/peer</c>), whose scale, clock and temperature err: how often the intervals of
/// 95 % hold what was put in, and how near the end of the linear flow range is found.
/// </summary>
public class PeerBenchesTests(ITestOutputHelper output)
{
    private static readonly string? Path = Environment.GetEnvironmentVariable("FUELSIZING_PEER_BENCHES");

    [Fact]
    public void Intervals_OverManyBenches_HoldWhatWasPutIn()
    {
        if (Path is null)
        {
            return;
        }

        (int benches, int slopes, int offsets, int ends) = (0, 0, 0, 0);
        using JsonDocument made = JsonDocument.Parse(File.ReadAllText(Path));
        foreach (JsonElement bench in made.RootElement.EnumerateArray())
        {
            double Number(string name) => bench.GetProperty(name).GetDouble();
            PulseTest test = PulseTest.Of(
                "bench",
                TestFluid.Heptane,
                Wren.Kpa(300),
                Wren.Volt(13.5),
                Mass.FromKilograms(Number("scale")),
                Ratio.FromDecimalFractions(Number("calibration")),
                [
                    .. bench.GetProperty("readings").EnumerateArray().Select(reading => PulseReading.Of(
                        Duration.FromSeconds(reading[0].GetDouble()), reading[1].GetInt32(), Mass.FromKilograms(reading[2].GetDouble()))),
                ]);
            PulseFit fit = PulseFit.Of(test);
            double slope = Number("slope") / 683.8;
            benches++;
            slopes += slope >= fit.MinimumSlope.CubicMetersPerSecond && slope <= fit.MaximumSlope.CubicMetersPerSecond ? 1 : 0;
            offsets += Number("offset") >= fit.MinimumTimeOffset?.Seconds && Number("offset") <= fit.MaximumTimeOffset?.Seconds ? 1 : 0;

            // The true end lies between the shortest width that is linear and the next shorter one, or within a step of either.
            double[] widths = [.. fit.Widths.Select(width => width.Pulse.Seconds)];
            int found = fit.LinearFrom is { } from ? Array.IndexOf(widths, from.Seconds) : widths.Length;
            int right = Array.FindIndex(widths, width => width >= Number("end"));
            ends += Math.Abs(found - right) <= 1 ? 1 : 0;
        }

        output.WriteLine(FormattableString.Invariant($"{benches} benches: slope {slopes / (double)benches:P2}, offset {offsets / (double)benches:P2}, end within a step {ends / (double)benches:P2}"));
        Assert.True(benches > 0);

        // 93 to 97 % of 2,000; of fewer as much more as their counting error is wider.
        double room = 0.02 * Math.Sqrt(Math.Max(1, 2000.0 / benches));
        Assert.InRange(slopes / (double)benches, 0.95 - room, 0.95 + room);
        Assert.InRange(offsets / (double)benches, 0.95 - room, 0.95 + room);
        Assert.Equal(benches, ends);
    }

    [Fact]
    public void Intervals_OfInjectorsHeldOpen_HoldWhatWasPutIn()
    {
        if (Path is null)
        {
            return;
        }

        (int benches, int flows) = (0, 0);
        using JsonDocument made = JsonDocument.Parse(File.ReadAllText(Path));
        foreach (JsonElement bench in made.RootElement.EnumerateArray().Select(one => one.GetProperty("held_open")))
        {
            double Number(string name) => bench.GetProperty(name).GetDouble();
            bool byMass = bench.GetProperty("by_mass").GetBoolean();
            TestFluid fluid = TestFluid.Of("liquid", Density.FromKilogramsPerCubicMeter(Number("density")));
            StaticReading[] readings =
            [
                .. bench.GetProperty("readings").EnumerateArray().Select(reading => byMass
                    ? StaticReading.ByMass(Duration.FromSeconds(reading[0].GetDouble()), Mass.FromKilograms(reading[1].GetDouble()))
                    : StaticReading.ByVolume(Duration.FromSeconds(reading[0].GetDouble()), Volume.FromCubicMeters(reading[1].GetDouble()))),
            ];
            (Duration clock, Ratio calibration) = (Duration.FromSeconds(Number("clock")), Ratio.FromDecimalFractions(Number("calibration")));
            StaticFlow flow = StaticFlow.Of(byMass
                ? StaticTest.ByMass("bench", fluid, Wren.Kpa(300), Mass.FromKilograms(Number("scale")), clock, calibration, readings)
                : StaticTest.ByVolume("bench", fluid, Wren.Kpa(300), Volume.FromCubicMeters(Number("scale")), clock, calibration, readings));
            benches++;
            flows += Number("flow") >= flow.Minimum.CubicMetersPerSecond && Number("flow") <= flow.Maximum.CubicMetersPerSecond ? 1 : 0;
        }

        output.WriteLine(FormattableString.Invariant($"{benches} injectors held open: static flow {flows / (double)benches:P2}"));
        Assert.True(benches > 0);
        double room = 0.02 * Math.Sqrt(Math.Max(1, 2000.0 / benches));
        Assert.InRange(flows / (double)benches, 0.95 - room, 0.95 + room);
    }
}
