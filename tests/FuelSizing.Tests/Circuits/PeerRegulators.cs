using FuelSizing.Circuits;
using FuelSizing.Regulators;
using UnitsNet;

namespace FuelSizing.Tests.Circuits;

/// <summary>
/// Random circuits, the same ones on each run, whose regulators hold a pressure that changes with what returns through them and with the pressure at their outlet,
/// alone and two in series: an independent program solves them too (tests/peer).
/// </summary>
internal static class PeerRegulators
{
    /// <summary>So many circuits.</summary>
    /// <param name="count">The first ones are the same whatever the count.</param>
    public static IReadOnlyList<(string Name, CircuitTask Task)> Of(int count) =>
        [.. PeerMotors.Of(count).Select((circuit, at) => (FormattableString.Invariant($"regulators {at + 1}"), With(circuit.Task, new Random(at + 1))))];

    private static CircuitTask With(in CircuitTask task, Random random)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        double boost = Any(-4e4, 1e5);
        PressureRegulator one = random.Next(3) switch
        {
            0 => Fixed.At(Pressure.FromPascals(Any(2e5, 5e5))).WithFlow(FlowOf(random)),
            1 => ManifoldReferenced.From(Pressure.FromPascals(Any(2e5, 4.5e5))).WithFlow(FlowOf(random)),
            _ => Rising(random, Any(1.5e5, 3.5e5)),
        };
        PressureRegulator regulator = random.Next(4) == 0 ? RegulatorSeries.Of(one, Rising(random, Any(0, 2e5))) : one;

        // Little enough that no rail starves: there no regulator acts, and the peer takes a pascal or more for no pressure.
        return task with { Set = regulator.SetPascals(boost), Held = regulator.HeldAt(boost), Injected = task.Injected * 0.55 };
    }

    private static RisingRate Rising(Random random, double at) =>
        RisingRate.From(Pressure.FromPascals(at), 1 + (3 * random.NextDouble()), Wren.Kpa(10)).WithFlow(FlowOf(random));

    private static RegulatorFlow FlowOf(Random random)
    {
        double Any(double least, double most) => least + ((most - least) * random.NextDouble());
        RegulatorFlow flow = random.Next(2) == 0
            ? RegulatorFlow.Rising(Wren.Kpa(Any(1, 60)), VolumeFlow.FromLitersPerHour(Any(60, 150)), VolumeFlow.FromLitersPerHour(Any(0, 120)))
            : Measured(random);
        return random.Next(2) == 0 ? flow : flow.WithOutletShare(Any(-0.12, 1));
    }

    // From no flow to more than any of the pumps give, so that no end of it leaves anything open.
    private static RegulatorFlow Measured(Random random)
    {
        (VolumeFlow, Pressure)[] points = new (VolumeFlow, Pressure)[6];
        (double flow, double held) = (0, 180);
        for (int at = 0; at < points.Length; at++)
        {
            points[at] = (VolumeFlow.FromLitersPerHour(at == points.Length - 1 ? 1000 : flow), Wren.Kpa(held));
            flow += 20 + (70 * random.NextDouble());
            held += 1 + (25 * random.NextDouble());
        }

        return RegulatorFlow.Measured(VolumeFlow.FromLitersPerHour(10 + (50 * random.NextDouble())), points);
    }
}
