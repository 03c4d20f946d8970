using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Regulators;

namespace FuelSizing.Systems;

/// <summary>The checks of pumps, lines, inlet, wiring and pressure ratings at one solved point.</summary>
internal static class CircuitChecks
{
    /// <summary>Adds one check for each part of the circuit that has a limit.</summary>
    /// <param name="checks">To add to.</param>
    /// <param name="system">The parts and their limits.</param>
    /// <param name="demand">What the engine asks for.</param>
    /// <param name="circuit">The solved circuit.</param>
    public static void Add(ICollection<Check> checks, FuelSystem system, in PointDemand demand, in SolvedCircuit circuit)
    {
        checks.Add(Pump(circuit));

        // What the pumps' data does not cover says nothing of the parts around them either.
        bool known = circuit.State.State != RailState.NotCovered;
        if (system.Plumbing.Back.Count > 0)
        {
            checks.Add(known ? ReturnLine(circuit) : Check.CannotSay(Part.ReturnLine));
        }

        if (system.Regulator is ElectronicReturnless)
        {
            checks.Add(known ? Control(circuit) : Check.CannotSay(Part.PumpControl));
        }

        if (system.Plumbing.Suction.Count > 0)
        {
            checks.Add(known ? Inlet(system, demand, circuit) : Check.CannotSay(Part.Suction));
        }

        if (system.Plumbing.HasFilter)
        {
            checks.Add(known ? Filters(circuit) : Check.CannotSay(Part.Filter));
        }

        if (system.Pump.Pumps.Any(pump => pump.Feed is not null))
        {
            checks.Add(known ? Feed(system, circuit) : Check.CannotSay(Part.Feed));
        }

        if (system.Limits.RailCeiling is { } ceiling)
        {
            checks.Add(Check.Of(Part.PressureRating, OverPressure(Math.Max(circuit.RailSet, circuit.Rail), ceiling.Pascals)));
        }
    }

    /// <summary>Reserve of a part that bears at most a pressure; null where there is none on it, which cannot pass a limit.</summary>
    /// <param name="used">Pa.</param>
    /// <param name="maximum">Pa.</param>
    public static double? OverPressure(double used, double maximum) => used > 0 ? Reserve.Of<Real>(maximum, used) : null;

    /// <summary>Absolute pressure at the pumps' inlet, Pa.</summary>
    public static double InletAbsolute(in PointDemand demand, in SolvedCircuit circuit) =>
        circuit.State.InletGauge + (Real)demand.Point.Conditions.Atmosphere.Pascals;

    /// <summary>Absolute pressure wanted there, Pa: the fuel's vapour pressure and the margin over it.</summary>
    public static double InletNeeded(FuelSystem system, in PointDemand demand) =>
        system.Demand.Consumption.Fuel.VapourPressureAtKelvins(demand.Point.Conditions.FuelKelvins)
        + (Real)system.Limits.SuctionMargin.Pascals;

    /// <summary>The filter nearest to the end of its data, and the flow through it, m³/s.</summary>
    public static (Filter Filter, double Flow) BusiestFilter(in SolvedCircuit circuit)
    {
        (Filter Filter, double Flow)[] filters =
        [
            .. from way in circuit.Task.Flows(circuit.State)
               where way.Part is Filter
               select ((Filter)way.Part, way.Flow),
        ];
        return filters.MaxBy(pair => pair.Flow / pair.Filter.MaximumFlow.CubicMetersPerSecond);
    }

    /// <summary>The wired pump that gets the least voltage.</summary>
    public static PumpPoint MinimumFed(in SolvedCircuit circuit) =>
        circuit.State.Pumps.Where(pump => pump.Pump.Feed is not null).MinBy(pump => pump.Voltage);

    /// <summary>Why the pumps' curves say nothing of the point, if that is so: the pump, and on which side it lies.</summary>
    public static PumpPoint? Uncovered(in SolvedCircuit circuit)
    {
        foreach (PumpPoint point in circuit.State.Pumps)
        {
            if ((point.Coverage & (PumpCoverage.VoltageBelow | PumpCoverage.PressureBelow)) != 0)
            {
                return point;
            }
        }

        return null;
    }

    private static Check Pump(in SolvedCircuit circuit)
    {
        if (Uncovered(circuit) is not null)
        {
            return Check.CannotSay(Part.Pump);
        }

        if (circuit.Task.Injected <= 0)
        {
            return new(Part.Pump, Outcome.Holds, null);
        }

        double lower = Reserve.Of<Real>(circuit.MinimumInjectable, circuit.Task.Injected);
        double upper = Reserve.Of<Real>(circuit.MaximumInjectable, circuit.Task.Injected);
        return lower >= 0 ? new(Part.Pump, Outcome.Holds, lower)
            : upper >= 0 ? Check.CannotSay(Part.Pump)
            : new(Part.Pump, Outcome.Fails, upper);
    }

    private static Check ReturnLine(in SolvedCircuit circuit) =>
        Check.Of(Part.ReturnLine, OverPressure(circuit.State.ReturnGauge, circuit.RailSet));

    private static Check Inlet(FuelSystem system, in PointDemand demand, in SolvedCircuit circuit) =>
        Check.Of(Part.Suction, Reserve.Of<Real>(InletAbsolute(demand, circuit), InletNeeded(system, demand)));

    private static Check Control(in SolvedCircuit circuit) =>
        circuit.State.State == RailState.PumpFloor
            ? new(
                Part.PumpControl,
                Outcome.Fails,
                Math.Min(0, Reserve.Of<Real>(circuit.RailSet, Math.Max(circuit.Rail, circuit.RailSet))))
            : new(Part.PumpControl, Outcome.Holds, null);

    private static Check Filters(in SolvedCircuit circuit)
    {
        (Filter worst, double flow) = BusiestFilter(circuit);
        double? reserve = flow > 0 ? Reserve.Of<Real>(worst.MaximumFlow.CubicMetersPerSecond, flow) : null;
        return reserve is null or >= 0 ? new(Part.Filter, Outcome.Holds, reserve) : Check.CannotSay(Part.Filter);
    }

    private static Check Feed(FuelSystem system, in SolvedCircuit circuit)
    {
        double drop = circuit.State.FedVoltage - MinimumFed(circuit).Voltage;
        return Check.Of(Part.Feed, drop > 0 ? Reserve.Of<Real>(MaximumDrop(system, circuit), drop) : null);
    }

    /// <summary>The most voltage that a feed may lose, V.</summary>
    public static double MaximumDrop(FuelSystem system, in SolvedCircuit circuit) =>
        circuit.Task.Supply * (Real)system.Limits.FeedDrop.DecimalFractions;
}
