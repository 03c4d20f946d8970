namespace FuelSizing.Equations;

/// <summary>Density of a liquid fuel against temperature.</summary>
internal static class FuelDensity
{
    /// <summary>The temperature at which fuel densities are stated, K (15 °C).</summary>
    public const double ReferenceTemperature = 288.15;

    /// <summary>
    /// Thermal expansion of petrol at 15 °C, 1/K: α = K0/ρ² + K1/ρ with K0 = 346.4228, K1 = 0.4388 (ASTM D1250-80,
    /// table 54B, gasolines of 653 to 770 kg/m³).
    /// </summary>
    /// <param name="densityAt15">Density at 15 °C, kg/m³.</param>
    public static T PetrolExpansion<T>(T densityAt15)
        where T : struct, IReal<T> => (((T)346.4228 / densityAt15) + 0.4388) / densityAt15;

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
