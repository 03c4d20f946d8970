using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Files that are read from a stream to its end, or written to one; the stream is left open.</summary>
internal static class StreamedFile
{
    /// <summary>Reads a file.</summary>
    /// <param name="stream">Its bytes.</param>
    /// <param name="name">By which problems call it.</param>
    /// <param name="of">Makes of the text what it holds, or throws what is wrong.</param>
    /// <param name="wrong">What is thrown where it is no text.</param>
    /// <param name="megabytes">As long as it may be.</param>
    /// <param name="advice">What to do with a longer one.</param>
    public static T Read<T>(
        Stream stream,
        string name,
        Func<FileText, ProblemList, T> of,
        Func<ProblemList, FileException> wrong,
        int megabytes = FileText.MaximumMegabytes,
        Statement? advice = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(name);
        ProblemList problems = new();
        return FileText.Of(stream, name, problems, megabytes, advice) is { } text ? of(text, problems) : throw wrong(problems);
    }

    /// <summary>The same without waiting.</summary>
    /// <param name="stream">Its bytes.</param>
    /// <param name="name">By which problems call it.</param>
    /// <param name="of">Makes of the text what it holds, or throws what is wrong.</param>
    /// <param name="wrong">What is thrown where it is no text.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <param name="megabytes">As long as it may be.</param>
    /// <param name="advice">What to do with a longer one.</param>
    public static async Task<T> ReadAsync<T>(
        Stream stream,
        string name,
        Func<FileText, ProblemList, T> of,
        Func<ProblemList, FileException> wrong,
        CancellationToken cancellation,
        int megabytes = FileText.MaximumMegabytes,
        Statement? advice = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(name);
        ProblemList problems = new();
        return await FileText.OfAsync(stream, name, problems, cancellation, megabytes, advice).ConfigureAwait(false) is { } text ? of(text, problems) : throw wrong(problems);
    }

    /// <summary>Writes a file's text.</summary>
    public static void Write(Stream stream, string text)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(FileText.Bytes(text));
    }

    /// <summary>The same without waiting.</summary>
    public static Task WriteAsync(Stream stream, string text, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(stream);
        return stream.WriteAsync(FileText.Bytes(text), cancellation).AsTask();
    }
}
