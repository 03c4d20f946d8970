using System.Collections.Frozen;
using System.Globalization;
using FuelSizing.Checks;
using FuelSizing.Electrical;
using FuelSizing.Equations;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>The fields of a pump's feed.</summary>
internal static class FeedFields
{
    private const string Gauge = "gauge";
    private const string Metric = "metric";
    private const string Metal = "area";
    private const string Copper = "copper";
    private const string Aluminium = "aluminium";

    private static readonly FrozenDictionary<string, string> Fields = new Dictionary<string, string>
    {
        ["outward"] = "outward",
        ["back"] = "back",
        ["conductorTemperature"] = "conductor_temperature",
        ["resistance"] = "resistance",
        ["nominal"] = Metric,
        ["area"] = Metal,
        ["lay"] = "lay",
        ["gauge"] = Gauge,
        ["zeros"] = Gauge,
    }.ToFrozenDictionary();

    /// <summary>Reads it; none if anything is wrong.</summary>
    public static Feed? Read(EntryReader reader)
    {
        string name = reader.Name();
        Conductor? conductor = reader.RequiredPart("conductor", "Give the wire.") is { } part ? ConductorOf(part) : null;
        Length outward = reader.Required("outward", Measures.Length);
        Length back = reader.Required("back", Measures.Length);
        Temperature temperature = reader.Required("conductor_temperature", Measures.Temperature);
        Contact?[] contacts = [.. reader.OptionalRows("contacts").Select(ContactOf)];
        return reader.Make(() => Feed.Of(name, conductor!, outward, back, temperature, contacts!), Fields);
    }

    /// <summary>Writes it.</summary>
    public static void Write(FieldWriter fields, Feed feed)
    {
        fields.Text("name", feed.Name);
        fields.Part("conductor", part => Write(part, feed.Conductor));
        fields.Quantity("outward", feed.Outward, Measures.Length);
        fields.Quantity("back", feed.Back, Measures.Length);
        fields.Quantity("conductor_temperature", feed.ConductorTemperature, Measures.Temperature);
        if (feed.Contacts.Count > 0)
        {
            fields.Table("contacts", feed.Contacts, (row, contact) =>
            {
                row.Text("name", contact.Name);
                row.Quantity("resistance", contact.Resistance, Measures.Resistance);
            });
        }
    }

    private static Contact? ContactOf(EntryReader reader)
    {
        string name = reader.Name();
        ElectricResistance resistance = reader.Required("resistance", Measures.Resistance);
        return reader.Make(() => Contact.Of(name, resistance), Fields);
    }

    private static Conductor? ConductorOf(EntryReader reader)
    {
        if (reader.Has(Metric))
        {
            Area nominal = reader.Required(Metric, Measures.Area);
            return reader.Make(() => Conductor.Metric(nominal), Fields);
        }

        ConductorMaterial material = reader.Word("material", required: false, Copper, Aluminium) == Copper
            ? ConductorMaterial.Copper
            : ConductorMaterial.Aluminium;
        if (reader.Has(Metal))
        {
            Area metal = reader.Required(Metal, Measures.Area);
            Ratio lay = reader.Required("lay", Measures.Share);
            return reader.Make(() => Conductor.OfArea(metal, material, lay), Fields);
        }

        string? gauge = reader.Text(Gauge);
        if (gauge is null)
        {
            reader.Wrong(Gauge, reader.Line, "is missing. Give gauge (AWG), such as \"12\" or \"2/0\", or metric, or area and lay.");
        }
        else if (GaugeOf(gauge) is { } number)
        {
            return reader.Make(
                () => number.Zeros ? Conductor.AwgZeros(number.Value, material) : Conductor.Awg(number.Value, material),
                Fields);
        }
        else
        {
            reader.Wrong(Gauge, reader.LineOf(Gauge), $"was \"{ProblemList.Shown(gauge)}\". Give an American wire gauge such as \"12\" or \"2/0\".");
        }

        return null;
    }

    private static (int Value, bool Zeros)? GaugeOf(string text)
    {
        bool zeros = text.EndsWith("/0", StringComparison.Ordinal);
        return int.TryParse(
            zeros ? text[..^2] : text, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            ? zeros && number == 1 ? (0, false) : (number, zeros)
            : null;
    }

    private static void Write(FieldWriter fields, Conductor conductor)
    {
        ConductorSize size = conductor.Size.Value;
        if (size.Nominal is not null)
        {
            fields.Quantity(Metric, size.Nominal, Measures.Area);
            return;
        }

        fields.Text("material", conductor.Material == ConductorMaterial.Copper ? Copper : Aluminium);
        if (size.Gauge is { } gauge)
        {
            fields.Text(
                Gauge,
                gauge < 0
                    ? string.Create(CultureInfo.InvariantCulture, $"{1 - gauge}/0")
                    : gauge.ToString(CultureInfo.InvariantCulture));
            return;
        }

        fields.Quantity(Metal, size.Area, Measures.Area);
        fields.Quantity("lay", size.Lay, Measures.Share);
    }
}
