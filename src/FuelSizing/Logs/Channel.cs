namespace FuelSizing.Logs;

/// <summary>
/// What a column of a recorded run holds. Only <see cref="Speed"/> must be there; what cannot be worked out for lack of
/// another is said by the findings.
/// </summary>
public enum Channel
{
    /// <summary>Time since any start, in s.</summary>
    Time,

    /// <summary>Engine speed.</summary>
    Speed,

    /// <summary>Manifold pressure against vacuum; a column of boost is turned into it by ambient pressure.</summary>
    ManifoldAbsolute,

    /// <summary>Rail pressure relative to ambient pressure; a column of absolute pressure is turned into it.</summary>
    RailGauge,

    /// <summary>Commanded pulse of one injector, dead time included.</summary>
    InjectorPulse,

    /// <summary>Pulse ÷ time available, dead time included; over 100 % where more was commanded than there is time.</summary>
    DutyCycle,

    /// <summary>Air-fuel ratio ÷ the stoichiometric one, as the sensor in the exhaust says.</summary>
    Lambda,

    /// <summary>Voltage of the supply, where it was recorded.</summary>
    BatteryVoltage,

    /// <summary>Power where it was recorded (crank or wheels: the reader of the run says), not corrected for the air.</summary>
    Power,

    /// <summary>Torque where it was recorded (crank or wheels: the reader of the run says), not corrected for the air.</summary>
    Torque,

    /// <summary>Fuel temperature, where it was recorded.</summary>
    FuelTemperature,

    /// <summary>Fuel burnt, by volume, from a flow meter (what is delivered less what returns).</summary>
    FuelVolumeFlow,

    /// <summary>Fuel burnt, by mass, from a flow meter (what is delivered less what returns).</summary>
    FuelMassFlow,
}
