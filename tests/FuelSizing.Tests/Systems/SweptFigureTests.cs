using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Systems;
using FuelSizing.Tests.Files.Setups;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>
/// A sweep judges in numbers and solves in full what it shows. What it says of a range is what the results of its places say, one by one, to the last bit: each is solved
/// here by itself.
/// </summary>
public class SweptFigureTests
{
    private static readonly CancellationToken Never = CancellationToken.None;

    /// <summary>Wren with what makes a check come out otherwise than by one number: lines, two sets of injectors, a tank, a pump that may be on or off, a described controller.</summary>
    public static TheoryData<string> Cars => [.. OfCars.Keys];

    private static Dictionary<string, FuelSystem> OfCars { get; } = new()
    {
        ["plain"] = Wren.System(pump: 1.3),
        ["small pump and injectors"] = Wren.System(injector: 300, pump: 0.6),
        ["lines"] = Wren.System(pump: 1.1).With(Plumbing.Of([], [SurgeTanks.Hose("supply", 8, 4.5)], [SurgeTanks.Hose("return", 6, 4.5)])),
        ["staged by duty cycle"] = Staged.Wren2(Staged.Of(Staged.ByDutyCycle)),
        ["staged by duty cycle, a pump on or off"] = Staged.Wren2(Staged.Of(Staged.ByDutyCycle)).With(OnOrOff),
        ["surge tank"] = SurgeTanks.Wren(SurgeTanks.Everything),
        ["a pump on or off"] = Wren.System(injector: 420).With(OnOrOff),
        ["described controller"] = Wren.System(pump: 1.3).Aiming(0.85),
    };

    private static PumpAssembly OnOrOff => PumpParallel.Of(
        Pump.From(Wren.PumpOf(0.6)), SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), Pump.From(Wren.PumpOf(0.5))));

    [Theory]
    [MemberData(nameof(Cars))]
    public void Figures_OfASearch_AreThoseOfTheResultsOfItsPlaces(string car) => Alike(OfCars[car], Wren.Hill, 2000, 7000, 70);

    [Fact]
    public void Figures_OfASearchOfAnySystem_AreThoseOfTheResultsOfItsPlaces()
    {
        int looked = 0;
        for (int seed = 0; seed < 10; seed++)
        {
            Setup setup = new SystemBuilder(seed, deepest: 0).Setup();
            OperatingPoint point = setup.Points[0].Point;
            double[] covered = [.. Enumerable.Range(10, 50).Select(step => 100.0 * step).Where(rpm => setup.System.Covers(OperatingPoint.At(Wren.Rpm(rpm), point.Boost, point.Conditions)))];
            if (covered.Length > 1)
            {
                looked += Alike(setup.System, point.Conditions, covered[0], covered[^1], setup.System.Demand.Induction.Drive == CompressorDrive.None ? 0 : 60);
            }
        }

        Assert.True(looked > 200, $"{looked} places");
    }

    /// <summary>What a sweep claims over its range is what the results of all its places amount to, by the order of urgency.</summary>
    [Theory]
    [MemberData(nameof(Cars))]
    public void Standings_OfASweep_AreNoMilderThanAnyResult(string car)
    {
        SweepResult sweep = OfCars[car].Sweep([.. Numbers(2000, 7000, 12).Select(Wren.Rpm)], [.. Numbers(-20, 70, 9).Select(Wren.Kpa)], Wren.Hill);
        Assert.Equal(12 * 9, sweep.Results.Count);
        foreach (PartStanding standing in sweep.Standings)
        {
            Margin tightest = sweep.Results.Select(result => result.Margins.Single(margin => margin.Part == standing.Part)).Min(Urgency.Order)!;
            Assert.True(Urgency.Order.Compare(standing.Tightest.Margin, tightest) <= 0, $"{standing}, but {tightest}");
            Assert.Equal(standing.Outcome == Outcome.Fails, standing.LimitReachedAt is not null);
            Assert.True(tightest.Outcome != Outcome.Fails || standing.LimitReachedAt!.Boost <= tightest.Point.Boost);
        }

        // A place that is shown is the same result wherever it is shown.
        OperatingResult any = sweep.At(5, 4);
        Assert.Same(any, sweep.Results[(4 * 12) + 5]);
        Assert.Equal(Bits(OfCars[car].SolveBy(any.Point, TableOf(OfCars[car], 12 * 9, -20, 70))), Bits(any));
    }

    /// <summary>Results are solved once, whoever asks first, and in any order.</summary>
    [Fact]
    public void Results_AskedForOnManyThreads_AreOne()
    {
        SweepResult sweep = OfCars["lines"].Sweep([Wren.Rpm(3000), Wren.Rpm(6000)], [Wren.Kpa(0), Wren.Kpa(50)], Wren.Hill);
        OperatingResult[][] asked = new OperatingResult[16][];
        Parallel.For(0, asked.Length, thread => asked[thread] = thread % 2 == 0 ? [.. sweep.Results] : FromTheLast(sweep.Results));
        Assert.All(asked, results => Assert.All(results, (result, at) => Assert.Same(asked[0][at], result)));
        Assert.Same(sweep.Remedies, sweep.Remedies);
    }

    /// <summary>What a user's own check judges, it is asked in numbers; what it refuses to read it refuses at the time of the sweep.</summary>
    [Fact]
    public void OwnCheck_OfASweep_IsAskedWhileItSweeps()
    {
        int asked = 0;
        FuelSystem system = ShapedCheck.Judging(at =>
        {
            asked++;
            return at.Speed > 80 ? throw new InvalidOperationException("no figure over 4,800 rev/min") : 0.5;
        });
        Assert.Throws<InvalidOperationException>(() => system.Sweep([Wren.Rpm(4000), Wren.Rpm(6000)], [Wren.Kpa(0)], Wren.Hill));
        Assert.Equal(2, asked);
        Assert.Throws<ArgumentOutOfRangeException>(() => Wren.System().Sweep([Wren.Rpm(4000), Wren.Rpm(9000)], [Wren.Kpa(0)], Wren.Hill));
    }

    /// <summary>A judge has its room: a point of a plain circuit leaves nothing to be collected.</summary>
    [Theory]
    [InlineData("plain")]
    [InlineData("lines")]
    public void Judge_OfAPlainCircuit_AllocatesNothing(string car)
    {
        FuelSystem system = OfCars[car];
        PointJudge judge = new(system.Applicable, system.Parts);
        PointPlace place = Wren.At(5000, 0.3).Place;
        Pressure boost = Pressure.FromPascals(place.BoostPascals);
        judge.Judge(place, boost);
        long before = GC.GetAllocatedBytesForCurrentThread();
        judge.Judge(place, boost);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    private static OperatingResult[] FromTheLast(IReadOnlyList<OperatingResult> results)
    {
        OperatingResult[] all = new OperatingResult[results.Count];
        for (int at = all.Length - 1; at >= 0; at--)
        {
            all[at] = results[at];
        }

        return all;
    }

    private static int Alike(FuelSystem system, Conditions conditions, double slowest, double fastest, double highest)
    {
        // So many points that circuits that have use for a table get one.
        const int Across = 12;
        const int Up = 9;
        RotationalSpeed[] speeds = [.. Numbers(slowest, fastest, Across).Select(Wren.Rpm)];
        Pressure[] boosts = [.. Numbers(-20, highest, Up).Select(Wren.Kpa)];
        CircuitTable? table = TableOf(system, Across * Up, -20, highest, conditions, slowest);
        using RangeSearch search = RangeSearch.Over(system, table, speeds, boosts, conditions, null, Never)!;
        OperatingResult[] results = new OperatingResult[search.Count];
        for (int place = 0; place < results.Length; place++)
        {
            results[place] = system.SolveBy(search.PointAt(place), table);
        }

        for (int check = 0; check < system.Applicable.Length; check++)
        {
            Margin[] margins = [.. results.Select(result => result.Margins[check])];
            for (int place = 0; place < margins.Length; place++)
            {
                double figure = search.Figure(check, place);
                Assert.Equal(margins[place].Outcome, figure >= 0 ? Outcome.Holds : figure < 0 ? Outcome.Fails : Outcome.CannotSay);
                Assert.Equal(margins[place].Share, double.IsFinite(figure) ? figure : null);
            }

            Assert.Same(margins.Min(Urgency.Order), margins[search.Tightest(check)]);
            Assert.Equal(
                margins.Where(margin => margin.Outcome == Outcome.Fails).Select(margin => margin.Point.Boost.Pascals).Append(double.PositiveInfinity).Min(),
                search.FailsFrom(check));
        }

        Assert.Equal(results.Select(Bits), search.Results().Select(Bits));
        return results.Length;
    }

    private static CircuitTable? TableOf(FuelSystem system, int points, double low, double high, Conditions? conditions = null, double rpm = 2000)
    {
        double[] sets = [.. Numbers(low, high, 9).Select(boost => system.Regulator.SetPascals(Wren.Kpa(boost).Pascals))];
        return CircuitTable.Of(
            system.Parts.TaskAt(system.Parts.DemandAt(OperatingPoint.At(Wren.Rpm(rpm), Wren.Kpa(low), conditions ?? Wren.Hill))), sets.Min(), sets.Max(), points);
    }

    private static IEnumerable<double> Numbers(double from, double to, int count) =>
        Enumerable.Range(0, count).Select(step => from + ((to - from) * step / (count - 1)));

    private static string Bits(OperatingResult result) => string.Join(
        ' ',
        result.Margins.SelectMany(margin => (double[])[margin.Reading.Used, margin.Reading.Allowed, margin.Reading.Margin, margin.Reading.BestMargin])
            .Append(result.RailGauge.Pascals).Select(number => BitConverter.DoubleToInt64Bits(number).ToString("x", System.Globalization.CultureInfo.InvariantCulture)));
}
