using FuelSizing.Logs;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Reads what regulator and pump did to the rail.</summary>
/// <param name="check">The plan and its tolerances.</param>
/// <param name="run">The run.</param>
/// <param name="model">Its model.</param>
internal sealed class PressureReading(RunCheck check, RecordedRun run, RunModel model) : RunReading(check, run, model)
{
    /// <summary>Points of the regulator's fit.</summary>
    private const int RegulatorPoints = 400;

    /// <summary>Pressure that the pumps must have to spare for the regulator to govern without doubt, Pa.</summary>
    private const double Clear = 8e3;

    /// <summary>Base, gain and onset.</summary>
    public Finding<RegulatorFit> Regulator(Diagnosis? diagnosis)
    {
        Channel[] missing = [.. new[] { Channel.RailGauge, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0)
        {
            return Finding<RegulatorFit>.CannotTell(Statement.Of("run.needs-rail-and-manifold", $"rail and manifold pressure must both be recorded"), missing);
        }

        RunModel fine = Check.Model(Run, RegulatorPoints);
        double[] off = diagnosis?.Best.Off ?? new double[RunModel.Quantities];
        List<double> boost = [];
        List<double> rail = [];
        for (int i = 0; i < fine.Inputs.Count; i++)
        {
            PointInput input = fine.Inputs[i];
            if (double.IsNaN(input.Rail) || input.ReturnFloor)
            {
                continue;
            }

            // Where the pump is near its end, or the unit at its stop, the regulator's course does not show.
            bool known = !double.IsNaN(input.Flow);
            double surplus = known ? fine.RailAt(i, off).Surplus : double.PositiveInfinity;
            bool stopped = Check.Regulator.Set(input.Boost, 0, 0, 0) >= Check.Regulator.Ceiling - (3 * Check.RailNoise);
            if (surplus > Clear && !stopped)
            {
                boost.Add(input.Boost);
                rail.Add(input.Rail + (Check.HoldsAtRail ? 0 : input.SupplyLoss));
            }
        }

        return RegulatorFit.Of(
            [.. boost],
            [.. rail],
            Check.ManifoldNoise / Check.RailNoise,
            Check.Regulator.HasOnset ? Check.Regulator.EffectiveOnset : null);
    }

    /// <summary>Rail pressure below its setting.</summary>
    public Finding<PressureSag> Sag(Diagnosis? diagnosis)
    {
        Channel[] missing = [.. new[] { Channel.RailGauge, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0 || diagnosis is null || !Model.Has(Comparison.Rail))
        {
            return Finding<PressureSag>.CannotTell(
                Statement.Of("run.needs-rail-and-fuel", $"it needs rail and manifold pressure, and fuel by pulse, flow meter or demand"), missing);
        }

        double[] off = diagnosis.Best.Off;
        (int worst, double maximum, int points) = (-1, double.NegativeInfinity, 0);
        for (int i = 0; i < Model.Inputs.Count; i++)
        {
            PointInput input = Model.Inputs[i];
            if (double.IsNaN(input.Rail) || double.IsNaN(input.Flow) || input.ReturnFloor)
            {
                continue;
            }

            (double rail, double surplus) = Model.RailAt(i, off);
            double under = rail - Math.Min(0, surplus) - input.Rail;
            points += surplus < 0 ? 1 : 0;
            (worst, maximum) = under > maximum ? (i, under) : (worst, maximum);
        }

        if (worst < 0)
        {
            return Finding<PressureSag>.CannotTell(Statement.Of("run.outside-tables", $"no row with rail pressure and fuel lies within the plan's tables"));
        }

        return Finding<PressureSag>.Of(new(
            Pressure.FromPascals(points > 0 ? Math.Max(0, maximum) : 0),
            PlaceOf(worst),
            VolumeFlow.FromCubicMetersPerSecond(Model.Inputs[worst].Flow),
            points,
            [
                .. diagnosis.Hypotheses
                    .Where(h => h.Fault is RunFault.WeakPump or RunFault.VoltageDrop or RunFault.CloggedFilter)
                    .Select(h => FaultWords.Of(Check, diagnosis, h)),
            ]));
    }
}
