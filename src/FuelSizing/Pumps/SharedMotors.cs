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
