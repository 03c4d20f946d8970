using FuelSizing.Pumps;

namespace FuelSizing.Systems;

/// <summary>What a sweep works out once about circuits that differ in set pressure and injected flow alone.</summary>
internal sealed class CircuitTable
{
    // Fewer points do not pay for the table.
    private const int FewestPoints = 100;

    private const int FewestCells = 32;
    private const int MostCells = 256;

    private readonly CircuitTask _like;

    private CircuitTable(in CircuitTask like, KeptPumps pumps, double least, double most, int cells)
    {
        (_like, Pumps) = (like, pumps);
        Surely = Table(pumps.Surely, least, most, cells);
        Perhaps = ReferenceEquals(pumps.Perhaps, pumps.Surely) ? Surely : Table(pumps.Perhaps, least, most, cells);
    }

    /// <summary>The pumps at the sweep's voltage.</summary>
    public KeptPumps Pumps { get; }

    /// <summary>Of the pumps that end where their curves end; null where it would be no help.</summary>
    public MeetingTable? Surely { get; }

    /// <summary>Of the pumps whose curves go on; null where it would be no help.</summary>
    public MeetingTable? Perhaps { get; }

    /// <summary>The table for a sweep; null where it is not worth its making.</summary>
    /// <param name="like">Any circuit of the sweep.</param>
    /// <param name="least">The sweep's lowest set pressure, Pa.</param>
    /// <param name="most">Its highest, Pa.</param>
    /// <param name="points">How many points the sweep has.</param>
    public static CircuitTable? Of(in CircuitTask like, double least, double most, int points)
    {
        // Without ways the flow follows at once from the set pressure, if the pumps give it by rise.
        KeptPumps pumps = like.Pump.Kept(like.Supply);
        if (points < FewestPoints || !(least > 0) || (pumps.Surely.GivesFlow && !like.HasWayToRegulator))
        {
            return null;
        }

        // One set pressure is a range too, if a narrow one.
        const double Narrow = 1e-3;
        bool one = most <= least * (1 + Narrow);
        return new(
            like,
            pumps,
            least,
            one ? least * (1 + (2 * Narrow)) : most,
            one ? 1 : Math.Clamp(points / 8, FewestCells, MostCells));
    }

    /// <summary>True if a circuit is like the one that the table was made for.</summary>
    public bool Serves(in CircuitTask task) =>
        ReferenceEquals(task.Pump, _like.Pump)
        && ReferenceEquals(task.Plumbing, _like.Plumbing)
        && task.Supply == _like.Supply
        && task.Density == _like.Density
        && task.KinematicViscosity == _like.KinematicViscosity
        && task.HoldsAtRail == _like.HoldsAtRail;

    private MeetingTable? Table(RunningPumps pumps, double least, double most, int cells) =>
        pumps.FreeFlow > 0 ? new(_like, pumps, least, most, cells) : null;
}
