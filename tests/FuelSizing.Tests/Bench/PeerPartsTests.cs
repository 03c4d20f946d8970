using System.Text.Json;
using FuelSizing.Bench;
using FuelSizing.Injectors;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// Pumps, wiring, regulators and engines on benches that an independent program makes (<c>tests/peer/bench_parts.py</c>, by <c>.ci/peer</c>), whose instruments err: how often the
/// intervals of 95 % hold what was put in.
/// </summary>
public class PeerPartsTests(ITestOutputHelper output)
{
    private static readonly string? Path = Environment.GetEnvironmentVariable("FUELSIZING_PEER_PARTS");

    [Fact]
    public void PumpFlows_OverManyBenches_AreWithinTheirIntervals()
    {
        int points = 0;
        int held = 0;
        int[] ends = [0, 0];
        int benches = Each("pumps", bench =>
        {
            double Number(string name) => bench.GetProperty(name).GetDouble();
            PumpFlowFit fit = PumpFlowFit.Of(PumpFlowTest.Weighed(
                "bench",
                TestFluid.Heptane,
                Mass.FromKilograms(Number("scale")),
                Duration.FromSeconds(Number("clock")),
                GaugeAccuracy.Of(Pressure.FromPascals(Number("setting")), Pressure.FromPascals(Number("zero")), Ratio.FromDecimalFractions(Number("span"))),
                Ratio.FromDecimalFractions(Number("thermal")),
                Ratio.FromDecimalFractions(Number("calibration")),
                [
                    .. bench.GetProperty("readings").EnumerateArray().Select(reading => PumpFlowReading.OfMass(
                        Pressure.FromPascals(reading[0].GetDouble()), Wren.Volt(reading[1].GetDouble()), Mass.FromKilograms(reading[2].GetDouble()), Duration.FromSeconds(reading[3].GetDouble()))),
                ]));
            foreach (JsonElement point in bench.GetProperty("points").EnumerateArray())
            {
                PumpFlowPoint found = fit.Points.Single(one => Math.Abs(one.PressureRise.Pascals - point[0].GetDouble()) < 1 && Math.Abs(one.Voltage.Volts - point[1].GetDouble()) < 1e-3);
                double flow = point[2].GetDouble();
                points++;
                held += flow >= found.MinimumFlow.CubicMetersPerSecond && flow <= found.MaximumFlow.CubicMetersPerSecond ? 1 : 0;
                ends[0] += flow < found.MinimumFlow.CubicMetersPerSecond ? 1 : 0;
                ends[1] += flow > found.MaximumFlow.CubicMetersPerSecond ? 1 : 0;
            }
        });
        output.WriteLine(FormattableString.Invariant($"pump: {ends[0] / (double)points:P2} under, {ends[1] / (double)points:P2} over"));
        Held("pump flow", held, points, benches);
    }

    [Fact]
    public void Resistances_OverManyBenches_AreWithinTheirIntervals()
    {
        int held = 0;
        int benches = Each("wirings", bench =>
        {
            double Number(string name) => bench.GetProperty(name).GetDouble();
            VoltageDropFit fit = VoltageDropFit.Of(VoltageDropTest.Of(
                "bench",
                Wren.Volt(Number("meter")),
                Wren.Volt(Number("offset")),
                ElectricCurrent.FromAmperes(Number("ammeter")),
                Ratio.FromDecimalFractions(Number("calibration")),
                [
                    .. bench.GetProperty("readings").EnumerateArray().Select(reading => VoltageDropReading.Of(
                        ElectricCurrent.FromAmperes(reading[0].GetDouble()), Wren.Volt(reading[1].GetDouble()))),
                ]));
            held += Number("ohms") >= fit.MinimumResistance.Ohms && Number("ohms") <= fit.MaximumResistance.Ohms ? 1 : 0;
        });
        Held("resistance", held, benches, benches);
    }

    [Fact]
    public void Regulators_OverManyBenches_AreWithinTheirIntervals()
    {
        (int bases, int gains, int onsets, int slopes, int withFlow, int described, int outliers) = (0, 0, 0, 0, 0, 0, 0);
        int benches = Each("regulators", bench =>
        {
            double Number(string name) => bench.GetProperty(name).GetDouble();
            GaugeAccuracy Gauge(string name)
            {
                double[] off = [.. bench.GetProperty(name).EnumerateArray().Select(one => one.GetDouble())];
                return GaugeAccuracy.Of(Pressure.FromPascals(off[0]), Pressure.FromPascals(off[1]), Ratio.FromDecimalFractions(off[2]));
            }

            RegulatorTestFit fit = RegulatorTestFit.Of(RegulatorTest.Of(
                "bench",
                bench.GetProperty("follows").GetBoolean(),
                Gauge("rail"),
                Gauge("applied"),
                [
                    .. bench.GetProperty("readings").EnumerateArray().Select(reading => RegulatorGaugeReading.Of(
                        Pressure.FromPascals(reading[0].GetDouble()),
                        Pressure.FromPascals(reading[1].GetDouble()),
                        reading.GetArrayLength() > 2 ? VolumeFlow.FromCubicMetersPerSecond(reading[2].GetDouble()) : null)),
                ]));
            bases += Within(Number("base"), fit.MinimumBase?.Pascals, fit.MaximumBase?.Pascals);
            gains += Within(Number("gain"), fit.MinimumGain, fit.MaximumGain);
            onsets += fit.Onset is null ? 0 : Within(Number("onset"), fit.MinimumOnset?.Pascals, fit.MaximumOnset?.Pascals);
            described += fit.Regulator is null ? 0 : 1;
            outliers += fit.Outliers.Count > 0 ? 1 : 0;
            if (fit.FlowRise is not null)
            {
                double step = RegulatorTestFit.FlowStep.CubicMetersPerSecond;
                withFlow++;
                slopes += Within(Number("slope") * step, fit.MinimumFlowRise?.Pascals, fit.MaximumFlowRise?.Pascals);
            }
        });
        output.WriteLine(FormattableString.Invariant($"described {described / (double)benches:P2}, with outliers {outliers / (double)benches:P2}"));
        Held("base", bases, benches, benches);
        Held("gain", gains, benches, benches);
        Held("onset", onsets, benches, benches);
        Held("slope with flow", slopes, withFlow, withFlow);
    }

    [Fact]
    public void Consumptions_OverManyBenches_AreWithinTheirIntervals()
    {
        int held = 0;
        int benches = Each("engines", bench =>
        {
            double Number(string name) => bench.GetProperty(name).GetDouble();
            ConsumptionFit fit = ConsumptionFit.Of(ConsumptionTest.Of(
                "bench",
                Mass.FromKilograms(Number("scale")),
                Duration.FromSeconds(Number("clock")),
                Ratio.FromDecimalFractions(Number("power")),
                Ratio.FromDecimalFractions(Number("calibration")),
                [
                    .. bench.GetProperty("readings").EnumerateArray().Select(reading => ConsumptionReading.Of(
                        Mass.FromKilograms(reading[0].GetDouble()), Mass.FromKilograms(reading[1].GetDouble()), Duration.FromSeconds(reading[2].GetDouble()), Power.FromWatts(reading[3].GetDouble()))),
                ]));
            held += Within(Number("consumption"), fit.Minimum.KilogramsPerJoule, fit.Maximum.KilogramsPerJoule);
        });
        Held("consumption", held, benches, benches);
    }

    private static int Within(double value, double? minimum, double? maximum) => value < minimum || value > maximum ? 0 : 1;

    private static int Each(string part, Action<JsonElement> look)
    {
        if (Path is null)
        {
            return 0;
        }

        using JsonDocument made = JsonDocument.Parse(File.ReadAllText(Path));
        int benches = 0;
        foreach (JsonElement bench in made.RootElement.GetProperty(part).EnumerateArray())
        {
            look(bench);
            benches++;
        }

        Assert.True(benches > 0);
        return benches;
    }

    // 93 to 97 % of 2,000; of fewer as much more as their counting error is wider.
    private void Held(string figure, int held, int of, int benches)
    {
        if (of == 0)
        {
            return;
        }

        output.WriteLine(FormattableString.Invariant($"{figure}: {held / (double)of:P2} of {of}"));
        double room = 0.02 * Math.Sqrt(Math.Max(1, 2000.0 / benches));
        Assert.InRange(held / (double)of, 0.95 - room, 0.95 + room);
    }
}
