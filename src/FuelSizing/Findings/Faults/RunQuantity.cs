namespace FuelSizing.Findings;

/// <summary>What of the plan or of the recording may be off: the parameters of the run's model.</summary>
internal enum RunQuantity
{
    /// <summary>ln of the pump's flow ÷ the planned.</summary>
    PumpFlow,

    /// <summary>Resistance of the pumps' common feed over the planned, Ω.</summary>
    FeedResistance,

    /// <summary>Filter's loss over the planned, as a multiple of the new filter's.</summary>
    FilterLoss,

    /// <summary>Regulator's base over the planned, Pa.</summary>
    RegulatorBase,

    /// <summary>Regulator's gain over the planned.</summary>
    RegulatorGain,

    /// <summary>Regulator's onset over the planned, Pa.</summary>
    RegulatorOnset,

    /// <summary>ln of the injectors' flow ÷ the planned.</summary>
    InjectorFlow,

    /// <summary>Dead time over the planned, s.</summary>
    DeadTime,

    /// <summary>ln of volumetric efficiency ÷ the planned; the same as an error of lambda.</summary>
    VolumetricEfficiency,

    /// <summary>ln of BSFC ÷ the planned.</summary>
    BrakeSpecificFuelConsumption,

    /// <summary>Rail pressure as recorded over the true, Pa.</summary>
    RailSensor,

    /// <summary>Manifold pressure as recorded over the true, Pa.</summary>
    ManifoldSensor,

    /// <summary>ln of fuel flow as recorded ÷ the true.</summary>
    FlowMeter,
}
