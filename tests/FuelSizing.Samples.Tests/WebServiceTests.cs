using System.Collections.Concurrent;
using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using FuelSizing.Data;
using FuelSizing.Files;
using FuelSizing.Systems;
using Json.Schema;
using UnitsNet;

namespace FuelSizing.Samples.Tests;

/// <summary>The web service by its sockets: many callers at once in two systems of units, and what it refuses.</summary>
public sealed class WebServiceTests(RunningService service) : IClassFixture<RunningService>
{
    private const int Clients = 8;
    private const int Requests = 1_000;

    private static readonly JsonSchema Schema = JsonSchema.FromText(File.ReadAllText(Sample.Docs("result.schema.json")));

    private static readonly byte[] Wren = File.ReadAllBytes(Sample.Docs("wren-setup.json"));

    /// <summary>Of each question what the library itself answers.</summary>
    private static readonly (string Query, Func<ResultData> Expected)[] Questions =
    [
        ("point=full%20load", () => Solved("full load")),
        ("point=cruise", () => Solved("cruise")),
        ("point=idle", () => Solved("idle")),
        ("point=full%20load&speed=3000rpm&speed=6800rpm&boost=0bar&boost=0.7bar", () => Swept(Setup.Parse("wren", Encoding.UTF8.GetString(Wren)))),
    ];

    [Fact]
    public async Task EightClients_HalfMetricHalfUs_GetTheSameNumbers_AndTheirOwnUnits()
    {
        ConcurrentDictionary<(int Question, string Result), int> results = [];
        ConcurrentDictionary<(int Question, string Units, string Sentences), int> sentences = [];
        int asked = 0;
        await Task.WhenAll(Enumerable.Range(0, Clients).Select(client => Task.Run(async () =>
        {
            string units = client % 2 == 0 ? "si" : "us";
            for (int turn = 0; turn < Requests / Clients; turn++)
            {
                // A sweep now and then, at other times for each caller.
                int question = (turn + (3 * client)) % 25 == 0 ? Questions.Length - 1 : (turn + client) % (Questions.Length - 1);
                using HttpResponseMessage response = await service.Check($"units={units}&{Questions[question].Query}", Wren);
                string text = await response.Content.ReadAsStringAsync();
                Assert.True(response.StatusCode == HttpStatusCode.OK, text);
                using JsonDocument answer = JsonDocument.Parse(text);
                results.AddOrUpdate((question, answer.RootElement.GetProperty("result").GetRawText()), 1, (_, count) => count + 1);
                sentences.AddOrUpdate((question, units, text[..text.IndexOf("\"result\":", StringComparison.Ordinal)]), 1, (_, count) => count + 1);
                Interlocked.Increment(ref asked);
            }
        })));

        Assert.Equal(Requests, asked);
        Assert.Equal(Requests, results.Values.Sum());

        // One text of numbers for each question, whoever asked and in whatever units, and one of sentences for each system of units.
        Assert.Equal(Enumerable.Range(0, Questions.Length), results.Keys.Select(key => key.Question).Order());
        Assert.Equal(2 * Questions.Length, sentences.Count);
        foreach ((int question, string result) in results.Keys)
        {
            EvaluationResults verdict = Schema.Evaluate(JsonDocument.Parse(result).RootElement);
            Assert.True(verdict.IsValid, Questions[question].Query);
            Assert.Equal(result, ResultData.Parse("answer", result).ToJson());
            Assert.Equal(Questions[question].Expected().ToJson(), result);
        }

        foreach ((int question, string units, string text) in sentences.Keys)
        {
            string? foreign = UnitWords.Foreign(text, units);
            Assert.True(foreign is null, $"{units}, {Questions[question].Query}: …{foreign}…");
            Assert.NotNull(UnitWords.Foreign(text, units == "us" ? "si" : "us"));
            Assert.Contains(Cautions.OneLine, text, StringComparison.Ordinal);
            Assert.Contains("\"not_judged\":[\"", text, StringComparison.Ordinal);
        }

        Assert.DoesNotContain(service.Log, line => line.StartsWith("fail", StringComparison.Ordinal) || line.StartsWith("crit", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("units=us&point=full%20load", "\"950 mL/min\"", "\"950 mLL/min\"", 400, "injectors.injector.static_flow", "mLL/min")]
    [InlineData("units=si&point=full%20load", "\"cylinders\": 4", "\"cylinders\": 400", 400, "engine.cylinders", "400")]
    [InlineData("units=si&point=full%20load", "\"setup\": 1,", "\"setup\": 1", 400, "line 3", "")]
    [InlineData("units=si&point=full%20load", "\"950 mL/min\"", "\"24 mL/min\"", 422, "accept=injectors.injector.static_flow", "24 lb/h")]
    [InlineData("units=si&point=full%20throttle", "", "", 404, "full throttle", "")]
    [InlineData("units=imperial&point=full%20load", "", "", 400, "imperial", "si or us")]
    [InlineData("units=si", "", "", 400, "name of a point", "")]
    [InlineData("units=si&pont=full%20load", "", "", 400, "pont", "point")]
    [InlineData("units=si&speed=6800&boost=0.6bar", "", "", 400, "6800", "rpm")]
    [InlineData("units=si&speed=6800rpm", "", "", 400, "boost", "0.6 bar")]
    [InlineData("units=si&speed=6800rpm&speed=3000rpm&boost=0bar", "", "", 400, "\"argument\":\"speeds\"", "3,000 rev/min")]
    [InlineData("units=si&speed=16000rpm&boost=0bar", "", "", 400, "16,000 rev/min", "7,200 rev/min")]
    public async Task WhatCannotBeAnswered_IsAProblem_WithTheLibrarysWordsAndPlace(
        string query, string found, string put, int status, string place, string words)
    {
        string setup = Encoding.UTF8.GetString(Wren);
        string changed = found.Length > 0 ? setup.Replace(found, put, StringComparison.Ordinal) : setup;
        Assert.Equal(found.Length > 0, changed != setup);
        using HttpResponseMessage response = await service.Check(query, Encoding.UTF8.GetBytes(changed));
        string text = await response.Content.ReadAsStringAsync();

        Assert.True(status == (int)response.StatusCode, text);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        Assert.Equal(status, (int)JsonNode.Parse(text)!["status"]!);
        string said = System.Text.RegularExpressions.Regex.Unescape(text.Replace("\\n", " ", StringComparison.Ordinal));
        Assert.Contains(place, said, StringComparison.Ordinal);
        Assert.Contains(words, said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ImplausibleValue_Confirmed_IsCalculatedWith()
    {
        byte[] small = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Wren).Replace("\"950 mL/min\"", "\"24 mL/min\"", StringComparison.Ordinal));
        using HttpResponseMessage response = await service.Check("units=si&point=full%20load&accept=injectors.injector.static_flow", small);
        string text = await response.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Equal("fails", (string?)JsonNode.Parse(text)!["result"]!["operating_result"]!["outcome"]);
    }

    [Fact]
    public async Task BytesThatAreNoText_AreRefused()
    {
        byte[] torn = [.. Wren];
        torn[Array.IndexOf(torn, (byte)'W')] = 0xFF;
        using HttpResponseMessage response = await service.Check("units=si&point=full%20load", torn);
        Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
        Assert.Contains("UTF-8", await response.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task UnknownPath_AndTooLargeASetup_AreProblems()
    {
        using HttpResponseMessage unknown = await service.Client.GetAsync(new Uri("/nothing", UriKind.Relative));
        Assert.Equal((HttpStatusCode.NotFound, "application/problem+json"), (unknown.StatusCode, unknown.Content.Headers.ContentType?.MediaType));

        // The body is sent when the service asks for it, which it does not.
        using HttpRequestMessage large = new(HttpMethod.Post, "/check?units=si&point=full%20load") { Content = new ByteArrayContent(new byte[1_000_001]) };
        large.Headers.ExpectContinue = true;
        using HttpResponseMessage refused = await service.Client.SendAsync(large);
        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, "application/problem+json"), (refused.StatusCode, refused.Content.Headers.ContentType?.MediaType));
        Assert.Contains("1,000,000 bytes", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    /// <summary>A sweep of a car with a controller, whose mixture is looked for between the points too, takes many times longer than the caller waits.</summary>
    [Fact]
    public async Task CallerThatHangsUp_StopsTheWork()
    {
        string speeds = string.Concat(Enumerable.Range(0, 20).Select(step => $"&speed={3000 + (150 * step)}rpm"));
        string boosts = string.Concat(Enumerable.Range(0, 20).Select(step => $"&boost={2 * step}kPa"));
        using CancellationTokenSource patience = new(TimeSpan.FromMilliseconds(500));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(
            () => service.Check($"units=si{speeds}{boosts}", File.ReadAllBytes(Sample.Docs("dunnock-setup.json")), patience.Token));

        for (int wait = 0; wait < 200 && !service.Log.Any(IsStopped); wait++)
        {
            await Task.Delay(50);
        }

        Assert.Contains(service.Log, IsStopped);

        static bool IsStopped(string? line) => line?.Contains("The caller hung up", StringComparison.Ordinal) == true;
    }

    private static ResultData Solved(string point)
    {
        Setup setup = Setup.Parse("wren", Encoding.UTF8.GetString(Wren));
        return ResultData.Of(setup.System.Solve(setup.Point(point)));
    }

    private static ResultData Swept(Setup setup) => ResultData.Of(setup.System.Sweep(
        [RotationalSpeed.FromRevolutionsPerMinute(3000), RotationalSpeed.FromRevolutionsPerMinute(6800)],
        [Pressure.Zero, Pressure.FromBars(0.7)],
        setup.Point("full load").Conditions));
}
