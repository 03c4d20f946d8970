using CsCheck;
using FuelSizing.Electrical;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Electrical;

public class ConductorTests
{
    private static readonly Gen<int> Gauges = Gen.Int[0, 24];

    /// <summary>Sources: ASTM B258 fixes 4/0 at 0.4600 in and gauge 36 at 0.0050 in.</summary>
    [Fact(DisplayName = "AWG diameter at both ends of the scale; ASTM B258")]
    public void Diameter_AtTheEndsOfTheGauge_IsItsDefinition()
    {
        Published.Value(Works.AstmB258.At("AWG 4/0"), 0.4600, Conductor.AwgZeros(4).Diameter.Inches, 1e-9);
        Published.Value(Works.AstmB258.At("AWG 36"), 0.0050, AmericanWireGauge.Diameter<Real>(36) / 0.0254, 1e-9);
    }

    /// <summary>
    /// Sources: T. Floyd, Electric Circuit Fundamentals, wire table, as given on hyperphysics.phy-astr.gsu.edu (wirega):
    /// solid wire, diameter in inches and ohm per 1000 ft at 20 °C; areas of AWG 10 from NBS Handbook 100.
    /// </summary>
    [Theory(DisplayName = "Solid copper wire, diameter and resistance by AWG size")]
    [InlineData(8, 0.12849, 0.6282)]
    [InlineData(10, 0.10189, 0.9989)]
    [InlineData(12, 0.0808, 1.588)]
    [InlineData(14, 0.06408, 2.525)]
    [InlineData(16, 0.05082, 4.016)]
    [InlineData(18, 0.0403, 6.385)]
    [InlineData(20, 0.03196, 10.15)]
    public void Solid_OfEachGauge_IsTheWireTables(int gauge, double inches, double ohmsPerThousandFeet)
    {
        Conductor awg = Conductor.Awg(gauge);
        Published.Value(Works.Floyd, inches, awg.Diameter.Inches, 1e-3);
        Conductor solid = Conductor.OfArea(awg.Area, ConductorMaterial.Copper, Ratio.Zero);
        Published.Value(Works.Floyd, ohmsPerThousandFeet, ThousandFeet(solid, 20), 5e-4);
    }

    /// <summary>Source: NBS Handbook 100, Copper Wire Tables (1966): AWG 10 is 5.26 mm² and 3.277 Ω/km, AWG 12 5.211 Ω/km.</summary>
    [Fact(DisplayName = "Solid copper wire, AWG 10 and 12, area and resistance")]
    public void Solid_OfTenAndTwelve_IsTheHandbooks()
    {
        Published.Value(Works.NbsHandbook100, 5.26, Conductor.Awg(10).Area.SquareMillimeters, 1e-3);
        Published.Value(Works.NbsHandbook100, 3.277, Kilometre(Solid(10, ConductorMaterial.Copper), 20), 2e-4);
        Published.Value(Works.NbsHandbook100, 5.211, Kilometre(Solid(12, ConductorMaterial.Copper), 20), 2e-4);
    }

    /// <summary>
    /// Source: NEC chapter 9, table 8 (sfasoft.com, Conductor Properties): uncoated copper and aluminium, stranded, ohm per
    /// 1000 ft at 75 °C. It holds area, strands' lay, resistivity and temperature coefficient of both metals together;
    /// printed to three figures, the smallest sizes to 0.4 %.
    /// </summary>
    [Theory(DisplayName = "Stranded wire at 75 °C, resistance by AWG size; NEC")]
    [InlineData(18, 7.95, 13.1)]
    [InlineData(16, 4.99, 8.21)]
    [InlineData(14, 3.14, 5.17)]
    [InlineData(12, 1.98, 3.25)]
    [InlineData(10, 1.24, 2.04)]
    [InlineData(8, 0.778, 1.28)]
    [InlineData(6, 0.491, 0.808)]
    [InlineData(4, 0.308, 0.508)]
    [InlineData(2, 0.194, 0.319)]
    [InlineData(1, 0.154, 0.253)]
    [InlineData(0, 0.122, 0.201)]
    public void Stranded_At75C_IsTheElectricalCodes(int gauge, double copper, double aluminium)
    {
        Published.Value(Works.NecTable8.At("stranded copper"), copper, ThousandFeet(Conductor.Awg(gauge), 75), 0.005);
        Published.Value(Works.NecTable8.At("stranded aluminium"), aluminium, ThousandFeet(Conductor.Awg(gauge, ConductorMaterial.Aluminium), 75), 0.005);
    }

    /// <summary>Source: NEC chapter 9, table 8, solid copper at 75 °C (sfasoft.com): AWG 10 1.21, AWG 12 1.93 ohm per 1000 ft.</summary>
    [Fact(DisplayName = "Solid copper wire at 75 °C, resistance; NEC")]
    public void Solid_At75C_IsTheElectricalCodes()
    {
        Published.Value(Works.NecTable8.At("solid copper"), 1.21, ThousandFeet(Solid(10, ConductorMaterial.Copper), 75), 0.005);
        Published.Value(Works.NecTable8.At("solid copper"), 1.93, ThousandFeet(Solid(12, ConductorMaterial.Copper), 75), 0.005);
    }

    /// <summary>
    /// Source: FAA AC 43.13-1B, paragraph 11-66: copper's run length at equal drop is shortened by 254.5/(234.5 + t).
    /// </summary>
    [Fact]
    public void Resistance_OfHotCopper_RisesAsTheAviationCircularSays() =>
        Gen.Double[-20, 150].Sample(celsius =>
        {
            double rise = Kilometre(Conductor.Awg(10), celsius) / Kilometre(Conductor.Awg(10), 20);
            return Math.Abs(rise - ((234.5 + celsius) / 254.5)) < 2e-4;
        });

    /// <summary>Source: IEC 60228, class 5, plain copper, maximum Ω/km at 20 °C (mycableengineering.com, etechnik-synergie.com).</summary>
    [Fact]
    public void Metric_OfEachSize_HasTheStandardsMaximumResistance()
    {
        (double Size, double Ohms)[] table =
        [
            (0.5, 39), (0.75, 26), (1, 19.5), (1.5, 13.3), (2.5, 7.98), (4, 4.95), (6, 3.3), (10, 1.91), (16, 1.21),
            (25, 0.78), (35, 0.554), (50, 0.386), (70, 0.272), (95, 0.206),
        ];
        foreach ((double size, double ohms) in table)
        {
            Conductor metric = Conductor.Metric(Area.FromSquareMillimeters(size));
            Assert.Equal(ohms, Kilometre(metric, 20), ohms * 1e-12);

            // Between nominal copper and 16 % over it: the remark on metric sizes.
            double nominal = Kilometre(
                Conductor.OfArea(Area.FromSquareMillimeters(size), ConductorMaterial.Copper, Ratio.Zero), 20);
            Assert.InRange(ohms / nominal, 1.0, 1.16);
        }
    }

    [Fact]
    public void Resistance_OfThickerOrShorterOrCoolerWire_IsLess() =>
        Gen.Select(Gen.Int[0, 23], Gen.Double[0.1, 40], Gen.Double[-40, 140], Gen.Double[0.01, 10])
            .Sample((gauge, metres, celsius, more) =>
            {
                ElectricResistance at = Of(gauge, metres, celsius);
                return Of(gauge + 1, metres, celsius) > at
                    && Of(gauge, metres + more, celsius) > at
                    && Of(gauge, metres, celsius + more) > at;
            });

    [Fact]
    public void Area_OfAGaugeThreeStepsThicker_IsAboutDouble() =>
        Gen.Int[3, 24].Sample(gauge =>
            Math.Abs((Conductor.Awg(gauge - 3).Area / Conductor.Awg(gauge).Area) - Math.Pow(92, 2.0 / 13)) < 1e-12);

    [Fact]
    public void Diameter_OfTheAreaOfADiameter_IsThatDiameter() =>
        Gen.Double[1e-5, 0.02].Sample(metres =>
            Math.Abs(RoundWire.Diameter<Real>(RoundWire.Area<Real>(metres)) - metres) < 1e-15);

    [Fact]
    public void Equations_InABatch_GiveWhatTheyGiveAlone() =>
        Gen.Double[-3, 36].Array[Lanes.Count].Sample(gauges =>
        {
            double[] together = new double[Lanes.Count];
            RoundWire.Diameter(RoundWire.Area(AmericanWireGauge.Diameter(Lanes.From(gauges)))).CopyTo(together);
            for (int i = 0; i < gauges.Length; i++)
            {
                double alone = RoundWire.Diameter(RoundWire.Area(AmericanWireGauge.Diameter<Real>(gauges[i])));
                Assert.Equal(alone, together[i], 1e-14 * alone);
            }
        });

    [Fact]
    public void Units_OfLengthAndTemperature_DoNotMatter() =>
        Gen.Select(Gauges, Gen.Double[0.1, 300], Gen.Double[-30, 300]).Sample((gauge, feet, fahrenheit) =>
        {
            double imperial = Conductor.Awg(gauge)
                .ResistanceOf(Length.FromFeet(feet), Temperature.FromDegreesFahrenheit(fahrenheit)).Ohms;
            return Math.Abs(imperial - Of(gauge, feet * 0.3048, (fahrenheit - 32) / 1.8).Ohms) <= 1e-12 * imperial;
        });

    [Fact]
    public void Name_OfEachKind_IsTheTrades()
    {
        Assert.Equal("AWG 12", Conductor.Awg(12).ToString());
        Assert.Equal("AWG 1/0", Conductor.Awg(0).ToString());
        Assert.Equal("AWG 4/0", Conductor.AwgZeros(4).ToString());
        Assert.Equal("2.5 mm²", Conductor.Metric(Area.FromSquareMillimeters(2.5)).ToString());
        Assert.Equal("AWG 8 aluminium", Conductor.Awg(8, ConductorMaterial.Aluminium).ToString());
    }

    [Fact]
    public void Metric_OfAnAreaBetweenSizes_IsRefusedWithTheSizes() =>
        Assert.Contains(
            "1.5 mm², 2.5 mm², 4 mm²",
            Assert.Throws<ArgumentOutOfRangeException>(() => Conductor.Metric(Area.FromSquareMillimeters(3))).Message,
            StringComparison.Ordinal);

    private static Conductor Solid(int gauge, ConductorMaterial material) =>
        Conductor.OfArea(Conductor.Awg(gauge).Area, material, Ratio.Zero);

    private static ElectricResistance Of(int gauge, double metres, double celsius) =>
        Conductor.Awg(gauge).ResistanceOf(Length.FromMeters(metres), Temperature.FromDegreesCelsius(celsius));

    private static double ThousandFeet(Conductor conductor, double celsius) =>
        10 * conductor.ResistanceOf(Length.FromFeet(100), Temperature.FromDegreesCelsius(celsius)).Ohms;

    private static double Kilometre(Conductor conductor, double celsius) =>
        1000 * conductor.ResistanceOf(Length.FromMeters(1), Temperature.FromDegreesCelsius(celsius)).Ohms;

    [Fact]
    public void Conductor_OfNonsense_IsRefusedByName()
    {
        static Conductor Of(double squareMillimetres, ConductorMaterial material, double lay) =>
            Conductor.OfArea(Area.FromSquareMillimeters(squareMillimetres), material, Ratio.FromPercent(lay));
        Refused.Missing("material", () => Of(2, null!, 2));
        Refused.OutOfRange("area", () => Of(0.19, ConductorMaterial.Copper, 2));
        Refused.OutOfRange("area", () => Of(121, ConductorMaterial.Copper, 2));
        Refused.OutOfRange("lay", () => Of(2, ConductorMaterial.Copper, -0.1));
        Refused.OutOfRange("lay", () => Of(2, ConductorMaterial.Copper, 10.1));
    }

    [Fact]
    public void AwgZeros_OfAluminium_IsOfAluminium()
    {
        Assert.Equal(ConductorMaterial.Aluminium, Conductor.AwgZeros(2, ConductorMaterial.Aluminium).Material);
        Assert.Equal(ConductorMaterial.Copper, Conductor.AwgZeros(2).Material);
    }
}
