using System.Collections.Frozen;
using FuelSizing.Injectors;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>An injector, in a catalogue or in a setup.</summary>
internal static class InjectorFields
{
    private const string Table = "dead_times";

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["staticFlow"] = "static_flow",
        ["ratedDifferential"] = "rated_differential",
        ["minimumLinearPulse"] = "minimum_linear_pulse",
        ["maximumDifferential"] = "maximum_differential",
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<string, string> FluidFields = new Dictionary<string, string>
    {
        ["name"] = "test_fluid",
        ["density"] = "test_density",
    }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static Injector? Read(EntryReader reader)
    {
        string name = reader.Name();
        VolumeFlow flow = reader.Required("static_flow", Measures.Flow);
        Pressure rated = reader.Required("rated_differential", Measures.Pressure);
        string? fluid = reader.Text("test_fluid");
        Density? density = reader.Optional("test_density", Measures.Density);
        Duration shortest = reader.Required("minimum_linear_pulse", Measures.Time);
        Pressure maximum = reader.Required("maximum_differential", Measures.Pressure);
        if (fluid is null != density is null)
        {
            reader.Wrong(
                fluid is null ? "test_fluid" : "test_density",
                reader.Line,
                "is missing. Give test_fluid and test_density both, or neither for n-heptane.");
        }

        DeadTime[] times = [.. reader.Rows(Table).Select(row => new DeadTime(row))];
        DeadTimeTable? deadTime = OneOrOther(times) ? TableOf(times, reader) : null;
        TestFluid? tested = density is { } heavy && fluid is not null
            ? reader.Make(() => TestFluid.Of(fluid, heavy), FluidFields)
            : TestFluid.Heptane;
        return reader.Make(() => Injector.Of(name, flow, rated, tested!, deadTime!, shortest, maximum), Fields);
    }

    /// <summary>Writes it.</summary>
    public static void Write(FieldWriter fields, Injector injector)
    {
        fields.Text("name", injector.Name);
        fields.Quantity("static_flow", injector.StaticFlow, Measures.Flow);
        fields.Quantity("rated_differential", injector.RatedDifferential, Measures.Pressure);
        fields.Text("test_fluid", injector.TestFluid.Name);
        fields.Quantity("test_density", injector.TestFluid.Density, Measures.Density);
        fields.Quantity("minimum_linear_pulse", injector.MinimumLinearPulse, Measures.Time);
        fields.Quantity("maximum_differential", injector.MaximumDifferential, Measures.Pressure);
        fields.Table(Table, injector.DeadTime.Points, (row, point) =>
        {
            row.Quantity("voltage", point.Voltage, Measures.Voltage);
            row.Quantity("differential", point.Differential, Measures.Pressure);
            row.Quantity("time", point.Time, Measures.Time);
        });
    }

    private static bool OneOrOther(DeadTime[] times)
    {
        if (times.All(time => time.Differential is null) || times.All(time => time.Differential is not null))
        {
            return true;
        }

        EntryReader row = times.First(time => time.Differential is null).Row;
        row.Wrong(
            "differential",
            row.Line,
            "is missing, though other rows have it. Give it in every row, or in none for a table at one pressure.");
        return false;
    }

    private static DeadTimeTable? TableOf(DeadTime[] times, EntryReader reader)
    {
        DeadTime[][] rows = [.. times.GroupBy(time => time.Differential?.Pascals).Select(row => row.ToArray())];
        DeadTimeTable?[] each = [.. rows.Select(row => ByVoltage(row, reader))];
        if (rows.Length == 0 || each.Contains(null))
        {
            return null;
        }

        if (rows[0][0].Differential is null)
        {
            return each[0];
        }

        if (rows.Length == 1)
        {
            rows[0][0].Row.Wrong("differential", rows[0][0].Row.Line, "is the same in every row. Leave it out for a table at one pressure.");
            return null;
        }

        double[] volts = [.. rows[0].Select(time => time.Voltage.Volts)];
        foreach (DeadTime[] row in rows)
        {
            if (!row.Select(time => time.Voltage.Volts).SequenceEqual(volts))
            {
                int off = row.Zip(volts).TakeWhile(pair => pair.First.Voltage.Volts == pair.Second).Count();
                EntryReader first = row[Math.Min(off, row.Length - 1)].Row;
                first.Wrong(
                    "voltage",
                    first.Line,
                    "differs from the voltages at the first differential. Give a time for every pair of a voltage and a differential, in the same order.");
                return null;
            }
        }

        return reader.Made(
            Table,
            [.. rows.Select(row => row[0].Row)],
            count => count == 1
                ? each[0]!
                : DeadTimeTable.Of(
                    [.. rows[0].Select(time => time.Voltage)],
                    [.. rows.Take(count).Select(row => row[0].Differential!.Value)],
                    [.. rows.Take(count).Select(row => row.Select(time => time.Time).ToArray())]));
    }

    private static DeadTimeTable? ByVoltage(DeadTime[] row, EntryReader reader) =>
        reader.Made(
            Table,
            [.. row.Select(time => time.Row)],
            count => DeadTimeTable.ByVoltage([.. row.Take(count).Select(time => (time.Voltage, time.Time))]));

    private readonly record struct DeadTime
    {
        public DeadTime(EntryReader row)
        {
            Row = row;
            Voltage = row.Required("voltage", Measures.Voltage, DeadTimeTable.WithinVoltage);
            Differential = row.Optional("differential", Measures.Pressure, DeadTimeTable.WithinDifferential);
            Time = row.Required("time", Measures.Time, DeadTimeTable.WithinTime);
        }

        public EntryReader Row { get; }

        public ElectricPotential Voltage { get; }

        public Pressure? Differential { get; }

        public Duration Time { get; }
    }
}
