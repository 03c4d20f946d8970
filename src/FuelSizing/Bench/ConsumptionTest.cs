using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>A steady run of an engine at one power, its tank weighed before and after.</summary>
public sealed record ConsumptionReading : IReadable
{
    private static readonly Identity<ConsumptionReading> _identity = new Identity<ConsumptionReading>()
        .Number(reading => reading.Before.Kilograms)
        .Number(reading => reading.After.Kilograms)
        .Number(reading => reading.Time.Seconds)
        .Number(reading => (double)reading.Power.Watts);

    private ConsumptionReading(Mass before, Mass after, Duration time, Power power) => (Before, After, Time, Power) = (before, after, time, power);

    /// <summary>Tank and fuel before the run.</summary>
    public Mass Before { get; }

    /// <summary>Tank and fuel after it.</summary>
    public Mass After { get; }

    /// <summary>How long it ran.</summary>
    public Duration Time { get; }

    /// <summary>Mean power at the crank.</summary>
    public Power Power { get; }

    /// <summary>Describes a run.</summary>
    /// <param name="before">Tank and fuel before it, 0 to 500 kg.</param>
    /// <param name="after">Tank and fuel after it, 0 kg up to what it was before.</param>
    /// <param name="time">How long it ran, 5 s to 24 h.</param>
    /// <param name="power">Mean power at the crank, 0.5 kW to 2 MW; at the wheels the losses of the drivetrain are missing.</param>
    /// <returns>The run.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static ConsumptionReading Of(Mass before, Mass after, Duration time, Power power) => new(
        Guard.Between(before, Mass.Zero, Mass.FromKilograms(500), "Give tank and fuel before the run.", nameof(before)),
        Guard.Between(after, Mass.Zero, before, "Give tank and fuel after the run: no more than before it.", nameof(after)),
        Guard.Between(time, Duration.FromSeconds(5), Duration.FromHours(24), "Give how long the engine ran at that power.", nameof(time)),
        Guard.Between(power, Power.FromWatts(500), Power.FromMegawatts(2), "Give the mean power at the crank.", nameof(power)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ConsumptionReading? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Fuel, time and power.</summary>
    /// <returns>For instance <c>1,250.00 g in 60.00 s at 221 kW</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.consumption-reading", $"{Burnt} in {Time:time} at {Power}");

    internal Mass Burnt => Before - After;
}

/// <summary>Steady runs of an engine at one power, with the accuracy of scale, clock and power.</summary>
/// <remarks>
/// <para>Fire: a tank on a scale beside a running engine. Fuel lines that cannot part, an earthed tank, a shut-off within reach, an extinguisher, ventilation. An engine held at full load heats up and may run lean unseen: watch lambda and
/// exhaust temperature, and stop at the first knock. Local codes and a licensed practice take precedence.</para>
/// <para>A return line into the tank is weighed with it; a hose that pulls on the scale is weighed too, so it must hang the same before and after.</para>
/// </remarks>
/// <example>
/// <code>
/// (double Before, double After)[] weighed = [(31.240, 29.905), (29.905, 28.561), (28.561, 27.222), (27.222, 25.879)];
/// ConsumptionTest test = ConsumptionTest.Of(
///     "Wren at 6,400 rev/min",
///     scale: Mass.FromGrams(5),
///     clock: Duration.FromSeconds(0.2),
///     power: Ratio.FromPercent(0.5),
///     calibration: Ratio.FromPercent(1.5),
///     [.. weighed.Select(run => ConsumptionReading.Of(Mass.FromKilograms(run.Before), Mass.FromKilograms(run.After), Duration.FromSeconds(90), Power.FromKilowatts(162)))]);
/// ConsumptionFit fit = ConsumptionFit.Of(test);
/// Console.WriteLine(fit);   // Wren at 6,400 rev/min: 331 g/kWh (321 g/kWh to 341 g/kWh)
/// FuelConsumption consumption = fit.MaximumConsumption(Fuel.Petrol, lambda: 0.82);
/// </code>
/// </example>
public sealed record ConsumptionTest : IReadable
{
    private static readonly Identity<ConsumptionTest> _identity = new Identity<ConsumptionTest>()
        .Value(test => test.Name)
        .Number(test => test.Scale.Kilograms)
        .Number(test => test.Clock.Seconds)
        .Number(test => test.Power.DecimalFractions)
        .Number(test => test.Calibration.DecimalFractions)
        .List(test => test.Readings);

    // Rules of thumb, common practice, no source.
    private const double MinimumDeviations = 10;
    private const double MaximumPowerApart = 0.1;

    private ConsumptionTest(string name, Mass scale, Duration clock, Ratio power, Ratio calibration, ConsumptionReading[] readings) =>
        (Name, Scale, Clock, Power, Calibration, Readings) = (name, scale, clock, power, calibration, Array.AsReadOnly(readings));

    /// <summary>Which engine, at which speed.</summary>
    public string Name { get; }

    /// <summary>Standard deviation of one weighing.</summary>
    public Mass Scale { get; }

    /// <summary>Standard deviation of one timing.</summary>
    public Duration Clock { get; }

    /// <summary>Standard deviation of the mean power of one run, as a share.</summary>
    public Ratio Power { get; }

    /// <summary>Standard deviation of what all runs have in common, as a share: above all the dynamometer's.</summary>
    public Ratio Calibration { get; }

    /// <summary>The runs.</summary>
    public IReadOnlyList<ConsumptionReading> Readings { get; }

    /// <summary>Describes a test.</summary>
    /// <param name="name">Which engine, at which speed; 1 to 80 characters.</param>
    /// <param name="scale">Standard deviation of one weighing, 0.01 g to 10 kg.</param>
    /// <param name="clock">Standard deviation of one timing, start and stop together, 1 ms to 10 s.</param>
    /// <param name="power">Standard deviation of the mean power of one run, as a share, 0 to 10 %.</param>
    /// <param name="calibration">Standard deviation of what all runs have in common, as a share, 0 to 10 %: the dynamometer's calibration, the scale's.</param>
    /// <param name="readings">3 to 200 runs within 10 % of one power, each burning ten times the scale's deviation or more, over ten times the clock's or more (common practice, no source).</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank; a run burns too little or is too short for the instruments; or the powers differ.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few runs.</exception>
    public static ConsumptionTest Of(string name, Mass scale, Duration clock, Ratio power, Ratio calibration, params ConsumptionReading[] readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Guard.Count(readings.Length, 3, 200, "Run three times or more: one run does not show how much runs differ.", nameof(readings));
        Guard.Between(scale, Mass.FromGrams(0.01), Mass.FromKilograms(10), "Give the standard deviation of one weighing.", nameof(scale));
        Guard.Between(clock, Duration.FromMilliseconds(1), Duration.FromSeconds(10), "Give the standard deviation of one timing.", nameof(clock));
        foreach (ConsumptionReading reading in readings)
        {
            ArgumentNullException.ThrowIfNull(reading, nameof(readings));
            if (reading.Burnt < scale * MinimumDeviations)
            {
                throw new ArgumentException(
                    $"{nameof(readings)} has {reading}, less than {MinimumDeviations} times the {Readable.Of(scale)} of a weighing (common practice, no source). Run longer, or weigh more accurately.", nameof(readings));
            }

            if (reading.Time < clock * MinimumDeviations)
            {
                throw new ArgumentException(
                    $"{nameof(readings)} has {reading}, shorter than {MinimumDeviations} times the {TextStyle.Metric.Time(clock)} of a timing (common practice, no source). Run longer.", nameof(readings));
            }
        }

        (double least, double most) = (readings.Min(reading => (double)reading.Power.Watts), readings.Max(reading => (double)reading.Power.Watts));
        return most > least * (1 + MaximumPowerApart)
            ? throw new ArgumentException(
                $"{nameof(readings)} are of {Readable.Of(UnitsNet.Power.FromWatts(least))} to {Readable.Of(UnitsNet.Power.FromWatts(most))}: specific consumption changes with load. Give runs within {MaximumPowerApart:0 %} of one power (common practice, no source), each power in a test of its own.",
                nameof(readings))
            : new(
                Guard.Name(name, nameof(name)),
                scale,
                clock,
                WithinShare(power, nameof(power)),
                WithinShare(calibration, nameof(calibration)),
                [.. readings]);
    }

    /// <summary>The same test without some of its runs: those that were found to be blunders.</summary>
    /// <param name="places">Places in <see cref="Readings"/>, from 0.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such place, or too few runs are left.</exception>
    public ConsumptionTest Without(params int[] places) => Of(Name, Scale, Clock, Power, Calibration, [.. BenchPlaces.Without(Readings, places)]);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ConsumptionTest? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and number of runs.</summary>
    /// <returns>For instance <c>Wren at 6,400 rev/min: 4 runs</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.consumption-test", $"{Name}: {Readings.Count} runs");

    private static Ratio WithinShare(Ratio share, string name) =>
        Guard.Between(share, Ratio.Zero, Ratio.FromPercent(10), "Give a standard deviation as a share.", name);
}

/// <summary>
/// Brake specific fuel consumption by tanks weighed before and after, with its interval.
/// <para><c>b = (m_1 − m_2)/(P t)</c></para>
/// </summary>
/// <remarks>
/// <para><c>b</c> (kg/J): fuel mass for a unit of work at the crank; <c>m_1</c>, <c>m_2</c> (kg): tank before and after; <c>P</c> (W): mean power; <c>t</c> (s): time.</para>
/// <para>The interval holds the truth in 95 of 100 tests: Student's t by what the runs differ by, no less than what scale, clock and power explain; and the calibration that all share.</para>
/// <para>Range: the power, speed and mixture of the runs. Outside: nothing is said; a richer mixture burns more for the same power.</para>
/// </remarks>
public sealed class ConsumptionFit : IReadable
{
    private ConsumptionFit(ConsumptionTest test, PooledMeans pooled)
    {
        (Test, Scatter, Outliers) = (test, Ratio.FromDecimalFractions(pooled.Extra), Array.AsReadOnly(pooled.Outliers));
        double found = pooled.Means[0];
        Half = pooled.Half(0, test.Calibration.DecimalFractions * found);
        (Value, Minimum, Maximum) = (Grams(found), Grams(Math.Max(0, found - Half)), Grams(found + Half));
    }

    /// <summary>The test.</summary>
    public ConsumptionTest Test { get; }

    /// <summary>Brake specific fuel consumption.</summary>
    public BrakeSpecificFuelConsumption Value { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public BrakeSpecificFuelConsumption Minimum { get; }

    /// <summary>Upper end: what a supply is sized by.</summary>
    public BrakeSpecificFuelConsumption Maximum { get; }

    /// <summary>By how much runs differ besides what scale, clock and power explain, as a share.</summary>
    public Ratio Scatter { get; }

    /// <summary>Places in <see cref="ConsumptionTest.Readings"/> of runs further off than chance brings one in a hundred tests, and than the instruments explain.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>Consumption and interval, as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.consumption", $"{Test.Name}: {Value} ({Minimum} to {Maximum})");

    /// <summary>Calculates consumption and interval.</summary>
    /// <param name="test">The runs.</param>
    /// <returns>The fit.</returns>
    public static ConsumptionFit Of(ConsumptionTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        double[] found = [.. test.Readings.Select(run => run.Burnt.Kilograms / ((double)run.Power.Watts * run.Time.Seconds))];

        // Two weighings a run, before and after. By what a run of its power and time burns on average: by its own mass a run that was read too low would count for more.
        double mean = found.Average();
        double[] stated =
        [
            .. test.Readings.Select(run => mean * Math.Sqrt(
                (2 * Math.Pow(test.Scale.Kilograms / (mean * (double)run.Power.Watts * run.Time.Seconds), 2))
                + Math.Pow(test.Clock.Seconds / run.Time.Seconds, 2)
                + Math.Pow(test.Power.DecimalFractions, 2))),
        ];
        return new(test, PooledMeans.Of(found, stated, new int[found.Length]));
    }

    /// <summary>The consumption found, as an engine's description takes it.</summary>
    /// <param name="fuel">The fuel of the runs.</param>
    /// <param name="lambda">Of the runs, 0.6 to 1.2.</param>
    /// <returns>The consumption.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The lambda is outside its range, or no engine burns so much or so little.</exception>
    public FuelConsumption Consumption(Fuel fuel, double lambda) => FuelConsumption.Of(fuel, lambda, Value);

    /// <summary>The upper end of the interval, as an engine's description takes it: for what pumps and injectors must supply.</summary>
    /// <param name="fuel">The fuel of the runs.</param>
    /// <param name="lambda">Of the runs, 0.6 to 1.2.</param>
    /// <returns>The consumption.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The lambda is outside its range, or no engine burns so much or so little.</exception>
    public FuelConsumption MaximumConsumption(Fuel fuel, double lambda) => FuelConsumption.Of(fuel, lambda, Maximum);

    /// <summary>The consumption as an uncertain input: normal, with the standard deviation that the interval has, cut off at four of them.</summary>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">It reaches beyond what engines burn, 150 to 1,500 g/kWh.</exception>
    public UncertainInput ToUncertainInput()
    {
        return UncertainInput.BrakeSpecificFuelConsumption(MeasuredDistribution.About(Value.KilogramsPerJoule, Half / PooledMeans.StatedReach, value => Grams((double)value)));
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Consumption and interval.</summary>
    /// <returns>For instance <c>Wren at 6,400 rev/min: 331 g/kWh (321 g/kWh to 341 g/kWh)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);


    private double Half { get; }

    private static BrakeSpecificFuelConsumption Grams(double kilogramsPerJoule) =>
        BrakeSpecificFuelConsumption.FromKilogramsPerJoule(kilogramsPerJoule).ToUnit(UnitsNet.Units.BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour);
}
