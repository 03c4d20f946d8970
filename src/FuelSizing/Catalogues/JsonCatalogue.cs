using System.Text;
using System.Text.Json;

namespace FuelSizing.Catalogues;

/// <summary>Reads lists of parts from JSON (RFC 8259): an object with the form's version and a list for each kind.</summary>
internal ref struct JsonCatalogue
{
    private const string VersionField = "catalogue";
    private const int Version = 1;

    private readonly string _file;
    private readonly ReadOnlySpan<byte> _bytes;
    private readonly ProblemList _problems;
    private readonly List<Entry> _entries = [];
    private Utf8JsonReader _reader;
    private int _counted;
    private int _line = 1;

    private JsonCatalogue(string file, ReadOnlySpan<byte> bytes, ProblemList problems)
    {
        _bytes = bytes;
        (_file, _problems) = (file, problems);
        _reader = new(bytes, new JsonReaderOptions { MaxDepth = 16 });
    }

    /// <summary>The parts that a text lists; what is wrong with its form is kept as problems.</summary>
    public static IReadOnlyList<Entry> Entries(in CatalogueText text, ProblemList problems)
    {
        JsonCatalogue reader = new(text.Name, Encoding.UTF8.GetBytes(text.Text), problems);
        try
        {
            reader.ReadAll();
            return reader._entries;
        }
        catch (JsonException broken)
        {
            problems.Add(
                text.Name,
                (int)(broken.LineNumber ?? 0) + 1,
                $"byte {(broken.BytePositionInLine ?? 0) + 1}",
                "the text is not JSON from here on. Check for a missing comma, quote or bracket before it.");
            return [];
        }
    }

    private void ReadAll()
    {
        _reader.Read();
        if (_reader.TokenType != JsonTokenType.StartObject)
        {
            Wrong(VersionField, $"is missing: the text is not an object. Begin with {{ \"{VersionField}\": {Version}, …");
            return;
        }

        bool versioned = false;
        HashSet<string> seen = [];
        while (NextProperty(out string name))
        {
            if (!seen.Add(name))
            {
                Wrong(name, "is given twice. Take one out.");
            }

            if (name == VersionField)
            {
                versioned = true;
                _reader.Read();
                if (_reader.TokenType != JsonTokenType.Number || !_reader.TryGetInt32(out int version) || version != Version)
                {
                    Wrong(name, $"must be {Version}, the one version of the form that this release reads.");
                    _reader.Skip();
                }
            }
            else if (EntryKind.Of(name) is { } kind)
            {
                ReadParts(kind);
            }
            else
            {
                Wrong(name, $"is not a list of parts. Give {EntryKind.Names}.");
                SkipValue();
            }
        }

        if (!versioned)
        {
            Wrong(VersionField, $"is missing. Give the version of the form, {Version}.");
        }

        // Anything behind the closing bracket makes the reader say so.
        while (_reader.Read())
        {
        }
    }

    private void ReadParts(EntryKind kind)
    {
        _reader.Read();
        if (_reader.TokenType != JsonTokenType.StartArray)
        {
            Wrong(kind.Name, "must be a list, in [ ].");
            _reader.Skip();
            return;
        }

        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
        {
            if (_reader.TokenType != JsonTokenType.StartObject)
            {
                Wrong(kind.Name, "must hold parts, each in { }.");
                _reader.Skip();
                continue;
            }

            Entry entry = new(_file, kind, LineHere());
            _entries.Add(entry);
            while (NextProperty(out string field))
            {
                if (field == kind.Table)
                {
                    if (entry.Tables.Contains(field))
                    {
                        Wrong($"{kind.Name}.{field}", "is given twice. Take one out.");
                    }

                    ReadRows(entry, field);
                }
                else
                {
                    ReadValue(entry.Fields, field, $"{kind.Name}.{field}");
                }
            }
        }
    }

    private void ReadRows(Entry entry, string table)
    {
        string path = $"{entry.Kind.Name}.{table}";
        _reader.Read();
        if (_reader.TokenType != JsonTokenType.StartArray)
        {
            Wrong(path, "must be a list of rows, in [ ].");
            _reader.Skip();
            return;
        }

        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
        {
            if (_reader.TokenType != JsonTokenType.StartObject)
            {
                Wrong(path, "must hold rows, each in { }.");
                _reader.Skip();
                continue;
            }

            EntryFields row = new(LineHere());
            while (NextProperty(out string field))
            {
                ReadValue(row, field, $"{path}.{field}");
            }

            entry.Add(table, row);
        }
    }

    private void ReadValue(EntryFields fields, string field, string path)
    {
        _reader.Read();
        string? text = _reader.TokenType switch
        {
            JsonTokenType.String => Text(path),
            JsonTokenType.Number => Encoding.UTF8.GetString(_reader.ValueSpan),
            JsonTokenType.True => "true",
            JsonTokenType.False => "false",
            _ => null,
        };
        if (text is null)
        {
            Wrong(path, "must be a text, a number, true or false. Leave the field out where there is no value.");
            _reader.Skip();
        }
        else if (!fields.TryAdd(field, new(text, null, LineHere())))
        {
            Wrong(path, "is given twice. Take one out.");
        }
    }

    private bool NextProperty(out string name)
    {
        _reader.Read();
        bool property = _reader.TokenType == JsonTokenType.PropertyName;
        name = property ? Text("a field's name") : string.Empty;
        return property;
    }

    // A text may hold half of a surrogate pair, which is no character at all.
    private string Text(string path)
    {
        try
        {
            return _reader.GetString()!;
        }
        catch (InvalidOperationException)
        {
            Wrong(path, "holds half of a character (a lone surrogate). Write the character itself.");
            return string.Empty;
        }
    }

    private void SkipValue()
    {
        _reader.Read();
        _reader.Skip();
    }

    private void Wrong(string field, string message) =>
        _problems.Add(_file, LineHere(), field, message);

    /// <summary>The line of the token that was read last, from 1; tokens come in order, so lines are counted once.</summary>
    private int LineHere()
    {
        int here = (int)_reader.TokenStartIndex;
        _line += _bytes[_counted..here].Count((byte)'\n');
        _counted = here;
        return _line;
    }
}
