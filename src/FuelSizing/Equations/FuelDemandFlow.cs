using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Fuel that the engine burns, reckoned both ways.</summary>
internal static class FuelDemandFlow
{
    /// <summary>From power, kg/s: P · BSFC.</summary>
    /// <param name="brakePower">W.</param>
    /// <param name="brakeSpecificFuelConsumption">kg/J.</param>
    public static T FromPower<T>(T brakePower, T brakeSpecificFuelConsumption)
        where T : struct, IReal<T> => brakePower * brakeSpecificFuelConsumption;

    /// <summary>From air, kg/s: ṁ_air ÷ air–fuel ratio.</summary>
    /// <param name="airMassFlow">kg/s.</param>
    /// <param name="airFuelRatio">λ times the stoichiometric one, kg/kg.</param>
    public static T FromAir<T>(T airMassFlow, Divisor<T> airFuelRatio)
        where T : struct, IReal<T> => airMassFlow / airFuelRatio;

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
