using FuelSizing.Electrical;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A pump, in a catalogue or in a setup; there also with its feed, or several in series and in parallel, in any nesting.</summary>
internal static class PumpForm
{
    private static readonly QuantityField<ElectricPotential> Voltage =
        new("voltage", Measures.Voltage, "at the pump's terminals") { Range = "5 to 30 V", Within = PumpCurve.WithinVoltage };

    private static readonly QuantityField<Pressure> PressureRise =
        new("pressure_rise", Measures.Pressure, "across the pump, rising from row to row") { Range = "0 to 2,000 kPa", Within = PumpCurve.WithinRise };

    private static readonly QuantityField<VolumeFlow> Flow =
        new("flow", Measures.Flow, "delivered") { Example = "165 L/h", Range = "0 to 3,000 L/h", Within = PumpCurve.WithinFlow };

    private static readonly QuantityField<ElectricCurrent> Current =
        new("current", Measures.Current, "drawn; in every row or in none") { Optional = true, Range = "0.1 to 100 A", Within = PumpCurve.WithinCurrent };

    private static readonly RecordForm<CurveRow> Row = new(
        "curve_point",
        "a measured point",
        values => new(values.Required(Voltage), values.Required(PressureRise), values.Required(Flow), values.Optional(Current)))
    {
        { Voltage, row => row.Voltage },
        { PressureRise, row => row.PressureRise },
        { Flow, row => row.Flow },
        { Current, row => row.Current },
    };

    private static readonly NameField Name = new();

    private static readonly QuantityField<Pressure> Relief =
        new("relief", Measures.Pressure, "pressure rise at which its own relief valve opens") { Example = "700 kPa", Optional = true, Range = "50 to 2,000 kPa", Default = "no valve" };

    private static readonly QuantityField<Ratio> Condition =
        new("condition", Measures.Share, "flow left of the measured flow") { Optional = true, Range = "30 to 100 %", Default = "100 %" };

    private static readonly WordField<PumpKind> Kind = new(
        "kind",
        "how it moves fuel, for voltages at which it was not measured",
        (PumpKind.Unknown, "unknown"), (PumpKind.Turbine, "turbine"), (PumpKind.Displacement, "displacement"))
    { Optional = true, Default = "`unknown`" };

    private static readonly QuantityField<ElectricResistance> Winding =
        new("winding", Measures.Resistance, "of its motor, at rest; needs `current`") { Example = "250 mΩ", Optional = true, Range = "0.01 to 5 Ω", Default = "not known" };

    private static readonly ListField<CurveRow> Curve = new("curve", () => Row, "measured points, at one voltage or several")
    {
        IsTable = true,
        Minimum = 2,
        EachOrNone = Current.Name,
        Arguments = ["curves"],
    };

    private static readonly PartField<Feed> Wiring = new("feed", () => FeedForm.Form, "the wiring between the supply and the motor; needs `current`") { Optional = true, Default = "no wiring" };

    private static readonly PartField<VoltageConverter> Converting = new("converter", () => ConverterForm.Form, "the converter between its feed and its motor; needs `current`") { Optional = true, Default = "no converter" };

    /// <summary>One pump by itself.</summary>
    public static RecordForm<Pump> Form { get; } = new("pump", "a pump", PumpOf)
    {
        { Name, pump => pump.Name },
        { Relief, pump => pump.Relief },
        { Condition, pump => pump.Condition },
        { Kind, pump => pump.Drive is { Kind: not PumpKind.Unknown } drive ? drive.Kind : null },
        { Winding, pump => pump.Drive?.Winding },
        { Curve, pump => [.. pump.Curves.SelectMany(curve => curve.Points, (curve, point) => new CurveRow(curve.Voltage, point.PressureRise, point.Flow, point.Current))] },
    };

    private static readonly RecordForm<Pump> Wired = new("wired_pump", "a pump with its feed", PumpOf)
    {
        { Form, pump => pump },
        { Wiring, pump => pump.Feed },
        { Converting, pump => pump.Converter },
    };

    private static readonly QuantityField<Pressure> On =
        new("on_above", Measures.Pressure, "boost at which its switch closes as boost rises") { Example = "40 kPa", Range = "−95 to 400 kPa", Arguments = ["on"] };

    private static readonly QuantityField<Pressure> Off =
        new("off_below", Measures.Pressure, "boost at which the switch opens as boost falls; less than `on_above`") { Example = "30 kPa", Range = "−95 to 400 kPa", Arguments = ["off"] };

    private static readonly QuantityField<ElectricResistance> Resistor =
        new("resistor", Measures.Resistance, "that it runs through until it is switched on; needs `current`") { Example = "600 mΩ", Optional = true, Range = "0.01 to 5 Ω", Default = "stopped" };

    private static readonly QuantityField<Ratio> LowShare =
        new("low_speed", Measures.Share, "mean voltage at its feed until it is switched on, as a share of the supply's") { Example = "60 %", Optional = true, Range = "30 to 100 %", Default = "stopped", Arguments = ["share"] };

    private static readonly WordField<ConverterBelow> Below =
        new("converter_below", "that it runs without its converter until it is switched on", (ConverterBelow.Bypassed, "bypassed")) { Optional = true, Default = "stopped", Arguments = ["lowSpeed"] };

    private static readonly PartField<Pump> Switched = new("switched", () => Wired, "a pump that is switched by boost");

    private static readonly RecordForm<SwitchedPump> ByBoost = new(
        "switched_pump",
        "a pump that is switched by boost",
        SwitchedOf,
        OneLowSpeed,
        """ "not": { "anyOf": [ { "required": [ "resistor", "low_speed" ] }, { "required": [ "resistor", "converter_below" ] }, { "required": [ "low_speed", "converter_below" ] } ] } """)
    {
        { On, pump => pump.On },
        { Off, pump => pump.Off },
        { Resistor, pump => pump.LowSpeed.Resistor },
        { LowShare, pump => pump.LowSpeed.Share },
        { Below, pump => pump.LowSpeed.IsConverterBypassed ? ConverterBelow.Bypassed : null },
        { Switched, pump => pump.Pump },
    };

    private static readonly WordField<SeriesBypass> Bypass =
        new("bypass", "what leads past a stage that stands still", (SeriesBypass.CheckValve, "check-valve"), (SeriesBypass.None, "none"));

    private static readonly ListField<PumpAssembly> Series =
        new("series", () => Assembly!, "pumps in series, from the tank on") { Minimum = 2, Arguments = ["stages"] };

    private static readonly ListField<PumpAssembly> Parallel =
        new("parallel", () => Assembly!, "pumps in parallel") { Minimum = 2, Arguments = ["branches"] };

    private static readonly RecordForm<PumpSeries> InSeries =
        new("pump_series", "pumps in series", values => PumpSeries.Of(values.Required(Bypass), [.. values.Required(Series)]))
        {
            { Bypass, series => series.Bypass },
            { Series, series => series.Stages },
        };

    private static readonly RecordForm<PumpParallel> InParallel =
        new("pump_parallel", "pumps in parallel", values => PumpParallel.Of([.. values.Required(Parallel)]))
        {
            { Parallel, parallel => parallel.Branches },
        };

    private static readonly PartField<PumpAssembly> Branched = new("branch", () => Assembly!, "the pump or pumps that have lines of their own") { Arguments = ["pump"] };

    private static readonly ListField<IFlowLoss> OwnSuction =
        new("suction", () => PlumbingForm.PartOfPath, "its own, from where the set draws to it") { Optional = true, Default = "no loss" };

    private static readonly ListField<IFlowLoss> OwnDischarge =
        new("discharge", () => PlumbingForm.PartOfPath, "its own, from it to the joint with the others: lines, filters, check valve") { Optional = true, Default = "no loss" };

    private static readonly RecordForm<PumpBranch> WithOwnLines = new(
        "pump_branch",
        "a pump with lines of its own",
        values => PumpBranch.Of(values.Required(Branched), values.Required(OwnSuction), values.Required(OwnDischarge)))
    {
        { Branched, branch => branch.Pump },
        { OwnSuction, branch => branch.Suction },
        { OwnDischarge, branch => branch.Discharge },
    };

    /// <summary>One pump with its feed, or several.</summary>
    public static ChoiceForm<PumpAssembly> Assembly { get; } = new(
        "pump",
        "a pump",
        Variant<PumpAssembly>.Of(InSeries, given: Series),
        Variant<PumpAssembly>.Of(InParallel, given: Parallel),
        Variant<PumpAssembly>.Of(ByBoost, given: Switched),
        Variant<PumpAssembly>.Of(WithOwnLines, given: Branched),
        Variant<PumpAssembly>.Of(Wired));

    private static void OneLowSpeed(FieldValues values)
    {
        Field[] given = [.. new Field[] { Resistor, LowShare, Below }.Where(field => values.Reader.Has(field.Name))];
        if (given.Length > 1)
        {
            values.Wrong(given[^1], Statement.Of("file.two-low-speeds", $"is given together with {given[0].Name}. Give one of resistor, low_speed and converter_below."));
        }
    }

    private static SwitchedPump SwitchedOf(FieldValues values)
    {
        (ElectricResistance? resistor, Ratio? share) = (values.Optional(Resistor), values.Optional(LowShare));
        return SwitchedPump.Above(
            values.Required(On),
            values.Required(Off),
            values.Required(Switched),
            resistor is { } ohms ? PumpLowSpeed.Through(ohms) : share is { } part ? PumpLowSpeed.At(part)
                : values.Reader.Has(Below.Name) ? PumpLowSpeed.ConverterBypassed
                : null);
    }

    private static Pump? PumpOf(FieldValues values)
    {
        string name = values.Required(Name);
        (CurveRow Point, EntryReader Line)[][] rows =
        [
            .. values.Required(Curve).Zip(values.Rows(Curve))
                .GroupBy(row => row.First.Voltage.Volts)
                .Select(row => row.ToArray()),
        ];
        PumpCurve?[] curves = [.. rows.Select(row => values.Reader.Made(
            Curve.Name, [.. row.Select(point => point.Line)], count => CurveOf(name, [.. row.Take(count).Select(point => point.Point)])))];
        Pump? alone = curves.Contains(null)
            ? null
            : values.Reader.Made(
                Curve.Name,
                [.. rows.Select(row => row[0].Line)],
                count => Pump.Of([.. curves.Take(count).OfType<PumpCurve>()]));
        if (alone is null)
        {
            return null;
        }

        Pump pump = Pump.Of(alone.Curves, values.Optional(Relief), values.Optional(Condition), values.Optional(Wiring), DriveOf(values.Optional(Kind), values.Optional(Winding)));
        return values.Optional(Converting) is { } converter ? pump.WithConverter(converter) : pump;
    }

    private static PumpDrive? DriveOf(PumpKind? kind, ElectricResistance? winding) =>
        kind is null or PumpKind.Unknown && winding is null ? null : PumpDrive.Of(kind ?? PumpKind.Unknown, winding);

    private static PumpCurve CurveOf(string name, CurveRow[] points) =>
        points[0].Current is null
            ? PumpCurve.At(name, points[0].Voltage, [.. points.Select(point => (point.PressureRise, point.Flow))])
            : PumpCurve.WithCurrent(name, points[0].Voltage, [.. points.Select(point => (point.PressureRise, point.Flow, point.Current!.Value))]);

    private enum ConverterBelow
    {
        Bypassed,
    }

    private sealed record CurveRow(ElectricPotential Voltage, Pressure PressureRise, VolumeFlow Flow, ElectricCurrent? Current);
}
