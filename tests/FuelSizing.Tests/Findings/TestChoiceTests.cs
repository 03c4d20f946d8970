using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;
using Comparison = FuelSizing.Findings.Comparison;

namespace FuelSizing.Tests.Findings;

/// <summary>Which measurements are proposed, against the table of the page and the definition of information, summed over both readings.</summary>
public class TestChoiceTests
{
    private static readonly (string Code, RunQuantity Quantity, double Deviation)[] Table =
    [
        ("next.rail-gauge", RunQuantity.RailSensor, 2e3), ("next.at-rest", RunQuantity.ManifoldSensor, 300), ("next.injector-flow", RunQuantity.InjectorFlow, 0.01),
        ("next.flow-meter", RunQuantity.InjectorFlow, 0.015), ("next.pump-flow", RunQuantity.PumpFlow, 0.02), ("next.voltage-drop", RunQuantity.FeedResistance, 0.005),
        ("next.filter-drop", RunQuantity.FilterLoss, 0.5), ("next.weigh", RunQuantity.FlowMeter, 0.005), ("next.base-gauge", RunQuantity.RegulatorBase, 2e3),
        ("next.gain-gauge", RunQuantity.RegulatorGain, 0.03), ("next.onset-gauge", RunQuantity.RegulatorOnset, 1e3),
    ];

    public static TheoryData<string> Kinds =>
        ["base or sensor", "base or sensor, seen at rest", "injectors or air", "gain a little off", "pump, wiring or filter", "fixed, no filter", "meter or injectors"];

    /// <summary>
    /// Each measurement on its own: it reads what the fit of each open fault has of it, as widely as the fit leaves it open and it errs itself; what of it takes 0.05 bits
    /// and more off what is open is proposed, the most first.
    /// </summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Tests_AreThoseThatTellMost(string kind)
    {
        (RunCheck check, RunModel model, Diagnosis diagnosis) = Diagnosed(kind);
        List<(double Weight, RunFit Fit)> open =
            [.. diagnosis.Suspects.Where(one => one.Probability >= 0.05).Select(one => (one.Probability, one.Fit ?? diagnosis.Sound))];
        if (diagnosis.NoFault >= 0.05)
        {
            open.Add((diagnosis.NoFault, diagnosis.Sound));
        }

        bool metered = model.Has(Comparison.Flow);
        bool onset = check.Plan.Regulator is RisingRate;
        string[] impossible =
        [
            model.Points.ManifoldAtRest is null ? "" : "next.at-rest", metered ? "next.flow-meter" : "next.weigh",
            .. onset ? (string[])[] : ["next.gain-gauge", "next.onset-gauge"], check.HasFilter ? "" : "next.filter-drop",
        ];
        double all = open.Sum(one => one.Weight);
        double[] weights = [.. open.Select(one => one.Weight / all)];
        List<(string Code, double Bits)> wanted =
        [
            .. from test in Table
               where !impossible.Contains(test.Code)
               select (test.Code, Bits(
                   weights,
                   [.. open.Select(one => one.Fit.Value(test.Quantity))],
                   [.. open.Select(one => Math.Sqrt(Math.Pow(one.Fit.Error(test.Quantity), 2) + (test.Deviation * test.Deviation)))])),
        ];

        // One more pull, 1.2 V lower, read at the point of the most fuel by a gauge of 2 kPa beside the sensor's own 2 kPa.
        int[] known = [.. Enumerable.Range(0, model.Inputs.Count).Where(i => double.IsFinite(model.Inputs[i].Flow) && double.IsFinite(model.Inputs[i].Rail))];
        int? hardest = known.Length == 0 ? null : known.MaxBy(i => model.Inputs[i].Flow);
        Assert.Equal(hardest, TestChoice.Hardest(model));
        if (hardest is { } point)
        {
            double volts = model.Inputs[point].Volts - 1.2;
            (double Mean, double Deviation)[] read = [.. open.Select(one =>
            {
                double mean = model.RailAt(point, one.Fit.Off, volts).Rail;
                Vector<double> slope = Vector<double>.Build.Dense(RunModel.Quantities, i =>
                {
                    double[] moved = [.. one.Fit.Off];
                    moved[i] += 0.1;
                    return i <= (int)RunQuantity.FlowMeter ? (model.RailAt(point, moved, volts).Rail - mean) / 0.1 : 0;
                });
                return (mean, Math.Sqrt((slope * one.Fit.Covariance * slope) + 8e6));
            })];
            wanted.Add(("next.lower-voltage", Bits(weights, [.. read.Select(one => one.Mean)], [.. read.Select(one => one.Deviation)])));
        }

        IReadOnlyList<NextTest> tests = TestChoice.Of(check, diagnosis);
        (string Code, double Bits)[] proposed = [.. wanted.Where(one => one.Bits > 0.051)];
        Assert.Equal(proposed.Select(one => one.Code).Order(), tests.Where(one => one.Information > 0.051).Select(one => one.What.Code).Order());
        Assert.Equal(tests.OrderByDescending(one => one.Information), tests);
        Assert.All(tests, test => Assert.Equal(wanted.Single(one => one.Code == test.What.Code).Bits, test.Information, 0.004));
        Assert.All(tests, test => Assert.True(test.Information >= 0.05));
        Assert.True(open.Count > 1 && proposed.Length > 0);
    }

    /// <summary>Of a run just as planned nothing is open, and nothing is proposed.</summary>
    [Fact]
    public void Tests_WhereNothingIsOpen_AreNone()
    {
        RunModel model = PulledWren.Check.Model(ExactRun.Of(PulledWren.Plan));
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None)!;
        Assert.All(diagnosis.Suspects, one => Assert.True(one.Probability < 0.05));
        Assert.Empty(TestChoice.Of(PulledWren.Check, diagnosis));
    }

    /// <summary>The point of the most fuel, of those at which rail and flow are known.</summary>
    [Fact]
    public void HardestPoint_IsThatOfTheMostFuel()
    {
        Cells row = new()
        {
            Speed = Wren.Rpm(4000),
            Manifold = PulledWren.Air.Pressure + Wren.Kpa(35),
            Rail = Wren.Kpa(365),
            Volts = Wren.Volt(13.5),
            Flow = VolumeFlow.FromLitersPerHour(50),
        };
        Cells[] rows = [row, row with { Flow = VolumeFlow.FromLitersPerHour(70) }, row with { Flow = VolumeFlow.FromLitersPerHour(90), Rail = null }, row with { Flow = null, Pulse = Wren.Ms(0.2) }];
        int? Hardest(params Cells[] cells) => TestChoice.Hardest(PulledWren.Check.Model(RecordedRun.Of("rows", PulledWren.Air, cells.Select((one, i) => one.Row(i + 1)))));
        Assert.Equal(1, Hardest(rows));
        Assert.Null(Hardest(rows[2], rows[3]));
        Assert.Equal(0, Hardest(rows[0], rows[3]));
    }

    private static (RunCheck Check, RunModel Model, Diagnosis Diagnosis) Diagnosed(string kind)
    {
        FuelSystem plan = PulledWren.Plan;
        RunCheck check = PulledWren.Check;
        RecordedRun sound = ExactRun.Of(plan);

        // Rows at which the regulator holds the rail, where a base that is low looks like a sensor that reads low.
        RecordedRun Low(RecordedRun of, double kilopascals) => Of(of.Rows.Take(20).Select(row => Cells.Of(row) with { Rail = row.RailGauge - Wren.Kpa(kilopascals), Pulse = null }));
        RecordedRun run;
        switch (kind)
        {
            case "base or sensor":
                run = Low(sound, 45);
                break;
            case "base or sensor, seen at rest":
                Cells rest = new() { Speed = RotationalSpeed.Zero, Manifold = PulledWren.Air.Pressure };
                run = Of([.. Enumerable.Range(1, 6).Select(i => rest with { Time = Duration.FromSeconds(i - 10) }), .. Low(sound, 45).Rows.Select(Cells.Of)]);
                break;
            case "injectors or air":
                run = ExactRun.Changed(ExactRun.Of(plan.With(plan.Injectors.Scaled(1.15))), (cells, _) => cells with { Flow = null, Power = null, Rail = null });
                break;
            case "gain a little off":
                run = ExactRun.Of(plan.With(RisingRate.From(Wren.Kpa(300), 3.19, Wren.Kpa(20))));
                break;
            case "fixed, no filter":
                check = RunCheck.Of(OddRunTests.Plan("fixed").With(FuelSizing.Circuits.Plumbing.None), Wren.Hill, discrepancy: ModelDiscrepancy.None);
                run = Low(ExactRun.Of(check.Plan), 45);
                break;
            case "meter or injectors":
                run = ExactRun.Changed(sound, (cells, _) => cells with { Flow = cells.Flow * 1.12, Lambda = null, Power = null, Rail = null });
                break;
            default:
                // The last two rows of one pull, where a pump of 84 % is the limit: at one flow a weak pump, its wiring and the filter look alike.
                run = Of(ExactRun.Of(plan.With(((FuelSizing.Pumps.Pump)plan.Pump).WithCondition(Ratio.FromPercent(0.84 * 90)))).Rows.Skip(30).Take(2).Select(Cells.Of));
                break;
        }

        RecordedRun Of(IEnumerable<Cells> rows) => RecordedRun.Of("rows", PulledWren.Air, rows.Select((one, i) => one.Row(i + 1)));
        RunModel model = check.Model(run);
        return (check, model, Diagnosis.Of(check, model, null, CancellationToken.None)!);
    }

    /// <summary>Mutual information of which is there and what is read, by the trapezoidal rule on its definition, each over nine deviations about its own reading.</summary>
    private static double Bits(double[] weights, double[] means, double[] deviations)
    {
        double bits = 0;
        const int Steps = 3000;
        for (int i = 0; i < weights.Length; i++)
        {
            double step = 18 * deviations[i] / Steps;
            for (int k = 0; k <= Steps; k++)
            {
                double y = means[i] + ((k - (Steps / 2)) * step);
                double own = Normal.PDF(means[i], deviations[i], y);
                double mixture = weights.Select((weight, j) => weight * Normal.PDF(means[j], deviations[j], y)).Sum();
                bits += own > 1e-300 ? weights[i] * own * Math.Log2(own / mixture) * step : 0;
            }
        }

        return bits;
    }
}
