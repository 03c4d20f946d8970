using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>The pressure that a pump reached with its outlet shut.</summary>
public sealed record DeadheadReading : IReadable
{
    private static readonly Identity<DeadheadReading> _identity = new Identity<DeadheadReading>()
        .Number(reading => reading.Voltage.Volts)
        .Number(reading => reading.PressureRise.Pascals)
        .Value(reading => reading.IsGaugeEnd);

    private DeadheadReading(ElectricPotential voltage, Pressure rise, bool isGaugeEnd) => (Voltage, PressureRise, IsGaugeEnd) = (voltage, rise, isGaugeEnd);

    /// <summary>Voltage at the pump's terminals.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>Pressure rise over the pump, with nothing delivered; where the gauge ended, its end.</summary>
    public Pressure PressureRise { get; }

    /// <summary>True where the gauge ended there, or the test was stopped there: the pump would have gone on.</summary>
    public bool IsGaugeEnd { get; }

    /// <summary>Describes a reading.</summary>
    /// <param name="voltage">At the pump's terminals, 5 to 30 V: not at the supply.</param>
    /// <param name="rise">Pressure rise over the pump with its outlet shut, 0 to 2,000 kPa.</param>
    /// <param name="isGaugeEnd">True where the gauge ended there, or the test was stopped there to spare hose or pump.</param>
    /// <returns>The reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static DeadheadReading Of(ElectricPotential voltage, Pressure rise, bool isGaugeEnd = false) =>
        new(PumpCurve.WithinVoltage(voltage, nameof(voltage)), PumpCurve.WithinRise(rise, nameof(rise)), isGaugeEnd);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(DeadheadReading? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Voltage and pressure.</summary>
    /// <returns>For instance <c>13.5 V: 690 kPa</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => IsGaugeEnd
        ? Statement.Of("bench.deadhead-reading-end", $"{Voltage}: {PressureRise} or more, the end of the gauge")
        : Statement.Of("bench.deadhead-reading", $"{Voltage}: {PressureRise}");
}

/// <summary>A pump with its outlet shut: the pressure at which it delivers nothing, which is its own or that of a relief valve.</summary>
/// <remarks>
/// <para>Danger: a pump that delivers nothing heats the fuel in it and may fail within a minute; a hose or clamp that is rated for less bursts and sprays. Two or three seconds a reading, hose, gauge and
/// clamps rated for twice the pressure that is expected (common practice, no source), the pump's own fuse fitted, goggles, no ignition sources, and the pump cold again before the next reading. A pump without a relief valve,
/// above all one that displaces, may have no pressure at which it stops: open the valve again at what the hose is rated for, and say so (<see cref="DeadheadReading.IsGaugeEnd"/>).</para>
/// </remarks>
/// <example>
/// <code>
/// DeadheadReading At(double volts, double kilopascals) => DeadheadReading.Of(ElectricPotential.FromVolts(volts), Pressure.FromKilopascals(kilopascals));
/// DeadheadTest test = DeadheadTest.Of(
///     "pump S",
///     GaugeAccuracy.Of(reading: Pressure.FromKilopascals(4), zero: Pressure.FromKilopascals(2), span: Ratio.FromPercent(0.5)),
///     At(12, 688), At(12, 694), At(12, 690), At(13.5, 693), At(13.5, 689), At(13.5, 695));
/// DeadheadFit fit = DeadheadFit.Of(test);
/// Console.WriteLine(fit);   // pump S: a relief valve opens at 692 kPa (683 kPa to 701 kPa)
/// </code>
/// </example>
public sealed record DeadheadTest : IReadable
{
    private static readonly Identity<DeadheadTest> _identity = new Identity<DeadheadTest>()
        .Value(test => test.Name)
        .Value(test => test.Gauge)
        .List(test => test.Readings);

    private const int MinimumReadings = 3;

    private DeadheadTest(string name, GaugeAccuracy gauge, DeadheadReading[] readings) => (Name, Gauge, Readings) = (name, gauge, Array.AsReadOnly(readings));

    /// <summary>The pump's name.</summary>
    public string Name { get; }

    /// <summary>How accurate the pressure gauge is.</summary>
    public GaugeAccuracy Gauge { get; }

    /// <summary>The readings.</summary>
    public IReadOnlyList<DeadheadReading> Readings { get; }

    /// <summary>Describes a test.</summary>
    /// <param name="name">Of the pump; 1 to 80 characters.</param>
    /// <param name="gauge">How accurate the pressure gauge is.</param>
    /// <param name="readings">3 to 200, at each voltage three or more unless its gauge ended.</param>
    /// <returns>The test.</returns>
    /// <exception cref="ArgumentException">The name is blank, or a voltage has too few readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are too few readings.</exception>
    public static DeadheadTest Of(string name, GaugeAccuracy gauge, params DeadheadReading[] readings)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        ArgumentNullException.ThrowIfNull(readings);
        Guard.Count(readings.Length, MinimumReadings, 200, "Read three times or more, some seconds each.", nameof(readings));
        foreach (DeadheadReading reading in readings)
        {
            ArgumentNullException.ThrowIfNull(reading, nameof(readings));
        }

        foreach (DeadheadReading[] voltage in readings.GroupBy(reading => Math.Round(reading.Voltage.Millivolts)).Select(voltage => voltage.ToArray()))
        {
            if (voltage.Length < MinimumReadings && !voltage.Any(reading => reading.IsGaugeEnd))
            {
                throw new ArgumentException(
                    $"{nameof(readings)} has {voltage.Length} at {Readable.Of(voltage[0].Voltage)}: how much they scatter is not known. Read {MinimumReadings} times or more at each voltage.", nameof(readings));
            }
        }

        return new(Guard.Name(name, nameof(name)), gauge, [.. readings]);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(DeadheadTest? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name and number of readings.</summary>
    /// <returns>For instance <c>pump S, outlet shut: 6 readings</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>The same as a code with its figures.</summary>
    public Statement Text => Statement.Of("bench.deadhead-test", $"{Name}, outlet shut: {Readings.Count} readings");
}

/// <summary>At which pressure a pump delivers nothing, by the voltage, and whether a relief valve sets it.</summary>
/// <remarks>
/// <para>A pump's own pressure without flow grows at least in proportion to its voltage, by the affinity laws with the square of its speed; a relief valve opens at one pressure whatever the voltage. Two voltages
/// tell them apart, where the gauge is accurate enough.</para>
/// <para>Intervals hold the truth in 95 of 100 tests: Student's t by the readings of all voltages, and the gauge's own error, which all share. Where the gauge ended there is a lower bound and no upper one.</para>
/// </remarks>
public sealed class DeadheadFit : IReadable
{
    private DeadheadFit(DeadheadTest test, DeadheadPoint[] points, bool? isRelief) => (Test, Points, IsReliefValve) = (test, Array.AsReadOnly(points), isRelief);

    /// <summary>The test.</summary>
    public DeadheadTest Test { get; }

    /// <summary>The pressure at each voltage, voltages rising.</summary>
    public IReadOnlyList<DeadheadPoint> Points { get; }

    /// <summary>True where the pressure is the same at both ends of the voltages, which a pump's own is not; false where it grows with voltage; none where readings do not tell, or are of one voltage.</summary>
    public bool? IsReliefValve { get; }

    /// <summary>What was found at the highest voltage, as a code with its figures.</summary>
    public Statement Text => (Points[^1].PressureRise, IsReliefValve) switch
    {
        (null, _) => Statement.Of("bench.deadhead-beyond", $"{Test.Name}: over {Points[^1].MinimumPressureRise:pressure:down} at {Points[^1].Voltage}, where the gauge ended"),
        (_, true) => Statement.Of("bench.deadhead-relief", $"{Test.Name}: a relief valve opens at {Between}"),
        (_, false) => Statement.Of("bench.deadhead-own", $"{Test.Name}: delivers nothing against {Between} at {Points[^1].Voltage}, more at a higher voltage"),
        _ => Statement.Of("bench.deadhead", $"{Test.Name}: delivers nothing against {Between} at {Points[^1].Voltage}, by itself or by a relief valve"),
    };

    private Statement Between => Points[^1].Range;

    /// <summary>Calculates pressures and intervals.</summary>
    /// <param name="test">The readings.</param>
    /// <returns>The fit.</returns>
    public static DeadheadFit Of(DeadheadTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        DeadheadReading[][] voltages = [.. test.Readings.GroupBy(reading => Math.Round(reading.Voltage.Millivolts)).OrderBy(voltage => voltage.Key).Select(voltage => voltage.ToArray())];
        DeadheadReading[][] whole = [.. voltages.Where(voltage => !voltage.Any(reading => reading.IsGaugeEnd))];
        DeadheadReading[] read = [.. whole.SelectMany(voltage => voltage)];
        PooledMeans? pooled = whole.Length == 0
            ? null
            : PooledMeans.Of(
                [.. read.Select(reading => reading.PressureRise.Pascals)],
                [.. read.Select(_ => test.Gauge.Reading.Pascals)],
                [.. read.Select(reading => Array.FindIndex(whole, voltage => voltage.Contains(reading)))]);
        DeadheadPoint[] points =
        [
            .. voltages.Select(voltage => Array.IndexOf(whole, voltage) is >= 0 and int place
                ? DeadheadPoint.Within(voltage[0].Voltage, pooled!.Means[place], pooled.Half(place, test.Gauge.SharedPascals(pooled.Means[place])))
                : DeadheadPoint.Over(voltage[0].Voltage, voltage.Max(reading => reading.PressureRise.Pascals), PooledMeans.StatedReach, test.Gauge)),
        ];
        return new(test, points, whole.Length < 2 ? null : IsRelief(points.First(point => point.PressureRise is not null), points.Last(point => point.PressureRise is not null), pooled!, whole.Length));
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>What was found at the highest voltage.</summary>
    /// <returns>For instance <c>pump S: a relief valve opens at 692 kPa (683 kPa to 701 kPa)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    // The gauge's own error is in both ends alike.
    private static bool? IsRelief(DeadheadPoint low, DeadheadPoint high, PooledMeans pooled, int count)
    {
        (double from, double to) = (low.PressureRise!.Value.Pascals, high.PressureRise!.Value.Pascals);
        double off = pooled.Reach * Math.Sqrt(Math.Pow(pooled.Deviations[0], 2) + Math.Pow(pooled.Deviations[count - 1], 2));
        double own = from * ((high.Voltage.Volts / low.Voltage.Volts) - 1);
        return (to - from > off, to - from + off < own) switch
        {
            (false, true) => true,
            (true, false) => false,
            _ => null,
        };
    }
}

/// <summary>The pressure without flow at one voltage.</summary>
public sealed class DeadheadPoint : IReadable
{
    private DeadheadPoint(ElectricPotential voltage, double? pascals, double minimum, double? maximum) => (Voltage, PressureRise, MinimumPressureRise, MaximumPressureRise) = (
        voltage,
        pascals is { } found ? Pressure.FromPascals(found).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal) : null,
        Pressure.FromPascals(Math.Max(0, minimum)).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal),
        maximum is { } most ? Pressure.FromPascals(most).ToUnit(UnitsNet.Units.PressureUnit.Kilopascal) : null);

    internal static DeadheadPoint Within(ElectricPotential voltage, double pascals, double half) => new(voltage, pascals, pascals - half, pascals + half);

    internal static DeadheadPoint Over(ElectricPotential voltage, double end, double reach, GaugeAccuracy gauge) =>
        new(voltage, null, end - (reach * Math.Sqrt(Math.Pow(gauge.SharedPascals(end), 2) + Math.Pow(gauge.Reading.Pascals, 2))), null);

    /// <summary>Voltage at the pump's terminals.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>Pressure rise with nothing delivered; none where the gauge ended.</summary>
    public Pressure? PressureRise { get; }

    /// <summary>Lower end of its interval of 95 %: what a supply may count on.</summary>
    public Pressure MinimumPressureRise { get; }

    /// <summary>Upper end: what hoses must bear; none where the gauge ended.</summary>
    public Pressure? MaximumPressureRise { get; }

    /// <summary>Voltage and pressure, as a code with its figures.</summary>
    public Statement Text => PressureRise is null
        ? Statement.Of("bench.deadhead-point-beyond", $"{Voltage}: over {MinimumPressureRise:pressure:down}")
        : Statement.Of("bench.deadhead-point", $"{Voltage}: {Range}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>Voltage and pressure.</summary>
    /// <returns>For instance <c>13.5 V: 692 kPa (683 kPa to 701 kPa)</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    internal Statement Range => Statement.Of("bench.deadhead-range", $"{PressureRise!.Value} ({MinimumPressureRise} to {MaximumPressureRise!.Value})");
}
