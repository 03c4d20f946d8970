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

    private static readonly PartField<PressureRegulator> First =
        new(InSeriesWith, () => Form!, "the base regulator that the unit is in series with, on the return line") { Arguments = ["unit", "baseRegulator"] };

    /// <summary>The kind with one pressure.</summary>
    public static RecordForm<Fixed> FixedKind { get; } =
        new("fixed_regulator", "a fixed regulator", values => Fixed.At(values.Required(Base), values.Optional(MinimumReturnFlow)))
        {
            { new KindField("fixed"), _ => null },
            { Base, regulator => regulator.Gauge },
            { MinimumReturnFlow, Returned },
        };

    /// <summary>The kind that follows the manifold.</summary>
    public static RecordForm<ManifoldReferenced> ManifoldReferencedKind { get; } = new(
        "manifold_referenced_regulator",
        "a manifold-referenced regulator",
        values => ManifoldReferenced.From(values.Required(Base), values.Optional(MinimumReturnFlow)))
    {
        { new KindField("manifold-referenced"), _ => null },
        { Base, regulator => regulator.Base },
        { MinimumReturnFlow, Returned },
    };

    /// <summary>The kind that rises faster than the manifold, by itself.</summary>
    public static RecordForm<RisingRate> RisingRateAlone { get; } = new("rising_rate_regulator", "a rising-rate regulator", values => UnitOf(values, values.Required(Base)))
    {
        { new KindField(RisingRateKind), _ => null },
        { Base, regulator => regulator.Base },
        { Gain, regulator => regulator.Gain },
        { Onset, regulator => regulator.Onset },
        { Ceiling, regulator => regulator.Ceiling },
        { MinimumReturnFlow, Returned },
    };

    /// <summary>The kind that rises faster than the manifold, in series with a base regulator.</summary>
    public static RecordForm<RisingRate> RisingRateUnit { get; } =
        new("rising_rate_unit", "a rising-rate unit", values => UnitOf(values, values.Optional(UnitBase) ?? Pressure.Zero))
        {
            { new KindField(RisingRateKind), _ => null },
            { UnitBase, unit => unit.Base > Pressure.Zero ? unit.Base : null },
            { Gain, unit => unit.Gain },
            { Onset, unit => unit.Onset },
            { Ceiling, unit => unit.Ceiling },
            { MinimumReturnFlow, Returned },
        };

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
        basePressure, values.Required(Gain), values.Required(Onset), values.Optional(Ceiling), values.Optional(MinimumReturnFlow));

    private static RegulatorSeries? SeriesOf(FieldValues values) =>
        RisingRateUnit.Make(values) is { } unit ? RegulatorSeries.Of(values.Required(First), unit) : null;

    private static VolumeFlow? Returned(PressureRegulator regulator) =>
        regulator.MinimumReturnFlow > VolumeFlow.Zero ? regulator.MinimumReturnFlow : null;
}
