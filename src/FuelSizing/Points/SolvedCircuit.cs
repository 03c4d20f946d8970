using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Pumps;

namespace FuelSizing.Points;

/// <summary>Pumps, lines and regulator at the demand of one point, in SI numbers: the injectors take no part in it.</summary>
internal readonly record struct SolvedCircuit
{
    /// <summary>A circuit whose figures are given one by one.</summary>
    public SolvedCircuit()
    {
    }

    /// <summary>The circuit that was solved.</summary>
    public required CircuitTask Task { get; init; }

    /// <summary>Where it settles.</summary>
    public required CircuitState State { get; init; }

    /// <summary>Where it settles with the least that the pumps' data allow; the same where the data covers the point.</summary>
    public required CircuitState Lower { get; init; }

    /// <summary>Where it settles with the most that they allow; the same where the data covers the point.</summary>
    public required CircuitState Upper { get; init; }

    /// <summary>Each pump where it runs.</summary>
    public required PumpPoint[] Pumps { get; init; }

    /// <summary>The same with the least that their data allow.</summary>
    public required PumpPoint[] LowerPumps { get; init; }

    /// <summary>The same with the most.</summary>
    public required PumpPoint[] UpperPumps { get; init; }

    /// <summary>Where it settles with the least and with the most that passes, where the regulator's pressure is known between bounds only; none where it is known.</summary>
    public (CircuitState Least, CircuitState Most)? Flows { get; init; }

    /// <summary>The pumps at those two; none where the regulator's pressure is known.</summary>
    public PumpPoint[][] FlowPumps { get; init; } = [];

    /// <summary>Every state in which it may be, where data leaves more than one open.</summary>
    public IEnumerable<CircuitState> States => Flows is { } flows ? [State, Lower, Upper, flows.Least, flows.Most] : [State, Lower, Upper];

    /// <summary>The pumps in each of those states.</summary>
    public IEnumerable<PumpPoint[]> PumpStates => [Pumps, LowerPumps, UpperPumps, .. FlowPumps];

    /// <summary>Flow required of the pumps: injected, its reserve and the regulator's minimum return, m³/s.</summary>
    public required double Required { get; init; }

    /// <summary>Lower bound of what may be injected with the pumps' reserve kept, m³/s.</summary>
    public required double MinimumInjectable { get; init; }

    /// <summary>Upper bound of it, m³/s; the same where data covers the point.</summary>
    public required double MaximumInjectable { get; init; }

    /// <summary>The lift circuit, where the pumps draw from a surge tank; none where they draw from the main tank.</summary>
    public SolvedLift? Lift { get; init; }

    /// <summary>What the regulator asks for, gauge, Pa.</summary>
    public double RailSet => Task.Set;

    /// <summary>Pressure by which pumps are judged, gauge, Pa: as set, or what the regulator holds at its minimum return where that is more.</summary>
    public double DeliveredAgainst => Task.DeliveredAgainst(Regulators.RegulatorReading.Upper);

    /// <summary>In the rail, gauge, Pa; as set where the pumps' data does not cover the point.</summary>
    public double Rail => State.RailOr(Task.RailAsSet);

    /// <summary>True where the pumps do not bring the rail to its set pressure.</summary>
    public bool Sags => State.State is RailState.Sagging or RailState.Starved;

    /// <summary>False where the pumps' data does not cover the point.</summary>
    public bool IsCovered => State.State != RailState.NotCovered;

    /// <summary>True where the pumps' data covers the point, so that there is one answer.</summary>
    public bool IsExact => ReferenceEquals(Pumps, LowerPumps) && ReferenceEquals(Pumps, UpperPumps);

    /// <summary>
    /// Between which bounds the current in a feed lies, by the pump's place, or by that of a part that pumps share, A; not a number where it is not known.
    /// </summary>
    /// <param name="place">Of a pump in <see cref="Pumps"/>, or behind them of one of <see cref="SharedFeeds"/>.</param>
    public (double Minimum, double Maximum) CurrentOf(int place) => place < Pumps.Length ? OwnCurrentOf(place) : SharedCurrentOf(SharedFeeds[place - Pumps.Length]);

    /// <summary>The feed of a pump, by its place, or a part that pumps share, by its place behind them; none where the pump has no wiring.</summary>
    public Feed? FeedAt(int place) => place < Pumps.Length ? Pumps[place].Pump.Feed : SharedFeeds[place - Pumps.Length];

    /// <summary>The parts of feeds that several pumps share, in the order in which pumps name them.</summary>
    public IReadOnlyList<Feed> SharedFeeds
    {
        get
        {
            List<Feed>? shared = null;
            foreach (PumpPoint point in Pumps)
            {
                if (point.Pump.Feed?.Shared is { } part && shared?.Contains(part) != true)
                {
                    (shared ??= []).Add(part);
                }
            }

            return shared ?? (IReadOnlyList<Feed>)[];
        }
    }

    /// <summary>What a shared part carries: bounds of the sum of what hangs on it, A.</summary>
    private (double Minimum, double Maximum) SharedCurrentOf(Feed shared)
    {
        (double minimum, double maximum) = (0, 0);
        for (int pump = 0; pump < Pumps.Length; pump++)
        {
            if (shared.Equals(Pumps[pump].Pump.Feed?.Shared))
            {
                (double least, double most) = OwnCurrentOf(pump);
                (minimum, maximum) = (minimum + least, maximum + most);
            }
        }

        return (minimum, maximum);
    }

    private (double Minimum, double Maximum) OwnCurrentOf(int pump)
    {
        double least = Math.Min(Least(Pumps[pump]), Math.Min(Least(LowerPumps[pump]), Least(UpperPumps[pump])));
        double most = Math.Max(Most(Pumps[pump]), Math.Max(Most(LowerPumps[pump]), Most(UpperPumps[pump])));
        foreach (PumpPoint[] pumps in FlowPumps)
        {
            (least, most) = (Math.Min(least, Least(pumps[pump])), Math.Max(most, Most(pumps[pump])));
        }

        return (least, most);
    }

    /// <summary>Between which bounds the voltage that a pump's feed takes lies, by the pump's place, V; none where it has no feed.</summary>
    /// <param name="pump">Its place in <see cref="Pumps"/>.</param>
    public (double Minimum, double Maximum)? FeedDropOf(int pump)
    {
        if (Pumps[pump].Pump.Feed is not { } feed)
        {
            return null;
        }

        if (IsExact)
        {
            double drop = Pumps[pump].FeedDrop;
            return (drop, drop);
        }

        (double minimum, double maximum) = CurrentOf(pump);
        if (feed.Shared is not { } shared || Pumps[pump].IsStopped)
        {
            return (minimum * feed.LoopOhms, maximum * feed.LoopOhms);
        }

        (double least, double most) = SharedCurrentOf(shared);
        return ((minimum * feed.LoopOhms) + (least * shared.LoopOhms), (maximum * feed.LoopOhms) + (most * shared.LoopOhms));
    }

    private static double Least(in PumpPoint point) => point.MinimumFeedCurrent ?? double.NaN;

    // Past an open end the current is not known to be no more than at the end.
    private static double Most(in PumpPoint point) =>
        point.Coverage.HasFlag(PumpCoverage.PressureAbove) ? double.NaN : point.MaximumFeedCurrent ?? double.NaN;

    /// <summary>The pump whose curves give no data on the low side (voltage, or pressure below the first point), if any.</summary>
    public PumpPoint? Uncovered
    {
        get
        {
            foreach (PumpPoint point in Pumps)
            {
                if ((point.Coverage & (PumpCoverage.VoltageBelow | PumpCoverage.PressureBelow)) != 0)
                {
                    return point;
                }
            }

            return null;
        }
    }

    /// <summary>True if a pump has wiring or a converter, so that there is something electrical to look at.</summary>
    public bool IsWired
    {
        get
        {
            foreach (PumpPoint point in Pumps)
            {
                if (point.Pump.Feed is not null || point.Pump.Converter is not null)
                {
                    return true;
                }
            }

            return false;
        }
    }

    /// <summary>Place of the pump, or shared part, whose wire is nearest to its ampacity; −1 where no ampacity is known.</summary>
    public int HottestWire => Heaviest(static feed => feed?.AmpacityAmperes ?? double.NaN);

    /// <summary>Place of the pump, or shared part, whose fuse is loaded most for its rating; −1 where no fuse is given.</summary>
    public int HeaviestLoadedFuse => Heaviest(static feed => feed?.Fuse?.Amperes ?? double.NaN);

    /// <summary>Place of the pump, or shared part, whose relay is loaded most for its rating; −1 where no rating is given.</summary>
    public int HeaviestLoadedRelay => Heaviest(static feed => feed?.Relay?.Amperes ?? double.NaN);

    /// <summary>Place of the pump whose converter is loaded most for what it can give; −1 where no pump has one.</summary>
    public int HeaviestLoadedConverter
    {
        get
        {
            Heavier heaviest = new();
            for (int pump = 0; pump < Pumps.Length; pump++)
            {
                if (Pumps[pump].Pump.Converter is not null)
                {
                    heaviest.Take(pump, ConvertedOf(pump).Maximum / ConvertibleAt(pump));
                }
            }

            return heaviest.Place;
        }
    }

    /// <summary>The most current that a pump's converter gives at full voltage, by the pump's place, A.</summary>
    public double ConvertibleAt(int pump) => Pumps[pump].Pump.MaximumConverted(Pumps[pump].IsStopped ? State.FedVoltage : Pumps[pump].Given);

    /// <summary>Between which bounds the current lies that a pump asks of its converter for full voltage, by the pump's place, A.</summary>
    public (double Minimum, double Maximum) ConvertedOf(int pump)
    {
        PumpPoint[] points = [.. PumpStates.Select(pumps => pumps[pump])];

        // Math.Max, not Max of a list: that would pass over what is not a number, and an upper bound that is not known would look like one that is.
        return points[0].Pump.Converter is null || points[0].IsStopped ? (0, 0) : (
            points.Min(point => point.Pump.CurrentAtFullVoltage(point.Rise, point.Given, PumpReading.Lower)),
            points.Select(point => point.Coverage.HasFlag(PumpCoverage.PressureAbove)
                ? double.NaN
                : point.Pump.CurrentAtFullVoltage(point.Rise, point.Given, PumpReading.Upper)).Aggregate(Math.Max));
    }

    /// <summary>Place of the wired pump whose feed may take the most voltage; −1 where no pump has wiring.</summary>
    public int LowestFed
    {
        get
        {
            int lowest = -1;
            double most = double.NegativeInfinity;
            for (int pump = 0; pump < Pumps.Length; pump++)
            {
                if (FeedDropOf(pump) is { } drop && (lowest < 0 || drop.Maximum > most || double.IsNaN(drop.Maximum)))
                {
                    (lowest, most) = (pump, drop.Maximum);
                }
            }

            return lowest;
        }
    }

    private int Heaviest(Func<Feed?, double> limit)
    {
        Heavier heaviest = new();
        IReadOnlyList<Feed> shared = SharedFeeds;
        for (int place = 0; place < Pumps.Length + shared.Count; place++)
        {
            // One whose limit is not given is judged by nobody.
            double most = limit(place < Pumps.Length ? Pumps[place].Pump.Feed : shared[place - Pumps.Length]);
            if (!double.IsNaN(most))
            {
                heaviest.Take(place, CurrentOf(place).Maximum / most);
            }
        }

        return heaviest.Place;
    }

    private struct Heavier()
    {
        private double _share = double.NegativeInfinity;

        public int Place { get; private set; } = -1;

        // One whose load is not known is worse than any that is.
        public void Take(int place, double share)
        {
            if (share > _share || double.IsNaN(share))
            {
                (Place, _share) = (place, share);
            }
        }
    }
}

/// <summary>The lift circuit of a surge tank, solved with the main circuit, in SI numbers.</summary>
internal sealed class SolvedLift
{
    /// <summary>Both circuits.</summary>
    public required JoinedCircuits Joined { get; init; }

    /// <summary>The lift circuit while the tank is not full: it works against ambient pressure.</summary>
    public required SolvedCircuit Filling { get; init; }

    /// <summary>The same while the tank is full; none where no more is lifted than drawn.</summary>
    public required SolvedCircuit? Full { get; init; }

    /// <summary>The main circuit while the tank is full; none where the tank is at ambient pressure then too.</summary>
    public required SolvedCircuit? MainFull { get; init; }

    /// <summary>Lower bound of what is lifted into the full tank with nothing that overflows, m³/s; not a number where it is not known.</summary>
    public required double MinimumLifted { get; init; }

    /// <summary>Upper bound of it, m³/s; not a number where it is not known.</summary>
    public required double MaximumLifted { get; init; }

    /// <summary>Lower bound of what is lifted into the tank while it is not full, m³/s; not a number where it is not known.</summary>
    public required double MinimumFilled { get; init; }

    /// <summary>Upper bound of it, m³/s; not a number where it is not known.</summary>
    public required double MaximumFilled { get; init; }

    /// <summary>Lower bound of the net draw that it sustains with the pumps' reserve kept, m³/s; not a number where it is not known.</summary>
    public required double MinimumSustained { get; init; }

    /// <summary>Upper bound of it, m³/s; not a number where it is not known.</summary>
    public required double MaximumSustained { get; init; }

    /// <summary>Lower bound of the net draw while the tank is not full, m³/s: what the rail gets where it starves; not a number where it is not known.</summary>
    public required double MinimumDrawn { get; init; }

    /// <summary>Upper bound of it, m³/s: at least what the engine asks for; not a number where it is not known.</summary>
    public required double MaximumDrawn { get; init; }

    /// <summary>Lower bound of what is lifted more than drawn while the tank is not full, m³/s; not a number where it is not known.</summary>
    public double SurplusOfAtLeast => MinimumFilled - MaximumDrawn;

    /// <summary>Upper bound of it, m³/s; not a number where it is not known.</summary>
    public double SurplusOfAtMost => MaximumFilled - MinimumDrawn;
}

/// <summary>Room for the pumps of one circuit, for a search that looks at many circuits of a system and keeps none of them.</summary>
internal sealed class PumpRoom
{
    private readonly List<PumpPoint> _points = [];
    private PumpPoint[] _estimate = [];
    private PumpPoint[] _lower = [];
    private PumpPoint[] _upper = [];

    /// <summary>The pumps of a circuit as results show them; good until the next is asked for.</summary>
    public PumpPoint[] Estimate(in CircuitState state) => Of(state, ref _estimate);

    /// <summary>Those of its lower bound.</summary>
    public PumpPoint[] Lower(in CircuitState state) => Of(state, ref _lower);

    /// <summary>Those of its upper bound.</summary>
    public PumpPoint[] Upper(in CircuitState state) => Of(state, ref _upper);

    private PumpPoint[] Of(in CircuitState state, ref PumpPoint[] room)
    {
        _points.Clear();
        state.Describe(_points);
        if (room.Length != _points.Count)
        {
            room = new PumpPoint[_points.Count];
        }

        _points.CopyTo(room);
        return room;
    }
}
