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
        int worst = FiguresByPlace.None;
        for (int place = 0; place < search.Count; place++)
        {
            if (search.BoostOf(place) == lowest && search.Fails(check, place) && (worst < 0 || search.Compare(check, place, worst) < 0))
            {
                worst = place;
            }
        }

        if (worst >= 0)
        {
            return search.PointAt(worst);
        }

        (double Speed, int Failing, int Holding)[] bySpeed = BySpeed(check, search);
        int[] crossings = Array.ConvertAll(
            bySpeed, column => column.Failing < 0 ? FiguresByPlace.None : Bracketed(check, search, column.Holding < 0 ? search.At(column.Speed, lowest) : column.Holding, column.Failing));
        int first = Enumerable.Range(0, crossings.Length)
            .Where(at => Boost(at) < double.PositiveInfinity && Boost(at) <= Boost(at - 1) && Boost(at) <= Boost(at + 1))
            .OrderBy(Boost).Take(Valleys)
            .Select(at => Between(check, search, crossings[at], Speed(Math.Max(0, at - 1)), Speed(Math.Min(at + 1, bySpeed.Length - 1)), lowest))
            .MinBy(search.BoostOf);
        return search.PointAt(first);

        double Boost(int at) => at >= 0 && at < crossings.Length && crossings[at] >= 0 ? search.BoostOf(crossings[at]) : double.PositiveInfinity;

        double Speed(int at) => bySpeed[at].Speed;
    }

    /// <summary>The lowest speed of a boost line at which a check that fails somewhere does so.</summary>
    /// <param name="check">By its place.</param>
    /// <param name="search">What was solved along the line.</param>
    public static OperatingPoint Along(int check, RangeSearch search)
    {
        (int failing, int before) = (FiguresByPlace.None, FiguresByPlace.None);
        for (int place = 0; place < search.Count; place++)
        {
            failing = search.Fails(check, place) && (failing < 0 || search.SpeedOf(place) < search.SpeedOf(failing)) ? place : failing;
        }

        for (int place = 0; place < search.Count; place++)
        {
            bool isBefore = search.SpeedOf(place) < search.SpeedOf(failing);
            before = isBefore && (before < 0 || search.SpeedOf(place) > search.SpeedOf(before)) ? place : before;
        }

        if (before < 0)
        {
            return search.PointAt(failing);
        }

        (double slow, double fast) = (search.SpeedOf(before), search.SpeedOf(failing));
        double share = Bracket.Of(share => Excess(search.Figure(check, search.At(Speed(share), 0))), 0, 1);
        return search.PointAt(search.At(Speed(share), 0));

        double Speed(double share) => StraightLine.Through<Real>(0, slow, 1, fast, share).Value;
    }

    /// <summary>For each speed that was looked at, rising, the place at the lowest boost at which a check fails, and the one below it; none where there is none.</summary>
    private static (double Speed, int Failing, int Holding)[] BySpeed(int check, RangeSearch search)
    {
        Dictionary<double, int> columns = [];
        List<(double Speed, int Failing, int Holding)> found = [];
        int[] columnOf = new int[search.Count];
        for (int place = 0; place < columnOf.Length; place++)
        {
            double speed = search.SpeedOf(place);
            if (!columns.TryGetValue(speed, out int column))
            {
                column = found.Count;
                columns.Add(speed, column);
                found.Add((speed, FiguresByPlace.None, FiguresByPlace.None));
            }

            columnOf[place] = column;
            if (search.Fails(check, place) && (found[column].Failing < 0 || search.BoostOf(place) < search.BoostOf(found[column].Failing)))
            {
                found[column] = found[column] with { Failing = place };
            }
        }

        for (int place = 0; place < columnOf.Length; place++)
        {
            (double speed, int failing, int holding) = found[columnOf[place]];
            if (failing >= 0 && search.BoostOf(place) < search.BoostOf(failing) && (holding < 0 || search.BoostOf(place) > search.BoostOf(holding)))
            {
                found[columnOf[place]] = (speed, failing, place);
            }
        }

        return [.. found.OrderBy(column => column.Speed)];
    }

    /// <summary>Looks for a lower crossing at speeds beside the one that was found.</summary>
    private static int Between(int check, RangeSearch search, int first, double slow, double fast, double lowest)
    {
        double step = (fast - slow) / 4;
        for (int halving = 0; halving < Halvings; halving++)
        {
            double own = search.SpeedOf(first);
            foreach (double speed in (ReadOnlySpan<double>)[own - step, own + step])
            {
                if (speed > slow && speed < fast && search.At(speed, search.BoostOf(first)) is var beside && search.Fails(check, beside))
                {
                    first = Bracketed(check, search, search.At(speed, lowest), beside);
                }
            }

            step /= 2;
        }

        return first;
    }

    private static int Bracketed(int check, RangeSearch search, int holding, int failing)
    {
        if (search.Fails(check, holding))
        {
            return holding;
        }

        (double low, double high) = (search.BoostOf(holding), search.BoostOf(failing));
        double speed = search.SpeedOf(failing);
        double share = Bracket.Of(share => Excess(search.Figure(check, search.At(speed, Boost(share)))), 0, 1);
        return search.At(speed, Boost(share));

        double Boost(double share) => StraightLine.Through<Real>(0, low, 1, high, share).Value;
    }

    // The margin just before the limit, in shares that a solver likes; at the end of the bracket it fails. What cannot be said has not failed yet.
    private static double Excess(double figure) => figure < 0
        ? Math.Min(double.IsFinite(figure) ? figure : -1, -double.Epsilon)
        : double.IsFinite(figure) ? figure : 1;
}
