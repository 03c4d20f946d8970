using FuelSizing.Pumps;

namespace FuelSizing.Systems;

/// <summary>A circuit to be solved, in SI numbers.</summary>
/// <param name="Layout">Where the regulator sits.</param>
/// <param name="Pump">The pump or pumps.</param>
/// <param name="Plumbing">The ways.</param>
/// <param name="Supply">Voltage at the source, V.</param>
/// <param name="LowestSupply">Lowest voltage that a controller gives the pump, V; null where it runs on the full supply.</param>
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
    double? LowestSupply,
    double Set,
    double MinimumReturn,
    double Injected,
    double Density,
    double KinematicViscosity);
