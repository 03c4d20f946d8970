using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FuelSizing.Files;
using Json.Schema;

namespace FuelSizing.Tests.Files.Catalogues;

/// <summary>The page about catalogues shows samples that are read, and its schema and the reader agree on the fields.</summary>
public class CataloguePageTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(Page("catalogue.schema.json"));

    public static TheoryData<string, string> Samples
    {
        get
        {
            TheoryData<string, string> samples = [];
            foreach (Match sample in Regex.Matches(Page("catalogues.md"), @"^```(csv|json)\n(.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline))
            {
                samples.Add($"page.{sample.Groups[1].Value}", sample.Groups[2].Value);
            }

            return samples;
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Sample_OfThePage_IsReadAndFitsTheSchema(string name, string text)
    {
        Catalogue read = Catalogue.Parse(name, text);
        Assert.NotEqual(0, read.Injectors.Count + read.Pumps.Count + read.Regulators.Count);
        if (name.EndsWith(".json", StringComparison.Ordinal))
        {
            Assert.True(Fits(JsonNode.Parse(text)!));
        }
    }

    [Fact]
    public void Samples_OfThePage_AreFound() => Assert.Equal(4, Samples.Count);

    [Fact]
    public void EveryField_TakenOutOrMisspelt_IsRefusedByReaderAndSchemaAlike()
    {
        Assert.True(Fits(JsonNode.Parse(ShelfFiles.Json)!));
        int tried = 0;
        foreach (string path in Fields(JsonNode.Parse(ShelfFiles.Json)!).Select(node => node.GetPath()).ToArray())
        {
            foreach (bool misspelt in new[] { true, false })
            {
                JsonNode mutated = JsonNode.Parse(ShelfFiles.Json)!;
                JsonNode field = Fields(mutated).Single(node => node.GetPath() == path);
                JsonObject holder = field.Parent!.AsObject();
                string name = field.GetPropertyName();
                holder.Remove(name);
                if (misspelt)
                {
                    holder.Add($"{name}_", field.DeepClone());
                }

                Assert.Equal((path, misspelt, Fits(mutated)), (path, misspelt, IsRead(mutated.ToJsonString())));
                tried++;
            }
        }

        Assert.InRange(tried, 150, 400);
    }

    private static bool Fits(JsonNode node) => Schema.Evaluate(JsonSerializer.SerializeToElement(node)).IsValid;

    private static bool IsRead(string text)
    {
        try
        {
            Catalogue.Parse("shelf.json", text);
            return true;
        }
        catch (CatalogueException)
        {
            return false;
        }
    }

    private static IEnumerable<JsonNode> Fields(JsonNode node) => node switch
    {
        JsonObject holder => holder.SelectMany(field => Fields(field.Value!).Prepend(field.Value!)),
        JsonArray list => list.SelectMany(element => Fields(element!)),
        _ => [],
    };

    private static string Page(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", name));
}
