using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Whether fuel stays liquid on its way into the pump.</summary>
internal static class Suction
{
    /// <summary>Absolute pressure at the pump's inlet, Pa: p = p_tank + ρ g h − Δp.</summary>
    /// <param name="tankAbsolute">p_tank over the fuel, Pa.</param>
    /// <param name="column">ρ g h of the fuel above the inlet, Pa; below zero where the pump sits higher.</param>
    /// <param name="loss">Δp lost on the way, Pa.</param>
    public static T InletPressure<T>(T tankAbsolute, T column, T loss)
        where T : struct, IReal<T> => tankAbsolute + column - loss;

    /// <summary>Net positive suction pressure, Pa: the inlet's pressure above the fuel's vapour pressure.</summary>
    /// <param name="inletAbsolute">Pa.</param>
    /// <param name="vapourPressure">Pa.</param>
    public static T NetPositive<T>(T inletAbsolute, T vapourPressure)
        where T : struct, IReal<T> => inletAbsolute - vapourPressure;
}
