namespace FuelSizing.Numerics;

/// <summary>Numbers in SI as descriptions compare them: rounded to twelve significant digits.</summary>
/// <remarks>
/// The same value reached through two units differs in its last bits: 2.3 bar may be 229,999.99999999997 Pa where 230 kPa is
/// 230,000 Pa, apart by a few parts in 10¹⁶. No sensor, data sheet or tolerance tells apart what differs by parts in 10¹².
/// Rounding, unlike a tolerance, is transitive, so that equal values have equal hash codes. Its price: two values so near
/// each other on either side of a rounding limit, where a 13th digit would be exactly 5, stay different.
/// </remarks>
internal static class Significant
{
    /// <summary>Digits that are compared.</summary>
    public const int Digits = 12;

    /// <summary>The number with no more digits than are compared; zero without its sign.</summary>
    public static double Rounded(double value)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return value == 0 ? 0 : value;
        }

        // Powers of ten are exact up to 10^22: 999,999.9999999999 and 1,000,000 round to one number although each is
        // rounded at a place of its own.
        double scale = Math.Pow(10, Digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))));
        return double.IsFinite(scale) && scale > 0 ? Math.Round(value * scale) / scale : value;
    }

    /// <summary>True if both are one number as far as they are compared; something that is not a number equals itself.</summary>
    public static bool Same(double one, double other) => one.Equals(other) || Rounded(one).Equals(Rounded(other));

    /// <summary>True if both lists have the same numbers in the same order.</summary>
    public static bool Same(double[] one, double[] other)
    {
        if (one.Length != other.Length)
        {
            return false;
        }

        for (int at = 0; at < one.Length; at++)
        {
            if (!Same(one[at], other[at]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The same for numbers that are the same.</summary>
    public static int Hash(double value) => Rounded(value).GetHashCode();

    /// <summary>The same for lists that are the same.</summary>
    public static int Hash(double[] values)
    {
        HashCode hash = default;
        foreach (double value in values)
        {
            hash.Add(Rounded(value));
        }

        return hash.ToHashCode();
    }
}
