using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Electrical;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Selection;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Selection;

/// <summary>A ranking is what solving every combination forward, one by one, gives.</summary>
public class RankingTests
{
    private static readonly Gen<CandidateParts> SomeParts = Gen.Select(
        Gen.Select(Gen.Double[200, 1800], Gen.Int[50, 400], Gen.Bool).Array[1, 4],
        Gen.Select(Gen.Double[0.6, 3], Gen.Int[80, 500]).Array[1, 3],
        Gen.Shuffle(Shelf.Regulators.ToArray(), 1, 4)).Select((injectors, pumps, regulators) => CandidateParts.Of(
            [.. injectors.Select(one => Shelf.Injector(one.Item1, one.Item3 ? one.Item2 : null)).DistinctBy(one => one.Name)],
            [.. pumps.Select(one => Shelf.Pump(one.Item1, one.Item2)).DistinctBy(one => one.Name)],
            regulators));

    private static readonly Gen<Stage[]> SomePlan = Gen.OneOfConst<Stage[]>([Shelf.Petrol], [Shelf.Ethanol], [Shelf.Petrol, Shelf.Ethanol]);

    [Fact]
    public void Ranking_OfSmallCatalogues_IsWhatSolvingEachForwardGives() =>
        Gen.Select(SomePlan, SomeParts).Sample(
            (plan, parts) =>
            {
                Ranking ranking = Ranking.Of(plan, parts, threads: 2);
                Solved[] expected = [.. Solved.All(plan, parts)];

                Assert.True(ranking.IsComplete);
                Assert.Equal(parts.Combinations, ranking.Combinations.Count);
                Assert.Equal(
                    expected.OrderBy(one => one, Solved.BestFirst).Select(one => one.Described),
                    ranking.Combinations.Select(Described));
                Assert.Equal(
                    expected.Where(one => Judged.IsHolding(one.Outcome) && !expected.Any(other => other.Beats(one, expected)))
                        .Select(one => one.Described)
                        .Order(),
                    ranking.Pareto.Select(Described).Order());
            },
            iter: 60);

    [Fact]
    public void Combination_ThatFails_GivesTheReasonThatSolvingItForwardGives()
    {
        Ranking ranking = Ranking.Of(
            [Shelf.Petrol, Shelf.Ethanol], CandidateParts.Of([Shelf.Injector(360, 160), Shelf.Injector(1100, 400)], [Shelf.Pump(2.5, 300)]));

        Combination small = ranking.Combinations.Single(one => one.Injectors!.Name == "injector 360");
        FuelSystem byHand = Shelf.Ethanol.System
            .With(InjectorSet.Of(Wren.InjectorOf(360), 4)).With(FuelSizing.Pumps.Pump.From(Wren.PumpOf(2.5)));
        OperatingResult there = byHand.Solve(Shelf.Ethanol.Points[1]);
        Assert.Equal(Outcome.Fails, small.Outcome);
        Assert.Same(Shelf.Ethanol, small.WeakestStage);
        Assert.Equal($"0.9 bar on E85: {there.Limiting}", small.Explain()!.ToString());
        Assert.Equal(there.Limiting.ToString(), small.SolveWeakest().ToString());
        Assert.Equal(small.SolveWeakest().ToString(), small.SolveMargins()[0].Limit.ToString());
        Dictionary<Part, double?> minimum = new[] { Shelf.Petrol, Shelf.Ethanol }
            .SelectMany(small.Solve)
            .SelectMany(result => result.Margins)
            .GroupBy(margin => margin.Part)
            .ToDictionary(part => part.Key, part => part.Min(margin => margin.Share));
        Assert.Equal(minimum, small.SolveMargins().ToDictionary(margin => margin.Limit.Part, margin => margin.Limit.Margin.Share));
    }

    [Fact]
    public void Combination_ThatServes_HasNoReasonAndItsMarginsHold()
    {
        Ranking ranking = Ranking.Of([Shelf.Petrol], CandidateParts.Of([Shelf.Injector(900, 260)], [Shelf.Pump(2, 240)]));

        Combination best = ranking.Best!;
        Assert.Null(best.Explain());
        Assert.Equal((4 * 260) + 240, best.Cost);
        Assert.All(best.SolveMargins(), margin => Assert.Equal(Outcome.Holds, margin.Limit.Margin.Outcome));
        Assert.Equal(
            best.Solve(Shelf.Petrol).Min(result => (result.Pulse!.Value - result.DeadTime!.Value) / result.System.Injectors.Injector.MinimumOpenTime) - 1,
            best.Turndown!.Value.DecimalFractions,
            12);
        Assert.Contains("injector 900, pump × 2.00", ranking.Headline.ToString(), StringComparison.Ordinal);
        Assert.Equal((Outcome.HoldsAsFarAsJudged, best.SolveMargins().Count), (ranking.Verdict.Outcome, ranking.Verdict.Reasons.Count));
    }

    [Fact]
    public void Verdict_WhereNothingServes_TellsWhatComesNearest()
    {
        Ranking ranking = Ranking.Of([Shelf.Ethanol], CandidateParts.Of([Shelf.Injector(300, 1), Shelf.Injector(500, 1)], [Shelf.Pump(3, 1)]));

        Assert.Null(ranking.Best);
        Assert.Equal(Outcome.Fails, ranking.Verdict.Outcome);
        Assert.StartsWith("0 of 2 combinations are adequate for 0.9 bar on E85. Nearest comes injector 500", ranking.Headline.ToString(), StringComparison.Ordinal);
        Assert.Equal(2, ranking.Verdict.Reasons.Count);
        Assert.StartsWith("injector 500, pump × 3.00: 0.9 bar on E85: injectors: duty cycle", ranking.Verdict.Reasons[0].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void PartsChosenOnce_ServeAllStages_OrNone()
    {
        // Small enough for idle on petrol, large enough for E85 under boost: what serves both serves each.
        CandidateParts parts = CandidateParts.Of(
            [.. Enumerable.Range(4, 12).Select(step => Shelf.Injector(step * 100, step * 10))], [Shelf.Pump(2, 200), Shelf.Pump(2.6, 300)]);

        HashSet<string> Serving(params Stage[] plan) => [.. Ranking.Of(plan, parts).Serving.Select(one => one.ToString())];

        HashSet<string> both = Serving(Shelf.Petrol, Shelf.Ethanol);
        Assert.NotEmpty(both);
        HashSet<string> each = Serving(Shelf.Petrol);
        each.IntersectWith(Serving(Shelf.Ethanol));
        Assert.True(both.SetEquals(each));
    }

    [Fact]
    public void Ranking_OnAnyNumberOfThreads_IsTheSame()
    {
        CandidateParts parts = CandidateParts.Of(
            [.. Enumerable.Range(2, 14).Select(step => Shelf.Injector(step * 100, step))],
            [.. Enumerable.Range(4, 8).Select(step => Shelf.Pump(step / 4.0, 10 * step))],
            Shelf.Regulators);

        string[] On(int threads) =>
            [.. Ranking.Of([Shelf.Petrol, Shelf.Ethanol], parts, threads).Combinations.Select(Described)];

        string[] one = On(1);
        Assert.Equal(one, On(2));
        Assert.Equal(one, On(7));
    }

    [Fact]
    public void Regulator_ThatDoesNotFitTheLayout_IsLeftOutWithTheReason()
    {
        Ranking ranking = Ranking.Of(
            [Shelf.Petrol],
            CandidateParts.Of(regulators:
            [
                Shelf.Regulators[1],
                Candidate.Of<PressureRegulator>("controller E", ElectronicReturnless.Holding(Wren.Kpa(350), true, Wren.Volt(6))),
            ]));

        LeftOut controller = Assert.Single(ranking.LeftOut);
        Assert.Equal("controller E", controller.Name);
        Assert.Equal("ranking.regulator-left-out", controller.Reason.Code);
        Assert.Equal("regulator.needs-returnless", Assert.IsType<Statement>(controller.Reason.Arguments[1].Value).Code);
        Assert.Contains("FuelSystem.Returnless", $"{controller}", StringComparison.Ordinal);
        Assert.Contains("50.8 psi", controller.In(TextStyle.UsCustomary), StringComparison.Ordinal);
        Assert.Single(ranking.Combinations);
    }

    [Fact]
    public void Ranking_Stopped_KeepsWhatWasJudgedAndSaysSo()
    {
        using CancellationTokenSource stop = new();
        CandidateParts parts = CandidateParts.Of([Shelf.Injector(800, 1)], [.. Enumerable.Range(1, 40).Select(step => Shelf.Pump(step / 10.0, step))]);

        Ranking ranking = Ranking.Of(
            [Shelf.Petrol], parts, threads: 1, new Listener(share => { if (share.Percent >= 25) { stop.Cancel(); } }), stop.Token);

        Assert.False(ranking.IsComplete);
        Assert.Equal(10, ranking.Combinations.Count);
        Assert.Contains("stopped", ranking.Headline.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Arrangements_AreWhatTheyAreBuiltOf()
    {
        Candidate<Pump> pump = Candidate.Of("pump W", FuelSizing.Pumps.Pump.From(Wren.WiredCurve(13.5, 1)), 150);
        Pump fitted = FuelSizing.Pumps.Pump.From(Wren.PumpOf(1));

        Candidate<PumpAssembly> pair = Assert.Single(PumpArrangement.InParallel([pump], 2));
        Candidate<PumpAssembly> behind = Assert.Single(PumpArrangement.InSeriesWith(fitted, SeriesBypass.CheckValve, [pump]));

        Assert.Equal(("2 × pump W in parallel", 300m), (pair.Name, pair.Cost));
        Assert.Equal(("pump P then pump W", 150m), (behind.Name, behind.Cost));
        Assert.Equal(PumpParallel.Of(pump.Part, pump.Part).CurveAt(Wren.Volt(13.5)), pair.Part.CurveAt(Wren.Volt(13.5)));
        Assert.Equal(PumpSeries.Of(SeriesBypass.CheckValve, fitted, pump.Part).CurveAt(Wren.Volt(13.5)), behind.Part.CurveAt(Wren.Volt(13.5)));
    }

    /// <summary>One pump without current in its curves cannot be wired; the others can, and the ranking says why it is not among them.</summary>
    [Fact]
    public void Arrangements_OfAPumpThatCannotBeWired_LeaveItOutWithTheReason()
    {
        Candidate<Pump>[] pumps =
        [
            Candidate.Of("pump W", FuelSizing.Pumps.Pump.From(Wren.WiredCurve(13.5, 1)), 150),
            Candidate.Of("pump P", FuelSizing.Pumps.Pump.From(Wren.PumpOf(2)), 100),
        ];
        Feed feed = Feed.Of(
            "feed", Conductor.Awg(10), Length.FromMeters(2), Length.FromMeters(2), Temperature.FromDegreesCelsius(60), Contact.DefaultRelay);
        Candidate<PumpAssembly>[] arranged =
        [
            .. PumpArrangement.Alone(pumps, feed),
            .. PumpArrangement.InParallel(pumps, 2, feed),
            .. PumpArrangement.InSeriesWith(FuelSizing.Pumps.Pump.From(Wren.PumpOf(1)), SeriesBypass.CheckValve, pumps, feed),
        ];
        Assert.Equal(6, arranged.Length);
        Assert.Equal([null, "P", null, "P", null, "P"], arranged.Select(one => one.LeftOut is null ? null : "P"));

        Ranking ranking = Ranking.Of([Shelf.Petrol], CandidateParts.Of(pumps: arranged));
        Assert.Equal(3, ranking.Combinations.Count);
        Assert.All(ranking.Combinations, one => Assert.Null(one.Pump!.LeftOut));
        Assert.Equal(["pump P", "2 × pump P in parallel", "pump P then pump P"], ranking.LeftOut.Select(left => left.Name));
        Assert.All(ranking.LeftOut, left => Assert.Contains("curves have no current", left.ToString(), StringComparison.Ordinal));

        // With none left there is no combination, and nothing is said to serve.
        Ranking none = Ranking.Of([Shelf.Petrol], CandidateParts.Of(pumps: PumpArrangement.Alone(pumps[1..], feed)));
        Assert.Empty(none.Combinations);
        Assert.False(Judged.IsHolding(none.Verdict.Outcome));
    }

    /// <summary>A name may have 80 characters; what is composed of several is shortened, and stays a name of its own.</summary>
    [Fact]
    public void Arrangements_OfLongNames_AreShortenedAndStayDifferent()
    {
        string Long(string end) => $"{new string('a', 38)}{end}{new string('b', 41)}";
        string surrogates = string.Concat(Enumerable.Repeat("🚗", 40));
        Candidate<Pump>[] pumps =
        [
            .. new[] { Long("1"), Long("2"), Long("3"), surrogates, "short" }
                .Select(name => Candidate.Of(name, FuelSizing.Pumps.Pump.From(Wren.WiredCurve(13.5, 1)), 150)),
        ];
        Candidate<PumpAssembly>[] pairs = [.. PumpArrangement.InParallel(pumps, 2)];
        Assert.All(pairs, pair => Assert.InRange(pair.Name.Length, 1, 80));
        Assert.Equal(5, pairs.DistinctBy(pair => pair.Name).Count());
        Assert.All(pairs, pair => Assert.EndsWith("parallel", pair.Name.Split(" (")[0], StringComparison.Ordinal));
        Assert.All(pairs, pair => Assert.StartsWith("2 × ", pair.Name, StringComparison.Ordinal));
        Assert.Equal("2 × short in parallel", pairs[^1].Name);

        // As a name that a user gives must be: no half of a surrogate pair.
        Assert.All(pairs, pair => Assert.Equal(pair.Name, Candidate.Of(pair.Name, pair.Part).Name));
        Assert.Equal(5, Ranking.Of([Shelf.Petrol], CandidateParts.Of(pumps: pairs)).Combinations.Count);
    }

    [Fact]
    public void Candidates_OfOneNameTwice_OrNoneAtAll_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => CandidateParts.Of());
        Assert.Throws<ArgumentException>(() => CandidateParts.Of([Shelf.Injector(500, 1), Shelf.Injector(500, 2)]));
        Assert.Equal("cost", Assert.Throws<ArgumentOutOfRangeException>(() => Shelf.Injector(500, -1)).ParamName);
        Assert.Equal("cost", Assert.Throws<ArgumentOutOfRangeException>(() => Shelf.Injector(500, 1_000_001)).ParamName);
    }

    private static string Described(Combination one) =>
        FormattableString.Invariant($"{one}|{one.Cost}|{one.Outcome}|{one.WeakestCheck.Share:R}|{one.TurndownShare:R}|{one.ReserveShare:R}");

    /// <summary>One combination solved forward by the public API alone, and ordered by the words of the documentation.</summary>
    private sealed record Solved(string Name, decimal? Cost, Outcome Outcome, double? Weakest, double Turndown, double Reserve, int Place)
    {
        public string Described => FormattableString.Invariant($"{Name}|{Cost}|{Outcome}|{Weakest:R}|{Turndown:R}|{Reserve:R}");

        public static IComparer<Solved> BestFirst { get; } = Comparer<Solved>.Create((x, y) =>
            x.Outcome != y.Outcome ? Rank(x.Outcome).CompareTo(Rank(y.Outcome))
            : Judged.IsHolding(x.Outcome) && x.Cost != y.Cost ? (x.Cost ?? decimal.MaxValue).CompareTo(y.Cost ?? decimal.MaxValue)
            : Judged.IsHolding(x.Outcome) && x.Reserve != y.Reserve ? y.Reserve.CompareTo(x.Reserve)
            : !Judged.IsHolding(x.Outcome) && x.Weakest != y.Weakest ? (y.Weakest ?? double.PositiveInfinity).CompareTo(x.Weakest ?? double.PositiveInfinity)
            : x.Place.CompareTo(y.Place));

        private static int Rank(Outcome outcome) => outcome switch { Outcome.Holds or Outcome.HoldsAsFarAsJudged => 0, Outcome.CannotSay => 1, _ => 2 };

        public static IEnumerable<Solved> All(Stage[] plan, CandidateParts parts)
        {
            int place = 0;
            foreach (Candidate<PumpAssembly> pump in parts.Pumps)
            {
                foreach (Candidate<PressureRegulator> regulator in parts.Regulators)
                {
                    foreach (Candidate<Injector> injector in parts.Injectors)
                    {
                        Margin[] margins =
                        [
                            .. from stage in plan
                               let system = FuelSystem.Return(
                                   stage.System.Demand, InjectorSet.Of(injector.Part, 4), regulator.Part, pump.Part, stage.System.Limits)
                               from point in stage.Points
                               from margin in system.Solve(point).Margins
                               select margin,
                        ];
                        Outcome worst = margins.MaxBy(margin => Rank(margin.Outcome))!.Outcome;
                        double Minimum(Func<Margin, bool> which) => margins.Where(which)
                            .Min(margin => margin.Reserve?.DecimalFractions ?? double.PositiveInfinity);
                        yield return new(
                            $"{injector.Name}, {pump.Name}, {regulator.Name}",
                            (4 * injector.Cost) + pump.Cost + regulator.Cost,
                            worst == Outcome.Holds ? Outcome.HoldsAsFarAsJudged : worst,
                            margins.Where(margin => margin.Outcome == worst).Min(margin => margin.Reserve?.DecimalFractions),
                            Minimum(margin => margin.Part == Part.MinimumPulse),
                            Minimum(margin => margin.Part != Part.MinimumPulse),
                            place++);
                    }
                }
            }
        }

        public bool Beats(Solved one, Solved[] all)
        {
            if (!Judged.IsHolding(Outcome))
            {
                return false;
            }

            bool priced = all.Where(other => Judged.IsHolding(other.Outcome)).All(other => other.Cost is not null);
            double[] mine = [priced ? -(double)Cost! : 0, Turndown, Reserve];
            double[] others = [priced ? -(double)one.Cost! : 0, one.Turndown, one.Reserve];
            return mine.Zip(others).All(pair => pair.First >= pair.Second) && mine.Zip(others).Any(pair => pair.First > pair.Second);
        }
    }
}
