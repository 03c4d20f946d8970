using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Controllers;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Sources;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

/// <summary>Fuel that evaporates in the charge: its heat, how far it cools the charge, and that it only ever makes a verdict stricter.</summary>
public class ChargeCoolingTests
{
    private static FuelDemandModel ByAir { get; } = FuelDemandModel.Of(
        Wren.Engine, Wren.Turbocharger, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol, DemandBasis.Air);

    /// <summary>Two figures of the petrols; theirs differ by 7 % either way.</summary>
    [Theory(DisplayName = "Heat of vaporisation of pump fuels; Alternative Fuels Data Center")]
    [InlineData("petrol", 150, 0.01)]
    [InlineData("methanol", 506, 0.01)]
    [InlineData("ethanol", 396, 0.003)]
    public void Heat_OfAPumpFuel_IsThatOfTheDataCenter(string fuel, double btuPerPound, double within) => Published.Value(
        Works.Afdc.At("latent heat of vaporization"),
        SpecificEnergy.FromBtuPerPound(btuPerPound).KilojoulesPerKilogram,
        Named(fuel).HeatOfVaporisation!.Value.KilojoulesPerKilogram,
        within);

    /// <summary>By mass, as an ideal mixture has it; measured blends lie 1 to 9 % higher.</summary>
    [Fact(DisplayName = "Heat of vaporisation of E50 against the range measured; NREL")]
    public void Heat_OfE50_IsNearTheRangeMeasured() => Published.Value(
        Works.NrelHeat,
        675,
        FuelBlend.EthanolInPetrol(Ratio.FromPercent(50)).HeatOfVaporisation!.Value.KilojoulesPerKilogram,
        0.05);

    /// <summary>The data center's heat for a pound of air that the fuel burns with, all of it evaporated: 78.4 and 44 Btu, over the specific heat of air.</summary>
    [Theory(DisplayName = "Cooling of the charge by all of the fuel at the stoichiometric ratio; Alternative Fuels Data Center")]
    [InlineData("methanol", 78.4, 0.012)]
    [InlineData("ethanol", 44, 0.005)]
    public void Cooling_OfAllOfTheFuel_IsThatOfTheDataCentersHeatOfAir(string fuel, double btuPerPoundOfAir, double within) => Published.Value(
        Works.Afdc.At("latent heat for a pound of air, over its specific heat of 1.0047 kJ/(kg·K)"),
        SpecificEnergy.FromBtuPerPound(btuPerPoundOfAir).KilojoulesPerKilogram / 1.0047,
        400 - ChargeCooling.Temperature<Real>(400, 1, Named(fuel).HeatOfVaporisation!.Value.JoulesPerKilogram, Named(fuel).StoichiometricAirFuelRatio).Value,
        within);

    /// <summary>Air and its fuel grow as the charge cools, 1/T; power and fuel from power stay.</summary>
    [Fact]
    public void Demand_WithEvaporation_GrowsAsTheChargeCools() =>
        Gen.Select(Gen.Double[1, 100], Gen.Double[1500, 6800], Gen.Double[-0.4, 0.9], Gen.Double[0, 100]).Sample((share, rpm, boost, ethanol) =>
        {
            FuelDemandModel dry = Wren.Demand().With(FuelBlend.EthanolInPetrol(Wren.Percent(ethanol)));
            FuelDemandModel wet = dry.WithEvaporation(Wren.Percent(share));
            FuelDemand one = dry.At(Wren.Rpm(rpm), Pressure.FromBars(boost), Wren.Hill.Atmosphere);
            FuelDemand other = wet.At(Wren.Rpm(rpm), Pressure.FromBars(boost), Wren.Hill.Atmosphere);
            double heat = share / 100 * dry.Consumption.Fuel.HeatOfVaporisation!.Value.JoulesPerKilogram;
            double cooled = one.ChargeTemperature.Kelvins - (heat / (dry.Consumption.Lambda * dry.Consumption.Fuel.StoichiometricAirFuelRatio * 3.5 * 287.05287));
            return Math.Abs((other.FromAir / one.FromAir) - (one.ChargeTemperature.Kelvins / cooled)) < 1e-12
                && Math.Abs(other.EvaporatedTemperature.Kelvins - cooled) < 1e-9
                && other.FromPower.Equals(one.FromPower, MassFlow.Zero)
                && other.BrakePower.Equals(one.BrakePower, Power.Zero)
                && other.ChargeTemperature.Kelvins.Equals(one.ChargeTemperature.Kelvins);
        });

    [Fact]
    public void Demand_WithNoShare_IsTheSameToTheLastBit()
    {
        FuelDemandModel model = Wren.Demand();
        Assert.Equal(model, model.WithEvaporation(Ratio.Zero));
        Assert.Equal(
            model.At(Wren.Rpm(5000), Wren.Kpa(50), Atmosphere.Standard).FromAir.KilogramsPerSecond,
            model.WithEvaporation(Ratio.Zero).At(Wren.Rpm(5000), Wren.Kpa(50), Atmosphere.Standard).FromAir.KilogramsPerSecond);
        Assert.NotEqual(model, model.WithEvaporation(Wren.Percent(20)));
    }

    /// <summary>A fuel without a heat of vaporisation cannot cool; one that is given has it through a blend.</summary>
    [Fact]
    public void Heat_ThatIsNotKnown_IsRefusedAndCanBeGiven()
    {
        Fuel own = Fuel.Of("own", Fuel.Petrol.Composition, Fuel.Petrol.LowerHeatingValue, Fuel.Petrol.DensityAt15C, Fuel.Petrol.ExpansionAt15C);
        ArgumentException refused = Assert.Throws<ArgumentException>(() => Wren.Demand().With(own).WithEvaporation(Wren.Percent(30)));
        Assert.Contains("WithHeatOfVaporisation", refused.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Wren.Demand().WithEvaporation(Wren.Percent(30)).With(own));
        Assert.Null(FuelBlend.ByVolume("blend", (own, Wren.Percent(50)), (Fuel.Ethanol, Wren.Percent(50))).HeatOfVaporisation);
        Fuel given = own.WithHeatOfVaporisation(SpecificEnergy.FromKilojoulesPerKilogram(350));
        Assert.Equal(
            FuelBlend.EthanolInPetrol(Wren.Percent(40)).HeatOfVaporisation!.Value.KilojoulesPerKilogram,
            FuelBlend.ByVolume("blend", (given, Wren.Percent(60)), (Fuel.Ethanol, Wren.Percent(40))).HeatOfVaporisation!.Value.KilojoulesPerKilogram,
            1e-9);
        Assert.Equal(30, Wren.Demand().WithEvaporation(Wren.Percent(30)).With(given).EvaporatedShare.Percent);
    }

    /// <summary>The injectors and the pump are asked for more; the shortest pulse is judged without what evaporates, as if nothing had been stated.</summary>
    [Fact]
    public void Checks_WithEvaporation_AreStricterOrTheSame()
    {
        FuelSystem dry = Wren.System().With(ByAir);
        FuelSystem wet = dry.With(dry.Demand.WithEvaporation(Wren.Percent(60)));
        foreach (OperatingPoint point in (OperatingPoint[])[Wren.At(900, -0.6), Wren.At(3000, 0.2), Wren.At(6500, 0.6)])
        {
            OperatingResult one = dry.Solve(point);
            OperatingResult other = wet.Solve(point);
            double Reserve(OperatingResult result, Part part) => ByPart.Find(result, part).Reserve!.Value.DecimalFractions;
            Assert.True(Reserve(other, Part.Injectors) < Reserve(one, Part.Injectors));
            Assert.True(Reserve(other, Part.Pump) < Reserve(one, Part.Pump));
            Assert.Equal(Reserve(one, Part.MinimumPulse), Reserve(other, Part.MinimumPulse), 1e-9);
        }
    }

    /// <summary>A controller that does not know of it gives the same fuel to more air: lambda lies between that of no evaporation and that of all that is stated.</summary>
    [Fact]
    public void Lambda_WithEvaporation_LiesBetweenNoneOfItAndAllOfIt()
    {
        FuelSystem dry = Wren.System(ManifoldReferenced.From(Wren.Kpa(300)), pump: 2).With(ByAir);
        dry = dry.With(SpeedDensityController.Of(
            ControllerData.Of(dry.Injectors.Injector, dry.Demand.Consumption.Fuel, TargetLambda.At(0.84)), Wren.VolumetricEfficiency, Wren.Kpa(250)));
        DeliveredMixture one = dry.Solve(Wren.At(4500, 0.4)).Mixture;
        OperatingResult solved = dry.With(dry.Demand.WithEvaporation(Wren.Percent(40))).Solve(Wren.At(4500, 0.4));
        DeliveredMixture other = solved.Mixture;
        Assert.Equal(one.Lambda!.Value, other.MinimumLambda!.Value, 1e-9);
        Assert.Equal(one.Lambda.Value * solved.Demand.ChargeTemperature.Kelvins / solved.Demand.EvaporatedTemperature.Kelvins, other.MaximumLambda!.Value, 1e-9);
        Assert.Equal(other.MaximumLambda, other.Lambda);
    }

    /// <summary>
    /// Large injectors at idle: the size that is printed as small enough, put back, holds, and is the one that would be printed if nothing evaporated.
    /// </summary>
    [Fact]
    public void SmallerInjectors_WithEvaporation_PutBack_Hold()
    {
        FuelSystem dry = Wren.System(injector: 5000).With(ByAir);
        FuelSystem wet = dry.With(dry.Demand.WithEvaporation(Wren.Percent(60)));
        double Size(FuelSystem system)
        {
            OperatingResult result = system.Solve(Wren.At(900, -0.6));
            Margin margin = ByPart.Find(result, Part.MinimumPulse);
            Assert.Equal(Outcome.Fails, margin.Outcome);
            return ((VolumeFlow)margin.Check.RemedyFor(new([result], [result]))!.Needed!).MillilitersPerMinute;
        }

        Assert.Equal(Size(dry), Size(wet), 1e-6 * Size(dry));
        FuelSystem refitted = wet.With(InjectorSet.Of(Wren.InjectorOf(Size(wet)), 4));
        Assert.Equal(Outcome.Holds, ByPart.Find(refitted.Solve(Wren.At(900, -0.6)), Part.MinimumPulse).Outcome);
    }

    /// <summary>
    /// A lean mixture is judged as if all that is stated evaporated, a rich one as if nothing did: neither verdict is left open by it, and the pressure that is printed
    /// against a rich mixture, put back, holds.
    /// </summary>
    [Fact]
    public void Mixture_WithEvaporation_IsJudgedOnTheSideThatIsWorse()
    {
        FuelSystem system = Wren.System(ManifoldReferenced.From(Wren.Kpa(300)), pump: 2).With(ByAir);
        system = system.With(SpeedDensityController.Of(
            ControllerData.Of(system.Injectors.Injector, system.Demand.Consumption.Fuel, TargetLambda.At(0.84)), Wren.VolumetricEfficiency, Wren.Kpa(250)));
        system = system.With(system.Demand.WithEvaporation(Wren.Percent(60)));
        OperatingResult loose = system.Solve(Wren.At(4500, 0.4));
        (double rich, double lean) = (loose.Mixture.MinimumLambda!.Value, loose.Mixture.MaximumLambda!.Value);
        double middle = (rich + lean) / 2;
        OperatingResult narrow = system.With(SizingLimits.Default.With(MixtureLimits.Of(middle, Pressure.FromBars(0.1), middle))).Solve(Wren.At(4500, 0.4));
        Margin tooLean = ByPart.Find(narrow, Part.Mixture);
        Margin tooRich = ByPart.Find(narrow, Part.RichMixture);
        Assert.Equal((Outcome.Fails, Outcome.Fails), (tooLean.Outcome, tooRich.Outcome));
        Assert.Contains(FormattableString.Invariant($"lambda {lean:0.000} is leaner"), tooLean.ToString(), StringComparison.Ordinal);
        Assert.Contains(FormattableString.Invariant($"lambda {rich:0.000} is richer"), tooRich.ToString(), StringComparison.Ordinal);
        Pressure less = (Pressure)tooRich.Check.RemedyFor(new([narrow], [narrow]))!.Needed!;
        FuelSystem reset = system.With(SizingLimits.Default.With(MixtureLimits.Of(1.2, Pressure.FromBars(0.1), middle))).With(ManifoldReferenced.From(less - Pressure.FromBars(0.4)));
        Assert.Equal(Outcome.Holds, ByPart.Find(reset.Solve(Wren.At(4500, 0.4)), Part.RichMixture).Outcome);
    }

    /// <summary>A displacement compressor's boost is that of a charge that no fuel cools.</summary>
    [Fact]
    public void Boost_OfADisplacementCompressor_IsNotBroughtDown()
    {
        FuelDemandModel belted = Wren.Demand(induction: Induction.BeltDriven(Wren.Percent(60), Wren.Percent(40), Wren.Kpa(3), Wren.Percent(95)));
        DisplacementBoost line = DisplacementBoost.Of(2.1, Volume.FromLiters(1.1), Wren.Percent(82));
        Assert.Equal(
            line.At(Wren.Rpm(4000), belted, Atmosphere.Standard), line.At(Wren.Rpm(4000), belted.WithEvaporation(Wren.Percent(50)), Atmosphere.Standard));
    }

    private static Fuel Named(string name) => name switch
    {
        "petrol" => Fuel.Petrol,
        "methanol" => Fuel.Methanol,
        _ => Fuel.Ethanol,
    };
}
