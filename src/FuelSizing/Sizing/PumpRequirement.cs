using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>What the pumps of a system must deliver over its operating points.</summary>
/// <remarks>
/// A pump delivers less at a higher pressure, so one flow at one pressure seldom says it all: every point of
/// <see cref="Governing"/> must lie on or under the pump's curve at the voltage that its motor gets there.
/// </remarks>
public sealed class PumpRequirement : IReadable
{
    internal PumpRequirement(IReadOnlyList<PumpDutyPoint> points)
    {
        Points = points;
        Governing =
        [
            .. points
                .Where(point => !points.Any(other => Covers(other, point)))
                .DistinctBy(point => (point.Flow.CubicMetersPerSecond, point.PressureRise.Pascals))
                .OrderByDescending(point => point.PressureRise.Pascals),
        ];
    }

    /// <summary>Every point, in the order given.</summary>
    public IReadOnlyList<PumpDutyPoint> Points { get; }

    /// <summary>
    /// The points that no other covers, by asking for no less flow against no less pressure; pressure falling, so flow
    /// rising.
    /// </summary>
    public IReadOnlyList<PumpDutyPoint> Governing { get; }

    /// <summary>The largest flow of any point.</summary>
    public VolumeFlow LargestFlow => Governing[^1].Flow;

    /// <summary>The highest pressure rise of any point.</summary>
    public Pressure MaximumPressureRise => Governing[0].PressureRise;

    /// <summary>The governing points in words.</summary>
    /// <returns>One sentence.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) =>
        Statement.Of("pump.required", $"A pump, or pumps together, that deliver at least {Governing:;}.").In(style);

    private static bool Covers(PumpDutyPoint other, PumpDutyPoint point) =>
        (other.Flow > point.Flow && other.PressureRise >= point.PressureRise)
        || (other.Flow >= point.Flow && other.PressureRise > point.PressureRise);
}

/// <summary>What one operating point asks of the pumps.</summary>
public sealed class PumpDutyPoint : IReadable
{
    internal PumpDutyPoint(OperatingPoint point, VolumeFlow flow, Pressure pressureRise) =>
        (Point, Flow, PressureRise) = (point, flow, pressureRise);

    /// <summary>Where.</summary>
    public OperatingPoint Point { get; }

    /// <summary>Flow: injected, with the pump reserve and the regulator's minimum return flow.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Rise over the pumps at that flow: the rail's set pressure and the losses up to it.</summary>
    public Pressure PressureRise { get; }

    /// <summary>Flow, rise and place in one line, flow and rise rounded up.</summary>
    /// <returns>For instance <c>154 L/h against 372 kPa at 6,800 rev/min, 0.60 bar</c>.</returns>
    public override string ToString() => In(TextStyle.Metric);

    /// <inheritdoc/>
    public string In(TextStyle style) =>
        Statement.Of("pump.duty-point", $"{Flow:pump-flow:up} against {PressureRise:pressure:up} at {Point}").In(style);
}
