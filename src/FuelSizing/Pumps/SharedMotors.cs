using FuelSizing.Electrical;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Pumps;

/// <summary>Voltages at the motors of pumps in parallel, of which some share a part of their feed.</summary>
/// <remarks>
/// All are found at once, from V_i = V_s − R_i I_i − R Σ I_j, R being that of the part that pump i hangs on: Newton's steps, with each pump's dI/dV by the
/// last two steps. Pumps are coupled by sums alone, so that a step is in closed form.
/// </remarks>
internal sealed class SharedMotors
{
    // A secant's error after a step is of the order of the product of the last two steps, on a smooth function.
    private const double SmallStep = 1e-8;
    private const double SmallProduct = 1e-15;
    private const int MaximumSteps = 12;
    private const int MaximumPumps = 16;

    private readonly Pump[] _pumps;
    private readonly int[] _places;
    private readonly double[] _ohms;
    private readonly double _supply;
    private readonly PumpReading _reading;

    private SharedMotors(Pump[] pumps, IReadOnlyList<Feed> shared, double supply, PumpReading reading)
    {
        (_pumps, _supply, _reading) = (pumps, supply, reading);
        _places = Array.ConvertAll(pumps, pump => SpliceVoltages.PlaceOf(shared, pump));
        _ohms = [.. shared.Select(feed => feed.LoopOhms)];
    }

    /// <summary>The motors of running pumps; none where some are in series, or too many.</summary>
    /// <param name="running">With the supply's voltage at every splice.</param>
    /// <param name="shared">Parts that several pumps share.</param>
    /// <param name="supply">At the source, V.</param>
    /// <param name="reading">How their curves are read where they end.</param>
    public static SharedMotors? Of(RunningPumps running, IReadOnlyList<Feed> shared, double supply, PumpReading reading)
    {
        List<Pump> pumps = [];
        return running.TryList(supply, pumps) && pumps.Count <= MaximumPumps && pumps.TrueForAll(pump => pump.Converter is null)
            ? new([.. pumps], shared, supply, reading)
            : null;
    }

    /// <summary>Delivered flow against a rise, m³/s; false where the search does not settle.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="flow">m³/s.</param>
    public bool TryFlow(double rise, out double flow)
    {
        Span<double> volts = stackalloc double[_pumps.Length];
        flow = 0;
        if (!TryVoltages(rise, volts))
        {
            return false;
        }

        Real sum = 0;
        for (int i = 0; i < _pumps.Length; i++)
        {
            sum += _pumps[i].FlowAtMotor(rise, volts[i], _reading);
        }

        flow = sum;
        return true;
    }

    /// <summary>Voltage at the end of each shared part, V; none where the search does not settle.</summary>
    /// <param name="rise">Pa.</param>
    public double[]? Splices(double rise)
    {
        Span<double> volts = stackalloc double[_pumps.Length];
        if (!TryVoltages(rise, volts))
        {
            return null;
        }

        Span<double> currents = stackalloc double[_pumps.Length];
        Draw(rise, volts, currents);
        double[] splices = new double[_ohms.Length];
        for (int place = 0; place < splices.Length; place++)
        {
            splices[place] = VoltageDrop.AtMotor<Real>(_supply, Through(place, currents), _ohms[place]);
        }

        return splices;
    }

    /// <summary>How many there are.</summary>
    public int Count => _pumps.Length;

    /// <summary>One of the pumps.</summary>
    public Pump this[int place] => _pumps[place];

    /// <summary>True if what is delivered may be found by tangents.</summary>
    public bool HasTangent => Array.TrueForAll(_pumps, pump => !pump.IsDriven);

    /// <summary>Delivered flow against a rise and its slope, to the first order in what guesses of the voltages at all motors are off by, V; false where a curve ends above zero flow.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="volts">The guesses, V, which are corrected.</param>
    /// <param name="tangent">What is delivered.</param>
    public bool TryTangent(double rise, Span<double> volts, out PumpTangent tangent)
    {
        int count = _pumps.Length;
        Span<CarriedCurve> carried = stackalloc CarriedCurve[count];
        Span<double> drawn = stackalloc double[_ohms.Length];
        Span<double> drawnByRise = stackalloc double[_ohms.Length];
        Span<double> stiffness = stackalloc double[_ohms.Length];
        tangent = default;
        for (int i = 0; i < count; i++)
        {
            if (!_pumps[i].TryCarry(rise, volts[i], _reading, Draws(i), out carried[i]) || !(carried[i].CurrentByVolts >= 0))
            {
                return false;
            }

            if (_places[i] is >= 0 and var place)
            {
                drawn[place] += carried[i].Current;
                drawnByRise[place] += carried[i].CurrentByRise;
                stiffness[place] += carried[i].CurrentByVolts / Stiffness(i, carried[i]);
            }
        }

        // What all on a part draw more for their moves of voltage, and for a rise of one pascal.
        Span<double> more = stackalloc double[_ohms.Length];
        Span<double> moreByRise = stackalloc double[_ohms.Length];
        for (int i = 0; i < count; i++)
        {
            if (_places[i] is >= 0 and var place)
            {
                double share = carried[i].CurrentByVolts / Stiffness(i, carried[i]) / (1 + (_ohms[place] * stiffness[place]));
                more[place] += share * Missing(i, carried[i], drawn, volts[i]);
                moreByRise[place] += share * ByRise(i, carried[i], drawnByRise);
            }
        }

        (double flow, double byRise, double moved) = (0, 0, 0);
        for (int i = 0; i < count; i++)
        {
            (double shared, double sharedByRise) = _places[i] is >= 0 and var place ? (_ohms[place] * more[place], _ohms[place] * moreByRise[place]) : (0, 0);
            double move = (Missing(i, carried[i], drawn, volts[i]) - shared) / Stiffness(i, carried[i]);
            double voltsByRise = (ByRise(i, carried[i], drawnByRise) - sharedByRise) / Stiffness(i, carried[i]);
            volts[i] += move;
            if (!(volts[i] >= Pump.MinimumMotorShare * _supply && volts[i] <= _supply))
            {
                return false;
            }

            flow += Math.Max(0, _pumps[i].FlowLeft * (carried[i].Flow + (carried[i].FlowByVolts * move)));
            byRise += _pumps[i].FlowLeft * (carried[i].FlowByRise + (carried[i].FlowByVolts * voltsByRise));
            moved = Math.Max(moved, Math.Abs(move) / _supply);
        }

        tangent = new(flow, byRise, moved);
        return true;
    }

    /// <summary>What flows through each pump, m³/s, and the voltage at its splice, V, with settled voltages at the motors; false where a pump is shut or stands upright.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="volts">V.</param>
    /// <param name="flows">m³/s, to write to.</param>
    /// <param name="splices">V, to write to.</param>
    public bool TryFlows(double rise, ReadOnlySpan<double> volts, Span<double> flows, Span<double> splices)
    {
        Span<double> currents = stackalloc double[_pumps.Length];
        for (int i = 0; i < _pumps.Length; i++)
        {
            if (!_pumps[i].TryCarry(rise, volts[i], _reading, Draws(i), out CarriedCurve at) || !(at.Flow > 0 && at.FlowByRise < 0))
            {
                return false;
            }

            (flows[i], currents[i]) = (_pumps[i].FlowLeft * at.Flow, at.Current);
        }

        for (int i = 0; i < _pumps.Length; i++)
        {
            splices[i] = _places[i] is >= 0 and var place ? VoltageDrop.AtMotor<Real>(_supply, Through(place, currents), _ohms[place]) : _supply;
        }

        return true;
    }

    // One that is wired without loss has the supply's voltage whatever it draws, which may not have been measured.
    private bool Draws(int pump) => _places[pump] >= 0 || _pumps[pump].FeedOhms > 0;

    private double Stiffness(int pump, in CarriedCurve at) => 1 + (_pumps[pump].FeedOhms * at.CurrentByVolts);

    /// <summary>What the feed leaves a motor, less the guess, V.</summary>
    private double Missing(int pump, in CarriedCurve at, ReadOnlySpan<double> drawn, double volts)
    {
        double given = _places[pump] is >= 0 and var place ? VoltageDrop.AtMotor<Real>(_supply, drawn[place], _ohms[place]) : _supply;
        return VoltageDrop.AtMotor<Real>(given, at.Current, _pumps[pump].FeedOhms) - volts;
    }

    /// <summary>How that changes with the rise alone, V/Pa.</summary>
    private double ByRise(int pump, in CarriedCurve at, ReadOnlySpan<double> drawnByRise) =>
        (-_pumps[pump].FeedOhms * at.CurrentByRise) - (_places[pump] is >= 0 and var place ? _ohms[place] * drawnByRise[place] : 0);

    private bool TryVoltages(double rise, Span<double> volts)
    {
        int count = volts.Length;
        Span<double> before = stackalloc double[count];
        Span<double> drawn = stackalloc double[count];
        Span<double> drawnBefore = stackalloc double[count];
        Span<double> missing = stackalloc double[count];
        Span<double> slopes = stackalloc double[count];
        Span<double> slopeSums = stackalloc double[_ohms.Length];
        Span<double> moves = stackalloc double[_ohms.Length];
        before.Fill(_supply);
        Draw(rise, before, drawnBefore);
        for (int i = 0; i < count; i++)
        {
            volts[i] = Left(i, drawnBefore);
        }

        for (int step = 0; step < MaximumSteps; step++)
        {
            Draw(rise, volts, drawn);
            slopeSums.Clear();
            moves.Clear();
            for (int i = 0; i < count; i++)
            {
                double moved = volts[i] - before[i];
                slopes[i] = moved == 0 ? 0 : (drawn[i] - drawnBefore[i]) / moved;
                missing[i] = Left(i, drawn) - volts[i];
                if (!(slopes[i] >= 0))
                {
                    return false;
                }

                if (_places[i] is >= 0 and var place)
                {
                    double stiffness = 1 + (_pumps[i].FeedOhms * slopes[i]);
                    slopeSums[place] += slopes[i] / stiffness;
                    moves[place] += slopes[i] * missing[i] / stiffness;
                }
            }

            bool settled = true;
            for (int i = 0; i < count; i++)
            {
                double shared = _places[i] is >= 0 and var place ? _ohms[place] * moves[place] / (1 + (_ohms[place] * slopeSums[place])) : 0;
                double move = (missing[i] - shared) / (1 + (_pumps[i].FeedOhms * slopes[i])) / _supply;
                settled &= Math.Abs(move) <= SmallStep && Math.Abs(move * (volts[i] - before[i])) <= SmallProduct * _supply;
                (before[i], drawnBefore[i]) = (volts[i], drawn[i]);
                volts[i] += move * _supply;
                if (!(volts[i] >= Pump.MinimumMotorShare * _supply && volts[i] <= _supply))
                {
                    return false;
                }
            }

            if (settled)
            {
                return true;
            }
        }

        return false;
    }

    private void Draw(double rise, ReadOnlySpan<double> volts, Span<double> currents)
    {
        for (int i = 0; i < _pumps.Length; i++)
        {
            currents[i] = _pumps[i].CurrentAtMotor(rise, volts[i], _reading.Opposite()) ?? double.NaN;
        }
    }

    private double Through(int place, ReadOnlySpan<double> currents)
    {
        Real sum = 0;
        for (int i = 0; i < _pumps.Length; i++)
        {
            if (_places[i] == place)
            {
                sum += currents[i];
            }
        }

        return sum;
    }

    /// <summary>What is left at a motor, V.</summary>
    private double Left(int pump, ReadOnlySpan<double> currents)
    {
        double given = _places[pump] is >= 0 and var place ? VoltageDrop.AtMotor<Real>(_supply, Through(place, currents), _ohms[place]) : _supply;
        return _pumps[pump].FeedOhms == 0 ? given : VoltageDrop.AtMotor<Real>(given, currents[pump], _pumps[pump].FeedOhms);
    }
}
