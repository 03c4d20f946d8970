using FuelSizing.Circuits;
using FuelSizing.Electrical;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Random circuits, the same ones on each run, whose motors run through converters, resistors and pulsed supplies: an independent program solves them
/// too (tests/peer). No converter is at its limit, where more than one voltage may satisfy every equation.
/// </summary>
internal static class PeerMotors
{
    private const double Boost = 20e3;

    /// <summary>So many circuits.</summary>
    /// <param name="count">The first ones are the same whatever the count.</param>
    public static IReadOnlyList<(string Name, CircuitTask Task)> Of(int count) =>
        [.. Enumerable.Range(1, count).Select(seed => (FormattableString.Invariant($"motors {seed}"), TaskOf(new Random(seed))))];

    private static CircuitTask TaskOf(Random random)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        double supply = Any(11.5, 14.5);
        PumpAssembly pump;
        do
        {
            pump = Assembly(random, 2).At(Boost, falling: false);
        }
        while (pump.Running(supply).FreeFlow == 0);

        double injected = Any(0.03, 0.9) * pump.Running(supply).FreeFlow;
        return PeerCircuits.Task(
            random.Next(2) == 0 ? LineLayout.Return : LineLayout.Returnless,
            pump,
            PeerCircuits.Paths[random.Next(PeerCircuits.Paths.Count)],
            supply,
            Any(2e5, 5.5e5),
            injected,
            random.Next(4));
    }

    private static PumpAssembly Assembly(Random random, int depth) => random.Next(depth > 0 ? 5 : 3) switch
    {
        4 => PumpParallel.Of(Assembly(random, depth - 1), Assembly(random, depth - 1)),
        3 => PumpSeries.Of(SeriesBypass.CheckValve, Assembly(random, depth - 1), Assembly(random, depth - 1)),
        _ => OneOf(random),
    };

    private static PumpAssembly OneOf(Random random)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        double[] volts = random.Next(2) == 0 ? [9, 11.5, 13.5] : [8.5, 10, 12, 14, 16];
        Pump pump = PeerCircuits.Wired(Any(1, 6), random.Next(10, 16), volts, Any(0.6, 1.4), Any(0.7, 1.2));
        ElectricCurrent? limit = random.Next(3) == 0 ? ElectricCurrent.FromAmperes(Any(20, 40)) : null;
        return random.Next(6) switch
        {
            0 => pump.WithConverter(VoltageConverter.Holding("peer converter", Wren.Volt(Any(12, 17)), Wren.Percent(Any(75, 98)), limit)),
            1 => pump.WithConverter(VoltageConverter.Times("peer converter", Any(0.8, 1.25), Wren.Percent(Any(75, 98)), limit)),
            2 => SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), pump, PumpLowSpeed.Through(ElectricResistance.FromOhms(Any(0.02, 0.25)))),
            3 => SwitchedPump.Above(Wren.Kpa(40), Wren.Kpa(30), pump, PumpLowSpeed.At(Wren.Percent(Any(75, 100)))),
            4 => SwitchedPump.Above(Wren.Kpa(10), Wren.Kpa(5), pump),
            _ => pump,
        };
    }
}
