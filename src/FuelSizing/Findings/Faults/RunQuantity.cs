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

    /// <summary>ln of air ÷ the planned, in each Pa of boost: back-pressure, which a table by speed does not know.</summary>
    AirByBoost,

    /// <summary>Temperature of the charge over the planned, K in each Pa of boost.</summary>
    ChargeTemperature,

    /// <summary>ln of air ÷ the planned at the first of twelve speeds, straight between them.</summary>
    AirAtFirstSpeed,

    /// <summary>The same at the second.</summary>
    AirAtSecondSpeed,

    /// <summary>The same at the third.</summary>
    AirAtThirdSpeed,

    /// <summary>The same at the fourth.</summary>
    AirAtFourthSpeed,

    /// <summary>The same at the fifth.</summary>
    AirAtFifthSpeed,

    /// <summary>The same at the sixth.</summary>
    AirAtSixthSpeed,

    /// <summary>The same at the seventh.</summary>
    AirAtSeventhSpeed,

    /// <summary>The same at the eighth.</summary>
    AirAtEighthSpeed,

    /// <summary>The same at the ninth.</summary>
    AirAtNinthSpeed,

    /// <summary>The same at the tenth.</summary>
    AirAtTenthSpeed,

    /// <summary>The same at the eleventh.</summary>
    AirAtEleventhSpeed,

    /// <summary>The same at the last.</summary>
    AirAtLastSpeed,

    /// <summary>How far the regulator falls from all fuel returning to none, Pa, over what the plan says.</summary>
    RegulatorSlope,

    /// <summary>How far lambda comes late, s, over what is expected.</summary>
    LambdaDelay,

    /// <summary>How far the channels of fuel flow come late, s.</summary>
    FlowClock,

    /// <summary>How far manifold pressure comes late, s.</summary>
    ManifoldLag,

    /// <summary>How far rail pressure comes late, s.</summary>
    RailLag,

    /// <summary>ln of the fuel's density ÷ the planned.</summary>
    FuelDensity,
}
