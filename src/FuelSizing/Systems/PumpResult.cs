using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>One pump where it runs.</summary>
public sealed record PumpResult
{
    private readonly PumpPoint _point;
    private readonly double _fed;

    internal PumpResult(in PumpPoint point, double fed) => (_point, _fed) = (point, fed);

    /// <summary>Which pump.</summary>
    public Pump Pump => _point.Pump;

    /// <summary>Flow through it.</summary>
    public VolumeFlow Flow => VolumeFlow.FromCubicMetersPerSecond(_point.Flow);

    /// <summary>Pressure that it adds.</summary>
    public Pressure PressureRise => Pressure.FromPascals(_point.Rise);

    /// <summary>Voltage at its motor.</summary>
    public ElectricPotential Voltage => ElectricPotential.FromVolts(_point.Voltage);

    /// <summary>Voltage lost on the way to it.</summary>
    public ElectricPotential FeedDrop => ElectricPotential.FromVolts(_fed - _point.Voltage);

    /// <summary>Current that it draws; none where it was not measured.</summary>
    public ElectricCurrent? Current => _point.Current is { } amperes ? ElectricCurrent.FromAmperes(amperes) : null;

    /// <summary>True if its curve was carried to this voltage by the affinity laws.</summary>
    public bool IsEstimate => _point.Coverage.HasFlag(PumpCoverage.Scaled);

    internal double? ElectricalWatts =>
        _point.Current is { } amperes ? PumpHeat.Electrical<Real>(_point.Voltage, amperes) : null;
}
