using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>A measurement that would tell the suspected faults apart.</summary>
/// <remarks>
/// What it would read under each suspected fault is predicted by the fit of that fault, with what the run leaves open and the measurement's own error.
/// Information is what its outcome is expected to take off the uncertainty, Σ p ln(1/p) over the suspected (D. V. Lindley, On a measure of the
/// information provided by an experiment, Ann. Math. Statist. 27, 1956), in bits.
/// </remarks>
public sealed class NextTest : IReadable
{
    private readonly double[] _means;
    private readonly double[] _deviations;
    private readonly double[] _weights;
    private readonly IReadOnlyList<RunFault> _faults;

    internal NextTest(TestedQuantity tested, IReadOnlyList<RunFault> faults, double[] weights, double[] means, double[] deviations)
    {
        (Tested, _faults, _weights, _means, _deviations) = (tested, faults, weights, means, deviations);
        (double information, double separates) = Expected();
        (Information, Separates) = (information, Ratio.FromDecimalFractions(separates));
    }

    /// <summary>What to measure.</summary>
    public Statement What => Tested.What;

    /// <summary>Bits that its outcome is expected to tell; a choice of two as probable is one bit.</summary>
    public double Information { get; }

    /// <summary>Probability that after it the likeliest of the suspected is the right one.</summary>
    public Ratio Separates { get; }

    /// <summary>The test with what it promises, as a code with its figures.</summary>
    public Statement Text => Statement.Of("run.next-test", $"{What} It is expected to point to the right one with a probability of {Separates:chance}.");

    internal TestedQuantity Tested { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();

    /// <summary>Probabilities of the suspected after the test has read a value, SI.</summary>
    internal IReadOnlyList<(RunFault Fault, double Probability)> After(double value)
    {
        double[] logs = [.. _weights.Select((weight, i) => Math.Log(weight) + Density(i, value))];
        double maximum = logs.Max();
        double all = logs.Sum(log => Math.Exp(log - maximum));
        return [.. _faults.Select((fault, i) => (fault, Math.Exp(logs[i] - maximum) / all)).OrderByDescending(one => one.Item2)];
    }

    private double Density(int i, double value) => MathNet.Numerics.Distributions.Normal.PDFLn(_means[i], _deviations[i], value);

    // Of each suspected its own readings, at the middles of equal steps of probability density's argument.
    private (double Information, double Separates) Expected()
    {
        const int Steps = 201;
        const double Reach = 5;
        (double information, double separates) = (0, 0);
        double all = _weights.Sum();
        for (int i = 0; i < _weights.Length; i++)
        {
            double total = 0;
            (double bits, double right) = (0, 0);
            for (int step = 0; step < Steps; step++)
            {
                double away = Reach * ((2.0 * step / (Steps - 1)) - 1);
                double weight = Math.Exp(-0.5 * away * away);
                double value = _means[i] + (away * _deviations[i]);
                double own = Density(i, value);
                double mixture = 0;
                bool likeliest = true;
                for (int other = 0; other < _weights.Length; other++)
                {
                    mixture += _weights[other] / all * Math.Exp(Density(other, value) - own);
                    likeliest &= other == i || Math.Log(_weights[other]) + Density(other, value) <= Math.Log(_weights[i]) + own;
                }

                total += weight;
                bits -= weight * Math.Log2(mixture);
                right += likeliest ? weight : 0;
            }

            information += _weights[i] / all * bits / total;
            separates += _weights[i] / all * right / total;
        }

        return (Math.Max(0, information), separates);
    }
}
