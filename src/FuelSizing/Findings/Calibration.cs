using FuelSizing.Engines;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>The plan's figures brought up to date by a run, with their covariance, for the forecast of the next stage.</summary>
/// <remarks>
/// Nonlinear least squares (Levenberg–Marquardt of MathNet.Numerics) over the same comparisons as <see cref="RunFindings"/>: BSFC,
/// volumetric efficiency, pump flow and regulator gain are free; all else is held by its tolerance, so that what injectors and sensors
/// leave open is in the standard errors. Covariance is (JᵀJ)⁻¹, J the slopes in standard deviations.
/// </remarks>
/// <example>
/// <code>
/// RecordedRun run = RecordedRun.Of("pull", air, [RunRow.Of(1, Rpm(6800), railGauge: Pressure.FromKilopascals(355))]);
/// Calibration calibration = Calibration.Of(system, run);
/// UncertainSystem next = calibration.Forecast(system, point);
/// Console.WriteLine(next.MonteCarlo(Sampling.Of(100)).All);
/// </code>
/// </example>
public sealed class Calibration
{
    private static readonly RunQuantity[] Free =
    [
        RunQuantity.BrakeSpecificFuelConsumption,
        RunQuantity.VolumetricEfficiency,
        RunQuantity.PumpFlow,
        RunQuantity.RegulatorGain,
    ];

    /// <summary>A figure known to no better than this many tolerances is not determined.</summary>
    private const double Undetermined = 5;

    /// <summary>A free figure's tolerance is this many times its usual one.</summary>
    private const double Freedom = 1000;

    private readonly Matrix<double> _covariance;

    private Calibration(RunCheck check, RecordedRun run, IReadOnlyList<CalibratedFigure> figures, Matrix<double> covariance)
    {
        (Check, Run, Figures, _covariance) = (check, run, figures, covariance);
    }

    /// <summary>The plan and what may be off.</summary>
    public RunCheck Check { get; }

    /// <summary>The run.</summary>
    public RecordedRun Run { get; }

    /// <summary>The figures, in the order of <see cref="CalibratedQuantity"/>.</summary>
    public IReadOnlyList<CalibratedFigure> Figures { get; }

    /// <summary>Calibrates a plan, with usual tolerances, accuracy and conditions.</summary>
    /// <param name="plan">What was sized.</param>
    /// <param name="run">What was recorded.</param>
    /// <returns>The calibration.</returns>
    public static Calibration Of(FuelSystem plan, RecordedRun run) => Of(RunCheck.Of(plan), run);

    /// <summary>Calibrates a plan.</summary>
    /// <param name="check">The plan, and what it and the recording may be off by.</param>
    /// <param name="run">What was recorded.</param>
    /// <param name="progress">Told the share that is done, fit by fit.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The calibration.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped: a fit has no answer before its end.</exception>
    public static Calibration Of(
        RunCheck check, RecordedRun run, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(run);
        void Done(double percent)
        {
            progress?.Report(Ratio.FromPercent(percent));
            cancellation.ThrowIfCancellationRequested();
        }

        RunModel model = check.Model(run);
        Done(10);
        RunFit sound = RunFit.From(model, new double[RunModel.Quantities]);
        Done(25);
        double[] off = Fitted(model, sound.Off, cancellation);
        Done(60);
        if (PumpStarts.Of(check, model, sound).TryGetValue(RunQuantity.PumpFlow, out double start))
        {
            double[] from = (double[])sound.Off.Clone();
            from[(int)RunQuantity.PumpFlow] = start;
            double[] other = Fitted(model, from, cancellation);
            off = CostOf(model, other) < CostOf(model, off) ? other : off;
        }

        Done(90);
        Matrix<double> slopes = SlopesOf(model, off);
        Matrix<double> covariance = slopes.TransposeThisAndMultiply(slopes)
            .Cholesky()
            .Solve(Matrix<double>.Build.DenseIdentity(RunModel.Quantities))
            * Math.Max(1, CostOf(model, off) / Math.Max(1, model.Comparisons));
        Calibration calibration = new(
            check,
            run,
            [.. Enum.GetValues<CalibratedQuantity>().Select(quantity => Figure(check, model, quantity, off, covariance))],
            covariance);
        progress?.Report(Ratio.FromPercent(100));
        return calibration;
    }

    /// <summary>A figure.</summary>
    /// <param name="quantity">Which.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such figure.</exception>
    public CalibratedFigure this[CalibratedQuantity quantity] => Figures[(int)Within(quantity, nameof(quantity))];

    /// <summary>Correlation of the errors of two figures, −1 to 1.</summary>
    /// <param name="first">One.</param>
    /// <param name="other">The other.</param>
    /// <returns>The correlation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such figure.</exception>
    public double Correlation(CalibratedQuantity first, CalibratedQuantity other)
    {
        (int row, int column) = ((int)QuantityOf(Within(first, nameof(first))), (int)QuantityOf(Within(other, nameof(other))));
        return _covariance[row, column] / Math.Sqrt(_covariance[row, row] * _covariance[column, column]);
    }

    /// <summary>The plan with every figure that the run determines.</summary>
    public FuelSystem Updated
    {
        get
        {
            FuelSystem updated = WithDemand(Check.Plan);
            CalibratedFigure pump = this[CalibratedQuantity.PumpFlow];
            if (pump.IsDetermined)
            {
                updated = updated.With(PumpCondition.Of(Check.Plan.Pump, pump.Value));
            }

            CalibratedFigure gain = this[CalibratedQuantity.RegulatorGain];
            return gain.IsDetermined ? updated.With(WithGain(Check.Plan.Regulator, gain.Value)) : updated;
        }
    }

    /// <summary>What is still uncertain of the demand, to draw from: BSFC and the factor on volumetric efficiency.</summary>
    /// <remarks>
    /// A figure that the run does not determine is drawn within its tolerance. Draws are independent, though the errors are not; see
    /// <see cref="Correlation"/>.
    /// </remarks>
    /// <param name="system">The system that the forecast is for, with the calibrated demand in it.</param>
    /// <returns>Inputs for <see cref="UncertainSystem"/>.</returns>
    public IReadOnlyList<UncertainInput> Inputs(FuelSystem system)
    {
        ArgumentNullException.ThrowIfNull(system);
        double planned = system.Demand.Consumption.BrakeSpecificFuelConsumption.GramsPerKiloWattHour;
        double specific = Share(CalibratedQuantity.BrakeSpecificFuelConsumption);
        double air = Share(CalibratedQuantity.VolumetricEfficiency);
        return
        [
            UncertainInput.BrakeSpecificFuelConsumption(Distribution.Normal(
                Grams(planned),
                Grams(planned * specific),
                Grams(planned * (1 - (Tail * specific))),
                Grams(planned * (1 + (Tail * specific))))),
            UncertainInput.VolumetricEfficiencyFactor(Distribution.Normal(
                Ratio.FromDecimalFractions(1),
                Ratio.FromDecimalFractions(air),
                Ratio.FromDecimalFractions(1 - (Tail * air)),
                Ratio.FromDecimalFractions(1 + (Tail * air)))),
        ];
    }

    /// <summary>The next stage with the engine as calibrated, its demand as uncertain as the run leaves it.</summary>
    /// <param name="next">The next stage: other boost, fuel or parts on the same engine.</param>
    /// <param name="point">Where it is judged.</param>
    /// <param name="further">Other inputs that are not known exactly.</param>
    /// <returns>The uncertain system.</returns>
    /// <remarks>BSFC goes by its ratio to the planned, so that another fuel keeps its own; so does volumetric efficiency.</remarks>
    /// <exception cref="ArgumentException">An input does not belong to the system.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The point lies outside the engine's tables.</exception>
    public UncertainSystem Forecast(FuelSystem next, OperatingPoint point, params UncertainInput[] further)
    {
        ArgumentNullException.ThrowIfNull(next);
        ArgumentNullException.ThrowIfNull(point);
        ArgumentNullException.ThrowIfNull(further);
        FuelSystem calibrated = WithDemand(next);
        return UncertainSystem.Of(calibrated, point, [.. Inputs(calibrated), .. further]);
    }

    /// <summary>A system with the engine's figures as calibrated, each by its ratio to the planned.</summary>
    /// <param name="system">A system on the same engine.</param>
    /// <returns>The system.</returns>
    public FuelSystem WithDemand(FuelSystem system)
    {
        ArgumentNullException.ThrowIfNull(system);
        CalibratedFigure specific = this[CalibratedQuantity.BrakeSpecificFuelConsumption];
        FuelDemandModel demand = system.Demand;
        return system.With(
            demand.With(
                demand.VolumetricEfficiency.Scaled(this[CalibratedQuantity.VolumetricEfficiency].Value),
                demand.MeasuredPower,
                demand.Consumption.Using(
                    demand.Consumption.BrakeSpecificFuelConsumption * (specific.Value / specific.Planned))),
            system.Injectors,
            system.Regulator);
    }

    /// <summary>The run and how many figures were calibrated.</summary>
    /// <returns>For instance <c>pull 3: 8 figures</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Run.Name}: {Figures.Count} figures");

    /// <summary>Standard deviations to which a draw may go.</summary>
    private const double Tail = 4;

    private double Share(CalibratedQuantity quantity) => Math.Min(0.12, this[quantity].StandardError / this[quantity].Value);

    private static BrakeSpecificFuelConsumption Grams(double value) =>
        BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(value);

    private static CalibratedQuantity Within(CalibratedQuantity quantity, string name) =>
        Guard.Member(quantity, "Ask for a figure that a run calibrates.", name);

    private static RunQuantity QuantityOf(CalibratedQuantity quantity) => Free[(int)quantity];

    private static CalibratedFigure Figure(
        RunCheck check, RunModel model, CalibratedQuantity quantity, double[] off, Matrix<double> covariance)
    {
        int place = (int)QuantityOf(quantity);
        double tolerance = model.Tolerance[place];
        double value = off[place] * tolerance;
        double error = Math.Sqrt(covariance[place, place]) * tolerance;
        bool determined = error <= Undetermined * tolerance;
        (value, error) = determined ? (value, error) : (0, tolerance);
        Statement? reason = determined ? null : Reason(quantity);
        switch (quantity)
        {
            case CalibratedQuantity.RegulatorGain:
                return new(quantity, check.Regulator.Gain, check.Regulator.Gain + value, error, "1", reason);
            case CalibratedQuantity.BrakeSpecificFuelConsumption:
                double planned = check.Plan.Demand.Consumption.BrakeSpecificFuelConsumption.GramsPerKiloWattHour;
                double grams = planned * Math.Exp(value);
                return new(quantity, planned, grams, grams * error, "g/kWh", reason);
            default:
                return new(quantity, 1, Math.Exp(value), Math.Exp(value) * error, "1", reason);
        }
    }

    private static Statement Reason(CalibratedQuantity quantity) => quantity switch
    {
        CalibratedQuantity.BrakeSpecificFuelConsumption =>
            Statement.Of("run.needs-power-and-fuel", $"it needs power or torque, and fuel by a meter or by the pulse"),
        CalibratedQuantity.VolumetricEfficiency =>
            Statement.Of("run.needs-lambda-and-fuel", $"it needs lambda, and fuel by a meter or by the pulse"),
        CalibratedQuantity.PumpFlow =>
            Statement.Of("run.pump-not-limiting", $"the pump was never the limit while rail pressure was recorded"),
        _ => Statement.Of("run.needs-rail-over-onset", $"it needs rail pressure at boost over the onset"),
    };

    private static PressureRegulator WithGain(PressureRegulator regulator, double gain)
    {
        double within = Math.Clamp(gain, 1, 15);
        return regulator switch
        {
            RisingRate unit => RisingRate.From(unit.Base, within, unit.Onset, unit.Ceiling, unit.MinimumReturnFlow),
            RegulatorSeries series => RegulatorSeries.Of(
                series.BaseRegulator, (RisingRate)WithGain(series.Unit, within)),
            _ => regulator,
        };
    }

    private static double[] Fitted(RunModel model, double[] start, CancellationToken cancellation)
    {
        int rows = model.Comparisons + RunModel.Quantities;
        Vector<double> zero = Vector<double>.Build.Dense(rows);
        IObjectiveModel objective = ObjectiveFunction.NonlinearModel(
            (off, _) => DifferencesAt(off), (off, _) => SlopesOf(model, off.AsArray()), zero, zero);
        Vector<double> DifferencesAt(Vector<double> off)
        {
            cancellation.ThrowIfCancellationRequested();
            return DifferencesOf(model, off.AsArray());
        }

        NonlinearMinimizationResult found = new LevenbergMarquardtMinimizer(1e-3, 1e-8, 1e-8, 1e-8, 100)
            .FindMinimum(objective, Vector<double>.Build.DenseOfArray(start));
        return found.MinimizingPoint.ToArray();
    }

    private static double CostOf(RunModel model, double[] off)
    {
        Vector<double> differences = DifferencesOf(model, off);
        return differences * differences;
    }

    private static Vector<double> DifferencesOf(RunModel model, double[] off)
    {
        double[] values = new double[model.Comparisons + RunModel.Quantities];
        model.Differences(off, values.AsSpan(0, model.Comparisons));
        for (int quantity = 0; quantity < RunModel.Quantities; quantity++)
        {
            values[model.Comparisons + quantity] = off[quantity] * Pull(quantity);
        }

        return Vector<double>.Build.Dense(values);
    }

    private static Matrix<double> SlopesOf(RunModel model, double[] off)
    {
        double[] slopes = new double[model.Comparisons * RunModel.Quantities];
        model.Slopes(off, slopes);
        return Matrix<double>.Build.Dense(
            model.Comparisons + RunModel.Quantities,
            RunModel.Quantities,
            (row, quantity) => row < model.Comparisons
                ? slopes[(row * RunModel.Quantities) + quantity]
                : row - model.Comparisons == quantity ? Pull(quantity) : 0);
    }

    private static double Pull(int quantity) => Free.Contains((RunQuantity)quantity) ? 1 / Freedom : 1;
}
