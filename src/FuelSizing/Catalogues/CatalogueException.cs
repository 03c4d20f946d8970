using FuelSizing.Files;

namespace FuelSizing.Catalogues;

/// <summary>A catalogue could not be read; nothing of it was kept.</summary>
public sealed class CatalogueException : FileException
{
    internal CatalogueException(IReadOnlyList<FileProblem> problems)
        : base(problems)
    {
    }
}
