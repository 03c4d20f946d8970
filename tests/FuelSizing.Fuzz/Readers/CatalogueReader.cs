using FuelSizing.Files;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Catalogues, from JSON or comma-separated values.</summary>
/// <param name="ending">How they end: json or csv.</param>
internal sealed class CatalogueReader(string ending) : ListReader<Catalogue, CatalogueException>("catalogue", ending, Fields)
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

    protected override Catalogue Parsed(string name, string text) => Catalogue.Parse(name, text);

    protected override Catalogue Opened(string file) => Catalogue.Read(file);

    protected override string Counts(Catalogue read) => $"{Math.Min(read.Injectors.Count, 3)}, {Math.Min(read.Pumps.Count, 3)}, {Math.Min(read.Regulators.Count, 3)}";
}
