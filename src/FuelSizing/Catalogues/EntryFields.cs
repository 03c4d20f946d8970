namespace FuelSizing.Catalogues;

/// <summary>Fields with their values: of a part, or of one row of a part's table.</summary>
internal sealed class EntryFields
{
    private readonly Dictionary<string, EntryValue> _values = [];

    /// <summary>Starts without any.</summary>
    /// <param name="line">Where they begin, from 1.</param>
    public EntryFields(int line) => Line = line;

    /// <summary>Where they begin, from 1.</summary>
    public int Line { get; }

    /// <summary>Every field that is given.</summary>
    public IEnumerable<string> Names => _values.Keys;

    /// <summary>The value of a field, if it is given.</summary>
    public EntryValue? this[string field] => _values.TryGetValue(field, out EntryValue value) ? value : null;

    /// <summary>Keeps a value; false if the field has one already.</summary>
    public bool TryAdd(string field, EntryValue value) => _values.TryAdd(field, value);
}
