using System.Text.Json;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>A part of the part.</summary>
/// <param name="name">As it stands in a file.</param>
/// <param name="form">Its form, asked for when it is needed: a form may hold itself.</param>
/// <param name="meaning">What it is.</param>
internal sealed class PartField<T>(string name, Func<Form<T>> form, string meaning) : Field<T>(name, meaning)
    where T : class
{
    public override string? Sample => null;

    public override Form Inner => form();

    public override T? Read(EntryReader reader)
    {
        EntryReader? part = reader.Part(Name);
        if (!Optional)
        {
            reader.Missing(Name, Statement.Of("file.give-part", $"Give {form().Title}."));
        }

        return part is null ? null : form().Read(part);
    }

    public override void Write(FieldWriter fields, T? value)
    {
        if (value is not null)
        {
            fields.Part(Name, part => form().Write(part, value));
        }
    }

    public override void Schema(FormSchema schema) => schema.Of(form());
}

/// <summary>A list of parts, or a table whose rows are parts.</summary>
/// <param name="name">As it stands in a file.</param>
/// <param name="form">The form of each.</param>
/// <param name="meaning">What it is.</param>
internal sealed class ListField<T>(string name, Func<Form<T>> form, string meaning) : Field<IReadOnlyList<T>>(name, meaning), ITableField
    where T : class
{
    /// <summary>How many there must be.</summary>
    public int Minimum { get; init; }

    /// <summary>How many there may be, where that is said.</summary>
    public int? Maximum { get; init; }

    /// <summary>A field that each row has or none.</summary>
    public string? EachOrNone { get; init; }

    /// <inheritdoc/>
    public bool IsTable { get; init; }

    public override string? Sample => null;

    public override string Values => (Minimum, Maximum) switch
    {
        (0, null) => "a list",
        var (minimum, maximum) when minimum == maximum => $"a list of {minimum}",
        _ => $"a list of {Minimum} or more",
    };

    public override Form Inner => form();

    public override IReadOnlyList<T> Read(EntryReader reader)
    {
        IReadOnlyList<EntryReader> rows = Optional ? reader.OptionalRows(Name) : reader.Rows(Name, Statement.Of("file.give-parts", $"Give {form().Title} or more, each in {{ }}."));
        T?[] parts = [.. rows.Select(form().Read)];
        if (Maximum is { } maximum && reader.Has(Name) && rows.Count != maximum)
        {
            reader.Wrong(Name, reader.LineOf(Name), Statement.Of("file.rows-count", $"has {rows.Count} rows. Give {maximum}."));
        }

        if (EachOrNone is { } field && rows.Any(row => row.Has(field)) && rows.FirstOrDefault(row => !row.Has(field)) is { } without)
        {
            without.Wrong(field, without.Line, Statement.Of("file.missing-in-row", $"is missing, though other rows have it. Give it in every row or in none."));
        }

        return [.. parts.OfType<T>()];
    }

    public override void Write(FieldWriter fields, IReadOnlyList<T>? value)
    {
        if (value is not { Count: > 0 })
        {
            return;
        }

        if (IsTable)
        {
            fields.Table(Name, value, form().Write);
        }
        else
        {
            fields.List(Name, value, form().Write);
        }
    }

    public override void Schema(FormSchema schema)
    {
        Utf8JsonWriter json = schema.Json;
        json.WriteString("type", "array");
        if (Minimum > 0)
        {
            json.WriteNumber("minItems", Minimum);
        }

        if (Maximum is { } maximum)
        {
            json.WriteNumber("maxItems", maximum);
        }

        json.WriteStartObject("items");
        schema.Of(form());
        json.WriteEndObject();
        if (EachOrNone is { } field)
        {
            json.WritePropertyName("anyOf");
            json.WriteRawValue($$"""[ { "items": { "required": [ "{{field}}" ] } }, { "items": { "properties": { "{{field}}": false } } } ]""");
        }
    }
}

/// <summary>A field that holds rows.</summary>
internal interface ITableField
{
    /// <summary>Whether each row is a line of plain values: a table, which a spreadsheet can hold too.</summary>
    bool IsTable { get; }
}
