using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>What changes with engine speed along a pull: target lambda, the compressor's efficiency, the cooler's effectiveness.</summary>
/// <remarks>
/// Each of them is given at every speed of the table or at none; one that is not given stays as <see cref="FuelConsumption"/> and
/// <see cref="Induction"/> have it. Between the speeds it is linear, beyond them there is no data. BSFC stays as it was stated, whatever
/// lambda is.
/// </remarks>
/// <example>
/// <code>
/// AlongSpeed table = AlongSpeed.Of(
///     SpeedRow.Of(RotationalSpeed.FromRevolutionsPerMinute(2500), lambda: 0.88, compressorEfficiency: Ratio.FromPercent(58)),
///     SpeedRow.Of(RotationalSpeed.FromRevolutionsPerMinute(5200), lambda: 0.83, compressorEfficiency: Ratio.FromPercent(67)),
///     SpeedRow.Of(RotationalSpeed.FromRevolutionsPerMinute(6700), lambda: 0.81, compressorEfficiency: Ratio.FromPercent(62)));
/// Console.WriteLine(table);   // by speed, 2,500 rev/min to 6,700 rev/min: lambda, compressor's efficiency
/// </code>
/// </example>
public sealed record AlongSpeed
{
    private static readonly Identity<AlongSpeed> _identity = new Identity<AlongSpeed>()
        .Numbers(table => table._speeds)
        .Value(table => table.Lambda)
        .Value(table => table.Compressor)
        .Value(table => table.Cooler);

    private readonly double[] _speeds;

    private AlongSpeed(double[] speeds, SpeedRow[] rows, Curve? lambda, Curve? compressor, Curve? cooler) =>
        (_speeds, Rows, Lambda, Compressor, Cooler) = (speeds, Array.AsReadOnly(rows), lambda, compressor, cooler);

    /// <summary>The rows, speeds rising.</summary>
    public IReadOnlyList<SpeedRow> Rows { get; }

    /// <summary>The lowest speed that the table covers.</summary>
    public RotationalSpeed MinimumSpeed => Rows[0].Speed;

    /// <summary>The highest speed that the table covers.</summary>
    public RotationalSpeed MaximumSpeed => Rows[^1].Speed;

    internal Curve? Lambda { get; }

    internal Curve? Compressor { get; }

    internal Curve? Cooler { get; }

    /// <summary>Speeds of the rows, rev/s.</summary>
    internal IReadOnlyList<double> Speeds => _speeds;

    /// <summary>Any of its curves, which all cover the same speeds.</summary>
    internal Curve Any => Lambda ?? Compressor ?? Cooler!;

    /// <summary>A table against engine speed.</summary>
    /// <param name="rows">
    /// Two to 200, speeds rising; lambda, the compressor's efficiency and the cooler's effectiveness each in all rows or in none, and one of them
    /// at least.
    /// </param>
    /// <returns>The table.</returns>
    /// <exception cref="ArgumentException">A column is given in some rows only, or no column is given.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The speeds do not rise, or there are too few or too many rows.</exception>
    public static AlongSpeed Of(params SpeedRow[] rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        Guard.Count(rows.Length, 2, 200, "Give the ends of the pull at least.", nameof(rows));
        double[] speeds = Guard.Rising(Array.ConvertAll(rows, row => row.Speed.RevolutionsPerSecond), nameof(rows));
        Curve? lambda = Column("lambda", row => row.Lambda);
        Curve? compressor = Column("the compressor's efficiency", row => row.CompressorEfficiency?.DecimalFractions);
        Curve? cooler = Column("the cooler's effectiveness", row => row.CoolerEffectiveness?.DecimalFractions);
        return lambda is null && compressor is null && cooler is null
            ? throw new ArgumentException("rows hold no figure beside the speed. Give lambda, the compressor's efficiency or the cooler's effectiveness.", nameof(rows))
            : new(speeds, [.. rows], lambda, compressor, cooler);

        Curve? Column(string name, Func<SpeedRow, double?> of)
        {
            double[] known = [.. rows.Select(of).OfType<double>()];
            return known.Length == 0 ? null
                : known.Length == rows.Length ? new(speeds, known, Interpolation.Linear)
                : throw new ArgumentException(
                    $"rows has {name} in {known.Length} of {rows.Length} rows. Give it in every row, or in none to leave it as described elsewhere.", nameof(rows));
        }
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(AlongSpeed? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The speeds covered, and what changes.</summary>
    /// <returns>For instance <c>by speed, 2,500 rev/min to 6,700 rev/min: lambda, compressor's efficiency</c>.</returns>
    public override string ToString()
    {
        string[] columns =
        [
            .. Lambda is null ? (string[])[] : ["lambda"],
            .. Compressor is null ? (string[])[] : ["compressor's efficiency"],
            .. Cooler is null ? (string[])[] : ["cooler's effectiveness"],
        ];
        return $"by speed, {Readable.Of(MinimumSpeed)} to {Readable.Of(MaximumSpeed)}: {string.Join(", ", columns)}";
    }
}

/// <summary>What holds at one engine speed.</summary>
public sealed record SpeedRow
{
    private static readonly Identity<SpeedRow> _identity = new Identity<SpeedRow>()
        .Number(row => row.Speed.RevolutionsPerSecond)
        .Number(row => row.Lambda)
        .Number(row => row.CompressorEfficiency?.DecimalFractions)
        .Number(row => row.CoolerEffectiveness?.DecimalFractions);

    private SpeedRow(RotationalSpeed speed, double? lambda, Ratio? compressor, Ratio? cooler) =>
        (Speed, Lambda, CompressorEfficiency, CoolerEffectiveness) = (speed, lambda, compressor, cooler);

    /// <summary>Of the crank.</summary>
    public RotationalSpeed Speed { get; }

    /// <summary>Target lambda; none where it does not change with speed.</summary>
    public double? Lambda { get; }

    /// <summary>Isentropic efficiency of the compressor; none where it does not change with speed.</summary>
    public Ratio? CompressorEfficiency { get; }

    /// <summary>Effectiveness of the charge cooler; none where it does not change with speed.</summary>
    public Ratio? CoolerEffectiveness { get; }

    /// <summary>A row of a table by speed.</summary>
    /// <param name="speed">Engine speed, 100 to 25,000 rev/min.</param>
    /// <param name="lambda">Target lambda, 0.6 to 1.2; none where it does not change.</param>
    /// <param name="compressorEfficiency">Isentropic, 30 to 90 %; none where it does not change.</param>
    /// <param name="coolerEffectiveness">0 to 95 %; none where it does not change.</param>
    /// <returns>The row.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SpeedRow Of(
        RotationalSpeed speed, double? lambda = null, Ratio? compressorEfficiency = null, Ratio? coolerEffectiveness = null) => new(
            EngineSpeed.Checked(speed, nameof(speed)),
            lambda is { } target
                ? Guard.Number(target, 0.6, 1.2, "Give air–fuel ratio ÷ stoichiometric ratio, not the ratio itself.", nameof(lambda))
                : null,
            compressorEfficiency is { } efficiency ? Induction.WithinEfficiency(efficiency, nameof(compressorEfficiency)) : null,
            coolerEffectiveness is { } effectiveness ? Induction.WithinEffectiveness(effectiveness, nameof(coolerEffectiveness)) : null);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SpeedRow? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The speed, and what holds there.</summary>
    /// <returns>For instance <c>2,500 rev/min: lambda 0.880, compressor 58 %</c>.</returns>
    public override string ToString() => $"{Readable.Of(Speed)}: {string.Join(", ", Figures())}";

    private IEnumerable<string> Figures()
    {
        if (Lambda is { } lambda)
        {
            yield return FormattableString.Invariant($"lambda {lambda:0.000}");
        }

        if (CompressorEfficiency is { } compressor)
        {
            yield return $"compressor {Readable.Of(compressor)}";
        }

        if (CoolerEffectiveness is { } cooler)
        {
            yield return $"cooler {Readable.Of(cooler)}";
        }
    }
}
