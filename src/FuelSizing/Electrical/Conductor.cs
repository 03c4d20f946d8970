using System.Globalization;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>One core of a wire: how thick, of what, and so how much it resists.</summary>
/// <remarks>
/// Resistance of a length: R_w = ρ_e (1 + α_e (θ − 20 °C)) · (1 + k_l) l_w/A, with the resistivity ρ20 and its temperature
/// coefficient α of the metal, the conductor's temperature t, length L and area A, and the extra length k of the twisted
/// strands.
/// </remarks>
public sealed record Conductor : IReadable
{
    private static readonly Identity<Conductor> _identity = new Identity<Conductor>()
        .Value(conductor => conductor.Name)
        .Number(conductor => conductor.SquareMetres)
        .Value(conductor => conductor.Material)
        .Number(conductor => conductor._ohmsPerMetreAt20);

    private const int ThinnestGauge = 24;

    private readonly double _ohmsPerMetreAt20;

    private Conductor(
        string name, double area, ConductorMaterial material, double ohmsPerMetreAt20, ConductorSize size)
    {
        Size = new(size);
        Name = name;
        SquareMetres = area;
        Area = Area.FromSquareMeters(area);
        Diameter = Length.FromMeters((double)RoundWire.Diameter<Real>(area));
        Material = material;
        _ohmsPerMetreAt20 = ohmsPerMetreAt20;
    }

    /// <summary>
    /// The strands' extra length, 2 %: the standard increment of stranded copper (ASTM B496; the stranded rows of NEC
    /// chapter 9, table 8 hold the same).
    /// </summary>
    public static Ratio DefaultLay { get; } = Ratio.FromPercent(2);

    /// <summary>The gauge or the nominal area, for instance <c>AWG 12</c> or <c>2.5 mm²</c>.</summary>
    public string Name { get; }

    /// <summary>Area of the metal: the gauge's, or the nominal one.</summary>
    public Area Area { get; }

    /// <summary>Diameter of the solid round wire of that area; the stranded core is thicker.</summary>
    public Length Diameter { get; }

    /// <summary>The metal.</summary>
    public ConductorMaterial Material { get; }

    internal double SquareMetres { get; }

    internal Given<ConductorSize> Size { get; }

    /// <summary>
    /// A stranded conductor of the American wire gauge: d = 0.127 mm · 92^((36 − n)/39) (ASTM B258), with
    /// <see cref="DefaultLay"/>. Vehicle wire sold by SAE gauge holds 5 to 11 % less metal than the AWG of that number:
    /// describe it by <see cref="OfArea"/>.
    /// </summary>
    /// <param name="gauge">n, from 24 (thin) to 0 (thick, written 1/0).</param>
    /// <param name="material">Copper unless given.</param>
    /// <returns>The conductor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is outside its range.</exception>
    public static Conductor Awg(int gauge, ConductorMaterial? material = null) =>
        OfGauge(
            Guard.Count(
                gauge,
                0,
                ThinnestGauge,
                "Give the gauge number; for 2/0 to 4/0 give the count of zeros to AwgZeros.",
                nameof(gauge)),
            material ?? ConductorMaterial.Copper);

    /// <summary>A stranded conductor of the American wire gauge thicker than 1/0.</summary>
    /// <param name="zeros">Count of zeros: 2 for 2/0, to 4 for 4/0.</param>
    /// <param name="material">Copper unless given.</param>
    /// <returns>The conductor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is outside its range.</exception>
    public static Conductor AwgZeros(int zeros, ConductorMaterial? material = null) =>
        OfGauge(
            1 - Guard.Count(zeros, 2, 4, "Give 2 for 2/0, 3 for 3/0 or 4 for 4/0.", nameof(zeros)),
            material ?? ConductorMaterial.Copper);

    /// <summary>
    /// A flexible copper conductor of a standard nominal area, with the highest resistance that IEC 60228 allows it
    /// (class 5, plain copper).
    /// </summary>
    /// <param name="nominal">0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70 or 95 mm².</param>
    /// <returns>The conductor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The area is not a standard one.</exception>
    public static Conductor Metric(Area nominal)
    {
        foreach ((double size, double ohmsPerKilometre) in MetricSizes.All)
        {
            if (Math.Abs(nominal.SquareMillimeters - size) < 1e-6)
            {
                return OfMetric(size, ohmsPerKilometre);
            }
        }

        throw Guard.OutOfRange(
            nameof(nominal),
            Readable.Of(nominal),
            string.Join(", ", MetricSizes.All.Select(size => Readable.Of(Area.FromSquareMillimeters(size.SquareMillimetres)))),
            "Give a standard nominal area, or the metal's own area to OfArea.");
    }

    /// <summary>A conductor by the area of its metal, for instance from its data sheet or from strands counted and measured.</summary>
    /// <param name="area">Of the metal, 0.2 to 120 mm².</param>
    /// <param name="material">Copper or aluminium.</param>
    /// <param name="lay">Extra length of the strands, 0 to 10 %; see <see cref="DefaultLay"/>. Zero for a solid wire.</param>
    /// <returns>The conductor.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Conductor OfArea(Area area, ConductorMaterial material, Ratio lay)
    {
        ArgumentNullException.ThrowIfNull(material);
        Guard.Between(
            area,
            Area.FromSquareMillimeters(0.2),
            Area.FromSquareMillimeters(120),
            "Give the area of the metal, without insulation.",
            nameof(area));
        Guard.Between(
            lay, Ratio.Zero, Ratio.FromPercent(10), "Give the extra length of the strands; 2 % is typical.", nameof(lay));
        return new(
            Readable.Of(area),
            area.SquareMeters,
            material,
            PerMetre(area.SquareMeters, material, lay.DecimalFractions),
            new() { Area = area, Lay = lay });
    }

    /// <summary>Resistance of a length: R_w = ρ_e (1 + α_e (θ − 20 °C)) · (1 + k_l) l_w/A.</summary>
    /// <param name="length">L, one way, 0 to 100 m.</param>
    /// <param name="temperature">t, of the metal, −40 to 150 °C.</param>
    /// <returns>Resistance to direct current.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public ElectricResistance ResistanceOf(Length length, Temperature temperature) =>
        ElectricResistance.FromOhms(OhmsOf(
            WithinLength(length, nameof(length)).Meters,
            WithinTemperature(temperature, nameof(temperature)).DegreesCelsius));

    /// <summary>The name.</summary>
    /// <returns>For instance <c>AWG 12</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);

        // A gauge is a name; an area is a figure.
        string name = Size.Value.Gauge is null ? style.Of(Area) : Name;
        return ReferenceEquals(Material, ConductorMaterial.Copper) ? name : $"{name} {Material.Name}";
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Conductor? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal static Conductor OfGauge(int gauge, ConductorMaterial material)
    {
        double area = RoundWire.Area(AmericanWireGauge.Diameter<Real>(gauge));
        string name = gauge > 0
            ? string.Create(CultureInfo.InvariantCulture, $"AWG {gauge}")
            : string.Create(CultureInfo.InvariantCulture, $"AWG {1 - gauge}/0");
        return new(
            name, area, material, PerMetre(area, material, DefaultLay.DecimalFractions), new() { Gauge = gauge });
    }

    internal static Conductor OfMetric(double squareMillimetres, double ohmsPerKilometre)
    {
        Area area = Area.FromSquareMillimeters(squareMillimetres);
        return new(
            Readable.Of(area),
            area.SquareMeters,
            ConductorMaterial.Copper,
            ohmsPerKilometre / 1000,
            new() { Nominal = area });
    }

    /// <summary>A stranded conductor of a nominal area that need not be a standard one, with the most that a standard one of it might resist.</summary>
    /// <remarks>
    /// The standard's highest resistance is up to 16 % over that of solid copper of the nominal area, at some sizes less: the most of all sizes
    /// is taken, so that a standard size at least as large resists no more. Of other metals no list is kept, and the default lay counts.
    /// </remarks>
    internal static Conductor OfNominal(Area area, ConductorMaterial material) => ReferenceEquals(material, ConductorMaterial.Copper)
        ? new(Readable.Of(area), area.SquareMeters, material, MetricSizes.MaximumOhmSquareMetresPerMetre / area.SquareMeters, new() { Nominal = area })
        : OfArea(area, material, DefaultLay);

    internal static Length WithinLength(Length length, string name) =>
        Guard.Between(length, Length.Zero, Length.FromMeters(100), "Give the length of the wire as it runs.", name);

    internal static Temperature WithinTemperature(Temperature temperature, string name) =>
        Guard.Between(
            temperature,
            Temperature.FromDegreesCelsius(-40),
            Temperature.FromDegreesCelsius(150),
            "Give the temperature of the metal: a loaded wire is warmer than the air around it, at most its insulation's rating.",
            name);

    internal double OhmsOf(double metres, double celsius) => WireResistance.Of<Real>(OhmsPerMetreAt(celsius), metres);

    internal double OhmsPerMetreAt(double celsius) =>
        WireResistance.AtTemperature<Real>(_ohmsPerMetreAt20, Material.TemperatureCoefficient, celsius);

    private static double PerMetre(double area, ConductorMaterial material, double lay) =>
        WireResistance.PerLength<Real>(material.Resistivity.OhmMeters, lay, area);
}

/// <summary>The metal of a conductor.</summary>
public sealed record ConductorMaterial
{
    private static readonly Identity<ConductorMaterial> _identity = new Identity<ConductorMaterial>()
        .Value(material => material.Name)
        .Number(material => material.Resistivity.OhmMeters)
        .Number(material => material.TemperatureCoefficient);

    private ConductorMaterial(string name, double resistivity, double coefficient) =>
        (Name, Resistivity, TemperatureCoefficient) = (name, ElectricResistivity.FromOhmMeters(resistivity), coefficient);

    /// <summary>
    /// Annealed copper: 17.241 nΩ·m at 20 °C and 0.00393/K, the International Annealed Copper Standard (IEC 60028; NBS
    /// Handbook 100).
    /// </summary>
    public static ConductorMaterial Copper { get; } = new("copper", 1.7241e-8, 0.00393);

    /// <summary>
    /// Aluminium for conductors: 61 % of copper's conductivity, which is 28.264 nΩ·m at 20 °C, and 0.00403/K (Industrial
    /// Power Engineering and Applications Handbook, properties of metals for current carrying). Copper-clad aluminium is
    /// often sold in place of copper: it has nearly this resistance, not copper's.
    /// </summary>
    public static ConductorMaterial Aluminium { get; } = new("aluminium", 2.8264e-8, 0.00403);

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Resistivity at 20 °C.</summary>
    public ElectricResistivity Resistivity { get; }

    /// <summary>Relative rise of the resistance for each kelvin, at 20 °C, 1/K.</summary>
    public double TemperatureCoefficient { get; }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(ConductorMaterial? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>The name.</summary>
    /// <returns>For instance <c>copper</c>.</returns>
    public override string ToString() =>
        Name;
}

/// <summary>How a conductor's size was given: one of its gauge, its nominal area, or the metal's own area with the lay.</summary>
internal sealed record ConductorSize
{
    /// <summary>American wire gauge; below zero for 2/0 (−1) to 4/0 (−3).</summary>
    public int? Gauge { get; init; }

    /// <summary>A standard nominal area.</summary>
    public Area? Nominal { get; init; }

    /// <summary>The metal's own area.</summary>
    public Area? Area { get; init; }

    /// <summary>The strands' extra length, with the metal's own area.</summary>
    public Ratio? Lay { get; init; }
}
