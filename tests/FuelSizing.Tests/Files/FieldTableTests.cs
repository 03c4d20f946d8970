using System.Reflection;
using FuelSizing.Files;

namespace FuelSizing.Tests.Files;

/// <summary>
/// Schemas and the docs' tables of fields are what the forms give. Where the variable FUELSIZING_FIELDS says <c>write</c>, they
/// are written anew instead: <c>bash .ci/fields --write</c>.
/// </summary>
public class FieldTableTests
{
    private const string Begin = "<!-- fields: made by .ci/fields -->\n";
    private const string End = "<!-- end of fields -->";

    private static readonly bool Writes = Environment.GetEnvironmentVariable("FUELSIZING_FIELDS") == "write";

    private static readonly Form[] Files = [CatalogueForm.File.Form, SetupForm.File.Form, MappingForm.File.Form, BenchForm.File.Form];

    [Theory]
    [InlineData("catalogue.schema.json")]
    [InlineData("setup.schema.json")]
    [InlineData("recorded-run-mapping.schema.json")]
    [InlineData("bench.schema.json")]
    public void Schema_OfTheDocs_IsWhatTheFormGives(string name) => Same(
        name,
        _ => name switch
        {
            "catalogue.schema.json" => CatalogueForm.File.Schema(),
            "setup.schema.json" => SetupForm.File.Schema(),
            "bench.schema.json" => BenchForm.File.Schema(),
            _ => MappingForm.File.Schema(),
        });

    [Theory]
    [InlineData("catalogues.md")]
    [InlineData("setups.md")]
    [InlineData("recorded-run.md")]
    [InlineData("bench.md")]
    public void Tables_OfTheDocs_AreWhatTheFormGives(string name) => Same(name, page =>
    {
        int begin = page.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        int end = page.IndexOf(End, StringComparison.Ordinal);
        Assert.True(begin >= Begin.Length && end >= begin, $"{name} has no place for the tables.");
        Form form = name switch
        {
            "catalogues.md" => CatalogueForm.File.Form,
            "setups.md" => SetupForm.File.Form,
            "bench.md" => BenchForm.File.Form,
            _ => MappingForm.File.Form,
        };
        return page[..begin] + "\n" + FieldTables.Text(form) + page[end..];
    });

    [Fact]
    public void Ranges_OfTheDocs_AreThoseOfTheLibrary() => Same("inputs.md", page =>
    {
        const string begin = "<!-- ranges: made by .ci/fields -->\n";
        int from = page.IndexOf(begin, StringComparison.Ordinal) + begin.Length;
        int to = page.IndexOf("<!-- end of ranges -->", StringComparison.Ordinal);
        Assert.True(from >= begin.Length && to >= from, "inputs.md has no place for the ranges.");
        IEnumerable<string> rows = PlausibleRange.All.Select(range =>
            $"| {range.Name} | {range.Limits} | {string.Join(", ", range.Inputs.Select(input => $"`{input}`"))} |\n");
        return $"{page[..from]}\n| input | plausible | named |\n| --- | --- | --- |\n{string.Concat(rows)}\n{page[to..]}";
    });

    [Fact]
    public void Question_OfTheDocs_IsWhatTheLibraryAsks()
    {
        InputQuestion? question = PlausibleRange.For("static_flow")!.Question("static_flow", UnitsNet.VolumeFlow.FromMillilitersPerMinute(24));
        Assert.Contains($"{question}", File.ReadAllText(Path.Combine(Tree(), "docs", "inputs.md")), StringComparison.Ordinal);
    }

    /// <summary>A refusal is blamed on the field by its argument's name, so an argument that is renamed must not be forgotten.</summary>
    [Fact]
    public void Arguments_ThatFieldsName_AreThoseOfFactories()
    {
        HashSet<string> known = new(
            typeof(Setup).Assembly.GetTypes()
                .Where(type => type.Namespace?.EndsWith(".Files", StringComparison.Ordinal) == false)
                .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance))
                .SelectMany(method => method.GetParameters())
                .Select(parameter => parameter.Name!),
            StringComparer.OrdinalIgnoreCase);
        string[] plain = [.. All().Where(field => field.Inner is null && field is not KindField && field.Name is not ("cost" or "kind" or "unit" or "column"))
            .SelectMany(field => field.Arguments).Concat(All().Where(field => field.NamesArguments).SelectMany(field => field.Arguments)).Distinct()];

        Assert.True(plain.Length > 60, $"{plain.Length} arguments are looked at.");
        Assert.DoesNotContain(plain, argument => !known.Contains(argument));
    }

    /// <summary>One naming style: small letters, digits and underscores, in every file.</summary>
    [Fact]
    public void Names_OfAllFields_AreOfOneStyle() =>
        Assert.All(All(), field => Assert.Matches("^[a-z][a-z0-9]*(_[a-z0-9]+)*$", field.Name));

    private static List<Field> All()
    {
        List<Form> forms = [.. Files];
        for (int at = 0; at < forms.Count; at++)
        {
            forms.AddRange(forms[at].Records.SelectMany(record => record.Fields).Select(field => field.Inner).OfType<Form>().Where(inner => !forms.Contains(inner)).Distinct().ToArray());
        }

        return [.. forms.SelectMany(form => form.Records).SelectMany(record => record.Fields).Distinct()];
    }

    private static void Same(string name, Func<string, string> made)
    {
        string path = Path.Combine(Tree(), "docs", name);
        string page = File.ReadAllText(path);
        if (Writes)
        {
            File.WriteAllText(path, made(page));
        }
        else
        {
            Assert.Equal(made(page), page);
        }
    }

    private static string Tree()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "FuelSizing.sln")))
        {
            folder = folder.Parent;
        }

        return folder!.FullName;
    }
}
