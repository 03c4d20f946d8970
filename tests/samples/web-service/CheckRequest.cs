using System.Globalization;
using System.Text;
using FuelSizing.Files;
using FuelSizing.Points;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Samples;

/// <summary>What was asked: a setup, where to look at it, and the units of the sentences.</summary>
internal sealed record CheckRequest
{
    /// <summary>In bytes; the largest setup of the library's own documentation takes 8 kB.</summary>
    public const long LargestSetup = 1_000_000;

    private const int LargestGrid = 400;

    private static readonly string[] Parameters = ["units", "point", "speed", "boost", "accept"];

    public required Setup Setup { get; init; }

    /// <summary>Units belong to this request and go with each call. The process has none: two callers never mix theirs.</summary>
    public required TextStyle Style { get; init; }

    /// <summary>The one point to solve; none where a range is swept.</summary>
    public OperatingPoint? Point { get; private init; }

    public IReadOnlyList<RotationalSpeed> Speeds { get; private init; } = [];

    public IReadOnlyList<Pressure> Boosts { get; private init; } = [];

    /// <summary>Those of the named point; standard ones where none is named.</summary>
    public Conditions? Conditions { get; private init; }

    /// <summary>Reads a request.</summary>
    /// <exception cref="RefusedException">It cannot be answered; it says why.</exception>
    public static async Task<CheckRequest> Of(HttpRequest request, CancellationToken aborted)
    {
        IQueryCollection query = request.Query;
        if (query.Keys.FirstOrDefault(key => !Parameters.Contains(key)) is { } unknown)
        {
            throw RefusedException.Of(400, $"There is no parameter \"{unknown}\"; there are {string.Join(", ", Parameters)}.");
        }

        TextStyle style = $"{query["units"]}" switch
        {
            "si" => TextStyle.Metric,
            "us" => TextStyle.UsCustomary,
            var other => throw RefusedException.Of(400, $"units was \"{other}\"; it is si or us."),
        };
        Setup setup = Read(await Text(request, aborted), style);
        if (setup.Questions.Where(question => !query["accept"].Contains(question.Input)).ToArray() is [_, ..] open)
        {
            throw RefusedException.Of(open, style);
        }

        NamedPoint? named = null;
        if ($"{query["point"]}" is { Length: > 0 } name)
        {
            named = setup.Points.FirstOrDefault(one => one.Name == name) ?? throw RefusedException.Of(404, $"The setup has no point \"{name}\".");
        }

        CheckRequest asked = new() { Setup = setup, Style = style, Conditions = named?.Point.Conditions };
        if (!query.ContainsKey("speed") && !query.ContainsKey("boost"))
        {
            return asked with { Point = named?.Point ?? throw RefusedException.Of(400, "Give the name of a point, or the speeds and boosts to sweep.") };
        }

        asked = asked with
        {
            Speeds = All<RotationalSpeed>(query, "speed", RotationalSpeed.TryParse, "6800 rpm"),
            Boosts = All<Pressure>(query, "boost", Pressure.TryParse, "0.6 bar or 8.7 psi"),
        };
        return (long)asked.Speeds.Count * asked.Boosts.Count <= LargestGrid
            ? asked
            : throw RefusedException.Of(400, $"{asked.Speeds.Count} speeds and {asked.Boosts.Count} boosts are more than {LargestGrid} points; ask for fewer.");
    }

    private static Setup Read(string text, TextStyle style)
    {
        try
        {
            return Setup.Parse("setup", text);
        }
        catch (SetupException refused)
        {
            throw RefusedException.Of(refused, style);
        }
    }

    private static async Task<string> Text(HttpRequest request, CancellationToken aborted)
    {
        try
        {
            // A byte that is no UTF-8 is refused; replaced by a mark it would be another name.
            using StreamReader body = new(request.Body, new UTF8Encoding(false, throwOnInvalidBytes: true), detectEncodingFromByteOrderMarks: false);
            return await body.ReadToEndAsync(aborted);
        }
        catch (DecoderFallbackException)
        {
            throw RefusedException.Of(400, "The setup is not UTF-8.");
        }
        catch (BadHttpRequestException refused) when (refused.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            throw RefusedException.Of(refused.StatusCode, string.Create(CultureInfo.InvariantCulture, $"A setup may take {LargestSetup:N0} bytes."));
        }
    }

    private static T[] All<T>(IQueryCollection query, string name, TryParse<T> parse, string example) => query.ContainsKey(name)
        ? [.. query[name].Select(text => parse(text, CultureInfo.InvariantCulture, out T value)
            ? value
            : throw RefusedException.Of(400, $"{name} was \"{text}\"; give a number and a unit, such as {example}."))]
        : throw RefusedException.Of(400, $"There is no {name}; give one or more, rising, such as {example}.");

    private delegate bool TryParse<T>(string? text, IFormatProvider? provider, out T value);
}
