namespace FuelSizing.Logs;

/// <summary>What a column of pressure is measured against.</summary>
public enum PressureReference
{
    /// <summary>The ambient air.</summary>
    Gauge,

    /// <summary>Vacuum.</summary>
    Absolute,
}
