using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Fuel by one estimate relative to fuel by the injectors (pulse, dead time, differential pressure).</summary>
public sealed record FuelComparison : IReadable
{
    internal FuelComparison(string by, Estimate<Ratio> overInjectors) => (By, OverInjectors) = (by, overInjectors);

    /// <summary>The other estimate: flow meter, air and lambda, or power and planned BSFC.</summary>
    public string By { get; }

    /// <summary>Fuel by it ÷ fuel by the injectors; the range is the run's scatter.</summary>
    public Estimate<Ratio> OverInjectors { get; }

    /// <summary>The finding, as a code with its figures.</summary>
    public Statement Text => Statement.Of(
        "run.fuel-compared", $"fuel by {By}: {OverInjectors.Value:chance} of that by the injectors");

    /// <inheritdoc/>
    public string In(TextStyle style) => Text.In(style);

    /// <summary>In words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Text.ToString();
}
