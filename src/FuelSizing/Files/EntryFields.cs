namespace FuelSizing.Files;

/// <summary>Fields as they stand in a file, whatever its format: values, and lists of further fields.</summary>
internal sealed class EntryFields
{
    private readonly Dictionary<string, EntryValue> _values = [];
    private readonly Dictionary<string, EntryList> _lists = [];

    /// <summary>Starts without any.</summary>
    /// <param name="line">Where they begin, from 1.</param>
    public EntryFields(int line) => Line = line;

    /// <summary>Where they begin, from 1.</summary>
    public int Line { get; }

    /// <summary>Every field that has a value.</summary>
    public IEnumerable<string> Names => _values.Keys;

    /// <summary>Every field that holds further fields.</summary>
    public IEnumerable<string> Lists => _lists.Keys;

    /// <summary>The value of a field, if it has one.</summary>
    public EntryValue? this[string field] => _values.TryGetValue(field, out EntryValue value) ? value : null;

    /// <summary>The further fields that a field holds, if it does.</summary>
    public EntryList? List(string field) => _lists.GetValueOrDefault(field);

    /// <summary>Keeps a value; false if the field is given already.</summary>
    public bool TryAdd(string field, EntryValue value) => !_lists.ContainsKey(field) && _values.TryAdd(field, value);

    /// <summary>Keeps further fields; false if the field is given already.</summary>
    public bool TryAdd(string field, EntryList list) => !_values.ContainsKey(field) && _lists.TryAdd(field, list);
}

/// <summary>Further fields that a field holds: one set of them, or a list of sets.</summary>
/// <param name="Line">Where it begins, from 1.</param>
/// <param name="IsOne">True for one set by itself, false for a list.</param>
/// <param name="Rows">The sets, in their order.</param>
internal sealed record EntryList(int Line, bool IsOne, List<EntryFields> Rows);

/// <summary>How a value is written in a file.</summary>
internal enum ValueForm
{
    /// <summary>A spreadsheet's cell, which may hold anything.</summary>
    Cell,

    /// <summary>A JSON text, in quotes.</summary>
    Text,

    /// <summary>A JSON number.</summary>
    Number,

    /// <summary>JSON's <c>true</c> or <c>false</c>.</summary>
    Truth,
}

/// <summary>One value as it stands in a file.</summary>
/// <param name="Text">The value; in a spreadsheet's cell without its unit where the column's head has it.</param>
/// <param name="Unit">The unit in the column's head; none where there is none.</param>
/// <param name="Line">In the file, from 1.</param>
/// <param name="Form">How the value is written.</param>
internal readonly record struct EntryValue(string Text, string? Unit, int Line, ValueForm Form = ValueForm.Cell)
{
    /// <summary>True where a text may stand: in quotes, or in a cell.</summary>
    public bool IsText => Form is ValueForm.Cell or ValueForm.Text;

    /// <summary>True where a plain number may stand: without quotes, or in a cell.</summary>
    public bool IsNumber => Form is ValueForm.Cell or ValueForm.Number;
}
