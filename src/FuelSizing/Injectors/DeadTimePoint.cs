using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>A measured point of a dead-time table.</summary>
/// <param name="Voltage">At the injector.</param>
/// <param name="Differential">Across the injector; none in a table at one pressure.</param>
/// <param name="Time">The dead time.</param>
internal readonly record struct DeadTimePoint(ElectricPotential Voltage, Pressure? Differential, Duration Time);
