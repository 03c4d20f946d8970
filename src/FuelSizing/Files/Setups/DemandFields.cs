using System.Collections.Frozen;
using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>The fields of what the engine burns.</summary>
internal static class DemandFields
{
    private static readonly Words<EngineCycle> Cycles =
        new((EngineCycle.FourStroke, "four-stroke"), (EngineCycle.TwoStroke, "two-stroke"));

    private static readonly Words<CompressorDrive> Drives = new(
        (CompressorDrive.None, "naturally-aspirated"),
        (CompressorDrive.ExhaustTurbine, "turbocharged"),
        (CompressorDrive.Belt, "belt-driven"));

    private static readonly Words<DemandBasis> Bases =
        new((DemandBasis.Larger, "larger"), (DemandBasis.Air, "air"), (DemandBasis.Power, "power"));

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["displacement"] = "displacement",
        ["cylinders"] = "cylinders",
        ["speedLimit"] = "speed_limit",
        ["compressorEfficiency"] = "compressor_efficiency",
        ["coolerEffectiveness"] = "cooler_effectiveness",
        ["coolerPressureLoss"] = "cooler_pressure_loss",
        ["driveEfficiency"] = "drive_efficiency",
        ["loss"] = "drivetrain_loss",
        ["lambda"] = "lambda",
        ["brakeSpecificFuelConsumption"] = "brake_specific_fuel_consumption",
        ["mechanicalEfficiency"] = "mechanical_efficiency",
    }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static FuelDemandModel? Read(EntryReader reader)
    {
        Engine? engine = reader.RequiredPart("engine", "Give the engine.") is { } turns ? EngineOf(turns) : null;
        Induction? induction = reader.RequiredPart("induction", "Give how the engine gets its air.") is { } breathes
            ? InductionOf(breathes)
            : null;
        VolumetricEfficiency? filling = FillingOf(reader);
        PowerCurve? power = reader.RequiredPart("power", "Give the measured power.") is { } measured ? PowerOf(measured) : null;
        Ratio mechanical = reader.Required("mechanical_efficiency", Measures.Share, FuelDemandModel.WithinMechanical);
        FuelConsumption? consumption = reader.RequiredPart("consumption", "Give what the engine burns.") is { } burns
            ? ConsumptionOf(burns)
            : null;
        DemandBasis basis = Bases.Read(reader, "basis", required: false);
        return reader.Checked(
            () => FuelDemandModel.Of(engine!, induction!, filling!, power!, mechanical, consumption!, basis), Fields);
    }

    /// <summary>Writes it.</summary>
    public static void Write(FieldWriter fields, FuelDemandModel demand)
    {
        fields.Part("engine", part => Write(part, demand.Engine));
        fields.Part("induction", part => Write(part, demand.Induction));
        fields.Table("volumetric_efficiency", demand.VolumetricEfficiency.Points, (row, point) =>
        {
            row.Quantity("speed", point.Speed, Measures.Speed);
            row.Quantity("efficiency", point.Efficiency, Measures.Share);
        });
        fields.Part("power", part => Write(part, demand.MeasuredPower));
        fields.Quantity("mechanical_efficiency", demand.MechanicalEfficiency, Measures.Share);
        fields.Part("consumption", part =>
        {
            part.Number("lambda", demand.Consumption.Lambda);
            part.Quantity(
                "brake_specific_fuel_consumption",
                demand.Consumption.BrakeSpecificFuelConsumption,
                Measures.Consumption);
            part.Part("fuel", fuel => FuelFields.Write(fuel, demand.Consumption.Fuel));
        });
        fields.Text("basis", Bases.Of(demand.Basis));
    }

    private static Engine? EngineOf(EntryReader reader)
    {
        string name = reader.Name();
        Volume displacement = reader.Required("displacement", Measures.Volume);
        int cylinders = reader.RequiredCount("cylinders", "4");
        EngineCycle cycle = Cycles.Read(reader, "cycle");
        RotationalSpeed limit = reader.Required("speed_limit", Measures.Speed);
        return reader.Make(() => Engine.Of(name, displacement, cylinders, cycle, limit), Fields);
    }

    private static void Write(FieldWriter fields, Engine engine)
    {
        fields.Text("name", engine.Name);
        fields.Quantity("displacement", engine.Displacement, Measures.Volume);
        fields.Count("cylinders", engine.Cylinders);
        fields.Text("cycle", Cycles.Of(engine.Cycle));
        fields.Quantity("speed_limit", engine.SpeedLimit, Measures.Speed);
    }

    private static Induction? InductionOf(EntryReader reader)
    {
        CompressorDrive drive = Drives.Read(reader, "kind");
        if (drive == CompressorDrive.None)
        {
            return reader.Make(() => Induction.NaturallyAspirated, Fields);
        }

        Ratio efficiency = reader.Required("compressor_efficiency", Measures.Share);
        Ratio effectiveness = reader.Required("cooler_effectiveness", Measures.Share);
        Pressure loss = reader.Required("cooler_pressure_loss", Measures.Pressure);
        if (drive == CompressorDrive.ExhaustTurbine)
        {
            return reader.Make(() => Induction.Turbocharged(efficiency, effectiveness, loss), Fields);
        }

        Ratio belt = reader.Required("drive_efficiency", Measures.Share);
        return reader.Make(() => Induction.BeltDriven(efficiency, effectiveness, loss, belt), Fields);
    }

    private static void Write(FieldWriter fields, Induction induction)
    {
        fields.Text("kind", Drives.Of(induction.Drive));
        if (induction.Drive == CompressorDrive.None)
        {
            return;
        }

        fields.Quantity("compressor_efficiency", induction.CompressorEfficiency, Measures.Share);
        fields.Quantity("cooler_effectiveness", induction.CoolerEffectiveness, Measures.Share);
        fields.Quantity("cooler_pressure_loss", induction.CoolerPressureLoss, Measures.Pressure);
        if (induction.Drive == CompressorDrive.Belt)
        {
            fields.Quantity("drive_efficiency", induction.DriveEfficiency, Measures.Share);
        }
    }

    private static VolumetricEfficiency? FillingOf(EntryReader reader)
    {
        const string table = "volumetric_efficiency";
        IReadOnlyList<EntryReader> rows = reader.Rows(table);
        (RotationalSpeed, Ratio)[] points =
        [
            .. rows.Select(row => (
                row.Required("speed", Measures.Speed, EngineSpeed.Checked), row.Required("efficiency", Measures.Share, VolumetricEfficiency.Within))),
        ];
        return reader.Made(table, rows, count => VolumetricEfficiency.Of(points[..count]));
    }

    private static PowerCurve? PowerOf(EntryReader reader)
    {
        const string table = "curve";
        Atmosphere? air = reader.RequiredPart("measured_in", "Give the air to which the power belongs.") is { } part
            ? PointFields.AtmosphereOf(part)
            : null;
        Ratio loss = reader.Optional("drivetrain_loss", Measures.Share, Drivetrain.WithinLoss) ?? Ratio.Zero;
        IReadOnlyList<EntryReader> rows = reader.Rows(table);
        (RotationalSpeed, Power)[] points =
        [
            .. rows.Select(row => (
                row.Required("speed", Measures.Speed, EngineSpeed.Checked),
                row.Required("power", Measures.Power, Drivetrain.Within))),
        ];
        PowerCurve? curve = reader.Made(table, rows, count => PowerCurve.AtWheels(air!, loss, points[..count]));
        return reader.Make(() => curve!, Fields);
    }

    private static void Write(FieldWriter fields, PowerCurve power)
    {
        fields.Part("measured_in", part => PointFields.Write(part, power.MeasuredIn));
        if (power.Loss != 0)
        {
            fields.Quantity("drivetrain_loss", power.LossGiven, Measures.Share);
        }

        fields.Table("curve", power.Points, (row, point) =>
        {
            row.Quantity("speed", point.Speed, Measures.Speed);
            row.Quantity("power", point.Power, Measures.Power);
        });
    }

    private static FuelConsumption? ConsumptionOf(EntryReader reader)
    {
        double lambda = reader.RequiredNumber("lambda", "0.82");
        BrakeSpecificFuelConsumption specific = reader.Required("brake_specific_fuel_consumption", Measures.Consumption);
        Fuel? fuel = reader.RequiredPart("fuel", "Give the fuel.") is { } part ? FuelFields.Read(part) : null;
        return reader.Make(() => FuelConsumption.Of(fuel!, lambda, specific), Fields);
    }
}
