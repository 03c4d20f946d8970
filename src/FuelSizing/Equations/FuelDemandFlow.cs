namespace FuelSizing.Equations;

/// <summary>Fuel that the engine burns, reckoned both ways.</summary>
internal static class FuelDemandFlow
{
    /// <summary>From power, kg/s: P · BSFC.</summary>
    /// <param name="brakePower">W.</param>
    /// <param name="brakeSpecificFuelConsumption">kg/J.</param>
    public static T FromPower<T>(T brakePower, T brakeSpecificFuelConsumption)
        where T : struct, IReal<T> => brakePower * brakeSpecificFuelConsumption;

    /// <summary>From air, kg/s: ṁ_air/(λ · AFR).</summary>
    /// <param name="airMassFlow">kg/s.</param>
    /// <param name="lambda">Air–fuel ratio ÷ stoichiometric air–fuel ratio.</param>
    /// <param name="stoichiometricAirFuelRatio">AFR, kg/kg.</param>
    public static T FromAir<T>(T airMassFlow, T lambda, T stoichiometricAirFuelRatio)
        where T : struct, IReal<T> => airMassFlow / (lambda * stoichiometricAirFuelRatio);

    /// <summary>By volume, m³/s: ṁ/ρ.</summary>
    /// <param name="massFlow">kg/s.</param>
    /// <param name="density">kg/m³.</param>
    public static T Volume<T>(T massFlow, Divisor<T> density)
        where T : struct, IReal<T> => massFlow / density;

    /// <summary>How much the figure from power is over the one from air, as a fraction of the latter.</summary>
    /// <param name="fromPower">kg/s.</param>
    /// <param name="fromAir">kg/s.</param>
    public static T Difference<T>(T fromPower, T fromAir)
        where T : struct, IReal<T> => (fromPower / fromAir) - 1.0;
}
