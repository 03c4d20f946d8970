using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Points.MixtureCar;

namespace FuelSizing.Tests.Points;

/// <summary>Every figure of a mixture, worked by hand at 5,000 rev/min and 40 kPa of boost, where a cycle takes 24 ms.</summary>
public class MixtureFigureTests
{
    [Fact]
    public void Mixture_OfARecordedPulse_HasTheFiguresWorkedByHand()
    {
        FuelSystem system = Pulsed(9, 420);
        DeliveredMixture mixture = At(system);
        double density = Density(system);
        double delivered = 4 * Injector(360, 380, density) * (9 - 0.98) / 24;
        double lambda = 0.82 * Needed(system, 40) / density / delivered;
        Assert.Equal(lambda, mixture.Lambda!.Value, 1e-9);
        Assert.Equal((mixture.Lambda, mixture.Lambda), (mixture.MinimumLambda, mixture.MaximumLambda));
        Assert.Equal((lambda / 0.82) - 1, mixture.Deviation!.Value.DecimalFractions, 1e-9);
        Assert.Equal(0.82, mixture.TargetLambda);
        Assert.Equal(9, mixture.CommandedPulse!.Value.Milliseconds, 1e-9);
        Assert.Equal(37.5, mixture.CommandedDutyCycle!.Value.Percent, 1e-9);
        Assert.Equal(0.98, mixture.DeadTime!.Value.Milliseconds, 1e-9);
        Assert.Equal(8.02, mixture.OpenTime!.Value.Milliseconds, 1e-9);
        Assert.Equal(420, mixture.RailGauge.Kilopascals, 1e-9);
        Assert.Equal(RailState.Regulated, mixture.RailState);
        Assert.Equal(380, mixture.InjectorDifferential.Kilopascals, 1e-9);
        Assert.Equal(delivered, mixture.InjectedFlow!.Value.CubicMetersPerSecond, 1e-9 * delivered);
        Assert.Equal(1, mixture.ClosedLoopFactor);
        Assert.False(mixture.IsHeldOpen || mixture.IsDutyLimited || mixture.IsPastSensor || mixture.IsBelowLinearRange || mixture.IsPastTurnOver);
        Assert.Null(mixture.TurnOverDifferential);
        Assert.Same(system.Controller, mixture.Controller);
    }

    /// <summary>2 ms: open for 1.4 ms − Δp/1 MPa ms, which √Δp times is largest at 1.4/3 MPa. At 380 kPa it is not past that, at 500 kPa it is.</summary>
    [Fact]
    public void Mixture_PastTheTurnOver_IsSaidToBe()
    {
        Assert.Equal(1400.0 / 3, At(Pulsed(2, 420)).TurnOverDifferential!.Value.Kilopascals, 1e-6);
        Assert.False(At(Pulsed(2, 420)).IsPastTurnOver);
        Assert.True(At(Pulsed(2, 540)).IsPastTurnOver);
        Assert.Equal(1400.0 / 3, At(Pulsed(2, 540)).TurnOverDifferential!.Value.Kilopascals, 1e-6);
    }

    /// <summary>The injectors are linear from 1.6 ms at 300 kPa on: from 0.7 ms of open time at any pressure, 1.68 ms of pulse at 380 kPa.</summary>
    [Fact]
    public void Mixture_OfAShortPulse_IsBelowTheLinearRange()
    {
        Assert.Equal(0.7, Pulsed(9, 420).Injectors.Injector.MinimumOpenTime.Milliseconds, 0.2);
        double least = Pulsed(9, 420).Injectors.Injector.MinimumOpenTime.Milliseconds + 0.98;
        Assert.True(At(Pulsed(least - 0.001, 420)).IsBelowLinearRange);
        Assert.False(At(Pulsed(least + 0.001, 420)).IsBelowLinearRange);
    }

    /// <summary>A pulse as long as the cycle holds the injectors open: no dead time is lost. One that is a little shorter still loses it.</summary>
    [Fact]
    public void Mixture_OfAPulseAsLongAsTheCycle_IsHeldOpen()
    {
        FuelSystem system = Pulsed(25, 420);
        double density = Density(system);
        double Lambda(double open) => 0.82 * Needed(system, 40) / density / (4 * Injector(360, 380, density) * open / 24);
        DeliveredMixture held = At(system);
        Assert.True(held.IsHeldOpen);
        Assert.Equal(24, held.OpenTime!.Value.Milliseconds, 1e-9);
        Assert.Equal(Lambda(24), held.Lambda!.Value, 1e-9);
        Assert.Contains(held.Causes, cause => cause.Kind == MixtureCauseKind.RecordedPulse);
        DeliveredMixture closing = At(Pulsed(23.9, 420));
        Assert.False(closing.IsHeldOpen);
        Assert.Equal(23.9 - 0.98, closing.OpenTime!.Value.Milliseconds, 1e-9);
        Assert.Equal(Lambda(23.9 - 0.98), closing.Lambda!.Value, 1e-9);

        // Held open they need no dead time: past the end of its table the mixture is known all the same.
        DeliveredMixture past = At(Pulsed(25, 960));
        Assert.Null(past.DeadTime);
        Assert.Equal(Lambda(24) * Math.Sqrt(380.0 / 920), past.Lambda!.Value, 1e-9);
    }

    /// <summary>A pulse shorter than the dead time opens nothing.</summary>
    [Fact]
    public void Mixture_WithoutFuel_IsInfinitelyLean()
    {
        DeliveredMixture mixture = At(Pulsed(0.5, 420));
        Assert.Equal(double.PositiveInfinity, mixture.Lambda);
        Assert.Null(mixture.Deviation);
        Assert.Empty(mixture.Causes);
        Assert.Equal((0, 0), (mixture.OpenTime!.Value.Milliseconds, mixture.InjectedFlow!.Value.CubicMetersPerSecond));
        Assert.Equal("no fuel is delivered (target lambda 0.820)", mixture.ToString());
    }

    /// <summary>Over the dead times' 900 kPa, and under the injectors' 60 kPa, nothing is claimed; what is known is still told.</summary>
    [Theory]
    [InlineData(960, 920, null)]
    [InlineData(100, 60.5, 0.6605)]
    [InlineData(100, 59.5, 0.6595)]
    public void Mixture_PastTheDataOfTheInjectors_IsNotKnown(double rail, double differential, double? dead)
    {
        DeliveredMixture mixture = Pulsed(9, rail).Solve(Wren.At(5000, (rail - differential) / 100)).Mixture;
        Assert.Equal(differential, mixture.InjectorDifferential.Kilopascals, 1e-9);
        Assert.Equal(dead is null, mixture.DeadTime is null);
        Assert.Equal(dead ?? 0, mixture.DeadTime?.Milliseconds ?? 0, 1e-9);
        Assert.Equal(differential is > 60 and < 900, mixture.Lambda is not null);
        Assert.Equal(differential is > 60 and < 900, mixture.InjectedFlow is not null);
        Assert.Equal(differential is > 60 and < 900, mixture.Deviation is not null);
    }

    /// <summary>A controller that commands whatever is needed has the target, as long as the cycle is long enough; then it holds the injectors open.</summary>
    [Fact]
    public void Mixture_OfWhateverIsNeeded_IsTheTargetWithinTheCycle()
    {
        FuelSystem system = Car(Fixed.At(Wren.Kpa(420)), Ample);
        double density = Density(system);
        double open = Needed(system, 40) / density / (4 * Injector(360, 380, density)) * 24;
        OperatingResult result = system.Solve(Wren.At(5000, 0.4));
        Assert.Equal(0.82, result.Mixture.Lambda!.Value, 1e-12);
        Assert.Equal((0.82, 0.82), (Math.Round(result.Mixture.MinimumLambda!.Value, 9), Math.Round(result.Mixture.MaximumLambda!.Value, 9)));
        Assert.Equal(open, result.Mixture.OpenTime!.Value.Milliseconds, 1e-9);
        Assert.Equal(open + 0.98, result.Mixture.CommandedPulse!.Value.Milliseconds, 1e-9);
        Assert.Equal(0.98, result.Mixture.DeadTime!.Value.Milliseconds, 1e-9);
        Assert.False(result.Mixture.IsPastSensor || result.Mixture.IsHeldOpen || result.Mixture.IsDutyLimited);
        Assert.Empty(result.Mixture.Causes);

        FuelSystem small = system.With(InjectorSet.Of(InjectorOf(90), 4));
        double lambda = 0.82 * Needed(system, 40) / density / (4 * Injector(90, 380, density));
        Assert.True(lambda > 0.9);
        DeliveredMixture held = At(small);
        Assert.True(held.IsHeldOpen);
        Assert.Equal(lambda, held.Lambda!.Value, 1e-9);
    }

    /// <summary>Past the pumps' data on the low side nothing is known of the mixture, whoever commands the pulse.</summary>
    [Fact]
    public void Mixture_PastThePumpsData_IsNotKnown()
    {
        Pump over = Pump.From(Curve(20, 500));
        Assert.Equal(RailState.NotCovered, At(Car(Fixed.At(Wren.Kpa(420)), over)).RailState);
        Assert.Null(At(Car(Fixed.At(Wren.Kpa(420)), over)).Lambda);
        Assert.Null(At(Pulsed(9, 420, over)).Lambda);
        Assert.Null(At(Pulsed(9, 420, over)).MaximumLambda);
        Assert.NotNull(At(Pulsed(9, 420, over)).OpenTime);
    }

    /// <summary>
    /// Over the highest voltage at which a pump was measured it delivers at the least what it did there: the leanest mixture is that of a pump with that
    /// very curve, and the estimate no leaner.
    /// </summary>
    [Theory]
    [InlineData(30)]
    [InlineData(28)]
    public void Mixture_OverThePumpsVoltage_IsLeanestByItsHighestCurve(double litresPerHour)
    {
        DeliveredMixture mixture = At(Pulsed(9, 420, Pump.From(Curve(12, litresPerHour))));
        DeliveredMixture least = At(Pulsed(9, 420, Pump.From(Curve(13.5, litresPerHour))));
        Assert.Equal(RailState.Sagging, least.RailState);
        Assert.Equal(least.Lambda!.Value, mixture.MaximumLambda!.Value, 1e-9);
        Assert.True(mixture.MinimumLambda < mixture.MaximumLambda * 0.999);
        Assert.InRange(mixture.Lambda!.Value, mixture.MinimumLambda!.Value, mixture.MaximumLambda.Value);
        Assert.Equal(least.Lambda, least.MinimumLambda);
    }

    /// <summary>The rail that a lambda asks for, set by a fixed regulator, gives it: whoever decides the pulse.</summary>
    [Theory]
    [InlineData(9, 0.75)]
    [InlineData(9, 1)]
    [InlineData(9, 1.3)]
    [InlineData(25, 0.8)]
    public void Rail_ForALambda_GivesIt(double pulse, double change)
    {
        double lambda = change * At(Pulsed(pulse, 420)).Lambda!.Value;
        double rail = RailFor(Pulsed(pulse, 420), lambda);
        Assert.Equal(lambda, At(Pulsed(pulse, rail)).Lambda!.Value, 1e-9);
    }

    /// <summary>Where more pressure delivers less the rising side is meant; what no pressure up to the injectors' maximum gives is not a number.</summary>
    [Fact]
    public void Rail_ForALambdaThatAShortPulseGivesTwice_IsTheLower()
    {
        double at = At(Pulsed(2, 340)).Lambda!.Value;
        Assert.Equal(340, RailFor(Pulsed(2, 700), at), 1e-6);
        double best = At(Pulsed(2, 40 + (1400 / 3.0))).Lambda!.Value;
        Assert.InRange(RailFor(Pulsed(2, 420), best * 1.001), 440, 40 + (1400 / 3.0));
        Assert.True(double.IsNaN(RailFor(Pulsed(2, 420), best * 0.999)));
        Assert.True(double.IsNaN(RailFor(Pulsed(9, 420), 0.4)));
        Assert.True(double.IsNaN(RailFor(Car(Fixed.At(Wren.Kpa(420)), Ample).With(RecordedPulseController.BySpeed((Wren.Rpm(6000), Wren.Ms(9)), (Wren.Rpm(7000), Wren.Ms(9)))), 0.8)));

        // Up to the 900 kPa at which the injectors still open, and no further.
        double last = At(Pulsed(9, 939.9)).Lambda!.Value;
        Assert.Equal(939.9, RailFor(Pulsed(9, 420), last), 1e-6);
        Assert.True(double.IsNaN(RailFor(Pulsed(9, 420), last * Math.Sqrt(899.9 / 905))));
    }

    private static FuelSystem Pulsed(double milliseconds, double rail, PumpAssembly? pump = null) => Car(Fixed.At(Wren.Kpa(rail)), Ample).With(pump ?? Ample)
        .With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(milliseconds)), (Wren.Rpm(7000), Wren.Ms(milliseconds))));

    private static DeliveredMixture At(FuelSystem system) => system.Solve(Wren.At(5000, 0.4)).Mixture;

    private static double RailFor(FuelSystem system, double lambda) =>
        MixtureSolver.RailFor(system.Parts, system.Parts.DemandAt(Wren.At(5000, 0.4)), lambda) / 1e3;

    private static PumpCurve Curve(double volts, double litresPerHour) => PumpCurve.At(
        "pump P",
        Wren.Volt(volts),
        (Pressure.Zero, VolumeFlow.FromLitersPerHour(litresPerHour)),
        (Wren.Kpa(900), VolumeFlow.FromLitersPerHour(litresPerHour / 3)));
}
