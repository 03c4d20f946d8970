using CsCheck;
using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Engines;

/// <summary>A BSFC belongs to the fuel on which it was stated; on another it goes with the heating value, and says so.</summary>
public sealed class FuelConsumptionTests
{
    /// <summary>"About 1.4 to 1.5 times that on E85": common practice, no source.</summary>
    [Fact]
    public void Consumption_ConvertedToE85_IsAboutHalfAsMuchAgain()
    {
        FuelConsumption converted = Wren.Petrol.With(Fuel.E85);
        Assert.InRange(converted.BrakeSpecificFuelConsumption / Wren.Petrol.BrakeSpecificFuelConsumption, 1.4, 1.55);
        Assert.True(converted.IsConverted);
        Assert.Contains("by heating value from 315 g/kWh on petrol", converted.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Consumption_OnAnyFuels_KeepsItsEfficiencyAndComesBackAsItWas() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 100], Gen.Double[250, 600]).Sample((first, second, grams) =>
        {
            FuelConsumption stated = Wren.Petrol.Using(BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(grams));
            FuelConsumption one = stated.With(FuelBlend.EthanolInPetrol(Wren.Percent(first)));
            FuelConsumption two = one.With(FuelBlend.EthanolInPetrol(Wren.Percent(second)));
            return Math.Abs((two.BrakeEfficiency / stated.BrakeEfficiency) - 1) < 1e-12
                && two.Equals(stated.With(FuelBlend.EthanolInPetrol(Wren.Percent(second))))
                && two.With(stated.Fuel).Equals(stated);
        });

    [Fact]
    public void Model_OnAnotherFuel_AsksForTheFuelOfItsHeatingValueAndNotesIt()
    {
        FuelDemandModel petrol = Wren.Demand();
        FuelDemandModel ethanol = petrol.With(Fuel.E85);
        double more = ethanol.At(Wren.Rpm(6000), Wren.Kpa(60), Atmosphere.Standard).FromPower / petrol.At(Wren.Rpm(6000), Wren.Kpa(60), Atmosphere.Standard).FromPower;
        Assert.Equal(Fuel.Petrol.LowerHeatingValue / Fuel.E85.LowerHeatingValue, more, 9);
        OperatingResult result = Wren.System().With(ethanol).Solve(Wren.At(6000, 0.6));
        Assert.Contains(result.Notes, note => note.Code == "demand.consumption-converted");
        Assert.DoesNotContain(result.NotJudged, open => open.Part == Part.BrakeEfficiency);
        Assert.DoesNotContain(Wren.System().Solve(Wren.At(6000, 0.6)).Notes, note => note.Code == "demand.consumption-converted");
    }

    /// <summary>3600/(315 g/kWh · 29.2 MJ/kg) = 39 %: petrol's figure left standing under E85.</summary>
    [Fact]
    public void System_WithPetrolsFigureOnE85_NamesTheEfficiencyAmongWhatIsNotJudged()
    {
        FuelSystem System(DemandBasis basis) => Wren.System().With(FuelDemandModel.Of(
            Wren.Engine,
            Wren.Turbocharger,
            Wren.VolumetricEfficiency,
            Wren.Power,
            Wren.Percent(85),
            FuelConsumption.Of(Fuel.E85, 0.82, Wren.Petrol.BrakeSpecificFuelConsumption),
            basis));
        OperatingResult result = System(DemandBasis.Larger).Solve(Wren.At(3000, 0));
        NotJudged open = Assert.Single(result.NotJudged, open => open.Part == Part.BrakeEfficiency);
        Assert.Contains("over the 38.0 % that is plausible (common practice, no source)", open.ToString(), StringComparison.Ordinal);
        Assert.NotEqual(Outcome.Holds, result.Outcome);
        Assert.DoesNotContain(System(DemandBasis.Air).NotJudged, open => open.Part == Part.BrakeEfficiency);
    }
}
