using FuelSizing.Electrical;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>What each pump's own part of its feed is given: the voltage at the source, or at the splice where its part begins.</summary>
/// <param name="supply">At the source, V.</param>
/// <param name="shared">Parts that several pumps share.</param>
/// <param name="splices">Voltage at the end of each, V.</param>
internal sealed class SpliceVoltages(double supply, IReadOnlyList<Feed> shared, double[] splices)
{
    /// <summary>Pumps whose feeds share nothing.</summary>
    public static SpliceVoltages None(double supply) => new(supply, [], []);

    /// <summary>Voltage that a pump's own part is given, V.</summary>
    public double Of(Pump pump) => PlaceOf(shared, pump) is >= 0 and var place ? splices[place] : supply;

    /// <summary>Which of the shared parts a pump hangs on; −1 where on none.</summary>
    public static int PlaceOf(IReadOnlyList<Feed> shared, Pump pump)
    {
        if (pump.Feed?.Shared is { } own)
        {
            for (int place = 0; place < shared.Count; place++)
            {
                if (shared[place].Equals(own))
                {
                    return place;
                }
            }
        }

        return -1;
    }
}

/// <summary>Pumps of which some share a part of their feed, fed with one voltage at its source.</summary>
/// <remarks>
/// The more one pump draws, the less voltage the others get. Against each rise, or at each flow where pumps are in series, the voltage at every
/// splice is searched for, for against a rise pumps in parallel are independent, and at a flow pumps in series: V_n = V_s − R ΣI, whose right-hand side falls with V_n. Of several shared parts each is searched for in turn until none moves. Against a rise,
/// <see cref="SharedMotors"/> mostly finds the same at once.
/// </remarks>
internal sealed class SharedRunning : RunningPumps
{
    // Under this share of the supply a motor does not turn.
    private const double MinimumShare = 0.01;

    // Shared parts do not see each other but by the pumps' flows, so that two or three turns do.
    private const int MaximumTurns = 40;
    private const double Still = 1e-13;

    private readonly PumpAssembly _pumps;
    private readonly IReadOnlyList<Feed> _shared;
    private readonly double _supply;
    private readonly PumpReading _reading;
    private readonly RunningPumps _unloaded;
    private readonly SharedMotors? _motors;
    private readonly bool _begins;
    private readonly bool _covered;
    private double _deadhead = double.NaN;

    /// <summary>Works out what depends on the voltage alone.</summary>
    /// <param name="pumps">The pumps.</param>
    /// <param name="shared">What their feeds share and what resists.</param>
    /// <param name="supply">At the source, V.</param>
    /// <param name="reading">How their curves are read where they end.</param>
    public SharedRunning(PumpAssembly pumps, IReadOnlyList<Feed> shared, double supply, PumpReading reading)
    {
        (_pumps, _shared, _supply, _reading) = (pumps, shared, supply, reading);
        _unloaded = At(_shared.Select(_ => supply).ToArray());
        _motors = SharedMotors.Of(_unloaded, shared, supply, reading);
        RunningPumps lowest = At(_shared.Select(_ => Math.Max(MinimumShare * supply, pumps.LowestSplice(supply))).ToArray());
        _begins = _unloaded.IsFullyCovered(ends: false) && lowest.IsFullyCovered(ends: false);
        _covered = _begins && _unloaded.IsFullyCovered(ends: true) && lowest.IsFullyCovered(ends: true);
        FreeFlow = GivesFlow ? FlowAt(0) : FreeBySeries();
    }

    /// <inheritdoc/>
    public override double FreeFlow { get; }

    /// <inheritdoc/>
    public override double Deadhead => double.IsNaN(_deadhead) ? _deadhead = MaximumDelivering() : _deadhead;

    /// <inheritdoc/>
    public override bool GivesFlow => _unloaded is not RunningSeries;

    /// <inheritdoc/>
    public override double FlowAt(double rise) =>
        _motors?.TryFlow(rise, out double flow) == true ? flow : GivesFlow ? Against(rise).FlowAt(rise) : rise >= Deadhead ? 0 : FlowByRise(rise);

    /// <inheritdoc/>
    public override double RiseAt(double flow) =>
        GivesFlow ? flow >= FreeFlow || Deadhead <= 0 ? 0 : RiseByFlow(flow) : Passing(flow).RiseAt(flow);

    /// <inheritdoc/>
    public override void Describe(double flow, double rise, ICollection<PumpPoint> points)
    {
        double[] splices = GivesFlow ? SplicesAgainst(rise) : Splices(new Flow(flow));
        List<PumpPoint> own = [];
        RunningPumps running = At(splices);
        if (GivesFlow)
        {
            running.Describe(flow, rise, own);
        }
        else
        {
            running.Describe(flow, own);
        }

        foreach (PumpPoint point in own)
        {
            int place = point.IsStopped ? -1 : SpliceVoltages.PlaceOf(_shared, point.Pump);
            points.Add(place < 0 ? point : point with { SharedDrop = _supply - splices[place] });
        }
    }

    /// <inheritdoc/>
    public override int Guesses => _motors?.HasTangent == true ? _motors.Count : -1;

    /// <summary>The voltage at each motor.</summary>
    /// <inheritdoc/>
    public override void Guess(double rise, Span<double> guesses) => guesses.Fill(_supply);

    /// <inheritdoc/>
    public override bool TryTangent(double rise, Span<double> guesses, out PumpTangent tangent) => _motors!.TryTangent(rise, guesses, out tangent);

    /// <inheritdoc/>
    public override bool TryNote(double flow, double rise, Span<double> guesses, ref PumpNotes notes)
    {
        Span<double> flows = stackalloc double[guesses.Length];
        Span<double> splices = stackalloc double[guesses.Length];
        if (_pumps.Pumps.Count != _motors!.Count || !_motors.TryFlows(rise, guesses, flows, splices))
        {
            return false;
        }

        for (int i = 0; i < guesses.Length; i++)
        {
            new RunningPump(_motors[i], splices[i], _reading).Note(flows[i], rise, guesses[i], ref notes);
            if (notes.Points is { } points && SpliceVoltages.PlaceOf(_shared, _motors[i]) >= 0)
            {
                points[^1] = points[^1] with { SharedDrop = _supply - splices[i] };
            }
        }

        return true;
    }

    /// <inheritdoc/>
    public override bool HasOwnLines => _unloaded.HasOwnLines;

    /// <inheritdoc/>
    public override void Walk(double flow, double rise, double inlet, double outlet, ICollection<PumpPlace> places) =>
        (GivesFlow ? Against(rise) : Passing(flow)).Walk(flow, rise, inlet, outlet, places);

    /// <inheritdoc/>
    public override bool IsFullyCovered(bool ends) => ends ? _covered : _begins;

    /// <inheritdoc/>
    public override PumpCoverage UncoveredAt(double flow, double rise, bool ends) => IsFullyCovered(ends)
        ? PumpCoverage.Measured
        : (GivesFlow ? Against(rise) : Passing(flow)).UncoveredAt(flow, rise, ends);

    private RunningPumps At(double[] splices) => _pumps.Fed(new(_supply, _shared, splices), _reading);

    private RunningPumps Against(double rise) => At(SplicesAgainst(rise));

    private double[] SplicesAgainst(double rise) => _motors?.Splices(rise) ?? Splices(new Rise(rise));

    private RunningPumps Passing(double flow) => At(Splices(new Flow(flow)));

    private double FreeBySeries()
    {
        double most = _unloaded.FreeFlow;
        return most > 0 ? most * Bracket.Of(share => (Passing(share * most).FreeFlow / most) - share, 0, 1) : 0;
    }

    private double MaximumDelivering()
    {
        if (!GivesFlow)
        {
            return FreeFlow > 0 ? RiseAt(0) : 0;
        }

        double most = _unloaded.Deadhead;
        return most > 0 ? most * Bracket.Of(share => (Against(share * most).Deadhead / most) - share, 0, 1) : 0;
    }

    /// <summary>Voltage at every splice, V.</summary>
    /// <param name="load">Where the pumps run.</param>
    private double[] Splices<T>(T load)
        where T : struct, ILoad
    {
        double[] splices = _shared.Select(_ => _supply).ToArray();
        for (int turn = 0; turn < MaximumTurns; turn++)
        {
            double moved = 0;
            for (int place = 0; place < splices.Length; place++)
            {
                double before = splices[place];
                Left<T> left = new(this, load, splices, place);
                splices[place] = _supply * (Secant.TryNear(left, before / _supply, out double share) && share is >= MinimumShare and <= 1
                    ? share
                    : Bracket.Of(left, MinimumShare, 1));
                moved = Math.Max(moved, Math.Abs(splices[place] - before));
            }

            if (splices.Length == 1 || moved <= Still * _supply)
            {
                break;
            }
        }

        return splices;
    }

    /// <summary>Where the pumps run, with a voltage at each splice.</summary>
    private interface ILoad
    {
        void Describe(RunningPumps running, List<PumpPoint> points);
    }

    private readonly struct Rise(double rise) : ILoad
    {
        public void Describe(RunningPumps running, List<PumpPoint> points) => running.Describe(running.FlowAt(rise), rise, points);
    }

    private readonly struct Flow(double flow) : ILoad
    {
        public void Describe(RunningPumps running, List<PumpPoint> points) => running.Describe(flow, points);
    }

    /// <summary>Voltage left over at a splice once all that hangs on it has drawn its current, by share of the supply.</summary>
    private readonly struct Left<T>(SharedRunning all, T load, double[] splices, int place) : IFalling
        where T : struct, ILoad
    {
        /// <inheritdoc/>
        public double At(double x)
        {
            double volts = x * all._supply;
            double[] tried = [.. splices];
            tried[place] = volts;
            List<PumpPoint> points = [];
            load.Describe(all.At(tried), points);
            return (VoltageDrop.AtMotor<Real>(all._supply, all.CurrentOf(points, place), all._shared[place].LoopOhms) - volts) / all._supply;
        }
    }

    /// <summary>Current in a shared part, A: by the reading that leaves the pumps what goes with this one's flow.</summary>
    private double CurrentOf(List<PumpPoint> points, int place)
    {
        Real sum = 0;
        foreach (PumpPoint point in points)
        {
            if (!point.IsStopped && SpliceVoltages.PlaceOf(_shared, point.Pump) == place)
            {
                sum += _reading switch
                {
                    PumpReading.Lower => point.MaximumCurrent,
                    PumpReading.Upper => point.MinimumCurrent,
                    _ => point.Current,
                }

                ?? double.NaN;
            }
        }

        return sum;
    }
}
