using FuelSizing.Engines;
using FuelSizing.Fuzz.Mutating;
using FuelSizing.Logs;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Mappings of recorded runs. With one that is read, a run is read or refused.</summary>
internal sealed class MappingReader : FuzzedReader
{
    private static readonly string[] Fields =
    [
        "$schema", "version", "separator", "comma", "semicolon", "tab", "decimal", "point", "headingLine", "unitsRow", "none", "skip", "use",
        "channels", "column", "unit", "reference", "gauge", "absolute", "stoichiometric", "AFR", "time", "speed", "manifoldPressure",
        "railPressure", "injectorPulse", "dutyCycle", "lambda", "batteryVoltage", "power", "torque", "fuelTemperature", "fuelVolumeFlow",
        "fuelMassFlow", "s", "ms", "µs", "rev/min", "rpm", "rad/s", "kPa", "bar", "psi", "%", "1", "V", "kW", "hp", "PS", "N·m", "°C", "°F", "L/h",
        "kg/h", "g/s", "Time", "Speed", "Rail",
    ];

    public override string Name => "mapping";

    public override string Ending => ".json";

    public override string[] Words => Fields;

    public override Func<string, int, int, string>[] Edits => new JsonEdits(Fields).All;

    public override string? Without(string text, int piece) => JsonEdits.Without(text, piece);

    public override Reading Read(byte[] input)
    {
        RunMapping read;
        try
        {
            read = Characters(input) is { } text ? RunMapping.Parse(text) : RunMapping.Load(Holding(input));
        }
        catch (RunMappingException refused)
        {
            BrokenPromiseException.Unless(refused.Line >= 1 && refused.Position >= 1, "A refusal has a place.");
            BrokenPromiseException.Unless(!refused.Message.Any(char.IsControl), "A refusal stands on one line.");
            return new(false, [AnswerKind.Of(refused.Message)]);
        }

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
