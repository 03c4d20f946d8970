using FuelSizing.Quantities;
using MathNet.Numerics.LinearAlgebra;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>Two uncertain inputs that one experiment has measured together: where one is over its mean, the other tends to be too, or to be under.</summary>
/// <remarks>
/// Drawn as a Gaussian copula: each keeps its own distribution, and the normal scores of the two have the correlation. Of a line through weighings, slope and offset are such a pair: taken as independent,
/// a middling pulse would seem less certain than it was measured.
/// </remarks>
public sealed record CorrelatedInputs
{
    private static readonly Identity<CorrelatedInputs> _identity = new Identity<CorrelatedInputs>()
        .Value(pair => pair.One)
        .Value(pair => pair.Other)
        .Number(pair => pair.Correlation.DecimalFractions);

    private CorrelatedInputs(UncertainInput one, UncertainInput other, Ratio correlation) => (One, Other, Correlation) = (one, other, correlation);

    /// <summary>An input.</summary>
    public UncertainInput One { get; }

    /// <summary>The other.</summary>
    public UncertainInput Other { get; }

    /// <summary>Correlation of their normal scores.</summary>
    public Ratio Correlation { get; }

    /// <summary>Joins two inputs.</summary>
    /// <param name="one">An input.</param>
    /// <param name="other">Another quantity's.</param>
    /// <param name="correlation">−0.9999 to 0.9999.</param>
    /// <returns>The pair.</returns>
    /// <exception cref="ArgumentException">Both are of one quantity, or one is drawn for each injector by itself.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The correlation is outside its range.</exception>
    public static CorrelatedInputs Of(UncertainInput one, UncertainInput other, Ratio correlation)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        if (one.Quantity == other.Quantity)
        {
            throw new ArgumentException($"{nameof(other)} is {other.Name}, as {nameof(one)} is. Give inputs of two quantities.", nameof(other));
        }

        foreach ((UncertainInput input, string name) in new[] { (one, nameof(one)), (other, nameof(other)) })
        {
            if (input.Quantity == UncertainQuantity.InjectorMatching)
            {
                throw new ArgumentException($"{name} is {input.Name}, which is drawn for each injector by itself. Give an input of one number.", name);
            }
        }

        return new(
            one,
            other,
            Guard.Between(
                correlation, Ratio.FromDecimalFractions(-0.9999), Ratio.FromDecimalFractions(0.9999), "Give the correlation that was measured; 0 for independent ones.", nameof(correlation)));
    }

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(CorrelatedInputs? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Both names and the correlation.</summary>
    /// <returns>For instance <c>injector flow and dead time, correlation 0.71</c>.</returns>
    public override string ToString() => FormattableString.Invariant($"{One.Name} and {Other.Name}, correlation {Correlation.DecimalFractions:0.00}");

    internal Correlated Factor => Correlated.Of(Matrix<double>.Build.DenseOfArray(new[,] { { 1, Correlation.DecimalFractions }, { Correlation.DecimalFractions, 1 } }));
}
