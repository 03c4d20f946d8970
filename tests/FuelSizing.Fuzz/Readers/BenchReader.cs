using FuelSizing.Files;
using FuelSizing.Fuzz.Mutating;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Tests at the bench, from JSON or comma-separated values.</summary>
internal sealed class BenchReader : FuzzedReader
{
    private static readonly string[] Fields =
    [
        "bench", "readings", .. Enum.GetValues<BenchTestKind>().SelectMany(BenchColumn.Of).SelectMany(column => (string[])[column.Name, column.Heading]).Distinct(),
        "kPa", "psi", "V", "mg", "g", "kg", "oz", "mL", "L", "s", "ms", "us", "%", "kg/m³", "injector C", "static_tests 2", "300 kPa", "0.1 g", "1 mL", "2.5 ms", "readings.time [g]",
    ];

    private readonly bool _json;

    /// <summary>Tests in files that end so: json or csv.</summary>
    public BenchReader(string ending)
    {
        _json = ending == "json";
        (Name, Ending) = ($"bench-{ending}", $".{ending}");
    }

    public override string Name { get; }

    public override string Ending { get; }

    public override string[] Words => Fields;

    public override Func<string, int, int, string>[] Edits => _json ? new JsonEdits(Fields).All : new TableEdits(Fields).All;

    public override string? Without(string text, int piece) => _json ? JsonEdits.Without(text, piece) : base.Without(text, piece);

    public override Reading Read(byte[] input)
    {
        string name = Characters(input) is null ? Holding(input) : $"characters{Ending}";
        try
        {
            BenchTests read = Characters(input) is { } text ? BenchTests.Parse(name, text) : BenchTests.Read(name);
            return new(true, [$"read: {read}"]);
        }
        catch (BenchTestsException refused)
        {
            return FileAnswers.Refused(refused, name, input);
        }
    }
}
