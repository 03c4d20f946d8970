using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>What a pump delivered into a vessel in some time, against a set pressure and at a set voltage.</summary>
public sealed record PumpFlowReading : IReadable
{
    private static readonly Identity<PumpFlowReading> _identity = new Identity<PumpFlowReading>()
        .Number(reading => reading.PressureRise.Pascals)
        .Number(reading => reading.Voltage.Volts)
        .Number(reading => reading.Weighed?.Kilograms)
        .Number(reading => reading.Measured?.CubicMeters)
        .Number(reading => reading.Time.Seconds)
        .Number(reading => reading.Current?.Amperes);

    private PumpFlowReading(Pressure rise, ElectricPotential voltage, Mass? weighed, Volume? measured, Duration time, ElectricCurrent? current) =>
        (PressureRise, Voltage, Weighed, Measured, Time, Current) = (
            PumpCurve.WithinRise(rise, nameof(rise)),
            PumpCurve.WithinVoltage(voltage, nameof(voltage)),
            weighed,
            measured,
            Guard.Between(time, Duration.FromSeconds(1), Duration.FromMinutes(60), "Give the time in which the vessel was filled.", nameof(time)),
            current is { } drawn ? PumpCurve.WithinCurrent(drawn, nameof(current)) : null);

    /// <summary>Pressure rise over the pump.</summary>
    public Pressure PressureRise { get; }

    /// <summary>Voltage at the pump's terminals.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>What was collected, where it was weighed.</summary>
    public Mass? Weighed { get; }

    /// <summary>What was collected, where its volume was measured.</summary>
    public Volume? Measured { get; }

    /// <summary>In which time.</summary>
    public Duration Time { get; }

    /// <summary>Current that the pump drew, if it was measured.</summary>
    public ElectricCurrent? Current { get; }

    /// <summary>Describes a weighing.</summary>
    /// <param name="rise">Pressure rise over the pump, 0 to 2,000 kPa: the gauge at its outlet, less that at its inlet.</param>
    /// <param name="voltage">At the pump's terminals, 5 to 30 V: not at the supply.</param>
    /// <param name="weighed">What was collected, 0 to 200 kg: the full vessel less the empty one.</param>
    /// <param name="time">In which time, 1 s to 60 min.</param>
    /// <param name="current">That the pump drew, 0.1 to 100 A; none if it was not measured.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static PumpFlowReading OfMass(Pressure rise, ElectricPotential voltage, Mass weighed, Duration time, ElectricCurrent? current = null) => new(
        rise,
        voltage,
        Guard.Between(weighed, Mass.Zero, Mass.FromKilograms(200), "Give what was collected: the full vessel less the empty one.", nameof(weighed)),
        null,
        time,
        current);

    /// <summary>Describes a reading of volume.</summary>
    /// <param name="rise">Pressure rise over the pump, 0 to 2,000 kPa: the gauge at its outlet, less that at its inlet.</param>
    /// <param name="voltage">At the pump's terminals, 5 to 30 V: not at the supply.</param>
    /// <param name="measured">What was collected, 0 to 200 L.</param>
    /// <param name="time">In which time, 1 s to 60 min.</param>
    /// <param name="current">That the pump drew, 0.1 to 100 A; none if it was not measured.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static PumpFlowReading OfVolume(Pressure rise, ElectricPotential voltage, Volume measured, Duration time, ElectricCurrent? current = null) => new(
        rise, voltage, null, Guard.Between(measured, Volume.Zero, Volume.FromLiters(200), "Give what was collected.", nameof(measured)), time, current);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PumpFlowReading? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Set point, what was collected, and the time.</summary>
    /// <returns>For instance <c>300 kPa, 13.5 V: 1,250.00 g in 30.00 s</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Weighed is { } mass
        ? Statement.Of("bench.pump-flow-weighed", $"{PressureRise}, {Voltage}: {mass} in {Time:time}{Drawn}")
        : Statement.Of("bench.pump-flow-measured", $"{PressureRise}, {Voltage}: {Measured!.Value:displacement} in {Time:time}{Drawn}");

    private Statement? Drawn => Current is { } current ? Statement.Of("bench.pump-flow-current", $", {current}") : null;

    /// <summary>Which set point it is of: to 1 Pa and 1 mV.</summary>
    internal (double Pascals, double Millivolts) SetPoint => (Math.Round(PressureRise.Pascals), Math.Round(Voltage.Millivolts));
}

/// <summary>A pump that fills a vessel, at several pressures and one voltage or more: the bucket test.</summary>
/// <remarks>
/// <para>Fuel under pressure sprays, and its vapour burns; the pump is a source of sparks where its wiring is makeshift. Test liquid and not petrol, no ignition sources, ventilation, goggles, an extinguisher
/// within reach, an earthed vessel, and the return into it under the surface. Local codes and a licensed practice take precedence.</para>
/// <para>Set each pressure anew for each repeat, from above and from below: a repeat with the valve untouched does not show how well a pressure can be set.</para>
/// </remarks>
/// <example>
/// <code>
/// (double Kilopascals, double Grams)[] weighed =
///     [(0, 1214), (0, 1209), (200, 1043), (200, 1047), (400, 861), (400, 864), (600, 652), (600, 648)];
/// PumpFlowTest test = PumpFlowTest.Weighed(
///     "pump S",
///     TestFluid.Heptane,
///     scale: Mass.FromGrams(2),
///     clock: Duration.FromSeconds(0.1),
///     gauge: GaugeAccuracy.Of(reading: Pressure.FromKilopascals(1), zero: Pressure.FromKilopascals(2), span: Ratio.FromPercent(0.5)),
///     density: Ratio.FromPercent(0.2),
///     calibration: Ratio.FromPercent(0.2),
///     [.. weighed.Select(point => PumpFlowReading.OfMass(
///         Pressure.FromKilopascals(point.Kilopascals), ElectricPotential.FromVolts(13.5), Mass.FromGrams(point.Grams), Duration.FromSeconds(30)))]);
/// PumpFlowFit fit = PumpFlowFit.Of(test);
/// Console.WriteLine(fit.Points[1]);   // 200 kPa, 13.5 V: 183 L/h (182 L/h to 185 L/h)
/// Pump pump = Pump.Of(fit.Curves());
/// </code>
/// </example>
public sealed record PumpFlowTest : IReadable
{
    private static readonly Identity<PumpFlowTest> _identity = new Identity<PumpFlowTest>()
        .Value(test => test.Name)
        .Value(test => test.Fluid)
        .Number(test => test.Scale?.Kilograms)
        .Number(test => test.Vessel?.CubicMeters)
        .Number(test => test.Clock.Seconds)
        .Value(test => test.Gauge)
        .Number(test => test.Density.DecimalFractions)
        .Number(test => test.Calibration.DecimalFractions)
        .Number(test => test.Ammeter?.Amperes)
        .List(test => test.Readings);

    private const int MinimumPressures = 3;
    private const int MinimumRepeats = 3;

    private PumpFlowTest(string name, Duration clock, GaugeAccuracy gauge, Ratio calibration, IReadOnlyList<PumpFlowReading> readings, ElectricCurrent? ammeter)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        (Name, Clock, Gauge, Readings) = (Guard.Name(name, nameof(name)), Guard.Between(clock, Duration.FromMilliseconds(1), Duration.FromSeconds(10), "Give the standard deviation of one timing, start and stop together.", nameof(clock)), gauge, Array.AsReadOnly([.. readings]));
        Calibration = WithinShare(calibration, nameof(calibration));
        Ammeter = ammeter is { } accuracy
            ? Guard.Between(accuracy, ElectricCurrent.FromMilliamperes(1), ElectricCurrent.FromAmperes(10), "Give the standard deviation of a reading of current.", nameof(ammeter))
            : null;
    }

    /// <summary>The pump's name.</summary>
    public string Name { get; }

    /// <summary>The liquid, with its density at the temperature of the test; none where volume was measured.</summary>
    public TestFluid? Fluid { get; private init; }

    /// <summary>Standard deviation of one weighing, full less empty; none where volume was measured.</summary>
    public Mass? Scale { get; private init; }

    /// <summary>Standard deviation of one reading of volume; none where it was weighed.</summary>
    public Volume? Vessel { get; private init; }

    /// <summary>Standard deviation of one timing.</summary>
    public Duration Clock { get; }

    /// <summary>How accurate the pressure gauge is.</summary>
    public GaugeAccuracy Gauge { get; }

    /// <summary>Standard deviation of the liquid's density, as a share.</summary>
    public Ratio Density { get; private init; }

    /// <summary>Standard deviation of what all flows have in common, as a share.</summary>
    public Ratio Calibration { get; }

    /// <summary>Standard deviation of a reading of current, and of what all of them have in common; none where none was measured.</summary>
    public ElectricCurrent? Ammeter { get; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<PumpFlowReading> Readings { get; }

    /// <summary>Describes a test in which the liquid was weighed.</summary>
    /// <param name="name">Of the pump; 1 to 80 characters.</param>
    /// <param name="fluid">The liquid, with its density at the temperature of the test.</param>
    /// <param name="scale">Standard deviation of one weighing, full vessel less empty one, 1 mg to 1 kg.</param>
    /// <param name="clock">Standard deviation of one timing, start and stop together, 1 ms to 10 s; by hand about 0.2 s (common practice, no source).</param>
    /// <param name="gauge">How accurate the pressure gauge is.</param>
    /// <param name="density">Standard deviation of the density as a share, 0 to 10 %: the liquid's temperature, 0.1 % for each kelvin (common practice, no source).</param>
    /// <param name="calibration">
    /// Standard deviation of what all flows have in common, 0 to 10 %: the scale's calibration, the clock's, and what the voltmeter's makes of flow.
    /// </param>
    /// <param name="readings">6 to 500, at three pressures or more of each voltage, three of them repeats.</param>
    /// <param name="ammeter">Standard deviation of a reading of current, 1 mA to 10 A, counted once more for what all have in common; needed where currents are given.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank; there are too few pressures or repeats; volumes are among the readings, or currents of some readings only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few readings.</exception>
    public static PumpFlowTest Weighed(
        string name, TestFluid fluid, Mass scale, Duration clock, GaugeAccuracy gauge, Ratio density, Ratio calibration, IReadOnlyList<PumpFlowReading> readings, ElectricCurrent? ammeter = null)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        return new(name, clock, gauge, calibration, Sound(readings, isWeighed: true, ammeter), ammeter)
        {
            Fluid = fluid,
            Scale = Guard.Between(scale, Mass.FromMilligrams(1), Mass.FromKilograms(1), "Give the standard deviation of one weighing.", nameof(scale)),
            Density = WithinShare(density, nameof(density)),
        };
    }

    /// <summary>Describes a test in which the liquid's volume was measured.</summary>
    /// <param name="name">Of the pump; 1 to 80 characters.</param>
    /// <param name="vessel">Standard deviation of one reading of volume, 0.01 mL to 1 L.</param>
    /// <param name="clock">Standard deviation of one timing, start and stop together, 1 ms to 10 s; by hand about 0.2 s (common practice, no source).</param>
    /// <param name="gauge">How accurate the pressure gauge is.</param>
    /// <param name="calibration">
    /// Standard deviation of what all flows have in common, 0 to 10 %: the vessel's calibration, the clock's, and what the voltmeter's makes of flow.
    /// </param>
    /// <param name="readings">6 to 500, at three pressures or more of each voltage, three of them repeats.</param>
    /// <param name="ammeter">Standard deviation of a reading of current, 1 mA to 10 A, counted once more for what all have in common; needed where currents are given.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank; there are too few pressures or repeats; weighings are among the readings, or currents of some readings only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few readings.</exception>
    public static PumpFlowTest Measured(
        string name, Volume vessel, Duration clock, GaugeAccuracy gauge, Ratio calibration, IReadOnlyList<PumpFlowReading> readings, ElectricCurrent? ammeter = null) =>
        new(name, clock, gauge, calibration, Sound(readings, isWeighed: false, ammeter), ammeter)
        {
            Vessel = Guard.Between(vessel, Volume.FromMilliliters(0.01), Volume.FromLiters(1), "Give the standard deviation of one reading of volume.", nameof(vessel)),
        };

    /// <summary>The same test without some of its readings: those that were found to be blunders.</summary>
    /// <param name="places">Places in <see cref="Readings"/>, from 0.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">Too few pressures or repeats are left.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such place, or too few readings are left.</exception>
    public PumpFlowTest Without(params int[] places)
    {
        PumpFlowReading[] left = [.. BenchPlaces.Without(Readings, places)];
        return Fluid is { } fluid
            ? Weighed(Name, fluid, Scale!.Value, Clock, Gauge, Density, Calibration, left, Ammeter)
            : Measured(Name, Vessel!.Value, Clock, Gauge, Calibration, left, Ammeter);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PumpFlowTest? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and number of readings and set points.</summary>
    /// <returns>For instance <c>pump S: 16 readings at 8 set points</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.pump-flow-test", $"{Name}: {Readings.Count} readings at {Readings.DistinctBy(reading => reading.SetPoint).Count()} set points");

    /// <summary>What was collected, m³.</summary>
    internal double CubicMetres(PumpFlowReading reading) =>
        reading.Measured?.CubicMeters ?? (reading.Weighed!.Value.Kilograms / Fluid!.Density.KilogramsPerCubicMeter);

    /// <summary>Standard deviation of that, m³.</summary>
    internal double CubicMetresOff => Vessel?.CubicMeters ?? (Scale!.Value.Kilograms / Fluid!.Density.KilogramsPerCubicMeter);

    private static Ratio WithinShare(Ratio share, string name) =>
        Guard.Between(share, Ratio.Zero, Ratio.FromPercent(10), "Give the standard deviation of what all readings have in common, as a share.", name);

    private static PumpFlowReading[] Sound(IReadOnlyList<PumpFlowReading> readings, bool isWeighed, ElectricCurrent? ammeter)
    {
        ArgumentNullException.ThrowIfNull(readings);
        Guard.Count(readings.Count, 6, 500, "Collect at three pressures or more, at each two times or more.", nameof(readings));
        PumpFlowReading[] all = [.. readings];
        foreach (PumpFlowReading reading in all)
        {
            ArgumentNullException.ThrowIfNull(reading, nameof(readings));
            if (reading.Weighed is null == isWeighed)
            {
                throw new ArgumentException(
                    $"{nameof(readings)} has {reading} among {(isWeighed ? "weighings" : "volumes")}. Give all by mass or all by volume: their accuracies differ.", nameof(readings));
            }
        }

        foreach (IGrouping<double, PumpFlowReading> voltage in all.GroupBy(reading => reading.SetPoint.Millivolts))
        {
            int pressures = voltage.DistinctBy(reading => reading.SetPoint).Count();
            if (pressures < MinimumPressures)
            {
                throw new ArgumentException(
                    $"{nameof(readings)} at {Readable.Of(voltage.First().Voltage)} are of {pressures} {(pressures == 1 ? "pressure" : "pressures")}, which cannot show a curve. Collect at {MinimumPressures} pressures or more at each voltage, from none to over the highest that the rail needs.",
                    nameof(readings));
            }
        }

        int repeats = all.Length - all.DistinctBy(reading => reading.SetPoint).Count();
        if (repeats < MinimumRepeats)
        {
            throw new ArgumentException(
                $"{nameof(readings)} has {repeats} repeats: how much readings scatter is not known. Collect at {MinimumRepeats} of the set points or more once more, each set anew.", nameof(readings));
        }

        int measured = all.Count(reading => reading.Current is not null);
        if (measured != 0 && measured != all.Length)
        {
            throw new ArgumentException($"{nameof(readings)} has the current of {measured} readings of {all.Length}. Give it of all, or of none.", nameof(readings));
        }

        return (measured > 0) == (ammeter is not null)
            ? all
            : throw new ArgumentException(
                measured > 0 ? $"{nameof(ammeter)} is not given, and {nameof(readings)} have currents. Give the standard deviation of a reading of current." : $"{nameof(ammeter)} is given, and {nameof(readings)} have no currents. Give both or neither.",
                nameof(ammeter));
    }
}

/// <summary>Readings of a list without some of them.</summary>
internal static class BenchPlaces
{
    /// <summary>All but those at the places given.</summary>
    public static IEnumerable<T> Without<T>(IReadOnlyList<T> readings, int[] places)
    {
        ArgumentNullException.ThrowIfNull(places);
        foreach (int place in places)
        {
            Guard.Count(place, 0, readings.Count - 1, "Give places in the list of readings, counted from 0.", nameof(places));
        }

        return readings.Where((_, place) => !places.Contains(place));
    }
}
