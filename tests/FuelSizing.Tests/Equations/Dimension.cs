using System.Diagnostics;

namespace FuelSizing.Tests.Equations;

/// <summary>What a number of the equations is a measure of, by exponents of the base quantities.</summary>
/// <param name="Length">Exponent of length.</param>
/// <param name="Mass">Exponent of mass.</param>
/// <param name="Time">Exponent of time.</param>
/// <param name="Temperature">Exponent of temperature.</param>
/// <param name="Current">Exponent of electric current.</param>
/// <param name="IsLogarithm">Whether the number is the natural logarithm of such a measure: another unit adds to it.</param>
internal readonly record struct Dimension(int Length, int Mass, int Time, int Temperature = 0, int Current = 0, bool IsLogarithm = false)
{
    /// <summary>A plain number.</summary>
    public static Dimension One => default;

    public static readonly Dimension Metre = new(1, 0, 0);

    public static readonly Dimension Kilogram = new(0, 1, 0);

    public static readonly Dimension Second = new(0, 0, 1);

    public static readonly Dimension Kelvin = new(0, 0, 0, 1);

    public static readonly Dimension Ampere = new(0, 0, 0, 0, 1);

    public static readonly Dimension Area = Metre * Metre;

    public static readonly Dimension Volume = Area * Metre;

    public static readonly Dimension Velocity = Metre / Second;

    public static readonly Dimension Acceleration = Velocity / Second;

    /// <summary>Turns a second.</summary>
    public static readonly Dimension Speed = One / Second;

    public static readonly Dimension VolumeFlow = Volume / Second;

    public static readonly Dimension MassFlow = Kilogram / Second;

    public static readonly Dimension Density = Kilogram / Volume;

    public static readonly Dimension Joule = Kilogram * Velocity * Velocity;

    public static readonly Dimension Pascal = Joule / Volume;

    public static readonly Dimension Watt = Joule / Second;

    public static readonly Dimension SpecificEnergy = Joule / Kilogram;

    public static readonly Dimension SpecificHeat = SpecificEnergy / Kelvin;

    public static readonly Dimension KinematicViscosity = Area / Second;

    public static readonly Dimension DynamicViscosity = Pascal * Second;

    public static readonly Dimension Volt = Watt / Ampere;

    public static readonly Dimension Ohm = Volt / Ampere;

    /// <summary>The natural logarithm of a measure of it.</summary>
    public Dimension Logarithm => this with { IsLogarithm = true };

    public static Dimension operator *(Dimension left, Dimension right) => left.With(right, 1);

    public static Dimension operator /(Dimension left, Dimension right) => left.With(right, -1);

    public override string ToString() =>
        $"{(IsLogarithm ? "ln " : string.Empty)}length^{Length} mass^{Mass} time^{Time} temperature^{Temperature} current^{Current}";

    private Dimension With(Dimension other, int sign)
    {
        Debug.Assert(!IsLogarithm && !other.IsLogarithm, "Logarithms have no product.");
        return new(
            Length + (sign * other.Length),
            Mass + (sign * other.Mass),
            Time + (sign * other.Time),
            Temperature + (sign * other.Temperature),
            Current + (sign * other.Current));
    }
}
