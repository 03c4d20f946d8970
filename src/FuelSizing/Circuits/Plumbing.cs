using FuelSizing.Lines;
using FuelSizing.Quantities;

namespace FuelSizing.Circuits;

/// <summary>The lines and filters: from the tank to the pump, from the pump to the rail, and the return line.</summary>
/// <remarks>
/// Each is a list of lines, filters, check valves or parts of your own (<see cref="CustomLoss"/>) in the order of flow; their rises add up to the height
/// of its end over its start. A list left empty has no pressure loss.
/// </remarks>
public sealed record Plumbing
{
    private static readonly Identity<Plumbing> _identity = new Identity<Plumbing>()
        .List(plumbing => plumbing.Suction)
        .List(plumbing => plumbing.Supply)
        .List(plumbing => plumbing.ReturnLine)
        .List(plumbing => plumbing.ToRegulator);

    // The lists that are shown, as arrays: a solver goes over them many times.
    private readonly IFlowLoss[] _suction;
    private readonly IFlowLoss[] _supply;
    private readonly IFlowLoss[] _return;
    private readonly IFlowLoss[] _toRegulator;
    private readonly double _maximumForward;
    private readonly double _maximumReturned;

    private Plumbing(IFlowLoss[] suction, IFlowLoss[] supply, IFlowLoss[] returnLine, IFlowLoss[] toRegulator)
    {
        (Suction, Supply, ReturnLine) = (Array.AsReadOnly(suction), Array.AsReadOnly(supply), Array.AsReadOnly(returnLine));
        (_suction, _supply, _return) = (suction, supply, returnLine);
        (_toRegulator, ToRegulator) = (toRegulator, Array.AsReadOnly(toRegulator));
        double before = Math.Min(PathLoss.MaximumKnownFlow(suction), PathLoss.MaximumKnownFlow(toRegulator));
        (_maximumForward, _maximumReturned) = (Math.Min(before, PathLoss.MaximumKnownFlow(supply)), PathLoss.MaximumKnownFlow(returnLine));
        HasFilter = double.IsFinite(Math.Min(_maximumForward, _maximumReturned));
    }

    /// <summary>No lines at all: pressure at the pump is pressure at the rail.</summary>
    public static Plumbing None { get; } = new([], [], [], []);

    /// <summary>From the tank to the pump; empty for a pump in the tank.</summary>
    public IReadOnlyList<IFlowLoss> Suction { get; }

    /// <summary>From the pump to the rail; from the regulator on, where one before the rail has parts <see cref="ToRegulator"/>.</summary>
    public IReadOnlyList<IFlowLoss> Supply { get; }

    /// <summary>From the regulator back to the tank.</summary>
    public IReadOnlyList<IFlowLoss> ReturnLine { get; }

    /// <summary>
    /// From the pump to a regulator that sits before the rail, as in or at the tank or behind the filter: they pass all that the pumps do. Empty where the regulator
    /// sits at the pump or at the rail.
    /// </summary>
    public IReadOnlyList<IFlowLoss> ToRegulator { get; }

    internal bool NeedsViscosity => _suction.Length + _supply.Length + _return.Length + _toRegulator.Length > 0;

    internal ReadOnlySpan<IFlowLoss> SuctionParts => _suction;

    internal ReadOnlySpan<IFlowLoss> SupplyParts => _supply;

    internal ReadOnlySpan<IFlowLoss> ReturnParts => _return;

    internal ReadOnlySpan<IFlowLoss> ToRegulatorParts => _toRegulator;

    internal bool HasSuction => _suction.Length > 0;

    internal bool HasSupply => _supply.Length > 0;

    internal bool HasToRegulator => _toRegulator.Length > 0;

    /// <summary>True if a part's loss is known up to a flow only: a filter's, as a rule.</summary>
    internal bool HasFilter { get; }

    /// <summary>True if there is a filter.</summary>
    internal bool IsFiltered => Suction.Concat(ToRegulator).Concat(Supply).Concat(ReturnLine).Any(part => part is Filter);

    /// <summary>Flow through the pumps up to which the loss of every part is known, m³/s; infinite where none has an end.</summary>
    /// <param name="injected">m³/s; the return line passes so much less.</param>
    internal double MaximumKnownFlow(double injected) => Math.Min(_maximumForward, _maximumReturned + injected);

    /// <summary>Describes the lines and filters.</summary>
    /// <param name="suction">From the tank to the pump; none for a pump in the tank.</param>
    /// <param name="supply">From the pump to the rail.</param>
    /// <param name="returnLine">From the regulator back to the tank.</param>
    /// <param name="toRegulator">
    /// From the pump to a regulator that sits before the rail of a returnless system; the supply then leads from there to the rail.
    /// </param>
    /// <returns>The plumbing.</returns>
    /// <exception cref="ArgumentNullException">A part is missing from a list.</exception>
    public static Plumbing Of(
        IReadOnlyList<IFlowLoss>? suction = null,
        IReadOnlyList<IFlowLoss>? supply = null,
        IReadOnlyList<IFlowLoss>? returnLine = null,
        IReadOnlyList<IFlowLoss>? toRegulator = null) =>
        new(
            PathLoss.Copy(suction, nameof(suction)),
            PathLoss.Copy(supply, nameof(supply)),
            PathLoss.Copy(returnLine, nameof(returnLine)),
            PathLoss.Copy(toRegulator, nameof(toRegulator)));

    /// <summary>The same with other lines on its three paths; what leads to a regulator before the rail stays.</summary>
    internal Plumbing With(IReadOnlyList<IFlowLoss> suction, IReadOnlyList<IFlowLoss> supply, IReadOnlyList<IFlowLoss> returnLine) =>
        Of(suction, supply, returnLine, ToRegulator);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Plumbing? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>How many parts each line has.</summary>
    /// <returns>For instance <c>parts: suction 1, supply 3, return 2</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"parts: suction {Suction.Count}, {(HasToRegulator ? $"to the regulator {ToRegulator.Count}, " : string.Empty)}supply {Supply.Count}, return {ReturnLine.Count}");

    /// <summary>Pressure lost in the suction line, height included, Pa.</summary>
    internal double SuctionLoss(double flow, double density, double kinematicViscosity) =>
        PathLoss.Of(_suction, flow, density, kinematicViscosity);

    /// <summary>Pressure lost in the supply line, height included, Pa.</summary>
    internal double SupplyLoss(double flow, double density, double kinematicViscosity) =>
        PathLoss.Of(_supply, flow, density, kinematicViscosity);

    /// <summary>Pressure lost in the return line, height included, Pa.</summary>
    internal double ReturnLoss(double flow, double density, double kinematicViscosity) =>
        PathLoss.Of(_return, flow, density, kinematicViscosity);

    /// <summary>Pressure lost between the pump and a regulator before the rail, height included, Pa.</summary>
    internal double ToRegulatorLoss(double flow, double density, double kinematicViscosity) =>
        PathLoss.Of(_toRegulator, flow, density, kinematicViscosity);
}
