
namespace FuelSizing.Points;

/// <summary>Where <see cref="PointBatch"/> writes, a column for each output, in SI numbers; a column left empty is not wanted.</summary>
/// <remarks>
/// Injectors and pumps are judged apart, in <see cref="InjectorReserve"/> and <see cref="PumpReserve"/>: a point is adequate only where
/// neither is under zero, and lines, wiring and inlet are judged by <c>FuelSystem.Solve</c> alone. Each column is as long as the inputs' and overlaps no other. An array can be given for a span. Not a number (NaN) stands
/// where <c>OperatingResult</c> has none: outside the dead-time table, between zero differential and the lowest at which the injector's flow
/// is known, or where nothing flows.
/// </remarks>
public readonly ref struct PointOutputs
{
    /// <summary>Gauge pressure in the rail while the pumps have the capacity, Pa.</summary>
    public Span<double> RailGauge { get; init; }

    /// <summary>Across the injector, Pa.</summary>
    public Span<double> Differential { get; init; }

    /// <summary>Fuel of the whole engine, m³/s.</summary>
    public Span<double> FuelFlow { get; init; }

    /// <summary>Static flow of one injector, m³/s; zero where nothing flows.</summary>
    public Span<double> StaticFlow { get; init; }

    /// <summary>Commanded pulse, dead time included, s.</summary>
    public Span<double> Pulse { get; init; }

    /// <summary>Pulse ÷ available time.</summary>
    public Span<double> DutyCycle { get; init; }

    /// <summary>
    /// Fuel that the pumps can feed at the set pressure with their reserve and the regulator's minimum return kept ÷ the fuel wanted, less 1, by
    /// the lower bound of their data; not a number where that gives none. Under zero the pumps may not hold the rail, and what the other
    /// columns say of it is not so. A point whose pumps are asked for takes as long as one that is solved by itself.
    /// </summary>
    public Span<double> PumpReserve { get; init; }

    /// <summary>
    /// Of the injectors alone, at the pressure that the regulator sets: fuel that the injectors can pass at the duty limit ÷ the fuel wanted, less 1; −1 where nothing flows.
    /// </summary>
    public Span<double> InjectorReserve { get; init; }
}
