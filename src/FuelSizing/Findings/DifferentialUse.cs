using FuelSizing.Quantities;

namespace FuelSizing.Findings;

using Pressure = UnitsNet.Pressure;

/// <summary>Pressure across the injectors: rail gauge + outside air − manifold absolute.</summary>
public sealed record DifferentialUse
{
    internal DifferentialUse(Pressure lowest, RunPlace lowestPlace, Pressure highest, RunPlace highestPlace) =>
        (Lowest, LowestPlace, Highest, HighestPlace) = (lowest, lowestPlace, highest, highestPlace);

    /// <summary>The lowest.</summary>
    public Pressure Lowest { get; }

    /// <summary>Where it was.</summary>
    public RunPlace LowestPlace { get; }

    /// <summary>The highest.</summary>
    public Pressure Highest { get; }

    /// <summary>Where it was.</summary>
    public RunPlace HighestPlace { get; }

    /// <summary>In words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"{Readable.Of(Lowest)} at {LowestPlace} to {Readable.Of(Highest)} at {HighestPlace} across the injectors";
}
