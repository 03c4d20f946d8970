namespace FuelSizing.Notebooks;

/// <summary>The notebook cannot be read, or asks for something this program does not do.</summary>
internal sealed class NotebookException : Exception
{
    public NotebookException(string message)
        : base(message)
    {
    }

    public NotebookException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
