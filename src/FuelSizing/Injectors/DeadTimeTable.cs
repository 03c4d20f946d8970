using System.Runtime.CompilerServices;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>
/// Dead time of an injector against supply voltage and differential pressure: the part of the pulse in which no fuel
/// flows, opening delay less closing delay.
/// </summary>
/// <remarks>
/// Between the points it is monotone along voltage and linear along pressure. Beyond them it gives no data: a colder
/// battery or a higher rail pressure than was measured needs measured points.
/// </remarks>
public sealed record DeadTimeTable
{
    private static readonly Identity<DeadTimeTable> _identity = new Identity<DeadTimeTable>()
        .Numbers(table => table._differentials)
        .List(table => table._byVoltage);

    private readonly Curve[] _byVoltage;
    private readonly double[] _differentials;

    private DeadTimeTable(Curve[] byVoltage, double[] differentials, DeadTimePoint[] points) =>
        (_byVoltage, _differentials, Points) = (byVoltage, differentials, points);

    /// <summary>
    /// True if the table was measured at one pressure only and is taken to hold at every other, an estimate: dead time
    /// grows with differential pressure.
    /// </summary>
    public bool IgnoresPressure => _differentials.Length == 0;

    /// <summary>The points as they were given, differentials and in each the voltages rising.</summary>
    internal IReadOnlyList<DeadTimePoint> Points { get; }

    /// <summary>What the table covers, in words: its voltages, and its differential pressures where it has several.</summary>
    public Statement Coverage
    {
        get
        {
            ElectricPotential low = ElectricPotential.FromVolts(_byVoltage[0].First);
            ElectricPotential high = ElectricPotential.FromVolts(_byVoltage[0].Last);
            return IgnoresPressure
                ? Statement.Of("dead-time.covers-voltages", $"{low} to {high}")
                : Statement.Of(
                    "dead-time.covers",
                    $"{low} to {high}, {Pressure.FromPascals(_differentials[0])} to {Pressure.FromPascals(_differentials[^1])}");
        }
    }

    /// <summary>A table over voltage and differential pressure.</summary>
    /// <param name="voltages">Two or more, rising, 5 to 20 V.</param>
    /// <param name="differentials">Two or more, rising, 50 to 2,000 kPa.</param>
    /// <param name="times">
    /// A row for each differential pressure, in it a time for each voltage: 0 to 5 ms, never longer at a higher voltage.
    /// </param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentException">The rows do not match the voltages and pressures.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or out of order.</exception>
    public static DeadTimeTable Of(
        IReadOnlyList<ElectricPotential> voltages,
        IReadOnlyList<Pressure> differentials,
        IReadOnlyList<IReadOnlyList<Duration>> times)
    {
        ArgumentNullException.ThrowIfNull(voltages);
        ArgumentNullException.ThrowIfNull(differentials);
        ArgumentNullException.ThrowIfNull(times);
        double[] pascals = [.. differentials.Select(p => WithinDifferential(p, nameof(differentials)).Pascals)];
        Guard.Count(pascals.Length, 2, 100, "Use ByVoltage for a table at one pressure.", nameof(differentials));
        for (int row = 1; row < pascals.Length; row++)
        {
            if (pascals[row] <= pascals[row - 1])
            {
                throw Guard.OutOfRange(
                    nameof(differentials),
                    Readable.Of(differentials[row]),
                    $"over the {Readable.Of(differentials[row - 1])} before it",
                    "Sort the pressures and their rows.");
            }
        }

        if (times.Count != pascals.Length)
        {
            throw new ArgumentException(
                $"times had {times.Count} rows for {pascals.Length} differential pressures; give one row for each.",
                nameof(times));
        }

        return new(
            times.Select(row => Row(voltages, row, nameof(voltages), nameof(times))).ToArray(),
            pascals,
            [.. times.SelectMany((row, at) => row.Zip(voltages, (time, voltage) => new DeadTimePoint(voltage, differentials[at], time)))]);
    }

    /// <summary>
    /// A table over voltage alone, measured at one pressure and taken to hold at all: results carry a note that it is an
    /// estimate.
    /// </summary>
    /// <param name="points">Two or more, voltages rising, 5 to 20 V; times 0 to 5 ms, never longer at a higher voltage.</param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or out of order.</exception>
    public static DeadTimeTable ByVoltage(params (ElectricPotential Voltage, Duration Time)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        return new(
            [
                Row(
                    [.. points.Select(point => point.Voltage)],
                    [.. points.Select(point => point.Time)],
                    nameof(points),
                    nameof(points)),
            ],
            [],
            Array.ConvertAll(points, point => new DeadTimePoint(point.Voltage, null, point.Time)));
    }

    /// <summary>The dead time at a voltage and differential pressure.</summary>
    /// <param name="voltage">At the injector, within the table.</param>
    /// <param name="differential">Across the injector, within the table.</param>
    /// <returns>The dead time.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The table does not cover the point.</exception>
    public Duration At(ElectricPotential voltage, Pressure differential)
    {
        if (TryAt(voltage, differential, out Duration time))
        {
            return time;
        }

        bool offVoltage = !_byVoltage[0].Covers(voltage.Volts);
        throw Guard.OutOfRange(
            offVoltage ? nameof(voltage) : nameof(differential),
            offVoltage ? Readable.Of(voltage) : Readable.Of(differential),
            $"within {Coverage}",
            "The dead-time table covers no more; extend it by measured points.");
    }

    /// <summary>The dead time, if the table covers the point.</summary>
    /// <param name="voltage">At the injector.</param>
    /// <param name="differential">Across the injector.</param>
    /// <param name="time">The dead time; zero where the answer is false.</param>
    /// <returns>True if the table covers the point.</returns>
    public bool TryAt(ElectricPotential voltage, Pressure differential, out Duration time)
    {
        bool covered = TryAt(voltage.Volts, differential.Pascals, out double seconds);
        time = Duration.FromSeconds(seconds);
        return covered;
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(DeadTimeTable? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The range covered.</summary>
    /// <returns>For instance <c>dead time, 8.0 to 16.0 V, 100 kPa to 600 kPa</c>.</returns>
    public override string ToString() =>
        $"dead time, {Coverage}";

    /// <summary>The same table with so many s more everywhere, or less, never under zero.</summary>
    internal DeadTimeTable Later(double seconds)
    {
        double Shifted(double time) => Math.Max(0, time + seconds);
        return new(
            Array.ConvertAll(_byVoltage, row => new Curve(
                [.. row.Points.Select(point => point.X)], [.. row.Points.Select(point => Shifted(point.Y))], Interpolation.Monotone)),
            _differentials,
            [.. Points.Select(point => point with { Time = Duration.FromSeconds(Shifted(point.Time.Seconds)) })]);
    }

    /// <summary>The rows between which a differential pressure lies, with their pressures, Pa; one twice where the table has one pressure, or has this very one.</summary>
    internal ((double Pascals, Curve Row) Under, (double Pascals, Curve Row) Over) RowsAround(double pascals)
    {
        if (IgnoresPressure)
        {
            return ((double.NaN, _byVoltage[0]), (double.NaN, _byVoltage[0]));
        }

        double inside = Math.Clamp(pascals, _differentials[0], _differentials[^1]);
        int upper = Array.FindIndex(_differentials, differential => differential >= inside);
        int lower = _differentials[upper] == inside ? upper : upper - 1;
        return ((_differentials[lower], _byVoltage[lower]), (_differentials[upper], _byVoltage[upper]));
    }

    internal bool TryAt(double volts, double pascals, out double seconds)
    {
        seconds = 0;
        if (!_byVoltage[0].Covers(volts))
        {
            return false;
        }

        if (IgnoresPressure)
        {
            seconds = _byVoltage[0].At(volts);
            return true;
        }

        (double minimum, double maximum) = (_differentials[0], _differentials[^1]);
        double inside = Math.Clamp(pascals, minimum, maximum);
        if (Math.Abs(pascals - inside) > Curve.EndTolerance * (maximum - minimum))
        {
            return false;
        }

        int upper = 1;
        while (_differentials[upper] < inside)
        {
            upper++;
        }

        seconds = StraightLine.Through<Real>(
            _differentials[upper - 1],
            _byVoltage[upper - 1].At(volts),
            _differentials[upper],
            _byVoltage[upper].At(volts),
            inside);
        return true;
    }

    /// <summary>Dead time at the covered place that is nearest to a voltage and a differential pressure.</summary>
    internal double Nearest(double volts, double pascals)
    {
        double inside = Math.Clamp(volts, _byVoltage[0].First, _byVoltage[0].Last);
        return TryAt(inside, IgnoresPressure ? pascals : Math.Clamp(pascals, _differentials[0], _differentials[^1]), out double seconds)
            ? seconds
            : throw new InvalidOperationException($"{this} does not cover a place of its own.");
    }

    /// <summary>The table's row over differential pressure at one voltage; null where it does not cover the voltage.</summary>
    internal DeadTimeRow? RowAt(double volts) =>
        _byVoltage[0].Covers(volts)
            ? IgnoresPressure
                ? new(null, _byVoltage[0].At(volts))
                : new(new(_differentials, Array.ConvertAll(_byVoltage, row => row.At(volts)), Interpolation.Linear), 0)
            : null;

    internal static ElectricPotential WithinVoltage(ElectricPotential voltage, string name) =>
        Guard.Between(
            voltage,
            ElectricPotential.FromVolts(5),
            ElectricPotential.FromVolts(20),
            "Give the supply voltage at the injector.",
            name);

    internal static Pressure WithinDifferential(Pressure differential, string name) =>
        Guard.Between(
            differential,
            Pressure.FromKilopascals(50),
            Pressure.FromKilopascals(2000),
            "Give the pressure across the injector.",
            name);

    internal static Duration WithinTime(Duration time, string name) =>
        Guard.Between(
            time, Duration.Zero, Duration.FromMilliseconds(5), "Give the dead time, not the whole pulse.", name);

    private static Curve Row(
        IReadOnlyList<ElectricPotential> voltages, IReadOnlyList<Duration> times, string voltagesName, string timesName)
    {
        ArgumentNullException.ThrowIfNull(times, timesName);
        if (times.Count != voltages.Count)
        {
            throw new ArgumentException(
                $"{timesName} had a row of {times.Count} for {voltages.Count} voltages; give one time for each.", timesName);
        }

        double[] seconds = [.. times.Select(time => WithinTime(time, timesName).Seconds)];
        for (int point = 1; point < seconds.Length; point++)
        {
            if (seconds[point] > seconds[point - 1])
            {
                throw Guard.OutOfRange(
                    timesName,
                    Readable.Of(times[point]),
                    $"at most {Readable.Of(times[point - 1])}, the time at the voltage below",
                    "An injector opens no later at a higher voltage; check the row.");
            }
        }

        return new(
            Guard.Rising([.. voltages.Select(voltage => WithinVoltage(voltage, voltagesName).Volts)], voltagesName),
            seconds,
            Interpolation.Monotone);
    }
}

/// <summary>A measured point of a dead-time table.</summary>
/// <param name="Voltage">At the injector.</param>
/// <param name="Differential">Across the injector; none in a table at one pressure.</param>
/// <param name="Time">The dead time.</param>
internal readonly record struct DeadTimePoint(ElectricPotential Voltage, Pressure? Differential, Duration Time);

/// <summary>Dead time against differential pressure at one voltage, for many points at once.</summary>
/// <param name="Curve">Against differential pressure in Pa; null where the table holds at all pressures.</param>
/// <param name="Time">At all pressures where there is no curve, s.</param>
internal sealed record DeadTimeRow(Curve? Curve, double Time)
{
    /// <summary>Dead times, s; not a number where the table does not cover the pressure.</summary>
    /// <param name="differential">Pa; a whole number of vectors.</param>
    /// <param name="into">Where to write them.</param>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void At<T>(ReadOnlySpan<double> differential, Span<double> into)
        where T : struct, ILanes<T>, IReal<T>
    {
        if (Curve is null)
        {
            into.Fill(Time);
            return;
        }

        Curve.At<T>(differential, into);
        double beyond = Curve.EndTolerance * (Curve.Last - Curve.First);
        T under = Curve.First - beyond;
        T over = Curve.Last + beyond;
        T none = double.NaN;
        for (int at = 0; at < differential.Length; at += T.Count)
        {
            T given = T.From(differential[at..]);
            T.IfLess(over, given, none, T.IfLess(given, under, none, T.From(into[at..]))).CopyTo(into[at..]);
        }
    }
}
