using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>Pumps with lines of their own, fed with one voltage: their rise less what those lines lose, by flow through both.</summary>
internal sealed class RunningBranch : RunningPumps
{
    // Of the deadhead. Where the pump's curve stands upright, the rise found does not say what flows.
    private const double Upright = 1e-12;

    // How many guesses are its own, and how far apart flows must be, as a share of them, for a slope through both.
    private const int Own = 5;
    private const double Apart = 1e-9;

    private readonly RunningPumps _pump;
    private readonly Liquid _liquid;

    // Worked out when it is asked for: a search for the voltage at a splice asks for a flow of many pumps that nobody asks for more.
    private double _freeFlow = double.NaN;
    private int _takesNothing = Unasked;

    /// <summary>Works out what depends on the voltage alone.</summary>
    /// <param name="branch">Which.</param>
    /// <param name="pump">Its pumps.</param>
    /// <param name="liquid">The fuel in it.</param>
    public RunningBranch(PumpBranch branch, RunningPumps pump, in Liquid liquid)
    {
        (Branch, _pump, _liquid) = (branch, pump, liquid);
        Deadhead = Math.Max(0, pump.Deadhead - (Real)Lost(0));
    }

    /// <summary>Which.</summary>
    public PumpBranch Branch { get; }

    /// <inheritdoc/>
    public override double FreeFlow => double.IsNaN(_freeFlow) ? _freeFlow = FlowFor(0) : _freeFlow;

    /// <inheritdoc/>
    public override double Deadhead { get; }

    // It does search, but a rise found leads to the flow of every branch at once.
    /// <inheritdoc/>
    public override bool GivesFlow => _pump.GivesFlow;

    /// <inheritdoc/>
    public override bool HasOwnLines => true;

    /// <inheritdoc/>
    public override int Guesses => _pump.Guesses < 0 || TakesNothing ? _pump.Guesses : Own + _pump.Guesses;

    /// <inheritdoc/>
    public override bool IsNested => !TakesNothing || _pump.IsNested;

    /// <summary>The rise over its pumps, flow and loss of its lines that they were last asked for, how that loss changes with the flow, the last move; then the pumps' own guesses.</summary>
    /// <inheritdoc/>
    public override void Guess(double rise, Span<double> guesses)
    {
        if (TakesNothing)
        {
            _pump.Guess(rise, guesses);
            return;
        }

        guesses[..Own].Fill(double.NaN);
        guesses[0] = rise;
        _pump.Guess(rise, guesses[Own..]);
    }

    /// <inheritdoc/>
    public override bool TryTangent(double rise, Span<double> guesses, out PumpTangent tangent)
    {
        if (TakesNothing)
        {
            return _pump.TryTangent(rise, guesses, out tangent);
        }

        if (rise >= Deadhead)
        {
            Guess(rise, guesses);
            tangent = PumpTangent.Shut;
            return true;
        }

        double own = guesses[0];
        if (!(own >= 0) || !_pump.TryTangent(own, guesses[Own..], out tangent) || !(tangent.Flow > 0 && tangent.ByRise <= 0))
        {
            tangent = default;
            return false;
        }

        // The slope of the loss by the last two flows, as a secant has it; to begin with about as flow^1.8.
        double loss = Lost(tangent.Flow);
        double apart = tangent.Flow - guesses[1];
        double slope = Math.Abs(apart) > Apart * tangent.Flow ? (loss - guesses[2]) / apart
            : double.IsNaN(guesses[3]) ? 1.8 * Math.Max(0, loss) / tangent.Flow
            : guesses[3];
        double stiffness = 1 - (slope * tangent.ByRise);
        double move = (rise + loss - own) / stiffness;
        double moved = Math.Sqrt(Math.Abs(move) * (double.IsNaN(guesses[4]) ? _pump.Deadhead : guesses[4])) / _pump.Deadhead;
        (guesses[0], guesses[1], guesses[2], guesses[3], guesses[4]) = (own + move, tangent.Flow, loss, slope, Math.Abs(move));
        tangent = new(Math.Max(0, tangent.Flow + (tangent.ByRise * move)), tangent.ByRise / stiffness, Math.Max(tangent.Moved, moved));
        return slope >= 0;
    }

    /// <summary>Those of its pumps where its lines take nothing.</summary>
    /// <inheritdoc/>
    public override bool TryList(double given, ICollection<Pump> pumps) =>
        TakesNothing && _pump.TryList(given, pumps);

    /// <summary>True if its lines take nothing, so that it is its pumps.</summary>
    private bool TakesNothing =>
        (_takesNothing != Unasked ? _takesNothing : _takesNothing = Lost(0) == 0 && Lost(_pump.FreeFlow) == 0 ? 1 : 0) == 1;


    /// <inheritdoc/>
    public override double FlowAt(double rise) => FlowFor(rise);

    /// <inheritdoc/>
    public override double RiseAt(double flow) => flow >= FreeFlow || Deadhead <= 0 ? 0 : Math.Max(0, _pump.RiseAt(flow) - (Real)Lost(flow));

    /// <inheritdoc/>
    public override void Describe(double flow, double rise, ICollection<PumpPoint> points) => _pump.Describe(flow, PumpRise(flow, rise), points);

    /// <inheritdoc/>
    public override bool IsConfirmed(double rise, ReadOnlySpan<double> guesses) =>
        TakesNothing ? _pump.IsConfirmed(rise, guesses) : rise >= Deadhead || _pump.IsConfirmed(guesses[0], guesses[Own..]);

    /// <inheritdoc/>
    public override bool TryNote(double flow, double rise, Span<double> guesses, ref PumpNotes notes) => TakesNothing
        ? _pump.TryNote(flow, rise, guesses, ref notes)
        : _pump.TryNote(flow, rise + (Real)Lost(flow), guesses[Own..], ref notes);

    /// <inheritdoc/>
    public override bool IsFullyCovered(bool ends) => _pump.IsFullyCovered(ends);

    /// <inheritdoc/>
    public override PumpCoverage UncoveredAt(double flow, double rise, bool ends) => _pump.UncoveredAt(flow, PumpRise(flow, rise), ends);

    /// <inheritdoc/>
    public override void Walk(double flow, double rise, double inlet, double outlet, ICollection<PumpPlace> places)
    {
        places.Add(new(this, flow, inlet, outlet));
        double before = inlet - (Real)Branch.SuctionLoss(flow, _liquid);
        double own = PumpRise(flow, rise);

        // Behind a shut valve stands what the pump gives against it, whatever the joint has.
        double behind = flow > 0 ? outlet + (Real)Branch.DischargeLoss(flow, _liquid) : before + (Real)own;
        _pump.Walk(flow, own, before, behind, places);
    }

    private double Lost(double flow) => (Real)Branch.SuctionLoss(flow, _liquid) + Branch.DischargeLoss(flow, _liquid);

    /// <summary>Rise over the pump itself: one that is shut off, or that nothing holds back, has a rise of its own.</summary>
    private double PumpRise(double flow, double rise) => flow > 0 && flow < FreeFlow ? rise + (Real)Lost(flow) : _pump.RiseAt(flow);

    private double FlowFor(double rise)
    {
        if (Deadhead <= 0 || rise > Deadhead || _pump.FreeFlow <= 0)
        {
            return 0;
        }

        double unlost = _pump.FlowAt(rise);
        double lost = Lost(unlost);
        if (lost == 0)
        {
            return unlost;
        }

        double free = _pump.FreeFlow;
        if ((Real)rise + Lost(free) <= 0)
        {
            // Lines that fall push: no curve says what the pump passes then but its free flow.
            return free;
        }

        double scale = _pump.Deadhead;
        if (_pump.GivesFlow)
        {
            RiseLeft left = new(this, rise);
            double from = Math.Clamp((rise + Lost(0)) / scale, 0, 1);
            double found = scale * (Secant.TryNear(left, Math.Clamp((rise + lost) / scale, from, 1), out double share) && share >= from && share <= 1
                ? share
                : Bracket.Of(left, from, 1));
            double flow = _pump.FlowAt(found);
            if (Math.Abs(rise + Lost(flow) - found) <= Upright * scale)
            {
                return flow;
            }
        }

        return free * Bracket.Of(new FlowLeft(this, rise), 0, 1);
    }

    /// <summary>What is asked of the pump over its rise, as a share of its deadhead, by that share.</summary>
    private readonly struct RiseLeft(RunningBranch branch, double rise) : IFalling
    {
        public double At(double x)
        {
            double own = x * branch._pump.Deadhead;
            return (rise + branch.Lost(branch._pump.FlowAt(own)) - own) / branch._pump.Deadhead;
        }
    }

    /// <summary>What the pump gives over what is asked of it, as a share of its deadhead, by share of its free flow.</summary>
    private readonly struct FlowLeft(RunningBranch branch, double rise) : IFalling
    {
        public double At(double x)
        {
            double flow = x * branch._pump.FreeFlow;
            return (branch._pump.RiseAt(flow) - branch.Lost(flow) - rise) / branch._pump.Deadhead;
        }
    }
}
