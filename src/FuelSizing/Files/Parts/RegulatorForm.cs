using FuelSizing.Quantities;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A regulator, in a catalogue or in a setup.</summary>
internal static class RegulatorForm
{
    /// <summary>The field of the base regulator that a rising-rate unit is in series with.</summary>
    public const string InSeriesWith = "in_series_with";

    /// <summary>The name of a kind whose forms differ between catalogue and setup.</summary>
    public const string RisingRateKind = "rising-rate";

    private const string FlowTogether = """
        "dependentRequired": { "flow_rise": [ "flow_rise_over", "set_at_flow" ], "flow_rise_over": [ "flow_rise" ], "flow_curve": [ "set_at_flow" ] },
        "dependentSchemas": { "set_at_flow": { "oneOf": [ { "required": [ "flow_rise" ] }, { "required": [ "flow_curve" ] } ] } }
        """;

    private static readonly QuantityField<Pressure> Base = new("base", Measures.Pressure, "rail gauge pressure with the manifold at atmospheric pressure")
    {
        Range = "100 to 1,500 kPa",
        Arguments = ["gauge", "basePressure"],
    };

    private static readonly QuantityField<Pressure> UnitBase = new("base", Measures.Pressure, "the unit's own setting without boost")
    {
        Optional = true,
        Range = "0 to 1,500 kPa",
        Default = "0 kPa",
        Arguments = ["basePressure"],
    };

    private static readonly QuantityField<VolumeFlow> MinimumReturnFlow = new("minimum_return_flow", Measures.Flow, "minimum returned flow at which it governs")
    {
        Example = "15 L/h",
        Optional = true,
        Range = "0 to 500 L/h",
        Default = "0 L/h",
    };

    private static readonly NumberField Gain = new("gain", 6, 1, 15, "rise of rail pressure for each 1 of boost");

    private static readonly QuantityField<Pressure> Onset =
        new("onset", Measures.Pressure, "boost at which the gain sets in") { Example = "0.1 bar", Range = "0 to 200 kPa" };

    private static readonly QuantityField<Pressure> Ceiling =
        new("ceiling", Measures.Pressure, "maximum rail gauge pressure that it sets") { Example = "650 kPa", Optional = true, Range = "`base` to 2,000 kPa", Default = "no ceiling" };

    private static readonly TruthField FollowsManifold = new("follows_manifold", "true if the target follows the manifold one for one");

    private static readonly QuantityField<ElectricPotential> MinimumVoltage =
        new("minimum_voltage", Measures.Voltage, "minimum voltage at which the pump is still run") { Example = "6 V", Range = "3 to 20 V" };

    private static readonly QuantityField<Pressure> FlowRise =
        new("flow_rise", Measures.Pressure, "how much its pressure rises while the returned flow rises by `flow_rise_over`; needs `set_at_flow`") { Example = "20 kPa", Optional = true, Range = "0 to 500 kPa", Default = "the same pressure at any returned flow", Arguments = ["rise"] };

    private static readonly QuantityField<VolumeFlow> FlowRiseOver =
        new("flow_rise_over", Measures.Flow, "the rise of returned flow that goes with `flow_rise`") { Example = "100 L/h", Optional = true, Range = "1 to 500 L/h", Arguments = ["over"] };

    private static readonly QuantityField<VolumeFlow> SetAtFlow =
        new("set_at_flow", Measures.Flow, "returned flow at which the regulator was set; with `flow_curve` within the curve") { Example = "60 L/h", Optional = true, Range = "0 to 500 L/h", Arguments = ["statedAt"] };

    private static readonly QuantityField<VolumeFlow> ReturnedFlow =
        new("returned_flow", Measures.Flow, "returned through it, rising from row to row") { Example = "60 L/h", Range = "0 to 1,000 L/h", Arguments = [] };

    private static readonly QuantityField<Pressure> HeldGauge =
        new("held", Measures.Pressure, "gauge pressure held there, at no boost and with the outlet at ambient pressure") { Example = "300 kPa", Range = "1 to 2,000 kPa", Arguments = [] };

    private static readonly RecordForm<RegulatorPoint> FlowRow = new(
        "regulator_point", "a measured point of a regulator", values => new RegulatorPoint(values.Required(ReturnedFlow), values.Required(HeldGauge)))
    {
        { ReturnedFlow, point => point.Returned },
        { HeldGauge, point => point.Gauge },
    };

    private static readonly ListField<RegulatorPoint> FlowCurve =
        new("flow_curve", () => FlowRow, "pressure measured over the returned flow, in place of `flow_rise`; needs `set_at_flow`") { IsTable = true, Optional = true, Minimum = 2, Default = "not measured", Arguments = ["points"] };

    private static readonly QuantityField<Pressure> Hysteresis =
        new("hysteresis", Measures.Pressure, "by how much its pressure may differ between rising and falling returned flow; counted to either side") { Example = "8 kPa", Optional = true, Range = "0 to 200 kPa", Default = "0 kPa" };

    private static readonly NumberField OutletShare = new("outlet_share", 0.05, -0.5, 1, "rise of its pressure for each 1 of gauge pressure at its outlet; negative where that helps the seat open") { Optional = true, Default = "0", Arguments = ["share"] };

    private static readonly TruthField GainQuoted = new("gain_quoted", "true if of the unit only a quoted gain is known, which may count over the base pressure or from none") { Optional = true, Default = "false", Arguments = [] };

    private static readonly PartField<PressureRegulator> First =
        new(InSeriesWith, () => Form!, "the base regulator that the unit is in series with, on the return line") { Arguments = ["unit", "baseRegulator"] };

    /// <summary>The kind with one pressure.</summary>
    public static RecordForm<Fixed> FixedKind { get; } = Changing<Fixed>(
        new("fixed_regulator", "a fixed regulator", values => Fixed.At(values.Required(Base), values.Optional(MinimumReturnFlow)).With(FlowOf(values)), Flowing, FlowTogether)
        {
            { new KindField("fixed"), _ => null },
            { Base, regulator => regulator.Gauge },
            { MinimumReturnFlow, Returned },
        });

    /// <summary>The kind that follows the manifold.</summary>
    public static RecordForm<ManifoldReferenced> ManifoldReferencedKind { get; } = Changing<ManifoldReferenced>(
        new(
            "manifold_referenced_regulator",
            "a manifold-referenced regulator",
            values => ManifoldReferenced.From(values.Required(Base), values.Optional(MinimumReturnFlow)).With(FlowOf(values)),
            Flowing,
            FlowTogether)
        {
            { new KindField("manifold-referenced"), _ => null },
            { Base, regulator => regulator.Base },
            { MinimumReturnFlow, Returned },
        });

    /// <summary>The kind that rises faster than the manifold, by itself.</summary>
    public static RecordForm<RisingRate> RisingRateAlone { get; } = Changing<RisingRate>(
        new("rising_rate_regulator", "a rising-rate regulator", values => UnitOf(values, values.Required(Base)), Flowing, FlowTogether)
        {
            { new KindField(RisingRateKind), _ => null },
            { Base, regulator => regulator.Base },
            { Gain, regulator => regulator.Gain },
            { Onset, regulator => regulator.Onset },
            { Ceiling, regulator => regulator.Ceiling },
            { MinimumReturnFlow, Returned },
        });

    /// <summary>The kind that rises faster than the manifold, in series with a base regulator.</summary>
    public static RecordForm<RisingRate> RisingRateUnit { get; } = Changing<RisingRate>(
        new("rising_rate_unit", "a rising-rate unit", values => UnitOf(values, values.Optional(UnitBase) ?? Pressure.Zero), Flowing, FlowTogether)
        {
            { new KindField(RisingRateKind), _ => null },
            { UnitBase, unit => unit.Base > Pressure.Zero ? unit.Base : null },
            { Gain, unit => unit.Gain },
            { Onset, unit => unit.Onset },
            { Ceiling, unit => unit.Ceiling },
            { MinimumReturnFlow, Returned },
        });

    /// <summary>The kind that holds pressure by the pump's speed.</summary>
    public static RecordForm<ElectronicReturnless> ElectronicKind { get; } = new(
        "electronic_regulator",
        "an electronic returnless regulator",
        values => ElectronicReturnless.Holding(values.Required(Base), values.Required(FollowsManifold), values.Required(MinimumVoltage)))
    {
        { new KindField("electronic"), _ => null },
        { Base, regulator => regulator.Base },
        { FollowsManifold, regulator => regulator.FollowsManifold },
        { MinimumVoltage, regulator => regulator.MinimumVoltage },
    };

    private static readonly RecordForm<RegulatorSeries> Series = new("regulator_series", "a rising-rate unit in series with a base regulator", SeriesOf)
    {
        { RisingRateUnit, series => series.Unit },
        { GainQuoted, series => series.IsGainQuoted ? true : null },
        { First, series => series.BaseRegulator },
    };

    /// <summary>Any regulator of a setup.</summary>
    public static ChoiceForm<PressureRegulator> Form { get; } = new(
        "regulator",
        "a regulator",
        Variant<PressureRegulator>.Of(FixedKind),
        Variant<PressureRegulator>.Of(ManifoldReferencedKind),
        Variant<PressureRegulator>.Of(Series, given: First),
        Variant<PressureRegulator>.Of(RisingRateAlone),
        Variant<PressureRegulator>.Of(ElectronicKind));

    private static RisingRate UnitOf(FieldValues values, Pressure basePressure) => RisingRate.From(
        basePressure, values.Required(Gain), values.Required(Onset), values.Optional(Ceiling), values.Optional(MinimumReturnFlow)).With(FlowOf(values));

    private static RegulatorSeries? SeriesOf(FieldValues values) =>
        RisingRateUnit.Make(values) is not { } unit ? null
        : values.Optional(GainQuoted) == true ? RegulatorSeries.Of(values.Required(First), unit).WithQuotedGain()
        : RegulatorSeries.Of(values.Required(First), unit);

    private static void Flowing(FieldValues values)
    {
        bool slope = values.Reader.Has(FlowRise.Name);
        bool curve = values.Reader.Has(FlowCurve.Name);
        values.BothOrNeither(FlowRise, FlowRiseOver, Statement.Of("file.flow-rise-alone", $"goes with the other of flow_rise and flow_rise_over. Give both, or none."));
        if (slope && curve)
        {
            values.Wrong(FlowCurve, Statement.Of("file.flow-rise-and-curve", $"is given together with flow_rise. Give the slope or the measured curve."));
        }

        if ((slope || curve) != values.Reader.Has(SetAtFlow.Name))
        {
            values.Wrong(SetAtFlow, Statement.Of("file.set-at-flow", $"goes with flow_rise or flow_curve. Give the returned flow at which the regulator was set, or take both out."));
        }
    }

    private static RegulatorFlow? FlowOf(FieldValues values)
    {
        (Pressure? hysteresis, double? share) = (values.Optional(Hysteresis), values.Optional(OutletShare));
        (VolumeFlow, Pressure)[] points = [.. (values.Optional(FlowCurve) ?? []).Select(point => (point.Returned, point.Gauge))];
        RegulatorFlow? flow = values.Optional(FlowRise) is { } rise ? RegulatorFlow.Rising(rise, values.Required(FlowRiseOver), values.Required(SetAtFlow))
            : points.Length > 0 ? values.Made(FlowCurve, count => RegulatorFlow.Measured(values.Required(SetAtFlow), points[..count]))
            : hysteresis is null && share is null ? null
            : RegulatorFlow.Constant;
        flow = hysteresis is { } band ? flow?.WithHysteresis(band) : flow;
        return share is { } acting ? flow?.WithOutletShare(acting) : flow;
    }

    // How its pressure changes with the flow that returns: fields that every kind has which a spring holds.
    private static RecordForm<T> Changing<T>(RecordForm<T> form)
        where T : PressureRegulator
    {
        form.Add(FlowRise, regulator => Sloping(regulator)?.Rise);
        form.Add(FlowRiseOver, regulator => Sloping(regulator)?.Over);
        form.Add(SetAtFlow, regulator => regulator.Flow is { Points.Count: > 0 } measured ? measured.StatedAt : Sloping(regulator)?.StatedAt);
        form.Add(FlowCurve, regulator => regulator.Flow is { Points.Count: > 0 } measured ? measured.Points : null);
        form.Add(Hysteresis, regulator => regulator.Flow?.Hysteresis);
        form.Add(OutletShare, regulator => regulator.Flow is { OutletShare: not 0 } acted ? acted.OutletShare : null);
        return form;
    }

    private static RegulatorFlow? Sloping(PressureRegulator regulator) =>
        regulator.Flow is { Points.Count: 0 } flow && (flow.Rise > Pressure.Zero || flow.StatedAt > VolumeFlow.Zero) ? flow : null;

    private static VolumeFlow? Returned(PressureRegulator regulator) =>
        regulator.MinimumReturnFlow > VolumeFlow.Zero ? regulator.MinimumReturnFlow : null;
}
