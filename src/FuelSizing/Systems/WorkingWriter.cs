using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Runs a result's equations once more on numbers that remember where they come from.</summary>
internal sealed class WorkingWriter
{
    private const string Definition = "definition";

    private readonly Derivation _to;
    private readonly SolvedPoint _result;
    private readonly SystemParts _system;
    private readonly Conditions _conditions;

    private WorkingWriter(SolvedPoint result, TextStyle style) =>
        (_result, _system, _conditions, _to) = (result, result.Parts, result.Point.Conditions, new(style));

    /// <summary>The working of a result.</summary>
    /// <param name="result">A solved point.</param>
    /// <param name="style">Units and culture of the figures beside their SI values.</param>
    public static Working Of(SolvedPoint result, TextStyle style)
    {
        WorkingWriter writer = new(result, style);
        writer.Write();
        return writer._to.Of(result.Point.In(style));
    }

    private void Write()
    {
        SolvedCircuit circuit = _result.SolvedCircuit;
        DemandInput<Real> at = _system.Demand.InputAt(_result.Point.Speed, _result.Point.Boost, _conditions.Atmosphere);
        Traced speed = _to.Given("engine speed", "n", at.Speed, "rev/s", _to.Style.Of(_result.Point.Speed), "operating point");
        Traced cycle = _to.Given(
            "revolutions per engine cycle", "k", _system.Demand.Engine.RevolutionsPerCycle, "1", Number(_system.Demand.Engine.RevolutionsPerCycle), _system.Demand.Engine.Name);
        Traced boost = _to.Given("boost", "p_b", at.Boost, "Pa", _to.Style.Boost(_result.Point.Boost), "operating point");
        Traced ambient = _to.Given("ambient pressure, absolute", "p_0", at.Ambient, "Pa", _to.Style.Of(_conditions.Atmosphere.Pressure), "conditions");
        (Traced manifold, Traced fuel) = DemandWorking.Write(_to, _result, at, speed, cycle, boost, ambient);

        Traced density = _to.Table(
            "density of the fuel", "ρ", circuit.Task.Density, "kg/m³", _to.Style.Of(_result.FuelDensity), $"{_system.Demand.Consumption.Fuel.Name} at {_to.Style.Of(_conditions.FuelTemperature)}; ASTM D1250-80, table 54B, for petrol, blends by mass");
        Traced injected = _to.Step(
            "fuel injected, by volume", "Q_f", FuelDemandFlow.Volume(fuel, density), "m³/s", _to.Style.PumpFlow(_result.InjectedFlow), Definition);
        Traced set = _to.Step(
            "rail pressure, set", "p_s", Set(_system.Regulator, boost), "Pa", _to.Style.Of(_result.RailSetGauge), $"gauge; {_system.Regulator.Text.In(_to.Style)}");
        Traced rail = new CircuitWorking(_to, circuit, _system, _conditions, injected, density, set).Write();
        Injection(speed, cycle, ambient, manifold, rail, injected, density);
    }

    /// <summary>The pressure that a regulator sets, by its kind's own equation.</summary>
    private Traced Set(PressureRegulator regulator, Traced boost)
    {
        Traced set = regulator is RegulatorSeries pair
            ? RailPressure.InSeries(
                _to.Step("pressure that the base regulator sets", "p_s1", Set(pair.BaseRegulator, boost, "1"), "Pa", _to.Style.Of(pair.BaseRegulator.RailGauge(_result.Point.Boost)), pair.BaseRegulator.Text.In(_to.Style)),
                _to.Step("pressure that the unit in series sets", "p_s2", Set(pair.Unit, boost, "2"), "Pa", _to.Style.Of(pair.Unit.RailGauge(_result.Point.Boost)), pair.Unit.Text.In(_to.Style)))
            : Set(regulator, boost, string.Empty);
        double offset = regulator.OffsetPascals;
        return offset == 0
            ? set
            : set + _to.Given("offset of this regulator", "p_off", offset, "Pa", _to.Style.PressureChange(Pressure.FromPascals(offset)), "regulator");
    }

    private Traced Set(PressureRegulator regulator, Traced boost, string mark)
    {
        RailSetting setting = regulator.Setting!.Value;
        string Pascals(double value) => _to.Style.Of(Pressure.FromPascals(value));
        Traced Known(string name, string symbol, double value, string unit, string readable) =>
            _to.Given(name, Derivation.Marked(symbol, mark), value, unit, readable, regulator.Text.In(_to.Style));

        // A gain of 0 or 1, an onset at no boost and a ceiling that is not there are no figures of this regulator.
        bool rises = setting.Gain is not (0 or 1);
        Traced set = RailPressure.Set(
            setting.Base == 0 ? 0 : Known("base pressure of the regulator", "p_base", setting.Base, "Pa", Pascals(setting.Base)),
            setting.GainBelowOnset,
            rises ? Known("gain of the regulator", "G", setting.Gain, "1", Number(setting.Gain)) : setting.Gain,
            rises ? Known("onset of the gain", "p_on", setting.Onset, "Pa", _to.Style.Boost(Pressure.FromPascals(setting.Onset))) : setting.Onset,
            double.IsFinite(setting.Ceiling) ? Known("ceiling of the regulator", "p_max", setting.Ceiling, "Pa", Pascals(setting.Ceiling)) : setting.Ceiling,
            boost);
        return mark.Length > 0 && regulator.OffsetPascals != 0
            ? set + Known("offset of this regulator", "p_off", regulator.OffsetPascals, "Pa", _to.Style.PressureChange(Pressure.FromPascals(regulator.OffsetPascals)))
            : set;
    }

    private void Injection(Traced speed, Traced cycle, Traced ambient, Traced manifold, Traced rail, Traced injected, Traced density)
    {
        Injectors.Injector injector = _system.Injectors.Injector;
        InjectionConstants<Real> own = _system.Injection;
        Traced differential = _to.Step(
            "pressure across the injector", "Δp", RailPressure.Differential(rail, ambient, manifold), "Pa", _to.Style.Of(_result.InjectorDifferential), Definition);
        Traced ratedAt = _to.Given("rated pressure across the injector", "Δp_r", own.RatedDifferential.Value, "Pa", _to.Style.Of(injector.RatedDifferential), injector.Name);
        InjectionConstants<Traced> set = new(
            injector.MeasuredAround(differential.Value) is { } around
                ? Rating(around, differential, ratedAt)
                : _to.Given("rated flow of one injector", "Q_r", own.RatedFlow, "m³/s", _to.Style.InjectorFlow(injector.StaticFlow), injector.Name),
            ratedAt,
            _to.Given("density of the test liquid", "ρ_r", own.TestFluidDensity, "kg/m³", _to.Style.Of(injector.TestFluid.Density), injector.TestFluid.Name),
            _to.Given("injectors", "N", own.Count.Value, "1", Number(own.Count.Value), injector.Name),
            _to.Given("injections per engine cycle", "i", own.InjectionsPerCycle, "1", Number(own.InjectionsPerCycle), injector.Name),
            cycle);

        // Static flow and available time depend on no dead time: they are there, whatever the dead-time table covers.
        InjectionState<Traced> State(Traced dead) => InjectionChain.Evaluate(
            set, new InjectionInput<Traced>(speed, differential, dead, injected, density));
        InjectionState<Traced> open = State(0);
        const string Passed = "static flow of one injector";
        string lacking = "no fuel flows: the pressure across the injector is not above zero";
        Traced flow = open.StaticFlow;
        if (_result.StaticFlow is { } passed)
        {
            flow = _to.Step(Passed, "Q_s", flow, "m³/s", _to.Style.InjectorFlow(passed), "orifice equation, taken against the rated point");
        }
        else
        {
            lacking = $"the flow of {injector.Name} is known from {_to.Style.Of(injector.MinimumDifferential)} across it, not at {_to.Style.Of(_result.InjectorDifferential)}";
            _to.NotKnown(Passed, "Q_s", lacking);
        }

        Traced available = _to.Step("time for a pulse", "t_c", open.AvailableTime, "s", _to.Style.Of(_result.AvailableTime), "from the start of one injection to that of the next");
        string place = $"{_to.Style.Of(_conditions.SupplyVoltage)} and {_to.Style.Of(_result.InjectorDifferential)} across the injector";
        if (_result.Actual.DeadTime is not { } seconds)
        {
            string reason = $"the dead-time table covers {injector.DeadTime.Coverage.In(_to.Style)}, not {place}";
            _to.NotKnown("dead time", "t_d", reason);
            _to.NotKnown("pulse", "t", reason);
            _to.NotKnown("duty cycle", "D", reason);
            return;
        }

        Traced dead = _to.Table(
            "dead time",
            "t_d",
            seconds,
            "s",
            _to.Style.Of(Duration.FromSeconds(seconds)),
            $"dead-time table of {injector.Name}, at {(injector.DeadTime.IgnoresPressure ? _to.Style.Of(_conditions.SupplyVoltage) : place)}");
        if (_result.Pulse is not { } length || _result.DutyCycle is not { } share)
        {
            _to.NotKnown("pulse", "t", lacking);
            _to.NotKnown("duty cycle", "D", lacking);
            return;
        }

        Traced pulse = _to.Step(
            "pulse",
            "t",
            InjectorFlow.Pulse(dead, injected, set.Count, available, flow),
            "s",
            _to.Style.Of(length),
            "dead time, and fuel per injection at the static flow");
        _to.Step("duty cycle", "D", InjectorFlow.DutyCycle(pulse, available), "1", _to.Style.DutyCycle(share), Definition);
    }

    // The rating that the square-root law has at the differential: that of the points around it, straight between them.
    private Traced Rating(((Pressure Differential, VolumeFlow Flow) Under, (Pressure Differential, VolumeFlow Flow) Over) around, Traced differential, Traced ratedAt)
    {
        ((Pressure Differential, VolumeFlow Flow) under, (Pressure Differential, VolumeFlow Flow) over) = around;
        (Traced at, Traced rating) = Of(under, "1");
        if (under.Differential < over.Differential)
        {
            (Traced next, Traced more) = Of(over, "2");
            rating = StraightLine.Through(at, rating, next, more, differential);
        }

        return _to.Step(
            "rated flow by the flows measured around this pressure",
            "Q_r",
            rating,
            "m³/s",
            _to.Style.InjectorFlow(VolumeFlow.FromCubicMetersPerSecond(rating.Value)),
            "the square-root law through each measured point, straight between two");

        (Traced Differential, Traced Rating) Of((Pressure Differential, VolumeFlow Flow) point, string mark)
        {
            string name = _system.Injectors.Injector.Name;
            Traced across = _to.Given(
                "pressure at which a flow was measured", Derivation.Marked("Δp_m", mark), point.Differential.Pascals, "Pa", _to.Style.Of(point.Differential), name);
            Traced passed = _to.Given(
                "flow measured there", Derivation.Marked("Q_m", mark), point.Flow.CubicMetersPerSecond, "m³/s", _to.Style.InjectorFlow(point.Flow), name);
            return (across, InjectorFlow.Rated(passed, ratedAt, 1, across, 1));
        }
    }

    private static string Number(double value) => Term.Text(value);
}
