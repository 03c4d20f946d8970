using FuelSizing.Injectors;
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
        Shown.By<DeadTimeTable>((table, style) => new("Dead time", [DeadTime(table, style)]));
        Shown.By<TestFluid>((fluid, style) => new($"Test liquid: {fluid.Name}", [new("Density", "ρ_r", style.Of(fluid.Density))]));
    }

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
