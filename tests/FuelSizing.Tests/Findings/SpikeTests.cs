using FuelSizing.Findings;
using MathNet.Numerics.Distributions;

namespace FuelSizing.Tests.Findings;

public class SpikeTests(Xunit.Abstractions.ITestOutputHelper o)
{
    [Theory]
    [InlineData(120, 3, 6, 10, 0, 0.5)]
    [InlineData(300, 3, 6, 10, 0.04, 0.5)]
    [InlineData(300, 3, 2, 20, 0.04, 0.3)]
    [InlineData(800, 3, 4, 30, 0.04, 0.5)]
    public void Coverage(int n, double noise, double gain, double onset, double outliers, double boostNoise)
    {
        int gIn = 0, oIn = 0, runs = 1000;
        double gse = 0, ose = 0;
        var w = global::System.Diagnostics.Stopwatch.StartNew();
        for (int seed = 0; seed < runs; seed++)
        {
            Random r = new(seed);
            double[] x = new double[n], y = new double[n];
            for (int i = 0; i < n; i++)
            {
                double b = -40 + 100 * r.NextDouble();
                y[i] = 300 + Math.Min(b, onset) + gain * Math.Max(0, b - onset) + noise * Normal.Sample(r, 0, 1);
                x[i] = b + boostNoise * Normal.Sample(r, 0, 1);
                if (r.NextDouble() < outliers) y[i] += 200 * (r.NextDouble() - 0.5);
            }
            KinkFit f = RobustRegression.Kink(x, y, 1, boostNoise / noise, 5)!;
            double t = StudentT.InvCDF(0, 1, f.Freedom, 0.975);
            double sg = Math.Sqrt(f.Covariance[1, 1]), so = Math.Sqrt(f.Covariance[2, 2]);
            gse += sg / runs; ose += so / runs;
            if (Math.Abs(f.Gain - gain) < t * sg) gIn++;
            if (Math.Abs(f.Onset - onset) < t * so) oIn++;
        }
        o.WriteLine($"n {n} gain {gIn * 100.0 / runs:F1} onset {oIn * 100.0 / runs:F1}  se {gse:F4} {ose:F3}  {w.ElapsedMilliseconds} ms");
    }
}
