namespace FuelSizing.Files;

/// <summary>A kind of JSON file: an object that begins with what it is and the version of its form.</summary>
/// <param name="version">The field that says both.</param>
/// <param name="description">What it holds, for the schema.</param>
/// <param name="form">Its other fields.</param>
internal sealed class FileForm<T>(string version, string description, RecordForm<T> form)
    where T : class
{
    private const int Version = 1;

    /// <summary>Its fields.</summary>
    public RecordForm<T> Form => form;

    /// <summary>Reads a text; none where anything is wrong, which is kept as problems.</summary>
    public T? Read(in FileText text, ProblemList problems) =>
        Fields(text, problems) is { } fields ? form.Read(new EntryReader(text.Name, string.Empty, fields, problems)) : null;

    /// <summary>The fields of a text without the version; none where they cannot be told apart.</summary>
    public EntryFields? Fields(in FileText text, ProblemList problems) => JsonText.Read(text, version, Version, problems);

    /// <summary>The text of what a file holds.</summary>
    public string Text(T content) => FieldWriter.Text(fields =>
    {
        fields.Count(version, Version);
        form.Write(fields, content);
    });

    /// <summary>Its JSON schema.</summary>
    public string Schema() => FormSchema.Text(form, version, Version, description);
}
