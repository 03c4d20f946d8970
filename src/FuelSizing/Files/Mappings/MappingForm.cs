using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>A mapping of a recorded run: which column holds which channel in which unit, and how the file is written.</summary>
internal static class MappingForm
{
    /// <summary>The unit text of lambda written as an air-fuel ratio.</summary>
    public const string AirFuelRatio = "AFR";

    private static readonly ColumnField Column = new();

    private static readonly WordField<PressureReference> Reference = new(
        "reference",
        "whether the pressure is against the ambient air (gauge) or against vacuum (absolute)",
        (PressureReference.Gauge, "gauge"),
        (PressureReference.Absolute, "absolute"));

    private static readonly NumberField Stoichiometric =
        new("stoichiometric", 14.7, 5, 20, $"what the instrument shows at lambda 1; only with unit `{AirFuelRatio}`") { Optional = true };

    private static readonly (Channel Channel, PartField<RunColumn> Field)[] Known =
    [
        Of(Channel.Time, "time", "time since any start"),
        Of(Channel.Speed, "speed", "engine speed", optional: false),
        Of(Channel.ManifoldAbsolute, "manifold_pressure", "pressure in the inlet manifold: boost (gauge) or absolute"),
        Of(Channel.RailGauge, "rail_pressure", "fuel pressure in the rail"),
        Of(Channel.InjectorPulse, "injector_pulse", "commanded pulse of one injector, dead time included"),
        Of(Channel.DutyCycle, "duty_cycle", "pulse ÷ time available"),
        Of(Channel.Lambda, "lambda", "air-fuel ratio ÷ the stoichiometric one; or the air-fuel ratio itself, with what the instrument shows at lambda 1"),
        Of(Channel.BatteryVoltage, "battery_voltage", "voltage of the supply"),
        Of(Channel.Power, "power", "power where it was recorded, not corrected for the air"),
        Of(Channel.Torque, "torque", "torque where it was recorded, not corrected for the air"),
        Of(Channel.FuelTemperature, "fuel_temperature", "fuel temperature"),
        Of(Channel.FuelVolumeFlow, "fuel_volume_flow", "fuel burnt, by volume"),
        Of(Channel.FuelMassFlow, "fuel_mass_flow", "fuel burnt, by mass"),
    ];

    private static readonly RecordForm<IReadOnlyList<RunColumn>> OfChannels = Gathered();

    /// <summary>What stands between cells.</summary>
    public static WordField<CellSeparator> Separator { get; } =
        new("separator", "between cells", (CellSeparator.Comma, "comma"), (CellSeparator.Semicolon, "semicolon"), (CellSeparator.Tab, "tab"))
        {
            Optional = true,
            Default = "comma",
        };

    /// <summary>What stands before decimals.</summary>
    public static WordField<DecimalMark> Decimals { get; } =
        new("decimal_mark", "before decimals; not a comma between cells and before decimals at once", (DecimalMark.Point, "point"), (DecimalMark.Comma, "comma"))
        {
            Optional = true,
            Default = "point",
        };

    private static readonly CountField HeadingLine =
        new("heading_line", 1, 1, 1000, "the heading's line; lines above it are skipped") { Optional = true, Default = "1" };

    /// <summary>What is done with units below the heading.</summary>
    public static WordField<UnitsRow> Units { get; } = new(
        "units_row",
        "units below the heading: none; skip, not looked at; use, they give the units that the mapping does not",
        (UnitsRow.None, "none"),
        (UnitsRow.Skipped, "skip"),
        (UnitsRow.Used, "use"))
    {
        Optional = true,
        Default = "none",
    };

    private static readonly PartField<IReadOnlyList<RunColumn>> Channels =
        new("channels", () => OfChannels, "the columns to read; others of the file are skipped") { Arguments = ["columns"] };

    /// <summary>The form of its file.</summary>
    public static FileForm<RunMapping> File { get; } = new(
        "mapping",
        "Which column of a file of separated values holds which channel in which unit, and how the file is written; see recorded-run.md.",
        new("mapping", "a mapping", MappingOf, EachHasUnit, Conditions())
        {
            { Separator, mapping => mapping.Separator },
            { Decimals, mapping => mapping.DecimalMark },
            { HeadingLine, mapping => mapping.HeadingLine },
            { Units, mapping => mapping.UnitsRow },
            { Channels, mapping => mapping.Columns },
        });

    /// <summary>The channels by the names that a file gives them.</summary>
    public static IReadOnlyDictionary<string, Channel> ChannelNames { get; } = Known.ToDictionary(known => known.Field.Name, known => known.Channel);

    private static (Channel Channel, PartField<RunColumn> Field) Of(Channel channel, string name, string meaning, bool optional = true)
    {
        RecordForm<RunColumn> form = OfColumn(channel, name);
        return (channel, new(name, () => form, meaning) { Optional = optional });
    }

    private static RecordForm<RunColumn> OfColumn(Channel channel, string name)
    {
        UnitField unit = new(channel);
        bool isPressure = channel is Channel.ManifoldAbsolute or Channel.RailGauge;
        bool isLambda = channel == Channel.Lambda;
        RecordForm<RunColumn> form = new(
            name,
            "a column",
            values => isLambda && values.Optional(Stoichiometric) is { } ratio
                ? RunColumn.AirFuelRatio(values.Required(Column), ratio)
                : new(
                    channel,
                    values.Required(Column),
                    UnitOf(channel, values.Optional(unit)),
                    isPressure ? values.Required(Reference) : null),
            isLambda ? values => RatioOrNot(values, unit) : null,
            isLambda
                ? $$"""
                  "if": { "properties": { "unit": { "const": "{{AirFuelRatio}}" } }, "required": [ "unit" ] },
                  "then": { "required": [ "stoichiometric" ] },
                  "else": { "properties": { "stoichiometric": false } }
                  """
                : null)
        {
            { Column, column => column.Place },
            { unit, column => column.Unit is { } given ? given.Stoichiometric is null ? ChannelUnits.TextOf(channel, given) : AirFuelRatio : null },
        };
        if (isPressure)
        {
            form.Add(Reference, column => column.Reference);
        }

        if (isLambda)
        {
            form.Add(Stoichiometric, column => column.Unit?.Stoichiometric);
        }

        return form;
    }

    private static RecordForm<IReadOnlyList<RunColumn>> Gathered()
    {
        RecordForm<IReadOnlyList<RunColumn>> form = new(
            "channels", "the channels", values => [.. Known.Select(known => values.Optional(known.Field)).OfType<RunColumn>()]);
        foreach ((Channel channel, PartField<RunColumn> field) in Known)
        {
            form.Add(field, columns => columns.FirstOrDefault(column => column.Channel == channel));
        }

        return form;
    }

    private static RunMapping MappingOf(FieldValues values) => RunMapping.Of([.. values.Required(Channels)])
        .Written(values.Required(Separator), values.Required(Decimals))
        .WithHeadingLine(values.Optional(HeadingLine) ?? 1)
        .WithUnitsRow(values.Required(Units));

    // Lambda is a plain number where no unit is said; every other channel needs a unit from somewhere.
    private static ChannelUnit? UnitOf(Channel channel, string? text) =>
        text is not null && ChannelUnits.TryFind(channel, text, out ChannelUnit found) ? found
        : channel == Channel.Lambda ? ChannelUnits.Plain
        : null;

    private static void RatioOrNot(FieldValues values, UnitField unit)
    {
        bool isRatio = values.Optional(unit) == AirFuelRatio;
        if (isRatio && !values.Reader.Has(Stoichiometric.Name))
        {
            values.Wrong(Stoichiometric, Statement.Of("file.ratio-missing", $"is missing. Unit {AirFuelRatio} needs it: give what the instrument shows at lambda 1."));
        }
        else if (!isRatio && values.Reader.Has(Stoichiometric.Name))
        {
            values.Wrong(Stoichiometric, Statement.Of("file.ratio-not-needed", $"goes with unit {AirFuelRatio} only. Take it out, or correct the unit."));
        }
    }

    private static void EachHasUnit(FieldValues values)
    {
        if (values.Optional(Units) == UnitsRow.Used || values.Rows(Channels) is not [var channels])
        {
            return;
        }

        foreach ((Channel channel, PartField<RunColumn> field) in Known.Where(known => known.Channel != Channel.Lambda))
        {
            if (channels.RowsOf(field.Name) is [var column] && !column.Has("unit"))
            {
                column.Wrong(
                    "unit",
                    column.Line,
                    Statement.Of("file.unit-missing", $"is missing. Give one of {string.Join(", ", ChannelUnits.Texts(channel))}; only with {Units.Name} \"use\" may the file say it."));
            }
        }
    }

    private static string Conditions()
    {
        string needed = string.Join(
            ", ",
            Known.Where(known => known.Channel != Channel.Lambda).Select(known => $$"""
                "{{known.Field.Name}}": { "required": [ "unit" ] }
                """));
        return $$"""
            "allOf": [
              {
                "description": "Commas cannot part cells and decimals at once.",
                "not": { "properties": { "separator": { "const": "comma" }, "decimal_mark": { "const": "comma" } }, "required": [ "decimal_mark" ] }
              },
              {
                "description": "Only a units row that is used may leave a unit to the file.",
                "if": { "properties": { "units_row": { "const": "use" } }, "required": [ "units_row" ] },
                "else": { "properties": { "channels": { "properties": { {{needed}} } } } }
              }
            ]
            """;
    }

    /// <summary>Which column of the file: its heading, or its number.</summary>
    private sealed class ColumnField() : Field<ColumnPlace>("column", "the column's heading as it stands, or its number, the first being 1")
    {
        private const int Maximum = 1000;
        private const int Longest = 80;

        public override string Sample => "Engine speed";

        public override string Values => "1 to 80 characters, or 1 to 1,000";

        public override ColumnPlace? Read(EntryReader reader)
        {
            if (!reader.Has(Name) || reader.IsText(Name))
            {
                string? heading = reader.Text(Name);
                reader.Missing(Name, Statement.Of("file.give-column", $"Give the column's heading, or its number."));
                if (heading is null || (!string.IsNullOrWhiteSpace(heading) && heading.Length <= Longest && !heading.Any(char.IsControl)))
                {
                    return heading is null ? null : ColumnPlace.Named(heading);
                }

                reader.Wrong(Name, reader.LineOf(Name), Statement.Of("file.no-heading", $"a heading has 1 to 80 characters on one line, not all blank."));
                return null;
            }

            if (reader.Count(Name, "2") is not { } number)
            {
                return null;
            }

            if (number is >= 1 and <= Maximum)
            {
                return ColumnPlace.Numbered(number);
            }

            reader.Wrong(Name, reader.LineOf(Name), Statement.Of("file.no-column-number", $"was {number}; it must be between 1 and {Maximum}."));
            return null;
        }

        public override void Write(FieldWriter fields, ColumnPlace? value)
        {
            fields.Text(Name, value?.Heading);
            fields.Count(Name, value is { Heading: null } ? value.Number : null);
        }

        public override void Schema(FormSchema schema)
        {
            schema.Json.WritePropertyName("anyOf");
            schema.Json.WriteRawValue($$"""[ { "type": "string", "minLength": 1, "maxLength": {{Longest}}, "pattern": "\\S" }, { "type": "integer", "minimum": 1, "maximum": {{Maximum}} } ]""");
        }
    }

    /// <summary>The unit of a column, as its channel's units are written.</summary>
    private sealed class UnitField : Field<string>
    {
        private readonly string[] _texts;

        public UnitField(Channel channel)
            : base("unit", "unit of the column's numbers")
        {
            _texts = [.. ChannelUnits.Texts(channel)];
            Optional = true;
            Default = channel == Channel.Lambda ? "1" : "that of the units row, with `units_row` `use`";
            if (channel == Channel.Lambda)
            {
                _texts = [.. _texts, AirFuelRatio];
            }
        }

        public override string? Sample => null;

        public override string Values => string.Join(", ", _texts.Select(text => $"`{text}`"));

        public override string? Read(EntryReader reader) => reader.Has(Name) ? reader.Word(Name, required: false, _texts) : null;

        public override void Write(FieldWriter fields, string? value) => fields.Text(Name, value);

        public override void Schema(FormSchema schema) => schema.Words(_texts);
    }
}
