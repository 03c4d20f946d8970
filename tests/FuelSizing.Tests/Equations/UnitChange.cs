namespace FuelSizing.Tests.Equations;

/// <summary>
/// Other base units: numbers of length, mass, time, temperature and current each grow by a power of four. Such a change, and
/// the root of a number changed so, is exact in binary: an equation that is right gives the same digits in any units, and no
/// tolerance is needed.
/// </summary>
/// <param name="Length">Exponent of four for numbers of length.</param>
/// <param name="Mass">Of mass.</param>
/// <param name="Time">Of time.</param>
/// <param name="Temperature">Of temperature.</param>
/// <param name="Current">Of electric current.</param>
internal readonly record struct UnitChange(int Length, int Mass, int Time, int Temperature, int Current)
{
    private const int Maximum = 3;

    /// <summary>All with exponents from −3 to 3, factors of 1/64 to 64.</summary>
    public static readonly IReadOnlyList<UnitChange> All =
    [
        .. from length in Enumerable.Range(-Maximum, (2 * Maximum) + 1)
           from mass in Enumerable.Range(-Maximum, (2 * Maximum) + 1)
           from time in Enumerable.Range(-Maximum, (2 * Maximum) + 1)
           from temperature in Enumerable.Range(-Maximum, (2 * Maximum) + 1)
           from current in Enumerable.Range(-Maximum, (2 * Maximum) + 1)
           select new UnitChange(length, mass, time, temperature, current),
    ];

    /// <summary>Whether numbers of that dimension stay what they are.</summary>
    public bool Leaves(Dimension dimension) => Exponent(dimension) == 0;

    /// <summary>A number in the other units.</summary>
    public double Of(double number, Dimension dimension) => dimension.IsLogarithm
        ? number + (Exponent(dimension) * Math.Log(4))
        : Math.ScaleB(number, 2 * Exponent(dimension));

    private int Exponent(Dimension dimension) =>
        (Length * dimension.Length) + (Mass * dimension.Mass) + (Time * dimension.Time) + (Temperature * dimension.Temperature) + (Current * dimension.Current);
}
