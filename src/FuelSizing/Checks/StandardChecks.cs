namespace FuelSizing.Checks;

/// <summary>The checks that every fuel system is given, in the order in which results list them.</summary>
public static class StandardChecks
{
    /// <summary>
    /// Duty cycle, minimum pulse, opening pressure, pump, return line, flow through the regulator, pump control, inlet, filter, feed, wire, fuse, relay, converter, rating; with a
    /// surge tank the lift pump, its inlet, filter, feed, wire, fuse and relay, and the pressure in the tank; and what is not judged: lines, brake efficiency, mixture; with staged injectors
    /// duty cycle, minimum pulse and opening pressure of the secondary set; with a second stream its pump, its nozzles, the mixture if it stops, its tank; and fuses at the start and on a
    /// locked rotor where their times are given.
    /// </summary>
    public static IReadOnlyList<ICheck> All { get; } = Array.AsReadOnly<ICheck>(
    [
        new DutyCycleCheck(JudgedSet.Primary),
        new MinimumPulseCheck(JudgedSet.Primary),
        new OpeningPressureCheck(JudgedSet.Primary),
        new PumpCheck(),
        new ReturnLineCheck(),
        new RegulatorFlowCheck(),
        new PumpControlCheck(),
        new PumpInletCheck(Part.Suction, JudgedCircuit.Main),
        new FilterCheck(Part.Filter, JudgedCircuit.Main),
        new FeedCheck(Part.Feed, JudgedCircuit.Main),
        new WireCheck(Part.Wire, JudgedCircuit.Main),
        new FuseCheck(Part.Fuse, JudgedCircuit.Main),
        new RelayCheck(Part.Relay, JudgedCircuit.Main),
        new ConverterCheck(),
        new PressureRatingCheck(),
        new LiftPumpCheck(),
        new PumpInletCheck(Part.LiftSuction, JudgedCircuit.Lift),
        new FilterCheck(Part.LiftFilter, JudgedCircuit.Lift),
        new FeedCheck(Part.LiftFeed, JudgedCircuit.Lift),
        new WireCheck(Part.LiftWire, JudgedCircuit.Lift),
        new FuseCheck(Part.LiftFuse, JudgedCircuit.Lift),
        new RelayCheck(Part.LiftRelay, JudgedCircuit.Lift),
        new SurgeTankPressureCheck(),
        AssumptionCheck.SupplyLine,
        AssumptionCheck.LiftLine,
        AssumptionCheck.OverflowLine,
        AssumptionCheck.BrakeEfficiency,
        new MixtureCheck(),
        new RichMixtureCheck(),
        new DutyCycleCheck(JudgedSet.Secondary),
        new MinimumPulseCheck(JudgedSet.Secondary),
        new OpeningPressureCheck(JudgedSet.Secondary),
        new StreamPumpCheck(),
        new StreamNozzlesCheck(),
        new StreamStoppedCheck(),
        new StreamTankCheck(),
        AssumptionCheck.StreamLines,
        new FuseStartCheck(Part.FuseStart, JudgedCircuit.Main),
        new LockedRotorCheck(Part.LockedRotor, JudgedCircuit.Main),
        new FuseStartCheck(Part.LiftFuseStart, JudgedCircuit.Lift),
        new LockedRotorCheck(Part.LiftLockedRotor, JudgedCircuit.Lift),
    ]);

    /// <summary>Those that apply to a system, or do not, whatever its injectors are.</summary>
    internal static IReadOnlySet<ICheck> ApplyWhateverInjectors { get; } = new HashSet<ICheck>(All.Where(check => check is not MinimumPulseCheck), ReferenceEqualityComparer.Instance);
}
