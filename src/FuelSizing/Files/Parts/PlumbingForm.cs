using FuelSizing.Circuits;
using FuelSizing.Lines;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>Lines, fittings and filters.</summary>
internal static class PlumbingForm
{
    private static readonly NameField Name = new();

    private static readonly NumberField LossCoefficient =
        new("loss_coefficient", 0.5, 0, 1000, "of one, on the velocity in the line's bore");

    private static readonly NumberField Diameters = new("diameters", 30, 0, 5000, "equivalent length of one, in bores");

    private static readonly CountField Count = new("count", 2, 1, 50, "how many of them") { Optional = true, Default = "1" };

    private static readonly RecordForm<Fitting> OfCoefficient =
        new("fitting_of_coefficient", "a fitting by its loss coefficient", values => Counted(values, () => Fitting.Of(values.Required(Name), values.Required(LossCoefficient))))
        {
            { Name, fitting => Single(fitting).Name },
            { LossCoefficient, fitting => Single(fitting).FixedCoefficient },
            { Count, fitting => fitting.Counted.Value?.Count },
        };

    private static readonly RecordForm<Fitting> OfDiameters =
        new("fitting_of_diameters", "a fitting by its equivalent length", values => Counted(values, () => Fitting.OfDiameters(values.Required(Name), values.Required(Diameters))))
        {
            { Name, fitting => Single(fitting).Name },
            { Diameters, fitting => Single(fitting).Diameters },
            { Count, fitting => fitting.Counted.Value?.Count },
        };

    private static readonly ChoiceForm<Fitting> AFitting = new(
        "fitting",
        "a fitting",
        Variant<Fitting>.Of(OfDiameters, fitting => Single(fitting).Diameters != 0, Diameters),
        Variant<Fitting>.Of(OfCoefficient));

    private static readonly QuantityField<Length> Bore = new("bore", Measures.Length, "inside diameter") { Range = "1 to 60 mm" };

    private static readonly QuantityField<Length> Length = new("length", Measures.Length, "of the line") { Example = "3.6 m", Range = "0 to 100 m" };

    private static readonly QuantityField<Length> Roughness =
        new("roughness", Measures.Length, "of the wall inside") { Example = "0.0015 mm", Range = "0 to 5 % of the bore" };

    private static readonly QuantityField<Length> Rise =
        new("rise", Measures.Length, "height of the end over the start") { Example = "0.4 m", Optional = true, Range = "−10 to 10 m", Default = "0 m" };

    private static readonly ListField<Fitting> Fittings = new("fittings", () => AFitting, "bends, tees, ends") { IsTable = true, Optional = true, Default = "no fittings" };

    private static readonly RecordForm<Line> ALine = new(
        "line",
        "a line",
        values => Line.Of(
            values.Required(Name),
            values.Required(Bore),
            values.Required(Length),
            values.Required(Roughness),
            values.Required(Fittings),
            values.Optional(Rise)))
    {
        { new KindField("line"), _ => null },
        { Name, line => line.Name },
        { Bore, line => line.Bore },
        { Length, line => line.Length },
        { Roughness, line => line.Roughness },
        { Rise, line => line.Rise },
        { Fittings, line => line.Fittings },
    };

    private static readonly QuantityField<VolumeFlow> RatedFlow =
        new("rated_flow", Measures.Flow, "at which the loss was measured") { Example = "220 L/h", Range = "1 to 10,000 L/h", Arguments = ["flow"] };

    private static readonly QuantityField<Pressure> RatedLoss =
        new("rated_loss", Measures.Pressure, "pressure loss of the new filter") { Example = "12 kPa", Range = "0 to 200 kPa", Arguments = ["pressureLoss"] };

    private static readonly NumberField Clogging = new("clogging", 1.5, 1, 100, "factor on the loss: 1 when new") { Optional = true, Default = "1" };

    private static readonly QuantityField<DynamicViscosity> RatedViscosity =
        new("rated_viscosity", Measures.DynamicViscosity, "of the liquid of the test") { Optional = true, Range = "0.1 to 20 mPa·s", Default = "that of petrol at 20 °C" };

    private static readonly RecordForm<Filter> AFilter = new(
        "filter",
        "a filter",
        values => Filter.Of(
            values.Required(Name),
            values.Required(RatedFlow),
            values.Required(RatedLoss),
            values.Optional(Clogging) ?? 1,
            values.Optional(RatedViscosity)))
    {
        { new KindField("filter"), _ => null },
        { Name, filter => filter.Name },
        { RatedFlow, filter => filter.RatedFlow },
        { RatedLoss, filter => filter.RatedLoss },
        { Clogging, filter => filter.Clogging },
        { RatedViscosity, filter => filter.RatedViscosity },
    };

    private static readonly QuantityField<Pressure> Opening =
        new("opening", Measures.Pressure, "opening (cracking) pressure, over that behind the valve") { Example = "6 kPa", Range = "0 to 500 kPa", Arguments = ["opening"] };

    private static readonly QuantityField<VolumeFlow> ValveFlow =
        new("rated_flow", Measures.Flow, "at which the drop was measured") { Example = "180 L/h", Range = "1 to 10,000 L/h", Arguments = ["flow"] };

    private static readonly QuantityField<Pressure> ValveLoss =
        new("rated_loss", Measures.Pressure, "pressure drop at that flow, `opening` included") { Example = "14 kPa", Range = "`opening` to 1,000 kPa", Arguments = ["pressureLoss"] };

    private static readonly QuantityField<Density> ValveDensity =
        new("rated_density", Measures.Density, "of the liquid of the measurement") { Optional = true, Range = "500 to 1,200 kg/m³", Default = "that of petrol at 20 °C", Arguments = ["ratedDensity"] };

    private static readonly NumberField ValveCoefficient =
        new("loss_coefficient", 4, 0, 1000, "K of the open valve, on the velocity in `bore`") { Arguments = ["lossCoefficient"] };

    private static readonly RecordForm<CheckValve> ValveByCoefficient = new(
        "check_valve_of_coefficient",
        "a check valve by its loss coefficient",
        values => CheckValve.OfCoefficient(values.Required(Name), values.Required(Opening), values.Required(ValveCoefficient), values.Required(Bore)))
    {
        { new KindField("check-valve"), _ => null },
        { Name, valve => valve.Name },
        { Opening, valve => valve.OpeningPressure },
        { ValveCoefficient, valve => valve.LossCoefficient },
        { Bore, valve => valve.Bore },
    };

    private static readonly RecordForm<CheckValve> ValveMeasured = new(
        "check_valve",
        "a check valve by one measured drop",
        values => CheckValve.Of(
            values.Required(Name), values.Required(Opening), values.Required(ValveFlow), values.Required(ValveLoss), values.Optional(ValveDensity)))
    {
        { new KindField("check-valve"), _ => null },
        { Name, valve => valve.Name },
        { Opening, valve => valve.OpeningPressure },
        { ValveFlow, valve => valve.RatedFlow },
        { ValveLoss, valve => valve.RatedLoss },
        { ValveDensity, valve => valve.RatedDensity },
    };

    /// <summary>A line, a filter or a check valve.</summary>
    public static ChoiceForm<IFlowLoss> PartOfPath { get; } = new(
        "path_part",
        "a line or filter or check valve",
        Variant<IFlowLoss>.Of(ALine),
        Variant<IFlowLoss>.Of(AFilter),
        Variant<IFlowLoss>.Of(ValveByCoefficient, valve => valve.LossCoefficient is not null, ValveCoefficient),
        Variant<IFlowLoss>.Of(ValveMeasured));

    private static readonly ListField<IFlowLoss> Suction = new("suction", () => PartOfPath, "tank to pump") { Optional = true, Default = "no loss" };

    private static readonly ListField<IFlowLoss> Supply = new("supply", () => PartOfPath, "pump to rail") { Optional = true, Default = "no loss" };

    private static readonly ListField<IFlowLoss> Return = new("return", () => PartOfPath, "regulator to tank") { Optional = true, Default = "no loss" };

    private static readonly ListField<IFlowLoss> ToRegulator = new("to_regulator", () => PartOfPath, "pump to a regulator before the rail, of a returnless layout; `supply` then leads from there")
    {
        Optional = true,
        Default = "the regulator sits at the pump, or at the rail",
        Arguments = ["toRegulator"],
    };

    /// <summary>All paths.</summary>
    public static RecordForm<Plumbing> Form { get; } = new(
        "plumbing",
        "the plumbing",
        values => Plumbing.Of(values.Required(Suction), values.Required(Supply), values.Required(Return), values.Required(ToRegulator)))
    {
        { Suction, plumbing => plumbing.Suction },
        { Supply, plumbing => plumbing.Supply },
        { Return, plumbing => plumbing.ReturnLine },
        { ToRegulator, plumbing => plumbing.ToRegulator },
    };

    private static Fitting? Counted(FieldValues values, Func<Fitting> single) =>
        values.Optional(Count) is { } count ? single().Times(count) : single();

    private static Fitting Single(Fitting fitting) => fitting.Counted.Value is { } counted ? counted.Single : fitting;
}
