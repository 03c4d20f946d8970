using FuelSizing.Circuits;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;
using static FuelSizing.Tests.Points.MixtureCar;

namespace FuelSizing.Tests.Points;

/// <summary>
/// Why lambda is not its target: each factor written from the orifice equation (flow goes with √Δp), from open time = pulse − dead time, and from what
/// the controller was told, apart from the code. Dead times fall straight with voltage and rise straight with pressure.
/// </summary>
public class MixtureCauseTests
{
    /// <summary>9 ms of recorded pulse at 5,000 rev/min, where the cycle takes 24 ms, with a rising rate: no more air is in it than without boost.</summary>
    [Theory]
    [InlineData(900)]
    [InlineData(30)]
    public void Causes_OfARecordedPulse_AreItsOwnPulse_Air_PressureDeadTimeAndSag(double pump)
    {
        FuelSystem system = Car(RisingRate.From(Wren.Kpa(300), 3, Pressure.Zero), PumpOf(pump)).With(RecordedPulseController.BySpeed((Wren.Rpm(1000), Wren.Ms(9)), (Wren.Rpm(7000), Wren.Ms(9))));
        OperatingResult result = system.Solve(Wren.At(5000, 0.4));
        DeliveredMixture mixture = result.Mixture;
        const double Rest = 300;
        const double Set = 300 + (3 * 40) - 40;
        double actual = mixture.InjectorDifferential.Kilopascals;
        Assert.Equal(pump < 100, actual < Set - 1);
        double density = Density(system);
        double Flow(double differential, double open) => 4 * Injector(360, differential, density) * open / 24;
        double unboosted = Needed(system, 0) / density;
        double needed = Needed(system, 40) / density;
        Same(
            mixture,
            (MixtureCauseKind.Air, needed / unboosted),
            (MixtureCauseKind.RecordedPulse, unboosted / Flow(Rest, 9 - Dead(Rest))),
            (MixtureCauseKind.Pressure, Math.Sqrt(Rest / Set)),
            (MixtureCauseKind.DeadTime, (9 - Dead(Rest)) / (9 - Dead(Set))),
            (MixtureCauseKind.RailSag, Flow(Set, 9 - Dead(Set)) / Flow(actual, 9 - Dead(actual))));
    }

    /// <summary>A pulse that follows the manifold has the air in it: what it delivers at rest stands beside what the engine needs now.</summary>
    [Fact]
    public void Causes_OfARecordedPulseThatFollowsTheManifold_HaveNoAir()
    {
        FuelSystem system = Car(Fixed.At(Wren.Kpa(300)), Ample).With(RecordedPulseController.Of([Wren.Rpm(1000), Wren.Rpm(7000)], [Wren.Kpa(50), Wren.Kpa(250)], [[Wren.Ms(8), Wren.Ms(8)], [Wren.Ms(8), Wren.Ms(8)]]));
        DeliveredMixture mixture = system.Solve(Wren.At(5000, 0.4)).Mixture;
        double density = Density(system);
        Same(
            mixture,
            (MixtureCauseKind.RecordedPulse, Needed(system, 40) / density / (4 * Injector(360, 300, density) * (8 - Dead(300)) / 24)),
            (MixtureCauseKind.Pressure, Math.Sqrt(300.0 / 260)),
            (MixtureCauseKind.DeadTime, (8 - Dead(300)) / (8 - Dead(260))));
    }

    /// <summary>
    /// Speed and density up to 120 kPa absolute; 340 mL/min at 300 kPa in its data, and its own target of 0.88 where the engine is meant to have 0.82. The air
    /// that it does not know of is what the charge holds over 120 kPa at the same temperature.
    /// </summary>
    [Theory]
    [InlineData(900)]
    [InlineData(60)]
    public void Causes_OfACalculatedPulse_AreAir_Target_Data_PressureDeadTimeAndSag(double pump)
    {
        ControllerData data = ControllerData.Of(InjectorOf(340), Fuel.Petrol, TargetLambda.At(0.88)).WithFuelTemperature(Wren.Hill.FuelTemperature);
        FuelSystem system = Car(Fixed.At(Wren.Kpa(420)), PumpOf(pump)).With(SpeedDensityController.Of(data, Wren.VolumetricEfficiency, Wren.Kpa(120)));
        OperatingResult result = system.Solve(Wren.At(5000, 0.4));
        DeliveredMixture mixture = result.Mixture;
        double manifold = Wren.Hill.Atmosphere.Pressure.Kilopascals + 40;
        double density = Density(system);
        double pulse = mixture.CommandedPulse!.Value.Milliseconds;
        double actual = mixture.InjectorDifferential.Kilopascals;
        Assert.True(mixture.IsPastSensor);

        // What it commands: the fuel of the air that it knows of, at 300 kPa with its own injectors.
        double wanted = Needed(system, 40) / density * (120 / manifold) * (0.82 / 0.88);
        Assert.Equal((wanted / (4 * Injector(340, 300, density)) * 24) + Dead(300), pulse, 1e-9);
        Same(
            mixture,
            (MixtureCauseKind.Air, manifold / 120),
            (MixtureCauseKind.Target, 0.88 / 0.82),
            (MixtureCauseKind.InjectorData, 340.0 / 360),
            (MixtureCauseKind.Pressure, Math.Sqrt(300.0 / 380)),
            (MixtureCauseKind.DeadTime, (pulse - Dead(300)) / (pulse - Dead(380))),
            (MixtureCauseKind.RailSag, Math.Sqrt(380 / actual) * (pulse - Dead(380)) / (pulse - Dead(actual))));
    }

    /// <summary>One that knows the pressure loses nothing by it, nor by a rail that sags; what its greatest duty cycle of 30 % cuts off, it lacks.</summary>
    [Theory]
    [InlineData(900)]
    [InlineData(60)]
    public void Causes_OfAControllerThatReadsThePressure_AreItsDutyLimit(double pump)
    {
        ControllerData data = ControllerData.Of(InjectorOf(360), Fuel.Petrol, TargetLambda.At(0.82))
            .WithFuelTemperature(Wren.Hill.FuelTemperature).WithRailPressureCorrection().WithMaximumDutyCycle(Wren.Percent(30));
        FuelSystem system = Car(Fixed.At(Wren.Kpa(420)), PumpOf(pump)).With(SpeedDensityController.Of(data, Wren.VolumetricEfficiency, Wren.Kpa(250)));
        DeliveredMixture mixture = system.Solve(Wren.At(5000, 0.4)).Mixture;
        double differential = mixture.InjectorDifferential.Kilopascals;
        double density = Density(system);
        Assert.True(mixture.IsDutyLimited);
        Assert.Equal(7.2, mixture.CommandedPulse!.Value.Milliseconds, 1e-9);
        Assert.Equal(30, mixture.CommandedDutyCycle!.Value.Percent, 1e-9);
        double unlimited = Needed(system, 40) / density / (4 * Injector(360, differential, density)) * 24;
        Same(mixture, (MixtureCauseKind.DutyLimit, unlimited / (7.2 - Dead(differential))));
    }

    /// <summary>
    /// A closed loop multiplies the fuel by what makes the lambda that the controller wants, by 12 % at the most: with data of 340 mL/min for injectors of
    /// 360 the engine gets 1.059 times its fuel, with 310 mL/min 1.161, with 415 mL/min 0.867.
    /// </summary>
    [Theory]
    [InlineData(340, 340.0 / 360)]
    [InlineData(370, 370.0 / 360)]
    [InlineData(310, 0.88)]
    [InlineData(415, 1.12)]
    public void ClosedLoop_WithinItsAuthority_HoldsItsOwnLambda(double data, double trim)
    {
        ControllerData Of(double manifold) => ControllerData.Of(InjectorOf(data), Fuel.Petrol, TargetLambda.At(0.9))
            .WithFuelTemperature(Wren.Hill.FuelTemperature).WithClosedLoop(ClosedLoop.Of(Wren.Percent(12), Wren.Kpa(manifold)));
        FuelSystem system = Car(ManifoldReferenced.From(Wren.Kpa(300)), Ample);
        double manifold = Wren.Hill.Atmosphere.Pressure.Kilopascals + 40;
        DeliveredMixture closed = system.With(SpeedDensityController.Of(Of(manifold + 0.01), Wren.VolumetricEfficiency, Wren.Kpa(250))).Solve(Wren.At(5000, 0.4)).Mixture;
        Assert.Equal(trim, closed.ClosedLoopFactor, 1e-9);
        Assert.Equal(0.9 * data / 360 / trim, closed.Lambda!.Value, 1e-9);
        Same(closed, (MixtureCauseKind.Target, 0.9 / 0.82), (MixtureCauseKind.ClosedLoop, 1 / trim), (MixtureCauseKind.InjectorData, data / 360));

        // Over the pressure up to which it works the loop is open.
        DeliveredMixture open = system.With(SpeedDensityController.Of(Of(manifold - 0.01), Wren.VolumetricEfficiency, Wren.Kpa(250))).Solve(Wren.At(5000, 0.4)).Mixture;
        Assert.Equal(1, open.ClosedLoopFactor);
        Assert.Equal(0.9 * data / 360, open.Lambda!.Value, 1e-9);
    }

    /// <summary>The closed loop where the rail sags with the flow: the lambda that it wants, at the rail that the trimmed flow leaves.</summary>
    [Fact]
    public void ClosedLoop_OfARailThatSags_HoldsItsLambdaToo()
    {
        ControllerData data = ControllerData.Of(InjectorOf(330), Fuel.Petrol, TargetLambda.At(0.9))
            .WithFuelTemperature(Wren.Hill.FuelTemperature).WithClosedLoop(ClosedLoop.Of(Wren.Percent(25), Wren.Kpa(250)));
        DeliveredMixture mixture = Car(ManifoldReferenced.From(Wren.Kpa(300)), PumpOf(64))
            .With(SpeedDensityController.Of(data, Wren.VolumetricEfficiency, Wren.Kpa(250))).Solve(Wren.At(5000, 0.4)).Mixture;
        Assert.Equal(RailState.Sagging, mixture.RailState);
        Assert.Equal(0.9, mixture.Lambda!.Value, 1e-9);
        Assert.Equal(0.9 / 0.82, mixture.Causes.Aggregate(1.0, (all, cause) => all * cause.Factor), 1e-9);
    }

    [Fact]
    public void Cause_InWords_SaysHowMuchLeanerOrRicher()
    {
        FuelSystem system = Car(Fixed.At(Wren.Kpa(420)), Ample);
        DeliveredMixture Of(double data, double sensor, double target, double efficiency = 1) => system.With(SpeedDensityController.Of(
            ControllerData.Of(InjectorOf(data), Fuel.Petrol, TargetLambda.At(target)).WithFuelTemperature(Wren.Hill.FuelTemperature).WithDifferential(Wren.Kpa(380)),
            VolumetricEfficiency.Of((Wren.Rpm(1000), Wren.Percent(101 * efficiency)), (Wren.Rpm(7000), Wren.Percent(101 * efficiency))),
            Wren.Kpa(sensor))).Solve(Wren.At(5000, 0.4)).Mixture;
        string Words(DeliveredMixture mixture) => mixture.Causes.Single().ToString();
        Assert.Equal("10 % leaner by the target and the fuel that the controller was calibrated for", Words(Of(360, 250, 0.902)));
        Assert.Equal("10 % richer by the target and the fuel that the controller was calibrated for", Words(Of(360, 250, 0.738)));
        Assert.Equal("10 % leaner by injectors that pass less than the controller's data says", Words(Of(396, 250, 0.82)));
        Assert.Equal("10 % richer by injectors that pass more than the controller's data says", Words(Of(324, 250, 0.82)));
        Assert.Equal("25 % leaner by air that the controller does not know of", Words(Of(360, 250, 0.82, 0.8)));
        Assert.Equal("20 % richer by air that the controller believes in and is not there", Words(Of(360, 250, 0.82, 1.25)));
        Assert.Empty(Of(360, 250, 0.82).Causes);
        Assert.Equal("lambda 0.820 (target 0.820)", Of(360, 250, 0.82).ToString());
        Assert.Equal("lambda 0.902 (target 0.820): 10 % leaner by the target and the fuel that the controller was calibrated for", Of(360, 250, 0.902).ToString());

        // A billionth is no cause, a millionth is one; the largest stands first, whichever way it goes.
        Assert.Empty(Of(360 * (1 + 1e-10), 250, 0.82).Causes);
        Assert.Single(Of(360 * (1 + 1e-6), 250, 0.82).Causes);
        Assert.Equal([MixtureCauseKind.Target, MixtureCauseKind.InjectorData], Of(330, 250, 0.95).Causes.Select(cause => cause.Kind));
        Assert.Equal([MixtureCauseKind.InjectorData, MixtureCauseKind.Target], Of(300, 250, 0.90).Causes.Select(cause => cause.Kind));
        Refused.Missing("style", () => Of(330, 250, 0.95).Causes[0].In(null!));
        Refused.Missing("style", () => Of(330, 250, 0.95).In(null!));
    }

    /// <summary>These causes and no others, each with its factor; together they are what lambda is off its target.</summary>
    private static void Same(DeliveredMixture mixture, params (MixtureCauseKind Kind, double Factor)[] expected)
    {
        (MixtureCauseKind Kind, double Factor)[] real = [.. expected.Where(cause => Math.Abs(cause.Factor - 1) > 1e-7)];
        Assert.Equal(real.Select(cause => cause.Kind).Order(), mixture.Causes.Select(cause => cause.Kind).Order());
        Assert.All(real, cause => Assert.Equal(cause.Factor, mixture.Causes.Single(of => of.Kind == cause.Kind).Factor, 1e-8 * cause.Factor));
        Assert.Equal(mixture.Lambda!.Value / 0.82, real.Aggregate(1.0, (all, cause) => all * cause.Factor), 1e-7);
        Assert.Equal(mixture.Causes.OrderByDescending(cause => Math.Abs(Math.Log(cause.Factor))), mixture.Causes);
    }
}
