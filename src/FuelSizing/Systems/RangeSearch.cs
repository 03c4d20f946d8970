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
/// <para>Places are judged in numbers; one that is shown is solved in full, by the same table, so that its figures are the same to the last bit.</para>
/// </remarks>
internal sealed class RangeSearch : IDisposable
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

    // A sweep adds about as many places between its points as half of these.
    private const double PlacesByPoints = 1.5;

    private readonly FuelSystem _system;
    private readonly CircuitTable? _table;
    private readonly Conditions _conditions;
    private readonly BoostLine? _line;
    private readonly CancellationToken _cancellation;
    private readonly PointJudge _judge;
    private readonly FiguresByPlace _places;
    private readonly Func<int, OperatingPoint> _ownPoints;
    private readonly Dictionary<int, OperatingResult> _shown = [];
    private readonly int _checks;
    private readonly bool _isStaged;
    private readonly bool[] _isOpen;
    private readonly double[] _failsFrom;
    private readonly int[] _tightest;
    private readonly Stack<Cell> _cells = new();
    private double[] _speeds = [];
    private double[] _boosts = [];

    private RangeSearch(
        FuelSystem system,
        CircuitTable? table,
        Conditions conditions,
        BoostLine? line,
        int points,
        Func<int, OperatingPoint> ownPoints,
        CancellationToken cancellation)
    {
        (_system, _table, _conditions, _line, _cancellation) = (system, table, conditions, line, cancellation);
        _judge = new(system.Applicable, system.Parts, table);
        _checks = system.Applicable.Length;
        _isStaged = system.StagedInjectors is not null;
        _places = new(_checks + (_isStaged ? 1 + _checks : 0), (int)(PlacesByPoints * points));
        _ownPoints = ownPoints;
        _isOpen = new bool[_checks];
        _failsFrom = new double[_checks];
        Array.Fill(_failsFrom, double.PositiveInfinity);
        _tightest = new int[_checks];
        Own = new(points, at => ResultAt(_ownPoints(at)));
    }

    /// <summary>How many places were looked at, the sweep's own points among them.</summary>
    public int Count => _places.Count;

    /// <summary>The sweep's own points, each solved when it is asked for.</summary>
    public SolvedGrid Own { get; private set; }

    /// <summary>The lowest boost at which a check, by its place, was found to fail, Pa; infinite where it was not.</summary>
    public double FailsFrom(int check) => _failsFrom[check];

    /// <summary>True where a check, by its place, comes so near to its limit that it cannot be said whether it keeps it everywhere.</summary>
    public bool IsOpen(int check) => _isOpen[check];

    /// <summary>Solves every pair of a speed and a boost, and looks between them; null if it was stopped before a boost was done.</summary>
    /// <param name="system">That is swept.</param>
    /// <param name="table">What is known of its circuits, if anything.</param>
    /// <param name="speeds">Rising.</param>
    /// <param name="boosts">Rising.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature.</param>
    /// <param name="done">Told how many boosts are done.</param>
    /// <param name="cancellation">Stops the search; what was not looked at stays open.</param>
    public static RangeSearch? Over(
        FuelSystem system,
        CircuitTable? table,
        IReadOnlyList<RotationalSpeed> speeds,
        IReadOnlyList<Pressure> boosts,
        Conditions conditions,
        Action<int>? done,
        CancellationToken cancellation)
    {
        int across = speeds.Count;
        RangeSearch search = new(
            system,
            table,
            conditions,
            null,
            across * boosts.Count,
            at => OperatingPoint.At(speeds[at % across], boosts[at / across], conditions),
            cancellation);
        PointPlace[] row = [.. speeds.Select(speed => PointPlace.At(speed, boosts[0], conditions))];
        double[] ownSpeeds = [.. speeds.Select(speed => speed.RevolutionsPerMinute)];
        List<double> ownBoosts = [];
        while (ownBoosts.Count < boosts.Count && !cancellation.IsCancellationRequested)
        {
            Pressure boost = boosts[ownBoosts.Count];
            double pascals = boost.Pascals;
            for (int speed = 0; speed < across; speed++)
            {
                search.Take(ownSpeeds[speed], pascals, (ownBoosts.Count * across) + speed, row[speed] with { BoostPascals = pascals }, boost);
            }

            ownBoosts.Add(pascals);
            done?.Invoke(ownBoosts.Count);
        }

        if (ownBoosts.Count == 0)
        {
            search.Dispose();
            return null;
        }

        search.Own = search.Own.First(across * ownBoosts.Count);
        search._speeds = Lines(ownSpeeds, SpeedKnots.Of(system).Select(speed => speed * 60));
        search._boosts = Lines([.. ownBoosts], BoostKnots.Of(system, conditions.Atmosphere.Pascals, ownBoosts[0], ownBoosts[^1]));
        if (system.StagedInjectors is { HandOver.IsByDutyCycle: true })
        {
            search.LookAlongHandOver();
        }

        search.Cover();
        return search;
    }

    /// <summary>Solves the speeds of a sweep along a boost line, where boost follows from speed, and looks between them.</summary>
    /// <param name="system">That is swept.</param>
    /// <param name="line">Its boost line.</param>
    /// <param name="own">The sweep's points, speeds rising.</param>
    /// <param name="cancellation">Stops the work among the sweep's own points.</param>
    public static RangeSearch Along(FuelSystem system, BoostLine line, IReadOnlyList<OperatingPoint> own, CancellationToken cancellation)
    {
        Conditions conditions = own[0].Conditions;
        RangeSearch search = new(system, null, conditions, line, own.Count, at => own[at], CancellationToken.None);
        double[] ownSpeeds = [.. own.Select(point => point.Speed.RevolutionsPerMinute)];
        for (int at = 0; at < own.Count; at++)
        {
            cancellation.ThrowIfCancellationRequested();
            search.Take(ownSpeeds[at], OnTheLine, at, own[at].Place, own[at].Boost);
        }

        search.Own = search.Own.First(own.Count);
        search._boosts = [OnTheLine];
        search._speeds = Lines(ownSpeeds, LineKnots.Of(system, line, conditions, ownSpeeds[0] / 60, ownSpeeds[^1] / 60).Select(speed => speed * 60));
        if (system.StagedInjectors is { HandOver.IsByDutyCycle: true })
        {
            search._speeds = Lines(search._speeds, HandOverKnots.ByDutyCycle(search._speeds, speed => search.OverHandOver(search.At(speed, OnTheLine))).SelectMany(Beside));
        }

        search.Cover();
        return search;
    }

    /// <summary>The place at a speed, rev/min, and a boost, Pa; <see cref="FiguresByPlace.None"/> if they are not in the range.</summary>
    public int Within(double speed, double boost) =>
        speed >= _speeds[0] && speed <= _speeds[^1] && (_line is not null || (boost >= _boosts[0] && boost <= _boosts[^1])) ? At(speed, boost) : FiguresByPlace.None;

    /// <summary>Speed of a place, rev/min.</summary>
    public double SpeedOf(int place) => _places.SpeedOf(place);

    /// <summary>Its boost, Pa; along a line, where that follows from speed, zero.</summary>
    public double BoostOf(int place) => _places.BoostOf(place);

    /// <summary>Both.</summary>
    public (double Speed, double Boost) WhereIs(int place) => (SpeedOf(place), BoostOf(place));

    /// <summary>What a check, by its place, has left at a place, as <see cref="FiguresByPlace"/> keeps it.</summary>
    public double Figure(int check, int place) => _places.Figure(place, check);

    /// <summary>True where a check fails at a place.</summary>
    public bool Fails(int check, int place) => Figure(check, place) < 0;

    /// <summary>The place among those looked at where a check is most urgent; of several alike the one that was looked at first.</summary>
    public int Tightest(int check) => _tightest[check];

    /// <summary>Under zero where a check is more urgent at the first place: failing, then what cannot be said, then by the smallest margin.</summary>
    public int Compare(int check, int one, int other) => JudgedFigure.Compare(Figure(check, one), Figure(check, other));

    /// <summary>The point of a place.</summary>
    public OperatingPoint PointAt(int place) => PointOf(_places.SpeedOf(place), _places.BoostOf(place), _places.OwnOf(place));

    /// <summary>A place solved in full, as it was judged.</summary>
    public OperatingResult ResultAt(int place)
    {
        if (_places.OwnOf(place) is var own and >= 0)
        {
            return Own[own];
        }

        if (!_shown.TryGetValue(place, out OperatingResult? result))
        {
            result = ResultAt(PointAt(place));
            _shown.Add(place, result);
        }

        return result;
    }

    /// <summary>Every place looked at, each solved when it is asked for; it outlasts the search.</summary>
    public IReadOnlyList<OperatingResult> Results()
    {
        // The sweep's own come first, and in their order unless two of them are one place.
        int own = 0;
        while (own < _places.Count && _places.OwnOf(own) == own)
        {
            own++;
        }

        (double Speed, double Boost, int Own)[] others = _places.CopyFrom(own);
        return new SolvedGrid(
            own + others.Length,
            at => at < own ? Own[at]
                : others[at - own] is { Own: >= 0 } other ? Own[other.Own]
                : ResultAt(PointOf(others[at - own].Speed, others[at - own].Boost, FiguresByPlace.None)));
    }

    /// <summary>Ends the search: places are known no longer.</summary>
    public void Dispose() => _places.Dispose();

    /// <summary>Half the distance from a place to the next line of speed, rev/min, and of boost, Pa; zero where there is one only.</summary>
    public (double Speed, double Boost) StepsAround(int place) =>
        (StepAround(_speeds, SpeedOf(place)) / 2, StepAround(_boosts, BoostOf(place)) / 2);

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
            foreach (double boost in HandOverKnots.ByDutyCycle(_boosts, boost => OverHandOver(At(speed, boost))).ToArray())
            {
                At(speed, Math.Max(_boosts[0], boost - BesideBoost));
                At(speed, Math.Min(_boosts[^1], boost + BesideBoost));
            }
        }

        foreach (double boost in (double[])[_boosts[0], _boosts[^1]])
        {
            foreach (double speed in HandOverKnots.ByDutyCycle(_speeds, speed => OverHandOver(At(speed, boost))).SelectMany(Beside).ToArray())
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

        for (int up = 0; up < Math.Max(1, boosts.Length - 1); up++)
        {
            for (int across = Math.Max(1, speeds.Length - 1) - 1; across >= 0; across--)
            {
                Look(new(
                    speeds[across],
                    speeds[Math.Min(across + 1, speeds.Length - 1)],
                    boosts[up],
                    boosts[Math.Min(up + 1, boosts.Length - 1)],
                    0));
                while (_cells.TryPop(out Cell cell))
                {
                    Look(cell);
                }
            }
        }
    }

    private void Look(in Cell cell)
    {
        ReadOnlySpan<int> corners =
        [
            At(cell.Slow, cell.Low), At(cell.Fast, cell.Low), At(cell.Slow, cell.High), At(cell.Fast, cell.High),
        ];
        if (cell.IsPoint || (IsSmall(cell) && IsFar(corners)))
        {
            return;
        }

        // Row by row, from the lowest boost.
        ReadOnlySpan<int> nine =
        [
            corners[0], At(cell.MiddleSpeed, cell.Low), corners[1],
            At(cell.Slow, cell.MiddleBoost), At(cell.MiddleSpeed, cell.MiddleBoost), At(cell.Fast, cell.MiddleBoost),
            corners[2], At(cell.MiddleSpeed, cell.High), corners[3],
        ];
        double bySpeed = 0;
        double byBoost = 0;
        bool isNear = false;
        double fades = Math.Pow(SlopeFades, cell.Halvings);
        Span<double> left = stackalloc double[9];
        for (int check = 0; check < _isOpen.Length; check++)
        {
            if (Read(check, nine, left) is not { } least || cell.Low >= _failsFrom[check])
            {
                continue;
            }

            (double along, double offSpeed) = Change(left, 1, 3);
            (double upward, double offBoost) = Change(left, 3, 1);
            double bound = least - (Dip * (offSpeed + offBoost)) - (Slope * fades * Math.Max(along, upward));
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
            else if (cell.Halvings >= MaximumHalvings || _places.Count >= MaximumPoints || _cancellation.IsCancellationRequested)
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
    private double Lowest(int check, Cell cell, ReadOnlySpan<int> nine)
    {
        int least = nine[0];
        foreach (int place in nine)
        {
            least = Order(place, least) < 0 ? place : least;
        }

        return Left(check, Downhill.From(
            least,
            ((cell.Fast - cell.Slow) / 4, (cell.High - cell.Low) / 4),
            SearchHalvings,
            WhereIs,
            (speed, boost) => cell.Covers(speed, boost) ? At(speed, boost) : FiguresByPlace.None,
            Order));

        int Order(int one, int other) => Known(one).CompareTo(Known(other));

        double Known(int place) => Left(check, place) is var left && double.IsNaN(left) ? double.PositiveInfinity : left;
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

    private bool IsFar(ReadOnlySpan<int> corners)
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

    /// <summary>What is left at some places, and the least of it; none where the check is known at none of them.</summary>
    private double? Read(int check, ReadOnlySpan<int> places, Span<double> left)
    {
        double? least = null;
        for (int place = 0; place < places.Length; place++)
        {
            left[place] = Left(check, places[place]);
            if (!double.IsNaN(left[place]))
            {
                least = Math.Min(least ?? double.PositiveInfinity, left[place]);
            }
        }

        return least;
    }

    private double Left(int check, int place)
    {
        // A set that is idle has no margin, however small it is where it injects.
        if (_isStaged && IsOfIdleSet(check, place))
        {
            return double.NaN;
        }

        double figure = Figure(check, place);
        return figure >= 0 ? Math.Min(Ample, figure)
            : figure < 0 ? Math.Max(-Ample, Math.Min(figure, -Trace))
            : double.NaN;
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

    /// <summary>The place at a speed, rev/min, and a boost, Pa, judged if it was not yet.</summary>
    public int At(double speed, double boost)
    {
        double on = _line is null ? boost : OnTheLine;
        if (_places.Find(speed, on) is var place and >= 0)
        {
            return place;
        }

        RotationalSpeed engine = RotationalSpeed.FromRevolutionsPerMinute(speed);
        Pressure manifold = BoostAt(engine, boost);
        return Take(speed, on, FiguresByPlace.None, PointPlace.At(engine, manifold, _conditions), manifold);
    }

    private int Take(double speed, double boost, int own, in PointPlace point, Pressure given)
    {
        _judge.Judge(point, given);
        int place = own >= 0 ? _places.Find(speed, boost) : FiguresByPlace.None;
        bool isNew = place == FiguresByPlace.None;
        if (isNew)
        {
            place = _places.Add(speed, boost, own);
        }
        else
        {
            // Two speeds may differ in their own unit and not in this one.
            _places.Own(place, own);
        }

        Span<double> row = _places.Row(place);
        for (int check = 0; check < _checks; check++)
        {
            double figure = _judge.Figure(check);
            row[check] = figure;
            if (figure < 0 && boost < _failsFrom[check])
            {
                _failsFrom[check] = boost;
            }

            if (isNew && (place == 0 || JudgedFigure.Compare(figure, Figure(check, _tightest[check])) < 0))
            {
                _tightest[check] = place;
            }
        }

        if (_isStaged)
        {
            row[_checks] = _judge.OverHandOver;
            for (int check = 0; check < _checks; check++)
            {
                row[_checks + 1 + check] = _judge.IsOfIdleSet(check) ? 1 : 0;
            }
        }

        if (!isNew)
        {
            FindTightest();
        }

        return place;
    }

    private void FindTightest()
    {
        for (int check = 0; check < _checks; check++)
        {
            _tightest[check] = 0;
            for (int place = 1; place < _places.Count; place++)
            {
                _tightest[check] = Compare(check, place, _tightest[check]) < 0 ? place : _tightest[check];
            }
        }
    }

    private bool IsOfIdleSet(int check, int place) => _places.Figure(place, _checks + 1 + check) > 0;

    private double OverHandOver(int place) => _places.Figure(place, _checks);

    private Pressure BoostAt(RotationalSpeed speed, double boost) =>
        _line is null ? Pressure.FromPascals(boost) : _line.At(speed, _system.Demand, _conditions.Atmosphere);

    private OperatingPoint PointOf(double speed, double boost, int own)
    {
        if (own >= 0)
        {
            return _ownPoints(own);
        }

        RotationalSpeed engine = RotationalSpeed.FromRevolutionsPerMinute(speed);
        return OperatingPoint.At(engine, BoostAt(engine, boost), _conditions);
    }

    private OperatingResult ResultAt(OperatingPoint point) => _system.SolveBy(point, _table);

    /// <summary>A rectangle of speed, rev/min, and boost, Pa; without width where the sweep has one speed or one boost.</summary>
    private readonly record struct Cell(double Slow, double Fast, double Low, double High, int Halvings)
    {
        public double MiddleSpeed => (Slow + Fast) / 2;

        public double MiddleBoost => (Low + High) / 2;

        public bool Covers(double speed, double boost) => speed >= Slow && speed <= Fast && boost >= Low && boost <= High;

        public bool IsPoint => Slow >= Fast && Low >= High;
    }
}
