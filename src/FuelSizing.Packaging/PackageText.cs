using System.Text.RegularExpressions;

namespace FuelSizing.Packaging;

/// <summary>A page of the repository as a reader of the package gets it, who has no repository beside it.</summary>
internal static partial class PackageText
{
    /// <summary>Takes the links to other files of the repository away, and leaves their words.</summary>
    public static string WithoutRelativeLinks(string page) =>
        Link().Replace(page, link => link.Groups["target"].Value.StartsWith("https://", StringComparison.Ordinal) ? link.Value : link.Groups["words"].Value);

    [GeneratedRegex(@"\[(?<words>[^\[\]]+)\]\((?<target>[^()\s]+)\)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex Link();
}

/// <summary>The README of a package.</summary>
internal static class PackageReadme
{
    /// <summary>
    /// The repository's README without links into the repository. They are not made absolute: a build does not know for certain at which address its
    /// commit will be found, and two builds of the same sources have to give the same package.
    /// </summary>
    public static string Of(string readme, string package)
    {
        string[] lines = readme.Split('\n');
        return PackageText.WithoutRelativeLinks(string.Join('\n',
        [
            lines[0],
            string.Empty,
            $"*This is the README of the repository from which the package {package} was built. Pages and files that it names are in that repository; "
                + "NOTICES.md is in the package.*",
            .. lines.Skip(1),
        ]));
    }
}

/// <summary>The release notes of a package.</summary>
internal static class ReleaseNotes
{
    /// <summary>What the changelog says of a version.</summary>
    /// <exception cref="ArgumentException">It says nothing of it.</exception>
    public static string Of(string changelog, string version)
    {
        string[] lines = changelog.Split('\n');
        int first = Array.FindIndex(lines, line => line == $"## {version}" || line.StartsWith($"## {version},", StringComparison.Ordinal));
        string[] own = first < 0 ? [] : [.. lines.Skip(first + 1).TakeWhile(line => !line.StartsWith("## ", StringComparison.Ordinal))];
        string notes = PackageText.WithoutRelativeLinks(string.Join('\n', own)).Trim();
        return notes.Length > 0 ? notes : throw new ArgumentException($"version was {version}; the changelog says nothing of it.", nameof(version));
    }
}
