using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Regulators;

namespace FuelSizing.Circuits;

/// <summary>Finds what a lift circuit brings into a surge tank, and the pressure that its overflow line makes there.</summary>
/// <remarks>
/// A circuit without regulator: suction line, pumps, lift line, and a tank whose pressure is that of the air over it while it is not full, and that
/// of the overflow line while it is.
/// </remarks>
internal static class LiftCircuit
{
    private const double Beside = 1e-9;

    /// <summary>The lift circuit of a tank as a circuit to be solved: what is drawn from the tank stands for what is injected.</summary>
    /// <param name="tank">The tank.</param>
    /// <param name="main">The circuit that draws from it.</param>
    /// <param name="drawn">Net draw, m³/s.</param>
    /// <param name="gauge">Least pressure in the tank, gauge, Pa.</param>
    public static CircuitTask Of(SurgeTank tank, in CircuitTask main, double drawn, double gauge) => new(
        LineLayout.Return, tank.LiftPump, tank.Plumbing, main.Supply, null, gauge, 0, drawn, main.Density, main.KinematicViscosity);

    /// <summary>Least pressure in a full tank: the column of fuel in an overflow line that rises, gauge, Pa. One that falls is taken to be vented at its top.</summary>
    public static double FloorOf(in CircuitTask lift) => Math.Max(0, lift.ReturnLossAt(0));

    /// <summary>The circuit while the tank is not full: all that is lifted stays in it, or is drawn.</summary>
    /// <param name="lift">The circuit, with its pressure in the tank.</param>
    /// <param name="pumps">The pumps at their supply, by one reading.</param>
    public static CircuitState Filling(in CircuitTask lift, RunningPumps pumps) => Filling(lift, pumps, AtSet(lift, pumps));

    /// <summary>Where the pumps meet the circuit with its pressure in the tank, whatever is drawn.</summary>
    /// <param name="lift">The circuit.</param>
    /// <param name="pumps">The pumps at their supply, by one reading.</param>
    public static Intersection AtSet(in CircuitTask lift, RunningPumps pumps) =>
        lift.HasPathToRegulator && PumpIntersection.TryTangents(lift, pumps, held: null, lift.Set, out Intersection met) ? met : PumpIntersection.AtSet(lift, pumps);

    /// <summary>The same where it is known what the pumps bring into the tank.</summary>
    public static CircuitState Filling(in CircuitTask lift, RunningPumps pumps, in Intersection atSet) => StateOf(lift, pumps, atSet, lift.Set, 0);

    /// <summary>The circuit while the tank is full and what is lifted but not drawn overflows; none where no more is lifted than drawn.</summary>
    /// <param name="lift">The circuit, with its least pressure in the tank.</param>
    /// <param name="pumps">The pumps at their supply, by one reading.</param>
    /// <param name="atSet">Where they meet it with that pressure, whatever is drawn.</param>
    public static CircuitState? Full(in CircuitTask lift, RunningPumps pumps, in Intersection atSet)
    {
        TangentSearch search = new(stackalloc double[RunningPumps.MaximumGuesses]);
        return Full(lift, pumps, atSet, ref search);
    }

    /// <summary>The same from where it was solved with another draw.</summary>
    /// <param name="lift">The circuit, with its least pressure in the tank.</param>
    /// <param name="pumps">The pumps at their supply, by one reading.</param>
    /// <param name="atSet">Where they meet it with that pressure, whatever is drawn.</param>
    /// <param name="search">That goes on from there.</param>
    public static CircuitState? Full(in CircuitTask lift, RunningPumps pumps, in Intersection atSet, ref TangentSearch search)
    {
        Intersection met = atSet;
        if (!(met.Flow > lift.Injected))
        {
            return null;
        }

        double pressure = lift.ReturnPressureAt(met.Flow);
        if (pressure > lift.Set)
        {
            double guess = lift.RiseToPass(met.Flow);
            if (!search.TryFind(lift, pumps, RegulatorReading.Estimate, guess, out Intersection higher)
                && !PumpIntersection.TryFind(lift, pumps, RegulatorReading.Estimate, guess, out higher))
            {
                double flow = pumps.FreeFlow
                    * Bracket.Of(new RiseExcess(lift, pumps, asSet: false), lift.Injected / pumps.FreeFlow, met.Flow / pumps.FreeFlow);
                higher = new(flow, lift.LossesAt(flow));
            }

            met = higher;
            pressure = Math.Max(lift.Set, lift.ReturnPressureAt(met.Flow));
        }

        return StateOf(lift, pumps, met, Math.Max(lift.Set, pressure), PumpDuty.Returned<Real>(met.Flow, lift.Injected));
    }

    private static CircuitState StateOf(
        in CircuitTask lift, RunningPumps pumps, in Intersection met, double inTank, double overflow)
    {
        CircuitState state = new()
        {
            State = RailState.Regulated,
            RailGauge = inTank,
            InletGauge = CircuitPressure.Inlet<Real>(met.Losses.Suction),
            OutletGauge = CircuitPressure.Outlet<Real>(inTank, met.Losses.Supply),
            ReturnGauge = inTank,
            Flow = met.Flow,
            ReturnFlow = overflow,
            FedVoltage = lift.Supply,
            Running = pumps,
            MinimumAtSet = met.Flow,
            MaximumAtSet = met.Flow,
            IsByTangents = met.IsByTangents,
        };

        // Lines that fall may ask for less than nothing of the pumps, where no curve says what they pass: their free flow at the least.
        bool isPushed = met.Flow >= pumps.FreeFlow * (1 - Beside) && pumps.FreeFlow > 0 && lift.LossesAt(pumps.FreeFlow).Total + inTank < 0;
        return state.Uncovered(ends: false) == PumpCoverage.Measured && !isPushed ? state : state with { State = RailState.NotCovered };
    }
}
