using FuelSizing.Numerics;
using FuelSizing.Quantities;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>How sure somebody wants to be of a range.</summary>
internal static class Confidence
{
    /// <summary>Standard deviations of a normal on either side of its middle that hold a share of it.</summary>
    /// <param name="confidence">50 to 99.99 %.</param>
    /// <param name="name">The argument's name.</param>
    /// <exception cref="ArgumentOutOfRangeException">The confidence is outside its range.</exception>
    public static double Deviations(Ratio confidence, string name)
    {
        double inside = Guard.Between(
            confidence,
            Ratio.FromPercent(50),
            Ratio.FromPercent(99.99),
            "Give how sure you want to be of the range; 95 % is typical.",
            name).DecimalFractions;
        return Normal.InvCDF(0, 1, StraightLine.Through<Real>(0, 0.5, 1, 1, inside));
    }
}
