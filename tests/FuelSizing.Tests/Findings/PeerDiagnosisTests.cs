using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
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
public partial class PeerDiagnosisTests(ITestOutputHelper output)
{
    /// <summary>So many of a kind are all of them; fewer may differ by two standard deviations of what counting scatters.</summary>
    private const int All = 1000;

    /// <summary>What the plan does not know, one by one and together, and what the page calls it.</summary>
    private static readonly (string Kind, string Name)[] NuisanceNames =
    [
        ("ve_boost", "air over boost"), ("ve_speed", "air over speed"), ("charge", "charge temperature"), ("slope", "regulator slope"),
        ("lambda_delay", "lambda delay and lag"), ("filters", "sensor lags"), ("clock", "clock"), ("density", "fuel density"), ("all", "all of these"),
    ];

    private static readonly (string Kind, string Name)[] FaultNames =
    [
        ("weak_pump", "weak pump"), ("voltage_drop", "voltage drop"), ("clogged_filter", "clogged filter"), ("wrong_base", "wrong base"),
        ("wrong_gain", "wrong gain"), ("wrong_onset", "wrong onset"), ("wrong_injectors", "wrong injectors"), ("rail_sensor", "rail sensor"),
        ("manifold_sensor", "manifold sensor"), ("flow_meter", "flow meter"), ("air", "air"),
    ];

    /// <summary>All kinds in the order of the page.</summary>
    private static readonly (string Kind, string Name)[] PageNames =
    [
        .. NuisanceNames, .. NuisanceNames.Select(one => (one.Kind + "-twice", one.Name + " at twice")), .. FaultNames, ("two", "two faults"), ("mix", "half sound, half not"),
    ];

    private static readonly string[] Nuisances = [.. NuisanceNames.Select(one => one.Kind)];

    private static readonly string[] Faults = [.. FaultNames.Select(one => one.Kind)];

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
        Share("two", runs => runs.Count(run => run.Named.Count == 1 && !run.True.Contains(run.Named[0]) && run.Probability(run.Named[0]) > 0.9), 0, 0.005);

    /// <summary>What is further off than three standard deviations of a normal distribution, to one side.</summary>
    private const double Rare = 0.00135;

    /// <summary>Of all faults that are said to be there with a probability, so many are, and no room beside what counting scatters.</summary>
    [Fact]
    public void Probabilities_AreWhatIsThere()
    {
        foreach ((double from, double to, double stated, double counted, double error, int count) in Bins())
        {
            output.WriteLine(FormattableString.Invariant($"{from:0.00} to {to:0.00}: {stated:0.000} stated, {counted:0.000} counted, ± {error:0.000}, of {count}"));
            int there = (int)Math.Round(counted * count);
            double UpTo(int number) => number < 0 ? 0 : number >= count ? 1 : Binomial.CDF(stated, count, number);
            Assert.True(
                Math.Min(UpTo(there), 1 - UpTo(there - 1)) >= Rare,
                $"{from} to {to}: {stated} stated, {counted} counted of {count}");
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

    /// <summary>Ranges that should hold the truth in 95 of 100, of sound cars with everything off: in 93 at least, and in no more than 97.</summary>
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
            Assert.True(
                inside >= Allowed(0.93, held.Length, lower: true) && inside <= Allowed(0.97, held.Length, lower: false), $"{name}: {inside} of {held.Length}");
        }
    }

    /// <summary>
    /// The page shows these tables, and says of how many runs; of as many, cells may differ by the two runs in which rounding differs from machine to machine,
    /// of fewer by what counting scatters.
    /// </summary>
    [Fact]
    public void Page_ShowsWhatIsNamed()
    {
        if (Folder is null)
        {
            return;
        }

        string[] table = [.. Table()];
        foreach (string line in table)
        {
            output.WriteLine(line);
        }

        if (Environment.GetEnvironmentVariable("FUELSIZING_WRITE") is not null)
        {
            File.WriteAllLines(Path.Combine(Path.GetTempPath(), "diagnosed.md"), [.. table, "", .. Reliability()]);
        }

        string[] page = File.ReadAllLines(Path.Combine(ConfusionTests.Root(), "docs", "findings.md"));
        int first = Array.IndexOf(page, table[0]);
        Assert.True(first >= 0, "docs/findings.md lacks the table:\n" + string.Join('\n', table));
        Match said = Array.ConvertAll(page, line => PageCount().Match(line)).Single(match => match.Success);
        double Said(int group) => double.Parse(said.Groups[group].Value, NumberStyles.AllowThousands, CultureInfo.InvariantCulture);
        for (int row = 2; row < table.Length; row++)
        {
            (string name, double[] shown) = Cells(page[first + row]);
            (string counted, double[] cells) = Cells(table[row]);
            Assert.Equal(counted, name);
            string kind = PageNames[row - 2].Kind;
            (int runs, double onPage) = (Kinds.Value[kind].Length, Said(kind == "mix" ? 2 : 1));
            for (int cell = 0; cell < cells.Length; cell++)
            {
                // Of both counts together, one more and one less than was counted, lest a share of none be known for sure.
                double share = ((((cells[cell] * runs) + (shown[cell] * onPage)) / 1000) + 1) / (runs + onPage + 2);
                double allowed = runs == onPage ? 2000.0 / runs : 3000 * Math.Sqrt(share * (1 - share) * ((1.0 / runs) + (1 / onPage)));
                Assert.True(Math.Abs(cells[cell] - shown[cell]) <= allowed + 0.5, $"docs/findings.md: {page[first + row]}\ncounted: {table[row]}");
            }
        }
    }

    [GeneratedRegex(@"Counted on ([\d,]+) runs of each kind, ([\d,]+) of the last")]
    private static partial Regex PageCount();

    private static (string Name, double[] Cells) Cells(string row)
    {
        string[] cells = row.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return (cells[0], [.. cells.Skip(1).Select(cell => double.Parse(cell, CultureInfo.InvariantCulture))]);
    }

    private static IEnumerable<string> Table()
    {
        yield return "| of 1,000 | none | the fault alone | first of several | among several | another | three or fewer |";
        yield return "| --- | ---: | ---: | ---: | ---: | ---: | ---: |";
        foreach ((string kind, string name) in PageNames)
        {
            Diagnosed[] runs = Kinds.Value[kind];
            double Of(Func<Diagnosed, bool> which) => 1000.0 * runs.Count(which) / runs.Length;
            yield return FormattableString.Invariant(
                $"| {name} | {Of(run => !run.IsAccused):0} | {Of(run => run.Named.Count == 1 && run.True.Contains(run.Named[0])):0} | {Of(run => run.Named.Count > 1 && run.True.Contains(run.Named[0])):0} | {Of(run => run.Named.Count > 1 && !run.True.Contains(run.Named[0]) && run.Named.Intersect(run.True).Any()):0} | {Of(run => run.IsAccused && !run.Named.Intersect(run.True).Any()):0} | {Of(run => run.Named.Count <= 3):0} |");
        }
    }

    private static IEnumerable<string> Reliability()
    {
        yield return "| said to be | on average | were there | ± (counting) | statements |";
        yield return "| --- | ---: | ---: | ---: | ---: |";
        foreach ((double from, double to, double stated, double there, double error, int count) in Bins())
        {
            yield return FormattableString.Invariant(
                $"| {100 * from:0} to {100 * to:0} % | {100 * stated:0.0} % | {100 * there:0.0} % | {100 * error:0.0} % | {count:N0} |");
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
        (share * count) + (count >= All ? 0 : (lower ? -2 : 2) * Math.Sqrt(count * share * (1 - share)));

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
                test?.Tested.What.Code,
                kind == "all" ? Ranges(each, run, RunFindings.Of(check, run)) : new Dictionary<string, bool>());
        }

        /// <summary>What the test reads of the true car, by the accuracy that it is proposed with.</summary>
        private static double Reading(PlantCase each, RunModel model, TestedQuantity tested, Random random)
        {
            double error = Normal.Sample(random, 0, tested.Deviation);
            if (tested.Quantity is { } quantity)
            {
                double planned = quantity == RunQuantity.RegulatorGain ? each.Car.Check.Regulator.Gain : 1;
                return (planned * each.Off(NameOf(quantity))) + error;
            }

            PointInput at = model.Inputs[TestChoice.Hardest(model)!.Value];
            FuelSystem car = each.Car.With(each.Off).Plan;
            OperatingResult solved = car.Solve(OperatingPoint.At(
                RotationalSpeed.FromRevolutionsPerSecond(at.Speed),
                Pressure.FromPascals(at.Boost - each.Off("manifoldPascals")),
                Conditions.Of(each.Car.Air, ElectricPotential.FromVolts(at.Volts - TestChoice.LowerVolts), each.Car.Conditions.FuelTemperature)));
            return solved.Mixture.RailGauge.Pascals + each.Off("railPascals") + error;
        }

        private static string NameOf(RunQuantity quantity) => quantity switch
        {
            RunQuantity.RailSensor => "railPascals",
            RunQuantity.ManifoldSensor => "manifoldPascals",
            RunQuantity.InjectorFlow => "injectorFlow",
            RunQuantity.PumpFlow => "pumpFlow",
            RunQuantity.FeedResistance => "feedOhms",
            RunQuantity.FilterLoss => "filterLoss",
            RunQuantity.FlowMeter => "meter",
            RunQuantity.RegulatorBase => "regulatorBasePascals",
            RunQuantity.RegulatorGain => "regulatorGain",
            RunQuantity.RegulatorOnset => "regulatorOnsetPascals",
            _ => throw new InvalidOperationException($"No test measures {quantity} by itself; add it here."),
        };

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
                    double truth = Math.Max(0, regulator.Onset + each.Off("regulatorOnsetPascals"));
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
