using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Points;

/// <summary>What checks read of a point whose injectors were exchanged is what they read of it solved anew; and what is read of two sets.</summary>
public class OtherInjectorsTests
{
    private static readonly OperatingPoint Point = Wren.At(5000, 0.5);

    /// <summary>One set and two, a controller and none, with a second stream and without: pumps and lines stay as they are, all else is that of the new injectors.</summary>
    [Fact]
    public void Values_WithOtherInjectors_AreThoseOfThePointSolvedAnew()
    {
        FuelSystem plain = MixtureCar.Car(ManifoldReferenced.From(Wren.Kpa(300)), MixtureCar.Ample);
        SecondStream stream = SecondStreams.Held().WithEvaporation(Wren.Percent(20)).WithMainFuelTakenBack(Wren.Percent(5));
        FuelSystem[] cars =
        [
            plain,
            plain.Aiming(0.85),
            plain.With(stream),
            plain.Aiming(0.85).With(stream),
            plain.With(Staged.Of()),
            plain.With(Staged.Of(Staged.ByDutyCycle)),
        ];
        foreach (FuelSystem car in cars)
        {
            foreach (double size in (double[])[300, 470])
            {
                FuelSystem other = car.With(InjectorSet.Of(MixtureCar.InjectorOf(size), 4));
                OperatingResult point = car.Solve(Point);
                PointValues<Real> values = PointReading.With(
                    other.Parts, PointReading.Of(point), point.SolvedDemand, point.SolvedCircuit, other.Parts.InjectionAt(point.SolvedDemand, point.SolvedCircuit));

                // Where a controller is assumed that commands whatever is needed nobody judges its mixture.
                Assert.Equal(PointReading.Of(other.Solve(Point)), values);
                Assert.Equal(car.Controller.IsIdeal, double.IsNaN(values.MaximumLambda));
                Assert.NotEqual(PointReading.Of(point), values);
            }
        }
    }

    /// <summary>All the fuel is the primary set's where there is no other; else what the other leaves it, and not known where the primary set's duty cycle is not.</summary>
    [Fact]
    public void PrimaryFlow_IsWhatTheSecondarySetLeaves()
    {
        FuelSystem one = Wren.System(pump: 1.6);
        OperatingResult alone = one.Solve(Point);
        Assert.Equal(alone.InjectedFlow, alone.PrimaryFlow);
        OperatingResult two = one.With(Staged.Of(Staged.ByDutyCycle)).Solve(Wren.At(6500, 0.6));
        double share = two.SecondaryInjection!.Share!.Value.DecimalFractions;
        Assert.InRange(share, 0.2, 0.6);
        Assert.Equal(two.InjectedFlow.CubicMetersPerSecond * (1 - share), two.PrimaryFlow!.Value.CubicMetersPerSecond, 1e-15);
        Assert.Equal(two.InjectedFlow.CubicMetersPerSecond * share, two.SecondaryInjection.Flow!.Value.CubicMetersPerSecond, 1e-15);

        // At 17 V no dead time is known, and so no duty cycle.
        OperatingResult past = one.With(Staged.Of(Staged.ByDutyCycle)).Solve(OperatingPoint.At(
            Wren.Rpm(6500), Pressure.FromBars(0.6), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(17), Wren.Hill.FuelTemperature)));
        Assert.False(past.SecondaryInjection!.IsIdle);
        Assert.Null(past.SecondaryInjection.Share);
        Assert.Null(past.SecondaryInjection.Flow);
        Assert.Null(past.PrimaryFlow);

        // Under the begin the other is idle: no pulse, and its flow is nothing.
        OperatingResult idle = one.With(Staged.Of(Staged.ByDutyCycle)).Solve(Wren.At(2000, -0.3));
        Assert.True(idle.SecondaryInjection!.IsIdle);
        Assert.Equal((0, 0, 0), (idle.SecondaryInjection.Pulse!.Value.Seconds, idle.SecondaryInjection.Flow!.Value.CubicMetersPerSecond, idle.SecondaryInjection.Share!.Value.DecimalFractions));
        Assert.NotNull(idle.SecondaryInjection.DeadTime);
    }

    /// <summary>
    /// A pump on less voltage than it was measured at is known between bounds, with the estimate between them: the leanest mixture is that of a pump that gives the least for sure, the richest that of
    /// one that gives the most.
    /// </summary>
    [Fact]
    public void Mixture_OfAPumpUnderItsVoltage_LiesBetweenThoseOfItsBounds()
    {
        Pump pump = Pump.From(CurveOf(13.5, [(0, 1.2e-5), (900e3, 4e-6), (1000e3, 0)]));
        OperatingPoint point = OperatingPoint.At(Wren.Rpm(5000), Wren.Kpa(40), Conditions.Of(Wren.Hill.Atmosphere, Wren.Volt(12.3), Wren.Hill.FuelTemperature));
        DeliveredMixture At(Pump fitted) => MixtureCar.Car(Fixed.At(Wren.Kpa(420)), fitted)
            .With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(12)), (Wren.Rpm(7000), Wren.Ms(12)))).Solve(point).Mixture;
        Pump Known(PumpReading reading)
        {
            RunningPumps running = pump.Running(12.3, reading);
            return Pump.From(CurveOf(12.3, [
                .. Enumerable.Range(0, 300).Select(step => running.Deadhead * step / 300).Select(rise => (rise, running.FlowAt(rise))), (running.Deadhead, 0)]));
        }

        DeliveredMixture mixture = At(pump);
        DeliveredMixture least = At(Known(PumpReading.Lower));
        DeliveredMixture most = At(Known(PumpReading.Upper));
        Assert.Equal(RailState.Sagging, mixture.RailState);
        Assert.True(least.Lambda > most.Lambda * 1.001);
        Assert.Equal(least.Lambda!.Value, mixture.MaximumLambda!.Value, 1e-4);
        Assert.Equal(most.Lambda!.Value, mixture.MinimumLambda!.Value, 1e-4);
        Assert.InRange(mixture.Lambda!.Value, mixture.MinimumLambda.Value, mixture.MaximumLambda.Value);
    }

    private static PumpCurve CurveOf(double volts, (double Pascals, double Flow)[] points) => PumpCurve.At(
        "pump P", Wren.Volt(volts), [.. points.Select(point => (Pressure.FromPascals(point.Pascals), VolumeFlow.FromCubicMetersPerSecond(point.Flow)))]);
}
