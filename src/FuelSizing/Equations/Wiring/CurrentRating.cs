using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>How much of a conductor's and of a fuse's rating may be used.</summary>
public static class CurrentRating
{
    /// <summary>Share of the ampacity that is left in hotter surroundings: heat made, I² R, is heat lost, in proportion to the
    /// temperature difference.
    /// <para><c>F = min(1; √(max(0; θ_max − θ_a)/(θ_max − θ_0)))</c></para>
    /// </summary>
    /// <param name="rating"><c>θ_max</c> (°C): temperature rating of the insulation.</param>
    /// <param name="ambient"><c>θ_a</c> (°C): temperature of the surroundings.</param>
    /// <param name="tableAmbient"><c>θ_0</c> (°C): temperature of the surroundings for which the ampacity was stated.</param>
    /// <returns><c>F</c> (1): derating factor of the ampacity.</returns>
    /// <remarks>
    /// <para>Range: θ_0 below θ_max.</para>
    /// <para>Outside: nothing is checked; surroundings as hot as the rating or hotter give 0; cooler ones than θ_0 give no more
    /// than 1.</para>
    /// <example>
    /// <code>
    /// Real result = CurrentRating.AmbientFactor&lt;Real&gt;(rating: 105, ambient: 50, tableAmbient: 30);
    /// // result = 0.856349
    /// </code>
    /// </example>
    /// <para>Source: derived; the form of NFPA 70 (National Electrical Code), 310.15(B), from memory.</para>
    /// </remarks>
    public static T AmbientFactor<T>(T rating, T ambient, T tableAmbient)
        where T : struct, IReal<T> => T.Min(1, T.Sqrt(T.Max(0, rating - ambient) / (rating - tableAmbient)));

    /// <summary>Ampacity of a conductor in hotter surroundings and in a bundle with others: both corrections multiply.
    /// <para><c>I_z = I_t · F · F_n</c></para>
    /// </summary>
    /// <param name="tabulated"><c>I_t</c> (A): ampacity by its table, in the table's surroundings and outside of any bundle.</param>
    /// <param name="ambientFactor"><c>F</c> (1): derating factor of the ampacity.</param>
    /// <param name="bundleFactor"><c>F_n</c> (1): share that is left in a bundle of n current-carrying conductors.</param>
    /// <returns><c>I_z</c> (A): ampacity of the conductor.</returns>
    /// <remarks>
    /// <para>Range: factors of 0 to 1.</para>
    /// <para>Outside: nothing is checked; the product is taken as it is.</para>
    /// <example>
    /// <code>
    /// Real result = CurrentRating.Derated&lt;Real&gt;(tabulated: 45, ambientFactor: 0.8, bundleFactor: 0.6);
    /// // result = 21.6 A
    /// </code>
    /// </example>
    /// <para>Source: 33 CFR 183.435(b), which multiplies table 5 of 183.425 by the factor for the number of conductors.</para>
    /// </remarks>
    public static T Derated<T>(T tabulated, T ambientFactor, T bundleFactor)
        where T : struct, IReal<T> => tabulated * ambientFactor * bundleFactor;
}
