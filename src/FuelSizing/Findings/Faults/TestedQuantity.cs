namespace FuelSizing.Findings;

/// <summary>What a proposed test measures.</summary>
internal enum TestedQuantity
{
    /// <summary>Rail pressure in a pull at a lower supply voltage, Pa.</summary>
    RailAtLowerVoltage,

    /// <summary>The rail sensor against a gauge, Pa.</summary>
    RailSensor,

    /// <summary>The manifold sensor against the barometer, Pa.</summary>
    ManifoldSensor,

    /// <summary>Static flow of the injectors, ln of its ratio to the planned.</summary>
    InjectorFlow,

    /// <summary>The same by a flow meter in the next run.</summary>
    InjectorFlowByMeter,

    /// <summary>Flow of the pump, ln of its ratio to the planned.</summary>
    PumpFlow,

    /// <summary>Resistance of the pump's feed over the planned, Ω.</summary>
    FeedResistance,

    /// <summary>Loss of the filter over the planned, in new filters.</summary>
    FilterLoss,

    /// <summary>The flow meter against a weighed quantity, ln of its ratio.</summary>
    FlowMeter,

    /// <summary>Base pressure by a gauge, Pa over the set.</summary>
    RegulatorBase,

    /// <summary>Gain by a gauge and a known pressure on the regulator's port, over the planned.</summary>
    RegulatorGain,

    /// <summary>Onset by the same, Pa over the planned.</summary>
    RegulatorOnset,
}
