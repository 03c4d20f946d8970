using System.Text;
using System.Text.Json;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Reads an object from JSON (RFC 8259), each field with its line.</summary>
internal ref struct JsonText
{
    private const int Deepest = 200;

    /// <summary>Where an editor finds the form described; a reader skips it.</summary>
    private const string SchemaField = "$schema";

    private static readonly Statement Twice = Statement.Of("file.given-twice", $"is given twice. Take one out.");

    private readonly string _file;
    private readonly ReadOnlySpan<byte> _bytes;
    private readonly ProblemList _problems;
    private Utf8JsonReader _reader;
    private int _counted;
    private int _line = 1;

    private JsonText(string file, ReadOnlySpan<byte> bytes, ProblemList problems)
    {
        _bytes = bytes;
        (_file, _problems) = (file, problems);
        _reader = new(bytes, new JsonReaderOptions { MaxDepth = Deepest });
    }

    /// <summary>The fields of a text; what is wrong with its form is kept as problems.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="versionField">The field that says what the file is and which version of the form it has.</param>
    /// <param name="version">The one version that is read.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <returns>The fields without the version; none where they cannot be read at all.</returns>
    public static EntryFields? Read(in FileText text, string versionField, int version, ProblemList problems)
    {
        try
        {
            JsonText reader = new(text.Name, Encoding.UTF8.GetBytes(text.Text), problems);
            return reader.ReadAll(versionField, version);
        }
        catch (JsonException broken)
        {
            problems.Add(
                text.Name,
                (int)(broken.LineNumber ?? 0) + 1,
                $"byte {(broken.BytePositionInLine ?? 0) + 1}",
                Statement.Of("file.not-json", $"the text is not JSON from here on. Check for a missing comma, quote or bracket before it."));
            return null;
        }
    }

    private EntryFields? ReadAll(string versionField, int version)
    {
        _reader.Read();
        if (_reader.TokenType != JsonTokenType.StartObject)
        {
            Wrong(versionField, Statement.Of("file.not-an-object", $"is missing: the text is not an object. Begin with {{ \"{versionField}\": {version:ordinal}, …"));
            return null;
        }

        EntryFields fields = new(LineHere());
        bool versioned = false, addressed = false;
        while (NextProperty(out string name))
        {
            if (name == SchemaField)
            {
                _reader.Read();
                if (_reader.TokenType != JsonTokenType.String || addressed)
                {
                    Wrong(name, addressed ? Twice : Statement.Of("file.no-schema-address", $"must be a text, the address of the schema."));
                    _reader.Skip();
                }

                addressed = true;
                continue;
            }

            if (name != versionField)
            {
                ReadField(fields, name, name);
                continue;
            }

            if (versioned)
            {
                Wrong(name, Twice);
            }

            versioned = true;
            _reader.Read();
            if (_reader.TokenType != JsonTokenType.Number || !_reader.TryGetInt32(out int given) || given != version)
            {
                Wrong(name, Statement.Of("file.other-version", $"must be {version:ordinal}, the one version of the form that this release reads."));
                _reader.Skip();
            }
        }

        if (!versioned)
        {
            Wrong(versionField, Statement.Of("file.version-missing", $"is missing. Give the version of the form, {version:ordinal}."));
        }

        // Anything behind the closing bracket makes the reader say so.
        while (_reader.Read())
        {
        }

        return fields;
    }

    private EntryFields ReadFields(string path)
    {
        EntryFields fields = new(LineHere());
        while (NextProperty(out string field))
        {
            ReadField(fields, field, $"{path}.{field}");
        }

        return fields;
    }

    private void ReadField(EntryFields fields, string field, string path)
    {
        _reader.Read();
        int line = LineHere();
        bool kept = _reader.TokenType switch
        {
            JsonTokenType.StartObject => fields.TryAdd(field, new EntryList(line, true, [ReadFields(path)])),
            JsonTokenType.StartArray => fields.TryAdd(field, new EntryList(line, false, ReadRows(path))),
            JsonTokenType.String => fields.TryAdd(field, new EntryValue(Text(path), null, line, ValueForm.Text)),
            JsonTokenType.Number => fields.TryAdd(
                field, new EntryValue(Encoding.UTF8.GetString(_reader.ValueSpan), null, line, ValueForm.Number)),
            JsonTokenType.True => fields.TryAdd(field, new EntryValue("true", null, line, ValueForm.Truth)),
            JsonTokenType.False => fields.TryAdd(field, new EntryValue("false", null, line, ValueForm.Truth)),
            _ => Nothing(path),
        };
        if (!kept)
        {
            _problems.Add(_file, line, path, Twice);
        }
    }

    private List<EntryFields> ReadRows(string path)
    {
        List<EntryFields> rows = [];
        while (_reader.Read() && _reader.TokenType != JsonTokenType.EndArray)
        {
            if (_reader.TokenType == JsonTokenType.StartObject)
            {
                rows.Add(ReadFields(path));
            }
            else
            {
                Wrong(path, Statement.Of("file.must-hold-entries", $"must hold entries, each in {{ }}."));
                _reader.Skip();
            }
        }

        return rows;
    }

    private bool Nothing(string path)
    {
        Wrong(path, Statement.Of("file.null", $"must not be null. Leave the field out where there is no value."));
        return true;
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
            Wrong(path, Statement.Of("file.half-character", $"holds half of a character (a lone surrogate). Write the character itself."));
            return string.Empty;
        }
    }

    private void Wrong(string field, Statement reason) =>
        _problems.Add(_file, LineHere(), field, reason);

    /// <summary>The line of the token that was read last, from 1; tokens come in order, so lines are counted once.</summary>
    private int LineHere()
    {
        int here = (int)_reader.TokenStartIndex;
        _line += _bytes[_counted..here].Count((byte)'\n');
        _counted = here;
        return _line;
    }
}
