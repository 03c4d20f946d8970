using CsCheck;
using FuelSizing.Uncertainty;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Tests.Uncertainty;

public class DistributionTests
{
    private static readonly Gen<Distribution<Ratio>> Any = Gen.Select(Gen.Double[0, 1], Gen.Double[0.01, 1], Gen.Double[0, 1], Gen.Int[0, 2])
        .Select((minimum, width, inside, kind) =>
        {
            (Ratio a, Ratio b) = (Fraction(minimum), Fraction(minimum + width));
            Ratio middle = Fraction(minimum + (inside * width));
            return kind switch
            {
                0 => Distribution.Uniform(a, b),
                1 => Distribution.Triangular(a, middle, b),
                _ => Distribution.Normal(middle, Fraction(0.01 + inside), a, b),
            };
        });

    /// <summary>An input is a factor if 100 % of it leaves the system as it is.</summary>
    [Fact]
    public void Factors_AreTheInputsThatMultiply() =>
        Assert.Equal(
            [UncertainWren.Air, UncertainWren.Flow, UncertainWren.Matching],
            UncertainWren.All.Where(input => input.IsFactor));

    [Fact]
    public void InverseOfAnyDistribution_RisesAndStaysWithinItsEnds() =>
        Gen.Select(Any, Gen.Double[1e-9, 1 - 1e-9], Gen.Double[1e-9, 1 - 1e-9]).Sample((distribution, p, q) =>
        {
            double low = distribution.Shape.ValueAt(Math.Min(p, q));
            double high = distribution.Shape.ValueAt(Math.Max(p, q));
            return low <= high
                && low >= distribution.Minimum.DecimalFractions - 1e-12
                && high <= distribution.Maximum.DecimalFractions + 1e-12;
        });

    /// <summary>By midpoints of the probability: mean of the inverse is the distribution's mean.</summary>
    [Fact]
    public void Moments_OfEachShape_AreThoseOfTheTextbook()
    {
        (double mean, double variance) = Moments(Distribution.Uniform(Fraction(2), Fraction(5)));
        Assert.Equal(3.5, mean, 6);
        Assert.Equal(9.0 / 12, variance, 6);

        (mean, variance) = Moments(Distribution.Triangular(Fraction(1), Fraction(2), Fraction(6)));
        Assert.Equal(9.0 / 3, mean, 6);
        Assert.Equal((1 + 4 + 36 - 2 - 6 - 12) / 18.0, variance, 5);

        // Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 1, section 13.10.1.
        (double mu, double sigma, double a, double b) = (1.0, 0.3, 0.8, 2.0);
        (mean, variance) = Moments(Distribution.Normal(Fraction(mu), Fraction(sigma), Fraction(a), Fraction(b)));
        (double alpha, double beta) = ((a - mu) / sigma, (b - mu) / sigma);
        double kept = Normal.CDF(0, 1, beta) - Normal.CDF(0, 1, alpha);
        (double fa, double fb) = (Normal.PDF(0, 1, alpha), Normal.PDF(0, 1, beta));
        double shift = (fa - fb) / kept;
        Assert.Equal(mu + (sigma * shift), mean, 5);
        Assert.Equal(
            sigma * sigma * (1 + (((alpha * fa) - (beta * fb)) / kept) - (shift * shift)), variance, 5);
    }

    [Fact]
    public void Units_OfAnyKind_MeanTheSame()
    {
        Assert.Equal(
            Distribution.Uniform(Pressure.FromKilopascals(-10), Pressure.FromKilopascals(10)).Shape,
            Distribution.Uniform(Pressure.FromPascals(-10_000), Pressure.FromPascals(10_000)).Shape);
        Distribution<Temperature> warm = Distribution.NormalTemperature(
            Temperature.FromDegreesCelsius(30),
            TemperatureDelta.FromDegreesFahrenheit(9),
            Temperature.FromDegreesCelsius(-10),
            Temperature.FromDegreesCelsius(70));
        Assert.Equal(303.15, warm.Shape.ValueAt(0.5), 9);
        Assert.Equal(308.15, warm.Shape.ValueAt(Normal.CDF(0, 1, 1)), 6);
        Assert.Equal("35 °C", UncertainInput.FuelTemperature(warm).ValueAt(Fraction(Normal.CDF(0, 1, 1))).ToString("S2", System.Globalization.CultureInfo.InvariantCulture));
    }

    [Fact]
    public void Values_OutOfOrder_AreRefusedByNameValueAndRange()
    {
        Refused("maximum", "5 %", () => Distribution.Uniform(Ratio.FromPercent(5), Ratio.FromPercent(5)));
        Refused("maximum", "4 %", () => Distribution.Triangular(Ratio.FromPercent(5), Ratio.FromPercent(5), Ratio.FromPercent(4)));
        Refused(
            "likeliest", "7 %", () => Distribution.Triangular(Ratio.FromPercent(5), Ratio.FromPercent(7), Ratio.FromPercent(6)));
        Refused(
            "mean",
            "7 %",
            () => Distribution.Normal(Ratio.FromPercent(7), Ratio.FromPercent(1), Ratio.FromPercent(5), Ratio.FromPercent(6)));
        Refused(
            "maximum",
            "5 %",
            () => Distribution.Normal(Ratio.FromPercent(6), Ratio.FromPercent(1), Ratio.FromPercent(6), Ratio.FromPercent(5)));
        Refused(
            "standardDeviation",
            "0 %",
            () => Distribution.Normal(Ratio.FromPercent(6), Ratio.FromPercent(0), Ratio.FromPercent(5), Ratio.FromPercent(7)));
        Temperature warm = Temperature.FromDegreesCelsius(20);
        Refused(
            "standardDeviation",
            "−1",
            () => Distribution.NormalTemperature(
                warm, TemperatureDelta.FromKelvins(-1), warm, Temperature.FromDegreesCelsius(30)));
        Assert.Contains(
            "NormalTemperature",
            Assert.Throws<ArgumentException>(
                () => Distribution.Normal(warm, warm, warm, Temperature.FromDegreesCelsius(30))).Message,
            StringComparison.Ordinal);
    }

    internal static Ratio Fraction(double value) => Ratio.FromDecimalFractions(value);

    private static void Refused(string name, string value, Func<object> make)
    {
        ArgumentOutOfRangeException error = Assert.Throws<ArgumentOutOfRangeException>(make);
        Assert.Equal(name, error.ParamName);
        Assert.Contains($"{name} is {value}", error.Message, StringComparison.Ordinal);
        Assert.Contains("it must be ", error.Message, StringComparison.Ordinal);
    }

    private static (double Mean, double Variance) Moments(Distribution<Ratio> distribution)
    {
        const int Points = 200_000;
        double[] values = [.. Enumerable.Range(0, Points).Select(i => distribution.Shape.ValueAt((i + 0.5) / Points))];
        double mean = values.Average();
        return (mean, values.Average(value => (value - mean) * (value - mean)));
    }
}
