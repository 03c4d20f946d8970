using System.Globalization;
using System.Reflection;
using System.Xml.Linq;
using FuelSizing.Quantities;
using FuelSizing.Systems;

namespace FuelSizing.Interactive;

/// <summary>The page that a printable sheet stands on: head, verdict, sections.</summary>
internal static class SheetPage
{
    private const int MaximumCharacters = 160;

    /// <summary>The library's version.</summary>
    public static string Version { get; } = typeof(SweepResult).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];

    /// <summary>A title that fits the head.</summary>
    /// <exception cref="ArgumentException">The title is empty, too long, or cannot be written as XML.</exception>
    public static string TitleOf(string title)
    {
        string text = Require.Text(title, nameof(title));
        return text.Length <= MaximumCharacters
            ? text
            : throw new ArgumentException($"title has {text.Length} characters; at most {MaximumCharacters} fit the page's head.", nameof(title));
    }

    /// <summary>Date and version.</summary>
    public static string Origin(DateOnly? date) =>
        $"{(date is { } day ? $"{day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}, " : string.Empty)}calculated with FuelSizing {Version}";

    /// <summary>A document of its own, that runs no script and loads nothing.</summary>
    public static string Document(string title, IEnumerable<XElement> body) => "<!DOCTYPE html>\n" + new XElement(
        "html",
        new XAttribute("lang", "en"),
        new XElement(
            "head",
            new XElement("meta", new XAttribute("charset", "utf-8")),
            new XElement("meta", new XAttribute("http-equiv", "Content-Security-Policy"), new XAttribute("content", SheetStyle.ContentPolicy)),
            new XElement("meta", new XAttribute("name", "viewport"), new XAttribute("content", "width=device-width, initial-scale=1")),
            new XElement("title", title),
            new XElement("style", SheetStyle.Page)),
        new XElement("body", body)).ToString(SaveOptions.DisableFormatting) + "\n";

    /// <summary>A block among others.</summary>
    public static string Block(IEnumerable<XElement> body) =>
        new XElement("div", new XAttribute("class", SheetStyle.BlockClass), new XElement("style", SheetStyle.Block), body)
            .ToString(SaveOptions.DisableFormatting);

    /// <summary>Title, origin, and the verdict.</summary>
    public static XElement[] Head(string title, string head, Verdict verdict, TextStyle style)
    {
        var (word, sign, edge, ground) = BlockStyle.For(SizingCallouts.Verdict(verdict, style).Kind);
        return
        [
            new XElement("header", new XElement("h1", title), new XElement("p", head)),
            new XElement(
                "p",
                new XAttribute("class", "verdict"),
                new XAttribute("style", $"border-color:{edge};background:{ground}"),
                new XElement("strong", new XAttribute("style", $"color:{edge}"), $"{sign} {word}"),
                $" {PartText.Say(verdict.Headline, style)}"),
        ];
    }

    /// <summary>A list of lines, each with its name before it.</summary>
    public static XElement Section(string title, IReadOnlyList<IReadOnlyList<string>> rows) =>
        new(
            "section",
            new XElement("h2", title),
            new XElement("table", new XElement("tbody", rows.Select(row =>
                new XElement("tr", row.Select((cell, place) => place == 0
                    ? new XElement("th", new XAttribute("scope", "row"), cell)
                    : new XElement("td", IsShort(place, row) ? new XAttribute("class", "short") : null, cell)))))));

    /// <summary>A table with a head, in which empty cells are to be written in.</summary>
    public static XElement Form(string title, IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> rows) =>
        new(
            "section",
            new XElement("h2", title),
            new XElement(
                "table",
                new XAttribute("class", "form"),
                new XElement("thead", new XElement("tr", columns.Select(column => new XElement("th", new XAttribute("scope", "col"), column)))),
                new XElement("tbody", rows.Select(row => new XElement(
                    "tr", row.Select((cell, place) => new XElement("td", cell.Length == 0 ? new XAttribute("class", "blank") : null, new XAttribute("data-of", columns[place]), cell)))))));

    // Beside a sentence, a figure or a place keeps to one line.
    private static bool IsShort(int place, IReadOnlyList<string> row) => row.Count > 2 && place != 2;
}
