using System.Globalization;
using FuelSizing.Circuits;
using FuelSizing.Equations;
using FuelSizing.Lines;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Writes the working of the circuit: what is lost in its lines, what it takes to hold the pressure, what the pumps give.</summary>
/// <remarks>
/// Where pumps and circuit agree is found by a solver. The working puts what it found into both sides: the rise by
/// the system curve, Δp_sys, and the rise that the pumps' curves give, Δp_p, each at the flow Q_p.
/// </remarks>
internal sealed class CircuitWorking
{
    // Curves are read to the solver's accuracy; a rise that is further off was read where the curve stands upright.
    private const double SameRise = 1e-6;

    private readonly Derivation _to;
    private readonly CircuitTask _task;
    private readonly CircuitState _state;
    private readonly SystemParts _system;
    private readonly Conditions _conditions;
    private readonly Traced _injected;
    private readonly Traced _density;
    private readonly Traced _set;
    private readonly Traced _supply;
    private Traced _viscosity;
    private int _parts;

    public CircuitWorking(
        Derivation to, in SolvedCircuit circuit, SystemParts system, Conditions conditions, Traced supply, Traced injected, Traced density, Traced set)
    {
        (_to, _task, _state, _system, _conditions) = (to, circuit.Task, circuit.State, system, conditions);
        (_supply, _injected, _density, _set) = (supply, injected, density, set);
    }

    /// <summary>Writes the lines.</summary>
    /// <returns>Rail pressure, gauge, Pa.</returns>
    public Traced Write()
    {
        switch (_state.State)
        {
            case RailState.NotCovered:
                const string Reason = "the pump's data does not cover this point";
                _to.NotKnown("flow through the pumps", "Q_p", Reason);
                _to.NotKnown("flow returned to the tank", "Q_ret", Reason);
                const string AsSet = "gauge; taken as set, since the pump's data does not cover this point";
                if (_task.HoldsAtRail)
                {
                    Equal("rail pressure", "p_r", _set, AsSet);
                    return _set;
                }

                Traced beyond = CircuitPressure.RailBeyond(_set, Path(Supply, "Δp_sup", _task.Plumbing.Supply, _injected));
                return _to.Step("rail pressure", "p_r", beyond, "Pa", Gauge(beyond.Value), AsSet, law: "CircuitPressure.RailBeyond");
            case RailState.Starved:
                _to.Table("flow through the pumps", "Q_p", _state.Flow, "m³/s", Flow(_state.Flow), $"{Curves()}, and what the lines let through to a rail without pressure");
                _to.Step("flow returned to the tank", "Q_ret", _state.ReturnFlow, "m³/s", Flow(_state.ReturnFlow), _state.ReturnFlow > 0 ? "what the regulator at the tank lets back" : "nothing returns: the rail has no pressure");
                return _to.Step(
                    "rail pressure", "p_r", 0, "Pa", Gauge(0), "gauge; starved: the pumps cannot bring the fuel to the rail against any pressure");
            case RailState.Sagging or RailState.PumpFloor:
                return Shut();
            default:
                return Governed();
        }
    }

    private bool IsSlowed => _task.MinimumSupply is not null;

    private string Supply => _task.HoldsAtRail || !_task.Plumbing.HasToRegulator ? "from the pump to the rail" : "from the regulator to the rail";

    /// <summary>What is lost between the pump and a regulator before the rail.</summary>
    private Traced Before(Traced pump) => _task.HoldsAtRail ? 0 : Path("from the pump to the regulator", "Δp_tr", _task.Plumbing.ToRegulator, pump);

    private Traced Governed()
    {
        Traced pump = IsSlowed
            ? Equal("flow through the pumps", "Q_p", _injected, Flow(_injected.Value), "nothing returns: the controller slows the pumps")
            : _to.Solved(
                "flow through the pumps", "Q_p", _state.Flow, "m³/s", Flow(_state.Flow), "solved: the pumps' curves meet the system curve, so that Δp_p = Δp_sys");
        Traced returned = Returned(pump);
        Traced suction = Path("from the tank to the pump", "Δp_suc", _task.Plumbing.Suction, pump);
        Traced before = Before(pump);
        Traced forward = Path(Supply, "Δp_sup", _task.Plumbing.Supply, _task.Layout == LineLayout.Return ? pump : _injected);
        bool floored = _task.Plumbing.ReturnLine.Count > 0 && !IsSlowed;
        Traced back = floored ? Path("on the return line", "Δp_ret", _task.Plumbing.ReturnLine, returned) : 0;
        Traced set = Set(returned, back);
        Traced held;
        Traced rail;
        if (!_task.HoldsAtRail)
        {
            held = floored ? Regulator(RailPressure.InSeries(set, back), "RailPressure.InSeries") : set;
            rail = Rail(CircuitPressure.RailBeyond(held, forward), "CircuitPressure.RailBeyond");
        }
        else if (floored)
        {
            rail = held = Rail(RailPressure.InSeries(set, back), "RailPressure.InSeries");
        }
        else
        {
            // What follows is written with the set pressure, which the rail has.
            Equal("rail pressure", "p_r", set, $"gauge; {Governs}");
            rail = held = set;
        }

        Required(suction, _task.HoldsAtRail ? forward : before, held);
        Curve(pump);
        return rail;
    }

    /// <summary>What the regulator holds at the returned flow: its set pressure, or what its slope or curve and the pressure at its outlet make of that.</summary>
    private Traced Set(Traced returned, Traced back)
    {
        if (_task.Held is not { } at)
        {
            return _set;
        }

        const string Name = "pressure that the regulator holds";
        const string Symbol = "p_held";
        if (_system.Regulator is not { Flow: { } flow } regulator)
        {
            return _to.Table(Name, Symbol, _state.Held, "Pa", Gauge(_state.Held), $"gauge; of both in series at {Flow(returned.Value)} returned: {at.Regulator.Text.In(_to.Style)}");
        }

        string text = flow.Text.In(_to.Style);
        string Change(double pascals) => _to.Style.PressureChange(Pressure.FromPascals(pascals));
        const string Rise = "pressure held over the setting, by the returned flow";
        Traced rise;
        if (flow.SlopePascals is { } slope)
        {
            rise = RailPressure.FlowRise(
                _to.Given("rise of the pressure held by the returned flow", "m_ret", slope, "Pa·s/m³", $"{_to.Style.Of(flow.Rise)} over {_to.Style.PumpFlow(flow.Over)}", text),
                returned,
                _to.Given("returned flow at which the setting was found", "Q_set", flow.StatedAt.CubicMetersPerSecond, "m³/s", _to.Style.PumpFlow(flow.StatedAt), text));
            rise = _to.Step(Rise, "Δp_flow", rise, "Pa", Change(rise.Value), "slope of the regulator", law: "RailPressure.FlowRise");
        }
        else
        {
            double read = flow.RisePascals(returned.Value, RegulatorReading.Estimate);
            rise = _to.Table(Rise, "Δp_flow", read, "Pa", Change(read), text);
        }

        Traced share = flow.OutletShare == 0
            ? 0
            : _to.Given("share of the outlet's pressure", "σ_ret", flow.OutletShare, "1", string.Create(CultureInfo.InvariantCulture, $"{flow.OutletShare:0.###}"), text);
        Traced held = RailPressure.Held(_set, rise, share, back);
        return _to.Step(Name, Symbol, held, "Pa", Gauge(held.Value), $"gauge; {regulator.Text.In(_to.Style)}", law: "RailPressure.Held");
    }

    /// <summary>The regulator is shut, or there is none left to act: the rail has what the pumps leave over the losses.</summary>
    private Traced Shut()
    {
        Traced pump = Equal("flow through the pumps", "Q_p", _injected, Flow(_injected.Value), "nothing returns");
        Returned(pump);
        Traced suction = Path("from the tank to the pump", "Δp_suc", _task.Plumbing.Suction, pump);
        Traced before = Before(pump);
        Traced forward = Path(Supply, "Δp_sup", _task.Plumbing.Supply, _injected);
        Traced losses = CircuitPressure.Losses(suction, _task.HoldsAtRail ? forward : before);
        _to.Step(
            "pressure rise by the system curve",
            "Δp_sys",
            CircuitPressure.RiseRequired(losses, _set),
            "Pa",
            Gauge(CircuitPressure.RiseRequired(losses, _set).Value),
            "losses and the set pressure", law: "CircuitPressure.RiseRequired");
        Traced rise = Curve(pump);
        Traced left = CircuitPressure.Remaining(rise, losses);
        Traced regulated = _task.HoldsAtRail ? Rail(left, "CircuitPressure.Remaining") : Regulator(left, "CircuitPressure.Remaining");
        Traced rail = _task.HoldsAtRail ? regulated : Rail(CircuitPressure.RailBeyond(regulated, forward), "CircuitPressure.RailBeyond");
        Ends(suction, _task.HoldsAtRail ? forward : before, regulated);
        return rail;
    }

    private Traced Rail(Traced number, string law) =>
        _to.Step("rail pressure", "p_r", number, "Pa", Gauge(_state.RailGauge), $"gauge; {Governs}", law: law);

    private Traced Regulator(Traced number, string law) =>
        _to.Step("pressure at the regulator", "p_reg", number, "Pa", Gauge(number.Value), "gauge; the regulator at the tank, before the line to the rail", law: law);

    private Traced Returned(Traced pump) =>
        _to.Step("flow returned to the tank", "Q_ret", PumpDuty.Returned(pump, _injected), "m³/s", Flow(PumpDuty.Returned(pump, _injected).Value), "continuity", law: "PumpDuty.Returned");

    private void Required(Traced suction, Traced forward, Traced held)
    {
        Ends(suction, forward, held);
        Traced losses = CircuitPressure.Losses(suction, forward);
        Traced required = CircuitPressure.RiseRequired(losses, held);
        _to.Step("pressure rise by the system curve", "Δp_sys", required, "Pa", Gauge(required.Value), "losses and the pressure that is held", law: "CircuitPressure.RiseRequired");
    }

    private void Ends(Traced suction, Traced forward, Traced held)
    {
        if (_task.Plumbing.HasSuction)
        {
            _to.Step("pressure at the pump's inlet", "p_pi", CircuitPressure.Inlet(suction), "Pa", Gauge(_state.InletGauge), "gauge", law: "CircuitPressure.Inlet");
        }

        _to.Step(
            "pressure at the pump's outlet", "p_po", CircuitPressure.Outlet(held, forward), "Pa", Gauge(_state.OutletGauge), "gauge", law: "CircuitPressure.Outlet");
    }

    /// <summary>The rise of the pumps' curves at the flow.</summary>
    private Traced Curve(Traced pump)
    {
        Traced fed = _supply;
        if (IsSlowed)
        {
            const string Name = "voltage that the controller gives the pumps";
            string volts = _to.Style.Of(ElectricPotential.FromVolts(_state.FedVoltage));
            fed = _state.State switch
            {
                RailState.PumpFloor => _to.Given(Name, "V_f", _state.FedVoltage, "V", volts, "the lowest at which it runs them"),
                RailState.Sagging => _to.Given(Name, "V_f", _state.FedVoltage, "V", volts, "the full supply"),
                _ => _to.Solved(Name, "V_f", _state.FedVoltage, "V", volts, "solved: it slows the pumps until Δp_p = Δp_sys"),
            };
        }

        double rise = _state.Running.RiseAt(_state.Flow);
        bool upright = Math.Abs(rise - _state.PumpRise) > SameRise * _task.Set;
        double value = upright ? _state.PumpRise : rise;
        Traced given = _to.Table(
            "pressure rise by the pumps' curves",
            "Δp_p",
            value,
            "Pa",
            Gauge(value),
            $"{Curves()}{(_task.Pump.HasOwnLines ? $", at the joint: less what each one's own lines lose ({Branches()})" : string.Empty)}, at {Flow(pump.Value)}{(upright ? "; the curve stands upright here" : string.Empty)}");
        if (!_task.Pump.HasOwnLines)
        {
            new PumpWorking(_to, _supply).Write(_state, fed, given);
        }

        return given;
    }

    private string Branches() => string.Join("; ", BranchResult.Of(_task, _state).Select(branch => branch.IsShut
        ? $"{branch.Branch.Name} shut"
        : $"{branch.Branch.Name} {_to.Style.PumpFlow(branch.Flow)}, {_to.Style.PressureLoss(branch.Suction.Concat(branch.Discharge).Aggregate(Pressure.Zero, (sum, part) => sum + part.PressureLoss))} lost"));

    private string Curves() => string.Join(
        "; ", _state.Pumps.Select(point => point.IsStopped ? $"{point.Pump.Name} off" : $"curve of {point.Pump.Name} at {_to.Style.Of(ElectricPotential.FromVolts(point.Voltage))} at its motor").Distinct());

    /// <summary>What the parts of a path lose at a flow, and their sum.</summary>
    private Traced Path(string name, string symbol, IReadOnlyList<IFlowLoss> parts, Traced flow)
    {
        Traced sum = 0;
        foreach (IFlowLoss part in parts)
        {
            sum += PathWorking.Loss(_to, part, (++_parts).ToString(CultureInfo.InvariantCulture), flow, _density, Viscosity());
        }

        return parts.Count == 0
            ? sum
            : _to.Step($"pressure loss {name}", symbol, sum, "Pa", _to.Style.PressureLoss(Pressure.FromPascals(sum.Value)), $"at {Flow(flow.Value)}");
    }

    private Traced Viscosity() => _viscosity.Term is not null
        ? _viscosity
        : _viscosity = _to.Table(
            "kinematic viscosity of the fuel",
            "ν",
            _task.KinematicViscosity,
            "m²/s",
            string.Create(CultureInfo.InvariantCulture, $"{_task.KinematicViscosity * 1e6:0.000} mm²/s"),
            $"{_system.Demand.Consumption.Fuel.Name} at {_to.Style.Of(Temperature.FromKelvins(_conditions.ColdestKelvins))}",
            intermediate: true);

    private Traced Equal(string name, string symbol, Traced number, string source) => Equal(name, symbol, number, Gauge(number.Value), source);

    private Traced Equal(string name, string symbol, Traced number, string readable, string source) =>
        _to.Step(name, symbol, number, symbol[0] == 'Q' ? "m³/s" : "Pa", readable, source);

    private string Governs => _state.State switch
    {
        RailState.Regulated => IsSlowed ? "held by the controller" : "held by the regulator",
        RailState.AtRegulatorLimit => "held by the regulator, barely: little returns",
        RailState.ReturnFloor => "held up by the return line, which passes the surplus only at this pressure",
        RailState.PumpFloor => "pumps at their lowest speed, which is more than the set pressure takes",
        RailState.Sagging => "the regulator is shut: the rail sags to where the pumps meet the demand",
        _ => $"{_state.State}",
    };

    private string Gauge(double pascals) => _to.Style.Of(Pressure.FromPascals(pascals));

    private string Flow(double flow) => _to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(flow));
}
