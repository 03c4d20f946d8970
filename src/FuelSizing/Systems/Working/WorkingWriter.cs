using FuelSizing.Checks;
using FuelSizing.Equations;
using FuelSizing.Injectors;
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
    private readonly IReadOnlyList<Margin> _margins;
    private readonly SystemParts _system;
    private readonly Conditions _conditions;
    private Traced _supply;

    private WorkingWriter(SolvedPoint result, IReadOnlyList<Margin> margins, TextStyle style) =>
        (_result, _margins, _system, _conditions, _to) = (result, margins, result.Parts, result.Point.Conditions, new(style));

    /// <summary>The working of a result.</summary>
    /// <param name="result">A solved point.</param>
    /// <param name="margins">How its checks came out.</param>
    /// <param name="style">Units and culture of the figures beside their SI values.</param>
    public static Working Of(SolvedPoint result, IReadOnlyList<Margin> margins, TextStyle style)
    {
        WorkingWriter writer = new(result, margins, style);
        writer.Write();
        return writer._to.Of(result.Point.In(style), "ṁ_f", "p_r", "Δp", "Q_s", "D");
    }

    /// <summary>The working of a result, and with it both sides of what an answer solves there.</summary>
    /// <param name="result">A solved point.</param>
    /// <param name="margins">How its checks came out.</param>
    /// <param name="style">Units and culture of the figures beside their SI values.</param>
    /// <param name="subject">What it is the working of.</param>
    /// <param name="sides">Writes the sides; gives the symbols of the lines that matter most.</param>
    public static Working Of(SolvedPoint result, IReadOnlyList<Margin> margins, TextStyle style, string subject, Func<Derivation, string[]> sides)
    {
        WorkingWriter writer = new(result, margins, style);
        writer.Write();
        return writer._to.Of(subject, sides(writer._to));
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
        _supply = _to.Given("supply voltage", "V_s", _conditions.SupplyVolts, "V", _to.Style.Of(_conditions.SupplyVoltage), "conditions");
        (Traced manifold, Traced fuel) = DemandWorking.Write(_to, _result, at, speed, cycle, boost, ambient);

        Traced density = _to.Table(
            "density of the fuel", "ρ", circuit.Task.Density, "kg/m³", _to.Style.Of(_result.FuelDensity), $"{_system.Demand.Consumption.Fuel.Name} at {_to.Style.Of(_conditions.FuelTemperature)}; ASTM D1250-80, table 54B, for petrol, blends by mass");
        double takenBack = _result.SolvedDemand.TakenBack;
        Traced volume = FuelDemandFlow.Volume(fuel, density);
        Traced injected = _to.Step(
            "fuel injected, by volume",
            "Q_f",
            takenBack > 0
                ? volume * (1 - _to.Given("share of main fuel taken back for the second stream", "x_tb", takenBack, "1", _to.Style.Of(UnitsNet.Ratio.FromDecimalFractions(takenBack)), _system.SecondStream!.Name))
                : volume,
            "m³/s",
            _to.Style.PumpFlow(_result.InjectedFlow),
            Definition, law: "FuelDemandFlow.Volume");
        Traced set = _to.Step(
            "rail pressure, set", "p_s", Set(_system.Regulator, boost), "Pa", _to.Style.Of(_result.RailSetGauge), $"gauge; {_system.Regulator.Text.In(_to.Style)}", law: _system.Regulator is RegulatorSeries ? "RailPressure.InSeries" : LawOf(_system.Regulator));
        Traced rail = new CircuitWorking(_to, circuit, _system, _conditions, _supply, injected, density, set).Write();
        Injection(speed, cycle, ambient, manifold, rail, injected, density, boost);
        if (_result.SolvedDemand.Stream is null)
        {
            MixtureWorking.Write(_to, _result, new(injected, density, ambient, manifold));
        }

        MarginWorking.Write(_to, _result, _margins);
    }

    /// <summary>The pressure that a regulator sets, by its kind's own equation.</summary>
    private Traced Set(PressureRegulator regulator, Traced boost)
    {
        Traced set = regulator is RegulatorSeries pair
            ? RailPressure.InSeries(
                _to.Step("pressure that the base regulator sets", "p_s1", Set(pair.BaseRegulator, boost, "1"), "Pa", _to.Style.Of(pair.BaseRegulator.RailGauge(_result.Point.Boost)), pair.BaseRegulator.Text.In(_to.Style), law: LawOf(pair.BaseRegulator)),
                _to.Step("pressure that the unit in series sets", "p_s2", Set(pair.Unit, boost, "2"), "Pa", _to.Style.Of(pair.Unit.RailGauge(_result.Point.Boost)), pair.Unit.Text.In(_to.Style), law: LawOf(pair.Unit)))
            : Set(regulator, boost, string.Empty);
        double offset = regulator.OffsetPascals;
        return offset == 0
            ? set
            : set + _to.Given("offset of this regulator", "p_off", offset, "Pa", _to.Style.PressureChange(Pressure.FromPascals(offset)), "regulator");
    }

    // A law of its own is in no index.
    private static string? LawOf(PressureRegulator regulator) => regulator is CustomRegulator ? null : "RailPressure.Set";

    private Traced Set(PressureRegulator regulator, Traced boost, string mark)
    {
        if (regulator is CustomRegulator own)
        {
            Pressure law = own.Law.RailGauge(_result.Point.Boost);
            Traced read = _to.Table(
                "pressure by the regulator's own law", Derivation.Marked("p_law", mark), law.Pascals, "Pa", _to.Style.Of(law), $"{own.Law.Text.In(_to.Style)}, at {_to.Style.Boost(_result.Point.Boost)}");
            return mark.Length > 0 && own.OffsetPascals != 0
                ? read + _to.Given("offset of this regulator", Derivation.Marked("p_off", mark), own.OffsetPascals, "Pa", _to.Style.PressureChange(Pressure.FromPascals(own.OffsetPascals)), "regulator")
                : read;
        }

        RailSetting setting = regulator.Setting!.Value;
        string Pascals(double value) => _to.Style.Of(Pressure.FromPascals(value));
        Traced Known(string name, string symbol, double value, string unit, string readable) =>
            _to.Given(name, Derivation.Marked(symbol, mark), value, unit, readable, regulator.Text.In(_to.Style));

        // A gain of 0 or 1, an onset at no boost and a ceiling that is not there are no figures of this regulator.
        bool rises = setting.Gain is not (0 or 1);
        Traced pressure = RailPressure.Set(
            setting.Base == 0 ? 0 : Known("base pressure of the regulator", "p_base", setting.Base, "Pa", Pascals(setting.Base)),
            setting.GainBelowOnset,
            rises ? Known("gain of the regulator", "G", setting.Gain, "1", Number(setting.Gain)) : setting.Gain,
            rises ? Known("onset of the gain", "p_on", setting.Onset, "Pa", _to.Style.Boost(Pressure.FromPascals(setting.Onset))) : setting.Onset,
            double.IsFinite(setting.Ceiling) ? Known("ceiling of the regulator", "p_max", setting.Ceiling, "Pa", Pascals(setting.Ceiling)) : setting.Ceiling,
            boost);
        return mark.Length > 0 && regulator.OffsetPascals != 0
            ? pressure + Known("offset of this regulator", "p_off", regulator.OffsetPascals, "Pa", _to.Style.PressureChange(Pressure.FromPascals(regulator.OffsetPascals)))
            : pressure;
    }

    private void Injection(Traced speed, Traced cycle, Traced ambient, Traced manifold, Traced rail, Traced injected, Traced density, Traced boost)
    {
        Traced differential = _to.Step(
            "pressure across the injector", "Δp", RailPressure.Differential(rail, ambient, manifold), "Pa", _to.Style.Of(_result.InjectorDifferential), Definition, law: "RailPressure.Differential");
        InjectionPoint<Traced> point = new(speed, cycle, differential, density);
        if (_result.Actual.Secondary is not { } secondary)
        {
            Set(_system.Injectors, _result.Actual, string.Empty, point, _ => injected);
            return;
        }

        Traced? second = null;
        Set(_system.Injectors, _result.Actual, string.Empty, point, primary =>
        {
            second = Split(secondary, injected, boost, primary);
            return second is { } part
                ? _to.Step("fuel of the primary set", "Q_f1", injected - part, "m³/s", _to.Style.PumpFlow(_result.PrimaryFlow!.Value), "mass balance: both sets inject the fuel of the engine")
                : injected;
        });
        if (secondary.IsIdle)
        {
            return;
        }

        const string Reason = "what each set carries follows the duty cycle of the primary set, which is not known";

        // A split by boost does not wait for the primary set's dead time.
        second ??= _system.StagedInjectors!.HandOver.IsByDutyCycle ? null : Split(secondary, injected, boost, null);
        if (second is { } fuel)
        {
            Set(_system.StagedInjectors!.Secondary, secondary.Injection, "2", point, _ => fuel);
        }
        else
        {
            _to.NotKnown("share of the fuel that the secondary set carries", "x_s", Reason);
        }
    }

    /// <summary>Fuel of the secondary set; none where it is idle, or where the split is not known.</summary>
    private Traced? Split(SecondaryState secondary, Traced injected, Traced boost, OpenInjector<Traced>? primary)
    {
        HandOver handOver = _system.StagedInjectors!.HandOver;
        if (secondary.IsIdle)
        {
            _to.Given("share of the fuel that the secondary set carries", "x_s", 0, "1", _to.Style.Of(Ratio.Zero), $"idle: it injects {handOver.Text.In(_to.Style)}");
            return null;
        }

        Traced Known(string name, string symbol, Ratio ratio) => _to.Given(name, symbol, ratio.DecimalFractions, "1", _to.Style.Of(ratio), "hand-over");
        Traced atBegin = Known("share of the fuel just above the begin of the hand-over", "x_b", handOver.ShareAtBegin);
        Traced full = Known("share of the fuel at full hand-over", "x_f", handOver.Share);
        Traced share;
        if (handOver is { BeginBoost: { } from, FullBoost: { } to })
        {
            share = StagedFlow.ShareByBoost(
                boost,
                _to.Given("boost at which the hand-over begins", "p_hb", from.Pascals, "Pa", _to.Style.Boost(from), "hand-over"),
                _to.Given("boost at which the hand-over is full", "p_hf", to.Pascals, "Pa", _to.Style.Boost(to), "hand-over"),
                atBegin,
                full);
        }
        else if (primary is { } open)
        {
            Traced begin = _to.Given("duty cycle of the primary set at which the hand-over begins", "D_h", handOver.BeginDuty!.Value, "1", _to.Style.DutyCycle(handOver.BeginDutyCycle!.Value), "hand-over");
            Traced carried = _to.Step(
                "fuel that the primary set passes at that duty cycle",
                "Q_h",
                InjectorFlow.Capacity(open.Flow, open.Count, open.Available, begin, open.Dead),
                "m³/s",
                _to.Style.PumpFlow(VolumeFlow.FromCubicMetersPerSecond(secondary.PrimaryAtBegin)),
                "static flow, for that duty cycle less the dead time", law: "InjectorFlow.Capacity");
            share = StagedFlow.ShareByDutyCycle(injected, carried, atBegin, full);
        }
        else
        {
            return null;
        }

        SecondaryInjection shown = _result.SecondaryInjection!;
        share = _to.Step("share of the fuel that the secondary set carries", "x_s", share, "1", _to.Style.Of(shown.Share!.Value), "hand-over", law: handOver.IsByDutyCycle ? "StagedFlow.ShareByDutyCycle" : "StagedFlow.ShareByBoost");
        return _to.Step("fuel of the secondary set", "Q_f2", StagedFlow.Secondary(injected, share), "m³/s", _to.Style.PumpFlow(shown.Flow!.Value), Definition, law: "StagedFlow.Secondary");
    }

    /// <summary>One set of injectors, from differential pressure to duty cycle.</summary>
    /// <param name="injectors">The set.</param>
    /// <param name="own">How its fuel goes in.</param>
    /// <param name="mark">Behind the symbols of the secondary set.</param>
    /// <param name="point">Where.</param>
    /// <param name="fuelOf">Its fuel, asked for where the static flow and the dead time are known.</param>
    private void Set(InjectorSet injectors, Injection own, string mark, InjectionPoint<Traced> point, Func<OpenInjector<Traced>, Traced> fuelOf)
    {
        Injector injector = injectors.Injector;
        string of = mark.Length > 0 ? ", secondary set" : string.Empty;
        Pressure across = Pressure.FromPascals(own.Differential);
        Traced ratedAt = _to.Given($"rated pressure across the injector{of}", Derivation.Marked("Δp_r", mark), injector.RatedPascals, "Pa", _to.Style.Of(injector.RatedDifferential), injector.Name);
        InjectionConstants<Traced> set = new(
            injector.MeasuredAround(point.Differential.Value) is { } around
                ? Rating(injector, around, point.Differential, ratedAt, mark)
                : _to.Given($"rated flow of one injector{of}", Derivation.Marked("Q_r", mark), injector.RatedFlow, "m³/s", _to.Style.InjectorFlow(injector.StaticFlow), injector.Name),
            ratedAt,
            _to.Given($"density of the test liquid{of}", Derivation.Marked("ρ_r", mark), injector.TestDensity, "kg/m³", _to.Style.Of(injector.TestFluid.Density), injector.TestFluid.Name),
            _to.Given($"injectors{of}", Derivation.Marked("N", mark), injectors.Count, "1", Number(injectors.Count), injector.Name),
            _to.Given($"injections per engine cycle{of}", Derivation.Marked("i", mark), injectors.InjectionsPerCycle, "1", Number(injectors.InjectionsPerCycle), injector.Name),
            point.Cycle);

        // Static flow and available time depend on no dead time: they are there, whatever the dead-time table covers.
        InjectionState<Traced> open = InjectionChain.Evaluate(
            set, new InjectionInput<Traced>(point.Speed, point.Differential, 0, 0, point.Density));
        string passedBy = $"static flow of one injector{of}";
        (string deadTime, string pulseOf, string dutyOf) = ($"dead time{of}", $"pulse{of}", $"duty cycle{of}");
        string lacking = "no fuel flows: the pressure across the injector is not above zero";
        Traced flow = open.StaticFlow;
        if (!double.IsNaN(own.StaticFlow))
        {
            flow = _to.Step(passedBy, Derivation.Marked("Q_s", mark), flow, "m³/s", _to.Style.InjectorFlow(VolumeFlow.FromCubicMetersPerSecond(own.StaticFlow)), "orifice equation, taken against the rated point", law: "InjectorFlow.Static");
        }
        else
        {
            lacking = $"the flow of {injector.Name} is known from {_to.Style.Of(injector.MinimumDifferential)} across it, not at {_to.Style.Of(across)}";
            _to.NotKnown(passedBy, Derivation.Marked("Q_s", mark), lacking);
        }

        Traced available = _to.Step($"time for a pulse{of}", Derivation.Marked("t_c", mark), open.AvailableTime, "s", _to.Style.Of(Duration.FromSeconds(own.AvailableTime)), "from the start of one injection to that of the next", law: "InjectorFlow.AvailableTime");
        string place = $"{_to.Style.Of(_conditions.SupplyVoltage)} and {_to.Style.Of(across)} across the injector";
        if (own.DeadTime is not { } seconds)
        {
            string reason = $"the dead-time table covers {injector.DeadTime.Coverage.In(_to.Style)}, not {place}";
            _to.NotKnown(deadTime, Derivation.Marked("t_d", mark), reason);
            _to.NotKnown(pulseOf, Derivation.Marked("t", mark), reason);
            _to.NotKnown(dutyOf, Derivation.Marked("D", mark), reason);
            return;
        }

        Traced dead = DeadTime(
            injector,
            point.Differential,
            new(
                deadTime,
                Derivation.Marked("t_d", mark),
                _to.Style.Of(Duration.FromSeconds(seconds)),
                $"dead-time table of {injector.Name}, at {(injector.DeadTime.IgnoresPressure ? _to.Style.Of(_conditions.SupplyVoltage) : place)}"),
            seconds,
            mark);
        if (own is not { Pulse: { } length, DutyCycle: { } share })
        {
            _to.NotKnown(pulseOf, Derivation.Marked("t", mark), lacking);
            _to.NotKnown(dutyOf, Derivation.Marked("D", mark), lacking);
            return;
        }

        Traced fuel = fuelOf(new(flow, set.Count.Value, available, dead));
        Traced pulse = _to.Step(
            pulseOf,
            Derivation.Marked("t", mark),
            InjectorFlow.Pulse(dead, fuel, set.Count, available, flow),
            "s",
            _to.Style.Of(Duration.FromSeconds(length)),
            "dead time, and fuel per injection at the static flow", law: "InjectorFlow.Pulse");
        _to.Step(dutyOf, Derivation.Marked("D", mark), InjectorFlow.DutyCycle(pulse, available), "1", _to.Style.DutyCycle(Ratio.FromDecimalFractions(share)), Definition, law: "InjectorFlow.DutyCycle");
    }

    // Along voltage in the rows to either side of the pressure, and straight between them.
    private Traced DeadTime(Injector injector, Traced differential, in ReadFigure line, double seconds, string set)
    {
        DeadTimeTable table = injector.DeadTime;
        Traced volts = _supply;
        ((double Pascals, Curve Row) under, (double Pascals, Curve Row) over) = table.RowsAround(differential.Value);
        if (ReferenceEquals(under.Row, over.Row))
        {
            return TableReading.Of(_to, under.Row, volts, Axes(), line);
        }

        (Traced at, Traced time) = Row(under, "1");
        (Traced next, Traced more) = Row(over, "2");
        return _to.Read(line, StraightLine.Through(at, time, next, more, differential), seconds, "s", "straight along pressure between two rows");

        TableAxes Axes() => new(
            $"dead-time table of {injector.Name}",
            "voltage",
            "V",
            value => _to.Style.Of(ElectricPotential.FromVolts(value)),
            "dead time",
            "s",
            value => _to.Style.Of(Duration.FromSeconds(value)));

        (Traced Differential, Traced Time) Row((double Pascals, Curve Row) row, string mark)
        {
            mark = set + mark;
            string pressure = _to.Style.Of(Pressure.FromPascals(row.Pascals));
            double read = row.Row.Nearest(volts.Value);
            return (
                _to.Given($"pressure of the dead-time row beside, {pressure}", Derivation.Marked("Δp_t", mark), row.Pascals, "Pa", pressure, injector.Name, intermediate: true),
                TableReading.Of(
                    _to,
                    row.Row,
                    volts,
                    Axes() with { Table = $"dead-time table of {injector.Name} at {pressure}" },
                    new(
                        $"dead time in that row, {pressure}",
                        Derivation.Marked("t_dt", mark),
                        _to.Style.Of(Duration.FromSeconds(read)),
                        $"dead-time table of {injector.Name}, at {_to.Style.Of(_conditions.SupplyVoltage)}",
                        IsIntermediate: true)));
        }
    }

    // The rating that the square-root law has at the differential: that of the points around it, straight between them.
    private Traced Rating(
        Injector injector,
        ((Pressure Differential, VolumeFlow Flow) Under, (Pressure Differential, VolumeFlow Flow) Over) around,
        Traced differential,
        Traced ratedAt,
        string set)
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
            Derivation.Marked("Q_r", set),
            rating,
            "m³/s",
            _to.Style.InjectorFlow(VolumeFlow.FromCubicMetersPerSecond(rating.Value)),
            "the square-root law through each measured point, straight between two", law: "InjectorFlow.Rated");

        (Traced Differential, Traced Rating) Of((Pressure Differential, VolumeFlow Flow) point, string mark)
        {
            string name = injector.Name;
            mark = set + mark;
            Traced across = _to.Given(
                "pressure at which a flow was measured", Derivation.Marked("Δp_m", mark), point.Differential.Pascals, "Pa", _to.Style.Of(point.Differential), name);
            Traced passed = _to.Given(
                "flow measured there", Derivation.Marked("Q_m", mark), point.Flow.CubicMetersPerSecond, "m³/s", _to.Style.InjectorFlow(point.Flow), name);
            return (across, InjectorFlow.Rated(passed, ratedAt, 1, across, 1));
        }
    }

    private static string Number(double value) => Term.Text(value);

    /// <summary>What both sets of injectors have in common.</summary>
    private readonly record struct InjectionPoint<T>(T Speed, T Cycle, T Differential, T Density);

    /// <summary>A set of injectors before its fuel is known.</summary>
    private readonly record struct OpenInjector<T>(T Flow, T Count, T Available, T Dead);
}
