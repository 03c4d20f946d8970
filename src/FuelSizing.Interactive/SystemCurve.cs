using FuelSizing.Lines;
using FuelSizing.Pressure;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

using Pressure = UnitsNet.Pressure;

/// <summary>The rise that a system asks of its pumps for the flow through them, with the rail at its set pressure.</summary>
internal sealed class SystemCurve(OperatingResult result)
{
    /// <summary>The most flow at which every filter's loss is known.</summary>
    public VolumeFlow HighestFlow
    {
        get
        {
            Plumbing ways = result.System.Plumbing;
            VolumeFlow[] known = [.. ways.Suction.Concat(ways.Supply).OfType<Filter>().Select(filter => filter.HighestFlow)];
            return known.Length == 0 ? VolumeFlow.FromLitersPerHour(10_000) : known.Min();
        }
    }

    /// <summary>The rise asked for at a flow through the pumps.</summary>
    public Pressure At(VolumeFlow flow)
    {
        FuelSystem system = result.System;
        VolumeFlow surplus = UnitMath.Max(flow - result.InjectedFlow, VolumeFlow.Zero);

        // Only what passes the way to the rail costs pressure there; a regulator in the tank takes the surplus before it.
        bool wholeFlowGoesForward = system.Layout == LineLayout.Return || system.Regulator is ElectronicReturnless;
        Pressure atRegulator = UnitMath.Max(result.RailSetGauge, Loss(system.Plumbing.Back, surplus));
        return atRegulator
            + Loss(system.Plumbing.Suction, flow)
            + (wholeFlowGoesForward ? Loss(system.Plumbing.Supply, flow) : Pressure.Zero);
    }

    private Pressure Loss(IReadOnlyList<IFlowLoss> way, VolumeFlow flow)
    {
        Fuels.Fuel fuel = result.System.Demand.Consumption.Fuel;
        Temperature temperature = result.Point.Conditions.FuelTemperature;
        return Pressure.FromPascals(way.Sum(part => part switch
        {
            Line line => line.PressureLoss(flow, fuel, temperature).Total.Pascals,
            Filter filter => filter.PressureLoss(UnitMath.Min(flow, filter.HighestFlow), fuel, temperature).Pascals,
            _ => 0,
        }));
    }
}
