using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>The liquid on which an injector's static flow was measured.</summary>
/// <remarks>
/// At the same pressure a lighter liquid flows faster by volume, a heavier one more by mass:
/// volume flow ∝ 1/√ρ, mass flow ∝ √ρ. Differences of viscosity are not corrected for.
/// </remarks>
public sealed record TestFluid
{
    private TestFluid(string name, Density density) => (Name, Density) = (name, density);

    /// <summary>n-Heptane, the usual test liquid: 683.8 kg/m³ at 20 °C (Span and Wagner equation of state).</summary>
    public static TestFluid Heptane { get; } = Of("n-heptane", Density.FromKilogramsPerCubicMeter(683.8));

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Density at the temperature of the test.</summary>
    public Density Density { get; }

    /// <summary>A test liquid by its density.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="density">At the temperature of the test, 600 to 1,200 kg/m³.</param>
    /// <returns>The test liquid.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The density is outside its range.</exception>
    public static TestFluid Of(string name, Density density) =>
        new(
            Guard.Name(name, nameof(name)),
            Guard.Between(
                density,
                Density.FromKilogramsPerCubicMeter(600),
                Density.FromKilogramsPerCubicMeter(1200),
                "Give the liquid's density at the temperature of the test.",
                nameof(density)));
}
