using System.Text;
using System.Text.Json;

namespace FuelSizing.Logs;

/// <summary>Reads a mapping file, token by token, so that each complaint can say its place.</summary>
internal ref struct RunMappingJson
{
    /// <summary>Bytes that a mapping file may have.</summary>
    public const int LongestFile = 1_000_000;

    /// <summary>The only version of the format so far.</summary>
    public const int Version = 1;

    /// <summary>The unit text of lambda written as an air-fuel ratio.</summary>
    public const string AirFuelRatio = "AFR";

    private readonly ReadOnlySpan<byte> _text;

    private Utf8JsonReader _json;

    private long _fieldStart;

    private RunMappingJson(ReadOnlySpan<byte> text)
    {
        _text = text;
        _json = new Utf8JsonReader(text);
    }

    /// <summary>The channels by the names that the file gives them.</summary>
    public static IReadOnlyDictionary<string, Channel> ChannelNames { get; } = new Dictionary<string, Channel>
    {
        ["time"] = Channel.Time,
        ["speed"] = Channel.Speed,
        ["manifoldPressure"] = Channel.ManifoldAbsolute,
        ["railPressure"] = Channel.RailGauge,
        ["injectorPulse"] = Channel.InjectorPulse,
        ["dutyCycle"] = Channel.DutyCycle,
        ["lambda"] = Channel.Lambda,
        ["batteryVoltage"] = Channel.BatteryVoltage,
        ["power"] = Channel.Power,
        ["torque"] = Channel.Torque,
        ["fuelTemperature"] = Channel.FuelTemperature,
        ["fuelVolumeFlow"] = Channel.FuelVolumeFlow,
        ["fuelMassFlow"] = Channel.FuelMassFlow,
    };

    /// <summary>What the file may say of the separator.</summary>
    public static IReadOnlyDictionary<string, CellSeparator> Separators { get; } = new Dictionary<string, CellSeparator>
    {
        ["comma"] = CellSeparator.Comma,
        ["semicolon"] = CellSeparator.Semicolon,
        ["tab"] = CellSeparator.Tab,
    };

    /// <summary>What the file may say of the decimal mark.</summary>
    public static IReadOnlyDictionary<string, DecimalMark> Decimals { get; } = new Dictionary<string, DecimalMark>
    {
        ["point"] = DecimalMark.Point,
        ["comma"] = DecimalMark.Comma,
    };

    /// <summary>What the file may say of the units row.</summary>
    public static IReadOnlyDictionary<string, UnitsRow> UnitsRows { get; } = new Dictionary<string, UnitsRow>
    {
        ["none"] = UnitsRow.None,
        ["skip"] = UnitsRow.Skipped,
        ["use"] = UnitsRow.Used,
    };

    /// <summary>What the file may say of a pressure.</summary>
    public static IReadOnlyDictionary<string, PressureReference> References { get; } = new Dictionary<string, PressureReference>
    {
        ["gauge"] = PressureReference.Gauge,
        ["absolute"] = PressureReference.Absolute,
    };

    /// <summary>Reads the text of a mapping file.</summary>
    public static RunMapping Read(ReadOnlySpan<byte> text)
    {
        if (text.Length > LongestFile)
        {
            throw new RunMappingException(1, 1, $"the file has more than {LongestFile} bytes; a mapping has a few hundred. Is it the run itself?");
        }

        ReadOnlySpan<byte> mark = Encoding.UTF8.Preamble;
        text = text.StartsWith(mark) ? text[mark.Length..] : text;
        var reading = new RunMappingJson(text);
        try
        {
            return reading.Mapping();
        }
        catch (JsonException broken)
        {
            throw reading.Refuse(
                reading.Offset(broken), $"the text is no longer JSON here: {CellText.OnOneLine(broken.Message.Split(" LineNumber:")[0])}");
        }
    }

    private RunMapping Mapping()
    {
        Advance();
        long start = Start();
        Want(JsonTokenType.StartObject, "an object with \"version\" and \"channels\"");
        List<string> seen = [];
        RunColumn[]? columns = null;
        bool versioned = false;
        var separator = CellSeparator.Comma;
        var decimalMark = DecimalMark.Point;
        var unitsRow = UnitsRow.None;
        int headingLine = 1;
        long dialect = start;
        List<(Channel Channel, long At)> withoutUnit = [];
        while (NextField(seen) is { } field)
        {
            long at = Start();
            switch (field)
            {
                case "$schema":
                    Want(JsonTokenType.String, "the address of the schema");
                    break;
                case "version":
                    versioned = Number("version", 1, int.MaxValue) == Version
                        ? true
                        : throw Refuse(at, $"this library reads version {Version} of the format. Write \"version\": {Version}.");
                    break;
                case "separator":
                    (separator, dialect) = (OneOf(Separators, "separator"), at);
                    break;
                case "decimal":
                    (decimalMark, dialect) = (OneOf(Decimals, "decimal"), at);
                    break;
                case "headingLine":
                    headingLine = Number("headingLine", 1, 1000);
                    break;
                case "unitsRow":
                    unitsRow = OneOf(UnitsRows, "unitsRow");
                    break;
                case "channels":
                    columns = Channels(withoutUnit);
                    break;
                default:
                    throw Unknown(field, "$schema", "version", "separator", "decimal", "headingLine", "unitsRow", "channels");
            }
        }

        // Reads to the end: the reader complains of anything after the object.
        _json.Read();
        if (!versioned)
        {
            throw Refuse(start, $"the mapping lacks \"version\". Write \"version\": {Version}.");
        }

        if (columns is null)
        {
            throw Refuse(start, "the mapping lacks \"channels\". Name at least the column of speed.");
        }

        if (unitsRow != UnitsRow.Used && withoutUnit.Count > 0)
        {
            throw Refuse(withoutUnit[0].At, $"the channel lacks \"unit\". Give it one of {List(Units(withoutUnit[0].Channel))}; only with \"unitsRow\": \"use\" may the file say it.");
        }

        return separator == CellSeparator.Comma && decimalMark == DecimalMark.Comma
            ? throw Refuse(dialect, "separator and decimal are both a comma: then 1,5 may be one number or two. Write the run with semicolons or tabs between its cells, and say so.")
            : RunMapping.Of(columns).Written(separator, decimalMark).WithHeadingLine(headingLine).WithUnitsRow(unitsRow);
    }

    private RunColumn[] Channels(List<(Channel, long)> withoutUnit)
    {
        long start = Start();
        Want(JsonTokenType.StartObject, "an object of channels");
        List<string> seen = [];
        List<RunColumn> columns = [];
        while (NextField(seen) is { } name)
        {
            columns.Add(
                ChannelNames.TryGetValue(name, out Channel channel)
                    ? Column(channel, withoutUnit)
                    : throw Unknown(name, [.. ChannelNames.Keys]));
        }

        return columns.Any(column => column.Channel == Channel.Speed)
            ? [.. columns]
            : throw Refuse(start, "the channels lack \"speed\". Name the column of the crank's speed: every finding needs it.");
    }

    private RunColumn Column(Channel channel, List<(Channel, long)> withoutUnit)
    {
        long start = Start();
        Want(JsonTokenType.StartObject, "an object with \"column\" and \"unit\"");
        bool pressure = channel is Channel.ManifoldAbsolute or Channel.RailGauge;
        List<string> seen = [];
        ColumnPlace? place = null;
        ChannelUnit? unit = null;
        PressureReference? reference = null;
        long? ratioAt = null, stoichiometricAt = null;
        double stoichiometric = 0;
        while (NextField(seen) is { } field)
        {
            long at = Start();
            switch (field)
            {
                case "column":
                    place = Place();
                    break;
                case "unit":
                    Want(JsonTokenType.String, $"one of {List(Units(channel))}");
                    string text = Text();
                    if (channel == Channel.Lambda && text == AirFuelRatio)
                    {
                        ratioAt = at;
                    }
                    else
                    {
                        unit = ChannelUnits.Texts(channel).Contains(text) && ChannelUnits.TryFind(channel, text, out ChannelUnit found)
                            ? found
                            : throw Refuse(at, $"\"{Shown(text)}\" is no unit of this channel. Write one of {List(Units(channel))}.");
                    }

                    break;
                case "reference" when pressure:
                    reference = OneOf(References, "reference");
                    break;
                case "stoichiometric" when channel == Channel.Lambda:
                    Want(JsonTokenType.Number, "the ratio that the instrument shows at lambda 1, 5 to 20");
                    stoichiometricAt = at;
                    stoichiometric = _json.GetDouble() is var ratio and >= 5 and <= 20
                        ? ratio
                        : throw Refuse(at, "stoichiometric is from 5 to 20. Give the ratio that the instrument shows at lambda 1.");
                    break;
                default:
                    throw Unknown(
                        field, pressure ? ["column", "unit", "reference"] : channel == Channel.Lambda ? ["column", "unit", "stoichiometric"] : ["column", "unit"]);
            }
        }

        if (place is null)
        {
            throw Refuse(start, "the channel lacks \"column\". Give the column's heading, or its number.");
        }

        if (pressure && reference is null)
        {
            throw Refuse(start, "the channel lacks \"reference\". Say whether the pressure is \"gauge\" (relative to ambient pressure) or \"absolute\".");
        }

        if (ratioAt is null != stoichiometricAt is null)
        {
            throw Refuse(
                ratioAt ?? stoichiometricAt ?? start,
                ratioAt is null
                    ? $"\"stoichiometric\" goes with \"unit\": \"{AirFuelRatio}\" only."
                    : $"\"unit\": \"{AirFuelRatio}\" needs \"stoichiometric\", the ratio that the instrument shows at lambda 1.");
        }

        unit = ratioAt is null ? unit : ChannelUnits.AirFuelRatio(stoichiometric);
        if (unit is null && channel == Channel.Lambda)
        {
            unit = ChannelUnits.Plain;
        }
        else if (unit is null)
        {
            withoutUnit.Add((channel, start));
        }

        return new(channel, place, unit, reference);
    }

    private ColumnPlace Place()
    {
        long at = Start();
        if (_json.TokenType == JsonTokenType.Number)
        {
            return ColumnPlace.Numbered(Number("column", 1, 1000));
        }

        Want(JsonTokenType.String, "the column's heading, or its number from 1");
        string heading = Text();
        return !string.IsNullOrWhiteSpace(heading) && heading.Length <= 80 && !heading.Any(char.IsControl)
            ? ColumnPlace.Named(heading)
            : throw Refuse(at, "a heading has 1 to 80 characters on one line, not all blank.");
    }

    /// <summary>Moves to the next field's value; null at the object's end.</summary>
    private string? NextField(List<string> seen)
    {
        Advance();
        if (_json.TokenType == JsonTokenType.EndObject)
        {
            return null;
        }

        string name = Text();
        if (seen.Contains(name))
        {
            throw Refuse(Start(), $"\"{Shown(name)}\" is here a second time. Keep one.");
        }

        seen.Add(name);
        if (seen.Count > 100)
        {
            throw Refuse(Start(), "the object has more than 100 fields.");
        }

        // The place of a complaint about the name is the name's own; the value is read after it is known.
        _fieldStart = Start();
        Advance();
        return name;
    }

    private readonly T OneOf<T>(IReadOnlyDictionary<string, T> choices, string name)
    {
        Want(JsonTokenType.String, $"one of {List(choices.Keys)}");
        return choices.TryGetValue(Text(), out T? choice)
            ? choice
            : throw Refuse(Start(), $"\"{name}\" is one of {List(choices.Keys)}.");
    }

    private readonly int Number(string name, int minimum, int maximum)
    {
        Want(JsonTokenType.Number, $"a whole number from {minimum}");
        return _json.TryGetInt32(out int value) && value >= minimum && value <= maximum
            ? value
            : throw Refuse(Start(), $"\"{name}\" is a whole number from {minimum} to {maximum}.");
    }

    private readonly void Want(JsonTokenType type, string what)
    {
        if (_json.TokenType != type)
        {
            throw Refuse(Start(), $"here stands {Shown(_json.TokenType)}; wanted is {what}.");
        }
    }

    /// <summary>The text or name at hand; a half of a character, written as an escape, is none.</summary>
    private readonly string Text()
    {
        try
        {
            return _json.GetString()!;
        }
        catch (InvalidOperationException)
        {
            throw Refuse(Start(), "the text holds something that is no character.");
        }
    }

    private void Advance() => _json.Read();

    private readonly long Start() => _json.TokenStartIndex;

    private readonly RunMappingException Unknown(string field, params string[] known) =>
        Refuse(_fieldStart, $"\"{Shown(field)}\" is no field that is known here. Known are {List(known)}.");

    private readonly RunMappingException Refuse(long at, string reason)
    {
        ReadOnlySpan<byte> before = _text[..(int)at];
        int lineStart = before.LastIndexOf((byte)'\n') + 1;
        return new(before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(before[lineStart..]) + 1, reason);
    }

    /// <summary>The byte at which the text stopped being JSON.</summary>
    private readonly long Offset(JsonException broken)
    {
        int lineStart = 0;
        for (long line = broken.LineNumber ?? 0; line > 0; line--)
        {
            lineStart += _text[lineStart..].IndexOf((byte)'\n') + 1;
        }

        return Math.Min(lineStart + (broken.BytePositionInLine ?? 0), _text.Length);
    }

    private static IEnumerable<string> Units(Channel channel) =>
        channel == Channel.Lambda ? ChannelUnits.Texts(channel).Append(AirFuelRatio) : ChannelUnits.Texts(channel);

    private static string List(IEnumerable<string> texts) => string.Join(", ", texts.Select(text => $"\"{text}\""));

    private static string Shown(string text) => CellText.Shown(text);

    private static string Shown(JsonTokenType type) => type switch
    {
        JsonTokenType.StartObject => "an object",
        JsonTokenType.StartArray => "an array",
        JsonTokenType.String => "a text",
        JsonTokenType.Number => "a number",
        JsonTokenType.Null => "null",
        _ => "true or false",
    };
}
