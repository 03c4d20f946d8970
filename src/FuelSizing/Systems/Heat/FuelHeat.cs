using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;

namespace FuelSizing.Systems;

/// <summary>Where the pumps' power and the heat of the rail go at one solved point: upper bounds, in SI numbers.</summary>
/// <remarks>
/// Every factor is taken at its highest over the states that the data of pumps and regulator leave open, so that heat and rises of temperature are upper bounds; where there is one state
/// they are exact.
/// </remarks>
internal readonly record struct FuelHeat
{
    /// <summary>Electrical power of the main pumps, W.</summary>
    public required double Pumps { get; init; }

    /// <summary>That of the lift pumps, W; 0 where there is no surge tank.</summary>
    public required double LiftPumps { get; init; }

    /// <summary>Heat that comes back to the main tank, W.</summary>
    public required double ToTank { get; init; }

    /// <summary>By how much fuel at the main pumps' inlet is warmer than in the main tank, K.</summary>
    public required double InletRise { get; init; }

    /// <summary>By how much fuel in the rail is warmer than at the main pumps' inlet, K.</summary>
    public required double RailRise { get; init; }

    /// <summary>The heat of a solved point, or why it is not known.</summary>
    /// <param name="result">The point, in one state of the pumps' switches.</param>
    /// <param name="tank">What is known of the tank.</param>
    /// <param name="gap">Why it is not known; none where it is.</param>
    public static FuelHeat Of(OperatingResult result, TankHeat tank, out Statement? gap)
    {
        double specificHeat = tank.HeatOf(result.Parts.Demand.Consumption.Fuel);
        SolvedLift? lift = result.SolvedCircuit.Lift;
        SolvedCircuit main = lift?.MainFull ?? result.SolvedCircuit;
        gap = double.IsNaN(specificHeat)
            ? Statement.Of("heat.no-specific-heat", $"the specific heat of {result.Parts.Demand.Consumption.Fuel.Name} is not known; give it by TankHeat.WithSpecificHeat")
            : lift is not null && (!lift.Joined.IsSurelyFull || lift.Full is null)
                ? Statement.Of("heat.surge-tank-not-full", $"the surge tank does not surely stay full, and what an emptying one holds of the heat is not modelled")
                : GapOf(main) ?? (lift?.Full is { } full ? GapOf(full) : null);
        return gap is null ? Known(result, tank, specificHeat, main, lift?.Full) : default;
    }

    private static FuelHeat Known(OperatingResult result, TankHeat tank, double specificHeat, in SolvedCircuit main, in SolvedCircuit? lift)
    {
        double density = result.SolvedDemand.Density;
        double pumps = Electrical(main);
        double pickup = (double)tank.RailPickup.Watts;

        // In a returnless system what returns does not pass the rail.
        bool passesRail = result.Parts.Layout == LineLayout.Return;
        double Highest(in SolvedCircuit circuit, Func<CircuitState, double> figure) => circuit.States.Max(figure);

        double back = Highest(main, state => PumpHeat.ToTankFromRail<Real>(pumps, passesRail ? pickup : 0, state.ReturnFlow, state.Flow).Value);

        // In the rail the fuel still holds its pressure: that part of the power is heat only behind the regulator.
        double railRise = Highest(
            main,
            state => LumpedHeat.FlowRise<Real>(pumps - ((state.RailGauge - state.InletGauge) * state.Flow) + (passesRail ? pickup : 0), density, state.Flow, specificHeat).Value
                + (passesRail ? 0 : LumpedHeat.FlowRise<Real>(pickup, density, state.Flow - state.ReturnFlow, specificHeat).Value));
        if (lift is not { } lifted)
        {
            return new() { Pumps = pumps, LiftPumps = 0, ToTank = back, InletRise = 0, RailRise = railRise };
        }

        double liftPumps = Electrical(lifted);
        bool returnsToSurge = result.Parts.SurgeTank!.ReturnsTo == ReturnDestination.SurgeTank;
        double brought = returnsToSurge ? back : 0;
        double inletRise = Highest(lifted, state => LumpedHeat.FlowRise<Real>(liftPumps + brought, density, state.Flow, specificHeat).Value);
        double overflow = Highest(lifted, state => PumpHeat.ToTankBySurgeTank<Real>(liftPumps, brought, state.ReturnFlow, state.Flow).Value);

        // What returns to the main tank was warmed by the lift pump too.
        double warmed = returnsToSurge ? 0 : back + Highest(main, state => density * specificHeat * state.ReturnFlow * inletRise);
        return new() { Pumps = pumps, LiftPumps = liftPumps, ToTank = overflow + warmed, InletRise = inletRise, RailRise = railRise };
    }

    private static Statement? GapOf(in SolvedCircuit circuit)
    {
        if (circuit.States.Any(state => state.State == RailState.NotCovered))
        {
            return Statement.Of("heat.not-covered", $"pump data does not cover the point");
        }

        if (circuit.States.Any(state => !(state.Flow > 0)))
        {
            return Statement.Of("heat.no-flow", $"nothing is pumped");
        }

        foreach (PumpPoint[] points in circuit.PumpStates)
        {
            foreach (PumpPoint point in points)
            {
                if (!point.IsStopped && (point.MaximumCurrent is null || point.Coverage.HasFlag(PumpCoverage.PressureAbove)))
                {
                    return Statement.Of("heat.no-current", $"the current of {point.Pump.Name} is not known there, so its heat is not");
                }
            }
        }

        return null;
    }

    private static double Electrical(in SolvedCircuit circuit) => circuit.PumpStates.Max(Electrical);

    private static double Electrical(PumpPoint[] points) =>
        points.Sum(point => point.IsStopped ? 0 : PumpHeat.Electrical<Real>(point.Voltage, point.MaximumCurrent!.Value).Value);
}
