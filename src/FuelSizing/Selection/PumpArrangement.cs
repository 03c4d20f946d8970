using System.Globalization;
using FuelSizing.Electrical;
using FuelSizing.Pumps;
using FuelSizing.Quantities;

namespace FuelSizing.Selection;

/// <summary>Makes candidates of listed pumps: alone, several alike in parallel, or in series with the pump that is fitted.</summary>
/// <remarks>
/// <para>Each pump is wired by itself: in an arrangement of several, each has such a feed. A pump whose curves have no current cannot be wired:
/// it stays in the list, unwired, with the reason (<see cref="Candidate{T}.LeftOut"/>), and a ranking leaves it out.</para>
/// <para>A name over 80 characters is shortened in its middle.</para>
/// </remarks>
public static class PumpArrangement
{
    /// <summary>Each pump alone.</summary>
    /// <param name="pumps">Listed pumps.</param>
    /// <param name="feed">The wiring of each; as listed if not given.</param>
    /// <returns>The candidates, in the same order.</returns>
    public static IReadOnlyList<Candidate<PumpAssembly>> Alone(IEnumerable<Candidate<Pump>> pumps, Feed? feed = null) =>
        Arranged(pumps, feed, pump => pump.Name, pump => pump, 1);

    /// <summary>Several of a pump in parallel, each with a check valve.</summary>
    /// <param name="pumps">Listed pumps.</param>
    /// <param name="count">How many of each, 2 to 8.</param>
    /// <param name="feed">The wiring of each; as listed if not given.</param>
    /// <returns>The candidates, in the same order, at so many times the cost.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The count is outside its range.</exception>
    public static IReadOnlyList<Candidate<PumpAssembly>> InParallel(
        IEnumerable<Candidate<Pump>> pumps, int count, Feed? feed = null)
    {
        Guard.Count(count, 2, 8, "Give the number of pumps in parallel.", nameof(count));
        return Arranged(
            pumps,
            feed,
            pump => string.Create(CultureInfo.InvariantCulture, $"{count} × {pump.Name} in parallel"),
            pump => PumpParallel.Of([.. Enumerable.Repeat<PumpAssembly>(pump, count)]),
            count);
    }

    /// <summary>Each pump behind one that is fitted already, in series.</summary>
    /// <param name="fitted">The pump or pumps that stay; they cost nothing.</param>
    /// <param name="bypass">What a stage does when more flows than it can pass by itself.</param>
    /// <param name="pumps">Listed pumps.</param>
    /// <param name="feed">The wiring of each listed pump; as listed if not given.</param>
    /// <returns>The candidates, in the same order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The by-pass is not one of its kinds.</exception>
    public static IReadOnlyList<Candidate<PumpAssembly>> InSeriesWith(
        PumpAssembly fitted, SeriesBypass bypass, IEnumerable<Candidate<Pump>> pumps, Feed? feed = null)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        Guard.Member(bypass, "Say how a stage is by-passed.", nameof(bypass));
        return Arranged(pumps, feed, pump => $"{fitted.Name} then {pump.Name}", pump => PumpSeries.Of(bypass, fitted, pump), 1);
    }

    private static Candidate<PumpAssembly>[] Arranged(
        IEnumerable<Candidate<Pump>> pumps,
        Feed? feed,
        Func<Candidate<Pump>, string> name,
        Func<Pump, PumpAssembly> arranged,
        int count)
    {
        ArgumentNullException.ThrowIfNull(pumps);
        HashSet<string> names = [];
        List<Candidate<PumpAssembly>> candidates = [];
        foreach (Candidate<Pump> pump in pumps)
        {
            ArgumentNullException.ThrowIfNull(pump, nameof(pumps));
            Statement? leftOut = feed is null || pump.Part.Curves[0].HasCurrent
                ? pump.LeftOut
                : Statement.Of(
                    "ranking.pump-without-current",
                    $"its curves have no current, so that what its feed leaves of the voltage cannot be calculated");
            candidates.Add(new(
                ShortName.Among(names, name(pump)),
                arranged(feed is null || leftOut is not null ? pump.Part : pump.Part.WithFeed(feed)),
                pump.Cost * count,
                leftOut));
        }

        return [.. candidates];
    }
}
