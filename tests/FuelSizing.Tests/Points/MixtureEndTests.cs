using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Points.MixtureCar;

namespace FuelSizing.Tests.Points;

/// <summary>What is told of a mixture where a pulse is not known, and at the end of a closed loop.</summary>
public class MixtureEndTests
{
    /// <summary>A pulse that is not recorded here leaves the rail as it is at what the engine needs.</summary>
    [Fact]
    public void Rail_OfAPulseThatIsNotKnown_IsThatOfTheDemand()
    {
        OperatingResult result = Car(ManifoldReferenced.From(Wren.Kpa(380)), PumpOf(64))
            .With(RecordedPulseController.BySpeed((Wren.Rpm(6000), Wren.Ms(9)), (Wren.Rpm(7000), Wren.Ms(9)))).Solve(Wren.At(5000, 0.4));
        Assert.Null(result.Mixture.Lambda);
        Assert.Equal(RailState.Sagging, result.RailState);
        Assert.Equal(result.RailState, result.Mixture.RailState);
        Assert.Equal(result.RailGauge.Pascals, result.Mixture.RailGauge.Pascals, 1e-9);
        Assert.Null(result.Mixture.InjectedFlow);
    }

    /// <summary>At just the manifold pressure at which a loop opens it is still closed; just over it, open.</summary>
    [Theory]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public void Loop_AtItsHighestManifoldPressure_IsClosed(double over, bool closed)
    {
        OperatingPoint point = Wren.At(5000, 0.4);
        Pressure manifold = point.Boost + point.Conditions.Atmosphere.Pressure;
        FuelSystem system = Car(Fixed.At(Wren.Kpa(420)), Ample);
        ControllerData data = ControllerData.Of(InjectorOf(330), FuelSizing.Fuels.Fuel.Petrol, TargetLambda.At(0.9))
            .WithFuelTemperature(Wren.Hill.FuelTemperature).WithDifferential(Wren.Kpa(380))
            .WithClosedLoop(ClosedLoop.Of(Wren.Percent(25), manifold - Pressure.FromPascals(over)));
        DeliveredMixture mixture = system.With(SpeedDensityController.Of(data, Wren.VolumetricEfficiency, Wren.Kpa(250))).Solve(point).Mixture;
        Assert.Equal(closed, Math.Abs(mixture.ClosedLoopFactor - 1) > 1e-3);
        Assert.Equal(closed ? 0.9 : 0.9 * 330 / 360, mixture.Lambda!.Value, 1e-9);
    }

    /// <summary>
    /// A regulator with 20 kPa of hysteresis to either side, and injectors that need 0.2 ms less than the cycle of 24 ms at 380 kPa: at 360 kPa they would need more than it, stay open, and save the dead
    /// time that the controller allows for. The richest mixture is that, and the estimate the target.
    /// </summary>
    [Fact]
    public void Mixture_OfARailThatMayBeLower_IsNotTheTargetWhereInjectorsWouldStayOpen()
    {
        FuelSystem fixedRail = Car(Fixed.At(Wren.Kpa(420)), Ample);
        double density = Density(fixedRail);
        double needed = Needed(fixedRail, 40) / density;

        // n Q √(Δp) (23.8 − 0.98)/24 = what is needed.
        double size = 360 * needed / (4 * Injector(360, 380, density) * (23.8 - 0.98) / 24);
        OperatingResult At(RegulatorFlow flow) => Car(Fixed.At(Wren.Kpa(420)).WithFlow(flow), Ample).With(InjectorSet.Of(InjectorOf(size), 4)).Solve(Wren.At(5000, 0.4));
        OperatingResult banded = At(RegulatorFlow.Constant.WithHysteresis(Wren.Kpa(20)));
        Assert.Equal(23.8 / 24, banded.DutyCycle!.Value.DecimalFractions, 0.03);
        Assert.Equal(0.82, banded.Mixture.Lambda!.Value, 1e-9);
        Assert.Equal(0.82 * needed / (4 * Injector(size, 360, density)), banded.Mixture.MinimumLambda!.Value, 1e-9);

        // With 1 kPa of hysteresis the cycle is long enough, and the mixture is the target.
        OperatingResult narrow = At(RegulatorFlow.Constant.WithHysteresis(Wren.Kpa(1)));
        Assert.Equal((0.82, 0.82), (Math.Round(narrow.Mixture.MinimumLambda!.Value, 9), Math.Round(narrow.Mixture.MaximumLambda!.Value, 9)));
    }

    /// <summary>
    /// The secondary set's pulse is under its linear range where its open time is, whatever its dead time: at 380 kPa open time is the pulse less 0.98 ms, and 0.7 ms of it are linear.
    /// </summary>
    [Theory]
    [InlineData(0.68, true)]
    [InlineData(0.72, false)]
    public void Pulse_OfTheSecondarySet_MayBeUnderItsLinearRange(double milliseconds, bool below)
    {
        FuelSystem one = Car(Fixed.At(Wren.Kpa(420)), Ample);
        double density = Density(one);
        double open = InjectorOf(360).MinimumOpenTime.Milliseconds / 0.7 * milliseconds;
        double share = 4 * Injector(360, 380, density) * open / 24 / (Needed(one, 40) / density);
        HandOver handOver = HandOver.ByBoost(Wren.Kpa(10), Wren.Kpa(30), Ratio.FromDecimalFractions(share));
        OperatingResult result = one.With(StagedInjectors.Of(InjectorSet.Of(InjectorOf(360), 4), handOver)).Solve(Wren.At(5000, 0.4));
        Assert.Equal(open, result.SecondaryInjection!.Pulse!.Value.Milliseconds - 0.98, 1e-6);
        Assert.Equal(below, result.Mixture.IsBelowLinearRange);
    }

    /// <summary>
    /// Of two sets, one needs 0.2 ms less than the cycle at 380 kPa: at 360 kPa, which hysteresis of 20 kPa leaves open, it would stay open, and what the controller then commands of the other nobody
    /// stated. With 1 kPa of hysteresis both close, and the mixture is the target.
    /// </summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Mixture_OfTwoSetsOfWhichOneMayStayOpen_CannotBeSaid(bool primary)
    {
        FuelSystem car = Car(Fixed.At(Wren.Kpa(420)), Ample);
        double density = Density(car);

        // Half of the fuel each: n Q √(Δp) (23.8 − 0.98)/24 = half of what is needed.
        double size = 360 * (Needed(car, 40) / density / 2) / (4 * Injector(360, 380, density) * (23.8 - 0.98) / 24);
        HandOver half = HandOver.ByBoost(Wren.Kpa(10), Wren.Kpa(30), Wren.Percent(50));
        OperatingResult At(double hysteresis) => Car(Fixed.At(Wren.Kpa(420)).WithFlow(RegulatorFlow.Constant.WithHysteresis(Wren.Kpa(hysteresis))), Ample)
            .With(InjectorSet.Of(InjectorOf(primary ? size : 2 * size), 4))
            .With(StagedInjectors.Of(InjectorSet.Of(InjectorOf(primary ? 2 * size : size), 4), half)).Solve(Wren.At(5000, 0.4));
        Assert.Null(At(20).Mixture.Lambda);
        Assert.Null(At(20).Mixture.InjectedFlow);
        Assert.Equal(0.82, At(1).Mixture.Lambda!.Value, 1e-9);
        Assert.Equal(Needed(car, 40) / density, At(1).Mixture.InjectedFlow!.Value.CubicMetersPerSecond, 1e-15);
    }

    /// <summary>A second stream is told of beside the mixture while it flows, and only then.</summary>
    [Theory]
    [InlineData(0.2, false)]
    [InlineData(0.5, true)]
    public void Text_TellsOfASecondStream_WhileItFlows(double bar, bool flows)
    {
        FuelSystem car = Systems.SecondStreams.Car();
        string alone = car.Solve(Wren.At(5000, bar)).Mixture.ToString();
        string both = car.With(Systems.SecondStreams.Held()).Solve(Wren.At(5000, bar)).Mixture.ToString();
        Assert.Equal(!flows, alone == both);
        Assert.Equal(flows, both.StartsWith("of the main fuel alone ", StringComparison.Ordinal));
    }

    /// <summary>A pulse that follows the pressure has no pressure past which it delivers less; the same pulse as recorded has one.</summary>
    [Fact]
    public void TurnOver_OfAPulseThatFollowsThePressure_IsNone()
    {
        OperatingPoint point = Wren.At(2000, -0.5);
        FuelSystem car = Car(Fixed.At(Wren.Kpa(420)), Ample).With(InjectorSet.Of(InjectorOf(900), 4));
        ControllerData data = ControllerData.Of(car.Injectors.Injector, FuelSizing.Fuels.Fuel.Petrol, TargetLambda.At(0.82)).WithFuelTemperature(Wren.Hill.FuelTemperature);
        DeliveredMixture following = car.With(AirflowMeterController.Of(data.WithRailPressureCorrection())).Solve(point).Mixture;
        double pulse = following.CommandedPulse!.Value.Milliseconds;
        Assert.InRange(pulse, 1.3, 3.2);
        Assert.Null(following.TurnOverDifferential);
        DeliveredMixture recorded = car.With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(pulse)), (Wren.Rpm(7000), Wren.Ms(pulse)))).Solve(point).Mixture;
        Assert.NotNull(recorded.TurnOverDifferential);
        Assert.Equal(following.Lambda!.Value, recorded.Lambda!.Value, 1e-9);
    }
}
