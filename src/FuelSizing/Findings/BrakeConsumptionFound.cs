using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>BSFC that fuel and power at full load imply.</summary>
public sealed record BrakeConsumptionFound
{
    internal BrakeConsumptionFound(
        Estimate<BrakeSpecificFuelConsumption> found, BrakeSpecificFuelConsumption planned) => (Found, Planned) = (found, planned);

    /// <summary>Implied; the range is the run's scatter, not the flow meter's or the injectors' own error.</summary>
    public Estimate<BrakeSpecificFuelConsumption> Found { get; }

    /// <summary>As planned.</summary>
    public BrakeSpecificFuelConsumption Planned { get; }

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"BSFC {Readable.Of(Found.Value)} ({Readable.Of(Found.Minimum)} to {Readable.Of(Found.Maximum)}), planned {Readable.Of(Planned)}";
}
