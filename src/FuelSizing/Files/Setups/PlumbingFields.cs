using System.Collections.Frozen;
using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Lines;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>The fields of lines, fittings and filters.</summary>
internal static class PlumbingFields
{
    private const string Suction = "suction";
    private const string Supply = "supply";
    private const string Back = "back";
    private const string ALine = "line";
    private const string AFilter = "filter";

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["bore"] = "bore",
        ["length"] = "length",
        ["roughness"] = "roughness",
        ["rise"] = "rise",
        ["flow"] = "rated_flow",
        ["pressureLoss"] = "rated_loss",
        ["clogging"] = "clogging",
        ["ratedViscosity"] = "rated_viscosity",
        ["lossCoefficient"] = "loss_coefficient",
        ["diameters"] = "diameters",
        ["count"] = "count",
    }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static Plumbing? Read(EntryReader reader)
    {
        IFlowLoss?[] suction = Way(reader, Suction);
        IFlowLoss?[] supply = Way(reader, Supply);
        IFlowLoss?[] back = Way(reader, Back);
        return reader.Make(() => Plumbing.Of(suction!, supply!, back!), Fields);
    }

    /// <summary>Writes it.</summary>
    public static void Write(FieldWriter fields, Plumbing plumbing)
    {
        fields.List(Suction, plumbing.Suction, Write);
        fields.List(Supply, plumbing.Supply, Write);
        fields.List(Back, plumbing.ReturnLine, Write);
    }

    private static IFlowLoss?[] Way(EntryReader reader, string way) => [.. reader.OptionalRows(way).Select(PartOf)];

    private static IFlowLoss? PartOf(EntryReader reader) =>
        reader.Word("kind", required: true, ALine, AFilter) == ALine ? LineOf(reader) : FilterOf(reader);

    private static void Write(FieldWriter fields, IFlowLoss part)
    {
        if (part is Line line)
        {
            Write(fields, line);
        }
        else if (part is Filter filter)
        {
            Write(fields, filter);
        }
    }

    private static Line? LineOf(EntryReader reader)
    {
        string name = reader.Name();
        Length bore = reader.Required("bore", Measures.Length);
        Length length = reader.Required("length", Measures.Length);
        Length roughness = reader.Required("roughness", Measures.Length);
        Length? rise = reader.Optional("rise", Measures.Length);
        Fitting?[] fittings = [.. reader.OptionalRows("fittings").Select(FittingOf)];
        return reader.Make(() => Line.Of(name, bore, length, roughness, fittings!, rise), Fields);
    }

    private static void Write(FieldWriter fields, Line line)
    {
        fields.Text("kind", ALine);
        fields.Text("name", line.Name);
        fields.Quantity("bore", line.Bore, Measures.Length);
        fields.Quantity("length", line.Length, Measures.Length);
        fields.Quantity("roughness", line.Roughness, Measures.Length);
        fields.Quantity("rise", line.Rise, Measures.Length);
        if (line.Fittings.Count > 0)
        {
            fields.Table("fittings", line.Fittings, Write);
        }
    }

    private static Fitting? FittingOf(EntryReader reader)
    {
        string name = reader.Name();
        int? count = reader.Count("count", "2");
        Fitting? single;
        if (reader.Has("diameters"))
        {
            double diameters = reader.RequiredNumber("diameters", "30");
            single = reader.Checked(() => Fitting.OfDiameters(name, diameters), Fields);
        }
        else
        {
            double coefficient = reader.RequiredNumber("loss_coefficient", "0.5");
            single = reader.Checked(() => Fitting.Of(name, coefficient), Fields);
        }

        return reader.Make(() => count is { } many ? single!.Times(many) : single!, Fields);
    }

    private static void Write(FieldWriter fields, Fitting fitting)
    {
        (Fitting single, int? count) = fitting.Counted.Value is { } counted
            ? (counted.Single, counted.Count)
            : (fitting, (int?)null);
        fields.Text("name", single.Name);
        if (single.Diameters != 0)
        {
            fields.Number("diameters", single.Diameters);
        }
        else
        {
            fields.Number("loss_coefficient", single.FixedCoefficient);
        }

        if (count is { } many)
        {
            fields.Count("count", many);
        }
    }

    private static Filter? FilterOf(EntryReader reader)
    {
        string name = reader.Name();
        VolumeFlow flow = reader.Required("rated_flow", Measures.Flow);
        Pressure loss = reader.Required("rated_loss", Measures.Pressure);
        double clogging = reader.Number("clogging", "1") ?? 1;
        DynamicViscosity? viscosity = reader.Optional("rated_viscosity", Measures.DynamicViscosity);
        return reader.Make(() => Filter.Of(name, flow, loss, clogging, viscosity), Fields);
    }

    private static void Write(FieldWriter fields, Filter filter)
    {
        fields.Text("kind", AFilter);
        fields.Text("name", filter.Name);
        fields.Quantity("rated_flow", filter.RatedFlow, Measures.Flow);
        fields.Quantity("rated_loss", filter.RatedLoss, Measures.Pressure);
        fields.Number("clogging", filter.Clogging);
        fields.Quantity("rated_viscosity", filter.RatedViscosity, Measures.DynamicViscosity);
    }
}
