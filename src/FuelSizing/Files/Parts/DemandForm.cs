using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>The engine and what it burns.</summary>
internal static class DemandForm
{
    private static readonly NameField Name = new();

    private static readonly QuantityField<Volume> Displacement = new("displacement", Measures.Volume, "swept volume of all cylinders") { Range = "0.02 to 30 L" };

    private static readonly CountField Cylinders = new("cylinders", 4, 1, 24, "how many there are");

    private static readonly WordField<EngineCycle> Cycle =
        new("cycle", "strokes in a working cycle", (EngineCycle.FourStroke, "four-stroke"), (EngineCycle.TwoStroke, "two-stroke"));

    private static readonly QuantityField<RotationalSpeed> SpeedLimit =
        new("speed_limit", Measures.Speed, "maximum engine speed") { Example = "7200 rpm", Range = "500 to 25,000 rev/min" };

    private static readonly RecordForm<Engine> OfEngine = new(
        "engine",
        "an engine",
        values => FuelSizing.Engines.Engine.Of(
            values.Required(Name),
            values.Required(Displacement),
            values.Required(Cylinders),
            values.Required(Cycle),
            values.Required(SpeedLimit)))
    {
        { Name, engine => engine.Name },
        { Displacement, engine => engine.Displacement },
        { Cylinders, engine => engine.Cylinders },
        { Cycle, engine => engine.Cycle },
        { SpeedLimit, engine => engine.SpeedLimit },
    };

    private static readonly QuantityField<Ratio> CompressorEfficiency =
        new("compressor_efficiency", Measures.Share, "isentropic efficiency") { Example = "72 %", Range = "30 to 90 %" };

    private static readonly QuantityField<Ratio> CoolerEffectiveness =
        new("cooler_effectiveness", Measures.Share, "of the charge cooler; 0 % without one") { Example = "70 %", Range = "0 to 95 %" };

    private static readonly QuantityField<Pressure> CoolerPressureLoss =
        new("cooler_pressure_loss", Measures.Pressure, "between compressor and manifold") { Example = "5 kPa", Range = "0 to 50 kPa" };

    private static readonly QuantityField<Temperature> Coolant = new("coolant_temperature", Measures.Temperature, "at which air or water enters the charge cooler")
    {
        Optional = true,
        Range = "−30 to 120 °C",
        Default = "that of the ambient air",
        Within = Induction.WithinCoolant,
    };

    private static readonly QuantityField<Ratio> DriveEfficiency =
        new("drive_efficiency", Measures.Share, "of belt and gears") { Range = "50 to 100 %" };

    private static readonly RecordForm<Induction> Aspirated = new("natural_aspiration", "natural aspiration", _ => Induction.NaturallyAspirated)
    {
        { new KindField("naturally-aspirated"), _ => null },
    };

    private static readonly RecordForm<Induction> Turbocharged = new(
        "turbocharging",
        "a turbocharger",
        values => Cooled(values, Induction.Turbocharged(
            values.Required(CompressorEfficiency), values.Required(CoolerEffectiveness), values.Required(CoolerPressureLoss))))
    {
        { new KindField("turbocharged"), _ => null },
        { CompressorEfficiency, induction => induction.CompressorEfficiency },
        { CoolerEffectiveness, induction => induction.CoolerEffectiveness },
        { CoolerPressureLoss, induction => induction.CoolerPressureLoss },
        { Coolant, induction => induction.CoolantTemperature },
    };

    private static readonly RecordForm<Induction> BeltDriven = new(
        "belt_drive",
        "a belt-driven compressor",
        values => Cooled(values, Induction.BeltDriven(
            values.Required(CompressorEfficiency),
            values.Required(CoolerEffectiveness),
            values.Required(CoolerPressureLoss),
            values.Required(DriveEfficiency))))
    {
        { new KindField("belt-driven"), _ => null },
        { CompressorEfficiency, induction => induction.CompressorEfficiency },
        { CoolerEffectiveness, induction => induction.CoolerEffectiveness },
        { CoolerPressureLoss, induction => induction.CoolerPressureLoss },
        { DriveEfficiency, induction => induction.DriveEfficiency },
        { Coolant, induction => induction.CoolantTemperature },
    };

    private static readonly ChoiceForm<Induction> OfInduction = new(
        "induction",
        "the induction",
        Variant<Induction>.Of(Aspirated, induction => induction.Drive == CompressorDrive.None),
        Variant<Induction>.Of(Turbocharged, induction => induction.Drive == CompressorDrive.ExhaustTurbine),
        Variant<Induction>.Of(BeltDriven, induction => induction.Drive == CompressorDrive.Belt));

    private static readonly QuantityField<RotationalSpeed> Speed = new("speed", Measures.Speed, "engine speed, rising from row to row")
    {
        Example = "2000 rpm",
        Range = "100 to 25,000 rev/min",
        Within = EngineSpeed.Checked,
    };

    private static readonly QuantityField<Ratio> Efficiency = new("efficiency", Measures.Share, "volumetric efficiency there, referred to the density in the manifold")
    {
        Example = "84 %",
        Range = "20 to 150 %",
        Within = FuelSizing.Engines.VolumetricEfficiency.Within,
    };

    private static readonly RecordForm<EfficiencyRow> OfEfficiency =
        new("filling", "a volumetric efficiency", values => new(values.Required(Speed), values.Required(Efficiency)))
        {
            { Speed, row => row.Speed },
            { Efficiency, row => row.Efficiency },
        };

    private static readonly QuantityField<Power> PowerThere =
        new("power", Measures.Power, "full throttle, no boost") { Range = "0 to 3,000 kW", Within = Drivetrain.Within };

    private static readonly RecordForm<PowerRow> OfPower =
        new("power_point", "a measured power", values => new(values.Required(Speed), values.Required(PowerThere)))
        {
            { Speed, row => row.Speed },
            { PowerThere, row => row.Power },
        };

    private static readonly PartField<Atmosphere> MeasuredIn = new("measured_in", () => PointForm.Atmosphere, "the air of the day, or that which the figures were corrected to");

    private static readonly QuantityField<Ratio> DrivetrainLoss = new("drivetrain_loss", Measures.Share, "share of crank power lost before the measurement")
    {
        Example = "15 %",
        Optional = true,
        Range = "0 to 40 %",
        Default = "0 %",
        Arguments = ["loss"],
        Within = Drivetrain.WithinLoss,
    };

    private static readonly ListField<PowerRow> Curve = new("curve", () => OfPower, "measured power against engine speed") { IsTable = true, Minimum = 2 };

    private static readonly RecordForm<PowerCurve> MeasuredPower = new("power", "the measured power", CurveOf)
    {
        { MeasuredIn, power => power.MeasuredIn },
        { DrivetrainLoss, power => power.Loss == 0 ? null : power.LossGiven },
        { Curve, power => [.. power.Points.Select(point => new PowerRow(point.Speed, point.Power))] },
    };

    private static readonly NumberField Lambda = new("lambda", 0.82, 0.6, 1.2, "air-fuel ratio ÷ the stoichiometric one, at full load");

    private static readonly QuantityField<BrakeSpecificFuelConsumption> SpecificConsumption =
        new("brake_specific_fuel_consumption", Measures.Consumption, "fuel mass for work at the crank, at full load") { Range = "150 to 1,500 g/kWh" };

    private static readonly PartField<Fuel> Burnt = new("fuel", () => FuelForm.Form, "what the engine burns");

    private static readonly PartField<Fuel> Stated = new("stated_fuel", () => FuelForm.Form, "on which that consumption was stated, where it is another; it is converted by heating value")
    {
        Optional = true,
        Default = "`fuel`",
    };

    private static readonly RecordForm<FuelConsumption> OfConsumption = new("consumption", "the consumption", ConsumptionOf)
    {
        { Lambda, consumption => consumption.Lambda },
        { SpecificConsumption, consumption => consumption.StatedConsumption },
        { Burnt, consumption => consumption.Fuel },
        { Stated, consumption => consumption.IsConverted ? consumption.StatedFuel : null },
    };

    private static readonly NumberField LambdaThere = new("lambda", 0.82, 0.6, 1.2, "target lambda at that speed; in every row, or in none") { Optional = true };

    private static readonly QuantityField<Ratio> CompressorThere = new("compressor_efficiency", Measures.Share, "isentropic, at that speed; in every row, or in none")
    {
        Example = "66 %",
        Optional = true,
        Range = "30 to 90 %",
        Within = Induction.WithinEfficiency,
    };

    private static readonly QuantityField<Ratio> CoolerThere = new("cooler_effectiveness", Measures.Share, "of the charge cooler, at that speed; in every row, or in none")
    {
        Example = "62 %",
        Optional = true,
        Range = "0 to 95 %",
        Within = Induction.WithinEffectiveness,
    };

    private static readonly RecordForm<SpeedRow> OfSpeed = new(
        "speed_row",
        "what holds at an engine speed",
        values => SpeedRow.Of(values.Required(Speed), values.Optional(LambdaThere), values.Optional(CompressorThere), values.Optional(CoolerThere)))
    {
        { Speed, row => row.Speed },
        { LambdaThere, row => row.Lambda },
        { CompressorThere, row => row.CompressorEfficiency },
        { CoolerThere, row => row.CoolerEffectiveness },
    };

    private static readonly ListField<SpeedRow> ByEngineSpeed = new("along_speed", () => OfSpeed, "target lambda, compressor and cooler where they change with engine speed")
    {
        IsTable = true,
        Minimum = 2,
        Optional = true,
        Default = "the same at every speed",
    };

    private static readonly PartField<Engine> EnginePart = new("engine", () => OfEngine, "size and limits");

    private static readonly PartField<Induction> InductionPart = new("induction", () => OfInduction, "how the engine gets its air");

    /// <summary>Volumetric efficiency against engine speed, of the engine or as its controller believes it.</summary>
    public static ListField<EfficiencyRow> VolumetricEfficiency { get; } =
        new("volumetric_efficiency", () => OfEfficiency, "volumetric efficiency against engine speed") { IsTable = true, Minimum = 2 };

    private static readonly PartField<PowerCurve> PowerPart = new("power", () => MeasuredPower, "a measured pull without boost");

    private static readonly QuantityField<Ratio> MechanicalEfficiency = new("mechanical_efficiency", Measures.Share, "brake ÷ indicated power of that pull")
    {
        Example = "85 %",
        Range = "50 to 100 %",
        Within = FuelDemandModel.WithinMechanical,
    };

    private static readonly QuantityField<RotationalSpeed> MechanicalEfficiencySpeed =
        new("mechanical_efficiency_speed", Measures.Speed, "speed at which that efficiency is stated; friction at other speeds follows from it")
        {
            Example = "6800 rpm",
            Optional = true,
            Range = "within the measured power",
            Default = "the speed of the highest measured power",
        };

    private static readonly PartField<FuelConsumption> ConsumptionPart = new("consumption", () => OfConsumption, "what the engine burns at full load");

    private static readonly WordField<DemandBasis> Basis =
        new("basis", "from which the fuel to size for is calculated", (DemandBasis.Larger, "larger"), (DemandBasis.Air, "air"), (DemandBasis.Power, "power"))
        {
            Optional = true,
            Default = "the larger of the two",
        };

    private static readonly QuantityField<Ratio> EvaporatedShare =
        new("evaporated_share", Measures.Share, "share of the fuel that evaporates in the charge by the charge's own heat, before the inlet valve closes: it cools the charge and raises the demand")
        {
            Example = "30 %",
            Optional = true,
            Range = "0 to 100 %",
            Default = "none",
            Arguments = ["share"],
        };

    /// <summary>What the engine burns; its fields stand among a setup's own.</summary>
    public static RecordForm<FuelDemandModel> Form { get; } = new("demand", "the engine and its fuel", DemandOf)
    {
        { EnginePart, demand => demand.Engine },
        { InductionPart, demand => demand.Induction },
        { VolumetricEfficiency, demand => RowsOf(demand.VolumetricEfficiency) },
        { PowerPart, demand => demand.MeasuredPower },
        { MechanicalEfficiency, demand => demand.MechanicalEfficiency },
        { MechanicalEfficiencySpeed, demand => demand.MechanicalEfficiencySpeed.CompareTo(demand.MeasuredPower.Peak) == 0 ? null : demand.MechanicalEfficiencySpeed },
        { ConsumptionPart, demand => demand.Consumption },
        { ByEngineSpeed, demand => demand.AlongSpeed is { } table ? [.. table.Rows] : null },
        { Basis, demand => demand.Basis },
        { EvaporatedShare, demand => demand.EvaporatedShare > Ratio.Zero ? demand.EvaporatedShare : null },
    };

    private static Induction Cooled(FieldValues values, Induction induction) =>
        values.Optional(Coolant) is { } coolant ? induction.WithCoolant(coolant) : induction;

    private static FuelConsumption ConsumptionOf(FieldValues values)
    {
        Fuel burnt = values.Required(Burnt);
        return FuelConsumption.Of(values.Optional(Stated) ?? burnt, values.Required(Lambda), values.Required(SpecificConsumption)).With(burnt);
    }

    private static PowerCurve? CurveOf(FieldValues values)
    {
        (RotationalSpeed, Power)[] points = [.. values.Required(Curve).Select(row => (row.Speed, row.Power))];
        return values.Made(
            Curve,
            count => PowerCurve.AtWheels(values.Required(MeasuredIn), values.Optional(DrivetrainLoss) ?? Ratio.Zero, points[..count]));
    }

    private static FuelDemandModel? DemandOf(FieldValues values)
    {
        if (EfficiencyOf(values) is not { } filling)
        {
            return null;
        }

        FuelDemandModel model = FuelDemandModel.Of(
            values.Required(EnginePart),
            values.Required(InductionPart),
            filling,
            values.Required(PowerPart),
            values.Required(MechanicalEfficiency),
            values.Required(ConsumptionPart),
            values.Required(Basis),
            values.Optional(MechanicalEfficiencySpeed));
        if (values.Optional(EvaporatedShare) is { } share)
        {
            if (model.Consumption.Fuel.HeatOfVaporisation is null)
            {
                values.Wrong(EvaporatedShare, Statement.Of("file.no-evaporation-heat", $"needs the fuel's heat of vaporisation. Give heat_of_vaporisation of {model.Consumption.Fuel.Name}."));
                return null;
            }

            model = model.WithEvaporation(share);
        }

        SpeedRow[] rows = [.. values.Optional(ByEngineSpeed) ?? []];
        return rows.Length == 0 ? model : values.Made(ByEngineSpeed, count => model.With(AlongSpeed.Of(rows[..count])));
    }

    /// <summary>The rows of a table of volumetric efficiency.</summary>
    public static IReadOnlyList<EfficiencyRow> RowsOf(FuelSizing.Engines.VolumetricEfficiency table) =>
        [.. table.Points.Select(point => new EfficiencyRow(point.Speed, point.Efficiency))];

    /// <summary>The table of the rows that were read; none where they make none.</summary>
    public static FuelSizing.Engines.VolumetricEfficiency? EfficiencyOf(FieldValues values)
    {
        (RotationalSpeed, Ratio)[] points = [.. values.Required(VolumetricEfficiency).Select(row => (row.Speed, row.Efficiency))];
        return values.Made(VolumetricEfficiency, count => FuelSizing.Engines.VolumetricEfficiency.Of(points[..count]));
    }

    /// <summary>A point of a table of volumetric efficiency.</summary>
    internal sealed record EfficiencyRow(RotationalSpeed Speed, Ratio Efficiency);

    private sealed record PowerRow(RotationalSpeed Speed, Power Power);
}
