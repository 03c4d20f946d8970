namespace FuelSizing.Checks;

/// <summary>The checks that every fuel system is given, in the order in which results list them.</summary>
public static class StandardChecks
{
    /// <summary>Duty cycle, minimum pulse, opening pressure, pump, return line, pump control, inlet, filter, feed, wire, fuse, converter, rating; and what is not judged: supply line, brake efficiency, mixture.</summary>
    public static IReadOnlyList<ICheck> All { get; } = Array.AsReadOnly<ICheck>(
    [
        new DutyCycleCheck(),
        new MinimumPulseCheck(),
        new OpeningPressureCheck(),
        new PumpCheck(),
        new ReturnLineCheck(),
        new PumpControlCheck(),
        new PumpInletCheck(),
        new FilterCheck(),
        new FeedCheck(),
        new WireCheck(),
        new FuseCheck(),
        new ConverterCheck(),
        new PressureRatingCheck(),
        AssumptionCheck.SupplyLine,
        AssumptionCheck.BrakeEfficiency,
        new MixtureCheck(),
        new RichMixtureCheck(),
    ]);
}
