using CsCheck;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Numerics;

/// <summary>The working of a table's reading gives what the table reads, and what another library reads from the same points.</summary>
public class MonotoneCubicTests
{
    /// <summary>Source: SciPy 1.10.1, scipy.interpolate.PchipInterpolator on the same points, read on 2026-11-30.</summary>
    [Theory]
    [InlineData(8.4, 2.110432)]
    [InlineData(9.9, 1.5294763749999998)]
    [InlineData(12.7, 0.947869196189428)]
    [InlineData(14.2, 0.8011706672738167)]
    [InlineData(15.9, 0.7027004303415217)]
    public void Value_BetweenFallingPoints_IsThatOfSciPy(double at, double expected) =>
        Reads([8, 10, 12, 13.5, 16], [2.3, 1.5, 1.05, 0.86, 0.7], at, expected);

    /// <summary>Points that turn, and lie level. Source: SciPy 1.10.1, as above.</summary>
    [Theory]
    [InlineData(0.3, 3.8876999999999997)]
    [InlineData(1.5, 4.8999999999999995)]
    [InlineData(3.1, 4.8)]
    [InlineData(5.5, 6.06)]
    [InlineData(6.9, 8.776995555555557)]
    public void Value_BetweenPointsThatTurn_IsThatOfSciPy(double at, double expected) =>
        Reads([0, 1, 2, 4, 7], [3, 5, 4.8, 4.8, 9], at, expected);

    /// <summary>Against MathNet.Numerics' shape-preserving spline, which tables read, on tables of three to seven points.</summary>
    [Fact]
    public void Value_OfAnyTable_IsThatOfMathNet() =>
        Gen.Select(Gen.Double[0.05, 4].Array[3, 7], Gen.Double[-3, 3].Array[7], Gen.Double[0.001, 0.999]).Sample(
            (widths, steps, share) =>
            {
                double[] x = [.. widths.Select((_, place) => widths.Take(place).Sum())];
                double[] y = [.. x.Select((_, place) => steps.Take(place + 1).Sum())];
                double at = x[0] + (share * (x[^1] - x[0]));
                double expected = new Curve(x, y, Interpolation.Monotone).At(at);
                Reads(x, y, at, expected, 1e-12 * (1 + y.Max(Math.Abs)));
            },
            iter: 2000);

    private static void Reads(double[] x, double[] y, double at, double expected, double within = 1e-13)
    {
        int before = Array.FindLastIndex(x, point => point < at);
        double Slope(int point) => point == 0 ? End(0, 1)
            : point == x.Length - 1 ? End(x.Length - 2, x.Length - 3)
            : MonotoneCubic.InnerSlope<Real>(Width(point - 1), Chord(point - 1), Width(point), Chord(point)).Value;
        double End(int own, int next) => MonotoneCubic.EndSlope<Real>(Width(own), Chord(own), Width(next), Chord(next)).Value;
        double Width(int piece) => x[piece + 1] - x[piece];
        double Chord(int piece) => (y[piece + 1] - y[piece]) / Width(piece);

        double value = MonotoneCubic.At<Real>(y[before], Slope(before), Chord(before), Width(before), Slope(before + 1), at - x[before]).Value;

        Assert.Equal(expected, value, within);
        Assert.Equal(expected, new Curve(x, y, Interpolation.Monotone).At(at), within);
    }
}
