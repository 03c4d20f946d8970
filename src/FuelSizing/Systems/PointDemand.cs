using FuelSizing.Engines;

namespace FuelSizing.Systems;

/// <summary>What the engine asks for at a point, whatever parts bring it.</summary>
/// <param name="Point">Where.</param>
/// <param name="Demand">Fuel, with every step.</param>
/// <param name="Density">Of the fuel, kg/m³.</param>
/// <param name="KinematicViscosity">Of the fuel, m²/s; zero where there are no lines.</param>
/// <param name="Injected">Of the whole engine, m³/s.</param>
internal sealed record PointDemand(
    OperatingPoint Point, FuelDemand Demand, double Density, double KinematicViscosity, double Injected);
