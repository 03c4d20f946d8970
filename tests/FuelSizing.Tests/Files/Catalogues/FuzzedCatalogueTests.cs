using System.Globalization;
using System.Text.Json;
using CsCheck;
using FuelSizing.Files;
using Microsoft.VisualBasic.FileIO;
using UnitsNet;

namespace FuelSizing.Tests.Files.Catalogues;

/// <summary>
/// Thousands of catalogues mutated at random: each is read whole, as an independent reader (the runtime's TextFieldParser and
/// JsonDocument) finds it, or refused with file, line and field; nothing else is thrown.
/// </summary>
public class FuzzedCatalogueTests
{
    private static readonly string[] Scraps =
    [
        ",", "\"", "\"\"", "\n", "\r\n", "\r", ";", "\t", " ", ".", "-", "+", "e", "E9", "1e999", "NaN", "Infinity", "0", "9", "12",
        "{", "}", "[", "]", ":", "null", "true", "\\", "\\u0000", "\\ud800", "\0", "é", "³", "\u2028", "injectors 1\n", "pumps 1\n",
        "mL/min", "kPa", "%", "name", "\"name\": \"x\",", "cost", "regulator M", "// ", "/*",
    ];

    private static readonly Gen<Func<string, string>> Edit = Mutating.Edit(Scraps);

    private static readonly Gen<Func<string, string>[]> Edits = Edit.Array[1, 4];

    [Theory]
    [InlineData("injectors.csv", ShelfFiles.Injectors)]
    [InlineData("pumps.csv", ShelfFiles.Pumps)]
    [InlineData("regulators.csv", ShelfFiles.Regulators)]
    [InlineData("shelf.json", ShelfFiles.Json)]
    public void Catalogue_MutatedAtRandom_IsReadWholeOrRefusedWithItsPlace(string name, string good) =>
        Edits.Select(edits => edits.Aggregate(good, (text, edit) => edit(text))).Sample(text => Holds(name, text), iter: 4000);

    /// <summary>Any kind of white space parts a number from its unit, for the reader as for the independent one.</summary>
    [Theory]
    [InlineData('\u2028')]
    [InlineData('\u00a0')]
    public void Catalogue_WithOddWhiteSpaceAfterANumber_IsReadWhole(char space) =>
        Holds("shelf.json", ShelfFiles.Json.Replace("360 mL/min", $"360{space} mL/min", StringComparison.Ordinal));

    [Theory]
    [InlineData("noise.csv")]
    [InlineData("noise.json")]
    public void Catalogue_OfNoise_IsRefusedWithItsPlace(string name) =>
        Gen.OneOfConst(Scraps).Array[0, 60].Select(string.Concat).Sample(text => Holds(name, text), iter: 4000);

    private static void Holds(string name, string text)
    {
        Catalogue read;
        try
        {
            read = Catalogue.Parse(name, text);
        }
        catch (CatalogueException refused)
        {
            int lines = 1 + text.ReplaceLineEndings("\n").Count(letter => letter == '\n');
            Assert.NotEmpty(refused.Problems);
            Assert.All(refused.Problems, problem =>
            {
                Assert.Equal(name, problem.File);
                Assert.InRange(problem.Line, 1, lines);
                Assert.False(string.IsNullOrWhiteSpace(problem.Field));
                Assert.False(string.IsNullOrWhiteSpace($"{problem.Reason}"));
                Assert.DoesNotContain(problem.ToString(), char.IsControl);
            });
            return;
        }

        Assert.Equal(name.EndsWith(".json", StringComparison.Ordinal) ? FromJson(text) : FromCsv(text), Seen(read));
    }

    private static string[] Seen(Catalogue read) =>
    [
        .. read.Injectors.Select(part => Line(part.Name, part.Cost, part.Part.StaticFlow.MillilitersPerMinute)),
        .. read.Pumps.Select(part => Line(part.Name, part.Cost, part.Part.Curves.Sum(curve => curve.Flow.Points.Count()))),
        .. read.Regulators.Select(part => Line(part.Name, part.Cost, 0)),
    ];

    private static string[] FromCsv(string text)
    {
        using TextFieldParser parser = new(new StringReader(text)) { Delimiters = [","], TrimWhiteSpace = false };
        List<string[]> rows = [];
        while (parser.ReadFields() is { } row)
        {
            if (row.Any(cell => cell.Trim().Length > 0))
            {
                rows.Add(row);
            }
        }

        int Column(string field) => Array.FindIndex(rows[0], cell => cell.Split('[')[0].Trim() == field);
        string Cell(string[] row, string field) => Column(field) < 0 ? string.Empty : row[Column(field)].Trim();
        return
        [
            .. rows.Skip(1).GroupBy(row => row[0].Trim()).Select(part => Line(
                part.Key,
                Cost(Cell(part.First(), "cost")),
                rows[0][0].Trim() switch
                {
                    "injectors 1" => Flow(Cell(part.First(), "static_flow"), Unit(rows[0], Column("static_flow"))),
                    "pumps 1" => part.Count(row => Cell(row, "curve.flow").Length > 0),
                    _ => 0,
                })),
        ];
    }

    private static string? Unit(string[] heads, int column) =>
        heads[column].Contains('[') ? heads[column].Split('[', ']')[1].Trim() : null;

    private static string[] FromJson(string text)
    {
        using JsonDocument document = JsonDocument.Parse(text);
        JsonElement[] List(string kind) =>
            document.RootElement.TryGetProperty(kind, out JsonElement list) ? [.. list.EnumerateArray()] : [];
        string Text(JsonElement part, string field) =>
            part.TryGetProperty(field, out JsonElement value) ? value.ToString() : string.Empty;
        string Part(JsonElement part, double figure) => Line(Text(part, "name"), Cost(Text(part, "cost")), figure);
        return
        [
            .. List("injectors").Select(part => Part(part, Flow(Text(part, "static_flow"), null))),
            .. List("pumps").Select(part => Part(part, part.GetProperty("curve").GetArrayLength())),
            .. List("regulators").Select(part => Part(part, 0)),
        ];
    }

    private static double Flow(string text, string? head)
    {
        string number = text.Trim().Split(' ')[0].TrimEnd('m', 'L', '/', 'i', 'n', 'c').TrimEnd();

        // UnitsNet overlooks spaces in a unit.
        string unit = string.Concat((head ?? text.Trim()[number.Length..]).Where(letter => !char.IsWhiteSpace(letter)));
        VolumeFlow one = unit is "cc/min" or "ml/min"
            ? VolumeFlow.FromMillilitersPerMinute(1)
            : VolumeFlow.Parse($"1 {unit}", CultureInfo.InvariantCulture);
        return double.Parse(number, CultureInfo.InvariantCulture) * one.MillilitersPerMinute;
    }

    private static decimal? Cost(string text) =>
        text.Length == 0 ? null : (decimal)double.Parse(text, CultureInfo.InvariantCulture);

    private static string Line(string name, decimal? cost, double figure) =>
        string.Create(CultureInfo.InvariantCulture, $"{name}|{cost:0.####}|{figure:G10}");
}
