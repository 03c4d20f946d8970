using FuelSizing.Equations;
using FuelSizing.Logs;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Reads what the run asked of the injectors.</summary>
/// <param name="check">The plan and its tolerances.</param>
/// <param name="run">The run.</param>
/// <param name="model">Its model.</param>
internal sealed class UseReading(RunCheck check, RecordedRun run, RunModel model) : RunReading(check, run, model)
{
    /// <summary>Duty cycle used.</summary>
    public Finding<DutyUse> Duty()
    {
        if (!Run.Has(Channel.DutyCycle) && !Run.Has(Channel.InjectorPulse))
        {
            return Finding<DutyUse>.CannotTell(Statement.Of("run.needs-pulse", $"neither pulse nor duty cycle was recorded"), Channel.InjectorPulse, Channel.DutyCycle);
        }

        double limit = Check.Plan.Limits.DutyCycle.DecimalFractions;
        StuckReadings stuck = Stuck(Channel.DutyCycle);
        StuckReadings stuckPulse = Stuck(Channel.InjectorPulse);
        (int at, double maximum, int over, int rows, int judged) = (-1, double.NegativeInfinity, 0, 0, 0);
        for (int row = 0; row < Run.Count; row++)
        {
            if (!Columns.IsTurning(row))
            {
                continue;
            }

            rows++;
            double duty = Larger(
                Usable(Recorded(Channel.DutyCycle, row), stuck, limit),
                double.IsNaN(Usable(Recorded(Channel.InjectorPulse, row), stuckPulse, double.PositiveInfinity))
                    ? double.NaN
                    : Columns.Derived(Channel.DutyCycle, row));
            if (double.IsNaN(duty))
            {
                continue;
            }

            judged++;
            over += duty > limit ? 1 : 0;
            (at, maximum) = duty > maximum ? (row, duty) : (at, maximum);
        }

        if (at < 0)
        {
            return Finding<DutyUse>.CannotTell(
                rows == 0 ? Statement.Of("run.never-turned", $"the engine never turned while pulses were recorded")
                : stuck.NeverMoves || stuckPulse.NeverMoves ? Statement.Of("run.duty-never-moves", $"duty cycle or pulse reads the same throughout while engine speed changes")
                : Statement.Of("run.duty-not-on-rows", $"no row with the engine turning has a usable pulse or duty cycle"));
        }

        return Finding<DutyUse>.Of(new(
            Ratio.FromDecimalFractions(maximum),
            Place(at),
            Check.Plan.Limits.DutyCycle,
            over,
            judged,
            rows,
            judged == rows ? null : Statement.Of("run.duty-gap", $"duty cycle is known of {judged} of {rows} rows with the engine turning"),
            Check.Plan.Limits.MarkOf(RuleOfThumb.DutyCycle)));
    }

    // A channel at the upper end of its range may hide a longer pulse.
    private StuckReadings Stuck(Channel channel) =>
        StuckReadings.Of(Run.Si(channel), Run.Si(Channel.Speed), isMaximum: true, _ => false);

    private double Recorded(Channel channel, int row)
    {
        ReadOnlySpan<double> column = Run.Si(channel);
        return column.IsEmpty ? double.NaN : column[row];
    }

    // Over its limit a reading says enough, wherever the channel sticks.
    private static double Usable(double value, StuckReadings stuck, double limit) =>
        stuck.Holds(value) && value <= limit ? double.NaN : value;

    private static double Larger(double first, double other) =>
        double.IsNaN(first) ? other : double.IsNaN(other) ? first : Math.Max(first, other);

    /// <summary>Pressure across the injectors.</summary>
    public Finding<DifferentialUse> Differential()
    {
        Channel[] missing = [.. new[] { Channel.RailGauge, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0)
        {
            return Finding<DifferentialUse>.CannotTell(Statement.Of("run.needs-rail-and-manifold", $"rail and manifold pressure must both be recorded"), missing);
        }

        RunPoints points = Model.Points;
        (int low, int high) = (-1, -1);
        for (int i = 0; i < points.Count; i++)
        {
            if (!double.IsNaN(points.Rail[i]))
            {
                low = low < 0 || Across(i) < Across(low) ? i : low;
                high = high < 0 || Across(i) > Across(high) ? i : high;
            }
        }

        return low < 0
            ? Finding<DifferentialUse>.CannotTell(Statement.Of("run.outside-tables", $"no row with both lies within the plan's tables"))
            : Finding<DifferentialUse>.Of(new(
                Pressure.FromPascals(Across(low)),
                PlaceOf(low),
                Pressure.FromPascals(Across(high)),
                PlaceOf(high)));
    }

    private double Across(int point) => RailPressure.Differential<Real>(
        Model.Points.Rail[point], Run.Atmosphere.Pascals, Model.Points.Manifold[point]);
}
