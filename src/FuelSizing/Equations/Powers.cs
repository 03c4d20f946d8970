using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Powers of a positive number, from the exponential and the logarithm that both kinds of number have.</summary>
internal static class Powers
{
    /// <summary>x^y = exp(y ln x), for x above zero.</summary>
    public static T Of<T>(T x, T y)
        where T : struct, IReal<T> => T.Power(x, y);
}
