using System.Text;
using FuelSizing.Files;

namespace FuelSizing.Tests.Files;

/// <summary>The docs' tables of fields, from the forms that reader, writer and schema have too.</summary>
internal static class FieldTables
{
    /// <summary>A table for each form that can be reached from a file's own, in the order that a reader meets them.</summary>
    /// <param name="file">The file's own form.</param>
    public static string Text(Form file)
    {
        List<Form> forms = [file];
        for (int at = 0; at < forms.Count; at++)
        {
            forms.AddRange(forms[at].Records.SelectMany(record => record.Fields).Select(field => field.Inner).OfType<Form>().Where(inner => !forms.Contains(inner)).Distinct().ToArray());
        }

        StringBuilder page = new();
        foreach (IGrouping<string, Form> alike in forms.GroupBy(Heading))
        {
            // Forms of one heading, such as the columns of a recorded run, share a table.
            Form[] each = [.. alike];
            Write(
                page,
                alike.Key,
                each.Length == 1
                    ? [.. each[0].Records.Select(record => (Kind(record, each[0].Records), record))]
                    : [.. each.SelectMany(form => form.Records, (form, record) => ($"`{form.Name}`", record))]);
        }

        return page.ToString();
    }

    private static void Write(StringBuilder page, string heading, (string Kind, IRecordForm Record)[] records)
    {
        string[] all = [.. records.Select(record => record.Kind).Distinct()];
        bool isChoice = records.Length > 1;
        page.Append("### ").Append(heading).Append("\n\n");
        page.Append(isChoice ? "| field | of | value | example | default | meaning |\n| --- | --- | --- | --- | --- | --- |\n" : "| field | value | example | default | meaning |\n| --- | --- | --- | --- | --- |\n");

        // A field that several kinds share is one line, which says which of them.
        foreach (var same in records
            .SelectMany(record => record.Record.Fields, (record, field) => (record.Kind, Field: field))
            .Where(row => row.Field is not KindField)
            .GroupBy(row => row.Field))
        {
            string[] kinds = [.. same.Select(row => row.Kind).Distinct()];
            Line(page, same.Key, isChoice ? kinds.Length == all.Length ? "all" : string.Join(", ", kinds) : null);
        }

        string[] words = [.. records.Select(record => Word(record.Record)).OfType<string>().Distinct()];
        if (words.Length > 0)
        {
            page.Append("\n`kind`, which is required, is ").AppendJoin(", ", words.Select(word => $"`{word}`")).Append(".\n");
        }

        page.Append('\n');
    }

    private static void Line(StringBuilder page, Field field, string? of)
    {
        string value = (field.Inner, field.Values) switch
        {
            ({ } inner, { } list) => $"{list}: {Link(inner)}",
            ({ } inner, null) => Link(inner),
            (null, var values) => values ?? "text",
        };
        string missing = field.Optional ? field.Default ?? "none" : "required";
        string kinds = of is null ? string.Empty : $" {of} |";
        page.Append($"| `{field.Name}` |{kinds} {value} | {(field.Sample is { } sample ? $"`{sample}`" : string.Empty)} | {missing} | {field.Meaning} |\n");
    }

    // Two forms of one kind are told apart by what they are.
    private static string Kind(IRecordForm record, IReadOnlyList<IRecordForm> all) =>
        Word(record) is not { } word ? record.Title
        : all.Count(other => Word(other) == word) > 1 ? $"`{word}` ({record.Title})"
        : $"`{word}`";

    private static string? Word(IRecordForm record) => record.Fields.OfType<KindField>().FirstOrDefault()?.Word;

    private static string Heading(Form form) => char.ToUpperInvariant(form.Title[0]) + form.Title[1..];

    private static string Link(Form form) =>
        $"[{form.Title}](#{Heading(form).ToLowerInvariant().Replace(' ', '-')})";
}
