using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Resistance of a conductor to direct current.</summary>
internal static class WireResistance
{
    /// <summary>The temperature at which resistivities are stated, °C: IEC 60028.</summary>
    public const double ReferenceCelsius = 20;

    /// <summary>Resistance of a length, Ω: R = r L.</summary>
    /// <param name="perLength">r, Ω/m.</param>
    /// <param name="length">L, m.</param>
    public static T Of<T>(T perLength, T length)
        where T : struct, IReal<T> => perLength * length;

    /// <summary>Resistance of each metre, Ω/m: r = ρ (1 + k)/A.</summary>
    /// <param name="resistivity">ρ, Ω·m.</param>
    /// <param name="lay">k: strands are longer than the cable that they are twisted into.</param>
    /// <param name="area">A, m².</param>
    public static T PerLength<T>(T resistivity, T lay, T area)
        where T : struct, IReal<T> => resistivity * ((T)1 + lay) / area;

    /// <summary>Resistivity or resistance away from 20 °C, in its own unit: x = x20 (1 + α (t − 20 °C)).</summary>
    /// <param name="at20">x20.</param>
    /// <param name="coefficient">α, 1/K.</param>
    /// <param name="celsius">t, °C.</param>
    public static T AtTemperature<T>(T at20, T coefficient, T celsius)
        where T : struct, IReal<T> => at20 * ((T)1 + (coefficient * (celsius - ReferenceCelsius)));

    /// <summary>
    /// Smallest area whose drop is no more than allowed, m²: A = ρ (1 + k) L I/(ΔV − I R_c); not positive where the
    /// contacts alone exceed the drop.
    /// </summary>
    /// <param name="resistivity">ρ at the conductor's temperature, Ω·m.</param>
    /// <param name="lay">k.</param>
    /// <param name="length">L, out and back, m.</param>
    /// <param name="current">I, A.</param>
    /// <param name="allowedDrop">ΔV, V.</param>
    /// <param name="contacts">R_c, Ω.</param>
    public static T SmallestArea<T>(T resistivity, T lay, T length, T current, T allowedDrop, T contacts)
        where T : struct, IReal<T> =>
        PerLength(resistivity, lay, 1) * length * current / (allowedDrop - VoltageDrop.Of(current, contacts));
}
