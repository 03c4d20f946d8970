using FuelSizing.Equations;
using FuelSizing.Logs;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Reads what the run asked of injectors and mixture.</summary>
/// <param name="check">The plan and its tolerances.</param>
/// <param name="run">The run.</param>
/// <param name="model">Its model.</param>
internal sealed class UseReading(RunCheck check, RecordedRun run, RunModel model) : RunReading(check, run, model)
{
    /// <summary>Share over the planned lambda from which a row on boost is lean.</summary>
    private const double LeanAllowance = 0.06;

    /// <summary>Boost over which a lean mixture counts, Pa.</summary>
    private const double OnBoost = 5e3;

    /// <summary>Duty cycle used.</summary>
    public Finding<DutyUse> Duty()
    {
        if (!Run.Has(Channel.DutyCycle) && !Run.Has(Channel.InjectorPulse))
        {
            return Finding<DutyUse>.CannotTell(Statement.Of("run.needs-pulse", $"neither pulse nor duty cycle was recorded"), Channel.InjectorPulse, Channel.DutyCycle);
        }

        double limit = Check.Plan.Limits.DutyCycle.DecimalFractions;
        (int at, double maximum, int over) = (-1, double.NegativeInfinity, 0);
        for (int row = 0; row < Run.Count; row++)
        {
            double duty = Columns.At(Channel.DutyCycle, row);
            over += duty > limit ? 1 : 0;
            (at, maximum) = duty > maximum ? (row, duty) : (at, maximum);
        }

        return at < 0
            ? Finding<DutyUse>.CannotTell(Statement.Of("run.never-turned", $"the engine never turned while pulses were recorded"))
            : Finding<DutyUse>.Of(new(Ratio.FromDecimalFractions(maximum), Place(at), Check.Plan.Limits.DutyCycle, over));
    }

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

    /// <summary>Lean stretches.</summary>
    public Finding<LeanExcursions> Lean()
    {
        Channel[] missing = [.. new[] { Channel.Lambda, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0)
        {
            return Finding<LeanExcursions>.CannotTell(Statement.Of("run.needs-lambda-and-manifold", $"lambda and manifold pressure must both be recorded"), missing);
        }

        double limit = Check.Plan.Demand.Consumption.Lambda * (1 + LeanAllowance);
        List<LeanExcursion> found = [];
        for (int row = 0; row < Run.Count;)
        {
            int end = row;
            while (end < Run.Count && IsLean(end, limit))
            {
                end++;
            }

            // One row by itself is a glitch of the sensor.
            if (end - row >= 2)
            {
                int worst = Enumerable.Range(row, end - row).MaxBy(place => Columns.At(Channel.Lambda, place));
                double from = Columns.At(Channel.Time, row);
                double to = Columns.At(Channel.Time, end - 1);
                found.Add(new(
                    Place(row),
                    Place(worst),
                    Columns.At(Channel.Lambda, worst),
                    end - row,
                    double.IsNaN(to - from) ? null : Duration.FromSeconds(to - from)));
            }

            row = Math.Max(end, row + 1);
        }

        return Finding<LeanExcursions>.Of(new(limit, found));
    }

    private bool IsLean(int row, double limit) =>
        Columns.At(Channel.Lambda, row) > limit
        && Columns.At(Channel.ManifoldAbsolute, row) - Run.Atmosphere.Pascals > OnBoost;

    private double Across(int point) => RailPressure.Differential<Real>(
        Model.Points.Rail[point], Run.Atmosphere.Pascals, Model.Points.Manifold[point]);
}
