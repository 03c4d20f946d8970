using FuelSizing.Engines;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Quantities;
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
    private readonly double[] _off;
    private readonly IReadOnlyList<double> _tolerance;

    private readonly RunModel _model;
    private readonly RunPosterior _posterior;

    private Calibration(
        RunCheck check, RecordedRun run, IReadOnlyList<CalibratedFigure> figures, RunModel model, RunPosterior posterior, RunPosterior at)
    {
        (Check, Run, Figures, _model, _tolerance) = (check, run, figures, model, model.Tolerance);
        (_posterior, _off, _covariance) = (posterior, at.Off, at.Covariance);
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

        // One or two points at which the pump seems to be the limit may be glitches, and a pump that is free would follow them anywhere.
        bool shown = PumpPoints(model, off) >= MinimumPumpPoints;
        if (!shown)
        {
            off = Fitted(model, sound.Off, cancellation, freePump: false);
        }

        Matrix<double> covariance = CovarianceOf(model, off, shown);
        if (shown)
        {
            // A pump that the run shows is rather one with a poor feed than any: the tolerance of sound ones has a say.
            double[] held = Fitted(model, off, cancellation, freePump: false);
            (off, covariance) = Weighed(check, model, (held, CovarianceOf(model, held, freePump: false)), (off, covariance));
        }
        else
        {
            Open(covariance, (int)RunQuantity.PumpFlow);
        }

        OneSided.Cut(off, covariance);
        Done(90);
        RunPosterior posterior = new(off, covariance);
        RunPosterior atLoad = posterior.At(check, model, EnginePlace.FullLoad(check, model));
        Calibration calibration = new(
            check,
            run,
            [.. Enum.GetValues<CalibratedQuantity>().Select(quantity => Figure(check, model, quantity, atLoad.Off, atLoad.Covariance))],
            model,
            posterior,
            atLoad);
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

    /// <summary>The plan with everything that the run has measured of it: <see cref="Corrected"/> of the plan.</summary>
    public FuelSystem Updated => Corrected(Check.Plan);

    /// <summary>A stage with what the run has measured of the car, once: air, BSFC, and of the parts those that it still has.</summary>
    /// <param name="next">The next stage, described from the plan: other boost, fuel or parts on the same engine.</param>
    /// <returns>The stage, its figures as likely as the run makes them.</returns>
    /// <remarks>
    /// Volumetric efficiency and BSFC go by their ratio to the planned, so that another fuel keeps its own. A pump is the one that was
    /// measured where its curves and condition are the plan's (as many pumps as the plan has); injectors, regulator and filters where they
    /// are equal to the plan's. <see cref="Carried"/> says which.
    /// </remarks>
    /// <exception cref="ArgumentException">The stage has been corrected by the run already: it would be corrected twice.</exception>
    public FuelSystem Corrected(FuelSystem next)
    {
        ArgumentNullException.ThrowIfNull(next);
        return WithFindings(Fresh(next));
    }

    /// <summary>What of the run goes into a forecast of a stage, and what does not, and why.</summary>
    /// <param name="next">The next stage, described from the plan.</param>
    /// <returns>One line a figure.</returns>
    /// <exception cref="ArgumentException">The stage has been corrected by the run already.</exception>
    public IReadOnlyList<Statement> Carried(FuelSystem next)
    {
        ArgumentNullException.ThrowIfNull(next);
        MeasuredCar car = Fresh(next);
        Statement Line(CalibratedQuantity quantity, bool has, string part) => has
            ? Statement.Of("forecast.carried", $"{this[quantity]}")
            : Statement.Of("forecast.other-part", $"the {part} is not the one of the plan: as described, not as measured");
        IReadOnlyList<UncertainInput> inputs = Inputs(car, WithFindings(car)).Inputs;
        return
        [
            Line(CalibratedQuantity.BrakeSpecificFuelConsumption, true, ""),
            Line(CalibratedQuantity.VolumetricEfficiency, true, ""),
            Line(CalibratedQuantity.PumpFlow, car.HasPump, "pump"),
            Line(CalibratedQuantity.RegulatorGain, car.HasRegulator, "regulator"),
            .. inputs.Where(IsCut).Select(input => Statement.Of(
                "forecast.cut", $"{input.Name}: the run leaves it so open that draws end at {Cuts(input)}, where an engine or a part ends")),
        ];
    }

    /// <summary>The next stage as measured, and what is still uncertain of it.</summary>
    /// <param name="next">The next stage, described from the plan: other boost, fuel or parts on the same engine.</param>
    /// <param name="point">Where it is judged.</param>
    /// <param name="further">Other inputs that are not known exactly: new parts, for instance. What the run has measured is in it already.</param>
    /// <returns>The uncertain system.</returns>
    /// <remarks>
    /// Everything that the run has measured of the parts that are in the next stage is drawn together, with the correlations of the fit:
    /// an error in the injectors' flow that hides in the air is not counted twice. What the run does not determine is drawn within its
    /// tolerance.
    /// </remarks>
    /// <exception cref="ArgumentException">
    /// An input does not belong to the system, or the run has measured it; or the stage has been corrected by the run already.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">The point lies outside the engine's tables.</exception>
    public UncertainSystem Forecast(FuelSystem next, OperatingPoint point, params UncertainInput[] further)
    {
        ArgumentNullException.ThrowIfNull(next);
        ArgumentNullException.ThrowIfNull(point);
        ArgumentNullException.ThrowIfNull(further);
        MeasuredCar car = Fresh(next);
        Calibration there = new(
            Check, Run, Figures, _model, _posterior, _posterior.At(Check, _model, EnginePlace.Point(Check, next, point)));
        FuelSystem corrected = there.WithFindings(car);
        (IReadOnlyList<UncertainInput> inputs, Correlated correlated) = there.Inputs(car, corrected);
        foreach (UncertainInput own in further)
        {
            ArgumentNullException.ThrowIfNull(own, nameof(further));
            if (inputs.Any(input => input.Quantity == own.Quantity))
            {
                throw new ArgumentException(
                    $"further has {own.Name}, which the run has measured of a part that the next stage still has. Leave it out; give it for a new part only.", nameof(further));
            }
        }

        return UncertainSystem.Joined(corrected, point, correlated, [.. inputs, .. further]);
    }

    private MeasuredCar Fresh(FuelSystem next)
    {
        MeasuredCar car = new(Check.Plan, next);
        CalibratedFigure air = this[CalibratedQuantity.VolumetricEfficiency];
        CalibratedFigure specific = this[CalibratedQuantity.BrakeSpecificFuelConsumption];
        double found = specific.Value / specific.Planned;
        double factor = car.BrakeConsumptionFactor;
        string? already =
            car.IsScaledAir(out double scale) && (MeasuredCar.Alike(scale, air.Value) || (scale >= air.Minimum && scale <= air.Maximum))
                ? "volumetric efficiency"
            : MeasuredCar.Differs(factor) && specific.IsDetermined
                && (MeasuredCar.Alike(factor, found)
                    || (car.HasFuel && factor >= specific.Minimum / specific.Planned && factor <= specific.Maximum / specific.Planned)) ? "BSFC"
            : car.HasWorn(Math.Exp(Off(RunQuantity.PumpFlow))) ? "the pump's flow"
            : null;
        return already is null
            ? car
            : throw new ArgumentException(
                $"next has {already} already corrected by a run, and would be corrected twice. Describe the next stage from the plan, not from Updated or Corrected.",
                nameof(next));
    }

    private FuelSystem WithFindings(MeasuredCar car)
    {
        FuelDemandModel demand = car.Next.Demand;
        FuelSystem system = car.Next.With(
            demand.With(
                demand.VolumetricEfficiency.Scaled(Math.Exp(Off(RunQuantity.VolumetricEfficiency))),
                demand.MeasuredPower,
                Burning(demand.Consumption)),
            car.HasInjectors
                ? car.Next.Injectors.Scaled(Math.Exp(Off(RunQuantity.InjectorFlow))).Later(Off(RunQuantity.DeadTime))
                : car.Next.Injectors,
            car.Next.Regulator);
        system = car.HasPump ? car.Pumping(system, Math.Exp(Off(RunQuantity.PumpFlow))) : system;
        system = car.HasFeed ? car.Fed(system, Off(RunQuantity.FeedResistance)) : system;
        system = car.HasFilters ? MeasuredCar.Filtering(system, Off(RunQuantity.FilterLoss)) : system;
        return car.HasRegulator
            ? MeasuredCar.Regulating(
                system, Off(RunQuantity.RegulatorBase), car.HasUnit ? Off(RunQuantity.RegulatorGain) : 0, car.HasUnit ? Off(RunQuantity.RegulatorOnset) : 0)
            : system;
    }

    // On the fuel on which it was stated, so that a conversion by heating value stays one.
    private FuelConsumption Burning(FuelConsumption consumption) =>
        consumption.With(consumption.StatedFuel)
            .Using(consumption.StatedConsumption * Math.Exp(Off(RunQuantity.BrakeSpecificFuelConsumption)))
            .With(consumption.Fuel);

    /// <summary>What is drawn about the corrected stage, and the correlations of it.</summary>
    private (IReadOnlyList<UncertainInput> Inputs, Correlated Correlated) Inputs(MeasuredCar car, FuelSystem corrected)
    {
        List<(RunQuantity Quantity, UncertainInput Input)> drawn = [];
        FuelConsumption consumption = corrected.Demand.Consumption;
        double specific = consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule;

        // An engine makes work of no more than half the fuel's heat, and of some of it.
        double best = specific * consumption.BrakeEfficiency.DecimalFractions / 0.5 * (1 + 1e-9);
        double worst = BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(1500).KilogramsPerJoule;
        Draw(
            RunQuantity.BrakeSpecificFuelConsumption, "BSFC", UncertainQuantity.BrakeSpecificFuelConsumption, specific, specific, best, worst,
            value => BrakeSpecificFuelConsumption.FromKilogramsPerJoule(value).ToUnit(UnitsNet.Units.BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour));
        Factor(RunQuantity.VolumetricEfficiency, "volumetric efficiency", UncertainQuantity.VolumetricEfficiency, 1, null);
        if (car.HasInjectors)
        {
            Factor(RunQuantity.InjectorFlow, "injector flow", UncertainQuantity.InjectorFlow, 1, null);
            Draw(
                RunQuantity.DeadTime, "dead time", UncertainQuantity.DeadTime, 0, 1, -5e-3, 5e-3,
                value => Duration.FromSeconds(value).ToUnit(UnitsNet.Units.DurationUnit.Millisecond),
                (system, value) => system.With(system.Injectors.Later(value)));
        }

        if (car.HasPump)
        {
            Factor(RunQuantity.PumpFlow, "pump flow", UncertainQuantity.PumpFlow, 1, car.Pumping);
        }

        if (car.HasFeed)
        {
            Draw(
                RunQuantity.FeedResistance, "resistance of the pump's feed", UncertainQuantity.FeedResistance, 0, 1, -1, 1,
                value => ElectricResistance.FromOhms(value).ToUnit(UnitsNet.Units.ElectricResistanceUnit.Milliohm), car.Fed);
        }

        if (car.HasFilters)
        {
            Draw(
                RunQuantity.FilterLoss, "filter's loss over that of a new one", UncertainQuantity.FilterLoss, 0, 1, -100, 100,
                value => Ratio.FromDecimalFractions(value).ToUnit(UnitsNet.Units.RatioUnit.Percent), MeasuredCar.Filtering);
        }

        if (car.HasRegulator)
        {
            double set = corrected.Regulator.OffsetPascals;
            Draw(
                RunQuantity.RegulatorBase, "regulator pressure", UncertainQuantity.RegulatorOffset, set, 1, set - 100e3, set + 100e3,
                value => Pressure.FromPascals(value).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal));
        }

        if (car.HasUnit)
        {
            double gain = Check.Regulator.Gain + Off(RunQuantity.RegulatorGain);
            double size = Math.Max(0.1, Math.Abs(gain));
            Factor(
                RunQuantity.RegulatorGain, "regulator gain", UncertainQuantity.RegulatorGain, 1 / size,
                (system, value) => MeasuredCar.Regulating(system, 0, (value - 1) * size, 0));
            Draw(
                RunQuantity.RegulatorOnset, "regulator onset", UncertainQuantity.RegulatorOnset, 0, 1, -100e3, 100e3,
                value => Pressure.FromPascals(value).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal),
                (system, value) => MeasuredCar.Regulating(system, 0, 0, value));
        }

        return ([.. drawn.Select(one => one.Input)], Correlated.Of(Correlations([.. drawn.Select(one => one.Quantity)])));

        void Factor(
            RunQuantity quantity, string name, UncertainQuantity kind, double scale, Func<FuelSystem, double, FuelSystem>? change) =>
            Draw(
                quantity, name, kind, 1, scale, 0.5, 1.5, value => Ratio.FromDecimalFractions(value).ToUnit(UnitsNet.Units.RatioUnit.Percent), change);

        void Draw(
            RunQuantity quantity,
            string name,
            UncertainQuantity kind,
            double mean,
            double scale,
            double minimum,
            double maximum,
            Func<double, IQuantity> typed,
            Func<FuelSystem, double, FuelSystem>? change = null)
        {
            double deviation = Deviation(quantity) * scale;
            NormalShape shape = new(mean, deviation, Math.Max(minimum, mean - (Tail * deviation)), Math.Min(maximum, mean + (Tail * deviation)));
            drawn.Add((quantity, UncertainInput.Measured(name, kind, shape, typed, change)));
        }
    }

    /// <summary>True where physics, not probability, ends the draws.</summary>
    private static bool IsCut(UncertainInput input) =>
        input.Shape is NormalShape shape
        && (shape.Mean - (Tail * shape.Deviation) < shape.Minimum - (1e-9 * shape.Deviation) || shape.Mean + (Tail * shape.Deviation) > shape.Maximum + (1e-9 * shape.Deviation));

    private static string Cuts(UncertainInput input) => $"{input.Typed(input.Shape.Minimum)} and {input.Typed(input.Shape.Maximum)}";

    /// <summary>How far a quantity is off, SI or logarithm; zero where the run does not determine it.</summary>
    private double Off(RunQuantity quantity) => IsOpen(quantity) ? 0 : _off[(int)quantity] * _tolerance[(int)quantity];

    /// <summary>Standard deviation of that, its tolerance where the run does not determine it.</summary>
    private double Deviation(RunQuantity quantity) =>
        _tolerance[(int)quantity] * (IsOpen(quantity) ? 1 : Math.Sqrt(_covariance[(int)quantity, (int)quantity]));

    private bool IsOpen(RunQuantity quantity) => _covariance[(int)quantity, (int)quantity] > Undetermined * Undetermined;

    private Matrix<double> Correlations(RunQuantity[] quantities) => Matrix<double>.Build.Dense(
        quantities.Length,
        quantities.Length,
        (row, column) =>
        {
            (RunQuantity one, RunQuantity other) = (quantities[row], quantities[column]);
            return row == column ? 1
                : IsOpen(one) || IsOpen(other) ? 0
                : Independence * _covariance[(int)one, (int)other]
                    / Math.Sqrt(_covariance[(int)one, (int)one] * _covariance[(int)other, (int)other]);
        });

    // A little under one, so that rounding never makes a matrix without a Cholesky factor.
    private const double Independence = 1 - 1e-9;

    /// <summary>The run and how many figures were calibrated.</summary>
    /// <returns>For instance <c>pull 3: 8 figures</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Run.Name}: {Figures.Count} figures");

    /// <summary>Standard deviations to which a draw may go.</summary>
    private const double Tail = 4;

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

    /// <summary>Points at which the pump must be the limit for its flow to be determined.</summary>
    private const int MinimumPumpPoints = 3;

    private static int PumpPoints(RunModel model, double[] off) => Enumerable.Range(0, model.Inputs.Count)
        .Count(i => !double.IsNaN(model.Inputs[i].Rail) && !double.IsNaN(model.Inputs[i].Flow) && model.RailAt(i, off).Surplus < 0);

    private static Matrix<double> CovarianceOf(RunModel model, double[] off, bool freePump)
    {
        Matrix<double> slopes = SlopesOf(model, off, freePump);
        return slopes.TransposeThisAndMultiply(slopes)
            .Cholesky()
            .Solve(Matrix<double>.Build.DenseIdentity(RunModel.Quantities))
            * Math.Max(1, CostOf(model, off, freePump) / Math.Max(1, model.Comparisons));
    }

    /// <summary>
    /// The pump as a sound one, within its tolerance, and as any, each by how probable it makes the run, a worn one taken to be as common as a sound one.
    /// </summary>
    private static (double[] Off, Matrix<double> Covariance) Weighed(
        RunCheck check, RunModel model, (double[] Off, Matrix<double> Covariance) sound, (double[] Off, Matrix<double> Covariance) any)
    {
        Freed[] others = [.. Free.Where(quantity => quantity != RunQuantity.PumpFlow).Select(quantity => new Freed(quantity, 0, Freedom))];
        Freed worn = FaultPrior.Of(check).First(prior => prior.Quantity == RunQuantity.PumpFlow).In(model, 1);
        RunFit asSound = RunFit.From(model, sound.Off, others);
        RunFit asWorn = RunFit.From(model, any.Off, [.. others, worn]);
        double lack = Math.Max(1, Math.Min(asSound.Cost, asWorn.Cost) / Math.Max(1, model.Comparisons));
        double share = 1 / (1 + Math.Exp((asSound.LogEvidence - asWorn.LogEvidence) / lack));
        Vector<double> one = Vector<double>.Build.Dense(sound.Off);
        Vector<double> apart = Vector<double>.Build.Dense(any.Off) - one;
        return (
            [.. one + (share * apart)],
            ((1 - share) * sound.Covariance) + (share * any.Covariance) + (share * (1 - share) * apart.OuterProduct(apart)));
    }

    // A quantity that the run does not show is known to no better than anything.
    private static void Open(Matrix<double> covariance, int quantity)
    {
        for (int other = 0; other < covariance.ColumnCount; other++)
        {
            covariance[quantity, other] = covariance[other, quantity] = 0;
        }

        covariance[quantity, quantity] = Freedom * Freedom;
    }

    private static double[] Fitted(RunModel model, double[] start, CancellationToken cancellation, bool freePump = true)
    {
        int rows = model.Comparisons + RunModel.Quantities;
        Vector<double> zero = Vector<double>.Build.Dense(rows);
        IObjectiveModel objective = ObjectiveFunction.NonlinearModel(
            (off, _) => DifferencesAt(off), (off, _) => SlopesOf(model, off.AsArray(), freePump), zero, zero);
        Vector<double> DifferencesAt(Vector<double> off)
        {
            cancellation.ThrowIfCancellationRequested();
            return DifferencesOf(model, off.AsArray(), freePump);
        }

        NonlinearMinimizationResult found = new LevenbergMarquardtMinimizer(1e-3, 1e-8, 1e-8, 1e-8, 100)
            .FindMinimum(objective, Vector<double>.Build.DenseOfArray(start));
        return found.MinimizingPoint.ToArray();
    }

    private static double CostOf(RunModel model, double[] off, bool freePump = true)
    {
        Vector<double> differences = DifferencesOf(model, off, freePump);
        return differences * differences;
    }

    private static Vector<double> DifferencesOf(RunModel model, double[] off, bool freePump)
    {
        double[] values = new double[model.Comparisons + RunModel.Quantities];
        model.Differences(off, values.AsSpan(0, model.Comparisons));
        for (int quantity = 0; quantity < RunModel.Quantities; quantity++)
        {
            values[model.Comparisons + quantity] = off[quantity] * Pull(quantity, freePump);
        }

        return Vector<double>.Build.Dense(values);
    }

    private static Matrix<double> SlopesOf(RunModel model, double[] off, bool freePump)
    {
        double[] slopes = new double[model.Comparisons * RunModel.Quantities];
        model.Slopes(off, slopes);
        return Matrix<double>.Build.Dense(
            model.Comparisons + RunModel.Quantities,
            RunModel.Quantities,
            (row, quantity) => row < model.Comparisons
                ? slopes[(row * RunModel.Quantities) + quantity]
                : row - model.Comparisons == quantity ? Pull(quantity, freePump) : 0);
    }

    private static double Pull(int quantity, bool freePump) =>
        Free.Contains((RunQuantity)quantity) && (freePump || quantity != (int)RunQuantity.PumpFlow) ? 1 / Freedom : 1;
}
