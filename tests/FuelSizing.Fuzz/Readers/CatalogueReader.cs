using FuelSizing.Files;
using FuelSizing.Fuzz.Mutating;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Catalogues, from JSON or comma-separated values.</summary>
internal sealed class CatalogueReader : FuzzedReader
{
    private static readonly string[] Fields =
    [
        "catalogue", "injectors", "pumps", "regulators", "name", "cost", "static_flow", "rated_differential", "test_fluid", "test_density",
        "minimum_linear_pulse", "maximum_differential", "dead_times", "voltage", "differential", "time", "relief", "condition", "curve",
        "pressure_rise", "flow", "current", "kind", "fixed", "manifold-referenced", "rising-rate", "electronic", "base", "gain", "onset",
        "ceiling", "minimum_return_flow", "follows_manifold", "minimum_voltage", "in_series_with", "mL/min", "L/h", "gal (U.S.)/h", "kPa", "bar",
        "psi", "ms", "V", "A", "%", "per unit", "kg/m³", "injectors 1", "pumps 1", "regulators 1", "regulators 2", "curve.flow [L/h]",
        "curve.current [A]", "dead_times.time [ms]", "cost [kPa]", "base []", "base [kPa", "injector A", "pump P", "regulator M",
    ];

    private readonly bool _json;

    /// <summary>Catalogues that end so: json or csv.</summary>
    public CatalogueReader(string ending)
    {
        _json = ending == "json";
        (Name, Ending) = ($"catalogue-{ending}", $".{ending}");
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
            Catalogue read = Characters(input) is { } text ? Catalogue.Parse(name, text) : Catalogue.Read(name);
            int injectors = read.Injectors.Count;
            int pumps = read.Pumps.Count;
            int regulators = read.Regulators.Count;
            return new(true, [$"read: {Math.Min(injectors, 3)}, {Math.Min(pumps, 3)}, {Math.Min(regulators, 3)}"]);
        }
        catch (CatalogueException refused)
        {
            return FileAnswers.Refused(refused, name, input);
        }
    }
}
