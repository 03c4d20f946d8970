using System.Globalization;
using FuelSizing.Circuits;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Workings;
using UnitsNet;

namespace FuelSizing.Systems;

/// <summary>Writes the working from boost to fuel: charge, air, power, and fuel from air and from power.</summary>
internal static class DemandWorking
{
    private const string Definition = "definition";
    private const string IdealGas = "ideal gas";

    /// <summary>Writes the lines.</summary>
    /// <returns>Absolute manifold pressure, Pa, and the fuel that the parts are sized for, kg/s.</returns>
    public static (Traced Manifold, Traced Fuel) Write(
        Derivation to, SolvedPoint result, in DemandInput<Real> at, Traced speed, Traced cycle, Traced boost, Traced ambient)
    {
        FuelDemandModel model = result.Parts.Demand;
        Atmosphere air = result.Point.Conditions.Atmosphere;

        // Beside a law of one's own stands what the library would say.
        FuelDemand demand = model.Law is null ? result.Demand : model.WithoutLaw().At(result.Point.Speed, result.Point.Boost, air);
        bool belted = model.Constants.BeltShare > 0;
        string place = to.Style.Of(result.Point.Speed);

        DemandConstants<Traced> engine = Engine(to, model, speed, result.Point.Speed, cycle, belted);
        DemandInput<Traced> point = new(
            speed,
            boost,
            ambient,
            to.Given("ambient temperature", "T_0", at.AmbientTemperature, "K", to.Style.Of(air.Temperature), "conditions"),
            TableReading.Of(
                to,
                model.VolumetricEfficiency.BySpeed,
                speed,
                BySpeed(to, "volumetric-efficiency table", "volumetric efficiency", "1", share => to.Style.DutyCycle(Ratio.FromDecimalFractions(share))),
                new("volumetric efficiency", "η_v", to.Style.DutyCycle(Ratio.FromDecimalFractions((double)at.VolumetricEfficiency)), $"volumetric-efficiency table, at {place}")),
            TableReading.Of(
                to,
                model.MeasuredPower.BySpeed,
                speed,
                ByMeasuredPower(to),
                new("power at the crank of the measured pull", "P_m", to.Style.Of(Power.FromWatts((double)at.MeasuredPower)), $"measured power curve, at {place}")));

        DemandState<Traced> state = DemandChain.Evaluate(engine, point);
        string? byStream = null;
        if (result.SolvedDemand.Stream is { AirGain: > 1, Solved: { } solved })
        {
            SecondStream stream = solved.Stream;
            byStream = "ChargeCooling.AirGain";
            state = DemandChain.AlsoCooled(
                state,
                to.Given("share of the second stream that evaporates in the charge", "x_es", stream.EvaporatedShare.DecimalFractions, "1", to.Style.Of(stream.EvaporatedShare), "stated"),
                to.Given("heat of vaporisation of its liquid", "h_s", stream.Fluid.HeatOfVaporisation!.Value.JoulesPerKilogram, "J/kg", to.Style.Of(stream.Fluid.HeatOfVaporisation.Value), stream.Fluid.Name),
                to.Given("the most of it that may flow", "ṁ_s", solved.MaximumMassFlow, "kg/s", to.Style.Of(MassFlow.FromKilogramsPerSecond(solved.MaximumMassFlow)), stream.Name));
        }

        to.Step("manifold pressure, absolute", "p_3", state.ManifoldAbsolute, "Pa", to.Style.Of(demand.ManifoldAbsolute), Definition);
        to.Step("pressure ratio of the compressor", "r", state.PressureRatio, "1", demand.PressureRatio.ToString("N2", CultureInfo.InvariantCulture), Definition, law: "Compression.PressureRatio");
        to.Step("temperature at the compressor outlet", "T_2", state.OutletTemperature, "K", to.Style.Of(demand.CompressorOutletTemperature), "isentropic compression of an ideal gas, γ = 1.4, and efficiency", law: "Compression.OutletTemperature");
        to.Step("charge temperature in the manifold", "T_3", state.ChargeTemperature, "K", to.Style.Of(demand.ChargeTemperature), "definition of effectiveness", law: "Compression.CooledTemperature");
        to.Step("density of the charge", "ρ_3", state.ChargeDensity, "kg/m³", to.Style.GasDensity(demand.ChargeDensity), IdealGas, law: "StandardAir.Density");
        if (model.EvaporatedShare > Ratio.Zero || result.SolvedDemand.Stream is { AirGain: > 1 })
        {
            to.Step("temperature of the charge after fuel has evaporated in it", "T_4", state.EvaporatedTemperature, "K", to.Style.Of(demand.EvaporatedTemperature), "energy balance of charge and fuel, no heat from the walls", law: byStream ?? "ChargeCooling.Temperature");
        }

        to.Step("air", "ṁ_a", state.AirMassFlow, "kg/s", to.Style.Of(demand.AirMassFlow), "speed-density, volumetric efficiency referred to the manifold", law: byStream ?? "EngineAir.MassFlow");
        if (belted)
        {
            to.Step("power that the belt takes", "P_d", state.DrivePower, "W", to.Style.Of(demand.CompressorDrivePower), "energy balance of the compressor", law: byStream ?? "Compression.DrivePower");
        }

        to.Step("friction at this speed", "P_fr", state.Friction, "W", to.Style.Of(demand.FrictionPower), "friction mean effective pressure by its shape against speed: Heywood, Internal Combustion Engine Fundamentals, ch. 13, from memory", law: "EngineFriction.AtSpeed");
        to.Step("power at the crank, a compressor drive's share included", "P_g", state.GrossPower, "W", to.Style.Of(demand.GrossPower), "indicated power with charge density, friction the same at any boost", law: "BoostedPower.Gross");
        to.Step("power at the crank", "P", state.BrakePower, "W", to.Style.Of(demand.BrakePower), belted ? "what the belt leaves" : Definition, law: "BoostedPower.Brake");
        Traced fromPower = to.Step("fuel from power", "ṁ_1", state.FromPower, "kg/s", to.Style.Of(demand.FromPower), "definition of BSFC", law: "FuelDemandFlow.FromPower");
        Traced fromAir = to.Step("fuel from air", "ṁ_2", state.FromAir, "kg/s", to.Style.Of(demand.FromAir), "definition of lambda", law: byStream ?? "FuelDemandFlow.FromAir");
        to.Step("difference between the two", "e_f", (fromPower / fromAir) - 1, "1", to.Style.Change(demand.Difference), Definition);
        if (model.Law is { } law)
        {
            return (state.ManifoldAbsolute, to.Table(
                "fuel that the parts are sized for", "ṁ_f", result.Demand.MassFlow.KilogramsPerSecond, "kg/s", to.Style.Of(result.Demand.MassFlow), $"the demand's own law: {law.Text.In(to.Style)}"));
        }

        Traced fuel = to.Step(
            "fuel that the parts are sized for",
            "ṁ_f",
            demand.Basis switch
            {
                DemandBasis.Air => fromAir,
                DemandBasis.Power => fromPower,
                _ => Traced.Max(fromAir, fromPower),
            },
            "kg/s",
            to.Style.Of(demand.MassFlow),
            demand.Basis switch
            {
                DemandBasis.Air => "sized for the fuel from air",
                DemandBasis.Power => "sized for the fuel from power",
                _ => "sized for the larger of the two",
            });
        return (state.ManifoldAbsolute, fuel);
    }

    private static DemandConstants<Traced> Engine(Derivation to, FuelDemandModel model, Traced at, RotationalSpeed speed, Traced cycle, bool belted)
    {
        double revolutions = speed.RevolutionsPerSecond;
        DemandConstants<Real> own = model.ConstantsAt(revolutions);
        Traced stated = to.Given("speed at which the mechanical efficiency is stated", "n_0", own.StatedSpeed, "rev/s", to.Style.Of(model.MechanicalEfficiencySpeed), "measured pull");
        string table = $"table by speed, at {to.Style.Of(speed)}";
        Induction induction = model.Induction;
        double peak = model.MeasuredPower.BySpeed.At(own.StatedSpeed);
        return new(
            to.Given("displacement", "V_d", own.Displacement, "m³", $"{Number(model.Engine.Displacement.Liters)} L", model.Engine.Name),
            cycle,
            Share("compressor's efficiency", "η_c", (double)own.CompressorEfficiency.Value, model.AlongSpeed?.Compressor),
            Share("cooler's effectiveness", "ε", (double)own.CoolerEffectiveness, model.AlongSpeed?.Cooler),
            to.Given("pressure lost in the cooler", "Δp_c", own.CoolerLoss, "Pa", to.Style.Of(induction.CoolerPressureLoss), "induction"),
            (double)own.BeltShare,
            belted ? to.Given("belt's efficiency", "η_b", own.DriveEfficiency.Value, "1", to.Style.Of(induction.DriveEfficiency), "induction") : (double)own.DriveEfficiency.Value,
            MeasuredDensity(to, model.MeasuredPower.MeasuredIn),
            to.Step(
                "friction of that pull at the speed of its mechanical efficiency",
                "P_fr0",
                EngineFriction.OfMeasuredPull(
                    TableReading.Of(
                        to,
                        model.MeasuredPower.BySpeed,
                        stated,
                        ByMeasuredPower(to),
                        new("power of that pull there", "P_m0", to.Style.Of(Power.FromWatts(peak)), $"measured power curve, at {to.Style.Of(model.MechanicalEfficiencySpeed)}")),
                    to.Given("mechanical efficiency of that pull", "η_m", model.MechanicalEfficiency.DecimalFractions, "1", to.Style.Of(model.MechanicalEfficiency), "measured pull")),
                "W",
                to.Style.Of(Power.FromWatts((double)own.StatedFriction)),
                Definition, law: "EngineFriction.OfMeasuredPull"),
            stated,
            to.Given("BSFC", "b", own.BrakeSpecificFuelConsumption, "kg/J", to.Style.Of(model.Consumption.BrakeSpecificFuelConsumption), model.Consumption.IsConverted ? $"{to.Style.Of(model.Consumption.StatedConsumption)} on {model.Consumption.StatedFuel.Name}, converted by heating value" : "consumption"),
            Combustion.AirFuelRatio(
                model.AlongSpeed?.Lambda is not { } lambdas
                    ? to.Given("lambda", "λ", model.Consumption.Lambda, "1", Number(model.Consumption.Lambda), "consumption")
                    : TableReading.Of(to, lambdas, at, BySpeed(to, "table by speed", "lambda", "1", Number), new("lambda", "λ", Number(model.TargetLambdaAt(revolutions)), table)),
                to.Given("stoichiometric air–fuel ratio", "AFR_st", model.Consumption.Fuel.AirFuelRatio, "kg/kg", Number(model.Consumption.Fuel.StoichiometricAirFuelRatio), "elemental composition")),
            induction.CoolantTemperature is { } coolant ? to.Given("temperature of the cooler's coolant", "T_c", own.Coolant, "K", to.Style.Of(coolant), "induction") : 0,
            own.Evaporates
                ? to.Given("share of the fuel that evaporates in the charge", "x_e", model.EvaporatedShare.DecimalFractions, "1", to.Style.Of(model.EvaporatedShare), "stated")
                : 0,
            own.Evaporates
                ? to.Given("heat of vaporisation", "h_v", model.Consumption.Fuel.HeatOfVaporisation!.Value.JoulesPerKilogram, "J/kg", to.Style.Of(model.Consumption.Fuel.HeatOfVaporisation.Value), model.Consumption.Fuel.Name)
                : 0)
        {
            Evaporates = own.Evaporates,
        };

        Traced Share(string name, string symbol, double share, Curve? curve) => curve is not null
            ? TableReading.Of(
                to,
                curve,
                at,
                BySpeed(to, "table by speed", name, "1", of => to.Style.Of(Ratio.FromDecimalFractions(of))),
                new(name, symbol, to.Style.Of(Ratio.FromDecimalFractions(share)), table))
            : to.Given(name, symbol, share, "1", to.Style.Of(Ratio.FromDecimalFractions(share)), "induction");
    }

    private static Traced MeasuredDensity(Derivation to, Atmosphere air) => to.Step(
        "density of the air of the measured pull",
        "ρ_m",
        StandardAir.Density(
            to.Given("air of the measured pull", "p_m", air.Pascals, "Pa", to.Style.Of(air.Pressure), "measured pull"),
            to.Given("temperature of that air", "T_m", air.Kelvins, "K", to.Style.Of(air.Temperature), "measured pull")),
        "kg/m³",
        to.Style.GasDensity(Density.FromKilogramsPerCubicMeter(StandardAir.Density<Real>(air.Pascals, air.Kelvins).Value)),
        IdealGas, law: "StandardAir.Density");

    private static TableAxes ByMeasuredPower(Derivation to) =>
        BySpeed(to, "measured power curve", "power", "W", watts => to.Style.Of(Power.FromWatts(watts)));

    private static TableAxes BySpeed(Derivation to, string table, string name, string unit, Func<double, string> readable) => new(
        table, "speed", "rev/s", speed => to.Style.Of(RotationalSpeed.FromRevolutionsPerSecond(speed)), name, unit, readable);

    private static string Number(double value) => Term.Text(value);
}
