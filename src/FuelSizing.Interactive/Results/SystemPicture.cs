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

        var curve = result.System.Pump.CurveAtBoost(result.System.Demand.Consumption.Fuel, result.Point.Conditions.FuelTemperature, fed, result.Point.Boost, Points);
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

    /// <summary>Where the point lies off a curve that is drawn, by how much and why: a mark beside both curves would look like a fault of the drawing.</summary>
    /// <param name="tallest">Of all that is drawn; less than a hundredth of it is not seen.</param>
    public IEnumerable<string> Apart(double tallest)
    {
        if (Point is not { } point)
        {
            yield break;
        }

        double unseen = 0.01 * tallest;
        string Amount(double difference) => $"{_style.Of(_style.Units.Pressure.Quantity(Math.Abs(difference)))} {(difference < 0 ? "below" : "above")}";
        CircuitResult circuit = _result.Circuit;
        VolumeFlow flow = _style.Units.PumpFlow.Quantity(point.Flow);
        double asked = flow <= circuit.MaximumKnownFlow ? _style.Units.Pressure.ValueOf(circuit.PressureAsked(UnitMath.Max(flow, VolumeFlow.Zero))) : double.NaN;
        if (Math.Abs(point.Rise - asked) > unseen)
        {
            yield return $"\"{Name}\" lies {Amount(point.Rise - asked)} its system curve: {WhyOffTheSystem()}.";
        }

        double given = OnPumpCurve(point.Flow);
        if (double.IsNaN(given) || Math.Abs(point.Rise - given) > unseen)
        {
            yield return $"\"{Name}\" lies {(double.IsNaN(given) ? "beside" : Amount(point.Rise - given))} the pump curve drawn, {_pumpName}: {WhyOffThePump()}.";
        }
    }

    private string WhyOffTheSystem() => _result.RailState switch
    {
        RailState.Sagging => $"the pumps cannot hold the rail at its set pressure, and it sags to {_style.Of(_result.RailGauge)}",
        RailState.Starved => "the pumps cannot bring the demand to the rail",
        RailState.PumpFloor => "the pumps cannot be slowed further",
        _ => "the curve is that of the rail at its set pressure",
    };

    private string WhyOffThePump()
    {
        string voltages = string.Join(", ", _result.Circuit.Pumps.Select(pump => _style.Of(pump.Voltage)).Distinct());
        return _result.Circuit.Pumps.Any(pump => pump.IsEstimate)
            ? $"there its flow is estimated, with {voltages} at the motor, and the curve is the least that its data assures"
            : $"there {_result.Circuit.Pumps.Count(pump => pump.IsRunning)} of {_result.Circuit.Pumps.Count} run, with {voltages} at the motor";
    }

    /// <summary>The rise at a flow on the pumps' curve; not a number beyond its ends.</summary>
    private double OnPumpCurve(double flow)
    {
        for (int place = 1; place < _pump.Length; place++)
        {
            var (from, to) = (_pump[place - 1], _pump[place]);
            if (Math.Min(from.Flow, to.Flow) <= flow && flow <= Math.Max(from.Flow, to.Flow))
            {
                return from.Flow == to.Flow ? to.Rise : from.Rise + ((to.Rise - from.Rise) * (flow - from.Flow) / (to.Flow - from.Flow));
            }
        }

        return double.NaN;
    }

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
