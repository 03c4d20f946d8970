using System.Collections;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>How a part stands in a file.</summary>
internal abstract class Form(string name, string title)
{
    /// <summary>One word for it, for the schema.</summary>
    public string Name { get; } = name;

    /// <summary>The part with its article, for messages and the docs: "an injector".</summary>
    public string Title { get; } = title;

    /// <summary>The forms that it may have: itself alone, or one for each kind.</summary>
    public abstract IReadOnlyList<IRecordForm> Records { get; }
}

/// <summary>How a part of a type stands in a file.</summary>
internal abstract class Form<T>(string name, string title) : Form(name, title)
    where T : class
{
    /// <summary>Reads it; none if anything is wrong, which is kept as a problem.</summary>
    public abstract T? Read(EntryReader reader);

    /// <summary>Writes its fields.</summary>
    public abstract void Write(FieldWriter fields, T part);
}

/// <summary>A form of one list of fields.</summary>
internal interface IRecordForm
{
    /// <summary>The part with its article.</summary>
    string Title { get; }

    /// <summary>Its fields, in the order that they are written in.</summary>
    IReadOnlyList<Field> Fields { get; }

    /// <summary>Keywords of the schema that hold between fields; none where each field stands for itself.</summary>
    string? Condition { get; }
}

/// <summary>A table of fields, and how the part is made of their values.</summary>
/// <param name="name">One word for it.</param>
/// <param name="title">The part with its article.</param>
/// <param name="make">Calls the part's factory, which checks ranges; only where every field could be read.</param>
/// <param name="check">Looks at fields that depend on each other, even where others are wrong.</param>
/// <param name="condition">The same as keywords of the schema.</param>
internal sealed class RecordForm<T>(
    string name, string title, Func<FieldValues, T?> make, Action<FieldValues>? check = null, string? condition = null)
    : Form<T>(name, title), IRecordForm, IEnumerable<Field>
    where T : class
{
    private readonly List<(Field Field, Action<FieldWriter, T> Write)> _fields = [];
    private Action<FieldValues>? _check = check;
    private Dictionary<string, string>? _arguments;

    public IReadOnlyList<Field> Fields => [.. _fields.Select(row => row.Field)];

    public override IReadOnlyList<IRecordForm> Records => [this];

    /// <inheritdoc/>
    public string? Condition { get; private set; } = condition;

    /// <summary>Adds a field, and where its value comes from when the part is written.</summary>
    public void Add<TValue>(Field<TValue> field, Func<T, TValue?> of) => _fields.Add((field, (fields, part) => field.Write(fields, of(part))));

    /// <summary>Adds the fields of another form, of something that this part holds.</summary>
    public void Add<TInner>(RecordForm<TInner> inner, Func<T, TInner> of)
        where TInner : class
    {
        _fields.AddRange(inner._fields.Select(row => (row.Field, (Action<FieldWriter, T>)((fields, part) => row.Write(fields, of(part))))));
        _check += inner._check;
        Condition ??= inner.Condition;
    }

    /// <summary>The part of values that were read.</summary>
    public T? Make(FieldValues values) => make(values);

    public override T? Read(EntryReader reader)
    {
        FieldValues values = new(reader);
        foreach ((Field field, _) in _fields)
        {
            reader.Know(field.Name);
            values.Put(field, field.Value(reader));
        }

        _check?.Invoke(values);
        return reader.Make(() => make(values), _arguments ??= FieldValues.ByArgument(Fields));
    }

    public override void Write(FieldWriter fields, T part)
    {
        foreach ((_, Action<FieldWriter, T> write) in _fields)
        {
            write(fields, part);
        }
    }

    public IEnumerator<Field> GetEnumerator() => Fields.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>A form that is one of several: told apart by the word in <c>kind</c>, or by which fields are given.</summary>
internal sealed class ChoiceForm<T>(string name, string title, params Variant<T>[] variants) : Form<T>(name, title)
    where T : class
{
    private readonly string[] _kinds =
        [.. variants.SelectMany(variant => variant.Form.Fields).OfType<KindField>().Select(kind => kind.Word).Distinct()];

    public override IReadOnlyList<IRecordForm> Records => [.. variants.Select(variant => variant.Form)];

    public override T? Read(EntryReader reader)
    {
        Variant<T>[] left = variants;
        if (_kinds.Length > 0)
        {
            string kind = reader.Word("kind", required: true, _kinds);
            left = [.. variants.Where(variant => variant.Form.Fields.OfType<KindField>().Any(field => field.Word == kind))];
        }

        return (left.FirstOrDefault(variant => variant.Given?.Invoke(reader) == true) ?? left[^1]).Read(reader);
    }

    public override void Write(FieldWriter fields, T part) =>
        (variants.FirstOrDefault(variant => variant.Fits(part)) ?? throw new InvalidOperationException(
            $"A file cannot hold {part}: a law of your own is code, and has no form. Write the setup with a part of the library in its place, and put the law back when it is read.")).Write(fields, part);
}

/// <summary>One of the forms that a part may have.</summary>
/// <param name="Form">The form.</param>
/// <param name="Given">Whether what stands in the file is of this form; none for what is left when no other is.</param>
/// <param name="Fits">Whether a part is written so.</param>
/// <param name="Read">Reads it.</param>
/// <param name="Write">Writes it.</param>
internal sealed record Variant<T>(
    IRecordForm Form, Func<EntryReader, bool>? Given, Func<T, bool> Fits, Func<EntryReader, T?> Read, Action<FieldWriter, T> Write)
    where T : class
{
    /// <summary>A form of a narrower type.</summary>
    /// <param name="form">The form.</param>
    /// <param name="when">Which parts of that type are written so; all if not said.</param>
    /// <param name="given">The field that tells it from the others; none for what is left when no other is.</param>
    public static Variant<T> Of<TPart>(RecordForm<TPart> form, Func<TPart, bool>? when = null, Field? given = null)
        where TPart : class, T =>
        new(
            form,
            given is null ? null : reader => reader.Has(given.Name),
            part => part is TPart narrow && when?.Invoke(narrow) != false,
            form.Read,
            (fields, part) => form.Write(fields, (TPart)part));
}

/// <summary>What was read from the fields of a form.</summary>
internal sealed class FieldValues(EntryReader reader)
{
    private readonly Dictionary<Field, object?> _values = [];

    /// <summary>Keeps problems.</summary>
    public EntryReader Reader => reader;

    /// <summary>Which field a factory's argument comes from.</summary>
    public static Dictionary<string, string> ByArgument(IEnumerable<Field> fields)
    {
        Dictionary<string, string> names = new(StringComparer.OrdinalIgnoreCase);
        foreach (Field field in fields)
        {
            foreach (string argument in field.Arguments)
            {
                names.TryAdd(argument, field.Name);
            }
        }

        return names;
    }

    /// <summary>Keeps a value.</summary>
    public void Put(Field field, object? value) => _values[field] = value;

    /// <summary>A value that must be given.</summary>
    public T Required<T>(Field<T?> field)
        where T : struct => Optional(field) ?? default;

    /// <summary>A value that must be given.</summary>
    public T Required<T>(Field<T> field)
        where T : class => Optional(field)!;

    /// <summary>A value that may be left out.</summary>
    public T? Optional<T>(Field<T?> field)
        where T : struct => (T?)_values.GetValueOrDefault(field);

    /// <summary>A value that may be left out.</summary>
    public T? Optional<T>(Field<T> field)
        where T : class => (T?)_values.GetValueOrDefault(field);

    /// <summary>The rows of a table, for problems.</summary>
    public IReadOnlyList<EntryReader> Rows(Field table) => reader.RowsOf(table.Name);

    /// <summary>Keeps a problem of a field, which is given or missing.</summary>
    public void Wrong(Field field, Statement reason) => reader.Wrong(field.Name, reader.LineOf(field.Name), reason);

    /// <summary>Refuses one of two fields without the other.</summary>
    public void BothOrNeither(Field one, Field other, Statement missing)
    {
        bool hasOne = reader.Has(one.Name);
        if (hasOne != reader.Has(other.Name))
        {
            Wrong(hasOne ? other : one, missing);
        }
    }

    /// <summary>Whether a field's value goes with the others; where it is refused, that is kept as a problem of the field.</summary>
    public bool Fits(Field field, Action check) => reader.Fits(field.Name, check);

    /// <summary>Makes something of a few fields; none where that is refused.</summary>
    public T? Checked<T>(Func<T> make, params (string Argument, Field Field)[] arguments)
        where T : class =>
        reader.Checked(make, arguments.ToDictionary(pair => pair.Argument, pair => pair.Field.Name));

    /// <summary>Makes something of a table's rows; where that is refused, the first row with which it is so is to blame.</summary>
    public T? Made<T>(Field table, Func<int, T> make)
        where T : class => reader.Made(table.Name, Rows(table), make);
}
