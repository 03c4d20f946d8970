using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Runs a result's equations once more on numbers that remember where they come from.</summary>
internal sealed class WorkingWriter
{
    private const string Definition = "definition";
    private const string IdealGas = "ideal gas";

    private readonly List<WorkingStep> _given = [];
    private readonly List<WorkingStep> _steps = [];
    private readonly SolvedPoint _result;
    private readonly Conditions _conditions;

    private WorkingWriter(SolvedPoint result) => (_result, _conditions) = (result, result.Point.Conditions);

    /// <summary>The working of a result.</summary>
    public static Working Of(SolvedPoint result)
    {
        WorkingWriter writer = new(result);
        writer.Write();
        return new(result.Point, writer._given.AsReadOnly(), writer._steps.AsReadOnly());
    }

    private void Write()
    {
        SystemParts system = _result.Parts;
        DemandInput<Real> at = system.Demand.InputAt(_result.Point.Speed, _result.Point.Boost, _conditions.Atmosphere);
        Traced speed = Given("engine speed", "n", at.Speed, "rev/s", Readable.Of(_result.Point.Speed), "operating point");
        Traced boost = Given("boost", "p_b", at.Boost, "Pa", Readable.Boost(_result.Point.Boost), "operating point");
        Traced ambient = Given("ambient air", "p_0", at.Ambient, "Pa", Readable.Of(_conditions.Atmosphere.Pressure), "conditions");
        Traced manifold = Demand(at, speed, boost, ambient, out Traced fuel);

        Traced density = Given(
            "density of the fuel", "ρ", _result.FuelDensity.KilogramsPerCubicMeter, "kg/m³", Readable.Of(_result.FuelDensity), "ASTM D1250-80, table 54B, for petrol; blends by mass");
        Traced injected = Step(
            "fuel, by volume", "Q_f", FuelDemandFlow.Volume(fuel, density), "m³/s", Readable.PumpFlow(_result.InjectedFlow), Definition);
        Traced set = Step(
            "rail pressure that the regulator sets", "p_s", system.Regulator.Set(boost), "Pa", Readable.Of(_result.RailSetGauge), system.Regulator.Description);
        Traced rail = Rail(set);
        Injection(speed, ambient, manifold, rail, injected, density);
    }

    private Traced Demand(DemandInput<Real> at, Traced speed, Traced boost, Traced ambient, out Traced fuel)
    {
        FuelDemandModel model = _result.Parts.Demand;
        DemandConstants<Real> own = model.Constants;
        Induction induction = model.Induction;
        DemandConstants<Traced> engine = new(
            Given("displacement", "V", own.Displacement, "m³", $"{Number(model.Engine.Displacement.Liters)} L", model.Engine.Name),
            (double)own.RevolutionsPerCycle.Value,
            Given("compressor's efficiency", "η_c", own.CompressorEfficiency.Value, "1", Readable.Of(induction.CompressorEfficiency), "induction"),
            Given("cooler's effectiveness", "ε", own.CoolerEffectiveness, "1", Readable.Of(induction.CoolerEffectiveness), "induction"),
            Given("pressure lost in the cooler", "Δp_c", own.CoolerLoss, "Pa", Readable.Of(induction.CoolerPressureLoss), "induction"),
            (double)own.BeltShare,
            own.BeltShare > 0 ? Given("belt's efficiency", "η_b", own.DriveEfficiency.Value, "1", Readable.Of(induction.DriveEfficiency), "induction") : (double)own.DriveEfficiency.Value,
            MeasuredDensity(model.MeasuredPower.MeasuredIn),
            Given("mechanical efficiency of that pull", "η_m", own.MechanicalEfficiency.Value, "1", Readable.Of(model.MechanicalEfficiency), "measured pull"),
            Given("BSFC", "b", own.BrakeSpecificFuelConsumption, "kg/J", Readable.Of(model.Consumption.BrakeSpecificFuelConsumption), "consumption"),
            Combustion.AirFuelRatio(
                Given("lambda", "λ", model.Consumption.Lambda, "1", Number(model.Consumption.Lambda), "consumption"),
                Given("stoichiometric air–fuel ratio", "L", model.Consumption.Fuel.AirFuelRatio, "kg/kg", Number(model.Consumption.Fuel.StoichiometricAirFuelRatio), "elemental composition")));
        DemandInput<Traced> point = new(
            speed,
            boost,
            ambient,
            Given("ambient temperature", "T_0", at.AmbientTemperature, "K", Readable.Of(_conditions.Atmosphere.Temperature), "conditions"),
            Given("volumetric efficiency at this speed", "η_v", at.VolumetricEfficiency, "1", Readable.Of(Ratio.FromDecimalFractions((double)at.VolumetricEfficiency)), "table"),
            Given("crank power of the measured pull at this speed", "P_m", at.MeasuredPower, "W", Readable.Of(Power.FromWatts((double)at.MeasuredPower)), "measured pull"));

        DemandState<Traced> state = DemandChain.Evaluate(engine, point);
        FuelDemand demand = _result.Demand;
        Step("manifold pressure, absolute", "p", state.ManifoldAbsolute, "Pa", Readable.Of(demand.ManifoldAbsolute), Definition);
        Step("pressure ratio of the compressor", "r", state.PressureRatio, "1", Number(demand.PressureRatio), Definition);
        Step("temperature behind the compressor", "T_2", state.OutletTemperature, "K", Readable.Of(demand.CompressorOutletTemperature), "isentropic compression of an ideal gas, γ = 1.4, and efficiency");
        Step("charge temperature in the manifold", "T_3", state.ChargeTemperature, "K", Readable.Of(demand.ChargeTemperature), "definition of effectiveness");
        Step("density of the charge", "ρ_3", state.ChargeDensity, "kg/m³", Readable.Of(demand.ChargeDensity), IdealGas);
        Step("air", "ṁ_a", state.AirMassFlow, "kg/s", Readable.Of(demand.AirMassFlow), "speed-density, volumetric efficiency referred to the manifold");
        Step("power that the belt takes", "P_d", state.DrivePower, "W", Readable.Of(demand.CompressorDrivePower), "energy balance of the compressor");
        Step("power at the crank", "P", state.BrakePower, "W", Readable.Of(demand.BrakePower), "indicated power with charge density, friction as measured");
        Traced fromPower = Step("fuel from power", "ṁ_1", state.FromPower, "kg/s", Readable.Of(demand.FromPower), "definition of BSFC");
        Traced fromAir = Step("fuel from air", "ṁ_2", state.FromAir, "kg/s", Readable.Of(demand.FromAir), "definition of lambda");
        fuel = Step(
            "fuel that the parts are sized for",
            "ṁ_f",
            demand.Basis switch
            {
                DemandBasis.Air => fromAir,
                DemandBasis.Power => fromPower,
                _ => Traced.Max(fromAir, fromPower),
            },
            "kg/s",
            Readable.Of(demand.MassFlow),
            "choice of basis");
        return state.ManifoldAbsolute;
    }

    private Traced MeasuredDensity(Atmosphere air) => Step(
        "density of the air of the measured pull",
        "ρ_m",
        StandardAir.Density(
            Given("air of the measured pull", "p_m", air.Pascals, "Pa", Readable.Of(air.Pressure), "measured pull"),
            Given("temperature of that air", "T_m", air.Kelvins, "K", Readable.Of(air.Temperature), "measured pull")),
        "kg/m³",
        Readable.Of(Density.FromKilogramsPerCubicMeter(StandardAir.Density<Real>(air.Pascals, air.Kelvins).Value)),
        IdealGas);

    private Traced Rail(Traced set)
    {
        double pascals = _result.SolvedCircuit.Rail;
        return pascals == set.Value
            ? set
            : Given("rail pressure, found by the circuit's search", "p_r", pascals, "Pa", Readable.Of(_result.RailGauge), $"circuit: {_result.RailState}");
    }

    private void Injection(Traced speed, Traced ambient, Traced manifold, Traced rail, Traced injected, Traced density)
    {
        Injectors.Injector injector = _result.Parts.Injectors.Injector;
        InjectionConstants<Real> own = _result.Parts.Injection;
        Traced differential = Step(
            "pressure across the injector", "Δp", RailPressure.Differential(rail, ambient, manifold), "Pa", Readable.Of(_result.InjectorDifferential), Definition);
        InjectionConstants<Traced> set = new(
            Given("rated flow of one injector", "Q_r", own.RatedFlow, "m³/s", Readable.InjectorFlow(injector.StaticFlow), injector.Name),
            Given("at a pressure across it", "Δp_r", own.RatedDifferential.Value, "Pa", Readable.Of(injector.RatedDifferential), injector.Name),
            Given("density of the test liquid", "ρ_r", own.TestFluidDensity, "kg/m³", Readable.Of(injector.TestFluid.Density), injector.TestFluid.Name),
            (double)own.Count.Value,
            (double)own.InjectionsPerCycle,
            (double)own.RevolutionsPerCycle.Value);
        Traced dead = _result.Actual.DeadTime is { } seconds
            ? Given("dead time at this voltage and pressure", "t_d", seconds, "s", Readable.Of(Duration.FromSeconds(seconds)), "table")
            : 0;
        InjectionState<Traced> state = InjectionChain.Evaluate(
            set, new InjectionInput<Traced>(speed, differential, dead, injected, density));
        Step("static flow of one injector", "Q_s", state.StaticFlow, "m³/s", Readable.InjectorFlow(_result.StaticFlow), "orifice equation, taken against the rated point");
        Step("time between pulses", "T", state.AvailableTime, "s", Readable.Of(_result.AvailableTime), Definition);
        if (_result.Pulse is { } pulse)
        {
            Step("pulse", "t", state.Pulse, "s", Readable.Of(pulse), "dead time, and fuel per pulse ÷ static flow");
        }

        if (_result.DutyCycle is { } duty)
        {
            Step("duty cycle", "D", state.DutyCycle, "1", Readable.DutyCycle(duty), Definition);
        }
    }

    private Traced Given(string name, string symbol, double value, string unit, string readable, string source)
    {
        _given.Add(new(name, symbol, null, null, Si(value, unit), readable, source));
        return Traced.Given(symbol, value);
    }

    private Traced Step(string name, string symbol, Traced number, string unit, string readable, string source)
    {
        // What is another figure unchanged, or no more than a constant, is no step of its own.
        if (number.Term is not { IsMade: true } made)
        {
            return number;
        }

        _steps.Add(new(name, symbol, made.InSymbols(), made.InNumbers(), Si(number.Value, unit), readable, source));
        made.Symbol = symbol;
        return number;
    }

    private static string Si(double value, string unit) => unit == "1" ? Term.Text(value) : $"{Term.Text(value)} {unit}";

    private static string Number(double value) => Term.Text(value);
}
