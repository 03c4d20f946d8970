using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>Reads fields, and keeps everything that is wrong with them.</summary>
/// <remarks>
/// What a reader finds wrong is wrong with the fields around it too: nothing is made of them. Each reader closes with
/// <see cref="Make{T}"/> of the part, which also finds the fields that nobody has asked for.
/// </remarks>
internal sealed partial class EntryReader
{
    private const string NameField = "name";
    private const int MaximumRows = 2000;

    private readonly string _file;
    private readonly string _path;
    private readonly EntryFields _fields;
    private readonly ProblemList _problems;
    private readonly EntryReader? _around;
    private readonly HashSet<string> _known = [];
    private readonly List<EntryReader> _rows = [];
    private readonly Dictionary<string, EntryReader[]> _tables = [];
    private bool _sound = true;

    /// <summary>Begins with the fields of a part.</summary>
    /// <param name="file">The file.</param>
    /// <param name="path">Names the part in problems; blank for the whole file.</param>
    /// <param name="fields">The part's fields.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public EntryReader(string file, string path, EntryFields fields, ProblemList problems) =>
        (_file, _path, _fields, _problems) = (file, path, fields, problems);

    private EntryReader(EntryReader around, string field, EntryFields fields)
        : this(around._file, around.Path(field), fields, around._problems) => _around = around;

    /// <summary>Where the fields begin, from 1.</summary>
    public int Line => _fields.Line;

    /// <summary>The part's name; blank where none is given, which is kept as a problem.</summary>
    public string Name()
    {
        if (Text(NameField) is { } name)
        {
            return Within(NameField, name, Guard.Name);
        }

        Missing(NameField, Statement.Of("file.give-name", $"Give the name by which reports call the part."));
        return string.Empty;
    }

    /// <summary>A quantity, in its range where that is given; none where it is left out or anything is wrong.</summary>
    /// <param name="field">The field.</param>
    /// <param name="measure">The kind of quantity.</param>
    /// <param name="example">A value for messages.</param>
    /// <param name="within">Checks the range.</param>
    /// <param name="otherwise">The quantity of a number and a unit of another kind, such as a mass flow; none where there is no such.</param>
    public T? Quantity<T>(
        string field, Measure<T> measure, string example, Func<T, string, T>? within = null, Func<string, string, T?>? otherwise = null)
        where T : struct =>
        Parsed(field, measure, example, otherwise) is { } value ? within is null ? value : Within(field, value, within) : null;

    /// <summary>Asks about a value that is not plausible.</summary>
    public void Question(string field, IQuantity value) => Ask(field, path => PlausibleRange.For(path)?.Question(path, value));

    /// <summary>Asks about a number that is not plausible.</summary>
    public void Question(string field, double value) => Ask(field, path => PlausibleRange.For(path)?.Question(path, value));

    private void Ask(string field, Func<string, InputQuestion?> asked)
    {
        if (asked(Path(field)) is { } question)
        {
            _problems.Ask(question.At(LineOf(field)));
        }
    }

    private T? Parsed<T>(string field, Measure<T> measure, string example, Func<string, string, T?>? otherwise)
        where T : struct
    {
        if (Value(field) is not { } value)
        {
            return null;
        }

        Match match = NumberAndUnit().Match(value.Text.Trim());
        string inText = match.Groups["unit"].Value;
        string number = match.Groups["number"].Value;
        if (!match.Success
            || !double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out double parsed)
            || !double.IsFinite(parsed))
        {
            Wrong(field, value.Line, Statement.Of("file.no-number-with-unit", $"was \"{ProblemList.Shown(value.Text)}\". Give a number with a decimal point and a unit, such as {example}."));
            return null;
        }

        if (inText.Length > 0 && value.Unit is { } head)
        {
            Wrong(field, value.Line, Statement.Of("file.unit-twice", $"was \"{ProblemList.Shown(value.Text)}\" under a head with the unit {ProblemList.Shown(head)}. Give the unit in one place."));
            return null;
        }

        string unit = value.Unit ?? inText;
        if (unit.Length == 0)
        {
            Wrong(field, value.Line, Statement.Of("file.no-unit", $"was \"{ProblemList.Shown(value.Text)}\", which has no unit. Give one, such as {example}."));
            return null;
        }

        try
        {
            string spelt = PlainUnits.Spelt(unit);
            if ((measure.Read(number, unit) ?? measure.Read(number, spelt) ?? otherwise?.Invoke(number, spelt)) is { } quantity)
            {
                if (quantity is IQuantity given)
                {
                    Question(field, given);
                }

                return quantity;
            }

            Wrong(field, value.Line, Statement.Of("file.unit-misfit", $"has the unit \"{ProblemList.Shown(unit)}\", which does not fit. Give a value such as {example}."));
        }
        catch (OverflowException)
        {
            Wrong(field, value.Line, Statement.Of("file.far-too-large", $"was \"{ProblemList.Shown(value.Text)}\", far too much. Give a value such as {example}."));
        }

        return null;
    }

    /// <summary>A plain number; none where it is left out or anything is wrong.</summary>
    public double? Number(string field, string example)
    {
        if (Value(field) is not { } value)
        {
            return null;
        }

        if (value.IsNumber
            && value.Unit is null
            && PlainNumber().IsMatch(value.Text.Trim())
            && double.TryParse(value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            && double.IsFinite(number))
        {
            Question(field, number);
            return number;
        }

        Statement? withUnit = value.Unit is { } unit ? Statement.Of("file.with-unit", $" with the unit {ProblemList.Shown(unit)}") : null;
        Wrong(
            field, value.Line, Statement.Of("file.no-plain-number", $"was \"{ProblemList.Shown(value.Text)}\"{withUnit}. Give a plain number such as {example}."));
        return null;
    }

    /// <summary>A whole number; none where it is left out or anything is wrong.</summary>
    public int? Count(string field, string example)
    {
        if (Number(field, example) is not { } number)
        {
            return null;
        }

        if (Math.Abs(number) <= int.MaxValue && number == Math.Truncate(number))
        {
            return (int)number;
        }

        Wrong(field, LineOf(field), Statement.Of("file.no-whole-number", $"was {_fields[field]!.Value.Text}. Give a whole number such as {example}."));
        return null;
    }

    /// <summary>One of a few words; the first where none is given and none is needed.</summary>
    public string Word(string field, bool required, params string[] words) =>
        OneOf(field, required, value => value.IsText, words);

    /// <summary>True or false, which must be given.</summary>
    public bool Truth(string field) =>
        OneOf(field, true, value => value.Form is ValueForm.Cell or ValueForm.Truth, "false", "true") == "true";

    /// <summary>Any text that may be left out.</summary>
    public string? Text(string field)
    {
        if (Value(field) is not { } value)
        {
            return null;
        }

        if (!value.IsText)
        {
            Wrong(field, value.Line, Statement.Of("file.no-text", $"was {ProblemList.Shown(value.Text)}. Give a text, in quotes."));
        }

        return value.Text;
    }

    /// <summary>A table that must be given: one row or more, in their order.</summary>
    public IReadOnlyList<EntryReader> Rows(string table, Statement advice)
    {
        IReadOnlyList<EntryReader> rows = OptionalRows(table);
        if (rows.Count == 0 && _fields[table] is null)
        {
            Wrong(table, LineOf(table), IsMissing(advice));
        }

        return rows;
    }

    /// <summary>A table or list that may be left out or be empty.</summary>
    public IReadOnlyList<EntryReader> OptionalRows(string table)
    {
        _known.Add(table);
        if (_fields[table] is not null || _fields.List(table) is { IsOne: true })
        {
            Wrong(table, LineOf(table), Statement.Of("file.must-be-list", $"must be a list, in [ ]."));
            return [];
        }

        if (_fields.List(table) is not { } list)
        {
            return [];
        }

        if (list.Rows.Count > MaximumRows)
        {
            Wrong(table, list.Rows[MaximumRows].Line, Statement.Of("file.too-many-rows", $"has more than {MaximumRows} rows. Thin it out."));
        }

        EntryReader[] rows = [.. list.Rows.Select(row => new EntryReader(this, table, row))];
        _rows.AddRange(rows);
        _tables[table] = rows;
        return rows;
    }

    /// <summary>A part of the part; none where it is left out or anything is wrong.</summary>
    public EntryReader? Part(string field)
    {
        _known.Add(field);
        if (_fields[field] is not null || _fields.List(field) is { IsOne: false })
        {
            Wrong(field, LineOf(field), Statement.Of("file.must-hold-fields", $"must hold fields, in {{ }}."));
            return null;
        }

        if (_fields.List(field) is not { } one)
        {
            return null;
        }

        EntryReader part = new(this, field, one.Rows[0]);
        _rows.Add(part);
        _tables[field] = [part];
        return part;
    }

    /// <summary>The rows of a table, or the one part, that was read; none where there is none.</summary>
    public IReadOnlyList<EntryReader> RowsOf(string table) => _tables.GetValueOrDefault(table) ?? [];

    /// <summary>Whether a field has a text, in quotes or in a cell.</summary>
    public bool IsText(string field) => _fields[field] is { IsText: true };

    /// <summary>Takes a field as one that the part has.</summary>
    public void Know(string field) => _known.Add(field);

    /// <summary>Whether a field is given at all, in whatever form.</summary>
    public bool Has(string field) => _fields[field] is not null || _fields.List(field) is not null;

    /// <summary>Keeps a problem of this part.</summary>
    public void Wrong(string field, int line, Statement reason)
    {
        for (EntryReader? reader = this; reader is not null; reader = reader._around)
        {
            reader._sound = false;
        }

        _problems.Add(_file, line, Path(field), reason);
    }

    /// <summary>The line of a field, or of the part where the field is not given.</summary>
    public int LineOf(string field) => _fields[field]?.Line ?? _fields.List(field)?.Line ?? Line;

    /// <summary>Makes the part once all fields are read; none if anything is wrong.</summary>
    /// <param name="make">Calls the part's factory, which checks ranges.</param>
    /// <param name="fields">Which field a factory's argument comes from.</param>
    public T? Make<T>(Func<T?> make, IReadOnlyDictionary<string, string> fields)
        where T : class
    {
        NothingElse();
        return Checked(make, fields);
    }

    /// <summary>Makes something before all fields are read; none if anything is wrong so far.</summary>
    /// <param name="make">Calls a factory, which checks ranges.</param>
    /// <param name="fields">Which field a factory's argument comes from.</param>
    public T? Checked<T>(Func<T?> make, IReadOnlyDictionary<string, string> fields)
        where T : class
    {
        if (!_sound)
        {
            return null;
        }

        try
        {
            return make();
        }
        catch (ArgumentException refused)
        {
            string field = fields.GetValueOrDefault(refused.ParamName ?? string.Empty, NameField);
            Wrong(field, LineOf(field), Said(refused));
            return null;
        }
    }

    /// <summary>Whether a check passes; where it refuses, that is kept as a problem of a field.</summary>
    public bool Fits(string field, Action check)
    {
        try
        {
            check();
            return true;
        }
        catch (ArgumentException refused)
        {
            Wrong(field, LineOf(field), Said(refused));
            return false;
        }
    }

    /// <summary>
    /// Makes something of rows; where that is refused, the row to blame is the first with which it is refused so.
    /// </summary>
    /// <param name="table">The table.</param>
    /// <param name="rows">Its rows, or the first one of each part of it.</param>
    /// <param name="make">Makes it of so many of them.</param>
    public T? Made<T>(string table, IReadOnlyList<EntryReader> rows, Func<int, T> make)
        where T : class
    {
        if (!_sound)
        {
            return null;
        }

        T? made = Tried(rows.Count, make, out Statement? why);
        if (made is null)
        {
            int first = Enumerable.Range(1, rows.Count)
                .First(count => Tried(count, make, out Statement? then) is null && Equals(then, why));
            Wrong(table, rows[first - 1].Line, why!);
        }

        return made;
    }

    private static T? Tried<T>(int count, Func<int, T> make, out Statement? why)
        where T : class
    {
        why = null;
        try
        {
            return make(count);
        }
        catch (ArgumentException refused)
        {
            why = Said(refused);
            return null;
        }
    }

    // Without the runtime's own addition of the argument's name and value, which the message has already.
    private static Statement Said(ArgumentException refused) =>
        Statement.Of("file.refused-by-part", $"{ProblemList.OneLine(refused.Message.Split(" (Parameter '")[0].ReplaceLineEndings(" "))}");

    private static Statement IsMissing(Statement advice) => Statement.Of("file.missing", $"is missing. {advice}");

    private EntryValue? Value(string field)
    {
        _known.Add(field);
        if (_fields.List(field) is { } list)
        {
            Wrong(field, list.Line, Statement.Of("file.must-be-value", $"must be a text, a number, true or false."));
        }

        return _fields[field];
    }

    private string OneOf(string field, bool required, Func<EntryValue, bool> fits, params string[] words)
    {
        if (Value(field) is not { } value)
        {
            if (required)
            {
                Missing(field, Statement.Of("file.give-one-of", $"Give one of {string.Join(", ", words)}."));
            }

            return words[0];
        }

        if (fits(value) && value.Unit is null && words.Contains(value.Text))
        {
            return value.Text;
        }

        Statement? form = fits(value) ? null : Statement.Of("file.in-form", $", in the form of the page's sample");
        Wrong(
            field, value.Line, Statement.Of("file.not-one-of", $"was \"{ProblemList.Shown(value.Text)}\". Give one of {string.Join(", ", words)}{form}."));
        return words[0];
    }

    /// <summary>Keeps a problem where a field is not given.</summary>
    public void Missing(string field, Statement advice)
    {
        if (!Has(field))
        {
            Wrong(field, Line, IsMissing(advice));
        }
    }

    private T Within<T>(string field, T value, Func<T, string, T> within)
    {
        try
        {
            return _fields[field] is null ? value : within(value, field);
        }
        catch (ArgumentException refused)
        {
            Wrong(field, LineOf(field), Said(refused));
            return value;
        }
    }

    private string Path(string field) => _path.Length == 0 ? field : $"{_path}.{field}";

    private void NothingElse()
    {
        foreach (EntryReader row in _rows)
        {
            row.NothingElse();
        }

        foreach (string field in _fields.Names.Concat(_fields.Lists).Where(field => !_known.Contains(field)))
        {
            string[] nearest = [.. NearestNames.Of(field, _known.Where(known => !Has(known)))];
            Statement? meant = nearest.Length > 0 ? Statement.Of("file.field-meant", $" Did you mean {string.Join(" or ", nearest)}?") : null;
            Wrong(field, LineOf(field), Statement.Of("file.unknown-field", $"is not a field that this part has. Take it out, or correct its name.{meant}"));
        }
    }

    [GeneratedRegex(@"^(?<number>[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?)\s*(?<unit>[^\s0-9.,].*)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex NumberAndUnit();

    [GeneratedRegex(@"^[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex PlainNumber();
}
