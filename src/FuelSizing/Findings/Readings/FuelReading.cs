using FuelSizing.Logs;
using FuelSizing.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Reads how much fuel went in, by every way that the channels allow.</summary>
/// <param name="check">The plan and its tolerances.</param>
/// <param name="run">The run.</param>
/// <param name="model">Its model.</param>
internal sealed class FuelReading(RunCheck check, RecordedRun run, RunModel model) : RunReading(check, run, model)
{
    private const int MinimumPoints = 5;

    /// <summary>Half width of the dead time's interval over which it is not told, s.</summary>
    private const double WidestDeadTime = 0.15e-3;

    /// <summary>Fuel in several ways.</summary>
    public Finding<FuelBalance> Fuel()
    {
        if (!Model.Inputs.Any(input => input.Injects))
        {
            return Finding<FuelBalance>.CannotTell(
                Statement.Of("run.needs-injected-fuel", $"fuel by the injectors needs pulse or duty cycle, and the dead-time table to cover voltage and pressure"),
                Run.Has(Channel.DutyCycle) ? [] : [Channel.InjectorPulse]);
        }

        List<FuelComparison> found = [];
        Add("flow meter", input => Math.Log(input.Meter));
        Add("air and lambda", input => input.Lambda is > 0.5 and < 1.5 ? input.LogStoichiometric - Math.Log(input.Lambda) : double.NaN);
        Add(
            "power and planned BSFC",
            input => input.Power > 0 && input.FullLoad ? Math.Log(input.Power) - input.LogWork : double.NaN);
        return found.Count > 0
            ? Finding<FuelBalance>.Of(new(found))
            : Finding<FuelBalance>.CannotTell(
                Statement.Of("run.nothing-to-compare", $"nothing to compare the injectors' fuel with"), Channel.FuelVolumeFlow, Channel.Lambda, Channel.Power);

        void Add(string by, Func<PointInput, double> logarithm)
        {
            double[] ratios =
            [
                .. Model.Inputs
                    .Where(input => input.Injects)
                    .Select(input => logarithm(input) - Math.Log(Check.Injected(input, input.Differential, input.Open)))
                    .Where(double.IsFinite),
            ];
            if (ratios.Length >= MinimumPoints)
            {
                found.Add(new(by, Factor(ratios, 1)));
            }
        }
    }

    /// <summary>BSFC.</summary>
    public Finding<BrakeConsumptionFound> BrakeConsumption()
    {
        double[] ratios = Logarithms(Comparison.Power);
        if (ratios.Length < MinimumPoints)
        {
            return Run.Has(Channel.Power) || Run.Has(Channel.Torque)
                ? Finding<BrakeConsumptionFound>.CannotTell(Statement.Of("run.needs-fuel-and-power", $"it needs fuel and power at full load"), FuelChannels())
                : Finding<BrakeConsumptionFound>.CannotTell(Statement.Of("run.needs-power", $"power was not recorded"), Channel.Power, Channel.Torque);
        }

        Estimate<Ratio> factor = Factor(ratios, -1);
        BrakeSpecificFuelConsumption planned = Check.Plan.Demand.Consumption.BrakeSpecificFuelConsumption;
        return Finding<BrakeConsumptionFound>.Of(new(
            new(
                planned * factor.Value.DecimalFractions,
                planned * factor.Minimum.DecimalFractions,
                planned * factor.Maximum.DecimalFractions),
            planned));
    }

    /// <summary>Volumetric efficiency.</summary>
    public Finding<VolumetricEfficiencyFound> VolumetricEfficiency()
    {
        double[] ratios = Logarithms(Comparison.Air);
        if (ratios.Length < MinimumPoints)
        {
            return Run.Has(Channel.Lambda)
                ? Finding<VolumetricEfficiencyFound>.CannotTell(Statement.Of("run.needs-fuel-and-lambda", $"it needs fuel and lambda together"), FuelChannels())
                : Finding<VolumetricEfficiencyFound>.CannotTell(Statement.Of("run.needs-lambda", $"lambda was not recorded"), Channel.Lambda);
        }

        double[] differences = Model.Plain();
        const double Step = 500 / 60.0;
        (RotationalSpeed, Ratio)[] table =
        [
            .. Enumerable.Range(0, Model.Comparisons)
                .Where(row => Model.Describe(row).Kind == Comparison.Air)
                .Select(row => (
                    Model.Inputs[Model.Describe(row).Point].Speed, Log: differences[row]))
                .GroupBy(point => Math.Round(point.Speed / Step))
                .OrderBy(group => group.Key)
                .Select(group =>
                {
                    RotationalSpeed speed = RotationalSpeed.FromRevolutionsPerSecond(group.Select(point => point.Speed).Median());
                    double planned = Check.Plan.Demand.VolumetricEfficiency.BySpeed.At(speed.RevolutionsPerSecond);
                    return (speed, Ratio.FromDecimalFractions(planned * Math.Exp(group.Select(point => point.Log).Median())));
                }),
        ];
        return Finding<VolumetricEfficiencyFound>.Of(new(Factor(ratios, 1), table));
    }

    /// <summary>Dead time.</summary>
    public Finding<DeadTimeFound> DeadTime(Diagnosis? diagnosis)
    {
        if (diagnosis is null || !Model.Has(Comparison.Flow))
        {
            Channel[] missing =
            [
                .. new[] { Channel.FuelVolumeFlow, Channel.InjectorPulse }.Where(channel =>
                    !Run.Has(channel)
                    && !Run.Has(channel == Channel.InjectorPulse ? Channel.DutyCycle : Channel.FuelMassFlow)),
            ];
            return Finding<DeadTimeFound>.CannotTell(Statement.Of("run.needs-meter-and-pulse", $"it needs fuel flow by a meter and pulse together"), missing);
        }

        RunFit fit = RunFit.From(Model, diagnosis.Best.Off, RunQuantity.DeadTime, RunQuantity.InjectorFlow);
        double half = 1.96 * fit.Error(RunQuantity.DeadTime);
        if (half > WidestDeadTime)
        {
            return Finding<DeadTimeFound>.CannotTell(Statement.Of(
                "run.pulses-alike",
                $"pulses were too much alike: dead time is known to ±{Duration.FromSeconds(half)} only; run from part throttle to full boost"));
        }

        double value = fit.Value(RunQuantity.DeadTime);
        double flow = fit.Value(RunQuantity.InjectorFlow);
        double flowHalf = 1.96 * fit.Error(RunQuantity.InjectorFlow);
        return Finding<DeadTimeFound>.Of(new(
            new(Duration.FromSeconds(value), Duration.FromSeconds(value - half), Duration.FromSeconds(value + half)),
            new(
                Ratio.FromDecimalFractions(Math.Exp(flow)),
                Ratio.FromDecimalFractions(Math.Exp(flow - flowHalf)),
                Ratio.FromDecimalFractions(Math.Exp(flow + flowHalf)))));
    }

    private Channel[] FuelChannels() =>
        Model.Inputs.Any(input => input.Injects || !double.IsNaN(input.Meter))
            ? []
            : [Channel.FuelVolumeFlow, Channel.InjectorPulse];

    private double[] Logarithms(Comparison kind)
    {
        double[] differences = Model.Plain();
        return
        [
            .. Enumerable.Range(0, Model.Comparisons)
                .Where(row => Model.Describe(row).Kind == kind)
                .Select(row => differences[row]),
        ];
    }

    /// <summary>A factor from logarithms of single ratios: robust centre with Student's t interval.</summary>
    private static Estimate<Ratio> Factor(double[] logarithms, double sign)
    {
        double centre = logarithms.Median();
        double scale = RobustLoss.NormalConsistency * logarithms.Select(value => Math.Abs(value - centre)).Median();
        double[] kept = [.. logarithms.Where(value => Math.Abs(value - centre) <= 4 * scale)];
        double mean = kept.Mean();
        double half = kept.Length > 1
            ? StudentT.InvCDF(0, 1, kept.Length - 1, 0.975) * kept.StandardDeviation() / Math.Sqrt(kept.Length)
            : 0;
        (double first, double last) = (Math.Exp(sign * (mean - half)), Math.Exp(sign * (mean + half)));
        return new(
            Ratio.FromDecimalFractions(Math.Exp(sign * mean)),
            Ratio.FromDecimalFractions(Math.Min(first, last)),
            Ratio.FromDecimalFractions(Math.Max(first, last)));
    }
}
