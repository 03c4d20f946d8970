using FuelSizing.Circuits;
using FuelSizing.Findings;
using FuelSizing.Injectors;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>One channel of a run against time.</summary>
internal sealed class RunTrace
{
    private readonly RecordedRun _run;
    private readonly Channel _channel;
    private readonly RunCheck? _check;
    private readonly TextStyle _style;
    private readonly List<(RunRow Row, double Value)> _recorded = [];

    /// <summary>Finds the rows to show.</summary>
    /// <exception cref="ArgumentException">No row holds the channel.</exception>
    public RunTrace(RecordedRun run, Channel channel, RunCheck? check, TextStyle style)
    {
        (_run, _channel, _check, _style) = (run, channel, check, style);
        foreach (RunRow row in run.Rows)
        {
            if (Recorded(row, channel, check, style) is var value && !double.IsNaN(value))
            {
                _recorded.Add((row, value));
            }
        }

        if (_recorded.Count == 0)
        {
            throw new ArgumentException($"run has no row with {RunText.Name(channel)}. It holds: {RunText.Names(run.Channels)}.", nameof(run));
        }
    }

    /// <summary>True if a run holds a channel, or what it follows from.</summary>
    public static bool IsIn(RecordedRun run, Channel channel, RunCheck? check) =>
        run.Rows.Any(row => !double.IsNaN(Recorded(row, channel, check, TextStyle.Metric)));

    /// <summary>Record, and plan where there is one.</summary>
    public LinePlot Plot()
    {
        bool timed = _run.Has(Channel.Time);
        double Place(RunRow row) => timed ? row.Time!.Value.Seconds : row.Line;

        // Each row costs the plan a solution: it is asked at the rows of which the record is drawn.
        RunRow[] drawn = [.. PlotThinning.Of([.. _recorded.Select(one => one.Value)]).Select(place => _recorded[place].Row)];
        double[] planned = [.. drawn.Select(Planned)];
        double[] places = [.. _run.Rows.Select(Place)];
        LinePlot plot = new(
            $"{VisibleText.Of(_run.Name)}: {RunText.Name(_channel)}",
            timed ? new PlotAxis("Time", "s") : new PlotAxis("Line of the log", "1"),
            Axis(),
            [
                PlotLine.Measured("recorded", [.. _recorded.Select(one => Place(one.Row))], [.. _recorded.Select(one => one.Value)]),
                .. planned.Any(double.IsFinite) ? (PlotLine[])[new PlotLine("predicted", [.. drawn.Select(Place)], planned)] : [],
            ]);

        // Traces of one run stand one below the other: a channel that begins late must not begin at the left.
        plot = plot.WithRange(places.Min(), places.Max());
        return _channel == Channel.DutyCycle && _check is not null
            ? Limited(plot, _check.Plan.Limits).With(_style)
            : plot.With(_style);
    }

    private LinePlot Limited(LinePlot plot, SizingLimits limits)
    {
        LinePlot limited = plot.WithLimit($"limit {_style.Of(limits.DutyCycle)}{RuleMark.Of(limits, RuleOfThumb.DutyCycle)}", limits.DutyCycle.Percent);
        return limits.MarkOf(RuleOfThumb.DutyCycle) is null ? limited : limited.WithNote(RuleMark.Note);
    }

    private PlotAxis Axis()
    {
        string name = RunText.Name(_channel);
        return new(
            $"{char.ToUpperInvariant(name[0])}{name[1..]}{(_channel == Channel.RailGauge ? ", gauge" : "")}",
            _channel switch
            {
                Channel.Speed => "rev/min",
                Channel.ManifoldAbsolute or Channel.RailGauge => _style.Units.Pressure.Unit,
                Channel.InjectorPulse => "ms",
                Channel.DutyCycle => "%",
                Channel.Lambda => "1",
                Channel.BatteryVoltage => "V",
                Channel.Power => _style.Units.Power.Unit,
                Channel.Torque => _style.Units.Torque.Unit,
                Channel.FuelTemperature => _style.Units.Temperature.Unit,
                Channel.FuelVolumeFlow => _style.Units.PumpFlow.Unit,
                _ => _style.Units.MassFlow.Unit,
            });
    }

    private static double Recorded(RunRow row, Channel channel, RunCheck? check, TextStyle style) => channel switch
    {
        Channel.Speed => row.Speed.RevolutionsPerMinute,
        Channel.ManifoldAbsolute => Known(row.ManifoldAbsolute, style.Units.Pressure.ValueOf),
        Channel.RailGauge => Known(row.RailGauge, style.Units.Pressure.ValueOf),
        Channel.InjectorPulse => Known(row.InjectorPulse, pulse => pulse.Milliseconds),
        Channel.DutyCycle => Known(row.DutyCycle ?? OfPulse(row, check), duty => duty.Percent),
        Channel.Lambda => row.Lambda ?? double.NaN,
        Channel.BatteryVoltage => Known(row.BatteryVoltage, voltage => voltage.Volts),
        Channel.Power => Known(row.Power, style.Units.Power.ValueOf),
        Channel.Torque => Known(row.Torque, style.Units.Torque.ValueOf),
        Channel.FuelTemperature => Known(row.FuelTemperature, style.Units.Temperature.ValueOf),
        Channel.FuelVolumeFlow => Known(row.FuelVolumeFlow, style.Units.PumpFlow.ValueOf),
        _ => Known(row.FuelMassFlow, style.Units.MassFlow.ValueOf),
    };

    private static Ratio? OfPulse(RunRow row, RunCheck? check)
    {
        // Slower than the plan's tables begin, the engine is at rest or being cranked.
        if (check is null || row.InjectorPulse is not { } pulse || row.Speed < check.Plan.Demand.VolumetricEfficiency.MinimumSpeed)
        {
            return null;
        }

        return DutyCycle.Of(pulse, row.Speed, check.Plan.Demand.Engine.Cycle, check.Plan.Injectors.InjectionsPerCycle);
    }

    private double Planned(RunRow row)
    {
        if (_check?.PlanAt(row, _run.Atmosphere) is not { } result)
        {
            return double.NaN;
        }

        return _channel switch
        {
            Channel.RailGauge when result.RailState != RailState.NotCovered => _style.Units.Pressure.ValueOf(result.RailGauge),
            Channel.InjectorPulse => Known(result.Pulse, pulse => pulse.Milliseconds),
            Channel.DutyCycle => Known(result.DutyCycle, duty => duty.Percent),
            Channel.Lambda => result.Mixture.TargetLambda,
            Channel.FuelVolumeFlow => _style.Units.PumpFlow.ValueOf(result.InjectedFlow),
            Channel.FuelMassFlow => _style.Units.MassFlow.ValueOf(result.Demand.MassFlow),
            _ => double.NaN,
        };
    }

    private static double Known<T>(T? value, Func<T, double> number)
        where T : struct => value is { } known ? number(known) : double.NaN;
}
