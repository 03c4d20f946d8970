using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>A distribution of which only a stretch between two bounds is kept.</summary>
internal static class TruncatedProbability
{
    /// <summary>
    /// Probability under the whole distribution that belongs to a probability p under the kept stretch:
    /// F(a) + p (F(b) − F(a)), F the whole distribution's cumulative probability.
    /// </summary>
    /// <param name="below">F(a), at the lower bound.</param>
    /// <param name="belowUpper">F(b), at the upper bound.</param>
    /// <param name="probability">p, 0 to 1.</param>
    public static T OfWhole<T>(T below, T belowUpper, T probability)
        where T : struct, IReal<T> => below + (probability * (belowUpper - below));
}
