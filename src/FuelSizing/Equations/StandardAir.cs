using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Air as a perfect gas, and the standard atmosphere below 11 km (ISO 2533:1975).</summary>
internal static class StandardAir
{
    /// <summary>Specific gas constant of dry air, J/(kg·K): ISO 2533.</summary>
    public const double GasConstant = 287.05287;

    /// <summary>Ratio of specific heats of air: ISO 2533.</summary>
    public const double HeatCapacityRatio = 1.4;

    /// <summary>Specific heat at constant pressure, J/(kg·K): γ R/(γ − 1).</summary>
    public const double HeatCapacity = HeatCapacityRatio * GasConstant / (HeatCapacityRatio - 1);

    /// <summary>Pressure at sea level, Pa: ISO 2533.</summary>
    public const double SeaLevelPressure = 101_325;

    /// <summary>Temperature at sea level, K: ISO 2533.</summary>
    public const double SeaLevelTemperature = 288.15;

    /// <summary>Fall of temperature with height, K/m: ISO 2533.</summary>
    public const double LapseRate = 0.0065;

    /// <summary>Standard acceleration of free fall, m/s²: ISO 2533.</summary>
    public const double Gravity = 9.80665;

    /// <summary>Temperature, K: T = T0 − L h.</summary>
    /// <param name="altitude">Geopotential altitude, m.</param>
    public static T Temperature<T>(T altitude)
        where T : struct, IReal<T> => SeaLevelTemperature - (LapseRate * altitude);

    /// <summary>Pressure, Pa: p = p0 (T/T0)^(g/(R L)).</summary>
    /// <param name="altitude">Geopotential altitude, m.</param>
    public static T Pressure<T>(T altitude)
        where T : struct, IReal<T> =>
        SeaLevelPressure
        * Powers.Of(Temperature(altitude) / SeaLevelTemperature, (T)(Gravity / (GasConstant * LapseRate)));

    /// <summary>Density, kg/m³: ρ = p/(R T).</summary>
    /// <param name="pressure">Absolute, Pa.</param>
    /// <param name="temperature">K.</param>
    public static T Density<T>(T pressure, T temperature)
        where T : struct, IReal<T> => pressure / (GasConstant * temperature);
}
