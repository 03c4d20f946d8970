namespace FuelSizing.Electrical;

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
