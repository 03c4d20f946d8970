using FuelSizing.Engines;
using FuelSizing.Files;
using FuelSizing.Fuzz.Mutating;
using FuelSizing.Logs;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Mappings of recorded runs. One that is read is written and read again, which changes nothing, and with it a run is read or refused.</summary>
internal sealed class MappingReader : FuzzedReader
{
    private static readonly string[] Fields =
    [
        "$schema", "mapping", "separator", "comma", "semicolon", "tab", "decimal_mark", "point", "heading_line", "units_row", "none", "skip", "use",
        "channels", "column", "unit", "reference", "gauge", "absolute", "stoichiometric", "AFR", "time", "speed", "manifold_pressure",
        "rail_pressure", "injector_pulse", "duty_cycle", "lambda", "battery_voltage", "power", "torque", "fuel_temperature", "fuel_volume_flow",
        "fuel_mass_flow", "s", "ms", "µs", "rev/min", "rpm", "rad/s", "kPa", "bar", "psi", "%", "1", "V", "kW", "hp", "PS", "N·m", "°C", "°F", "L/h",
        "kg/h", "g/s", "Time", "Speed", "Rail",
    ];

    public override string Name => "mapping";

    public override string Ending => ".json";

    public override string[] Words => Fields;

    public override Func<string, int, int, string>[] Edits => new JsonEdits(Fields).All;

    public override string? Without(string text, int piece) => JsonEdits.Without(text, piece);

    public override Reading Read(byte[] input)
    {
        string name = Characters(input) is null ? Holding(input) : "characters.json";
        RunMapping read;
        try
        {
            read = Characters(input) is { } text ? RunMappingFile.Parse(name, text) : RunMappingFile.Read(name);
        }
        catch (RunMappingException refused)
        {
            return FileAnswers.Refused(refused, name, input);
        }

        string written = RunMappingFile.ToJson(read);
        BrokenPromiseException.Unless(
            written == RunMappingFile.ToJson(RunMappingFile.Parse("again.json", written)), "A mapping written and read again is the same.");

        try
        {
            // A mapping is checked against the heading: the columns that the seeds name.
            using RunReader run = RunReader.Open(new StringReader("Time,Speed,Rail,Boost\n0,3000,350,0.5\n"), read, Atmosphere.Standard);
            BrokenPromiseException.Unless(run.Rows().Count() <= 1, "One line is one row.");
        }
        catch (RunFileException)
        {
            // Another heading than the run's, for instance.
        }

        return new(true, [$"read: {read.Separator}, {read.DecimalMark}, {read.UnitsRow}, columns {Math.Min(read.Columns.Count, 3)}"]);
    }
}
