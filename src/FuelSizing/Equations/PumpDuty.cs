using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What is asked of a pump, and what it has left.</summary>
internal static class PumpDuty
{
    /// <summary>Flow that goes back to the tank, m³/s: delivered less injected, not below zero.</summary>
    /// <param name="delivered">m³/s.</param>
    /// <param name="injected">m³/s.</param>
    public static T Returned<T>(T delivered, T injected)
        where T : struct, IReal<T> => T.Max(0, delivered - injected);

    /// <summary>Flow wanted of the pump, m³/s: injected · (1 + reserve) + the regulator's smallest return flow.</summary>
    /// <param name="injected">m³/s.</param>
    /// <param name="reserve">Kept in hand, as a fraction of the injected flow.</param>
    /// <param name="minimumReturn">m³/s.</param>
    public static T Required<T>(T injected, T reserve, T minimumReturn)
        where T : struct, IReal<T> => (injected * (1.0 + reserve)) + minimumReturn;

    /// <summary>Flow that may be injected with the reserve kept, m³/s: the inverse of <see cref="Required"/>.</summary>
    /// <param name="delivered">m³/s.</param>
    /// <param name="reserve">Kept in hand, as a fraction of the injected flow.</param>
    /// <param name="minimumReturn">m³/s.</param>
    public static T Injectable<T>(T delivered, T reserve, T minimumReturn)
        where T : struct, IReal<T> => T.Max(0, delivered - minimumReturn) / (1.0 + reserve);
}
