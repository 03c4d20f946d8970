using System.Collections.Frozen;
using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>The fields of operating points and their conditions.</summary>
internal static class PointFields
{
    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["speed"] = "speed",
        ["boost"] = "boost",
        ["supplyVoltage"] = "supply_voltage",
        ["fuelTemperature"] = "fuel_temperature",
        ["altitude"] = "altitude",
        ["pressure"] = "pressure",
        ["temperature"] = "temperature",
    }.ToFrozenDictionary();

    /// <summary>Reads them, without those that anything is wrong with.</summary>
    public static IReadOnlyList<NamedPoint> Read(IReadOnlyList<EntryReader> rows)
    {
        List<NamedPoint> points = [];
        Dictionary<string, int> seen = [];
        foreach (EntryReader row in rows)
        {
            if (PointOf(row) is not { } point)
            {
                continue;
            }

            points.Add(point);
            int line = row.LineOf("name");
            if (!seen.TryAdd(point.Name, line))
            {
                row.Wrong("name", line, FormattableString.Invariant(
                    $"\"{ProblemList.Shown(point.Name)}\" is in line {seen[point.Name]} already. Give each point its own name."));
            }
        }

        return points;
    }

    /// <summary>Writes one.</summary>
    public static void Write(FieldWriter fields, NamedPoint named)
    {
        Conditions conditions = named.Point.Conditions;
        fields.Text("name", named.Name);
        fields.Quantity("speed", named.Point.Speed, Measures.Speed);
        fields.Quantity("boost", named.Point.Boost, Measures.Pressure);
        fields.Part("conditions", part =>
        {
            part.Part("atmosphere", air => Write(air, conditions.Atmosphere));
            part.Quantity("supply_voltage", conditions.SupplyVoltage, Measures.Voltage);
            part.Quantity("fuel_temperature", conditions.FuelTemperature, Measures.Temperature);
        });
    }

    /// <summary>Reads an atmosphere, by its altitude or by its pressure and temperature; none if anything is wrong.</summary>
    public static Atmosphere? AtmosphereOf(EntryReader reader)
    {
        if (reader.Has("altitude"))
        {
            Length altitude = reader.Required("altitude", Measures.Length);
            Temperature? warm = reader.Optional("temperature", Measures.Temperature);
            return reader.Make(() => Atmosphere.AtAltitude(altitude, warm), Fields);
        }

        Pressure pressure = reader.Required("pressure", Measures.Pressure);
        Temperature temperature = reader.Required("temperature", Measures.Temperature);
        return reader.Make(() => Atmosphere.Of(pressure, temperature), Fields);
    }

    /// <summary>Writes an atmosphere.</summary>
    public static void Write(FieldWriter fields, Atmosphere atmosphere)
    {
        fields.Quantity("pressure", atmosphere.Pressure, Measures.Pressure);
        fields.Quantity("temperature", atmosphere.Temperature, Measures.Temperature);
    }

    private static NamedPoint? PointOf(EntryReader reader)
    {
        string name = reader.Name();
        RotationalSpeed speed = reader.Required("speed", Measures.Speed);
        Pressure boost = reader.Required("boost", Measures.Pressure);
        Conditions? conditions = reader.OptionalPart("conditions") is { } part ? ConditionsOf(part) : null;
        return reader.Make(() => new NamedPoint(name, OperatingPoint.At(speed, boost, conditions)), Fields);
    }

    private static Conditions? ConditionsOf(EntryReader reader)
    {
        Atmosphere? air = reader.RequiredPart("atmosphere", "Give the ambient air.") is { } part ? AtmosphereOf(part) : null;
        ElectricPotential voltage = reader.Required("supply_voltage", Measures.Voltage);
        Temperature temperature = reader.Required("fuel_temperature", Measures.Temperature);
        return reader.Make(() => Conditions.Of(air!, voltage, temperature), Fields);
    }
}
