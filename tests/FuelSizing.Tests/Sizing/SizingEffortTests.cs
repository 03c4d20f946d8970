using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Tests.Circuits;
using UnitsNet;

namespace FuelSizing.Tests.Sizing;

/// <summary>A search solves the whole system at every figure that it looks at: it looks at no more than it needs.</summary>
public class SizingEffortTests
{
    private const double End = 96;

    // Ends and middles of the scan's steps.
    private const int Scanned = (2 * HoldingRanges.Steps) + 1;

    private static readonly FuelSystem Wide = Wren.System(injector: 900, pump: 4);

    private static readonly OperatingPoint At = Wren.At(3000, 0);

    private static readonly PointDemand Demand = Wide.Parts.DemandAt(At);

    private static readonly CircuitState Circuit = CircuitSolver.Solve(Wide.Parts.TaskAt(Demand));

    private int _solved;

    /// <summary>Beside the scan a straight reserve's edge takes a few figures: where it is nothing, a hair inside, that in few digits, and the answer.</summary>
    [Fact]
    public void EdgeOfAStraightReserve_TakesAFewFiguresBesideTheScan()
    {
        Assert.InRange(Solved(() => Over(figure => figure - 20.3).Minimum(Figure)), Scanned, Scanned + 9);
        Assert.InRange(Solved(() => Over(figure => 20.3 - figure).Maximum(Figure)), Scanned, Scanned + 8);
    }

    /// <summary>Where all holds there is no edge: the answer is solved once more. At a jump the edge is halved down to the last digits.</summary>
    [Fact]
    public void WhereThereIsNoEdge_OnlyTheAnswerIsSolvedBesideTheScan()
    {
        Assert.Equal(Scanned + 1, Solved(() => Over(_ => 1).Minimum(Figure)));
        Assert.InRange(Solved(() => Over(figure => figure < 20.3 ? -1 : 1).Minimum(Figure)), Scanned + 14, Scanned + 70);
    }

    /// <summary>Where nothing holds the nearest figure is looked for within a step of the best of the scan, by the golden section.</summary>
    [Fact]
    public void NearestFigure_IsLookedForBesideTheBestOfTheScan()
    {
        Assert.InRange(Solved(() => Over(figure => -1 - Math.Abs(figure - 20.3)).Minimum(Figure)), Scanned + 40, Scanned + 65);
        Assert.Contains("at 20.3, where it comes nearest", Over(figure => -1 - Math.Abs(figure - 20.3)).Minimum(Figure).ToString(), StringComparison.Ordinal);
    }

    /// <summary>
    /// Of two points one fails at every figure, and decides the scan: where nothing holds, the other is asked at the best of the scan and beside it only, for no figure can be better
    /// than what is known of it already.
    /// </summary>
    [Fact]
    public void NearestFigure_OfSeveralPoints_IsLookedForWhereItCanBe()
    {
        int[] asked = new int[2];
        SizingSearch search = new(0, End, 2, figure => new(
            point =>
            {
                asked[point]++;
                return [.. WithReserve(point == 0 ? -1 - Math.Abs(figure - 20.3) : -0.5).Margins.Select(margin => margin.Reading)];
            },
            point => WithReserve(point == 0 ? -1 - Math.Abs(figure - 20.3) : -0.5)));
        Assert.Contains("at 20.3, where it comes nearest", search.Minimum(Figure).ToString(), StringComparison.Ordinal);
        Assert.InRange(asked[0], Scanned + 40, Scanned + 65);
        Assert.InRange(asked[1], 40, 65);
    }

    /// <summary>What follows from a figure costs no solving: 512 places over the range, and the golden section beside the best of them, for its lowest and its highest.</summary>
    [Fact]
    public void Extremes_OfWhatFollows_TakeNoSolving()
    {
        int asked = 0;
        double Amount(double figure)
        {
            asked++;
            return figure;
        }

        SizedFigure<double> output = new(figure => figure, (figure, other) => Statement.Of("output", $"{figure.Towards(other):0.00}"), figure => figure);
        int solved = Solved(() => Over(figure => 60.57 - figure).MaximumOf(output, Figure, Amount));
        Assert.InRange(asked, 2 * 513, 1120);
        Assert.InRange(solved, Scanned, Scanned + 9);
    }

    /// <summary>
    /// A point answers for 41 pressures, each solved once; for one pressure once. Where a check begins to break between two of them it is halved 26 times. Counted by the questions to a return line.
    /// </summary>
    [Fact]
    public void RailResponse_SolvesItsPlacesAndWhereAnotherCheckBreaks()
    {
        SquareLawResistance line = new(1);
        FuelSystem Of(SizingLimits? limits) => EqualDeadTimes.With(EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(300)), limits), (4000, 0.5, 0.9)).With(Plumbing.Of(returnLine: [line]));
        (FuelSystem car, FuelSystem rated) = (Of(null), Of(SizingLimits.Of(Wren.Percent(99), Wren.Percent(10), Wren.Kpa(473))));
        OperatingPoint point = Wren.At(4000, 0.5);
        int Asked(Func<object> ask)
        {
            int before = line.Asked;
            _ = ask();
            return line.Asked - before;
        }

        int once = Asked(() => car.Solve(point));
        Assert.Equal(once, Asked(() => new RailResponse(car, point, 420e3, 420e3)));
        Assert.Equal(41 * once, Asked(() => new RailResponse(car, point, 250e3, 650e3)));
        Assert.Equal((41 + 26) * once, Asked(() => new RailResponse(rated, point, 250e3, 650e3)));
        RailResponse response = new(car, point, 250e3, 650e3);
        Assert.Equal(once, Asked(() =>
        {
            response.Learn(411e3);
            response.Learn(411e3);
            response.Learn(420e3);
            return response;
        }));
    }

    /// <summary>A cut-out asks for every speed of the line many times, and solves it once.</summary>
    [Fact]
    public void CutOut_SolvesEachSpeedOnce()
    {
        SquareLawResistance line = new(1);
        FuelSystem system = EqualDeadTimes.Built(ManifoldReferenced.From(Wren.Kpa(300)), SizingLimits.Default.With(MixtureLimits.Of(0.9, Pressure.FromBars(0.05))))
            .With(Plumbing.Of(returnLine: [line]));
        system = system.With(AirflowMeterController.Of(
            ControllerData.Of(system.Injectors.Injector, FuelSizing.Fuels.Fuel.Petrol, TargetLambda.At(0.82)).WithFuelTemperature(Wren.Hill.FuelTemperature)));
        _ = system.Solve(Wren.At(4000, 0.3));
        int once = line.Asked;
        BoostLine hump = MeasuredBoost.Of((Wren.Rpm(2500), Wren.Kpa(10)), (Wren.Rpm(4100), Wren.Kpa(50)), (Wren.Rpm(6000), Wren.Kpa(30)));
        CutOutResult found = CutOut.PressuresFor(system, hump, Wren.Rpm(2500), Wren.Rpm(6000), Wren.Hill);
        Assert.Equal(300 * Math.Pow(0.82 / 0.9, 2), found.DifferentialSwitch.Minimum!.Value.Kilopascals, 1e-5);
        Assert.InRange((line.Asked - once) / once, 100, 2500);
    }

    private int Solved<T>(Func<T> ask)
    {
        int before = _solved;
        _ = ask();
        return _solved - before;
    }

    private SizingSearch Over(Func<double, double> reserve) => new(0, End, 1, figure =>
    {
        Assert.InRange(figure, 0, End);
        _solved++;
        OperatingResult result = WithReserve(reserve(figure));
        return new(_ => [.. result.Margins.Select(margin => margin.Reading)], _ => result);
    });

    private static OperatingResult WithReserve(double reserve)
    {
        Injection injection = new(250e3, 15e-6, 0.04, 1e-3, 1, 0.5, (1 + reserve) * Demand.Injected);
        return new(Wide, At, Demand, Wide.Parts.CircuitOf(Wide.Parts.TaskAt(Demand), CircuitBounds.Exactly(Circuit)), (injection, injection));
    }

    private static SizedFigure<double> Figure { get; } =
        new(figure => figure, (figure, other) => Statement.Of("figure", $"{figure.Towards(other):0.0}"), figure => Math.Round(figure, 6));
}
