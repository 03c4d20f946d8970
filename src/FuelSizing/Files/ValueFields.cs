using System.Globalization;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A number with its unit.</summary>
internal sealed class QuantityField<T>(string name, Measure<T> measure, string meaning) : Field<T?>(name, meaning)
    where T : struct
{
    private readonly string? _example;

    /// <summary>A value for messages and the docs; the quantity's own unless said otherwise.</summary>
    public string Example
    {
        get => _example ?? measure.Example;
        init => _example = value;
    }

    /// <summary>Checks the range at once, where the factory that does so takes many rows.</summary>
    public Func<T, string, T>? Within { get; init; }

    /// <summary>Takes a unit of another kind: the quantity of a number and such a unit, by other fields of the part.</summary>
    public Func<EntryReader, string, string, T?>? Otherwise { get; init; }

    public override string Sample => Example;

    public override InputKind? Kind => default(T) is IQuantity any ? InputKind.Of(any.Unit) : null;

    public override T? Read(EntryReader reader)
    {
        T? value = reader.Quantity(
            Name, measure, Example, Within, Otherwise is { } otherwise ? (number, unit) => otherwise(reader, number, unit) : null);
        if (!Optional)
        {
            reader.Missing(Name, Statement.Of("file.give-value", $"Give a value such as {Example}."));
        }

        return value;
    }

    public override void Write(FieldWriter fields, T? value) => fields.Quantity(Name, value, measure);

    public override void Schema(FormSchema schema)
    {
        schema.Shared("quantity");
        schema.Json.WriteStartArray("examples");
        schema.Json.WriteStringValue(Example);
        schema.Json.WriteEndArray();
    }
}

/// <summary>A plain number.</summary>
internal sealed class NumberField(string name, double example, double minimum, double maximum, string meaning)
    : Field<double?>(name, meaning)
{
    private readonly string _example = example.ToString(CultureInfo.InvariantCulture);

    public override string Sample => _example;

    public override string Values => Range ?? string.Create(CultureInfo.InvariantCulture, $"{minimum:#,0.##} to {maximum:#,0.##}");

    public override double? Read(EntryReader reader)
    {
        double? value = reader.Number(Name, _example);
        if (!Optional)
        {
            reader.Missing(Name, Statement.Of("file.give-number", $"Give a plain number such as {_example}."));
        }

        return value;
    }

    public override void Write(FieldWriter fields, double? value) => fields.Number(Name, value);

    public override void Schema(FormSchema schema)
    {
        schema.Json.WriteString("type", "number");
        schema.Json.WriteNumber("minimum", minimum);
        schema.Json.WriteNumber("maximum", maximum);
    }
}

/// <summary>A whole number.</summary>
internal sealed class CountField(string name, int example, int minimum, int maximum, string meaning) : Field<int?>(name, meaning)
{
    private readonly string _example = example.ToString(CultureInfo.InvariantCulture);

    public override string Sample => _example;

    public override string Values => string.Create(CultureInfo.InvariantCulture, $"{minimum:#,0} to {maximum:#,0}");

    public override int? Read(EntryReader reader)
    {
        int? value = reader.Count(Name, _example);
        if (!Optional)
        {
            reader.Missing(Name, Statement.Of("file.give-whole-number", $"Give a whole number such as {_example}."));
        }

        return value;
    }

    public override void Write(FieldWriter fields, int? value) => fields.Count(Name, value);

    public override void Schema(FormSchema schema)
    {
        schema.Json.WriteString("type", "integer");
        schema.Json.WriteNumber("minimum", minimum);
        schema.Json.WriteNumber("maximum", maximum);
    }
}

/// <summary>What a part costs, in the reader's own currency.</summary>
internal sealed class CostField() : Field<decimal?>("cost", "cost of one part, in your own currency")
{
    private const int Maximum = 1_000_000;

    public override string Sample => "120";

    public override string Values => "0 to 1,000,000";

    public override decimal? Read(EntryReader reader)
    {
        if (reader.Number(Name, Sample) is not { } cost)
        {
            return null;
        }

        if (cost is >= 0 and <= Maximum)
        {
            return (decimal)cost;
        }

        reader.Wrong(Name, reader.LineOf(Name), Statement.Of("file.cost-out-of-range", $"was {cost:G6}; it must be between {0} and {1_000_000}."));
        return null;
    }

    public override void Write(FieldWriter fields, decimal? value) => fields.Number(Name, (double?)value);

    public override void Schema(FormSchema schema)
    {
        schema.Json.WriteString("type", "number");
        schema.Json.WriteNumber("minimum", 0);
        schema.Json.WriteNumber("maximum", Maximum);
    }
}

/// <summary>One of a few words; the first where it is left out.</summary>
internal sealed class WordField<T>(string name, string meaning, params (T Value, string Word)[] words) : Field<T?>(name, meaning)
    where T : struct, Enum
{
    private readonly string[] _words = [.. words.Select(pair => pair.Word)];

    /// <summary>The words.</summary>
    public IReadOnlyList<string> Words => _words;

    public override string? Sample => null;

    public override string Values => string.Join(", ", _words.Select(word => $"`{word}`"));

    public override T? Read(EntryReader reader)
    {
        string read = reader.Word(Name, !Optional, _words);
        return words.First(pair => pair.Word == read).Value;
    }

    public override void Write(FieldWriter fields, T? value) =>
        fields.Text(Name, value is { } given ? words.First(pair => pair.Value.Equals(given)).Word : null);

    public override void Schema(FormSchema schema) => schema.Words(_words);
}

/// <summary>The word that tells one kind of a part from the others: its form reads no other.</summary>
internal sealed class KindField(string word) : Field<string>("kind", "which kind it is")
{
    /// <summary>The word.</summary>
    public string Word => word;

    public override string? Sample => null;

    public override string Values => $"`{word}`";

    public override string Read(EntryReader reader) => word;

    public override void Write(FieldWriter fields, string? value) => fields.Text(Name, word);

    public override void Schema(FormSchema schema) => schema.Json.WriteString("const", word);
}

/// <summary>True or false, which must be given unless the field is optional.</summary>
internal sealed class TruthField(string name, string meaning) : Field<bool?>(name, meaning)
{
    public override string? Sample => null;

    public override string Values => "`true`, `false`";

    public override bool? Read(EntryReader reader) => Optional && !reader.Has(Name) ? null : reader.Truth(Name);

    public override void Write(FieldWriter fields, bool? value) => fields.Truth(Name, value);

    public override void Schema(FormSchema schema) => schema.Json.WriteString("type", "boolean");
}

/// <summary>The name by which reports call a part.</summary>
internal sealed class NameField(string meaning = "the name shown in results") : Field<string>("name", meaning)
{
    public override string? Sample => null;

    public override string Values => "1 to 80 characters";

    public override string? Read(EntryReader reader) => Optional && !reader.Has(Name) ? null : reader.Name();

    public override void Write(FieldWriter fields, string? value) => fields.Text(Name, value);

    public override void Schema(FormSchema schema) => schema.Shared("name");
}

/// <summary>Any text.</summary>
internal sealed class TextField(string name, string sample, string meaning) : Field<string>(name, meaning)
{
    /// <summary>What to give where it is missing.</summary>
    public string Advice { get; init; } = "Give a text, in quotes.";

    public override string Sample => sample;

    public override string? Read(EntryReader reader)
    {
        string? text = reader.Text(Name);
        if (!Optional)
        {
            reader.Missing(Name, Statement.Of("file.give-text", $"{Advice}"));
        }

        return text;
    }

    public override void Write(FieldWriter fields, string? value) => fields.Text(Name, value);

    public override void Schema(FormSchema schema) => schema.Json.WriteString("type", "string");
}
