using FuelSizing.Files;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Tests at the bench, from JSON or comma-separated values.</summary>
/// <param name="ending">How they end: json or csv.</param>
internal sealed class BenchReader(string ending) : ListReader<BenchTests, BenchTestsException>("bench", ending, Fields)
{
    private static readonly string[] Fields =
    [
        "bench", "readings", .. Enum.GetValues<BenchTestKind>().SelectMany(BenchColumn.Of).SelectMany(column => (string[])[column.Name, column.Heading]).Distinct(),
        "kPa", "psi", "V", "mg", "g", "kg", "oz", "mL", "L", "s", "ms", "us", "%", "kg/m³", "injector C", "static_tests 2", "300 kPa", "0.1 g", "1 mL", "2.5 ms", "readings.time [g]",
    ];

    protected override BenchTests Parsed(string name, string text) => BenchTests.Parse(name, text);

    protected override BenchTests Opened(string file) => BenchTests.Read(file);

    protected override string Counts(BenchTests read) => $"{read}";
}
