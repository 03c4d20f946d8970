using FuelSizing.Numerics;
using FuelSizing.Pumps;

namespace FuelSizing.Circuits;

/// <summary>Where pumps meet one circuit, over the pressure that the regulator asks for: worked out once for a whole sweep.</summary>
/// <remarks>
/// <para>With the rail as set the meeting depends on the set pressure alone, whatever is injected. The table holds the losses
/// on the way (or the flow, for pumps that give their rise by flow) at evenly spaced set pressures, with slopes, and a cubic
/// between them. A point reads it, asks pumps and lines once, and takes one step by the slope; where that moved it by more than
/// a trace, as beside a bend of a curve, it asks again. Where that does not settle, the table is no help.</para>
/// <para>It is read-only, so that an answer depends neither on the order of a sweep nor on its threads.</para>
/// </remarks>
internal sealed class IntersectionTable
{
    // Of the set pressure or the free flow. A step so small is off by a small part of itself.
    private const double Trace = 2e-13;
    private const int MaximumSteps = 4;

    // To either side, for slopes: as a share.
    private const double Beside = 1e-5;

    private readonly RunningPumps _pumps;
    private readonly bool _givesFlow;
    private readonly double _minimum;
    private readonly double _cellsPerPascal;
    private readonly Cell[] _cells;

    /// <summary>Works out the table.</summary>
    /// <param name="like">The circuit; its set pressure and injected flow do not matter.</param>
    /// <param name="pumps">Its pumps.</param>
    /// <param name="minimum">Lowest set pressure, Pa.</param>
    /// <param name="maximum">Highest set pressure, above the lowest, Pa.</param>
    /// <param name="cells">How many.</param>
    public IntersectionTable(in CircuitTask like, RunningPumps pumps, double minimum, double maximum, int cells)
    {
        (_pumps, _givesFlow, _minimum) = (pumps, pumps.GivesFlow, minimum);
        _cellsPerPascal = cells / (maximum - minimum);
        _cells = new Cell[cells];
        Node before = default;
        for (int node = 0; node <= cells; node++)
        {
            CircuitTask task = like with { Set = StraightLine.Through<Real>(0, minimum, cells, maximum, node) };
            double guess = before.Value + (before.Slope / _cellsPerPascal);
            Node here = NodeAt(task, PumpIntersection.AtSet(task, pumps, guess));
            if (node > 0)
            {
                _cells[node - 1] = new(
                    CubicPiece<Real>.Between(before.Set, before.Value, before.Slope, here.Set, here.Value, here.Slope),
                    before.Slope,
                    here.Slope,
                    before.FlowByRise);
            }

            before = here;
        }
    }

    /// <summary>Where the pumps meet the circuit with the rail at its set pressure; false where the table is no help.</summary>
    /// <param name="task">A circuit like the one that the table was made for.</param>
    /// <param name="met">The meeting.</param>
    public bool TryIntersect(in CircuitTask task, out Intersection met)
    {
        double place = (task.Set - _minimum) * _cellsPerPascal;
        int at = (int)Math.Clamp(place, 0, _cells.Length - 1);
        ref readonly Cell cell = ref _cells[at];
        double value = cell.Value.At(task.Set);
        double slope = StraightLine.Through<Real>(0, cell.FirstSlope, 1, cell.LastSlope, place - at);
        met = default;

        // Where a pump delivers nothing there is no number.
        return !double.IsNaN(value) && place >= 0 && place <= _cells.Length
            && (_givesFlow
                ? TryByLoss(task, value, slope, cell.FlowByRise, out met)
                : TryByFlow(task, value, slope, out met));
    }

    private bool TryByLoss(in CircuitTask task, double loss, double slope, double flowByRise, out Intersection met)
    {
        for (int step = 0; step < MaximumSteps; step++)
        {
            double flow = _pumps.FlowAt(task.Set + loss);
            PathLosses losses = task.LossesAt(flow);
            double off = losses.Total - loss;

            // As the losses asked for grow, flow falls: dΛ/dp = L'Q'/(1 − L'Q').
            double change = off * (1 + slope);
            loss += change;
            if (Math.Abs(off) <= Trace * task.Set)
            {
                met = new(flow + (flowByRise * change), losses);
                return flow > 0 && flow < _pumps.FreeFlow;
            }
        }

        met = default;
        return false;
    }

    private bool TryByFlow(in CircuitTask task, double flow, double slope, out Intersection met)
    {
        for (int step = 0; step < MaximumSteps && flow > 0 && flow < _pumps.FreeFlow; step++)
        {
            PathLosses losses = task.LossesAt(flow);
            double change = -slope * (_pumps.RiseAt(flow) - losses.Total - task.Set);
            flow += change;
            if (Math.Abs(change) <= Trace * _pumps.FreeFlow)
            {
                met = new(flow, losses);
                return true;
            }
        }

        met = default;
        return false;
    }

    private Node NodeAt(in CircuitTask task, in Intersection met)
    {
        double flow = met.Flow;
        if (!(flow > 0 && flow < _pumps.FreeFlow))
        {
            return new(task.Set, double.NaN, double.NaN, double.NaN);
        }

        double lossByFlow = StraightLine.Slope<Real>(
            flow * (1 - Beside),
            task.LossesAt(flow * (1 - Beside)).Total,
            flow * (1 + Beside),
            task.LossesAt(flow * (1 + Beside)).Total);
        if (_givesFlow)
        {
            double rise = task.Set + met.Losses.Total;
            double flowByRise = StraightLine.Slope<Real>(
                rise * (1 - Beside), _pumps.FlowAt(rise * (1 - Beside)), rise * (1 + Beside), _pumps.FlowAt(rise * (1 + Beside)));
            double both = lossByFlow * flowByRise;
            return new(task.Set, met.Losses.Total, both / (1 - both), flowByRise);
        }

        double riseByFlow = StraightLine.Slope<Real>(
            flow * (1 - Beside), _pumps.RiseAt(flow * (1 - Beside)), flow * (1 + Beside), _pumps.RiseAt(flow * (1 + Beside)));
        return new(task.Set, flow, 1 / (riseByFlow - lossByFlow), 0);
    }

    private readonly record struct Node(double Set, double Value, double Slope, double FlowByRise);

    private readonly record struct Cell(CubicPiece<Real> Value, double FirstSlope, double LastSlope, double FlowByRise);
}
