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
        List<int> governed = [];
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
                governed.Add(i);
            }
        }

        // What comes late and the regulator's slope are taken off as the likeliest state of the car has them; what that leaves open is in the intervals.
        double[] found = new double[RunModel.Quantities];
        foreach (RunQuantity quantity in TakenOff)
        {
            found[(int)quantity] = diagnosis?.Best.Value(quantity) ?? 0;
        }

        (double[] Boost, double[] Rail) Points(IReadOnlyList<double>? moved = null)
        {
            double Of(RunQuantity quantity) => found[(int)quantity] + (moved?[Array.IndexOf(TakenOff, quantity)] ?? 0);
            return (
                [.. governed.Select(i => fine.Inputs[i].Boost + (Of(RunQuantity.ManifoldLag) * fine.Inputs[i].BoostRate))],
                [.. governed.Select(i => fine.Inputs[i].Rail + (Check.HoldsAtRail ? 0 : fine.Inputs[i].SupplyLoss)
                    + (Of(RunQuantity.RailLag) * fine.Inputs[i].RailRate) + (Of(RunQuantity.RegulatorSlope) * fine.Inputs[i].InjectedShare))]);
        }

        (double[] boost, double[] rail) = Points();
        SharedError shared = new(
            [.. LeftOpen(diagnosis, fine).Where(moved => moved.Any(by => by != 0)).Select(moved => Points(moved))],
            fine.Tolerance[(int)RunQuantity.RailSensor],
            fine.Tolerance[(int)RunQuantity.ManifoldSensor]);
        return RegulatorFit.Of(
            boost,
            rail,
            Check.ManifoldNoise / Check.RailNoise,
            Check.Regulator.HasOnset ? Check.Regulator.EffectiveOnset : null,
            shared);
    }

    /// <summary>How far what is taken off may be off still, SI: as many independent moves at their standard deviation.</summary>
    private static IEnumerable<double[]> LeftOpen(Diagnosis? diagnosis, RunModel fine) => diagnosis is null
        ? TakenOff.Select((quantity, i) => Enumerable.Range(0, TakenOff.Length).Select(j => i == j ? fine.Tolerance[(int)quantity] : 0).ToArray())
        : diagnosis.Best.Moves(TakenOff);

    private static readonly RunQuantity[] TakenOff = [RunQuantity.RegulatorSlope, RunQuantity.ManifoldLag, RunQuantity.RailLag];

    /// <summary>Rail pressure below what the regulator as planned should hold.</summary>
    /// <remarks>A fitted fault would explain the sag away: a rail flat on boost is what a gain of zero holds.</remarks>
    public Finding<PressureSag> Sag(Diagnosis? diagnosis)
    {
        Channel[] missing = [.. new[] { Channel.RailGauge, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0)
        {
            return Finding<PressureSag>.CannotTell(Statement.Of("run.needs-rail-and-manifold", $"rail and manifold pressure must both be recorded"), missing);
        }

        bool[] low = [.. Enumerable.Range(0, Model.Inputs.Count).Select(i => UnderAt(i) > AllowedAt(i))];
        (int worst, int points) = (-1, 0);
        for (int i = 0; i < low.Length; i++)
        {
            if (double.IsNaN(UnderAt(i)))
            {
                continue;
            }

            // One row by itself is a glitch of the sensor.
            bool counts = low[i]
                && (Model.Points.RowCounts[i] >= 3 || (i > 0 && low[i - 1]) || (i + 1 < low.Length && low[i + 1]));
            points += counts ? 1 : 0;
            worst = worst < 0 || (points > 0 ? counts && (points == 1 || UnderAt(i) > UnderAt(worst)) : UnderAt(i) > UnderAt(worst)) ? i : worst;
        }

        if (worst < 0)
        {
            return Finding<PressureSag>.CannotTell(Statement.Of("run.outside-tables", $"no row with both lies within the plan's tables"));
        }

        PointInput at = Model.Inputs[worst];
        double predicted = double.IsNaN(at.Flow) ? 0 : -Math.Min(0, Model.RailAt(worst, new double[RunModel.Quantities]).Surplus);
        return Finding<PressureSag>.Of(new(
            Pressure.FromPascals(points > 0 ? UnderAt(worst) : 0),
            Pressure.FromPascals(predicted),
            PlaceOf(worst),
            double.IsNaN(at.Flow) ? null : VolumeFlow.FromCubicMetersPerSecond(at.Flow),
            points,
            Gap(),
            diagnosis is null
                ? []
                :
                [
                    .. diagnosis.Suspects
                        .Where(h => h.Fault is RunFault.WeakPump or RunFault.VoltageDrop or RunFault.CloggedFilter)
                        .Select(h => FaultWords.Of(Check, diagnosis, h)),
                ]));
    }

    /// <summary>Standard deviations over which a rail is clearly under its setting.</summary>
    private const double Clearly = 3;

    /// <summary>How far the rail lies under the planned setting at a point, Pa; NaN where it was not recorded, or the return line sets it.</summary>
    private double UnderAt(int point)
    {
        PointInput input = Model.Inputs[point];
        return input.ReturnFloor || (!Check.HoldsAtRail && double.IsNaN(input.Flow))
            ? double.NaN
            : Check.Regulator.Set(input.Boost, 0, 0, 0) - (Check.HoldsAtRail ? 0 : input.SupplyLoss) - input.Rail;
    }

    /// <summary>How far under its setting tolerances of sound parts and accuracy of the sensors let the rail lie, Pa.</summary>
    private double AllowedAt(int point)
    {
        PointInput input = Model.Inputs[point];
        RegulatorModel regulator = Check.Regulator;
        double over = Math.Max(0, input.Boost - regulator.Onset);
        double slope = over > 0 ? regulator.Gain : regulator.SlopeBelow;
        double rows = Math.Sqrt(Model.Points.RowCounts[point]);
        double[] parts =
        [
            Check.Tolerance.RegulatorBase.Pascals,
            regulator.HasOnset ? Check.Tolerance.RegulatorGain.DecimalFractions * regulator.Gain * over : 0,
            over > 0 ? (regulator.Gain - regulator.SlopeBelow) * Check.Tolerance.RegulatorOnset.Pascals : 0,
            Check.Accuracy.RailOffset.Pascals,
            slope * Check.Accuracy.ManifoldOffset.Pascals,
            Check.RailNoise / rows,
            slope * Check.ManifoldNoise / rows,
        ];
        return Clearly * Math.Sqrt(parts.Sum(part => part * part));
    }

    /// <summary>Which rows on boost lack rail pressure or lie outside the plan; none where all were judged.</summary>
    private Statement? Gap()
    {
        (int rows, int known, int outside) = (0, 0, 0);
        for (int row = 0; row < Run.Count; row++)
        {
            if (IsLoaded(row) == false)
            {
                continue;
            }

            rows++;
            bool covered = Columns.Covers(row);
            outside += covered || IsLoaded(row) is null ? 0 : 1;
            known += covered && !double.IsNaN(Columns.At(Channel.RailGauge, row)) ? 1 : 0;
        }

        return rows == 0 ? Statement.Of("run.never-on-boost", $"the run was never {Load}")
            : known == rows ? null
            : outside == 0 ? Statement.Of("run.rail-gap", $"rail pressure is known of {known} of {rows} rows {Load}")
            : Statement.Of("run.rail-gap-outside", $"rail pressure is known of {known} of {rows} rows {Load}; {outside} lie outside the plan's tables");
    }
}
