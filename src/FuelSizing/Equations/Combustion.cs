using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Burning a fuel of carbon, hydrogen and oxygen in air.</summary>
internal static class Combustion
{
    /// <summary>Molar mass of carbon, kg/mol: IUPAC abridged standard atomic weights (2021).</summary>
    public const double MolarMassCarbon = 12.011e-3;

    /// <summary>Molar mass of hydrogen atoms, kg/mol: IUPAC abridged standard atomic weights (2021).</summary>
    public const double MolarMassHydrogen = 1.008e-3;

    /// <summary>Molar mass of oxygen atoms, kg/mol: IUPAC abridged standard atomic weights (2021).</summary>
    public const double MolarMassOxygen = 15.999e-3;

    /// <summary>Mass of oxygen in a mass of dry air: 0.2095 by volume, mean molar mass 28.96 g/mol.</summary>
    public const double OxygenMassFractionOfAir = 0.2314;

    /// <summary>
    /// Oxygen to burn a mass of fuel, kg/kg: w_C · M_O2/M_C + w_H · M_O2/(4 M_H) − w_O, from
    /// C + O2 → CO2 and 4 H + O2 → 2 H2O, less the oxygen that the fuel brings.
    /// </summary>
    /// <param name="carbon">Mass fraction of carbon, w_C.</param>
    /// <param name="hydrogen">Mass fraction of hydrogen, w_H.</param>
    /// <param name="oxygen">Mass fraction of oxygen, w_O.</param>
    public static T OxygenDemand<T>(T carbon, T hydrogen, T oxygen)
        where T : struct, IReal<T> =>
        (carbon * (2 * MolarMassOxygen / MolarMassCarbon))
        + (hydrogen * (2 * MolarMassOxygen / (4 * MolarMassHydrogen)))
        - oxygen;

    /// <summary>Stoichiometric air–fuel ratio by mass: oxygen demand ÷ mass fraction of oxygen in air.</summary>
    /// <param name="oxygenDemand">Oxygen to burn a mass of fuel, kg/kg.</param>
    public static T StoichiometricAirFuelRatio<T>(T oxygenDemand)
        where T : struct, IReal<T> => oxygenDemand / OxygenMassFractionOfAir;

    /// <summary>Air–fuel ratio by mass: λ · AFR.</summary>
    /// <param name="lambda">λ: air–fuel ratio ÷ stoichiometric air–fuel ratio.</param>
    /// <param name="stoichiometricAirFuelRatio">AFR, kg/kg.</param>
    public static T AirFuelRatio<T>(T lambda, T stoichiometricAirFuelRatio)
        where T : struct, IReal<T> => lambda * stoichiometricAirFuelRatio;

    /// <summary>Brake thermal efficiency: 1 ÷ (BSFC × lower heating value).</summary>
    /// <param name="brakeSpecificFuelConsumption">kg/J.</param>
    /// <param name="lowerHeatingValue">J/kg.</param>
    public static T BrakeEfficiency<T>(T brakeSpecificFuelConsumption, T lowerHeatingValue)
        where T : struct, IReal<T> => 1.0 / (brakeSpecificFuelConsumption * lowerHeatingValue);

    /// <summary>The inverse of <see cref="BrakeEfficiency"/>: BSFC, kg/J, = 1 ÷ (efficiency × lower heating value).</summary>
    /// <param name="brakeEfficiency">Work ÷ heat.</param>
    /// <param name="lowerHeatingValue">J/kg.</param>
    public static T BrakeSpecificFuelConsumption<T>(T brakeEfficiency, T lowerHeatingValue)
        where T : struct, IReal<T> => 1.0 / (brakeEfficiency * lowerHeatingValue);
}
