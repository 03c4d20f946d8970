using System.Runtime.CompilerServices;
using FuelSizing.Bench;
using FuelSizing.Tests.Sources;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// The fit by least squares against certified values: NIST Statistical Reference Datasets, linear regression. The certified figures have 15 digits; a fit in double precision keeps as many
/// as the condition of its columns leaves: 13 on Norris and NoInt1, 12 on Pontius (columns 1, x, x² with x to 3·10⁶), 9 on Wampler1 (columns to x⁵ with x to 20).
/// </summary>
public class ReferenceRegressionTests
{
    private static readonly (double Y, double X)[] Norris =
    [
        (0.1, 0.2), (338.8, 337.4), (118.1, 118.2), (888.0, 884.6), (9.2, 10.1), (228.1, 226.5),
        (668.5, 666.3), (998.5, 996.3), (449.1, 448.6), (778.9, 777.0), (559.2, 558.2), (0.3, 0.4),
        (0.1, 0.6), (778.1, 775.5), (668.8, 666.9), (339.3, 338.0), (448.9, 447.5), (10.8, 11.6),
        (557.7, 556.0), (228.3, 228.1), (998.0, 995.8), (888.8, 887.6), (119.6, 120.2), (0.3, 0.3),
        (0.6, 0.3), (557.6, 556.8), (339.3, 339.1), (888.0, 887.2), (998.5, 999.0), (778.9, 779.0),
        (10.2, 11.1), (117.6, 118.3), (228.9, 229.2), (668.4, 669.1), (449.2, 448.9), (0.2, 0.5),
    ];

    private static readonly (double Y, double X)[] Pontius =
    [
        (.11019, 150000), (.21956, 300000), (.32949, 450000), (.43899, 600000), (.54803, 750000),
        (.65694, 900000), (.76562, 1050000), (.87487, 1200000), (.98292, 1350000), (1.09146, 1500000),
        (1.20001, 1650000), (1.30822, 1800000), (1.41599, 1950000), (1.52399, 2100000), (1.63194, 2250000),
        (1.73947, 2400000), (1.84646, 2550000), (1.95392, 2700000), (2.06128, 2850000), (2.16844, 3000000),
        (.11052, 150000), (.22018, 300000), (.32939, 450000), (.43886, 600000), (.54798, 750000),
        (.65739, 900000), (.76596, 1050000), (.87474, 1200000), (.98300, 1350000), (1.09150, 1500000),
        (1.20004, 1650000), (1.30818, 1800000), (1.41613, 1950000), (1.52408, 2100000), (1.63159, 2250000),
        (1.73965, 2400000), (1.84696, 2550000), (1.95445, 2700000), (2.06177, 2850000), (2.16829, 3000000),
    ];

    private static readonly (double Y, double X)[] NoIntercept =
    [
        (130, 60), (131, 61), (132, 62), (133, 63), (134, 64), (135, 65), (136, 66), (137, 67), (138, 68), (139, 69), (140, 70),
    ];

    [Fact(DisplayName = "Linear regression, Norris: a straight line, with the standard deviations of its factors")]
    public void Norris_IsFitted()
    {
        LinearFit fit = Fit(Norris, 0, 1);
        Agree(Works.NistNorris, fit, 1e-12, [(-0.262323073774029, 0.232818234301152), (1.00211681802045, 0.429796848199937e-3)]);
        Published.Value(Works.NistNorris, 0.884796396144373, fit.Scale, 1e-13);
    }

    [Fact(DisplayName = "Linear regression, Pontius: a parabola")]
    public void Pontius_IsFitted()
    {
        LinearFit fit = Fit(Pontius, 0, 1, 2);
        Agree(
            Works.NistPontius,
            fit,
            1e-11,
            [(0.673565789473684e-3, 0.107938612033077e-3),
             (0.732059160401003e-6, 0.157817399981659e-9),
             (-0.316081871345029e-14, 0.486652849992036e-16)]);
        Published.Value(Works.NistPontius, 0.205177424076185e-3, fit.Scale, 1e-11);
    }

    [Fact(DisplayName = "Linear regression, NoInt1: a line through the origin")]
    public void LineThroughTheOrigin_IsFitted()
    {
        LinearFit fit = Fit(NoIntercept, 1);
        Agree(Works.NistNoInt1, fit, 1e-13, [(2.07438016528926, 0.165289256198347e-1)]);
        Published.Value(Works.NistNoInt1, 3.56753034006338, fit.Scale, 1e-13);
    }

    /// <summary>y = 1 + x + … + x⁵ with x = 0 … 20, exactly: every factor is 1, and nothing is left over.</summary>
    [Fact(DisplayName = "Linear regression, Wampler1: fifth degree, ill-conditioned")]
    public void FifthDegree_IsFitted()
    {
        (double Y, double X)[] points = [.. Enumerable.Range(0, 21).Select(x => (Enumerable.Range(0, 6).Sum(power => Math.Pow(x, power)), (double)x))];
        LinearFit fit = Fit(points, 0, 1, 2, 3, 4, 5);
        foreach (double factor in fit.Factors)
        {
            Published.Value(Works.NistWampler1, 1, factor, 1e-8);
        }

        Assert.InRange(fit.Scale, 0, 1e-7);
    }

    /// <summary>A reading of double the deviation is one of a quarter of the weight: four equal readings of it are one of the single.</summary>
    [Fact]
    public void Weights_CountAsRepeats()
    {
        double[][] rows = [[1, 1], [1, 2], [1, 3], [1, 4]];
        double[] readings = [1.1, 1.9, 3.2, 3.9];
        LinearFit single = LinearFit.Of(rows, readings, [0.5, 1, 1, 1]);
        LinearFit repeated = LinearFit.Of([rows[0], rows[0], rows[0], .. rows], [readings[0], readings[0], readings[0], .. readings], [1, 1, 1, 1, 1, 1, 1]);
        Assert.Equal(single.Factors[0], repeated.Factors[0], 12);
        Assert.Equal(single.Factors[1], repeated.Factors[1], 12);
    }

    /// <summary>One reading far off is named, whichever it is; without it none is.</summary>
    [Fact]
    public void Outlier_IsNamed()
    {
        for (int at = 0; at < Norris.Length; at++)
        {
            (double Y, double X)[] altered = [.. Norris.Select((point, place) => place == at ? (point.Y + 9, point.X) : point)];
            Assert.Equal([at], Fit(altered, 0, 1).Outliers());
        }

        Assert.Empty(Fit(Norris, 0, 1).Outliers());
    }

    /// <summary>A parabola read three times each does not pass for a line, and a line does.</summary>
    [Fact]
    public void Form_ThatDoesNotFit_IsTold()
    {
        double[] places = [.. Enumerable.Range(0, 24).Select(reading => (double)(reading / 3))];
        double Noise(int reading) => ((reading * 7919 % 13) - 6) * 1e-3;
        LinearFit Of(Func<double, double> law) => LinearFit.Of(
            [.. places.Select(x => new[] { 1, x })], [.. places.Select((x, reading) => law(x) + Noise(reading))], [.. places.Select(_ => 1.0)]);
        Assert.InRange(Of(x => 2 + (3 * x)).LackOfFit(places), 0.05, 1);
        Assert.InRange(Of(x => 2 + (3 * x) + (0.01 * x * x)).LackOfFit(places), 0, 1e-6);
        Assert.Equal(double.NaN, LinearFit.Of([[1, 1], [1, 2], [1, 3]], [1, 2.1, 3], [1, 1, 1]).LackOfFit([1, 2, 3]));
    }

    private static LinearFit Fit((double Y, double X)[] points, params int[] powers) => LinearFit.Of(
        [.. points.Select(point => powers.Select(power => Math.Pow(point.X, power)).ToArray())],
        [.. points.Select(point => point.Y)],
        [.. points.Select(_ => 1.0)]);

    private static void Agree(Source source, LinearFit fit, double within, (double Factor, double Deviation)[] certified, [CallerMemberName] string test = "")
    {
        for (int factor = 0; factor < certified.Length; factor++)
        {
            Published.Value(source, certified[factor].Factor, fit.Factors[factor], within, test: test);
            Published.Value(source, certified[factor].Deviation, fit.Deviation(factor), within, test: test);
        }
    }
}
