using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>An injector held open on the bench at one differential pressure: what it passed in several times.</summary>
/// <remarks>
/// <para>Test fluid under pressure sprays, and its vapour burns: no ignition sources, ventilation, goggles, an extinguisher within reach, and a vessel that is earthed. A coil held open
/// grows hot: a few tens of seconds, then let it cool. Local codes take precedence.</para>
/// <para>Collect for two times, one at least twice as long as the other, each two times or more: what the hand on the valve and the clock add to each collection then drops out.</para>
/// </remarks>
/// <example>
/// <code>
/// StaticTest test = StaticTest.ByMass(
///     "injector C",
///     TestFluid.Heptane,
///     differential: Pressure.FromKilopascals(300),
///     scale: Mass.FromGrams(0.1),
///     clock: Duration.FromSeconds(0.1),
///     calibration: Ratio.FromPercent(0.3),
///     StaticReading.ByMass(Duration.FromSeconds(20), Mass.FromGrams(105.9)),
///     StaticReading.ByMass(Duration.FromSeconds(20), Mass.FromGrams(106.2)),
///     StaticReading.ByMass(Duration.FromSeconds(60), Mass.FromGrams(316.4)),
///     StaticReading.ByMass(Duration.FromSeconds(60), Mass.FromGrams(315.8)));
/// StaticFlow flow = StaticFlow.Of(test);
/// Console.WriteLine(flow);   // 461 mL/min (458 mL/min to 464 mL/min)
/// </code>
/// </example>
public sealed record StaticTest : IReadable
{
    private const int MinimumReadings = 3;

    private static readonly Identity<StaticTest> _identity = new Identity<StaticTest>()
        .Value(test => test.Name)
        .Value(test => test.Fluid)
        .Number(test => test.Differential.Pascals)
        .Number(test => test.Scale?.Kilograms)
        .Number(test => test.Graduation?.CubicMeters)
        .Number(test => test.Clock.Seconds)
        .Number(test => test.Calibration.DecimalFractions)
        .List(test => test.Readings);

    private StaticTest(
        string name, TestFluid fluid, Pressure differential, Mass? scale, Volume? graduation, Duration clock, Ratio calibration, StaticReading[] readings)
    {
        (Name, Fluid, Differential, Scale, Graduation) = (name, fluid, differential, scale, graduation);
        (Clock, Calibration, Readings) = (clock, calibration, Array.AsReadOnly(readings));
    }

    /// <summary>The injector's name.</summary>
    public string Name { get; }

    /// <summary>The liquid, with its density at the temperature of the test.</summary>
    public TestFluid Fluid { get; }

    /// <summary>Differential pressure of the test.</summary>
    public Pressure Differential { get; }

    /// <summary>Standard deviation of one weighing; none where a measuring cylinder was read.</summary>
    public Mass? Scale { get; }

    /// <summary>Standard deviation of one reading of the measuring cylinder; none where it was weighed.</summary>
    public Volume? Graduation { get; }

    /// <summary>Standard deviation of one time: the hand on the valve, the clock.</summary>
    public Duration Clock { get; }

    /// <summary>Standard deviation of what all readings have in common, as a share: the scale's calibration, half of what the pressure gauge is off by.</summary>
    public Ratio Calibration { get; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<StaticReading> Readings { get; }

    /// <summary>Describes a test with a scale.</summary>
    /// <param name="name">Of the injector; 1 to 80 characters.</param>
    /// <param name="fluid">The liquid, with its density at the temperature of the test.</param>
    /// <param name="differential">Differential pressure, 50 to 1,000 kPa.</param>
    /// <param name="scale">Standard deviation of one weighing, 0.1 mg to 100 g: reading the scale, drops left behind.</param>
    /// <param name="clock">Standard deviation of one time, 0 to 5 s: the hand on the valve; 0 where the bench times by itself.</param>
    /// <param name="calibration">Standard deviation of what all readings have in common, 0 to 10 %: the scale's calibration, and half of what the pressure gauge is off by.</param>
    /// <param name="readings">3 to 1,000 readings, weighed.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank, or a reading was not weighed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few readings.</exception>
    public static StaticTest ByMass(
        string name, TestFluid fluid, Pressure differential, Mass scale, Duration clock, Ratio calibration, params StaticReading[] readings) => Of(
            name,
            fluid,
            differential,
            Guard.Between(scale, Mass.FromMilligrams(0.1), Mass.FromGrams(100), "Give the standard deviation of one weighing.", nameof(scale)),
            null,
            clock,
            calibration,
            readings);

    /// <summary>Describes a test with a measuring cylinder.</summary>
    /// <param name="name">Of the injector; 1 to 80 characters.</param>
    /// <param name="fluid">The liquid, with its density at the temperature of the test.</param>
    /// <param name="differential">Differential pressure, 50 to 1,000 kPa.</param>
    /// <param name="graduation">Standard deviation of one reading of the cylinder, 0.001 to 100 mL: its graduation, what clings to the glass.</param>
    /// <param name="clock">Standard deviation of one time, 0 to 5 s: the hand on the valve; 0 where the bench times by itself.</param>
    /// <param name="calibration">Standard deviation of what all readings have in common, 0 to 10 %: the cylinder's calibration, and half of what the pressure gauge is off by.</param>
    /// <param name="readings">3 to 1,000 readings, by volume.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank, or a reading was weighed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or there are too few readings.</exception>
    public static StaticTest ByVolume(
        string name, TestFluid fluid, Pressure differential, Volume graduation, Duration clock, Ratio calibration, params StaticReading[] readings) => Of(
            name,
            fluid,
            differential,
            null,
            Guard.Between(graduation, Volume.FromMilliliters(0.001), Volume.FromMilliliters(100), "Give the standard deviation of one reading.", nameof(graduation)),
            clock,
            calibration,
            readings);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(StaticTest? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, conditions and number of readings.</summary>
    /// <returns>For instance <c>injector C held open at 300 kPa on n-heptane: 4 readings</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.static-test", $"{Name} held open at {Differential} on {Fluid.Name}: {Readings.Count} readings");

    /// <summary>Standard deviation of one collection, m³ of the test liquid.</summary>
    internal double Deviation => Graduation?.CubicMeters ?? (Scale!.Value / Fluid.Density).CubicMeters;

    private static StaticTest Of(
        string name, TestFluid fluid, Pressure differential, Mass? scale, Volume? graduation, Duration clock, Ratio calibration, StaticReading[] readings)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        ArgumentNullException.ThrowIfNull(readings);
        Guard.Count(readings.Length, MinimumReadings, 1000, "Collect three times or more: how far readings scatter, two do not show.", nameof(readings));
        foreach (StaticReading reading in readings)
        {
            ArgumentNullException.ThrowIfNull(reading, nameof(readings));
            if (reading.Weighed is null == scale is not null)
            {
                throw new ArgumentException(
                    $"{nameof(readings)} has {reading}, though the accuracy given is that of a {(scale is null ? "measuring cylinder" : "scale")}. Give all by mass or all by volume.",
                    nameof(readings));
            }
        }

        return new(
            Guard.Name(name, nameof(name)),
            fluid,
            Guard.Between(differential, PulseTest.MinimumDifferential, PulseTest.MaximumDifferential, "Give the pressure across the injector.", nameof(differential)),
            scale,
            graduation,
            Guard.Between(clock, Duration.Zero, Duration.FromSeconds(5), "Give the standard deviation of one time.", nameof(clock)),
            Guard.Between(
                calibration, Ratio.Zero, Ratio.FromPercent(10), "Give the standard deviation of what all readings have in common, as a share.", nameof(calibration)),
            [.. readings]);
    }
}
