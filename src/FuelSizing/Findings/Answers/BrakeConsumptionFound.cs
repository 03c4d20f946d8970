using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>BSFC that fuel and power at full load imply.</summary>
public sealed record BrakeConsumptionFound : IReadable
{
    internal BrakeConsumptionFound(
        Estimate<BrakeSpecificFuelConsumption> found, BrakeSpecificFuelConsumption planned) => (Found, Planned) = (found, planned);

    /// <summary>Implied; the range is the run's scatter, not the flow meter's or the injectors' own error.</summary>
    public Estimate<BrakeSpecificFuelConsumption> Found { get; }

    /// <summary>As planned.</summary>
    public BrakeSpecificFuelConsumption Planned { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "run.bsfc", $"BSFC {Found.Value} ({Found.Minimum} to {Found.Maximum}), planned {Planned}");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
