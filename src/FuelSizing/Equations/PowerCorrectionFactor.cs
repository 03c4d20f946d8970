using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>
/// Factors that turn full-load power of a spark-ignition engine, measured in some air, into that in the reference air: 99 kPa
/// of dry air at 298 K in both standards. (Compression-ignition engines have another factor, which is not reckoned here.)
/// </summary>
internal static class PowerCorrectionFactor
{
    /// <summary>Dry pressure of the reference air, Pa.</summary>
    public const double ReferenceDryPressure = 99_000;

    /// <summary>Temperature of the reference air, K.</summary>
    public const double ReferenceTemperature = 298;

    /// <summary>ISO 1585 (1992; 2020): α_a = (99 kPa/p_d)^1.2 (T/298 K)^0.6.</summary>
    /// <param name="dryPressure">p_d, of the dry air, Pa.</param>
    /// <param name="temperature">T, of the air at the engine's inlet, K.</param>
    /// <remarks>From memory; public quotations of the standard, and of UN Regulation 85, agree.</remarks>
    public static T Iso1585<T>(T dryPressure, T temperature)
        where T : struct, IReal<T> =>
        Powers.Of(ReferenceDryPressure / dryPressure, (T)1.2) * Powers.Of(temperature / ReferenceTemperature, (T)0.6);

    /// <summary>SAE J1349 (June 1990): c = 1.18 (99 kPa/p_d) √(T/298 K) − 0.18.</summary>
    /// <param name="dryPressure">p_d, of the dry air, Pa.</param>
    /// <param name="temperature">T, of the air at the engine's inlet, K.</param>
    /// <remarks>
    /// As public discussions quote it. Indicated power follows the charge; friction does not. With a mechanical efficiency of 85 %, 1/0.85 = 1.18 of brake
    /// power is indicated and 0.18 is friction.
    /// </remarks>
    public static T SaeJ1349<T>(T dryPressure, T temperature)
        where T : struct, IReal<T> =>
        (1.18 * (ReferenceDryPressure / dryPressure) * T.Sqrt(temperature / ReferenceTemperature)) - 0.18;

    /// <summary>Power or torque in the reference air: corrected = factor × measured.</summary>
    /// <param name="factor">Of either standard.</param>
    /// <param name="measured">Any unit.</param>
    public static T Apply<T>(T factor, T measured)
        where T : struct, IReal<T> => factor * measured;
}
