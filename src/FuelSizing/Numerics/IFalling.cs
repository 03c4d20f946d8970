namespace FuelSizing.Numerics;

/// <summary>A function that nowhere rises: a value type, so that a root finder calls it without allocating.</summary>
internal interface IFalling
{
    /// <summary>Its value.</summary>
    double At(double x);
}
