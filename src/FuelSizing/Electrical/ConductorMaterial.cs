using UnitsNet;

namespace FuelSizing.Electrical;

/// <summary>The metal of a conductor.</summary>
public sealed record ConductorMaterial
{
    private ConductorMaterial(string name, double resistivity, double coefficient) =>
        (Name, Resistivity, TemperatureCoefficient) = (name, ElectricResistivity.FromOhmMeters(resistivity), coefficient);

    /// <summary>
    /// Annealed copper: 17.241 nΩ·m at 20 °C and 0.00393/K, the International Annealed Copper Standard (IEC 60028; NBS
    /// Handbook 100).
    /// </summary>
    public static ConductorMaterial Copper { get; } = new("copper", 1.7241e-8, 0.00393);

    /// <summary>
    /// Aluminium for conductors: 61 % of copper's conductivity, which is 28.264 nΩ·m at 20 °C, and 0.00403/K (Industrial
    /// Power Engineering and Applications Handbook, properties of metals for current carrying). Copper-clad aluminium is
    /// often sold in place of copper: it has nearly this resistance, not copper's.
    /// </summary>
    public static ConductorMaterial Aluminium { get; } = new("aluminium", 2.8264e-8, 0.00403);

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Resistivity at 20 °C.</summary>
    public ElectricResistivity Resistivity { get; }

    /// <summary>Relative rise of the resistance for each kelvin, at 20 °C, 1/K.</summary>
    public double TemperatureCoefficient { get; }
}
