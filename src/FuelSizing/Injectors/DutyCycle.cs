using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Injectors;

/// <summary>The time an injector has and the share of it that it uses.</summary>
public static class DutyCycle
{
    /// <summary>The typical upper limit, 85 %: common practice, no source (80 to 85 %).</summary>
    public static Ratio DefaultLimit { get; } = Ratio.FromPercent(85);

    /// <summary>
    /// Time between the starts of two injections: k/(n · i), k turns of the crank to a cycle, n speed, i injections to a
    /// cycle. With N in rev/min that is 120/N seconds for a four-stroke and 60/N for a two-stroke.
    /// </summary>
    /// <param name="speed">100 to 25,000 rev/min.</param>
    /// <param name="cycle">Two- or four-stroke.</param>
    /// <param name="injectionsPerCycle">1 to 4.</param>
    /// <returns>The time available for a pulse.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Duration AvailableTime(RotationalSpeed speed, EngineCycle cycle, int injectionsPerCycle = 1) =>
        Duration.FromSeconds((double)InjectorFlow.AvailableTime<Real>(
            EngineSpeed.Within(speed, nameof(speed)),
            (int)Guard.Member(cycle, "Say whether the engine has two or four strokes to a cycle.", nameof(cycle)),
            Guard.Count(
                injectionsPerCycle, 1, 4, "Count each injector's pulses in a working cycle.", nameof(injectionsPerCycle))).Value);

    /// <summary>Duty cycle: pulse ÷ available time. Over 100 % means that the fuel does not go in.</summary>
    /// <param name="pulse">Commanded, dead time included, 0 to 1 s.</param>
    /// <param name="speed">100 to 25,000 rev/min.</param>
    /// <param name="cycle">Two- or four-stroke.</param>
    /// <param name="injectionsPerCycle">1 to 4.</param>
    /// <returns>The duty cycle.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static Ratio Of(Duration pulse, RotationalSpeed speed, EngineCycle cycle, int injectionsPerCycle = 1) =>
        Ratio.FromDecimalFractions((double)InjectorFlow.DutyCycle<Real>(
            Guard.Between(
                pulse, Duration.Zero, Duration.FromSeconds(1), "Give the commanded pulse.", nameof(pulse)).Seconds,
            AvailableTime(speed, cycle, injectionsPerCycle).Seconds));

    internal static double WithinLimit(Ratio limit, string name) =>
        Guard.Between(
            limit,
            Ratio.FromPercent(10),
            Ratio.FromPercent(100),
            "Give the maximum duty cycle that you allow; 80 to 85 % is common practice, no source.",
            name).DecimalFractions;
}
