using System.Text.Json;
using CsCheck;
using FuelSizing.Files;

namespace FuelSizing.Tests.Files.Setups;

/// <summary>
/// Thousands of setups mutated at random: each is read whole, as an independent reader (the runtime's JsonDocument) finds it,
/// or refused with line and field; nothing else is thrown.
/// </summary>
public class FuzzedSetupTests
{
    private static readonly string Good = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "docs", "wren-setup.json"));

    private static readonly string[] Scraps =
    [
        ",", "\"", "\n", ";", " ", ".", "-", "+", "e", "E9", "1e999", "NaN", "0", "9", "12", "{", "}", "[", "]", "{}", "[]", ":", "null",
        "true", "\\", "\\u0000", "\\ud800", "\0", "é", "³", "\u2028", "mL/min", "kPa", "%", "per unit", "W", "name", "\"name\": \"x\",",
        "\"kind\": \"line\",", "{ \"kind\": \"petrol\" }", "\"series\": [", "\"in_series_with\": {", "\"base\": \"300 kPa\"", "// ", "/*",
    ];

    private static readonly Gen<Func<string, string>> Edit = Mutating.Edit(Scraps, Digit);

    [Fact]
    public void Setup_MutatedAtRandom_IsReadWholeOrRefusedWithItsPlace() =>
        Edit.Array[1, 3].Select(edits => edits.Aggregate(Good, (text, edit) => edit(text))).Sample(Holds, iter: 3000);

    [Fact]
    public void Setup_OfNoise_IsRefusedWithItsPlace() =>
        Gen.OneOfConst(Scraps).Array[0, 60].Select(string.Concat).Sample(Holds, iter: 2000);

    [Fact]
    public void Setup_NestedWithoutEnd_IsRefused() =>
        Assert.Throws<SetupException>(() => Setup.Parse(
            "deep.json", "{ \"setup\": 1, \"pump\": " + string.Concat(Enumerable.Repeat("{ \"parallel\": [", 100_000))));

    // The next digit becomes another one: what is refused then is refused for its value, not for its form.
    private static string Digit(string text, int at, int digit)
    {
        int place = at + text.AsSpan(at).IndexOfAnyInRange('0', '9');
        return place < at ? text : text[..place] + (digit % 10).ToString(System.Globalization.CultureInfo.InvariantCulture) + text[(place + 1)..];
    }

    private static void Holds(string text)
    {
        Setup read;
        try
        {
            read = Setup.Parse("wren.json", text);
        }
        catch (SetupException refused)
        {
            int lines = 1 + text.Count(letter => letter == '\n');
            Assert.NotEmpty(refused.Problems);
            Assert.All(refused.Problems, problem =>
            {
                Assert.Equal("wren.json", problem.File);
                Assert.InRange(problem.Line, 1, lines);
                Assert.False(string.IsNullOrWhiteSpace(problem.Field));
                Assert.False(string.IsNullOrWhiteSpace($"{problem.Reason}"));
                Assert.DoesNotContain(problem.ToString(), char.IsControl);
            });
            return;
        }

        using JsonDocument document = JsonDocument.Parse(text);
        JsonElement root = document.RootElement;
        Assert.Equal(root.GetProperty("injectors").GetProperty("count").GetInt32(), read.System.Injectors.Count);
        Assert.Equal(
            root.GetProperty("injectors").GetProperty("injector").GetProperty("dead_times").GetArrayLength(),
            read.System.Injectors.Injector.DeadTime.Points.Count);
        Assert.Equal(
            root.TryGetProperty("points", out JsonElement points) ? [.. points.EnumerateArray().Select(point => point.GetProperty("name").GetString()!)] : [],
            read.Points.Select(named => named.Name));
        Assert.Equal(Pumps(root.GetProperty("pump")), read.System.Pump.Pumps.Count);
        Assert.Equal(root.GetProperty("consumption").GetProperty("lambda").GetDouble(), read.System.Demand.Consumption.Lambda);

        string written = read.ToJson();
        Assert.Equal(written, Setup.Parse("again.json", written).ToJson());
    }

    private static int Pumps(JsonElement pump) =>
        pump.TryGetProperty("series", out JsonElement stages) ? stages.EnumerateArray().Sum(Pumps)
        : pump.TryGetProperty("parallel", out JsonElement branches) ? branches.EnumerateArray().Sum(Pumps)
        : 1;
}
