using CsCheck;
using FuelSizing.Electrical;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using UnitsNet;

namespace FuelSizing.Tests.Electrical;

public class AmpacityTests
{
    /// <summary>Source: 33 CFR 183.425, table 5, 60, 75, 80, 90, 105 and 125 °C, as printed by federal.elaws.us.</summary>
    [Theory]
    [InlineData("AWG 18", 10, 10, 15, 20, 20, 25)]
    [InlineData("AWG 16", 15, 15, 20, 25, 25, 30)]
    [InlineData("AWG 14", 20, 20, 25, 30, 35, 40)]
    [InlineData("AWG 12", 25, 25, 35, 40, 45, 50)]
    [InlineData("AWG 10", 40, 40, 50, 55, 60, 70)]
    [InlineData("AWG 8", 55, 65, 70, 70, 80, 90)]
    [InlineData("AWG 6", 80, 95, 100, 100, 120, 125)]
    [InlineData("AWG 4", 105, 125, 130, 135, 160, 170)]
    [InlineData("AWG 3", 120, 145, 150, 155, 180, 195)]
    [InlineData("AWG 2", 140, 170, 175, 180, 210, 225)]
    [InlineData("AWG 1", 165, 195, 210, 210, 245, 265)]
    [InlineData("AWG 1/0", 195, 230, 245, 245, 285, 305)]
    [InlineData("AWG 2/0", 225, 265, 285, 285, 330, 355)]
    [InlineData("AWG 3/0", 260, 310, 330, 330, 385, 410)]
    [InlineData("AWG 4/0", 300, 360, 385, 385, 445, 475)]
    public void Current_AtThirtyDegrees_IsTheRegulations(
        string name, double at60, double at75, double at80, double at90, double at105, double at125)
    {
        Conductor[] gauges =
        [
            .. Enumerable.Range(0, 25).Select(gauge => Conductor.Awg(gauge)),
            .. Enumerable.Range(2, 3).Select(zeros => Conductor.AwgZeros(zeros)),
        ];
        Conductor conductor = gauges.Single(gauge => gauge.Name == name);
        double[] ratings = [60, 75, 80, 90, 105, 125];
        Assert.Equal([at60, at75, at80, at90, at105, at125], ratings.Select(rating => Amperes(conductor, rating, 30)));
    }

    /// <summary>
    /// Source: the regulation's own engine-space column for 105 °C insulation at 50 °C, seen in a
    /// reprint (18: 17, 16: 21, 14: 30, 12: 38, 10: 51, 8: 68, 6: 102 A), rounded there to whole amperes.
    /// </summary>
    [Theory]
    [InlineData(18, 17)]
    [InlineData(16, 21)]
    [InlineData(14, 30)]
    [InlineData(12, 38)]
    [InlineData(10, 51)]
    [InlineData(8, 68)]
    [InlineData(6, 102)]
    [InlineData(4, 136)]
    public void Current_InAnEngineSpace_IsTheRegulations(int gauge, double amperes) =>
        Assert.Equal(amperes, Of(Conductor.Awg(gauge), 105, 50).Current!.Value.Amperes, 0.5);

    /// <summary>
    /// Source: NEC table 310.15(B)(2)(a), ambient correction factors at the upper end of each band, 60, 75 and 90 °C
    /// columns, seen in a reprint.
    /// </summary>
    [Theory]
    [InlineData(35, 0.91, 0.94, 0.96)]
    [InlineData(40, 0.82, 0.88, 0.91)]
    [InlineData(45, 0.71, 0.82, 0.87)]
    [InlineData(50, 0.58, 0.75, 0.82)]
    [InlineData(55, 0.41, 0.67, 0.76)]
    public void Factor_ForHotterSurroundings_IsTheElectricalCodes(double ambient, double at60, double at75, double at90)
    {
        Assert.Equal(at60, CurrentRating.AmbientFactor<Real>(60, ambient, 30), 0.00501);
        Assert.Equal(at75, CurrentRating.AmbientFactor<Real>(75, ambient, 30), 0.00501);
        Assert.Equal(at90, CurrentRating.AmbientFactor<Real>(90, ambient, 30), 0.00501);
    }

    [Fact]
    public void Current_InHotterSurroundings_IsNeverMore() =>
        Gen.Select(Gen.Int[0, 18], Gen.Double[60, 150], Gen.Double[-40, 190], Gen.Double[0, 10])
            .Sample((gauge, rating, ambient, more) =>
                Amperes(Conductor.Awg(gauge), rating, ambient + more) <= Amperes(Conductor.Awg(gauge), rating, ambient));

    [Fact]
    public void Current_OfThickerWireOrBetterInsulation_IsNeverLess() =>
        Gen.Select(Gen.Int[1, 24], Gen.Double[40, 150], Gen.Double[-40, 190], Gen.Double[0, 10])
            .Sample((gauge, rating, ambient, more) =>
                Amperes(Conductor.Awg(gauge - 1), rating, ambient) >= Amperes(Conductor.Awg(gauge), rating, ambient)
                && Amperes(Conductor.Awg(gauge), rating + more, ambient) >= Amperes(Conductor.Awg(gauge), rating, ambient));

    [Fact]
    public void Current_OfAMetricSize_IsThatOfTheThinnerGauge()
    {
        Assert.Equal(
            Of(Conductor.Awg(14), 105, 60).Current,
            Of(Conductor.Metric(Area.FromSquareMillimeters(2.5)), 105, 60).Current);
        Assert.Equal(
            Of(Conductor.Awg(10), 105, 60).Current,
            Of(Conductor.Metric(Area.FromSquareMillimeters(6)), 105, 60).Current);
    }

    /// <summary>Twelve-gauge wire of 3.31 mm², a ten-thousandth or so off the formula's 3.3088 mm², is still twelve-gauge wire.</summary>
    [Fact]
    public void Current_OfAGaugeByItsRoundedArea_IsTheGauges()
    {
        Conductor Of(double squareMillimetres) => Conductor.OfArea(
            Area.FromSquareMillimeters(squareMillimetres), ConductorMaterial.Copper, Conductor.DefaultLay);
        double exact = Conductor.Awg(12).Area.SquareMillimeters;
        Assert.Equal(45, Amperes(Of(exact * (1 - 5e-5)), 105, 30), 9);
        Assert.Equal(35, Amperes(Of(exact * (1 - 5e-4)), 105, 30), 9);
    }


    [Fact]
    public void Current_OutsideTheSource_IsNotCoveredAndSaysWhy()
    {
        Refused(Of(Conductor.Awg(20), 105, 30), "thinner than AWG 18");
        Refused(Of(Conductor.Awg(12, ConductorMaterial.Aluminium), 105, 30), "copper only, not aluminium");
        Refused(Of(Conductor.Awg(12), 55, 30), "55 °C is below the source's lowest, 60 °C");
        Refused(Of(Conductor.Awg(12), 80, 80), "80 °C leave nothing");
    }

    [Fact]
    public void Text_OfAnAnswer_ShowsHowItWasFound() =>
        Assert.Equal(
            "2.5 mm²: 26.9 A in 60 °C (AWG 14 with insulation for 105 °C: 35.0 A × 77 %; 33 CFR 183.425, table 5).",
            Of(Conductor.Metric(Area.FromSquareMillimeters(2.5)), 105, 60).ToString());

    [Fact]
    public void Ampacity_OfNoConductor_IsRefused() =>
        Assert.Equal("conductor", Assert.Throws<ArgumentNullException>(() => Of(null!, 105, 30)).ParamName);


    [Fact]
    public void Equation_InABatch_GivesWhatItGivesAlone() =>
        Gen.Double[-40, 200].Array[Lanes.Count].Sample(ambients =>
        {
            double[] together = new double[Lanes.Count];
            CurrentRating.AmbientFactor(105, Lanes.From(ambients), 30).CopyTo(together);
            for (int i = 0; i < ambients.Length; i++)
            {
                Assert.Equal(CurrentRating.AmbientFactor<Real>(105, ambients[i], 30), together[i], 1e-14);
            }
        });

    private static void Refused(Ampacity answer, string reason)
    {
        Assert.Null(answer.Current);
        Assert.StartsWith("Not covered: ", answer.ToString(), StringComparison.Ordinal);
        Assert.Contains(reason, answer.ToString(), StringComparison.Ordinal);
    }

    private static double Amperes(Conductor conductor, double rating, double ambient) =>
        Of(conductor, rating, ambient).Current?.Amperes ?? 0;

    private static Ampacity Of(Conductor conductor, double rating, double ambient) => Ampacity.Of(
        conductor, Temperature.FromDegreesCelsius(rating), Temperature.FromDegreesCelsius(ambient));
}
