using FuelSizing.Equations;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Fuels;

/// <summary>A liquid fuel: what it needs of air, what heat it gives, and what it weighs at a temperature.</summary>
/// <remarks>
/// <para>Ready-made: <see cref="Petrol"/>, <see cref="Ethanol"/>, <see cref="Methanol"/>, <see cref="E10"/>,
/// <see cref="E85"/>. Others: <see cref="PetrolOf"/>, <see cref="Of"/>, <see cref="FuelBlend.ByVolume"/>.</para>
/// <para>Pump fuel varies. Where the margin is thin, measure density and ethanol content instead of trusting a name:
/// fuel sold as E85 holds 51 to 83 % ethanol by volume, by class (ASTM D5798).</para>
/// </remarks>
public sealed record Fuel
{
    private const string DensityAdvice = "Give the density at 15 °C from the supplier's sheet.";

    private Fuel(
        string name,
        ElementalComposition composition,
        SpecificEnergy lowerHeatingValue,
        Density densityAt15C,
        CoefficientOfThermalExpansion expansionAt15C)
    {
        Name = name;
        Composition = composition;
        LowerHeatingValue = lowerHeatingValue;
        DensityAt15C = densityAt15C;
        ExpansionAt15C = expansionAt15C;
        AirFuelRatio = composition.StoichiometricAirFuelRatio;
        ReferenceDensity = densityAt15C.KilogramsPerCubicMeter;
        Expansion = expansionAt15C.PerKelvin;
    }

    /// <summary>
    /// Petrol without oxygenates: CH1.87, 44.0 MJ/kg, 745 kg/m³ at 15 °C. Composition and heating value: Heywood,
    /// Internal Combustion Engine Fundamentals (1988), table D.4; density: middle of EN 228's 720 to 775 kg/m³.
    /// </summary>
    public static Fuel Petrol { get; } = PetrolOf(Density.FromKilogramsPerCubicMeter(745));

    /// <summary>
    /// Ethanol, C2H6O: 26.9 MJ/kg (Heywood, table D.4), 793.5 kg/m³ at 15 °C and expansion 1.08e-3 1/K (OIML R 22).
    /// </summary>
    public static Fuel Ethanol { get; } = Of(
        "ethanol",
        ElementalComposition.OfMolecule(2, 6, 1),
        SpecificEnergy.FromMegajoulesPerKilogram(26.9),
        Density.FromKilogramsPerCubicMeter(793.5),
        CoefficientOfThermalExpansion.FromPerKelvin(1.08e-3));

    /// <summary>
    /// Methanol, CH4O: 20.0 MJ/kg (Heywood, table D.4), 796.0 kg/m³ at 15 °C and expansion 1.18e-3 1/K (de Reuck and
    /// Craven, IUPAC methanol tables).
    /// </summary>
    public static Fuel Methanol { get; } = Of(
        "methanol",
        ElementalComposition.OfMolecule(1, 4, 1),
        SpecificEnergy.FromMegajoulesPerKilogram(20.0),
        Density.FromKilogramsPerCubicMeter(796.0),
        CoefficientOfThermalExpansion.FromPerKelvin(1.18e-3));

    /// <summary>Petrol with 10 % ethanol by volume.</summary>
    public static Fuel E10 { get; } = FuelBlend.EthanolInPetrol(Ratio.FromPercent(10), "E10");

    /// <summary>Petrol with 85 % ethanol by volume: the nominal content, seldom what the pump gives.</summary>
    public static Fuel E85 { get; } = FuelBlend.EthanolInPetrol(Ratio.FromPercent(85), "E85");

    /// <summary>Lowest temperature at which properties are given, −30 °C.</summary>
    public static Temperature LowestTemperature { get; } = Temperature.FromDegreesCelsius(-30);

    /// <summary>Highest temperature at which properties are given, 80 °C.</summary>
    public static Temperature HighestTemperature { get; } = Temperature.FromDegreesCelsius(80);

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Carbon, hydrogen and oxygen by mass.</summary>
    public ElementalComposition Composition { get; }

    /// <summary>Lower heating value (water leaves as vapour).</summary>
    public SpecificEnergy LowerHeatingValue { get; }

    /// <summary>Density at 15 °C.</summary>
    public Density DensityAt15C { get; }

    /// <summary>Volumetric thermal expansion at 15 °C.</summary>
    public CoefficientOfThermalExpansion ExpansionAt15C { get; }

    /// <summary>
    /// Stoichiometric air–fuel ratio, kg of dry air per kg of fuel, from the elements
    /// (<see cref="ElementalComposition.StoichiometricAirFuelRatio"/>).
    /// </summary>
    public double StoichiometricAirFuelRatio => AirFuelRatio;

    internal double AirFuelRatio { get; }

    internal double ReferenceDensity { get; }

    internal double Expansion { get; }

    /// <summary>A fuel of your own.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="composition">Its elements.</param>
    /// <param name="lowerHeatingValue">5 to 60 MJ/kg.</param>
    /// <param name="densityAt15C">600 to 1200 kg/m³.</param>
    /// <param name="expansionAt15C">5e-4 to 2e-3 1/K.</param>
    /// <returns>The fuel.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Fuel Of(
        string name,
        ElementalComposition composition,
        SpecificEnergy lowerHeatingValue,
        Density densityAt15C,
        CoefficientOfThermalExpansion expansionAt15C)
    {
        ArgumentNullException.ThrowIfNull(composition);
        return new(
            Allowed.Name(name, nameof(name)),
            composition,
            Allowed.Between(
                lowerHeatingValue,
                SpecificEnergy.FromMegajoulesPerKilogram(5),
                SpecificEnergy.FromMegajoulesPerKilogram(60),
                "Give the lower (net) heating value by mass.",
                nameof(lowerHeatingValue)),
            Allowed.Between(
                densityAt15C,
                Density.FromKilogramsPerCubicMeter(600),
                Density.FromKilogramsPerCubicMeter(1200),
                DensityAdvice,
                nameof(densityAt15C)),
            Allowed.Between(
                expansionAt15C,
                CoefficientOfThermalExpansion.FromPerKelvin(5e-4),
                CoefficientOfThermalExpansion.FromPerKelvin(2e-3),
                "Give the volumetric expansion at 15 °C; liquid fuels lie near 1.1e-3 1/K.",
                nameof(expansionAt15C)));
    }

    /// <summary>
    /// Petrol by composition and density. Its thermal expansion follows from the density:
    /// α = 346.4228/ρ² + 0.4388/ρ below 770.5 kg/m³, α = 2680.3206/ρ² − 0.00336312 above (ASTM D1250-80, table 54B).
    /// </summary>
    /// <param name="densityAt15C">653 to 787.5 kg/m³, the table's range for gasolines.</param>
    /// <param name="composition">Its elements; CH1.87 if not given (Heywood, table D.4).</param>
    /// <param name="lowerHeatingValue">5 to 60 MJ/kg; 44.0 if not given (Heywood, table D.4).</param>
    /// <param name="name">Shown in results.</param>
    /// <returns>The fuel.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Fuel PetrolOf(
        Density densityAt15C,
        ElementalComposition? composition = null,
        SpecificEnergy? lowerHeatingValue = null,
        string name = "petrol")
    {
        Allowed.Between(
            densityAt15C,
            Density.FromKilogramsPerCubicMeter(653),
            Density.FromKilogramsPerCubicMeter(787.5),
            DensityAdvice + " A denser petrol needs Fuel.Of with its own thermal expansion.",
            nameof(densityAt15C));
        return Of(
            name,
            composition ?? ElementalComposition.OfAtomRatios(1.87),
            lowerHeatingValue ?? SpecificEnergy.FromMegajoulesPerKilogram(44.0),
            densityAt15C,
            CoefficientOfThermalExpansion.FromPerKelvin(
                (double)FuelDensity.PetrolExpansion<Real>(densityAt15C.KilogramsPerCubicMeter)));
    }

    /// <summary>Density at a temperature: ρ = ρ15 · exp(−α ΔT (1 + 0.8 α ΔT)), ΔT = T − 15 °C.</summary>
    /// <param name="temperature">−30 to 80 °C.</param>
    /// <returns>The density.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range.</exception>
    /// <remarks>The form is ASTM D1250-80's for petrol; over this range it also holds the alcohols within 0.3 %.</remarks>
    public Density DensityAt(Temperature temperature) =>
        Density.FromKilogramsPerCubicMeter(DensityAtKelvins(WithinRange(temperature, nameof(temperature)).Kelvins));

    internal static Temperature WithinRange(Temperature temperature, string name) =>
        Allowed.Between(
            temperature,
            LowestTemperature,
            HighestTemperature,
            "Fuel properties are given for liquid fuel in a vehicle only.",
            name);

    internal double DensityAtKelvins(double temperature) =>
        FuelDensity.At<Real>(ReferenceDensity, Expansion, temperature);
}
