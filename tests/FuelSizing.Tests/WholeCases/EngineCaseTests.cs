using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.WholeCases;

/// <summary>
/// Exercises of textbooks as whole fuel systems: engine data in, fuel and pulse out. The expected numbers are worked here from the
/// book's inputs, in plain arithmetic that calls nothing of the library; a comment gives the answer by hand.
/// </summary>
public class EngineCaseTests
{
    private const double GasConstant = 287;

    /// <summary>0.411 g of air and 0.0484 g of ethanol a cylinder; pulse 2.42 ms.</summary>
    [Fact(DisplayName = "Ethanol engine, fuel and injector pulse; Pulkrabek, problem 5-7")]
    public void Pulse_OfPulkrabeksEthanolEngine_IsWorkedApart()
    {
        const double AirFuel = 9.0 / 1.06;
        double airPerCylinder = 0.87 * 101e3 / (GasConstant * 298) * (2.4e-3 / 6);
        double pulse = airPerCylinder / AirFuel / 0.02;

        double density = Fuel.Ethanol.DensityAt15C.KilogramsPerCubicMeter;
        InjectorSet injectors = InjectorSet.Of(
            Injector.Of(
                "book",
                VolumeFlow.FromCubicMetersPerSecond(0.02 / density),
                Wren.Kpa(300),
                TestFluid.Of("ethanol", Fuel.Ethanol.DensityAt15C),
                DeadTimeTable.ByVoltage((Wren.Volt(8), Duration.Zero), (Wren.Volt(16), Duration.Zero)),
                Wren.Ms(0.1),
                Wren.Kpa(500)),
            6);
        OperatingResult result = SystemOf(
                Demand(Volume.FromLiters(2.4), 6, 3000, 87, 50, FuelConsumption.Of(Fuel.Ethanol, 1 / 1.06, Grams(500)), DemandBasis.Air),
                injectors)
            .Solve(At(3000, 101, 298 - 273.15));

        // Stoichiometric ratio 9.0 in the book, 9.005 by the molar masses; the book's gas constant is 287.
        Published.Value(Works.Pulkrabek.At("air a cylinder, g"), airPerCylinder * 1e3, result.Demand.AirMassFlow.KilogramsPerSecond * 1e3 / (6 * 25), 1e-3);
        Published.Value(Works.Pulkrabek.At("pulse, ms"), pulse * 1e3, result.Pulse!.Value.Milliseconds, 1e-3);
        Published.Value(Works.Pulkrabek.At("duty cycle"), pulse / 0.040, result.DutyCycle!.Value.DecimalFractions, 1e-3);
    }

    /// <summary>16.18 kW and 6.74 L/h of 0.735: 0.306 kg/kWh; volumetric efficiency 76.0 % by the air for that fuel.</summary>
    [Fact(DisplayName = "Petrol engine on a brake, fuel both ways; Eastop and McConkey, examples 13.1 and 13.2")]
    public void Fuel_OfEastopsEngine_IsTheSameFromAirAndFromPower()
    {
        double power = 2 * Math.PI * 2800 / 60 * 155 * 0.356;
        double fuel = 6.74e-3 / 3600 * 735;
        double swept = 4 * Math.PI / 4 * 0.057 * 0.057 * 0.090;
        double efficiency = fuel * 14.5 / (swept * 2800 / 120 * 1.013e5 / (GasConstant * 288.15));

        double lambda = 14.5 / Fuel.Petrol.StoichiometricAirFuelRatio;
        OperatingResult result = SystemOf(Demand(
                Volume.FromCubicMeters(swept), 4, 2800, efficiency * 100, power / 1000, FuelConsumption.Of(Fuel.Petrol, lambda, Grams(fuel * 3.6e9 / power))))
            .Solve(At(2800, 101.3, 15));

        Published.Value(Works.EastopEngine.At("brake power, kW"), power / 1000, (double)result.Demand.BrakePower.Kilowatts, 1e-3);
        Published.Value(Works.EastopEngine.At("fuel from power, kg/h"), fuel * 3600, result.Demand.FromPower.KilogramsPerHour, 1e-3);
        Published.Value(Works.EastopEngine.At("fuel from air, kg/h"), fuel * 3600, result.Demand.FromAir.KilogramsPerHour, 1e-3);
        Published.Value(Works.EastopEngine.At("volumetric efficiency"), 0.760, efficiency, 1e-3);
    }

    /// <summary>17.59 kW; 0.2926 kg/kWh; 5.148 kg/h.</summary>
    [Fact(DisplayName = "Petrol engine on a brake, fuel from power; Gupta, example 16.4")]
    public void Fuel_OfGuptasEngine_IsWorkedApart()
    {
        double power = 2 * Math.PI * 3000 / 60 * 160 * 0.35;
        double fuel = 6.6e-3 / 3600 * 780;
        double swept = 4 * Math.PI / 4 * 0.060 * 0.060 * 0.085;
        OperatingResult result = SystemOf(
                Demand(Volume.FromCubicMeters(swept), 4, 3000, 80, power / 1000, FuelConsumption.Of(Fuel.Petrol, 1, Grams(fuel * 3.6e9 / power)), DemandBasis.Power))
            .Solve(At(3000, 101.325, 15));

        Published.Value(Works.GuptaTest.At("brake power, kW"), power / 1000, (double)result.Demand.BrakePower.Kilowatts, 1e-3);
        Published.Value(Works.GuptaTest.At("fuel, kg/h"), fuel * 3600, result.Demand.MassFlow.KilogramsPerHour, 1e-3);
    }

    /// <summary>Gupta: 90 kW on 27.27 kg/h, boosted 120 kW on 43.16. Mathur and Sharma: 115.1 on 36.7, boosted 149.7 on 54.9.</summary>
    [Theory(DisplayName = "Engine with and without boost, fuel from mean effective pressure and efficiency; Gupta, Mathur and Sharma")]
    [InlineData("Gupta, without boost", 3.0, 4000, 9, 0.30, 0.90)]
    [InlineData("Gupta, with boost", 3.0, 4000, 12, 0.25, 0.91)]
    [InlineData("Mathur and Sharma, without boost", 3.3, 4500, 9.3, 0.285, 0.90)]
    [InlineData("Mathur and Sharma, with boost", 3.3, 4500, 12.1, 0.248, 0.90)]
    public void Fuel_OfMeanEffectivePressureAndEfficiency_IsWorkedApart(
        string engine, double litres, double rpm, double bar, double indicated, double mechanical)
    {
        Source source = engine.StartsWith("Gupta", StringComparison.Ordinal) ? Works.GuptaBoosted : Works.MathurBoosted;
        double power = bar * 1e5 * litres * 1e-3 * rpm / 120;
        double fuel = power / mechanical / (indicated * 44e6);
        OperatingResult result = SystemOf(
                Demand(
                    Volume.FromLiters(litres),
                    4,
                    rpm,
                    90,
                    power / 1000,
                    FuelConsumption.Of(Fuel.Petrol, 1, Grams(3.6e9 / (indicated * mechanical * 44e6))),
                    DemandBasis.Power,
                    mechanical * 100))
            .Solve(At(rpm, 101.325, 15));

        Published.Value(source.At($"{engine[(engine.IndexOf(", ", StringComparison.Ordinal) + 2)..]}, brake power, kW"), power / 1000, (double)result.Demand.BrakePower.Kilowatts, 1e-3);
        Published.Value(source.At($"{engine[(engine.IndexOf(", ", StringComparison.Ordinal) + 2)..]}, fuel, kg/h"), fuel * 3600, result.Demand.MassFlow.KilogramsPerHour, 1e-3);
    }

    /// <summary>48.46 mg or 0.0577 cc an injection. A diesel engine; the arithmetic from power to an injection is the same.</summary>
    [Fact(DisplayName = "Fuel of one injection, by mass and volume; Mathur and Sharma, example 12.1")]
    public void Injection_OfMathurAndSharmasEngine_IsWorkedApart()
    {
        double mass = 89e3 * 0.245 / 3.6e6 / (6 * 2500 / 120.0);
        Fuel oil = Fuel.Of(
            "fuel oil",
            ElementalComposition.OfAtomRatios(1.8),
            SpecificEnergy.FromMegajoulesPerKilogram(43),
            Density.FromKilogramsPerCubicMeter(840),
            CoefficientOfThermalExpansion.FromPerKelvin(0.0008));
        OperatingResult result = SystemOf(
                Demand(Volume.FromLiters(9), 6, 2500, 90, 89, FuelConsumption.Of(oil, 1.2, Grams(245)), DemandBasis.Power), InjectorsOf(6))
            .Solve(At(2500, 101.325, 15));
        double each = 6 * 2500 / 120.0;

        Published.Value(Works.MathurInjection.At("one injection, mg"), mass * 1e6, result.Demand.MassFlow.KilogramsPerSecond / each * 1e6, 1e-3);
        Published.Value(Works.MathurInjection.At("one injection, cc"), mass / 840 * 1e6, result.InjectedFlow.CubicMetersPerSecond / each * 1e6, 1e-3);
    }

    /// <summary>Delivery 350.9 K; 7.326 m³ of free air a minute, 0.1496 kg/s.</summary>
    [Fact(DisplayName = "Boosted engine, delivery temperature and air; Eastop and McConkey, example 13.3")]
    public void Air_OfEastopsBoostedEngine_IsWorkedApart()
    {
        double delivery = 288 * (1 + ((Math.Pow(1.7, 0.4 / 1.4) - 1) / 0.75));
        double air = 3e-3 * 3500 / 120 * 1.7 * 1.013e5 / (GasConstant * delivery);
        OperatingResult result = Boosted(3, 3500, 100, 75).Solve(At(3500, 101.3, 288 - 273.15, 0.7 * 101.3));

        Published.Value(Works.EastopCharged.At("delivery temperature, K"), delivery, result.Demand.ChargeTemperature.Kelvins, 1e-3);
        Published.Value(Works.EastopCharged.At("air, kg/s"), air, result.Demand.AirMassFlow.KilogramsPerSecond, 1e-3);
    }

    /// <summary>Delivery 391.7 K; 257.25 kg/h of fuel.</summary>
    [Fact(DisplayName = "Supercharged engine, delivery temperature and fuel; Rajput, example 16.1")]
    public void DeliveryAndFuel_OfRajputsEngine_AreWorkedApart()
    {
        double delivery = 325 * (1 + ((Math.Pow(1.6, 0.4 / 1.4) - 1) / 0.7));
        OperatingResult boosted = Boosted(30, 1500, 90, 70).Solve(At(1500, 100, 325 - 273.15, 60));
        OperatingResult atPower = SystemOf(
                Demand(Volume.FromLiters(30), 12, 1500, 90, 735, FuelConsumption.Of(Fuel.Petrol, 12.8 / 14.6, Grams(350)), DemandBasis.Power))
            .Solve(At(1500, 101.325, 15));

        Published.Value(Works.RajputCharged.At("delivery temperature, K"), delivery, boosted.Demand.ChargeTemperature.Kelvins, 1e-3);
        Published.Value(Works.RajputCharged.At("fuel, kg/h"), 735 * 0.350, atPower.Demand.MassFlow.KilogramsPerHour, 1e-3);
    }

    /// <summary>Delivery 343.9 K: the charge is 1.6 · 288/343.9 = 1.340 times as dense.</summary>
    [Fact(DisplayName = "Boosted engine against the same without boost, air; Gupta, example 15.1")]
    public void Air_OfGuptasBoostedEngine_GrowsWithTheChargesDensity()
    {
        double delivery = 288 * (1 + ((Math.Pow(1.6, 0.4 / 1.4) - 1) / 0.74));
        FuelSystem system = Boosted(2.2, 4000, 90, 74);
        OperatingResult without = system.Solve(At(4000, 100, 288 - 273.15));
        OperatingResult with = system.Solve(At(4000, 100, 288 - 273.15, 60));

        Published.Value(Works.GuptaRoots.At("delivery temperature, K"), delivery, with.Demand.ChargeTemperature.Kelvins, 1e-3);
        Published.Value(Works.GuptaRoots.At("charge, ratio of density"), 1.6 * 288 / delivery, with.Demand.AirMassFlow / without.Demand.AirMassFlow, 1e-3);
    }

    private static FuelSystem Boosted(double litres, double rpm, double volumetric, double compressor) => SystemOf(FuelDemandModel.Of(
        Engine.Of("book", Volume.FromLiters(litres), 4, EngineCycle.FourStroke, Wren.Rpm(rpm)),
        Induction.Turbocharged(Wren.Percent(compressor), Ratio.Zero, Pressure.Zero),
        VolumetricEfficiency.Of((Wren.Rpm(500), Wren.Percent(volumetric)), (Wren.Rpm(rpm), Wren.Percent(volumetric))),
        PowerCurve.AtCrank(Atmosphere.Standard, (Wren.Rpm(500), Power.FromKilowatts(5)), (Wren.Rpm(rpm), Power.FromKilowatts(30))),
        Wren.Percent(80),
        FuelConsumption.Of(Fuel.Petrol, 1, Grams(300)),
        DemandBasis.Air));

    // Measured power goes with density of the air: the pull was measured in the air of the point.
    private static FuelDemandModel Demand(
        Volume displacement,
        int cylinders,
        double rpm,
        double volumetric,
        double kilowatts,
        FuelConsumption consumption,
        DemandBasis basis = DemandBasis.Larger,
        double mechanical = 80) => FuelDemandModel.Of(
            Engine.Of("book", displacement, cylinders, EngineCycle.FourStroke, Wren.Rpm(rpm)),
            Induction.NaturallyAspirated,
            VolumetricEfficiency.Of((Wren.Rpm(500), Wren.Percent(volumetric)), (Wren.Rpm(rpm), Wren.Percent(volumetric))),
            PowerCurve.AtCrank(Atmosphere.Standard, (Wren.Rpm(500), Power.FromKilowatts(kilowatts / 4)), (Wren.Rpm(rpm), Power.FromKilowatts(kilowatts))),
            Wren.Percent(mechanical),
            consumption,
            basis);

    private static InjectorSet InjectorsOf(int count) => InjectorSet.Of(
        Injector.Of(
            "book",
            VolumeFlow.FromMillilitersPerMinute(2000),
            Wren.Kpa(300),
            TestFluid.Heptane,
            DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1)), (Wren.Volt(16), Wren.Ms(1))),
            Wren.Ms(0.1),
            Wren.Kpa(600)),
        count);

    private static FuelSystem SystemOf(FuelDemandModel demand, InjectorSet? injectors = null) => FuelSystem.Return(
        demand,
        injectors ?? InjectorsOf(demand.Engine.Cylinders),
        ManifoldReferenced.From(Wren.Kpa(300)),
        Pump.From(PumpCurve.At("pump", Wren.Volt(13.5), (Pressure.Zero, VolumeFlow.FromLitersPerHour(900)), (Wren.Kpa(900), VolumeFlow.Zero))));

    private static OperatingPoint At(double rpm, double ambientKilopascals, double celsius, double boostKilopascals = 0) => OperatingPoint.At(
        Wren.Rpm(rpm),
        Wren.Kpa(boostKilopascals),
        Conditions.Of(
            Atmosphere.Of(Wren.Kpa(ambientKilopascals), Temperature.FromDegreesCelsius(celsius)), Wren.Volt(13.5), Temperature.FromDegreesCelsius(15)));

    private static BrakeSpecificFuelConsumption Grams(double grams) => BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(grams);
}
