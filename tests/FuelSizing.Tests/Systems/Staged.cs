using CsCheck;
using FuelSizing.Injectors;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>Invented systems with a secondary set of injectors.</summary>
internal static class Staged
{
    /// <summary>A hand-over by boost that leaves neither set a pulse too short.</summary>
    public static HandOver ByBoost { get; } = HandOver.ByBoost(Pressure.FromBars(0.3), Pressure.FromBars(0.55), Wren.Percent(45), Wren.Percent(30));

    /// <summary>A hand-over by duty cycle.</summary>
    public static HandOver ByDutyCycle { get; } = HandOver.ByDutyCycle(Wren.Percent(60), Wren.Percent(50), Wren.Percent(25));

    /// <summary>Secondary injectors with a dead time and measured flows of their own.</summary>
    public static Injector Secondary { get; } = InjectorOf(430);

    public static StagedInjectors Of(HandOver? handOver = null, double flow = 430, int count = 4, int perCycle = 1) =>
        StagedInjectors.Of(InjectorSet.Of(InjectorOf(flow), count, perCycle), handOver ?? ByBoost);

    /// <summary>The hill-climb car with two sets.</summary>
    public static FuelSystem Wren2(StagedInjectors? staged = null, PressureRegulator? regulator = null, double injector = 360, double pump = 1.6) =>
        Wren.System(regulator, injector, pump).With(staged ?? Of());

    /// <summary>Every kind of hand-over, sizes and counts of the secondary set.</summary>
    public static Gen<StagedInjectors> Any { get; } = Gen.Select(
        Gen.Bool,
        Gen.Select(Gen.Double[-0.2, 0.5], Gen.Double[0.02, 0.4]),
        Gen.Select(Gen.Double[0.05, 0.9], Gen.Double[0, 1]),
        Gen.Double[0.3, 0.8],
        Gen.Select(Gen.Double[150, 900], Gen.Int[1, 8], Gen.Int[1, 2])).Select((byBoost, ramp, shares, duty, set) => Of(
            byBoost
                ? HandOver.ByBoost(Pressure.FromBars(ramp.Item1), Pressure.FromBars(ramp.Item1 + ramp.Item2), Share(shares.Item1), Share(shares.Item1 * shares.Item2))
                : HandOver.ByDutyCycle(Share(duty), Share(shares.Item1), Share(shares.Item1 * shares.Item2)),
            set.Item1,
            set.Item2,
            set.Item3));

    private static Ratio Share(double share) => Ratio.FromDecimalFractions(share);

    private static Injector InjectorOf(double flow) => Injector.Of(
        "injector C",
        VolumeFlow.FromMillilitersPerMinute(flow),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.Of(
            [Wren.Volt(8), Wren.Volt(12), Wren.Volt(14), Wren.Volt(16)],
            [Wren.Kpa(80), Wren.Kpa(350), Wren.Kpa(900)],
            [
                [Wren.Ms(2.3), Wren.Ms(1.2), Wren.Ms(0.9), Wren.Ms(0.7)],
                [Wren.Ms(2.7), Wren.Ms(1.35), Wren.Ms(1), Wren.Ms(0.8)],
                [Wren.Ms(3.6), Wren.Ms(1.8), Wren.Ms(1.3), Wren.Ms(1)],
            ]),
        Wren.Ms(1.7),
        Wren.Kpa(900)).WithMeasuredFlows(
            (Wren.Kpa(150), VolumeFlow.FromMillilitersPerMinute(flow * 0.69)), (Wren.Kpa(600), VolumeFlow.FromMillilitersPerMinute(flow * 1.38)));
}
