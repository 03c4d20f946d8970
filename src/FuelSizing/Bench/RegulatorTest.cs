using FuelSizing.Engines;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>Rail pressure as a gauge shows it, with a pressure applied to the regulator's reference.</summary>
public sealed record RegulatorGaugeReading : IReadable
{
    private static readonly Identity<RegulatorGaugeReading> _identity = new Identity<RegulatorGaugeReading>()
        .Number(reading => reading.Applied.Pascals)
        .Number(reading => reading.RailGauge.Pascals)
        .Number(reading => reading.Returned?.CubicMetersPerSecond);

    private RegulatorGaugeReading(Pressure applied, Pressure railGauge, VolumeFlow? returned) => (Applied, RailGauge, Returned) = (applied, railGauge, returned);

    /// <summary>Pressure at the reference, gauge: of the manifold or of a hand pump.</summary>
    public Pressure Applied { get; }

    /// <summary>Pressure in the rail, gauge.</summary>
    public Pressure RailGauge { get; }

    /// <summary>Flow that returns through the regulator, if it was measured.</summary>
    public VolumeFlow? Returned { get; }

    /// <summary>Describes a reading.</summary>
    /// <param name="applied">Pressure at the reference, gauge, −95 to 400 kPa: manifold or hand pump.</param>
    /// <param name="railGauge">Pressure in the rail, gauge, 0 to 2,500 kPa.</param>
    /// <param name="returned">Flow that returns through the regulator, 0 to 500 L/h; none if it was not measured.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static RegulatorGaugeReading Of(Pressure applied, Pressure railGauge, VolumeFlow? returned = null) => new(
        ManifoldPressure.Within(applied, nameof(applied)),
        Guard.Between(railGauge, Pressure.Zero, Pressure.FromKilopascals(2500), "Give the gauge pressure in the rail.", nameof(railGauge)),
        returned is { } flow
            ? Guard.Between(flow, VolumeFlow.Zero, VolumeFlow.FromLitersPerHour(500), "Give the flow that returns through the regulator.", nameof(returned))
            : null);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RegulatorGaugeReading? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Applied and rail pressure.</summary>
    /// <returns>For instance <c>0.40 bar applied: 460 kPa</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Returned is { } flow
        ? Statement.Of("bench.regulator-reading-flow", $"{Applied:boost} applied: {RailGauge}, {flow:pump-flow} returned")
        : Statement.Of("bench.regulator-reading", $"{Applied:boost} applied: {RailGauge}");
}

/// <summary>A regulator or a rising-rate unit whose rail pressure was read at several pressures applied to its reference.</summary>
/// <remarks>
/// <para>Fuel under pressure sprays: hoses, clamps and gauge rated for the highest pressure that the unit may set (a gain of 6 adds 600 kPa for each bar), raised in steps and watched from the side; no ignition sources, ventilation, goggles, an
/// extinguisher within reach. A hand pump in place of boost needs no running engine. Local codes and a licensed practice take precedence.</para>
/// <para>Read from 0 (hose off) upwards and down again: six pressures or more, at least three of them over 0 and some on either side of where the gain sets in. The pump must deliver more than the engine burns, or
/// the regulator is shut and the gauge shows the pump.</para>
/// </remarks>
/// <example>
/// <code>
/// (double Applied, double Rail)[] read =
///     [(0, 301), (5, 305), (10, 311), (20, 339), (30, 402), (40, 461), (50, 519), (60, 581), (45, 491), (25, 371), (15, 315), (0, 299)];
/// RegulatorTest test = RegulatorTest.Of(
///     "unit Q",
///     followsManifold: true,
///     rail: GaugeAccuracy.Of(reading: Pressure.FromKilopascals(2), zero: Pressure.FromKilopascals(1), span: Ratio.FromPercent(0.5)),
///     applied: GaugeAccuracy.Of(reading: Pressure.FromKilopascals(0.3), zero: Pressure.FromKilopascals(0.2), span: Ratio.FromPercent(0.5)),
///     [.. read.Select(point => RegulatorGaugeReading.Of(Pressure.FromKilopascals(point.Applied), Pressure.FromKilopascals(point.Rail)))]);
/// RegulatorTestFit fit = RegulatorTestFit.Of(test);
/// Console.WriteLine(fit);   // unit Q: base 300 kPa (296 kPa to 304 kPa), gain 6.00 (5.83 to 6.18) from 0.16 bar (0.15 bar to 0.17 bar)
/// PressureRegulator? regulator = fit.Regulator;
/// </code>
/// </example>
public sealed record RegulatorTest : IReadable
{
    private static readonly Identity<RegulatorTest> _identity = new Identity<RegulatorTest>()
        .Value(test => test.Name)
        .Value(test => test.FollowsManifold)
        .Value(test => test.Rail)
        .Value(test => test.Applied)
        .List(test => test.Readings);

    private const int MinimumPressures = 4;
    private const int MinimumOver = 3;

    private RegulatorTest(string name, bool followsManifold, GaugeAccuracy rail, GaugeAccuracy applied, RegulatorGaugeReading[] readings) =>
        (Name, FollowsManifold, Rail, Applied, Readings) = (name, followsManifold, rail, applied, Array.AsReadOnly(readings));

    /// <summary>The regulator's name.</summary>
    public string Name { get; }

    /// <summary>True if the regulator at the rail is piped to the applied pressure and follows it one for one where no gain acts; false if it knows nothing of it.</summary>
    public bool FollowsManifold { get; }

    /// <summary>How accurate the gauge at the rail is.</summary>
    public GaugeAccuracy Rail { get; }

    /// <summary>How accurate the gauge of the applied pressure is.</summary>
    public GaugeAccuracy Applied { get; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<RegulatorGaugeReading> Readings { get; }

    /// <summary>Describes a test.</summary>
    /// <param name="name">Of the regulator; 1 to 80 characters.</param>
    /// <param name="followsManifold">
    /// True if the regulator at the rail is piped to the applied pressure, so that it follows it one for one where no gain acts; false if the rail stays the same there, as with a rising-rate unit in series with a
    /// regulator that is not piped.
    /// </param>
    /// <param name="rail">How accurate the gauge at the rail is.</param>
    /// <param name="applied">How accurate the gauge of the applied pressure is.</param>
    /// <param name="readings">6 to 500, in any order, at four applied pressures or more, three of them over 0; the returned flow with all of them or none.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank; the applied pressures are too few; or some readings have a returned flow and others have none.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are too few readings.</exception>
    public static RegulatorTest Of(string name, bool followsManifold, GaugeAccuracy rail, GaugeAccuracy applied, params RegulatorGaugeReading[] readings)
    {
        ArgumentNullException.ThrowIfNull(rail);
        ArgumentNullException.ThrowIfNull(applied);
        ArgumentNullException.ThrowIfNull(readings);
        Guard.Count(readings.Length, 6, 500, "Read at six applied pressures or more, from 0 upwards and down again.", nameof(readings));
        foreach (RegulatorGaugeReading reading in readings)
        {
            ArgumentNullException.ThrowIfNull(reading, nameof(readings));
        }

        double[] pressures = [.. readings.Select(reading => reading.Applied.Pascals).Distinct()];
        int over = pressures.Count(pressure => pressure > 0);
        if (pressures.Length < MinimumPressures || over < MinimumOver)
        {
            throw new ArgumentException(
                $"{nameof(readings)} are of {pressures.Length} applied pressures, {over} of them over 0: base, gain and onset cannot be told apart. Read at 0, at some below the onset and at three or more over it.",
                nameof(readings));
        }

        int measured = readings.Count(reading => reading.Returned is not null);
        return measured == 0 || measured == readings.Length
            ? new(Guard.Name(name, nameof(name)), followsManifold, rail, applied, [.. readings])
            : throw new ArgumentException($"{nameof(readings)} has the returned flow of {measured} of {readings.Length}. Give it of all, or of none.", nameof(readings));
    }

    /// <summary>The same test without some of its readings: those that were found to be blunders.</summary>
    /// <param name="places">Places in <see cref="Readings"/>, from 0.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The applied pressures that are left are too few.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such place, or too few readings are left.</exception>
    public RegulatorTest Without(params int[] places) => Of(Name, FollowsManifold, Rail, Applied, [.. BenchPlaces.Without(Readings, places)]);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(RegulatorTest? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and number of readings.</summary>
    /// <returns>For instance <c>unit Q: 12 readings of rail pressure</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.regulator-test", $"{Name}: {Readings.Count} readings of rail pressure");
}
