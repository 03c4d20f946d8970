using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>What a bench has measured, as a distribution: normal, cut off at four standard deviations; fixed where readings had no scatter.</summary>
internal static class MeasuredFactor
{
    private const double Tail = 4;

    /// <summary>A factor on injectors' flow.</summary>
    /// <param name="mean">1 where they are as described.</param>
    /// <param name="share">Standard deviation, as a share of the mean.</param>
    public static UncertainInput Of(double mean, double share) => UncertainInput.InjectorFlowFactor(
        share > 0
            ? Distribution.Normal(Fraction(mean), Fraction(mean * share), Fraction(mean * (1 - (Tail * share))), Fraction(mean * (1 + (Tail * share))))
            : Distribution.Fixed(Fraction(mean)));

    /// <summary>Dead time over that described.</summary>
    /// <param name="mean">s.</param>
    /// <param name="deviation">Standard deviation, s.</param>
    public static UncertainInput Later(double mean, double deviation) => UncertainInput.DeadTimeOffset(
        deviation > 0
            ? Distribution.Normal(
                Duration.FromSeconds(mean), Duration.FromSeconds(deviation), Duration.FromSeconds(mean - (Tail * deviation)), Duration.FromSeconds(mean + (Tail * deviation)))
            : Distribution.Fixed(Duration.FromSeconds(mean)));

    private static Ratio Fraction(double fraction) => Ratio.FromDecimalFractions(fraction);
}
