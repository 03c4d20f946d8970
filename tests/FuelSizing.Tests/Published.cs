using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.Versioning;
using FuelSizing.Tests.Sources;

namespace FuelSizing.Tests;

/// <summary>
/// Compares a computed number with one published outside the project. The test that does so carries a written title
/// (<c>DisplayName</c>), under which the number stands on the page of published values.
/// </summary>
internal static class Published
{
    // Names the file to which each check adds a line, one for each framework that is tested; .ci/validation makes a page of it.
    private static readonly string? List = Environment.GetEnvironmentVariable("FUELSIZING_VALIDATION") is { Length: > 0 } list
        ? $"{list}.{typeof(Published).Assembly.GetCustomAttribute<TargetFrameworkAttribute>()!.FrameworkName.Split("Version=")[1]}"
        : null;

    private static readonly object Gate = new();

    private static readonly ConcurrentDictionary<(string File, string Test), string> Titles = new();

    /// <summary>Passes if the number lies within a share of the published one.</summary>
    /// <param name="source">A row of the register of works, or a place in one.</param>
    /// <param name="expected">The published number.</param>
    /// <param name="actual">The computed one.</param>
    /// <param name="within">Allowed deviation as a share of the published number.</param>
    /// <param name="file">The compiler's: where the check stands.</param>
    /// <param name="test">The compiler's: which test it is in.</param>
    public static void Value(
        Source source,
        double expected,
        double actual,
        double within,
        [CallerFilePath] string file = "",
        [CallerMemberName] string test = "")
    {
        string title = Title(file, test);
        double deviation = actual == expected ? 0 : Math.Abs(actual - expected) / Math.Abs(expected);
        if (List is not null)
        {
            Add(source, expected, actual, deviation, within, file, title);
        }

        Assert.True(
            Math.Abs(actual - expected) <= within * Math.Abs(expected),
            string.Create(
                CultureInfo.InvariantCulture,
                $"{source.Work}: published {expected:G9}, computed {actual:G9}, off by {(actual / expected) - 1:P4}, allowed {within:P4}"));
    }

    private static void Add(
        Source source, double expected, double actual, double deviation, double within, string file, string title)
    {
        // Paths are those of the machine that compiled.
        string subject = file.Split('/', '\\')[^2];

        string line = string.Create(
            CultureInfo.InvariantCulture,
            $"{(source.IsCheck ? subject == "WholeCases" ? 1 : 2 : 3)}\t{subject}\t{title}\t{source.Work}\t{Source.Word(source.Obtained)}\t{expected:G6}\t{actual:G6}\t{Share(deviation)}\t{Share(within)}\t{Anchors.OfWork(Works.All.First(row => ReferenceEquals(row.Source, source.Row)).Name)}\n");
        Write(line);
    }

    /// <summary>Adds a row of the register to the page.</summary>
    public static void Row(params string[] cells)
    {
        if (List is not null)
        {
            Write(string.Join('\t', cells) + "\n");
        }
    }

    private static void Write(string line)
    {
        lock (Gate)
        {
            File.AppendAllText(List!, line);
        }
    }

    // Under a millionth of the value lies what the last digits of a processor's functions differ by.
    private static string Share(double share) =>
        share < 1e-6 ? "< 0.0001 %" : share.ToString("P4", CultureInfo.InvariantCulture);

    private static string Title(string file, string test) => Titles.GetOrAdd((file, test), static at => typeof(Published).Assembly
        .GetTypes()
        .Where(type => type.Name == Path.GetFileNameWithoutExtension(at.File.Split('/', '\\')[^1]))
        .SelectMany(type => type.GetMethods())
        .Where(method => method.Name == at.Test)
        .Select(method => method.GetCustomAttribute<FactAttribute>()?.DisplayName)
        .FirstOrDefault(title => title is not null)
        ?? throw new InvalidOperationException($"{at.Test} compares with a published value: give it a title, DisplayName."));
}
