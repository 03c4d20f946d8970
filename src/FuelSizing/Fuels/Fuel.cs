using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Fuels;

/// <summary>
/// A liquid fuel: what it needs of air, what heat it gives, and what it weighs, how thick it is and how readily it boils at
/// a temperature.
/// </summary>
/// <remarks>
/// <para>Ready-made: <see cref="Petrol"/>, <see cref="Ethanol"/>, <see cref="Methanol"/>, <see cref="E10"/>,
/// <see cref="E85"/>. Others: <see cref="PetrolOf"/>, <see cref="Of"/>, <see cref="FuelBlend.ByVolume"/>.</para>
/// <para>Pump fuel varies. Where the margin is thin, measure density and ethanol content instead of trusting a name:
/// fuel sold as E85 holds 51 to 83 % ethanol by volume, by class (ASTM D5798).</para>
/// <para>Viscosity and vapour pressure are optional in a fuel of your own: add them by <see cref="WithViscosity"/>,
/// <see cref="WithVapourPressure"/> or <see cref="WithReidVapourPressure"/> where line losses and suction are asked
/// for.</para>
/// </remarks>
public sealed record Fuel
{
    private static readonly Identity<Fuel> _identity = new Identity<Fuel>()
        .Value(fuel => fuel.Name)
        .Value(fuel => fuel.Composition)
        .Number(fuel => fuel.LowerHeatingValue.JoulesPerKilogram)
        .Number(fuel => fuel.ReferenceDensity)
        .Number(fuel => fuel.Expansion)
        .Number(fuel => fuel.Viscosity?.A)
        .Number(fuel => fuel.Viscosity?.B)
        .Number(fuel => fuel.Viscosity?.C)
        .Value(fuel => fuel.Volatility)
        .Number(fuel => fuel.HeatOfVaporisation?.JoulesPerKilogram);

    private const string DensityAdvice = "Give the density at 15 °C from the supplier's sheet.";

    /// <summary>Oxygen by mass over which a fuel's vapour no longer follows the law of petrol closely: EN 228 ends at 3.7 %.</summary>
    private const double MaximumOxygenOfPetrol = 0.04;

    /// <summary>The upper limit of EN 228's summer class A, Pa.</summary>
    private const double SummerReidPressure = 60_000;

    /// <summary>The upper limit of ASTM D5798's class 1, Pa.</summary>
    private const double SummerEthanolReidPressure = 62_000;

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
        Making = new(new());
    }

    /// <summary>
    /// Petrol without oxygenates: CH1.87, 44.0 MJ/kg, 745 kg/m³ at 15 °C. Composition and heating value: Heywood,
    /// Internal Combustion Engine Fundamentals (1988), table D.4; density: middle of EN 228's 720 to 775 kg/m³. Viscosity
    /// and vapour pressure as in <see cref="PetrolOf"/>.
    /// </summary>
    public static Fuel Petrol { get; } = PetrolOf(Density.FromKilogramsPerCubicMeter(745));

    /// <summary>
    /// Ethanol, C2H6O: 26.9 MJ/kg (Heywood, table D.4), 793.5 kg/m³ at 15 °C and expansion 1.08e-3 1/K (OIML R 22),
    /// viscosity by Perry's Chemical Engineers' Handbook (8th edition, table 2-313), vapour pressure by Poling, Prausnitz
    /// and O'Connell, The Properties of Gases and Liquids (5th edition, appendix A; given for 3 to 96 °C, some 6 % low at
    /// −30 °C, where it is under 0.2 kPa).
    /// </summary>
    public static Fuel Ethanol { get; } = Of(
        "ethanol",
        ElementalComposition.OfMolecule(2, 6, 1),
        SpecificEnergy.FromMegajoulesPerKilogram(26.9),
        Density.FromKilogramsPerCubicMeter(793.5),
        CoefficientOfThermalExpansion.FromPerKelvin(1.08e-3)) with
    {
        Making = new(new() { Kind = FuelKind.Ethanol }),
        Viscosity = ViscosityLaw.Ethanol,
        Volatility = VapourLaw.Ethanol,
        HeatOfVaporisation = SpecificEnergy.FromKilojoulesPerKilogram(919),
    };

    /// <summary>
    /// Methanol, CH4O: 20.0 MJ/kg (Heywood, table D.4), 796.0 kg/m³ at 15 °C and expansion 1.18e-3 1/K (de Reuck and
    /// Craven, IUPAC methanol tables), viscosity by Perry's Chemical Engineers' Handbook (8th edition, table 2-313; given up
    /// to 65 °C, the last 15 K are its continuation), vapour pressure by Poling, Prausnitz and O'Connell, The Properties of
    /// Gases and Liquids (5th edition, appendix A; given for −11 to 83 °C).
    /// </summary>
    public static Fuel Methanol { get; } = Of(
        "methanol",
        ElementalComposition.OfMolecule(1, 4, 1),
        SpecificEnergy.FromMegajoulesPerKilogram(20.0),
        Density.FromKilogramsPerCubicMeter(796.0),
        CoefficientOfThermalExpansion.FromPerKelvin(1.18e-3)) with
    {
        Making = new(new() { Kind = FuelKind.Methanol }),
        Viscosity = ViscosityLaw.Methanol,
        Volatility = VapourLaw.Methanol,
        HeatOfVaporisation = SpecificEnergy.FromKilojoulesPerKilogram(1168),
    };

    /// <summary>Petrol with 10 % ethanol by volume. Its vapour pressure is that of summer petrol to which the ethanol is added.</summary>
    public static Fuel E10 { get; } = FuelBlend.EthanolInPetrol(Ratio.FromPercent(10), "E10");

    /// <summary>
    /// Petrol with 85 % ethanol by volume: the nominal content, seldom what the pump gives. Fuel that is sold as E85 is made as volatile as its class asks
    /// for, so its Reid vapour pressure is taken as the upper limit of ASTM D5798's class 1, for summer: 62 kPa. Ethanol that is added to petrol gives less
    /// (<see cref="FuelBlend.EthanolInPetrol"/>), and winter classes allow up to 103 kPa: measure it, and give it by <see cref="WithReidVapourPressure"/>.
    /// </summary>
    public static Fuel E85 { get; } =
        FuelBlend.EthanolInPetrol(Ratio.FromPercent(85), "E85").WithReidVapourPressure(Pressure.FromPascals(SummerEthanolReidPressure));

    /// <summary>Lowest temperature at which properties are given, −30 °C.</summary>
    public static Temperature MinimumTemperature { get; } = Temperature.FromDegreesCelsius(-30);

    /// <summary>Highest temperature at which properties are given, 80 °C.</summary>
    public static Temperature MaximumTemperature { get; } = Temperature.FromDegreesCelsius(80);

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

    /// <summary>True if the fuel has a viscosity, which line losses need.</summary>
    public bool HasViscosity => Viscosity is not null;

    /// <summary>True if the fuel has a vapour pressure, which the suction margin needs.</summary>
    public bool HasVapourPressure => Volatility is not null;

    /// <summary>
    /// Heat of vaporisation, which cools the charge where fuel evaporates in it (<see cref="Engines.FuelDemandModel.WithEvaporation"/>); none where it is not
    /// known. Of petrol, ethanol and methanol 350, 919 and 1,168 kJ/kg at 25 °C (Çengel and Boles, Thermodynamics, table A-27), of a blend by mass.
    /// </summary>
    public SpecificEnergy? HeatOfVaporisation { get; internal init; }

    internal Given<FuelMaking> Making { get; init; }

    internal double AirFuelRatio { get; }

    internal double ReferenceDensity { get; }

    internal double Expansion { get; }

    internal ViscosityLaw? Viscosity { get; init; }

    internal VapourLaw? Volatility { get; init; }

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
            Guard.Name(name, nameof(name)),
            composition,
            Guard.Between(
                lowerHeatingValue,
                SpecificEnergy.FromMegajoulesPerKilogram(5),
                SpecificEnergy.FromMegajoulesPerKilogram(60),
                "Give the lower (net) heating value by mass.",
                nameof(lowerHeatingValue)),
            Guard.Between(
                densityAt15C,
                Density.FromKilogramsPerCubicMeter(600),
                Density.FromKilogramsPerCubicMeter(1200),
                DensityAdvice,
                nameof(densityAt15C)),
            Guard.Between(
                expansionAt15C,
                CoefficientOfThermalExpansion.FromPerKelvin(5e-4),
                CoefficientOfThermalExpansion.FromPerKelvin(2e-3),
                "Give the volumetric expansion at 15 °C; liquid fuels lie near 1.1e-3 1/K.",
                nameof(expansionAt15C)));
    }

    /// <summary>
    /// Petrol by composition and density. Its thermal expansion follows from the density:
    /// α = 346.4228/ρ² + 0.4388/ρ below 770.5 kg/m³, α = 2680.3206/ρ² − 0.00336312 above (ASTM D1250-80, table 54B). Its
    /// viscosity is 0.55 mm²/s at 20 °C and 0.9 mm²/s at −20 °C, the middle of what the US Department of Energy's
    /// Alternative Fuels Data Center gives (0.5 to 0.6, 0.8 to 1.0), and ln μ = A + B/T through them; its Reid vapour
    /// pressure 60 kPa, the upper limit of EN 228's summer class A (<see cref="WithReidVapourPressure"/> for another).
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
        Guard.Between(
            densityAt15C,
            Density.FromKilogramsPerCubicMeter(653),
            Density.FromKilogramsPerCubicMeter(787.5),
            DensityAdvice + " A denser petrol needs Fuel.Of with its own thermal expansion.",
            nameof(densityAt15C));
        Fuel petrol = Of(
            name,
            composition ?? ElementalComposition.OfAtomRatios(1.87),
            lowerHeatingValue ?? SpecificEnergy.FromMegajoulesPerKilogram(44.0),
            densityAt15C,
            CoefficientOfThermalExpansion.FromPerKelvin(
                (double)FuelDensity.PetrolExpansion<Real>(densityAt15C.KilogramsPerCubicMeter)));
        return petrol with
        {
            Making = new(new() { Kind = FuelKind.Petrol }),
            Viscosity = ViscosityLaw.Through(petrol, 293.15, 0.55e-6, 253.15, 0.9e-6),
            Volatility = VapourLaw.OfReid(SummerReidPressure),
            HeatOfVaporisation = SpecificEnergy.FromKilojoulesPerKilogram(350),
        };
    }

    /// <summary>The same fuel with a measured heat of vaporisation.</summary>
    /// <param name="heat">100 to 2,500 kJ/kg.</param>
    /// <returns>The fuel.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The heat is outside its range.</exception>
    public Fuel WithHeatOfVaporisation(SpecificEnergy heat) => this with
    {
        HeatOfVaporisation = Guard.Between(
            heat,
            SpecificEnergy.FromKilojoulesPerKilogram(100),
            SpecificEnergy.FromKilojoulesPerKilogram(2500),
            "Give the heat of vaporisation by mass; petrol has 325 to 375 kJ/kg, alcohols about 900 to 1,200.",
            nameof(heat)),
        Making = new(Making.Value with { HeatOfVaporisation = heat }),
    };

    /// <summary>
    /// The same fuel with a measured viscosity: ln μ = A + B/T (Andrade) through two points, μ = ρ ν.
    /// </summary>
    /// <param name="one">A temperature, −30 to 80 °C, and the kinematic viscosity there, 0.1 to 50 mm²/s.</param>
    /// <param name="other">Another, at least 5 K away; the warmer fuel is the thinner.</param>
    /// <returns>The fuel with that viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the points do not fit together.</exception>
    /// <remarks>Beyond its two points the law is a continuation of them, good for some 10 K.</remarks>
    public Fuel WithViscosity(
        (Temperature Temperature, KinematicViscosity Viscosity) one,
        (Temperature Temperature, KinematicViscosity Viscosity) other)
    {
        KinematicViscosity Checked(KinematicViscosity viscosity, string name) => Guard.Between(
            viscosity,
            KinematicViscosity.FromCentistokes(0.1),
            KinematicViscosity.FromCentistokes(50),
            "Give the kinematic viscosity from the supplier's sheet; 1 cSt is 1 mm²/s.",
            name);

        double t1 = WithinRange(one.Temperature, nameof(one)).Kelvins;
        double t2 = WithinRange(other.Temperature, nameof(other)).Kelvins;
        double first = Checked(one.Viscosity, nameof(one)).SquareMetersPerSecond;
        double second = Checked(other.Viscosity, nameof(other)).SquareMetersPerSecond;
        ApartAndMonotone(t1, first, t2, second, rises: false, nameof(other));
        return this with
        {
            Making = new(Making.Value with { Viscosity = [one, other] }),
            Viscosity = ViscosityLaw.Through(this, t1, first, t2, second),
        };
    }

    /// <summary>
    /// The same fuel with a measured vapour pressure: ln p = A − B/T (Clausius–Clapeyron) through two points.
    /// </summary>
    /// <param name="one">A temperature, −30 to 80 °C, and the absolute vapour pressure there, 0.01 to 500 kPa.</param>
    /// <param name="other">Another, at least 5 K away; the warmer fuel has the higher pressure.</param>
    /// <returns>The fuel with that vapour pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range, or the points do not fit together.</exception>
    public Fuel WithVapourPressure(
        (Temperature Temperature, Pressure Absolute) one, (Temperature Temperature, Pressure Absolute) other)
    {
        Pressure Checked(Pressure pressure, string name) => Guard.Between(
            pressure,
            Pressure.FromKilopascals(0.01),
            Pressure.FromKilopascals(500),
            "Give the true (absolute) vapour pressure at that temperature.",
            name);

        double t1 = WithinRange(one.Temperature, nameof(one)).Kelvins;
        double t2 = WithinRange(other.Temperature, nameof(other)).Kelvins;
        double first = Checked(one.Absolute, nameof(one)).Pascals;
        double second = Checked(other.Absolute, nameof(other)).Pascals;
        ApartAndMonotone(t1, first, t2, second, rises: true, nameof(other));
        return this with
        {
            Making = new(Making.Value with { VapourPressure = [one, other], ReidPressure = null }),
            Volatility = VapourLaw.Through(t1, first, t2, second),
        };
    }

    /// <summary>
    /// The same fuel with another Reid vapour pressure (RVP, or DVPE as EN 228 and ASTM D5191 measure it): petrol of
    /// another season, or a blend that was measured.
    /// </summary>
    /// <param name="reidVapourPressure">At 37.8 °C, 7 to 138 kPa (1 to 20 psi).</param>
    /// <returns>The fuel with that volatility.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is outside its range.</exception>
    /// <remarks>
    /// <para>True vapour pressure: ln p = A − B/T with A = 15.64 − 1.854 √S − (0.8742 − 0.3280 √S) ln RVP and
    /// B = 8742 − 1042 √S − (1049 − 179.4 √S) ln RVP, p and RVP in psi, T in °R, S = 3 (US EPA, AP-42, chapter 7.1, figure
    /// 7.1-15). The true pressure at 37.8 °C is some 6 % over the Reid one.</para>
    /// <para>The law is petrol's, and its chart spans −18 to 60 °C; beyond the chart, and for a measured blend of more than
    /// 4 % oxygen by mass (E10 has 3.7 %), it is an estimate. Of a blend of petrol and ethanol the pressure over 37.8 °C grows as that of both, which is
    /// faster. EN 228 allows 45 to 60 kPa in summer class A and 60 to 90 kPa in winter class D; ASTM D5798 allows
    /// ethanol fuel of 51 to 83 % from 38 to 62 kPa (class 1) to 66 to 103 kPa (class 4).</para>
    /// </remarks>
    public Fuel WithReidVapourPressure(Pressure reidVapourPressure)
    {
        Guard.Between(
            reidVapourPressure,
            Pressure.FromKilopascals(7),
            Pressure.FromKilopascals(138),
            "Give the Reid vapour pressure, or the DVPE, at 37.8 °C from the fuel's sheet.",
            nameof(reidVapourPressure));
        double reid = reidVapourPressure.Pascals;
        return this with
        {
            Making = new(Making.Value with { VapourPressure = [], ReidPressure = reidVapourPressure }),
            Volatility = (BlendVapour.EthanolIn(this) is var ethanol && ethanol > 0 ? BlendVapour.OfMeasured(reid, ethanol) : VapourLaw.OfReid(reid)) with
            {
                IsBound = Composition.OxygenShare > MaximumOxygenOfPetrol,
            },
        };
    }

    /// <summary>Density at a temperature: ρ = ρ_15 · exp(−α_15 ΔT (1 + 0.8 α_15 ΔT)), ΔT = T − 15 °C.</summary>
    /// <param name="temperature">−30 to 80 °C.</param>
    /// <returns>The density.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range.</exception>
    /// <remarks>The form is ASTM D1250-80's for petrol; over this range it also holds the alcohols within 0.3 %.</remarks>
    public Density DensityAt(Temperature temperature) =>
        Density.FromKilogramsPerCubicMeter(DensityAtKelvins(WithinRange(temperature, nameof(temperature)).Kelvins));

    /// <summary>
    /// Dynamic viscosity at a temperature: ln μ = A + B/T + C ln T, for a blend ln μ = Σ φ ln μ_i by volume (Arrhenius).
    /// </summary>
    /// <param name="temperature">−30 to 80 °C.</param>
    /// <returns>The viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range.</exception>
    /// <exception cref="InvalidOperationException">The fuel has no viscosity.</exception>
    /// <remarks>
    /// Petrols differ by 10 %; measured blends of 10 to 20 % hydrous ethanol lie up to 20 % above the rule (Zakaria et al.,
    /// International Energy Journal). In turbulent flow that changes a line's loss by 2 to 5 %.
    /// </remarks>
    public DynamicViscosity DynamicViscosityAt(Temperature temperature) =>
        DynamicViscosity.FromPascalSeconds(
            DynamicViscosityAtKelvins(WithinRange(temperature, nameof(temperature)).Kelvins));

    /// <summary>Kinematic viscosity at a temperature: ν = μ/ρ.</summary>
    /// <param name="temperature">−30 to 80 °C.</param>
    /// <returns>The viscosity.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range.</exception>
    /// <exception cref="InvalidOperationException">The fuel has no viscosity.</exception>
    public KinematicViscosity KinematicViscosityAt(Temperature temperature) =>
        KinematicViscosity.FromSquareMetersPerSecond(
            KinematicViscosityAtKelvins(WithinRange(temperature, nameof(temperature)).Kelvins));

    /// <summary>True (absolute) vapour pressure at a temperature: below it the fuel boils.</summary>
    /// <param name="temperature">−30 to 80 °C.</param>
    /// <returns>The vapour pressure; of a blend that was not measured, to the higher side.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range.</exception>
    /// <exception cref="InvalidOperationException">The fuel has no vapour pressure.</exception>
    /// <remarks>
    /// <para>Pure alcohols by Antoine, ln p = A − B/(T + C); petrol by <see cref="WithReidVapourPressure"/>. A little alcohol makes petrol more volatile
    /// than either is, much ethanol makes it less so.</para>
    /// <para>Petrol and ethanol: Reid vapour pressure k_vP (1 − φ) RVP + k_vE φ · 15.86 kPa, φ the ethanol by volume
    /// (<see cref="VapourPressure.OfBlend{T}"/>: a fit of the US EPA to measurements), and 3 kPa more, to be on the safe side; over 37.8 °C the
    /// higher of petrol's law and of the sum of what petrol and ethanol contribute. Petrol of 60 kPa comes to 70 kPa with 10 % ethanol and 38 kPa with 85 %.</para>
    /// <para>Other blends with alcohol: the petrol's Reid vapour pressure raised by the maximum that the alcohol can add, 7 kPa for ethanol, 21 kPa for
    /// methanol, whatever the shares, and no part's own pressure is undercut. A blend whose own pressure was measured goes by that.</para>
    /// </remarks>
    public Pressure VapourPressureAt(Temperature temperature) =>
        Pressure.FromPascals(VapourPressureAtKelvins(WithinRange(temperature, nameof(temperature)).Kelvins));

    /// <summary>
    /// Whether the vapour pressure at a temperature is an estimate: a blend's bound, or a law carried on beyond the
    /// temperatures that its source covers.
    /// </summary>
    /// <param name="temperature">−30 to 80 °C.</param>
    /// <returns>True if it is an estimate.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature is outside the range.</exception>
    /// <exception cref="InvalidOperationException">The fuel has no vapour pressure.</exception>
    public bool IsVapourPressureEstimatedAt(Temperature temperature) =>
        VolatilityOrRefusal().IsEstimateAt(WithinRange(temperature, nameof(temperature)).Kelvins);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Fuel? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Name, density and heating value.</summary>
    /// <returns>For instance <c>petrol, 745 kg/m³ at 15 °C, 44.0 MJ/kg</c>.</returns>
    public override string ToString() =>
        $"{Name}, {Readable.Of(DensityAt15C)} at {Readable.Of(Temperature.FromDegreesCelsius(15))}, {Readable.Of(LowerHeatingValue)}";

    internal static Temperature WithinRange(Temperature temperature, string name) =>
        Guard.Between(
            temperature,
            MinimumTemperature,
            MaximumTemperature,
            "Fuel properties are given for liquid fuel in a vehicle only.",
            name);

    internal double DensityAtKelvins(double temperature) =>
        FuelDensity.At<Real>(ReferenceDensity, Expansion, temperature);

    internal double DynamicViscosityAtKelvins(double temperature) =>
        Viscosity?.DynamicAt(temperature) ?? throw Missing("viscosity", nameof(WithViscosity));

    internal double KinematicViscosityAtKelvins(double temperature) =>
        LiquidViscosity.Kinematic<Real>(DynamicViscosityAtKelvins(temperature), DensityAtKelvins(temperature));

    internal double VapourPressureAtKelvins(double temperature) => VolatilityOrRefusal().At(temperature);

    /// <summary>Two points that a law can go through: 5 K apart, and on the right side of each other.</summary>
    private static void ApartAndMonotone(double t1, double y1, double t2, double y2, bool rises, string name)
    {
        if (!(Math.Abs(t1 - t2) >= 5))
        {
            throw Guard.OutOfRange(
                name,
                Readable.Of(Temperature.FromKelvins(t2)),
                $"at least 5 K away from {Readable.Of(Temperature.FromKelvins(t1))}",
                "Measure at two temperatures well apart.");
        }

        bool warmerIsMore = (t2 > t1) == (y2 > y1) && y1 != y2;
        if (warmerIsMore != rises || y1 == y2)
        {
            throw Guard.OutOfRange(
                name,
                $"{(y2 > y1 ? "higher" : "no higher")} at {Readable.Of(Temperature.FromKelvins(t2))} than the one at {Readable.Of(Temperature.FromKelvins(t1))}",
                rises ? "a pressure that rises with temperature" : "a viscosity that falls with temperature",
                "Check which value belongs to which temperature.");
        }
    }

    private VapourLaw VolatilityOrRefusal() =>
        Volatility ?? throw Missing("vapour pressure", $"{nameof(WithVapourPressure)} or {nameof(WithReidVapourPressure)}");

    private InvalidOperationException Missing(string property, string remedy) =>
        new($"{Name} has no {property}. Give it by {remedy}.");
}
