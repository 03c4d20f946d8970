using UnitsNet;

namespace FuelSizing.Regulators;

/// <summary>
/// A rising-rate unit on the return line behind a base regulator: the higher of the two pressures governs.
/// </summary>
/// <remarks>
/// The unit throttles what the base regulator lets back to the tank. While it asks for less than the base regulator, it
/// stands open and does nothing; once it asks for more, the rail follows the unit.
/// </remarks>
public sealed record RegulatorSeries : PressureRegulator
{
    private RegulatorSeries(PressureRegulator baseRegulator, RisingRate unit)
        : base(UnitMath.Max(baseRegulator.MinimumReturnFlow, unit.MinimumReturnFlow), null) =>
        (BaseRegulator, Unit) = (baseRegulator, unit);

    /// <summary>The regulator at the rail.</summary>
    public PressureRegulator BaseRegulator { get; }

    /// <summary>The unit behind it.</summary>
    public RisingRate Unit { get; }

    /// <inheritdoc/>
    public override string Description => $"{BaseRegulator.Description}; behind it {Unit.Description}";

    /// <summary>Describes the pair.</summary>
    /// <param name="baseRegulator">The regulator at the rail.</param>
    /// <param name="unit">The rising-rate unit on the return line.</param>
    /// <returns>The pair.</returns>
    /// <exception cref="ArgumentNullException">One of them is missing.</exception>
    public static RegulatorSeries Of(PressureRegulator baseRegulator, RisingRate unit)
    {
        ArgumentNullException.ThrowIfNull(baseRegulator);
        ArgumentNullException.ThrowIfNull(unit);
        return new(baseRegulator, unit);
    }

    internal override PressureRegulator WithBase(UnitsNet.Pressure basePressure) =>
        throw new ArgumentException(
            $"The regulator is a series of two ({Description}), each with a base of its own. Ask of one regulator.",
            nameof(basePressure));
}
