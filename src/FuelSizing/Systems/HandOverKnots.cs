using FuelSizing.Numerics;
using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>Where the hand-over to a secondary set of injectors begins and ends: the shortest of its pulses is just above the begin.</summary>
internal static class HandOverKnots
{
    // A hundredth of a pascal: less than any sensor of manifold pressure resolves.
    private const double BesideBegin = 0.01;

    /// <summary>Boosts at which a hand-over by boost begins, just above that, and where it is full, Pa.</summary>
    public static IEnumerable<double> Boosts(FuelSystem system) => system.StagedInjectors?.HandOver is { BeginPascals: { } begin, FullPascals: { } full }
        ? [begin, begin + BesideBegin, full]
        : [];

    /// <summary>Differential pressures at which the data of the secondary injectors has a kink, Pa.</summary>
    public static IEnumerable<double> Differentials(FuelSystem system) => system.StagedInjectors?.Secondary.Injector is { } injector
        ? injector.DeadTime.Points.Select(point => point.Differential?.Pascals).OfType<double>()
            .Concat(injector.MeasuredFlows.Select(point => point.Differential.Pascals))
        : [];

    /// <summary>Places between neighbours at which a hand-over by duty cycle begins.</summary>
    /// <param name="places">Rising, of speed or of boost.</param>
    /// <param name="over">How much more the primary set would have to pass at a place than where it begins, as <see cref="Over"/>.</param>
    public static IEnumerable<double> ByDutyCycle(IReadOnlyList<double> places, Func<double, double> over)
    {
        double[] excess = [.. places.Select(over)];
        for (int place = 1; place < places.Count; place++)
        {
            (double from, double to) = (places[place - 1], places[place]);
            double sign = excess[place - 1];
            if (sign == 0)
            {
                yield return from;
            }

            if (sign * excess[place] < 0)
            {
                double share = Bracket.Of(x => Math.Sign(sign) * over(from + ((to - from) * x)), 0, 1);
                yield return from + ((to - from) * share);
            }
        }
    }

    /// <summary>What the primary set would have to pass over what it passes at the duty cycle at which a hand-over begins, less one; not a number without one.</summary>
    /// <param name="demand">What the engine asks for.</param>
    /// <param name="judged">The injectors as they are judged.</param>
    public static double Over(in PointDemand demand, in Injection judged) =>
        judged.Secondary is { } secondary ? Math.Min(1, (demand.Injected / secondary.PrimaryAtBegin) - 1) : double.NaN;
}
