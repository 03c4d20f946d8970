namespace FuelSizing.Findings;

/// <summary>A figure of the plan that a run calibrates.</summary>
public enum CalibratedQuantity
{
    /// <summary>BSFC at full load.</summary>
    BrakeSpecificFuelConsumption,

    /// <summary>Volumetric efficiency, as a factor on the whole table.</summary>
    VolumetricEfficiency,

    /// <summary>The pump's flow, as a factor on its curve.</summary>
    PumpFlow,

    /// <summary>The regulator's gain.</summary>
    RegulatorGain,
}
