using FuelSizing.Engines;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>How the engine, its air, its power and its fuel demand are shown.</summary>
internal static class EngineShown
{
    // A curve is told by so many of its points; its ends are among them.
    private const int CurvePoints = 6;

    public static void Register()
    {
        Shown.By<FuelDemand>((demand, style) => new("Fuel demand", Demand(demand, style)));
        Shown.By<Engine>((engine, style) => new(
            $"Engine: {engine.Name}",
            [
                new("Displacement", "V_d", style.Of(engine.Displacement)),
                new("Cylinders", "", style.Count(engine.Cylinders), Cycle(engine.Cycle)),
                new("Speed limit", "n_max", style.Of(engine.SpeedLimit)),
            ]));
        Shown.By<Induction>((induction, style) => new("Induction", Charging(induction, style)));
        Shown.By<FuelDemandModel>((model, style) => new(
            $"Fuel demand of {model.Engine.Name}",
            [
                new("Displacement", "V_d", style.Of(model.Engine.Displacement), $"{style.Count(model.Engine.Cylinders)} cylinders, {Cycle(model.Engine.Cycle)}"),
                .. Charging(model.Induction, style),
                model.AlongSpeed is { } table
                    ? Fact.Words("By speed", Columns(table, style))
                    : new("Lambda", "λ", style.Number(model.Consumption.Lambda), model.Consumption.Fuel.Name),
                new("BSFC", "b", style.Of(model.Consumption.BrakeSpecificFuelConsumption), model.Consumption.IsConverted ? $"by heating value from {style.Of(model.Consumption.StatedConsumption)} on {model.Consumption.StatedFuel.Name}" : string.Empty),
                new("Mechanical efficiency", "η_m", style.Of(model.MechanicalEfficiency), $"of the measured pull, at {style.Of(model.MechanicalEfficiencySpeed)}"),
                Fact.Words("Air", $"volumetric efficiency known {Range(model.VolumetricEfficiency.MinimumSpeed, model.VolumetricEfficiency.MaximumSpeed, style)}"),
                Fact.Words("Measured pull", $"power known {Range(model.MeasuredPower.MinimumSpeed, model.MeasuredPower.MaximumSpeed, style)}"),
                Fact.Words("Parts are sized for", model.Law is { } law ? $"fuel by a law of your own: {PartText.Say(law.Text, style)}" : Basis(model.Basis)),
            ]));
        Shown.By<DemandPlace>((place, style) => new(
            "Where fuel demand is asked for",
            [
                new("Speed", "n", style.Of(place.Speed)),
                new("Boost", "p_b", style.Boost(place.Boost)),
                new("Lambda", "λ", style.Number(place.TargetLambda), place.Consumption.Fuel.Name),
            ]));
        Shown.By<AlongSpeed>((table, style) => new(
            "What changes with engine speed",
            [.. table.Rows.SelectMany(row => Row(row, style))],
            "Straight between these speeds; no data beyond them."));
        Shown.By<SpeedRow>((row, style) => new("At one engine speed", [.. Row(row, style)]));
        Shown.By<VolumetricEfficiency>((table, style) => new(
            "Volumetric efficiency",
            [.. Speeds(table.MinimumSpeed, table.MaximumSpeed).Select(speed => new Fact($"At {style.Of(speed)}", "η_v", style.DutyCycle(table.At(speed))))],
            "The table gives no data beyond these speeds."));
        Shown.By<PowerCurve>((curve, style) => new(
            "Power at the crank, as measured",
            [
                .. Speeds(curve.MinimumSpeed, curve.MaximumSpeed).Select(speed => new Fact($"At {style.Of(speed)}", "P_m", style.Of(curve.At(speed)))),
                new("Air of that pull", "p_m", style.Of(curve.MeasuredIn.Pressure)),
                new("Its temperature", "T_m", style.Of(curve.MeasuredIn.Temperature)),
            ],
            "The curve gives no data beyond these speeds."));
        Shown.By<Atmosphere>((air, style) => new(
            "Ambient air",
            [
                new("Pressure", "p_0", style.Of(air.Pressure), "absolute"),
                new("Temperature", "T_0", style.Of(air.Temperature)),
                new("Density", "ρ_air", style.GasDensity(air.Density), "of dry air, an ideal gas"),
            ]));
        Shown.By<PowerCorrection>((correction, style) => new(
            $"Power correction by {(correction.Standard == PowerStandard.Iso1585 ? "ISO 1585" : "SAE J1349")}",
            [
                new("Factor", correction.Standard == PowerStandard.Iso1585 ? "α_a" : "CF", style.Number(correction.Factor, "N3"), correction.IsWithinStandard ? "within the standard" : "an estimate, outside the standard"),
                new("Barometer", "p_0", style.Of(correction.Atmosphere.Pressure)),
                new("Vapour in the air", "p_w", style.PressureLoss(correction.VapourPressure), $"{style.Of(correction.RelativeHumidity)} relative humidity"),
                new("Dry air", "p_d", style.Of(correction.DryPressure), "barometer less vapour"),
                new("Temperature", "T_0", style.Of(correction.Atmosphere.Temperature)),
                Fact.Words("Boost", correction.BoostControl == BoostControl.FollowsAir ? "follows ambient pressure" : "a controller compensates for ambient conditions"),
                .. correction.Outside.Select(reason => Fact.Words("Outside the standard", PartText.Say(reason, style))),
            ]));
    }

    /// <summary>Every step from boost to fuel, with the working's own symbols.</summary>
    /// <remarks>A demand alone does not hold what it was calculated from: the working of a solved point has the equations.</remarks>
    public static IReadOnlyList<Fact> Demand(FuelDemand demand, TextStyle style) =>
    [
        new("Manifold pressure, absolute", "p_3", style.Of(demand.ManifoldAbsolute), "ambient pressure and boost"),
        new("Pressure ratio", "r", style.Number(demand.PressureRatio), "over the compressor"),
        new("Behind the compressor", "T_2", style.Of(demand.CompressorOutletTemperature), "pressure ratio and efficiency"),
        new("Charge in the manifold", "T_3", style.Of(demand.ChargeTemperature), "cooler effectiveness"),
        .. demand.EvaporatedTemperature < demand.ChargeTemperature
            ? (Fact[])[new("After fuel has evaporated in it", "T_4", style.Of(demand.EvaporatedTemperature), "stated share and heat of vaporisation")]
            : [],
        new("Air", "ṁ_a", style.Of(demand.AirMassFlow), "speed-density, volumetric efficiency referred to the manifold"),
        .. demand.CompressorDrivePower > Power.Zero
            ? (Fact[])[new("Power that the belt takes", "P_d", style.Of(demand.CompressorDrivePower), "energy balance of the compressor")]
            : [],
        new("Power at the crank", "P", style.Of(demand.BrakePower), demand.CompressorDrivePower > Power.Zero ? "from the measured pull, by charge density; what the belt leaves" : "from the measured pull, by charge density"),
        new("Fuel from power", "ṁ_1", style.Of(demand.FromPower), demand.CompressorDrivePower > Power.Zero ? "by BSFC, for the power that the belt takes too" : "by BSFC"),
        new("Fuel from air", "ṁ_2", style.Of(demand.FromAir), "by lambda"),
        new("Difference", "e_f", style.Change(demand.Difference), "fuel from power over fuel from air"),
        new("Fuel", "ṁ_f", style.Of(demand.MassFlow), Basis(demand.Basis)),
    ];

    private static Fact[] Charging(Induction induction, TextStyle style) => induction.Drive == CompressorDrive.None
        ? [Fact.Words("Compressor", "none")]
        :
        [
            Fact.Words("Compressor", induction.Drive == CompressorDrive.Belt ? "turned by a belt" : "turned by the exhaust"),
            new("Compressor's efficiency", "η_c", style.Of(induction.CompressorEfficiency)),
            new("Cooler's effectiveness", "ε", style.Of(induction.CoolerEffectiveness)),
            new("Pressure lost in the cooler", "Δp_c", style.Of(induction.CoolerPressureLoss)),
            .. induction.CoolantTemperature is { } coolant ? (Fact[])[new("Cooler's coolant", "T_c", style.Of(coolant))] : [],
            .. induction.Drive == CompressorDrive.Belt ? (Fact[])[new("Belt's efficiency", "η_b", style.Of(induction.DriveEfficiency))] : [],
        ];

    private static IEnumerable<Fact> Row(SpeedRow row, TextStyle style) =>
    [
        new("Engine speed", "n", style.Of(row.Speed)),
        .. row.Lambda is { } lambda ? (Fact[])[new("Target lambda", "λ_t", MixtureText.Lambda(lambda, style))] : [],
        .. row.CompressorEfficiency is { } compressor ? (Fact[])[new("Compressor's efficiency", "η_c", style.Of(compressor))] : [],
        .. row.CoolerEffectiveness is { } cooler ? (Fact[])[new("Cooler's effectiveness", "ε", style.Of(cooler))] : [],
    ];

    /// <summary>What changes with speed, and between which ends.</summary>
    internal static string Columns(AlongSpeed table, TextStyle style) => string.Join("; ", new[]
    {
        Ends(table, row => row.Lambda, (double lambda) => MixtureText.Lambda(lambda, style), "lambda"),
        Ends(table, row => row.CompressorEfficiency, share => style.Of(share), "compressor"),
        Ends(table, row => row.CoolerEffectiveness, share => style.Of(share), "cooler"),
        $"{Range(table.MinimumSpeed, table.MaximumSpeed, style)}",
    }.Where(text => text.Length > 0));

    private static string Ends<T>(AlongSpeed table, Func<SpeedRow, T?> of, Func<T, string> text, string name)
        where T : struct, IComparable<T>
    {
        T[] known = [.. table.Rows.Select(of).OfType<T>()];
        return known.Length == 0 ? string.Empty : $"{name} {text(known.Min())} to {text(known.Max())}";
    }

    private static IEnumerable<RotationalSpeed> Speeds(RotationalSpeed minimum, RotationalSpeed maximum) =>
        Enumerable.Range(0, CurvePoints).Select(point => minimum + ((maximum - minimum) * point / (CurvePoints - 1)));

    private static string Range(RotationalSpeed minimum, RotationalSpeed maximum, TextStyle style) => $"from {style.Of(minimum)} to {style.Of(maximum)}";

    private static string Cycle(EngineCycle cycle) => cycle == EngineCycle.FourStroke ? "four-stroke" : "two-stroke";

    private static string Basis(DemandBasis basis) => basis switch
    {
        DemandBasis.Air => "that from air",
        DemandBasis.Power => "that from power",
        _ => "the larger of the two",
    };
}
