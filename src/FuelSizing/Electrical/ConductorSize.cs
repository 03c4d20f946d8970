using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>How a conductor's size was given: one of its gauge, its nominal area, or the metal's own area with the lay.</summary>
internal sealed record ConductorSize
{
    /// <summary>American wire gauge; below zero for 2/0 (−1) to 4/0 (−3).</summary>
    public int? Gauge { get; init; }

    /// <summary>A standard nominal area.</summary>
    public Area? Nominal { get; init; }

    /// <summary>The metal's own area.</summary>
    public Area? Area { get; init; }

    /// <summary>The strands' extra length, with the metal's own area.</summary>
    public Ratio? Lay { get; init; }
}
