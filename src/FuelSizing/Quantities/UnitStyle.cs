namespace FuelSizing.Quantities;

/// <summary>The units in which results are written for people.</summary>
public enum UnitStyle
{
    /// <summary>kPa and bar, L/h, g/s, kW, °C, kg/m³, g/kWh, m.</summary>
    Metric = 0,

    /// <summary>psi, US gal/h, lb/h, hp, °F, lb/ft³, lb/(hp·h), ft.</summary>
    UsCustomary = 1,
}
