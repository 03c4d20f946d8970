using FuelSizing.Fuels;
using FuelSizing.Tests.Sources;
using UnitsNet;

namespace FuelSizing.Tests.Fuels;

public class CombustionTests
{
    // Heywood rounds to three or four figures; its air has 0.2 % more or less oxygen by mass than ours.
    [Theory(DisplayName = "Stoichiometric ratio of pure fuels; Heywood")]
    [InlineData("methanol", 1, 4, 1, 6.47)]
    [InlineData("ethanol", 2, 6, 1, 9.00)]
    [InlineData("iso-octane", 8, 18, 0, 15.13)]
    public void StoichiometricRatio_OfAPureFuel_IsHeywoods(string name, int carbon, int hydrogen, int oxygen, double ratio) =>
        Published.Value(
            Works.Heywood.At(name),
            ratio,
            ElementalComposition.OfMolecule(carbon, hydrogen, oxygen).StoichiometricAirFuelRatio,
            0.002);

    [Fact(DisplayName = "Stoichiometric ratio of petrol; Heywood")]
    public void StoichiometricRatio_OfPetrol_IsHeywoods() =>
        Published.Value(
            Works.Heywood.At("gasoline CH1.87"),
            14.6,
            Fuel.Petrol.StoichiometricAirFuelRatio,
            0.004);

    [Theory(DisplayName = "Stoichiometric ratio of pump fuels; Alternative Fuels Data Center")]
    [InlineData("petrol", 14.7, 0.01)]
    [InlineData("ethanol", 9.0, 0.006)]
    public void StoichiometricRatio_OfAPumpFuel_IsThatOfTheDataCenter(string fuel, double ratio, double within) =>
        // Petrol varies by about 1 % with its composition; ethanol is given to two figures.
        Published.Value(
            Works.Afdc,
            ratio,
            Named(fuel).StoichiometricAirFuelRatio,
            within);

    // Mass fractions are printed to three figures.
    [Fact(DisplayName = "Elemental composition of ethanol and methanol; Alternative Fuels Data Center")]
    public void Composition_OfTheAlcohols_IsThatOfTheDataCenter()
    {
        Source source = Works.Afdc;
        Published.Value(source, 0.522, Fuel.Ethanol.Composition.Carbon.DecimalFractions, 0.003);
        Published.Value(source, 0.131, Fuel.Ethanol.Composition.Hydrogen.DecimalFractions, 0.005);
        Published.Value(source, 0.347, Fuel.Ethanol.Composition.Oxygen.DecimalFractions, 0.003);
        Published.Value(source, 0.375, Fuel.Methanol.Composition.Carbon.DecimalFractions, 0.003);
        Published.Value(source, 0.126, Fuel.Methanol.Composition.Hydrogen.DecimalFractions, 0.005);
        Published.Value(source, 0.499, Fuel.Methanol.Composition.Oxygen.DecimalFractions, 0.003);
    }

    [Theory(DisplayName = "Lower heating value of pump fuels; Alternative Fuels Data Center")]
    [InlineData("petrol", 18_676, 0.015)]
    [InlineData("methanol", 8_637, 0.006)]
    [InlineData("ethanol", 11_585, 0.003)]
    public void HeatingValue_OfAPumpFuel_IsThatOfTheDataCenter(string fuel, double btuPerPound, double within) =>
        // Petrols differ by 1 to 2 % among themselves.
        Published.Value(
            Works.Afdc.At("lower heating value"),
            SpecificEnergy.FromBtuPerPound(btuPerPound).MegajoulesPerKilogram,
            Named(fuel).LowerHeatingValue.MegajoulesPerKilogram,
            within);

    /// <summary>Heats of formation of liquid fuel, carbon dioxide and water vapour give the heating value independently.</summary>
    [Theory(DisplayName = "Lower heating value from heats of formation")]
    [InlineData("methanol", 1, 4, -238.40, 32.042)]
    [InlineData("ethanol", 2, 6, -277.03, 46.069)]
    public void HeatingValue_FromHeatsOfFormation_Agrees(
        string fuel, int carbon, int hydrogen, double formation, double molarMass)
    {
        const double carbonDioxide = -393.474;
        const double waterVapour = -241.822;
        double lower = (formation - (carbon * carbonDioxide) - (hydrogen / 2.0 * waterVapour)) / molarMass;

        // The handbook rounds to three figures.
        Published.Value(
            Works.ActiveTables,
            lower,
            Named(fuel).LowerHeatingValue.MegajoulesPerKilogram,
            0.005);
    }

    [Fact(DisplayName = "Lower heating value of petrol; Heywood")]
    public void HeatingValue_OfPetrol_IsHeywoods() =>
        Published.Value(
            Works.Heywood.At("gasoline"),
            44.0,
            Fuel.Petrol.LowerHeatingValue.MegajoulesPerKilogram,
            0.001);

    private static Fuel Named(string name) => name switch
    {
        "petrol" => Fuel.Petrol,
        "ethanol" => Fuel.Ethanol,
        _ => Fuel.Methanol,
    };
}
