using FuelSizing.Electrical;
using FuelSizing.Quantities;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>The voltage across a part of the wiring at a current.</summary>
public sealed record VoltageDropReading : IReadable
{
    private static readonly Identity<VoltageDropReading> _identity = new Identity<VoltageDropReading>()
        .Number(reading => reading.Current.Amperes)
        .Number(reading => reading.Drop.Volts);

    private VoltageDropReading(ElectricCurrent current, ElectricPotential drop) => (Current, Drop) = (current, drop);

    /// <summary>Current through the part.</summary>
    public ElectricCurrent Current { get; }

    /// <summary>Voltage across it.</summary>
    public ElectricPotential Drop { get; }

    /// <summary>Describes a reading.</summary>
    /// <param name="current">Through the part, 0 to 500 A; at no current the meter's offset shows.</param>
    /// <param name="drop">Across it, −1 to 20 V, as the meter shows it.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static VoltageDropReading Of(ElectricCurrent current, ElectricPotential drop) => new(
        Guard.Between(current, ElectricCurrent.Zero, ElectricCurrent.FromAmperes(500), "Give the current through the part.", nameof(current)),
        Guard.Between(drop, ElectricPotential.FromVolts(-1), ElectricPotential.FromVolts(20), "Give the voltage across the part; turn the leads where all readings are negative.", nameof(drop)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(VoltageDropReading? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Current and voltage.</summary>
    /// <returns>For instance <c>12.0 A: 0.31 V</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.voltage-drop-reading", $"{Current}: {Drop:voltage-drop}");
}

/// <summary>A part of a pump's wiring under load: its feed wire, its ground return, a joint, a relay or a fuse, with the voltage across it at several currents.</summary>
/// <remarks>
/// <para>Fire: test leads slip and short; a fuse belongs in each, close to the supply. Fuel vapour and a spark at a loosened contact ignite: wiring near the tank is loaded with the tank closed and the space ventilated. Local codes and a
/// licensed practitioner take precedence.</para>
/// <para>Load the pump's wiring by the pump at several voltages or flows, or by lamps or resistors in its place. Some seconds each: a wire that warms resists more, 4 % for 10 K.</para>
/// </remarks>
/// <example>
/// <code>
/// (double Amperes, double Millivolts)[] read = [(0, 0.4), (4, 101), (4, 102), (8, 202), (8, 203), (12, 305), (12, 303), (16, 405)];
/// VoltageDropTest test = VoltageDropTest.Of(
///     "ground stud to battery",
///     meter: ElectricPotential.FromMillivolts(0.8),
///     offset: ElectricPotential.FromMillivolts(0.5),
///     ammeter: ElectricCurrent.FromMilliamperes(20),
///     calibration: Ratio.FromPercent(0.8),
///     [.. read.Select(point => VoltageDropReading.Of(ElectricCurrent.FromAmperes(point.Amperes), ElectricPotential.FromMillivolts(point.Millivolts)))]);
/// VoltageDropFit fit = VoltageDropFit.Of(test);
/// Console.WriteLine(fit);   // ground stud to battery: 25.3 mΩ (24.9 mΩ to 25.7 mΩ)
/// Contact chassis = fit.MaximumContact;
/// </code>
/// </example>
public sealed record VoltageDropTest : IReadable
{
    private static readonly Identity<VoltageDropTest> _identity = new Identity<VoltageDropTest>()
        .Value(test => test.Name)
        .Number(test => test.Meter.Volts)
        .Number(test => test.Offset.Volts)
        .Number(test => test.Ammeter.Amperes)
        .Number(test => test.Calibration.DecimalFractions)
        .List(test => test.Readings);

    private const int MinimumCurrents = 3;

    private VoltageDropTest(string name, ElectricPotential meter, ElectricPotential offset, ElectricCurrent ammeter, Ratio calibration, VoltageDropReading[] readings) =>
        (Name, Meter, Offset, Ammeter, Calibration, Readings) = (name, meter, offset, ammeter, calibration, Array.AsReadOnly(readings));

    /// <summary>What was measured across.</summary>
    public string Name { get; }

    /// <summary>Standard deviation of one reading of voltage.</summary>
    public ElectricPotential Meter { get; }

    /// <summary>Standard deviation of what all readings of voltage are off by alike.</summary>
    public ElectricPotential Offset { get; }

    /// <summary>Standard deviation of one reading of current.</summary>
    public ElectricCurrent Ammeter { get; }

    /// <summary>Standard deviation of what all have in common in proportion, both meters together, as a share.</summary>
    public Ratio Calibration { get; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<VoltageDropReading> Readings { get; }

    /// <summary>Describes a test.</summary>
    /// <param name="name">What was measured across; 1 to 80 characters.</param>
    /// <param name="meter">Standard deviation of one reading of voltage, 0.001 mV to 1 V.</param>
    /// <param name="offset">Standard deviation of what all readings of voltage are off by alike, 0 to 1 V.</param>
    /// <param name="ammeter">Standard deviation of one reading of current, 0 to 10 A.</param>
    /// <param name="calibration">Standard deviation of what all have in common in proportion, both meters together, 0 to 10 %.</param>
    /// <param name="readings">6 to 1,000, at three currents or more, of which the highest is at least twice the lowest.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank, or the currents are too few or too near.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few readings.</exception>
    public static VoltageDropTest Of(
        string name, ElectricPotential meter, ElectricPotential offset, ElectricCurrent ammeter, Ratio calibration, params VoltageDropReading[] readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Guard.Count(readings.Length, 6, 1000, "Read at three currents or more, at each two times or more.", nameof(readings));
        foreach (VoltageDropReading reading in readings)
        {
            ArgumentNullException.ThrowIfNull(reading, nameof(readings));
        }

        double[] currents = [.. readings.Select(reading => reading.Current.Amperes).Distinct().Order()];
        return currents.Length < MinimumCurrents || currents[^1] < 2 * currents[0]
            ? throw new ArgumentException(
                $"{nameof(readings)} are of {currents.Length} {(currents.Length == 1 ? "current" : "currents")}, {Readable.Of(ElectricCurrent.FromAmperes(currents[0]))} to {Readable.Of(ElectricCurrent.FromAmperes(currents[^1]))}: what the meter is off by cannot be told from a resistance. Read at {MinimumCurrents} currents or more, the highest at least twice the lowest, and once at none.",
                nameof(readings))
            : new(
                Guard.Name(name, nameof(name)),
                Guard.Between(meter, ElectricPotential.FromMillivolts(0.001), ElectricPotential.FromVolts(1), "Give the standard deviation of one reading of voltage.", nameof(meter)),
                Guard.Between(
                    offset, ElectricPotential.Zero, ElectricPotential.FromVolts(1), "Give the standard deviation of what all readings of voltage are off by alike.", nameof(offset)),
                Guard.Between(ammeter, ElectricCurrent.Zero, ElectricCurrent.FromAmperes(10), "Give the standard deviation of one reading of current.", nameof(ammeter)),
                Guard.Between(
                    calibration, Ratio.Zero, Ratio.FromPercent(10), "Give the standard deviation of what both meters are off by together, as a share.", nameof(calibration)),
                [.. readings]);
    }

    /// <summary>The same test without some of its readings: those that were found to be blunders.</summary>
    /// <param name="places">Places in <see cref="Readings"/>, from 0.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The currents that are left are too few or too near.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such place, or too few readings are left.</exception>
    public VoltageDropTest Without(params int[] places) => Of(Name, Meter, Offset, Ammeter, Calibration, [.. BenchPlaces.Without(Readings, places)]);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(VoltageDropTest? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and number of readings.</summary>
    /// <returns>For instance <c>relay: 8 readings of voltage drop</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.voltage-drop-test", $"{Name}: {Readings.Count} readings of voltage drop");
}

/// <summary>
/// The resistance of a part of the wiring, by the line through zero of voltage over current, with its interval.
/// <para><c>U = R I</c></para>
/// </summary>
/// <remarks>
/// <para><c>U</c> (V): voltage across the part; <c>R</c> (Ω): its resistance; <c>I</c> (A): current.</para>
/// <para>The interval holds the truth in 95 of 100 tests: Student's t by the scatter about the line, no less than the meters' own; and what all readings have in common, the meter's offset and both
/// calibrations. Where the readings show an offset that is more than stated, the line need not go through zero, and is that of the slope alone.</para>
/// <para>Range: the temperature of the test. Outside: copper resists 0.393 % more for each kelvin over 20 °C, and a corroded contact what it likes.</para>
/// </remarks>
public sealed class VoltageDropFit : IReadable
{
    private const double Confidence = 0.95;
    private const double MinimumChance = 0.01;

    private readonly double _lackOfFit;

    private VoltageDropFit(VoltageDropTest test, double ohms, double half, (double Volts, double Half) offset, bool isThroughZero, LinearFit fit)
    {
        (Test, IsThroughZero, Outliers) = (test, isThroughZero, Array.AsReadOnly([.. fit.OutliersBeyondStated()]));
        (Resistance, MinimumResistance, MaximumResistance) = (Ohms(ohms), Ohms(Math.Max(0, ohms - half)), Ohms(ohms + half));
        (Offset, MinimumOffset, MaximumOffset) = (Volts(offset.Volts), Volts(offset.Volts - offset.Half), Volts(offset.Volts + offset.Half));
        Scatter = ElectricPotential.FromVolts(fit.Scale * test.Meter.Volts);
        _lackOfFit = fit.LackOfFit([.. test.Readings.Select(reading => reading.Current.Amperes)]);
    }

    /// <summary>The test.</summary>
    public VoltageDropTest Test { get; }

    /// <summary>Resistance of the part.</summary>
    public ElectricResistance Resistance { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public ElectricResistance MinimumResistance { get; }

    /// <summary>Upper end: what a voltage drop is calculated with where it must not be too much.</summary>
    public ElectricResistance MaximumResistance { get; }

    /// <summary>What the meter shows at no current, by the line that need not go through zero.</summary>
    public ElectricPotential Offset { get; }

    /// <summary>Lower end of its interval of 95 %.</summary>
    public ElectricPotential MinimumOffset { get; }

    /// <summary>Upper end.</summary>
    public ElectricPotential MaximumOffset { get; }

    /// <summary>False where the offset is more than was stated, so that the line that need not go through zero was taken.</summary>
    public bool IsThroughZero { get; }

    /// <summary>Standard deviation of a reading of voltage by the scatter about the line; the stated one is <see cref="VoltageDropTest.Meter"/>.</summary>
    public ElectricPotential Scatter { get; }

    /// <summary>Places in <see cref="VoltageDropTest.Readings"/> of readings further off than chance brings one in a hundred tests, and than the meters explain.</summary>
    public IReadOnlyList<int> Outliers { get; }

    /// <summary>False where readings of one current agree better among each other than with the line, in less than one of 100 tests by chance, as where a wire warms or a joint burns; none without repeats.</summary>
    public bool? IsStraight => double.IsNaN(_lackOfFit) ? null : _lackOfFit >= MinimumChance;

    /// <summary>The part as a contact of the wiring, with the resistance found.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is over 1 Ω, which no contact has.</exception>
    public Contact Contact => Contact.Of(Test.Name, Resistance);

    /// <summary>The part as a contact of the wiring, with the upper end of the interval.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is over 1 Ω, which no contact has.</exception>
    public Contact MaximumContact => Contact.Of(Test.Name, MaximumResistance);

    /// <summary>Resistance and interval, as a code with its figures.</summary>
    public Statement Text => IsThroughZero
        ? Statement.Of("bench.voltage-drop", $"{Test.Name}: {Resistance} ({MinimumResistance} to {MaximumResistance})")
        : Statement.Of(
            "bench.voltage-drop-offset",
            $"{Test.Name}: {Resistance} ({MinimumResistance} to {MaximumResistance}), the meter off by {Offset.Millivolts:0.0} mV ({MinimumOffset.Millivolts:0.0} mV to {MaximumOffset.Millivolts:0.0} mV)");

    /// <summary>Fits the line.</summary>
    /// <param name="test">The readings.</param>
    /// <returns>The fit.</returns>
    /// <exception cref="ArgumentException">The voltage falls as the current grows.</exception>
    public static VoltageDropFit Of(VoltageDropTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        double[] amperes = [.. test.Readings.Select(reading => reading.Current.Amperes)];
        double[] volts = [.. test.Readings.Select(reading => reading.Drop.Volts)];

        // An error of the current is one of the voltage, by the resistance.
        double plain = amperes.Zip(volts, (current, drop) => current * drop).Sum() / amperes.Sum(current => current * current);
        double deviation = Math.Sqrt(Math.Pow(test.Meter.Volts, 2) + Math.Pow(plain * test.Ammeter.Amperes, 2));
        double[] deviations = [.. amperes.Select(current => current > 0 ? deviation : test.Meter.Volts)];
        LinearFit through = LinearFit.Of([.. amperes.Select(current => new[] { current })], volts, deviations);
        LinearFit free = LinearFit.Of([.. amperes.Select(current => new[] { current, 1 })], volts, deviations);
        (double Volts, double Half) offset = (free.Factors[1], free.Reach(Confidence) * free.StatedDeviation(1));
        bool isThroughZero = Math.Abs(offset.Volts) <= Math.Sqrt(Math.Pow(offset.Half, 2) + Math.Pow(PooledMeans.StatedReach * test.Offset.Volts, 2));
        LinearFit fit = isThroughZero ? through : free;
        double ohms = fit.Factors[0];
        if (!(ohms > 0))
        {
            throw new ArgumentException($"{nameof(test)}: the voltage across {test.Name} does not grow with the current. Turn the meter's leads, and check that the current flows through the part.", nameof(test));
        }

        double weights = deviations.Zip(amperes, (off, current) => Math.Pow(current / off, 2)).Sum();
        double byOffset = isThroughZero ? test.Offset.Volts * deviations.Zip(amperes, (off, current) => current / (off * off)).Sum() / weights : 0;
        double half = fit.Half(fit.StatedDeviation(0), Math.Sqrt(Math.Pow(ohms * test.Calibration.DecimalFractions, 2) + (byOffset * byOffset)), Confidence);
        return new(test, ohms, half, offset, isThroughZero, fit);
    }

    /// <summary>
    /// The measurement as an uncertain input of a system whose pump is fed through this part: what it has more than was described, normal, with the deviation that the interval has, cut off at four of them.
    /// </summary>
    /// <param name="described">What the feed was described with for this part; 0 to 1 Ω.</param>
    /// <returns>The input.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public UncertainInput InputOver(ElectricResistance described)
    {
        double more = (Resistance - Guard.Between(
            described, ElectricResistance.Zero, ElectricResistance.FromOhms(1), "Give what the feed was described with for this part.", nameof(described))).Ohms;
        double deviation = (MaximumResistance - MinimumResistance).Ohms / 2 / PooledMeans.StatedReach;
        return UncertainInput.FeedResistanceOffset(MeasuredDistribution.About(more, deviation, ElectricResistance.FromOhms));
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Resistance and interval.</summary>
    /// <returns>For instance <c>relay: 5.4 mΩ (5.1 mΩ to 5.7 mΩ)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    private static ElectricResistance Ohms(double ohms) => ElectricResistance.FromOhms(ohms).ToUnit(UnitsNet.Units.ElectricResistanceUnit.Milliohm);

    private static ElectricPotential Volts(double volts) => ElectricPotential.FromVolts(volts).ToUnit(UnitsNet.Units.ElectricPotentialUnit.Millivolt);
}
