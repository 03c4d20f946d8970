using CsCheck;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Numerics;

/// <summary>Exponential and logarithm in lanes against those of the C library, by way of <see cref="Math"/>.</summary>
public class ElementaryTests
{
    private const int MaximumUlps = 2;

    private static readonly Gen<double> Normal = Gen.Select(Gen.Double[1, 2], Gen.Int[-1021, 1022], Math.ScaleB);

    [Fact]
    public void Log_OfAnyNormalNumber_IsWithinTwoUlps() =>
        Gen.OneOf(Normal, Gen.Double[0.5, 2], Gen.Double[1 - 1e-6, 1 + 1e-6]).Sample(
            x => AllClose(Math.Log(x), Lanes.Log(x), FourLanes.Log(x), TwoLanes.Log(x)), iter: 100_000);

    [Fact]
    public void Exp_OfAnyNumberInRange_IsWithinTwoUlps() =>
        Gen.OneOf(Gen.Double[-700, 709], Gen.Double[-1, 1], Gen.Double[-1e-9, 1e-9]).Sample(
            x => AllClose(Math.Exp(x), Lanes.Exp(x), FourLanes.Exp(x), TwoLanes.Exp(x)), iter: 100_000);

    [Fact]
    public void Elementary_OfOneNumber_IsThatOfMany() =>
        Normal.Sample(
            x => First(Lanes.Log(x)) == Elementary.Log<Real>(x)
                && First(Lanes.Exp(Math.Log(x))) == Elementary.Exp<Real>(Math.Log(x)),
            iter: 10_000);

    /// <summary>Bit for bit what one number gives, in place, at every width.</summary>
    [Fact]
    public void Power_OfManyNumbers_IsThatOfEach() =>
        Gen.Select(Gen.Double[0.5, 10].Array[8], Gen.Double[-2, 2]).Sample((x, y) =>
            OfMany<Lanes>(x, y) && OfMany<FourLanes>(x, y) && OfMany<TwoLanes>(x, y) && OfMany<Real>(x, y)
            && x.All(one => Math.Abs(First(Lanes.Power(one, y)) - Math.Pow(one, y)) <= 1e-15 * Math.Pow(one, y)));

    [Theory]
    [InlineData(0, double.NegativeInfinity)]
    [InlineData(-1, double.NaN)]
    [InlineData(double.NegativeInfinity, double.NaN)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(double.NaN, double.NaN)]
    [InlineData(1, 0)]
    public void Log_OfWhatIsNotOrdinary_IsAsInMath(double x, double expected)
    {
        Assert.Equal(expected, Math.Log(x));
        Assert.Equal(expected, First(Lanes.Log(x)));
        Assert.Equal(expected, First(FourLanes.Log(x)));
        Assert.Equal(expected, First(TwoLanes.Log(x)));
    }

    [Theory]
    [InlineData(double.NegativeInfinity, 0)]
    [InlineData(-800, 0)]
    [InlineData(0, 1)]
    [InlineData(710, double.PositiveInfinity)]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity)]
    [InlineData(double.NaN, double.NaN)]
    public void Exp_OfWhatIsNotOrdinary_IsAsInMath(double x, double expected)
    {
        Assert.Equal(expected, Math.Exp(x));
        Assert.Equal(expected, First(Lanes.Exp(x)));
        Assert.Equal(expected, First(FourLanes.Exp(x)));
        Assert.Equal(expected, First(TwoLanes.Exp(x)));
    }

    private static bool OfMany<T>(double[] x, double y)
        where T : struct, ILanes<T>, IReal<T>
    {
        double[] many = [.. x];
        Elementary.Power<T>(many, y);
        return x.Zip(many).All(pair => pair.Second == First(Lanes.Power(pair.First, y)));
    }

    private static bool AllClose(double expected, Lanes eight, FourLanes four, TwoLanes two)
    {
        double value = First(eight);
        return First(four) == value && First(two) == value
            && Math.Abs(value - expected) <= MaximumUlps * (Math.BitIncrement(Math.Abs(expected)) - Math.Abs(expected));
    }

    private static double First<T>(T lanes)
        where T : struct, ILanes<T>
    {
        double[] numbers = new double[8];
        lanes.CopyTo(numbers);
        return numbers[0];
    }
}
