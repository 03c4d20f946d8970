using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Quantities;

namespace FuelSizing.Circuits;

/// <summary>The lines and filters: from the tank to the pump, from the pump to the rail, and the return line.</summary>
/// <remarks>
/// Each is a list of <see cref="Line"/> and <see cref="Filter"/> in the order of flow; their rises add up to the height
/// of its end over its start. A list left empty has no pressure loss.
/// </remarks>
public sealed record Plumbing
{
    private static readonly Identity<Plumbing> _identity = new Identity<Plumbing>()
        .List(plumbing => plumbing.Suction)
        .List(plumbing => plumbing.Supply)
        .List(plumbing => plumbing.ReturnLine);

    // The lists that are shown, as arrays: a solver goes over them many times.
    private readonly IFlowLoss[] _suction;
    private readonly IFlowLoss[] _supply;
    private readonly IFlowLoss[] _return;
    private readonly double _maximumForward;
    private readonly double _maximumReturned;

    private Plumbing(IFlowLoss[] suction, IFlowLoss[] supply, IFlowLoss[] returnLine)
    {
        (Suction, Supply, ReturnLine) = (Array.AsReadOnly(suction), Array.AsReadOnly(supply), Array.AsReadOnly(returnLine));
        (_suction, _supply, _return) = (suction, supply, returnLine);
        (_maximumForward, _maximumReturned) = (Math.Min(Maximum(suction), Maximum(supply)), Maximum(returnLine));
        HasFilter = double.IsFinite(Math.Min(_maximumForward, _maximumReturned));
    }

    /// <summary>No lines at all: pressure at the pump is pressure at the rail.</summary>
    public static Plumbing None { get; } = new([], [], []);

    /// <summary>From the tank to the pump; empty for a pump in the tank.</summary>
    public IReadOnlyList<IFlowLoss> Suction { get; }

    /// <summary>From the pump to the rail.</summary>
    public IReadOnlyList<IFlowLoss> Supply { get; }

    /// <summary>From the regulator back to the tank.</summary>
    public IReadOnlyList<IFlowLoss> ReturnLine { get; }

    internal bool NeedsViscosity => _suction.Length + _supply.Length + _return.Length > 0;

    internal bool HasSuction => _suction.Length > 0;

    internal bool HasSupply => _supply.Length > 0;

    internal bool HasFilter { get; }

    /// <summary>Flow through the pumps up to which the loss of every filter is known, m³/s; infinite without filters.</summary>
    /// <param name="injected">m³/s; the return line passes so much less.</param>
    internal double MaximumKnownFlow(double injected) => Math.Min(_maximumForward, _maximumReturned + injected);

    /// <summary>Describes the lines and filters.</summary>
    /// <param name="suction">From the tank to the pump; none for a pump in the tank.</param>
    /// <param name="supply">From the pump to the rail.</param>
    /// <param name="returnLine">From the regulator back to the tank.</param>
    /// <returns>The plumbing.</returns>
    /// <exception cref="ArgumentNullException">A part is missing from a list.</exception>
    public static Plumbing Of(
        IReadOnlyList<IFlowLoss>? suction = null,
        IReadOnlyList<IFlowLoss>? supply = null,
        IReadOnlyList<IFlowLoss>? returnLine = null) =>
        new(Copy(suction, nameof(suction)), Copy(supply, nameof(supply)), Copy(returnLine, nameof(returnLine)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Plumbing? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>How many parts each line has.</summary>
    /// <returns>For instance <c>parts: suction 1, supply 3, return 2</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"parts: suction {Suction.Count}, supply {Supply.Count}, return {ReturnLine.Count}");

    /// <summary>Pressure lost in the suction line, height included, Pa.</summary>
    internal double SuctionLoss(double flow, double density, double kinematicViscosity) =>
        LossOf(_suction, flow, density, kinematicViscosity);

    /// <summary>Pressure lost in the supply line, height included, Pa.</summary>
    internal double SupplyLoss(double flow, double density, double kinematicViscosity) =>
        LossOf(_supply, flow, density, kinematicViscosity);

    /// <summary>Pressure lost in the return line, height included, Pa.</summary>
    internal double ReturnLoss(double flow, double density, double kinematicViscosity) =>
        LossOf(_return, flow, density, kinematicViscosity);

    /// <summary>Pressure lost on a path, height included, Pa.</summary>
    internal static double Loss(IReadOnlyList<IFlowLoss> path, double flow, double density, double kinematicViscosity)
    {
        Real loss = 0;
        for (int part = 0; part < path.Count; part++)
        {
            loss += LossOf(path[part], flow, density, kinematicViscosity);
        }

        return loss;
    }

    private static double LossOf(IFlowLoss[] path, double flow, double density, double kinematicViscosity)
    {
        Real loss = 0;
        foreach (IFlowLoss part in path)
        {
            loss += LossOf(part, flow, density, kinematicViscosity);
        }

        return loss;
    }

    // Lines first, which most parts are: a call to a known type costs a tenth of one by the interface.
    private static Real LossOf(IFlowLoss part, double flow, double density, double kinematicViscosity) =>
        part is Line line
            ? (Real)line.LossPascals(flow, density, kinematicViscosity) + line.ElevationPascals(density)
            : (Real)part.LossPascals(flow, density, kinematicViscosity) + part.ElevationPascals(density);

    private static double Maximum(IFlowLoss[] path)
    {
        double maximum = double.PositiveInfinity;
        foreach (IFlowLoss part in path)
        {
            maximum = part is Filter filter ? Math.Min(maximum, filter.MaximumFlow.CubicMetersPerSecond) : maximum;
        }

        return maximum;
    }

    private static IFlowLoss[] Copy(IReadOnlyList<IFlowLoss>? parts, string name)
    {
        IFlowLoss[] copy = [.. parts ?? []];
        foreach (IFlowLoss part in copy)
        {
            ArgumentNullException.ThrowIfNull(part, name);
        }

        return copy;
    }
}
