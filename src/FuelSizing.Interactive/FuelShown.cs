using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Quantities;

namespace FuelSizing.Interactive;

/// <summary>How fuels, their composition and what is burnt are shown.</summary>
internal static class FuelShown
{
    public static void Register()
    {
        Shown.By<Fuel>(Of);
        Shown.By<ElementalComposition>(composition => new(
            "Elemental composition",
            [
                new("Carbon", "w_C", Readable.DutyCycle(composition.Carbon), "by mass"),
                new("Hydrogen", "w_H", Readable.DutyCycle(composition.Hydrogen), "by mass"),
                new("Oxygen", "w_O", Readable.DutyCycle(composition.Oxygen), "by mass"),
                new("Stoichiometric air–fuel ratio", "L", PartText.Number(composition.StoichiometricAirFuelRatio), "kg of air to a kg of fuel"),
            ]));
        Shown.By<FuelConsumption>(consumption => new(
            $"Burning {consumption.Fuel.Name}",
            [
                new("Lambda", "λ", PartText.Number(consumption.Lambda)),
                new("BSFC", "b", Readable.Of(consumption.BrakeSpecificFuelConsumption), "fuel for a unit of work at the crank"),
                new("Brake efficiency", "η_e", Readable.DutyCycle(consumption.BrakeEfficiency), "work for a unit of the fuel's heat"),
                new("Stoichiometric air–fuel ratio", "L", PartText.Number(consumption.Fuel.StoichiometricAirFuelRatio), "elemental composition"),
            ]));
    }

    private static string At15 => Readable.Of(UnitsNet.Temperature.FromDegreesCelsius(15));

    private static Facts Of(Fuel fuel) => new(
        $"Fuel: {fuel.Name}",
        [
            new("Stoichiometric air–fuel ratio", "L", PartText.Number(fuel.StoichiometricAirFuelRatio), "elemental composition"),
            new("Lower heating value", "H_u", Readable.Of(fuel.LowerHeatingValue)),
            new($"Density at {At15}", "ρ_15", Readable.Of(fuel.DensityAt15C)),
            new($"Expansion at {At15}", "α_15", PartText.Of(fuel.ExpansionAt15C)),
            new("Carbon", "w_C", Readable.DutyCycle(fuel.Composition.Carbon), "by mass"),
            new("Hydrogen", "w_H", Readable.DutyCycle(fuel.Composition.Hydrogen), "by mass"),
            new("Oxygen", "w_O", Readable.DutyCycle(fuel.Composition.Oxygen), "by mass"),
            Fact.Words("Viscosity", Known(fuel.HasViscosity)),
            Fact.Words("Vapour pressure", Known(fuel.HasVapourPressure)),
        ]);

    private static string Known(bool known) => known ? "known" : "not known";
}
