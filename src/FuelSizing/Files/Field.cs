using System.Text;

namespace FuelSizing.Files;

/// <summary>
/// One field of a part: its name, how it is written, whether it must be given, its range and what it means. Reader, writer,
/// JSON schema and the docs' table all ask this one description.
/// </summary>
internal abstract class Field(string name, string meaning)
{
    private readonly string[]? _arguments;

    /// <summary>As it stands in a file.</summary>
    public string Name { get; } = name;

    /// <summary>What it is, in a few words.</summary>
    public string Meaning { get; } = meaning;

    /// <summary>Whether it may be left out.</summary>
    public bool Optional { get; init; }

    /// <summary>What stands for a field that is left out, in words; none where leaving it out has no such meaning.</summary>
    public string? Default { get; init; }

    /// <summary>The values that it may have, in words; none where another part's form says so.</summary>
    public string? Range { get; init; }

    /// <summary>
    /// The arguments of factories that take it, by which a factory's refusal is blamed on the field; the name in C#'s spelling
    /// unless said otherwise.
    /// </summary>
    public string[] Arguments
    {
        get => _arguments ?? [Name.Replace("_", string.Empty, StringComparison.Ordinal)];
        init => _arguments = value;
    }

    /// <summary>Whether the arguments are said, not worked out from the name.</summary>
    public bool NamesArguments => _arguments is not null;

    /// <summary>A value as a file has it, for the docs; none where the range says all.</summary>
    public abstract string? Sample { get; }

    /// <summary>The values that it may have, for the docs.</summary>
    public virtual string? Values => Range;

    /// <summary>The form of what stands in it; none of a plain value.</summary>
    public virtual Form? Inner => null;

    /// <summary>The kind of quantity that it holds; none where it holds none.</summary>
    public virtual InputKind? Kind => null;

    /// <summary>What is read from it; what is wrong is kept as a problem.</summary>
    public abstract object? Value(EntryReader reader);

    /// <summary>Writes the keywords of its JSON schema.</summary>
    public abstract void Schema(FormSchema schema);

    /// <summary>Meaning, range and default in one line, for the schema.</summary>
    public string Description()
    {
        StringBuilder text = new(Meaning);
        if (Range is not null)
        {
            text.Append("; ").Append(Range);
        }

        if (Default is not null)
        {
            text.Append("; ").Append(Default).Append(" if not given");
        }

        return text.Replace("`", string.Empty).ToString();
    }
}

/// <summary>A field that holds a value of a type; a value type as its nullable form, for a field may be left out.</summary>
internal abstract class Field<T>(string name, string meaning) : Field(name, meaning)
{
    /// <summary>Reads it; none where it is left out or anything is wrong with it.</summary>
    public abstract T? Read(EntryReader reader);

    /// <summary>Writes it; nothing where there is no value.</summary>
    public abstract void Write(FieldWriter fields, T? value);

    public sealed override object? Value(EntryReader reader) => Read(reader);
}
