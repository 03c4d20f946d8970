using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Bench;

/// <summary>What a bench has measured, as a distribution: normal, cut off at four standard deviations; fixed where readings had no scatter.</summary>
internal static class MeasuredDistribution
{
    /// <summary>Standard deviations at which it is cut off.</summary>
    public const double Tail = 4;

    /// <summary>A factor.</summary>
    /// <param name="mean">1 where the part is as described.</param>
    /// <param name="share">Standard deviation, as a share of the mean.</param>
    public static Distribution<Ratio> Share(double mean, double share) => About(mean, mean * share, value => Ratio.FromDecimalFractions(value));

    /// <summary>A figure.</summary>
    /// <param name="mean">In SI.</param>
    /// <param name="deviation">Standard deviation, in SI.</param>
    /// <param name="quantity">The quantity of a number in SI.</param>
    public static Distribution<T> About<T>(double mean, double deviation, Func<QuantityValue, T> quantity)
        where T : struct, IQuantity, IComparable<T> => deviation > 0
        ? Distribution.Normal(quantity(mean), quantity(deviation), quantity(mean - (Tail * deviation)), quantity(mean + (Tail * deviation)))
        : Distribution.Fixed(quantity(mean));
}
