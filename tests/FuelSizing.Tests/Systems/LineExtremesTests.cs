using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>What is extreme along a boost line: the leanest mixture, the rail, what a surge tank gives; between the points shown too, and in both states of a switch.</summary>
public class LineExtremesTests
{
    private static readonly BoostLine Level = MeasuredBoost.Of((Wren.Rpm(4500), Wren.Kpa(35)), (Wren.Rpm(6500), Wren.Kpa(35)));

    /// <summary>
    /// A controller whose pulse is short at two speeds that are no knots of anything: the leanest of both is found from the two ends of the line alone, whichever comes first,
    /// to 5 rev/min of where a scan has it.
    /// </summary>
    [Theory]
    [InlineData(2.0, 2.4)]
    [InlineData(2.4, 2.0)]
    public void Leanest_OfTwoHumps_IsTheHigher(double first, double second)
    {
        // Nothing that is judged makes the sweep look between the ends.
        FuelSystem system = ShapedCheck.Judging(_ => 0.5, Wren.System(pump: 2).With(CustomController.Of(new Humps(first, second))));
        LineSweepResult sweep = system.Sweep(Level, [Wren.Rpm(5000), Wren.Rpm(6000)], Wren.Hill);
        OperatingResult scanned = Enumerable.Range(0, 201).Select(step => system.Solve(OperatingPoint.At(Wren.Rpm(5000 + (5 * step)), Wren.Kpa(35), Wren.Hill)))
            .MaxBy(result => result.Mixture.MaximumLambda)!;
        Assert.Equal(first > second ? 5271 : 5779, scanned.Point.Speed.RevolutionsPerMinute, 7.5);
        Assert.Equal(scanned.Point.Speed.RevolutionsPerMinute, sweep.Leanest!.Point.Speed.RevolutionsPerMinute, 5.0);
        Assert.True(sweep.Leanest.Mixture.MaximumLambda >= scanned.Mixture.MaximumLambda - 1e-9);
    }

    /// <summary>The rail of a rising rate is lowest where the line begins, and highest where it ends: 300 + 10 and 300 + 10 + 4 · 20 kPa.</summary>
    [Fact]
    public void Rail_OfARisingRate_IsLowestAndHighestAtTheEnds()
    {
        BoostLine rising = MeasuredBoost.Of((Wren.Rpm(4500), Wren.Kpa(10)), (Wren.Rpm(6500), Wren.Kpa(30)));
        LineSweepResult sweep = Wren.System(RisingRate.From(Wren.Kpa(300), 4, Wren.Kpa(10)), pump: 2).Sweep(rising, [Wren.Rpm(4500), Wren.Rpm(6500)], Wren.Hill);
        Assert.Equal((310, 390), (Math.Round(sweep.LowestRail.Mixture.RailGauge.Kilopascals, 6), Math.Round(sweep.HighestRail.Mixture.RailGauge.Kilopascals, 6)));
        Assert.Null(sweep.LargestDraw);
        Assert.Null(sweep.SmallestSurplus);
    }

    /// <summary>
    /// Between the boosts of a switch the second pump runs as boost falls, and does not as it rises: the rail is lowest with one pump, which sags at speed, and highest with
    /// both; of either it is what a system described so has.
    /// </summary>
    [Fact]
    public void Rail_InTheBandOfASwitch_IsThatOfTheFurtherState()
    {
        Pump first = Pump.From(Wren.PumpOf(0.5));
        Pump second = Pump.From(Wren.PumpOf(0.6));
        Plumbing narrow = Plumbing.Of(returnLine: [SurgeTanks.Hose("return", 2.2, 3)]);
        FuelSystem Of(PumpAssembly pumps) => Wren.System().With(narrow).With(pumps);
        double[] Rails(FuelSystem system) => [.. Enumerable.Range(0, 16).Select(step => system.Solve(OperatingPoint.At(Wren.Rpm(5000 + (100 * step)), Wren.Kpa(35), Wren.Hill)).Mixture.RailGauge.Kilopascals)];
        LineSweepResult sweep = Of(PumpParallel.Of(first, SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), second))).Sweep(Level, [Wren.Rpm(5000), Wren.Rpm(6500)], Wren.Hill);
        double lowest = Rails(Of(first)).Min();
        double highest = Rails(Of(PumpParallel.Of(first, second))).Max();
        Assert.True(lowest < Rails(Of(PumpParallel.Of(first, second))).Min() - 5 && highest > Rails(Of(first)).Max() + 5, $"{lowest}, {highest}");
        Assert.Equal(lowest, sweep.LowestRail.Mixture.RailGauge.Kilopascals, 0.05);
        Assert.Equal(highest, sweep.HighestRail.Mixture.RailGauge.Kilopascals, 0.05);
    }

    /// <summary>Of a surge tank most is drawn, and least is left to refill it, where the engine takes most: by a fine scan. On a voltage without data neither is known.</summary>
    [Fact]
    public void SurgeTank_AlongALine_IsEmptiedFastestWhereTheEngineTakesMost()
    {
        FuelSystem system = SurgeTanks.Wren(SurgeTanks.Bare());
        UncoveredPickupAlongLine pull = system.UncoverPickup(Level, Wren.Rpm(5000), Wren.Rpm(6500), Wren.Hill);
        UncoveredPickupResult[] scanned = [.. Enumerable.Range(0, 31).Select(step => system.UncoverPickup(OperatingPoint.At(Wren.Rpm(5000 + (50 * step)), Wren.Kpa(35), Wren.Hill)))];
        Assert.Equal(scanned.Min(at => at.MinimumCarried!.Value.Seconds), pull.Shortest.MinimumCarried!.Value.Seconds, 0.01);
        Assert.Equal(scanned.Max(at => at.MaximumRefill!.Value.Seconds), pull.SlowestRefill.MaximumRefill!.Value.Seconds, 0.01);
        Assert.True(scanned.Max(at => at.MinimumCarried!.Value.Seconds) > pull.Shortest.MinimumCarried.Value.Seconds + 1);

        Conditions dim = Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(6), Wren.Hill.FuelTemperature);
        UncoveredPickupAlongLine unknown = SurgeTanks.Wren(SurgeTanks.Bare(to: ReturnDestination.MainTank)).UncoverPickup(Level, Wren.Rpm(5000), Wren.Rpm(6500), dim);
        Assert.Null(unknown.Shortest.MinimumCarried);
        Assert.Equal(RefillAnswer.CannotSay, unknown.SlowestRefill.Refill);
    }

    /// <summary>The first limit that is reached as speed rises comes first, however little it is passed by; what holds comes after all that fails, tightest first.</summary>
    [Fact]
    public void Standings_AlongALine_AreInTheOrderOfTheirLimits()
    {
        // The shape fails from 5,100 rev/min on by up to 1 %; the small injectors by much more, from a higher speed on.
        FuelSystem system = Wren.System(injector: 405, pump: 2).With(new ShapedCheck(at => Math.Max(-0.01, (5100 - (at.Speed * 60)) / 10_000)));
        LineSweepResult sweep = system.Sweep(Level, [Wren.Rpm(5000), Wren.Rpm(6400)], Wren.Hill);
        PartStanding[] failing = [.. sweep.Standings.Where(standing => standing.Outcome == Outcome.Fails)];
        Assert.True(failing.Length > 1 && failing.Any(standing => standing.Tightest.Margin.Share < -0.02));
        Assert.Equal(ShapedCheck.Shape, sweep.Limiting.Part);
        Assert.Equal(5100, sweep.Limiting.LimitReachedAt!.Speed.RevolutionsPerMinute, 1e-3);
        Assert.Equal(failing, sweep.Standings.Take(failing.Length));
        Assert.Equal(failing.Select(standing => standing.LimitReachedAt!.Speed).Order(), failing.Select(standing => standing.LimitReachedAt!.Speed));
        Assert.All(sweep.Standings.Skip(failing.Length), standing => Assert.Null(standing.LimitReachedAt));
    }

    /// <summary>A remedy counts with the points at which its own check fails, not with all that were solved, nor with those at which another does.</summary>
    [Fact]
    public void Remedy_OfACheck_CountsWithItsOwnFailures()
    {
        FuelSystem system = Wren.System(injector: 330, pump: 2).With(new ShapedCheck(at => (5900 - (at.Speed * 60)) / 1000));
        LineSweepResult sweep = system.Sweep(Level, [Wren.Rpm(5000), Wren.Rpm(6400)], Wren.Hill);
        Assert.Contains(sweep.Standings, standing => standing.Part != ShapedCheck.Shape && standing.Outcome == Outcome.Fails);
        Remedy remedy = sweep.Remedies.Single(remedy => remedy.Part == ShapedCheck.Shape);
        Assert.InRange(((Ratio)remedy.Needed!).Percent, 1, sweep.PointsSolved - 3);
    }

    /// <summary>What holds tells by how much: a tenth.</summary>
    [Fact]
    public void Headline_OfWhatHolds_TellsTheReserve()
    {
        LineSweepResult sweep = ShapedCheck.Judging((_, _) => 0.1).Sweep(Level, [Wren.Rpm(5000), Wren.Rpm(6400)], Wren.Hill);
        Assert.EndsWith(": tightest margin: shape, +10 %.", sweep.Verdict.ToString().Split(" Not judged")[0], StringComparison.Ordinal);
    }

    private sealed record Humps(double First, double Second) : IControllerLaw
    {
        public Statement Text => Statement.Of("own.humps", $"short pulses at {Wren.Rpm(5271)} and {Wren.Rpm(5779)}");

        public bool ReadsRailPressure => false;

        public IReadOnlyList<RotationalSpeed> SpeedKinks => [];

        public IReadOnlyList<Pressure> ManifoldKinks => [];

        public Duration? PulseAt(ControllerReading at)
        {
            double Hump(double place) => Math.Exp(-Math.Pow((at.Speed.RevolutionsPerMinute - place) / 45, 2));
            return Wren.Ms(12 - (First * Hump(5271)) - (Second * Hump(5779)));
        }
    }
}
