using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Where the pump's electrical power goes.</summary>
internal static class PumpHeat
{
    /// <summary>Electrical power, W: V · I.</summary>
    /// <param name="voltage">At the motor, V.</param>
    /// <param name="current">A.</param>
    public static T Electrical<T>(T voltage, T current)
        where T : struct, IReal<T> => voltage * current;

    /// <summary>
    /// Heat that stays in the tank, W: electrical power − Δp · Q. The work on the injected fuel leaves with it; all other
    /// work, throttled away in regulator and lines, comes back as heat.
    /// </summary>
    /// <param name="electrical">W.</param>
    /// <param name="pressureRise">Over the pump, Pa.</param>
    /// <param name="injected">Q, m³/s.</param>
    public static T ToTank<T>(T electrical, T pressureRise, T injected)
        where T : struct, IReal<T> => T.Max(0, electrical - (pressureRise * injected));
}
