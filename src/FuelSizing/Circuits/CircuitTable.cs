using FuelSizing.Pumps;

namespace FuelSizing.Circuits;

/// <summary>What a sweep works out once about circuits that differ in set pressure and injected flow alone.</summary>
internal sealed class CircuitTable
{
    // Fewer points do not pay for the table.
    private const int FewestPoints = 100;

    private const int FewestCells = 32;
    private const int MaximumCells = 256;

    private readonly CircuitTask _like;

    private CircuitTable(in CircuitTask like, PumpBounds pumps, double minimum, double maximum, int cells)
    {
        (_like, Pumps) = (like, pumps);
        Estimate = Table(pumps.Estimate, minimum, maximum, cells);
        Lower = ReferenceEquals(pumps.Lower, pumps.Estimate) ? Estimate : Table(pumps.Lower, minimum, maximum, cells);
        Upper = ReferenceEquals(pumps.Upper, pumps.Estimate) ? Estimate : Table(pumps.Upper, minimum, maximum, cells);
    }

    /// <summary>The pumps at the sweep's voltage.</summary>
    public PumpBounds Pumps { get; }

    /// <summary>Of the pumps as results show them; null where it would be no help.</summary>
    public IntersectionTable? Estimate { get; }

    /// <summary>Of the least that the pumps' data allow; null where it would be no help.</summary>
    public IntersectionTable? Lower { get; }

    /// <summary>Of the most that they allow; null where it would be no help.</summary>
    public IntersectionTable? Upper { get; }

    /// <summary>The table for a sweep; null where it is not worth its making.</summary>
    /// <param name="like">Any circuit of the sweep.</param>
    /// <param name="minimum">The sweep's lowest set pressure, Pa.</param>
    /// <param name="maximum">Its highest, Pa.</param>
    /// <param name="points">How many points the sweep has.</param>
    public static CircuitTable? Of(in CircuitTask like, double minimum, double maximum, int points)
    {
        // What a regulator holds that changes with flow does not follow from its set pressure alone.
        if (like.Held is not null)
        {
            return null;
        }

        // Without ways the flow follows at once from the set pressure, if the pumps give it by rise.
        PumpBounds pumps = like.Pump.Bounds(like.Supply);
        if (points < FewestPoints || !(minimum > 0) || (pumps.Estimate.GivesFlow && !like.HasPathToRegulator))
        {
            return null;
        }

        // One set pressure is a range too, if a narrow one.
        const double Narrow = 1e-3;
        bool one = maximum <= minimum * (1 + Narrow);
        return new(
            like,
            pumps,
            minimum,
            one ? minimum * (1 + (2 * Narrow)) : maximum,
            one ? 1 : Math.Clamp(points / 8, FewestCells, MaximumCells));
    }

    /// <summary>True if a circuit is like the one that the table was made for.</summary>
    public bool Serves(in CircuitTask task) =>
        ReferenceEquals(task.Pump, _like.Pump)
        && ReferenceEquals(task.Plumbing, _like.Plumbing)
        && task.Supply == _like.Supply
        && task.Density == _like.Density
        && task.KinematicViscosity == _like.KinematicViscosity
        && task.HoldsAtRail == _like.HoldsAtRail;

    private IntersectionTable? Table(RunningPumps pumps, double minimum, double maximum, int cells) =>
        pumps.FreeFlow > 0 ? new(_like, pumps, minimum, maximum, cells) : null;
}
