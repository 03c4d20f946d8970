using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Sizing;

/// <summary>What one operating point asks of the pumps.</summary>
public sealed record PumpDutyPoint
{
    internal PumpDutyPoint(OperatingPoint point, VolumeFlow flow, Pressure pressureRise) =>
        (Point, Flow, PressureRise) = (point, flow, pressureRise);

    /// <summary>Where.</summary>
    public OperatingPoint Point { get; }

    /// <summary>Flow: injected, with the reserve kept in hand and the regulator's smallest return flow.</summary>
    public VolumeFlow Flow { get; }

    /// <summary>Rise over the pumps at that flow: the rail's set pressure and the losses on the way to it.</summary>
    public Pressure PressureRise { get; }

    /// <summary>Flow, rise and place in one line.</summary>
    /// <returns>For instance <c>154 L/h against 372 kPa at 6,800 rev/min, 0.60 bar</c>.</returns>
    public override string ToString() => $"{Readable.PumpFlow(Flow)} against {Readable.Of(PressureRise)} at {Point}";
}
