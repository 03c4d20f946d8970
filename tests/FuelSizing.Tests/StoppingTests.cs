using System.Reflection;
using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Electrical;
using FuelSizing.Engines;
using FuelSizing.Findings;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Findings;
using FuelSizing.Tests.Logs;
using FuelSizing.Tests.Selection;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>
/// Long work tells how far it is and can be stopped. What was finished is kept and marked as not complete; where nothing was, or
/// where there is no answer before the end, stopping is an exception. See docs/threads.md.
/// </summary>
public class StoppingTests
{
    private static readonly UncertainSystem Unsure = UncertainSystem.Of(
        Wren.System(),
        Wren.At(6000, 0.5),
        UncertainInput.InjectorFlowFactor(Distribution.Uniform(Wren.Percent(96), Wren.Percent(104))),
        UncertainInput.SupplyVoltage(Distribution.Uniform(Wren.Volt(13), Wren.Volt(14))));

    private static readonly RotationalSpeed[] Speeds = [Wren.Rpm(3000), Wren.Rpm(6800)];

    private static readonly Pressure[] Boosts = [Pressure.Zero, Pressure.FromBars(0.2), Pressure.FromBars(0.4), Pressure.FromBars(0.6)];

    private static readonly string Rows = LogText.Heading + string.Concat(Enumerable.Range(0, 100_000).Select(i => $"{i},3000,0.5,350,0.85\n"));

    private static readonly RecordedRun Pulled = PulledWren.With(RunFault.WeakPump, 1).Recorded(2);

    /// <summary>All work that takes a cancellation, by the method that does it.</summary>
    private static readonly Dictionary<string, Func<IProgress<Ratio>?, CancellationToken, object>> Work = new()
    {
        ["SystemSweep.Sweep"] = (progress, stop) => Wren.System().Sweep(Speeds, Boosts, Wren.Hill, progress, stop),
        ["UncertainSystem.MonteCarlo"] = (progress, stop) => Unsure.MonteCarlo(Sampling.Of(300), progress, stop),
        ["UncertainSystem.Sobol"] = (progress, stop) => Unsure.Sobol(SystemOutput.DutyCycle, Sampling.Of(300), progress, stop),
        ["UncertainSystem.Tornado"] = (progress, stop) => Unsure.Tornado(SystemOutput.DutyCycle, null, progress, stop),
        ["Ranking.Of"] = (progress, stop) => Ranking.Of(
            [Shelf.Petrol], CandidateParts.Of([Shelf.Injector(800, 1)], [Shelf.Pump(1, 1), Shelf.Pump(2, 2)]), 1, progress, stop),
        ["RunFindings.Of"] = (progress, stop) => RunFindings.Of(PulledWren.Check, Pulled, progress, stop),
        ["Calibration.Of"] = (progress, stop) => Calibration.Of(PulledWren.Check, Pulled, progress, stop),
        ["RunReader.Read"] = (progress, stop) => RunReader.Read("run", new StringReader(Rows), LogText.Mapping, LogText.Air, Shares(progress), stop),
        ["RunReader.Open"] = (progress, stop) =>
        {
            using RunReader reader = RunReader.Open(new StringReader(Rows), LogText.Mapping, LogText.Air, null, Shares(progress), stop);
            return reader.Rows().Count();
        },
    };

    private static readonly Line Hose = FuelSizing.Lines.Line.Of("hose", Length.FromMillimeters(8), Length.FromMeters(3), Roughness.RubberHose);

    private static readonly BoostLine Half = HeldBoost.Of(Pressure.FromBars(0.5), Wren.Rpm(3000), Wren.Rpm(6600));

    private static readonly OperatingPoint[] Points = [Wren.At(3000, 0), Wren.At(6600, 0.5)];

    /// <summary>Searches, which have no answer before their end and know no share of what is done.</summary>
    private static readonly Dictionary<string, Func<CancellationToken, object>> Questions = new()
    {
        ["SystemSizing.MinimumStaticFlow"] = stop => SystemSizing.MinimumStaticFlow(Wren.System(), Points, stop),
        ["SystemSizing.MinimumBasePressure"] = stop => SystemSizing.MinimumBasePressure(Wren.System(), Points, stop),
        ["SystemSizing.MinimumGain"] = stop => SystemSizing.MinimumGain(Wren.System(), Wren.Kpa(10), Points, stop),
        ["SystemSizing.MaximumBoost"] = stop => SystemSizing.MaximumBoost(Wren.System(), Speeds, Wren.Hill, stop),
        ["SystemSizing.MaximumPower"] = stop => SystemSizing.MaximumPower(Wren.System(), Wren.Rpm(6000), Wren.Hill, stop),
        ["SystemSizing.MaximumSpeed"] = stop => SystemSizing.MaximumSpeed(Wren.System(), Wren.Kpa(20), Wren.Rpm(2000), Wren.Hill, stop),
        ["SystemSizing.MinimumBore"] = stop => SystemSizing.MinimumBore(Piped, Hose, Points, stop),
        ["SystemSizing.MinimumWireArea"] = stop => SystemSizing.MinimumWireArea(Wren.System().With(Wren.WiredPump.WithFeed(AFeed)), Points, stop),
        ["BoostSizing.MaximumDriveRatio"] = stop => BoostSizing.MaximumDriveRatio(
            FuelSystem.Return(Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(65), Wren.Percent(70), Wren.Kpa(5), Wren.Percent(95))), Wren.System().Injectors, Wren.System().Regulator, Wren.System().Pump), CentrifugalBoost.From(7, Wren.Rpm(6000), Wren.Kpa(30), Atmosphere.Standard), Wren.Rpm(3000), Wren.Rpm(6600), Wren.Hill, stop),
        ["BoostSizing.InjectorsInstead"] = stop => BoostSizing.InjectorsInstead(Wren.System(), Half, Wren.Rpm(3000), Wren.Rpm(6600), Wren.Hill, cancellation: stop),
        ["CutOut.PressuresFor"] = stop => CutOut.PressuresFor(Controlled, Half, Wren.Rpm(3000), Wren.Rpm(6600), Wren.Hill, stop),
        ["MixtureSizing.FitRisingRate"] = stop => MixtureSizing.FitRisingRate(Controlled, Half, [Wren.Rpm(4000), Wren.Rpm(6000)], Wren.Hill, null, stop),
        ["LineSweep.Pull"] = stop => Wren.System().Pull(Half, Wren.Rpm(3000), Wren.Rpm(6600), Wren.Hill, stop),
        ["LineSweep.Sweep"] = stop => Wren.System().Sweep(Half, [Wren.Rpm(3000), Wren.Rpm(6600)], Wren.Hill, stop),
        ["WorstCorner.FindWorstCorner"] = stop => Wren.System().FindWorstCorner(
            Half, Wren.Rpm(3000), Wren.Rpm(6600), OperatingRanges.Around(Wren.Hill).WithSupplyVoltage(Wren.Volt(13), Wren.Volt(14)), stop),
        ["SingleFailures.WithEachFailure"] = stop => Wren.System().WithEachFailure(Half, Wren.Rpm(3000), Wren.Rpm(6600), Wren.Hill, stop),
    };

    private static FuelSystem Piped => Wren.System().With(Plumbing.Of(supply: [Hose]));

    private static Feed AFeed => Feed.Of("feed", Conductor.Awg(14), Length.FromMeters(3), Length.FromMeters(1), Temperature.FromDegreesCelsius(40));

    private static FuelSystem Controlled => Wren.System(RisingRate.From(Wren.Kpa(300), 3, Wren.Kpa(10)))
        .With(ThrottleController.Of(ControllerData.Of(Wren.InjectorOf(360), Fuel.Petrol, TargetLambda.At(0.88)), Wren.VolumetricEfficiency, Atmosphere.Standard))
        .With(SizingLimits.Default.With(MixtureLimits.Of(0.9, Wren.Kpa(20))));

    public static TheoryData<string> Names => [.. Work.Keys];

    public static TheoryData<string> Asked => [.. Questions.Keys];

    [Fact]
    public void EveryMethod_ThatCanBeStopped_TellsHowFarItIsAndIsTriedHere()
    {
        MethodInfo[] stoppable =
        [
            .. from type in typeof(Fuel).Assembly.GetExportedTypes()
               from method in type.GetMethods()
               where method.GetParameters().Any(parameter => parameter.ParameterType == typeof(CancellationToken))

               // Files that are read and written without waiting have tests of their own.
               where !typeof(Task).IsAssignableFrom(method.ReturnType)
               select method,
        ];

        static string NameOf(MethodInfo method) => $"{method.DeclaringType!.Name}.{method.Name}";
        static bool Tells(MethodInfo method) => method.GetParameters().Any(
            parameter => parameter.ParameterType.IsGenericType && parameter.ParameterType.GetGenericTypeDefinition() == typeof(IProgress<>));

        // A batch takes columns, which no delegate can hold; its own test stops it.
        Assert.Equal(Work.Keys.Append("PointBatch.Evaluate").Order(), stoppable.Where(Tells).Select(NameOf).Distinct().Order());
        Assert.Equal(Questions.Keys.Order(), stoppable.Where(method => !Tells(method)).Select(NameOf).Distinct().Order());
    }

    /// <summary>A search that is stopped before it begins, or on its way, is an exception; left alone it has its answer, the same as without a token.</summary>
    [Theory]
    [MemberData(nameof(Asked))]
    public void Question_Stopped_IsAnException(string name)
    {
        Assert.ThrowsAny<OperationCanceledException>(() => Questions[name](new CancellationToken(true)));
        using CancellationTokenSource never = new();
        Assert.Equal(Questions[name](CancellationToken.None).ToString(), Questions[name](never.Token).ToString());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Work_StoppedBeforeItBegins_IsAnException(string name) =>
        Assert.ThrowsAny<OperationCanceledException>(() => Work[name](null, new CancellationToken(true)));

    [Theory]
    [MemberData(nameof(Names))]
    public void Work_LeftAlone_TellsOfEveryStepUpToTheEnd(string name)
    {
        List<double> heard = [];
        object done = Work[name](new Listener(share => heard.Add(share.Percent)), default);

        Assert.True(done.GetType().GetProperty("IsComplete")?.GetValue(done) is null or true);
        Assert.Equal(heard.Order(), heard);
        Assert.NotEmpty(heard);
        if (!name.StartsWith("RunReader", StringComparison.Ordinal))
        {
            // A reading of unknown length tells its rows instead.
            Assert.Equal(100, heard[^1], 9);
        }
    }

    [Fact]
    public void Tornado_Stopped_KeepsTheBarsThatAreDone()
    {
        using CancellationTokenSource stop = new();
        TornadoResult tornado = Unsure.Tornado(SystemOutput.DutyCycle, null, new Listener(_ => stop.Cancel()), stop.Token);

        Assert.False(tornado.IsComplete);
        TornadoBar whole = Unsure.Tornado(SystemOutput.DutyCycle).Bars.Single(bar => bar.Input == Unsure.Inputs[0]);
        Assert.Equal(ObjectGraph.Bits(whole), ObjectGraph.Bits(Assert.Single(tornado.Bars)));
    }

    [Fact]
    public void Ranking_StoppedBeforeOneServes_CannotSayThatNoneDoes()
    {
        using CancellationTokenSource stop = new();
        CandidateParts parts = CandidateParts.Of([Shelf.Injector(300, 1)], [Shelf.Pump(1, 1), Shelf.Pump(2, 2)]);

        Ranking ranking = Ranking.Of([Shelf.Petrol], parts, threads: 1, new Listener(_ => stop.Cancel()), stop.Token);

        Assert.Single(ranking.Combinations);
        Assert.Equal(Outcome.CannotSay, ranking.Verdict.Outcome);
        Assert.Equal(Outcome.Fails, Ranking.Of([Shelf.Petrol], parts, threads: 1).Verdict.Outcome);
    }

    [Fact]
    public void Reading_Stopped_KeepsTheRowsReadAndFindingsSaySo()
    {
        using CancellationTokenSource stop = new();
        RecordedRun run = RunReader.Read(
            "run", new StringReader(Rows), LogText.Mapping, LogText.Air, new Hearing(_ => stop.Cancel()), stop.Token);

        Assert.False(run.IsComplete);
        Assert.InRange(run.Rows.Count, 65_535, 99_999);
        Assert.Equal(Enumerable.Range(0, run.Rows.Count).Select(i => (double?)i), run.Rows.Select(row => row.Time?.Seconds));
        Assert.Equal(run.Rows.Count, run.Account.RowsUsed);

        RunFindings findings = RunFindings.Of(Wren.System(), run);
        Assert.False(findings.IsComplete);
        Assert.Contains(findings.Notes, note => note.ToString().Contains($"first {run.Rows.Count:N0} rows", StringComparison.Ordinal));
    }

    [Fact]
    public void Findings_StoppedAmongTheFaults_KeepWhatTheChannelsSayAndNameNoFault()
    {
        using CancellationTokenSource stop = new();
        RunFindings whole = RunFindings.Of(PulledWren.Check, Pulled);
        RunFindings findings = RunFindings.Of(PulledWren.Check, Pulled, new Listener(_ => stop.Cancel()), stop.Token);

        Assert.NotEqual(RunFault.None, whole.Fault);
        Assert.False(findings.IsComplete);
        Assert.False(findings.IsDiagnosed);
        Assert.Equal(RunFault.None, findings.Fault);
        Assert.Contains(findings.Judgements, one => one.ToString().StartsWith("faults: the search for faults was stopped", StringComparison.Ordinal));
        Assert.Equal(ObjectGraph.Bits(whole.Duty), ObjectGraph.Bits(findings.Duty));
        Assert.Equal(ObjectGraph.Bits(whole.Agreement), ObjectGraph.Bits(findings.Agreement));
    }

    [Fact]
    public void Calibration_StoppedAmongTheFits_HasNoAnswer()
    {
        using CancellationTokenSource stop = new();
        Assert.ThrowsAny<OperationCanceledException>(
            () => Calibration.Of(PulledWren.Check, Pulled, Listener.StoppingFrom(50, stop), stop.Token));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Batch_Stopped_TellsHowManyPointsAreDoneAndLeavesTheRest(int threads)
    {
        const int Points = 400_000;
        PointBatch batch = PointBatch.Of(Wren.System().Parts, Wren.Hill);
        double[] speeds = [.. Enumerable.Range(0, Points).Select(i => 20 + (i % 90.0))];
        double[] boosts = [.. Enumerable.Range(0, Points).Select(i => (i % 7) * 10e3)];
        (double[] whole, double[] some) = (new double[Points], new double[Points]);
        Array.Fill(some, double.NaN);

        Assert.Equal(Points, batch.Evaluate(new() { Speed = speeds, Boost = boosts }, new() { DutyCycle = whole }, threads));
        using CancellationTokenSource stop = new();
        List<double> heard = [];
        Listener stopping = Listener.StoppingFrom(40, stop);
        Listener listener = new(share =>
        {
            heard.Add(share.DecimalFractions);
            stopping.Report(share);
        });
        int done = batch.Evaluate(new() { Speed = speeds, Boost = boosts }, new() { DutyCycle = some }, threads, listener, stop.Token);

        Assert.InRange(done, 0.4 * Points, 0.7 * Points);
        Assert.Equal(heard[^1], (double)done / Points);
        Assert.Equal(whole[..done], some[..done]);
        Assert.All(some[done..], value => Assert.True(double.IsNaN(value)));
        Assert.Equal(0, batch.Evaluate(new() { Speed = speeds, Boost = boosts }, new() { DutyCycle = some }, threads, null, stop.Token));
        Assert.Equal(Points, batch.Evaluate(new() { Speed = speeds, Boost = boosts }, new() { DutyCycle = some }, threads, new Listener(_ => { })));
        Assert.Equal(whole, some);
    }

    private static Hearing? Shares(IProgress<Ratio>? progress) =>
        progress is null ? null : new(progressed => progress.Report(Ratio.FromPercent(progressed.Rows / 1e6)));

    private sealed class Hearing(Action<RunProgress> heard) : IProgress<RunProgress>
    {
        public void Report(RunProgress value) => heard(value);
    }
}
