using FuelSizing.Uncertainty;
using UnitsNet;
using static FuelSizing.Tests.Uncertainty.UncertainWren;

namespace FuelSizing.Tests.Uncertainty;

/// <summary>
/// The estimator's every figure from its definition, calculated once more from the same draws: Saltelli et al., Computer Physics Communications 181 (2010)
/// 259–270, table 2 (b) with the mean taken off, and (f); errors by the delta method.
/// </summary>
public class SobolByDefinitionTests
{
    private const int Samples = 150;
    private static readonly uint[][] Groups = [[3], [7, 8, 9], [4]];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Indices_OfAGroupedFunction_AreThoseOfTheDefinition(bool hasHoles)
    {
        double Function(ReadOnlySpan<double> x) =>
            hasHoles && (x[0] > 0.9 || (x[1] < 0.3 && x[4] > 0.7)) ? double.NaN : 5 + x[0] + (3 * x[1] * x[2]) + (x[3] * x[4]) + Math.Sin(6 * x[4]);
        SobolIndices found = SobolEstimator.Estimate(Function, Groups, Sampling.Of(Samples, 17, 2));

        uint[] streams = [.. Groups.SelectMany(group => group)];
        int[] groupOf = [0, 1, 1, 1, 2];
        List<(double A, double B, double[] Mixed)> known = [];
        for (int sample = 0; sample < Samples; sample++)
        {
            double[] a = new double[5], b = new double[5];
            CubeSample.Draw(17, sample, 0, streams, a);
            CubeSample.Draw(17, sample, 1, streams, b);
            double[] mixed = [.. Enumerable.Range(0, 3).Select(group => Function([.. a.Select((own, place) => groupOf[place] == group ? b[place] : own)]))];
            if (double.IsFinite(Function(a)) && double.IsFinite(Function(b)) && mixed.All(double.IsFinite))
            {
                known.Add((Function(a), Function(b), mixed));
            }
        }

        Assert.Equal(hasHoles, known.Count < Samples);
        double mean = known.Average(sample => (sample.A + sample.B) / 2);
        double[] squares = [.. known.Select(sample => (Math.Pow(sample.A - mean, 2) + Math.Pow(sample.B - mean, 2)) / 2)];
        double variance = squares.Average();
        Assert.Equal((Samples, Samples - known.Count), (found.Samples, found.CannotSay));
        Assert.Equal(mean, found.Mean, 1e-10);
        Assert.Equal(variance, found.Variance, 1e-10);
        for (int group = 0; group < 3; group++)
        {
            Same([.. known.Select(sample => (sample.B - mean) * (sample.Mixed[group] - sample.A))], found.FirstOrder[group], found.FirstOrderError[group]);
            Same([.. known.Select(sample => Math.Pow(sample.A - sample.Mixed[group], 2) / 2)], found.Total[group], found.TotalError[group]);
        }

        void Same(double[] terms, double index, double error)
        {
            double ratio = terms.Average() / variance;
            double[] moved = [.. terms.Zip(squares, (term, square) => (term - (ratio * square)) / variance)];
            double around = moved.Average();
            Assert.Equal(ratio, index, 1e-10);
            Assert.Equal(Math.Sqrt(moved.Sum(one => Math.Pow(one - around, 2)) / (moved.Length - 1) / moved.Length), error, 1e-10);
        }
    }

    /// <summary>A constant varies by rounding alone, a part in 10¹⁶; a part in 10⁹ is a variation.</summary>
    [Fact]
    public void Output_ThatVariesByRoundingAlone_HasNoIndices()
    {
        (double first, double other) = (0.1, 0.2);
        SobolIndices constant = SobolEstimator.Estimate(x => (x[0] > 0.5 ? first + other : 0.3) * 1e6, [[1], [2]], Sampling.Of(100, 3));
        Assert.NotEqual(0.3, first + other);
        Assert.Equal(0, constant.Variance);
        Assert.Equal([0, 0], constant.FirstOrder);
        Assert.Equal([0, 0], constant.Total);
        Assert.All(constant.FirstOrderError.Concat(constant.TotalError), error => Assert.Equal(0, error));
        SobolIndices slight = SobolEstimator.Estimate(x => 1 + (1e-9 * x[0]), [[1], [2]], Sampling.Of(400, 3));
        Assert.Equal(1e-18 / 12, slight.Variance, 2e-20);
        Assert.Equal(1, slight.Total[0], 0.2);
        Assert.Equal(0, slight.Total[1]);
        SobolIndices none = SobolEstimator.Estimate(_ => double.NaN, [[1], [2]], Sampling.Of(16, 3));
        Assert.Equal((16, 16, 0.0), (none.Samples, none.CannotSay, none.Variance));
        Assert.True(double.IsNaN(none.Mean));
        Assert.Equal([0, 0], none.Total);
    }

    /// <summary>Largest total first; inputs that change nothing after it, in the order that their kinds are listed in, whichever was given first.</summary>
    [Fact]
    public void Inputs_OfAResult_StandByTheirTotals()
    {
        UncertainInput still = UncertainInput.RegulatorOffset(Distribution.Fixed(Pressure.Zero));
        UncertainInput fixedVolts = UncertainInput.SupplyVoltage(Distribution.Fixed(Wren.Volt(13.5)));
        UncertainInput fixedAir = UncertainInput.VolumetricEfficiencyFactor(Distribution.Fixed(Fraction(1)));
        SobolResult result = Of(fixedVolts, Matching, still, Flow, fixedAir).Sobol(SystemOutput.DutyCycle, Sampling.Of(32, 2));
        Assert.Equal([Flow, Matching, fixedAir, still, fixedVolts], result.Inputs.Select(share => share.Input));
        Assert.Equal(Flow, result.MeasureFirst);
        Assert.True(result.IsComplete);
        Assert.Equal((32, 0), (result.Samples, result.CannotSay));
        Assert.Equal("duty cycle: 32 samples; measure first: injector flow", result.ToString());
        Assert.InRange(result.Inputs[0].Total.DecimalFractions, 0.6, 1.2);

        // Duty cycle over dead time goes with 1/f, f from 96 to 104 %: spread about 4 %/√3 of it, by the nominal 13.5 V.
        double duty = result.System.NominalResult.DutyCycle!.Value.DecimalFractions;
        Assert.Equal(duty, ((Ratio)result.Mean!).DecimalFractions, 0.01 * duty);
        Assert.InRange(((Ratio)result.StandardDeviation!).DecimalFractions / duty, 0.015, 0.03);
        SobolResult none = Of(fixedVolts, still).Sobol(SystemOutput.DutyCycle, Sampling.Of(16, 2));
        Assert.Null(none.MeasureFirst);
        Assert.Equal("duty cycle: 16 samples; measure first: cannot say", none.ToString());
    }

    /// <summary>At 6 to 7 V, under the dead-time table, no sample has a duty cycle: there is no mean, and nothing to measure.</summary>
    [Fact]
    public void Output_ThatNoSampleHas_HasNoMean()
    {
        SobolResult result = Of(Flow, UncertainInput.SupplyVoltage(Distribution.Uniform(Wren.Volt(6), Wren.Volt(7)))).Sobol(SystemOutput.DutyCycle, Sampling.Of(16));
        Assert.Equal((16, 16), (result.Samples, result.CannotSay));
        Assert.Null(result.Mean);
        Assert.Null(result.MeasureFirst);
    }

    [Fact]
    public void Indices_WithoutWhatTheyNeed_AreRefused()
    {
        Refused.Missing("sampling", () => Of(Flow).Sobol(SystemOutput.DutyCycle, null!));
        Refused.Missing("output", () => Of(Flow).Sobol(null!, Sampling.Of(16)));
        Refused.Missing("output", () => Of(Flow).Tornado(null!));
        Refused.Missing("sampling", () => Of(Flow).MonteCarlo(null!));
        Assert.Equal(
            "output was the margin of return line, which this system does not have or has no limit for. Choose a part among its margins. (Parameter 'output')",
            Assert.Throws<ArgumentException>(() => Of(Flow).Sobol(SystemOutput.ReserveOf(FuelSizing.Checks.Part.ReturnLine), Sampling.Of(16))).Message);
    }
}
