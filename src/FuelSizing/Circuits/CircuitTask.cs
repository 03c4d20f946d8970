using FuelSizing.Lines;
using FuelSizing.Pumps;

namespace FuelSizing.Circuits;

/// <summary>A circuit to be solved, in SI numbers.</summary>
/// <param name="Layout">Where the regulator sits.</param>
/// <param name="Pump">The pump or pumps.</param>
/// <param name="Plumbing">The ways.</param>
/// <param name="Supply">Voltage at the source, V.</param>
/// <param name="MinimumSupply">Lowest voltage that a controller gives the pump, V; null where it runs on the full supply.</param>
/// <param name="Set">What the regulator asks for, gauge, Pa.</param>
/// <param name="MinimumReturn">Least returned flow at which the regulator governs, m³/s.</param>
/// <param name="Injected">m³/s.</param>
/// <param name="Density">kg/m³.</param>
/// <param name="KinematicViscosity">m²/s; not read where there are no lines.</param>
internal readonly record struct CircuitTask(
    LineLayout Layout,
    PumpAssembly Pump,
    Plumbing Plumbing,
    double Supply,
    double? MinimumSupply,
    double Set,
    double MinimumReturn,
    double Injected,
    double Density,
    double KinematicViscosity)
{
    /// <summary>True if the pressure is held at the rail, behind the way to it; else before that way.</summary>
    public bool HoldsAtRail => Layout == LineLayout.Return || MinimumSupply is not null;

    /// <summary>True if something lies between the tank and where the regulator feels the pressure.</summary>
    public bool HasPathToRegulator => Plumbing.HasSuction || (HoldsAtRail && Plumbing.HasSupply);

    /// <summary>What a flow loses on its way from the tank to where the regulator feels it.</summary>
    /// <param name="flow">m³/s.</param>
    public PathLosses LossesAt(double flow) => new(
        Plumbing.SuctionLoss(flow, Density, KinematicViscosity),
        HoldsAtRail ? Plumbing.SupplyLoss(flow, Density, KinematicViscosity) : 0);

    /// <summary>What a flow takes on the way back, Pa.</summary>
    /// <param name="returned">m³/s.</param>
    public double BackLossAt(double returned) => Plumbing.ReturnLoss(returned, Density, KinematicViscosity);

    /// <summary>Every line and filter with the flow through it, in the order of flow: to the pump, to the rail, back.</summary>
    /// <param name="state">The solved circuit.</param>
    public IEnumerable<(IFlowLoss Part, double Flow)> Flows(in CircuitState state)
    {
        double pump = state.PumpFlow ?? 0;
        double forward = Layout == LineLayout.Return ? pump : Injected;
        double returned = state.Returned ?? 0;
        return
        [
            .. Plumbing.Suction.Select(part => (part, pump)),
            .. Plumbing.Supply.Select(part => (part, forward)),
            .. Plumbing.Back.Select(part => (part, returned)),
        ];
    }
}
