using System.Collections.Frozen;
using FuelSizing.Pumps;
using FuelSizing.Selection;
using UnitsNet;

namespace FuelSizing.Catalogues;

using Pressure = UnitsNet.Pressure;

/// <summary>A pump of a catalogue.</summary>
internal static class PumpEntry
{
    private const string Table = "curve";

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["relief"] = "relief",
        ["condition"] = "condition",
        ["curves"] = Table,
    }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static Candidate<Pump>? Read(Entry entry, ProblemList problems)
    {
        EntryReader reader = new(entry, problems);
        string name = reader.Name();
        Pressure? relief = reader.Optional("relief", Measures.Pressure);
        Ratio? condition = reader.Optional("condition", Measures.Share);
        decimal? cost = reader.Cost();
        CurvePoint[] points = [.. reader.Rows(Table).Select(row => new CurvePoint(row, reader))];
        Pump? pump = OneOrOther(points, reader) ? PumpOf(name, points, reader) : null;
        return reader.Make(
            () => Candidate.Of(name, Pump.Of(pump!.Curves, relief, condition), cost), Fields);
    }

    private static bool OneOrOther(CurvePoint[] points, EntryReader reader)
    {
        if (points.All(point => point.Current is null) || points.All(point => point.Current is not null))
        {
            return true;
        }

        reader.Wrong(
            $"{Table}.current",
            points.First(point => point.Current is null).Row.Line,
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
        public CurvePoint(EntryFields row, EntryReader reader)
        {
            Row = row;
            Voltage = reader.Required(row, "voltage", Measures.Voltage, PumpCurve.WithinVoltage);
            PressureRise = reader.Required(row, "pressure_rise", Measures.Pressure, PumpCurve.WithinRise);
            Flow = reader.Required(row, "flow", Measures.Flow, PumpCurve.WithinFlow);
            Current = reader.Optional(row, "current", Measures.Current, PumpCurve.WithinCurrent);
        }

        public EntryFields Row { get; }

        public ElectricPotential Voltage { get; }

        public Pressure PressureRise { get; }

        public VolumeFlow Flow { get; }

        public ElectricCurrent? Current { get; }
    }
}
