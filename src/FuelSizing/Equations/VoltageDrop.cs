using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What a feed circuit takes of the supply, and the heat it makes of it.</summary>
internal static class VoltageDrop
{
    /// <summary>Resistance of the whole loop, Ω: wire out and back, and contacts, one behind the other.</summary>
    /// <param name="wire">Ω.</param>
    /// <param name="contacts">Ω.</param>
    public static T Loop<T>(T wire, T contacts)
        where T : struct, IReal<T> => wire + contacts;

    /// <summary>Drop, V: ΔV = I R.</summary>
    /// <param name="current">I, A.</param>
    /// <param name="resistance">R, Ω.</param>
    public static T Of<T>(T current, T resistance)
        where T : struct, IReal<T> => current * resistance;

    /// <summary>Voltage left at the motor, V: V_m = V − I R.</summary>
    /// <param name="supply">V, at the battery or alternator, V.</param>
    /// <param name="current">I, A.</param>
    /// <param name="loop">R, Ω.</param>
    public static T AtMotor<T>(T supply, T current, T loop)
        where T : struct, IReal<T> => supply - Of(current, loop);

    /// <summary>The highest current that the loop itself lets through, A: I = V/R.</summary>
    /// <param name="supply">V.</param>
    /// <param name="loop">R, Ω.</param>
    public static T MaximumCurrent<T>(T supply, T loop)
        where T : struct, IReal<T> => supply / loop;

    /// <summary>Largest resistance that keeps a drop, Ω: ΔV/I.</summary>
    /// <param name="drop">ΔV, V.</param>
    /// <param name="current">I, A.</param>
    public static T LargestResistance<T>(T drop, T current)
        where T : struct, IReal<T> => drop / current;

    /// <summary>Heat, W: P = I² R; with R in Ω/m, W/m.</summary>
    /// <param name="current">I, A.</param>
    /// <param name="resistance">R, Ω or Ω/m.</param>
    public static T Heat<T>(T current, T resistance)
        where T : struct, IReal<T> => current * current * resistance;

    /// <summary>The drop as a share of the supply.</summary>
    /// <param name="drop">V.</param>
    /// <param name="supply">V.</param>
    public static T Share<T>(T drop, T supply)
        where T : struct, IReal<T> => drop / supply;
}
