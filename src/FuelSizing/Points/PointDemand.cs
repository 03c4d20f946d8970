using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Points;

/// <summary>What the engine asks for at a point, whatever parts bring it.</summary>
/// <param name="Point">Where.</param>
/// <param name="Chain">Every step from boost to fuel.</param>
/// <param name="Basis">Which of the two estimates counts.</param>
/// <param name="Density">Of the fuel, kg/m³.</param>
/// <param name="KinematicViscosity">Of the fuel, m²/s; zero where there are no lines.</param>
/// <param name="Injected">Of the whole engine, m³/s.</param>
internal readonly record struct PointDemand(
    OperatingPoint Point,
    DemandState<Real> Chain,
    DemandBasis Basis,
    double Density,
    double KinematicViscosity,
    double Injected)
{
    /// <summary>The same with quantities, made when it is asked for.</summary>
    public FuelDemand Demand => new(Chain, Basis);
}
