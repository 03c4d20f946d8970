using FuelSizing.Lines;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Lines;

public class FittingTests
{
    // The table gives f_T to three decimals.
    [Theory]
    [InlineData(15.76, 0.026)]
    [InlineData(20.96, 0.024)]
    [InlineData(26.64, 0.022)]
    [InlineData(35.08, 0.021)]
    [InlineData(40.94, 0.020)]
    [InlineData(52.48, 0.019)]
    public void FullyTurbulentFriction_OfSteelPipe_IsCranesTable(double bore, double factor) =>
        Assert.InRange(
            Fitting.OfDiameters("one", 1).LossCoefficientIn(Length.FromMillimeters(bore)) - factor, -0.0006, 0.0006);

    /// <summary>Crane, Flow of Fluids, TP-410 (2013), as transcribed in CalebBell/fluids; K = n f_T by hand.</summary>
    [Fact(DisplayName = "Loss coefficient of a 20 mm elbow; Crane TP-410")]
    public void Elbow_OfTwentyMillimetreBore_IsThirtyTimesCranesFactor() =>
        Published.Value(
            Works.CraneFitting,
            30 * 0.024,
            Fitting.Elbow90.LossCoefficientIn(Length.FromMillimeters(20.96)),
            0.0005 / 0.024);

    [Fact]
    public void Times_OfAFitting_MultipliesItsCoefficientAndSaysSo()
    {
        Length bore = Length.FromMillimeters(8);
        Fitting three = Fitting.Elbow45.Times(3);
        Assert.Equal("3 × 45° elbow", three.Name);
        Assert.Equal(3 * Fitting.Elbow45.LossCoefficientIn(bore), three.LossCoefficientIn(bore), 12);
        Assert.Equal(2.0, Fitting.Exit.Times(2).LossCoefficientIn(bore));
    }

    [Fact]
    public void Times_OfNoneOrTooMany_IsRefused()
    {
        Refused.OutOfRange("count", () => Fitting.Exit.Times(0));
        Refused.OutOfRange("count", () => Fitting.Exit.Times(51));
    }
}
