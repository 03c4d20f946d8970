using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Points;

/// <summary>What surrounds the fuel system: air, supply voltage, and the fuel's temperatures in tank, pump inlet and rail.</summary>
/// <remarks>
/// Where only the rail's temperature is given, tank and inlet are taken to be as warm, the cautious choice: fuel is warmest in the rail, and
/// vapour pressure grows with temperature. Density, and with it injector flow, is that of the rail; viscosity, and with it what lines
/// lose, that of the coldest of the three.
/// </remarks>
public sealed record Conditions
{
    private static readonly Identity<Conditions> _identity = new Identity<Conditions>()
        .Value(conditions => conditions.Atmosphere)
        .Number(conditions => conditions.SupplyVolts)
        .Number(conditions => conditions.FuelKelvins)
        .Number(conditions => conditions.TankTemperature.Kelvins)
        .Number(conditions => conditions.InletTemperature.Kelvins);

    private readonly Temperature? _tank;
    private readonly Temperature? _inlet;

    private Conditions(
        Atmosphere atmosphere, ElectricPotential supplyVoltage, Temperature fuelTemperature, Temperature? tank = null, Temperature? inlet = null)
    {
        (Atmosphere, SupplyVoltage, FuelTemperature) = (atmosphere, supplyVoltage, fuelTemperature);
        (_tank, _inlet) = (tank, inlet);
        InletKelvins = InletTemperature.Kelvins;
        ColdestKelvins = Math.Min(fuelTemperature.Kelvins, Math.Min(TankTemperature.Kelvins, InletKelvins));
        SupplyVolts = supplyVoltage.Volts;
        FuelKelvins = fuelTemperature.Kelvins;
    }

    /// <summary>Standard air at sea level, 13.5 V from a charging alternator (common practice, no source), fuel at 20 °C.</summary>
    public static Conditions Default { get; } =
        Of(Atmosphere.Standard, ElectricPotential.FromVolts(13.5), Temperature.FromDegreesCelsius(20));

    /// <summary>The ambient air.</summary>
    public Atmosphere Atmosphere { get; }

    /// <summary>Voltage at the injectors, and at the source of the pumps' wiring.</summary>
    public ElectricPotential SupplyVoltage { get; }

    /// <summary>Fuel in the rail.</summary>
    public Temperature FuelTemperature { get; }

    /// <summary>Fuel in the tank; that in the rail where it was not given.</summary>
    public Temperature TankTemperature => _tank ?? FuelTemperature;

    /// <summary>Fuel at the pump's inlet, by which its vapour pressure is judged; that in the tank where it was not given.</summary>
    public Temperature InletTemperature => _inlet ?? TankTemperature;

    internal Temperature? StatedTank => _tank;

    internal Temperature? StatedInlet => _inlet;

    internal double SupplyVolts { get; }

    internal double InletKelvins { get; }

    internal double ColdestKelvins { get; }

    internal double FuelKelvins { get; }

    /// <summary>Describes the conditions.</summary>
    /// <param name="atmosphere">The ambient air.</param>
    /// <param name="supplyVoltage">At the injectors, and at the source of the pumps' wiring, 6 to 20 V.</param>
    /// <param name="fuelTemperature">In the rail, −30 to 80 °C.</param>
    /// <returns>The conditions.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Conditions Of(
        Atmosphere atmosphere, ElectricPotential supplyVoltage, Temperature fuelTemperature)
    {
        ArgumentNullException.ThrowIfNull(atmosphere);
        return new(
            atmosphere,
            Quantities.SupplyVoltage.Within(supplyVoltage, nameof(supplyVoltage)),
            Fuel.WithinRange(fuelTemperature, nameof(fuelTemperature)));
    }

    /// <summary>The same conditions with fuel of a temperature of its own in the tank, and at the pump's inlet where that was not given.</summary>
    /// <param name="tankTemperature">−30 to 80 °C.</param>
    /// <returns>The conditions.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public Conditions WithTankTemperature(Temperature tankTemperature) => new(
        Atmosphere, SupplyVoltage, FuelTemperature, Fuel.WithinRange(tankTemperature, nameof(tankTemperature)), _inlet);

    /// <summary>The same conditions with fuel of a temperature of its own at the pump's inlet, past a hot exhaust for instance.</summary>
    /// <param name="inletTemperature">−30 to 80 °C.</param>
    /// <returns>The conditions.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public Conditions WithInletTemperature(Temperature inletTemperature) => new(
        Atmosphere, SupplyVoltage, FuelTemperature, _tank, Fuel.WithinRange(inletTemperature, nameof(inletTemperature)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Conditions? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Air, supply voltage and fuel temperature.</summary>
    /// <returns>For instance <c>air 101 kPa, 15 °C; supply 13.5 V; fuel 20 °C</c>.</returns>
    public override string ToString() =>
        $"air {Atmosphere}; supply {Readable.Of(SupplyVoltage)}; fuel {Readable.Of(FuelTemperature)}{(_tank is { } tank ? $", tank {Readable.Of(tank)}" : string.Empty)}{(_inlet is { } inlet ? $", pump inlet {Readable.Of(inlet)}" : string.Empty)}";

    /// <summary>The same air at another voltage and fuel temperature, unchecked: they are known to be within range.</summary>
    internal Conditions With(ElectricPotential supplyVoltage, Temperature fuelTemperature) =>
        With(Atmosphere, supplyVoltage, fuelTemperature);

    /// <summary>Other air, voltage and fuel temperature, unchecked; what was stated of tank and inlet stays.</summary>
    internal Conditions With(Atmosphere atmosphere, ElectricPotential supplyVoltage, Temperature fuelTemperature) =>
        new(atmosphere, supplyVoltage, fuelTemperature, _tank, _inlet);
}
