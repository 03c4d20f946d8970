using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What one injector passes, and how long it must be held open.</summary>
internal static class InjectorFlow
{
    /// <summary>
    /// Static volume flow, m³/s: Q = Q_r · √(Δp/Δp_r) · √(ρ_r/ρ), the orifice equation Q = C_d A √(2 Δp/ρ) taken
    /// against the rated point. No flow where Δp is not positive.
    /// </summary>
    /// <param name="ratedFlow">Q_r, m³/s.</param>
    /// <param name="ratedDifferential">Δp_r, Pa.</param>
    /// <param name="testFluidDensity">ρ_r, kg/m³.</param>
    /// <param name="differential">Δp, Pa.</param>
    /// <param name="fuelDensity">ρ, kg/m³.</param>
    public static T Static<T>(T ratedFlow, Divisor<T> ratedDifferential, T testFluidDensity, T differential, Divisor<T> fuelDensity)
        where T : struct, IReal<T> =>
        ratedFlow * T.Sqrt(T.Max(0, differential) / ratedDifferential * testFluidDensity / fuelDensity);

    /// <summary>The inverse of <see cref="Static"/>: rated flow that gives a wanted static flow, m³/s.</summary>
    /// <param name="staticFlow">Wanted, m³/s.</param>
    /// <param name="ratedDifferential">Δp_r, Pa.</param>
    /// <param name="testFluidDensity">ρ_r, kg/m³.</param>
    /// <param name="differential">Δp, Pa.</param>
    /// <param name="fuelDensity">ρ, kg/m³.</param>
    public static T Rated<T>(T staticFlow, Divisor<T> ratedDifferential, T testFluidDensity, T differential, Divisor<T> fuelDensity)
        where T : struct, IReal<T> =>
        staticFlow / Static(1, ratedDifferential, testFluidDensity, differential, fuelDensity);

    /// <summary>Time between the starts of two injections, s: k/(n · i); 120/N for a four-stroke at N rev/min.</summary>
    /// <param name="speed">n, rev/s.</param>
    /// <param name="revolutionsPerCycle">k.</param>
    /// <param name="injectionsPerCycle">i.</param>
    /// <returns>The time, by which others are divided at once where its reciprocal n · i/k is at hand.</returns>
    public static Divisor<T> AvailableTime<T>(T speed, Divisor<T> revolutionsPerCycle, T injectionsPerCycle)
        where T : struct, IReal<T>
    {
        T injections = speed * injectionsPerCycle;
        return new(revolutionsPerCycle.Value / injections, injections / revolutionsPerCycle);
    }

    /// <summary>Commanded pulse, s: t = t_d + (Q_f/z)/(Q/T), dead time plus fuel per pulse (Q_f/z) T ÷ static flow.</summary>
    /// <param name="deadTime">t_d, s.</param>
    /// <param name="fuelFlow">Q_f for the whole engine, m³/s.</param>
    /// <param name="injectors">z.</param>
    /// <param name="availableTime">T, s.</param>
    /// <param name="staticFlow">Q of one injector, m³/s.</param>
    public static T Pulse<T>(T deadTime, T fuelFlow, Divisor<T> injectors, Divisor<T> availableTime, T staticFlow)
        where T : struct, IReal<T> => deadTime + (fuelFlow / injectors / (staticFlow / availableTime));

    /// <summary>Commanded pulse of a duty cycle, s: duty cycle × available time.</summary>
    /// <param name="dutyCycle">Pulse ÷ available time.</param>
    /// <param name="availableTime">s.</param>
    public static T PulseOfDuty<T>(T dutyCycle, T availableTime)
        where T : struct, IReal<T> => dutyCycle * availableTime;

    /// <summary>Duty cycle: commanded pulse ÷ available time.</summary>
    /// <param name="pulse">s.</param>
    /// <param name="availableTime">s.</param>
    public static T DutyCycle<T>(T pulse, Divisor<T> availableTime)
        where T : struct, IReal<T> => pulse / availableTime;

    /// <summary>
    /// Static flow of one injector that meets a demand at the duty limit, m³/s: Q = (Q_f/z) · T/(D T − t_d).
    /// </summary>
    /// <param name="fuelFlow">Q_f for the whole engine, m³/s.</param>
    /// <param name="injectors">z.</param>
    /// <param name="availableTime">T, s.</param>
    /// <param name="dutyLimit">D.</param>
    /// <param name="deadTime">t_d, s.</param>
    public static T RequiredStatic<T>(T fuelFlow, T injectors, T availableTime, T dutyLimit, T deadTime)
        where T : struct, IReal<T> =>
        StaticForPulse(fuelFlow, injectors, availableTime, dutyLimit * availableTime, deadTime);

    /// <summary>
    /// Static flow of one injector whose pulse is just so long, m³/s: Q = (Q_f/z) · T/(t − t_d).
    /// </summary>
    /// <param name="fuelFlow">Q_f for the whole engine, m³/s.</param>
    /// <param name="injectors">z.</param>
    /// <param name="availableTime">T, s.</param>
    /// <param name="pulse">t, s.</param>
    /// <param name="deadTime">t_d, s.</param>
    public static T StaticForPulse<T>(T fuelFlow, T injectors, T availableTime, T pulse, T deadTime)
        where T : struct, IReal<T> => fuelFlow / injectors * availableTime / (pulse - deadTime);

    /// <summary>
    /// Fuel flow that the injectors can pass at the duty limit, m³/s: Q_f = z · Q · (D T − t_d)/T, not below zero.
    /// </summary>
    /// <param name="staticFlow">Q of one injector, m³/s.</param>
    /// <param name="injectors">z.</param>
    /// <param name="availableTime">T, s.</param>
    /// <param name="dutyLimit">D.</param>
    /// <param name="deadTime">t_d, s.</param>
    public static T Capacity<T>(T staticFlow, T injectors, T availableTime, T dutyLimit, T deadTime)
        where T : struct, IReal<T> =>
        staticFlow * injectors * T.Max(0, (dutyLimit * availableTime) - deadTime) / availableTime;
}
