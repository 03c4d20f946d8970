using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Pressure;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

using Pressure = UnitsNet.Pressure;

/// <summary>The checks of pumps, lines, inlet and wiring at one solved point.</summary>
internal static class CircuitChecks
{
    /// <summary>One margin for each part of the circuit that has a limit.</summary>
    public static IEnumerable<Margin> Of(FuelSystem system, OperatingPoint point, SolvedPoint solved)
    {
        yield return Pump(system, solved);
        (Part Part, Func<Margin> Check)[] checks =
        [
            .. system.Plumbing.Back.Count > 0 ? [(Part.WayBack, () => WayBack(solved))] : None,
            .. system.Regulator is ElectronicReturnless ? [(Part.PumpControl, () => Control(solved))] : None,
            .. system.Plumbing.Suction.Count > 0 ? [(Part.Suction, () => Inlet(system, point, solved))] : None,
            .. system.Plumbing.HasFilter ? [(Part.Filter, () => Filters(solved))] : None,
            .. system.Pump.Pumps.Any(pump => pump.Feed is not null)
                ? [(Part.Feed, () => Feed(system, point, solved))]
                : None,
        ];
        foreach ((Part part, Func<Margin> check) in checks)
        {
            yield return solved.Circuit.State == RailState.NotCovered
                ? new(part, Outcome.CannotSay, null, null, null, "the pump's data does not cover the point")
                : check();
        }
    }

    private static (Part Part, Func<Margin> Check)[] None => [];

    private static Margin Pump(FuelSystem system, in SolvedPoint solved)
    {
        VolumeFlow injected = Flow(solved.Injected);
        if (Lacking(solved) is { } lacking)
        {
            return new(Part.Pump, Outcome.CannotSay, null, injected, null, lacking);
        }

        Pressure set = Pressure.FromPascals(solved.RailSet);
        double surely = Reserve.Of<Real>(solved.LeastInjectable, solved.Injected);
        double perhaps = Reserve.Of<Real>(solved.MostInjectable, solved.Injected);
        bool exact = solved.MostInjectable <= solved.LeastInjectable * (1 + 1e-9);
        string wanted = $"{Readable.PumpFlow(Flow(solved.Wanted))} wanted";
        if (surely >= 0)
        {
            string least = exact ? string.Empty : "at least ";
            return new(
                Part.Pump,
                Outcome.Holds,
                surely,
                injected,
                Flow(solved.LeastInjectable),
                $"delivers {least}{Readable.PumpFlow(Flow(solved.Circuit.LeastAtSet))} at {Readable.Of(set)} in the rail, {wanted}");
        }

        if (perhaps >= 0)
        {
            return new(Part.Pump, Outcome.CannotSay, null, injected, null, CurveEnds(solved, set));
        }

        string most = exact ? string.Empty : "at most ";
        return new(
            Part.Pump,
            Outcome.Fails,
            perhaps,
            injected,
            Flow(solved.MostInjectable),
            $"delivers {most}{Readable.PumpFlow(Flow(solved.Circuit.MostAtSet))} at {Readable.Of(set)} in the rail, {wanted}{Consequence(system, solved)}");
    }

    private static string Consequence(FuelSystem system, in SolvedPoint solved)
    {
        string cause = solved.Circuit.MostAtSet <= 0 ? $": {system.Pump.Name} deadheads below the pressure set" : string.Empty;
        return solved.Circuit.State switch
        {
            RailState.Sagging =>
                $"{cause}: the regulator shuts and the rail sags to {Readable.Of(Pressure.FromPascals(solved.Rail))}",
            RailState.Starved => ": it cannot bring the demand to the rail even against no pressure",
            _ => cause,
        };
    }

    private static Margin WayBack(in SolvedPoint solved)
    {
        Pressure set = Pressure.FromPascals(solved.RailSet);
        double returned = solved.Circuit.Returned ?? 0;
        Pressure back = Pressure.FromPascals(solved.Circuit.BackGauge);
        double? reserve = back > Pressure.Zero ? Reserve.Of<Real>(set.Pascals, back.Pascals) : null;
        return Margin.Of(
            Part.WayBack,
            reserve,
            back,
            set,
            $"passes {Readable.PumpFlow(Flow(returned))} at {Readable.Of(back)}, under the {Readable.Of(set)} set",
            $"passes {Readable.PumpFlow(Flow(returned))} only at {Readable.Of(back)}: the rail cannot fall to the {Readable.Of(set)} set");
    }

    private static Margin Control(in SolvedPoint solved)
    {
        Pressure set = Pressure.FromPascals(solved.RailSet);
        Pressure rail = Pressure.FromPascals(solved.Rail);
        double reserve = Math.Min(0, Reserve.Of<Real>(set.Pascals, Math.Max(rail.Pascals, set.Pascals)));
        return solved.Circuit.State == RailState.PumpFloor
            ? new(
                Part.PumpControl,
                Outcome.Fails,
                reserve,
                rail,
                set,
                $"at its lowest speed the pump still holds {Readable.Of(rail)}, over the {Readable.Of(set)} wanted")
            : new(
                Part.PumpControl,
                Outcome.Holds,
                null,
                rail,
                set,
                $"the pump runs on {Readable.Of(ElectricPotential.FromVolts(solved.Circuit.FedVoltage))}");
    }

    private static Margin Inlet(FuelSystem system, OperatingPoint point, in SolvedPoint solved)
    {
        Fuels.Fuel fuel = system.Demand.Consumption.Fuel;
        Real inlet = solved.Circuit.InletGauge + (Real)point.Conditions.Atmosphere.Pascals;
        Real needed = fuel.VapourPressureAtKelvins(point.Conditions.FuelKelvins) + (Real)system.Limits.SuctionMargin.Pascals;
        double reserve = Reserve.Of(inlet, needed);
        Pressure there = Pressure.FromPascals(inlet.Value);
        Pressure wanted = Pressure.FromPascals(needed.Value);
        string vapour =
            $"{Readable.Of(there)} absolute at the inlet, {Readable.Of(wanted)} wanted over the vapour pressure of {fuel.Name} at {Readable.Of(point.Conditions.FuelTemperature)}";
        return Margin.Of(Part.Suction, reserve, wanted, there, vapour, vapour);
    }

    private static Margin Filters(SolvedPoint solved)
    {
        (Filter Filter, double Flow)[] filters =
        [
            .. from way in solved.Task.Flows(solved.Circuit)
               where way.Part is Filter
               select ((Filter)way.Part, way.Flow),
        ];
        (Filter worst, double flow) = filters.MaxBy(pair => pair.Flow / pair.Filter.HighestFlow.CubicMetersPerSecond);
        double? reserve = flow > 0 ? Reserve.Of<Real>(worst.HighestFlow.CubicMetersPerSecond, flow) : null;
        return reserve is null or >= 0
            ? new(
                Part.Filter,
                Outcome.Holds,
                reserve,
                Flow(flow),
                worst.HighestFlow,
                $"{worst.Name} passes {Readable.PumpFlow(Flow(flow))}, its loss is known up to {Readable.PumpFlow(worst.HighestFlow)}")
            : new(
                Part.Filter,
                Outcome.CannotSay,
                null,
                Flow(flow),
                worst.HighestFlow,
                $"{worst.Name} would pass {Readable.PumpFlow(Flow(flow))}, its loss is known only up to {Readable.PumpFlow(worst.HighestFlow)}");
    }

    private static Margin Feed(FuelSystem system, OperatingPoint point, in SolvedPoint solved)
    {
        ElectricPotential most = point.Conditions.SupplyVoltage * system.Limits.FeedDrop.DecimalFractions;
        PumpPoint worst = solved.Circuit.Pumps.Where(pump => pump.Pump.Feed is not null).MinBy(pump => pump.Voltage);
        ElectricPotential drop = ElectricPotential.FromVolts(solved.Circuit.FedVoltage - worst.Voltage);
        double? reserve = drop > ElectricPotential.Zero ? Reserve.Of<Real>(most.Volts, drop.Volts) : null;
        string finding =
            $"{worst.Pump.Name} gets {Readable.Of(ElectricPotential.FromVolts(worst.Voltage))} at {Readable.Of(ElectricCurrent.FromAmperes(worst.Current ?? 0))}: {Readable.VoltageDrop(drop)} lost of at most {Readable.VoltageDrop(most)}";
        return Margin.Of(Part.Feed, reserve, drop, most, finding, finding);
    }

    /// <summary>Why nothing can be said of the pumps, if that is so.</summary>
    private static string? Lacking(in SolvedPoint solved)
    {
        foreach (PumpPoint point in solved.Circuit.Pumps)
        {
            if (point.Coverage.HasFlag(PumpCoverage.VoltageBelow))
            {
                return $"the lowest curve of {point.Pump.Name} belongs to {Readable.Of(point.Pump.Curves[0].Voltage)} and says nothing of {Readable.Of(ElectricPotential.FromVolts(point.Voltage))}";
            }

            if (point.Coverage.HasFlag(PumpCoverage.PressureBelow))
            {
                return $"the curve of {point.Pump.Name} begins at {Readable.Of(point.Pump.Curves[0].LowestPressure)} and says nothing of {Readable.Of(Pressure.FromPascals(point.Rise))}";
            }
        }

        return null;
    }

    private static string CurveEnds(in SolvedPoint solved, Pressure set)
    {
        PumpPoint limiting = solved.Circuit.Pumps.FirstOrDefault(point => point.Coverage.HasFlag(PumpCoverage.PressureAbove));
        Pump pump = (limiting.Pump ?? solved.Circuit.Pumps[0].Pump)!;
        return $"the curve of {pump.Name} covers {Readable.Of(pump.Curves[0].LowestPressure)} to {Readable.Of(pump.Curves[0].HighestPressure)}, too little for {Readable.Of(set)} in the rail";
    }

    private static VolumeFlow Flow(double flow) => VolumeFlow.FromCubicMetersPerSecond(flow);
}
