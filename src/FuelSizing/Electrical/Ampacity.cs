using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>The current that a conductor may carry without its insulation passing its temperature rating.</summary>
/// <remarks>
/// <para>
/// Source: 33 CFR 183.425, table 5, for insulated, stranded copper in low-voltage systems of boats, stated for 30 °C.
/// In hotter surroundings the current falls by F = √((t_c − t_a)/(t_c − 30 °C)), with the rating t_c of the table's column
/// and the surroundings' temperature t_a, rounded down to hundredths: the law behind the correction factors of the
/// regulation's engine spaces and of NEC 310.15(B). Cooler surroundings earn nothing.
/// </para>
/// <para>
/// In a bundle, sheath or conduit each conductor heats its neighbours: of three loaded conductors each may carry 70 %, of 4 to 6 60 %, of 7 to
/// 24 50 %, of more 40 % (note 2 of the table). The regulation demands it from 50 V on (33 CFR 183.435); heat does not ask for the voltage, so
/// that it counts here at any. A wire by itself, or beside its own return, keeps all. It covers neither wires lagged or buried in insulation,
/// nor aluminium, nor anything thinner than AWG 18; it replaces neither local codes nor a licensed practitioner.
/// </para>
/// </remarks>
public sealed class Ampacity : IReadable
{
    private Ampacity(ElectricCurrent? current, Statement text) => (Current, Text) = (current, text);

    /// <summary>The current that the conductor may carry; none where the source does not cover it.</summary>
    public ElectricCurrent? Current { get; }

    /// <summary>How the current was found, or why it is not covered.</summary>
    public Statement Text { get; }

    /// <summary>The current in A: 0 where the surroundings are too hot for any, not a number where the source does not cover the wire.</summary>
    internal double Amperes => Current?.Amperes ?? (IsTooHot ? 0 : double.NaN);

    private bool IsTooHot { get; init; }

    /// <summary>The current that a conductor may carry.</summary>
    /// <param name="conductor">
    /// The wire. A size between two of the table, as every metric size is, is held to the thinner.
    /// </param>
    /// <param name="insulationRating">
    /// Highest temperature of the insulation as printed on the wire or in its data sheet, 0 to 300 °C; the table's next
    /// lower column is used (60, 75, 80, 90, 105 or 125 °C).
    /// </param>
    /// <param name="ambient">Hottest surroundings along the run, −40 to 200 °C; beside an engine, measure it.</param>
    /// <param name="bundled">
    /// Current-carrying conductors that run together in the bundle, sheath or conduit, this one and returns included, 1 to 1,000. One or two:
    /// the wire by itself, or beside its own return.
    /// </param>
    /// <returns>The current, or the reason why it is not covered.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    /// <example>
    /// <code>
    /// Ampacity free = Ampacity.Of(Conductor.Awg(12), Temperature.FromDegreesCelsius(105), ambient: Temperature.FromDegreesCelsius(60));
    /// Ampacity bundled = Ampacity.Of(Conductor.Awg(12), Temperature.FromDegreesCelsius(105), ambient: Temperature.FromDegreesCelsius(60), bundled: 4);
    /// Console.WriteLine(bundled.Current &lt; free.Current);   // True
    /// </code>
    /// </example>
    public static Ampacity Of(Conductor conductor, Temperature insulationRating, Temperature ambient, int bundled = 1)
    {
        ArgumentNullException.ThrowIfNull(conductor);
        double rating = Guard.Between(
            insulationRating,
            Temperature.FromDegreesCelsius(0),
            Temperature.FromDegreesCelsius(300),
            "Give the insulation's temperature rating as printed on the wire.",
            nameof(insulationRating)).DegreesCelsius;
        double surroundings = Guard.Between(
            ambient,
            Temperature.FromDegreesCelsius(-40),
            Temperature.FromDegreesCelsius(200),
            "Give the hottest surroundings along the run.",
            nameof(ambient)).DegreesCelsius;
        double bundle = AmpacityTable.BundleFactor(WithinBundle(bundled, nameof(bundled)));
        int column = Column(rating);
        if (!ReferenceEquals(conductor.Material, ConductorMaterial.Copper))
        {
            return NotCovered(Statement.Of("ampacity.copper-only", $"the source holds copper only, not {conductor.Material.Name}"));
        }

        if (AmpacityTable.RowFor(conductor) is not { } row)
        {
            return NotCovered(Statement.Of(
                "ampacity.too-thin", $"{conductor} is thinner than {AmpacityTable.Rows[0].Conductor}, where the source begins"));
        }

        if (column < 0)
        {
            return NotCovered(Statement.Of(
                "ampacity.insulation-too-low",
                $"insulation for {insulationRating} is below the source's lowest, {Temperature.FromDegreesCelsius(AmpacityTable.Ratings[0])}"));
        }

        double columnRating = AmpacityTable.Ratings[column];
        double factor = Math.Floor(
            100 * CurrentRating.AmbientFactor<Real>(columnRating, surroundings, AmpacityTable.AmbientCelsius)) / 100;
        Temperature held = Temperature.FromDegreesCelsius(columnRating);
        if (factor <= 0)
        {
            return NotCovered(
                Statement.Of("ampacity.too-hot", $"surroundings of {ambient} leave nothing of insulation for {held}"), isTooHot: true);
        }

        ElectricCurrent stated = ElectricCurrent.FromAmperes(row.Amperes[column]);
        ElectricCurrent current = ElectricCurrent.FromAmperes(CurrentRating.Derated<Real>(stated.Amperes, factor, bundle).Value);
        return new(
            current,
            bundle < 1
            ? Statement.Of(
                "ampacity.found-bundled",
                $"{conductor}: {current} in {ambient} ({row.Conductor} with insulation for {held}: {stated} × {Ratio.FromDecimalFractions(factor)} × {Ratio.FromDecimalFractions(bundle)} as one of {bundled} in a bundle; {AmpacityTable.Source}).")
            : Statement.Of(
                "ampacity.found",
                $"{conductor}: {current} in {ambient} ({row.Conductor} with insulation for {held}: {stated} × {Ratio.FromDecimalFractions(factor)}; {AmpacityTable.Source})."));
    }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>How the current was found, or why it is not covered.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => Text.ToString();

    internal static int WithinBundle(int conductors, string name) => Guard.Count(
        conductors, 1, 1000, "Give the count of all current-carrying conductors in the bundle, sheath or conduit, this one and returns included.", name);

    private static Ampacity NotCovered(Statement reason, bool isTooHot = false) =>
        new(null, Statement.Of("ampacity.not-covered", $"Not covered: {reason} ({AmpacityTable.Source}).")) { IsTooHot = isTooHot };

    /// <summary>The hottest column that the insulation reaches; below zero if none.</summary>
    private static int Column(double rating)
    {
        int column = -1;
        while (column + 1 < AmpacityTable.Ratings.Count && AmpacityTable.Ratings[column + 1] <= rating + 1e-9)
        {
            column++;
        }

        return column;
    }
}

/// <summary>
/// Allowable current of insulated, stranded copper conductors in surroundings of 30 °C, by size and by temperature rating
/// of the insulation: 33 CFR 183.425, table 5 (US Coast Guard, boats; its 200 °C column left out).
/// </summary>
/// <remarks>
/// Chosen because it is written for low-voltage direct current in single wires that run partly beside an engine, is law
/// and public. The building code's table (NEC 310.16) is for three loaded wires in a raceway, gives less, and starts at
/// AWG 14; "chassis wiring" tables of electronics handbooks name neither insulation nor surroundings.
/// </remarks>
internal static class AmpacityTable
{
    /// <summary>Surroundings for which the table is stated, °C.</summary>
    public const double AmbientCelsius = 30;

    /// <summary>Where the table stands, for results.</summary>
    public const string Source = "33 CFR 183.425, table 5";

    /// <summary>Temperature ratings of the columns, °C.</summary>
    public static IReadOnlyList<double> Ratings { get; } = [60, 75, 80, 90, 105, 125];

    /// <summary>From how many current-carrying conductors in a bundle on which share of the ampacity is left: note 2 of the table.</summary>
    public static IReadOnlyList<(int Conductors, double Share)> Bundles { get; } = [(1, 1), (3, 0.7), (4, 0.6), (7, 0.5), (25, 0.4)];

    /// <summary>Share of the ampacity that is left in a bundle.</summary>
    public static double BundleFactor(int conductors) => Bundles.Last(bundle => bundle.Conductors <= conductors).Share;

    /// <summary>Gauge (0 is 1/0, −1 is 2/0 and so on), conductor, and amperes for each rating, thin to thick.</summary>
    public static IReadOnlyList<(Conductor Conductor, IReadOnlyList<double> Amperes)> Rows { get; } =
    [
        Row(18, 10, 10, 15, 20, 20, 25),
        Row(16, 15, 15, 20, 25, 25, 30),
        Row(14, 20, 20, 25, 30, 35, 40),
        Row(12, 25, 25, 35, 40, 45, 50),
        Row(10, 40, 40, 50, 55, 60, 70),
        Row(8, 55, 65, 70, 70, 80, 90),
        Row(6, 80, 95, 100, 100, 120, 125),
        Row(4, 105, 125, 130, 135, 160, 170),
        Row(3, 120, 145, 150, 155, 180, 195),
        Row(2, 140, 170, 175, 180, 210, 225),
        Row(1, 165, 195, 210, 210, 245, 265),
        Row(0, 195, 230, 245, 245, 285, 305),
        Row(-1, 225, 265, 285, 285, 330, 355),
        Row(-2, 260, 310, 330, 330, 385, 410),
        Row(-3, 300, 360, 385, 385, 445, 475),
    ];

    /// <summary>The thickest row that is no thicker than the conductor; none if all are thicker.</summary>
    public static (Conductor Conductor, IReadOnlyList<double> Amperes)? RowFor(Conductor conductor)
    {
        (Conductor, IReadOnlyList<double>)? found = null;
        foreach ((Conductor Conductor, IReadOnlyList<double> Amperes) row in Rows)
        {
            // The same gauge entered by its area in rounded figures is still that gauge.
            if (row.Conductor.SquareMetres <= conductor.SquareMetres * 1.0001)
            {
                found = row;
            }
        }

        return found;
    }

    private static (Conductor, IReadOnlyList<double>) Row(int gauge, params double[] amperes) =>
        (Conductor.OfGauge(gauge, ConductorMaterial.Copper), amperes);
}
