using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The American wire gauge, a geometric progression of diameters (ASTM B258).</summary>
internal static class AmericanWireGauge
{
    /// <summary>Diameter of the solid round wire, m: d = 0.127 mm · 92^((36 − n)/39).</summary>
    /// <param name="gauge">n; 1/0, 2/0, 3/0 and 4/0 are 0, −1, −2 and −3.</param>
    public static T Diameter<T>(T gauge)
        where T : struct, IReal<T> => (T)0.127e-3 * Powers.Of<T>(92, ((T)36 - gauge) / 39);
}
