using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Pumps;

namespace FuelSizing.Findings;

/// <summary>What the planned pumps give, tabulated once over voltage and flow so that a fit may ask thousands of times.</summary>
/// <remarks>
/// Straight lines between the nodes. A pump of condition c gives the rise of flow Q/c, for condition is a factor on flow alone.
/// A resistance before all pumps leaves them the voltage V' that solves V' + R I(V') = V.
/// </remarks>
internal sealed class PumpSurface
{
    private const double MinimumVolts = 6;
    private const double MaximumVolts = 20;
    private const double VoltStep = 0.1;
    private const int Voltages = 141;
    private const int Flows = 81;

    private readonly Lazy<(double[] Rise, double[] Current)>[] _nodes;
    private readonly double _flowStep;

    /// <summary>Prepares the table; nodes are worked out when first needed.</summary>
    public PumpSurface(PumpAssembly pumps)
    {
        MaximumFlow = pumps.Running(MaximumVolts).FreeFlow;
        _flowStep = MaximumFlow / (Flows - 1);
        _nodes = [.. Enumerable.Range(0, Voltages).Select(node => new Lazy<(double[], double[])>(
            () => Node(pumps.Running(MinimumVolts + (node * VoltStep)), _flowStep)))];
        HasCurrent = pumps.Pumps.All(pump => pump.Curves.All(curve => curve.HasCurrent));
    }

    /// <summary>The most that the pumps ever pass, m³/s.</summary>
    public double MaximumFlow { get; }

    /// <summary>True if the pumps' current is known.</summary>
    public bool HasCurrent { get; }

    /// <summary>Rise of the pumps at a flow, Pa.</summary>
    /// <param name="flow">m³/s.</param>
    /// <param name="volts">Before the resistance, V.</param>
    /// <param name="resistance">Over the planned, Ω.</param>
    public double Rise(double flow, double volts, double resistance) =>
        Read(flow, Reaching(flow, volts, resistance), current: false);

    /// <summary>Flow at which the pumps just hold a rise, m³/s; the most that they ever pass where they hold it throughout.</summary>
    /// <param name="rise">Pa.</param>
    /// <param name="volts">V.</param>
    public double FlowHolding(double rise, double volts) =>
        MaximumFlow * Bracket.Of(share => (Rise(share * MaximumFlow, volts, 0) - rise) / MaximumRise, 0, 1);

    // Of the order of a fuel pump's rise, so that what is searched is of the order of one.
    private const double MaximumRise = 500e3;

    /// <summary>Voltage that is left behind a resistance, V.</summary>
    public double Reaching(double flow, double volts, double resistance)
    {
        if (resistance == 0)
        {
            return volts;
        }

        // Two steps of V' = V − R I(V') and Aitken's extrapolation from them, for the current is nearly straight in the voltage.
        double first = VoltageDrop.AtMotor<Real>(volts, Current(flow, volts), resistance);
        double second = VoltageDrop.AtMotor<Real>(volts, Current(flow, first), resistance);
        double bend = second - first - (first - volts);
        return bend == 0 ? second : second - ((second - first) * (second - first) / bend);
    }

    /// <summary>Current of all pumps together, A; 8 A where it was not measured, which only scales the resistance.</summary>
    public double Current(double flow, double volts) => HasCurrent ? Read(flow, volts, current: true) : DefaultCurrent;

    private const double DefaultCurrent = 8;

    private static (double[] Rise, double[] Current) Node(RunningPumps running, double flowStep)
    {
        double[] rises = new double[Flows];
        double[] currents = new double[Flows];
        List<PumpPoint> points = [];
        for (int node = 0; node < Flows; node++)
        {
            double flow = Math.Min(node * flowStep, running.FreeFlow);
            points.Clear();
            running.Describe(flow, points);
            rises[node] = running.RiseAt(node * flowStep);
            currents[node] = points.Sum(point => point.Current ?? 0);
        }

        return (rises, currents);
    }

    private double Read(double flow, double volts, bool current)
    {
        double place = Math.Clamp((volts - MinimumVolts) / VoltStep, 0, Voltages - 1.0);
        int lower = Math.Min((int)place, Voltages - 2);
        double low = Read(_nodes[lower].Value, flow, current);
        double high = Read(_nodes[lower + 1].Value, flow, current);
        return low + ((high - low) * (place - lower));
    }

    private double Read((double[] Rise, double[] Current) node, double flow, bool current)
    {
        double[] values = current ? node.Current : node.Rise;
        double place = Math.Clamp(flow / _flowStep, 0, Flows - 1.0);
        int lower = Math.Min((int)place, Flows - 2);
        return values[lower] + ((values[lower + 1] - values[lower]) * (place - lower));
    }
}
