using FuelSizing.Logs;
using MathNet.Numerics.Statistics;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Reads where run and plan agree.</summary>
/// <param name="check">The plan and its tolerances.</param>
/// <param name="run">The run.</param>
/// <param name="model">Its model.</param>
internal sealed class AgreementReading(RunCheck check, RecordedRun run, RunModel model) : RunReading(check, run, model)
{
    /// <summary>Where run and plan agree.</summary>
    public IReadOnlyList<PlanAgreement> Agreement()
    {
        double[] differences = Model.Plain();
        List<PlanAgreement> agreement = [];
        Add(Comparison.Rail, "rail pressure", 1e-3, "kPa");
        Add(Comparison.Flow, "fuel by the flow meter against the injectors", 100, "%");
        Add(Comparison.Air, "air by fuel and lambda against speed-density", 100, "%");
        Add(Comparison.Power, "power against fuel and BSFC", 100, "%");
        double[] volts = [.. Model.Points.Volts.Where(v => !double.IsNaN(v))];
        if (volts.Length > 0)
        {
            agreement.Add(new(
                "supply voltage, median", volts.Median() - Check.SupplyVolts, 2 * Check.Tolerance.SupplyVoltage.Volts, "V", volts.Length, 0));
        }

        return agreement.AsReadOnly();

        void Add(Comparison kind, string name, double scale, string unit)
        {
            int[] rows = [.. Enumerable.Range(0, Model.Comparisons).Where(row => Model.Describe(row).Kind == kind)];
            if (rows.Length == 0)
            {
                return;
            }

            double variance = rows.Select(row => Model.Describe(row).Spread).Median();
            variance *= variance / rows.Length;
            double[][] slopes = [.. rows.Select(Model.PlainSlopes)];
            for (int quantity = 0; quantity < RunModel.Quantities; quantity++)
            {
                double slope = slopes.Average(line => line[quantity]);
                variance += slope * slope;
            }

            agreement.Add(new(
                name,
                scale * rows.Select(row => differences[row]).Median(),
                scale * 2 * Math.Sqrt(variance),
                unit,
                rows.Length,
                rows.Zip(slopes).Count(pair => Beyond(pair.First, pair.Second, differences[pair.First]))));
        }
    }

    /// <summary>True if a comparison is further off than tolerances, accuracy and its scatter let it be.</summary>
    private bool Beyond(int row, double[] slopes, double difference)
    {
        double spread = Model.Describe(row).Spread;
        return Math.Abs(difference) > 3 * Math.Sqrt((spread * spread) + slopes.Sum(slope => slope * slope));
    }
}
