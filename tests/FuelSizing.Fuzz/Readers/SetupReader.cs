using FuelSizing.Files;
using FuelSizing.Fuzz.Mutating;
using FuelSizing.Systems;

namespace FuelSizing.Fuzz.Readers;

/// <summary>Setups. One that is read is written and read again, which changes nothing.</summary>
internal sealed class SetupReader : FuzzedReader
{
    private static readonly string[] Fields =
    [
        "setup", "layout", "return", "returnless", "engine", "name", "displacement", "cylinders", "cycle", "four-stroke", "two-stroke", "speed_limit",
        "induction", "kind", "naturally-aspirated", "turbocharged", "belt-driven", "compressor_efficiency", "cooler_effectiveness",
        "cooler_pressure_loss", "drive_efficiency", "volumetric_efficiency", "speed", "efficiency", "power", "measured_in", "drivetrain_loss",
        "mechanical_efficiency", "consumption", "lambda", "brake_specific_fuel_consumption", "fuel", "basis", "larger", "air", "injectors", "count",
        "injections_per_cycle", "injector", "static_flow", "rated_differential", "test_fluid", "test_density", "minimum_linear_pulse",
        "maximum_differential", "dead_times", "voltage", "differential", "time", "regulator", "base", "gain", "onset", "ceiling", "in_series_with",
        "minimum_return_flow", "follows_manifold", "minimum_voltage", "fixed", "manifold-referenced", "rising-rate", "electronic", "pump", "feed",
        "series", "parallel", "bypass", "check-valve", "none", "relief", "condition", "curve", "pressure_rise", "flow", "current", "plumbing",
        "suction", "supply", "line", "filter", "limits", "duty_cycle", "pump_reserve", "rail_ceiling", "feed_drop", "suction_margin", "points",
        "boost", "conditions", "atmosphere", "supply_voltage", "fuel_temperature", "pressure", "temperature", "altitude", "petrol", "ethanol",
        "methanol", "blend", "other", "parts", "share", "composition", "carbon", "hydrogen", "oxygen", "lower_heating_value", "density_at_15c",
        "expansion_at_15c", "viscosity", "vapour_pressure", "reid_vapour_pressure", "conductor", "outward_length", "return_length", "conductor_temperature", "contacts",
        "resistance", "gauge", "area", "lay", "material", "copper", "aluminium", "metric", "bore", "length", "roughness", "rise", "fittings",
        "boost_line", "measured", "held", "centrifugal", "displacement", "from", "to", "threshold", "drive_ratio", "compressor_pulley", "crank_pulley",
        "known_speed", "known_boost", "known_drive_ratio", "maximum_compressor_speed", "displacement_per_revolution", "pull", "slowest", "fastest",
        "loss_coefficient", "diameters", "rated_flow", "rated_loss", "clogging", "rated_viscosity", "mL/min", "L/h", "kPa", "bar", "°C", "K", "rpm",
        "g/kWh", "%", "per unit", "kg/m³", "MJ/kg", "mm²", "mΩ", "2/0", "Pa·s", "mm²/s",
    ];

    public override string Name => "setup";

    public override string Ending => ".json";

    public override string[] Words => Fields;

    public override Func<string, int, int, string>[] Edits => new JsonEdits(Fields).All;

    public override string? Without(string text, int piece) => JsonEdits.Without(text, piece);

    public override Reading Read(byte[] input)
    {
        string name = Characters(input) is null ? Holding(input) : "characters.json";
        Setup read;
        try
        {
            read = Characters(input) is { } text ? Setup.Parse(name, text) : Setup.Read(name);
        }
        catch (SetupException refused)
        {
            return FileAnswers.Refused(refused, name, input);
        }

        string written = read.ToJson();
        BrokenPromiseException.Unless(written == Setup.Parse("again.json", written).ToJson(), "A setup written and read again is the same.");
        FuelSystem system = read.System;
        return new(
            true,
            [$"read: {system.Layout}, {system.Demand.Induction.GetType().Name}, {system.Regulator.GetType().Name}, pumps {Math.Min(system.Pump.Pumps.Count, 3)}, points {Math.Min(read.Points.Count, 2)}, {read.BoostLine?.GetType().Name ?? "no line"}"]);
    }
}
