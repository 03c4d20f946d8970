using FuelSizing.Engines;
using FuelSizing.Points;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>Operating points, their conditions, and what a system is held to.</summary>
internal static class PointForm
{
    private static readonly QuantityField<Pressure> AmbientPressure =
        new("pressure", Measures.Pressure, "ambient pressure, absolute, as the barometer reads it there") { Example = "101.3 kPa", Range = "40 to 110 kPa" };

    private static readonly QuantityField<Temperature> AmbientTemperature =
        new("temperature", Measures.Temperature, "of the ambient air") { Range = "−50 to 60 °C" };

    private static readonly QuantityField<Length> Altitude =
        new("altitude", Measures.Length, "above sea level, in the standard atmosphere") { Example = "600 m", Range = "−500 to 6,000 m" };

    private static readonly QuantityField<Temperature> OtherTemperature =
        new("temperature", Measures.Temperature, "of the ambient air") { Optional = true, Range = "−50 to 60 °C", Default = "the standard one of that altitude" };

    private static readonly RecordForm<Atmosphere> ByAltitude = new(
        "atmosphere_at_altitude",
        "the air at an altitude",
        values => FuelSizing.Engines.Atmosphere.AtAltitude(values.Required(Altitude), values.Optional(OtherTemperature)))
    {
        { Altitude, _ => null },
        { OtherTemperature, _ => null },
    };

    private static readonly RecordForm<Atmosphere> ByPressure = new(
        "atmosphere_of_pressure",
        "the air at a pressure",
        values => FuelSizing.Engines.Atmosphere.Of(values.Required(AmbientPressure), values.Required(AmbientTemperature)))
    {
        { AmbientPressure, air => air.Pressure },
        { AmbientTemperature, air => air.Temperature },
    };

    /// <summary>Ambient air, by its altitude or by its pressure and temperature; always written so.</summary>
    public static ChoiceForm<Atmosphere> Atmosphere { get; } = new(
        "atmosphere",
        "the ambient air",
        Variant<Atmosphere>.Of(ByAltitude, _ => false, Altitude),
        Variant<Atmosphere>.Of(ByPressure));

    private static readonly PartField<Atmosphere> Air = new("atmosphere", () => Atmosphere, "the ambient air");

    private static readonly QuantityField<ElectricPotential> SupplyVoltage =
        new("supply_voltage", Measures.Voltage, "at the injectors and at the source of the pumps' wiring, engine running") { Range = "6 to 20 V" };

    private static readonly QuantityField<Temperature> FuelTemperature =
        new("fuel_temperature", Measures.Temperature, "of the fuel in the rail") { Range = "−30 to 80 °C" };

    private static readonly QuantityField<Temperature> TankTemperature = new("tank_temperature", Measures.Temperature, "of the fuel in the tank")
    {
        Optional = true,
        Range = "−30 to 80 °C",
        Default = "`fuel_temperature`",
        Within = FuelSizing.Fuels.Fuel.WithinRange,
    };

    private static readonly QuantityField<Temperature> InletTemperature = new("inlet_temperature", Measures.Temperature, "of the fuel at the pump's inlet")
    {
        Optional = true,
        Range = "−30 to 80 °C",
        Default = "`tank_temperature`",
        Within = FuelSizing.Fuels.Fuel.WithinRange,
    };

    private static readonly RecordForm<Conditions> OfConditions = new("conditions", "the conditions", ConditionsOf)
    {
        { Air, conditions => conditions.Atmosphere },
        { SupplyVoltage, conditions => conditions.SupplyVoltage },
        { FuelTemperature, conditions => conditions.FuelTemperature },
        { TankTemperature, conditions => conditions.StatedTank },
        { InletTemperature, conditions => conditions.StatedInlet },
    };

    private static readonly NameField Name = new("the name by which the point is found, once in a setup");

    private static readonly QuantityField<RotationalSpeed> Speed = new("speed", Measures.Speed, "engine speed") { Range = "100 to 25,000 rev/min" };

    private static readonly QuantityField<Pressure> Boost =
        new("boost", Measures.Pressure, "manifold gauge pressure, negative under throttle") { Example = "0.6 bar", Range = "−95 to 400 kPa" };

    /// <summary>The conditions of a point or a pull.</summary>
    public static PartField<Conditions> At { get; } =
        new("conditions", () => OfConditions, "air, voltage and fuel temperature") { Optional = true, Default = "`Conditions.Default`" };

    /// <summary>An operating point.</summary>
    public static RecordForm<NamedPoint> Form { get; } = new(
        "point",
        "an operating point",
        values => new(values.Required(Name), OperatingPoint.At(values.Required(Speed), values.Required(Boost), values.Optional(At))))
    {
        { Name, point => point.Name },
        { Speed, point => point.Point.Speed },
        { Boost, point => point.Point.Boost },
        { At, point => point.Point.Conditions },
    };

    private static readonly QuantityField<Ratio> DutyCycle =
        new("duty_cycle", Measures.Share, "maximum duty cycle of the injectors") { Example = "85 %", Range = "10 to 100 %" };

    private static readonly QuantityField<Ratio> PumpReserve =
        new("pump_reserve", Measures.Share, "flow that the pump must have beyond the demand") { Example = "10 %", Range = "0 to 100 %" };

    private static readonly QuantityField<Pressure> RailCeiling = new("rail_ceiling", Measures.Pressure, "maximum rail gauge pressure of hoses, fittings and filter")
    {
        Example = "700 kPa",
        Optional = true,
        Range = "100 to 2,000 kPa",
        Default = "no limit",
    };

    private static readonly QuantityField<Ratio> FeedDrop = new("feed_drop", Measures.Share, "maximum share of the supply voltage lost in a pump's feed")
    {
        Example = "5 %",
        Optional = true,
        Range = "0.1 to 30 %",
        Default = "5 %",
    };

    private static readonly QuantityField<Pressure> SuctionMargin = new("suction_margin", Measures.Pressure, "minimum pressure over vapour pressure at the pump's inlet")
    {
        Example = "10 kPa",
        Optional = true,
        Range = "0 to 100 kPa",
        Default = "10 kPa",
    };

    private static readonly QuantityField<Pressure> LeanestFrom = new("boost", Measures.Pressure, "boost from which on that lambda is the leanest allowed; straight from row to row") { Example = "0.1 bar", Range = "0 to 400 kPa" };

    private static readonly NumberField LeanestLambda = new("lambda", 0.88, 0.6, 1.2, "leanest lambda allowed there");

    private static readonly RecordForm<LeanestRow> OfLeanest =
        new("leanest", "a leanest lambda", values => new(values.Required(LeanestFrom), values.Required(LeanestLambda)))
        {
            { LeanestFrom, row => row.Boost },
            { LeanestLambda, row => row.Lambda },
        };

    private static readonly ListField<LeanestRow> Leanest = new("leanest", () => OfLeanest, "leanest lambda allowed on boost") { IsTable = true, Minimum = 1, Arguments = ["leanest"] };

    private static readonly NumberField Richest =
        new("richest", 0.7, 0.4, 1.2, "richest lambda allowed") { Optional = true, Range = "0.4 to the leanest", Default = "not judged" };

    private static readonly RecordForm<MixtureLimits> OfMixture = new("mixture_limits", "the limits of the mixture", MixtureOf)
    {
        { Leanest, limits => [.. limits.Leanest.Select(point => new LeanestRow(point.Boost, point.Lambda))] },
        { Richest, limits => limits.Richest },
    };

    private static readonly PartField<MixtureLimits> Mixture =
        new("mixture", () => OfMixture, "leanest and richest mixture allowed") { Optional = true, Default = "not judged" };

    /// <summary>What a system is held to.</summary>
    public static RecordForm<SizingLimits> Limits { get; } = new(
        "limits",
        "the limits",
        LimitsOf)
    {
        { DutyCycle, limits => limits.DutyCycle },
        { PumpReserve, limits => limits.PumpReserve },
        { RailCeiling, limits => limits.RailCeiling },
        { FeedDrop, limits => limits.FeedDrop },
        { SuctionMargin, limits => limits.SuctionMargin },
        { Mixture, limits => limits.Mixture },
    };

    private static SizingLimits LimitsOf(FieldValues values)
    {
        SizingLimits limits = SizingLimits.Of(
            values.Required(DutyCycle),
            values.Required(PumpReserve),
            values.Optional(RailCeiling),
            values.Optional(FeedDrop),
            values.Optional(SuctionMargin));
        return values.Optional(Mixture) is { } mixture ? limits.With(mixture) : limits;
    }

    private static MixtureLimits? MixtureOf(FieldValues values)
    {
        (Pressure, double)[] points = [.. values.Required(Leanest).Select(row => (row.Boost, row.Lambda))];
        return values.Made(Leanest, count => MixtureLimits.ByBoost(points[..count], count < points.Length ? null : values.Optional(Richest)));
    }

    private sealed record LeanestRow(Pressure Boost, double Lambda);

    private static Conditions ConditionsOf(FieldValues values)
    {
        Conditions conditions = Conditions.Of(values.Required(Air), values.Required(SupplyVoltage), values.Required(FuelTemperature));
        conditions = values.Optional(TankTemperature) is { } tank ? conditions.WithTankTemperature(tank) : conditions;
        return values.Optional(InletTemperature) is { } inlet ? conditions.WithInletTemperature(inlet) : conditions;
    }
}
