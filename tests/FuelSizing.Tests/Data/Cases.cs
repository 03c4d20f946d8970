using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Injectors;
using FuelSizing.Pumps;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using FuelSizing.Tests.Files.Setups;
using FuelSizing.Tests.Systems;
using UnitsNet;

namespace FuelSizing.Tests.Data;

/// <summary>Results of every kind: those that hold and fail, that cannot be said, with every sort of part.</summary>
internal static class Cases
{
    /// <summary>A system whose every name is hostile to a file.</summary>
    public const string Hostile = "\"A\\\" </script> {0} 🛢️ 日本 ,;\u2028 ½\u00a0";

    public static IReadOnlyDictionary<string, Func<OperatingResult>> Results { get; } = new Dictionary<string, Func<OperatingResult>>
    {
        ["fails"] = () => Wren.System().Solve(Wren.At(6800, 0.6)),
        ["holds as far as judged"] = () => Wren.System(injector: 580, pump: 1.6).Solve(Wren.At(5000, 0.4)),
        ["throttle"] = () => Wren.System().Solve(Wren.At(900, -0.6)),
        ["pump starved"] = () => Wren.System(pump: 0.2).Solve(Wren.At(6800, 0.6)),
        ["pump not covered"] = () => Wren.System(Fixed.At(Wren.Kpa(900))).Solve(Wren.At(6800, 0.6)),
        ["dead time not covered"] = () => Wren.System(Fixed.At(Wren.Kpa(690))).Solve(Wren.At(3000, 0)),
        ["staged"] = () => Staged.Wren2().Solve(Wren.At(6800, 0.6)),
        ["staged, idle"] = () => Staged.Wren2().Solve(Wren.At(3000, 0)),
        ["hostile names"] = () => Named(Hostile).Solve(Wren.At(6800, 0.6)),
        ["surge tank, stream, switched pumps, all random"] = () => Random(4).First(),
    };

    /// <summary>The points of a random setup, solved.</summary>
    public static IEnumerable<OperatingResult> Random(int seed)
    {
        Setup setup = new SystemBuilder(seed, deepest: 1).Setup();
        return setup.Points.Select(named => setup.System.Solve(named.Point));
    }

    /// <summary>The hill-climb car with names of one's own.</summary>
    public static FuelSystem Named(string name) => FuelSystem.Return(
        FuelDemandModel.Of(
            Engine.Of(name, Volume.FromLiters(2.4), 4, EngineCycle.FourStroke, Wren.Rpm(7200)),
            Wren.Turbocharger, Wren.VolumetricEfficiency, Wren.Power, Wren.Percent(85), Wren.Petrol),
        InjectorSet.Of(
            Injector.Of(name, VolumeFlow.FromMillilitersPerMinute(360), Wren.Kpa(300), TestFluid.Heptane, Wren.DeadTime, Wren.Ms(1.6), Wren.Kpa(550)), 4),
        ManifoldReferenced.From(Wren.Kpa(300)),
        Pump.From(PumpCurve.At(name, Wren.Volt(13.5), (Wren.Kpa(0), VolumeFlow.FromLitersPerHour(215)), (Wren.Kpa(750), VolumeFlow.Zero))));

    public static SweepResult Sweep(int speeds, int boosts, FuelSystem? system = null) => (system ?? Wren.System()).Sweep(
        [.. Enumerable.Range(0, speeds).Select(at => Wren.Rpm(2000 + (at * 4800.0 / (speeds - 1))))],
        [.. Enumerable.Range(0, boosts).Select(at => Pressure.FromBars(at * 0.1))],
        Wren.Hill);

    public static LineSweepResult Pull() => Wren.System().Pull(
        HeldBoost.Of(Pressure.FromBars(0.6), Wren.Rpm(3000), Wren.Rpm(7200)), Wren.Rpm(3000), Wren.Rpm(7200), Wren.Hill);
}
