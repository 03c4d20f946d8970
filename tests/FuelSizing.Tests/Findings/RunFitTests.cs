using FuelSizing.Findings;
using MathNet.Numerics.LinearAlgebra;

namespace FuelSizing.Tests.Findings;

/// <summary>The likeliest state of a run's model: the least of its cost, and the covariance that belongs to it.</summary>
public class RunFitTests
{
    public static TheoryData<RunFault, int?> Fits => new()
    {
        { RunFault.None, null }, { RunFault.WrongGain, null }, { RunFault.WrongGain, (int)RunQuantity.RegulatorGain }, { RunFault.WrongInjectorSize, (int)RunQuantity.InjectorFlow },
    };

    /// <summary>
    /// Cost = Σ d² + Σ off², a free quantity's at a millionth; least where its gradient is nought; covariance the inverse of Σ s sᵀ and the
    /// pull of the tolerances (normal equations, textbook result), all from the slopes.
    /// </summary>
    [Theory]
    [MemberData(nameof(Fits))]
    public void Fit_IsTheLeastOfItsCost(RunFault fault, int? free)
    {
        RunModel model = PulledWren.Check.Model(PulledWren.With(fault, 4).Recorded(2));
        RunFit fit = RunFit.From(model, new double[RunModel.Quantities], free is { } one ? [(RunQuantity)one] : []);
        double[] pull = [.. Enumerable.Range(0, RunModel.Quantities).Select(i => i == free ? 1e-6 : 1.0)];
        (double[] differences, double[] slopes) = (new double[model.Comparisons], new double[model.Comparisons * RunModel.Quantities]);
        model.Differences(fit.Likeliest, differences);
        model.Slopes(fit.Likeliest, slopes);
        Assert.Same(model, fit.Model);
        Assert.Equal(differences.Sum(d => d * d) + fit.Likeliest.Zip(pull, (off, p) => p * off * off).Sum(), fit.Cost, 1e-6);

        Matrix<double> slope = Matrix<double>.Build.Dense(RunModel.Quantities, model.Comparisons, slopes).Transpose();
        Matrix<double> normal = slope.TransposeThisAndMultiply(slope) + Matrix<double>.Build.DenseOfDiagonalArray(pull);
        Vector<double> gradient = slope.TransposeThisAndMultiply(Vector<double>.Build.Dense(differences)) + Vector<double>.Build.Dense(fit.Likeliest).PointwiseMultiply(Vector<double>.Build.Dense(pull));

        // A step from there would take less off the cost than what it is stopped at.
        Assert.InRange(gradient * normal.Solve(gradient), 0, 0.02);
        Matrix<double> covariance = normal.Inverse();
        double[] off = [.. fit.Likeliest];
        OneSided.Cut(off, covariance);
        for (int row = 0; row < RunModel.Quantities; row++)
        {
            for (int column = 0; column < RunModel.Quantities; column++)
            {
                Assert.Equal(covariance[row, column], fit.Covariance[row, column], 1e-6 * Math.Sqrt(covariance[row, row] * covariance[column, column]));
            }

            RunQuantity quantity = (RunQuantity)row;
            Assert.Equal(off[row], fit.Off[row], 1e-6);
            Assert.Equal(fit.Off[row] * model.Tolerance[row], fit.Value(quantity), 1e-12 * model.Tolerance[row]);
            Assert.Equal(Math.Sqrt(covariance[row, row]) * model.Tolerance[row], fit.Error(quantity), 1e-6 * model.Tolerance[row]);
        }
    }

    /// <summary>A flow meter that reads 5 % high, with nothing else off: free, it is found so, and the fit costs nothing.</summary>
    [Fact]
    public void FreeQuantity_IsFoundAsItIs()
    {
        RunModel model = PulledWren.Check.Model(ExactRun.Changed(
            ExactRun.Of(PulledWren.Plan), (cells, _) => cells with { Flow = cells.Flow * 1.05, Power = cells.Power }));
        double[] nothing = new double[RunModel.Quantities];
        RunFit free = RunFit.From(model, nothing, RunQuantity.FlowMeter);
        Assert.Equal(Math.Log(1.05), free.Value(RunQuantity.FlowMeter), 0.002);
        Assert.InRange(free.Cost, 0, 2);
        RunFit bound = RunFit.From(model, nothing);

        // Meter 1 % and injectors 1.5 % share the 5 %: 5²/(1² + 1.5²) = 7.7 at the least, were nothing else in the way or of help.
        Assert.InRange(bound.Cost, 6, 12);
        Assert.InRange(bound.Value(RunQuantity.FlowMeter), 0.01, 0.045);

        // The start is left as it was, and is not where the fit ends.
        Assert.All(nothing, off => Assert.Equal(0, off));
        Assert.Equal(free.Cost, RunFit.From(model, free.Off, RunQuantity.FlowMeter).Cost, 0.02);
    }

    /// <summary>
    /// Of a run that scatters more than stated, errors are those of comparisons so much wider: their normal equations over the scatter, and the tolerances as they are.
    /// </summary>
    [Fact]
    public void Errors_OfMoreScatter_AreWider()
    {
        RunModel model = PulledWren.DefaultCheck.Model(ExactRun.Changed(
            ExactRun.Of(PulledWren.Plan), (cells, i) => cells with { Flow = cells.Flow * (i % 2 == 0 ? 1.07 : 0.93), Lambda = cells.Lambda * (i % 4 < 2 ? 1.06 : 0.94) }));
        RunFit fit = RunFit.From(model, new double[RunModel.Quantities]);
        double lack = fit.Cost / model.Comparisons;
        Assert.True(lack > 1.5);
        double[] slopes = new double[model.Comparisons * RunModel.Quantities];
        model.Slopes(fit.Likeliest, slopes);
        Matrix<double> slope = Matrix<double>.Build.Dense(RunModel.Quantities, model.Comparisons, slopes).Transpose();
        Matrix<double> covariance = ((slope.TransposeThisAndMultiply(slope) / lack) + Matrix<double>.Build.DenseIdentity(RunModel.Quantities)).Inverse();
        OneSided.Cut([.. fit.Likeliest], covariance);
        for (int quantity = 0; quantity < RunModel.Quantities; quantity++)
        {
            Assert.Equal(Math.Sqrt(covariance[quantity, quantity]) * model.Tolerance[quantity], fit.Error((RunQuantity)quantity), 1e-6 * model.Tolerance[quantity]);
        }

        RunQuantity[] quantities = [RunQuantity.InjectorFlow, RunQuantity.VolumetricEfficiency, RunQuantity.RegulatorSlope];
        double[][] moves = [.. fit.Moves(quantities)];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                (int one, int other) = ((int)quantities[i], (int)quantities[j]);
                double scale = model.Tolerance[one] * model.Tolerance[other];
                Assert.Equal(covariance[one, other] * scale, moves.Sum(move => move[i] * move[j]), 1e-6 * scale);
            }
        }
    }

    /// <summary>From a start far away the fit comes to the same place.</summary>
    [Fact]
    public void Fit_FromAnotherStart_IsTheSame()
    {
        RunModel model = PulledWren.Check.Model(PulledWren.With(RunFault.None, 9).Recorded(4, outliers: 0));
        RunFit near = RunFit.From(model, new double[RunModel.Quantities]);
        double[] start = new double[RunModel.Quantities];
        (start[(int)RunQuantity.InjectorFlow], start[(int)RunQuantity.VolumetricEfficiency], start[(int)RunQuantity.RegulatorBase]) = (6, -5, 4);
        RunFit far = RunFit.From(model, start);
        Assert.Equal(near.Cost, far.Cost, 0.05);
        Assert.All(near.Off.Zip(far.Off), pair => Assert.Equal(pair.First, pair.Second, 0.1));
    }
}
