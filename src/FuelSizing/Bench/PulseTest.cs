using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>An injector on the bench at one differential pressure and one voltage: what it delivered in pulses of several widths.</summary>
/// <remarks>
/// <para>Test fluid under pressure sprays, and its vapour burns: no ignition sources, ventilation, goggles, an extinguisher within reach, and a vessel that is earthed. Local
/// codes take precedence.</para>
/// <para>Weigh at eight widths or more, the shortest below those the engine idles on, each two times or more, and as many pulses that the scale's own error is a thousandth of
/// the reading.</para>
/// </remarks>
/// <example>
/// <code>
/// (double Milliseconds, double Grams)[] weighed =
///     [(1.2, 1.02), (1.5, 2.61), (2, 5.22), (3, 10.44), (4, 15.67), (5, 20.88), (6, 26.11), (8, 36.53), (10, 46.98)];
/// PulseTest test = PulseTest.Of(
///     "injector C",
///     TestFluid.Heptane,
///     differential: Pressure.FromKilopascals(300),
///     voltage: ElectricPotential.FromVolts(13.5),
///     scale: Mass.FromMilligrams(10),
///     calibration: Ratio.FromPercent(0.3),
///     [.. weighed.Select(point => PulseReading.Of(Duration.FromMilliseconds(point.Milliseconds), 1000, Mass.FromGrams(point.Grams)))]);
/// PulseFit fit = PulseFit.Of(test);
/// Console.WriteLine(fit);   // 458 mL/min (455 to 461), offset 1.001 ms …
/// </code>
/// </example>
public sealed record PulseTest : IReadable
{
    private static readonly Identity<PulseTest> _identity = new Identity<PulseTest>()
        .Value(test => test.Name)
        .Value(test => test.Fluid)
        .Number(test => test.Differential.Pascals)
        .Number(test => test.Voltage.Volts)
        .Number(test => test.Scale.Kilograms)
        .Number(test => test.Calibration.DecimalFractions)
        .List(test => test.Readings);

    private PulseTest(
        string name, TestFluid fluid, Pressure differential, ElectricPotential voltage, Mass scale, Ratio calibration, PulseReading[] readings)
    {
        (Name, Fluid, Differential, Voltage) = (name, fluid, differential, voltage);
        (Scale, Calibration, Readings) = (scale, calibration, Array.AsReadOnly(readings));
    }

    /// <summary>The injector's name.</summary>
    public string Name { get; }

    /// <summary>The liquid, with its density at the temperature of the test.</summary>
    public TestFluid Fluid { get; }

    /// <summary>Differential pressure of the test.</summary>
    public Pressure Differential { get; }

    /// <summary>Voltage at the injector's driver.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>Standard deviation of one weighing: reading the scale, drops left behind.</summary>
    public Mass Scale { get; }

    /// <summary>Standard deviation of what all readings have in common, as a share: the scale's calibration, the pressure gauge's, the clock's.</summary>
    public Ratio Calibration { get; }

    /// <summary>The weighings.</summary>
    public IReadOnlyList<PulseReading> Readings { get; }

    /// <summary>Describes a test.</summary>
    /// <param name="name">Of the injector; 1 to 80 characters.</param>
    /// <param name="fluid">The liquid, with its density at the temperature of the test.</param>
    /// <param name="differential">Differential pressure, 50 to 1,000 kPa.</param>
    /// <param name="voltage">At the injector's driver, 6 to 20 V.</param>
    /// <param name="scale">Standard deviation of one weighing, 0.1 mg to 100 g: reading the scale, drops left behind.</param>
    /// <param name="calibration">
    /// Standard deviation of what all readings have in common, 0 to 10 %: the scale's calibration, and half of what the pressure gauge is off by.
    /// </param>
    /// <param name="readings">6 to 10,000 weighings, at four pulse widths or more.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank, or the readings are of too few pulse widths.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few readings.</exception>
    public static PulseTest Of(
        string name,
        TestFluid fluid,
        Pressure differential,
        ElectricPotential voltage,
        Mass scale,
        Ratio calibration,
        params PulseReading[] readings)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        ArgumentNullException.ThrowIfNull(readings);
        Guard.Count(readings.Length, 6, 10_000, "Weigh at four pulse widths or more, each two times or more.", nameof(readings));
        foreach (PulseReading reading in readings)
        {
            ArgumentNullException.ThrowIfNull(reading, nameof(readings));
        }

        int widths = readings.Select(reading => reading.Pulse.Seconds).Distinct().Count();
        return widths < MinimumWidths
            ? throw new ArgumentException(
                $"{nameof(readings)} are of {widths} pulse widths: a line goes through any two, and where the injector ceases to follow it they cannot show. Weigh at {MinimumWidths} widths or more, eight are better.",
                nameof(readings))
            : new(
                Guard.Name(name, nameof(name)),
                fluid,
                Guard.Between(differential, MinimumDifferential, MaximumDifferential, "Give the pressure across the injector.", nameof(differential)),
                SupplyVoltage.Within(voltage, nameof(voltage)),
                Guard.Between(scale, Mass.FromMilligrams(0.1), Mass.FromGrams(100), "Give the standard deviation of one weighing.", nameof(scale)),
                Guard.Between(
                    calibration, Ratio.Zero, Ratio.FromPercent(10), "Give the standard deviation of what all readings have in common, as a share.", nameof(calibration)),
                [.. readings]);
    }

    /// <summary>The same test without some of its readings: those that were found to be blunders.</summary>
    /// <param name="places">Places in <see cref="Readings"/>, from 0.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">Too few pulse widths are left.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such place, or too few readings are left.</exception>
    public PulseTest Without(params int[] places) => Of(Name, Fluid, Differential, Voltage, Scale, Calibration, [.. BenchPlaces.Without(Readings, places)]);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PulseTest? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, conditions and number of readings.</summary>
    /// <returns>For instance <c>injector C at 300 kPa and 13.5 V on n-heptane: 18 readings</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.pulse-test", $"{Name} at {Differential} and {Voltage} on {Fluid.Name}: {Readings.Count} readings");

    internal static Pressure MinimumDifferential { get; } = Pressure.FromKilopascals(50);

    internal static Pressure MaximumDifferential { get; } = Pressure.FromKilopascals(1000);

    private const int MinimumWidths = 4;
}
