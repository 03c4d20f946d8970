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
