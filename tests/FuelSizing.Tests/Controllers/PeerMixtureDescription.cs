using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Circuits;
using UnitsNet;

namespace FuelSizing.Tests.Controllers;

/// <summary>Systems and the mixture that the library says as plain data, every number in SI with its unit in its name.</summary>
internal static class PeerMixtureDescription
{
    /// <summary>One system with its answers, ready to be written as JSON.</summary>
    public static object Of(PeerMixture mixture) => Of(mixture.Name, mixture.System, mixture.Point, mixture.Recorded);

    private static object Of(string name, FuelSystem system, OperatingPoint point, RecordedPulses? recorded) => new
    {
        name,
        speedRevolutionsPerSecond = point.Speed.RevolutionsPerSecond,
        boostPascals = point.Boost.Pascals,
        ambientPascals = point.Conditions.Atmosphere.Pressure.Pascals,
        ambientKelvins = point.Conditions.Atmosphere.Temperature.Kelvins,
        supplyVolts = point.Conditions.SupplyVoltage.Volts,
        fuelKelvins = point.Conditions.FuelTemperature.Kelvins,
        engine = Of(system.Demand),
        layout = system.Layout.ToString(),
        regulator = Of(system.Regulator),
        minimumReturnCubicMetresPerSecond = system.Regulator.MinimumReturnFlow.CubicMetersPerSecond,
        pump = PeerDescription.Of(system.Pump),
        suction = system.Plumbing.Suction.Select(PeerDescription.Of),
        supply = system.Plumbing.Supply.Select(PeerDescription.Of),
        back = system.Plumbing.ReturnLine.Select(PeerDescription.Of),
        injector = Of(system.Injectors.Injector),
        injectors = system.Injectors.Count,
        injectionsPerCycle = system.Injectors.InjectionsPerCycle,
        controller = recorded is null ? Of(system.Controller) : Of(recorded),
        answers = Of(system.Solve(point).Mixture),
    };

    private static object Of(DeliveredMixture mixture) => new
    {
        // JSON has no infinity: a lambda without any fuel is a word.
        lambda = mixture.Lambda is { } lambda && double.IsPositiveInfinity(lambda) ? (object)"infinite" : mixture.Lambda,
        pulseSeconds = mixture.CommandedPulse?.Seconds,
        deliveredCubicMetresPerSecond = mixture.InjectedFlow?.CubicMetersPerSecond,
        railPascals = mixture.RailGauge.Pascals,
        state = mixture.RailState.ToString(),
        loopFactor = mixture.ClosedLoopFactor,
        heldOpen = mixture.IsHeldOpen,
        dutyLimited = mixture.IsDutyLimited,
        pastSensor = mixture.IsPastSensor,
    };

    private static object Of(FuelDemandModel demand) => new
    {
        displacementCubicMetres = demand.Engine.Displacement.CubicMeters,
        strokes = demand.Engine.Cycle == EngineCycle.TwoStroke ? 2 : 4,
        volumetricEfficiency = Of(demand.VolumetricEfficiency),
        compressorEfficiency = demand.Induction.CompressorEfficiency.DecimalFractions,
        coolerEffectiveness = demand.Induction.CoolerEffectiveness.DecimalFractions,
        coolerLossPascals = demand.Induction.CoolerPressureLoss.Pascals,
        coolantKelvins = demand.Induction.CoolantTemperature?.Kelvins,
        measuredAirPascals = demand.MeasuredPower.MeasuredIn.Pressure.Pascals,
        measuredAirKelvins = demand.MeasuredPower.MeasuredIn.Temperature.Kelvins,
        drivetrainLoss = demand.MeasuredPower.Loss,
        wheelPower = demand.MeasuredPower.Points.Select(point => new { revolutionsPerSecond = point.Speed.RevolutionsPerSecond, watts = point.Power.Watts }),
        mechanicalEfficiency = demand.MechanicalEfficiency.DecimalFractions,
        mechanicalEfficiencyRevolutionsPerSecond = demand.MechanicalEfficiencySpeed.RevolutionsPerSecond,
        consumptionKilogramsPerJoule = demand.Consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule,
        evaporationJoulesPerKilogram = demand.EvaporatedShare.DecimalFractions * (demand.Consumption.Fuel.HeatOfVaporisation?.JoulesPerKilogram ?? 0),
        targetLambda = demand.Consumption.Lambda,
        basis = demand.Basis.ToString(),
        fuel = Of(demand.Consumption.Fuel),
    };

    private static object Of(VolumetricEfficiency table) =>
        table.Points.Select(point => new { revolutionsPerSecond = point.Speed.RevolutionsPerSecond, share = point.Efficiency.DecimalFractions });

    /// <summary>A fuel by its parts, so that the peer mixes them itself.</summary>
    public static object Of(Fuel fuel) => PartsOf(fuel).Select(part => new
    {
        volumeShare = part.Share.DecimalFractions,
        carbonShare = part.Fuel.Composition.CarbonShare,
        hydrogenShare = part.Fuel.Composition.HydrogenShare,
        oxygenShare = part.Fuel.Composition.OxygenShare,
        densityAt15CKilogramsPerCubicMetre = part.Fuel.DensityAt15C.KilogramsPerCubicMeter,
        expansionAt15CPerKelvin = part.Fuel.ExpansionAt15C.PerKelvin,
        viscosityLaw = part.Fuel.Viscosity is { } law ? new { a = law.A, b = law.B, c = law.C } : null,
    });

    private static IReadOnlyList<(Fuel Fuel, Ratio Share)> PartsOf(Fuel fuel) =>
        fuel.Making.Value?.Parts is { Count: > 0 } parts ? parts : [(fuel, Ratio.FromPercent(100))];

    /// <summary>An injector.</summary>
    public static object Of(Injector injector) => new
    {
        staticCubicMetresPerSecond = injector.StaticFlow.CubicMetersPerSecond,
        ratedPascals = injector.RatedDifferential.Pascals,
        testFluidKilogramsPerCubicMetre = injector.TestFluid.Density.KilogramsPerCubicMeter,
        measured = injector.MeasuredFlows.Select(point => new { pascals = point.Differential.Pascals, cubicMetresPerSecond = point.Flow.CubicMetersPerSecond }),
        lowestPascals = injector.MinimumDifferential.Pascals,
        deadTime = Of(injector.DeadTime),
    };

    private static object Of(DeadTimeTable table) => table.Points.GroupBy(point => point.Differential?.Pascals).Select(row => new
    {
        differentialPascals = row.Key,
        volts = row.Select(point => point.Voltage.Volts),
        seconds = row.Select(point => point.Time.Seconds),
    });

    private static object[] Of(PressureRegulator regulator) => regulator switch
    {
        Fixed constant => [Unit(constant.Gauge, 0, 0, Pressure.Zero, null)],
        ManifoldReferenced following => [Unit(following.Base, 1, 1, Pressure.Zero, null)],
        RisingRate rising => [Unit(rising.Base, 1, rising.Gain, rising.Onset, rising.Ceiling)],
        RegulatorSeries series => [.. Of(series.BaseRegulator), .. Of(series.Unit)],
        _ => throw new NotSupportedException($"The peer knows no {regulator.GetType().Name}."),
    };

    private static object Unit(Pressure basePressure, double gainBelow, double gain, Pressure onset, Pressure? ceiling) => new
    {
        basePascals = basePressure.Pascals,
        gainBelowOnset = gainBelow,
        gain,
        onsetPascals = onset.Pascals,
        ceilingPascals = ceiling?.Pascals,
    };

    private static object Of(EngineController controller) => controller switch
    {
        IdealController => new { kind = "ideal" },
        SpeedDensityController density => new
        {
            kind = "speed-density",
            volumetricEfficiency = Of(density.VolumetricEfficiency),
            endPascals = density.End.Pascals,
            fixedChargeKelvins = density.FixedChargeTemperature?.Kelvins,
            data = Of(density.Data),
        },
        ThrottleController throttle => new
        {
            kind = "throttle",
            volumetricEfficiency = Of(throttle.VolumetricEfficiency),
            calibratedPascals = throttle.CalibratedAt.Pressure.Pascals,
            calibratedKelvins = throttle.CalibratedAt.Temperature.Kelvins,
            hasBarometer = throttle.HasBarometer,
            hasAirTemperature = throttle.HasAirTemperature,
            data = Of(throttle.Data),
        },
        AirflowMeterController meter => new { kind = "meter", endKilogramsPerSecond = meter.Maximum?.KilogramsPerSecond, data = Of(meter.Data) },
        _ => throw new NotSupportedException($"The peer knows no {controller.GetType().Name}."),
    };

    private static object Of(RecordedPulses recorded) => new
    {
        kind = "recorded",
        revolutionsPerSecond = recorded.Speeds.Select(speed => speed.RevolutionsPerSecond),
        manifoldPascals = recorded.Manifold.Select(pressure => pressure.Pascals),
        pulsesSeconds = recorded.Pulses.Select(row => row.Select(pulse => pulse.Seconds)),
        deadTime = recorded.Correction is { } by ? Of(by.DeadTime) : null,
        recordedVolts = recorded.Correction?.Volts.Volts,
        deadTimePascals = recorded.Correction?.Differential.Pascals,
    };

    private static object Of(ControllerData data) => new
    {
        injector = Of(data.Injector),
        differentialPascals = data.Differential.Pascals,
        fuel = Of(data.Fuel),
        fuelKelvins = data.FuelTemperature.Kelvins,
        target = data.Target.Points.Select(point => new { load = point.Load.DecimalFractions, lambda = point.Lambda }),
        correctsForRailPressure = data.CorrectsForRailPressure,
        fixedVolts = data.FixedVoltage?.Volts,
        maximumDutyCycle = data.MaximumDutyCycle.DecimalFractions,
        closedLoopAuthority = data.ClosedLoop?.Authority.DecimalFractions,
        closedLoopManifoldPascals = data.ClosedLoop?.MaximumManifoldAbsolute.Pascals,
        hasEthanolSensor = data.HasEthanolSensor,
    };
}
