namespace FuelSizing.Files;

/// <summary>A catalogue could not be read; nothing of it was kept.</summary>
public sealed class CatalogueException : FileException
{
    internal CatalogueException(IReadOnlyList<FileProblem> problems)
        : base(problems)
    {
    }
}
