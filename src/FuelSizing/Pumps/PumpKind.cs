namespace FuelSizing.Pumps;

/// <summary>How a pump moves fuel, which says how its flow follows the motor's speed.</summary>
public enum PumpKind
{
    /// <summary>Not known: a turbine and a displacement pump bound what it delivers.</summary>
    Unknown,

    /// <summary>A turbine, or any other that gives the fuel speed: flow with motor speed, pressure and torque with its square.</summary>
    Turbine,

    /// <summary>Rollers, gears, a gerotor: flow with motor speed, less what leaks back by pressure; torque with pressure.</summary>
    Displacement,
}
