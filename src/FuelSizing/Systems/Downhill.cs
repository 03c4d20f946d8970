namespace FuelSizing.Systems;

/// <summary>Goes from a place of a range to places beside it as long as one of them is nearer to what is looked for.</summary>
/// <remarks>A compass search: four neighbours at a step, and half the step where none of them is nearer. It finds an extreme, not each.</remarks>
internal static class Downhill
{
    private const int MaximumSteps = 50;

    /// <summary>Where the search ends.</summary>
    /// <param name="start">The place to start from, by its number.</param>
    /// <param name="steps">First steps of speed, rev/min, and boost, Pa.</param>
    /// <param name="halvings">How often the steps are halved.</param>
    /// <param name="where">Speed and boost of a place.</param>
    /// <param name="at">The place at a speed and a boost; <see cref="FiguresByPlace.None"/> where they are not to be looked at.</param>
    /// <param name="order">What comes first is looked for.</param>
    public static int From(
        int start,
        (double Speed, double Boost) steps,
        int halvings,
        Func<int, (double Speed, double Boost)> where,
        Func<double, double, int> at,
        Comparison<int> order)
    {
        int best = start;
        for (int step = 0; step < MaximumSteps && halvings > 0; step++)
        {
            (double speed, double boost) = where(best);
            ReadOnlySpan<int> neighbours =
            [
                at(speed - steps.Speed, boost), at(speed + steps.Speed, boost), at(speed, boost - steps.Boost), at(speed, boost + steps.Boost),
            ];
            int nearer = best;
            foreach (int beside in neighbours)
            {
                nearer = beside >= 0 && order(beside, nearer) < 0 ? beside : nearer;
            }

            if (nearer != best)
            {
                best = nearer;
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
