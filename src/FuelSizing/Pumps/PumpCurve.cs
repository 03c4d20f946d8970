using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Pumps;

using Pressure = UnitsNet.Pressure;

/// <summary>What one pump delivers against pressure, at the voltage at which it was measured.</summary>
/// <remarks>
/// Between its points the curve is monotone; beyond them it says nothing, except that a pump delivers no more at a higher
/// pressure. A curve that ends at zero flow shows the deadhead pressure.
/// </remarks>
public sealed class PumpCurve
{
    private PumpCurve(string name, ElectricPotential voltage, Curve flow) =>
        (Name, Voltage, Flow) = (name, voltage, flow);

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>Voltage at the pump's terminals when the curve was measured.</summary>
    public ElectricPotential Voltage { get; }

    /// <summary>The lowest pressure rise of the curve.</summary>
    public Pressure LowestPressure => Pressure.FromPascals(Flow.First);

    /// <summary>The highest pressure rise of the curve.</summary>
    public Pressure HighestPressure => Pressure.FromPascals(Flow.Last);

    /// <summary>Pressure at which the pump delivers nothing, if the curve was measured that far.</summary>
    public Pressure? Deadhead => EndsAtDeadhead ? HighestPressure : null;

    internal Curve Flow { get; }

    internal bool EndsAtDeadhead => Flow.LastValue == 0;

    /// <summary>A pump by its measured curve.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="voltage">At the pump's terminals when measured, 5 to 30 V.</param>
    /// <param name="points">
    /// Two or more: pressure rise rising, 0 to 2,000 kPa; flow never growing with it, 0 to 3,000 L/h.
    /// </param>
    /// <returns>The pump.</returns>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or out of order.</exception>
    public static PumpCurve At(
        string name, ElectricPotential voltage, params (Pressure PressureRise, VolumeFlow Flow)[] points)
    {
        ArgumentNullException.ThrowIfNull(points);
        Allowed.Name(name, nameof(name));
        Allowed.Between(
            voltage,
            ElectricPotential.FromVolts(5),
            ElectricPotential.FromVolts(30),
            "Give the voltage at the pump's terminals for which the curve was measured.",
            nameof(voltage));
        double[] pressures = Array.ConvertAll(points, point => Allowed.Between(
            point.PressureRise,
            Pressure.Zero,
            Pressure.FromKilopascals(2000),
            "Give the pressure rise over the pump.",
            nameof(points)).Pascals);
        double[] flows = Array.ConvertAll(points, point => Allowed.Between(
            point.Flow,
            VolumeFlow.Zero,
            VolumeFlow.FromLitersPerHour(3000),
            "Give the delivered flow at that pressure rise.",
            nameof(points)).CubicMetersPerSecond);
        for (int point = 1; point < flows.Length; point++)
        {
            if (flows[point] > flows[point - 1])
            {
                throw Allowed.OutOfRange(
                    nameof(points),
                    Readable.PumpFlow(points[point].Flow),
                    $"at most {Readable.PumpFlow(points[point - 1].Flow)}, the flow at the lower pressure before it",
                    "A pump delivers no more at a higher pressure; check the order of the points.");
            }
        }

        return new(name, voltage, new(pressures, flows, Interpolation.Monotone, nameof(points)));
    }

    /// <summary>Delivered flow at a pressure rise.</summary>
    /// <param name="pressureRise">Within the curve.</param>
    /// <returns>The flow.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The curve does not cover the pressure.</exception>
    public VolumeFlow FlowAt(Pressure pressureRise) =>
        Flow.Covers(pressureRise.Pascals)
            ? VolumeFlow.FromCubicMetersPerSecond(Flow.At(pressureRise.Pascals))
            : throw Allowed.OutOfRange(
                nameof(pressureRise),
                Readable.Of(pressureRise),
                $"{Readable.Of(LowestPressure)} to {Readable.Of(HighestPressure)}",
                "The pump's curve covers no more; extend it by measured points.");
}
