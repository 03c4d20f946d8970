using FuelSizing.Fuels;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>What decides how warm the fuel in a tank gets: how much is in it, what heat it takes up at the rail, and what its walls lose.</summary>
/// <remarks>
/// <para>Walls that are not described lose nothing: no value for them would be more than a guess, and without them the fuel comes out warmer. Where the ambient air is warmer
/// than the fuel, the fuel then counts as warm as the air from the start.</para>
/// <para>The fuel in the tank is taken to be of one temperature.</para>
/// </remarks>
/// <example>
/// <code>
/// TankHeat tank = TankHeat.Of(fuelVolume: Volume.FromLiters(32), railPickup: Power.FromWatts(150))
///     .WithWalls(Area.FromSquareMeters(0.7), HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(6));
/// HeatRun run = system.WarmTank(tank, point, Duration.FromMinutes(20));
/// Console.WriteLine(run);   // temperature of tank, pump inlet and rail, and until when the fuel stays clear of boiling
/// </code>
/// </example>
public sealed record TankHeat
{
    private static readonly Identity<TankHeat> _identity = new Identity<TankHeat>()
        .Number(tank => tank.FuelVolume.CubicMeters)
        .Number(tank => (double)tank.RailPickup.Watts)
        .Number(tank => tank.WallArea?.SquareMeters)
        .Number(tank => tank.WallCoefficient?.WattsPerSquareMeterKelvin)
        .Number(tank => tank.Ambient?.Kelvins)
        .Number(tank => tank.SpecificHeat?.JoulesPerKilogramKelvin);

    private TankHeat(Volume fuelVolume, Power railPickup) => (FuelVolume, RailPickup) = (fuelVolume, railPickup);

    /// <summary>Fuel in the main tank at the start, the surge tank's not counted.</summary>
    public Volume FuelVolume { get; }

    /// <summary>Heat that the fuel takes up at rail and injectors, from the engine and its compartment.</summary>
    public Power RailPickup { get; }

    /// <summary>Area of the tank's walls; none if they were not described.</summary>
    public Area? WallArea { get; private init; }

    /// <summary>Overall heat transfer coefficient of the walls, from fuel to ambient air; none if they were not described.</summary>
    public HeatTransferCoefficient? WallCoefficient { get; private init; }

    /// <summary>Temperature of the air around the tank; none where it is that of the operating point.</summary>
    public Temperature? Ambient { get; private init; }

    /// <summary>Specific heat of the fuel; none where it is that of its kind.</summary>
    public SpecificEntropy? SpecificHeat { get; private init; }

    /// <summary>Thermal conductance of the walls, W/K; none if they were not described.</summary>
    internal double? Conductance => WallArea is { } area && WallCoefficient is { } coefficient ? area.SquareMeters * coefficient.WattsPerSquareMeterKelvin : null;

    /// <summary>Describes the heat of a tank whose walls lose nothing.</summary>
    /// <param name="fuelVolume">Fuel in the main tank at the start, 0.5 to 500 L. Give the lowest level at which the car is driven for the warmest fuel.</param>
    /// <param name="railPickup">
    /// Heat that the fuel takes up at rail and injectors, 0 to 5,000 W. No value fits all engines: measure the fuel before and behind the rail; flow × density ×
    /// specific heat × rise.
    /// </param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static TankHeat Of(Volume fuelVolume, Power railPickup) => new(
        Guard.Between(
            fuelVolume, Volume.FromLiters(0.5), Volume.FromLiters(500), "Give the fuel in the main tank at the start of the run.", nameof(fuelVolume)),
        Guard.Between(
            railPickup, Power.Zero, Power.FromWatts(5000), "Give the heat that the fuel takes up between pump outlet and regulator.", nameof(railPickup)));

    /// <summary>The same with another amount of fuel.</summary>
    /// <param name="fuelVolume">Fuel in the main tank at the start, 0.5 to 500 L.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The volume is outside its range.</exception>
    public TankHeat WithFuelVolume(Volume fuelVolume) => Same(Of(fuelVolume, RailPickup));

    /// <summary>The same with other heat at the rail.</summary>
    /// <param name="railPickup">Heat that the fuel takes up at rail and injectors, 0 to 5,000 W.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The power is outside its range.</exception>
    public TankHeat WithRailPickup(Power railPickup) => Same(Of(FuelVolume, railPickup));

    /// <summary>The same with walls that exchange heat with the ambient air: area times coefficient times difference of temperature.</summary>
    /// <param name="area">Of the walls that fuel wets, 0.001 to 20 m².</param>
    /// <param name="coefficient">
    /// Overall, from fuel to air, 0.1 to 500 W/(m²·K). Still air over bare metal is near 5 to 10 (common practice, no source); the lower value keeps the fuel warmer.
    /// </param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public TankHeat WithWalls(Area area, HeatTransferCoefficient coefficient) => this with
    {
        WallArea = Guard.Between(
            area, Area.FromSquareMeters(0.001), Area.FromSquareMeters(20), "Give the area of the tank's walls that fuel wets.", nameof(area)),
        WallCoefficient = Guard.Between(
            coefficient,
            HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(0.1),
            HeatTransferCoefficient.FromWattsPerSquareMeterKelvin(500),
            "Give the overall coefficient from fuel to ambient air; leave walls out where it is not known.",
            nameof(coefficient)),
    };

    /// <summary>The same in air of a temperature of its own: over hot tarmac, beside an exhaust.</summary>
    /// <param name="ambient">Around the tank, −50 to 80 °C.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside its range.</exception>
    public TankHeat WithAmbient(Temperature ambient) => this with
    {
        Ambient = Guard.Between(
            ambient,
            Temperature.FromDegreesCelsius(-50),
            Temperature.FromDegreesCelsius(80),
            "Give the temperature of the air around the tank.",
            nameof(ambient)),
    };

    /// <summary>The same with fuel of a known specific heat.</summary>
    /// <param name="specificHeat">1.5 to 4.5 kJ/(kg·K). Where it is not given, petrol has 2.08, ethanol 2.44, methanol 2.53, and a blend what its parts have by mass.</param>
    /// <returns>The description.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is outside its range.</exception>
    public TankHeat WithSpecificHeat(SpecificEntropy specificHeat) => this with
    {
        SpecificHeat = Guard.Between(
            specificHeat,
            SpecificEntropy.FromKilojoulesPerKilogramKelvin(1.5),
            SpecificEntropy.FromKilojoulesPerKilogramKelvin(4.5),
            "Give the specific heat of the liquid fuel.",
            nameof(specificHeat)),
    };

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(TankHeat? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Fuel, heat at the rail and walls.</summary>
    /// <returns>For instance <c>32.0 L of fuel, 150 W at the rail, insulated</c>.</returns>
    public override string ToString() =>
        $"{TextStyle.Metric.Of(FuelVolume)} of fuel, {TextStyle.Metric.Heat(RailPickup)} at the rail, {(Conductance is { } walls ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"walls of {walls:0.##} W/K") : "insulated")}";

    /// <summary>Specific heat of a fuel in this tank, J/(kg·K); not a number where it is not known.</summary>
    internal double HeatOf(Fuel fuel) => SpecificHeat?.JoulesPerKilogramKelvin ?? Fuels.SpecificHeat.Of(fuel);

    private TankHeat Same(TankHeat other) => other with { WallArea = WallArea, WallCoefficient = WallCoefficient, Ambient = Ambient, SpecificHeat = SpecificHeat };
}
