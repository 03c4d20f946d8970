using CsCheck;
using FuelSizing.Electrical;
using UnitsNet;

namespace FuelSizing.Tests.Electrical;

public class FuseChoiceTests
{
    [Fact]
    public void Fuse_WhereverThereIsOne_KeepsBothRulesAndIsTheSmallest() =>
        Cases.Sample((amperes, gauge, rating, ambient) =>
        {
            FuseChoice choice = For(amperes, gauge, rating, ambient);
            double[] carrying =
                [.. FuseChoice.StandardRatings.Select(fuse => fuse.Amperes).Where(fuse => amperes <= 0.8 * fuse * (1 + 1e-12))];
            if (choice.Rating is not { } fuse)
            {
                Assert.StartsWith("None: ", choice.Text.ToString(), StringComparison.Ordinal);
                Assert.True(
                    carrying.Length == 0 || choice.Ampacity.Current is null || carrying[0] > choice.Ampacity.Current.Value.Amperes);
                return;
            }

            Assert.Equal(carrying[0], fuse.Amperes, 9);
            Assert.True(fuse <= choice.Ampacity.Current);
            Assert.InRange(choice.Load!.Value.Percent, 0, 80 + 1e-9);
        });

    [Fact]
    public void Fuse_AtExactlyEightyPerCent_IsEnough()
    {
        foreach (ElectricCurrent standard in FuseChoice.StandardRatings)
        {
            FuseChoice choice = FuseChoice.For(
                standard * 0.8, Conductor.Awg(4), Temperature.FromDegreesCelsius(105), Temperature.FromDegreesCelsius(30));
            Assert.Equal(standard, choice.Rating);
        }
    }

    [Fact]
    public void Fuse_OnAWireTooThin_NamesTheThickerOneThatWouldDo()
    {
        FuseChoice thin = For(18, 16, 80, 60);
        Assert.Null(thin.Rating);
        Assert.Contains("needs a fuse of 25.0 A, which does not protect AWG 16", thin.Text.ToString(), StringComparison.Ordinal);
        Assert.EndsWith("with the same insulation it takes AWG 10.", thin.Text.ToString(), StringComparison.Ordinal);
        Assert.Equal(25, For(18, 10, 80, 60).Rating!.Value.Amperes, 9);
        Assert.Null(For(18, 12, 80, 60).Rating);
    }

    [Fact]
    public void Fuse_BeyondTheSource_SaysWhy()
    {
        Assert.Contains("own feed and fuse", For(33, 4, 105, 30).Text.ToString(), StringComparison.Ordinal);
        Assert.Contains("thinner than AWG 18", For(3, 22, 105, 30).Text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Text_OfAChoice_ShowsBothRules() =>
        Assert.Equal(
            "15.0 A: 12.0 A is 80 % of it, and the ampacity of AWG 12 is 34.6 A.", For(12, 12, 105, 60).ToString());

    /// <summary>The regulation's AWG 18 with insulation for 60 °C carries 10 A at 30 °C: just a 10 A fuse.</summary>
    [Fact]
    public void Fuse_OfJustWhatTheWireCarries_Protects()
    {
        FuseChoice choice = For(8, 18, 60, 30);
        Assert.Equal(10, choice.Rating!.Value.Amperes, 9);
        Assert.Equal(10, choice.Ampacity.Current!.Value.Amperes, 9);
    }

    /// <summary>20 A takes a fuse of 25 A; the regulation gives AWG 16 15 A, AWG 14 20 A and AWG 12 just 25 A.</summary>
    [Fact]
    public void Thicker_OfJustTheFusesRating_IsTheOneNamed() =>
        Assert.EndsWith("with the same insulation it takes AWG 12.", For(20, 16, 60, 30).Text.ToString(), StringComparison.Ordinal);

    /// <summary>At 59.7 °C insulation for 60 °C leaves a tenth of 300 A, the thickest wire's, and the fuse is 40 A.</summary>
    [Fact]
    public void Thicker_WhereNoneWouldDo_SaysWhatElseToChange()
    {
        FuseChoice choice = For(30, 1, 60, 59.7);
        Assert.Null(choice.Rating);
        Assert.EndsWith(
            "take insulation for a higher temperature, or route the wiring away from heat.", choice.Text.ToString(), StringComparison.Ordinal);
    }


    private static Gen<(double Amperes, int Gauge, double Rating, double Ambient)> Cases =>
        Gen.Select(Gen.Double[0.1, 60], Gen.Int[0, 24], Gen.Double[50, 150], Gen.Double[-40, 130]);

    private static FuseChoice For(double amperes, int gauge, double rating, double ambient) => FuseChoice.For(
        ElectricCurrent.FromAmperes(amperes),
        Conductor.Awg(gauge),
        Temperature.FromDegreesCelsius(rating),
        Temperature.FromDegreesCelsius(ambient));
}
