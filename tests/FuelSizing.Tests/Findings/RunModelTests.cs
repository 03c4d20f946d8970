using FuelSizing.Findings;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>The model that runs are compared with is the forward solver's, only tabulated.</summary>
public class RunModelTests
{
    [Theory]
    [InlineData(RunFault.None)]
    [InlineData(RunFault.WeakPump)]
    [InlineData(RunFault.VoltageDrop)]
    [InlineData(RunFault.CloggedFilter)]
    [InlineData(RunFault.WrongGain)]
    [InlineData(RunFault.WrongOnset)]
    public void Rail_ByTheModelWithTheTrueFault_IsThatOfTheForwardSolver(RunFault fault)
    {
        for (int seed = 0; seed < 3; seed++)
        {
            PulledWren car = PulledWren.With(fault, seed);
            RunModel model = PulledWren.Check.Model(car.Exact());
            double[] off = car.Off.Zip(model.Tolerance, (value, tolerance) => tolerance > 0 ? value / tolerance : 0).ToArray();
            off[(int)RunQuantity.RailSensor] = off[(int)RunQuantity.ManifoldSensor] = off[(int)RunQuantity.FlowMeter] = 0;
            for (int point = 0; point < model.Inputs.Count; point++)
            {
                double modelled = model.RailAt(point, off).Rail;
                double solved = car.Solved[model.Points.FirstRows[point]].RailGauge.Pascals;
                Assert.True(
                    Math.Abs(modelled - solved) < 1500,
                    $"{fault} {seed}, point {point}: model {modelled / 1e3:F2} kPa, solver {solved / 1e3:F2} kPa");
            }
        }
    }

    /// <summary>Slopes against central differences of the model itself.</summary>
    [Theory]
    [InlineData(RunFault.None)]
    [InlineData(RunFault.WeakPump)]
    public void Slopes_AreThoseOfTheDifferences(RunFault fault)
    {
        RunModel model = PulledWren.Check.Model(PulledWren.With(fault, 2).Recorded(4));
        double[] off = [0.31, 0.2, 0.4, -0.3, 0.25, -0.35, 0.15, 0.1, -0.2, 0.3, 0.27, -0.23, 0.12,
            0.1, -0.2, 0.3, -0.1, 0.2, 0.15, -0.25, 0.05, 0.3, -0.2, 0.1, 0.2, -0.3, 0.15, 0.1, -0.2, 0.15, 0.2, -0.1, 0.05];
        double[] slopes = new double[model.Comparisons * RunModel.Quantities];
        model.Slopes(off, slopes);
        (int close, int all) = (0, 0);
        for (int quantity = 0; quantity < RunModel.Quantities; quantity++)
        {
            (double[] up, double[] down) = (new double[model.Comparisons], new double[model.Comparisons]);
            const double Step = 1e-3;
            model.Differences(Moved(off, quantity, Step), up);
            model.Differences(Moved(off, quantity, -Step), down);
            for (int row = 0; row < model.Comparisons; row++)
            {
                double numeric = (up[row] - down[row]) / (2 * Step);
                double analytic = slopes[(row * RunModel.Quantities) + quantity];
                close += Math.Abs(numeric - analytic) <= 0.03 + (0.05 * Math.Abs(numeric)) ? 1 : 0;
                all++;
            }
        }

        // A point that sits just at a corner of a table or of the regulator has two slopes.
        Assert.InRange(close, 0.985 * all, all);
    }

    [Fact]
    public void NormalEquations_AreThoseOfTheSlopes()
    {
        RunModel model = PulledWren.Check.Model(PulledWren.With(RunFault.CloggedFilter, 1).Recorded(2));
        double[] off = [.. Enumerable.Range(0, RunModel.Quantities).Select(i => 0.1 * (i - 5))];
        (double[] differences, double[] slopes) =
            (new double[model.Comparisons], new double[model.Comparisons * RunModel.Quantities]);
        model.Differences(off, differences);
        model.Slopes(off, slopes);
        (double[] normal, double[] right) =
            (new double[RunModel.Quantities * RunModel.Quantities], new double[RunModel.Quantities]);
        double cost = model.Gather(off, normal, right);
        Assert.Equal(differences.Sum(d => d * d), cost, 6);
        for (int i = 0; i < RunModel.Quantities; i++)
        {
            Assert.Equal(-Sum(row => slopes[(row * RunModel.Quantities) + i] * differences[row]), right[i], 6);
            for (int j = 0; j < RunModel.Quantities; j++)
            {
                Assert.Equal(
                    Sum(row => slopes[(row * RunModel.Quantities) + i] * slopes[(row * RunModel.Quantities) + j]),
                    normal[(i * RunModel.Quantities) + j],
                    5);
            }
        }

        double Sum(Func<int, double> term) => Enumerable.Range(0, model.Comparisons).Sum(term);
    }

    /// <summary>A linear least-squares problem has one answer, and what a free quantity takes off is off²/(1 − variance).</summary>
    [Fact]
    public void EvidenceExpected_OfAFlowMeter_IsWhatTheFitFinds()
    {
        RunModel model = PulledWren.Check.Model(PulledWren.With(RunFault.None, 6).Recorded(3, outliers: 0));
        RunFit sound = RunFit.From(model, new double[RunModel.Quantities]);
        foreach (RunQuantity quantity in new[] { RunQuantity.FlowMeter, RunQuantity.VolumetricEfficiency, RunQuantity.InjectorFlow })
        {
            RunFit free = RunFit.From(model, sound.Off, quantity);
            double off = sound.Off[(int)quantity];
            Assert.Equal(off * off / (1 - sound.Covariance[(int)quantity, (int)quantity]), sound.Cost - free.Cost, 1);
        }
    }

    private static double[] Moved(double[] off, int quantity, double step)
    {
        double[] moved = [.. off];
        moved[quantity] += step;
        return moved;
    }
}
