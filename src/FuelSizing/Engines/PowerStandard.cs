namespace FuelSizing.Engines;

/// <summary>By which standard measured power is turned into that in reference air.</summary>
public enum PowerStandard
{
    /// <summary>ISO 1585, Road vehicles: engine test code, net power; its factor of spark-ignition engines.</summary>
    Iso1585,

    /// <summary>SAE J1349, Engine power test code; its factor of spark-ignition engines, June 1990.</summary>
    SaeJ1349,
}
