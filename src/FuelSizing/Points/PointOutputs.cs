
namespace FuelSizing.Points;

/// <summary>Where <see cref="PointBatch"/> writes, a column for each output, in SI numbers; a column left empty is not wanted.</summary>
/// <remarks>
/// Each column is as long as the inputs' and overlaps no other. An array can be given for a span. Not a number (NaN) stands
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
    /// Fuel that the injectors can pass at the duty limit ÷ the fuel wanted, less 1; −1 where nothing flows.
    /// </summary>
    public Span<double> InjectorReserve { get; init; }
}
