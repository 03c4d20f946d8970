using System.Globalization;
using System.Text.RegularExpressions;
using FuelSizing.Quantities;

namespace FuelSizing.Catalogues;

/// <summary>Reads the fields of one part, and keeps everything that is wrong with them.</summary>
internal sealed partial class EntryReader
{
    private const int MostRows = 2000;

    private readonly Entry _entry;
    private readonly ProblemList _problems;
    private readonly HashSet<string> _known = [EntryKind.NameField];
    private bool _sound = true;

    public EntryReader(Entry entry, ProblemList problems) => (_entry, _problems) = (entry, problems);

    /// <summary>The part's name; blank where none is given, which is kept as a problem.</summary>
    public string Name()
    {
        if (_entry.Fields[EntryKind.NameField] is { } name)
        {
            return Within(_entry.Fields, EntryKind.NameField, name.Text, Allowed.Name);
        }

        Wrong(EntryKind.NameField, _entry.Line, "is missing. Give the name by which reports call the part.");
        return string.Empty;
    }

    /// <summary>A quantity that must be given.</summary>
    public T Required<T>(string field, Measure<T> measure)
        where T : struct => Required(_entry.Fields, field, measure);

    /// <summary>A quantity of a table's row that must be given.</summary>
    public T Required<T>(EntryFields row, string field, Measure<T> measure)
        where T : struct
    {
        if (row[field] is null)
        {
            Known(row, field);
            Wrong(Path(row, field), row.Line, $"is missing. Give a value such as {measure.Example}.");
        }

        return Optional(row, field, measure) ?? default;
    }

    /// <summary>A quantity that may be left out.</summary>
    public T? Optional<T>(string field, Measure<T> measure)
        where T : struct => Optional(_entry.Fields, field, measure);

    /// <summary>A quantity of a table's row that must be given, in its range.</summary>
    public T Required<T>(EntryFields row, string field, Measure<T> measure, Func<T, string, T> within)
        where T : struct => Within(row, field, Required(row, field, measure), within);

    /// <summary>A quantity of a table's row that may be left out, in its range.</summary>
    public T? Optional<T>(EntryFields row, string field, Measure<T> measure, Func<T, string, T> within)
        where T : struct => Optional(row, field, measure) is { } value ? Within(row, field, value, within) : null;

    /// <summary>A quantity of a table's row that may be left out.</summary>
    public T? Optional<T>(EntryFields row, string field, Measure<T> measure)
        where T : struct
    {
        Known(row, field);
        if (row[field] is not { } value)
        {
            return null;
        }

        Match match = NumberAndUnit().Match(value.Text.Trim());
        string path = Path(row, field);
        string inText = match.Groups["unit"].Value;
        if (!match.Success
            || !double.TryParse(match.Groups["number"].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            || !double.IsFinite(number))
        {
            Wrong(path, value.Line, $"was \"{ProblemList.Shown(value.Text)}\". Give a number with a decimal point and a unit, such as {measure.Example}.");
            return null;
        }

        if (inText.Length > 0 && value.Unit is { } head)
        {
            Wrong(path, value.Line, $"was \"{ProblemList.Shown(value.Text)}\" under a head with the unit {head}. Give the unit in one place.");
            return null;
        }

        string unit = value.Unit ?? inText;
        if (unit.Length == 0)
        {
            Wrong(path, value.Line, $"was \"{ProblemList.Shown(value.Text)}\", which has no unit. Give one, such as {measure.Example}.");
            return null;
        }

        if (measure.Read(number, unit) is { } quantity)
        {
            return quantity;
        }

        Wrong(path, value.Line, $"has the unit \"{ProblemList.Shown(unit)}\", which does not fit. Give a value such as {measure.Example}.");
        return null;
    }

    /// <summary>A plain number that may be left out.</summary>
    public double? Number(string field, string example)
    {
        _known.Add(field);
        if (_entry.Fields[field] is not { } value)
        {
            return null;
        }

        if (value.Unit is null
            && PlainNumber().IsMatch(value.Text.Trim())
            && double.TryParse(value.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            && double.IsFinite(number))
        {
            return number;
        }

        Wrong(field, value.Line, $"was \"{ProblemList.Shown(value.Text)}\"{(value.Unit is { } unit ? $" with the unit {unit}" : string.Empty)}. Give a plain number such as {example}.");
        return null;
    }

    /// <summary>What the part costs, in the reader's own money, if it is given.</summary>
    public decimal? Cost()
    {
        if (Number("cost", "120") is not { } cost)
        {
            return null;
        }

        if (cost is >= 0 and <= 1e6)
        {
            return (decimal)cost;
        }

        Wrong("cost", _entry.Fields["cost"]!.Value.Line, $"was {cost.ToString("G6", CultureInfo.InvariantCulture)}; allowed is from 0 to 1,000,000.");
        return null;
    }

    /// <summary>One of a few words; the first where none is given and none is needed.</summary>
    public string Word(string field, bool required, params string[] words)
    {
        _known.Add(field);
        if (_entry.Fields[field] is not { } value)
        {
            if (required)
            {
                Wrong(field, _entry.Line, $"is missing. Give one of {string.Join(", ", words)}.");
            }

            return words[0];
        }

        if (words.Contains(value.Text) && value.Unit is null)
        {
            return value.Text;
        }

        Wrong(field, value.Line, $"was \"{ProblemList.Shown(value.Text)}\". Give one of {string.Join(", ", words)}.");
        return words[0];
    }

    /// <summary>Any text that may be left out.</summary>
    public string? Text(string field)
    {
        _known.Add(field);
        return _entry.Fields[field]?.Text;
    }

    /// <summary>The rows of the part's table: one or more, in their order.</summary>
    public IReadOnlyList<EntryFields> Rows(string table)
    {
        IReadOnlyList<EntryFields> rows = _entry.Rows(table);
        if (rows.Count == 0)
        {
            Wrong(table, _entry.Line, "is missing. Give its measured points, a row for each.");
        }

        if (rows.Count > MostRows)
        {
            Wrong(table, rows[MostRows].Line, $"has more than {MostRows} rows. Thin it out.");
        }

        return rows;
    }

    /// <summary>Keeps a problem of this part.</summary>
    public void Wrong(string field, int line, string message)
    {
        _sound = false;
        _problems.Add(_entry.File, line, $"{_entry.Kind.Name}.{field}", message);
    }

    /// <summary>The line of a field, or of the part where the field is not given.</summary>
    public int LineOf(string field) => _entry.Fields[field]?.Line ?? _entry.Line;

    /// <summary>Makes the part once all fields are read; none if anything is wrong.</summary>
    /// <param name="make">Calls the part's factory, which checks ranges.</param>
    /// <param name="fields">Which field a factory's argument comes from.</param>
    public T? Make<T>(Func<T> make, IReadOnlyDictionary<string, string> fields)
        where T : class
    {
        foreach ((string field, int line) in Unknown())
        {
            Wrong(field, line, "is not a field that this part has. Take it out, or correct its name.");
        }

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
            string field = fields.GetValueOrDefault(refused.ParamName ?? string.Empty, EntryKind.NameField);
            Wrong(field, LineOf(field), Said(refused));
            return null;
        }
    }

    /// <summary>
    /// Makes something of rows; where that is refused, the row to blame is the first with which it is refused so.
    /// </summary>
    /// <param name="table">The table.</param>
    /// <param name="rows">Its rows, or the first one of each part of it.</param>
    /// <param name="make">Makes it of so many of them.</param>
    public T? Made<T>(string table, IReadOnlyList<EntryFields> rows, Func<int, T> make)
        where T : class
    {
        if (!_sound)
        {
            return null;
        }

        T? made = Tried(rows.Count, make, out string why);
        if (made is null)
        {
            int first = Enumerable.Range(1, rows.Count)
                .First(count => Tried(count, make, out string then) is null && then == why);
            Wrong(table, rows[first - 1].Line, why);
        }

        return made;
    }

    private static T? Tried<T>(int count, Func<int, T> make, out string why)
        where T : class
    {
        why = string.Empty;
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

    private T Within<T>(EntryFields row, string field, T value, Func<T, string, T> within)
    {
        try
        {
            return row[field] is null ? value : within(value, field);
        }
        catch (ArgumentException refused)
        {
            Wrong(Path(row, field), row[field]!.Value.Line, Said(refused));
            return value;
        }
    }

    // Without the runtime's own addition of the argument's name and value, which the message has already.
    private static string Said(ArgumentException refused) =>
        refused.Message.Split(" (Parameter '")[0].ReplaceLineEndings(" ");

    private string Path(EntryFields row, string field) =>
        ReferenceEquals(row, _entry.Fields) ? field : $"{_entry.Kind.Table}.{field}";

    private void Known(EntryFields row, string field) => _known.Add(Path(row, field));

    private IEnumerable<(string Field, int Line)> Unknown()
    {
        IEnumerable<(string Field, int Line)> given =
        [
            .. _entry.Fields.Names.Select(field => (field, _entry.Fields[field]!.Value.Line)),
            .. from table in _entry.Tables
               from row in _entry.Rows(table)
               from field in row.Names
               select ($"{table}.{field}", row[field]!.Value.Line),
        ];
        return given.Where(value => !_known.Contains(value.Field));
    }

    [GeneratedRegex(@"^(?<number>[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?)\s*(?<unit>[^\s0-9.,].*)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex NumberAndUnit();

    [GeneratedRegex(@"^[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex PlainNumber();
}
