using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Numerics;

namespace FuelSizing.Controllers;

/// <summary>What there is at an operating point, of which a controller knows more or less; in SI numbers.</summary>
internal readonly record struct ControllerInput
{
    /// <summary>rev/s.</summary>
    public required double Speed { get; init; }

    /// <summary>Pa.</summary>
    public required double ManifoldAbsolute { get; init; }

    /// <summary>K.</summary>
    public required double ChargeTemperature { get; init; }

    /// <summary>Absolute, Pa.</summary>
    public required double Ambient { get; init; }

    /// <summary>Of the ambient air, K.</summary>
    public required double AmbientTemperature { get; init; }

    /// <summary>That the engine takes, kg/s.</summary>
    public required double Air { get; init; }

    /// <summary>m³.</summary>
    public required double Displacement { get; init; }

    /// <summary>2 for four strokes, 1 for two.</summary>
    public required double RevolutionsPerCycle { get; init; }

    /// <summary>s.</summary>
    public required double AvailableTime { get; init; }

    /// <summary>At the injectors, V.</summary>
    public required double Volts { get; init; }

    /// <summary>Of the fuel in the rail, kg/m³.</summary>
    public required double Density { get; init; }

    /// <summary>Stoichiometric air–fuel ratio of the fuel.</summary>
    public required double StoichiometricRatio { get; init; }

    /// <summary>At the engine's target, kg/s.</summary>
    public required double Required { get; init; }

    /// <summary>The engine's target.</summary>
    public required double TargetLambda { get; init; }

    /// <summary>The injectors that are fitted.</summary>
    public required InjectorSet Injectors { get; init; }

    /// <summary>Static flow of one of the injectors that are fitted, by the law, m³/s.</summary>
    public double StaticFlow(double differential) => Injectors.Injector.StaticAt(differential, Density);

    /// <summary>Dead time of the injectors that are fitted, at the covered place that is nearest, s.</summary>
    public double DeadTime(double differential) => Injectors.Injector.DeadTime.Nearest(Volts, differential);
}

/// <summary>The fuel that a controller wants, in SI numbers.</summary>
/// <param name="Fuel">kg/s; not a number where its pulses are recorded.</param>
/// <param name="Lambda">That it aims at; not a number where its pulses are recorded.</param>
/// <param name="Air">That it believes in, kg/s; not a number where its pulses are recorded.</param>
/// <param name="IsAirAtEnd">True if there is more air or pressure than its sensor or table reaches.</param>
internal readonly record struct FuelWanted(double Fuel, double Lambda, double Air, bool IsAirAtEnd);

/// <summary>A pulse, and what the controller believes it delivers, in SI numbers.</summary>
/// <param name="Pulse">Commanded, s; not a number where recorded pulses give no data.</param>
/// <param name="Unlimited">As it would be without a greatest duty cycle, s.</param>
/// <param name="StaticFlow">Of one injector that the controller believes in, m³/s; not a number where pulses are recorded.</param>
/// <param name="DeadTime">That it believes in, s; not a number where pulses are recorded.</param>
internal readonly record struct PulseCommanded(double Pulse, double Unlimited, double StaticFlow, double DeadTime)
{
    /// <summary>True if the greatest duty cycle cuts the pulse off.</summary>
    public bool IsLimited => Unlimited > Pulse;

    /// <summary>The pulse for a fuel flow of the whole engine, m³/s, by a static flow, m³/s, and a dead time, s, up to a longest pulse, s.</summary>
    public static PulseCommanded For(in ControllerInput at, double fuel, double staticFlow, double deadTime, double longest)
    {
        double pulse = InjectorFlow.Pulse<Real>(deadTime, fuel, (double)at.Injectors.Count, at.AvailableTime, staticFlow);
        return new(Math.Min(pulse, longest), pulse, staticFlow, deadTime);
    }
}
