using UnitsNet;

namespace FuelSizing.Pumps;

/// <summary>A measured point of a pump's curve.</summary>
/// <param name="PressureRise">Over the pump.</param>
/// <param name="Flow">Delivered.</param>
/// <param name="Current">Drawn, if it was measured.</param>
internal readonly record struct MeasuredPoint(Pressure PressureRise, VolumeFlow Flow, ElectricCurrent? Current);
