using FuelSizing.Equations;
using FuelSizing.Numerics;
using static FuelSizing.Tests.Equations.Dimension;

namespace FuelSizing.Tests.Equations;

/// <summary>
/// Every equation of the library with the dimensions of its arguments and results. Those with constants that have a unit say
/// which, and are tested in such other units as leave those constants alone.
/// </summary>
internal static class EquationForms
{
    private static readonly Argument[] DemandEngine =
    [
        new("Displacement", Volume, 0.5e-3, 8e-3), Plain("RevolutionsPerCycle", 1, 2), Share("CompressorEfficiency"), new("CoolerEffectiveness", One, 0, 1),
        new("CoolerLoss", Pascal, 0, 2e4), new("BeltShare", One, 0, 1), Share("DriveEfficiency"),
        new("MeasuredDensity", Dimension.Density, 0.8, 3), new("StatedFriction", Watt, 1e3, 4e4), new("StatedSpeed", Speed, 10, 150), new("BrakeSpecificFuelConsumption", Kilogram / Joule, 5e-8, 2e-7),
        Plain("AirFuelRatio", 6, 15), Absolute("Coolant", Kelvin), Share("EvaporatedShare"), new("HeatOfVaporisation", SpecificEnergy, 3e5, 1.2e6),
    ];

    private static readonly Argument[] DemandPoint =
    [
        new("Speed", Speed, 10, 150), new("Boost", Pascal, -5e4, 2e5), Absolute("Ambient"), Absolute("AmbientTemperature", Kelvin),
        Plain("VolumetricEfficiency", 0.5, 1.2), new("MeasuredPower", Watt, 1e4, 3e5),
    ];

    private static readonly Argument[] Injectors =
    [
        new("RatedFlow", VolumeFlow, 1e-6, 3e-5), Across("RatedDifferential"), Density("TestFluidDensity"), Plain("Count", 1, 12),
        Plain("InjectionsPerCycle", 1, 2), Plain("RevolutionsPerCycle", 1, 2),
    ];

    private static readonly Argument[] InjectionPoint =
    [
        new("Speed", Speed, 10, 150), Across("Differential"), new("DeadTime", Second, 0, 3e-3), new("FuelFlow", VolumeFlow, 0, 5e-5), Density("FuelDensity"),
    ];

    private static readonly Argument[] StaticFlow =
        [Across("ratedDifferential"), Density("testFluidDensity"), Across("differential"), Density("fuelDensity")];

    private static readonly Argument[] Pipe =
    [
        new("Bore", Metre, 3e-3, 2e-2), new("Length", Metre, 0, 10), new("RelativeRoughness", One, 0, 0.02), new("LossCoefficient", One, 0, 20),
    ];

    private static readonly Argument[] Liquid = [Density("density"), new("kinematicViscosity", KinematicViscosity, 3e-7, 2e-6)];

    /// <summary>All of them.</summary>
    public static readonly IReadOnlyList<EquationForm> All =
    [
        // Fuels.
        Of(typeof(Combustion), nameof(Combustion.OxygenDemand), One, Share("carbon"), Share("hydrogen"), Share("oxygen")),
        Of(typeof(Combustion), nameof(Combustion.StoichiometricAirFuelRatio), One, Plain("oxygenDemand", 1, 4)),
        Of(typeof(Combustion), nameof(Combustion.AirFuelRatio), One, Plain("lambda", 0.7, 1.3), Plain("stoichiometricAirFuelRatio", 6, 15)),
        Of(typeof(Combustion), nameof(Combustion.BrakeEfficiency), One, Consumption("brakeSpecificFuelConsumption"), HeatingValue),
        Of(typeof(Combustion), nameof(Combustion.BrakeSpecificFuelConsumption), Kilogram / Joule, Share("brakeEfficiency"), HeatingValue),
        Of(typeof(FuelDensity), nameof(FuelDensity.Heptane), Dimension.Density, [new("temperature", Kelvin, 250, 350)]) with
        {
            Constants = [Dimension.Density, Kelvin],
            Because = "correlation of density in kg/m³ with temperature in K",
        },
        Of(typeof(FuelDensity), nameof(FuelDensity.PetrolExpansion), One / Kelvin, Density("densityAt15")) with
        {
            Constants = [Dimension.Density, Kelvin],
            Because = "correlation of ASTM D1250, densities in kg/m³ and expansion in 1/K",
        },
        Of(typeof(FuelDensity), nameof(FuelDensity.At), Dimension.Density, Density("densityAt15"), new("expansion", One / Kelvin, 8e-4, 1.4e-3), Absolute("temperature", Kelvin)) with
        {
            Constants = [Kelvin],
            Because = "densities are stated at 288.15 K",
        },
        new(
            "FuelMixing.ByShare",
            [Share("first"), Share("second"), new("firstValue", SpecificEnergy, 2e7, 5e7), new("secondValue", SpecificEnergy, 2e7, 5e7)],
            [SpecificEnergy],
            numbers => [FuelMixing.ByShare<Real>([numbers[0], numbers[1]], [numbers[2], numbers[3]])]),
        Of(
            typeof(FuelMixing), nameof(FuelMixing.VolumeShare), One,
            new("value", SpecificEnergy, 3.1e7, 3.9e7), new("firstValue", SpecificEnergy, 4e7, 5e7), Density("firstDensity"), new("otherValue", SpecificEnergy, 2e7, 3e7), Density("otherDensity")),
        Of(typeof(FuelMixing), nameof(FuelMixing.Density), Dimension.Density, Share("massShare"), Density("firstDensity"), Density("otherDensity")),
        Of(typeof(FuelMixing), nameof(FuelMixing.MassShare), One, Share("volumeShare"), Density("firstDensity"), Density("otherDensity")),
        Of(
            typeof(TwoFuels), nameof(TwoFuels.Lambda), One,
            new("airFlow", Dimension.MassFlow, 0.01, 0.5), Plain("mainRatio", 9, 15), new("mainFlow", Dimension.MassFlow, 1e-3, 3e-2), Plain("streamRatio", 0, 9), new("streamFlow", Dimension.MassFlow, 0, 1e-2)),
        Of(
            typeof(TwoFuels), nameof(TwoFuels.HeatShare), One,
            new("mainHeat", SpecificEnergy, 2e7, 5e7), new("mainFlow", Dimension.MassFlow, 1e-3, 3e-2), new("streamHeat", SpecificEnergy, 0, 3e7), new("streamFlow", Dimension.MassFlow, 0, 1e-2)),
        Of(
            typeof(LiquidViscosity), nameof(LiquidViscosity.Dynamic), DynamicViscosity,
            new("a", DynamicViscosity.Logarithm, -25, -10), new("b", Kelvin, 500, 1500), new("c", One, -1, 2), Absolute("temperature", Kelvin)) with
        {
            Constants = [Kelvin],
            Because = "Perry's form has the logarithm of the number of kelvins",
        },
        Of(typeof(LiquidViscosity), nameof(LiquidViscosity.Kinematic), KinematicViscosity, new("dynamic", DynamicViscosity, 3e-4, 2e-3), Density("density")),
        Of(typeof(LiquidViscosity), nameof(LiquidViscosity.FromKinematic), DynamicViscosity, new("kinematic", KinematicViscosity, 3e-7, 2e-6), Density("density")),
        Of(
            typeof(VapourPressure), nameof(VapourPressure.Antoine), Pascal,
            new("a", Pascal.Logarithm, 20, 26), new("b", Kelvin, 2500, 4500), new("c", Kelvin, -60, 0), Absolute("temperature", Kelvin)),
        Of(typeof(VapourPressure), nameof(VapourPressure.PetrolIntercept), Pascal.Logarithm, new Argument("reidPressure", Pascal, 4e4, 1e5)) with
        {
            Constants = [Pascal],
            Because = "correlation of AP-42, pressures in psi",
        },
        Of(typeof(VapourPressure), nameof(VapourPressure.PetrolSlope), Kelvin, new Argument("reidPressure", Pascal, 4e4, 1e5)) with
        {
            Constants = [Pascal, Kelvin],
            Because = "correlation of AP-42, pressures in psi and temperatures in °R",
        },
        Of(typeof(VapourPressure), nameof(VapourPressure.AlcoholRise), Pascal, Plain("oxygenShare", 0.1, 0.5)) with
        {
            Constants = [Pascal],
            Because = "rises of 7 kPa and 21 kPa, by experiment",
        },
        Of(
            typeof(VapourPressure), nameof(VapourPressure.OfBlend), Pascal,
            Plain("petrolFactor", 1, 3), Plain("ethanolFactor", 1, 10), Share("ethanolShare"), new("petrol", Pascal, 1e3, 1e5), new("ethanol", Pascal, 1e3, 5e4)),
        Of(typeof(VapourPressure), nameof(VapourPressure.PetrolFactor), One, Share("ethanolShare")),
        Of(typeof(VapourPressure), nameof(VapourPressure.EthanolFactor), One, Share("ethanolShare")),
        Of(typeof(LumpedHeat), nameof(LumpedHeat.Steady), Kelvin, Absolute("ambient", Kelvin), new("heat", Watt, 0, 300), Conductance),
        Of(typeof(LumpedHeat), nameof(LumpedHeat.TimeConstant), Second, Contents, OfFuel, Conductance),
        Of(
            typeof(LumpedHeat), nameof(LumpedHeat.After), Kelvin,
            Absolute("start", Kelvin), Absolute("steady", Kelvin), new("time", Second, 0, 1e4), new("timeConstant", Second, 1e3, 1e5)),
        Of(
            typeof(LumpedHeat), nameof(LumpedHeat.Insulated), Kelvin,
            Absolute("start", Kelvin), new("heat", Watt, 0, 300), new("time", Second, 0, 1e4), Contents, OfFuel),
        Of(
            typeof(LumpedHeat), nameof(LumpedHeat.TimeTo), Second,
            new("start", Kelvin, 270, 290), new("steady", Kelvin, 320, 350), new("reached", Kelvin, 295, 315), new("timeConstant", Second, 1e3, 1e5)),
        Of(typeof(LumpedHeat), nameof(LumpedHeat.EquivalentTime), Second, Contents, new("draw", MassFlow, 1e-3, 3e-3), new("time", Second, 0, 2e3)),
        Of(typeof(LumpedHeat), nameof(LumpedHeat.PassedTime), Second, Contents, new("draw", MassFlow, 1e-3, 3e-3), new("equivalent", Second, 0, 2e3)),
        Of(
            typeof(LumpedHeat), nameof(LumpedHeat.FlowRise), Kelvin,
            new("heat", Watt, 0, 300), Density("density"), new("flow", VolumeFlow, 1e-5, 1e-4), OfFuel),
        Of(
            typeof(InverseTemperature), nameof(InverseTemperature.Slope), Kelvin,
            new("t1", Kelvin, 260, 290), new("y1", Pascal, 1e3, 1e5), new("t2", Kelvin, 300, 360), new("y2", Pascal, 1e3, 1e5)),
        Of(typeof(InverseTemperature), nameof(InverseTemperature.Intercept), Pascal.Logarithm, Absolute("t1", Kelvin), new("y1", Pascal, 1e3, 1e5), new("slope", Kelvin, -5000, 5000)),

        // Air and engine.
        Of(typeof(StandardAir), nameof(StandardAir.Temperature), Kelvin, new Argument("altitude", Metre, 0, 11_000)) with
        {
            Constants = [Kelvin, Metre],
            Because = "the standard atmosphere: 288.15 K, less 6.5 K for each km",
        },
        Of(typeof(StandardAir), nameof(StandardAir.Pressure), Pascal, new Argument("altitude", Metre, 0, 11_000)) with
        {
            Constants = [Pascal, Metre],
            Because = "the standard atmosphere: 101,325 Pa, and a temperature that falls with height",
        },
        Of(typeof(StandardAir), nameof(StandardAir.Density), Dimension.Density, Absolute("pressure"), Absolute("temperature", Kelvin)) with
        {
            Constants = [SpecificHeat],
            Because = GasConstant,
        },
        Of(typeof(HumidAir), nameof(HumidAir.SaturationPressure), Pascal, Absolute("temperature", Kelvin)) with
        {
            Constants = [Pascal, Kelvin],
            Because = "Magnus's formula of the WMO, pressures in hPa and temperatures in °C",
        },
        Of(typeof(HumidAir), nameof(HumidAir.PartialPressure), Pascal, new("relativeHumidity", One, 0, 1), Absolute("temperature", Kelvin)) with
        {
            Constants = [Pascal, Kelvin],
            Because = "Magnus's formula of the WMO, pressures in hPa and temperatures in °C",
        },
        Of(typeof(HumidAir), nameof(HumidAir.DryPressure), Pascal, Absolute("pressure"), new("vapour", Pascal, 0, 5e3)),
        Of(typeof(PowerCorrectionFactor), nameof(PowerCorrectionFactor.Iso1585), One, Absolute("dryPressure"), Absolute("temperature", Kelvin)) with
        {
            Constants = [Pascal, Kelvin],
            Because = ReferenceAir,
        },
        Of(typeof(PowerCorrectionFactor), nameof(PowerCorrectionFactor.SaeJ1349), One, Absolute("dryPressure"), Absolute("temperature", Kelvin)) with
        {
            Constants = [Pascal, Kelvin],
            Because = ReferenceAir,
        },
        Of(typeof(Compression), nameof(Compression.PressureRatio), One, Absolute("manifoldAbsolute"), new("coolerLoss", Pascal, 0, 2e4), Absolute("inletAbsolute")),
        Of(typeof(Compression), nameof(Compression.OutletTemperature), Kelvin, Absolute("inletTemperature", Kelvin), Plain("pressureRatio", 1, 3), Share("isentropicEfficiency")),
        Of(typeof(Compression), nameof(Compression.IsentropicRatio), One, Plain("pressureRatio", 1, 3)),
        new("Compression.IsentropicRatios", [Plain("pressureRatio", 1, 3)], [One], numbers =>
        {
            double[] ratios = [.. numbers];
            Compression.IsentropicRatios<Real>(ratios);
            return ratios;
        }),
        Of(typeof(Compression), nameof(Compression.FromIsentropicRatio), One, Plain("isentropicRatio", 1, 1.5)),
        Of(typeof(Compression), nameof(Compression.Heated), Kelvin, Absolute("inletTemperature", Kelvin), Plain("isentropicRatio", 1, 1.5), Share("isentropicEfficiency")),
        Of(typeof(Compression), nameof(Compression.CooledTemperature), Kelvin, Absolute("outletTemperature", Kelvin), Absolute("coolantTemperature", Kelvin), Share("effectiveness")),
        Of(
            typeof(ChargeCooling), nameof(ChargeCooling.Temperature), Kelvin,
            Absolute("chargeTemperature", Kelvin), Share("evaporatedShare"), new("heatOfVaporisation", SpecificEnergy, 3e5, 1.2e6), Plain("airFuelRatio", 6, 15)) with
        {
            Constants = [SpecificHeat],
            Because = "the specific heat of air",
        },
        Of(
            typeof(ChargeCooling), nameof(ChargeCooling.AirGain), One,
            Absolute("chargeTemperature", Kelvin), Share("evaporatedShare"), new("heatOfVaporisation", SpecificEnergy, 3e5, 2.4e6), new("streamFlow", Dimension.MassFlow, 0, 1e-2), new("airFlow", Dimension.MassFlow, 0.01, 0.5)) with
        {
            Constants = [SpecificHeat],
            Because = "the specific heat of air",
        },
        Of(
            typeof(Compression), nameof(Compression.DrivePower), Watt,
            new("airMassFlow", MassFlow, 0, 0.5), Absolute("inletTemperature", Kelvin), new("outletTemperature", Kelvin, 350, 450), Share("mechanicalEfficiency")) with
        {
            Constants = [SpecificHeat],
            Because = "the specific heat of air",
        },
        Of(
            typeof(CentrifugalCompressor), nameof(CentrifugalCompressor.EulerWork), SpecificEnergy,
            Plain("powerInputFactor", 1, 1.1), Share("slipFactor"), new("tipSpeed", Velocity, 100, 500)),
        Of(
            typeof(CentrifugalCompressor), nameof(CentrifugalCompressor.PressureRatio), One,
            new("compressorWork", SpecificEnergy, 0, 2e5), Share("isentropicEfficiency"), Absolute("inletTemperature", Kelvin)) with
        {
            Constants = [SpecificHeat],
            Because = "the specific heat of air",
        },
        Of(
            typeof(CentrifugalCompressor), nameof(CentrifugalCompressor.RatioAtSpeed), One,
            Plain("knownRatio", 1.05, 3), new("knownSpeed", Speed, 200, 1000), Absolute("knownTemperature", Kelvin), new("compressorSpeed", Speed, 200, 1000),
            Absolute("inletTemperature", Kelvin)),
        Of(
            typeof(DisplacementCompressor), nameof(DisplacementCompressor.ChargeDensity), Dimension.Density,
            new("inletDensity", Dimension.Density, 0.8, 1.4), Share("compressorEfficiency"), new("compressorDisplacement", Volume, 2e-4, 3e-3), Plain("driveRatio", 0.5, 4),
            Plain("revolutionsPerCycle", 1, 2), Plain("volumetricEfficiency", 0.5, 1.2), new("displacement", Volume, 0.5e-3, 8e-3)),
        Of(
            typeof(EngineAir), nameof(EngineAir.MassFlow), MassFlow,
            Plain("volumetricEfficiency", 0.5, 1.2), new("chargeDensity", Dimension.Density, 0.8, 3), new("displacement", Volume, 0.5e-3, 8e-3),
            new("speed", Speed, 10, 150), Plain("revolutionsPerCycle", 1, 2)),
        Of(typeof(EnginePower), nameof(EnginePower.OfTorque), Watt, new("torque", Joule, 50, 800), new("speed", Speed, 10, 150)),
        Of(typeof(BoostedPower), nameof(BoostedPower.CrankFromWheel), Watt, new("wheelPower", Watt, 1e4, 3e5), new("drivetrainLoss", One, 0, 0.3)),
        Of(
            typeof(BoostedPower), nameof(BoostedPower.Gross), Watt,
            new("measuredPower", Watt, 1e4, 3e5), new("friction", Watt, 1e3, 4e4), Plain("densityRatio", 0.5, 3)),
        Of(typeof(BoostedPower), nameof(BoostedPower.Brake), Watt, new("grossPower", Watt, 1e4, 3e5), new("drivePower", Watt, 0, 3e4)),
        Of(typeof(EngineFriction), nameof(EngineFriction.OfMeasuredPull), Watt, new("measuredPower", Watt, 1e4, 3e5), Share("mechanicalEfficiency")),
        Of(typeof(EngineFriction), nameof(EngineFriction.MeanEffectivePressure), Pascal, [new("speed", Speed, 10, 150)]) with
        {
            Constants = [Pascal, Speed],
            Because = "correlation of pressure in Pa with speed in rev/s",
        },
        Of(
            typeof(EngineFriction), nameof(EngineFriction.AtSpeed), Watt,
            new("statedFriction", Watt, 1e3, 4e4), new("statedSpeed", Speed, 10, 150), new("speed", Speed, 10, 150)) with
        {
            Constants = [Speed],
            Because = "correlation of pressure with speed in rev/s",
        },
        Of(typeof(FuelDemandFlow), nameof(FuelDemandFlow.FromPower), MassFlow, new("grossPower", Watt, 0, 5e5), Consumption("brakeSpecificFuelConsumption")),
        Of(typeof(FuelDemandFlow), nameof(FuelDemandFlow.FromAir), MassFlow, new("airMassFlow", MassFlow, 0, 0.5), Plain("airFuelRatio", 6, 15)),
        Of(typeof(FuelDemandFlow), nameof(FuelDemandFlow.Volume), VolumeFlow, new("massFlow", MassFlow, 0, 0.05), Density("density")),
        EquationForm.Of(
            typeof(DemandChain), nameof(DemandChain.Evaluate), [Pascal, One, Kelvin, Kelvin, Dimension.Density, Kelvin, MassFlow, Watt, Watt, Watt, Watt, MassFlow, MassFlow], [.. DemandEngine, .. DemandPoint]) with
        {
            Constants = [SpecificHeat, Speed],
            Because = GasConstant,
        },
        EquationForm.Of(
            typeof(DemandChain), nameof(DemandChain.Charge), [Pascal, One, Kelvin, Kelvin],
            [.. DemandEngine, new("boost", Pascal, -5e4, 2e5), Absolute("ambient"), Absolute("ambientTemperature", Kelvin)]),
        EquationForm.Of(
            typeof(DemandChain), nameof(DemandChain.PressureRatio), [One], [.. DemandEngine, Absolute("manifold"), Absolute("ambient")]),
        EquationForm.Of(
            typeof(DemandChain), nameof(DemandChain.Temperatures), [Kelvin, Kelvin],
            [.. DemandEngine, Plain("isentropicRatio", 1, 1.5), Absolute("ambientTemperature", Kelvin)]),
        EquationForm.Of(
            typeof(DemandChain), nameof(DemandChain.AlsoCooled), [Pascal, One, Kelvin, Kelvin, Dimension.Density, Kelvin, MassFlow, Watt, Watt, Watt, Watt, MassFlow, MassFlow],
            [
                Absolute("ManifoldAbsolute"), Plain("PressureRatio", 1, 2), Absolute("OutletTemperature", Kelvin), Absolute("ChargeTemperature", Kelvin), Density("ChargeDensity"),
                Absolute("EvaporatedTemperature", Kelvin), new("AirMassFlow", MassFlow, 0.01, 0.5), new("DrivePower", Watt, 0, 2e4), new("Friction", Watt, 1e3, 3e4),
                new("GrossPower", Watt, 5e4, 3e5), new("BrakePower", Watt, 5e4, 3e5), new("FromPower", MassFlow, 1e-3, 3e-2), new("FromAir", MassFlow, 1e-3, 3e-2),
                Share("share"), new("heat", SpecificEnergy, 3e5, 2.4e6), new("flow", MassFlow, 0, 1e-2),
            ]) with
        {
            Constants = [SpecificHeat],
            Because = "the specific heat of air",
        },
        EquationForm.Of(
            typeof(DemandChain), nameof(DemandChain.Burn), [Dimension.Density, Kelvin, MassFlow, Watt, Watt, Watt, Watt, MassFlow, MassFlow],
            [.. DemandEngine, .. DemandPoint, Absolute("manifold"), new("outlet", Kelvin, 350, 450), Absolute("charge", Kelvin)]) with
        {
            Constants = [SpecificHeat, Speed],
            Because = GasConstant,
        },

        // Injectors and rail.
        Of(typeof(InjectorFlow), nameof(InjectorFlow.Static), VolumeFlow, [new("ratedFlow", VolumeFlow, 1e-6, 3e-5), .. StaticFlow]),
        Of(typeof(InjectorFlow), nameof(InjectorFlow.Rated), VolumeFlow, [new("staticFlow", VolumeFlow, 1e-6, 3e-5), .. StaticFlow]),
        Of(typeof(InjectorFlow), nameof(InjectorFlow.AvailableTime), Second, new("speed", Speed, 10, 150), Plain("revolutionsPerCycle", 1, 2), Plain("injectionsPerCycle", 1, 2)),
        Of(typeof(InjectorFlow), nameof(InjectorFlow.Pulse), Second, Dead, Burnt, Plain("injectors", 1, 12), Available, Passed),
        Of(typeof(InjectorFlow), nameof(InjectorFlow.DutyCycle), One, new("pulse", Second, 0, 2e-2), Available),
        Of(typeof(InjectorFlow), nameof(InjectorFlow.RequiredStatic), VolumeFlow, Burnt, Plain("injectors", 1, 12), Available, Share("dutyLimit"), Dead),
        Of(typeof(InjectorFlow), nameof(InjectorFlow.StaticForPulse), VolumeFlow, Burnt, Plain("injectors", 1, 12), Available, new("pulse", Second, 5e-3, 2e-2), Dead),
        Of(typeof(InjectorFlow), nameof(InjectorFlow.Capacity), VolumeFlow, Passed, Plain("injectors", 1, 12), Available, Share("dutyLimit"), Dead),
        Of(typeof(StagedFlow), nameof(StagedFlow.ShareByBoost), One, new("boost", Pascal, 3.1e4, 9e4), new("begin", Pascal, 1e4, 3e4), new("full", Pascal, 4e4, 8e4), Plain("shareAtBegin", 0, 0.3), Plain("share", 0.3, 0.9)),
        Of(typeof(StagedFlow), nameof(StagedFlow.ShareByDutyCycle), One, new("fuelFlow", VolumeFlow, 1e-5, 5e-5), new("primaryFlow", VolumeFlow, 1e-6, 1e-5), Plain("shareAtBegin", 0, 0.3), Plain("share", 0.3, 0.9)),
        Of(typeof(StagedFlow), nameof(StagedFlow.Secondary), VolumeFlow, Burnt, Share("share")),
        Of(typeof(DeliveredFuel), nameof(DeliveredFuel.OpenTime), Second, new("pulse", Second, 0, 3e-2), Dead, Available),
        Of(typeof(DeliveredFuel), nameof(DeliveredFuel.Flow), VolumeFlow, Passed, Plain("injectors", 1, 12), new("openTime", Second, 0, 2e-2), Available),
        Of(typeof(DeliveredFuel), nameof(DeliveredFuel.Lambda), One, Plain("targetLambda", 0.7, 1.3), Burnt, new("deliveredFlow", VolumeFlow, 1e-6, 5e-5)),
        Of(typeof(DeliveredFuel), nameof(DeliveredFuel.TurnOverOpenTime), Second, Across("differential"), new("deadTimeSlope", Second / Pascal, 0, 5e-9), new("ratedFlow", VolumeFlow, 1e-6, 3e-5), new("ratedSlope", VolumeFlow / Pascal, 0, 1e-12)),
        Of(typeof(BoostedMixture), nameof(BoostedMixture.Lambda), One, Plain("unboostedLambda", 0.7, 1.3), Plain("densityRatio", 1, 2), Across("differential"), Across("unboostedDifferential")),
        Of(typeof(BoostedMixture), nameof(BoostedMixture.RequiredDifferential), Pascal, Across("unboostedDifferential"), Plain("densityRatio", 1, 2), Plain("unboostedLambda", 0.7, 1.3), Plain("targetLambda", 0.7, 1.3)),
        Of(typeof(BoostedMixture), nameof(BoostedMixture.Gain), One, Across("differential"), Across("unboostedDifferential"), new("boost", Pascal, 1e4, 2e5)),
        EquationForm.Of(typeof(InjectionChain), nameof(InjectionChain.Evaluate), [VolumeFlow, Second, Second, One], [.. Injectors, .. InjectionPoint]),
        new(
            "InjectorMatching.Mean", [Plain("first", 0.9, 1.1), Plain("second", 0.9, 1.1)], [One], numbers => [InjectorMatching.Mean<Real>([numbers[0], numbers[1]])]),
        Of(typeof(InjectorMatching), nameof(InjectorMatching.Lambda), One, Plain("lambda", 0.7, 1.3), Plain("mean", 0.9, 1.1), Plain("factor", 0.9, 1.1)),
        Of(typeof(InjectorMatching), nameof(InjectorMatching.EvenDutyCycle), One, Share("dutyCycle"), Plain("deadShare", 0, 0.1), Plain("mean", 0.9, 1.1), Plain("factor", 0.9, 1.1)),
        Of(
            typeof(RailPressure), nameof(RailPressure.Set), Pascal,
            Across("baseGauge"), Plain("gainBelowOnset", 0, 1), Plain("gain", 0, 12), new("onset", Pascal, 0, 5e4), new("ceiling", Pascal, 4e5, 9e5), new("boost", Pascal, -5e4, 2e5)),
        Of(typeof(RailPressure), nameof(RailPressure.InSeries), Pascal, Across("first"), Across("second")),
        Of(typeof(RailPressure), nameof(RailPressure.FlowRise), Pascal, new("slope", Pascal / VolumeFlow, 0, 1e9), new("returned", VolumeFlow, 0, 1e-4), new("statedAt", VolumeFlow, 0, 1e-4)),
        Of(typeof(RailPressure), nameof(RailPressure.Held), Pascal, Across("set"), new("flowRise", Pascal, -2e4, 4e4), Plain("outletShare", -0.5, 1), new("outlet", Pascal, 0, 5e4)),
        Of(typeof(RailPressure), nameof(RailPressure.Differential), Pascal, Across("railGauge"), Absolute("ambient"), Absolute("manifoldAbsolute")),
        Of(typeof(CircuitPressure), nameof(CircuitPressure.Inlet), Pascal, new Argument("suctionLoss", Pascal, 0, 3e4)),
        Of(typeof(CircuitPressure), nameof(CircuitPressure.Outlet), Pascal, Across("regulated"), new("supplyLoss", Pascal, 0, 5e4)),
        Of(typeof(CircuitPressure), nameof(CircuitPressure.Losses), Pascal, new("suctionLoss", Pascal, 0, 3e4), new("supplyLoss", Pascal, 0, 5e4)),
        Of(typeof(CircuitPressure), nameof(CircuitPressure.RiseRequired), Pascal, new("losses", Pascal, 0, 8e4), Across("regulated")),
        Of(typeof(CircuitPressure), nameof(CircuitPressure.Remaining), Pascal, Across("pumpRise"), new("losses", Pascal, 0, 8e4)),
        Of(typeof(CircuitPressure), nameof(CircuitPressure.RailBeyond), Pascal, Across("regulated"), new("supplyLoss", Pascal, 0, 5e4)),

        // Pumps.
        Of(typeof(PumpDuty), nameof(PumpDuty.Returned), VolumeFlow, Passed with { Name = "delivered" }, Passed with { Name = "injected" }),
        Of(typeof(PumpDuty), nameof(PumpDuty.Required), VolumeFlow, Passed with { Name = "injected" }, Plain("reserve", 0, 0.3), Passed with { Name = "minimumReturn" }),
        Of(typeof(PumpDuty), nameof(PumpDuty.Injectable), VolumeFlow, Passed with { Name = "delivered" }, Plain("reserve", 0, 0.3), Passed with { Name = "minimumReturn" }),
        Of(typeof(SurgeTankVolume), nameof(SurgeTankVolume.NetDraw), VolumeFlow, Passed with { Name = "pumped" }, Passed with { Name = "broughtBack" }),
        Of(typeof(SurgeTankVolume), nameof(SurgeTankVolume.TimeToEmpty), Second, new("volume", Volume, 1e-4, 5e-3), Passed with { Name = "draw" }),
        Of(typeof(SurgeTankVolume), nameof(SurgeTankVolume.TimeToRefill), Second, new("volume", Volume, 1e-4, 5e-3), new("lifted", VolumeFlow, 1.1e-4, 2e-4), Passed with { Name = "draw" }),
        Of(
            typeof(SurgeTankVolume), nameof(SurgeTankVolume.After), Volume,
            new("before", Volume, 1e-4, 5e-3), new("full", Volume, 1e-4, 5e-3), Passed with { Name = "lifted" }, Passed with { Name = "draw" }, new("time", Second, 0, 60)),
        Of(typeof(PumpHeat), nameof(PumpHeat.Electrical), Watt, Voltage("voltage"), Current("current")),
        Of(typeof(PumpHeat), nameof(PumpHeat.ToTank), Watt, new("electrical", Watt, 0, 300), new("returned", VolumeFlow, 0, 3e-5), new("pumped", VolumeFlow, 3e-5, 1e-4)),
        Of(
            typeof(PumpHeat), nameof(PumpHeat.ToTankFromRail), Watt,
            new("electrical", Watt, 0, 300), new("pickup", Watt, 0, 300), new("returned", VolumeFlow, 0, 3e-5), new("pumped", VolumeFlow, 3e-5, 1e-4)),
        Of(
            typeof(PumpHeat), nameof(PumpHeat.ToTankBySurgeTank), Watt,
            new("lift", Watt, 0, 300), new("surge", Watt, 0, 300), new("overflow", VolumeFlow, 0, 3e-5), new("lifted", VolumeFlow, 3e-5, 1e-4)),
        Of(typeof(PumpMotor), nameof(PumpMotor.SpeedRatio), One, Voltage("voltage"), Voltage("measuredVoltage"), Plain("resistiveShare", 0, 0.5)),
        Of(typeof(PumpMotor), nameof(PumpMotor.SpeedRatioByEmf), One, Voltage("voltage"), new("windingLoss", Volt, 0, 3), Voltage("measuredVoltage"), new("measuredWindingLoss", Volt, 0, 3)),
        Of(
            typeof(DisplacementPumpFlow), nameof(DisplacementPumpFlow.AtVoltage), VolumeFlow,
            Passed with { Name = "measured" }, Passed with { Name = "free" }, Voltage("voltage"), Voltage("measuredVoltage"), new("freeWindingLoss", Volt, 0, 3)),
        Of(typeof(PumpScaling), nameof(PumpScaling.SpeedRatio), One, Voltage("voltage"), Voltage("measuredVoltage")),
        Of(typeof(PumpScaling), nameof(PumpScaling.MeasuredPressure), Pascal, Across("pressure"), Plain("speedRatio", 0.7, 1.2)),
        Of(typeof(PumpScaling), nameof(PumpScaling.Pressure), Pascal, Across("measuredPressure"), Plain("speedRatio", 0.7, 1.2)),
        Of(typeof(PumpScaling), nameof(PumpScaling.Flow), VolumeFlow, Passed with { Name = "measuredFlow" }, Plain("speedRatio", 0.7, 1.2)),
        Of(typeof(PumpScaling), nameof(PumpScaling.Current), Ampere, Current("measuredCurrent"), Plain("speedRatio", 0.7, 1.2)),

        // Lines.
        Of(typeof(PipeFlow), nameof(PipeFlow.Velocity), Velocity, new("flow", VolumeFlow, 0, 2e-4), Bore),
        Of(typeof(PipeFlow), nameof(PipeFlow.Reynolds), One, new("velocity", Velocity, 0, 4), Bore, Liquid[1]),
        Of(typeof(PipeFlow), nameof(PipeFlow.StraightLoss), Pascal, [Plain("frictionNumber", 64, 1000), new("length", Metre, 0, 10), Bore, .. Liquid, new("velocity", Velocity, 0, 4)]),
        Of(typeof(PipeFlow), nameof(PipeFlow.FittingsLoss), Pascal, Plain("lossCoefficient", 0, 20), Density("density"), new("velocity", Velocity, 0, 4)),
        Of(typeof(PipeFlow), nameof(PipeFlow.Column), Pascal, Density("density"), new("height", Metre, -1, 1)) with
        {
            Constants = [Acceleration],
            Because = "gravity",
        },
        Of(typeof(PipeFriction), nameof(PipeFriction.Number), One, Plain("reynolds", 0, 20_000), Plain("relativeRoughness", 0, 0.05)),
        Of(typeof(PipeFriction), nameof(PipeFriction.Share), One, Plain("reynolds", 0, 20_000)),
        Of(typeof(PipeFriction), nameof(PipeFriction.Weight), One, Plain("share", 0, 1)),
        Of(typeof(PipeFriction), nameof(PipeFriction.Blend), One, Plain("weight", 0, 1), Plain("turbulentFriction", 0.02, 0.06), Plain("reynolds", 2040, 20_000)),
        Of(typeof(PipeFriction), nameof(PipeFriction.Factor), One, Plain("number", 64, 1000), Plain("reynolds", 100, 20_000)),
        Of(typeof(ColebrookWhite), nameof(ColebrookWhite.Friction), One, Plain("reynolds", 2040, 1e6), Plain("relativeRoughness", 0, 0.05)),
        Of(typeof(ColebrookWhite), nameof(ColebrookWhite.LeftSide), One, Plain("friction", 0.01, 0.08)),
        Of(typeof(ColebrookWhite), nameof(ColebrookWhite.RightSide), One, Plain("friction", 0.01, 0.08), Plain("reynolds", 2040, 1e6), Plain("relativeRoughness", 0, 0.05)),
        Of(typeof(ColebrookWhite), nameof(ColebrookWhite.FullyRough), One, Plain("relativeRoughness", 1e-4, 0.05)),
        EquationForm.Of(
            typeof(PipeLoss), nameof(PipeLoss.Evaluate), [Velocity, One, One, Pascal, Pascal, Pascal], [.. Pipe, new("flow", VolumeFlow, 0, 2e-4), .. Liquid]),
        Of(typeof(FittingLoss), nameof(FittingLoss.Coefficient), One, Plain("fixedCoefficient", 0, 2), Plain("diameters", 1, 60), Bore) with
        {
            Constants = [Metre],
            Because = "the roughness of commercial steel pipe, to which the ratios of Crane TP-410 belong",
        },
        Of(
            typeof(FilterLoss), nameof(FilterLoss.Loss), Pascal,
            [Plain("clogging", 1, 4), new("ratedLoss", Pascal, 1e3, 3e4), Passed with { Name = "ratedFlow" }, new("ratedViscosity", DynamicViscosity, 3e-4, 2e-3), new("flow", VolumeFlow, 0, 1e-4), .. Liquid]),
        Of(
            typeof(CheckValveLoss), nameof(CheckValveLoss.Share), One,
            new("flow", VolumeFlow, 0, 2e-4), Passed with { Name = "ratedFlow" }, Density("density"), Density("ratedDensity")),
        Of(
            typeof(CheckValveLoss), nameof(CheckValveLoss.Loss), Pascal,
            new("opening", Pascal, 0, 1e4), new("ratedLoss", Pascal, 1e4, 4e4), Plain("share", 0, 3)),
        Of(typeof(Suction), nameof(Suction.InletPressure), Pascal, Absolute("tankAbsolute"), new("column", Pascal, -5e3, 5e3), new("loss", Pascal, 0, 2e4)),
        Of(typeof(Suction), nameof(Suction.NetPositive), Pascal, Absolute("inletAbsolute"), new("vapourPressure", Pascal, 1e3, 6e4)),

        // Wiring. Temperatures in °C count degrees from a zero that any unit may keep.
        Of(typeof(AmericanWireGauge), nameof(AmericanWireGauge.Diameter), Metre, Plain("gauge", -3, 36)) with
        {
            Constants = [Metre],
            Because = "gauge 36 is a wire of 0.127 mm",
        },
        Of(typeof(RoundWire), nameof(RoundWire.Area), Area, new Argument("diameter", Metre, 5e-4, 1e-2)),
        Of(typeof(RoundWire), nameof(RoundWire.Diameter), Metre, WireArea),
        Of(typeof(WireResistance), nameof(WireResistance.Of), Ohm, new("perLength", Ohm / Metre, 1e-3, 0.1), new("length", Metre, 0, 10)),
        Of(typeof(WireResistance), nameof(WireResistance.PerLength), Ohm / Metre, Resistivity, Plain("lay", 0, 0.05), WireArea),
        Of(typeof(WireResistance), nameof(WireResistance.AtTemperature), Ohm, Resistance("at20"), new("coefficient", One / Kelvin, 3.9e-3, 4.1e-3), Celsius("celsius")) with
        {
            Constants = [Kelvin],
            Because = "resistivities are stated at 20 °C",
        },
        Of(
            typeof(WireResistance), nameof(WireResistance.SmallestArea), Area,
            Resistivity, Plain("lay", 0, 0.05), new("length", Metre, 0, 10), Current("current"), new("allowedDrop", Volt, 0.5, 2), new("contacts", Ohm, 0, 0.01)),
        Of(typeof(CurrentRating), nameof(CurrentRating.AmbientFactor), One, new("rating", Kelvin, 80, 125), Celsius("ambient"), new("tableAmbient", Kelvin, 20, 40)),
        Of(typeof(CurrentRating), nameof(CurrentRating.Derated), Ampere, Current("tabulated"), Plain("ambientFactor", 0.2, 1), Plain("bundleFactor", 0.4, 1)),
        Of(typeof(VoltageDrop), nameof(VoltageDrop.Loop), Ohm, Resistance("wire"), Resistance("contacts")),
        Of(typeof(VoltageDrop), nameof(VoltageDrop.Of), Volt, Current("current"), Resistance("resistance")),
        Of(typeof(VoltageDrop), nameof(VoltageDrop.AtMotor), Volt, Voltage("supply"), Current("current"), Resistance("loop")),
        Of(typeof(VoltageDrop), nameof(VoltageDrop.Heat), Watt, Current("current"), Resistance("resistance")),
        Of(typeof(VoltageConversion), nameof(VoltageConversion.InputVoltage), Volt, Voltage("supply"), new("outputPower", Watt, 20, 200), Plain("efficiency", 0.7, 1), Resistance("loop")),
        Of(typeof(VoltageConversion), nameof(VoltageConversion.InputCurrent), Ampere, new("outputPower", Watt, 20, 200), Plain("efficiency", 0.7, 1), Voltage("inputVoltage")),
        Of(typeof(VoltageConversion), nameof(VoltageConversion.MaximumPower), Watt, Voltage("supply"), Plain("efficiency", 0.7, 1), Resistance("loop")),

        // Tables hold of any dimension; these are examples of them.
        Of(
            typeof(StraightLine), nameof(StraightLine.Through), VolumeFlow,
            new("x0", Pascal, 0, 1e5), Passed with { Name = "y0" }, new("x1", Pascal, 2e5, 3e5), Passed with { Name = "y1" }, new("x", Pascal, 0, 3e5)),
        Of(
            typeof(StraightLine), nameof(StraightLine.Slope), VolumeFlow / Pascal,
            new("x0", Pascal, 0, 1e5), Passed with { Name = "y0" }, new("x1", Pascal, 2e5, 3e5), Passed with { Name = "y1" }),
        Of(
            typeof(MonotoneCubic), nameof(MonotoneCubic.InnerSlope), VolumeFlow / Pascal,
            new("before", Pascal, 1e4, 1e5), new("chordBefore", VolumeFlow / Pascal, 1e-10, 3e-10), new("after", Pascal, 1e4, 1e5), new("chordAfter", VolumeFlow / Pascal, 1e-10, 3e-10)),
        Of(
            typeof(MonotoneCubic), nameof(MonotoneCubic.EndSlope), VolumeFlow / Pascal,
            new("own", Pascal, 1e4, 1e5), new("ownChord", VolumeFlow / Pascal, 1e-10, 3e-10), new("next", Pascal, 1e4, 1e5), new("nextChord", VolumeFlow / Pascal, 1e-10, 3e-10)),
        Of(
            typeof(MonotoneCubic), nameof(MonotoneCubic.At), VolumeFlow,
            Passed with { Name = "value" }, new("slope", VolumeFlow / Pascal, 1e-10, 3e-10), new("chord", VolumeFlow / Pascal, 1e-10, 3e-10), new("width", Pascal, 5e4, 1e5), new("slopeAfter", VolumeFlow / Pascal, 1e-10, 3e-10), new("along", Pascal, 0, 5e4)),
        new("CubicPiece.Between", Cubic, [Pascal, VolumeFlow, VolumeFlow / Pascal, VolumeFlow / (Pascal * Pascal), VolumeFlow / (Pascal * Pascal * Pascal)], numbers =>
            Piece(numbers) is var piece ? [piece.Start, piece.Value, piece.Slope, piece.Second, piece.Third] : []),
        new("CubicPiece.At", [.. Cubic, new("x", Pascal, 0, 3e5)], [VolumeFlow], numbers => [Piece(numbers).At(numbers[6])]),
        new("CubicPiece.SlopeAt", [.. Cubic, new("x", Pascal, 0, 3e5)], [VolumeFlow / Pascal], numbers => [Piece(numbers).SlopeAt(numbers[6])]),
        new(
            "CubicPiece.Straight",
            [new("x0", Pascal, 0, 1e5), Passed, new("slope", VolumeFlow / Pascal, -1e-9, 1e-9), new("x", Pascal, 0, 3e5)],
            [VolumeFlow],
            numbers => [CubicPiece<Real>.Straight(numbers[0], numbers[1], numbers[2], numbers[3])]),
        new(
            "FallingCubic.Along",
            [new("width", Pascal, 1e5, 3e5), new("start", VolumeFlow, 5e-5, 1e-4), new("end", VolumeFlow, 1e-6, 4e-5), Plain("slope0", 0, 3), Plain("slope1", 0, 3), Share("value")],
            [Pascal],
            numbers =>
            {
                double secant = (numbers[2] - numbers[1]) / numbers[0];
                CubicPiece<Real> piece = CubicPiece<Real>.Between(0, numbers[1], numbers[3] * secant, numbers[0], numbers[2], numbers[4] * secant);
                return [FallingCubic.Along(piece, numbers[0], numbers[2], numbers[2] + (numbers[5] * (numbers[1] - numbers[2])))];
            }),
        new("CubicColumns.At", [.. Cubic, new("x", Pascal, 0, 3e5)], [VolumeFlow], numbers =>
        {
            double[] into = new double[1];
            new CubicColumns([Piece(numbers)]).At<Real>([numbers[6]], numbers[0], numbers[3], 1, into);
            return into;
        }),
    ];

    private const string GasConstant = "the gas constant of air";

    private const string ReferenceAir = "the standard's reference air, 99 kPa and 298 K";

    private static Argument HeatingValue => new("lowerHeatingValue", SpecificEnergy, 2e7, 5e7);

    private static Argument Dead => new("deadTime", Second, 0, 3e-3);

    private static Argument Burnt => new("fuelFlow", VolumeFlow, 0, 5e-5);

    private static Argument Available => new("availableTime", Second, 1e-2, 0.1);

    private static Argument Passed => new("staticFlow", VolumeFlow, 1e-6, 1e-4);

    private static Argument Bore => new("bore", Metre, 3e-3, 2e-2);

    private static Argument WireArea => new("area", Dimension.Area, 2e-7, 5e-5);

    private static Argument Resistivity => new("resistivity", Ohm * Metre, 1.5e-8, 3e-8);

    /// <summary>A curve's piece: two points with slopes.</summary>
    private static Argument[] Cubic =>
    [
        new("x0", Pascal, 0, 1e5), Passed, new("slope0", VolumeFlow / Pascal, -1e-9, 1e-9), new("x1", Pascal, 2e5, 3e5), Passed, new("slope1", VolumeFlow / Pascal, -1e-9, 1e-9),
    ];

    private static EquationForm Of(Type type, string function, Dimension result, params Argument[] arguments) =>
        EquationForm.Of(type, function, [result], arguments);

    private static CubicPiece<Real> Piece(double[] numbers) =>
        CubicPiece<Real>.Between(numbers[0], numbers[1], numbers[2], numbers[3], numbers[4], numbers[5]);

    private static Argument Conductance => new("conductance", Watt / Kelvin, 1, 10);

    private static Argument Contents => new("mass", Kilogram, 8, 60);

    private static Argument OfFuel => new("specificHeat", Dimension.SpecificHeat, 1900, 2600);

    private static Argument Plain(string name, double minimum, double maximum) => new(name, One, minimum, maximum);

    private static Argument Share(string name) => new(name, One, 0.1, 0.9);

    private static Argument Absolute(string name) => new(name, Pascal, 7e4, 3e5);

    private static Argument Absolute(string name, Dimension kelvin) => new(name, kelvin, 260, 340);

    private static Argument Across(string name) => new(name, Pascal, 1e5, 8e5);

    private static Argument Density(string name) => new(name, Dimension.Density, 680, 780);

    private static Argument Consumption(string name) => new(name, Kilogram / Joule, 5e-8, 2e-7);

    private static Argument Voltage(string name) => new(name, Volt, 8, 16);

    private static Argument Current(string name) => new(name, Ampere, 1, 30);

    private static Argument Resistance(string name) => new(name, Ohm, 1e-3, 0.2);

    private static Argument Celsius(string name) => new(name, Kelvin, -20, 80);
}
