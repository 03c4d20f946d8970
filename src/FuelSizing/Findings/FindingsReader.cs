using System.Globalization;
using FuelSizing.Equations;
using FuelSizing.Logs;
using FuelSizing.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;
using UnitsNet;

namespace FuelSizing.Findings;

using Pressure = UnitsNet.Pressure;

/// <summary>Reads the findings off a run, one by one.</summary>
internal sealed class FindingsReader
{
    /// <summary>Share over the planned lambda from which a row on boost is lean.</summary>
    private const double LeanAllowance = 0.06;

    /// <summary>Boost over which a lean mixture counts, Pa.</summary>
    private const double OnBoost = 5e3;

    /// <summary>Points of the regulator's fit.</summary>
    private const int RegulatorPoints = 400;

    private readonly RunColumnsRead _columns;

    /// <summary>Prepares to read.</summary>
    public FindingsReader(RunCheck check, RecordedRun run, RunModel model)
    {
        (Check, Run, Model) = (check, run, model);
        _columns = new(check.Plan, run, check.FuelKelvins);
    }

    /// <summary>The plan and its tolerances.</summary>
    public RunCheck Check { get; }

    /// <summary>The run.</summary>
    public RecordedRun Run { get; }

    /// <summary>Its model.</summary>
    public RunModel Model { get; }

    /// <summary>Duty cycle used.</summary>
    public Finding<DutyUse> Duty()
    {
        if (!Run.Has(Channel.DutyCycle) && !Run.Has(Channel.InjectorPulse))
        {
            return Finding<DutyUse>.CannotTell("neither pulse nor duty cycle was recorded", Channel.InjectorPulse, Channel.DutyCycle);
        }

        double limit = Check.Plan.Limits.DutyCycle.DecimalFractions;
        (int highest, double most, int over) = (-1, double.NegativeInfinity, 0);
        for (int row = 0; row < Run.Count; row++)
        {
            double duty = _columns.At(Channel.DutyCycle, row);
            over += duty > limit ? 1 : 0;
            (highest, most) = duty > most ? (row, duty) : (highest, most);
        }

        return highest < 0
            ? Finding<DutyUse>.CannotTell("the engine never turned while pulses were recorded")
            : Finding<DutyUse>.Of(new(Ratio.FromDecimalFractions(most), Place(highest), Check.Plan.Limits.DutyCycle, over));
    }

    /// <summary>Pressure across the injectors.</summary>
    public Finding<DifferentialUse> Differential()
    {
        Channel[] missing = [.. new[] { Channel.RailGauge, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0)
        {
            return Finding<DifferentialUse>.CannotTell("rail and manifold pressure must both be recorded", missing);
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
            ? Finding<DifferentialUse>.CannotTell("no row with both lies within the plan's tables")
            : Finding<DifferentialUse>.Of(new(
                Pressure.FromPascals(Across(low)),
                PlaceOf(low),
                Pressure.FromPascals(Across(high)),
                PlaceOf(high)));
    }

    /// <summary>Base, gain and onset.</summary>
    public Finding<RegulatorFit> Regulator(Diagnosis? diagnosis)
    {
        Channel[] missing = [.. new[] { Channel.RailGauge, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0)
        {
            return Finding<RegulatorFit>.CannotTell("rail and manifold pressure must both be recorded", missing);
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

    /// <summary>Fuel in several ways.</summary>
    public Finding<FuelBalance> Fuel()
    {
        if (!Model.Inputs.Any(input => input.Injects))
        {
            return Finding<FuelBalance>.CannotTell(
                "fuel by the injectors needs pulse or duty cycle, and the dead-time table to cover voltage and pressure",
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
                "nothing to hold the injectors' fuel against", Channel.FuelVolumeFlow, Channel.Lambda, Channel.Power);

        void Add(string by, Func<PointInput, double> logarithm)
        {
            double[] ratios =
            [
                .. Model.Inputs
                    .Where(input => input.Injects)
                    .Select(input => logarithm(input) - Math.Log(Check.Injected(input, input.Differential, input.Open)))
                    .Where(double.IsFinite),
            ];
            if (ratios.Length >= LeastPoints)
            {
                found.Add(new(by, Factor(ratios, 1)));
            }
        }
    }

    /// <summary>BSFC.</summary>
    public Finding<BrakeConsumptionFound> BrakeConsumption()
    {
        double[] ratios = Logarithms(Comparison.Power);
        if (ratios.Length < LeastPoints)
        {
            return Run.Has(Channel.Power) || Run.Has(Channel.Torque)
                ? Finding<BrakeConsumptionFound>.CannotTell("it needs fuel and power at full load", FuelChannels())
                : Finding<BrakeConsumptionFound>.CannotTell("power was not recorded", Channel.Power, Channel.Torque);
        }

        Estimate<Ratio> factor = Factor(ratios, -1);
        BrakeSpecificFuelConsumption planned = Check.Plan.Demand.Consumption.BrakeSpecificFuelConsumption;
        return Finding<BrakeConsumptionFound>.Of(new(
            new(
                planned * factor.Value.DecimalFractions,
                planned * factor.Least.DecimalFractions,
                planned * factor.Most.DecimalFractions),
            planned));
    }

    /// <summary>Volumetric efficiency.</summary>
    public Finding<VolumetricEfficiencyFound> VolumetricEfficiency()
    {
        double[] ratios = Logarithms(Comparison.Air);
        if (ratios.Length < LeastPoints)
        {
            return Run.Has(Channel.Lambda)
                ? Finding<VolumetricEfficiencyFound>.CannotTell("it needs fuel and lambda together", FuelChannels())
                : Finding<VolumetricEfficiencyFound>.CannotTell("lambda was not recorded", Channel.Lambda);
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

    /// <summary>Rail under its set pressure.</summary>
    public Finding<PressureSag> Sag(Diagnosis? diagnosis)
    {
        Channel[] missing = [.. new[] { Channel.RailGauge, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0 || diagnosis is null || !Model.Has(Comparison.Rail))
        {
            return Finding<PressureSag>.CannotTell(
                "it needs rail and manifold pressure, and fuel by pulse, flow meter or demand", missing);
        }

        double[] off = diagnosis.Best.Off;
        (int worst, double most, int points) = (-1, double.NegativeInfinity, 0);
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
            (worst, most) = under > most ? (i, under) : (worst, most);
        }

        if (worst < 0)
        {
            return Finding<PressureSag>.CannotTell("no row with rail pressure and fuel lies within the plan's tables");
        }

        return Finding<PressureSag>.Of(new(
            Pressure.FromPascals(points > 0 ? Math.Max(0, most) : 0),
            PlaceOf(worst),
            VolumeFlow.FromCubicMetersPerSecond(Model.Inputs[worst].Flow),
            points,
            [
                .. diagnosis.Hypotheses
                    .Where(h => h.Fault is RunFault.WeakPump or RunFault.VoltageDrop or RunFault.CloggedFilter)
                    .Select(h => FaultWords.Of(Check, diagnosis, h)),
            ]));
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
            return Finding<DeadTimeFound>.CannotTell("it needs fuel flow by a meter and pulse together", missing);
        }

        RunFit fit = RunFit.From(Model, diagnosis.Best.Off, RunQuantity.DeadTime, RunQuantity.InjectorFlow);
        double half = 1.96 * fit.Error(RunQuantity.DeadTime);
        if (half > WidestDeadTime)
        {
            return Finding<DeadTimeFound>.CannotTell(string.Create(
                CultureInfo.InvariantCulture,
                $"pulses were too much alike: dead time is known to ±{half * 1e3:0.00} ms only; run from part throttle to full boost"));
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

    /// <summary>Lean stretches.</summary>
    public Finding<LeanExcursions> Lean()
    {
        Channel[] missing = [.. new[] { Channel.Lambda, Channel.ManifoldAbsolute }.Where(channel => !Run.Has(channel))];
        if (missing.Length > 0)
        {
            return Finding<LeanExcursions>.CannotTell("lambda and manifold pressure must both be recorded", missing);
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
                int worst = Enumerable.Range(row, end - row).MaxBy(place => _columns.At(Channel.Lambda, place));
                double from = _columns.At(Channel.Time, row);
                double to = _columns.At(Channel.Time, end - 1);
                found.Add(new(
                    Place(row),
                    Place(worst),
                    _columns.At(Channel.Lambda, worst),
                    end - row,
                    double.IsNaN(to - from) ? null : Duration.FromSeconds(to - from)));
            }

            row = Math.Max(end, row + 1);
        }

        return Finding<LeanExcursions>.Of(new(limit, found));
    }

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

        return agreement;

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

    /// <summary>What could not be worked out, and what a careful reader should know.</summary>
    public IReadOnlyList<string> Notes(Diagnosis? diagnosis)
    {
        List<string> notes = [];
        Missing(!Run.Has(Channel.ManifoldAbsolute), "manifold pressure", "hardly anything can be compared");
        Missing(!Run.Has(Channel.RailGauge), "rail pressure", "regulator, pump, filter and wiring cannot be judged");
        Missing(
            !Run.Has(Channel.InjectorPulse) && !Run.Has(Channel.DutyCycle),
            "pulse or duty cycle",
            "fuel by the injectors, their size and their duty cycle cannot be told");
        Missing(
            !Run.Has(Channel.FuelVolumeFlow) && !Run.Has(Channel.FuelMassFlow),
            "fuel flow",
            "wrong injectors and wrong volumetric efficiency look alike, and dead time cannot be told");
        Missing(!Run.Has(Channel.Lambda), "lambda", "air and mixture cannot be judged");
        Missing(
            !Run.Has(Channel.BatteryVoltage),
            "battery voltage",
            $"the planned {Readable.Of(Check.SupplyVoltage)} was taken; a lack of voltage may look like a weak pump");
        Missing(!Run.Has(Channel.Power) && !Run.Has(Channel.Torque), "power or torque", "BSFC cannot be told");
        Missing(
            !Run.Has(Channel.FuelTemperature),
            "fuel temperature",
            $"{Readable.Of(Check.FuelTemperature)} was taken");
        if (Run.Has(Channel.ManifoldAbsolute) && Model.Points.ManifoldAtRest is null)
        {
            notes.Add("no rows with the engine at rest: the manifold sensor's zero could not be checked against the barometer");
        }

        if (diagnosis is not null && Model.Has(Comparison.Rail))
        {
            double surplus = Enumerable.Range(0, Model.Inputs.Count)
                .Where(i => !double.IsNaN(Model.Inputs[i].Flow))
                .Select(i => Model.RailAt(i, diagnosis.Best.Off).Surplus)
                .DefaultIfEmpty(double.PositiveInfinity)
                .Min();
            if (surplus > 0)
            {
                notes.Add(
                    $"the pump was never the limit in this run (it could have held {Readable.Of(Pressure.FromPascals(surplus))} more at the tightest point, if it is as planned): its true state, the filter's and the wiring's cannot be told");
            }
        }

        if (diagnosis is { Lack: > 1.5 })
        {
            notes.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"the run scatters {Math.Sqrt(diagnosis.Lack):0.0} times as much as the stated accuracy allows; evidence was scaled down for it"));
        }

        return notes;

        void Missing(bool missing, string channel, string consequence)
        {
            if (missing)
            {
                notes.Add($"{channel} was not recorded: {consequence}");
            }
        }
    }

    private const int LeastPoints = 5;
    private const double WidestDeadTime = 0.15e-3;

    /// <summary>Pressure that the pumps must have to spare for the regulator to govern without doubt, Pa.</summary>
    private const double Clear = 8e3;

    private bool IsLean(int row, double limit) =>
        _columns.At(Channel.Lambda, row) > limit
        && _columns.At(Channel.ManifoldAbsolute, row) - Run.Atmosphere.Pascals > OnBoost;

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

    private double Across(int point) => RailPressure.Differential<Real>(
        Model.Points.Rail[point], Run.Atmosphere.Pascals, Model.Points.Manifold[point]);

    private RunPlace PlaceOf(int point) => Place(Model.Points.FirstRows[point]);

    private RunPlace Place(int row) => new(
        Run.RowAt(row).Line,
        _columns.At(Channel.Time, row),
        _columns.At(Channel.Speed, row),
        _columns.At(Channel.ManifoldAbsolute, row) - Run.Atmosphere.Pascals);
}
