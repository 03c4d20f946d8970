using CsCheck;
using FuelSizing.Bench;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Points;
using UnitsNet;

namespace FuelSizing.Tests.Bench;

/// <summary>
/// Scaled figures through the models of controllers that commanded pulses before there was any scaling: the pulse must be the right one, t = t_d + m_a t_c/(λ A N ρ Q), whatever the share.
/// </summary>
public class FlowScalingTests
{
    private static readonly Temperature Warm = Wren.Hill.FuelTemperature;

    private static readonly TargetLambda Target = TargetLambda.Of((Wren.Percent(30), 1), (Wren.Percent(70), 0.9), (Wren.Percent(150), 0.8));

    private static readonly Gen<(double Flow, double Share, double Rpm, double Boost)> Cases =
        Gen.Select(Gen.Double[400, 1500], Gen.Double[0.3, 0.95], Gen.Double[1500, 6500], Gen.Double[-0.5, 0.9]);

    /// <summary>With the air and the load axis scaled by the share too the pulse by manifold pressure, and by throttle, is the right one to the last digits, and so is lambda.</summary>
    [Fact]
    public void Pulse_OfATableOfAir_WithAirAndLoadAxisScaled_IsTheRightOne() => Cases.Where(of => of.Share > 0.3).Sample(of =>
    {
        (FuelSystem car, ControllerFigures figures, FlowScaling scaling) = Of(of.Flow, of.Share);
        foreach (bool corrects in new[] { false, true })
        {
            Duration Pulse(ControllerData data, VolumetricEfficiency table) =>
                car.With(SpeedDensityController.Of(data, table, Wren.Kpa(300))).Solve(Wren.At(of.Rpm, of.Boost)).Mixture.CommandedPulse!.Value;
            double right = Pulse(figures.DataFor(Target, corrects), Wren.VolumetricEfficiency).Seconds;
            double scaled = Pulse(scaling.DataFor(scaling.TargetFor(Target), corrects), scaling.TableFor(Wren.VolumetricEfficiency)).Seconds;
            Assert.InRange(scaled / right, 1 - 1e-11, 1 + 1e-11);
            Duration ByThrottle(ControllerData data, VolumetricEfficiency table) =>
                car.With(ThrottleController.Of(data, table, Atmosphere.Standard)).Solve(Wren.At(of.Rpm, of.Boost)).Mixture.CommandedPulse!.Value;
            double throttle = ByThrottle(scaling.DataFor(scaling.TargetFor(Target), corrects), scaling.TableFor(Wren.VolumetricEfficiency)).Seconds;
            Assert.InRange(throttle / ByThrottle(figures.DataFor(Target, corrects), Wren.VolumetricEfficiency).Seconds, 1 - 1e-11, 1 + 1e-11);

            // Scaling the dead time with the flow would cut it short: by the share of a whole dead time.
            double dead = figures.DataFor(Target, corrects).Injector.DeadTime.At(Wren.Volt(13.5), Wren.Kpa(300)).Seconds;
            Assert.True((1 - of.Share) * dead > 1e-5);
            Assert.Equal(figures.DataFor(Target, corrects).Injector.DeadTime, scaling.DataFor(Target, corrects).Injector.DeadTime);
        }
    });

    /// <summary>Without the load axis scaled the open time is the right one times λ(L)/λ(k L): lean, for tables ask for more fuel at more load.</summary>
    [Fact]
    public void Pulse_WithoutTheLoadAxisScaled_IsOffByTheTargetThatIsRead() => Cases.Where(of => of.Share > 0.3).Sample(of =>
    {
        (FuelSystem car, ControllerFigures figures, FlowScaling scaling) = Of(of.Flow, of.Share);
        FuelSizing.Points.DeliveredMixture Run(ControllerData data, VolumetricEfficiency table) =>
            car.With(SpeedDensityController.Of(data, table, Wren.Kpa(300))).Solve(Wren.At(of.Rpm, of.Boost)).Mixture;
        double dead = figures.DataFor(Target).Injector.DeadTime.At(Wren.Volt(13.5), Wren.Kpa(300)).Seconds;
        double right = Run(figures.DataFor(Target), Wren.VolumetricEfficiency).CommandedPulse!.Value.Seconds - dead;
        double off = Run(scaling.DataFor(Target), scaling.TableFor(Wren.VolumetricEfficiency)).CommandedPulse!.Value.Seconds - dead;

        // Air of a cycle by what would fill 2.4 L at 1.225 kg/m³.
        double load = car.Solve(Wren.At(of.Rpm, of.Boost)).Demand.AirMassFlow.KilogramsPerSecond * 2 / (of.Rpm / 60 * 2.4e-3 * 101325 / (287.05287 * 288.15));
        double read = Target.LambdaAt(Ratio.FromDecimalFractions(load * of.Share)) / Target.LambdaAt(Ratio.FromDecimalFractions(load));
        Assert.Equal(1 / read, off / right, 1e-6);
        Assert.True(off <= right * (1 + 1e-12));
    });

    /// <summary>Of an airflow meter the transfer and its end are scaled: it then reads so much less of any air, and the pulse is the right one on either side of its end.</summary>
    [Fact]
    public void Pulse_OfAnAirflowMeter_WithItsTransferScaled_IsTheRightOne() => Gen.Select(Cases, Gen.Double[0.02, 0.3]).Where(drawn => drawn.Item1.Share > 0.3).Sample((of, air) =>
    {
        (FuelSystem car, ControllerFigures figures, FlowScaling scaling) = Of(of.Flow, of.Share);
        double share = scaling.Factor!.Value.DecimalFractions;
        AirflowMeterController right = AirflowMeterController.Of(figures.DataFor(Target), MassFlow.FromKilogramsPerSecond(0.15));
        AirflowMeterController scaled = AirflowMeterController.Of(scaling.DataFor(scaling.TargetFor(Target)), MassFlow.FromKilogramsPerSecond(0.15 * share));
        ControllerInput Input(double read) => new()
        {
            Speed = of.Rpm / 60,
            ManifoldAbsolute = 1e5,
            ChargeTemperature = 310,
            Ambient = 1e5,
            AmbientTemperature = 300,
            Air = read,
            Displacement = 2.4e-3,
            RevolutionsPerCycle = 2,
            AvailableTime = 120 / of.Rpm,
            Volts = 12.7,
            Density = 740,
            StoichiometricRatio = 14.6,
            Required = 0.01,
            TargetLambda = 0.82,
            Injectors = car.Injectors,
        };
        double Pulse(CalculatingController controller, double read) => controller.Command(Input(read), controller.Want(Input(read)), 1, 300e3).Unlimited;
        double dead = figures.DataFor(Target).Injector.DeadTime.At(Wren.Volt(12.7), Wren.Kpa(300)).Seconds;
        Assert.InRange(Pulse(scaled, air * share) / Pulse(right, air), 1 - 1e-11, 1 + 1e-11);

        // With the meter left as it was the open time is too long by one over the share, up to its end and at one target.
        (TargetLambda flat, MassFlow far) = (TargetLambda.At(0.85), MassFlow.FromKilogramsPerSecond(1));
        double left = Pulse(AirflowMeterController.Of(scaling.DataFor(flat), far), air) - dead;
        Assert.Equal(1 / share, left / (Pulse(AirflowMeterController.Of(figures.DataFor(flat), far), air) - dead), 1e-9);
    });

    /// <summary>A controller that corrects for rail pressure and takes the pressure of its flow: the true flow at that lower reference commands the right pulse, and nothing is false.</summary>
    [Fact]
    public void ReferenceInstead_CommandsTheRightPulse_AndFalsifiesNothing() => Cases.Where(of => of.Share > 0.45).Sample(of =>
    {
        (FuelSystem car, ControllerFigures figures, FlowScaling scaling) = Of(of.Flow, of.Share);
        Pressure instead = scaling.ReferenceInstead!.Value;
        Assert.Equal(of.Share * of.Share * 300, instead.Kilopascals, 1e-9);
        Injector typed = Injector.Of(
            "as typed", scaling.Largest, instead, TestFluid.Of(figures.Fuel.Name, figures.FuelDensity), figures.Injector.DeadTime, Wren.Ms(1.6), Wren.Kpa(600));
        ControllerData data = ControllerData.Of(typed, figures.Fuel, Target).WithFuelTemperature(Warm).WithRailPressureCorrection();
        double Pulse(ControllerData what) => car.With(SpeedDensityController.Of(what, Wren.VolumetricEfficiency, Wren.Kpa(300))).Solve(Wren.At(of.Rpm, of.Boost)).Mixture.CommandedPulse!.Value.Seconds;
        Assert.InRange(Pulse(data) / Pulse(figures.DataFor(Target, true)), 1 - 1e-11, 1 + 1e-11);
    });

    [Fact]
    public void Scaling_SaysWhatItFalsifies()
    {
        ControllerFigures figures = ControllerFigures.Of(Wren.InjectorOf(1250), Fuel.Petrol, Warm, [Wren.Kpa(300)]);
        VolumeFlow largest = figures.ReferenceFlow.Flow!.Value * 0.625;
        FlowScaling scaling = figures.ScaledTo(largest, Target);
        Assert.Equal(62.5, scaling.Factor!.Value.Percent, 1e-9);
        Assert.Equal(-37.5, scaling.Falsified!.Value.Percent, 1e-9);
        Assert.Equal(largest.MillilitersPerMinute, scaling.Flow!.Value.MillilitersPerMinute, 1e-9);
        Assert.Equal([0.3, 0.7, 1.5], scaling.Lookups.Select(lookup => Math.Round(lookup.Load.DecimalFractions, 9)));

        // 150 % is read as 93.75 %: 0.9 − 0.1 · 23.75/80 = 0.8703125, 8.789 % over 0.8.
        Assert.Equal(0.8703125, scaling.Lookups[2].Read!.Value, 1e-12);
        Assert.Equal(8.7890625, scaling.Lookups[2].Error!.Value.Percent, 1e-9);
        Assert.Contains("37.5 % low", scaling.ToString(), StringComparison.Ordinal);
        Assert.Contains("knock", scaling.Caution!.ToString(), StringComparison.Ordinal);

        // By mass it is the same, and without a target loads alone.
        Assert.Equal(scaling.Factor.Value.DecimalFractions, figures.ScaledToMass(scaling.MassFlow!.Value).Factor!.Value.DecimalFractions, 1e-12);
        Assert.All(figures.ScaledTo(largest).Lookups, lookup => Assert.True(lookup.Error is null && lookup.Believed < lookup.Load));
    }

    [Fact]
    public void Scaling_ThatIsNotNeeded_OrNotKnown_SaysSo()
    {
        ControllerFigures figures = ControllerFigures.Of(Wren.InjectorOf(600), Fuel.Petrol, Warm, [Wren.Kpa(300)]);
        FlowScaling enough = figures.ScaledTo(VolumeFlow.FromMillilitersPerMinute(2000), Target);
        Assert.False(enough.IsNeeded);
        Assert.Equal((100.0, "controller.scaling-not-needed"), (enough.Factor!.Value.Percent, enough.Text.Code));
        Assert.Null(enough.Caution);
        Assert.Empty(enough.Lookups);
        Assert.Equal(figures.DataFor(Target), enough.DataFor(Target));

        FlowScaling unknown = ControllerFigures.Of(Wren.InjectorOf(600), Fuel.Petrol, Warm, [Wren.Kpa(700)]).ScaledTo(VolumeFlow.FromMillilitersPerMinute(300));
        Assert.Equal((null, "controller.scaling-unknown"), (unknown.Factor, unknown.Text.Code));
        Assert.Throws<InvalidOperationException>(() => unknown.TargetFor(Target));

        // A quarter of 72 % is under what a table of volumetric efficiency may hold.
        FlowScaling quarter = figures.ScaledTo(figures.ReferenceFlow.Flow!.Value * 0.25);
        Refused.OutOfRange("table", () => quarter.TableFor(Wren.VolumetricEfficiency));
    }

    private static (FuelSystem Car, ControllerFigures Figures, FlowScaling Scaling) Of(double flow, double share)
    {
        FuelSystem car = MixtureCar.Car(ManifoldReferenced.From(Wren.Kpa(300)), MixtureCar.Ample).With(InjectorSet.Of(Wren.InjectorOf(flow), 4));
        ControllerFigures figures = ControllerFigures.Of(Wren.InjectorOf(flow), car.Demand.Consumption.Fuel, Warm, [Wren.Kpa(300)]);
        return (car, figures, figures.ScaledTo(figures.ReferenceFlow.Flow!.Value * share));
    }
}
