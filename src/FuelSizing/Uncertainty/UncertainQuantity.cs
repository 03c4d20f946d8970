namespace FuelSizing.Uncertainty;

/// <summary>What an input stands for. The number makes its random stream, so that the order of inputs does not matter.</summary>
internal enum UncertainQuantity
{
    /// <summary>BSFC, kg/J.</summary>
    BrakeSpecificFuelConsumption = 1,

    /// <summary>Factor on the table of volumetric efficiency.</summary>
    VolumetricEfficiency = 2,

    /// <summary>Share of crank power lost before it was measured.</summary>
    DrivetrainLoss = 3,

    /// <summary>Factor on the static flow of all injectors.</summary>
    InjectorFlow = 4,

    /// <summary>Factor on the static flow of each injector by itself.</summary>
    InjectorMatching = 5,

    /// <summary>Offset of the regulator, Pa.</summary>
    RegulatorOffset = 6,

    /// <summary>V.</summary>
    SupplyVoltage = 7,

    /// <summary>K.</summary>
    FuelTemperature = 8,

    /// <summary>Share of ethanol by volume.</summary>
    EthanolContent = 9,

    /// <summary>Factor on the flow of a pump that a run has measured.</summary>
    PumpFlow = 10,

    /// <summary>Resistance of the pump's feed over the one found, Ω.</summary>
    FeedResistance = 11,

    /// <summary>Filter's loss over the one found, as a multiple of the new filter's.</summary>
    FilterLoss = 12,

    /// <summary>Factor on the regulator's gain.</summary>
    RegulatorGain = 13,

    /// <summary>Regulator's onset over the one found, Pa.</summary>
    RegulatorOnset = 14,

    /// <summary>Dead time over the one found, s.</summary>
    DeadTime = 15,

    /// <summary>Ambient pressure, Pa.</summary>
    AmbientPressure = 16,

    /// <summary>Ambient temperature, K.</summary>
    AmbientTemperature = 17,

    /// <summary>Factor on the boost.</summary>
    Boost = 18,

    /// <summary>An input of one's own; its name makes its random stream.</summary>
    Own = 19,
}
