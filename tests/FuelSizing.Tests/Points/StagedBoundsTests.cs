using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Points.MixtureCar;

namespace FuelSizing.Tests.Points;

/// <summary>
/// How much less than taken each of two sets of injectors may inject, where they share the fuel by the primary set's duty cycle and the pressure is known between bounds: compared with the same
/// car at the other pressure. The secondary set begins above 20 % of a cycle of 24 ms, which is 4.8 ms, with 20 % of the fuel, up to 70 %. Dead time is 1 ms at 100 kPa and 5 µs more for each kPa.
/// </summary>
public class StagedBoundsTests
{
    private static readonly HandOver ByDuty = HandOver.ByDutyCycle(Wren.Percent(20), Wren.Percent(70), Wren.Percent(20));

    /// <summary>
    /// Held at its duty cycle at either pressure the primary set is open for less at the higher one, by its longer dead time: (4.8 − 3.0) ms at 500 kPa for (4.8 − 2.4) ms at 380 kPa, at a flow that
    /// has grown by √(500/380).
    /// </summary>
    [Fact]
    public void PrimarySet_HeldAtItsDutyCycle_InjectsLessWhereItsDeadTimeOutgrowsItsFlow()
    {
        (SystemParts parts, PointDemand demand, Injection judged) = At(420, ByDuty);
        (_, _, Injection higher) = At(540, ByDuty);
        Assert.Equal((4.8, 4.8), (Math.Round(judged.Pulse!.Value * 1e3, 9), Math.Round(higher.Pulse!.Value * 1e3, 9)));
        double share = StagedBounds.Primary(parts, demand, judged, higher.Differential);
        Assert.Equal((4.8 - 3) / (4.8 - 2.4) * Math.Sqrt(500.0 / 380), share, 1e-9);
        Assert.Equal(higher.Injected / judged.Injected, share, 1e-9);
    }

    /// <summary>At a pressure at which its duty cycle is all dead time it may inject nothing; where its flow outgrows its dead time no less than taken; nor where the pressure is known.</summary>
    [Fact]
    public void PrimarySet_MayInjectNothingAndNoMoreThanTaken()
    {
        (SystemParts parts, PointDemand demand, Injection judged) = At(420, ByDuty);
        Assert.Equal(0, StagedBounds.Primary(parts, demand, judged, 880e3));
        Assert.Equal(1, StagedBounds.Primary(parts, demand, judged, 380e3));
        Assert.Equal(1, StagedBounds.Primary(parts, demand, judged, 300e3));
        Assert.Equal(1, StagedBounds.Primary(parts, demand, judged, double.NaN));

        // A pressure without an upper bound is not one at which a figure can be known.
        Assert.Equal(1, StagedBounds.Primary(parts, demand, judged, double.PositiveInfinity), 1e-12);
    }

    /// <summary>Where all of its share is over its duty cycle it injects more than it is held to: at the higher pressure it may be held, and inject as much less.</summary>
    [Fact]
    public void PrimarySet_OverItsDutyCycle_MayBeHeldAtMorePressure()
    {
        HandOver little = HandOver.ByDutyCycle(Wren.Percent(20), Wren.Percent(25), Wren.Percent(20));
        (SystemParts parts, PointDemand demand, Injection judged) = At(420, little);
        Assert.True(judged.Pulse > 4.9e-3);
        Assert.Equal(0.75 * demand.Injected, judged.Injected, 1e-15);
        double held = 4 * Injector(800, 500, demand.Density) * (4.8 - 3) / 24;
        Assert.Equal(held / judged.Injected, StagedBounds.Primary(parts, demand, judged, 500e3), 1e-9);
    }

    /// <summary>Where the split follows boost, or the secondary set is idle, each set injects what it is taken to at any pressure.</summary>
    [Fact]
    public void Split_ThatDoesNotDependOnPressure_IsAsTaken()
    {
        (SystemParts parts, PointDemand demand, Injection judged) = At(420, HandOver.ByBoost(Wren.Kpa(10), Wren.Kpa(60), Wren.Percent(70)));
        Assert.Equal((1, 1), (StagedBounds.Primary(parts, demand, judged, 500e3), (double)StagedBounds.Secondary(parts, demand, judged, 500e3).InjectedAtLeast));
        (parts, demand, judged) = At(420, HandOver.ByDutyCycle(Wren.Percent(80), Wren.Percent(70), Wren.Percent(20)));
        Assert.True(judged.Secondary!.IsIdle);
        InjectorValues<Real> idle = StagedBounds.Secondary(parts, demand, judged, 500e3);
        Assert.Equal((1, 1, 0, 0), (StagedBounds.Primary(parts, demand, judged, 500e3), (double)idle.InjectedAtLeast, (double)idle.Injected, (double)idle.Pulse));
        Assert.Equal(4 * Injector(700, 380, demand.Density) * ((0.85 * 24) - 2.4) / 24, idle.Capacity, 1e-15);
    }

    /// <summary>The secondary set carries at the least its share at the begin while it injects at all, where the pressure may be higher; else what it is taken to.</summary>
    [Fact]
    public void SecondarySet_CarriesAtLeastItsShareAtTheBegin()
    {
        (SystemParts parts, PointDemand demand, Injection judged) = At(420, ByDuty);
        InjectorValues<Real> values = StagedBounds.Secondary(parts, demand, judged, 500e3);
        Assert.Equal(demand.Injected - judged.Injected, values.Injected, 1e-15);
        Assert.Equal(0.2 * demand.Injected, values.Injected * values.InjectedAtLeast, 1e-15);
        Assert.Equal(1, (double)StagedBounds.Secondary(parts, demand, judged, 380e3).InjectedAtLeast);

        // 4 injectors: duty cycle is the pulse over 24 ms, and the pulse is the open time and 2.4 ms.
        double open = values.Injected / (4 * values.StaticFlow) * 24e-3;
        Assert.Equal(open + 2.4e-3, values.Pulse, 1e-12);
        Assert.Equal(values.Pulse / 24e-3, values.DutyCycle, 1e-12);
        Assert.Equal(4 * values.StaticFlow * ((0.85 * 24e-3) - 2.4e-3) / 24e-3, values.Capacity, 1e-15);
        Assert.Equal((2.4e-3, 24e-3), (Math.Round(values.DeadTime, 12), Math.Round(values.AvailableTime, 12)));
    }

    /// <summary>With fuel that may evaporate in the charge there may be less to inject, so that either set may carry less at the same pressure.</summary>
    [Fact]
    public void Split_WithEvaporation_MayBeLessAtTheSamePressure()
    {
        (SystemParts parts, PointDemand demand, Injection judged) = At(420, ByDuty, evaporation: 40);
        Assert.Equal(0.2 * demand.Injected / judged.Secondary!.Injection.Injected, StagedBounds.Secondary(parts, demand, judged, judged.Differential).InjectedAtLeast, 1e-12);
        Assert.Equal(1, StagedBounds.Primary(parts, demand, judged, judged.Differential), 1e-12);
    }

    private static (SystemParts Parts, PointDemand Demand, Injection Judged) At(double rail, HandOver handOver, double evaporation = 0)
    {
        FuelSystem car = Car(Fixed.At(Wren.Kpa(rail)), Ample);
        car = (evaporation > 0 ? car.With(car.Demand.WithEvaporation(Wren.Percent(evaporation))) : car)
            .With(InjectorSet.Of(Steep(800), 4)).With(StagedInjectors.Of(InjectorSet.Of(Steep(700), 4), handOver));
        PointDemand demand = car.Parts.DemandAt(Wren.At(5000, 0.4));
        return (car.Parts, demand, car.Parts.InjectionAt(demand, car.Parts.CircuitAt(demand)).Judged);
    }

    private static Injector Steep(double millilitresPerMinute) => FuelSizing.Injectors.Injector.Of(
        "injector S",
        VolumeFlow.FromMillilitersPerMinute(millilitresPerMinute),
        Wren.Kpa(300),
        TestFluid.Heptane,
        DeadTimeTable.Of([Wren.Volt(11), Wren.Volt(16)], [Wren.Kpa(100), Wren.Kpa(900)], [[Wren.Ms(1), Wren.Ms(1)], [Wren.Ms(5), Wren.Ms(5)]]),
        Wren.Ms(3.1),
        Wren.Kpa(900)).WithMinimumDifferential(Wren.Kpa(60));
}
