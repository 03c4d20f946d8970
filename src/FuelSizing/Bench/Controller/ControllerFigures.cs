using FuelSizing.Controllers;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;
using UnitsNet.Units;

namespace FuelSizing.Bench;

/// <summary>
/// What is typed into an engine's controller once injectors are changed: flow on the fuel in use, dead times over voltage and pressure, minimum pulse, corrections of short pulses; each with the
/// interval that the bench gives it, or the reason that it has none.
/// </summary>
/// <remarks>
/// <para>A wrong figure leans the engine. Type them with the engine off, keep the old ones, compare lambda at light load first and raise the load in steps; a licensed practice does that on a
/// dynamometer. Local codes take precedence.</para>
/// <para>A controller that corrects for rail pressure takes the flow at the reference differential and the dead times over voltage and pressure. One that does not takes the flow and the dead times
/// at the reference alone, and <see cref="FuelErrors"/> says what is then wrong elsewhere. What nothing covers is an empty figure with its reason: nothing is extrapolated.</para>
/// </remarks>
/// <example>
/// <code>
/// ControllerFigures figures = ControllerFigures.Of(injector, Fuel.E10, Temperature.FromDegreesCelsius(30), [Pressure.FromKilopascals(300), Pressure.FromKilopascals(360)]);
/// Console.WriteLine(figures.ReferenceFlow);
/// Console.WriteLine(figures.ToCsv());
/// </code>
/// </example>
public sealed class ControllerFigures : IReadable
{
    private const int MaximumCount = 20;
    private const int MaximumPulses = 10;

    // An engine bay in traffic; a figure to compare with, nothing is sized by it.
    private const double WarmerBy = 20;

    // Less than a lambda sensor tells.
    private const double Tells = 1e-3;

    private static readonly Duration[] DefaultPulses = [Duration.FromMilliseconds(2.5), Duration.FromMilliseconds(5), Duration.FromMilliseconds(10)];

    private readonly FigureSource _source;

    private ControllerFigures(
        Injector injector,
        PulseFit[] fits,
        Fuel fuel,
        Temperature fuelTemperature,
        IReadOnlyList<Pressure> differentials,
        Pressure? reference,
        IReadOnlyList<ElectricPotential>? voltages,
        IReadOnlyList<Duration>? pulses)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        (Fuel, FuelTemperature) = (fuel, Fuel.WithinRange(fuelTemperature, nameof(fuelTemperature)));
        FuelDensity = fuel.DensityAt(fuelTemperature);
        Pressure[] asked = Distinct(Many(differentials, MaximumCount, nameof(differentials), pressure => DeadTimeTable.WithinDifferential(pressure, nameof(differentials))), pressure => pressure.Pascals);
        Reference = reference is { } given ? DeadTimeTable.WithinDifferential(given, nameof(reference)) : asked[0];
        Pressure[] all = Distinct([.. asked, Reference], pressure => pressure.Pascals);
        _source = new(injector, fits, fuel, fuelTemperature);
        Fits = Array.AsReadOnly(fits);
        ElectricPotential[] rows = voltages is null
            ? [.. _source.Voltages]
            : Distinct(Many(voltages, MaximumCount, nameof(voltages), voltage => DeadTimeTable.WithinVoltage(voltage, nameof(voltages))), voltage => voltage.Volts);
        Duration[] widths = pulses is null ? DefaultPulses : Distinct(Many(pulses, MaximumPulses, nameof(pulses), pulse => WithinPulse(pulse, nameof(pulses))), pulse => pulse.Seconds);

        Flows = Array.AsReadOnly([.. all.Select(_source.Flow)]);
        ReferenceFlow = Flows.Single(flow => IsReference(flow.Differential));
        Pressure[] grid = Distinct([.. all, .. _source.Differentials], pressure => pressure.Pascals);
        DeadTimes = Array.AsReadOnly([.. from pressure in grid from voltage in rows select _source.DeadTime(voltage, pressure)]);
        MinimumPulses = Array.AsReadOnly([.. from pressure in all from voltage in rows select _source.MinimumPulse(voltage, pressure)]);
        ShortPulses = Array.AsReadOnly([.. fits.OrderBy(fit => fit.Test.Differential).ThenBy(fit => fit.Test.Voltage).SelectMany(ShortPulseFigure.Of)]);
        FuelErrors = Array.AsReadOnly([.. from flow in Flows from pulse in widths select ErrorAt(flow, pulse)]);
        ReferenceReason = Reason(reference is not null, all);
        Notes = Array.AsReadOnly([.. Said()]);
    }

    /// <summary>The injector, as it was described or measured.</summary>
    public Injector Injector => _source.Injector;

    /// <summary>The fits that it was measured by; none where its description is all there is.</summary>
    public IReadOnlyList<PulseFit> Fits { get; }

    /// <summary>The fuel in use.</summary>
    public Fuel Fuel { get; }

    /// <summary>Its temperature in the rail.</summary>
    public Temperature FuelTemperature { get; }

    /// <summary>Its density there, which turns a flow by volume into one by mass.</summary>
    public Density FuelDensity { get; }

    /// <summary>The differential pressure whose flow is typed.</summary>
    public Pressure Reference { get; }

    /// <summary>Why this one.</summary>
    public Statement ReferenceReason { get; }

    /// <summary>The voltage with the engine running at which <see cref="FuelErrors"/> hold: of those weighed, or covered, the nearest to 14 V (common practice, no source).</summary>
    public ElectricPotential Voltage => _source.Running;

    /// <summary>The flow to type, at the reference differential.</summary>
    public FlowFigure ReferenceFlow { get; }

    /// <summary>Flows at all differential pressures that were asked for, pressures rising.</summary>
    public IReadOnlyList<FlowFigure> Flows { get; }

    /// <summary>
    /// Dead times, pressures rising and in each the voltages: those at the reference for a controller that does not correct for rail pressure, all for one that does.
    /// </summary>
    public IReadOnlyList<TimeFigure> DeadTimes { get; }

    /// <summary>Minimum linear pulses, dead time included, pressures rising and in each the voltages.</summary>
    public IReadOnlyList<TimeFigure> MinimumPulses { get; }

    /// <summary>Corrections of short pulses of every fit, by differential pressure, voltage and pulse; none without a bench, or where no weighed pulse is off the line.</summary>
    public IReadOnlyList<ShortPulseFigure> ShortPulses { get; }

    /// <summary>What flow and dead time of the reference make wrong at each differential pressure and pulse.</summary>
    public IReadOnlyList<FuelErrorFigure> FuelErrors { get; }

    /// <summary>What the figures rest on, and the cautions.</summary>
    public IReadOnlyList<Statement> Notes { get; }

    /// <summary>Injector, fuel and the flow to type, as a code with its figures.</summary>
    public Statement Text => Statement.Of("controller.figures", $"{Injector.Name} on {Fuel.Name} of {FuelTemperature}: {ReferenceFlow}");

    /// <summary>The figures of an injector by its description.</summary>
    /// <param name="injector">The injector that is fitted.</param>
    /// <param name="fuel">The fuel in use.</param>
    /// <param name="fuelTemperature">Of the fuel in the rail, −30 to 80 °C.</param>
    /// <param name="differentials">Differential pressures at which the engine runs, 1 to 20, 50 to 2,000 kPa.</param>
    /// <param name="reference">
    /// The one whose flow is typed, 50 to 2,000 kPa. The lowest of them if not given: at every other more flows than was typed, so that a long pulse is rich and not lean.
    /// </param>
    /// <param name="voltages">Of the dead times, 1 to 20, 5 to 20 V; those of the injector's table if not given.</param>
    /// <param name="pulses">At which the errors of fuel are told, 1 to 10, 0.1 to 100 ms; 2.5, 5 and 10 ms if not given.</param>
    /// <returns>The figures.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few or too many.</exception>
    public static ControllerFigures Of(
        Injector injector,
        Fuel fuel,
        Temperature fuelTemperature,
        IReadOnlyList<Pressure> differentials,
        Pressure? reference = null,
        IReadOnlyList<ElectricPotential>? voltages = null,
        IReadOnlyList<Duration>? pulses = null)
    {
        ArgumentNullException.ThrowIfNull(injector);
        return new(injector, [], fuel, fuelTemperature, differentials, reference, voltages, pulses);
    }

    /// <summary>The figures of an injector that was on the bench, with their intervals.</summary>
    /// <param name="fits">As <see cref="MeasuredInjector.Of"/> takes them: at two voltages or more, each at the same differential pressures.</param>
    /// <param name="ratedDifferential">One of the differential pressures of the fits.</param>
    /// <param name="maximumDifferential">Against which the injector was seen to open.</param>
    /// <param name="fuel">The fuel in use.</param>
    /// <param name="fuelTemperature">Of the fuel in the rail, −30 to 80 °C.</param>
    /// <param name="differentials">Differential pressures at which the engine runs, 1 to 20, 50 to 2,000 kPa. One that was not weighed has no interval.</param>
    /// <param name="reference">The one whose flow is typed, 50 to 2,000 kPa; the lowest of them if not given.</param>
    /// <param name="voltages">Of the dead times, 1 to 20, 5 to 20 V; those that were weighed if not given.</param>
    /// <param name="pulses">At which the errors of fuel are told, 1 to 10, 0.1 to 100 ms; 2.5, 5 and 10 ms if not given.</param>
    /// <returns>The figures.</returns>
    /// <exception cref="ArgumentException">The fits do not make one injector.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few or too many.</exception>
    public static ControllerFigures From(
        IReadOnlyList<PulseFit> fits,
        Pressure ratedDifferential,
        Pressure maximumDifferential,
        Fuel fuel,
        Temperature fuelTemperature,
        IReadOnlyList<Pressure> differentials,
        Pressure? reference = null,
        IReadOnlyList<ElectricPotential>? voltages = null,
        IReadOnlyList<Duration>? pulses = null) => new(
            MeasuredInjector.Of(fits, ratedDifferential, Within(maximumDifferential, ratedDifferential)), [.. fits], fuel, fuelTemperature, differentials, reference, voltages, pulses);

    /// <summary>What the controller takes for true once these figures are typed: for the mixture that the engine then gets.</summary>
    /// <param name="target">The lambda it aims at.</param>
    /// <param name="correctsForRailPressure">True if it corrects for rail pressure: then it takes the dead times over pressure too, as far as all voltages of a pressure are covered.</param>
    /// <returns>The data.</returns>
    /// <exception cref="InvalidOperationException">There is no flow at the reference, or dead times at fewer than two voltages; the message says why.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The flow at the reference is outside what an injector's description may have.</exception>
    public ControllerData DataFor(TargetLambda target, bool correctsForRailPressure = false) => DataFor(target, correctsForRailPressure, 1);

    /// <summary>A flow for a controller that takes none as large, and what it falsifies.</summary>
    /// <param name="largest">The largest flow that the controller takes, by volume, 20 to 10,000 mL/min.</param>
    /// <param name="target">The controller's target lambda over load, so that the places are told at which it reads another; none if not given.</param>
    /// <returns>Factor, flow to type, and what becomes of load, torque, air and tables over load.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is outside its range.</exception>
    public FlowScaling ScaledTo(VolumeFlow largest, TargetLambda? target = null) => FlowScaling.Of(
        this,
        Guard.Between(
            largest,
            VolumeFlow.FromMillilitersPerMinute(20),
            VolumeFlow.FromMillilitersPerMinute(10_000),
            "Give the largest flow of one injector that the controller takes.",
            nameof(largest)),
        target);

    /// <summary>The same where the controller takes its flow by mass.</summary>
    /// <param name="largest">The largest flow that the controller takes, by mass, 0.2 to 200 g/s.</param>
    /// <param name="target">The controller's target lambda over load; none if not given.</param>
    /// <returns>Factor, flow to type, and what becomes of load, torque, air and tables over load.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is outside its range.</exception>
    public FlowScaling ScaledToMass(MassFlow largest, TargetLambda? target = null) => FlowScaling.Of(
        this,
        VolumeFlow.FromCubicMetersPerSecond(
            Guard.Between(
                largest,
                MassFlow.FromGramsPerSecond(0.2),
                MassFlow.FromGramsPerSecond(200),
                "Give the largest flow of one injector that the controller takes.",
                nameof(largest)).KilogramsPerSecond / FuelDensity.KilogramsPerCubicMeter),
        target);

    /// <summary>All figures as comma-separated values, a line each: quantity, value, interval, unit, conditions, and what it rests on.</summary>
    /// <remarks>
    /// RFC 4180, numbers in the invariant culture, UTF-8 without a mark. Flows stand in mL/min, g/s and lb/h, each on a line of its own. A text that a spreadsheet would take for a formula has an
    /// apostrophe before it.
    /// </remarks>
    /// <param name="time">Unit of times: milliseconds or microseconds.</param>
    /// <param name="pressure">Unit of pressures: kPa, bar or psi.</param>
    /// <param name="scaling">A scaling of these figures to add; none if not given.</param>
    /// <returns>The text, with a head, lines ended by CR LF.</returns>
    /// <exception cref="ArgumentException">The scaling is of other figures.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A unit is none of those.</exception>
    public string ToCsv(DurationUnit time = DurationUnit.Millisecond, PressureUnit pressure = PressureUnit.Kilopascal, FlowScaling? scaling = null) =>
        scaling is null || ReferenceEquals(scaling.Figures, this)
            ? FigureList.Of(this, time, pressure, scaling)
            : throw new ArgumentException($"{nameof(scaling)} is of other figures. Give one that these were scaled to.", nameof(scaling));

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Injector, fuel and the flow to type.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <summary>The controller's data with a share of the flow.</summary>
    internal ControllerData DataFor(TargetLambda target, bool correctsForRailPressure, double factor)
    {
        ArgumentNullException.ThrowIfNull(target);
        if (ReferenceFlow.Flow is null)
        {
            throw new InvalidOperationException($"There is {ReferenceFlow.Text} Choose another reference.");
        }

        TimeFigure[] atReference = [.. DeadTimes.Where(time => IsReference(time.Differential))];
        TimeFigure[] known = [.. atReference.Where(time => time.Time is not null)];
        if (known.Length < 2)
        {
            TimeFigure? missing = Array.Find(atReference, time => time.Time is null);
            throw new InvalidOperationException(
                $"There are dead times at {known.Length} voltages, of two or more that are needed{(missing is null ? string.Empty : $": {missing.Text}")}. Ask for voltages that the injector's table covers.");
        }

        // In terms of the test liquid, from which the same law gives the flow on the fuel.
        double onTestFluid = Injector.StaticAt(Reference.Pascals, Injector.TestDensity) * factor;
        Injector typed = Injector.Of(
            Injector.Name,
            VolumeFlow.FromCubicMetersPerSecond(onTestFluid),
            Reference,
            Injector.TestFluid,
            correctsForRailPressure ? OverPressure(known) : AtReference(known),
            MinimumPulses.FirstOrDefault(pulse => IsReference(pulse.Differential) && Significant.Same(pulse.Voltage.Volts, Voltage.Volts))?.Time ?? Injector.MinimumLinearPulse,
            Injector.MaximumDifferential < Reference ? Reference : Injector.MaximumDifferential,
            Voltage);
        ControllerData data = ControllerData.Of(typed, Fuel, target).WithFuelTemperature(FuelTemperature);
        return correctsForRailPressure ? data.WithRailPressureCorrection() : data;
    }

    private bool IsReference(Pressure differential) => Significant.Same(differential.Pascals, Reference.Pascals);

    private static DeadTimeTable AtReference(TimeFigure[] known) => DeadTimeTable.ByVoltage([.. known.Select(time => (time.Voltage, time.Time!.Value))]);

    private DeadTimeTable OverPressure(TimeFigure[] known)
    {
        TimeFigure[][] rows =
        [
            .. DeadTimes.Where(time => known.Any(covered => Significant.Same(covered.Voltage.Volts, time.Voltage.Volts)))
                .GroupBy(time => time.Differential.Pascals)
                .Select(row => row.ToArray())
                .Where(row => row.All(time => time.Time is not null)),
        ];
        return rows.Length < 2
            ? AtReference(known)
            : DeadTimeTable.Of(
                [.. known.Select(time => time.Voltage)],
                [.. rows.Select(row => row[0].Differential)],
                [.. rows.Select(row => row.Select(time => time.Time!.Value).ToArray())]);
    }

    private static Pressure Within(Pressure maximumDifferential, Pressure ratedDifferential) => Guard.Between(
        maximumDifferential,
        Guard.Between(
            ratedDifferential, PulseTest.MinimumDifferential, PulseTest.MaximumDifferential, "Give one of the differential pressures of the tests.", nameof(ratedDifferential)),
        Pressure.FromKilopascals(2000),
        "Give the highest pressure across the injector at which it was seen to open.",
        nameof(maximumDifferential));

    private static Duration WithinPulse(Duration pulse, string name) =>
        Guard.Between(pulse, Duration.FromMilliseconds(0.1), Duration.FromMilliseconds(100), "Give a commanded pulse.", name);

    private static T[] Many<T>(IReadOnlyList<T> given, int maximum, string name, Func<T, T> within)
    {
        ArgumentNullException.ThrowIfNull(given, name);
        Guard.Count(given.Count, 1, maximum, "Give one or more.", name);
        return [.. given.Select(within)];
    }

    private static T[] Distinct<T>(IEnumerable<T> values, Func<T, double> number) => [.. values.OrderBy(number).DistinctBy(value => Significant.Rounded(number(value)))];

    private Statement Reason(bool given, Pressure[] all) =>
        all.Length == 1 ? Statement.Of("controller.reference-only", $"it is the one that was asked for: at others flow and dead time are not those typed")
        : IsReference(all[0]) ? Statement.Of(
            "controller.reference-lowest", $"the lowest that was asked for: at every other one more flows than is typed, so that long pulses are rich and not lean")
        : given ? Statement.Of(
            "controller.reference-given", $"as it was asked for; at {all[0]} less flows than is typed, and the engine runs lean unless the controller corrects for rail pressure")
        : throw new InvalidOperationException("The reference is the lowest or was given.");

    private FuelErrorFigure ErrorAt(FlowFigure there, Duration pulse)
    {
        FuelErrorFigure CannotSay(Statement why) => new(there.Differential, Voltage, pulse, why);
        TimeFigure typed = _source.DeadTime(Voltage, Reference);
        TimeFigure here = _source.DeadTime(Voltage, there.Differential);
        if ((ReferenceFlow.Flow is null ? ReferenceFlow.Basis : there.Flow is null ? there.Basis : typed.Time is null ? typed.Basis : here.Time is null ? here.Basis : null) is { } why)
        {
            return CannotSay(why);
        }

        double wanted = Delivered(ReferenceFlow.Flow!.Value.CubicMetersPerSecond, pulse, typed);
        if (!(wanted > 0))
        {
            return CannotSay(Statement.Of("controller.none-within-dead-time", $"the pulse is no longer than the dead time of {typed.Time!.Value.Milliseconds:0.000} ms that was typed"));
        }

        double flow = there.Flow!.Value.CubicMetersPerSecond;
        double error = (Delivered(flow, pulse, here) / wanted) - 1;
        double density = FuelDensity.KilogramsPerCubicMeter;
        double byRoot = InjectorFlow.Static<Real>(
            ReferenceFlow.Flow.Value.CubicMetersPerSecond, Reference.Pascals, density, there.Differential.Pascals, density).Value;
        bool isReference = IsReference(there.Differential);
        double? interval = isReference && _source.At(Voltage, Reference) is { } fit ? Interval(fit, pulse) : null;
        Statement basis = interval is not null ? Statement.Of("controller.fuel-by-bench", $"what the bench leaves open in flow and dead time together, 95 %")
            : _source.MinimumPulse(Voltage, Reference).Time is { } linear && pulse < linear
            ? Statement.Of("controller.fuel-below-linear", $"by flow and dead time alone: the pulse is shorter than the minimum linear pulse of {linear.Milliseconds:0.000} ms; no interval")
            : _source.IsBench || !Injector.DeadTime.IgnoresPressure || isReference
            ? Statement.Of("controller.fuel-by-figures", $"by flow and dead time there; no interval")
            : here.Basis;
        return new(there.Differential, Voltage, pulse, basis, error, isReference ? 0 : (flow / byRoot) - 1, interval);
    }

    private static double Delivered(double flow, Duration pulse, TimeFigure deadTime) =>
        DeliveredFuel.Flow<Real>(flow, 1, DeliveredFuel.OpenTime<Real>(pulse.Seconds, deadTime.Time!.Value.Seconds, double.PositiveInfinity), 1).Value;

    // Half the interval of fuel; none at pulses that the line does not go through. All but the calibration share one Student's t.
    private static double? Interval(PulseFit fit, Duration pulse)
    {
        if (fit is not { MinimumTimeOffset: { } low, MaximumTimeOffset: { } high } || pulse.Seconds < ShortPulseFigure.ShortestOnLine(fit) || pulse > fit.Widths[^1].Pulse)
        {
            return null;
        }

        double calibration = PooledMeans.StatedReach * fit.Test.Calibration.DecimalFractions;
        double all = (fit.MaximumSlope / fit.Slope) - 1;
        double slope = Math.Sqrt(Math.Max(0, (all * all) - (calibration * calibration)));
        double offset = (high - low).Seconds / 2 / (pulse - fit.TimeOffset).Seconds;
        return Math.Sqrt(Math.Max(0, (slope * slope) + (offset * offset) - (2 * fit.Correlation.DecimalFractions * slope * offset)) + (calibration * calibration));
    }

    private IEnumerable<Statement> Said()
    {
        yield return _source.IsBench
            ? Statement.Of("controller.note-slope", $"The flow is the slope of the line, by which pulses are calculated; the flow held open may differ by some per cent.")
            : Statement.Of("controller.note-description", $"The figures are those of the injector's description: how sure they are nobody has said, and corrections of short pulses are not known. A bench tells.");
        yield return Statement.Of(
            "controller.note-liquid", $"Flow goes from {Injector.TestFluid.Name} to {Fuel.Name} by density alone; a difference of viscosity is not corrected for, and no interval holds it.");
        if (_source.IsBench && ShortPulses.Count == 0)
        {
            yield return Statement.Of("controller.note-no-short-pulses", $"Every pulse that was weighed lies on its line: there are no corrections of short pulses, and of shorter ones nothing is known.");
        }

        if (FuelErrors.MinBy(error => error.Error?.DecimalFractions ?? 0) is { Error: { } leanest } at && leanest.DecimalFractions < -Tells)
        {
            yield return Statement.Of(
                "controller.note-lean", $"A controller that does not correct for rail pressure gives {leanest.Percent:+0.0;−0.0;0.0} % of fuel at {at.Differential}, {at.Pulse}: there the engine is lean.");
        }

        if (Injector.DeadTime.IgnoresPressure)
        {
            yield return Statement.Of("controller.note-one-pressure", $"Dead time was measured at one pressure. It grows with pressure: where the pressure is higher the engine is leaner than these figures say.");
        }

        if (Fits.Sum(fit => fit.Outliers.Count) is > 0 and var outliers)
        {
            yield return Statement.Of("controller.note-outliers", $"{outliers} weighings lie further off than chance brings, and are among those fitted: look at them before you type anything.");
        }

        if (Fits.Any(fit => fit.IsStraight == false))
        {
            yield return Statement.Of("controller.note-not-straight", $"Weighings agree better among each other than with a line: dead time and flow hold for the pulses that were weighed, and their intervals are too narrow.");
        }

        double warm = Math.Min(FuelTemperature.DegreesCelsius + WarmerBy, Fuel.MaximumTemperature.DegreesCelsius);
        if (warm > FuelTemperature.DegreesCelsius && ReferenceFlow.MassFlow is { } typed)
        {
            // In kilograms, for that is what the air asks for.
            double density = Fuel.DensityAt(Temperature.FromDegreesCelsius(warm)).KilogramsPerCubicMeter;
            double lean = (Injector.StaticAt(Reference.Pascals, density) * density / typed.KilogramsPerSecond) - 1;
            yield return Statement.Of(
                "controller.note-temperature",
                $"The figures are for fuel of {FuelTemperature}, {FuelDensity}; at {Temperature.FromDegreesCelsius(warm)} the same pulse delivers {lean * 100:+0.0;−0.0;0.0} % of fuel by mass.");
        }

        yield return Statement.Of(
            "controller.note-caution",
            $"A wrong figure leans the engine: keep the old figures, compare lambda at light load first, raise load in steps, and stop where lambda is leaner than its target. Local codes and a licensed practice take precedence.");
    }
}
