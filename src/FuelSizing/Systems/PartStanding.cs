using FuelSizing.Points;

namespace FuelSizing.Systems;

/// <summary>How one part stands over a whole sweep.</summary>
public sealed record PartStanding
{
    internal PartStanding(Limit tightest, OperatingPoint? runsOutAt) => (Tightest, LimitReachedAt) = (tightest, runsOutAt);

    /// <summary>Which part.</summary>
    public Part Part => Tightest.Part;

    /// <summary>The worst outcome anywhere in the sweep.</summary>
    public Outcome Outcome => Tightest.Margin.Outcome;

    /// <summary>Where the part has the least in hand.</summary>
    public Limit Tightest { get; }

    /// <summary>
    /// The lowest boost at which the part runs out, and at which speed; none if it never does. Between the sweep's boosts
    /// it is found by root finding; between its speeds it is not looked for.
    /// </summary>
    public OperatingPoint? LimitReachedAt { get; }
}
