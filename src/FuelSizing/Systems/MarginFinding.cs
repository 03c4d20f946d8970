using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>A check in words: what was asked of the part, its limit, and the sentence that says so.</summary>
/// <param name="Used">What is asked of the part; none where it cannot be said.</param>
/// <param name="Allowed">Its limit; none where it cannot be said.</param>
/// <param name="Text">The finding, with units.</param>
internal readonly record struct MarginFinding(IQuantity? Used, IQuantity? Allowed, string Text)
{
    /// <summary>Puts a check of a result in words.</summary>
    public static MarginFinding Of(OperatingResult result, Check check)
    {
        FuelSystem system = result.System;
        SolvedPoint solved = result.Solved;
        SolvedCircuit circuit = solved.Circuit;
        return check.Part switch
        {
            Part.Injectors => Injectors(system, solved, check),
            Part.MinimumPulse => MinimumPulse(system, solved, check),
            Part.OpeningPressure => AtMost(
                "pressure across the injector",
                solved.Judged.Differential,
                system.Injectors.Injector.MaximumDifferential,
                "known to open against",
                check),
            Part.PressureRating => AtMost(
                "rail pressure",
                Math.Max(circuit.RailSet, circuit.Rail),
                system.Limits.RailCeiling!.Value,
                "rated for",
                check),
            Part.Pump => Pump(system, circuit, check),
            _ when circuit.State.State == RailState.NotCovered =>
                new(null, null, "the pump's data does not cover the point"),
            Part.ReturnLine => ReturnLine(circuit, check),
            Part.PumpControl => Control(circuit, check),
            Part.Suction => Inlet(system, solved),
            Part.Filter => Filters(circuit, check),
            _ => Feed(system, circuit),
        };
    }

    private static MarginFinding Injectors(FuelSystem system, in SolvedPoint solved, Check check)
    {
        Ratio limit = system.Limits.DutyCycle;
        if (solved.Judged.StaticFlow <= 0)
        {
            return new(
                null,
                limit,
                $"no flow: the pressure across the injector is {Readable.Of(Pressure.FromPascals(solved.Judged.Differential))}");
        }

        if (check.Outcome == Outcome.CannotSay || solved.Judged.DutyCycle is not { } duty)
        {
            return UnknownDeadTime(system, solved);
        }

        Ratio used = Ratio.FromDecimalFractions(duty);
        return new(
            used,
            limit,
            (check.Outcome == Outcome.Holds
                ? $"duty cycle {Readable.DutyCycle(used)} of at most {Readable.DutyCycle(limit)}"
                : $"duty cycle {Readable.DutyCycle(used)} over the {Readable.DutyCycle(limit)} limit") + Sag(solved));
    }

    private static string Sag(in SolvedPoint solved) => (solved.Circuit.State.State, solved.Actual.DutyCycle) switch
    {
        (RailState.Sagging, { } duty) =>
            $" at the pressure set, {Readable.DutyCycle(Ratio.FromDecimalFractions(duty))} with the rail sagging",
        (RailState.Sagging or RailState.Starved, _) => " at the pressure set, which the rail does not reach",
        _ => string.Empty,
    };

    private static MarginFinding MinimumPulse(FuelSystem system, in SolvedPoint solved, Check check)
    {
        if (check.Outcome == Outcome.CannotSay)
        {
            return UnknownDeadTime(system, solved);
        }

        Duration minimum = system.Injectors.Injector.MinimumLinearPulse;
        if (solved.Judged.Pulse is not { } seconds)
        {
            return new(null, minimum, "no pulse to judge: the injectors pass nothing");
        }

        Duration pulse = Duration.FromSeconds(seconds);
        return new(
            pulse,
            minimum,
            check.Outcome == Outcome.Holds
                ? $"pulse {Readable.Of(pulse)} of at least {Readable.Of(minimum)}"
                : $"pulse {Readable.Of(pulse)} under the least linear one of {Readable.Of(minimum)}");
    }

    private static MarginFinding UnknownDeadTime(FuelSystem system, in SolvedPoint solved) =>
        new(
            null,
            null,
            $"the dead-time table covers {system.Injectors.Injector.DeadTime.Coverage} and says nothing of {Readable.Of(solved.Demand.Point.Conditions.SupplyVoltage)}, {Readable.Of(Pressure.FromPascals(solved.Judged.Differential))}");

    private static MarginFinding AtMost(string what, double pascals, Pressure maximum, string qualifier, Check check)
    {
        Pressure used = Pressure.FromPascals(pascals);
        string only = check.Outcome == Outcome.Holds ? string.Empty : "only ";
        return new(used, maximum, $"{what} {Readable.Of(used)}, {qualifier} {only}{Readable.Of(maximum)}");
    }

    private static MarginFinding Pump(FuelSystem system, in SolvedCircuit circuit, Check check)
    {
        VolumeFlow injected = Flow(circuit.Task.Injected);
        Pressure set = Pressure.FromPascals(circuit.RailSet);
        bool exact = circuit.MaximumInjectable <= circuit.MinimumInjectable * (1 + 1e-9);
        string wanted = $"{Readable.PumpFlow(Flow(circuit.Wanted))} wanted";
        return (check.Outcome, CircuitChecks.Uncovered(circuit)) switch
        {
            (_, { } uncovered) => new(injected, null, Uncovered(uncovered)),
            (Outcome.Holds, _) => new(
                injected,
                Flow(circuit.MinimumInjectable),
                $"delivers {(exact ? string.Empty : "at least ")}{Readable.PumpFlow(Flow(circuit.State.MinimumAtSet))} at {Readable.Of(set)} in the rail, {wanted}"),
            (Outcome.CannotSay, _) => new(injected, null, CurveEnds(circuit, set)),
            _ => new(
                injected,
                Flow(circuit.MaximumInjectable),
                $"delivers {(exact ? string.Empty : "at most ")}{Readable.PumpFlow(Flow(circuit.State.MaximumAtSet))} at {Readable.Of(set)} in the rail, {wanted}{Consequence(system, circuit)}"),
        };
    }

    private static string Uncovered(PumpPoint point) =>
        point.Coverage.HasFlag(PumpCoverage.VoltageBelow)
            ? $"the lowest curve of {point.Pump.Name} belongs to {Readable.Of(point.Pump.Curves[0].Voltage)} and says nothing of {Readable.Of(ElectricPotential.FromVolts(point.Voltage))}"
            : $"the curve of {point.Pump.Name} begins at {Readable.Of(point.Pump.Curves[0].MinimumPressure)} and says nothing of less";

    private static string CurveEnds(in SolvedCircuit circuit, Pressure set)
    {
        PumpPoint limiting = circuit.State.Pumps.FirstOrDefault(point => point.Coverage.HasFlag(PumpCoverage.PressureAbove));
        Pump pump = (limiting.Pump ?? circuit.State.Pumps[0].Pump)!;
        return $"the curve of {pump.Name} covers {Readable.Of(pump.Curves[0].MinimumPressure)} to {Readable.Of(pump.Curves[0].MaximumPressure)}, too little for {Readable.Of(set)} in the rail";
    }

    private static string Consequence(FuelSystem system, in SolvedCircuit circuit)
    {
        string cause = circuit.State.MaximumAtSet <= 0 ? $": {system.Pump.Name} deadheads below the pressure set" : string.Empty;
        return circuit.State.State switch
        {
            RailState.Sagging =>
                $"{cause}: the regulator shuts and the rail sags to {Readable.Of(Pressure.FromPascals(circuit.Rail))}",
            RailState.Starved => ": it cannot bring the demand to the rail even against no pressure",
            _ => cause,
        };
    }

    private static MarginFinding ReturnLine(in SolvedCircuit circuit, Check check)
    {
        Pressure set = Pressure.FromPascals(circuit.RailSet);
        Pressure back = Pressure.FromPascals(circuit.State.ReturnGauge);
        string returned = Readable.PumpFlow(Flow(circuit.State.Returned ?? 0));
        return new(
            back,
            set,
            check.Outcome == Outcome.Holds
                ? $"passes {returned} at {Readable.Of(back)}, under the {Readable.Of(set)} set"
                : $"passes {returned} only at {Readable.Of(back)}: the rail cannot fall to the {Readable.Of(set)} set");
    }

    private static MarginFinding Control(in SolvedCircuit circuit, Check check)
    {
        Pressure set = Pressure.FromPascals(circuit.RailSet);
        Pressure rail = Pressure.FromPascals(circuit.Rail);
        return new(
            rail,
            set,
            check.Outcome == Outcome.Fails
                ? $"at its lowest speed the pump still holds {Readable.Of(rail)}, over the {Readable.Of(set)} wanted"
                : $"the pump runs on {Readable.Of(ElectricPotential.FromVolts(circuit.State.FedVoltage))}");
    }

    private static MarginFinding Inlet(FuelSystem system, in SolvedPoint solved)
    {
        Pressure there = Pressure.FromPascals(CircuitChecks.InletAbsolute(solved.Demand, solved.Circuit));
        Pressure wanted = Pressure.FromPascals(CircuitChecks.InletNeeded(system, solved.Demand));
        return new(
            wanted,
            there,
            $"{Readable.Of(there)} absolute at the inlet, {Readable.Of(wanted)} wanted over the vapour pressure of {system.Demand.Consumption.Fuel.Name} at {Readable.Of(solved.Demand.Point.Conditions.FuelTemperature)}");
    }

    private static MarginFinding Filters(in SolvedCircuit circuit, Check check)
    {
        (Filter worst, double flow) = CircuitChecks.BusiestFilter(circuit);
        return new(
            Flow(flow),
            worst.MaximumFlow,
            check.Outcome == Outcome.Holds
                ? $"{worst.Name} passes {Readable.PumpFlow(Flow(flow))}, its loss is known up to {Readable.PumpFlow(worst.MaximumFlow)}"
                : $"{worst.Name} would pass {Readable.PumpFlow(Flow(flow))}, its loss is known only up to {Readable.PumpFlow(worst.MaximumFlow)}");
    }

    private static MarginFinding Feed(FuelSystem system, in SolvedCircuit circuit)
    {
        ElectricPotential maximum = ElectricPotential.FromVolts(CircuitChecks.MaximumDrop(system, circuit));
        PumpPoint worst = CircuitChecks.MinimumFed(circuit);
        ElectricPotential drop = ElectricPotential.FromVolts(circuit.State.FedVoltage - worst.Voltage);
        return new(
            drop,
            maximum,
            $"{worst.Pump.Name} gets {Readable.Of(ElectricPotential.FromVolts(worst.Voltage))} at {Readable.Of(ElectricCurrent.FromAmperes(worst.Current ?? 0))}: {Readable.VoltageDrop(drop)} lost of at most {Readable.VoltageDrop(maximum)}");
    }

    private static VolumeFlow Flow(double flow) => VolumeFlow.FromCubicMetersPerSecond(flow);
}
