using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Properties of a blend from those of its parts, taken as an ideal mixture (volumes add).</summary>
internal static class FuelMixing
{
    /// <summary>
    /// A property that adds by share: Σ φ x/Σ φ. With shares by volume it gives density and thermal expansion; with
    /// shares by mass, elements and heating value.
    /// </summary>
    /// <param name="shares">φ, in any common unit.</param>
    /// <param name="values">x.</param>
    public static T ByShare<T>(ReadOnlySpan<T> shares, ReadOnlySpan<T> values)
        where T : struct, IReal<T>
    {
        T weighted = 0;
        T total = 0;
        for (int part = 0; part < shares.Length; part++)
        {
            weighted += shares[part] * values[part];
            total += shares[part];
        }

        return weighted / total;
    }

    /// <summary>Share by mass, not normalised, kg: volume share × density.</summary>
    /// <param name="volumeShare">m³.</param>
    /// <param name="density">kg/m³.</param>
    public static T MassShare<T>(T volumeShare, T density)
        where T : struct, IReal<T> => volumeShare * density;

    /// <summary>
    /// Share by volume of the first of two fuels, from a property x that adds by mass: with the mass share
    /// m = (x − x2)/(x1 − x2), φ = (m/ρ1)/(m/ρ1 + (1 − m)/ρ2).
    /// </summary>
    /// <param name="value">x of the blend.</param>
    /// <param name="firstValue">x1.</param>
    /// <param name="firstDensity">ρ1, kg/m³.</param>
    /// <param name="otherValue">x2.</param>
    /// <param name="otherDensity">ρ2, kg/m³.</param>
    public static T VolumeShare<T>(T value, T firstValue, T firstDensity, T otherValue, T otherDensity)
        where T : struct, IReal<T>
    {
        T mass = (value - otherValue) / (firstValue - otherValue);
        T first = mass / firstDensity;
        return first / (first + ((1.0 - mass) / otherDensity));
    }
}
