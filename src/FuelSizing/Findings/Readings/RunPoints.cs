using FuelSizing.Logs;
using FuelSizing.Systems;
using MathNet.Numerics.Statistics;

namespace FuelSizing.Findings;

/// <summary>
/// A run gathered to some dozens of steady points: neighbouring rows together, each channel's median, so that a glitch of single
/// readings counts nothing and a fit costs the same whatever the length of the run.
/// </summary>
internal sealed class RunPoints
{
    private static readonly Channel[] Averaged =
    [
        Channel.Speed, Channel.ManifoldAbsolute, Channel.RailGauge, Channel.InjectorPulse, Channel.Lambda, Channel.BatteryVoltage,
        Channel.Power, Channel.FuelTemperature, Channel.FuelVolumeFlow,
    ];

    private readonly double[][] _values;
    private readonly double[][] _rates;
    private readonly double[][] _readings;

    private RunPoints(
        double[][] values, double[][] rates, double[][] readings, double[] spans, int[] rows, double[] weights, int rowsUsed, int rowsOutside, double? manifoldAtRest, int rowsAtRest)
    {
        (_values, _rates, _readings, Spans, FirstRows, RowCounts) = (values, rates, readings, spans, rows, weights);
        (RowsUsed, RowsOutside, ManifoldAtRest, RowsAtRest) = (rowsUsed, rowsOutside, manifoldAtRest, rowsAtRest);
    }

    /// <summary>Number of points.</summary>
    public int Count => FirstRows.Length;

    /// <summary>For each point, its first row in the run.</summary>
    public int[] FirstRows { get; }

    /// <summary>For each point, how many rows it stands for.</summary>
    public double[] RowCounts { get; }

    /// <summary>Rows that went into a point.</summary>
    public int RowsUsed { get; }

    /// <summary>Rows at which the plan says nothing: outside its tables, or the engine at rest.</summary>
    public int RowsOutside { get; }

    /// <summary>Manifold pressure as recorded with the engine at rest, above ambient pressure, Pa; null if it was not recorded.</summary>
    public double? ManifoldAtRest { get; }

    /// <summary>Rows that show it.</summary>
    public int RowsAtRest { get; }

    /// <summary>Time from the middle of a point's first half to that of its second, s; zero where times are not recorded.</summary>
    public double[] Spans { get; }

    /// <summary>Readings of its own that a channel has at each point, which are fewer than its rows where it is read less often.</summary>
    public double[] Readings(Channel channel) => _readings[Array.IndexOf(Averaged, channel)];

    /// <summary>How fast a channel changes at each point, 1/s of its unit; zero where times or the channel are not recorded.</summary>
    public double[] Rate(Channel channel) => _rates[Array.IndexOf(Averaged, channel)];

    /// <summary>rev/s.</summary>
    public double[] Speed => Of(Channel.Speed);

    /// <summary>Absolute, Pa.</summary>
    public double[] Manifold => Of(Channel.ManifoldAbsolute);

    /// <summary>Gauge, Pa; NaN where not recorded, as in all that follow.</summary>
    public double[] Rail => Of(Channel.RailGauge);

    /// <summary>Commanded, s.</summary>
    public double[] Pulse => Of(Channel.InjectorPulse);

    /// <summary>Air–fuel ratio ÷ stoichiometric.</summary>
    public double[] Lambda => Of(Channel.Lambda);

    /// <summary>V.</summary>
    public double[] Volts => Of(Channel.BatteryVoltage);

    /// <summary>W, where it was recorded.</summary>
    public double[] Power => Of(Channel.Power);

    /// <summary>K.</summary>
    public double[] FuelKelvins => Of(Channel.FuelTemperature);

    /// <summary>Fuel burnt by the flow meter, m³/s.</summary>
    public double[] Meter => Of(Channel.FuelVolumeFlow);

    /// <summary>Gathers a run.</summary>
    /// <param name="plan">Says which rows it covers.</param>
    /// <param name="run">As recorded.</param>
    /// <param name="kelvins">Fuel temperature where none was recorded.</param>
    /// <param name="lambdaDelay">How late lambda is taken to come, s.</param>
    /// <param name="maximum">About how many points at the most.</param>
    public static RunPoints Of(FuelSystem plan, RecordedRun run, double kelvins, double lambdaDelay, int maximum)
    {
        RunColumnsRead columns = new(plan, run, kelvins, lambdaDelay);
        List<int> covered = [];
        List<double> atRest = [];
        for (int row = 0; row < run.Count; row++)
        {
            if (columns.Covers(row))
            {
                covered.Add(row);
            }
            else if (columns.IsAtRest(row))
            {
                atRest.Add(columns.At(Channel.ManifoldAbsolute, row) - run.Atmosphere.Pascals);
            }
        }

        int together = Math.Max(1, (covered.Count + maximum - 1) / maximum);
        List<int> first = [];
        List<double> counts = [];
        List<double>[] values = [.. Averaged.Select(_ => new List<double>())];
        List<double>[] rates = [.. Averaged.Select(_ => new List<double>())];
        List<double>[] readings = [.. Averaged.Select(_ => new List<double>())];
        List<double> spans = [];
        int used = 0;
        for (int start = 0; start < covered.Count;)
        {
            int end = start + 1;
            while (end < covered.Count && end - start < together && columns.Near(covered[start], covered[end]))
            {
                end++;
            }

            // What is left between two pulls is not steady enough to say much.
            if (2 * (end - start) >= together)
            {
                first.Add(covered[start]);
                counts.Add(end - start);
                used += end - start;
                spans.Add(columns.Span(covered, start, end));
                for (int channel = 0; channel < Averaged.Length; channel++)
                {
                    int read = columns.Readings(Averaged[channel], covered, start, end);
                    bool isCompared = Averaged[channel] is not Channel.BatteryVoltage and not Channel.FuelTemperature;
                    bool isHidden = Averaged[channel] == Channel.Lambda && columns.HidesMuch(covered, start, end);
                    values[channel].Add(
                        (isCompared && read == 0) || isHidden ? double.NaN : columns.Median(Averaged[channel], covered, start, end));
                    rates[channel].Add(columns.Rate(Averaged[channel], covered, start, end));
                    readings[channel].Add(read);
                }
            }

            start = end;
        }

        FillFromNeighbours(values[Array.IndexOf(Averaged, Channel.BatteryVoltage)]);
        FillFromNeighbours(values[Array.IndexOf(Averaged, Channel.FuelTemperature)]);
        return new(
            [.. values.Select(list => list.ToArray())],
            [.. rates.Select(list => list.ToArray())],
            [.. readings.Select(list => list.ToArray())],
            [.. spans],
            [.. first],
            [.. counts],
            used,
            run.Count - covered.Count,
            atRest.Count >= 5 ? atRest.Median() : null,
            atRest.Count);
    }

    // What changes slowly and was not read at a point is rather that of the points about it than the planned.
    private static void FillFromNeighbours(List<double> values)
    {
        int[] known = [.. Enumerable.Range(0, values.Count).Where(i => !double.IsNaN(values[i]))];
        for (int i = 0; known.Length > 0 && i < values.Count; i++)
        {
            values[i] = double.IsNaN(values[i]) ? values[known.MinBy(other => Math.Abs(other - i))] : values[i];
        }
    }

    private double[] Of(Channel channel) => _values[Array.IndexOf(Averaged, channel)];
}
