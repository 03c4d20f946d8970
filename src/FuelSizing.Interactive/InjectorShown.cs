using FuelSizing.Equations;
using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How injectors are shown.</summary>
internal static class InjectorShown
{
    public static void Register()
    {
        Shown.By<Injector>(injector => new($"Injector: {injector.Name}", Of(injector)));
        Shown.By<InjectorSet>(set => new(
            $"Injectors: {PartText.Count(set.Count)} of {set.Injector.Name}",
            [
                new("Injectors", "", PartText.Count(set.Count)),
                new("Injections in a working cycle", "", PartText.Count(set.InjectionsPerCycle)),
                .. Of(set.Injector),
            ]));
        Shown.By<DeadTimeTable>(table => new("Dead time", [DeadTime(table)]));
        Shown.By<TestFluid>(fluid => new($"Test liquid: {fluid.Name}", [new("Density", "ρ_r", Readable.Of(fluid.Density))]));
    }

    private static Fact[] Of(Injector injector) =>
    [
        new("Rated flow", "Q_r", Readable.InjectorFlow(injector.StaticFlow), "of one injector, held open"),
        new("At a pressure across it", "Δp_r", Readable.Of(injector.RatedDifferential)),
        new("Density of the test liquid", "ρ_r", Readable.Of(injector.TestFluid.Density), injector.TestFluid.Name),
        new("Shortest linear pulse", "t_min", Readable.Of(injector.MinimumLinearPulse)),
        new("Opens against", "Δp_max", Readable.Of(injector.MaximumDifferential), "at the most"),
        DeadTime(injector.DeadTime),
    ];

    private static Fact DeadTime(DeadTimeTable table)
    {
        string range = $"table over {table.Coverage}{(table.IgnoresPressure ? ", taken to hold at every pressure" : "")}";
        return table.TryAt(ElectricPotential.FromVolts(13.5), Injector.DefaultRatedDifferential, out Duration time)
            ? new("Dead time", "t_d", Readable.Of(time), $"at {Readable.Of(ElectricPotential.FromVolts(13.5))} and {Readable.Of(Injector.DefaultRatedDifferential)}; {range}")
            : new("Dead time", "t_d", "", range);
    }
}
