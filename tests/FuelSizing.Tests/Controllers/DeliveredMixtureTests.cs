using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Controllers;

/// <summary>The mixture that an engine gets whose controller does not know everything.</summary>
public class DeliveredMixtureTests
{
    // Holds any pressure that these tests ask for.
    private static readonly Pump Ample = Pump.From(PumpCurve.At(
        "ample",
        Wren.Volt(13.5),
        (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(900)),
        (Wren.Kpa(1500), VolumeFlow.FromLitersPerHour(700)),
        (Wren.Kpa(2000), VolumeFlow.FromLitersPerHour(500))));

    private static readonly DeadTimeTable SameAtAllPressures = DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(2)), (Wren.Volt(16), Wren.Ms(0.7)));

    private static readonly Gen<(double Rpm, double Boost, double Base, double Injector, double Efficiency, double Cooler)> Cases = Gen.Select(
        Gen.Double[1200, 6600],
        Gen.Double[0.05, 1.0],
        Gen.Double[220, 400],
        Gen.Double[240, 700],
        Gen.Double[55, 80],
        Gen.Double[0, 85]);

    private static readonly RotationalSpeed[] Speeds = [Wren.Rpm(1000), Wren.Rpm(2500), Wren.Rpm(4500), Wren.Rpm(7000)];

    /// <summary>
    /// λ/λ0 = (ρ_a/ρ_a0)/√(Δp/Δp0), written here from conservation of mass and the orifice equation: dead times equal, pulse independent of
    /// boost, equal volumetric efficiency, no ceiling, no sag.
    /// </summary>
    [Fact]
    public void Lambda_OfAPulseThatDoesNotFollowBoost_IsTheClosedForm() => Gen.Select(Cases, Gen.Double[1, 12]).Sample((of, gain) =>
    {
        FuelSystem system = System(of, RisingRate.From(Wren.Kpa(of.Base), gain, Pressure.Zero));
        (double rest, double boosted) = (Unboosted(system, of.Rpm).Lambda!.Value, At(system, of.Rpm, of.Boost).Lambda!.Value);
        double differential = (of.Base * 1e3) + ((gain - 1) * of.Boost * 1e5);
        double expected = rest * DensityRatio(system, of.Rpm, of.Boost) / Math.Sqrt(differential / (of.Base * 1e3));
        Near(expected, boosted, 1e-12);
        Near(DensityRatio(system, of.Rpm, of.Boost), At(system, of.Rpm, of.Boost).Causes.Single(cause => cause.Kind == MixtureCauseKind.Air).Factor, 1e-12);
        Near(expected, BoostedMixture.Lambda<Real>(rest, DensityRatio(system, of.Rpm, of.Boost), differential, of.Base * 1e3), 1e-12);
    });

    /// <summary>g(b) = 1 + (Δp0/b)((ρ_a/ρ_a0 · λ0/λ_t)² − 1), and the system with that gain has the target.</summary>
    [Fact]
    public void Gain_ThatTheClosedFormAsksFor_GivesTheTarget() => Gen.Select(Cases, Gen.Double[0.75, 0.9]).Where(drawn => drawn.Item1.Boost > 0.15).Sample((of, target) =>
    {
        FuelSystem system = System(of, ManifoldReferenced.From(Wren.Kpa(of.Base)));
        double lambda = Unboosted(system, of.Rpm).Lambda!.Value;
        double density = DensityRatio(system, of.Rpm, of.Boost);
        double ratio = density * lambda / target;
        double gain = 1 + (of.Base * 1e3 / (of.Boost * 1e5) * ((ratio * ratio) - 1));
        double differential = BoostedMixture.RequiredDifferential<Real>(of.Base * 1e3, density, lambda, target);
        Near(gain, BoostedMixture.Gain<Real>(differential, of.Base * 1e3, of.Boost * 1e5), 1e-12);
        if (gain is >= 1 and <= 15)
        {
            Near(target, At(system.With(RisingRate.From(Wren.Kpa(of.Base), gain, Pressure.Zero)), of.Rpm, of.Boost).Lambda!.Value, 1e-12);
        }
    });

    [Fact]
    public void Lambda_OfAControllerThatKnowsEverything_IsTheTargetWhereDutyAndPressureAllow() => Gen.Select(Cases, Gen.Double[0.5, 1.5]).Sample((of, pump) =>
    {
        FuelSystem system = Wren.System(Fixed.At(Wren.Kpa(of.Base + 60)), of.Injector, pump);
        OperatingResult result = system.Solve(Wren.At(of.Rpm, of.Boost));
        if (result.Mixture.Lambda is not { } lambda)
        {
            return;
        }

        if (result.RailState == FuelSizing.Circuits.RailState.Regulated && result.DutyCycle!.Value.Percent <= 100)
        {
            Near(0.82, lambda, 1e-12);
            Assert.Empty(result.Mixture.Causes);
        }
        else
        {
            // What it cannot inject it lacks; richer only by an injector that has no time left to close.
            Assert.True(lambda >= 0.82 * (1 - 1e-12) || result.Mixture.IsHeldOpen, $"{lambda}");
            Assert.True(lambda <= 0.82 * (1 + 1e-9) || result.Mixture.IsHeldOpen, result.Mixture.ToString());
        }
    });

    [Fact]
    public void CommandedPulse_PastTheEndOfAMeter_DoesNotFollowTheAir()
    {
        FuelSystem system = Wren.System(ManifoldReferenced.From(Wren.Kpa(300)))
            .With(AirflowMeterController.Of(Data(Wren.InjectorOf(360)), MassFlow.FromGramsPerSecond(90)));
        DeliveredMixture first = At(system, 6000, 0.3);
        DeliveredMixture second = At(system, 6000, 0.7);
        Assert.True(first.IsPastSensor && second.IsPastSensor);
        Near(first.CommandedPulse!.Value.Milliseconds, second.CommandedPulse!.Value.Milliseconds, 1e-12);
        Assert.True(second.Lambda > first.Lambda);
        Assert.Equal(MixtureCauseKind.Air, second.Causes[0].Kind);

        // Before its end it knows the air, and what is left is its target.
        DeliveredMixture before = At(system, 2000, 0);
        Assert.False(before.IsPastSensor);
        Assert.DoesNotContain(before.Causes, cause => cause.Kind == MixtureCauseKind.Air);
    }

    [Fact]
    public void Lambda_WithADeadTimeIndependentOfPressure_NeverGrowsWithGainWhileTheRailHolds() => Gen.Select(Cases, Gen.Double[1, 8], Gen.Double[0.01, 4]).Sample((of, gain, more) =>
    {
        double Of(double gain) => At(System(of, RisingRate.From(Wren.Kpa(of.Base), gain, Pressure.Zero)), of.Rpm, of.Boost).Lambda!.Value;
        Assert.True(Of(gain + more) <= Of(gain));
    });

    /// <summary>At the turn-over the open time is twice the differential times the slope of the dead time, and both sides deliver less.</summary>
    [Fact]
    public void TurnOver_OfAShortPulse_IsWhereItDeliversMost()
    {
        // 2 ms with 1 ms of dead time at 300 kPa, 1 µs more for each kPa: open 1.3 ms − Δp/1 MPa ms; √Δp (1.3 − Δp) is largest at 1.3/3 MPa.
        DeadTimeTable table = DeadTimeTable.Of([Wren.Volt(8), Wren.Volt(16)], [Wren.Kpa(100), Wren.Kpa(600)], [[Wren.Ms(0.8), Wren.Ms(0.8)], [Wren.Ms(1.3), Wren.Ms(1.3)]]);
        FuelSystem system = Wren.System(Fixed.At(Wren.Kpa(400)))
            .With(InjectorSet.Of(Injector.Of("injector A", VolumeFlow.FromMillilitersPerMinute(360), Wren.Kpa(300), TestFluid.Heptane, table, Wren.Ms(1.6), Wren.Kpa(600)), 4))
            .With(Ample)
            .With(RecordedPulseController.BySpeed((Wren.Rpm(800), Wren.Ms(2)), (Wren.Rpm(7000), Wren.Ms(2))));
        DeliveredMixture mixture = At(system, 3000, 0);
        Near(1300.0 / 3, mixture.TurnOverDifferential!.Value.Kilopascals, 1e-9);
        Assert.False(mixture.IsPastTurnOver);

        double Delivered(double rail) => At(system.With(Fixed.At(Wren.Kpa(rail))), 3000, 0).InjectedFlow!.Value.CubicMetersPerSecond;
        Assert.True(Delivered(1300.0 / 3) > Delivered((1300.0 / 3) - 5));
        Assert.True(Delivered(1300.0 / 3) > Delivered((1300.0 / 3) + 5));
        Assert.True(At(system.With(Fixed.At(Wren.Kpa(450))), 3000, 0).IsPastTurnOver);
    }

    [Fact]
    public void Causes_TogetherMakeTheDeviation() => Gen.Select(Cases, Gen.Double[1, 9], Gen.Int[0, 4], Gen.Double[0.4, 1.5], Gen.Double[50, 100]).Sample((of, gain, kind, pump, duty) =>
    {
        FuelSystem system = Wren.System(RisingRate.From(Wren.Kpa(of.Base), gain, Pressure.Zero, Wren.Kpa(900)), of.Injector, pump).With(AnyOf(kind, duty));
        DeliveredMixture mixture = At(system, of.Rpm, of.Boost);
        if (mixture.Lambda is { } lambda && double.IsFinite(lambda))
        {
            Near(lambda / 0.82, mixture.Causes.Aggregate(1.0, (product, cause) => product * cause.Factor), 1e-8);
        }
    });

    /// <summary>The circuit is solved at the flow that is injected: what the injectors pass at the rail found is that flow.</summary>
    [Fact]
    public void InjectedFlow_IsWhatThePulseDeliversAtTheRailThatItLeaves() => Gen.Select(Cases, Gen.Double[1, 9], Gen.Int[0, 4], Gen.Double[0.2, 1.5], Gen.Double[50, 100]).Sample((of, gain, kind, pump, duty) =>
    {
        FuelSystem system = Wren.System(RisingRate.From(Wren.Kpa(of.Base), gain, Pressure.Zero, Wren.Kpa(700)), of.Injector, pump).With(AnyOf(kind, duty));
        DeliveredMixture mixture = At(system, of.Rpm, of.Boost);
        if (mixture.InjectedFlow is not { } flow)
        {
            return;
        }

        double density = system.Demand.Consumption.Fuel.DensityAt(Wren.Hill.FuelTemperature).KilogramsPerCubicMeter;
        double one = system.Injectors.Injector.StaticFlow.CubicMetersPerSecond
            * Math.Sqrt(Math.Max(0, mixture.InjectorDifferential.Kilopascals) / 300 * TestFluid.Heptane.Density.KilogramsPerCubicMeter / density);
        Near(4 * one * mixture.OpenTime!.Value.Seconds / (2 / (of.Rpm / 60)), flow.CubicMetersPerSecond, 1e-9);
    });

    [Fact]
    public void Check_OfALeanMixture_Fails_AndItsRemedyServes()
    {
        FuelSystem system = System((4500, 0.6, 300, 640, 72, 70), RisingRate.From(Wren.Kpa(300), 1, Pressure.Zero))
            .With(SizingLimits.Default.With(MixtureLimits.Of(0.88, Pressure.FromBars(0.1), richest: 0.6)));
        SweepResult sweep = system.Sweep([Wren.Rpm(3000), Wren.Rpm(6000)], [Pressure.FromBars(0.2), Pressure.FromBars(0.6)], Wren.Hill);
        PartStanding standing = sweep.Standings.Single(of => of.Part == Part.Mixture);
        Assert.Equal(Outcome.Fails, standing.Outcome);
        Assert.Contains("leaner than the 0.880 allowed", standing.ToString(), StringComparison.Ordinal);
        Remedy remedy = sweep.Remedies.Single(of => of.Part == Part.Mixture);
        double gain = Convert.ToDouble(remedy.Text.Arguments[0].Value, global::System.Globalization.CultureInfo.InvariantCulture);
        SweepResult remedied = system.With(RisingRate.From(Wren.Kpa(300), gain, Pressure.Zero)).Sweep([Wren.Rpm(3000), Wren.Rpm(6000)], [Pressure.FromBars(0.2), Pressure.FromBars(0.6)], Wren.Hill);
        Assert.Equal(Outcome.Holds, remedied.Standings.Single(of => of.Part == Part.Mixture).Outcome);
        Assert.Equal(Outcome.Fails, system.With(RisingRate.From(Wren.Kpa(300), gain - 0.02, Pressure.Zero))
            .Sweep([Wren.Rpm(3000), Wren.Rpm(6000)], [Pressure.FromBars(0.2), Pressure.FromBars(0.6)], Wren.Hill).Standings.Single(of => of.Part == Part.Mixture).Outcome);
    }

    [Fact]
    public void Check_WithoutALimitOrAController_IsNotJudged()
    {
        FuelSystem assumed = Wren.System();
        Assert.Contains(assumed.NotJudged, open => open.Part == Part.Mixture && open.ToString().Contains("assumed to command whatever", StringComparison.Ordinal));
        FuelSystem described = assumed.With(AnyOf(0, 100));
        Assert.Contains(described.NotJudged, open => open.Part == Part.Mixture && open.ToString().Contains("no leanest lambda", StringComparison.Ordinal));
        FuelSystem judged = described.With(SizingLimits.Default.With(MixtureLimits.Of(0.9)));
        Assert.DoesNotContain(judged.NotJudged, open => open.Part == Part.Mixture);
    }

    private static FuelSystem System((double Rpm, double Boost, double Base, double Injector, double Efficiency, double Cooler) of, PressureRegulator regulator)
    {
        FuelDemandModel demand = FuelDemandModel.Of(
            Wren.Engine,
            Induction.Turbocharged(Wren.Percent(of.Efficiency), Wren.Percent(of.Cooler), Pressure.Zero),
            Wren.VolumetricEfficiency,
            Wren.Power,
            Wren.Percent(85),
            Wren.Petrol,
            DemandBasis.Air);
        Injector injector = Injector.Of(
            "injector A", VolumeFlow.FromMillilitersPerMinute(of.Injector), Wren.Kpa(300), TestFluid.Heptane, SameAtAllPressures, Wren.Ms(2), Wren.Kpa(1999));
        return FuelSystem.Return(demand, InjectorSet.Of(injector, 4), regulator, Ample)
            .With(RecordedPulseController.BySpeed([.. Speeds.Select(speed => (speed, Wren.Ms(7.5)))]));
    }

    private static ControllerData Data(Injector injector) => ControllerData.Of(injector, Fuel.Petrol, TargetLambda.Of((Wren.Percent(40), 1), (Wren.Percent(80), 0.88)));

    private static EngineController AnyOf(int kind, double duty)
    {
        ControllerData data = Data(Wren.InjectorOf(340)).WithMaximumDutyCycle(Wren.Percent(duty));
        return kind switch
        {
            0 => SpeedDensityController.Of(data, Wren.VolumetricEfficiency, Wren.Kpa(105)),
            1 => ThrottleController.Of(data, Wren.VolumetricEfficiency, Atmosphere.Standard),
            2 => AirflowMeterController.Of(data.WithRailPressureCorrection(), MassFlow.FromGramsPerSecond(120)),
            3 => RecordedPulseController.BySpeed([.. Speeds.Select(speed => (speed, Wren.Ms(9)))]),
            _ => SpeedDensityController.Of(data.WithClosedLoop(ClosedLoop.Of(Wren.Percent(12), Wren.Kpa(240))), Wren.VolumetricEfficiency, Wren.Kpa(300)),
        };
    }

    private static DeliveredMixture At(FuelSystem system, double rpm, double boost) => system.Solve(Wren.At(rpm, boost)).Mixture;

    private static DeliveredMixture Unboosted(FuelSystem system, double rpm) => At(system, rpm, 0);

    private static double DensityRatio(FuelSystem system, double rpm, double boost) =>
        system.Solve(Wren.At(rpm, boost)).Demand.ChargeDensity.KilogramsPerCubicMeter
        / system.Solve(Wren.At(rpm, 0)).Demand.ChargeDensity.KilogramsPerCubicMeter;

    private static void Near(double expected, double actual, double share) =>
        Assert.True(Math.Abs(actual - expected) <= share * Math.Abs(expected), $"{actual:R} for {expected:R}");
}
