using System.Collections.Frozen;
using FuelSizing.Electrical;
using FuelSizing.Equations;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A pump, in a catalogue or in a setup.</summary>
internal static class PumpFields
{
    private const string Table = "curve";

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["relief"] = "relief",
        ["condition"] = "condition",
        ["curves"] = Table,
        ["feed"] = "feed",
    }.ToFrozenDictionary();

    /// <summary>Reads it by itself; none if anything is wrong.</summary>
    public static Pump? Read(EntryReader reader) => Read(reader, null);

    /// <summary>Reads it with the feed that it hangs on; none if anything is wrong.</summary>
    public static Pump? Read(EntryReader reader, Feed? feed)
    {
        string name = reader.Name();
        Pressure? relief = reader.Optional("relief", Measures.Pressure);
        Ratio? condition = reader.Optional("condition", Measures.Share);
        CurvePoint[] points = [.. reader.Rows(Table).Select(row => new CurvePoint(row))];
        Pump? pump = OneOrOther(points) ? PumpOf(name, points, reader) : null;
        return reader.Make(() => Pump.Of(pump!.Curves, relief, condition, feed), Fields);
    }

    /// <summary>Writes it, without its feed.</summary>
    public static void Write(FieldWriter fields, Pump pump)
    {
        fields.Text("name", pump.Name);
        fields.Quantity("relief", pump.Relief, Measures.Pressure);
        fields.Quantity("condition", pump.Condition, Measures.Share);
        fields.Table(
            Table,
            pump.Curves.SelectMany(curve => curve.Points, (curve, point) => (curve.Voltage, Point: point)),
            (row, measured) =>
            {
                row.Quantity("voltage", measured.Voltage, Measures.Voltage);
                row.Quantity("pressure_rise", measured.Point.PressureRise, Measures.Pressure);
                row.Quantity("flow", measured.Point.Flow, Measures.Flow);
                row.Quantity("current", measured.Point.Current, Measures.Current);
            });
    }

    private static bool OneOrOther(CurvePoint[] points)
    {
        if (points.All(point => point.Current is null) || points.All(point => point.Current is not null))
        {
            return true;
        }

        EntryReader row = points.First(point => point.Current is null).Row;
        row.Wrong(
            "current",
            row.Line,
            "is missing, though other rows have it. Give it in every row or in none.");
        return false;
    }

    private static Pump? PumpOf(string name, CurvePoint[] points, EntryReader reader)
    {
        CurvePoint[][] rows = [.. points.GroupBy(point => point.Voltage.Volts).Select(row => row.ToArray())];
        PumpCurve?[] curves = [.. rows.Select(row => CurveOf(name, row, reader))];
        return curves.Contains(null)
            ? null
            : reader.Made(
                Table,
                [.. rows.Select(row => row[0].Row)],
                count => Pump.Of([.. curves.Take(count).OfType<PumpCurve>()]));
    }

    private static PumpCurve? CurveOf(string name, CurvePoint[] points, EntryReader reader) =>
        reader.Made(
            Table,
            [.. points.Select(point => point.Row)],
            count => points[0].Current is null
                ? PumpCurve.At(
                    name, points[0].Voltage, [.. points.Take(count).Select(point => (point.PressureRise, point.Flow))])
                : PumpCurve.WithCurrent(
                    name,
                    points[0].Voltage,
                    [.. points.Take(count).Select(point => (point.PressureRise, point.Flow, point.Current!.Value))]));

    private readonly record struct CurvePoint
    {
        public CurvePoint(EntryReader row)
        {
            Row = row;
            Voltage = row.Required("voltage", Measures.Voltage, PumpCurve.WithinVoltage);
            PressureRise = row.Required("pressure_rise", Measures.Pressure, PumpCurve.WithinRise);
            Flow = row.Required("flow", Measures.Flow, PumpCurve.WithinFlow);
            Current = row.Optional("current", Measures.Current, PumpCurve.WithinCurrent);
        }

        public EntryReader Row { get; }

        public ElectricPotential Voltage { get; }

        public Pressure PressureRise { get; }

        public VolumeFlow Flow { get; }

        public ElectricCurrent? Current { get; }
    }
}
