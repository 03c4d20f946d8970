using FuelSizing.Engines;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A boost line, of any kind.</summary>
internal static class BoostLineForm
{
    private static readonly QuantityField<RotationalSpeed> Speed =
        new("speed", Measures.Speed, "engine speed, rising from row to row") { Range = "100 to 25,000 rev/min", Within = EngineSpeed.Checked };

    private static readonly QuantityField<Pressure> MeasuredPressure = new("boost", Measures.Pressure, "manifold gauge pressure there at full throttle")
    {
        Example = "0.6 bar",
        Range = "−95 to 400 kPa",
        Within = ManifoldPressure.Within,
    };

    private static readonly RecordForm<BoostRow> OfRow = new(
        "measured_boost_point", "a measured boost", values => new(values.Required(Speed), values.Required(MeasuredPressure)))
    {
        { Speed, row => row.Speed },
        { MeasuredPressure, row => row.Boost },
    };

    private static readonly ListField<BoostRow> Points = new("points", () => OfRow, "measured boost against engine speed") { IsTable = true, Minimum = 2 };

    private static readonly RecordForm<MeasuredBoost> Measured = new("measured_boost", "a measured boost line", MeasuredOf)
    {
        { new KindField("measured"), _ => null },
        { Points, line => [.. line.Points.Select(point => new BoostRow(point.Speed, point.Boost))] },
    };

    private static readonly QuantityField<Pressure> HeldPressure =
        new("boost", Measures.Pressure, "manifold gauge pressure that is held") { Example = "0.6 bar", Range = "0 to 400 kPa" };

    private static readonly QuantityField<RotationalSpeed> From =
        new("from", Measures.Speed, "lowest engine speed at which it is held") { Example = "3000 rpm", Range = "100 to 25,000 rev/min" };

    private static readonly QuantityField<RotationalSpeed> To =
        new("to", Measures.Speed, "highest engine speed at which it is held") { Range = "above `from`, to 25,000 rev/min" };

    private static readonly QuantityField<RotationalSpeed> Threshold =
        new("threshold", Measures.Speed, "engine speed at which boost sets in, from where it rises in a straight line")
        {
            Example = "2200 rpm",
            Optional = true,
            Range = "100 rev/min to below `from`",
            Default = "no data below `from`",
        };

    private static readonly RecordForm<HeldBoost> Held = new(
        "held_boost",
        "a boost that is held",
        values => HeldBoost.Of(values.Required(HeldPressure), values.Required(From), values.Required(To), values.Optional(Threshold)))
    {
        { new KindField("held"), _ => null },
        { HeldPressure, line => line.Boost },
        { From, line => line.From },
        { To, line => line.To },
        { Threshold, line => line.Threshold },
    };

    private static readonly NumberField DriveRatio =
        new("drive_ratio", 8.37, 0.2, 20, "turns of the compressor (of a centrifugal one, of its impeller) to one of the crank, its own gears included");

    private static readonly QuantityField<Ratio> CompressorPulley =
        new("compressor_pulley", Measures.Share, "change of the driven pulley's diameter since that ratio; a smaller one turns the compressor faster")
        {
            Example = "-12 %",
            Optional = true,
            Range = "−50 to 100 %",
            Default = "0 %",
            Arguments = [],
        };

    private static readonly QuantityField<Ratio> CrankPulley =
        new("crank_pulley", Measures.Share, "change of the driving pulley's diameter since that ratio; a larger one turns the compressor faster")
        {
            Example = "12 %",
            Optional = true,
            Range = "−50 to 100 %",
            Default = "0 %",
            Arguments = [],
        };

    private static readonly QuantityField<RotationalSpeed> MaximumCompressorSpeed =
        new("maximum_compressor_speed", Measures.Speed, "highest speed of the compressor itself, not of the engine")
        {
            Example = "62500 rpm",
            Optional = true,
            Range = "1,000 to 400,000 rev/min",
            Default = "not judged",
            Arguments = ["maximum"],
        };

    private static readonly QuantityField<RotationalSpeed> KnownSpeed =
        new("known_speed", Measures.Speed, "engine speed of the known point") { Example = "5900 rpm", Range = "100 to 25,000 rev/min" };

    private static readonly QuantityField<Pressure> KnownBoost =
        new("known_boost", Measures.Pressure, "manifold gauge pressure of the known point, at full throttle") { Example = "0.41 bar", Range = "1 to 400 kPa" };

    private static readonly NumberField KnownDriveRatio =
        new("known_drive_ratio", 8.37, 0.2, 20, "drive ratio at which the known point was measured") { Optional = true, Default = "`drive_ratio`", Arguments = [] };

    private static readonly PartField<Atmosphere> MeasuredIn =
        new("measured_in", () => PointForm.Atmosphere, "the ambient air in which the known point was measured");

    private static readonly RecordForm<CentrifugalBoost> Centrifugal = new("centrifugal_boost", "a centrifugal compressor on a belt", CentrifugalOf)
    {
        { new KindField("centrifugal"), _ => null },
        { DriveRatio, line => line.DriveRatio },
        { CompressorPulley, _ => null },
        { CrankPulley, _ => null },
        { KnownSpeed, line => line.KnownSpeed },
        { KnownBoost, line => line.KnownBoost },
        { KnownDriveRatio, line => line.KnownDriveRatio.Equals(line.DriveRatio) ? null : line.KnownDriveRatio },
        { MeasuredIn, line => line.MeasuredIn },
        { MaximumCompressorSpeed, line => line.MaximumCompressorSpeed },
    };

    private static readonly QuantityField<Volume> Displacement =
        new("displacement_per_revolution", Measures.Volume, "of the compressor, with one turn of its own, if nothing leaks") { Example = "0.9 L", Range = "0.02 to 20 L" };

    private static readonly QuantityField<Ratio> Efficiency =
        new("volumetric_efficiency", Measures.Share, "of the compressor: what it passes ÷ its displacement, at inlet density") { Example = "85 %", Range = "20 to 100 %" };

    private static readonly RecordForm<DisplacementBoost> Displacing = new("displacement_boost", "a displacement compressor on a belt", DisplacementOf)
    {
        { new KindField("displacement"), _ => null },
        { DriveRatio, line => line.DriveRatio },
        { CompressorPulley, _ => null },
        { CrankPulley, _ => null },
        { Displacement, line => line.DisplacementPerRevolution },
        { Efficiency, line => line.VolumetricEfficiency },
        { MaximumCompressorSpeed, line => line.MaximumCompressorSpeed },
    };

    /// <summary>Any boost line; changes of pulleys are read, and written as the drive ratio that they give.</summary>
    public static ChoiceForm<BoostLine> Form { get; } = new(
        "boost_line",
        "a boost line",
        Variant<BoostLine>.Of(Measured),
        Variant<BoostLine>.Of(Held),
        Variant<BoostLine>.Of(Centrifugal),
        Variant<BoostLine>.Of(Displacing));

    private static MeasuredBoost? MeasuredOf(FieldValues values)
    {
        (RotationalSpeed, Pressure)[] points = [.. values.Required(Points).Select(row => (row.Speed, row.Boost))];
        return values.Made(Points, count => MeasuredBoost.Of(points[..count]));
    }

    private static CentrifugalBoost? CentrifugalOf(FieldValues values)
    {
        double ratio = values.Required(DriveRatio);
        CentrifugalBoost? known = values.Checked(
            () => CentrifugalBoost.From(
                values.Optional(KnownDriveRatio) ?? ratio, values.Required(KnownSpeed), values.Required(KnownBoost), values.Required(MeasuredIn)),
            ("driveRatio", values.Optional(KnownDriveRatio) is null ? DriveRatio : KnownDriveRatio),
            ("knownSpeed", KnownSpeed),
            ("knownBoost", KnownBoost));
        return known is null ? null : (CentrifugalBoost?)Driven(values, known);
    }

    private static DisplacementBoost? DisplacementOf(FieldValues values) => (DisplacementBoost?)Driven(
        values, DisplacementBoost.Of(values.Required(DriveRatio), values.Required(Displacement), values.Required(Efficiency)));

    private static BeltDrivenBoost? Driven(FieldValues values, BeltDrivenBoost known)
    {
        BeltDrivenBoost? line = known.WithDriveRatio(values.Required(DriveRatio));
        if (values.Optional(CompressorPulley) is { } driven)
        {
            line = values.Checked(() => line.WithCompressorPulley(driven), ("change", CompressorPulley));
        }

        if (line is not null && values.Optional(CrankPulley) is { } driving)
        {
            BeltDrivenBoost before = line;
            line = values.Checked(() => before.WithCrankPulley(driving), ("change", CrankPulley));
        }

        return line is not null && values.Optional(MaximumCompressorSpeed) is { } maximum ? line.WithMaximumCompressorSpeed(maximum) : line;
    }

    private sealed record BoostRow(RotationalSpeed Speed, Pressure Boost);
}
