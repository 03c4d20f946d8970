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
                Assert.StartsWith("None: ", choice.Text, StringComparison.Ordinal);
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
        Assert.Contains("needs a fuse of 25.0 A, which does not protect AWG 16", thin.Text, StringComparison.Ordinal);
        Assert.EndsWith("with the same insulation it takes AWG 10.", thin.Text, StringComparison.Ordinal);
        Assert.Equal(25, For(18, 10, 80, 60).Rating!.Value.Amperes, 9);
        Assert.Null(For(18, 12, 80, 60).Rating);
    }

    [Fact]
    public void Fuse_BeyondTheSource_SaysWhy()
    {
        Assert.Contains("own feed and fuse", For(33, 4, 105, 30).Text, StringComparison.Ordinal);
        Assert.Contains("thinner than AWG 18", For(3, 22, 105, 30).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_OfAChoice_ShowsBothRules() =>
        Assert.Equal(
            "15.0 A: 12.0 A is 80 % of it, and AWG 12 may carry 34.6 A.", For(12, 12, 105, 60).ToString());

    private static Gen<(double Amperes, int Gauge, double Rating, double Ambient)> Cases =>
        Gen.Select(Gen.Double[0.1, 60], Gen.Int[0, 24], Gen.Double[50, 150], Gen.Double[-40, 130]);

    private static FuseChoice For(double amperes, int gauge, double rating, double ambient) => FuseChoice.For(
        ElectricCurrent.FromAmperes(amperes),
        Conductor.Awg(gauge),
        Temperature.FromDegreesCelsius(rating),
        Temperature.FromDegreesCelsius(ambient));
}
