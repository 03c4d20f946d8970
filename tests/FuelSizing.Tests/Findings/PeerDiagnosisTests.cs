using System.Collections.Concurrent;
using System.Text.Json;
using FuelSizing.Findings;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Systems;
using MathNet.Numerics.Distributions;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// What is named on runs that an independent program drives (<c>tests/peer/runs.py</c>, by <c>.ci/peer</c>): cars, controllers, circuits, sensors and clocks
/// of its own, with everything off that the plan does not know. A folder for each kind of run; the page shows a thousand of each.
/// </summary>
public class PeerDiagnosisTests(ITestOutputHelper output)
{
    /// <summary>So many of a kind are all of them; fewer may differ by what counting scatters.</summary>
    private const int All = 1000;

    private static readonly string[] Nuisances = ["ve_boost", "ve_speed", "charge", "slope", "lambda_delay", "filters", "clock", "density", "all"];

    /// <summary>Faults of the supply, of which a run may not be able to tell one from another.</summary>
    private static readonly string[] Faults =
    [
        "weak_pump", "voltage_drop", "clogged_filter", "wrong_base", "wrong_gain", "wrong_onset", "wrong_injectors", "rail_sensor", "manifold_sensor",
        "flow_meter", "air",
    ];

    private static readonly string? Folder = Environment.GetEnvironmentVariable("FUELSIZING_PEER_DIAGNOSED");

    private static readonly Lazy<IReadOnlyDictionary<string, Diagnosed[]>> Kinds = new(Read);

    /// <summary>Each of what the plan does not know, and all together, drawn from its prior: a sound part is accused in two of a hundred at the most.</summary>
    [Fact]
    public void SoundCars_AreAccusedInTwoOfAHundredAtTheMaximum()
    {
        foreach (string kind in Nuisances)
        {
            Share(kind, runs => runs.Count(run => run.IsAccused), 0, 0.02);
        }
    }

    /// <summary>One at twice its deviation: five of a hundred. All drawn twice as wide: never with a probability over 90 %.</summary>
    [Fact]
    public void SoundCars_WithTwiceAsMuchOff_AreHardlyEverAccused()
    {
        foreach (string kind in Nuisances.Where(kind => kind != "all"))
        {
            Share(kind + "-twice", runs => runs.Count(run => run.IsAccused), 0, 0.05);
        }

        Share("all-twice", runs => runs.Count(run => run.IsAccused && run.Probability(run.Named[0]) > 0.9), 0, 0);
    }

    /// <summary>
    /// A fault of the page's size with all of that off: among the named in 95 of 100, with at most three named in 90; alone in first place in 70 where the page
    /// says that it can be told apart.
    /// </summary>
    [Fact]
    public void Fault_OfThePagesSize_IsNamed()
    {
        foreach (string kind in Faults)
        {
            Share(kind, runs => runs.Count(run => run.Named.Contains(run.True[0])), 0.95, 1);
            Share(kind, runs => runs.Count(run => run.Named.Count <= 3), 0.9, 1);
            if (kind != "clogged_filter")
            {
                Share(kind, runs => runs.Count(run => run.Named.Count == 1 && run.Named[0] == run.True[0]), 0.7, 1);
            }
        }
    }

    /// <summary>Two at once: no part that is not one of them is named by itself with a probability over 90 %.</summary>
    [Fact]
    public void TwoFaults_NameNoOtherPartForSure() =>
        Share("two", runs => runs.Count(run => run.Named.Count == 1 && !run.True.Contains(run.Named[0]) && run.Probability(run.Named[0]) > 0.9), 0, 0.02);

    /// <summary>Of all faults that are said to be there with a probability, so many are.</summary>
    [Fact]
    public void Probabilities_AreWhatIsThere()
    {
        foreach ((double from, double to, double stated, double counted, double error, int count) in Bins())
        {
            output.WriteLine(FormattableString.Invariant($"{from:0.00} to {to:0.00}: {stated:0.000} stated, {counted:0.000} counted, ± {error:0.000}, of {count}"));
            Assert.True(Math.Abs(stated - counted) <= (3 * error) + 0.02, $"{from} to {to}: {stated} stated, {counted} counted of {count}");
        }
    }

    /// <summary>The first of the proposed tests, carried out on the true car with an error of its own, points to what is there.</summary>
    [Fact]
    public void FirstTest_CarriedOut_PointsToWhatIsThere()
    {
        if (Folder is null)
        {
            return;
        }

        Diagnosed[] open = [.. Kinds.Value.Where(kind => Faults.Contains(kind.Key)).SelectMany(kind => kind.Value).Where(run => run.AfterTest is not null)];
        int right = open.Count(run => run.AfterTest == run.True[0]);
        output.WriteLine($"{right} of {open.Length} ({open.Count(run => run.Named[0] == run.True[0])} before it)");
        foreach (var test in open.GroupBy(run => run.Test))
        {
            output.WriteLine($"  {test.Key}: {test.Count(run => run.AfterTest == run.True[0])} of {test.Count()}");
        }

        Assert.True(right >= Allowed(0.9, open.Length, lower: true), $"{right} of {open.Length}");
    }

    /// <summary>Ranges that should hold the truth in 95 of 100, of sound cars with everything off.</summary>
    [Fact]
    public void Ranges_HoldTheTruth()
    {
        if (Folder is null)
        {
            return;
        }

        foreach (string name in Kinds.Value["all"].SelectMany(run => run.Held.Keys).Distinct().Order())
        {
            bool[] held = [.. Kinds.Value["all"].Where(run => run.Held.ContainsKey(name)).Select(run => run.Held[name])];
            int inside = held.Count(one => one);
            output.WriteLine(FormattableString.Invariant($"{name}: {inside} of {held.Length}, {100.0 * inside / held.Length:0.0} %"));
            Assert.True(inside >= Allowed(0.93, held.Length, lower: true), $"{name}: {inside} of {held.Length}");
        }
    }

    [Fact]
    public void Table_OfWhatIsNamed()
    {
        if (Folder is null)
        {
            return;
        }

        foreach (string line in Table())
        {
            output.WriteLine(line);
        }
    }

    private static IEnumerable<string> Table()
    {
        yield return "| driven \\ named | none | the fault alone | first of several | among several | another | three or fewer |";
        yield return "| --- | ---: | ---: | ---: | ---: | ---: | ---: |";
        foreach ((string kind, Diagnosed[] runs) in Kinds.Value.OrderBy(kind => Array.IndexOf([.. Nuisances, .. Nuisances.Select(one => one + "-twice"), .. Faults, "two", "mix"], kind.Key)))
        {
            double Of(Func<Diagnosed, bool> which) => 1000.0 * runs.Count(which) / runs.Length;
            yield return FormattableString.Invariant(
                $"| {kind} | {Of(run => !run.IsAccused):0} | {Of(run => run.Named.Count == 1 && run.True.Contains(run.Named[0])):0} | {Of(run => run.Named.Count > 1 && run.True.Contains(run.Named[0])):0} | {Of(run => run.Named.Count > 1 && !run.True.Contains(run.Named[0]) && run.Named.Intersect(run.True).Any()):0} | {Of(run => run.IsAccused && !run.Named.Intersect(run.True).Any()):0} | {Of(run => run.Named.Count <= 3):0} |");
        }
    }

    private static IEnumerable<(double From, double To, double Stated, double Counted, double Error, int Count)> Bins()
    {
        if (Folder is null)
        {
            yield break;
        }

        (double Stated, bool IsThere)[] all =
        [
            .. Kinds.Value["mix"].SelectMany(run => run.Probabilities.Select(one => (one.Value, run.True.Contains(one.Key)))),
            .. Kinds.Value["mix"].Select(run => (run.NoFault, run.True.Count == 0)),
        ];
        double[] ends = [0, 0.01, 0.03, 0.1, 0.25, 0.5, 0.75, 0.9, 0.97, 1.000001];
        for (int bin = 0; bin + 1 < ends.Length; bin++)
        {
            (double Stated, bool IsThere)[] inside = [.. all.Where(one => one.Stated >= ends[bin] && one.Stated < ends[bin + 1])];
            if (inside.Length > 0)
            {
                yield return (
                    ends[bin],
                    Math.Min(1, ends[bin + 1]),
                    inside.Average(one => one.Stated),
                    inside.Average(one => one.IsThere ? 1.0 : 0),
                    Math.Sqrt(inside.Sum(one => one.Stated * (1 - one.Stated))) / inside.Length,
                    inside.Length);
            }
        }
    }

    private void Share(string kind, Func<Diagnosed[], int> count, double minimum, double maximum)
    {
        if (Folder is null)
        {
            return;
        }

        Diagnosed[] runs = Kinds.Value[kind];
        int counted = count(runs);
        output.WriteLine($"{kind}: {counted} of {runs.Length}");
        Assert.True(
            counted >= Allowed(minimum, runs.Length, lower: true) && counted <= Allowed(maximum, runs.Length, lower: false),
            $"{kind}: {counted} of {runs.Length}; {minimum} to {maximum} are wanted");
    }

    private static double Allowed(double share, int count, bool lower) =>
        (share * count) + (count >= All ? 0 : (lower ? -3 : 3) * Math.Sqrt(count * share * (1 - share)));

    private static Dictionary<string, Diagnosed[]> Read()
    {
        Dictionary<string, Diagnosed[]> kinds = [];
        foreach (string folder in Directory.GetDirectories(Folder!).Order())
        {
            ConcurrentDictionary<int, Diagnosed> runs = new();
            IReadOnlyList<PlantCase> cases = PlantRuns.In(folder).Cases;
            Parallel.For(0, cases.Count, i => runs[i] = Diagnosed.Of(cases[i], i, Path.GetFileName(folder)));
            kinds[Path.GetFileName(folder)] = [.. runs.OrderBy(run => run.Key).Select(run => run.Value)];
        }

        return kinds;
    }

    /// <summary>What a run says, beside the truth.</summary>
    private sealed record Diagnosed(
        IReadOnlyList<RunFault> True,
        IReadOnlyList<RunFault> Named,
        IReadOnlyDictionary<RunFault, double> Probabilities,
        double NoFault,
        RunFault? AfterTest,
        string? Test,
        IReadOnlyDictionary<string, bool> Held)
    {
        public bool IsAccused => Named.Count > 0;

        public double Probability(RunFault fault) => Probabilities[fault];

        public static Diagnosed Of(PlantCase each, int number, string kind)
        {
            RunCheck check = each.Car.Check;
            RecordedRun run = each.Run();
            RunModel model = check.Model(run);
            Diagnosis diagnosis = Diagnosis.Of(check, model, null, CancellationToken.None)!;
            RunFault[] named = diagnosis.Likeliest == RunFault.None
                ? []
                : [diagnosis.Likeliest, .. diagnosis.Second is { } second ? (RunFault[])[second] : [], .. diagnosis.Rivals.Select(rival => rival.Fault)];
            IReadOnlyList<NextTest> tests = named.Length > 1 && diagnosis.Second is null && each.Faults.Count == 1 ? TestChoice.Of(check, diagnosis) : [];
            NextTest? test = tests.Count > 0 ? tests[0] : null;
            RunFault? after = test?.After(Reading(each, model, test.Tested, new Random(number)))[0].Fault;
            return new(
                each.Faults,
                named,
                diagnosis.Suspects.ToDictionary(one => one.Fault, one => one.Probability),
                diagnosis.NoFault,
                after,
                test?.Tested.ToString(),
                kind == "all" ? Ranges(each, run, RunFindings.Of(check, run)) : new Dictionary<string, bool>());
        }

        /// <summary>What the test reads of the true car, by the accuracy that it is proposed with.</summary>
        private static double Reading(PlantCase each, RunModel model, TestedQuantity tested, Random random)
        {
            double Off(string name, double deviation) => each.Off(name) + Normal.Sample(random, 0, deviation);
            switch (tested)
            {
                case TestedQuantity.RailSensor: return Off("railPascals", 2e3);
                case TestedQuantity.ManifoldSensor: return Off("manifoldPascals", 300);
                case TestedQuantity.InjectorFlow: return Off("injectorFlow", 0.01);
                case TestedQuantity.InjectorFlowByMeter: return Off("injectorFlow", 0.015);
                case TestedQuantity.PumpFlow: return Off("pumpFlow", 0.02);
                case TestedQuantity.FeedResistance: return Off("feedOhms", 0.005);
                case TestedQuantity.FilterLoss: return Off("filterLoss", 0.5);
                case TestedQuantity.FlowMeter: return Off("meter", 0.005);
                case TestedQuantity.RegulatorBase: return Off("regulatorBasePascals", 2e3);
                case TestedQuantity.RegulatorGain: return (each.Off("regulatorGain") * each.Car.Check.Regulator.Gain) + Normal.Sample(random, 0, 0.03);
                case TestedQuantity.RegulatorOnset: return Off("regulatorOnsetPascals", 1e3);
                default:
                    PointInput at = model.Inputs[TestChoice.Hardest(model)!.Value];
                    FuelSystem car = each.Car.With(each.Off).Plan;
                    OperatingResult solved = car.Solve(OperatingPoint.At(
                        RotationalSpeed.FromRevolutionsPerSecond(at.Speed),
                        Pressure.FromPascals(at.Boost - each.Off("manifoldPascals")),
                        Conditions.Of(each.Car.Air, ElectricPotential.FromVolts(at.Volts - TestChoice.LowerVolts), each.Car.Conditions.FuelTemperature)));
                    return solved.Mixture.RailGauge.Pascals + Off("railPascals", 2e3);
            }
        }

        private static Dictionary<string, bool> Ranges(PlantCase each, RecordedRun run, RunFindings findings)
        {
            Dictionary<string, bool> held = [];
            Calibration calibration = Calibration.Of(each.Car.Check, run);
            void Figure(string name, CalibratedQuantity quantity, double truth)
            {
                CalibratedFigure figure = calibration[quantity];
                if (figure.IsDetermined)
                {
                    held[name] = truth >= figure.Minimum && truth <= figure.Maximum;
                }
            }

            RunModel model = each.Car.Check.Model(run);
            EnginePlace place = EnginePlace.FullLoad(each.Car.Check, model);
            JsonElement nuisances = each.Truth.GetProperty("nuisances");
            double waves = nuisances.GetProperty("ve_speed").EnumerateArray().Sum(wave =>
                wave.GetProperty("share").GetDouble() * Math.Sin((2 * Math.PI * place.Speed * 60 / wave.GetProperty("periodRpm").GetDouble()) + wave.GetProperty("phase").GetDouble()));
            double boost = nuisances.GetProperty("ve_boost").GetDouble() * place.Boost / 100e3;
            double warmer = nuisances.GetProperty("charge").GetDouble() * place.Boost / 60e3 * place.AirByTemperature;
            Figure("air", CalibratedQuantity.VolumetricEfficiency, Math.Exp(each.Off("volumetricEfficiency") + waves + boost + warmer));
            Figure("BSFC", CalibratedQuantity.BrakeSpecificFuelConsumption, calibration[CalibratedQuantity.BrakeSpecificFuelConsumption].Planned * Math.Exp(each.Off("consumption")));
            Figure("pump", CalibratedQuantity.PumpFlow, Math.Exp(each.Off("pumpFlow")));
            RegulatorModel regulator = each.Car.Check.Regulator;
            if (findings.Regulator.Answer is { } fit && regulator.HasOnset)
            {
                double gain = regulator.Gain * (1 + each.Off("regulatorGain"));
                held["gain"] = gain >= fit.Gain.Minimum && gain <= fit.Gain.Maximum;
                if (fit.Onset is { } onset)
                {
                    double truth = regulator.Onset + each.Off("regulatorOnsetPascals");
                    held["onset"] = truth >= onset.Minimum.Pascals && truth <= onset.Maximum.Pascals;
                }
            }

            if (findings.DeadTime.Answer is { } dead)
            {
                double truth = each.Off("deadTimeSeconds");
                held["dead time"] = truth >= dead.OverPlanned.Minimum.Seconds && truth <= dead.OverPlanned.Maximum.Seconds;
            }

            return held;
        }
    }
}
