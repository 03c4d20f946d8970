using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>The ambient air: pressure and temperature.</summary>
public sealed record Atmosphere
{
    private static readonly Identity<Atmosphere> _identity = new Identity<Atmosphere>()
        .Number(air => air.Pascals)
        .Number(air => air.Kelvins);

    private Atmosphere(Pressure pressure, Temperature temperature)
    {
        (Pressure, Temperature) = (pressure, temperature);
        (Pascals, Kelvins) = (pressure.Pascals, temperature.Kelvins);
    }

    /// <summary>The standard atmosphere at sea level: 101.325 kPa, 15 °C (ISO 2533).</summary>
    public static Atmosphere Standard { get; } = AtAltitude(Length.Zero);

    /// <summary>Absolute (barometric, not reduced to sea level).</summary>
    public Pressure Pressure { get; }

    /// <summary>Air temperature.</summary>
    public Temperature Temperature { get; }

    /// <summary>Density of dry air, ρ_air = p/(R_a T), R_a = 287.05287 J/(kg·K).</summary>
    public Density Density =>
        Density.FromKilogramsPerCubicMeter((double)StandardAir.Density<Real>(Pascals, Kelvins));

    internal double Pascals { get; }

    internal double Kelvins { get; }

    /// <summary>
    /// The standard atmosphere at an altitude: T = 288.15 K − 6.5 K/km · h, p = 101 325 Pa · (T/288.15 K)^5.25588
    /// (ISO 2533:1975).
    /// </summary>
    /// <param name="altitude">Geopotential altitude, −500 to 6,000 m.</param>
    /// <param name="temperature">Air temperature if it is not the standard one, −50 to 60 °C.</param>
    /// <returns>The atmosphere there.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Atmosphere AtAltitude(Length altitude, Temperature? temperature = null)
    {
        double metres = Guard.Between(
            altitude,
            Length.FromMeters(-500),
            Length.FromMeters(6000),
            "Give the height above sea level at which the engine runs.",
            nameof(altitude)).Meters;
        return Of(
            Pressure.FromPascals((double)StandardAir.Pressure<Real>(metres)),
            temperature ?? Temperature.FromKelvins((double)StandardAir.Temperature<Real>(metres)));
    }

    /// <summary>Air as measured.</summary>
    /// <param name="pressure">Absolute, 40 to 110 kPa: the barometer's own reading, not one reduced to sea level.</param>
    /// <param name="temperature">−50 to 60 °C.</param>
    /// <returns>The atmosphere.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Atmosphere Of(Pressure pressure, Temperature temperature) =>
        new(
            Guard.Between(
                pressure,
                Pressure.FromKilopascals(40),
                Pressure.FromKilopascals(110),
                "Give absolute pressure as the barometer reads it there, not reduced to sea level.",
                nameof(pressure)),
            Guard.Between(
                temperature,
                Temperature.FromDegreesCelsius(-50),
                Temperature.FromDegreesCelsius(60),
                "Give the ambient temperature.",
                nameof(temperature)));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(Atmosphere? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Pressure and temperature.</summary>
    /// <returns>For instance <c>101 kPa, 15 °C</c>.</returns>
    public override string ToString() =>
        $"{Readable.Of(Pressure)}, {Readable.Of(Temperature)}";

    /// <summary>Other air, Pa and K, unchecked: it is known to be within range.</summary>
    internal Atmosphere With(double pascals, double kelvins) =>
        pascals.Equals(Pascals) && kelvins.Equals(Kelvins) ? this : new(Pressure.FromPascals(pascals), Temperature.FromKelvins(kelvins));
}
