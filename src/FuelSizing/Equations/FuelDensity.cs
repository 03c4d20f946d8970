using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Density of a liquid fuel against temperature.</summary>
internal static class FuelDensity
{
    /// <summary>The temperature at which fuel densities are stated, K (15 °C).</summary>
    public const double ReferenceTemperature = 288.15;

    /// <summary>Density at 15 °C from which the petrols' expansion goes over to the heavier products', kg/m³.</summary>
    public const double PetrolTransition = 770.5;

    /// <summary>
    /// Thermal expansion of petrol at 15 °C, 1/K: α = K0/ρ² + K1/ρ with K0 = 346.4228, K1 = 0.4388 below 770.5 kg/m³,
    /// and α = A + B/ρ² with A = −0.00336312, B = 2680.3206 from there to 787.5 (ASTM D1250-80, table 54B).
    /// </summary>
    /// <param name="densityAt15">Density at 15 °C, 653 to 787.5 kg/m³.</param>
    public static T PetrolExpansion<T>(T densityAt15)
        where T : struct, IReal<T> =>
        T.IfLess(
            densityAt15,
            PetrolTransition,
            (((T)346.4228 / densityAt15) + 0.4388) / densityAt15,
            ((T)2680.3206 / (densityAt15 * densityAt15)) - 0.00336312);

    /// <summary>
    /// Density at a temperature, kg/m³: ρ = ρ15 · exp(−α ΔT (1 + 0.8 α ΔT)), ΔT = T − 15 °C (ASTM D1250-80).
    /// </summary>
    /// <param name="densityAt15">Density at 15 °C, kg/m³.</param>
    /// <param name="expansion">Thermal expansion at 15 °C, 1/K.</param>
    /// <param name="temperature">K.</param>
    public static T At<T>(T densityAt15, T expansion, T temperature)
        where T : struct, IReal<T>
    {
        T warming = expansion * (temperature - ReferenceTemperature);
        return densityAt15 * T.Exp((T)0 - (warming * (1.0 + (0.8 * warming))));
    }
}
