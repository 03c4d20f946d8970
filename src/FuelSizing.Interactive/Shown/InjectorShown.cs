using FuelSizing.Injectors;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How injectors are shown.</summary>
internal static class InjectorShown
{
    public static void Register()
    {
        Shown.By<Injector>((injector, style) => new($"Injector: {injector.Name}", Of(injector, style)));
        Shown.By<InjectorSet>((set, style) => new(
            $"Injectors: {style.Count(set.Count)} of {set.Injector.Name}",
            [
                new("Injectors", "N", style.Count(set.Count)),
                new("Injections in a working cycle", "i", style.Count(set.InjectionsPerCycle)),
                .. Of(set.Injector, style),
            ]));
        Shown.By<HandOver>((handOver, style) => new("Hand-over to the secondary set", Of(handOver, style)));
        Shown.By<StagedInjectors>((staged, style) => new(
            $"Secondary injectors: {style.Count(staged.Secondary.Count)} of {staged.Secondary.Injector.Name}",
            [
                .. Of(staged.HandOver, style),
                new("Injectors", "N", style.Count(staged.Secondary.Count)),
                new("Injections in a working cycle", "i", style.Count(staged.Secondary.InjectionsPerCycle)),
                .. Of(staged.Secondary.Injector, style),
            ]));
        Shown.By<SecondaryInjection>((secondary, style) => new(
            "Secondary set",
            [
                new("Share of the fuel", "x_s", CircuitText.Known(secondary.Share, style.Of), secondary.IsIdle ? "idle below the hand-over" : ""),
                new("Fuel", "Q_f2", CircuitText.Known(secondary.Flow, style.PumpFlow)),
                new("Static flow", "Q_s", CircuitText.Known(secondary.StaticFlow, style.InjectorFlow), "of one injector, held open"),
                new("Time for a pulse", "t_c", style.Of(secondary.AvailableTime)),
                new("Dead time", "t_d", CircuitText.Known(secondary.DeadTime, style.Of)),
                new("Pulse", "t", CircuitText.Known(secondary.Pulse, style.Of)),
                new("Duty cycle", "D", CircuitText.Known(secondary.DutyCycle, style.DutyCycle)),
            ]));
        Shown.By<DeadTimeTable>((table, style) => new("Dead time", [DeadTime(table, style)]));
        Shown.By<TestFluid>((fluid, style) => new($"Test liquid: {fluid.Name}", [new("Density", "ρ_r", style.Of(fluid.Density))]));
    }

    private static Fact[] Of(HandOver handOver, TextStyle style) =>
    [
        handOver is { BeginBoost: { } begin }
            ? new("Begins at", "p_hb", style.Boost(begin), "boost; the secondary set is idle up to it")
            : new("Begins at", "D_h", style.DutyCycle(handOver.BeginDutyCycle!.Value), "duty cycle of the primary set, which is held there; the secondary set is idle up to it"),
        .. handOver.FullBoost is { } full ? new Fact[] { new("Full at", "p_hf", style.Boost(full), "boost") } : [],
        new("Share just above the begin", "x_b", style.Of(handOver.ShareAtBegin), "of the fuel"),
        new("Share at full hand-over", "x_f", style.Of(handOver.Share), handOver.IsByDutyCycle ? "of the fuel, maximum" : "of the fuel"),
    ];

    private static Fact[] Of(Injector injector, TextStyle style) =>
    [
        new("Rated flow", "Q_r", style.InjectorFlow(injector.StaticFlow), "of one injector, held open"),
        new("At a pressure across it", "Δp_r", style.Of(injector.RatedDifferential)),
        new("Density of the test liquid", "ρ_r", style.Of(injector.TestFluid.Density), injector.TestFluid.Name),
        new("Shortest linear pulse", "t_min", style.Of(injector.MinimumLinearPulse), $"at {style.Of(injector.MinimumPulseVoltage)}: open for {style.Of(injector.MinimumOpenTime)}"),
        new("Opens against", "Δp_max", style.Of(injector.MaximumDifferential), "maximum"),
        new("Flow known from", "Δp_min", style.Of(injector.MinimumDifferential), injector.IsMinimumDifferentialStated ? "minimum" : "minimum; a third of the rated pressure, common practice, no source"),
        .. injector.MeasuredFlows.Where(point => !point.Differential.Equals(injector.RatedDifferential, Pressure.FromPascals(1e-3))).Select(point => new Fact(
            "Flow measured", "Q_m", style.InjectorFlow(point.Flow), $"at {style.Of(point.Differential)} across it")),
        DeadTime(injector.DeadTime, style),
    ];

    private static Fact DeadTime(DeadTimeTable table, TextStyle style)
    {
        string range = $"table over {table.Coverage.In(style)}{(table.IgnoresPressure ? ", taken to hold at every pressure" : "")}";
        return table.TryAt(ElectricPotential.FromVolts(13.5), Injector.DefaultRatedDifferential, out Duration time)
            ? new("Dead time", "t_d", style.Of(time), $"at {style.Of(ElectricPotential.FromVolts(13.5))} and {style.Of(Injector.DefaultRatedDifferential)}; {range}")
            : new("Dead time", "t_d", "", range);
    }
}
