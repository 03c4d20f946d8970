using System.Text;

namespace FuelSizing.Tests.Sources;

/// <summary>Where the rows of the register stand on the page of published values, and equations on theirs.</summary>
internal static class Anchors
{
    /// <summary>A row of the register of works.</summary>
    public static string OfWork(string name) => $"work-{Slug(name)}";

    /// <summary>A row of the register of constants.</summary>
    public static string OfConstant(string member) => $"constant-{Slug(member)}";

    /// <summary>A row of the register of the equations' sources.</summary>
    public static string OfEquationSource(string begins) => $"source-{Slug(begins)}";

    /// <summary>An equation's entry.</summary>
    public static string OfEquation(string name) => name.Replace('.', '-').ToLowerInvariant();

    // Letters and digits of the Latin alphabet, and a line for whatever stands between them.
    private static string Slug(string text)
    {
        StringBuilder slug = new();
        foreach (char letter in text.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                slug.Append(letter);
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        return slug.ToString().TrimEnd('-');
    }
}
