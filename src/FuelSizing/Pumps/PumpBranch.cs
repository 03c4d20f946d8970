using FuelSizing.Lines;
using FuelSizing.Quantities;

namespace FuelSizing.Pumps;

/// <summary>A pump of a set, or several, with lines, filters and a check valve of its own before those that the set shares.</summary>
/// <remarks>
/// <para>Its suction leads from where the set draws (the tank, or the end of the shared suction line) to its pump, its discharge from the pump to the joint with the
/// others. Against the joint it gives its pump's rise less what its own path loses at its own flow: a falling curve, zero where its check valve does not open.</para>
/// <para>In parallel no fuel runs back through a branch, with or without a <see cref="CheckValve"/> of its own: without one that is taken for granted, and its loss with
/// it. A pump against its shut valve stands at its own highest pressure, and its rating is judged by that.</para>
/// </remarks>
/// <example>
/// <code>
/// CheckValve valve = CheckValve.Of(
///     "check valve", Pressure.FromKilopascals(6), VolumeFlow.FromLitersPerHour(180), Pressure.FromKilopascals(14));
/// Line hose = Line.Of("branch hose", Length.FromMillimeters(7), Length.FromMeters(0.8), Roughness.RubberHose);
/// PumpAssembly pump = system.Pump.Pumps[0];
/// PumpAssembly pair = PumpParallel.Of(
///     PumpBranch.Of(pump, discharge: [hose, valve]), PumpBranch.Of(pump, discharge: [hose, valve]));
/// </code>
/// </example>
public sealed record PumpBranch : PumpAssembly
{
    private static readonly Identity<PumpBranch> _identity = new Identity<PumpBranch>()
        .Value(branch => branch.Pump)
        .List(branch => branch.Suction)
        .List(branch => branch.Discharge);

    // The lists that are shown, as arrays: a solver goes over them many times.
    private readonly IFlowLoss[] _suction;
    private readonly IFlowLoss[] _discharge;
    private readonly Liquid? _liquid;

    private PumpBranch(PumpAssembly pump, IFlowLoss[] suction, IFlowLoss[] discharge, Liquid? liquid)
    {
        (Pump, _suction, _discharge, _liquid) = (pump, suction, discharge, liquid);
        (Suction, Discharge) = (Array.AsReadOnly(suction), Array.AsReadOnly(discharge));
    }

    /// <summary>The pump or pumps in it.</summary>
    public PumpAssembly Pump { get; }

    /// <summary>From where the set draws to the pump.</summary>
    public IReadOnlyList<IFlowLoss> Suction { get; }

    /// <summary>From the pump to the joint with the other branches.</summary>
    public IReadOnlyList<IFlowLoss> Discharge { get; }

    /// <inheritdoc/>
    public override string Name => Pump.Name;

    /// <inheritdoc/>
    public override IReadOnlyList<Pump> Pumps => Pump.Pumps;

    /// <summary>Gives a pump, or several, lines of its own.</summary>
    /// <param name="pump">The pump or pumps.</param>
    /// <param name="suction">Lines and filters from where the set draws to the pump; none if not given.</param>
    /// <param name="discharge">Lines, filters and check valve from the pump to the joint; none if not given.</param>
    /// <returns>The branch.</returns>
    /// <exception cref="ArgumentNullException">The pump, or a part of a path, is missing.</exception>
    public static PumpBranch Of(PumpAssembly pump, IReadOnlyList<IFlowLoss>? suction = null, IReadOnlyList<IFlowLoss>? discharge = null)
    {
        ArgumentNullException.ThrowIfNull(pump);
        return new(pump, PathLoss.Copy(suction, nameof(suction)), PathLoss.Copy(discharge, nameof(discharge)), null);
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(PumpBranch? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    internal override IEnumerable<SwitchedPump> Switches => Pump.Switches;

    internal override bool MayStop => Pump.MayStop;

    internal override bool HasOpenEnd => Pump.HasOpenEnd;

    internal override bool HasOwnLines => HasParts || Pump.HasOwnLines;

    internal override bool HasOwnSuction => _suction.Length > 0 || Pump.HasOwnSuction;

    internal override IEnumerable<PumpBranch> OwnBranches => [.. HasParts ? [this] : Array.Empty<PumpBranch>(), .. Pump.OwnBranches];

    internal override PumpAssembly WithEach(Func<PumpAssembly, PumpAssembly> exchange) => new PumpBranch(Pump.WithEach(exchange), _suction, _discharge, _liquid);

    internal override PumpAssembly WithOwn(Func<PumpBranch, PumpBranch> exchange)
    {
        PumpBranch own = HasParts ? exchange(this) : this;
        return own.With(own.Pump.WithOwn(exchange));
    }

    /// <summary>The same lines with another pump.</summary>
    internal PumpBranch With(PumpAssembly pump) => new(pump, _suction, _discharge, _liquid);

    internal override bool IsMeasuredAt(double supply) => Pump.IsMeasuredAt(supply);

    // Without parts of its own it is its pump, to the last bit.
    internal override RunningPumps Fed(SpliceVoltages volts, PumpReading reading) => !HasParts ? Pump.Fed(volts, reading)
        : _liquid is { } liquid ? new RunningBranch(this, Pump.Fed(volts, reading), liquid)
        : throw new InvalidOperationException($"{Name} has lines of its own, whose loss depends on the fuel: ask for CurveOf with a fuel and its temperature.");

    /// <summary>Pressure lost before its pump, height included, Pa.</summary>
    internal double SuctionLoss(double flow, in Liquid liquid) => PathLoss.Of(_suction, flow, liquid.Density, liquid.KinematicViscosity);

    /// <summary>Pressure lost behind its pump, height included, Pa.</summary>
    internal double DischargeLoss(double flow, in Liquid liquid) => PathLoss.Of(_discharge, flow, liquid.Density, liquid.KinematicViscosity);

    private protected override PumpAssembly In(in Liquid liquid) => new PumpBranch(Pump.InLiquid(liquid), _suction, _discharge, liquid);

    private bool HasParts => _suction.Length + _discharge.Length > 0;
}

/// <summary>The fuel in lines, in SI numbers.</summary>
/// <param name="Density">kg/m³.</param>
/// <param name="KinematicViscosity">m²/s.</param>
internal readonly record struct Liquid(double Density, double KinematicViscosity);
