namespace FuelSizing.Files;

/// <summary>A setup could not be read; nothing of it was kept.</summary>
public sealed class SetupException : FileException
{
    internal SetupException(IReadOnlyList<FileProblem> problems)
        : base(problems)
    {
    }
}
