using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>Finds the lowest boost at which a check fails, and the speed.</summary>
internal static class FirstFailing
{
    // The speed is found to a thousandth of the step between speeds.
    private const int Halvings = 10;

    // Where it begins to fail may fall and rise again over speed: so many of its valleys are looked into.
    private const int Valleys = 3;

    /// <summary>The lowest boost at which a check that fails somewhere does so.</summary>
    /// <param name="check">By its place.</param>
    /// <param name="search">What was solved.</param>
    /// <param name="lowest">The lowest boost of the range, Pa.</param>
    public static OperatingPoint Of(int check, RangeSearch search, double lowest)
    {
        Margin[] atLowest =
        [
            .. search.Points.Where(point => point.Point.Boost.Pascals == lowest).Select(point => point.Margins[check])
                .Where(margin => margin.Outcome == Outcome.Fails),
        ];
        if (atLowest.Length > 0)
        {
            return atLowest.MinBy(margin => margin, Urgency.Order)!.Point;
        }

        OperatingResult[][] bySpeed =
        [
            .. search.Points.GroupBy(point => point.Point.Speed.RevolutionsPerMinute).OrderBy(group => group.Key)
                .Select(group => group.OrderBy(point => point.Point.Boost.Pascals).ToArray()),
        ];
        OperatingPoint?[] crossings = [.. bySpeed.Select(rising => Crossing(check, search, rising, lowest))];
        return Enumerable.Range(0, crossings.Length)
            .Where(at => Boost(at) < double.PositiveInfinity && Boost(at) <= Boost(at - 1) && Boost(at) <= Boost(at + 1))
            .OrderBy(Boost).Take(Valleys)
            .Select(at => Between(check, search, crossings[at]!, Speed(Math.Max(0, at - 1)), Speed(Math.Min(at + 1, bySpeed.Length - 1)), lowest))
            .MinBy(crossing => crossing.Boost.Pascals)!;

        double Boost(int at) => at >= 0 && at < crossings.Length && crossings[at] is { } crossing ? crossing.Boost.Pascals : double.PositiveInfinity;

        double Speed(int at) => bySpeed[at][0].Point.Speed.RevolutionsPerMinute;
    }

    /// <summary>The lowest speed of a boost line at which a check that fails somewhere does so.</summary>
    /// <param name="check">By its place.</param>
    /// <param name="search">What was solved along the line.</param>
    public static OperatingPoint Along(int check, RangeSearch search)
    {
        OperatingResult[] rising = [.. search.Points.OrderBy(point => point.Point.Speed.RevolutionsPerMinute)];
        int failing = Array.FindIndex(rising, point => Fails(point, check));
        if (failing == 0)
        {
            return rising[0].Point;
        }

        double slow = rising[failing - 1].Point.Speed.RevolutionsPerMinute;
        double fast = rising[failing].Point.Speed.RevolutionsPerMinute;

        // The margin just before the limit, in shares that a solver likes; at the end of the bracket it fails.
        double share = Bracket.Of(
            share => search.At(Speed(share), 0).Margins[check] is var margin && margin.Outcome == Outcome.Fails
                ? Math.Min(margin.Share ?? -1, -double.Epsilon)
                : margin.Share ?? 1,
            0,
            1);
        return search.At(Speed(share), 0).Point;

        double Speed(double share) => StraightLine.Through<Real>(0, slow, 1, fast, share).Value;
    }

    /// <summary>Where a check begins to fail at one speed; none where it is not seen to.</summary>
    private static OperatingPoint? Crossing(int check, RangeSearch search, OperatingResult[] rising, double lowest)
    {
        int failing = Array.FindIndex(rising, point => Fails(point, check));
        if (failing < 0)
        {
            return null;
        }

        OperatingResult top = rising[failing];
        OperatingResult holding = failing > 0 ? rising[failing - 1] : search.At(top.Point.Speed.RevolutionsPerMinute, lowest);
        return Bracketed(check, search, holding, top);
    }

    /// <summary>Looks for a lower crossing at speeds beside the one that was found.</summary>
    private static OperatingPoint Between(int check, RangeSearch search, OperatingPoint first, double slow, double fast, double lowest)
    {
        double step = (fast - slow) / 4;
        for (int halving = 0; halving < Halvings; halving++)
        {
            double own = first.Speed.RevolutionsPerMinute;
            foreach (double speed in new[] { own - step, own + step })
            {
                if (speed > slow && speed < fast && search.At(speed, first.Boost.Pascals) is { } beside && Fails(beside, check))
                {
                    first = Bracketed(check, search, search.At(speed, lowest), beside);
                }
            }

            step /= 2;
        }

        return first;
    }

    private static OperatingPoint Bracketed(int check, RangeSearch search, OperatingResult holding, OperatingResult failing)
    {
        if (Fails(holding, check))
        {
            return holding.Point;
        }

        double low = holding.Point.Boost.Pascals;
        double high = failing.Point.Boost.Pascals;
        double speed = failing.Point.Speed.RevolutionsPerMinute;

        // What cannot be said has not failed yet.
        double share = Bracket.Of(
            share => search.At(speed, Boost(share)).Margins[check] is var margin && margin.Outcome == Outcome.Fails
                ? Math.Min(margin.Share ?? -1, -double.Epsilon)
                : margin.Share ?? 1,
            0,
            1);
        return search.At(speed, Boost(share)).Point;

        double Boost(double share) => StraightLine.Through<Real>(0, low, 1, high, share).Value;
    }

    private static bool Fails(OperatingResult result, int check) => result.Margins[check].Outcome == Outcome.Fails;
}
