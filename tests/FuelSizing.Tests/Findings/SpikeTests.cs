using FuelSizing.Findings;

namespace FuelSizing.Tests.Findings;

public class SpikeTests(Xunit.Abstractions.ITestOutputHelper o)
{
    [Fact]
    public void Dig()
    {
        double[] boost = [.. Enumerable.Range(0, 60).Select(i => (-40 + (i * 1.75)) * 1e3)];
        foreach (double q in new[] { 0, 0.1 })
        {
            var f = RobustRegression.Kink(boost, Array.ConvertAll(boost, b => 300e3 + Math.Min(b, 17e3) + 4 * Math.Max(0, b - 17e3)), 1, q, 5)!;
            o.WriteLine($"q {q}: {f.Intercept} {f.Gain} {f.Onset} scale {f.Scale} outliers {f.Outliers}");
        }
    }
}
