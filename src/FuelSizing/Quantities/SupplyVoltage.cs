using UnitsNet;

namespace FuelSizing.Quantities;

/// <summary>Checks on the voltage of a vehicle's supply.</summary>
internal static class SupplyVoltage
{
    /// <summary>A voltage that a vehicle of 12 V may have.</summary>
    public static ElectricPotential Within(ElectricPotential supply, string name) =>
        Allowed.Between(
            supply,
            ElectricPotential.FromVolts(6),
            ElectricPotential.FromVolts(20),
            "Give the voltage under load, engine running.",
            name);
}
