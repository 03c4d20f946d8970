using FuelSizing.Pumps;
using FuelSizing.Regulators;

namespace FuelSizing.Circuits;

/// <summary>Finds where pumps meet a circuit by way of the rise, with all that would be searched for within them moving along: voltages at motors, flows of branches, rises of stages.</summary>
/// <remarks>
/// It starts where the last one ended: the bounds of a regulator's pressure, of a pump's data, or of the pressure in a tank lie beside each other, so that two or three
/// steps lead from one to the next. Where it does not settle, at ends and corners of data, the bracketed search has to be asked.
/// </remarks>
internal ref struct TangentSearch
{
    // Of the scale of pressure. What pumps are off by after a step is of the order of its square; what the circuit asks for is looked at again.
    private const double SmallStep = 5e-8;
    private const double SmallMissing = 2e-14;

    // Of the flow: a curve that falls steeply bends within less than the last step.
    private const double SmallFlow = 1e-12;

    // And how far apart flows must be, as a share of them, for a slope through both.
    private const double Apart = 1e-9;
    private const int MaximumSteps = 16;

    private readonly Span<double> _guesses;
    private readonly double _near;
    private TangentEnd _last;

    /// <summary>A search.</summary>
    /// <param name="guesses">Room for guesses, as many as <see cref="RunningPumps.MaximumGuesses"/>, or those of the search that it goes on from.</param>
    /// <param name="near">A rise near the first one wanted, Pa, where one is known.</param>
    /// <param name="last">Where the search ended that it goes on from, if from any.</param>
    public TangentSearch(Span<double> guesses, double near = double.NaN, in TangentEnd last = default)
    {
        _guesses = guesses;
        (_near, _last) = (near, last);
    }

    /// <summary>Where it ended, to go on from in another one.</summary>
    public readonly TangentEnd Last => _last;

    /// <summary>True if it is much the faster for these pumps, or has something to begin with.</summary>
    public readonly bool IsBetterFor(RunningPumps pumps) =>
        !_guesses.IsEmpty && (pumps.IsNested || !double.IsNaN(_near) || _last.Pumps is not null);

    /// <summary>Where they meet; false where the search does not settle.</summary>
    /// <param name="task">The circuit.</param>
    /// <param name="pumps">The pumps.</param>
    /// <param name="held">By which side of the regulator's data; none with the rail as set, whatever the return line asks for.</param>
    /// <param name="guess">A rise to begin with, Pa, if this is the first search and no nearer one is known.</param>
    /// <param name="met">Where they meet.</param>
    public bool TryFind(in CircuitTask task, RunningPumps pumps, RegulatorReading? held, double guess, out Intersection met)
    {
        met = default;
        if (pumps.Guesses < 0 || pumps.Guesses > _guesses.Length || !(pumps.FreeFlow > 0))
        {
            return false;
        }

        Span<double> guesses = _guesses[..pumps.Guesses];
        double rise = double.IsNaN(_near) ? guess : _near;
        if (_last.Pumps?.Guesses == pumps.Guesses)
        {
            double asked = _last.Met.Losses.Total + PressureAt(task, _last.Met.Flow, held);
            if (asked == _last.Asked && DeliverTheSame(pumps, guesses))
            {
                met = _last.Met;
                return true;
            }

            rise = _last.Rise + ((asked - _last.Rise) / (1 - (_last.AskedByFlow * _last.FlowByRise)));
        }
        else
        {
            _last = new() { AskedByFlow = double.NaN };
            pumps.Guess(rise, guesses);
        }

        if (TryFrom(task, pumps, held, rise, guesses, out met) && met.Flow > 0 && met.Flow < pumps.FreeFlow)
        {
            return true;
        }

        _last = default;
        return false;
    }

    /// <summary>True if pumps by another reading of their data are no different where the last search ended, so that its answer is theirs to the last bit.</summary>
    private readonly bool DeliverTheSame(RunningPumps pumps, ReadOnlySpan<double> guesses)
    {
        if (ReferenceEquals(pumps, _last.Pumps))
        {
            return true;
        }

        if (_last.Met.Flow >= pumps.FreeFlow)
        {
            return false;
        }

        Span<double> one = stackalloc double[guesses.Length];
        Span<double> other = stackalloc double[guesses.Length];
        guesses.CopyTo(one);
        guesses.CopyTo(other);
        // In step, so that what is the same comes out the same to the last bit. A pump that is shut may be so at another voltage, to which its guess moves.
        for (int step = 0; step < MaximumSteps; step++)
        {
            if (!_last.Pumps!.TryTangent(_last.Rise, one, out PumpTangent last) || !pumps.TryTangent(_last.Rise, other, out PumpTangent tangent)
                || tangent.Flow != last.Flow || tangent.ByRise != last.ByRise)
            {
                return false;
            }

            if (tangent.IsSettled)
            {
                return pumps.IsConfirmed(_last.Rise, other);
            }
        }

        return false;
    }

    private bool TryFrom(in CircuitTask task, RunningPumps pumps, RegulatorReading? held, double from, Span<double> guesses, out Intersection met)
    {
        met = default;
        double rise = from;
        double byFlow = _last.AskedByFlow;
        (double flowBefore, double askedBefore, double byRiseBefore) = (double.NaN, double.NaN, double.NaN);
        for (int step = 0; step < MaximumSteps; step++)
        {
            if (!(rise >= 0) || !pumps.TryTangent(rise, guesses, out PumpTangent tangent) || !(tangent.ByRise <= 0))
            {
                return false;
            }

            double flow = tangent.Flow;
            PathLosses losses = task.LossesAt(flow);
            double asked = losses.Total + PressureAt(task, flow, held);
            double apart = flow - flowBefore;
            if (Math.Abs(apart) > Apart * flow)
            {
                byFlow = (asked - askedBefore) / apart;
            }
            else if (double.IsNaN(byFlow))
            {
                // To begin with: losses grow about as flow^1.8.
                byFlow = flow > 0 ? 1.8 * Math.Max(0, losses.Total) / flow : 0;
            }

            double move = (asked - rise) / (1 - (byFlow * tangent.ByRise));
            if (!(byFlow >= 0))
            {
                return false;
            }

            rise += move;
            if (step > 0 && tangent.IsSettled
                && Math.Abs(move) <= SmallStep * task.Scale
                && Math.Abs((tangent.ByRise - byRiseBefore) * move) <= SmallFlow * flow)
            {
                // Where the step is within the last digits, so are the losses.
                double last = flow + (tangent.ByRise * move);
                bool same = Math.Abs(move) <= SmallMissing * task.Scale;
                met = new(last, same ? losses : task.LossesAt(last)) { IsByTangents = true };
                if (same || Math.Abs(met.Losses.Total + PressureAt(task, last, held) - rise) <= SmallMissing * task.Scale)
                {
                    _last = new()
                    {
                        Pumps = pumps,
                        Met = met,
                        Rise = rise,
                        FlowByRise = tangent.ByRise,
                        AskedByFlow = byFlow,
                        Asked = met.Losses.Total + PressureAt(task, last, held),
                    };
                    return pumps.IsConfirmed(rise, guesses);
                }
            }

            (flowBefore, askedBefore, byRiseBefore) = (flow, asked, tangent.ByRise);
        }

        return false;
    }

    private static double PressureAt(in CircuitTask task, double flow, RegulatorReading? held) => held is { } side ? task.PressureAt(flow, side) : task.Set;
}

/// <summary>Where a search by tangents ended.</summary>
internal readonly record struct TangentEnd
{
    /// <summary>Which pumps met the circuit; none where none did.</summary>
    public RunningPumps? Pumps { get; init; }

    /// <summary>Where they met it.</summary>
    public Intersection Met { get; init; }

    /// <summary>Rise over the pumps, Pa.</summary>
    public double Rise { get; init; }

    /// <summary>How their flow changes with it, m³/s/Pa.</summary>
    public double FlowByRise { get; init; }

    /// <summary>What the circuit asks for at that flow, Pa.</summary>
    public double Asked { get; init; }

    /// <summary>How that changes with the flow, Pa·s/m³; not a number where nothing is known of it.</summary>
    public double AskedByFlow { get; init; }
}
