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
}
