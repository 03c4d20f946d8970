using FuelSizing.Fuels;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A fuel.</summary>
internal static class FuelForm
{
    private const string OneVapourPressure = """ "not": { "required": [ "vapour_pressure", "reid_vapour_pressure" ] } """;

    private static readonly NameField Name = new();

    private static readonly NameField PetrolName = new() { Optional = true, Default = "petrol" };

    private static readonly NumberField CarbonAtoms = new("carbon", 1, 0, 30, "atoms of carbon in a molecule, or 1");

    private static readonly NumberField HydrogenAtoms =
        new("hydrogen", 1.87, 0, 62, "atoms of hydrogen, in a molecule or for each of carbon") { Arguments = ["hydrogen", "hydrogenToCarbon"] };

    private static readonly NumberField OxygenAtoms =
        new("oxygen", 0, 0, 10, "atoms of oxygen, in a molecule or for each of carbon") { Arguments = ["oxygen", "oxygenToCarbon"] };

    private static readonly QuantityField<Ratio> CarbonShare = new("carbon", Measures.Share, "share of carbon by mass") { Example = "86.5 %", Range = "0 to 100 %" };

    private static readonly QuantityField<Ratio> HydrogenShare = new("hydrogen", Measures.Share, "share of hydrogen by mass") { Example = "13.5 %", Range = "0 to 100 %" };

    private static readonly QuantityField<Ratio> OxygenShare = new("oxygen", Measures.Share, "share of oxygen by mass") { Example = "0 %", Range = "0 to 100 %" };

    private static readonly RecordForm<ElementalComposition> Atoms = new("composition_by_atoms", "a composition by its atoms", OfAtoms)
    {
        { CarbonAtoms, composition => composition.Atoms.Value?.Carbon },
        { HydrogenAtoms, composition => composition.Atoms.Value?.Hydrogen },
        { OxygenAtoms, composition => composition.Atoms.Value?.Oxygen },
    };

    private static readonly RecordForm<ElementalComposition> Shares = new(
        "composition_by_shares",
        "a composition by shares of mass",
        values => ElementalComposition.OfShares(values.Required(CarbonShare), values.Required(HydrogenShare), values.Required(OxygenShare)))
    {
        { CarbonShare, composition => composition.Carbon },
        { HydrogenShare, composition => composition.Hydrogen },
        { OxygenShare, composition => composition.Oxygen },
    };

    // Counts of atoms, or shares by mass, whichever the first value is.
    private static readonly ChoiceForm<ElementalComposition> Composition = new(
        "composition",
        "a composition",
        Variant<ElementalComposition>.Of(Shares, composition => composition.Atoms.Value is null) with { Given = reader => reader.IsText(CarbonShare.Name) },
        Variant<ElementalComposition>.Of(Atoms));

    private static readonly PartField<ElementalComposition> OtherComposition = new("composition", () => Composition, "its carbon, hydrogen and oxygen");

    private static readonly PartField<ElementalComposition> PetrolComposition =
        new("composition", () => Composition, "its carbon, hydrogen and oxygen") { Optional = true, Default = "CH1.87" };

    private static readonly QuantityField<SpecificEnergy> OtherHeat = new("lower_heating_value", Measures.HeatingValue, "lower heating value") { Range = "5 to 60 MJ/kg" };

    private static readonly QuantityField<SpecificEnergy> PetrolHeat =
        new("lower_heating_value", Measures.HeatingValue, "lower heating value") { Optional = true, Range = "5 to 60 MJ/kg", Default = "44 MJ/kg" };

    private static readonly QuantityField<Density> OtherDensity =
        new("density_at_15c", Measures.Density, "density at 15 °C") { Example = "745 kg/m³", Range = "600 to 1,200 kg/m³" };

    private static readonly QuantityField<Density> PetrolDensity = new("density_at_15c", Measures.Density, "density at 15 °C")
    {
        Example = "745 kg/m³",
        Optional = true,
        Range = "653 to 787.5 kg/m³",
        Default = "745 kg/m³",
    };

    private static readonly QuantityField<CoefficientOfThermalExpansion> Expansion =
        new("expansion_at_15c", Measures.Expansion, "thermal expansion at 15 °C, by volume") { Range = "0.0005 to 0.002 1/K" };

    private static readonly QuantityField<Ratio> Share = new("share", Measures.Share, "by volume; all add up to 100 %") { Example = "15 %", Range = "0 to 100 %" };

    private static readonly PartField<Fuel> Part = new("fuel", () => Form!, "the fuel");

    private static readonly RecordForm<BlendPart> OfBlend =
        new("blend_part", "a fuel of the blend", values => new(values.Required(Share), values.Required(Part)))
        {
            { Share, part => part.Share },
            { Part, part => part.Fuel },
        };

    private static readonly ListField<BlendPart> Parts = new("parts", () => OfBlend, "the fuels of the blend") { Minimum = 1 };

    private static readonly QuantityField<Temperature> At = new("temperature", Measures.Temperature, "of the fuel; the two at least 5 K apart") { Range = "−30 to 80 °C" };

    private static readonly QuantityField<KinematicViscosity> ViscosityThere =
        new("viscosity", Measures.KinematicViscosity, "kinematic viscosity there") { Range = "0.1 to 50 mm²/s" };

    private static readonly QuantityField<Pressure> PressureThere =
        new("pressure", Measures.Pressure, "true (absolute) vapour pressure there") { Example = "35 kPa", Range = "0.01 to 500 kPa" };

    private static readonly RecordForm<ViscosityRow> OfViscosity =
        new("viscosity", "a viscosity", values => new(values.Required(At), values.Required(ViscosityThere)))
        {
            { At, row => row.Temperature },
            { ViscosityThere, row => row.Viscosity },
        };

    private static readonly RecordForm<VapourRow> OfVapour =
        new("vapour_pressure", "a vapour pressure", values => new(values.Required(At), values.Required(PressureThere)))
        {
            { At, row => row.Temperature },
            { PressureThere, row => row.Pressure },
        };

    private static readonly ListField<ViscosityRow> Viscosity =
        new("viscosity", () => OfViscosity, "kinematic viscosity at two temperatures") { IsTable = true, Optional = true, Minimum = 2, Maximum = 2, Default = "the kind's own, where it is known" };

    private static readonly ListField<VapourRow> VapourPressure = new("vapour_pressure", () => OfVapour, "vapour pressure at two temperatures; not with `reid_vapour_pressure`")
    {
        IsTable = true,
        Optional = true,
        Minimum = 2,
        Maximum = 2,
        Default = "the kind's own, where it is known",
    };

    private static readonly QuantityField<Pressure> Reid = new("reid_vapour_pressure", Measures.Pressure, "Reid vapour pressure; not with `vapour_pressure`")
    {
        Example = "60 kPa",
        Optional = true,
        Range = "7 to 138 kPa",
        Default = "the kind's own, where it is known",
    };

    private static readonly QuantityField<SpecificEnergy> EvaporationHeat = new("heat_of_vaporisation", Measures.HeatingValue, "heat of vaporisation, for `evaporated_share`")
    {
        Example = "0.36 MJ/kg",
        Arguments = ["heat"],
        Optional = true,
        Range = "0.1 to 2.5 MJ/kg",
        Default = "the kind's own, where it is known",
    };

    /// <summary>Any fuel.</summary>
    public static ChoiceForm<Fuel> Form { get; } = new(
        "fuel",
        "a fuel",
        Kind(
            FuelKind.Petrol,
            new("petrol", "petrol", values => Measured(values, PetrolOf), OnlyOne, OneVapourPressure)
            {
                { new KindField("petrol"), _ => null },
                { PetrolName, fuel => fuel.Name },
                { PetrolComposition, fuel => fuel.Composition },
                { PetrolHeat, fuel => fuel.LowerHeatingValue },
                { PetrolDensity, fuel => fuel.DensityAt15C },
            }),
        Kind(
            FuelKind.Ethanol,
            new("ethanol", "ethanol", values => Measured(values, _ => Fuel.Ethanol), OnlyOne, OneVapourPressure)
            {
                { new KindField("ethanol"), _ => null },
            }),
        Kind(
            FuelKind.Methanol,
            new("methanol", "methanol", values => Measured(values, _ => Fuel.Methanol), OnlyOne, OneVapourPressure)
            {
                { new KindField("methanol"), _ => null },
            }),
        Kind(
            FuelKind.Blend,
            new("blend", "a blend", values => Measured(values, BlendOf), OnlyOne, OneVapourPressure)
            {
                { new KindField("blend"), _ => null },
                { Name, fuel => fuel.Name },
                { Parts, fuel => [.. fuel.Making.Value.Parts.Select(part => new BlendPart(part.Share, part.Fuel))] },
            }),
        Kind(
            FuelKind.Other,
            new("other_fuel", "another fuel", values => Measured(values, OtherOf), OnlyOne, OneVapourPressure)
            {
                { new KindField("other"), _ => null },
                { Name, fuel => fuel.Name },
                { OtherComposition, fuel => fuel.Composition },
                { OtherHeat, fuel => fuel.LowerHeatingValue },
                { OtherDensity, fuel => fuel.DensityAt15C },
                { Expansion, fuel => fuel.ExpansionAt15C },
            }));

    private static Variant<Fuel> Kind(FuelKind kind, RecordForm<Fuel> form)
    {
        form.Add(Viscosity, fuel => [.. fuel.Making.Value.Viscosity.Select(point => new ViscosityRow(point.Temperature, point.Viscosity))]);
        form.Add(VapourPressure, fuel => [.. fuel.Making.Value.VapourPressure.Select(point => new VapourRow(point.Temperature, point.Absolute))]);
        form.Add(Reid, fuel => fuel.Making.Value.ReidPressure);
        form.Add(EvaporationHeat, fuel => fuel.Making.Value.HeatOfVaporisation);
        return Variant<Fuel>.Of(form, fuel => fuel.Making.Value.Kind == kind);
    }

    private static void OnlyOne(FieldValues values)
    {
        if (values.Optional(Reid) is not null && values.Reader.Has(VapourPressure.Name))
        {
            values.Wrong(Reid, Statement.Of("file.two-vapour-pressures", $"is given together with vapour_pressure. Give one of the two."));
        }
    }

    // What was measured of the fuel takes the place of what its kind is known to have.
    private static Fuel? Measured(FieldValues values, Func<FieldValues, Fuel?> kind)
    {
        Fuel? fuel = kind(values);
        if (fuel is not null && values.Optional(Viscosity) is [var one, var other])
        {
            Fuel before = fuel;
            fuel = values.Checked(
                () => before.WithViscosity((one.Temperature, one.Viscosity), (other.Temperature, other.Viscosity)), ("one", Viscosity), ("other", Viscosity));
        }

        if (fuel is not null && values.Optional(VapourPressure) is [var cold, var warm])
        {
            Fuel before = fuel;
            fuel = values.Checked(
                () => before.WithVapourPressure((cold.Temperature, cold.Pressure), (warm.Temperature, warm.Pressure)),
                ("one", VapourPressure),
                ("other", VapourPressure));
        }

        fuel = fuel is not null && values.Optional(Reid) is { } reid ? fuel.WithReidVapourPressure(reid) : fuel;
        return fuel is not null && values.Optional(EvaporationHeat) is { } heat
            ? values.Checked(() => fuel.WithHeatOfVaporisation(heat), ("heat", EvaporationHeat))
            : fuel;
    }

    private static Fuel PetrolOf(FieldValues values) => Fuel.PetrolOf(
        values.Optional(PetrolDensity) ?? Fuel.Petrol.DensityAt15C,
        values.Optional(PetrolComposition),
        values.Optional(PetrolHeat),
        values.Optional(PetrolName) ?? Fuel.Petrol.Name);

    private static Fuel BlendOf(FieldValues values) => FuelBlend.ByVolume(
        values.Required(Name), [.. values.Required(Parts).Select(part => (part.Fuel, part.Share))]);

    private static Fuel OtherOf(FieldValues values) => Fuel.Of(
        values.Required(Name),
        values.Required(OtherComposition),
        values.Required(OtherHeat),
        values.Required(OtherDensity),
        values.Required(Expansion));

    private static ElementalComposition? OfAtoms(FieldValues values)
    {
        double carbon = values.Required(CarbonAtoms);
        double hydrogen = values.Required(HydrogenAtoms);
        double oxygen = values.Required(OxygenAtoms);
        if (IsCount(carbon) && IsCount(hydrogen) && IsCount(oxygen))
        {
            return ElementalComposition.OfMolecule((int)carbon, (int)hydrogen, (int)oxygen);
        }

        if (carbon == 1)
        {
            return ElementalComposition.OfAtomRatios(hydrogen, oxygen);
        }

        values.Wrong(CarbonAtoms, Statement.Of("file.carbon-atoms", $"must be 1 where the atoms are not whole numbers. Give hydrogen and oxygen for each atom of carbon."));
        return null;
    }

    private static bool IsCount(double number) => number == Math.Truncate(number) && Math.Abs(number) <= int.MaxValue;

    private sealed record BlendPart(Ratio Share, Fuel Fuel);

    private sealed record ViscosityRow(Temperature Temperature, KinematicViscosity Viscosity);

    private sealed record VapourRow(Temperature Temperature, Pressure Pressure);
}
