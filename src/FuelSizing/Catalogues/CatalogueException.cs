using System.Globalization;

namespace FuelSizing.Catalogues;

/// <summary>A catalogue could not be read; nothing of it was kept.</summary>
public sealed class CatalogueException : FormatException
{
    private const int Shown = 5;

    internal CatalogueException(IReadOnlyList<CatalogueProblem> problems)
        : base(Text(problems)) => Problems = problems;

    /// <summary>Everything found wrong, in the order of the files and their lines.</summary>
    public IReadOnlyList<CatalogueProblem> Problems { get; }

    private static string Text(IReadOnlyList<CatalogueProblem> problems)
    {
        string more = problems.Count > Shown
            ? string.Create(CultureInfo.InvariantCulture, $" And {problems.Count - Shown} more.")
            : string.Empty;
        return $"Nothing was read. {string.Join(" ", problems.Take(Shown))}{more}";
    }
}
