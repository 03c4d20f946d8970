using FuelSizing.Lines;
using FuelSizing.Numerics;

namespace FuelSizing.Circuits;

/// <summary>What the fuel passes on its way: from the tank to the pump, from the pump to the rail, and back.</summary>
/// <remarks>
/// Each way is a list of <see cref="Line"/> and <see cref="Filter"/> in the order of flow; their rises add up to the height
/// of the way's end over its start. A way left empty costs nothing.
/// </remarks>
public sealed record Plumbing
{
    // The lists that are shown, as arrays: a solver goes over them many times.
    private readonly IFlowLoss[] _suction;
    private readonly IFlowLoss[] _supply;
    private readonly IFlowLoss[] _back;

    private Plumbing(IFlowLoss[] suction, IFlowLoss[] supply, IFlowLoss[] back)
    {
        (Suction, Supply, Back) = (Array.AsReadOnly(suction), Array.AsReadOnly(supply), Array.AsReadOnly(back));
        (_suction, _supply, _back) = (suction, supply, back);
    }

    /// <summary>No lines at all: pressure at the pump is pressure at the rail.</summary>
    public static Plumbing None { get; } = new([], [], []);

    /// <summary>From the tank to the pump; empty for a pump in the tank.</summary>
    public IReadOnlyList<IFlowLoss> Suction { get; }

    /// <summary>From the pump to the rail.</summary>
    public IReadOnlyList<IFlowLoss> Supply { get; }

    /// <summary>From the regulator back to the tank.</summary>
    public IReadOnlyList<IFlowLoss> Back { get; }

    internal bool NeedsViscosity => _suction.Length + _supply.Length + _back.Length > 0;

    internal bool HasSuction => _suction.Length > 0;

    internal bool HasSupply => _supply.Length > 0;

    internal bool HasFilter => Suction.Concat(Supply).Concat(Back).Any(part => part is Filter);

    /// <summary>Describes the ways.</summary>
    /// <param name="suction">From the tank to the pump; none for a pump in the tank.</param>
    /// <param name="supply">From the pump to the rail.</param>
    /// <param name="back">From the regulator back to the tank.</param>
    /// <returns>The plumbing.</returns>
    /// <exception cref="ArgumentNullException">A part is missing from a list.</exception>
    public static Plumbing Of(
        IReadOnlyList<IFlowLoss>? suction = null,
        IReadOnlyList<IFlowLoss>? supply = null,
        IReadOnlyList<IFlowLoss>? back = null) =>
        new(Kept(suction, nameof(suction)), Kept(supply, nameof(supply)), Kept(back, nameof(back)));

    /// <summary>Pressure lost on the way to the pump, height included, Pa.</summary>
    internal double SuctionLoss(double flow, double density, double kinematicViscosity) =>
        LossOf(_suction, flow, density, kinematicViscosity);

    /// <summary>Pressure lost on the way to the rail, height included, Pa.</summary>
    internal double SupplyLoss(double flow, double density, double kinematicViscosity) =>
        LossOf(_supply, flow, density, kinematicViscosity);

    /// <summary>Pressure lost on the way back, height included, Pa.</summary>
    internal double ReturnLoss(double flow, double density, double kinematicViscosity) =>
        LossOf(_back, flow, density, kinematicViscosity);

    /// <summary>Pressure lost on a way, height included, Pa.</summary>
    internal static double Loss(IReadOnlyList<IFlowLoss> way, double flow, double density, double kinematicViscosity)
    {
        Real loss = 0;
        for (int part = 0; part < way.Count; part++)
        {
            loss += LossOf(way[part], flow, density, kinematicViscosity);
        }

        return loss;
    }

    private static double LossOf(IFlowLoss[] way, double flow, double density, double kinematicViscosity)
    {
        Real loss = 0;
        foreach (IFlowLoss part in way)
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

    private static IFlowLoss[] Kept(IReadOnlyList<IFlowLoss>? parts, string name)
    {
        IFlowLoss[] kept = [.. parts ?? []];
        foreach (IFlowLoss part in kept)
        {
            ArgumentNullException.ThrowIfNull(part, name);
        }

        return kept;
    }
}
