using FuelSizing.Points;

namespace FuelSizing.Checks;

/// <summary>The current that motors draw where their wire loses nothing: with any wire that takes its place they draw no more.</summary>
internal static class WithoutWireLoss
{
    /// <summary>The highest current of some pumps, as they are or without loss in the wire, whichever is higher, A.</summary>
    /// <param name="task">All points, for another wire may fail at a point at which this one holds, and those that fail.</param>
    /// <param name="judged">Whose pumps.</param>
    /// <param name="isBroken">Whether the wire or fuse of a pump, or of a part that pumps share, fails in a state of the circuit, by its place.</param>
    /// <returns>Zero where no current is known.</returns>
    public static double Current(RemedyTask task, JudgedCircuit judged, Func<SolvedCircuit, int, bool> isBroken)
    {
        int[] broken =
        [
            .. Enumerable.Range(0, PlacesOf(judged.StatesOf(task.Failing[0].SolvedCircuit)[0]))
                .Where(place => task.Failing.Any(point => judged.StatesOf(point.SolvedCircuit).Any(state => isBroken(state, place)))),
        ];
        SystemParts? rewired = null;
        SystemParts? like = null;
        double highest = 0;
        foreach (SolvedPoint point in task.Points)
        {
            if (rewired is null || like != point.Parts)
            {
                like = point.Parts;
                rewired = judged.Rewired(like, feed => feed.WithoutWire());
            }

            IEnumerable<SolvedCircuit> states = judged.StatesOf(point.SolvedCircuit).Concat(judged.StatesOf(rewired.CircuitAt(point.SolvedDemand)));
            foreach (SolvedCircuit state in states)
            {
                foreach (int place in broken)
                {
                    highest = Math.Max(highest, Known(state.CurrentOf(place).Maximum));
                }
            }
        }

        return highest;
    }

    /// <summary>The most current that a feed, or a part that pumps share, carries as the circuit is shown, A; none where it is not known.</summary>
    public static double? CarriedBy(SolvedCircuit state, int place) =>
        place < state.Pumps.Length ? state.Pumps[place].MaximumFeedCurrent : state.CurrentOf(place).Maximum;

    private static int PlacesOf(SolvedCircuit state) => state.Pumps.Length + state.SharedFeeds.Count;

    private static double Known(double amperes) => double.IsNaN(amperes) ? 0 : amperes;
}
