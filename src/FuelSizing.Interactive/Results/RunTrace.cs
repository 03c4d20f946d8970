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
    // Two rows a stretch: more would not be told apart on paper, and each costs the plan a solution.
    private const int Stretches = 300;

    private readonly RecordedRun _run;
    private readonly Channel _channel;
    private readonly RunCheck? _check;
    private readonly TextStyle _style;
    private readonly List<(RunRow Row, double Value)> _shown;

    /// <summary>Finds the rows to show.</summary>
    /// <exception cref="ArgumentException">No row holds the channel.</exception>
    public RunTrace(RecordedRun run, Channel channel, RunCheck? check, TextStyle style)
    {
        (_run, _channel, _check, _style) = (run, channel, check, style);
        List<(RunRow Row, double Value)> all = [];
        foreach (RunRow row in run.Rows)
        {
            if (Recorded(row, channel, check, style) is var value && !double.IsNaN(value))
            {
                all.Add((row, value));
            }
        }

        if (all.Count == 0)
        {
            throw new ArgumentException($"run has no row with {RunText.Name(channel)}. It holds: {RunText.Names(run.Channels)}.", nameof(run));
        }

        _shown = Extremes(all);
    }

    /// <summary>True if a run holds a channel, or what it follows from.</summary>
    public static bool IsIn(RecordedRun run, Channel channel, RunCheck? check) =>
        run.Rows.Any(row => !double.IsNaN(Recorded(row, channel, check, TextStyle.Metric)));

    /// <summary>Record, and plan where there is one.</summary>
    public LinePlot Plot()
    {
        bool timed = _run.Has(Channel.Time);
        double[] places = [.. _shown.Select(shown => timed ? shown.Row.Time!.Value.Seconds : shown.Row.Line)];
        double[] planned = [.. _shown.Select(shown => Planned(shown.Row))];
        LinePlot plot = new(
            $"{VisibleText.Of(_run.Name)}: {RunText.Name(_channel)}",
            timed ? new PlotAxis("Time", "s") : new PlotAxis("Line of the log", "1"),
            Axis(),
            [
                new PlotLine("recorded", places, [.. _shown.Select(shown => shown.Value)]),
                .. planned.Any(double.IsFinite) ? (PlotLine[])[new PlotLine("predicted", places, planned)] : [],
            ]);
        return _channel == Channel.DutyCycle && _check is not null
            ? Limited(plot, _check.Plan.Limits).With(_style)
            : plot.With(_style);
    }

    private LinePlot Limited(LinePlot plot, SizingLimits limits)
    {
        LinePlot limited = plot.WithLimit($"limit {_style.Of(limits.DutyCycle)}{RuleMark.Of(limits, RuleOfThumb.DutyCycle)}", limits.DutyCycle.Percent);
        return limits.MarkOf(RuleOfThumb.DutyCycle) is null ? limited : limited.WithNote(RuleMark.Note);
    }

    /// <summary>Of each stretch the least and the greatest, in their order.</summary>
    private static List<(RunRow Row, double Value)> Extremes(List<(RunRow Row, double Value)> all)
    {
        if (all.Count <= 2 * Stretches)
        {
            return all;
        }

        List<(RunRow Row, double Value)> kept = [];
        for (int stretch = 0; stretch < Stretches; stretch++)
        {
            int start = (int)((long)all.Count * stretch / Stretches);
            int end = (int)((long)all.Count * (stretch + 1) / Stretches);
            (int minimum, int maximum) = (start, start);
            for (int place = start; place < end; place++)
            {
                minimum = all[place].Value < all[minimum].Value ? place : minimum;
                maximum = all[place].Value > all[maximum].Value ? place : maximum;
            }

            kept.Add(all[Math.Min(minimum, maximum)]);
            if (minimum != maximum)
            {
                kept.Add(all[Math.Max(minimum, maximum)]);
            }
        }

        return kept;
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
