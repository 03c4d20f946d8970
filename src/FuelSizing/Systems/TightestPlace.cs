using FuelSizing.Checks;

namespace FuelSizing.Systems;

/// <summary>Finds where in a range a check's margin is tightest.</summary>
internal static class TightestPlace
{
    // A margin with so much left is shown as it is at the points that were solved.
    private const double WorthFinding = 0.1;

    private const int Halvings = 14;
    private const int MaximumSteps = 50;

    /// <summary>The tightest margin of a check: of the points solved, and from the tightest of them downhill.</summary>
    /// <param name="check">By its place.</param>
    /// <param name="search">What was solved.</param>
    public static Margin Of(int check, RangeSearch search)
    {
        OperatingResult best = search.Points.MinBy(point => point.Margins[check], Urgency.Order)!;
        if (best.Margins[check] is { Outcome: Outcome.CannotSay } or { Share: null or > WorthFinding })
        {
            return best.Margins[check];
        }

        (double speedStep, double boostStep) = search.StepsAround(best.Point);
        int halvings = 0;
        for (int step = 0; step < MaximumSteps && halvings < Halvings; step++)
        {
            OperatingResult beside = Neighbours(search, best, speedStep, boostStep).MinBy(point => point.Margins[check], Urgency.Order)!;
            if (Urgency.Order.Compare(beside.Margins[check], best.Margins[check]) < 0)
            {
                best = beside;
            }
            else
            {
                speedStep /= 2;
                boostStep /= 2;
                halvings++;
            }
        }

        return best.Margins[check];
    }

    private static IEnumerable<OperatingResult> Neighbours(RangeSearch search, OperatingResult result, double speedStep, double boostStep)
    {
        double speed = result.Point.Speed.RevolutionsPerMinute;
        double boost = result.Point.Boost.Pascals;
        yield return result;
        foreach (int side in new[] { -1, 1 })
        {
            if (search.Within(speed + (side * speedStep), boost))
            {
                yield return search.At(speed + (side * speedStep), boost);
            }

            if (search.Within(speed, boost + (side * boostStep)))
            {
                yield return search.At(speed, boost + (side * boostStep));
            }
        }
    }
}
