using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Burning a fuel of carbon, hydrogen and oxygen in air.</summary>
public static class Combustion
{
    /// <summary><c>M_C</c> (kg/mol): molar mass of carbon. IUPAC, abridged standard atomic weights (2021).</summary>
    public const double MolarMassCarbon = 12.011e-3;

    /// <summary><c>M_H</c> (kg/mol): molar mass of hydrogen atoms. IUPAC, abridged standard atomic weights (2021).</summary>
    public const double MolarMassHydrogen = 1.008e-3;

    /// <summary><c>M_O</c> (kg/mol): molar mass of oxygen atoms. IUPAC, abridged standard atomic weights (2021).</summary>
    public const double MolarMassOxygen = 15.999e-3;

    /// <summary><c>w_O2</c> (1): mass fraction of oxygen in dry air. 0.2095 by volume, mean molar mass 28.96 g/mol.</summary>
    public const double OxygenMassFractionOfAir = 0.2314;

    /// <summary>Oxygen that burns a mass of fuel, less the oxygen that the fuel brings: C + O₂ → CO₂ and 4 H + O₂ → 2 H₂O.
    /// <para><c>O_st = 2 · M_O/M_C · w_C + 2 · M_O/(4 · M_H) · w_H − w_O</c></para>
    /// </summary>
    /// <param name="carbon"><c>w_C</c> (1): mass fraction of carbon in the fuel.</param>
    /// <param name="hydrogen"><c>w_H</c> (1): mass fraction of hydrogen in the fuel.</param>
    /// <param name="oxygen"><c>w_O</c> (1): mass fraction of oxygen in the fuel.</param>
    /// <returns><c>O_st</c> (kg/kg): oxygen that burns a mass of fuel.</returns>
    /// <remarks>
    /// <para>Range: fractions from 0 to 1 that add up to 1 at most; no sulphur or nitrogen.</para>
    /// <para>Outside: nothing is checked; fractions are not normalised.</para>
    /// <example>
    /// <code>
    /// Real result = Combustion.OxygenDemand&lt;Real&gt;(carbon: 0.86, hydrogen: 0.14, oxygen: 0);
    /// // result = 3.402132 kg/kg
    /// </code>
    /// </example>
    /// <para>Source: derived from the two reactions; molar masses of IUPAC, abridged standard atomic weights (2021).</para>
    /// </remarks>
    public static T OxygenDemand<T>(T carbon, T hydrogen, T oxygen)
        where T : struct, IReal<T> =>
        (carbon * (2 * MolarMassOxygen / MolarMassCarbon))
        + (hydrogen * (2 * MolarMassOxygen / (4 * MolarMassHydrogen)))
        - oxygen;

    /// <summary>Air that burns a mass of fuel completely, with no oxygen left.
    /// <para><c>AFR_st = O_st/w_O2</c></para>
    /// </summary>
    /// <param name="oxygenDemand"><c>O_st</c> (kg/kg): oxygen that burns a mass of fuel.</param>
    /// <returns><c>AFR_st</c> (kg/kg): stoichiometric air–fuel ratio.</returns>
    /// <remarks>
    /// <para>Range: dry air.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = Combustion.StoichiometricAirFuelRatio&lt;Real&gt;(oxygenDemand: 3.4021315);
    /// // result = 14.70238 kg/kg
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T StoichiometricAirFuelRatio<T>(T oxygenDemand)
        where T : struct, IReal<T> => oxygenDemand / OxygenMassFractionOfAir;

    /// <summary>Air–fuel ratio as burnt.
    /// <para><c>AFR = λ · AFR_st</c></para>
    /// </summary>
    /// <param name="lambda"><c>λ</c> (1): lambda of the engine.</param>
    /// <param name="stoichiometricAirFuelRatio"><c>AFR_st</c> (kg/kg): stoichiometric air–fuel ratio.</param>
    /// <returns><c>AFR</c> (kg/kg): air–fuel ratio as burnt.</returns>
    /// <remarks>
    /// <para>Range: λ over 0; engines run at 0.7 to 1.3.</para>
    /// <para>Outside: nothing is checked; the result is in proportion.</para>
    /// <example>
    /// <code>
    /// Real result = Combustion.AirFuelRatio&lt;Real&gt;(lambda: 0.8, stoichiometricAirFuelRatio: 14.7);
    /// // result = 11.76 kg/kg
    /// </code>
    /// </example>
    /// <para>Source: definition of lambda.</para>
    /// </remarks>
    public static T AirFuelRatio<T>(T lambda, T stoichiometricAirFuelRatio)
        where T : struct, IReal<T> => lambda * stoichiometricAirFuelRatio;

    /// <summary>Brake thermal efficiency: work at the crank ÷ heat of the fuel.
    /// <para><c>η_e = 1/(b · H)</c></para>
    /// </summary>
    /// <param name="brakeSpecificFuelConsumption"><c>b</c> (kg/J): brake specific fuel consumption.</param>
    /// <param name="lowerHeatingValue"><c>H</c> (J/kg): lower heating value.</param>
    /// <returns><c>η_e</c> (1): brake thermal efficiency.</returns>
    /// <remarks>
    /// <para>Range: b and H over 0; spark-ignition engines reach 0.2 to 0.4.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = Combustion.BrakeEfficiency&lt;Real&gt;(brakeSpecificFuelConsumption: 8e-8, lowerHeatingValue: 42.5e6);
    /// // result = 0.294118
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T BrakeEfficiency<T>(T brakeSpecificFuelConsumption, T lowerHeatingValue)
        where T : struct, IReal<T> => 1.0 / (brakeSpecificFuelConsumption * lowerHeatingValue);

    /// <summary>Brake specific fuel consumption of a brake thermal efficiency.
    /// <para><c>b = 1/(η_e · H)</c></para>
    /// </summary>
    /// <param name="brakeEfficiency"><c>η_e</c> (1): brake thermal efficiency.</param>
    /// <param name="lowerHeatingValue"><c>H</c> (J/kg): lower heating value.</param>
    /// <returns><c>b</c> (kg/J): brake specific fuel consumption.</returns>
    /// <remarks>
    /// <para>Range: 0 &lt; η_e &lt; 1, H over 0.</para>
    /// <para>Outside: nothing is checked; zero gives infinity.</para>
    /// <example>
    /// <code>
    /// Real result = Combustion.BrakeSpecificFuelConsumption&lt;Real&gt;(brakeEfficiency: 0.25, lowerHeatingValue: 40e6);
    /// // result = 1e-7 kg/J
    /// </code>
    /// </example>
    /// <para>Source: definition; the inverse of BrakeEfficiency.</para>
    /// </remarks>
    public static T BrakeSpecificFuelConsumption<T>(T brakeEfficiency, T lowerHeatingValue)
        where T : struct, IReal<T> => 1.0 / (brakeEfficiency * lowerHeatingValue);
}
