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

    private readonly Derivation _to = new();
    private readonly OperatingResult _result;
    private readonly SystemParts _system;
    private readonly Conditions _conditions;

    private WorkingWriter(OperatingResult result) =>
        (_result, _system, _conditions) = (result, result.Parts, result.Point.Conditions);

    /// <summary>The working of a result.</summary>
    public static Working Of(OperatingResult result)
    {
        WorkingWriter writer = new(result);
        writer.Write();
        return writer._to.Of($"{result.Point}");
    }

    private void Write()
    {
        SolvedCircuit circuit = _result.SolvedCircuit;
        DemandInput<Real> at = _system.Demand.InputAt(_result.Point.Speed, _result.Point.Boost, _conditions.Atmosphere);
        Traced speed = _to.Given("engine speed", "n", at.Speed, "rev/s", Readable.Of(_result.Point.Speed), "operating point");
        Traced cycle = _to.Given(
            "revolutions per engine cycle", "k", _system.Demand.Engine.RevolutionsPerCycle, "1", Number(_system.Demand.Engine.RevolutionsPerCycle), _system.Demand.Engine.Name);
        Traced boost = _to.Given("boost", "p_b", at.Boost, "Pa", Readable.Boost(_result.Point.Boost), "operating point");
        Traced ambient = _to.Given("ambient pressure, absolute", "p_0", at.Ambient, "Pa", Readable.Of(_conditions.Atmosphere.Pressure), "conditions");
        (Traced manifold, Traced fuel) = DemandWorking.Write(_to, _result, at, speed, cycle, boost, ambient);

        Traced density = _to.Table(
            "density of the fuel", "ρ", circuit.Task.Density, "kg/m³", Readable.Of(_result.FuelDensity), $"{_system.Demand.Consumption.Fuel.Name} at {Readable.Of(_conditions.FuelTemperature)}; ASTM D1250-80, table 54B, for petrol, blends by mass");
        Traced injected = _to.Step(
            "fuel injected, by volume", "Q_f", FuelDemandFlow.Volume(fuel, density), "m³/s", Readable.PumpFlow(_result.InjectedFlow), Definition);
        Traced set = _to.Step(
            "rail pressure, set", "p_s", Set(_system.Regulator, boost), "Pa", Readable.Of(_result.RailSetGauge), $"gauge; {_system.Regulator.Description}");
        Traced rail = new CircuitWorking(_to, circuit, _system, _conditions, injected, density, set).Write();
        Injection(speed, cycle, ambient, manifold, rail, injected, density);
    }

    /// <summary>The pressure that a regulator sets, by its kind's own equation.</summary>
    private Traced Set(PressureRegulator regulator, Traced boost)
    {
        Traced set = regulator is RegulatorSeries pair
            ? RailPressure.InSeries(
                _to.Step("pressure that the base regulator sets", "p_s1", Set(pair.BaseRegulator, boost, "1"), "Pa", Readable.Of(pair.BaseRegulator.RailGauge(_result.Point.Boost)), pair.BaseRegulator.Description),
                _to.Step("pressure that the unit in series sets", "p_s2", Set(pair.Unit, boost, "2"), "Pa", Readable.Of(pair.Unit.RailGauge(_result.Point.Boost)), pair.Unit.Description))
            : Set(regulator, boost, string.Empty);
        double offset = regulator.OffsetPascals;
        return offset == 0
            ? set
            : set + _to.Given("offset of this regulator", "p_off", offset, "Pa", Readable.PressureChange(Pressure.FromPascals(offset)), "regulator");
    }

    private Traced Set(PressureRegulator regulator, Traced boost, string mark)
    {
        RailSetting setting = regulator.Setting!.Value;
        string Pascals(double value) => Readable.Of(Pressure.FromPascals(value));
        Traced Known(string name, string symbol, double value, string unit, string readable) =>
            _to.Given(name, mark.Length == 0 || symbol.Contains('_', StringComparison.Ordinal) ? symbol + mark : $"{symbol}_{mark}", value, unit, readable, regulator.Description);

        // A gain of 0 or 1, an onset at no boost and a ceiling that is not there are no figures of this regulator.
        bool rises = setting.Gain is not (0 or 1);
        Traced set = RailPressure.Set(
            setting.Base == 0 ? 0 : Known("base pressure of the regulator", "p_base", setting.Base, "Pa", Pascals(setting.Base)),
            setting.GainBelowOnset,
            rises ? Known("gain of the regulator", "g", setting.Gain, "1", Number(setting.Gain)) : setting.Gain,
            rises ? Known("onset of the gain", "o", setting.Onset, "Pa", Readable.Boost(Pressure.FromPascals(setting.Onset))) : setting.Onset,
            double.IsFinite(setting.Ceiling) ? Known("ceiling of the regulator", "p_max", setting.Ceiling, "Pa", Pascals(setting.Ceiling)) : setting.Ceiling,
            boost);
        return mark.Length > 0 && regulator.OffsetPascals != 0
            ? set + Known("offset of this regulator", "p_off", regulator.OffsetPascals, "Pa", Readable.PressureChange(Pressure.FromPascals(regulator.OffsetPascals)))
            : set;
    }

    private void Injection(Traced speed, Traced cycle, Traced ambient, Traced manifold, Traced rail, Traced injected, Traced density)
    {
        Injectors.Injector injector = _system.Injectors.Injector;
        InjectionConstants<Real> own = _system.Injection;
        Traced differential = _to.Step(
            "pressure across the injector", "Δp", RailPressure.Differential(rail, ambient, manifold), "Pa", Readable.Of(_result.InjectorDifferential), Definition);
        InjectionConstants<Traced> set = new(
            _to.Given("rated flow of one injector", "Q_r", own.RatedFlow, "m³/s", Readable.InjectorFlow(injector.StaticFlow), injector.Name),
            _to.Given("rated pressure across the injector", "Δp_r", own.RatedDifferential.Value, "Pa", Readable.Of(injector.RatedDifferential), injector.Name),
            _to.Given("density of the test liquid", "ρ_r", own.TestFluidDensity, "kg/m³", Readable.Of(injector.TestFluid.Density), injector.TestFluid.Name),
            _to.Given("injectors", "z", own.Count.Value, "1", Number(own.Count.Value), injector.Name),
            _to.Given("injections per engine cycle", "i", own.InjectionsPerCycle, "1", Number(own.InjectionsPerCycle), injector.Name),
            cycle);

        // Static flow and available time depend on no dead time: they are there, whatever the dead-time table covers.
        InjectionState<Traced> State(Traced dead) => InjectionChain.Evaluate(
            set, new InjectionInput<Traced>(speed, differential, dead, injected, density));
        InjectionState<Traced> open = State(0);
        Traced flow = _to.Step(
            "static flow of one injector", "Q_s", open.StaticFlow, "m³/s", Readable.InjectorFlow(_result.StaticFlow), "orifice equation, taken against the rated point");
        Traced available = _to.Step("time for a pulse", "T", open.AvailableTime, "s", Readable.Of(_result.AvailableTime), "from the start of one injection to that of the next");
        string place = $"{Readable.Of(_conditions.SupplyVoltage)} and {Readable.Of(_result.InjectorDifferential)} across the injector";
        if (_result.Actual.DeadTime is not { } seconds)
        {
            string reason = $"the dead-time table covers {injector.DeadTime.Coverage}, not {place}";
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
            Readable.Of(Duration.FromSeconds(seconds)),
            $"dead-time table of {injector.Name}, at {(injector.DeadTime.IgnoresPressure ? Readable.Of(_conditions.SupplyVoltage) : place)}");
        if (_result.Pulse is not { } length || _result.DutyCycle is not { } share)
        {
            const string Reason = "no fuel flows: the pressure across the injector is not above zero";
            _to.NotKnown("pulse", "t", Reason);
            _to.NotKnown("duty cycle", "D", Reason);
            return;
        }

        Traced pulse = _to.Step(
            "pulse",
            "t",
            InjectorFlow.Pulse(dead, injected, set.Count, available, flow),
            "s",
            Readable.Of(length),
            "dead time, and fuel per injection at the static flow");
        _to.Step("duty cycle", "D", InjectorFlow.DutyCycle(pulse, available), "1", Readable.DutyCycle(share), Definition);
    }

    private static string Number(double value) => Term.Text(value);
}
