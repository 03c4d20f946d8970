using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Numerics;
using FuelSizing.Points;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Judges a system at a point in numbers alone, to the last bit as its result does: for searches that judge by the thousand.</summary>
/// <remarks>It keeps room for one point, so that a point leaves nothing to be collected: one thread, one judge.</remarks>
internal sealed class PointJudge
{
    private readonly ICheck[] _checks;
    private readonly SystemParts _parts;
    private readonly CircuitTable? _table;
    private readonly CheckReading<Real>[] _readings;
    private readonly CheckReading<Real>[] _still;
    private readonly PumpRoom _room = new();

    private readonly bool _withLambda;

    // Where each reading is of a set of injectors that is idle; none where there is one set.
    private readonly bool[]? _isIdle;

    // A generic method of an interface is looked up at every call, which costs as much as most checks: here it is looked up once.
    private readonly Read[] _reads;

    /// <summary>A judge of a system at many points.</summary>
    /// <param name="checks">Those that apply to the system.</param>
    /// <param name="parts">Its parts.</param>
    /// <param name="table">What a sweep has made out about its circuits, if anything.</param>
    /// <param name="withLambda">True if the leanest mixture is asked for, whether or not a check reads it.</param>
    public PointJudge(ICheck[] checks, SystemParts parts, CircuitTable? table = null, bool withLambda = false)
    {
        _withLambda = withLambda;
        (_checks, _parts, _table) = (checks, parts, table);
        _reads = Array.ConvertAll(checks, check => new Read(check.Read<Real>));
        _readings = new CheckReading<Real>[checks.Length];
        _still = parts.Pump.Switches.Any() ? new CheckReading<Real>[checks.Length] : [];
        _isIdle = parts.StagedInjectors is null ? null : new bool[checks.Length];
    }

    private delegate CheckReading<Real> Read(SystemParts parts, in PointValues<Real> at);

    /// <summary>How each check came out at the last point.</summary>
    public ReadOnlySpan<CheckReading<Real>> Readings => _readings;

    /// <summary>How much more the primary set of injectors would have to pass at the last point than where a hand-over by duty cycle begins, as a share; not a number without one.</summary>
    public double OverHandOver { get; private set; }

    /// <summary>How a check, by its place, came out at the last point, in one number.</summary>
    public double Figure(int check) => JudgedFigure.Of(_readings[check]);

    /// <summary>The leanest that the mixture can be at the last point, where it is asked for; where a switched pump may be on or off, the leaner that is known. Minus infinite where none is.</summary>
    public double Leanest { get; private set; }

    /// <summary>True if that is known, whichever way the switched pumps run.</summary>
    public bool IsLeanestKnown { get; private set; }

    /// <summary>True where a check, by its place, judges a set of injectors that is idle at the last point.</summary>
    public bool IsOfIdleSet(int check) => _isIdle is not null && _isIdle[check];

    /// <summary>Judges a point; where a switched pump may be on or off, each check by the worse of both.</summary>
    /// <param name="point">Where.</param>
    /// <param name="boost">Its boost as it was given.</param>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover the point.</exception>
    public void Judge(in PointPlace point, Pressure boost)
    {
        PointDemand demand = _parts.DemandAt(point, boost);
        (Leanest, IsLeanestKnown) = (double.NegativeInfinity, true);
        bool isIdle = In(_parts, demand, _table, _readings, out double over);
        OverHandOver = over;
        Note(isIdle);
        if (_still.Length > 0 && _parts.FallingAt(point.BoostPascals) is { } falling)
        {
            isIdle = In(falling, demand, null, _still, out _);
            for (int check = 0; check < _readings.Length; check++)
            {
                if (IsWorse(_still[check], _readings[check]))
                {
                    _readings[check] = _still[check];
                    Note(check, isIdle);
                }
            }
        }
    }

    /// <summary>How each check comes out at one point.</summary>
    /// <param name="checks">Those that apply to the system.</param>
    /// <param name="parts">Its parts.</param>
    /// <param name="point">The point.</param>
    /// <exception cref="ArgumentOutOfRangeException">The engine's tables do not cover the point.</exception>
    public static CheckReading<Real>[] At(ICheck[] checks, SystemParts parts, OperatingPoint point)
    {
        PointJudge judge = new(checks, parts);
        judge.Judge(point.Place, point.Boost);
        return judge._readings;
    }

    /// <summary>Of each check the worse of two readings: of the first where both are alike.</summary>
    public static CheckReading<Real>[] Worse(CheckReading<Real>[] one, CheckReading<Real>[] other)
    {
        CheckReading<Real>[] worse = new CheckReading<Real>[one.Length];
        for (int check = 0; check < worse.Length; check++)
        {
            worse[check] = IsWorse(other[check], one[check]) ? other[check] : one[check];
        }

        return worse;
    }

    /// <summary>How each check comes out where all numbers are known.</summary>
    public static CheckReading<Real>[] Of(ICheck[] checks, SystemParts parts, in PointValues<Real> values)
    {
        CheckReading<Real>[] readings = new CheckReading<Real>[checks.Length];
        for (int check = 0; check < checks.Length; check++)
        {
            readings[check] = checks[check].Read(parts, values);
        }

        return readings;
    }

    /// <summary>Judges one state of the switched pumps; true where the secondary set of injectors is idle in it.</summary>
    private bool In(SystemParts parts, in PointDemand demand, CircuitTable? table, CheckReading<Real>[] readings, out double over)
    {
        SolvedCircuit circuit = parts.CircuitAt(demand, table, _room);
        (Injection Actual, Injection Judged) injection = parts.InjectionAt(demand, circuit);
        PointValues<Real> values = _withLambda
            ? PointReading.Of(parts, demand, circuit, injection.Judged, Mixed(MixtureSolver.In(parts, demand, circuit, injection)))
            : PointReading.Of(parts, demand, circuit, injection);
        for (int check = 0; check < readings.Length; check++)
        {
            readings[check] = _reads[check](parts, values);
        }

        over = HandOverKnots.Over(demand, injection.Judged);
        return injection.Judged.Secondary is { IsIdle: true };
    }

    private SolvedMixture Mixed(in SolvedMixture mixture)
    {
        bool isKnown = !double.IsNaN(mixture.MaximumLambda);
        IsLeanestKnown &= isKnown;
        Leanest = isKnown ? Math.Max(Leanest, mixture.MaximumLambda) : Leanest;
        return mixture;
    }

    private void Note(bool isIdle)
    {
        for (int check = 0; check < _isIdle?.Length; check++)
        {
            Note(check, isIdle);
        }
    }

    private void Note(int check, bool isIdle)
    {
        if (_isIdle is not null)
        {
            _isIdle[check] = isIdle && JudgedSet.Secondary.Judges(_checks[check].Part);
        }
    }

    private static bool IsWorse(in CheckReading<Real> one, in CheckReading<Real> other) =>
        Urgency.Compare(CheckReading.OutcomeOf(one), CheckReading.MarginOf(one), CheckReading.OutcomeOf(other), CheckReading.MarginOf(other)) < 0;
}

/// <summary>How a check came out, in one number: what is left before its limit, as a share. Its sign says the outcome: from zero on it holds, below it fails.</summary>
/// <remarks>Not a number is what cannot be said; infinite what has no share, as where there is nothing to compare with.</remarks>
internal static class JudgedFigure
{
    /// <summary>That of a reading: the margin that goes with its outcome, which is never below zero where it holds, and always where it fails.</summary>
    public static double Of(in CheckReading<Real> reading)
    {
        double margin = reading.Margin;
        double best = reading.BestMargin;
        return margin >= 0 ? margin : best < 0 ? best : double.NaN;
    }

    /// <summary>Under zero where the first is more urgent, as <see cref="Urgency"/> has it: what fails without a share comes after what fails by one.</summary>
    public static int Compare(double one, double other)
    {
        if (one >= 0 && other >= 0)
        {
            return one.CompareTo(other);
        }

        int byOutcome = Rank(other).CompareTo(Rank(one));
        return byOutcome != 0 || double.IsNaN(one) ? byOutcome : (Share(one) ?? double.PositiveInfinity).CompareTo(Share(other) ?? double.PositiveInfinity);
    }

    /// <summary>True where both have the same outcome.</summary>
    public static bool IsOneOutcome(double one, double other) => Rank(one) == Rank(other);

    /// <summary>What is left, as a share; none where there is nothing to compare with or to say.</summary>
    public static double? Share(double figure) => double.IsFinite(figure) ? figure : null;

    private static int Rank(double figure) => figure >= 0 ? 0 : figure < 0 ? 2 : 1;
}
