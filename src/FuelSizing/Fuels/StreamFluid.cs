using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Fuels;

/// <summary>The liquid of a second stream: a fuel, or fuel and water.</summary>
/// <remarks>
/// <para>Water burns nothing and needs no air: heating value and air–fuel ratio of the liquid are the fuel's times its share by mass. The water's own evaporation
/// is cooling (<see cref="HeatOfVaporisation"/>) and not taken off the heating value.</para>
/// <para>Density: as measured (<see cref="WithDensity"/>), else that of an ideal mixture, whose volumes add, and that is an assumption. Methanol and water
/// contract: 40 % methanol by mass at 20 °C is 934.5 kg/m³ and would be 903.3 (Coulson and Richardson's Chemical Engineering, volume 6, chapter 8). A mixture
/// whose density was not measured may therefore be up to 3.5 % denser, and what needs the upper bound of its mass flow takes that. Water is taken to weigh 999.1
/// kg/m³ at any temperature: at 40 °C it weighs 0.7 % less.</para>
/// </remarks>
/// <example>
/// <code>
/// StreamFluid methanol = StreamFluid.Of(Fuel.Methanol);
/// StreamFluid half = StreamFluid.WithWaterByVolume(Fuel.Methanol, Ratio.FromPercent(50));
/// Console.WriteLine(half);   // methanol and water, 44 % methanol by mass, 886 kg/m³ at 15 °C (ideal mixture)
/// </code>
/// </example>
public sealed record StreamFluid
{
    private static readonly Identity<StreamFluid> _identity = new Identity<StreamFluid>()
        .Value(fluid => fluid.Fuel)
        .Number(fluid => fluid.MassShare)
        .Number(fluid => fluid.DensityAt15C?.KilogramsPerCubicMeter);

    /// <summary>Density of water at 15 °C, kg/m³.</summary>
    internal const double WaterDensity = 999.1;

    /// <summary>Heat of vaporisation of water at 25 °C, J/kg.</summary>
    internal const double WaterHeat = 2_442e3;

    // Over the 3.3 % measured at 40 % by mass, where methanol and water contract about most.
    private const double MaximumContraction = 0.035;

    private StreamFluid(Fuel fuel, Ratio share, bool isByVolume, double massShare) =>
        (Fuel, FuelShare, IsByVolume, MassShare) = (fuel, share, isByVolume, massShare);

    /// <summary>The fuel in it.</summary>
    public Fuel Fuel { get; }

    /// <summary>What it is, in words: the fuel's name, and water where it holds any.</summary>
    public string Name => MassShare < 1 ? $"{Fuel.Name} and water" : Fuel.Name;

    /// <summary>The fuel's share as it was stated: by volume before mixing at 15 °C where <see cref="IsByVolume"/>, else by mass.</summary>
    public Ratio FuelShare { get; }

    /// <summary>True if the share was stated by volume.</summary>
    public bool IsByVolume { get; }

    /// <summary>The fuel's share by mass.</summary>
    public Ratio FuelMassShare => Ratio.FromDecimalFractions(MassShare);

    /// <summary>Density at 15 °C as measured; none where it is taken from an ideal mixture, or is the pure fuel's own.</summary>
    public Density? DensityAt15C { get; private init; }

    /// <summary>True if it holds water and its density was not measured.</summary>
    public bool IsDensityAssumed => MassShare < 1 && DensityAt15C is null;

    /// <summary>Lower heating value of a mass of the liquid.</summary>
    public SpecificEnergy LowerHeatingValue => SpecificEnergy.FromJoulesPerKilogram(HeatingValue);

    /// <summary>Air that burns a mass of the liquid, kg/kg.</summary>
    public double StoichiometricAirFuelRatio => MassShare * Fuel.AirFuelRatio;

    /// <summary>Heat of vaporisation of a mass of the liquid, water's 2,442 kJ/kg included; none where the fuel's is not known.</summary>
    public SpecificEnergy? HeatOfVaporisation => Fuel.HeatOfVaporisation is { } heat
        ? SpecificEnergy.FromJoulesPerKilogram(FuelMixing.ByShare<Real>([MassShare, 1 - MassShare], [heat.JoulesPerKilogram, WaterHeat]).Value)
        : null;

    internal double MassShare { get; }

    internal double HeatingValue => MassShare * Fuel.LowerHeatingValue.JoulesPerKilogram;

    /// <summary>Fuel without water.</summary>
    /// <param name="fuel">For instance <see cref="Fuel.Methanol"/>.</param>
    /// <returns>The liquid.</returns>
    public static StreamFluid Of(Fuel fuel)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        return new(fuel, Ratio.FromPercent(100), false, 1);
    }

    /// <summary>Fuel and water, the fuel's share stated by mass.</summary>
    /// <param name="fuel">One that mixes with water at any share: methanol or ethanol.</param>
    /// <param name="fuelShare">Its share by mass, 0 to 100 %.</param>
    /// <returns>The liquid.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    /// <exception cref="ArgumentException">The fuel does not mix with water.</exception>
    public static StreamFluid WithWaterByMass(Fuel fuel, Ratio fuelShare)
    {
        Ratio share = Within(fuel, fuelShare);
        return new(fuel, share, false, share.DecimalFractions);
    }

    /// <summary>Fuel and water, the fuel's share stated by volume: of the volumes that are poured together at 15 °C.</summary>
    /// <param name="fuel">One that mixes with water at any share: methanol or ethanol.</param>
    /// <param name="fuelShare">Its share by volume, 0 to 100 %.</param>
    /// <returns>The liquid.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    /// <exception cref="ArgumentException">The fuel does not mix with water.</exception>
    public static StreamFluid WithWaterByVolume(Fuel fuel, Ratio fuelShare)
    {
        Ratio share = Within(fuel, fuelShare);
        return new(fuel, share, true, FuelMixing.MassShare<Real>(share.DecimalFractions, fuel.ReferenceDensity, WaterDensity).Value);
    }

    /// <summary>The same liquid with its density as measured.</summary>
    /// <param name="densityAt15C">
    /// At 15 °C: between 1 % under an ideal mixture and 5 % over it. A pure fuel has its own density; measure that in <see cref="Fuel"/>.
    /// </param>
    /// <returns>The liquid.</returns>
    /// <exception cref="ArgumentException">It holds no water.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The density is outside its range.</exception>
    public StreamFluid WithDensity(Density densityAt15C)
    {
        if (!(MassShare < 1))
        {
            throw new ArgumentException(
                $"densityAt15C was given for {Fuel.Name} without water, which has a density of its own. Give the fuel another by Fuel.Of.", nameof(densityAt15C));
        }

        double ideal = FuelMixing.Density<Real>(MassShare, Fuel.ReferenceDensity, WaterDensity);
        return this with
        {
            DensityAt15C = Guard.Between(
                densityAt15C,
                Density.FromKilogramsPerCubicMeter(0.99 * ideal),
                Density.FromKilogramsPerCubicMeter(1.05 * ideal),
                "Measure the mixture with a hydrometer at 15 °C; a density beyond this is another mixture.",
                nameof(densityAt15C)),
        };
    }

    /// <summary>Density at a temperature: as measured at 15 °C, or of an ideal mixture, and from there with the fuel's own thermal expansion.</summary>
    /// <param name="temperature">−30 to 80 °C.</param>
    /// <returns>The density.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range.</exception>
    public Density DensityAt(Temperature temperature) =>
        Density.FromKilogramsPerCubicMeter(DensityAtKelvins(Fuel.WithinRange(temperature, nameof(temperature)).Kelvins));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(StreamFluid? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Fuel, share by mass and density.</summary>
    /// <returns>For instance <c>methanol and water, 44 % methanol by mass, 886 kg/m³ at 15 °C (ideal mixture)</c>.</returns>
    public override string ToString() =>
        $"{Name}, {(MassShare < 1 ? $"{Readable.Of(FuelMassShare)} {Fuel.Name} by mass, " : string.Empty)}{Readable.Of(DensityAt(Temperature.FromDegreesCelsius(15)))} at {Readable.Of(Temperature.FromDegreesCelsius(15))}{(IsDensityAssumed ? " (ideal mixture)" : string.Empty)}";

    /// <summary>Density at a temperature, kg/m³: of an unmeasured mixture the least that it can be.</summary>
    internal double DensityAtKelvins(double temperature)
    {
        double fuel = Fuel.DensityAtKelvins(temperature);
        if (!(MassShare < 1))
        {
            return fuel;
        }

        double ideal = FuelMixing.Density<Real>(MassShare, fuel, WaterDensity);
        return DensityAt15C is { } measured
            ? measured.KilogramsPerCubicMeter * ideal / FuelMixing.Density<Real>(MassShare, Fuel.ReferenceDensity, WaterDensity)
            : ideal;
    }

    /// <summary>The most that the density can be at a temperature, kg/m³: the same where it is known.</summary>
    internal double MaximumDensityAtKelvins(double temperature) =>
        DensityAtKelvins(temperature) * (IsDensityAssumed && MassShare > 0 ? 1 + MaximumContraction : 1);

    private static Ratio Within(Fuel fuel, Ratio share)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        return fuel.Making.Value.Kind is FuelKind.Methanol or FuelKind.Ethanol
            ? Guard.Between(share, Ratio.Zero, Ratio.FromPercent(100), "Give the share of the fuel; the rest is water.", "fuelShare")
            : throw new ArgumentException(
                $"fuel is {fuel.Name}, which does not mix with water at every share. Give Fuel.Methanol or Fuel.Ethanol, or the liquid without water by StreamFluid.Of.", nameof(fuel));
    }
}
