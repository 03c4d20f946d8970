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
        Shown.By<ElementalComposition>((composition, style) => new(
            "Elemental composition",
            [
                new("Carbon", "w_C", style.DutyCycle(composition.Carbon), "by mass"),
                new("Hydrogen", "w_H", style.DutyCycle(composition.Hydrogen), "by mass"),
                new("Oxygen", "w_O", style.DutyCycle(composition.Oxygen), "by mass"),
                new("Stoichiometric air–fuel ratio", "AFR_st", style.Number(composition.StoichiometricAirFuelRatio), "kg of air to a kg of fuel"),
            ]));
        Shown.By<FuelConsumption>((consumption, style) => new(
            $"Burning {consumption.Fuel.Name}",
            [
                new("Lambda", "λ", style.Number(consumption.Lambda)),
                new("BSFC", "b", style.Of(consumption.BrakeSpecificFuelConsumption), consumption.IsConverted ? $"by heating value from {style.Of(consumption.StatedConsumption)} on {consumption.StatedFuel.Name}" : "fuel for a unit of work at the crank"),
                new("Brake efficiency", "η_e", style.DutyCycle(consumption.BrakeEfficiency), "work for a unit of the fuel's heat"),
                new("Stoichiometric air–fuel ratio", "AFR_st", style.Number(consumption.Fuel.StoichiometricAirFuelRatio), "elemental composition"),
            ]));
    }

    private static string At15(TextStyle style) => style.Of(UnitsNet.Temperature.FromDegreesCelsius(15));

    private static Facts Of(Fuel fuel, TextStyle style) => new(
        $"Fuel: {fuel.Name}",
        [
            new("Stoichiometric air–fuel ratio", "AFR_st", style.Number(fuel.StoichiometricAirFuelRatio), "elemental composition"),
            new("Lower heating value", "H", style.Of(fuel.LowerHeatingValue)),
            new($"Density at {At15(style)}", "ρ_15", style.Of(fuel.DensityAt15C)),
            new($"Expansion at {At15(style)}", "α_15", style.Of(fuel.ExpansionAt15C)),
            new("Carbon", "w_C", style.DutyCycle(fuel.Composition.Carbon), "by mass"),
            new("Hydrogen", "w_H", style.DutyCycle(fuel.Composition.Hydrogen), "by mass"),
            new("Oxygen", "w_O", style.DutyCycle(fuel.Composition.Oxygen), "by mass"),
            .. fuel.HeatOfVaporisation is { } heat ? (Fact[])[new("Heat of vaporisation", "h_v", style.Of(heat))] : [],
            Fact.Words("Viscosity", Known(fuel.HasViscosity)),
            Fact.Words("Vapour pressure", Known(fuel.HasVapourPressure)),
        ]);

    private static string Known(bool known) => known ? "known" : "not known";
}
