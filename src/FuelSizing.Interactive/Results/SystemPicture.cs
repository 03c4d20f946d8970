using FuelSizing.Circuits;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>One solved point as a pump curve, a system curve and the place where the pump runs.</summary>
internal sealed class SystemPicture
{
    private const int Points = 81;

    // The library gives a pump's curve from here up; a pump held slower is drawn at full supply.
    private static readonly ElectricPotential MinimumDrawn = ElectricPotential.FromVolts(6);

    private readonly OperatingResult _result;
    private readonly TextStyle _style;
    private readonly string _pumpName;
    private readonly (double Flow, double Rise)[] _pump;

    public SystemPicture(string name, OperatingResult result, TextStyle style)
    {
        (Name, _result, _style) = (name, result, style);
        CircuitResult circuit = result.Circuit;

        // A controller may feed the pumps with less than the supply; where the data ends nothing is known of it.
        PumpResult? first = circuit.Pumps.Count > 0 ? circuit.Pumps[0] : null;
        ElectricPotential supply = result.Point.Conditions.SupplyVoltage;
        ElectricPotential fed = first is null ? supply : first.Voltage + first.FeedDrop;
        if (fed < MinimumDrawn)
        {
            fed = supply;
        }

        var curve = result.System.Pump.CurveOf(result.System.Demand.Consumption.Fuel, result.Point.Conditions.FuelTemperature, fed, Points);
        // An assembly's name stands in brackets, which a whole name does not need.
        string pumps = result.System.Pump.Name;
        _pumpName = $"{(result.System.Pump is Pumps.PumpParallel or Pumps.PumpSeries ? pumps[1..^1] : pumps)} on {style.Of(fed)}{(first?.Pump.Feed is { } feed ? $" through {feed.Name}" : "")}";

        // A thousandth of a litre an hour is far under what a line shows; at deadhead the curve's end is no neater than that.
        _pump = [.. curve.Select(point => (Math.Round(style.Units.PumpFlow.ValueOf(point.Flow), 3), style.Units.Pressure.ValueOf(point.PressureRise)))];
        FreeFlow = curve.Max(point => style.Units.PumpFlow.ValueOf(point.Flow));
        Point = circuit.PumpFlow is { } flow && circuit.OutletGauge - circuit.InletGauge is { } rise
            ? (style.Units.PumpFlow.ValueOf(flow), style.Units.Pressure.ValueOf(rise))
            : null;
        Tallest = Math.Max(style.Units.Pressure.ValueOf(result.RailSetGauge), Point?.Rise ?? 0);
    }

    /// <summary>The name of the mark.</summary>
    public string Name { get; }

    /// <summary>Delivered against no pressure, in the unit of flows.</summary>
    public double FreeFlow { get; }

    /// <summary>The higher of the rail's set pressure and the rise over the pumps, in the unit of pressures.</summary>
    public double Tallest { get; }

    /// <summary>Where the pumps run, in the units of flows and pressures; none where their data says nothing.</summary>
    public (double Flow, double Rise)? Point { get; }

    /// <summary>The pumps' curve at the voltage that their wiring is fed with, cut off over a pressure.</summary>
    public PlotLine Pump(double maximum) => new(
        _pumpName,
        [.. _pump.Select(point => point.Flow)],
        [.. _pump.Select(point => point.Rise <= maximum ? point.Rise : double.NaN)]);

    /// <summary>The system's curve, up to a flow and cut off over a pressure.</summary>
    public PlotLine System(double furthest, double maximum)
    {
        CircuitResult circuit = _result.Circuit;
        double end = Math.Min(furthest, _style.Units.PumpFlow.ValueOf(circuit.MaximumKnownFlow));
        double[] flows = [.. Enumerable.Range(0, Points).Select(point => end * point / (Points - 1))];
        double[] rises = [.. flows.Select(flow => _style.Units.Pressure.ValueOf(circuit.PressureAsked(
            UnitMath.Min(_style.Units.PumpFlow.Quantity(flow), circuit.MaximumKnownFlow))))];
        return new PlotLine(
            Name,
            flows,
            [.. rises.Select((rise, place) => place == 0 || rise <= maximum ? rise : double.NaN)]);
    }
}
