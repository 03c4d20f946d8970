using FuelSizing.Injectors;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A secondary set of injectors and its hand-over.</summary>
internal static class StagedInjectorsForm
{
    private static readonly QuantityField<Pressure> BeginBoost =
        new("begin", Measures.Pressure, "manifold gauge pressure up to which the secondary set is idle") { Example = "0.3 bar", Range = "−95 to 399 kPa" };

    private static readonly QuantityField<Pressure> FullBoost =
        new("full", Measures.Pressure, "manifold gauge pressure from which it carries its whole share") { Example = "0.5 bar", Range = "1 kPa above `begin`, to 400 kPa" };

    private static readonly QuantityField<Ratio> BeginDutyCycle =
        new("begin", Measures.Share, "duty cycle at which the primary set is held, and up to which the secondary set is idle") { Example = "70 %", Range = "10 to 100 %, within the limit of the duty cycle" };

    private static readonly QuantityField<Ratio> Share =
        new("share", Measures.Share, "share of the fuel that the secondary set carries at full hand-over") { Example = "45 %", Range = "0 to 95 %" };

    private static readonly QuantityField<Ratio> ShareAtBegin =
        new("share_at_begin", Measures.Share, "share just above the begin") { Example = "25 %", Optional = true, Range = "0 % to `share`", Default = "0 %" };

    private static readonly RecordForm<HandOver> ByBoost = new(
        "hand_over_by_boost",
        "a hand-over by boost",
        values => FuelSizing.Injectors.HandOver.ByBoost(values.Required(BeginBoost), values.Required(FullBoost), values.Required(Share), values.Optional(ShareAtBegin)))
    {
        { new KindField("boost"), _ => null },
        { BeginBoost, handOver => handOver.BeginBoost },
        { FullBoost, handOver => handOver.FullBoost },
        { Share, handOver => handOver.Share },
        { ShareAtBegin, handOver => handOver.ShareAtBegin },
    };

    private static readonly RecordForm<HandOver> ByDutyCycle = new(
        "hand_over_by_duty_cycle",
        "a hand-over by duty cycle",
        values => FuelSizing.Injectors.HandOver.ByDutyCycle(values.Required(BeginDutyCycle), values.Required(Share), values.Optional(ShareAtBegin)))
    {
        { new KindField("duty-cycle"), _ => null },
        { BeginDutyCycle, handOver => handOver.BeginDutyCycle },
        { Share, handOver => handOver.Share },
        { ShareAtBegin, handOver => handOver.ShareAtBegin },
    };

    private static readonly ChoiceForm<HandOver> OfHandOver = new(
        "hand_over",
        "the hand-over",
        Variant<HandOver>.Of(ByBoost, handOver => !handOver.IsByDutyCycle),
        Variant<HandOver>.Of(ByDutyCycle, handOver => handOver.IsByDutyCycle));

    private static readonly PartField<InjectorSet> Secondary = new("secondary", () => InjectorForm.Set, "the secondary set");

    private static readonly PartField<HandOver> HandOver = new("hand_over", () => OfHandOver, "when it takes part of the fuel, and how much");

    /// <summary>The set and its hand-over.</summary>
    public static RecordForm<StagedInjectors> Form { get; } = new(
        "staged_injectors",
        "staged injectors",
        values => StagedInjectors.Of(values.Required(Secondary), values.Required(HandOver)))
    {
        { HandOver, staged => staged.HandOver },
        { Secondary, staged => staged.Secondary },
    };
}
