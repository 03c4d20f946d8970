using System.Runtime.CompilerServices;
using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The injectors, as the injection chain sees them: SI numbers that do not change along a sweep.</summary>
/// <param name="RatedFlow">Of one injector, m³/s.</param>
/// <param name="RatedDifferential">Pa.</param>
/// <param name="TestFluidDensity">kg/m³.</param>
/// <param name="Count">Injectors.</param>
/// <param name="InjectionsPerCycle">Pulses in a working cycle.</param>
/// <param name="RevolutionsPerCycle">2 for four strokes, 1 for two.</param>
internal readonly record struct InjectionConstants<T>(
    T RatedFlow, Divisor<T> RatedDifferential, T TestFluidDensity, Divisor<T> Count, T InjectionsPerCycle, Divisor<T> RevolutionsPerCycle)
    where T : struct, IReal<T>;

/// <summary>One point at which fuel is to go in, in SI numbers.</summary>
/// <param name="Speed">rev/s.</param>
/// <param name="Differential">Across the injector, Pa.</param>
/// <param name="DeadTime">s.</param>
/// <param name="FuelFlow">Of the whole engine, m³/s.</param>
/// <param name="FuelDensity">kg/m³.</param>
internal readonly record struct InjectionInput<T>(T Speed, T Differential, T DeadTime, T FuelFlow, Divisor<T> FuelDensity)
    where T : struct, IReal<T>;

/// <summary>How the fuel goes in, in SI numbers.</summary>
/// <param name="StaticFlow">Of one injector, m³/s; zero where the differential is not positive.</param>
/// <param name="AvailableTime">s.</param>
/// <param name="Pulse">Commanded, s; infinite where there is no static flow.</param>
/// <param name="DutyCycle">Pulse ÷ available time.</param>
internal readonly record struct InjectionState<T>(T StaticFlow, T AvailableTime, T Pulse, T DutyCycle)
    where T : struct, IReal<T>;

/// <summary>The open-form chain from differential pressure and demand to duty cycle: one text for a point and for batches.</summary>
internal static class InjectionChain
{
    /// <summary>Evaluates the chain: differential → static flow → pulse → duty cycle.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static InjectionState<T> Evaluate<T>(in InjectionConstants<T> injectors, in InjectionInput<T> point)
        where T : struct, IReal<T>
    {
        T flow = InjectorFlow.Static(
            injectors.RatedFlow,
            injectors.RatedDifferential,
            injectors.TestFluidDensity,
            point.Differential,
            point.FuelDensity);
        Divisor<T> available = InjectorFlow.AvailableTime(
            point.Speed, injectors.RevolutionsPerCycle, injectors.InjectionsPerCycle);
        T pulse = InjectorFlow.Pulse(point.DeadTime, point.FuelFlow, injectors.Count, available, flow);
        return new(flow, available.Value, pulse, InjectorFlow.DutyCycle(pulse, available));
    }
}
