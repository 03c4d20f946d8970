using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>Checks on the voltage of a vehicle's supply.</summary>
internal static class SupplyVoltage
{
    private static readonly ElectricPotential Minimum = ElectricPotential.FromVolts(6);
    private static readonly ElectricPotential Maximum = ElectricPotential.FromVolts(20);

    /// <summary>A voltage that a vehicle of 12 V may have.</summary>
    public static ElectricPotential Within(ElectricPotential supply, string name) =>
        Guard.Between(supply, Minimum, Maximum, "Give the voltage under load, engine running.", name);

    /// <summary>True for a voltage that a vehicle of 12 V may have.</summary>
    public static bool IsDefault(ElectricPotential supply) => supply >= Minimum && supply <= Maximum;
}
