using FuelSizing.Points;
using FuelSizing.Pumps;

namespace FuelSizing.Checks;

/// <summary>The current that motors draw where their wire loses nothing: with any wire that takes its place they draw no more.</summary>
internal static class WithoutWireLoss
{
    /// <summary>The highest current of some pumps, as they are or without loss in the wire, whichever is higher, A.</summary>
    /// <param name="task">All points, for another wire may fail at a point at which this one holds, and those that fail.</param>
    /// <param name="judged">Whose pumps.</param>
    /// <param name="isBroken">Whether a pump's wire or fuse fails where it runs.</param>
    /// <returns>Zero where no current is known.</returns>
    public static double Current(RemedyTask task, JudgedCircuit judged, Func<PumpPoint, bool> isBroken)
    {
        int[] broken =
        [
            .. Enumerable.Range(0, judged.StatesOf(task.Failing[0].SolvedCircuit)[0].Pumps.Length)
                .Where(pump => task.Failing.Any(point => judged.StatesOf(point.SolvedCircuit).Any(state => isBroken(state.Pumps[pump])))),
        ];
        SystemParts? rewired = null;
        SystemParts? like = null;
        double highest = 0;
        foreach (SolvedPoint point in task.Points)
        {
            if (rewired is null || like != point.Parts)
            {
                like = point.Parts;
                rewired = judged.Rewired(like, feed => feed.WithLoopOfAtMost(feed.ContactOhms));
            }

            IEnumerable<SolvedCircuit> states = judged.StatesOf(point.SolvedCircuit).Concat(judged.StatesOf(rewired.CircuitAt(point.SolvedDemand)));
            foreach (SolvedCircuit state in states)
            {
                foreach (int pump in broken)
                {
                    highest = Math.Max(highest, Known(state.CurrentOf(pump).Maximum));
                }
            }
        }

        return highest;
    }

    private static double Known(double amperes) => double.IsNaN(amperes) ? 0 : amperes;
}
