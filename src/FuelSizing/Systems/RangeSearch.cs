using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Points;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Looks between the points of a sweep for where a check's margin is smaller, so that a claim over the range is true over it.</summary>
/// <remarks>
/// <para>Lines through the points of the engine's tables and the bends of the regulator are added to the sweep's own. In each rectangle
/// between them nine points are solved: corners, middles of the edges, centre. How far the middles lie off the straight line through the
/// ends bounds how far a margin may dip between them; where that might take it to its limit, the rectangle is halved along the direction in
/// which it changes more. A rectangle in which every corner is far from every limit, and that is small or flat, is not looked into.</para>
/// <para>Where a margin is so near to its limit that halving does not settle it, the check cannot say.</para>
/// </remarks>
internal sealed class RangeSearch
{
    // Rectangles that are worth looking into even where every corner is far from its limit: of this ratio of speeds, of so much boost.
    private const double WideSpeeds = 1.15;
    private const double WideBoosts = 20e3;
    private const double FarFromLimit = 0.1;

    // On a smooth margin the dip is at most what the middle is off the straight line; more allows for one that is not so smooth. Along speed and
    // along boost it may dip at the same place: both count.
    private const double Dip = 1.5;
    private const double Slope = 0.02;

    // What nine points do not show is the less likely the smaller the rectangle.
    private const double SlopeFades = 0.7;
    private const double Trace = 1e-9;

    // A margin of +100 % or more is as good as any; steep ones would have rectangles halved for nothing.
    private const double Ample = 1;

    private const int MaximumHalvings = 22;

    private const int HalvingsBeforeSearch = 10;
    private const int SearchHalvings = 8;

    // Of a check that fails somewhere only the lowest boost is looked for at which it does.
    private const int MaximumHalvingsOfFailing = 4;

    // A dip of a millionth is none: a margin that is met exactly, as by an answer that is put back, holds.
    private const double Millionth = 1e-6;
    private const int MaximumPoints = 20_000;

    // Beside the begin of a hand-over by duty cycle: a share of a speed, and Pa.
    private const double BesideHandOver = 1e-8;
    private const double BesideBoost = 0.01;

    // Stands for the boost where that follows from speed: one line of cells without height.
    private const double OnTheLine = 0;

    private readonly FuelSystem _system;
    private readonly CircuitTable? _table;
    private readonly Conditions _conditions;
    private readonly BoostLine? _line;
    private readonly CancellationToken _cancellation;
    private readonly Dictionary<(double Speed, double Boost), OperatingResult> _solved = [];
    private readonly bool[] _isOpen;
    private readonly double[] _failsFrom;
    private readonly Stack<Cell> _cells = new();
    private double[] _speeds = [];
    private double[] _boosts = [];

    private RangeSearch(FuelSystem system, CircuitTable? table, Conditions conditions, BoostLine? line, CancellationToken cancellation)
    {
        (_system, _table, _conditions, _line, _cancellation) = (system, table, conditions, line, cancellation);
        _isOpen = new bool[system.Applicable.Length];
        _failsFrom = new double[_isOpen.Length];
        Array.Fill(_failsFrom, double.PositiveInfinity);
    }

    /// <summary>Every point that was solved, the sweep's own among them.</summary>
    public IReadOnlyCollection<OperatingResult> Points => _solved.Values;

    /// <summary>The lowest boost at which a check, by its place, was found to fail, Pa; infinite where it was not.</summary>
    public double FailsFrom(int check) => _failsFrom[check];

    /// <summary>True where a check, by its place, comes so near to its limit that it cannot be said whether it keeps it everywhere.</summary>
    public bool IsOpen(int check) => _isOpen[check];

    /// <summary>Looks between the points of a sweep.</summary>
    /// <param name="system">That was swept.</param>
    /// <param name="table">What is known of its circuits, if anything.</param>
    /// <param name="grid">The sweep's results, boost by boost.</param>
    /// <param name="speeds">How many speeds each boost has.</param>
    /// <param name="cancellation">Stops the search; what was not looked at stays open.</param>
    public static RangeSearch Over(
        FuelSystem system, CircuitTable? table, IReadOnlyList<OperatingResult> grid, int speeds, CancellationToken cancellation)
    {
        RangeSearch search = new(system, table, grid[0].Point.Conditions, null, cancellation);
        foreach (OperatingResult result in grid)
        {
            search.Take(result);
        }

        double[] ownSpeeds = [.. grid.Take(speeds).Select(result => result.Point.Speed.RevolutionsPerMinute)];
        double[] ownBoosts = [.. grid.Where((_, place) => place % speeds == 0).Select(result => result.Point.Boost.Pascals)];
        double[] across = Lines(ownSpeeds, SpeedKnots.Of(system).Select(speed => speed * 60));
        double[] up = Lines(ownBoosts, BoostKnots.Of(system, grid[0].Point.Conditions.Atmosphere.Pascals, ownBoosts[0], ownBoosts[^1]));
        (search._speeds, search._boosts) = (across, up);
        if (system.StagedInjectors is { HandOver.IsByDutyCycle: true })
        {
            search.LookAlongHandOver();
        }

        search.Cover();
        return search;
    }

    /// <summary>Looks between the speeds of a sweep along a boost line, where boost follows from speed.</summary>
    /// <param name="system">That was swept.</param>
    /// <param name="line">Its boost line.</param>
    /// <param name="own">The sweep's results, speeds rising.</param>
    public static RangeSearch Along(FuelSystem system, BoostLine line, IReadOnlyList<OperatingResult> own)
    {
        Conditions conditions = own[0].Point.Conditions;
        RangeSearch search = new(system, null, conditions, line, CancellationToken.None);
        foreach (OperatingResult result in own)
        {
            search.Take(result);
        }

        double[] ownSpeeds = [.. own.Select(result => result.Point.Speed.RevolutionsPerMinute)];
        search._boosts = [OnTheLine];
        search._speeds = Lines(ownSpeeds, LineKnots.Of(system, line, conditions, ownSpeeds[0] / 60, ownSpeeds[^1] / 60).Select(speed => speed * 60));
        if (system.StagedInjectors is { HandOver.IsByDutyCycle: true })
        {
            search._speeds = Lines(search._speeds, HandOverKnots.ByDutyCycle(search._speeds, speed => search.At(speed, OnTheLine)).SelectMany(Beside));
        }

        search.Cover();
        return search;
    }

    /// <summary>The result at a speed, rev/min, and a boost, Pa; none if they are not in the range.</summary>
    public OperatingResult? Within(double speed, double boost) =>
        speed >= _speeds[0] && speed <= _speeds[^1] && (_line is not null || (boost >= _boosts[0] && boost <= _boosts[^1])) ? At(speed, boost) : null;

    /// <summary>Half the distance from a point to the next line of speed, rev/min, and of boost, Pa; zero where there is one only.</summary>
    public (double Speed, double Boost) StepsAround(OperatingPoint point) =>
        (StepAround(_speeds, point.Speed.RevolutionsPerMinute) / 2, StepAround(_boosts, point.Boost.Pascals) / 2);

    private static double StepAround(double[] lines, double place)
    {
        int above = Array.FindIndex(lines, line => line >= place);
        double before = above > 0 ? place - lines[above - 1] : 0;
        int next = Array.FindIndex(lines, line => line > place);
        double after = next >= 0 ? lines[next] - place : 0;
        return Math.Max(before, after);
    }

    // A knot that another unit has moved off the sweep's own line by a rounding is that line.
    private static double[] Lines(double[] own, IEnumerable<double> knots) =>
    [
        .. own.Concat(knots.Where(knot =>
            knot > own[0] && knot < own[^1] && !Array.Exists(own, line => Math.Abs(line - knot) <= Trace * Math.Abs(knot))))
            .Distinct().Order(),
    ];

    // Where it begins a hand-over jumps: on one side of the place the secondary set injects.
    private static IEnumerable<double> Beside(double place) => [place * (1 - BesideHandOver), place, place * (1 + BesideHandOver)];

    /// <summary>
    /// A hand-over by duty cycle begins on a curve over speed and boost, just above which the secondary set's pulses are shortest: it is looked at where it crosses every
    /// line of speed, and the middle between two, and the lowest and the highest boost.
    /// </summary>
    private void LookAlongHandOver()
    {
        IEnumerable<double> speeds = _speeds.Concat(_speeds.Zip(_speeds.Skip(1), (slow, fast) => (slow + fast) / 2));
        foreach (double speed in speeds.ToArray())
        {
            foreach (double boost in HandOverKnots.ByDutyCycle(_boosts, boost => At(speed, boost)).ToArray())
            {
                At(speed, Math.Max(_boosts[0], boost - BesideBoost));
                At(speed, Math.Min(_boosts[^1], boost + BesideBoost));
            }
        }

        foreach (double boost in (double[])[_boosts[0], _boosts[^1]])
        {
            foreach (double speed in HandOverKnots.ByDutyCycle(_speeds, speed => At(speed, boost)).SelectMany(Beside).ToArray())
            {
                At(Math.Clamp(speed, _speeds[0], _speeds[^1]), boost);
            }
        }
    }

    private void Cover()
    {
        (double[] speeds, double[] boosts) = (_speeds, _boosts);
        // Where a check fails is known best before looking for where it almost does.
        foreach (double boost in boosts)
        {
            foreach (double speed in speeds)
            {
                At(speed, boost);
            }
        }

        // The lowest boost last, so that it is looked at first.
        for (int up = Math.Max(1, boosts.Length - 1) - 1; up >= 0; up--)
        {
            for (int across = 0; across < Math.Max(1, speeds.Length - 1); across++)
            {
                _cells.Push(new(
                    speeds[across],
                    speeds[Math.Min(across + 1, speeds.Length - 1)],
                    boosts[up],
                    boosts[Math.Min(up + 1, boosts.Length - 1)],
                    0));
            }
        }

        while (_cells.TryPop(out Cell cell))
        {
            Look(cell);
        }
    }

    private void Look(in Cell cell)
    {
        OperatingResult[] corners =
        [
            At(cell.Slow, cell.Low), At(cell.Fast, cell.Low), At(cell.Slow, cell.High), At(cell.Fast, cell.High),
        ];
        if (cell.IsPoint || (IsSmall(cell) && IsFar(corners)))
        {
            return;
        }

        // Row by row, from the lowest boost.
        OperatingResult[] nine =
        [
            corners[0], At(cell.MiddleSpeed, cell.Low), corners[1],
            At(cell.Slow, cell.MiddleBoost), At(cell.MiddleSpeed, cell.MiddleBoost), At(cell.Fast, cell.MiddleBoost),
            corners[2], At(cell.MiddleSpeed, cell.High), corners[3],
        ];
        double bySpeed = 0;
        double byBoost = 0;
        bool isNear = false;
        Span<double> left = stackalloc double[9];
        for (int check = 0; check < _isOpen.Length; check++)
        {
            if (Read(check, nine, left) is not { } least || cell.Low >= _failsFrom[check])
            {
                continue;
            }

            (double along, double offSpeed) = Change(left, 1, 3);
            (double upward, double offBoost) = Change(left, 3, 1);
            double bound = least - (Dip * (offSpeed + offBoost)) - (Slope * Math.Pow(SlopeFades, cell.Halvings) * Math.Max(along, upward));
            if (bound >= 0 || (least >= 0 && bound >= -Millionth))
            {
                continue;
            }

            if (double.IsFinite(_failsFrom[check]))
            {
                if (least < 0 || cell.Halvings >= MaximumHalvingsOfFailing)
                {
                    continue;
                }
            }
            else if (cell.Halvings >= MaximumHalvings || _solved.Count >= MaximumPoints || _cancellation.IsCancellationRequested)
            {
                _isOpen[check] = true;
                continue;
            }

            // Along a kink middles stay off the straight line however small the rectangles: there the least is looked for instead.
            if (cell.Halvings >= HalvingsBeforeSearch && least >= 0 && Lowest(check, cell, nine) >= 0)
            {
                continue;
            }

            isNear = true;
            bySpeed = Math.Max(bySpeed, (along + offSpeed) / Math.Max(Trace, -bound));
            byBoost = Math.Max(byBoost, (upward + offBoost) / Math.Max(Trace, -bound));
        }

        if (isNear)
        {
            Halve(cell, acrossSpeed: bySpeed >= byBoost ? cell.Slow < cell.Fast : cell.Low >= cell.High);
        }
    }

    /// <summary>The least of a margin in a rectangle, downhill from the least of its nine points.</summary>
    private double Lowest(int check, Cell cell, OperatingResult[] nine)
    {
        Comparer<OperatingResult> order = Comparer<OperatingResult>.Create((one, other) => Known(one).CompareTo(Known(other)));
        return Left(check, Downhill.From(
            nine.Min(order)!,
            ((cell.Fast - cell.Slow) / 4, (cell.High - cell.Low) / 4),
            SearchHalvings,
            (speed, boost) => cell.Covers(speed, boost) ? At(speed, boost) : null,
            order));

        double Known(OperatingResult point) => Left(check, point) is var left && double.IsNaN(left) ? double.PositiveInfinity : left;
    }

    private void Halve(in Cell cell, bool acrossSpeed)
    {
        Cell next = cell with { Halvings = cell.Halvings + 1 };
        if (acrossSpeed)
        {
            _cells.Push(next with { Slow = cell.MiddleSpeed });
            _cells.Push(next with { Fast = cell.MiddleSpeed });
        }
        else
        {
            _cells.Push(next with { Low = cell.MiddleBoost });
            _cells.Push(next with { High = cell.MiddleBoost });
        }
    }

    private static bool IsSmall(in Cell cell) => cell.Fast <= cell.Slow * WideSpeeds && cell.High - cell.Low <= WideBoosts;

    private bool IsFar(OperatingResult[] corners)
    {
        Span<double> left = stackalloc double[4];
        for (int check = 0; check < _isOpen.Length; check++)
        {
            if (Read(check, corners, left) is { } least)
            {
                double most = double.NegativeInfinity;
                foreach (double share in left)
                {
                    // A corner at which it cannot be said makes the others no farther from their limit.
                    most = share > most ? share : most;
                }

                if (least < FarFromLimit + (most - least))
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>What is left at some points, and the least of it; none where the check is known at none of them.</summary>
    private static double? Read(int check, OperatingResult[] points, Span<double> left)
    {
        double? least = null;
        for (int point = 0; point < points.Length; point++)
        {
            left[point] = Left(check, points[point]);
            if (!double.IsNaN(left[point]))
            {
                least = Math.Min(least ?? double.PositiveInfinity, left[point]);
            }
        }

        return least;
    }

    private static double Left(int check, OperatingResult point)
    {
        Margin margin = point.Margins[check];

        // A set that is idle has no margin, however small it is where it injects.
        if (margin.IsOfIdleSet)
        {
            return double.NaN;
        }

        return margin.Outcome switch
        {
            Outcome.Holds => Math.Min(Ample, margin.Share ?? Ample),
            Outcome.Fails => Math.Max(-Ample, Math.Min(margin.Share ?? -Ample, -Trace)),
            _ => double.NaN,
        };
    }

    /// <summary>How much a margin changes along three lines of three points, and how far the middles are off the straight line.</summary>
    /// <param name="left">Nine margins, those not known left out.</param>
    /// <param name="step">From point to point of a line.</param>
    /// <param name="apart">From line to line.</param>
    private static (double Change, double Off) Change(ReadOnlySpan<double> left, int step, int apart)
    {
        double change = 0;
        double off = 0;
        for (int line = 0; line < 3; line++)
        {
            double first = left[line * apart];
            double middle = left[(line * apart) + step];
            double last = left[(line * apart) + (2 * step)];
            change = Larger(change, Math.Abs(first - middle), Math.Abs(last - middle), Math.Abs(last - first));
            off = Larger(off, Math.Abs(middle - ((first + last) / 2)));
        }

        return (change, off);
    }

    private static double Larger(double largest, params ReadOnlySpan<double> others)
    {
        foreach (double other in others)
        {
            largest = other > largest ? other : largest;
        }

        return largest;
    }

    /// <summary>The result at a speed, rev/min, and a boost, Pa, solved if it was not yet.</summary>
    public OperatingResult At(double speed, double boost)
    {
        (double, double) place = (speed, _line is null ? boost : OnTheLine);
        if (!_solved.TryGetValue(place, out OperatingResult? result))
        {
            RotationalSpeed engine = RotationalSpeed.FromRevolutionsPerMinute(speed);
            Pressure manifold = _line is null ? Pressure.FromPascals(boost) : _line.At(engine, _system.Demand, _conditions.Atmosphere);
            result = _system.SolveBy(OperatingPoint.At(engine, manifold, _conditions), _table);
            Take(result, place);
        }

        return result;
    }

    private void Take(OperatingResult result) =>
        Take(result, (result.Point.Speed.RevolutionsPerMinute, _line is null ? result.Point.Boost.Pascals : OnTheLine));

    private void Take(OperatingResult result, (double Speed, double Boost) place)
    {
        // Two speeds may differ in their own unit and not in this one.
        _solved[place] = result;
        for (int check = 0; check < _failsFrom.Length; check++)
        {
            if (result.Margins[check].Outcome == Outcome.Fails && place.Boost < _failsFrom[check])
            {
                _failsFrom[check] = place.Boost;
            }
        }
    }

    /// <summary>A rectangle of speed, rev/min, and boost, Pa; without width where the sweep has one speed or one boost.</summary>
    private readonly record struct Cell(double Slow, double Fast, double Low, double High, int Halvings)
    {
        public double MiddleSpeed => (Slow + Fast) / 2;

        public double MiddleBoost => (Low + High) / 2;

        public bool Covers(double speed, double boost) => speed >= Slow && speed <= Fast && boost >= Low && boost <= High;

        public bool IsPoint => Slow >= Fast && Low >= High;
    }
}
