namespace FuelSizing.Systems;

/// <summary>Goes from a point of a range to points beside it as long as one of them is nearer to what is looked for.</summary>
/// <remarks>A compass search: four neighbours at a step, and half the step where none of them is nearer. It finds an extreme, not each.</remarks>
internal static class Downhill
{
    private const int MaximumSteps = 50;

    /// <summary>Where the search ends.</summary>
    /// <param name="start">Where to start.</param>
    /// <param name="steps">First steps of speed, rev/min, and boost, Pa.</param>
    /// <param name="halvings">How often the steps are halved.</param>
    /// <param name="at">The result at a speed and a boost; none where they are not to be looked at.</param>
    /// <param name="order">What comes first is looked for.</param>
    public static OperatingResult From(
        OperatingResult start,
        (double Speed, double Boost) steps,
        int halvings,
        Func<double, double, OperatingResult?> at,
        IComparer<OperatingResult> order)
    {
        OperatingResult best = start;
        for (int step = 0; step < MaximumSteps && halvings > 0; step++)
        {
            double speed = best.Point.Speed.RevolutionsPerMinute;
            double boost = best.Point.Boost.Pascals;
            OperatingResult?[] neighbours =
            [
                at(speed - steps.Speed, boost), at(speed + steps.Speed, boost), at(speed, boost - steps.Boost), at(speed, boost + steps.Boost),
            ];
            if (neighbours.OfType<OperatingResult>().Min(order) is { } beside && order.Compare(beside, best) < 0)
            {
                best = beside;
            }
            else
            {
                steps = (steps.Speed / 2, steps.Boost / 2);
                halvings--;
            }
        }

        return best;
    }
}
