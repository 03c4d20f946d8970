using FuelSizing.Circuits;
using FuelSizing.Pumps;
using MathNet.Numerics.RootFinding;

namespace FuelSizing.Tests.Circuits;

/// <summary>The solver's short cuts end where a plain search over the flow ends.</summary>
public class PlainSearchTests
{
    /// <summary>Of the pumps' free flow.</summary>
    private const double Tolerance = 1e-10;

    [Fact]
    public void Solve_OfThePeersCircuits_EndsWhereAPlainSearchEnds()
    {
        foreach ((string name, CircuitTask task) in PeerCircuits.All)
        {
            Assert.True(Agrees(task), name);
        }
    }

    [Fact]
    public void Solve_OfAnyCircuit_EndsWhereAPlainSearchEnds() =>
        CircuitTests.Any.Sample(task => Assert.True(Agrees(task)), iter: 1_000);

    private static bool Agrees(in CircuitTask task)
    {
        CircuitBounds bounds = CircuitSolver.SolveBounds(task);
        PumpBounds pumps = task.Pump.Bounds(task.Supply);
        return Agrees(task, bounds.Lower, pumps.Lower)
            && Agrees(task, bounds.Upper, pumps.Upper)
            && Agrees(task, bounds.Estimate with { MinimumAtSet = AtSet(task, pumps.Estimate) }, pumps.Estimate);
    }

    private static double AtSet(in CircuitTask task, RunningPumps pumps) =>
        pumps.FreeFlow <= 0 ? 0 : Plain(task, pumps, (in CircuitTask given, double flow) => given.RiseToDeliver(flow));

    private static bool Agrees(in CircuitTask task, in CircuitState state, RunningPumps pumps)
    {
        if (pumps.FreeFlow <= 0)
        {
            return state.MinimumAtSet == 0;
        }

        bool close = Math.Abs(AtSet(task, pumps) - state.MinimumAtSet) <= Tolerance * pumps.FreeFlow;
        if (state.State is RailState.Regulated or RailState.AtRegulatorLimit or RailState.ReturnFloor && task.MinimumSupply is null)
        {
            double flow = Plain(task, pumps, (in CircuitTask given, double flow) => given.RiseToPass(flow));
            close &= Math.Abs(flow - state.PumpFlow!.Value) <= Tolerance * pumps.FreeFlow;
        }

        return close;
    }

    private delegate double Asking(in CircuitTask task, double flow);

    /// <summary>Brent's method over the flow from nothing to the free flow, and within it over the rise.</summary>
    private static double Plain(CircuitTask task, RunningPumps pumps, Asking asked)
    {
        double Rise(double flow) =>
            flow >= pumps.FreeFlow ? 0 : pumps.Deadhead * Root(share => (pumps.FlowAt(share * pumps.Deadhead) - flow) / pumps.FreeFlow);
        bool inSeries = task.Pump is PumpSeries;
        return pumps.FreeFlow * Root(share =>
        {
            double flow = share * pumps.FreeFlow;
            return ((inSeries ? pumps.RiseAt(flow) : Rise(flow)) - asked(task, flow)) / task.Set;
        });
    }

    private static double Root(Func<double, double> falling)
    {
        if (falling(0) <= 0)
        {
            return 0;
        }

        if (falling(1) >= 0)
        {
            return 1;
        }

        if (Brent.TryFindRoot(falling, 0, 1, 1e-14, 200, out double root))
        {
            return root;
        }

        (double from, double to) = (0, 1);
        for (int step = 0; step < 100; step++)
        {
            double middle = (from + to) / 2;
            (from, to) = falling(middle) > 0 ? (middle, to) : (from, middle);
        }

        return from;
    }
}
