namespace FuelSizing.Pumps;

/// <summary>Pumps fed with one voltage, taken both ways that the end of their curves can be read.</summary>
/// <param name="Supply">At the source, V.</param>
/// <param name="Lower">Curves that end with flow to spare end there.</param>
/// <param name="Upper">They go on for ever; the same where no curve ends so.</param>
internal sealed record PumpBounds(double Supply, RunningPumps Lower, RunningPumps Upper);
