using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>What is extreme along a line: where the mixture can be leanest, the rail stands lowest and highest, most is drawn from a surge tank and least is left to refill it.</summary>
internal sealed record LineExtremes(
    OperatingResult? Leanest,
    OperatingResult LowestRail,
    OperatingResult HighestRail,
    OperatingResult? LargestDraw,
    OperatingResult? SmallestSurplus);

/// <summary>Finds it, in numbers: of the places that it looks at only those that it answers with are solved in full.</summary>
internal sealed class LineExtremeSearch
{
    // The highest point that was solved need not lie on the highest hump.
    private const int Humps = 4;

    // Margins far from their limits are looked at sparsely; a hump of lambda there is found by looking everywhere.
    private const int SpeedsForExtremes = 48;

    private const int Halvings = 14;

    private static readonly Func<Figures, double>[] _lowest =
    [
        figures => -figures.Leanest, figures => figures.Rail, figures => -figures.Rail, figures => -figures.Drawn, figures => figures.Surplus,
    ];

    private readonly RangeSearch _search;
    private readonly SystemParts _parts;
    private readonly PumpRoom _room = new();
    private readonly List<(double Speed, Figures Rising, Figures? Falling)> _known = [];

    private LineExtremeSearch(RangeSearch search, SystemParts parts) => (_search, _parts) = (search, parts);

    /// <summary>Looks along a line that was swept.</summary>
    /// <param name="search">That swept it.</param>
    /// <param name="parts">Of the system.</param>
    /// <param name="from">Lowest speed, rev/min.</param>
    /// <param name="to">Highest speed, rev/min.</param>
    public static LineExtremes Of(RangeSearch search, SystemParts parts, double from, double to)
    {
        for (int step = 1; step < SpeedsForExtremes; step++)
        {
            search.At(from + ((to - from) * step / SpeedsForExtremes), 0);
        }

        // A switched pump may be on or off at one boost: each place counts with the state that is the further out.
        LineExtremeSearch extremes = new(search, parts);
        OperatingResult leanest = extremes.Where(_lowest[0]);
        bool drawn = parts.SurgeTank is not null;
        return new(
            leanest.Mixture.MaximumLambda is null ? null : leanest,
            extremes.Where(_lowest[1]),
            extremes.Where(_lowest[2]),
            drawn ? extremes.Where(_lowest[3]) : null,
            drawn ? extremes.Where(_lowest[4]) : null);
    }

    /// <summary>Where a figure is lowest: from the lowest places of a few humps of what was looked at, downhill.</summary>
    private OperatingResult Where(Func<Figures, double> figure)
    {
        int[] along = [.. Enumerable.Range(0, _search.Count).OrderBy(place => At(place).Speed)];
        int[] starts =
        [
            .. Enumerable.Range(0, along.Length).Where(at =>
                (at == 0 || Order(along[at], along[at - 1]) < 0) && (at == along.Length - 1 || Order(along[at], along[at + 1]) <= 0))
                .Select(at => along[at]).OrderBy(Furthest).Take(Humps),
        ];
        int lowest = starts.Select(start => Downhill.From(start, _search.StepsAround(start), Halvings, _search.WhereIs, _search.Within, Order)).MinBy(Furthest);
        OperatingResult found = _search.ResultAt(lowest);
        return found.Falling is { } falling && figure(At(lowest).Falling!.Value).CompareTo(figure(At(lowest).Rising)) < 0 ? falling : found;

        int Order(int one, int other) => Furthest(one).CompareTo(Furthest(other));

        double Furthest(int place)
        {
            (_, Figures rising, Figures? falling) = At(place);
            return falling is { } other ? Math.Min(figure(rising), figure(other)) : figure(rising);
        }
    }

    private (double Speed, Figures Rising, Figures? Falling) At(int place)
    {
        while (_known.Count <= place)
        {
            OperatingPoint point = _search.PointAt(_known.Count);
            PointDemand demand = _parts.DemandAt(point);
            _known.Add((
                point.RevolutionsPerSecond,
                In(_parts, demand),
                _parts.FallingAt(point.BoostPascals) is { } falling ? In(falling, demand) : null));
        }

        return _known[place];
    }

    private Figures In(SystemParts parts, in PointDemand demand)
    {
        SolvedCircuit circuit = parts.CircuitAt(demand, room: _room);
        SolvedMixture mixture = MixtureSolver.In(parts, demand, circuit, parts.InjectionAt(demand, circuit));
        return new(
            Known(mixture.MaximumLambda, double.NegativeInfinity),
            mixture.Rail,
            Known(circuit.Lift?.MaximumDrawn ?? double.NaN, double.PositiveInfinity),
            Known(circuit.Lift?.SurplusOfAtLeast ?? double.NaN, double.NegativeInfinity));
    }

    private static double Known(double figure, double otherwise) => double.IsNaN(figure) ? otherwise : figure;

    /// <summary>What is looked for, at one place in one state of the switched pumps; what is not known counts as least lean, and as most drawn and least left.</summary>
    private readonly record struct Figures(double Leanest, double Rail, double Drawn, double Surplus);
}
