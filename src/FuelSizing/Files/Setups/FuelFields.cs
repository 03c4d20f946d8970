using System.Collections.Frozen;
using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A fuel's fields.</summary>
internal static class FuelFields
{
    private static readonly Words<FuelKind> Kinds = new(
        (FuelKind.Petrol, "petrol"),
        (FuelKind.Ethanol, "ethanol"),
        (FuelKind.Methanol, "methanol"),
        (FuelKind.Blend, "blend"),
        (FuelKind.Other, "other"));

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["lowerHeatingValue"] = "lower_heating_value",
        ["densityAt15C"] = "density_at_15c",
        ["expansionAt15C"] = "expansion_at_15c",
        ["parts"] = "parts",
        ["reidVapourPressure"] = "reid_vapour_pressure",
        ["carbon"] = "carbon",
        ["hydrogen"] = "hydrogen",
        ["hydrogenToCarbon"] = "hydrogen",
        ["oxygen"] = "oxygen",
        ["oxygenToCarbon"] = "oxygen",
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, string> ViscosityFields =
        new Dictionary<string, string> { ["one"] = "viscosity", ["other"] = "viscosity" }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, string> VapourFields =
        new Dictionary<string, string> { ["one"] = "vapour_pressure", ["other"] = "vapour_pressure" }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static Fuel? Read(EntryReader reader)
    {
        Fuel? fuel = Kinds.Read(reader, "kind") switch
        {
            FuelKind.Petrol => PetrolOf(reader),
            FuelKind.Ethanol => Fuel.Ethanol,
            FuelKind.Methanol => Fuel.Methanol,
            FuelKind.Blend => BlendOf(reader),
            _ => OtherOf(reader),
        };
        (Temperature, KinematicViscosity)[] viscosity = Two(reader, "viscosity", "viscosity", Measures.KinematicViscosity);
        (Temperature, Pressure)[] vapour = Two(reader, "vapour_pressure", "pressure", Measures.Pressure);
        Pressure? reid = reader.Optional("reid_vapour_pressure", Measures.Pressure);
        if (reid is not null && vapour.Length > 0)
        {
            reader.Wrong(
                "reid_vapour_pressure",
                reader.LineOf("reid_vapour_pressure"),
                "is given beside vapour_pressure. Give one of the two.");
        }

        if (viscosity.Length > 0)
        {
            fuel = reader.Checked(() => fuel!.WithViscosity(viscosity[0], viscosity[1]), ViscosityFields);
        }

        if (vapour.Length > 0)
        {
            fuel = reader.Checked(() => fuel!.WithVapourPressure(vapour[0], vapour[1]), VapourFields);
        }

        return reader.Make(() => reid is { } given ? fuel!.WithReidVapourPressure(given) : fuel!, Fields);
    }

    /// <summary>Writes it.</summary>
    public static void Write(FieldWriter fields, Fuel fuel)
    {
        FuelMaking making = fuel.Making.Value;
        fields.Text("kind", Kinds.Of(making.Kind));
        if (making.Kind is FuelKind.Petrol or FuelKind.Blend or FuelKind.Other)
        {
            fields.Text("name", fuel.Name);
        }

        if (making.Kind is FuelKind.Petrol or FuelKind.Other)
        {
            fields.Part("composition", part => Write(part, fuel.Composition));
            fields.Quantity("lower_heating_value", fuel.LowerHeatingValue, Measures.HeatingValue);
            fields.Quantity("density_at_15c", fuel.DensityAt15C, Measures.Density);
        }

        if (making.Kind == FuelKind.Other)
        {
            fields.Quantity("expansion_at_15c", fuel.ExpansionAt15C, Measures.Expansion);
        }

        fields.List("parts", making.Parts, (row, part) =>
        {
            row.Quantity("share", part.Share, Measures.Share);
            row.Part("fuel", inner => Write(inner, part.Fuel));
        });
        Two(fields, "viscosity", "viscosity", making.Viscosity, Measures.KinematicViscosity);
        Two(fields, "vapour_pressure", "pressure", making.VapourPressure, Measures.Pressure);
        fields.Quantity("reid_vapour_pressure", making.ReidPressure, Measures.Pressure);
    }

    private static Fuel? PetrolOf(EntryReader reader)
    {
        string name = reader.Has("name") ? reader.Name() : Fuel.Petrol.Name;
        ElementalComposition? composition = reader.OptionalPart("composition") is { } part ? CompositionOf(part) : null;
        SpecificEnergy? heat = reader.Optional("lower_heating_value", Measures.HeatingValue);
        Density density = reader.Optional("density_at_15c", Measures.Density) ?? Fuel.Petrol.DensityAt15C;
        return reader.Checked(() => Fuel.PetrolOf(density, composition, heat, name), Fields);
    }

    private static Fuel? OtherOf(EntryReader reader)
    {
        string name = reader.Name();
        ElementalComposition? composition = reader.RequiredPart("composition", "Give its carbon, hydrogen and oxygen.") is { } part
            ? CompositionOf(part)
            : null;
        SpecificEnergy heat = reader.Required("lower_heating_value", Measures.HeatingValue);
        Density density = reader.Required("density_at_15c", Measures.Density);
        CoefficientOfThermalExpansion expansion = reader.Required("expansion_at_15c", Measures.Expansion);
        return reader.Checked(() => Fuel.Of(name, composition!, heat, density, expansion), Fields);
    }

    private static Fuel? BlendOf(EntryReader reader)
    {
        string name = reader.Name();
        (Fuel? Fuel, Ratio Share)[] parts =
        [
            .. reader.Rows("parts", "Give the fuels of the blend, each with its share by volume.").Select(row => (
                row.RequiredPart("fuel", "Give the fuel.") is { } fuel ? Read(fuel) : null,
                row.Required("share", Measures.Share))),
        ];
        return reader.Checked(
            () => FuelBlend.ByVolume(name, Array.ConvertAll(parts, part => (part.Fuel!, part.Share))), Fields);
    }

    // Counts of atoms, or shares by mass, whichever the first value is.
    private static ElementalComposition? CompositionOf(EntryReader reader)
    {
        if (reader.IsText("carbon"))
        {
            Ratio carbonShare = reader.Required("carbon", Measures.Share);
            Ratio hydrogenShare = reader.Required("hydrogen", Measures.Share);
            Ratio oxygenShare = reader.Required("oxygen", Measures.Share);
            return reader.Make(() => ElementalComposition.OfShares(carbonShare, hydrogenShare, oxygenShare), Fields);
        }

        double carbon = reader.RequiredNumber("carbon", "2");
        double hydrogen = reader.RequiredNumber("hydrogen", "6");
        double oxygen = reader.RequiredNumber("oxygen", "1");
        if (IsCount(carbon) && IsCount(hydrogen) && IsCount(oxygen))
        {
            return reader.Make(
                () => ElementalComposition.OfMolecule((int)carbon, (int)hydrogen, (int)oxygen), Fields);
        }

        if (carbon != 1)
        {
            reader.Wrong(
                "carbon",
                reader.LineOf("carbon"),
                "must be 1 where the atoms are not whole numbers. Give hydrogen and oxygen for each atom of carbon.");
        }

        return reader.Make(() => ElementalComposition.OfAtomRatios(hydrogen, oxygen), Fields);
    }

    private static void Write(FieldWriter fields, ElementalComposition composition)
    {
        if (composition.Atoms.Value is { } atoms)
        {
            fields.Number("carbon", atoms.Carbon);
            fields.Number("hydrogen", atoms.Hydrogen);
            fields.Number("oxygen", atoms.Oxygen);
            return;
        }

        fields.Quantity("carbon", composition.Carbon, Measures.Share);
        fields.Quantity("hydrogen", composition.Hydrogen, Measures.Share);
        fields.Quantity("oxygen", composition.Oxygen, Measures.Share);
    }

    private static bool IsCount(double number) => number == Math.Truncate(number) && Math.Abs(number) <= int.MaxValue;

    private static (Temperature, T)[] Two<T>(EntryReader reader, string table, string field, Measure<T> measure)
        where T : struct
    {
        (Temperature, T)[] points =
        [
            .. reader.OptionalRows(table).Select(row => (
                row.Required("temperature", Measures.Temperature), row.Required(field, measure))),
        ];
        if (reader.Has(table) && points.Length != 2)
        {
            reader.Wrong(table, reader.LineOf(table), "must have two rows. Give it at two temperatures well apart.");
            return [];
        }

        return points;
    }

    private static void Two<T>(
        FieldWriter fields, string table, string field, IReadOnlyList<(Temperature Temperature, T Value)> points, Measure<T> measure)
        where T : struct
    {
        if (points.Count > 0)
        {
            fields.Table(table, points, (row, point) =>
            {
                row.Quantity("temperature", point.Temperature, Measures.Temperature);
                row.Quantity(field, point.Value, measure);
            });
        }
    }
}
