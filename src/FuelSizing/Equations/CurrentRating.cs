using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>How much of a conductor's and of a fuse's rating may be used.</summary>
internal static class CurrentRating
{
    /// <summary>
    /// Share of the ampacity left in hotter surroundings: F = √((t_c − t_a)/(t_c − t_0)), not over 1. Heat made, I² R, is
    /// heat lost, in proportion to the temperature difference.
    /// </summary>
    /// <param name="rating">t_c, of the insulation, °C.</param>
    /// <param name="ambient">t_a, at most t_c, °C.</param>
    /// <param name="tableAmbient">t_0, for which the ampacity was stated, °C.</param>
    public static T AmbientFactor<T>(T rating, T ambient, T tableAmbient)
        where T : struct, IReal<T> => T.Min(1, T.Sqrt(T.Max(0, rating - ambient) / (rating - tableAmbient)));

    /// <summary>Ampacity in those surroundings, A: I = I_0 F.</summary>
    /// <param name="stated">I_0, A.</param>
    /// <param name="factor">F.</param>
    public static T Derated<T>(T stated, T factor)
        where T : struct, IReal<T> => stated * factor;

    /// <summary>Smallest fuse rating for a continuous load, A: I_f = I/s.</summary>
    /// <param name="load">I, A.</param>
    /// <param name="share">s: share of the rating that may be used continuously.</param>
    public static T FuseNeeded<T>(T load, T share)
        where T : struct, IReal<T> => load / share;

    /// <summary>The share of a fuse's rating that a load uses.</summary>
    /// <param name="load">A.</param>
    /// <param name="rating">A.</param>
    public static T FuseLoad<T>(T load, T rating)
        where T : struct, IReal<T> => load / rating;
}
