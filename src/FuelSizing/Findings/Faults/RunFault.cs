namespace FuelSizing.Findings;

/// <summary>What may be wrong with a car or its recording.</summary>
public enum RunFault
{
    /// <summary>Nothing: all is as planned within the tolerances.</summary>
    None,

    /// <summary>The pump delivers less than its curve says, at its voltage.</summary>
    WeakPump,

    /// <summary>Resistance in the pump's feed, or a supply that sags, leaves the pump too little voltage.</summary>
    VoltageDrop,

    /// <summary>A filter, or another restriction before the rail, takes more pressure than planned.</summary>
    CloggedFilter,

    /// <summary>The regulator's base pressure is not as set.</summary>
    WrongBasePressure,

    /// <summary>The regulator's gain is not as set.</summary>
    WrongGain,

    /// <summary>The regulator's gain sets in at another boost than set.</summary>
    WrongOnset,

    /// <summary>The injectors are of another size.</summary>
    WrongInjectorSize,

    /// <summary>The engine draws other air than planned, or lambda is misread.</summary>
    AirOffPlan,

    /// <summary>The rail pressure sensor is off.</summary>
    RailSensorOffset,

    /// <summary>The manifold pressure sensor is off.</summary>
    ManifoldSensorOffset,

    /// <summary>The fuel flow meter is off.</summary>
    FlowMeterOff,

    /// <summary>Something is off that none of these explains by itself.</summary>
    Unexplained,
}
