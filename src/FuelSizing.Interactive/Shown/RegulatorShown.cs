using FuelSizing.Quantities;
using FuelSizing.Regulators;

namespace FuelSizing.Interactive;

/// <summary>How regulators are shown.</summary>
internal static class RegulatorShown
{
    public static void Register()
    {
        Shown.By<Fixed>((regulator, style) => Of(regulator, style, new Fact("Set pressure", "p_s", style.Of(regulator.Gauge), "gauge, whatever the boost")));
        Shown.By<ManifoldReferenced>((regulator, style) => Of(regulator, style, Base(regulator.Base, style)));
        Shown.By<RisingRate>((regulator, style) => Of(regulator, style, Rising(regulator, style)));
        Shown.By<RegulatorSeries>((regulator, style) => Of(
            regulator,
            style,
            [
                Fact.Words("Base regulator", PartText.Say(regulator.BaseRegulator, style)),
                .. Rising(regulator.Unit, style),
                .. regulator.Unit.Flow is { } flow ? Flowing(flow, style) : [],
            ]));
        Shown.By<ElectronicReturnless>((regulator, style) => Of(
            regulator,
            style,
            regulator.FollowsManifold ? Base(regulator.Base, style) : new("Set pressure", "p_s", style.Of(regulator.Base), "gauge, whatever the boost"),
            new("Pump's lowest voltage", "V_min", style.Of(regulator.MinimumVoltage), "slower it cannot run")));
        Shown.By<CustomRegulator>((regulator, style) => Of(
            regulator,
            style,
            Fact.Words("Setting", "by a law of your own"),
            new("Set pressure", "p_law", style.Of(regulator.RailGauge(UnitsNet.Pressure.Zero)), "gauge, at no boost")));
        Shown.Listed<PressureRegulator>((regulator, style) => Of(regulator, style));
        Shown.By<RegulatorFlow>((flow, style) => new("Regulator, by returned flow", [Fact.Words("Kind", flow.In(style)), .. Flowing(flow, style)]));
        Shown.By<RegulatorPoint>(Of);
    }

    private static Facts Of(PressureRegulator regulator, TextStyle style, params Fact[] own) => new(
        "Pressure regulator",
        [
            Fact.Words("Kind", PartText.Say(regulator, style)),
            .. own,
            .. regulator is ElectronicReturnless
                ? (Fact[])[]
                : [new("Least flow through it", "Q_min", style.PumpFlow(regulator.MinimumReturnFlow), "below this it does not hold its pressure")],
            .. regulator.Flow is { } flow ? Flowing(flow, style) : [],
        ]);

    private static Facts Of(RegulatorPoint point, TextStyle style) => new(
        "Measured point of a regulator",
        [
            new("Returned flow", "Q_ret", style.PumpFlow(point.Returned)),
            new("Pressure held", "p_held", style.Of(point.Gauge), "gauge, at no boost"),
        ]);

    private static Fact[] Flowing(RegulatorFlow flow, TextStyle style) =>
    [
        .. flow.Points.Count > 0
            ? (Fact[])[Fact.Words("Pressure over returned flow", string.Join(", ", flow.Points.Select(point => $"{style.PumpFlow(point.Returned)}: {style.Of(point.Gauge)}")))]
            : [new("Rise with returned flow", "Δp_flow", style.PressureChange(flow.Rise), $"over {style.PumpFlow(flow.Over)} more returned")],
        new("Returned flow at its setting", "Q_set", style.PumpFlow(flow.StatedAt), "at which the setting was found"),
        Fact.Words("Hysteresis", $"{style.PressureChange(flow.Hysteresis)}, counted to either side of the setting"),
        new("Share of the outlet's pressure", "σ_ret", style.Number(flow.OutletShare), "of the return line's pressure that adds to the rail's"),
    ];

    private static Fact Base(UnitsNet.Pressure pressure, TextStyle style) => new("Base pressure", "p_base", style.Of(pressure), "gauge, at no boost");

    private static Fact[] Rising(RisingRate unit, TextStyle style) =>
    [
        Base(unit.Base, style),
        new("Gain", "G", style.Number(unit.Gain), "rise of the rail for each 1 of boost above the onset"),
        new("Onset", "p_on", style.Boost(unit.Onset), "boost"),
        .. unit.Ceiling is { } ceiling ? (Fact[])[new("Ceiling", "p_max", style.Of(ceiling), "gauge")] : [],
    ];
}
